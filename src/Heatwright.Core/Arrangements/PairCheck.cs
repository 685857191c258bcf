using System.Globalization;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Arrangements;

/// <summary>Two parts of an arrangement that do not go together, with the reason and the remedy.</summary>
/// <param name="Refused">True: it cannot work or is dangerous as it stands; false: to be minded.</param>
/// <param name="Problem">What, where, value, limit, next.</param>
public sealed record PairFinding(bool Refused, Problem Problem);

/// <summary>Looks for pairs of parts that do not go together. Refused pairs are not wired; the others are told.</summary>
public static class PairCheck
{
    /// <summary>Sheets give the ohms of a switch from here up, unless it is made for less: common practice, no source.</summary>
    private const double UsualGateV = 4.5;

    /// <summary>All of them; what a part does not state is not judged, but asked for where it decides.</summary>
    public static IReadOnlyList<PairFinding> Of(Arrangement one, Shelf shelf, LoopLook look)
    {
        List<PairFinding> found = [];
        string where = $"arrangement {one.Letter}";
        Charger(one, shelf, where, found);
        Supervision(one, shelf, where, found);
        if (one.Controller is not null)
        {
            Gate(one, shelf, look, where, found); // without a controller the switch is a hand's, and has no gate
        }

        Trip(one, shelf, look, where, found);
        if (one.Lamp is { } lamp)
        {
            Lamp(lamp, shelf, look, where, found);
        }
        else
        {
            Heater(one, shelf, look, where, found);
        }

        Module(one, shelf, look, where, found);
        OnHand(one, shelf, where, found);
        return found;
    }

    private static void OnHand(Arrangement one, Shelf shelf, string where, List<PairFinding> found) =>
        found.AddRange(one.Parts().Select(id => shelf[id]).Where(part => part.Kind == PartKind.Cell && part.Count > 0 && one.Pieces(part) > part.Count).Select(part => new PairFinding(false, new(
            $"'{part.Name}': more are wired than are there.", where, $"{Say(one.Pieces(part))} wired", $"{Say(part.Count)} on hand", "Buy or salvage the rest and measure it, or wire fewer."))));

    private static void Charger(Arrangement one, Shelf shelf, string where, List<PairFinding> found)
    {
        if (one.Charger is not { } charger)
        {
            return;
        }

        string chemistry = Chem(shelf[one.Cell]), made = shelf[charger].Word("chemistry"), name = shelf[charger].Name;
        if (made.Length > 0 && chemistry.Length > 0 && !Same(made, chemistry))
        {
            found.Add(new(true, new($"'{name}' charges another kind of cell.", where, $"made for {made}", chemistry, $"Choose a charger made for {chemistry}; a wrong end voltage over-charges the cells or never fills them.")));
        }

        if (Cells(shelf[charger]) is { } count && count != one.Series)
        {
            found.Add(new(true, new($"'{name}' charges another number of cells.", where, $"made for {Say(count)} in series", $"{Say(one.Series)} in series", $"Choose a charger made for {Cells(one.Series)}, or leave it out with --charger none.")));
        }
    }

    private static void Supervision(Arrangement one, Shelf shelf, string where, List<PairFinding> found)
    {
        if (one.Supervision is not { } board)
        {
            if (one.Series > 1)
            {
                found.Add(new(false, new("A series pack without supervision.", where, $"{Say(one.Series)} cells in series, no board", "each cell watched by itself",
                    $"Add one with --supervision, made for {Say(one.Series)} {(Chem(shelf[one.Cell]) is { Length: > 0 } kind ? $"{kind} " : "")}cells: without it the weakest cell of the string is over-discharged and over-charged.")));
            }

            return;
        }

        string name = shelf[board].Name;
        if (Cells(shelf[board]) is { } count && count != one.Series)
        {
            found.Add(new(true, new($"'{name}' watches another number of cells.", where, $"made for {Say(count)} in series", $"{Say(one.Series)} in series", $"Choose a board made for {Cells(one.Series)}.")));
        }

        string made = shelf[board].Word("chemistry"), chemistry = Chem(shelf[one.Cell]);
        if (made.Length > 0 && chemistry.Length > 0 && !Same(made, chemistry))
        {
            found.Add(new(true, new($"'{name}' watches another kind of cell.", where, $"made for {made}", chemistry, $"Choose a board made for {chemistry}: its volts for full and empty are others.")));
        }
    }

