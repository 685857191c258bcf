namespace Heatwright.Physics;

/// <summary>Loss coefficients of surfaces in air, W/(m²·K): the correlations of <see cref="Nusselt"/> with air at the film temperature.</summary>
/// <remarks>±20 % (k = 2, common practice). Short tips, length under ten diameters, lie outside the correlations: ±20 to 30 %.
/// Checked: LossTests.</remarks>
public static class Convection
{
    /// <summary>Horizontal cylinder in still air, h.</summary>
    [Law("convection-cylinder", "heat flow", "h = Nu·k/D, Nu = {0.60 + 0.387·Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}²", Says = "heat loss coefficient of a level cylinder in still air", Unit = "W/(m²·K)",
        Source = "churchill-chu-1975-cylinder", Where = "from memory", Valid = "Ra up to 1e12, still air, ±20 %", Example = "diameter=5mm surface=350°C around=25°C")]
    public static double CylinderWPerM2K(
        [In("D", "m", "diameter", Name = "diameter", Min = 0)] double diameterM,
        [In("T_s", "°C", "surface temperature", Name = "surface", Min = -100, SoftMax = 725)] double surfaceC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -100, Default = 25)] double aroundC)
    {
        var air = FilmAir(surfaceC, aroundC);
        return Nusselt.Cylinder(Nusselt.RayleighInAir(diameterM, surfaceC, aroundC), air.Prandtl) * air.ConductivityWPerMK / diameterM;
    }

    /// <summary>Vertical plate in still air, h; the laminar form where it holds.</summary>
    [Law("convection-plate", "heat flow", "h = Nu·k/L, Nu = 0.68 + 0.670·Ra^(1/4)/[1 + (0.492/Pr)^(9/16)]^(4/9) up to Ra 1e9", Says = "heat loss coefficient of an upright plate in still air", Unit = "W/(m²·K)",
        Source = "churchill-chu-1975-plate", Where = "from memory", Valid = "still air; above Ra 1e9 the full form is used; ±20 %", Example = "height=50mm surface=45°C around=25°C")]
    public static double PlateWPerM2K(
        [In("L", "m", "height", Name = "height", Min = 0)] double heightM,
        [In("T_s", "°C", "surface temperature", Name = "surface", Min = -100, SoftMax = 725)] double surfaceC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -100, Default = 25)] double aroundC)
    {
        var air = FilmAir(surfaceC, aroundC);
        double rayleigh = Nusselt.RayleighInAir(heightM, surfaceC, aroundC);
        double nusselt = rayleigh <= 1e9 ? Nusselt.PlateLaminar(rayleigh, air.Prandtl) : Nusselt.Plate(rayleigh, air.Prandtl);
        return nusselt * air.ConductivityWPerMK / heightM;
    }

    /// <summary>Cylinder across moving air, h of the moving air alone.</summary>
    [Law("convection-wind", "heat flow", "h = Nu·k/D, Nu = 0.3 + 0.62·Re^½·Pr^⅓/[1 + (0.4/Pr)^⅔]^¼·[1 + (Re/282000)^⅝]^⅘", Says = "heat loss coefficient of a cylinder across moving air", Unit = "W/(m²·K)",
        Source = "churchill-bernstein-1977", Where = "formula as restated in public course code", Valid = "Re·Pr at least 0.2, ±20 %",
        Example = "diameter=5mm surface=350°C around=25°C speed=1m/s")]
    public static double WindWPerM2K(
        [In("D", "m", "diameter", Name = "diameter", Min = 0)] double diameterM,
        [In("T_s", "°C", "surface temperature", Name = "surface", Min = -100, SoftMax = 725)] double surfaceC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -100, Default = 25)] double aroundC,
        [In("v", "m/s", "air speed across it", Name = "speed", Min = 0)] double speedMPerS)
    {
        var air = FilmAir(surfaceC, aroundC);
        double reynolds = Impossible.IfNegative(speedMPerS, "m/s") * Impossible.UnlessPositive(diameterM, "m") / air.KinematicM2PerS;
        return Nusselt.CylinderInWind(reynolds, air.Prandtl) * air.ConductivityWPerMK / diameterM;
    }

    /// <summary>Horizontal cylinder, still air and a draught or a waving hand together, h.</summary>
    [Law("convection-mixed", "heat flow", "h³ = h_still³ + h_moving³", Says = "heat loss coefficient of a cylinder in still air and a draught together", Unit = "W/(m²·K)", Source = "incropera-dewitt", Where = "sec. 9.9, from memory",
        Valid = "air helps or crosses; an order of magnitude", Example = "diameter=5mm surface=350°C around=25°C speed=0.3m/s")]
    public static double MixedWPerM2K(
        [In("D", "m", "diameter", Name = "diameter", Min = 0)] double diameterM,
        [In("T_s", "°C", "surface temperature", Name = "surface", Min = -100, SoftMax = 725)] double surfaceC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -100, Default = 25)] double aroundC,
        [In("v", "m/s", "air speed across it", Name = "speed", Min = 0, Default = 0.3)] double speedMPerS) =>
        Nusselt.Mixed(
            CylinderWPerM2K(diameterM, surfaceC, aroundC),
            Impossible.IfNegative(speedMPerS, "m/s") == 0 ? 0 : WindWPerM2K(diameterM, surfaceC, aroundC, speedMPerS));

    private static AirState FilmAir(double surfaceC, double aroundC) => Air.At(0.5 * (ImpossibleHeat.Kelvin(surfaceC) + ImpossibleHeat.Kelvin(aroundC)));
}
