using Heatwright.Parts;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>Which kinds of bench test are done on which kinds of part. It orders what is offered and warns; it refuses nothing, for a maker may know better.</summary>
public static class SuitedKinds
{
    // By what a card says it is done on; an empty list is any part.
    private static readonly Dictionary<string, PartKind[]> On = new(StringComparer.Ordinal)
    {
        ["a heater"] = [PartKind.Heater],
        ["a heater or a low-ohm part"] = [PartKind.Heater, PartKind.Leads, PartKind.Contacts, PartKind.Switch, PartKind.CutOut],
        ["a working end"] = [PartKind.Heater],
        ["a contact, a holder, a switch or a lead"] = [PartKind.Contacts, PartKind.Switch, PartKind.Leads, PartKind.CutOut, PartKind.Supervision],
        ["a handle or case"] = [PartKind.Handle],
        ["a cell or pack"] = [PartKind.Cell],
        ["a cell"] = [PartKind.Cell],
        ["a cell, pack or supply"] = [PartKind.Cell, PartKind.Charger],
        ["a tool that is off"] = [PartKind.Controller, PartKind.Supervision, PartKind.StepUp, PartKind.Lamp],
        ["a charger with its cell"] = [PartKind.Charger, PartKind.Cell],
        ["a converter"] = [PartKind.StepUp],
        ["a converter with its source"] = [PartKind.StepUp],
        ["a transistor switch"] = [PartKind.Switch],
        ["a lamp with its driver"] = [PartKind.Lamp],
        ["two wires of a tip"] = [PartKind.Sensor, PartKind.Heater],
        ["a thermocouple without a paper"] = [PartKind.Sensor],
        ["a resistance sensor"] = [PartKind.Sensor],
        ["a sensor with its amplifier and converter"] = [PartKind.Sensor, PartKind.Controller],
        ["an amplifier"] = [PartKind.Controller, PartKind.Sensor],
        ["a two- or three-wire part without a paper"] = [],
        ["a new purchase"] = [],
        ["anything"] = [],
    };

    /// <summary>Kinds of part that a test is done on; empty: any.</summary>
    public static IReadOnlyList<PartKind> Of(TrialCard card) => On.TryGetValue(card.About, out var kinds) ? kinds : [];

    /// <summary>True: the test is done on parts of this kind, or on any.</summary>
    public static bool Suits(TrialCard card, PartKind part) => Of(card) is var kinds && (kinds.Count == 0 || kinds.Contains(part));

    /// <summary>The kinds for a part, those for it alone before those for any.</summary>
    public static IReadOnlyList<string> For(PartKind part) =>
        [.. TrialKinds.All.Where(kind => TrialKinds.CardOf(kind) is { } card && Suits(card, part)).OrderBy(kind => Of(TrialKinds.CardOf(kind)!).Count == 0)];

    /// <summary>What to mind where the kind of a trial is not one for its part, and which are; null: it suits.</summary>
    public static string? Doubt(Study study, Trial trial) => TrialKinds.CardOf(trial) is { } card && study.Parts.FirstOrDefault(one => one.Id == trial.Part) is { } part && !Suits(card, part.Kind)
        ? $"'{TrialKinds.Of(trial)}' is done on {card.About}, and '{part.Id}' is {Article(EnterPart.Spoken(part.Kind))}: is another part or another kind meant? For {Article(EnterPart.Spoken(part.Kind))} there are {string.Join(", ", For(part.Kind))}."
        : null;

    private static string Article(string kind) => kind is "leads" or "contacts" || kind.StartsWith("protection", StringComparison.Ordinal) ? kind : $"a {kind}";
}
