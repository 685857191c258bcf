using Heatwright.Quantities;

namespace Heatwright.Arrangements;

/// <summary>Parts of the shelf wired into a tool.</summary>
/// <param name="Id">Unique in the study.</param>
/// <param name="Letter">A, B, C: how pictures name it.</param>
/// <param name="Name">As the maker calls it.</param>
/// <param name="Cell">The cells.</param>
/// <param name="Series">Cells in series.</param>
/// <param name="Parallel">Strings side by side.</param>
/// <param name="Heater">Heater and working end.</param>
/// <param name="Switch">Switch in the heater's path.</param>
/// <param name="Leads">Wires, out and back.</param>
/// <param name="Contacts">What touches the cells.</param>
/// <param name="ContactCount">How many touches the current passes.</param>
/// <param name="Sensor">Sensor.</param>
/// <param name="Controller">Controller board.</param>
/// <param name="Handle">Handle.</param>
public sealed record Arrangement(
    ArrangementId Id, string Letter, string Name, PartId Cell, int Series, int Parallel, PartId Heater, PartId Switch, PartId Leads,
    PartId Contacts, int ContactCount, PartId Sensor, PartId Controller, PartId Handle)
{
    /// <summary>Per-cell supervision board; null: none.</summary>
    public PartId? Supervision { get; init; }

    /// <summary>Step-up module; null: pack straight on the heater.</summary>
    public PartId? StepUp { get; init; }

    /// <summary>Charger; null: none chosen.</summary>
    public PartId? Charger { get; init; }

    /// <summary>Cut-out that works without the controller; null: none.</summary>
    public PartId? CutOut { get; init; }

    /// <summary>Largest duty the firmware allows.</summary>
    public double DutyCeiling { get; init; } = 0.95;

    /// <summary>Places that nobody chose and that were filled so that the loop is whole; null: all were chosen.</summary>
    public IReadOnlyList<string>? Assumed { get; init; }

    /// <summary>All parts it uses, each once, in the order of the current.</summary>
    public IEnumerable<PartId> Parts() => new[] { Cell, Contacts, Supervision, StepUp, Switch, Leads, Heater, CutOut, Sensor, Controller, Charger, Handle }
        .Where(part => part is not null).Select(part => part!.Value).Distinct();
}