    private static void Gate(Arrangement one, Shelf shelf, LoopLook look, string where, List<PairFinding> found)
    {
        // The gate gets what the pack has: at the end of the charge that is the cut-off.
        double emptyV = look.Empty.PackV?.Si ?? look.Empty.OpenV.Si;
        string name = shelf[one.Switch].Name;
        if (HandSwitch.HasContacts(shelf[one.Switch]))
        {
            if (HandSwitch.IsMovedByHand(shelf[one.Switch]))
            {
                found.Add(new(false, new($"The controller cannot switch anything with '{name}'.", where, "It is moved by a finger", "the heater asks for a transistor or relay that the controller drives",
                    "Choose such a switch. If one sits on the controller's board, state its ohms together with those of these contacts, and say so in the part's note.")));
            }

            return;
        }

        if (shelf.Value(one.Switch, PartQuantities.ThresholdVolts) is { } threshold && threshold.Si >= emptyV)
        {
            found.Add(new(true, new($"'{name}' does not even begin to conduct at the empty pack.", where, Volts(emptyV), $"above its threshold of {Volts(threshold.Si)}, and well above", $"Choose a switch whose ohms are stated at {Volts(emptyV)} or less, or drive its gate from a higher supply.")));
        }
        else if (shelf.Value(one.Switch, PartQuantities.GateVolts) is { } gate)
        {
            if (gate.Si > emptyV)
            {
                found.Add(new(false, new($"'{name}' is not fully on at the empty pack.", where, Volts(emptyV), $"{Volts(gate.Si)}, where its ohms are stated",
                    $"Choose a switch whose ohms are stated at {Volts(emptyV)} or less, drive its gate from a higher supply, or measure its drop at {Volts(emptyV)}: a threshold is not a drive level.")));
            }
        }
        else if (emptyV < UsualGateV)
        {
            found.Add(new(false, new($"The gate volts of '{name}' are not stated.", where, $"{Volts(emptyV)} at the empty pack", $"stated ohms at {Volts(emptyV)} or less", $"Look into its sheet and state 'gate volts', or measure its drop at {Volts(emptyV)}: many need {Volts(UsualGateV)}.")));
        }
    }

    private static void Trip(Arrangement one, Shelf shelf, LoopLook look, string where, List<PairFinding> found)
    {
        if (one.Supervision is not { } board || shelf.Value(board, PartQuantities.TripCurrent) is not { } trip)
        {
            return;
        }

        string name = shelf[board].Name;
        double working = new[] { look.Full, look.Empty }.Max(moment => moment.PackA?.Si ?? 0), inrush = look.Start.PackA?.Si ?? 0;
        if (working > trip.Si)
        {
            found.Add(new(true, new($"'{name}' opens at the working current.", where, Amps(working), $"{Amps(trip.Si)}, where it trips", $"Choose a board that trips above {Amps(working / 0.7)}, {(one.Lamp is null ? "a heater of more ohms" : "a lamp of fewer amps")}, or more cells side by side.")));
        }
        else if (inrush > trip.Si)
        {
            found.Add(new(true, new($"'{name}' opens when the cold heater is switched on.", where, $"{Amps(inrush)} with a full pack and a cold heater", $"{Amps(trip.Si)}, where it trips",
                $"Choose a board that trips above {Amps(inrush / 0.7)}, or start under a duty ceiling with a choke; most boards open within 10 ms.")));
        }
        else if (inrush > 0 && Protection.MayTrip(inrush, trip.Si / Protection.HotSwitchFactor))
        {
            found.Add(new(false, new($"'{name}' may open when it is warm.", where, Amps(inrush), $"0.7 of {Amps(trip.Si / Protection.HotSwitchFactor)}, its trip when warm", "Try it warm with a full pack and a cold load, or choose a board that trips later.")));
        }
    }

