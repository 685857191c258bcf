using System.Collections.Frozen;
using System.Globalization;
using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>Two resistors of a series, and how near they come.</summary>
/// <param name="FirstOhm">Feedback or upper resistor, Ω.</param>
/// <param name="SecondOhm">Ground or lower resistor, Ω.</param>
/// <param name="Achieved">Gain, ratio or share that they make.</param>
/// <param name="Error">Share by which that misses what was asked for.</param>
public sealed record ResistorPair(
    [property: Out("Ω", "feedback or upper resistor")] double FirstOhm,
    [property: Out("Ω", "ground or lower resistor")] double SecondOhm,
    [property: Out("", "gain, ratio or share achieved")] double Achieved,
    [property: Out("", "error, as a share")] double Error);

/// <summary>Preferred numbers of resistors and capacitors: the series E3 to E192.</summary>
/// <remarks>Source: [iec-60063]; E24 and coarser are not rounded powers of ten, so they are a table. Checked: PreferredNumbersTests.</remarks>
public static class PreferredNumbers
{
    private static readonly FrozenDictionary<string, double[]> Series = Tables.Find("preferred-numbers").Rows.GroupBy(row => row.Key)
        .ToFrozenDictionary(rows => rows.Key, rows => rows.Select(row => row.Number("value")).ToArray(), StringComparer.Ordinal);

    /// <summary>Names of the series, coarsest first.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Series.OrderBy(pair => pair.Value.Length).Select(pair => pair.Key)];

    /// <summary>The values of a series in the decade from 1 to 10.</summary>
    public static IReadOnlyList<double> Decade(string series) => Series.TryGetValue(series.Trim().ToUpperInvariant(), out double[]? values)
        ? values
        : throw new ArgumentOutOfRangeException(nameof(series), series, $"There is no series '{series}'. There are: {string.Join(", ", Names)}.");

    /// <summary>All values of a series between two limits, both included, rising.</summary>
    public static IReadOnlyList<double> Between(string series, double low, double high)
    {
        var decade = Decade(series);
        int from = (int)Math.Floor(Math.Log10(low)), to = (int)Math.Floor(Math.Log10(high));
        // The ends may be off by a rounding of a power of ten; they are meant.
        return
        [
            .. Enumerable.Range(from, to - from + 1).SelectMany(power => decade.Select(value => Scaled(value, power)))
                .Where(value => value >= low * (1 - 1e-12) && value <= high * (1 + 1e-12)),
        ];
    }

    /// <summary>The value of a series nearest to a wanted one, by ratio.</summary>
    public static double Nearest(string series, double wanted)
    {
        if (!(wanted > 0) || double.IsInfinity(wanted))
        {
            throw new ArgumentOutOfRangeException(nameof(wanted), wanted, "Preferred numbers are above zero.");
        }

        return Between(series, wanted / 4, wanted * 4).MinBy(value => Math.Abs(Math.Log(value / wanted)));
    }

    /// <summary>The n best pairs for a wanted ratio of two resistors, best first; the second is taken from one decade.</summary>
    /// <param name="series">E3 … E192.</param>
    /// <param name="ratio">First over second.</param>
    /// <param name="count">How many.</param>
    /// <param name="secondFromOhm">Lowest value of the second resistor; the decade above it is tried.</param>
    public static IReadOnlyList<ResistorPair> BestRatios(string series, double ratio, int count, double secondFromOhm = 1e3) =>
        Best(series, ratio, count, secondFromOhm, achieved => achieved, ratio);

    /// <summary>The n best pairs for a gain 1 + R_f/R_g, best first.</summary>
    public static IReadOnlyList<ResistorPair> BestGains(string series, double gain, int count, double groundFromOhm = 1e3) => gain > 1
        ? Best(series, gain - 1, count, groundFromOhm, ratio => 1 + ratio, gain)
        : throw new ArgumentOutOfRangeException(nameof(gain), gain, "A non-inverting amplifier has a gain above 1.");

    /// <summary>The n best pairs for a divider R₂/(R₁ + R₂), best first.</summary>
    public static IReadOnlyList<ResistorPair> BestDividers(string series, double share, int count, double lowerFromOhm = 1e3) => share is > 0 and < 1
        ? Best(series, (1 / share) - 1, count, lowerFromOhm, ratio => 1 / (1 + ratio), share)
        : throw new ArgumentOutOfRangeException(nameof(share), share, "A divider leaves a share between 0 and 1.");

    /// <summary>The best pair of resistors of a series for a gain, a ratio or a divider.</summary>
    [Law("resistor-pair", "amplifier", "gain = 1 + R1/R2, ratio = R1/R2, divider = R2/(R1 + R2)", Says = "the best pair of resistors of a series for a gain, a ratio or a divider", Source = "iec-60063",
        Where = "series E3 to E192", Valid = "one of gain, ratio and divider is asked for; R2 from 1 kΩ to 10 kΩ", Example = "gain=91 series=E24")]
    public static ResistorPair BestPair(
        [In("series", "word", "series of preferred values", Words = "E3 E6 E12 E24 E48 E96 E192", DefaultWord = "E24")] string series,
        [In("gain", "", "wanted gain 1 + R1/R2", Min = 0, Max = 1e6)] double gain = 0,
        [In("ratio", "", "wanted ratio R1/R2", Min = 0, Max = 1e6)] double ratio = 0,
        [In("divider", "", "wanted share R2/(R1 + R2)", Min = 0, Max = 1)] double divider = 0) => (gain, ratio, divider) switch
        {
            ( > 0, 0, 0) => BestGains(series, gain, 1)[0],
            (0, > 0, 0) => BestRatios(series, ratio, 1)[0],
            (0, 0, > 0) => BestDividers(series, divider, 1)[0],
            _ => throw new ArgumentException("Ask for one of gain, ratio and divider.", nameof(gain)),
        };

    private static IReadOnlyList<ResistorPair> Best(
        string series, double ratio, int count, double secondFromOhm, Func<double, double> achieved, double wanted)
    {
        if (!(ratio is > 0 and <= 1e9) || count < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(ratio), ratio, string.Create(CultureInfo.InvariantCulture,
                $"A pair of resistors makes a ratio above 0 and up to 1e9, not {ratio:0.###}."));
        }

        return
        [
            .. (from second in Between(series, secondFromOhm, secondFromOhm * 9.999)
                from first in Between(series, second * ratio / 12, second * ratio * 12)
                let reached = achieved(first / second)
                let error = (reached / wanted) - 1
                orderby Math.Round(Math.Abs(error), 12), second, first
                select new ResistorPair(first, second, reached, error)).Take(count),
        ];
    }

    // Scaled so that 4.7·10³ is 4700 and not its neighbour: a value is what a label says.
    private static double Scaled(double value, int power) => power >= 0
        ? Math.Round(value * 100) * Math.Pow(10, power) / 100
        : Math.Round(value * 100) / (100 * Math.Pow(10, -power));
}
