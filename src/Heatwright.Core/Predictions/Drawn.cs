using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.Predictions;

/// <summary>Draws of all causes of one arrangement, run side by side where the lanes take them, and their curves.</summary>
internal sealed class Drawn
{
    private readonly SwiftTrace trace;

    private Drawn(Outcome[] outcomes, SwiftTrace trace, double[] timesS) => (Outcomes, this.trace, TimesS) = (outcomes, trace, timesS);

    /// <summary>What each draw did, in order of its number.</summary>
    public Outcome[] Outcomes { get; }

    /// <summary>Instants of the curves: those asked for, on the steps of the draws.</summary>
    public double[] TimesS { get; }

    /// <summary>Takes the draws. Same seed gives the same numbers on any number of threads and any width of lanes.</summary>
    public static Drawn Of(PlantBuilder builder, ulong seed, int draws, double[] timesS, Action<int>? progress, CancellationToken cancel)
    {
        var side = new SideBySide(builder.Build(builder.Middle), builder.StepS);
        int[] steps = [.. timesS.Select(time => (int)Math.Round(time / side.StepS)).Distinct()];
        var trace = new SwiftTrace(steps.Length, draws);
        var outcomes = new Outcome[draws];
        int done = 0;
        Parallel.For(0, (draws + side.Width - 1) / side.Width, new ParallelOptions { CancellationToken = cancel }, batch =>
        {
            int from = batch * side.Width;
            int count = Math.Min(side.Width, draws - from);
            side.Run(number => builder.Build(builder.Drawn(new Draw(seed, number))), from, count, steps, trace, outcomes, cancel);
            progress?.Invoke(Interlocked.Add(ref done, count));
        });
        return new(outcomes, trace, [.. steps.Select(step => step * side.StepS)]);
    }

    /// <summary>The range of 90 of 100 draws around a curve.</summary>
    public Band Band(string name, string unit, int curve, double[] middle)
    {
        double[] low = new double[TimesS.Length];
        double[] high = new double[TimesS.Length];
        float[] column = new float[Outcomes.Length];
        for (int i = 0; i < TimesS.Length; i++)
        {
            int alive = 0;
            for (int draw = 0; draw < column.Length; draw++)
            {
                float value = trace.At(draw, curve, i);
                if (float.IsFinite(value))
                {
                    column[alive++] = value;
                }
            }

            // Where most draws have ended there is nothing left to draw a band from.
            if (alive < Math.Max(2, column.Length / 4))
            {
                low[i] = high[i] = double.NaN;
                continue;
            }

            Array.Sort(column, 0, alive);
            low[i] = column[(int)(0.05 * (alive - 1))];
            high[i] = column[(int)Math.Ceiling(0.95 * (alive - 1))];
        }

        return new(name, unit, TimesS, low, middle, high);
    }
}
