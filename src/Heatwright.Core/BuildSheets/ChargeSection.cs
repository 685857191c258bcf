using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Plant;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.BuildSheets;

/// <summary>Charging: current, time, heat, set-resistor, working while charging.</summary>
internal static class ChargeSection
{
    public static SheetSection Of(SheetAsk ask, AssembledTool tool)
    {
        var (a, c) = (ask.Arrangement, ask.Choices);
        var lines = new Lines(ask);
        bool suits = SafetyCheck.ChargerSuits(a, ask.Shelf);
        bool supervised = a.Series == 1 || a.Supervision is not null;
        if (!suits || !supervised)
        {
            lines.Say("Do not charge this pack yet", a.Series > 1
                ? $"{a.Series} cells in series need per-cell supervision{(supervised ? "" : " (missing)")} and a charger made for them{(suits ? "" : " (missing)")}; never a pack-level source alone"
                : "no charger on the shelf is made for this cell", warns: true);
        }

        double capacityAs = ask.Plant(PlantKey.Capacity)!.Value.Si * a.Parallel;
        var cell = tool.Pack!.Cell;
        double most = c.Si("charge-rate") * capacityAs;
        double stated = a.Charger is { } id ? ask.Shelf.ChargeCurrent(id)?.Si ?? most : most;
        double set = Math.Min(stated, most);
        Input[] from = [ask.Plant(PlantKey.Capacity)!, ask.Plant(PlantKey.CellOhms)!, c["charge-rate"].Input, c["charge-end-share"].Input];
        bool iron = Chemistry.IsIron(ask.Shelf[a.Cell]);
        double fullV = iron ? 3.625 : 4.20;
        lines.Made("Volts of a full cell", fullV, Units.Volt, iron ? "3.60 to 3.65 V of this chemistry, common practice" : "4.20 V of this chemistry, common practice; 4.10 V lives longer", []);
        lines.Made("Charge current", set, Units.Ampere, "the charger's, and not more than the rate for a cell without a sheet", from, stated > most * 1.001 ? $"the charger as it is gives {Lines.N(stated)} A: more than {Lines.N(c["charge-rate"].Value)} of the capacity an hour; turn it down" : "", stated > most * 1.001);
        var table = Table(cell.OpenV);
        bool linear = a.Series == 1;
        var heat = linear ? new ChargerHeat(c.Si("charge-source"), c.Si("charger-regulates"), c.Si("handle-air"), c.Si("charger-thermal")) : null;
        var ohm = (cell.R0Ohm.At(0.5) + cell.R1Ohm.At(0.5) + cell.R2Ohm.At(0.5)) / a.Parallel;
        var design = ChargeDesign.Of(table, capacityAs, ohm, a.Series, fullV, set, c.Si("charge-end-share"), c.Si("charge-source"), c.Si("charge-cable"), c.Si("charge-efficiency"), c.Si("charge-law"), heat);
        lines.Made("Time at constant current", design.Course.CurrentS / 60, Units.Minute, "charge over current, from a twentieth of the charge [ds/dt = I/Q]", from);
        lines.Made("Time at constant volts", design.Course.VoltageS / 60, Units.Minute, "(full − rested)/ohms after minutes, until the end current", from, "real tails are longer: with the ohms of a short pulse two to four times");
        lines.Made("Whole charge", design.Course.TotalS / 3600, Units.Hour, "both together", from);
        lines.Made("Source must give", design.SourceA, Units.Ampere, linear ? "a linear charger takes what it gives" : "pack volts times amps over efficiency and source volts behind its cable", from, design.SourceA > c.Si("charge-source-amps") ? $"more than the {Lines.N(c.Si("charge-source-amps"))} A of the source" : "", design.SourceA > c.Si("charge-source-amps"));
        if (design.SourceTooWeak)
        {
            lines.Say("The source cannot fill this pack", linear
                ? $"{Lines.N(c.Si("charge-source"))} V is not more than the {Lines.N(fullV)} V of a full cell: a linear charger needs some tenths of a volt above it"
                : $"{Lines.N(c.Si("charge-source"))} V behind a cable of {Lines.N(1000 * c.Si("charge-cable"))} mΩ cannot pass the power asked: charge with less current, or through a shorter cable", warns: true);
        }

        if (linear)
        {
            lines.Made("Charger's heat at the start", design.HeatW, Units.Watt, "(source − cell)·I", from);
            lines.Made("Folds back above", design.FoldBackA, Units.Ampere, "(regulating − around)/(Rθ·(source − cell))", [c["charger-regulates"].Input, c["handle-air"].Input, c["charger-thermal"].Input], design.FoldBackA < set ? "it folds back: the time above reckons with it" : "it does not fold back", design.FoldBackA < 0.5 * set);
        }

        lines.Made("Set-resistor", design.SetOhm, Units.Ohm, "law of the charger's sheet, amps = law/ohms", [c["charge-law"].Input], "take the law of your own charger's sheet, then measure the current");
        double leftW = ChargePower.LeftW(c.Si("charge-source"), c.Si("charge-source-amps"), c.Si("charge-efficiency"), ControlHoldW(ask, tool));
        lines.Made("Left for the cells while the tool holds", leftW, Units.Watt, "source power less holding power", [c["charge-source"].Input, c["charge-source-amps"].Input], $"without a power path lock the {ask.LoadWord} out while charging: the charge would never end", leftW < 0);
        lines.Say("Window", "charge only with the cells from 5 to 45 °C, sensor on the cell, not on the board; never below 0 °C; not straight after work");
        return new("charging", "Charging", lines.All);
    }

    private static double ControlHoldW(SheetAsk ask, AssembledTool tool) => tool.Load is LoadModel.Lamp lamp ? lamp.SetA * tool.Pack!.Cell.OpenV.At(0.5) * ask.Arrangement.Series : ToolModel.Of(tool, ask.SetC, 0.1, 0.1).HoldW;

    private static OcvTable Table(ChargeCurve open)
    {
        double[] charges = [.. Enumerable.Range(0, 41).Select(i => i / 40.0)];
        double[] volts = [.. charges.Select(open.At)];
        for (int i = 1; i < volts.Length; i++)
        {
            volts[i] = Math.Max(volts[i], volts[i - 1] + 1e-6); // a table of rested volts must rise
        }

        return new OcvTable(charges, volts);
    }
}
