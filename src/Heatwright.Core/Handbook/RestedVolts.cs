using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>Classes of cells by their rested voltage over the charge left.</summary>
/// <remarks>Tables data/cells/rested-volts-*: each names its source. A class is an average: an unknown lithium cell may lie 70 mV off between 20 and 95 %
/// of its charge and far more below (from memory and computed). Checked: OcvTableTests, HandbookSumsTests.</remarks>
public static class RestedVolts
{
    private const string Classes = "energy-18650 power-21700 power-21700-second lifepo4-18650 nimh";

    private static readonly Dictionary<string, OcvTable> Read = Classes.Split(' ').ToDictionary(name => name, name =>
    {
        var table = Tables.Find("rested-volts-" + name);
        return new OcvTable(table.Numbers("charge"), table.Numbers("volts"));
    }, StringComparer.OrdinalIgnoreCase);

    /// <summary>The table of a class; an unknown one is refused with those there are.</summary>
    public static OcvTable Of(string cell) => Read.TryGetValue(cell?.Trim() ?? "", out var table) ? table
        : throw new ArgumentOutOfRangeException(nameof(cell), cell, $"There is no class '{cell}'. There are: {string.Join(", ", Read.Keys)}.");

    /// <summary>Rested voltage at a charge.</summary>
    [Law("rested-volts", "cells", "table of the class, straight between its rows", Says = "rested voltage of a class of cells at a charge", Unit = "V", Source = "definition", Where = "tables after [ecker-2014], [sunil-2025] and [rtos-battery-bindings]",
        Valid = "average of a class; ±70 mV for an unknown lithium cell (from memory)", Example = "cell=power-21700 charge=50%")]
    public static double VoltsAt(
        [In("cell", "word", "class of cell", Words = Classes)] string cell,
        [In("s", "", "charge left", Name = "charge", Min = 0, Max = 1)] double charge) => Of(cell).VoltsAt(charge);

    /// <summary>Charge left from a rested voltage, and whether a voltage can tell it there.</summary>
    [Law("charge-from-volts", "cells", "table of the class, inverted", Says = "charge left from a rested voltage", Source = "definition", Where = "tables after [ecker-2014], [sunil-2025] and [rtos-battery-bindings]",
        Valid = "rested half an hour or more; on LiFePO4 and NiMH count ampere-hours instead between 10 and 95 %", Example = "cell=energy-18650 voltage=3.6V")]
    public static ChargeRead ChargeAt(
        [In("cell", "word", "class of cell", Words = Classes)] string cell,
        [In("V", "V", "rested voltage of one cell", Name = "voltage", Min = 0, Max = 5)] double volts)
    {
        var table = Of(cell);
        double charge = table.ChargeAt(volts), step = 0.005;
        double slope = (table.VoltsAt(Math.Min(1, charge + step)) - table.VoltsAt(Math.Max(0, charge - step))) / (Math.Min(1, charge + step) - Math.Max(0, charge - step));
        return new(charge, slope, slope >= 0.4 ? "yes" : "hardly: count ampere-hours");
    }

    /// <summary>Charge that stays in a cell because something needs a higher voltage.</summary>
    [Law("stranded-charge", "controller supply", "table of the class, inverted at the voltage needed", Says = "charge left unused because a regulator needs a higher voltage", Source = "definition", Where = "tables after [ecker-2014], [sunil-2025] and [rtos-battery-bindings]",
        Valid = "rested voltage needed: output, drop-out and sag together", Example = "cell=power-21700 needs=3.5V")]
    public static double StrandedCharge(
        [In("cell", "word", "class of cell", Words = Classes)] string cell,
        [In("V", "V", "rested voltage needed of one cell", Name = "needs", Min = 0, Max = 5)] double needsV) => ControllerSupply.StrandedCharge(Of(cell), needsV);

