using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>What a part is for.</summary>
public enum PartKind
{
    /// <summary>One cell.</summary>
    Cell,
    /// <summary>Per-cell supervision and protection board.</summary>
    Supervision,
    /// <summary>Step-up module.</summary>
    StepUp,
    /// <summary>Heater with what it heats: the working end.</summary>
    Heater,
    /// <summary>Switch in the heater's path.</summary>
    Switch,
    /// <summary>Wires between cells, switch and heater, out and back.</summary>
    Leads,
    /// <summary>What touches the cells: holder springs, clips or welded tabs; ohms of one touch.</summary>
    Contacts,
    /// <summary>Temperature sensor.</summary>
    Sensor,
    /// <summary>Controller board.</summary>
    Controller,
    /// <summary>Charger.</summary>
    Charger,
    /// <summary>Cut-out that works without the controller.</summary>
    CutOut,
    /// <summary>The handle that holds it all.</summary>
    Handle,
    /// <summary>Lamp: a light with the driver that holds its current.</summary>
    Lamp,
}

/// <summary>One value of a part as it was stated, not yet judged.</summary>
/// <param name="Quantity">A name from <see cref="PartQuantities"/>.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="PlusMinus">Half width of the range it may lie in, same unit; 0: none stated, and the class default of its origin holds.</param>
/// <param name="Origin">measured, sheet, claimed, published or assumed.</param>
/// <param name="Text">The seller's words, the sheet and place, the source, or why it is assumed.</param>
public sealed record StatedValue(string Quantity, double Value, string Unit, double PlusMinus, string Origin, string Text)
{
    /// <summary>Which piece of the purchase it was stated of: 1, 2, 3; null: all of them.</summary>
    public int? Sample { get; init; }
}

/// <summary>One piece of a purchase.</summary>
/// <param name="Number">1, 2, 3, as written on it.</param>
/// <param name="State">'sound', 'suspect' or 'destroyed'.</param>
/// <param name="Note">The maker's note.</param>
public sealed record PartSample(int Number, string State, string Note);

/// <summary>Where a part was taken from, and what it was then: nothing follows it by itself.</summary>
/// <param name="Study">Name of the study or shelf.</param>
/// <param name="Part">Its id there.</param>
/// <param name="State">Fingerprint of the part with its trials when both were last the same.</param>
public sealed record Whence(string Study, PartId Part, string State);

/// <summary>A part that is like another one, but for some values: what was learnt of the other holds for it, too.</summary>
/// <param name="Part">The other part, itself like none.</param>
/// <param name="But">Quantities in which it differs; its own stated values hold there.</param>
public sealed record Likeness(PartId Part, IReadOnlyList<string> But);

/// <summary>A bought or salvaged thing on the shelf.</summary>
/// <param name="Id">Unique in the study.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Name">As the maker calls it.</param>
/// <param name="Stated">Everything that was stated about it, claims beside measurements.</param>
public sealed record Part(PartId Id, PartKind Kind, string Name, IReadOnlyList<StatedValue> Stated)
{
    /// <summary>Pieces on hand; 0: to be bought.</summary>
    public int Count { get; init; } = 1;

    /// <summary>'bought', 'salvaged', 'borrowed' or 'destroyed'.</summary>
    public string From { get; init; } = "bought";

    /// <summary>Words that are no numbers: chemistry, what a charger is made for.</summary>
    public IReadOnlyDictionary<string, string> Words { get; init; } = new Dictionary<string, string>();

    /// <summary>The maker's note.</summary>
    public string Note { get; init; } = "";

    /// <summary>Single pieces that were told apart; null: none were.</summary>
    public IReadOnlyList<PartSample>? Samples { get; init; }

    /// <summary>The seller's text as it was pasted; null: none.</summary>
    public string? Listing { get; init; }

    /// <summary>Name of a picture file that lies with the study; null: none.</summary>
    public string? Photo { get; init; }

    /// <summary>The shelf or study it was taken from; null: it began here.</summary>
    public Whence? Whence { get; init; }

    /// <summary>The part it is like but for some values, as a change that was tried and kept makes one; null: it stands for itself.</summary>
    public Likeness? Like { get; init; }

    /// <summary>The part of another maker that this one is to be set beside: of the same kind, with readings of one's own; null: it is no such part.</summary>
    public PartId? TwinOf { get; init; }

    /// <summary>True where it is carried with the tool: everything but a charger, which stands outside unless its words say place=handle.</summary>
    public bool IsCarried() => Kind != PartKind.Charger || Word("place").Contains("handle", StringComparison.OrdinalIgnoreCase);

    /// <summary>True for a holder whose springs touch a cell at both ends; clips and tabs touch it once.</summary>
    public bool IsHolder() => Kind == PartKind.Contacts && Name.Contains("holder", StringComparison.OrdinalIgnoreCase);

    /// <summary>A word, or the alternative where it is not stated.</summary>
    public string Word(string name, string otherwise = "") => Words.GetValueOrDefault(name, otherwise);

    /// <summary>All estimates stated for a quantity, most trustworthy first.</summary>
    public IReadOnlyList<Estimate> All(string quantity) => [.. Stated
        .Where(stated => string.Equals(stated.Quantity, quantity, StringComparison.Ordinal))
        .Select(stated => PartValues.Read(this, stated))
        .OrderByDescending(estimate => PartValues.Trust(estimate.Origin))];

    /// <summary>The most trustworthy estimate stated for a quantity, or null; readings of several pieces stand for any one of them.</summary>
    public Estimate? Best(string quantity) => PartValues.OfSamples(this, quantity) ?? (All(quantity) is [var best, ..] ? best : null);
}
