using System.Collections.Concurrent;

namespace Heatwright.Handbook;

/// <summary>All published tables that came with this program.</summary>
public static class Tables
{
    private static readonly Dictionary<string, string> FileOf = Embedded.TableNames.ToDictionary(Embedded.Stem, StringComparer.Ordinal);

    private static readonly ConcurrentDictionary<string, Table> Read = new(StringComparer.Ordinal);

    /// <summary>Names of all tables.</summary>
    public static IEnumerable<string> Names => FileOf.Keys.Order(StringComparer.Ordinal);

    /// <summary>The table with this name; asking for one that is not there is a bug.</summary>
    public static Table Find(string name) => FileOf.TryGetValue(name, out string? file)
        ? Read.GetOrAdd(name, static (_, path) => TableFile.Parse(Embedded.Text(path), Bibliography.Own), file)
        : throw new KeyNotFoundException($"There is no table '{name}'. There are: {string.Join(", ", Names)}.");
}
