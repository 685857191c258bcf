using Heatwright.Quantities;

namespace Heatwright.Arrangements;

/// <summary>A tool of which every number is stated: no part, no reading, no doubt. So a published problem can be posed exactly.</summary>
/// <param name="Id">Unique among arrangements and stated plants of the study.</param>
/// <param name="Letter">A, B, C: how pictures and commands name it.</param>
/// <param name="Name">In words.</param>
/// <param name="Pack">Cells and all ohms up to the path.</param>
/// <param name="Heat">Lumps, links and losses.</param>
public sealed record StatedPlant(ArrangementId Id, string Letter, string Name, StatedPack Pack, StatedHeat Heat)
{
    /// <summary>What the power is for; null only where it charges.</summary>
    public StatedLoad? Load { get; init; }

    /// <summary>How the duty is set; null only where it charges.</summary>
    public StatedControl? Control { get; init; }

    /// <summary>A charger in place of path, load and control; null: the tool is used.</summary>
    public StatedCharger? Charger { get; init; }

    /// <summary>Where the numbers come from.</summary>
    public string Note { get; init; } = "";

    /// <summary>Between pack and load; null: pack straight on the load.</summary>
    public StatedPath? Path { get; init; }

    /// <summary>The work; null: the tool only holds its temperature.</summary>
    public StatedWork? Work { get; init; }

    /// <summary>What ends a run.</summary>
    public StatedEnd End { get; init; } = new();

    /// <summary>Temperatures whose first crossing is an event.</summary>
    public IReadOnlyList<StatedMark> Marks { get; init; } = [];
}

/// <summary>Pieces of work at regular times.</summary>
/// <param name="ContactWPerK">Conductance into the work, W/K.</param>
/// <param name="EveryS">From start to start, s.</param>
/// <param name="ForS">How long each lasts, s.</param>
public sealed record StatedWork(double ContactWPerK, double EveryS, double ForS)
{
    /// <summary>The work takes heat only while the working node is hotter than this, °C, and in proportion to how much hotter; null: than the air.</summary>
    public double? AboveC { get; init; }

    /// <summary>Start of the first piece, s.</summary>
    public double FirstS { get; init; }

    /// <summary>The first piece starts so long after the target was first reached, s, instead of at a clock time.</summary>
    public double? AfterReadyS { get; init; }

    /// <summary>Heat that a piece needs to be done, J; 0: done when its time is over.</summary>
    public double NeedJ { get; init; }

    /// <summary>Stop after so many pieces; null: no limit.</summary>
    public int? Count { get; init; }
}

/// <summary>What ends a run, and what is looked for on the way.</summary>
public sealed record StatedEnd
{
    /// <summary>Pack volts, at the cells and under load, at which the run ends; 0: none.</summary>
    public double CutoffV { get; init; }

    /// <summary>Volts of any one cell, under load, at which the run ends; 0: none.</summary>
    public double CellCutoffV { get; init; }

    /// <summary>Volts of any one cell at which a charge ends; null: none.</summary>
    public double? CellMostV { get; init; }

    /// <summary>Pack volts under load at which the controller resets; 0: never.</summary>
    public double BrownOutV { get; init; }

    /// <summary>The cut-offs are looked at only while the load is on.</summary>
    public bool OnlyWhileOn { get; init; }

    /// <summary>The run ends at this time at the latest, s.</summary>
    public double AtMostS { get; init; } = 36_000;

    /// <summary>The working node is ready at this temperature, °C; null: no such event.</summary>
    public double? ReadyC { get; init; }
}

/// <summary>A temperature whose first crossing is an event.</summary>
/// <param name="Name">Name of the event.</param>
/// <param name="At">A node's name, or "sensor".</param>
/// <param name="C">Temperature, °C.</param>
public sealed record StatedMark(string Name, string At, double C)
{
    /// <summary>True: crossed on the way down.</summary>
    public bool Falling { get; init; }
}