    /// <summary>Charge given down to a cut-off at a constant current.</summary>
    [Law("rate-capacity", "cells", "Q·(1 − s), OCV(s) = Vcut + I·R", Says = "charge a cell gives at a current down to a cut-off", Unit = "C", Source = "definition", Where = "sag on the tables after [ecker-2014], [sunil-2025] and [rtos-battery-bindings]",
        Valid = "settled resistance; not together with an exponent; optimistic near empty", Example = "cell=power-21700 capacity=2Ah source=80mohm current=10A cutoff=2.8V")]
    public static double GivenAs(
        [In("cell", "word", "class of cell", Words = Classes)] string cell,
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("R", "Ω", "resistance after minutes", Name = "source", Min = 0)] double settledOhm,
        [In("I", "A", "current", Name = "current", Min = 0)] double currentA,
        [In("Vcut", "V", "cut-off", Name = "cutoff", Min = 0, Max = 5)] double cutoffV) => RateCapacity.GivenAs(Of(cell), capacityAs, settledOhm, currentA, cutoffV);

    /// <summary>A whole discharge through a heater straight on the pack.</summary>
    [Law("runtime-cell-direct", "packs", "piece by piece over the class's table: t = Q·(RL + Rs)·Δs/ΔV·ln(V₁/V₂)", Says = "run time and energy of a class of cells with a heater straight on the pack", Source = "definition", Where = "integral over the tables after [ecker-2014], [sunil-2025] and [rtos-battery-bindings]",
        Valid = "always on, settled resistance, cold-cell effects apart", Example = "cell=power-21700 series=1 capacity=620mAh source=0.25ohm load=2.2ohm cutoff=3V")]
    public static DischargeResult ThroughHeater(
        [In("cell", "word", "class of cell", Words = Classes)] string cell,
        [In("n", "", "cells in series", Name = "series", Min = 1, Max = 20, Default = 1)] int series,
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("Rs", "Ω", "source resistance of the whole pack", Name = "source", Min = 0)] double sourceOhm,
        [In("RL", "Ω", "heater", Name = "load", Min = 0)] double loadOhm,
        [In("Vcut", "V", "cut-off of the whole pack", Name = "cutoff", Min = 0)] double cutoffV) => Discharge.ThroughHeater(Stacked(cell, series), capacityAs, sourceOhm, loadOhm, cutoffV);

    /// <summary>A whole discharge at constant power through a module.</summary>
    [Law("runtime-cell-regulated", "packs", "piece by piece over the class's table: t = ∫Q·ds/I, I = 2W/(E + √(E² − 4·A·W))", Says = "run time and energy of a class of cells with a module that holds the power", Source = "definition", Where = "integral over the tables after [ecker-2014], [sunil-2025] and [rtos-battery-bindings]",
        Valid = "loss coefficients from readings (0: bare terminals); settled resistance", Example = "cell=power-21700 series=1 capacity=620mAh source=0.25ohm power=6W cutoff=3V fixed=0.12W drop=0.2V slope=90mohm")]
    public static DischargeResult AtPower(
        [In("cell", "word", "class of cell", Words = Classes)] string cell,
        [In("n", "", "cells in series", Name = "series", Min = 1, Max = 20, Default = 1)] int series,
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("Rs", "Ω", "source resistance of the whole pack", Name = "source", Min = 0)] double sourceOhm,
        [In("P", "W", "power held at the load", Name = "power", Min = 0)] double powerW,
        [In("Vcut", "V", "cut-off of the whole pack", Name = "cutoff", Min = 0)] double cutoffV,
        [In("a0", "W", "loss without load", Name = "fixed", Min = 0, Default = 0)] double fixedW = 0,
        [In("a1", "V", "loss per ampere", Name = "drop", Min = 0, Default = 0)] double dropV = 0,
        [In("a2", "Ω", "loss per ampere squared", Name = "slope", Min = 0, Default = 0)] double slopeOhm = 0) =>
        Discharge.AtPower(Stacked(cell, series), capacityAs, sourceOhm, new LossCoefficients(fixedW, dropV, slopeOhm), powerW, cutoffV);

    private static OcvTable Stacked(string cell, int series)
    {
        var one = Of(cell);
        return series == 1 ? one : new OcvTable([.. one.Charges.ToArray()], [.. one.Volts.ToArray().Select(volts => volts * series)]);
    }
}

/// <summary>Charge read from a rested voltage.</summary>
/// <param name="Charge">Charge left.</param>
/// <param name="VoltsPerCharge">Volts a whole charge there: how well a voltage can tell.</param>
/// <param name="Tells">Whether a voltage can tell the charge there.</param>
public sealed record ChargeRead(
    [property: Out("", "charge left", Name = "charge")] double Charge,
    [property: Out("V", "volts a whole charge there", Name = "steepness")] double VoltsPerCharge,
    [property: Out("", "whether a voltage can tell the charge there", Name = "voltage-tells")] string Tells);
