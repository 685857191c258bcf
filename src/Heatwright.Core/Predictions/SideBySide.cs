using Heatwright.Arrangements;
using Heatwright.Plant;

namespace Heatwright.Predictions;

/// <summary>Runs tools of one arrangement in the machine's lanes where these take them, else by the stepper.</summary>
internal sealed class SideBySide
{
    /// <summary>Draws differ from the middle: its step leaves them twice the room.</summary>
    private const double Room = 2;

    private readonly AssembledTool middle;
    private readonly bool swift;
    private readonly double plainS;

    /// <param name="middle">The arrangement with every cause at its middle.</param>
    /// <param name="plainS">Step of the stepper, for what the lanes do not take, s.</param>
    public SideBySide(AssembledTool middle, double plainS)
    {
        (this.middle, this.plainS) = (middle, plainS);
        double? stepS = SwiftPlan.Refuses(middle) is null ? StepFor(middle) : null;
        swift = stepS is not null;
        StepS = stepS ?? plainS;
    }

    /// <summary>Step of all runs, s.</summary>
    public double StepS { get; }

    /// <summary>Tools that run as one.</summary>
    public int Width => swift ? SwiftBatch.Width : 1;

    /// <summary>Tools with the numbers from one on, as many as run as one.</summary>
    /// <param name="tool">Tool of a number.</param>
    /// <param name="from">First number.</param>
    /// <param name="count">How many, at most the width.</param>
    /// <param name="instantSteps">Steps at whose start the trace is taken, rising.</param>
    /// <param name="trace">Where to.</param>
    /// <param name="outcomes">Where to; by number.</param>
    /// <param name="cancel">Cancels on the way.</param>
    public void Run(Func<int, AssembledTool> tool, int from, int count, int[] instantSteps, SwiftTrace trace, Outcome[] outcomes, CancellationToken cancel)
    {
        AssembledTool[] tools = [.. Enumerable.Range(from, count).Select(tool)];
        if (swift && tools.All(one => SwiftPlan.Refuses(one) is null && SwiftPlan.Gentle(one, 2 * StepS)))
        {
            var results = new SwiftResult[count];
            SwiftBatch.Run(number => tools[number - from], from, count, StepS, instantSteps, trace, results, cancel);
            for (int i = 0; i < count; i++)
            {
                outcomes[from + i] = Outcome.Of(results[i], middle.Network.AmbientK);
            }

            return;
        }

        double[] instants = [.. instantSteps.Select(step => step * StepS)];
        for (int i = from; i < from + count; i++)
        {
            var run = PlantRunner.Run(tools[i - from], new RunSettings { Instants = instants, StepS = plainS, Cancel = cancel });
            outcomes[i] = Outcome.Of(run);
            trace.Take(run.Trace, i);
        }
    }

    /// <summary>The longest step, a control period or a half of it and so on, at which the work is gentle enough; null: none.</summary>
    private static double? StepFor(AssembledTool tool)
    {
        for (double step = PlantBuilder.PeriodS; step > PlantBuilder.PeriodS / 40; step /= 2)
        {
            if (SwiftPlan.Gentle(tool, 2 * Room * step))
            {
                return step;
            }
        }

        return null;
    }
}
