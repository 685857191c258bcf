using Heatwright.Arrangements;
using Heatwright.Predictions;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>One number of the plant, the value at which a requirement flips, and how far that is from what is believed.</summary>
/// <param name="Name">The number, with its part.</param>
/// <param name="Now">What is believed, SI.</param>
/// <param name="Flip">Where it flips, SI.</param>
/// <param name="Words">As a maker says it: 'ohms of the leads at most 23 mΩ (now 41 mΩ)'.</param>
/// <param name="Believable">True: the flip lies inside the range the readings leave open.</param>
public sealed record FlipPoint(string Name, double Now, double Flip, string Words, bool Believable);

/// <summary>'What would have to be true': a requirement turned round, one number at a time, by predicting again.</summary>
public static class WouldHaveToBeTrue
{
    /// <summary>Numbers are moved from a tenth to ten times what is believed: farther is another part.</summary>
    private static readonly double[] Factors = [0.7, 1.4, 0.3, 3, 0.1, 10];

    /// <summary>Two standard doubts hold 95 of 100 normal values.</summary>
    private const double Believed = 2;

    /// <summary>Every single number that flips the requirement, nearest first in its own proportion.</summary>
    /// <param name="builder">The plant.</param>
    /// <param name="line">The requirement.</param>
    /// <param name="quantity">Its SI value from a run; null: the requirement is not told by a run.</param>
    public static IReadOnlyList<FlipPoint> Of(PlantBuilder builder, Requirement line, Func<Outcome, double>? quantity)
    {
        if (quantity is null)
        {
            return [];
        }

        double limit = (Units.Find(line.Unit) ?? Units.One).ToSi(line.Limit);
        double[] middle = builder.Middle;
        bool Kept(Outcome run) => line.AtMost ? quantity(run) <= limit : quantity(run) >= limit;
        bool now = Kept(Predict.Once(builder, middle));
        return [.. Enumerable.Range(0, middle.Length).Where(i => middle[i] > 0).AsParallel().AsOrdered().Select(i => Flip(builder, middle, i, now, Kept)).OfType<FlipPoint>()
            .OrderBy(flip => Math.Abs(Math.Log(flip.Flip / flip.Now)))];
    }

    private static FlipPoint? Flip(PlantBuilder builder, double[] middle, int place, bool now, Func<Outcome, bool> kept)
    {
        var reached = Turning.Along(builder, place, Factors.Select(factor => factor * middle[place]));
        for (int i = 0; i < Factors.Length; i++)
        {
            if (kept(reached[i]) == now)
            {
                continue;
            }

            double to = Turning.Narrow(builder, place, middle[place], Factors[i] * middle[place], rounds: 6, run => kept(run) == now, byRatio: true).To;

            // The side on which it has changed, so that the value that is named does what is said of it.
            var input = builder.Inputs[place];
            string side = to < middle[place] ? "at most" : "at least";
            return new(input.Name, middle[place], to, $"{input.Name} {side} {Sentences.Input(input, to)} (now {Sentences.Input(input, middle[place])}, {input.Value.Origin.Word})",
                Math.Abs(to - middle[place]) <= Believed * input.Value.SiDoubt);
        }

        return null;
    }
}
