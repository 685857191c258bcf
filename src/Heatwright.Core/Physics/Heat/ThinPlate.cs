using MathNet.Numerics;

namespace Heatwright.Physics;

/// <summary>A hot round spot on a thin plate that loses heat from both faces: copper planes, foils, sheet.</summary>
/// <remarks>m = √((h₁ + h₂)/(kt)). Sources: [carslaw-jaeger-1959] and the annular fin of [incropera-dewitt], from memory. Checked: SpreadingTests.</remarks>
public static class ThinPlate
{
    /// <summary>Endless plate: K₀(mr₀)/(2πkt·mr₀·K₁(mr₀)), K/W. kt of layers adds.</summary>
    [Law("plate-sink", "heat flow", "R = K₀(m·r₀)/(2π·kt·m·r₀·K₁(m·r₀)), m = √(h/kt)", Says = "thermal resistance of a large plate heated at a spot", Unit = "K/W", Source = "incropera-dewitt", Where = "annular fin, from memory",
        Valid = "plate thin: h·t/k small; endless, more than about 3/m", Example = "spot=1.5mm sheet=0.01421W/K loss=20W/(m²·K)")]
    public static double EndlessKPerW(
        [In("r₀", "m", "radius of the spot", Name = "spot", Min = 0)] double spotM,
        [In("kt", "W/K", "conductivity times thickness, summed over layers", Name = "sheet", Min = 0)] double sheetWPerK,
        [In("h", "W/(m²·K)", "loss coefficient of both faces together", Name = "loss", Min = 0)] double hWPerM2K)
    {
        double x = PerM(sheetWPerK, hWPerM2K) * Impossible.UnlessPositive(spotM, "m");
        return BesselK0e(x) / (2 * Math.PI * sheetWPerK * x * BesselK1e(x));
    }

    /// <summary>Round plate with insulated rim at r₁, K/W.</summary>
    [Law("disc-sink", "heat flow", "R = [I₀(x₀)K₁(x₁) + K₀(x₀)I₁(x₁)]/{2π·kt·x₀·[I₁(x₁)K₁(x₀) − I₁(x₀)K₁(x₁)]}, x = m·r, m = √(h/kt)", Says = "thermal resistance of a round plate heated at its middle", Unit = "K/W", Source = "incropera-dewitt",
        Where = "annular fin, adiabatic tip, from memory", Valid = "plate thin: h·t/k small", Example = "spot=1.5mm rim=20mm sheet=0.01421W/K loss=20W/(m²·K)")]
    public static double DiscKPerW(
        [In("r₀", "m", "radius of the spot", Name = "spot", Min = 0)] double spotM,
        [In("r₁", "m", "radius of the rim", Name = "rim", Min = 0)] double rimM,
        [In("kt", "W/K", "conductivity times thickness, summed over layers", Name = "sheet", Min = 0)] double sheetWPerK,
        [In("h", "W/(m²·K)", "loss coefficient of both faces together", Name = "loss", Min = 0)] double hWPerM2K)
    {
        double m = PerM(sheetWPerK, hWPerM2K);
        double x0 = m * Impossible.UnlessPositive(spotM, "m");
        double x1 = m * ImpossibleHeat.UnlessAbove(rimM, spotM, "m");

        // Numerator and denominator are both divided by I₁(x₁)·e^(−x₀): scaled functions keep far rims from overflowing.
        double far = BesselK1e(x1) * Math.Exp(2 * (x0 - x1)) / BesselI1e(x1);
        double above = BesselI0e(x0) * far + BesselK0e(x0);
        double below = BesselK1e(x0) - BesselI1e(x0) * far;
        return above / (2 * Math.PI * sheetWPerK * x0 * below);
    }

    /// <summary>Heat a plane takes from a tip for as long as it stays, W: rise over plane and spokes in a row.</summary>
    [Law("plane-sink-power", "work", "P = Δ/(R_plane + R_spokes)", Says = "heat that a copper plane draws from a tip", Unit = "W", Source = "definition", Where = "resistances in a row", Valid = "steady state",
        Example = "rise=225K plane=38.19K/W spokes=36.63K/W")]
    public static double SinkW(
        [In("Δ", "K", "tip above air", Name = "rise", Min = 0)] double riseK,
        [In("R_plane", "K/W", "resistance of the plane", Name = "plane", Min = 0)] double planeKPerW,
        [In("R_spokes", "K/W", "resistance of the relief spokes", Name = "spokes", Min = 0, Default = 0)] double spokesKPerW) =>
        Impossible.IfNegative(riseK, "K") / (Impossible.UnlessPositive(planeKPerW, "K/W") + Impossible.IfNegative(spokesKPerW, "K/W"));

    private static double PerM(double sheetWPerK, double hWPerM2K) => Math.Sqrt(Impossible.UnlessPositive(hWPerM2K, "W/(m²·K)") / Impossible.UnlessPositive(sheetWPerK, "W/K"));

    // The library's own scaled K₀ and K₁ are wrong up to x = 2 (0.5 % and more against the integral form, at x = 0.056 and 0.5): there the plain ones are scaled here.
    private static double BesselK0e(double x) => x <= 2 ? SpecialFunctions.BesselK0(x) * Math.Exp(x) : SpecialFunctions.BesselK0e(x);

    private static double BesselK1e(double x) => x <= 2 ? SpecialFunctions.BesselK1(x) * Math.Exp(x) : SpecialFunctions.BesselK1e(x);

    private static double BesselI0e(double x) => x < 700 ? SpecialFunctions.BesselI0(x) * Math.Exp(-x) : 1 / Math.Sqrt(2 * Math.PI * x);

    private static double BesselI1e(double x) => x < 700 ? SpecialFunctions.BesselI1(x) * Math.Exp(-x) : 1 / Math.Sqrt(2 * Math.PI * x);
}
