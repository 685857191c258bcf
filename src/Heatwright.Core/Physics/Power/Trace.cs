namespace Heatwright.Physics;

/// <summary>Board traces and vias.</summary>
/// <remarks>I = k·ΔT^0.44·A^0.725, A in mil², k = 0.048 outside, 0.024 inside. Source: [ipc-2221], curve fit found alike on several public pages, standard not
/// read. Valid about 10 to 100 K, up to 35 A, up to 400 mil wide (from memory). In a thin board or a closed hot handle take ΔT = 10 K as the safe stand-in for the
/// newer standard (common practice, no source). The board's surroundings are the inside of the handle, not the room.</remarks>
public static class Trace
{
    /// <summary>Thickness of copper of one ounce a square foot as the trade counts it: 1.378 mil, 35.0 µm.</summary>
    public const double OunceM = 1.378 * MilM;

    private const double MilM = 25.4e-6;
    private const double OuterA = 0.048;
    private const double InnerA = 0.024;
    private const double RiseExponent = 0.44;
    private const double AreaExponent = 0.725;

    /// <summary>Width of a trace for a current and a rise.</summary>
    [Law("trace-width", "wires and traces", "(I/(k·ΔT^0.44))^(1/0.725)/t, k = 0.048 outside, 0.024 inside, area in square mil", Says = "width of a copper trace for a current and a rise", Unit = "m", Source = "ipc-2221", Where = "curve fit of the charts; public transcriptions, standard not read",
        Valid = "10 to 100 K, up to 35 A, up to 400 mil (10 mm) wide; surroundings are the inside of the handle", Example = "current=5A rise=20K copper=1oz")]
    public static double WidthM(
        [In("I", "A", "current", Name = "current", Min = 0, SoftMax = 35)] double currentA,
        [In("ΔT", "K", "rise above the surroundings", Name = "rise", Min = 0, SoftMin = 10, SoftMax = 100)] double riseK,
        [In("t", "m", "copper thickness", Name = "copper", Min = 0, Default = OunceM)] double copperM = OunceM,
        [In("inner", "yes/no", "whether the trace lies inside the board", Name = "inner", Default = 0)] double inner = 0) =>
        AreaM2(currentA, riseK, inner >= 0.5) / Impossible.UnlessPositive(copperM, "m");

    /// <summary>Cross-section of copper for a current and a rise.</summary>
    public static double AreaM2(double currentA, double riseK, bool inner)
    {
        double k = inner ? InnerA : OuterA;
        return MilM * MilM * Math.Pow(Impossible.UnlessPositive(currentA, "A") / (k * Math.Pow(Impossible.UnlessPositive(riseK, "K"), RiseExponent)), 1 / AreaExponent);
    }

    /// <summary>Current that a cross-section carries at a rise.</summary>
    public static double CurrentA(double areaM2, double riseK, bool inner) => (inner ? InnerA : OuterA)
        * Math.Pow(Impossible.UnlessPositive(riseK, "K"), RiseExponent) * Math.Pow(Impossible.UnlessPositive(areaM2, "m²") / (MilM * MilM), AreaExponent);

    /// <summary>Current of a trace.</summary>
    [Law("trace-current", "wires and traces", "k·ΔT^0.44·A^0.725, k = 0.048 outside, 0.024 inside, area in square mil", Says = "current a copper trace carries at a rise", Unit = "A", Source = "ipc-2221", Where = "curve fit of the charts; public transcriptions, standard not read",
        Valid = "10 to 100 K, up to 35 A, up to 400 mil (10 mm) wide", Example = "width=2.54mm rise=20K copper=1oz")]
    public static double CurrentOfWidthA(
        [In("w", "m", "width", Name = "width", Min = 0, SoftMax = 10.16e-3)] double widthM,
        [In("ΔT", "K", "rise above the surroundings", Name = "rise", Min = 0, SoftMin = 10, SoftMax = 100)] double riseK,
        [In("t", "m", "copper thickness", Name = "copper", Min = 0, Default = OunceM)] double copperM = OunceM,
        [In("inner", "yes/no", "whether the trace lies inside the board", Name = "inner", Default = 0)] double inner = 0) =>
        CurrentA(Impossible.UnlessPositive(widthM, "m") * Impossible.UnlessPositive(copperM, "m"), riseK, inner >= 0.5);

