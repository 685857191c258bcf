using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Pack, protection, fuse, switch, wires, traces, contacts and the controller's supply.</summary>
internal static class PowerSection
{
    private const double DropWarns = 0.05;

    /// <summary>The heater's path at both ends of a charge.</summary>
    public static PowerPoint Point(SheetAsk ask, AssembledTool tool)
    {
        var pack = tool.Pack!;
        int series = ask.Arrangement.Series;
        double OpenAt(double charge) => pack.Cell.OpenV.At(charge) * series;
        double CellAt(double charge) => (pack.Cell.R0Ohm.At(charge) + pack.Cell.R1Ohm.At(charge)) * series / ask.Arrangement.Parallel;
        var open = ask.Plant(PlantKey.OpenVolts)!;
        var cellOhms = ask.Plant(PlantKey.CellOhms)!;
        Estimate Lifted(double charge, string name) => new(OpenAt(charge), Units.Volt, open.Value.In(Units.Volt).Doubts.Times(series), new Origin.WorkedOut(name, [open]));
        var cells = new Estimate(CellAt(1), Units.Ohm, cellOhms.Value.In(Units.Ohm).Doubts.Times(CellAt(1) / cellOhms.Value.Si), new Origin.WorkedOut("instant and short ohms of the cells, full", [cellOhms]));
        var loop = LoopOhm(ask);
        var fullOpen = Lifted(1, "open volts of the cell at full charge times the cells in series");
        var cutoff = Lines.Made(tool.CutoffV, Units.Volt, "cut-off volts of a cell times the cells in series", ask.Shelf.Value(ask.Arrangement.Cell, PartQuantities.CutoffVolts) is { } stated ? [new Input("cut-off volts", stated)] : []);
        var duty = Lines.Made(1, Units.One, "switch on", []);
        if (ask.Arrangement.StepUp is null && ask.Plant(PlantKey.HeaterOhms) is { } heater)
        {
            var all = Propagate.Through((a, b) => a + b, Units.Ohm, "cells and loop in series", new("cells", cells), new("loop", loop));
            var full = PowerDesign.DirectA("volts over all ohms in series", new("open volts, full", fullOpen), heater, new("cells and loop", all));
            var fullV = Propagate.Through((v, i, r) => v - (i * r), Units.Volt, "open volts less what the cells keep", new("open volts, full", fullOpen), new("amps", full), new("cells", cells));
            var empty = PowerDesign.DirectA("cut-off volts over heater and loop", new("cut-off", cutoff), heater, new("loop", loop));
            var openEmpty = Propagate.Through((v, i, r) => v + (i * r), Units.Volt, "cut-off volts and what the cells keep", new("cut-off", cutoff), new("amps", empty), new("cells", cells));
            return new(fullV, cutoff, full, empty, loop, cells, duty, openEmpty);
        }

        var run = PlantRunner.Run(tool.Stuck(), new RunSettings { Instants = [0.5], StepS = ask.Builder.StepS });
        Origin predicted = new Origin.Predicted(ask.Arrangement.Id, ask.State, [.. ask.Builder.Inputs.Select(input => new Input(input.Name, input.Value))]);
        double at = run.Trace.Count > 0 ? run.Trace.PackA[0] : run.HighestA;
        return new(Estimate.Exact(run.Trace.Count > 0 ? run.Trace.TerminalV[0] : OpenAt(1), Units.Volt, predicted), cutoff, Estimate.Exact(at, Units.Ampere, predicted),
            Estimate.Exact(run.HighestA, Units.Ampere, predicted), loop, cells, duty, Estimate.Exact(tool.CutoffV + (run.HighestA * CellAt(1)), Units.Volt, predicted));
    }