    private static void Heater(Arrangement one, Shelf shelf, LoopLook look, string where, List<PairFinding> found)
    {
        string name = shelf[one.Load].Name;
        if (shelf.Value(one.Load, PartQuantities.RatedVolts) is not { } label || look.Full.LoadV is not { } volts || volts.Si <= 1.02 * label.Si)
        {
            return;
        }

        double most = label.Si * label.Si / (volts.Si * volts.Si);
        if (one.DutyCeiling > 1.02 * most)
        {
            found.Add(new(true, new($"'{name}' is driven above its label volts without a duty ceiling that holds it.", where, $"{Volts(volts.Si)} at a duty of {Share(one.DutyCeiling)}", $"{Volts(label.Si)}, or a duty of at most {Share(most)}",
                $"Set --duty {Share(Math.Floor(most * 100) / 100)} and add a cut-out that works without the controller, take fewer cells in series, or a heater of higher volts.")));
        }
        else if (one.CutOut is null)
        {
            found.Add(new(true, new($"'{name}' is held within its label by the firmware alone.", where, $"{Volts(volts.Si)}, duty held to {Share(one.DutyCeiling)}, no cut-out", $"{Volts(label.Si)}, or a cut-out that works without the controller",
                "Add one with --cut-out: a switch fails on, and then nothing holds the duty.")));
        }
        else
        {
            found.Add(new(false, new($"'{name}' stands above its label volts.", where, $"{Volts(volts.Si)} at a duty of {Share(one.DutyCeiling)}", Volts(label.Si), "Keep ceiling and cut-out; try the cut-out once before you trust it.")));
        }
    }

    /// <summary>Volts at the lamp against what its driver needs and stands.</summary>
    private static void Lamp(PartId lamp, Shelf shelf, LoopLook look, string where, List<PairFinding> found)
    {
        string name = shelf[lamp].Name;
        double fullV = look.Full.LoadV?.Si ?? 0, emptyV = look.Empty.LoadV?.Si ?? 0;
        if (shelf.Value(lamp, PartQuantities.MostInputVolts) is { } most && most.Si < Math.Max(fullV, look.Start.LoadV?.Si ?? 0))
        {
            found.Add(new(true, new($"'{name}' does not stand the volts it gets.", where, $"{Volts(fullV)} with a full pack", $"{Volts(most.Si)}, the most at its input", "Take fewer cells in series, set the step-up lower, or choose a lamp for more volts.")));
        }

        if (look.Full.LoadV is null || shelf.Value(lamp, PartQuantities.LeastInputVolts) is not { } least)
        {
            return;
        }

        if (fullV < least.Si)
        {
            found.Add(new(true, new($"'{name}' never gives its full light.", where, $"{Volts(fullV)} with a full pack", $"{Volts(least.Si)}, the least at which its driver holds the current", "Take more cells in series, a step-up between them, or a lamp for fewer volts.")));
        }
        else if (look.Empty.LoadV is not null && emptyV < least.Si)
        {
            found.Add(new(false, new($"'{name}' grows weaker before the pack is empty.", where, $"{Volts(emptyV)} at the lamp when the pack is at its cut-off", $"{Volts(least.Si)}, the least at which its driver holds the current",
                "Count on the full light only down to there, take more cells in series, or a step-up between them.")));
        }
    }

    private static void Module(Arrangement one, Shelf shelf, LoopLook look, string where, List<PairFinding> found)
    {
        if (one.StepUp is not { } module)
        {
            return;
        }

        string name = shelf[module].Name;
        double fullV = look.Full.OpenV.Si;
        if (shelf.Value(module, PartQuantities.SetVolts) is { } set && set.Si < fullV)
        {
            found.Add(new(false, new($"'{name}' cannot step down.", where, $"{Volts(fullV)} from the full pack", $"{Volts(set.Si)}, what it is set to", "Take fewer cells in series, or set it higher: until the pack falls below, it only passes its input through.")));
        }

        if (shelf.Value(module, PartQuantities.MostInputVolts) is { } most && most.Si < fullV)
        {
            found.Add(new(true, new($"'{name}' does not stand the full pack.", where, Volts(fullV), $"{Volts(most.Si)} at its input", "Take fewer cells in series, or a module for a higher input.")));
        }
    }

    private static int? Cells(Part part) => int.TryParse(part.Word("cells"), NumberStyles.None, CultureInfo.InvariantCulture, out int count) ? count : null;

    private static string Chem(Part cell) => cell.Word("chemistry");

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    private static string Volts(double volts) => $"{volts.ToString("0.0#", CultureInfo.InvariantCulture)} V";

    private static string Amps(double amps) => $"{amps.ToString("0.0#", CultureInfo.InvariantCulture)} A";

    private static string Share(double duty) => duty.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Cells(int series) => series == 1 ? "one cell" : $"{Say(series)} cells in series";

    private static string Say(int count) => count.ToString(CultureInfo.InvariantCulture);
}
