namespace Heatwright.Physics;

/// <summary>Published correlations of convection, in their own numbers (Nusselt, Rayleigh, Reynolds, Prandtl).</summary>
/// <remarks>Formulas from memory of the cited papers unless said; no correlation is better than ±20 % on a real tool (k = 2, common practice).
/// Checked: LossTests.</remarks>
public static class Nusselt
{
    /// <summary>Horizontal cylinder in still air, Ra ≤ 1e12.</summary>
    /// <remarks>Nu = {0.60 + 0.387 Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}². Source: [churchill-chu-1975-cylinder].</remarks>
    [Law("nusselt-cylinder", "heat flow", "Nu = {0.60 + 0.387·Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}²", Says = "Nusselt number of a horizontal cylinder in still fluid", Source = "churchill-chu-1975-cylinder", Where = "from memory",
        Valid = "Ra up to 1e12; ±20 % on a real tool", Example = "rayleigh=1000 prandtl=0.7")]
    public static double Cylinder(
        [In("Ra", "", "Rayleigh number", Name = "rayleigh", Min = 0, Max = 1e12)] double rayleigh,
        [In("Pr", "", "Prandtl number; 0.7 for air", Name = "prandtl", Min = 0, Default = 0.7)] double prandtl) => Turbulent(0.60, 0.559, rayleigh, prandtl);

    /// <summary>Horizontal cylinder in still air, laminar form, 1e-6 &lt; Ra &lt; 1e9.</summary>
    /// <remarks>Nu = 0.36 + 0.518 Ra^(1/4)/[1 + (0.559/Pr)^(9/16)]^(4/9). Source: [churchill-chu-1975-cylinder].</remarks>
    [Law("nusselt-cylinder-laminar", "heat flow", "Nu = 0.36 + 0.518·Ra^(1/4)/[1 + (0.559/Pr)^(9/16)]^(4/9)", Says = "Nusselt number of a horizontal cylinder, laminar form", Source = "churchill-chu-1975-cylinder", Where = "from memory",
        Valid = "Ra up to 1e9; ±20 % on a real tool", Example = "rayleigh=1000 prandtl=0.7")]
    public static double CylinderLaminar(
        [In("Ra", "", "Rayleigh number", Name = "rayleigh", Min = 0, Max = 1e9)] double rayleigh,
        [In("Pr", "", "Prandtl number; 0.7 for air", Name = "prandtl", Min = 0, Default = 0.7)] double prandtl) => Laminar(0.36, 0.518, 0.559, rayleigh, prandtl);

    /// <summary>Vertical plate in still air, Ra ≤ 1e12.</summary>
    /// <remarks>Nu = {0.825 + 0.387 Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}². Source: [churchill-chu-1975-plate].</remarks>
    [Law("nusselt-plate", "heat flow", "Nu = {0.825 + 0.387·Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}²", Says = "Nusselt number of a vertical plate in still fluid", Source = "churchill-chu-1975-plate", Where = "from memory",
        Valid = "Ra up to 1e12; ±20 % on a real tool", Example = "rayleigh=1000 prandtl=0.7")]
    public static double Plate(
        [In("Ra", "", "Rayleigh number", Name = "rayleigh", Min = 0, Max = 1e12)] double rayleigh,
        [In("Pr", "", "Prandtl number; 0.7 for air", Name = "prandtl", Min = 0, Default = 0.7)] double prandtl) => Turbulent(0.825, 0.492, rayleigh, prandtl);

    /// <summary>Vertical plate in still air, laminar form, Ra ≤ 1e9: the better one there.</summary>
    /// <remarks>Nu = 0.68 + 0.670 Ra^(1/4)/[1 + (0.492/Pr)^(9/16)]^(4/9). Source: [churchill-chu-1975-plate].</remarks>
    [Law("nusselt-plate-laminar", "heat flow", "Nu = 0.68 + 0.670·Ra^(1/4)/[1 + (0.492/Pr)^(9/16)]^(4/9)", Says = "Nusselt number of a vertical plate, laminar form", Source = "churchill-chu-1975-plate", Where = "from memory",
        Valid = "Ra up to 1e9; ±20 % on a real tool", Example = "rayleigh=1000 prandtl=0.7")]
    public static double PlateLaminar(
        [In("Ra", "", "Rayleigh number", Name = "rayleigh", Min = 0, Max = 1e9)] double rayleigh,
        [In("Pr", "", "Prandtl number; 0.7 for air", Name = "prandtl", Min = 0, Default = 0.7)] double prandtl) => Laminar(0.68, 0.670, 0.492, rayleigh, prandtl);