    public static SheetSection Of(SheetAsk ask, AssembledTool tool, PowerPoint point)
    {
        var lines = new Lines(ask);
        var c = ask.Choices;
        var a = ask.Arrangement;
        var most = point.MostA;
        Input amps = new("largest pack current", most);
        lines.Say("Pack", $"{a.Series} in series, {a.Parallel} side by side; {Joined(ask)}");
        lines.Add($"Pack volts, full, {ask.LoadWord} on", point.FullV);
        lines.Add("Pack volts at the cut-off", point.EmptyV, ask.Arrangement.Controller is null ? "under load, in the protection" : "under load, in the firmware and in the protection");
        lines.Add($"Pack amps, full, {ask.LoadWord} on", point.FullA);
        lines.Add(ask.Arrangement.Lamp is null ? "Pack amps at the cut-off, heater on" : "Pack amps, the most over the charge", point.EmptyA);
        Guarded(ask, lines, point, amps);
        if (HandSwitch.HasContacts(ask.Shelf[a.Switch]) && ask.Arrangement.Controller is not null)
        {
            Contacts(ask, lines, amps);
        }
        else if (ask.Arrangement.Controller is not null)
        {
            Switched(ask, lines, point, amps);
        }
        else
        {
            lines.Say("Switch", $"'{ask.Shelf[a.Switch].Name}' switches it by hand: it must stand {Lines.N(most.Si)} A of direct current, not only of alternating");
        }

        double leads = (ask.Shelf.Value(a.Leads, PartQuantities.Length)?.Si ?? 0.3) * 1000;
        var (gauge, carries) = PowerDesign.WireFor(most.Si);
        lines.Made($"Pack and {ask.LoadWord} leads, gauge", gauge, Units.One, "thinnest of the trade's table for short silicone leads", [amps], $"carries {Lines.N(carries)} A, {Lines.N(Wire.AreaM2(gauge) * 1e6)} mm²; {Lines.N(1000 * Wire.Ohm(leads / 1000, Wire.AreaM2(gauge), c.Si("handle-air")), "0.#")} mΩ over {Lines.N(leads, "0")} mm", carries < most.Si);
        double copper = c["copper"].Value * 1e-6, rise = c.Si("trace-rise");
        foreach (var (side, inner) in new[] { ("outer", 0.0), ("inner", 1.0) })
        {
            double width = Physics.Trace.WidthM(most.Si, rise, copper, inner);
            lines.Made($"Trace, {side}", width * 1000, Units.Millimetre, "(I/(k·ΔT^0.44))^(1/0.725)/t, k 0.048 outside, 0.024 inside, area in square mil [ipc-2221]", [amps, c["trace-rise"].Input, c["copper"].Input], $"draw {Lines.N(1000 * PowerDesign.DrawnM(width), "0.0")} mm or a plane");
        }

        double via = Physics.Trace.ViaCurrentA(0.3e-3, 20e-6, rise);
        lines.Made("Vias of 0.3 mm in its way", Math.Ceiling(most.Si / via), Units.One, "plated barrel as an inner trace [ipc-2221]", [amps, c["trace-rise"].Input], $"{Lines.N(via)} A each");
        var (drop, corner) = point.WorstDrop();
        lines.Add("Contacts, protection, switch and leads together", point.LoopOhm, $"takes {Lines.N(100 * drop, "0.#")} of 100 of the pack volts, {corner}; more than 5 is a loss to hunt", drop > DropWarns);
        lines.Say("Connectors", most.Si > 3 ? "no pin header, crimp of 2.5 mm or USB-C in the load's path: solder, or 4 mm plugs" : $"crimp of 2.5 mm or USB-C carry it{(ask.Arrangement.Lamp is null ? "; no slide switch in the heater's path" : "")}");
        if (ask.Arrangement.Lamp is not null)
        {
            return new("power", "Power", lines.All);
        }

        Supplied(ask, lines, point);
        double duty = 0.5;
        double farad = Pwm.FaradForRipple(most.Si, duty, c.Si("smooth-frequency"), c.Si("ripple"));
        lines.Made("Ripple capacitor, only if switched so fast", farad * 1e6, SheetChoices.Microfarad, "I·d(1 − d)/(f·ΔV) at half duty", [amps, c["smooth-frequency"].Input, c["ripple"].Input], $"must carry {Lines.N(Pwm.CapacitorA(most.Si, duty))} A; at {Lines.N(c.Si("pwm-frequency"))} Hz none smooths, and none is needed");
        return new("power", "Power", lines.All);
    }

    /// <summary>How the cells are touched: what is wired is what is said.</summary>
    private static string Joined(SheetAsk ask)
    {
        var contacts = ask.Shelf[ask.Arrangement.Contacts];
        return contacts.IsHolder() ? $"in {Lines.N(ask.Arrangement.Pieces(contacts))} × '{contacts.Name}', put in within 50 mV of each other, fuse at the first terminal"
            : "weld or clip tabs, join within 50 mV of each other, fuse at the first tab";
    }

    private static void Guarded(SheetAsk ask, Lines lines, PowerPoint point, Input amps)
    {
        var c = ask.Choices;
        double most = amps.Value.Si;
        if (ask.Arrangement.Supervision is { } board && ask.Shelf.Value(board, PartQuantities.TripCurrent) is { } trip)
        {
            bool near = Protection.MayTrip(most, trip.Si / Protection.HotSwitchFactor);
            lines.Add("Protection opens at", trip.In(Units.Ampere), near ? "warm it opens at a quarter less: too near to the largest current" : "far enough above the largest current, warm too", near);
        }
        else if (ask.Arrangement.Supervision is { } silent)
        {
            lines.Say("Protection", $"the current at which '{ask.Shelf[silent].Name}' opens is not known: state its trip current from its sheet, or turn a load up until it opens; warm it opens at a quarter less, and must not below {Lines.N(most)} A", warns: true);
        }
        else
        {
            lines.Say("Protection", ask.Arrangement.Series > 1 ? $"per-cell supervision for {ask.Arrangement.Series} cells in series is missing" : "none chosen: nothing stops a short or an over-discharge", warns: true);
        }

        double least = Fuse.LeastRatingA(most, c.Si("handle-air"));
        lines.Made("Fuse, slow", PowerDesign.RatingA(least), Units.Ampere, "largest current over 0.75, less in the warm handle; next rating that is made", [amps, c["handle-air"].Input]);
        if (ask.Arrangement.Lamp is not null)
        {
            lines.Made("Fuse must break", Fuse.MustBreakA(point.FullV.Si, Math.Max(1e-3, point.CellOhm.Si)), Units.Ampere, "full volts over the ohms of the cells", [new("cells", point.CellOhm)]);
            return;
        }

        double hotA = most / (1 + ((ask.Plant(PlantKey.HeaterAlpha)?.Value.Si ?? 0) * (ask.SetC - 20)));
        double inrush = Fuse.InrushA2S(most, Math.Min(most, Math.Max(0, hotA)), c.Si("warm-time"));
        bool wears = Fuse.Wears(inrush, c.Si("fuse-melting"));
        lines.Made("Inrush over the hot current, A²s", inrush, Units.One, "(2·I + ΔI/2)·ΔI·τ of the cold heater", [amps, c["warm-time"].Input, c["fuse-melting"].Input], wears ? "wears a fuse of the melting A²s stated: take a slower one" : "less than 0.3 of the fuse's melting A²s", wears);
        lines.Made("Fuse must break", Fuse.MustBreakA(point.FullV.Si, Math.Max(1e-3, point.CellOhm.Si)), Units.Ampere, "full volts over the ohms of the cells", [new("cells", point.CellOhm)]);
    }

    /// <summary>A switch with contacts beside a controller: no gate to drive, ohms and amps all the same.</summary>
    private static void Contacts(SheetAsk ask, Lines lines, Input amps)
    {
        var part = ask.Shelf[ask.Arrangement.Switch];
        bool hand = HandSwitch.IsMovedByHand(part);
        lines.Say("Switch", hand ? $"'{part.Name}' is moved by hand and has no gate: the controller needs a transistor of its own to turn the {ask.LoadWord} on and off" : $"'{part.Name}' has contacts and no gate: drive its coil, and switch it seldom", warns: hand);
        double ohm = ask.Plant(PlantKey.SwitchOhms)!.Value.Si;
        lines.Made("Switch, heat at its contacts", amps.Value.Si * amps.Value.Si * ohm, Units.Watt, "I²·R of its contacts", [amps, ask.Plant(PlantKey.SwitchOhms)!], "contacts must be rated for direct current");
    }

    private static void Switched(SheetAsk ask, Lines lines, PowerPoint point, Input amps)
    {
        var c = ask.Choices;
        double gate = Math.Min(c.Si("gate-drive"), point.EmptyV.Si - c.Si("drop-out"));
        Input[] from = [amps, c["gate-drive"].Input, c["gate-sheet"].Input, c["gate-threshold"].Input, c["switch-thermal"].Input, c["handle-air"].Input];
        lines.Made("Gate volts at the emptiest pack", gate, Units.Volt, "the pin's volts, or what the pack leaves of them", from, gate < c.Si("switch-points-low") ? "less than the lowest the switch is specified for: a threshold is not a drive level" : "", gate < c.Si("switch-points-low"));
        double sheet = ask.Plant(PlantKey.SwitchOhms)!.Value.Si;
        double on = PowerDesign.OnOhm(sheet, c.Si("gate-sheet"), gate, c.Si("gate-threshold"));
        var junction = double.IsFinite(on) ? MosfetLaw.Junction(amps.Value.Si, 1, on, c.Si("switch-thermal") + c["switch-thermal"].PlusMinus, c.Si("handle-air")) : null;
        lines.Made("Switch, ohms at that gate", on * 1000, Units.Milliohm, "sheet ohms scaled by the gate's room over the largest threshold, all of it taken as channel", from);
        lines.Made("Switch, junction at the emptiest pack", junction?.JunctionC ?? double.NaN, Units.Celsius, "[Ta + x(1 − 25k)]/(1 − xk), x = Rθ·I²·R", from, !double.IsFinite(on) ? "the gate volts do not reach the switch's threshold: it never turns on; take a switch specified at this gate, or drive the gate from more volts"
                : junction is null ? "runs away: every degree adds more heat than it sheds; take a better switch or more gate volts" : "", (junction?.JunctionC ?? 999) > 0.8 * c.Si("switch-most"));
        lines.Say("Gate", $"pull-down of 10 to 100 kΩ: the {ask.LoadWord} must be off while the controller resets; 100 Ω in series");
        lines.Made("Reverse polarity: P-channel switch loses", 1000 * SwitchingLoss.ReversePolarityW(amps.Value.Si, 0, Math.Min(on, 1)), Units.Milliwatt, "I²·R of a switch like the heater's", from, $"a Schottky would lose {Lines.N(SwitchingLoss.ReversePolarityW(amps.Value.Si, 0.35, 0))} W");
    }

    private static void Supplied(SheetAsk ask, Lines lines, PowerPoint point)
    {
        var c = ask.Choices;
        Input[] from = [new("amps at the cut-off", point.EmptyA), new("cells", point.CellOhm), c["supply"].Input, c["drop-out"].Input, c["brown-out"].Input];
        double needed = ControllerSupply.NeededOpenV(c.Si("supply"), c.Si("drop-out"), point.EmptyA.Si, point.CellOhm.Si);
        bool short1 = needed > point.OpenEmptyV.Si;
        lines.Made("Controller needs, rested pack", needed, Units.Volt, "supply, drop-out and what the cells keep while the heater is on; tapped at the cells", from, short1 ? "more than the pack has at its cut-off: lower the supply, hold it up by a capacitor, or take a step-up-down regulator" : "the pack has more until its cut-off", short1);
        double brink = ControllerSupply.MostHeaterA(point.OpenEmptyV.Si, c.Si("drop-out"), c.Si("brown-out"), Math.Max(1e-3, point.CellOhm.Si));
        lines.Made("No reset up to", brink, Units.Ampere, "(rested − drop-out − reset level − 0.1 V)/ohms of the cells, at the emptiest pack", from, point.Resets(brink) ? "the heater asks more there: reset, recovery, reset; move the tap or soften the start" : "", point.Resets(brink));
        lines.Made("Hold-up capacitor", 1e6 * ControllerSupply.HoldUpF(ask.Plant(PlantKey.Drain)?.Value.Si ?? 0.012, c.Si("hold-up"), 0.3), SheetChoices.Microfarad, "I·t/ΔV, 0.3 V of droop", [c["hold-up"].Input]);
        double months = ControllerSupply.ShelfLifeS(0.4, (ask.Plant(PlantKey.Capacity)?.Value.Si ?? 3600) * ask.Arrangement.Parallel, c.Si("standby")) / ControllerSupply.MonthS;
        lines.Made("Lies on the shelf, months", months, Units.One, "from 0.4 of the charge, stand-by and self-discharge of 2 % a month", [c["standby"].Input], Awake(ask), months < 6);
    }

    /// <summary>How soon a controller that is left on empties the pack.</summary>
    private static string Awake(SheetAsk ask) => ask.Plant(PlantKey.Drain)?.Value.Si is > 0 and var drain && ask.Plant(PlantKey.Capacity)?.Value.Si is { } capacity
        ? FormattableString.Invariant($"with its controller asleep or switched off; left on, {1000 * drain:0.#} mA empty the pack in {capacity * ask.Arrangement.Parallel / drain / 86_400:0.0} days") : "";

    private static Estimate LoopOhm(SheetAsk ask)
    {
        Input[] parts = [.. new[] { PlantKey.ContactOhms, PlantKey.SupervisionOhms, PlantKey.SwitchOhms, PlantKey.LeadOhms }.Select(ask.Plant).OfType<Input>()];
        int contacts = ask.Arrangement.ContactCount;
        bool hasContacts = ask.Plant(PlantKey.ContactOhms) is not null;
        return Propagate.Through(at => at.Select((ohm, i) => i == 0 && hasContacts ? contacts * ohm : ohm).Sum(), Units.Ohm, $"sum in series, {contacts} contacts", parts);
    }
}
