namespace Heatwright.Physics;

/// <summary>Published correlations of convection, in their own numbers (Nusselt, Rayleigh, Reynolds, Prandtl).</summary>
/// <remarks>Formulas from memory of the cited papers unless said; no correlation is better than ±20 % on a real tool (k = 2, common practice).
/// Checked: LossTests.</remarks>
public static class Nusselt
{
    /// <summary>Horizontal cylinder in still air, Ra ≤ 1e12.</summary>
    /// <remarks>Nu = {0.60 + 0.387 Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}². Source: [churchill-chu-1975-cylinder].</remarks>
    public static double Cylinder(double rayleigh, double prandtl) => Turbulent(0.60, 0.559, rayleigh, prandtl);

    /// <summary>Horizontal cylinder in still air, laminar form, 1e-6 &lt; Ra &lt; 1e9.</summary>
    /// <remarks>Nu = 0.36 + 0.518 Ra^(1/4)/[1 + (0.559/Pr)^(9/16)]^(4/9). Source: [churchill-chu-1975-cylinder].</remarks>
    public static double CylinderLaminar(double rayleigh, double prandtl) => Laminar(0.36, 0.518, 0.559, rayleigh, prandtl);

    /// <summary>Vertical plate in still air, Ra ≤ 1e12.</summary>
    /// <remarks>Nu = {0.825 + 0.387 Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}². Source: [churchill-chu-1975-plate].</remarks>
    public static double Plate(double rayleigh, double prandtl) => Turbulent(0.825, 0.492, rayleigh, prandtl);

    /// <summary>Vertical plate in still air, laminar form, Ra ≤ 1e9: the better one there.</summary>
    /// <remarks>Nu = 0.68 + 0.670 Ra^(1/4)/[1 + (0.492/Pr)^(9/16)]^(4/9). Source: [churchill-chu-1975-plate].</remarks>
    public static double PlateLaminar(double rayleigh, double prandtl) => Laminar(0.68, 0.670, 0.492, rayleigh, prandtl);

    /// <summary>Cylinder across moving air, Re·Pr ≥ 0.2.</summary>
    /// <remarks>Nu = 0.3 + 0.62 Re^½ Pr^⅓/[1 + (0.4/Pr)^⅔]^¼ · [1 + (Re/282000)^⅝]^⅘. Source: [churchill-bernstein-1977].</remarks>
    public static double CylinderInWind(double reynolds, double prandtl)
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
