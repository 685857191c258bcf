using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>The names by which a maker calls the kinds of bench test that a study holds.</summary>
public static class TrialKinds
{
    // Kinds whose runs of one part are fitted together, and whose findings a prediction is made of.
    private static readonly Dictionary<string, TrialKind> Together = new(StringComparer.Ordinal)
    {
        ["discharge"] = TrialKind.Discharge,
        ["pulse"] = TrialKind.Pulse,
        ["cold-ohms"] = TrialKind.ColdOhms,
        ["hot-ohms"] = TrialKind.HotOhms,
        ["warm-up"] = TrialKind.WarmUp,
        ["converter-points"] = TrialKind.ModulePoints,
        ["two-point-drop"] = TrialKind.TwoPointDrop,
    };

    // Another name of a kind: as its card is called.
    private static readonly Dictionary<string, string> Also = new(StringComparer.Ordinal) { ["capacity"] = "discharge" };

    // Kinds that share a card with another one, or that a prediction rests on.
    private static readonly Dictionary<string, string> Which = new(StringComparer.Ordinal)
    {
        ["discharge"] = "for a prediction: with a pulse run it tells how the volts fall",
        ["hot-ohms"] = "for a prediction: with the cold ohms it tells how they grow with heat",
        ["volts-amps"] = "for ohms and watts of one run by itself",
    };

    /// <summary>All names, those that predictions rest on first.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Together.Keys.Concat(TrialCard.All.Select(card => card.Name)).Distinct(StringComparer.Ordinal).Where(name => !Also.ContainsKey(name))];

    /// <summary>The name of a kind with the other one that it goes by: 'discharge (capacity)'.</summary>
    public static string Spoken(string kind) => OtherName(kind) is { } other ? $"{kind} ({other})" : kind;

    /// <summary>The columns that a run of a kind needs, as a study takes them.</summary>
    public static IReadOnlyList<string> Reads(string kind) => Find(kind) is var (found, card) ? StudyFile.RunFromLog.Usual(new(new("t"), found, new("p"), []) { Card = card }) : [];

    /// <summary>The name by which a study calls what a card does: as it was asked for, where that is one.</summary>
    public static string Named(TrialCard card, string asked) => asked.Trim().ToLowerInvariant().Replace(' ', '-') is var plain && All.Contains(plain) ? plain : Also.GetValueOrDefault(card.Name, card.Name);

    /// <summary>The other name that a kind goes by; null: it has one name.</summary>
    public static string? OtherName(string kind) => Also.FirstOrDefault(pair => pair.Value == kind).Key;

    /// <summary>The kind of this name, with its card where it has one; null: there is none.</summary>
    public static (TrialKind Kind, string? Card)? Find(string name)
    {
        if (OwnTrial.Find(name) is { } own)
        {
            return (TrialKind.Bench, own.Name);
        }

        string plain = name.Trim().ToLowerInvariant().Replace(' ', '-');
        plain = Also.GetValueOrDefault(plain, plain);
        return Together.TryGetValue(plain, out var kind) ? (kind, null) : TrialCard.Find(plain) is { } card ? (TrialKind.Bench, card.Name) : null;
    }

    /// <summary>The name of a trial's kind.</summary>
    public static string Of(Trial trial) => trial.IsDischarge() ? "discharge" : trial.Card ?? Together.First(pair => pair.Value == trial.Kind).Key;

    /// <summary>The card that tells how a trial is done; null: there is none of its name.</summary>
    public static TrialCard? CardOf(Trial trial) => TrialCard.Of(trial);

    /// <summary>The same by the name of a kind, as 'trial add' takes it.</summary>
    public static TrialCard? CardOf(string kind) => Find(kind) is { } found ? TrialCard.Of(found.Kind, found.Card) : null;

    /// <summary>What a kind tells; where another kind reads the same, when to take which.</summary>
    public static string Says(string kind) => $"{CardOf(kind)?.Purpose}{(Which.TryGetValue(kind, out string? clause) ? $" Take it {clause}." : "")}";

    /// <summary>The unit a setting of a trial's runs is typed and shown in.</summary>
    public static Unit SettingUnit(Trial trial, string name) => name switch
    {
        "sample" or "touches" => Units.One,
        "air" or "at" => Units.Celsius,
        "leads" => Units.Ohm,
        "set" => Units.Volt,
        "taken before" => Units.AmpereHour,
        _ => Units.Find(CardOf(trial)?.Settings.FirstOrDefault(setting => setting.Name == name)?.Unit ?? "") ?? Units.One,
    };

    /// <summary>What a setting means and its unit, to stand behind its name.</summary>
    public static string Meaning(Trial trial, string name) => CardOf(trial)?.Settings.FirstOrDefault(setting => setting.Name == name) is { } known
        ? $": {known.Meaning}{(known.Unit.Length > 0 ? $", {known.Unit}" : "")}" : name switch { "sample" => ": which piece of the purchase", "touches" => ": how many touches lie between", "air" => ": air, °C", "at" => ": temperature of the part, °C", "leads" => ": ohms of the leads alone, Ω", "set" => ": volts it is set to, V", "taken before" => ": charge taken since it was full, Ah", _ => "" };

    /// <summary>Settings of a run as they are typed: 'air=24 °C'; they are kept in SI, levels in °C.</summary>
    public static IReadOnlyList<string> Held(Trial trial, Run run) =>
    [
        .. run.Settings.Keys.Order(StringComparer.Ordinal).Select(name => $"{name.Replace(' ', '-')}={Held(trial, run, name)}"),
    ];

    /// <summary>One setting of a run as it is typed: '24 °C', '0.2 Ω ± 0.1 Ω'.</summary>
    public static string Held(Trial trial, Run run, string setting)
    {
        var unit = SettingUnit(trial, setting);
        double kept = run.Settings[setting];
        string value = $"{Display.Significant(unit.IsLevel ? kept : unit.FromSi(kept), 6)}{Display.Behind(unit)}";
        return run.SettingsPlusMinus.GetValueOrDefault(setting) is > 0 and var plusMinus ? $"{value} ± {Display.Significant(plusMinus / unit.Factor, 6)}{(unit.IsLevel ? " K" : Display.Behind(unit))}" : value;
    }
}
