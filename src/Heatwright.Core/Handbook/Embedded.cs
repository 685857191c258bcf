namespace Heatwright.Handbook;

/// <summary>The files of data/ as they were built into this program.</summary>
internal static class Embedded
{
    public const string SourcesName = "data/sources.json";

    private static readonly System.Reflection.Assembly Home = typeof(Embedded).Assembly;

    /// <summary>Names of all table files; folders are separated as the building machine did it, so both separators are taken.</summary>
    public static IReadOnlyList<string> TableNames { get; } =
    [
        .. Home.GetManifestResourceNames()
            .Where(name => name.StartsWith("data/", StringComparison.Ordinal) && name != SourcesName && !IsTrial(name))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Names of the files of one folder that holds no tables.</summary>
    public static IEnumerable<string> NamesIn(string folder) =>
        Home.GetManifestResourceNames().Where(name => name.Replace('\\', '/').StartsWith(folder, StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    /// <summary>Kinds of bench test and their rules: data, but no tables.</summary>
    private static bool IsTrial(string name) => name.StartsWith("data/trials", StringComparison.Ordinal);

    public static string Text(string name)
    {
        using var stream = Home.GetManifestResourceStream(name) ?? throw new KeyNotFoundException($"No file '{name}' was built in.");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }

    /// <summary>The file's own name, without folder and ending: the name of its table.</summary>
    public static string Stem(string name) => name[(name.LastIndexOfAny(['/', '\\']) + 1)..^".json".Length];
}
