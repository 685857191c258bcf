using Heatwright.Arrangements;
using Heatwright.Predictions;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>Moves one input of a plant at a time to the ends of its range and sees what that does.</summary>
public sealed class Sensitivity
{
    /// <summary>Ends of the range in standard doubts: the limits of a rectangle lie at √3, and 95 of 100 normal values inside 2.</summary>
    internal const double Ends = 1.9;

    private readonly PlantBuilder builder;

    /// <summary>Runs two predictions per doubtful input.</summary>
    public Sensitivity(PlantBuilder builder, CancellationToken cancel = default)
    {
        this.builder = builder;
        double[] middle = builder.Middle;
        int[] places = [.. Enumerable.Range(0, middle.Length).Where(i => builder.Inputs[i].Value.SiDoubt > 0)];
        (int Place, double LowSi, double HighSi)[] ends = [.. places.Select(place => (place, middle[place] - (Ends * builder.Inputs[place].Value.SiDoubt), middle[place] + (Ends * builder.Inputs[place].Value.SiDoubt)))];
        var runs = Predict.Many(builder, [.. ends.SelectMany(end => new[] { Turning.Moved(middle, end.Place, end.LowSi), Turning.Moved(middle, end.Place, end.HighSi) })], cancel);
        Rows = [.. ends.Select((end, i) => new End(end.Place, end.LowSi, end.HighSi, runs[2 * i], runs[(2 * i) + 1]))];
    }

    /// <summary>One input at both ends.</summary>
    /// <param name="Place">Place of the input.</param>
    /// <param name="LowSi">Lower end.</param>
    /// <param name="HighSi">Upper end.</param>
    /// <param name="Low">What the tool does there.</param>
    /// <param name="High">What the tool does there.</param>
    public sealed record End(int Place, double LowSi, double HighSi, Outcome Low, Outcome High);

    /// <summary>All doubtful inputs.</summary>
    public IReadOnlyList<End> Rows { get; }

    /// <summary>The inputs by how far they move a quantity, farthest first. A quantity that turns infinite moves farthest.</summary>
    public IReadOnlyList<Swing> Swings(Func<Outcome, double> quantity) =>
        [.. Rows.Select(row => new Swing(builder.Inputs[row.Place], quantity(row.Low), quantity(row.High), row.LowSi, row.HighSi))
            .OrderByDescending(swing => Size(swing.LowValue, swing.HighValue))];

    /// <summary>Distance of two values; from a number to 'never' is farther than any number.</summary>
    public static double Size(double a, double b) =>
        double.IsInfinity(a) != double.IsInfinity(b) ? double.PositiveInfinity : double.IsInfinity(a) ? 0 : Math.Abs(a - b);

    /// <summary>The value of one input between its middle and an end at which a requirement flips; NaN: it does not flip there.</summary>
    public double FlipSi(int place, double endSi, Func<Outcome, bool> kept)
    {
        double from = builder.Middle[place];
        var ends = Turning.Along(builder, place, [from, endSi]);
        bool middleKept = kept(ends[0]);
        if (kept(ends[1]) == middleKept)
        {
            return double.NaN;
        }

        var (near, far) = Turning.Narrow(builder, place, from, endSi, rounds: 8, run => kept(run) == middleKept);
        return (near + far) / 2;
    }
}
