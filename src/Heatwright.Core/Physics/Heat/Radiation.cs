namespace Heatwright.Physics;

/// <summary>Heat that leaves a surface as radiation to large surroundings.</summary>
/// <remarks>q = εσA(T⁴ − T_a⁴), kelvin. Source: [incropera-dewitt] ch. 1, from memory. Checked: LossTests.</remarks>
public static class Radiation
{
    /// <summary>Radiated power to surroundings at air temperature, W.</summary>
    [Law("radiated-power", "heat flow", "q = ε·σ·A·(T⁴ − T_a⁴)", Says = "heat that a hot surface radiates", Unit = "W", Source = "incropera-dewitt", Where = "ch. 1, from memory",
        Valid = "small grey body in large surroundings", Example = "emissivity=0.7 area=12cm² surface=350°C around=25°C")]
    public static double RadiatedW(
        [In("ε", "", "emissivity", Name = "emissivity", Min = 0, Max = 1)] double emissivity,
        [In("A", "m²", "surface", Name = "area", Min = 0)] double areaM2,
        [In("T", "°C", "surface temperature", Name = "surface", Min = -273.15)] double surfaceC,
        [In("T_a", "°C", "temperature of the surroundings", Name = "around", Min = -273.15, Default = 25)] double aroundC) =>
        CoefficientWPerM2K(emissivity, surfaceC, aroundC) * Impossible.IfNegative(areaM2, "m²") * (surfaceC - aroundC);

    /// <summary>Radiation written as a loss coefficient h = εσ(T² + T_a²)(T + T_a), W/(m²·K).</summary>
    [Law("radiation-coefficient", "heat flow", "h = ε·σ·(T² + T_a²)·(T + T_a)", Says = "radiation as a loss coefficient", Unit = "W/(m²·K)", Source = "incropera-dewitt", Where = "ch. 1, from memory",
        Valid = "small grey body in large surroundings", Example = "emissivity=0.8 surface=350°C around=25°C")]
    public static double CoefficientWPerM2K(
        [In("ε", "", "emissivity", Name = "emissivity", Min = 0, Max = 1)] double emissivity,
        [In("T", "°C", "surface temperature", Name = "surface", Min = -273.15)] double surfaceC,
        [In("T_a", "°C", "temperature of the surroundings", Name = "around", Min = -273.15, Default = 25)] double aroundC)
    {
        double hot = ImpossibleHeat.Kelvin(surfaceC);
        double around = ImpossibleHeat.Kelvin(aroundC);
        return Impossible.UnlessFraction(emissivity) * Constants.StefanBoltzmann * (hot * hot + around * around) * (hot + around);
    }

    /// <summary>Temperature of a body that cools by radiation alone into cold dark, °C.</summary>
    [Law("radiating-cool-down", "heat flow", "T = T₀·(1 + 3·ε·σ·A·T₀³·t/C)^(−1/3), kelvin", Says = "temperature of a body that cools by radiation into cold dark", Unit = "°C", Source = "incropera-dewitt", Where = "ch. 5, from memory",
        Valid = "one body, surroundings far colder, no air", Example = "emissivity=0.8 area=10cm² capacity=5J/K start=426.85°C time=60s")]
    public static double CooledC(
        [In("ε", "", "emissivity", Name = "emissivity", Min = 0, Max = 1)] double emissivity,
        [In("A", "m²", "surface", Name = "area", Min = 0)] double areaM2,
        [In("C", "J/K", "heat capacity", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("T₀", "°C", "start", Name = "start", Min = -273.15)] double startC,
        [In("t", "s", "time", Name = "time", Min = 0)] double timeS) =>
        CooledK(emissivity, areaM2, capacityJPerK, ImpossibleHeat.Kelvin(startC), timeS) - Constants.ZeroCelsiusK;

    /// <summary>Temperature of a body that cools by radiation alone into cold dark: T = T₀(1 + 3εσAT₀³t/C)^(−1/3), K. The exact answer to test a stepper with.</summary>
    public static double CooledK(double emissivity, double areaM2, double capacityJPerK, double startK, double timeS)
    {
        double x = 3 * Impossible.UnlessFraction(emissivity) * Constants.StefanBoltzmann * Impossible.UnlessPositive(areaM2, "m²")
            * Math.Pow(Impossible.UnlessPositive(startK, "K"), 3) * Impossible.IfNegative(timeS, "s") / Impossible.UnlessPositive(capacityJPerK, "J/K");
        return startK / Math.Cbrt(1 + x);
    }
}
