namespace Heatwright.Physics;

/// <summary>Cells in series and parallel, with everything between cell tab and load.</summary>
/// <remarks>R = (n/m)·R_cell + (n+1)·R_link + protection + fuse + wire + connector. Circuit algebra; typical part values are common practice, no source.</remarks>
public static class Pack
{
    /// <summary>Join two cells in parallel only when their rested voltages are this close. Common practice, no source.</summary>
    public const double JoinWithinV = 0.050;

    /// <summary>Source resistance of the whole pack.</summary>
    [Law("pack-resistance", "packs", "n/m·Rcell + (n+1)·Rlink + Rprot + Rfuse + Rwire + Rconn", Says = "source resistance of a whole pack with links, fuse and wires", Unit = "Ω", Source = "definition", Where = "resistances in series and parallel",
        Valid = "like cells; take the cell's resistance after minutes for long runs, not the 1 s value", Example = "series=2 parallel=2 cell=30mohm link=2mohm protection=40mohm fuse=10mohm")]
    public static double Ohm(
        [In("n", "", "cells in series", Min = 1, Max = 100)] int series,
        [In("m", "", "strings in parallel", Min = 1, Max = 100)] int parallel,
        [In("Rcell", "Ω", "resistance of one cell", Name = "cell", Min = 0)] double cellOhm,
        [In("Rlink", "Ω", "one link or tab", Name = "link", Min = 0, Default = 0)] double linkOhm = 0,
        [In("Rprot", "Ω", "protection board", Name = "protection", Min = 0, Default = 0)] double protectionOhm = 0,
        [In("Rfuse", "Ω", "fuse, cold", Name = "fuse", Min = 0, Default = 0)] double fuseOhm = 0,
        [In("Rwire", "Ω", "wires, out and return", Name = "wire", Min = 0, Default = 0)] double wireOhm = 0,
        [In("Rconn", "Ω", "connectors, both poles", Name = "connector", Min = 0, Default = 0)] double connectorOhm = 0)
    {
        Impossible.UnlessCounted(series, 1);
        Impossible.UnlessCounted(parallel, 1);
        double cells = (double)series / parallel * Impossible.IfNegative(cellOhm, "Ω");
        double links = (series + 1) * Impossible.IfNegative(linkOhm, "Ω");
        return cells + links + Impossible.IfNegative(protectionOhm, "Ω") + Impossible.IfNegative(fuseOhm, "Ω")
            + Impossible.IfNegative(wireOhm, "Ω") + Impossible.IfNegative(connectorOhm, "Ω");
    }

    /// <summary>Rated energy: n·m·V_nom·Q_nom.</summary>
    [Law("pack-energy", "packs", "n·m·Vnom·Q", Says = "labelled energy of a pack", Unit = "J", Source = "definition", Where = "volts times charge", Valid = "as labelled; what arrives at the heater is less", Example = "series=2 parallel=1 cell=3.7V capacity=3Ah")]
    public static double RatedJ(
        [In("n", "", "cells in series", Min = 1, Max = 100)] int series,
        [In("m", "", "strings in parallel", Min = 1, Max = 100)] int parallel,
        [In("Vnom", "V", "nominal voltage of one cell", Name = "cell", Min = 0)] double cellV,
        [In("Q", "C", "nominal capacity of one cell", Name = "capacity", Min = 0)] double capacityAs) =>
        Impossible.UnlessCounted(series, 1) * (double)Impossible.UnlessCounted(parallel, 1)
        * Impossible.UnlessPositive(cellV, "V") * Impossible.UnlessPositive(capacityAs, "C");

    /// <summary>Voltage under a current: n·OCV − I·R.</summary>
    [Law("loaded-volts", "packs", "n·V − I·R", Says = "voltage of a pack under load", Unit = "V", Source = "definition", Where = "Ohm's law",
        Valid = "settled resistance of the whole pack", Example = "series=2 open=3.7V pack=86mohm current=6A")]
    public static double TerminalV(
        [In("n", "", "cells in series", Name = "series", Min = 1, Max = 100)] int series,
        [In("V", "V", "rested voltage of one cell", Name = "open", Min = 0)] double cellOpenV,
        [In("R", "Ω", "resistance of the pack", Name = "pack", Min = 0)] double packOhm,
        [In("I", "A", "current", Name = "current")] double currentA) =>
        (Impossible.UnlessCounted(series, 1) * Impossible.UnlessPositive(cellOpenV, "V")) - (currentA * Impossible.IfNegative(packOhm, "Ω"));