    /// <summary>Resistance of a trace.</summary>
    [Law("trace-resistance", "wires and traces", "ρ₂₀/t·L/w·(1 + 0.00393·(T − 20))", Says = "resistance of a copper trace", Unit = "Ω", Source = "iec-60028", Valid = "copper, -50 to 150 °C, plain track of one width", Where = "standard copper; plated copper a few percent more", Example = "length=40mm width=3mm copper=1oz")]
    public static double Ohm(
        [In("L", "m", "length", Name = "length", Min = 0)] double lengthM,
        [In("w", "m", "width", Name = "width", Min = 0)] double widthM,
        [In("t", "m", "copper thickness", Name = "copper", Min = 0, Default = OunceM)] double copperM = OunceM,
        [In("T", "°C", "copper temperature", Name = "at", Min = -230, Max = 400, Default = 20)] double atC = 20) =>
        Wire.Ohm(lengthM, Impossible.UnlessPositive(widthM, "m") * Impossible.UnlessPositive(copperM, "m"), atC);

    /// <summary>Resistance of a square of copper sheet.</summary>
    [Law("copper-sheet", "wires and traces", "ρ₂₀/t·(1 + 0.00393·(T − 20))", Says = "resistance of a square of copper sheet", Unit = "Ω", Source = "iec-60028", Where = "standard copper; plated copper a few percent more",
        Valid = "copper, −50 to 150 °C", Example = "copper=35um")]
    public static double SheetOhm(
        [In("t", "m", "copper thickness", Name = "copper", Min = 0)] double copperM,
        [In("T", "°C", "copper temperature", Name = "at", Min = -230, Max = 400, Default = 20)] double atC = 20) => Ohm(1, 1, copperM, atC);

    /// <summary>Cross-section of a via's barrel: π(d + t)t, d the finished hole.</summary>
    public static double ViaAreaM2(double holeM, double platingM) =>
        Math.PI * (Impossible.UnlessPositive(holeM, "m") + Impossible.UnlessPositive(platingM, "m")) * platingM;

    /// <summary>Resistance of a via.</summary>
    [Law("via-resistance", "wires and traces", "ρ₂₀·L/(π·(d + t)·t)·(1 + 0.00393·(T − 20))", Says = "resistance of a plated via", Unit = "Ω", Source = "iec-60028", Where = "standard copper; plated copper a few percent more",
        Valid = "copper, −50 to 150 °C", Example = "hole=0.3mm plating=25um length=1.6mm")]
    public static double ViaOhm(
        [In("d", "m", "finished hole", Name = "hole", Min = 0)] double holeM,
        [In("t", "m", "plating", Name = "plating", Min = 0, Default = 20e-6)] double platingM,
        [In("L", "m", "length, the board's thickness", Name = "length", Min = 0)] double lengthM,
        [In("T", "°C", "copper temperature", Name = "at", Min = -230, Max = 400, Default = 20)] double atC = 20) =>
        Wire.Ohm(lengthM, ViaAreaM2(holeM, platingM), atC);

    /// <summary>Current of a via, treated as an inner trace. Common practice, no source.</summary>
    [Law("via-current", "wires and traces", "0.024·ΔT^0.44·(π·(d + t)·t)^0.725, area in square mil", Says = "current a plated via carries at a rise", Unit = "A", Source = "ipc-2221", Where = "curve fit of the charts, inner constant by common practice", Valid = "10 to 100 K", Example = "hole=0.3mm plating=25um rise=10K")]
    public static double ViaCurrentA(
        [In("d", "m", "finished hole", Name = "hole", Min = 0)] double holeM,
        [In("t", "m", "plating", Name = "plating", Min = 0, Default = 20e-6)] double platingM,
        [In("ΔT", "K", "rise above the surroundings", Name = "rise", Min = 0, SoftMin = 10, SoftMax = 100)] double riseK) => CurrentA(ViaAreaM2(holeM, platingM), riseK, inner: true);
}
