using MathNet.Numerics;

namespace Heatwright.Physics;

/// <summary>Resistance from a round source on a round plate with a cooled back.</summary>
/// <param name="MeanKPerW">Spreading part, mean over the source, by the series.</param>
/// <param name="CentreKPerW">Spreading part at the centre of the source, by the series.</param>
/// <param name="ClosedKPerW">Spreading part, mean, by the closed form: 4 to 7 % low on the checks.</param>
/// <param name="ThroughKPerW">Plate taken as a plain slab.</param>
/// <param name="FilmKPerW">From its back to the air.</param>
public sealed record PlateSpreading(
    [property: Out("K/W", "spreading part, mean over the source", Name = "spreading-mean")] double MeanKPerW,
    [property: Out("K/W", "spreading part at the centre", Name = "spreading-centre")] double CentreKPerW,
    [property: Out("K/W", "spreading part, closed form", Name = "spreading-closed")] double ClosedKPerW,
    [property: Out("K/W", "plain slab", Name = "slab")] double ThroughKPerW,
    [property: Out("K/W", "back to air", Name = "film")] double FilmKPerW)
{
    /// <summary>All three in a row, mean over the source.</summary>
    [Out("K/W", "source to air, mean over the source", Name = "total")]
    public double TotalKPerW => MeanKPerW + ThroughKPerW + FilmKPerW;
}

/// <summary>Heat that must spread out of a small round contact.</summary>
/// <remarks>Sources: [carslaw-jaeger-1959], [yovanovich-1998] and [lee-1995], all from memory. Checked: SpreadingTests.</remarks>
public static class Spreading
{
    /// <summary>Terms of the series: the mean stands within 1e-6 at this count, the centre within 4e-5.</summary>
    private const int Terms = 2000;

    private static readonly double[] Zeros = BesselZeros();

