using MathNet.Numerics;

namespace Heatwright.Physics;

/// <summary>How heat runs into a thick cold body: the first seconds of a contact.</summary>
/// <remarks>Half-space solutions; α = k/(ρc). Sources: [carslaw-jaeger-1959] ch. 2, [incropera-dewitt] ch. 5, from memory. Checked: HeatSoakTests.</remarks>
public static class HeatSoak
{
    /// <summary>Diffusivity k/(ρc), m²/s.</summary>
    [Law("diffusivity", "heat flow", "α = k/(ρ·c)", Says = "how fast heat spreads through a material", Unit = "m²/s", Source = "definition", Where = "heat equation", Valid = "conductivity, density and specific heat at one temperature", Example = "conductivity=0.25W/(m·K) density=1140kg/m³ heat=1700J/(kg·K)")]
    public static double DiffusivityM2PerS(
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("ρ", "kg/m³", "density", Name = "density", Min = 0)] double densityKgPerM3,
        [In("c", "J/(kg·K)", "specific heat", Name = "heat", Min = 0)] double heatJPerKgK) =>
        Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)") / (Impossible.UnlessPositive(densityKgPerM3, "kg/m³") * Impossible.UnlessPositive(heatJPerKgK, "J/(kg·K)"));

    /// <summary>Flux into a body whose face is suddenly held ΔT hotter, W/m²: kΔT/√(πα t) = eΔT/√(πt).</summary>
    [Law("wall-step-flux", "work", "q = e·ΔT/√(π·t), e = √(k·ρ·c)", Says = "heat flux into a body suddenly touched by a hotter face", Unit = "W/m²", Source = "carslaw-jaeger-1959", Where = "ch. 2, from memory", Valid = "body thick against √(αt)",
        Example = "effusivity=696 step=200K time=1s")]
    public static double StepFluxWPerM2(
        [In("e", "W·s^½/(m²·K)", "effusivity", Name = "effusivity", Min = 0)] double effusivity,
        [In("ΔT", "K", "step of the face", Name = "step")] double stepK,
        [In("t", "s", "time since contact", Name = "time", Min = 0)] double timeS) =>
        Impossible.UnlessPositive(effusivity, "W·s^½/(m²·K)") * Impossible.UnlessFinite(stepK, "K") / Math.Sqrt(Math.PI * Impossible.UnlessPositive(timeS, "s"));

    /// <summary>Heat taken per area after such a step, J/m²: 2eΔT√(t/π).</summary>
    [Law("wall-step-energy", "work", "Q = 2·e·ΔT·√(t/π)", Says = "heat that soaks into a wall after a step of temperature", Unit = "J/m²", Source = "carslaw-jaeger-1959", Where = "ch. 2, from memory",
        Valid = "body thick against √(αt)", Example = "effusivity=696 step=200K time=1s")]
    public static double StepEnergyJPerM2(
        [In("e", "W·s^½/(m²·K)", "effusivity", Name = "effusivity", Min = 0)] double effusivity,
        [In("ΔT", "K", "step", Name = "step")] double stepK,
        [In("t", "s", "time", Name = "time", Min = 0)] double timeS) =>
        Impossible.UnlessPositive(effusivity, "W·s^½/(m²·K)") * Impossible.UnlessFinite(stepK, "K") * 2 * Math.Sqrt(Impossible.IfNegative(timeS, "s") / Math.PI);

    /// <summary>Rise of a face under constant flux, K: 2q√(t/π)/e.</summary>
    [Law("flux-step-rise", "work", "ΔT = 2·q·√(t/π)/e, e = √(k·ρ·c)", Says = "rise of a face under constant heat flux", Unit = "K", Source = "carslaw-jaeger-1959", Where = "ch. 2, from memory", Valid = "body thick against √(αt)",
        Example = "effusivity=696 flux=100000W/m² time=1s")]
    public static double FluxRiseK(
        [In("e", "W·s^½/(m²·K)", "effusivity", Name = "effusivity", Min = 0)] double effusivity,
        [In("q", "W/m²", "flux", Name = "flux")] double fluxWPerM2,
        [In("t", "s", "time", Name = "time", Min = 0)] double timeS) =>
        2 * Impossible.UnlessFinite(fluxWPerM2, "W/m²") * Math.Sqrt(Impossible.IfNegative(timeS, "s") / Math.PI) / Impossible.UnlessPositive(effusivity, "W·s^½/(m²·K)");

    /// <summary>Share of a face's step that is felt at a depth: erfc(x/(2√(αt))).</summary>
    [Law("depth-share", "work", "θ = erfc(x/(2·√(α·t)))", Says = "how much of a face's step is felt at a depth", Source = "carslaw-jaeger-1959", Where = "ch. 2, from memory", Valid = "body thick against √(αt), face held", Example = "depth=0.5mm diffusivity=1.29e-7m²/s time=1s")]
    public static double DepthShare(
        [In("x", "m", "depth", Name = "depth", Min = 0)] double depthM,
        [In("α", "m²/s", "diffusivity", Name = "diffusivity", Min = 0)] double diffusivityM2PerS,
        [In("t", "s", "time", Name = "time", Min = 0)] double timeS) =>
        SpecialFunctions.Erfc(Impossible.IfNegative(depthM, "m") / (2 * Length(diffusivityM2PerS, timeS)));

    /// <summary>Share of a tool's excess temperature that a body has taken up at a depth through a contact of conductance h.</summary>
    /// <remarks>θ = erfc(η) − e^(hx/k + z²)·erfc(η + z), η = x/(2√(αt)), z = h√(αt)/k; at the face 1 − e^(z²)erfc(z). The product is formed from the
    /// scaled erfcx, which neither overflows nor loses its digits.</remarks>
    [Law("contact-share", "work", "θ = erfc(η) − e^(h·x/k + z²)·erfc(η + z), η = x/(2·√(α·t)), z = h·√(α·t)/k", Says = "how far a body has warmed at a depth under a hot tool", Source = "carslaw-jaeger-1959", Where = "ch. 2, from memory",
        Valid = "tool stays at its temperature, body thick against √(αt)", Example = "depth=0m contact=2000W/(m²·K) conductivity=0.25W/(m·K) diffusivity=1.29e-7m²/s time=1s")]
    public static double ContactShare(
        [In("x", "m", "depth; 0 for the face", Name = "depth", Min = 0, Default = 0)] double depthM,
        [In("h", "W/(m²·K)", "conductance of the contact", Name = "contact", Min = 0)] double hWPerM2K,
        [In("k", "W/(m·K)", "conductivity of the body", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("α", "m²/s", "its diffusivity", Name = "diffusivity", Min = 0)] double diffusivityM2PerS,
        [In("t", "s", "time since contact", Name = "time", Min = 0)] double timeS)
    {
        double length = Length(diffusivityM2PerS, timeS);
        double eta = Impossible.IfNegative(depthM, "m") / (2 * length);
        double z = Impossible.IfNegative(hWPerM2K, "W/(m²·K)") * length / Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)");

        // hx/k + z² = (η + z)² − η², since hx/k = 2ηz.
        return SpecialFunctions.Erfc(eta) - Math.Exp(-eta * eta) * ScaledErfc(eta + z);
    }

    /// <summary>Resistance at the centre of a round source of even flux on a half-space, growing with time, K/W.</summary>
    [Law("disc-soak", "work", "R = 2·√(α·t)/(k·π·a²)·[1/√π − ierfc(a/(2·√(α·t)))]", Says = "thermal resistance of a hot spot on a thick body, growing with time", Unit = "K/W", Source = "carslaw-jaeger-1959", Where = "ch. 10, from memory", Valid = "body large against √(αt)",
        Example = "radius=1.5mm conductivity=0.25W/(m·K) diffusivity=1.29e-7m²/s time=10s")]
    public static double DiscCentreKPerW(
        [In("a", "m", "radius of the source", Name = "radius", Min = 0)] double radiusM,
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("α", "m²/s", "diffusivity", Name = "diffusivity", Min = 0)] double diffusivityM2PerS,
        [In("t", "s", "time", Name = "time", Min = 0)] double timeS)
    {
        double length = Length(diffusivityM2PerS, timeS);
        double x = Impossible.UnlessPositive(radiusM, "m") / (2 * length);

        // 1/√π − ierfc(x) = (1 − e^(−x²))/√π + x·erfc(x): no difference of near-equal numbers at late times.
        double bracket = Numerics.Phi.RisenShare(x * x) / Math.Sqrt(Math.PI) + x * SpecialFunctions.Erfc(x);
        return 2 * length / (Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)") * Math.PI * radiusM * radiusM) * bracket;
    }

    /// <summary>e^(x²)·erfc(x) for x ≥ 0.</summary>
    internal static double ScaledErfc(double x)
    {
        if (x < 5)
        {
            return Math.Exp(x * x) * SpecialFunctions.Erfc(x);
        }

        // Continued fraction of erfc, worked from the tail: at x ≥ 5 forty levels are far below the last bit.
        double tail = 0;
        for (int k = 40; k >= 1; k--)
        {
            tail = 0.5 * k / (x + tail);
        }

        return 1 / (Math.Sqrt(Math.PI) * (x + tail));
    }

    private static double Length(double diffusivityM2PerS, double timeS) => Math.Sqrt(Impossible.UnlessPositive(diffusivityM2PerS, "m²/s") * Impossible.UnlessPositive(timeS, "s"));
}
