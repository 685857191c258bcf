namespace Heatwright.Physics;

/// <summary>A bar that loses heat from its side, from its hot end to its free end.</summary>
/// <param name="ResistanceKPerW">Rise of the base over the heat that enters it.</param>
/// <param name="EndShare">Rise of the free end over rise of the base.</param>
/// <param name="Slenderness">mL: above 1 the far end hardly matters.</param>
public sealed record FinAnswer(
    [property: Out("K/W", "resistance from the base to air")] double ResistanceKPerW,
    [property: Out("", "rise of the free end over rise of the base")] double EndShare,
    [property: Out("", "mL, how far the bar is a fin")] double Slenderness);

/// <summary>Conduction along bars, and along bars that lose heat on the way (fins).</summary>
/// <remarks>m = √(hp/(kA)), M = √(hpkA). Source: [incropera-dewitt] ch. 3, Table 3.4, from memory. Checked: LossTests.</remarks>
public static class Fin
{
    /// <summary>Resistance of a plain bar L/(kA), K/W.</summary>
    [Law("bar", "heat flow", "R = L/(k·A)", Says = "thermal resistance of a plain bar or layer", Unit = "K/W", Source = "incropera-dewitt", Where = "ch. 3, from memory", Valid = "no loss from the side",
        Example = "length=60mm area=12.57mm² conductivity=16W/(m·K)")]
    public static double BarKPerW(
        [In("L", "m", "length", Name = "length", Min = 0)] double lengthM,
        [In("A", "m²", "cross-section", Name = "area", Min = 0)] double areaM2,
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK) =>
        Impossible.UnlessPositive(lengthM, "m") / (Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)") * Impossible.UnlessPositive(areaM2, "m²"));

    /// <summary>A round rod with free end: resistance R = 1/(√(hpkA)·tanh mL), end share 1/cosh mL.</summary>
    [Law("fin", "heat flow", "R = 1/(√(hpkA)·tanh mL), Δ_end/Δ_base = 1/cosh mL, m = √(4h/(kD))", Says = "thermal resistance of a rod that loses heat along its side", Source = "incropera-dewitt",
        Where = "Table 3.4, adiabatic end, from memory", Valid = "round rod, hD/k well below 0.1, end loss neglected",
        Example = "diameter=4mm length=60mm conductivity=16W/(m·K) loss=15W/(m²·K)")]
    public static FinAnswer RoundRod(
        [In("D", "m", "diameter", Name = "diameter", Min = 0)] double diameterM,
        [In("L", "m", "length", Name = "length", Min = 0)] double lengthM,
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("h", "W/(m²·K)", "loss coefficient of the side", Name = "loss", Min = 0)] double hWPerM2K)
    {
        var (m, conductance) = Round(diameterM, conductivityWPerMK, hWPerM2K);
        double slenderness = m * Impossible.UnlessPositive(lengthM, "m");
        return new FinAnswer(1 / (conductance * Math.Tanh(slenderness)), 1 / Math.Cosh(slenderness), slenderness);
    }

    /// <summary>A rod that loses heat, between two places.</summary>
    [Law("fin-between", "heat flow", "Q₀ = Own·Δ₀ − Across·Δ_L, Own = √(hpkA)·coth mL, Across = √(hpkA)/sinh mL", Says = "heat that a shank carries between two places while it loses some", Source = "incropera-dewitt", Where = "ch. 3, from memory",
        Valid = "round rod, hD/k well below 0.1", Example = "diameter=4mm length=60mm conductivity=16W/(m·K) loss=15W/(m²·K)")]
    public static RodBetween Between(
        [In("D", "m", "diameter", Name = "diameter", Min = 0)] double diameterM,
        [In("L", "m", "length", Name = "length", Min = 0)] double lengthM,
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("h", "W/(m²·K)", "loss coefficient of the side", Name = "loss", Min = 0)] double hWPerM2K)
    {
        var (own, across) = TwoPort(diameterM, lengthM, conductivityWPerMK, hWPerM2K);
        return new RodBetween(own, across);
    }

    /// <summary>A round rod between two places as a two-port: heat into end 0 is Own·Δ₀ − Across·Δ_L, W/K.</summary>
    /// <remarks>A shank taken as a plain bar over-states the heat of the grip once mL is above 1: this form does not.</remarks>
    public static (double OwnWPerK, double AcrossWPerK) TwoPort(double diameterM, double lengthM, double conductivityWPerMK, double hWPerM2K)
    {
        var (m, conductance) = Round(diameterM, conductivityWPerMK, hWPerM2K);
        double x = m * Impossible.UnlessPositive(lengthM, "m");
        return (conductance / Math.Tanh(x), conductance / Math.Sinh(x));
    }

    /// <summary>Heat that an endless round rod draws per kelvin at its base: √(hpkA), W/K. Sensor wires act so.</summary>
    [Law("long-wire", "heat flow", "G = √(h·p·k·A) = (π/2)·√(h·k·D³)", Says = "heat that a long wire or sensor lead draws per kelvin", Unit = "W/K", Source = "incropera-dewitt", Where = "Table 3.4, infinite fin, from memory",
        Valid = "longer than about 3/m", Example = "diameter=0.25mm conductivity=24W/(m·K) loss=60W/(m²·K)")]
    public static double EndlessWPerK(
        [In("D", "m", "diameter", Name = "diameter", Min = 0)] double diameterM,
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("h", "W/(m²·K)", "loss coefficient of the side", Name = "loss", Min = 0)] double hWPerM2K) =>
        Round(diameterM, conductivityWPerMK, hWPerM2K).ConductanceWPerK;

    /// <summary>Biot number h·L/k with L = volume over surface: below 0.1 a body may be one node.</summary>
    [Law("biot", "heat flow", "Bi = h·L/k", Says = "whether a body may be taken as one temperature", Source = "incropera-dewitt", Where = "ch. 5, from memory", Valid = "L = volume over surface; below 0.1 one node will do",
        Example = "loss=25W/(m²·K) length=1mm conductivity=45W/(m·K)")]
    public static double Biot(
        [In("h", "W/(m²·K)", "loss coefficient", Name = "loss", Min = 0)] double hWPerM2K,
        [In("L", "m", "volume over surface", Name = "length", Min = 0)] double lengthM,
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK) =>
        Impossible.IfNegative(hWPerM2K, "W/(m²·K)") * Impossible.UnlessPositive(lengthM, "m") / Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)");

    private static (double PerM, double ConductanceWPerK) Round(double diameterM, double conductivityWPerMK, double hWPerM2K)
    {
        Impossible.UnlessPositive(diameterM, "m");
        Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)");
        Impossible.UnlessPositive(hWPerM2K, "W/(m²·K)");
        return (Math.Sqrt(4 * hWPerM2K / (conductivityWPerMK * diameterM)), Math.PI / 2 * Math.Sqrt(hWPerM2K * conductivityWPerMK * Math.Pow(diameterM, 3)));
    }
}

/// <summary>A rod between two places as a two-port.</summary>
/// <param name="OwnWPerK">Heat into an end per kelvin of that end.</param>
/// <param name="AcrossWPerK">Heat less per kelvin of the other end.</param>
public sealed record RodBetween(
    [property: Out("W/K", "heat into an end per kelvin of that end", Name = "own")] double OwnWPerK,
    [property: Out("W/K", "heat less per kelvin of the other end", Name = "across")] double AcrossWPerK);
