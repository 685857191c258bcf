using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Quantities;
using MathNet.Numerics.Statistics;

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
    public static Drawn Of(PlantBuilder builder, ulong seed, DrawRounds rounds, double[] timesS, Action<int>? progress, CancellationToken cancel)
    {
        var side = new SideBySide(builder.Build(builder.Middle), builder.StepS);
        int most = side.Width > 1 ? rounds.Most : Math.Min(rounds.Most, rounds.MostOneByOne);
        int[] steps = [.. timesS.Select(time => (int)Math.Round(time / side.StepS)).Distinct()];
        var trace = new SwiftTrace(steps.Length, most);
        var outcomes = new Outcome[most];
        int done = 0;
        int taken = 0;
        for (int until = Math.Min(rounds.First, most); ; until = Math.Min(2 * until, most))
        {
            Parallel.For(taken / side.Width, (until + side.Width - 1) / side.Width, new ParallelOptions { CancellationToken = cancel }, batch =>
            {
                int from = batch * side.Width;
                int count = Math.Min(side.Width, most - from);
                side.Run(number => builder.Build(builder.Drawn(new Draw(seed, number))), from, count, steps, trace, outcomes, cancel);
                progress?.Invoke(Interlocked.Add(ref done, count));
            });
            taken = until;
            if (taken == most || rounds.Settled(outcomes.AsSpan(0, taken)))
            {
                return new(outcomes[..taken], trace, [.. steps.Select(step => step * side.StepS)]);
            }
        }
    }

    /// <summary>The range of 90 of 100 draws around each curve.</summary>
    /// <param name="curves">Name, unit, place in the trace and middle of each.</param>
    public Band[] Bands(params (string Name, string Unit, int Curve, double[] Middle)[] curves) => Bands(trace, Outcomes.Length, TimesS, curves);

    /// <summary>The range of 90 of 100 of so many tools around each of their curves.</summary>
    internal static Band[] Bands(SwiftTrace trace, int draws, double[] timesS, (string Name, string Unit, int Curve, double[] Middle)[] curves)
    {
        double[][] low = [.. curves.Select(_ => new double[timesS.Length])];
        double[][] high = [.. curves.Select(_ => new double[timesS.Length])];

        // Instant by instant, all curves at once, as they lie in memory.
        Parallel.For(0, timesS.Length, () => new float[draws], (instant, _, column) =>
        {
            for (int i = 0; i < curves.Length; i++)
            {
                trace.Column(curves[i].Curve, instant, column);
                (low[i][instant], high[i][instant]) = Middle90(column);
            }

            return column;
        }, _ => { });
        return [.. curves.Select((curve, i) => new Band(curve.Name, curve.Unit, timesS, low[i], curve.Middle, high[i]))];
    }

    /// <summary>Low and high end of the middle 90 of 100 of what is left; what has ended stands at the end of the order, where it is in nobody's way.</summary>
    private static (double Low, double High) Middle90(float[] column)
    {
        int alive = 0;
        foreach (ref float value in column.AsSpan())
        {
            alive += float.IsFinite(value) ? 1 : 0;
            value = float.IsFinite(value) ? value : float.PositiveInfinity;
        }

        // Where most draws have ended there is nothing left to draw a band from.
        return alive < Math.Max(2, column.Length / 4)
            ? (double.NaN, double.NaN)
            : (ArrayStatistics.OrderStatisticInplace(column, (int)(0.05 * (alive - 1)) + 1), ArrayStatistics.OrderStatisticInplace(column, (int)Math.Ceiling(0.95 * (alive - 1)) + 1));
    }
}
