using System.Globalization;
using System.Text.Json.Serialization;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Arrangements;

/// <summary>Parts of the shelf wired into a tool.</summary>
/// <param name="Id">Unique in the study.</param>
/// <param name="Letter">A, B, C: how pictures name it.</param>
/// <param name="Name">As the maker calls it.</param>
/// <param name="Cell">The cells.</param>
/// <param name="Series">Cells in series.</param>
/// <param name="Parallel">Strings side by side.</param>
/// <param name="Switch">Switch in the load's path.</param>
/// <param name="Leads">Wires, out and back.</param>
/// <param name="Contacts">What touches the cells.</param>
/// <param name="ContactCount">How many touches the current passes.</param>
/// <param name="Handle">Handle.</param>
public sealed record Arrangement(
    ArrangementId Id, string Letter, string Name, PartId Cell, int Series, int Parallel, PartId Switch, PartId Leads, PartId Contacts, int ContactCount, PartId Handle)
{
    /// <summary>Heater and working end; null: the load is a lamp.</summary>
    public PartId? Heater { get; init; }

    /// <summary>Lamp: a light with its driver; null: the load is a heater. Exactly one of the two is there.</summary>
    public PartId? Lamp { get; init; }

    /// <summary>Sensor; null: none, as beside a lamp.</summary>
    public PartId? Sensor { get; init; }

    /// <summary>Controller board; null: none, as beside a lamp that a switch alone turns on.</summary>
    public PartId? Controller { get; init; }

    /// <summary>Per-cell supervision board; null: none.</summary>
    public PartId? Supervision { get; init; }

    /// <summary>Step-up module; null: pack straight on the load.</summary>
    public PartId? StepUp { get; init; }

    /// <summary>Charger; null: none chosen.</summary>
    public PartId? Charger { get; init; }

    /// <summary>Cut-out that works without the controller; null: none.</summary>
    public PartId? CutOut { get; init; }

    /// <summary>Largest duty the firmware allows; of a lamp, the duty it is dimmed to.</summary>
    public double DutyCeiling { get; init; } = 0.95;

    /// <summary>Gain of the controller, W/K; null: by the usual tuning.</summary>
    public double? GainWPerK { get; init; }

    /// <summary>Reset time of the controller: in so long its integral adds what the gain gives at once; null: by the usual tuning.</summary>
    public double? ResetS { get; init; }

    /// <summary>Places that nobody chose and that were filled so that the loop is whole; null: all were chosen.</summary>
    public IReadOnlyList<string>? Assumed { get; init; }

    /// <summary>What the power is for: the heater, or the lamp.</summary>
    [JsonIgnore]
    public PartId Load => Lamp ?? Heater ?? throw new InvalidOperationException($"Arrangement {Letter} has neither heater nor lamp, which the reader of study files reports before.");

    /// <summary>All parts it uses, each once, in the order of the current.</summary>
    public IEnumerable<PartId> Parts() => new[] { Cell, Contacts, Supervision, StepUp, Switch, Leads, Heater, Lamp, CutOut, Sensor, Controller, Charger, Handle }
        .Where(part => part is not null).Select(part => part!.Value).Distinct();

    /// <summary>Pieces that it takes beyond those on hand. Tabs and clips that are there at all are there in any number: they are counted by the strip.</summary>
    /// <param name="part">One of its parts.</param>
    public int Lacking(Part part)
    {
        ArgumentNullException.ThrowIfNull(part);
        int there = part.From == "destroyed" ? 0 : part.Count;
        bool byTheStrip = part.Id == Contacts && there > 0 && !part.IsHolder();
        return byTheStrip ? 0 : Math.Max(0, Pieces(part) - there);
    }

    /// <summary>Boards that lie in the handle: a charger is one of them only where its words say so.</summary>
    /// <param name="shelf">Its parts.</param>
    public IEnumerable<PartId> Boards(Shelf shelf)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        return new[] { Supervision, StepUp, Controller, Charger }.OfType<PartId>().Where(id => shelf[id].IsCarried());
    }

    /// <summary>How many pieces of a part it takes: cells, and contacts by their touches; a holder has a touch at either end of each cell that it is made for.</summary>
    /// <param name="part">One of its parts.</param>
    public int Pieces(Part part)
    {
        ArgumentNullException.ThrowIfNull(part);
        int touches = part.IsHolder() ? 2 * HeldCells(part) : 1;
        return part.Id == Cell ? Series * Parallel : part.Id == Contacts ? Math.Max(1, (ContactCount + touches - 1) / touches) : 1;
    }

    /// <summary>Cells that one holder is made for, as its word 'cells' says; else one.</summary>
    /// <param name="holder">A holder.</param>
    public static int HeldCells(Part holder)
    {
        ArgumentNullException.ThrowIfNull(holder);
        return int.TryParse(holder.Word("cells"), NumberStyles.None, CultureInfo.InvariantCulture, out int cells) ? Math.Max(1, cells) : 1;
    }
}
