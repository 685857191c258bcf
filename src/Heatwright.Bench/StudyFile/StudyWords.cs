using System.Collections.Frozen;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.StudyFile;

/// <summary>The closed lists of a study: which words may stand where, and what a value of that word is measured in.</summary>
internal static class StudyWords
{
    /// <summary>Where a stated value may come from.</summary>
    public static readonly string[] Origins = ["measured", "sheet", "claimed", "published", "assumed"];

    /// <summary>How a part came to the shelf.</summary>
    public static readonly string[] From = ["bought", "salvaged", "borrowed", "destroyed"];

    /// <summary>How a piece of a purchase is.</summary>
    public static readonly string[] SampleStates = ["sound", "suspect", "destroyed"];

    /// <summary>Setting of any run: which piece of the purchase was tried.</summary>
    public const string Sample = "sample";

    /// <summary>Unit, or any unit that measures the same, of what can be stated of a part.</summary>
    public static readonly FrozenDictionary<string, Unit> Quantities = PartUnits.Expected.ToFrozenDictionary(pair => pair.Key, pair => pair.Value.Bare, StringComparer.Ordinal);

    /// <summary>Unit of what a run's columns hold.</summary>
    public static readonly FrozenDictionary<string, Unit> Columns = new Dictionary<string, Unit>
    {
        ["time"] = Units.Second,
        ["volts"] = Units.Volt,
        ["amps"] = Units.Ampere,
        ["watts"] = Units.Watt,
        ["degrees"] = Units.Celsius,
        ["grip degrees"] = Units.Celsius,
        ["cell degrees"] = Units.Celsius,
        ["ohms"] = Units.Ohm,
        ["drop"] = Units.Volt,
        ["volts in"] = Units.Volt,
        ["amps in"] = Units.Ampere,
        ["volts out"] = Units.Volt,
        ["amps out"] = Units.Ampere,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Columns that a run must have, columns that it may have, and settings that it may have.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="named">Columns that a run has or shall have: where one of them stands for others, those need not be there. Null: none is known yet.</param>
    public static (string[] Needed, string[] Perhaps, string[] Settings) Of(Trial trial, IEnumerable<string>? named = null) => trial.Kind != TrialKind.Bench ? WithRecipe(Instead(Of(trial.Kind), [.. named ?? []]), TrialCard.Of(trial))
        : TrialCard.Find(trial.Card ?? "") is { } card
        ? ([.. card.Columns.Where(column => column.Needed).Select(column => column.Name)], [.. card.Columns.Where(column => !column.Needed).Select(column => column.Name)], [.. card.Settings.Select(setting => setting.Name), Sample])
        : ([], [], []);

    /// <summary>Watts stand for volts and amps where they may be there, and either of those is not.</summary>
    private static (string[] Needed, string[] Perhaps, string[] Settings) Instead((string[] Needed, string[] Perhaps, string[] Settings) own, string[] named)
    {
        bool stands = own.Perhaps.Contains(Watts) && named.Contains(Watts) && !Pair.All(named.Contains);
        return !stands ? own : own with { Needed = [.. own.Needed.Except(Pair), Watts], Perhaps = [.. Pair, .. own.Perhaps.Where(name => name != Watts)] };
    }

    private const string Watts = "watts";

    private static readonly string[] Pair = ["volts", "amps"];

    /// <summary>What the recipe of a trial names is taken by every run of it, however its findings are fitted.</summary>
    private static (string[] Needed, string[] Perhaps, string[] Settings) WithRecipe((string[] Needed, string[] Perhaps, string[] Settings) own, TrialCard? card) =>
        own with { Settings = [.. own.Settings.Union((card?.Settings ?? []).Select(setting => setting.Name), StringComparer.Ordinal)] };

    /// <summary>Unit of a column of a trial, or any that measures the same; null: it holds words, or is not known.</summary>
    public static Unit? UnitOf(Trial trial, string column) => trial.Kind != TrialKind.Bench ? Columns.GetValueOrDefault(column)
        : TrialCard.Find(trial.Card ?? "")?.Column(column) is { IsWord: false } found ? Units.Find(found.Unit) : null;

    /// <summary>True where a column of a trial holds words.</summary>
    public static bool IsWord(Trial trial, string column) => trial.Kind == TrialKind.Bench && TrialCard.Find(trial.Card ?? "")?.Column(column) is { IsWord: true };

    private static (string[] Needed, string[] Perhaps, string[] Settings) Of(TrialKind kind) => kind switch
    {
        TrialKind.Discharge or TrialKind.Pulse => (["time", "volts", "amps"], ["cell degrees"], ["air", "taken before", Sample]),
        TrialKind.ColdOhms => (["ohms"], [], ["leads", "at", Sample]),
        TrialKind.HotOhms => (["volts", "amps"], ["degrees"], [Sample]),
        TrialKind.WarmUp => (["time", "volts", "amps", "degrees"], [Watts, "grip degrees"], ["air", Sample]),
        TrialKind.ModulePoints => (["volts in", "amps in", "volts out", "amps out"], [], ["set", Sample]),
        TrialKind.TwoPointDrop => (["amps", "drop"], [], ["touches", Sample]),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "A trial without its columns."),
    };

    /// <summary>Unit, or any that measures the same, of what a requirement limits.</summary>
    public static Unit Of(RequirementQuantity quantity) => quantity switch
    {
        RequirementQuantity.WarmUpTime or RequirementQuantity.ChargeTime or RequirementQuantity.RunTime
            or RequirementQuantity.FullLightTime or RequirementQuantity.RecoveryTime or RequirementQuantity.StandByTime => Units.Second,
        RequirementQuantity.PiecesPerCharge or RequirementQuantity.ProtectionTrips => Units.One,
        RequirementQuantity.GripTemperature or RequirementQuantity.CellTemperature or RequirementQuantity.CaseTemperature
            or RequirementQuantity.EndTemperature or RequirementQuantity.StuckSwitchTemperature => Units.Celsius,
        RequirementQuantity.Steadiness => Units.Kelvin,
        RequirementQuantity.WorkRate => Units.PerHour,
        RequirementQuantity.InsideDiameter or RequirementQuantity.ToolLength => Units.Metre,
        RequirementQuantity.Mass => Units.Kilogram,
        RequirementQuantity.ChargerHeat => Units.Watt,
        RequirementQuantity.CellCurrent => Units.Ampere,
        RequirementQuantity.ControllerVolts => Units.Volt,
        RequirementQuantity.PartsCost or RequirementQuantity.CostAtTen or RequirementQuantity.CostAtHundred => Units.Money,
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "A requirement without its unit."),
    };
}
