namespace Heatwright.Plant;

/// <summary>How a run is taken.</summary>
public sealed record RunSettings
{
    /// <summary>Instants at which the trace is taken, s, rising; empty: none.</summary>
    public double[] Instants { get; init; } = [];

    /// <summary>Longest step, s.</summary>
    public double StepS { get; init; } = 1;

    /// <summary>Also tells starts and ends of work, and when the controller has and has not all it asks for.</summary>
    public bool EveryEvent { get; init; }

    /// <summary>Cancels a run between two steps.</summary>
    public CancellationToken Cancel { get; init; }
}

/// <summary>Runs an assembled tool from its start to whatever ends it.</summary>
public static class PlantRunner
{
    /// <summary>One run. Same tool and settings give the same bits.</summary>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static PlantRun Run(AssembledTool tool, RunSettings settings) => new Course(tool, settings).Run();
}
