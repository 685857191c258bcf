using System.Text.Json.Serialization;
using Heatwright.Plant;

namespace Heatwright.Verdicts;

/// <summary>What a requirement can speak of.</summary>
public enum RequirementQuantity
{
    /// <summary>Time from switching on to the target temperature at the working end.</summary>
    WarmUpTime,
    /// <summary>Pieces of work done in a row on one charge.</summary>
    PiecesPerCharge,
    /// <summary>Highest temperature of the grip while working.</summary>
    GripTemperature,
    /// <summary>Highest temperature of a cell while working.</summary>
    CellTemperature,
    /// <summary>Inside diameter of the handle that cells and electronics need.</summary>
    InsideDiameter,
    /// <summary>Time to charge the pack with the arrangement's charger.</summary>
    ChargeTime,
    /// <summary>Price of all parts.</summary>
    PartsCost,
    /// <summary>Time until the pack is at its cut-off.</summary>
    RunTime,
    /// <summary>Highest temperature of the working end.</summary>
    EndTemperature,
    /// <summary>How far under its target the working end falls at work, kelvin.</summary>
    Steadiness,
    /// <summary>Time back to the target after one piece of work.</summary>
    RecoveryTime,
    /// <summary>Pieces of work in an hour.</summary>
    WorkRate,
    /// <summary>Highest temperature of the case.</summary>
    CaseTemperature,
    /// <summary>Mass of all parts.</summary>
    Mass,
    /// <summary>Length of handle and working end.</summary>
    ToolLength,
    /// <summary>Price of all parts of one tool when ten are built.</summary>
    CostAtTen,
    /// <summary>Price of all parts of one tool when a hundred are built.</summary>
    CostAtHundred,
    /// <summary>Heat that the charger gives off.</summary>
    ChargerHeat,
    /// <summary>Highest current of one cell.</summary>
    CellCurrent,
    /// <summary>Times the protection opens on one charge.</summary>
    ProtectionTrips,
    /// <summary>Time until the electronics alone have emptied a full pack.</summary>
    StandByTime,
    /// <summary>Temperature of the working end with the switch stuck on.</summary>
    StuckSwitchTemperature,
    /// <summary>Lowest pack volts that the controller sees under load.</summary>
    ControllerVolts,
    /// <summary>Time from full cells until a lamp's driver can no longer hold its current.</summary>
    FullLightTime,
}

/// <summary>One line of the brief.</summary>
/// <param name="Id">Unique in the brief.</param>
/// <param name="Text">The promise in a plain sentence.</param>
/// <param name="Quantity">What it speaks of.</param>
/// <param name="Limit">In <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit symbol; empty: a count.</param>
/// <param name="AtMost">True: the value may be at most the limit; false: at least.</param>
/// <param name="Must">True: a must; false: a want.</param>
public sealed record Requirement(string Id, string Text, RequirementQuantity Quantity, double Limit, string Unit, bool AtMost, bool Must)
{
    /// <summary>Under what it holds, in words.</summary>
    public string Condition { get; init; } = "";

    /// <summary>Weight of a want.</summary>
    public double Weight { get; init; } = 1;
}

/// <summary>The work: a target temperature and pieces that come at regular times.</summary>
/// <param name="TargetC">Temperature at which the tool is ready.</param>
/// <param name="EveryS">Time from piece to piece.</param>
/// <param name="ForS">Time a piece may last.</param>
/// <param name="FirstAfterS">First piece so long after the target is reached.</param>
/// <param name="AboveC">The work takes heat only from what is hotter.</param>
/// <param name="Contact">Conductance into the work, W/K, with half width.</param>
/// <param name="ContactPlusMinus">Half width of it.</param>
/// <param name="NeedJ">Heat that a piece takes.</param>
/// <param name="NeedPlusMinusJ">Half width of it.</param>
/// <param name="Why">Where contact and need come from.</param>
public sealed record Duty(double TargetC, double EveryS, double ForS, double FirstAfterS, double AboveC, double Contact, double ContactPlusMinus, double NeedJ, double NeedPlusMinusJ, string Why)
{
    /// <summary>Why the work is as it is, as long as nobody stated it.</summary>
    public const string NothingSaid = "no work is stated yet";

    /// <summary>No hot work: no target that could be reached, no piece that ever comes. Never written to a file.</summary>
    public static readonly Duty None = new(double.NaN, double.PositiveInfinity, 0, 0, double.NaN, 0, 0, 0, 0, "no hot work");

    /// <summary>What the tool does one after another; null: it warms up and works until its charge is over.</summary>
    public IReadOnlyList<WorkBlock>? Blocks { get; init; }

    /// <summary>How often the blocks are gone through; null: until the charge is over.</summary>
    public int? Rounds { get; init; }

    /// <summary>How far above the target the controller is to hold, K; null: as much as suits a small hot tool.</summary>
    public double? AimAboveK { get; init; }
}

/// <summary>One block of a duty.</summary>
/// <param name="Does">What the tool does.</param>
public sealed record WorkBlock(DutyKind Does)
{
    /// <summary>How long, s; null: work as long as its pieces take, a warm-up until the target is reached.</summary>
    public double? LastsS { get; init; }

    /// <summary>Pieces of a work block.</summary>
    public int? Pieces { get; init; }

    /// <summary>Temperature of stand-by, °C; null: heater off.</summary>
    public double? HoldsC { get; init; }
}

/// <summary>What the tool must do.</summary>
/// <param name="Promise">In one sentence.</param>
/// <param name="WorkingEnd">What the maker calls the hot end: blade, wire, band.</param>
/// <param name="Piece">What the maker calls one piece of work: cut, stroke.</param>
/// <param name="AirC">Air around the tool, °C.</param>
/// <param name="Requirements">The lines.</param>
public sealed record Brief(string Promise, string WorkingEnd, string Piece, double AirC, IReadOnlyList<Requirement> Requirements)
{
    /// <summary>The hot work; null: a tool that does none, such as a lamp.</summary>
    public Duty? Duty { get; init; }

    /// <summary>The hot work, or none.</summary>
    [JsonIgnore]
    public Duty Work => Duty ?? Duty.None;
}
