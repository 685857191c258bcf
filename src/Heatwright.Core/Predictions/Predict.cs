using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.Predictions;

/// <summary>Predicts an arrangement over a whole charge: the middle run, and as many draws of all causes as asked.</summary>
public static class Predict
{
    /// <summary>Instants of the pictures.</summary>
    private const int PictureInstants = 600;

    /// <summary>Instants of the bands; bands are smooth, so fewer will do.</summary>
    private const int BandInstants = 150;

    /// <summary>The prediction. Same seed gives the same numbers on any number of threads.</summary>
    /// <param name="builder">Plant of the arrangement.</param>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="draws">How many draws.</param>
    /// <param name="progress">Told the number of draws done.</param>
    /// <param name="cancel">Cancels between two steps.</param>
    public static Prediction Charge(PlantBuilder builder, Arrangement arrangement, ulong seed, int draws, Action<int>? progress = null, CancellationToken cancel = default)
    {
        var first = Run(builder.Build(builder.Middle), [], cancel);
        double endS = Math.Max(60, first.RunTimeS);
        var middle = Run(builder.Build(builder.Middle), Instants(endS, PictureInstants), cancel);
        double[] bandTimes = Instants(1.1 * endS, BandInstants);
        var outcomes = new Outcome[draws];
        var traces = new Trace[draws];
        int done = 0;
        Parallel.For(0, draws, new ParallelOptions { CancellationToken = cancel }, number =>
        {
            var run = Run(builder.Build(builder.Drawn(new Draw(seed, number))), bandTimes, cancel);
            outcomes[number] = Outcome.Of(run);
            traces[number] = run.Trace;
            progress?.Invoke(Interlocked.Increment(ref done));
        });
        var onBandTimes = Run(builder.Build(builder.Middle), bandTimes, cancel).Trace;
        return new(arrangement, builder, middle, outcomes,
        [
            BandOf("working end", "°C", bandTimes, onBandTimes, traces, trace => trace.NodesK[0], -273.15),
            BandOf("pack", "V", bandTimes, onBandTimes, traces, trace => trace.TerminalV, 0),
            BandOf("heater", "W", bandTimes, onBandTimes, traces, trace => trace.LoadW, 0),
            BandOf("grip", "°C", bandTimes, onBandTimes, traces, trace => trace.NodesK[1], -273.15),
            BandOf("cells", "°C", bandTimes, onBandTimes, traces, trace => trace.NodesK[2], -273.15),
        ]);
    }

    /// <summary>One run of the plant with chosen values, without trace.</summary>
    public static Outcome Once(PlantBuilder builder, double[] si) => Outcome.Of(Run(builder.Build(si), [], default));

    private static PlantRun Run(AssembledTool tool, double[] instants, CancellationToken cancel) =>
        PlantRunner.Run(tool, new RunSettings { Instants = instants, StepS = PlantBuilder.PeriodS, Cancel = cancel });

    /// <summary>Closer together at the start, where the tool warms up, than later.</summary>
    private static double[] Instants(double endS, int count)
    {
        double[] times = new double[count];
        for (int i = 0; i < count; i++)
        {
            double share = i / (count - 1.0);
            times[i] = endS * ((0.25 * share) + (0.75 * share * share));
        }

        return times;
    }

    private static Band BandOf(string name, string unit, double[] times, Trace middle, Trace[] draws, Func<Trace, double[]> curve, double shift)
    {
        double[] low = new double[times.Length];
        double[] high = new double[times.Length];
        double[] column = new double[draws.Length];
        for (int i = 0; i < times.Length; i++)
        {
            int alive = 0;
            foreach (var trace in draws)
            {
                double value = curve(trace)[i];
                if (double.IsFinite(value))
                {
                    column[alive++] = value;
                }
            }

            // Where most draws have ended there is nothing left to draw a band from.
            if (alive < Math.Max(2, draws.Length / 4))
            {
                low[i] = high[i] = double.NaN;
                continue;
            }

            Array.Sort(column, 0, alive);
            low[i] = column[(int)(0.05 * (alive - 1))] + shift;
            high[i] = column[(int)Math.Ceiling(0.95 * (alive - 1))] + shift;
        }

        return new(name, unit, times, low, [.. curve(middle).Select(value => value + shift)], high);
    }
}
