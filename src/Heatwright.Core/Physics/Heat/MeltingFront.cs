using Heatwright.Numerics;
using MathNet.Numerics;

namespace Heatwright.Physics;

/// <summary>A melting front that runs into a body from a hot wall.</summary>
/// <param name="Lambda">λ in depth = 2λ√(α_l t).</param>
/// <param name="DepthM">Depth at the asked time.</param>
public sealed record MeltFront(
    [property: Out("", "λ in depth = 2λ√(αt)")] double Lambda,
    [property: Out("m", "molten depth")] double DepthM);

/// <summary>Depth of melting from a wall held above the melting point, melt staying where it is.</summary>
/// <remarks>Stefan (body at its melting point) and Neumann (body colder than that). Source: [carslaw-jaeger-1959] ch. 11, from memory. Adding the
/// heat up to the melting point to the latent heat is a short-cut that comes out 37 % too deep on the check case: it is not offered.
/// Checked: HeatSoakTests, against an enthalpy grid.</remarks>
public static class MeltingFront
{
    /// <summary>λ of Stefan's problem: λ·e^(λ²)·erf λ = Ste/√π, Ste = c_lΔT/L.</summary>
    [Law("melting-number", "work", "λ·e^(λ²)·erf λ = Ste/√π", Says = "melting number λ from the Stefan number", Source = "carslaw-jaeger-1959", Where = "ch. 11, from memory",
        Valid = "solid already at its melting point; depth = 2·λ·√(α·t)", Example = "stefan=1")]
    public static double StefanLambda(
        [In("Ste", "", "c·ΔT/L", Name = "stefan", Min = 0, SoftMax = 10)] double stefanNumber)
    {
        double wanted = Impossible.UnlessPositive(stefanNumber, "") / Math.Sqrt(Math.PI);
        double high = 1;
        double Excess(double x) => x * Math.Exp(x * x) * SpecialFunctions.Erf(x) - wanted;
        while (Excess(high) < 0)
        {
            high *= 1.5;
        }

        return Roots.Monotone(Excess, 0, high).X;
    }

    /// <summary>Front into a body that is colder than its melting point, one density for both phases.</summary>
    /// <remarks>k_l(T_w − T_m)e^(−λ²)/(√α_l·erf λ) − k_s(T_m − T₀)e^(−b²λ²)/(√α_s·erfc bλ) = λρL√(πα_l), b = √(α_l/α_s).</remarks>
    [Law("melting-front", "work", "k_l·(T_w−T_m)·e^(−λ²)/(√α_l·erf λ) − k_s·(T_m−T₀)·e^(−b²λ²)/(√α_s·erfc(bλ)) = λ·ρ·L·√(π·α_l), depth = 2·λ·√(α_l·t)", Says = "how deep a hot wall melts into a material", Source = "carslaw-jaeger-1959",
        Where = "ch. 11, Neumann, from memory", Valid = "melt stays in place, body thick against √(αt)",
        Example = "wall=350°C melts=220°C from=25°C latent=80kJ/kg conductivity=0.25W/(m·K) density=1140kg/m³ solid=1700J/(kg·K) liquid=2500J/(kg·K) time=1s")]
    public static MeltFront Into(
        [In("T_w", "°C", "wall temperature", Name = "wall", Min = -273.15)] double wallC,
        [In("T_m", "°C", "melting point", Name = "melts", Min = -273.15)] double meltsC,
        [In("T₀", "°C", "temperature of the body before", Name = "from", Min = -273.15, Default = 25)] double fromC,
        [In("L", "J/kg", "heat of fusion as supplied", Name = "latent", Min = 0)] double latentJPerKg,
        [In("k", "W/(m·K)", "conductivity, both phases", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("ρ", "kg/m³", "density, both phases", Name = "density", Min = 0)] double densityKgPerM3,
        [In("c_s", "J/(kg·K)", "specific heat of the solid", Name = "solid", Min = 0)] double solidJPerKgK,
        [In("c_l", "J/(kg·K)", "specific heat of the melt", Name = "liquid", Min = 0)] double liquidJPerKgK,
        [In("t", "s", "time", Name = "time", Min = 0)] double timeS)
    {
        double over = ImpossibleHeat.UnlessAbove(wallC, meltsC, "°C") - meltsC;
        double under = Impossible.Unless(meltsC, Impossible.UnlessFinite(fromC, "°C"), double.MaxValue, "°C") - fromC;
        double liquid = HeatSoak.DiffusivityM2PerS(conductivityWPerMK, densityKgPerM3, liquidJPerKgK);
        double solid = HeatSoak.DiffusivityM2PerS(conductivityWPerMK, densityKgPerM3, solidJPerKgK);
        double b = Math.Sqrt(liquid / solid);
        double latent = densityKgPerM3 * Impossible.UnlessPositive(latentJPerKg, "J/kg") * Math.Sqrt(Math.PI * liquid);

        // Flux from the melt less flux into the solid less heat of melting: falls steadily with λ. e^(−x²)/erfc x is 1/erfcx x.
        double Short(double x) => conductivityWPerMK * over * Math.Exp(-x * x) / (Math.Sqrt(liquid) * SpecialFunctions.Erf(x))
            - conductivityWPerMK * under / (Math.Sqrt(solid) * HeatSoak.ScaledErfc(b * x)) - x * latent;
        double lambda = Roots.Monotone(Short, 1e-12, 10).X;
        return new MeltFront(lambda, 2 * lambda * Math.Sqrt(liquid * Impossible.IfNegative(timeS, "s")));
    }
}
