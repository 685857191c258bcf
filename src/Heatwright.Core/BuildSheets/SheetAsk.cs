using Heatwright.Arrangements;
using Heatwright.Physics;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.BuildSheets;

/// <summary>Prices of one part when building one, ten, a hundred.</summary>
public sealed record PartPrices(double? One, double? Ten, double? Hundred);

/// <summary>The warm-up that the brief promises.</summary>
/// <param name="Words">The promise as a sentence.</param>
/// <param name="WithinS">So many seconds.</param>
public sealed record PromisedWarmUp(string Words, double WithinS);

/// <summary>What a build sheet is made from.</summary>
/// <param name="StudyName">Name of the study.</param>
/// <param name="Arrangement">The arrangement to be built.</param>
/// <param name="Shelf">Parts and findings.</param>
/// <param name="Builder">Its plant.</param>
/// <param name="Work">The work, with target and air.</param>
/// <param name="Safety">What it needs for safety.</param>
/// <param name="State">State of the study.</param>
/// <param name="Seed">Seed of the study.</param>
public sealed record SheetAsk(string StudyName, Arrangement Arrangement, Shelf Shelf, PlantBuilder Builder, WorkPlan Work, SafetyFindings Safety, StudyState State, ulong Seed)
{
    /// <summary>Numbers that no part states.</summary>
    public SheetChoices Choices { get; init; } = SheetChoices.Defaults;

    /// <summary>Series of preferred numbers for the gain resistors.</summary>
    public string Series { get; init; } = "E24";

    /// <summary>The maker's drawer; null: buy from the series.</summary>
    public ResistorDrawer? Drawer { get; init; }

    /// <summary>How the amplifier is wired.</summary>
    public AmplifierForm Form { get; init; }

    /// <summary>Readings of a calibration; null: the chain as designed.</summary>
    public IReadOnlyList<CalibrationPoint>? Readings { get; init; }

    /// <summary>What the readings were taken under; null: as on the prototype.</summary>
    public CalibrationConditions? ReadUnder { get; init; }

    /// <summary>Lag of the probe behind the sensor, s; NaN: found from the readings.</summary>
    public double ProbeLagS { get; init; } = double.NaN;

    /// <summary>All parts of the shelf, to look for what could stand in.</summary>
    public IReadOnlyList<Parts.Part> Alternates { get; init; } = [];

    /// <summary>Prices by part id.</summary>
    public IReadOnlyDictionary<string, PartPrices> Prices { get; init; } = new Dictionary<string, PartPrices>();

    /// <summary>Day, as 2026-11-25; empty: none is written.</summary>
    public string Date { get; init; } = "";

    /// <summary>The warm-up that the brief promises; null: none.</summary>
    public PromisedWarmUp? WarmUp { get; init; }

    /// <summary>A number of the plant; null where this arrangement has none.</summary>
    internal Input? Plant(PlantKey key) => Builder.Place(key) is >= 0 and var place ? new Input(Builder.Inputs[place].Name, Builder.Inputs[place].Value) : null;

    /// <summary>Thermocouple of the sensor, or null where its type is not stated.</summary>
    internal ThermocoupleCurve? Curve => Handbook.Thermocouples.Find(Arrangement.Sensor is { } sensor ? Shelf[sensor].Word("type") : "");

    /// <summary>What the power is for, in one word.</summary>
    internal string LoadWord => Arrangement.Lamp is null ? "heater" : "lamp";

    /// <summary>Set point: the target and a little above, as the prediction aims.</summary>
    internal double SetC => Work.TargetC + Work.AimAboveK;
}
