using System.Runtime.Intrinsics;

namespace Heatwright.Plant;

/// <summary>Many tools of one shape, run in lanes of 512 bits where the machine has them, else of 256, as every machine of the last decade has. One tool gives the same bits at any width and in any company.</summary>
internal static class SwiftBatch
{
    private static readonly bool HasWide = Vector512.IsHardwareAccelerated;

    /// <summary>Tools side by side in one run.</summary>
    public static int Width { get; } = HasWide ? Vector512<double>.Count : Vector256<double>.Count;

    /// <summary>Runs tools from..from+count of a batch.</summary>
    /// <param name="tools">Makes the tool of a number.</param>
    /// <param name="from">First number, a multiple of the width.</param>
    /// <param name="count">At most as many as there are lanes.</param>
    /// <param name="stepS">Step.</param>
    /// <param name="instantSteps">Steps at whose start the trace is taken.</param>
    /// <param name="trace">Where to; its lanes are numbers.</param>
    /// <param name="results">Of these tools alone, in order.</param>
    /// <param name="cancel">Looked at every some thousand steps.</param>
    public static void Run(Func<int, AssembledTool> tools, int from, int count, double stepS, ReadOnlySpan<int> instantSteps, SwiftTrace? trace, Span<SwiftResult> results, CancellationToken cancel)
    {
        // The last tool fills up what is left; few tools are quicker in narrow lanes.
        var side = new AssembledTool[HasWide && count > Vector256<double>.Count ? Vector512<double>.Count : Vector256<double>.Count];
        bool alike = true;
        SwiftShape first = default;
        for (int i = 0; i < side.Length; i++)
        {
            side[i] = i < count ? tools(from + i) : side[count - 1];
            first = i == 0 ? SwiftPlan.Shape(side[0], stepS) : first;
            alike &= i == 0 || i >= count || SwiftPlan.Shape(side[i], stepS) == first;
        }

        if (alike)
        {
            Run(side, stepS, instantSteps, trace, from, count, cancel).AsSpan(0, count).CopyTo(results);
            return;
        }

        // A draw may leave out what another has, such as a sensor's lag: such a batch is run one by one.
        for (int i = 0; i < count; i++)
        {
            var alone = new AssembledTool[Vector256<double>.Count];
            Array.Fill(alone, side[i]);
            results[i] = Run(alone, stepS, instantSteps, trace, from + i, 1, cancel)[0];
        }
    }

    /// <summary>Steady rises of a table, in the widest lanes that this machine has.</summary>
    public static void Rises(ScreenTable table, Span<double> rises)
    {
        if (HasWide)
        {
            Plant.Wide.SwiftScreen.Rises(table, rises);
        }
        else
        {
            SwiftScreen.Rises(table, rises);
        }
    }

    private static SwiftResult[] Run(AssembledTool[] side, double stepS, ReadOnlySpan<int> instantSteps, SwiftTrace? trace, int from, int count, CancellationToken cancel) =>
        side.Length > Vector256<double>.Count
            ? new Plant.Wide.SwiftRun(side, stepS).Run(instantSteps, trace, from, count, cancel)
            : new SwiftRun(side, stepS).Run(instantSteps, trace, from, count, cancel);
}
