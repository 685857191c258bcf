using System.Text.Json;
using Heatwright.Quantities;

namespace Heatwright.Handbook;

/// <summary>A publication that numbers of the house come from.</summary>
/// <param name="Key">Short name it is cited by.</param>
/// <param name="Title">Its title.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="Year">When it appeared.</param>
/// <param name="Licence">On what terms its figures stand here.</param>
public sealed record Source(SourceKey Key, string Title, string By, int Year, string Licence);

/// <summary>The sources that may be cited, by key.</summary>
public sealed class Bibliography
{
    /// <summary>Stands where a source key would, for what the trade does and nobody published.</summary>
    public const string CommonPractice = "common practice";

    /// <summary>Stands where a source key would, for what is so by definition of its words.</summary>
    public const string Definition = "definition";

    private static readonly Lazy<Bibliography> Built = new(() => Parse(Embedded.Text(Embedded.SourcesName)));

    private readonly Dictionary<string, Source> sources;

    private Bibliography(Dictionary<string, Source> sources) => this.sources = sources;

    /// <summary>The bibliography that came with this program.</summary>
    public static Bibliography Own => Built.Value;

    /// <summary>All sources, by key.</summary>
    public IEnumerable<Source> All => sources.Values.OrderBy(source => source.Key.Key, StringComparer.Ordinal);

    /// <summary>True for the key of a source, and for the two words that say there is none.</summary>
    public bool Knows(string key) => key is CommonPractice or Definition || sources.ContainsKey(key);

    /// <summary>The source with this key, or null.</summary>
    public Source? Find(string key) => sources.GetValueOrDefault(key);

    /// <summary>Reads a bibliography: one object, a source a key.</summary>
    internal static Bibliography Parse(string json)
    {
        using var document = JsonDocument.Parse(json);
        Dictionary<string, Source> sources = new(StringComparer.Ordinal);
        foreach (var entry in document.RootElement.EnumerateObject())
        {
            var fields = entry.Value;
            Source source = new(new SourceKey(entry.Name), Text(fields, "title"), Text(fields, "by"), fields.GetProperty("year").GetInt32(), Text(fields, "licence"));
            if (!sources.TryAdd(entry.Name, source))
            {
                throw new FormatException($"Source '{entry.Name}' stands twice in the bibliography.");
            }
        }

        return new(sources);

        string Text(JsonElement fields, string name) =>
            fields.GetProperty(name).GetString() is { Length: > 0 } text ? text : throw new FormatException($"A source has an empty '{name}'.");
    }
}