    /// <summary>Half-space, source at one temperature: 1/(4ka), K/W.</summary>
    [Law("spreading-isothermal", "heat flow", "R = 1/(4·k·a)", Says = "thermal resistance into a thick body from a source at one temperature", Unit = "K/W", Source = "carslaw-jaeger-1959", Where = "sec. 8.2, from memory", Valid = "body large against the source",
        Example = "conductivity=0.25W/(m·K) radius=1.5mm")]
    public static double IsothermalKPerW(
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("a", "m", "radius of the source", Name = "radius", Min = 0)] double radiusM) => 1 / (4 * Ka(conductivityWPerMK, radiusM));

    /// <summary>Half-space, even flux, mean over the source: 8/(3π²ka), K/W.</summary>
    [Law("spreading-mean", "heat flow", "R = 8/(3·π²·k·a)", Says = "thermal resistance into a thick body, mean over an even source", Unit = "K/W", Source = "carslaw-jaeger-1959", Where = "sec. 8.2, from memory", Valid = "body large against the source",
        Example = "conductivity=0.25W/(m·K) radius=1.5mm")]
    public static double MeanKPerW(
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("a", "m", "radius of the source", Name = "radius", Min = 0)] double radiusM) => 8 / (3 * Math.PI * Math.PI * Ka(conductivityWPerMK, radiusM));

    /// <summary>Half-space, even flux, centre of the source: 1/(πka), K/W.</summary>
    [Law("spreading-centre", "heat flow", "R = 1/(π·k·a)", Says = "thermal resistance into a thick body, hottest point of an even source", Unit = "K/W", Source = "carslaw-jaeger-1959", Where = "sec. 8.2, from memory", Valid = "body large against the source",
        Example = "conductivity=0.25W/(m·K) radius=1.5mm")]
    public static double CentreKPerW(
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("a", "m", "radius of the source", Name = "radius", Min = 0)] double radiusM) => 1 / (Math.PI * Ka(conductivityWPerMK, radiusM));

    /// <summary>Round source on a round plate, rim insulated, back cooled by h, even flux.</summary>
    /// <remarks>Mean: 4/(πkaε)·Σφ(δ)J₁²(δε)/(δ³J₀²(δ)); centre: 2/(πka)·ΣφJ₁(δε)/(δ²J₀²(δ)); ε = a/b, δ zeros of J₁,
    /// φ = (tanh δt/b + δ/Bi)/(1 + (δ/Bi)·tanh δt/b), Bi = hb/k.</remarks>
    [Law("spreading-resistance", "heat flow", "R = 4/(π·k·a·ε)·Σ φ(δ)·J₁²(δε)/(δ³·J₀²(δ)) + t/(k·π·b²) + 1/(h·π·b²)", Says = "thermal resistance from a round source through a plate to air", Source = "yovanovich-1998", Where = "ch. 3, from memory; closed form of [lee-1995]",
        Valid = "round source and plate, even flux, rim insulated", Example = "source=1.5mm plate=15mm thickness=1mm conductivity=200W/(m·K) loss=50W/(m²·K)")]
    public static PlateSpreading OnPlate(
        [In("a", "m", "radius of the source", Name = "source", Min = 0)] double sourceM,
        [In("b", "m", "radius of the plate", Name = "plate", Min = 0)] double plateM,
        [In("t", "m", "thickness of the plate", Name = "thickness", Min = 0)] double thicknessM,
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("h", "W/(m²·K)", "loss coefficient of the back", Name = "loss", Min = 0)] double hWPerM2K)
    {
        double ka = Ka(conductivityWPerMK, sourceM);
        double epsilon = sourceM / ImpossibleHeat.UnlessAbove(plateM, sourceM, "m");
        double tau = Impossible.UnlessPositive(thicknessM, "m") / plateM;
        double biot = Impossible.UnlessPositive(hWPerM2K, "W/(m²·K)") * plateM / conductivityWPerMK;
        var (mean, centre) = Series(epsilon, tau, biot, Terms);
        double closed = 0.5 * Math.Pow(1 - epsilon, 1.5) * Phi(Math.PI + 1 / (Math.Sqrt(Math.PI) * epsilon), tau, biot) / (Math.Sqrt(Math.PI) * ka);
        double face = Math.PI * plateM * plateM;
        return new PlateSpreading(mean / ka, centre / ka, closed, thicknessM / (conductivityWPerMK * face), 1 / (hWPerM2K * face));
    }

    /// <summary>Mean and centre sums of the series with so many terms, in units of 1/(ka).</summary>
    internal static (double Mean, double Centre) Series(double epsilon, double tau, double biot, int terms)
    {
        double mean = 0;
        double centre = 0;
        for (int i = 0; i < terms; i++)
        {
            double zero = Zeros[i];
            double j0 = SpecialFunctions.BesselJ(0, zero);
            double j1 = SpecialFunctions.BesselJ(1, zero * epsilon);
            double common = Phi(zero, tau, biot) * j1 / (zero * zero * j0 * j0);
            mean += common * j1 / zero;
            centre += common;
        }

        return (4 / (Math.PI * epsilon) * mean, 2 / Math.PI * centre);
    }

    private static double Phi(double delta, double tau, double biot)
    {
        double tanh = Math.Tanh(delta * tau);
        return (tanh + delta / biot) / (1 + delta / biot * tanh);
    }

    private static double Ka(double conductivityWPerMK, double radiusM) => Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)") * Impossible.UnlessPositive(radiusM, "m");

    /// <summary>Zeros of J₁ from McMahon's first terms, polished by Newton steps: J₁' = J₀ − J₁/x.</summary>
    private static double[] BesselZeros()
    {
        double[] zeros = new double[Terms];
        for (int i = 0; i < Terms; i++)
        {
            double b = (i + 1.25) * Math.PI;
            double x = b - 3 / (8 * b);
            for (int step = 0; step < 4; step++)
            {
                double j1 = SpecialFunctions.BesselJ(1, x);
                x -= j1 / (SpecialFunctions.BesselJ(0, x) - j1 / x);
            }

            zeros[i] = x;
        }

        return zeros;
    }
}
