namespace Heatwright.Plant;

/// <summary>A temperature whose first crossing is an event.</summary>
/// <param name="Name">Name of the event.</param>
/// <param name="Node">Node; −1: the sensor.</param>
/// <param name="Kelvin">Temperature.</param>
/// <param name="Falling">Crossed on the way down.</param>
public sealed record HeatMark(string Name, int Node, double Kelvin, bool Falling = false);

/// <summary>An assembled tool on bare numbers: everything the stepper needs and nothing it must look up.</summary>
/// <param name="Pack">Null where a recorded power drives the network.</param>
/// <param name="Path">Between pack and load.</param>
/// <param name="Load">What the power is for.</param>
/// <param name="Network">Lumps and losses.</param>
/// <param name="Controller">How the duty is set.</param>
public sealed record AssembledTool(PackModel? Pack, PathModel Path, LoadModel Load, ThermalNetwork Network, ControllerModel Controller)
{
    /// <summary>The work, or null for a tool that only holds its temperature.</summary>
    public WorkPattern? Work { get; init; }

    /// <summary>The way back to the target is timed after so many pieces; 0: not. The lanes leave that to the stepper.</summary>
    public int TimesRecovery { get; init; }

    /// <summary>Blocks of off, warm-up, hold, work and stand-by; null: it heats and works all the time.</summary>
    public DutyPattern? Duty { get; init; }

    /// <summary>On-state pack volts at which the run ends, V.</summary>
    public double CutoffV { get; init; }

    /// <summary>The cut-off is looked at only while the load is on.</summary>
    public bool CutoffOnlyWhileOn { get; init; }

    /// <summary>The run ends at this time at the latest, s.</summary>
    public double MaxS { get; init; } = 36_000;

    /// <summary>Drain while the load is on, A, taken at the cells on top of the load: controller, indicators.</summary>
    public double DrainOnA { get; init; }

    /// <summary>Drain while the load is off, A: controller, indicators, a module left on.</summary>
    public double DrainOffA { get; init; }

    /// <summary>On-state pack volts at which the controller resets, V; 0: never. It starts again, resets again, and so on.</summary>
    public double BrownOutV { get; init; }

    /// <summary>Wrong on purpose: load power from the mean volts of the pulses, d²·I²·R. So that a test can show what this common error costs.</summary>
    internal bool TakesMeanVoltsForPower { get; init; }

    /// <summary>A charger in place of path and load; null: the tool is used.</summary>
    public ChargerModel? Charger { get; init; }

    /// <summary>Temperatures whose first crossing is an event.</summary>
    public IReadOnlyList<HeatMark> Marks { get; init; } = [];

    /// <summary>The same tool with its switch stuck: no control, no work, no pauses.</summary>
    /// <param name="duty">Of the load, 0 to 1.</param>
    public AssembledTool Stuck(double duty = 1) => this with { Controller = new ControllerModel.Fixed(duty), Work = null, Duty = null };

    /// <summary>Temperature of the working node whose first reaching is an event, K; NaN: none.</summary>
    public double TargetK { get; init; } = double.NaN;
}
