using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>One place of an arrangement that a part goes into.</summary>
/// <param name="Name">As typed: step-up.</param>
/// <param name="Words">In trade words.</param>
/// <param name="Kind">Kind of part that goes there.</param>
/// <param name="Class">Class that stands in where nothing is chosen; empty: the place may stay empty; null: it must be chosen.</param>
/// <param name="Of">The part that is there.</param>
/// <param name="With">The same arrangement with another part there; none where the place may stay empty.</param>
public sealed record Place(string Name, string Words, PartKind Kind, string? Class, Func<Arrangement, PartId?> Of, Func<Arrangement, PartId?, Arrangement> With)
{
    /// <summary>True: only a heater needs it, a lamp does without.</summary>
    public bool HotOnly { get; init; }

    /// <summary>True: there are arrangements that work without it.</summary>
    public bool MayBeEmpty => Class == "" || HotOnly;
}

/// <summary>All places of an arrangement, in the order of the current.</summary>
public static class Places
{
    /// <summary>The places.</summary>
    public static IReadOnlyList<Place> All { get; } =
    [
        new("cell", "cells", PartKind.Cell, "energy 18650", one => one.Cell, (one, part) => one with { Cell = part!.Value }),
        new("contacts", "contacts", PartKind.Contacts, "spring holder", one => one.Contacts, (one, part) => one with { Contacts = part!.Value }),
        new("supervision", "protection and supervision", PartKind.Supervision, "", one => one.Supervision, (one, part) => one with { Supervision = part }),
        new("step-up", "step-up module", PartKind.StepUp, "", one => one.StepUp, (one, part) => one with { StepUp = part }),
        new("switch", "switch", PartKind.Switch, "small transistor switch", one => one.Switch, (one, part) => one with { Switch = part!.Value }),
        new("leads", "leads", PartKind.Leads, "short silicone leads", one => one.Leads, (one, part) => one with { Leads = part!.Value }),
        new("heater", "heater and working end", PartKind.Heater, null, one => one.Heater, (one, part) => one with { Heater = part }) { HotOnly = true },
        new("lamp", "lamp in place of a heater", PartKind.Lamp, "", one => one.Lamp, (one, part) => one with { Lamp = part }),
        new("cut-out", "cut-out that works by itself", PartKind.CutOut, "", one => one.CutOut, (one, part) => one with { CutOut = part }),
        new("sensor", "sensor", PartKind.Sensor, "bare thermocouple bead", one => one.Sensor, (one, part) => one with { Sensor = part }) { HotOnly = true },
        new("controller", "controller", PartKind.Controller, "small controller board", one => one.Controller, (one, part) => one with { Controller = part }) { HotOnly = true },
        new("charger", "charger", PartKind.Charger, "", one => one.Charger, (one, part) => one with { Charger = part }),
        new("handle", "handle", PartKind.Handle, "hand-sized plastic grip", one => one.Handle, (one, part) => one with { Handle = part!.Value }),
    ];

    /// <summary>Empties a place.</summary>
    public const string None = "none";
}
