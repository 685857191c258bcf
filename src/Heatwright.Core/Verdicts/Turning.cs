using Heatwright.Arrangements;
using Heatwright.Predictions;

namespace Heatwright.Verdicts;

/// <summary>Where along one input of a plant an answer turns, four runs at a time.</summary>
internal static class Turning
{
    private const int Points = 4;

    /// <summary>What the tool does with one input moved to each of some values.</summary>
    public static Outcome[] Along(PlantBuilder builder, int place, IEnumerable<double> values)
    {
        double[] middle = builder.Middle;
        return Predict.Many(builder, [.. values.Select(value => Moved(middle, place, value))]);
    }

    /// <summary>The same values but for one.</summary>
    public static double[] Moved(double[] middle, int place, double value)
    {
        double[] moved = [.. middle];
        moved[place] = value;
        return moved;
    }

    /// <summary>Narrows a stretch whose ends give different answers, each round to a fifth.</summary>
    /// <param name="builder">The plant.</param>
    /// <param name="place">Place of the input.</param>
    /// <param name="from">End with the first answer.</param>
    /// <param name="to">End with the other.</param>
    /// <param name="rounds">How often.</param>
    /// <param name="asFrom">True where a run answers as at the first end.</param>
    /// <param name="byRatio">Divides by equal ratios, not equal steps; both ends above 0.</param>
    public static (double From, double To) Narrow(PlantBuilder builder, int place, double from, double to, int rounds, Func<Outcome, bool> asFrom, bool byRatio = false)
    {
        for (int round = 0; round < rounds; round++)
        {
            double[] at = [.. Enumerable.Range(1, Points).Select(i => (double)i / (Points + 1)).Select(share => byRatio ? from * Math.Pow(to / from, share) : from + (share * (to - from)))];
            int turned = Array.FindIndex(Along(builder, place, at), run => !asFrom(run));
            (from, to) = turned < 0 ? (at[^1], to) : (turned == 0 ? from : at[turned - 1], at[turned]);
        }

        return (from, to);
    }
}
