using Heatwright.Plant;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.BuildSheets;

/// <summary>Cautions, single faults, and the hard limits that are broken.</summary>
internal static class SafetySection
{
    private const double CellLimitC = SingleFaults.CellLimitC;

    /// <summary>Cautions of the trade: common practice, no source; local codes and licensed practice come first.</summary>
    public static readonly IReadOnlyList<(string Lead, string Words)> Cautions =
    [
        ("Lithium cells", "weld or clip tabs, never solder on a cell; insulate every tab; fuse at the first tab; no cell above 60 °C, below its cut-off or above its full volts; stop at swelling, smell or heat."),
        ("Hot surfaces", "the end burns skin and sets fire long before it glows, and long after it is off: stand, tile, no loose cloth; auto-off and a mark for hot."),
        ("Fumes", "plastics and coatings give off fumes, some of them poisonous: extraction, and know what you heat."),
        ("Charging", "only with a charger made for these cells, on a surface that does not burn, never unattended, cells between 5 and 45 °C."),
        ("Fire", "move people away, call the fire service; much water cools a burning cell; do not breathe the smoke."),
        ("Transport", "cells and packs that travel must be tested to the UN manual of tests and criteria, 38.3; carriers ask for the summary and for little charge; the rules change yearly."),
        ("Not a permission", "follow the sheets of cells and charger, local codes and transport rules; have mains, charging and product safety done or checked by a licensed or competent person."),
    ];

    public static (SheetSection Section, IReadOnlyList<string> Breaks) Of(SheetAsk ask, ControlNumbers? numbers, PowerPoint point, PlantRun run)
    {
        var lines = new Lines(ask);
        bool linked = ask.Arrangement.CutOut is not null;
        var asked = new FaultAsk(ask.Builder, ask.Arrangement, ask.Shelf) { AirC = ask.Choices["hot-air"].Value };
        if (linked && ask.Choices["cut-out"] is { Set: true } told)
        {
            asked = asked with { CutOutC = told.Value };
        }

        double cutOut = asked.CutOutC;
        var faults = numbers is null ? SingleFaults.OfLamp(asked) : SingleFaults.Of(asked, ask.SetC, numbers.MostDuty, numbers.RiseS);
        foreach (var (lead, words) in Cautions)
        {
            lines.Say(lead, words);
        }

        if (numbers is null)
        {
            lines.Say("Eyes", "a bright lamp dazzles and can hurt eyes: never look into it, nor let anyone; what its light may do stands in the sheet of the light.");
        }
        else if (!linked)
        {
            lines.Say("Independent cut-out", "none is chosen: fit one that works without the controller, in the heater's path, on the working end's shank", warns: true);
        }
        else if (cutOut <= 0)
        {
            lines.Say("Independent cut-out", $"'{ask.Shelf[ask.Arrangement.CutOut!.Value].Name}': its temperature is not stated, so nothing is said about when it opens; say it as the number cut-out of this sheet", warns: true);
        }

        string nothing = cutOut > 0 && linked ? "not reached" : "not stated";
        IReadOnlyList<string> Row(FaultCase fault)
        {
            var (end, grip, cells) = fault.Held ?? new(fault.EndC, fault.GripC, fault.CellC);
            return [fault.Name, Opens(fault) ?? nothing, T(end), T(grip), T(cells), fault.Held is null ? "—" : $"{T(fault.EndC)}, {T(fault.GripC)}, {T(fault.CellC)}",
                double.IsFinite(fault.CellLimitS) ? Lines.N(fault.CellLimitS / 60, "0.#") + " min" : fault.CellC > CellLimitC ? "after the stop" : "—", fault.Catches];
        }

        return (new SheetSection("safety", "Safety", lines.All) { Table = new($"Single faults at the worst corner, air {Lines.N(ask.Choices["hot-air"].Value)} °C, full pack until empty; where the cut-out, or a board that watches the cells, opens, the first temperatures are those with it open from then on", Heads, [.. faults.Select(Row)]) },
            Broken(ask, point, run, faults));
    }

    private static readonly string[] Heads = ["fault", "cut-out opens after", "end, °C", "grip, °C", "cells, °C", "if it does not open: end, grip, cells, °C", "cells at 60 °C after, if nothing opens", "what catches it"];

    /// <summary>When the first thing opens that opens by itself; null: none does.</summary>
    private static string? Opens(FaultCase fault) => fault.Held is null ? null
        : fault.BoardS < fault.CutOutS || !double.IsFinite(fault.CutOutS) ? Lines.N(fault.BoardS, "0.#") + " s, protection board" : Lines.N(fault.CutOutS, "0.#") + " s";

    private static string T(double c) => double.IsFinite(c) ? Lines.N(c, "0") : "—";

    /// <summary>Hard limits that the sheet as it stands would break.</summary>
    private static List<string> Broken(SheetAsk ask, PowerPoint point, PlantRun run, IReadOnlyList<FaultCase> faults)
    {
        var over = Overloads.Of(ask.Arrangement, ask.Shelf, ask.Plant(Arrangements.PlantKey.Capacity)!.Value.Si, point.MostA.Si);
        List<string> breaks = [.. ask.Safety.With([.. SingleFaults.Missing(faults), .. over]).Conditions.Select(condition => $"Missing: {condition.Words}: {condition.Because}.")];
        double cells = run.HighestK[2] - Units.ZeroCelsiusK;
        if (cells > CellLimitC)
        {
            breaks.Add($"The cells reach {Lines.N(cells, "0")} °C at work; their limit is {Lines.N(CellLimitC)} °C.");
        }

        return breaks;
    }
}