    /// <summary>Two cells in parallel under a load.</summary>
    [Law("parallel-cells", "packs", "V = (V₁/R₁ + V₂/R₂ − I)/(1/R₁ + 1/R₂), I₁ = (V₁ − V)/R₁", Says = "how two cells in parallel share a current", Source = "definition", Where = "Kirchhoff's laws",
        Valid = "settled resistances; a negative current charges that cell", Example = "first=3.7V first-ohms=30mohm second=3.7V second-ohms=45mohm current=5A")]
    public static SharedCurrent Shared(
        [In("V₁", "V", "rested voltage of the first cell", Name = "first", Min = 0)] double firstV,
        [In("R₁", "Ω", "its resistance", Name = "first-ohms", Min = 0)] double firstOhm,
        [In("V₂", "V", "rested voltage of the second cell", Name = "second", Min = 0)] double secondV,
        [In("R₂", "Ω", "its resistance", Name = "second-ohms", Min = 0)] double secondOhm,
        [In("I", "A", "current of both together", Name = "current", Min = 0)] double packA)
    {
        double nodeV = NodeV([firstV, secondV], [firstOhm, secondOhm], packA);
        return new(nodeV, CellA(firstV, firstOhm, nodeV), CellA(secondV, secondOhm, nodeV));
    }

    /// <summary>Common voltage of unlike cells in parallel: (Σ OCV/R − I)/Σ(1/R).</summary>
    public static double NodeV(ReadOnlySpan<double> openV, ReadOnlySpan<double> cellOhm, double packA)
    {
        Impossible.UnlessCounted(openV.Length, 1, nameof(openV));
        double drive = -packA;
        double conductance = 0;
        for (int i = 0; i < openV.Length; i++)
        {
            double siemens = 1 / Impossible.UnlessPositive(cellOhm[i], "Ω", nameof(cellOhm));
            drive += openV[i] * siemens;
            conductance += siemens;
        }

        return drive / conductance;
    }

    /// <summary>Share of one cell of such a group: (OCV − V)/R; negative means that its neighbours charge it.</summary>
    public static double CellA(double openV, double cellOhm, double nodeV) => (openV - nodeV) / Impossible.UnlessPositive(cellOhm, "Ω");

    /// <summary>Current at the moment two cells are joined in parallel.</summary>
    [Law("joining-surge", "packs", "(Va − Vb)/(Ra + Rb + Rwire)", Says = "current at the moment two cells are joined in parallel", Unit = "A", Source = "definition", Where = "Ohm's law", Valid = "first instant; join within 50 mV only (common practice)",
        Example = "first-voltage=4.1V second-voltage=3.6V first-cell=50mohm second-cell=50mohm wire=10mohm")]
    public static double JoiningA(
        [In("Va", "V", "rested voltage of the first cell", Name = "first-voltage", Min = 0)] double firstV,
        [In("Vb", "V", "rested voltage of the second cell", Name = "second-voltage", Min = 0)] double secondV,
        [In("Ra", "Ω", "resistance of the first cell", Name = "first-cell", Min = 0)] double firstOhm,
        [In("Rb", "Ω", "resistance of the second cell", Name = "second-cell", Min = 0)] double secondOhm,
        [In("Rwire", "Ω", "what joins them", Name = "wire", Min = 0, Default = 0)] double wireOhm = 0) =>
        (Impossible.IfNegative(firstV, "V") - Impossible.IfNegative(secondV, "V"))
        / (Impossible.UnlessPositive(firstOhm, "Ω") + Impossible.UnlessPositive(secondOhm, "Ω") + Impossible.IfNegative(wireOhm, "Ω"));

    /// <summary>Whether two cells may be joined in parallel.</summary>
    public static bool MayJoin(double firstV, double secondV) => Math.Abs(firstV - secondV) <= JoinWithinV;
}

/// <summary>Two cells side by side under a load.</summary>
/// <param name="NodeV">Voltage of both.</param>
/// <param name="FirstA">Current of the first.</param>
/// <param name="SecondA">Current of the second.</param>
public readonly record struct SharedCurrent(
    [property: Out("V", "voltage of both", Name = "voltage")] double NodeV,
    [property: Out("A", "current of the first cell", Name = "first-current")] double FirstA,
    [property: Out("A", "current of the second cell", Name = "second-current")] double SecondA);
