using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>First term of the warming of a slab.</summary>
/// <param name="Zeta">First root of ζ·tan ζ = Bi.</param>
/// <param name="Factor">C₁.</param>
/// <param name="CentreShare">Temperature difference left at the middle at the asked time, over the one at the start.</param>
public sealed record SlabTerm(
    [property: Out("", "first root ζ", Name = "root")] double Zeta,
    [property: Out("", "factor C₁")] double Factor,
    [property: Out("", "difference left at the middle over the one at the start")] double CentreShare);

/// <summary>A slab heated from both faces (or from one, the other insulated), one term of the series.</summary>
/// <remarks>ζ·tan ζ = Bi, C₁ = 4 sin ζ/(2ζ + sin 2ζ), θ = C₁·e^(−ζ²·Fo). Source: [incropera-dewitt] ch. 5 and Table 5.1, from memory. Checked: HeatSoakTests.</remarks>
public static class PlaneWall
{
    /// <summary>Root, factor and share left at the middle.</summary>
    [Law("slab-soak", "heat flow", "θ = C₁·e^(−ζ²·Fo), ζ·tan ζ = Bi = h·L/k, Fo = α·t/L²", Says = "how far the middle of a slab has warmed through", Source = "incropera-dewitt", Where = "ch. 5, one-term solution, from memory", Valid = "Fo above 0.2; L is half the thickness when heated from both faces",
        Example = "half-thickness=2mm contact=200W/(m²·K) conductivity=0.25W/(m·K) diffusivity=1.29e-7m²/s time=20s")]
    public static SlabTerm Middle(
        [In("L", "m", "half thickness", Name = "half-thickness", Min = 0)] double halfThicknessM,
        [In("h", "W/(m²·K)", "conductance of the faces", Name = "contact", Min = 0)] double hWPerM2K,
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("α", "m²/s", "diffusivity", Name = "diffusivity", Min = 0)] double diffusivityM2PerS,
        [In("t", "s", "time", Name = "time", Min = 0)] double timeS)
    {
        double biot = Impossible.UnlessPositive(Fin.Biot(hWPerM2K, halfThicknessM, conductivityWPerMK), "", nameof(hWPerM2K));
        double zeta = Roots.Monotone(x => (x * Math.Sin(x)) - (biot * Math.Cos(x)), 0, 0.5 * Math.PI).X;
        double factor = 4 * Math.Sin(zeta) / ((2 * zeta) + Math.Sin(2 * zeta));
        double fourier = Impossible.UnlessPositive(diffusivityM2PerS, "m²/s") * Impossible.IfNegative(timeS, "s") / (halfThicknessM * halfThicknessM);
        return new SlabTerm(zeta, factor, factor * Math.Exp(-zeta * zeta * fourier));
    }
}
