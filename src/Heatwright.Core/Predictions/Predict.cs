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
    public static Prediction Charge(PlantBuilder builder, Arrangement arrangement, ulong seed, int draws, Action<int>? progress = null, CancellationToken cancel = default) =>
        Charge(builder, arrangement, seed, DrawRounds.Of(draws), progress, cancel);

    /// <summary>The prediction with as many draws as are needed.</summary>
    /// <param name="builder">Plant of the arrangement.</param>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="draws">When there are enough.</param>
    /// <param name="progress">Told the number of draws done.</param>
    /// <param name="cancel">Cancels between two steps.</param>
    public static Prediction Charge(PlantBuilder builder, Arrangement arrangement, ulong seed, DrawRounds draws, Action<int>? progress = null, CancellationToken cancel = default)
    {
        var middle = Middle(builder, cancel);
        double[] bandTimes = Instants(1.1 * Math.Max(60, middle.RunTimeS), BandInstants);
        var drawn = Drawn.Of(builder, seed, draws, bandTimes, progress, cancel);
        var onBandTimes = Run(builder, builder.Middle, drawn.TimesS, cancel).Trace;
        return new(arrangement, builder, middle, drawn.Outcomes, drawn.Bands(
            (arrangement.Lamp is null ? "working end" : "lamp head", "°C", SwiftTrace.NodeAt(0), [.. onBandTimes.NodesK[0].Select(Celsius)]),
            ("pack", "V", SwiftTrace.PackVAt, onBandTimes.TerminalV),
            (arrangement.Lamp is null ? "heater" : "lamp", "W", SwiftTrace.LoadWAt, onBandTimes.LoadW),
            ("grip", "°C", SwiftTrace.NodeAt(1), [.. onBandTimes.NodesK[1].Select(Celsius)]),
            ("cells", "°C", SwiftTrace.NodeAt(2), [.. onBandTimes.NodesK[2].Select(Celsius)])));
    }

    /// <summary>The run with every cause at its middle, traced for pictures: all of a prediction that needs no draws.</summary>
    public static PlantRun Middle(PlantBuilder builder, CancellationToken cancel = default)
    {
        // How long it takes has to be known before instants are chosen; the lanes tell that in a fraction of the time, to some millionths.
        double runTimeS = Once(builder, builder.Middle).RunTimeS;
        return Run(builder, builder.Middle, OnSteps(Instants(Math.Max(60, runTimeS), PictureInstants), builder.StepS), cancel);
    }

    /// <summary>Instants moved to where a step begins anyway: between, each would cut one in two, with matrices of their own.</summary>
    private static double[] OnSteps(double[] instants, double stepS) => [.. instants.Select(at => stepS * Math.Round(at / stepS)).Distinct()];

    /// <summary>One run of the plant with chosen values, without trace.</summary>
    public static Outcome Once(PlantBuilder builder, double[] si) => Many(builder, [si])[0];

    /// <summary>Runs of the plant with chosen values, side by side and without trace.</summary>
    /// <param name="builder">Plant of the arrangement.</param>
    /// <param name="values">SI values of each run, in the order of the builder's inputs.</param>
    /// <param name="cancel">Cancels on the way.</param>
    public static Outcome[] Many(PlantBuilder builder, IReadOnlyList<double[]> values, CancellationToken cancel = default)
    {
        var side = new SideBySide(builder.Build(values.Count == 1 ? values[0] : builder.Middle), builder.StepS);
        var outcomes = new Outcome[values.Count];
        var trace = new SwiftTrace(0, values.Count);
        Parallel.For(0, (values.Count + side.Width - 1) / side.Width, new ParallelOptions { CancellationToken = cancel }, batch =>
            side.Run(number => builder.Build(values[number]), batch * side.Width, Math.Min(side.Width, values.Count - (batch * side.Width)), [], trace, outcomes, cancel));
        return outcomes;
    }

    private static double Celsius(double kelvin) => kelvin - 273.15;

    private static PlantRun Run(PlantBuilder builder, double[] si, double[] instants, CancellationToken cancel) =>
        PlantRunner.Run(builder.Build(si), new RunSettings { Instants = instants, StepS = builder.StepS, Cancel = cancel });

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
}
