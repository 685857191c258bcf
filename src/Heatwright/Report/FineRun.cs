using System.Runtime.CompilerServices;
using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Predictions;

namespace Heatwright.Report;

/// <summary>The middle run once more, looked at often enough to see every piece of work.</summary>
internal static class FineRun
{
    /// <summary>Looks in one piece of work with its pause.</summary>
    private const int LooksEach = 20;

    private const int MostLooks = 40_000;

    private static readonly ConditionalWeakTable<Prediction, Trace> Looked = [];

    /// <summary>Values at even instants. The traced run of a prediction looks so rarely late in a long charge that its looks fall in step with the work.</summary>
    public static Trace Of(Prediction prediction, double everyS) => Looked.GetValue(prediction, one => Look(one, everyS));

    private static Trace Look(Prediction prediction, double everyS)
    {
        double endS = prediction.Middle.RunTimeS;
        int looks = (int)Math.Clamp(LooksEach * endS / everyS, 600, MostLooks);
        double[] instants = [.. Enumerable.Range(0, looks + 1).Select(i => endS * i / looks)];
        return PlantRunner.Run(prediction.Builder.Build(prediction.Builder.Middle), new RunSettings { Instants = instants, StepS = PlantBuilder.PeriodS }).Trace;
    }
}
