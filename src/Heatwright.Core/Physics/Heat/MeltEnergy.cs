namespace Heatwright.Physics;

/// <summary>Heat to bring a material from cold through its melting point.</summary>
/// <param name="JPerKg">Per mass.</param>
/// <param name="JPerM3">Per volume.</param>
public sealed record MeltNeeds(
    [property: Out("J/kg", "heat per mass", Name = "heat-per-mass")] double JPerKg,
    [property: Out("J/m³", "heat per volume", Name = "heat-per-volume")] double JPerM3);

/// <summary>Energy and power of cutting, melting and drawing with heat.</summary>
/// <remarks>Material values stand in data/heat/melt-materials.json with their marks. Checked: WorkTests.</remarks>
public static class MeltEnergy
{
    /// <summary>c_s(T_m − T₀) + L + c_l(T_e − T_m), and that per volume.</summary>
    [Law("melt-energy", "work", "E/m = c_s·(T_m − T₀) + L + c_l·(T_e − T_m)", Says = "heat to warm and melt a material, per mass and volume", Source = "definition", Where = "sensible and latent heat",
        Valid = "L as supplied: crystallinity × heat of fusion of the crystal", Example = "solid=1700J/(kg·K) melts=220°C latent=80kJ/kg liquid=2500J/(kg·K) density=1140kg/m³ from=25°C to=240°C")]
    public static MeltNeeds Needs(
        [In("c_s", "J/(kg·K)", "specific heat of the solid", Name = "solid", Min = 0)] double solidJPerKgK,
        [In("T_m", "°C", "melting point", Name = "melts", Min = -273.15)] double meltsC,
        [In("L", "J/kg", "heat of fusion as supplied", Name = "latent", Min = 0)] double latentJPerKg,
        [In("c_l", "J/(kg·K)", "specific heat of the melt", Name = "liquid", Min = 0)] double liquidJPerKgK,
        [In("ρ", "kg/m³", "density", Name = "density", Min = 0)] double densityKgPerM3,
        [In("T₀", "°C", "temperature before", Name = "from", Min = -273.15, Default = 25)] double fromC,
        [In("T_e", "°C", "temperature of the melt at the end", Name = "to", Min = -273.15)] double toC)
    {
        ImpossibleHeat.Kelvin(fromC);
        Impossible.Unless(meltsC, fromC, double.MaxValue, "°C");
        Impossible.Unless(toC, meltsC, double.MaxValue, "°C");
        double perKg = Impossible.UnlessPositive(solidJPerKgK, "J/(kg·K)") * (meltsC - fromC) + Impossible.IfNegative(latentJPerKg, "J/kg")
            + Impossible.UnlessPositive(liquidJPerKgK, "J/(kg·K)") * (toC - meltsC);
        return new MeltNeeds(perKg, perKg * Impossible.UnlessPositive(densityKgPerM3, "kg/m³"));
    }

    /// <summary>Heat to cut a round rope through, J: cross-section × kerf × fill × heat per volume.</summary>
    [Law("cut-energy", "work", "E = (π/4)·D²·kerf·fill·(E/V)", Says = "heat to cut a round rope through", Unit = "J", Source = "definition", Where = "volume molten in the kerf", Valid = "all of the kerf melts, nothing else does",
        Example = "diameter=10mm kerf=1.5mm fill=0.8 heat=5.2611e8J/m³")]
    public static double CutJ(
        [In("D", "m", "rope diameter", Name = "diameter", Min = 0)] double diameterM,
        [In("w", "m", "width of the kerf", Name = "kerf", Min = 0)] double kerfM,
        [In("f", "", "share of the cross-section that is material", Name = "fill", Min = 0, Max = 1, Default = 1)] double fill,
        [In("E/V", "J/m³", "heat per volume", Name = "heat", Min = 0)] double heatJPerM3) =>
        Math.PI / 4 * Math.Pow(Impossible.UnlessPositive(diameterM, "m"), 2) * Impossible.UnlessPositive(kerfM, "m") * Impossible.Unless(fill, 0, 1, "") * Impossible.UnlessPositive(heatJPerM3, "J/m³");

    /// <summary>Power of a steady cut through film or sheet, W: thickness × kerf × speed × heat per volume, over the share that goes into the cut.</summary>
    [Law("cut-power", "work", "P = t·kerf·v·(E/V)/η", Says = "power of a steady cut through film or sheet", Unit = "W", Source = "definition", Where = "volume molten a second", Valid = "η 0.5 to 0.85 for cutting (common practice)",
        Example = "thickness=0.1mm kerf=1mm speed=20mm/s heat=4.559e8J/m³ share=1")]
    public static double CutPowerW(
        [In("t", "m", "thickness", Name = "thickness", Min = 0)] double thicknessM,
        [In("w", "m", "width of the kerf", Name = "kerf", Min = 0)] double kerfM,
        [In("v", "m/s", "cutting speed", Name = "speed", Min = 0)] double speedMPerS,
        [In("E/V", "J/m³", "heat per volume", Name = "heat", Min = 0)] double heatJPerM3,
        [In("η", "", "share of the heat that goes into the cut", Name = "share", Min = 0, Max = 1, Default = 0.7)] double share) =>
        JobPowerW(Impossible.IfNegative(speedMPerS, "m/s"), Impossible.UnlessPositive(thicknessM, "m") * Impossible.UnlessPositive(kerfM, "m") * Impossible.UnlessPositive(heatJPerM3, "J/m³"), share);

    /// <summary>Mean power of a job, W: pieces a second × heat a piece, over the share that goes into the work.</summary>
    [Law("job-power", "work", "P = rate·E/η", Says = "mean power of a job of so many pieces", Unit = "W", Source = "common practice", Where = "η 0.5 to 0.85 for cutting: the rest heats neighbours", Valid = "mean over many pieces",
        Example = "rate=2/min energy=67J share=0.7")]
    public static double JobPowerW(
        [In("rate", "1/s", "pieces a second", Name = "rate", Min = 0)] double ratePerS,
        [In("E", "J", "heat a piece", Name = "energy", Min = 0)] double energyJ,
        [In("η", "", "share of the heat that goes into the work", Name = "share", Min = 0, Max = 1, Default = 0.7)] double share) =>
        Impossible.IfNegative(ratePerS, "1/s") * Impossible.IfNegative(energyJ, "J") / Impossible.Unless(Impossible.UnlessPositive(share, ""), 0, 1, "", nameof(share));

    /// <summary>How fast a power melts material, kg/s.</summary>
    [Law("melt-rate", "work", "dm/dt = P·η/(E/m)", Says = "how fast a power melts material", Unit = "kg/s", Source = "definition", Where = "heat balance", Valid = "steady feed", Example = "power=10W share=0.7 heat=308600J/kg")]
    public static double RateKgPerS(
        [In("P", "W", "power", Name = "power", Min = 0)] double powerW,
        [In("η", "", "share of the heat that goes into the work", Name = "share", Min = 0, Max = 1, Default = 0.7)] double share,
        [In("E/m", "J/kg", "heat per mass", Name = "heat", Min = 0)] double heatJPerKg) =>
        Impossible.IfNegative(powerW, "W") * Impossible.Unless(share, 0, 1, "") / Impossible.UnlessPositive(heatJPerKg, "J/kg");
}