    /// <summary>Cylinder across moving air, Re·Pr ≥ 0.2.</summary>
    /// <remarks>Nu = 0.3 + 0.62 Re^½ Pr^⅓/[1 + (0.4/Pr)^⅔]^¼ · [1 + (Re/282000)^⅝]^⅘. Source: [churchill-bernstein-1977].</remarks>
    [Law("nusselt-wind", "heat flow", "Nu = 0.3 + 0.62·Re^½·Pr^⅓/[1 + (0.4/Pr)^⅔]^¼·[1 + (Re/282000)^⅝]^⅘", Says = "Nusselt number of a cylinder across moving fluid", Source = "churchill-bernstein-1977", Where = "formula as restated in public course code",
        Valid = "Re·Pr at least 0.2; ±20 % on a real tool", Example = "reynolds=6071 prandtl=0.7")]
    public static double CylinderInWind(
        [In("Re", "", "Reynolds number", Name = "reynolds", Min = 0, SoftMin = 0.3, SoftMax = 1e7)] double reynolds,
        [In("Pr", "", "Prandtl number; 0.7 for air", Name = "prandtl", Min = 0, Default = 0.7)] double prandtl)
    {
        Impossible.IfNegative(reynolds, "");
        Impossible.UnlessPositive(prandtl, "");
        double laminar = 0.62 * Math.Sqrt(reynolds) * Math.Cbrt(prandtl) / Math.Pow(1 + Math.Pow(0.4 / prandtl, 2.0 / 3), 0.25);
        return 0.3 + laminar * Math.Pow(1 + Math.Pow(reynolds / 282000, 0.625), 0.8);
    }

    /// <summary>Still and moving air together, helping or across: Nu³ = Nu_N³ + Nu_F³. An order of magnitude.</summary>
    /// <remarks>Source: [incropera-dewitt] sec. 9.9, from memory. Exponents of 3.5 to 4 are also used for cylinders: about 4 % apart.</remarks>
    public static double Mixed(double still, double moving) =>
        Math.Cbrt(Math.Pow(Impossible.IfNegative(still, ""), 3) + Math.Pow(Impossible.IfNegative(moving, ""), 3));

    /// <summary>Rayleigh number g·|ΔT|·L³/(T_film·ν·α) of a surface in air, properties at the film temperature.</summary>
    public static double RayleighInAir(double lengthM, double surfaceC, double aroundC)
    {
        Impossible.UnlessPositive(lengthM, "m");
        double filmK = 0.5 * (ImpossibleHeat.Kelvin(surfaceC) + ImpossibleHeat.Kelvin(aroundC));
        var air = Air.At(filmK);
        return Constants.GravityMPerS2 / filmK * Math.Abs(surfaceC - aroundC) * Math.Pow(lengthM, 3) / (air.KinematicM2PerS * air.DiffusivityM2PerS);
    }

    private static double Turbulent(double still, double prandtlRatio, double rayleigh, double prandtl)
    {
        Impossible.Unless(rayleigh, 0, 1e12, "");
        Impossible.UnlessPositive(prandtl, "");
        double shape = Math.Pow(1 + Math.Pow(prandtlRatio / prandtl, 9.0 / 16), 8.0 / 27);
        double root = still + 0.387 * Math.Pow(rayleigh, 1.0 / 6) / shape;
        return root * root;
    }

    private static double Laminar(double still, double factor, double prandtlRatio, double rayleigh, double prandtl)
    {
        Impossible.Unless(rayleigh, 0, 1e9, "");
        Impossible.UnlessPositive(prandtl, "");
        return still + factor * Math.Pow(rayleigh, 0.25) / Math.Pow(1 + Math.Pow(prandtlRatio / prandtl, 9.0 / 16), 4.0 / 9);
    }
}
