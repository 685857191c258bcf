namespace Heatwright.Physics;

/// <summary>Loss of a surface at one temperature, as the three numbers a maker needs.</summary>
/// <param name="LossW">Heat that leaves.</param>
/// <param name="SecantWPerK">Loss over rise: sets the plateau.</param>
/// <param name="TangentWPerK">Slope of the loss: sets the speed near the plateau and the gain for control.</param>
/// <param name="Exponent">Local n in loss ∝ rise^n.</param>
public sealed record LossNumbers(
    [property: Out("W", "loss")] double LossW,
    [property: Out("W/K", "loss over rise, sets the plateau")] double SecantWPerK,
    [property: Out("W/K", "slope of the loss, sets speed and gain")] double TangentWPerK,
    [property: Out("", "local exponent of loss against rise")] double Exponent);

/// <summary>Loss of a bare hot surface: convection that grows with rise^1.25, and radiation.</summary>
/// <remarks>q = c·A·Δ^1.25 + εσA(T⁴ − T_a⁴); G_s = q/Δ; G_t = 1.25cAΔ^0.25 + 4εσAT³; n = G_t/G_s. Doubling the power does not double the rise:
/// dΔ/Δ = (1/n)·dP/P. Source: [incropera-dewitt] ch. 9 laminar exponent, from memory. Checked: LossTests.</remarks>
public static class SurfaceLoss
{
    /// <summary>Loss, secant and tangent conductance and local exponent at a surface temperature above the air's.</summary>
    [Law("surface-loss", "heat flow", "q = c·A·Δ^1.25 + ε·σ·A·(T⁴ − T_a⁴), G_s = q/Δ, G_t = dq/dΔ, n = G_t/G_s", Says = "heat a bare body loses to still air by convection and radiation", Source = "incropera-dewitt",
        Where = "ch. 9, laminar exponent, from memory", Valid = "bare small body in still air", Example = "area=12cm² convection=2.2 emissivity=0.7 surface=300°C around=25°C")]
    public static LossNumbers At(
        [In("A", "m²", "surface", Name = "area", Min = 0)] double areaM2,
        [In("c", "", "convection coefficient, W/(m²·K^1.25)", Name = "convection", Min = 0, Default = 2.2)] double convectionWPerM2K125,
        [In("ε", "", "emissivity", Name = "emissivity", Min = 0, Max = 1)] double emissivity,
        [In("T", "°C", "surface temperature", Name = "surface", Min = -273.15)] double surfaceC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -273.15, Default = 25)] double aroundC)
    {
        Impossible.UnlessPositive(areaM2, "m²");
        Impossible.IfNegative(convectionWPerM2K125, "W/(m²·K^1.25)");
        double riseK = ImpossibleHeat.UnlessAbove(surfaceC, aroundC, "°C") - aroundC;
        double convectionW = convectionWPerM2K125 * areaM2 * Math.Pow(riseK, 1.25);
        double lossW = Impossible.UnlessPositive(convectionW + Radiation.RadiatedW(emissivity, areaM2, surfaceC, aroundC), "W", nameof(emissivity));
        double tangent = 1.25 * convectionW / riseK + 4 * emissivity * Constants.StefanBoltzmann * areaM2 * Math.Pow(ImpossibleHeat.Kelvin(surfaceC), 3);
        return new LossNumbers(lossW, lossW / riseK, tangent, tangent * riseK / lossW);
    }
}
