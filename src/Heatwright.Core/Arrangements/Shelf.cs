using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Arrangements;

/// <summary>The shelf with what its trials told: the most trustworthy number for any quantity of any part.</summary>
public sealed class Shelf
{
    private readonly Dictionary<PartId, Part> parts;
    private readonly Dictionary<PartId, PartFindings> findings;

    /// <summary>Parts and the findings of those that were tried.</summary>
    public Shelf(IReadOnlyList<Part> parts, IReadOnlyList<PartFindings> findings)
    {
        this.parts = parts.ToDictionary(part => part.Id);
        this.findings = findings.ToDictionary(found => found.Part);
    }

    /// <summary>The same findings over other parts.</summary>
    public Shelf With(IReadOnlyList<Part> others) => new(others, [.. findings.Values]);

    /// <summary>The part with this name; throws where it is absent, which the reader of study files reports before.</summary>
    public Part this[PartId id] => parts[id];

    /// <summary>All that lies there.</summary>
    public IEnumerable<Part> Parts => parts.Values;

    /// <summary>True where the shelf has the part.</summary>
    public bool Has(PartId id) => parts.ContainsKey(id);

    /// <summary>What the trials of a part told, or null.</summary>
    public PartFindings? Found(PartId id) => findings.GetValueOrDefault(id);

    /// <summary>What trials told of how a cell's volts fall, its own or those of the part it is like; null: nothing.</summary>
    public PartFindings? FoundOfCell(PartId id) => Found(id) is { Cell: not null } own ? own
        : parts.TryGetValue(id, out var part) && part.Like is { } like && Found(like.Part) is { Cell: not null } other ? other : null;

    /// <summary>A finding before a stated value; among stated values the most trustworthy; null where nothing is known.</summary>
    /// <remarks>Of a part that is like another one, the other's finding holds, but for what differs.</remarks>
    public Estimate? Value(PartId id, string quantity) => Found(id)?.Find(quantity)
        ?? (parts.TryGetValue(id, out var part) ? (part.Like is { } like && !like.But.Contains(quantity) ? Found(like.Part)?.Find(quantity) : null) ?? part.Best(quantity) : null);

    /// <summary>Current that a charger gives: as stated, or what its label calls its rated current; null: neither.</summary>
    public Estimate? ChargeCurrent(PartId charger) => Value(charger, PartQuantities.ChargeCurrent) ?? Value(charger, PartQuantities.RatedCurrent);

    /// <summary>Mean input current at which a module limits itself: as found or stated, else what the class shows, and above what it was seen to hold.</summary>
    public Estimate ModuleLimit(PartId stepUp)
    {
        const double Low = 3, High = 12;
        double held = Value(stepUp, PartQuantities.HeldCurrent)?.Si ?? 0;
        return ValueOr(stepUp, PartQuantities.LimitCurrent, Math.Max(Low, held), Math.Max(High, 1.5 * held), Units.Ampere,
            held > Low ? $"it held its output at {Display.Significant(held, 3)} A; label current is switch current at best, common practice, no source" : "label current is switch current at best, common practice, no source");
    }

    /// <summary>The number, or a class value with its reason where nothing is known.</summary>
    /// <param name="id">Part.</param>
    /// <param name="quantity">Quantity.</param>
    /// <param name="low">Lower end of what the class shows, SI.</param>
    /// <param name="high">Upper end, SI.</param>
    /// <param name="unit">SI unit.</param>
    /// <param name="why">Where the class range comes from.</param>
    public Estimate ValueOr(PartId id, string quantity, double low, double high, Unit unit, string why) => Value(id, quantity)
        ?? Estimate.Within((low + high) / 2, (high - low) / 2, unit, $"{id}: {quantity}, assumed", CauseGroup.Assumption, new Origin.Assumed(why));
}
