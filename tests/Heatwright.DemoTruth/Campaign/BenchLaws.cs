namespace Heatwright.DemoTruth.Campaign;

/// <summary>The made-up truth behind every kind of bench test; every value is invented, its range common practice.</summary>
public static class BenchLaws
{
    private static readonly Dictionary<string, Func<Noise, BenchLaw>> Laws = HeaterLaws.All.Concat(HeatLaws.All).Concat(CellLaws.All).Concat(PowerLaws.All).Concat(PartLaws.All)
        .ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);

    /// <summary>Kinds that have a made-up truth.</summary>
    public static IReadOnlyCollection<string> Kinds => Laws.Keys;

    /// <summary>One execution of a kind.</summary>
    /// <param name="kind">Name of the kind.</param>
    /// <param name="seed">Fixed beforehand.</param>
    /// <param name="number">Which execution.</param>
    /// <param name="wide">How many times as wide as promised the meters' errors are.</param>
    /// <param name="slips">Whether one reading of a long run may be a slip.</param>
    public static MadeUpTrial Draw(string kind, double seed, int number, double wide = 1, bool slips = true)
    {
        var noise = new Noise(seed, $"{kind} {number}");
        return Laws[kind](noise).Taken(noise, wide, slips, quiet: false);
    }

    /// <summary>One execution of a kind with meters that are right and hands that are steady: what is found must be the truth.</summary>
    /// <param name="kind">Name of the kind.</param>
    /// <param name="seed">Fixed beforehand.</param>
    /// <param name="number">Which execution.</param>
    public static MadeUpTrial Quiet(string kind, double seed, int number)
    {
        var noise = new Noise(seed, $"{kind} {number}");
        return Laws[kind](noise).Taken(noise, 0, slips: false, quiet: true);
    }
}
