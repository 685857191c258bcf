using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>A straight bare wire in still room air, heated by its own current.</summary>
/// <remarks>I²ρ·4/(πD²) = πD[h(T − T_a) + εσ(T⁴ − T_a⁴)] a metre, h of a horizontal cylinder. Ends, springs and draughts are left out. Sources:
/// [churchill-chu-1975-cylinder], [incropera-dewitt] ch. 1. Checked against a published wire table in HotWireTests.</remarks>
public static class HotWire
{
    /// <summary>Heat a metre of wire loses, W/m.</summary>
    public static double LossWPerM(double diameterM, double wireC, double aroundC, double emissivity)
    {
        double h = Convection.CylinderWPerM2K(Impossible.UnlessPositive(diameterM, "m"), Impossible.Unless(wireC, aroundC, 1400, "°C"), aroundC) + Radiation.CoefficientWPerM2K(emissivity, wireC, aroundC);
        return Math.PI * diameterM * h * (wireC - aroundC);
    }

    /// <summary>Current that holds a wire at a temperature, A.</summary>
    [Law("hot-wire", "heaters", "I²·4·ρ·C_t/(π·D²) = π·D·[h·(T − T_a) + ε·σ·(T⁴ − T_a⁴)], h of a cylinder in still air", Says = "current that holds a bare wire at a temperature", Unit = "A", Source = "churchill-chu-1975-cylinder",
        Where = "from memory; with radiation", Valid = "straight, horizontal, bare, still air, far from its ends; ±12 % on a published table, 300 to 800 °C, 0.25 to 0.9 mm",
        Example = "diameter=0.4mm wire=400°C around=25°C emissivity=0.9 resistivity=1.09e-6Ω·m ratio=1.025")]
    public static double CurrentA(
        [In("D", "m", "wire diameter", Name = "diameter", Min = 0, SoftMin = 0.15e-3, SoftMax = 3e-3)] double diameterM,
        [In("T", "°C", "wire temperature", Name = "wire", Min = -100, Max = 1400, SoftMin = 300, SoftMax = 900)] double wireC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -100, Default = 25)] double aroundC,
        [In("ε", "", "emissivity; 0.9 for oxidised nickel-chromium (from memory)", Name = "emissivity", Min = 0, Max = 1, Default = 0.9)] double emissivity,
        [In("ρ", "Ω·m", "resistivity at 20 °C", Name = "resistivity", Min = 0, Default = 1.09e-6)] double resistivityOhmM,
        [In("C_t", "", "hot over cold resistance; 1.006 to 1.026 for Cr20Ni80", Name = "ratio", Min = 0, Default = 1.02)] double hotRatio)
    {
        double ohmPerM = Impossible.UnlessPositive(resistivityOhmM, "Ω·m") * Impossible.UnlessPositive(hotRatio, "") * 4 / (Math.PI * diameterM * diameterM);
        return Math.Sqrt(LossWPerM(diameterM, wireC, aroundC, emissivity) / ohmPerM);
    }

    /// <summary>Temperature that a current holds a wire at, °C; infinite when it would pass 1400 °C.</summary>
    [Law("hot-wire-temperature", "heaters", "solve the hot-wire balance for T", Says = "temperature that a current holds a bare wire at", Unit = "°C", Source = "churchill-chu-1975-cylinder", Where = "from memory; with radiation",
        Valid = "as hot-wire; infinite means it burns out", Example = "diameter=0.4mm current=2.4A around=25°C emissivity=0.9 resistivity=1.09e-6Ω·m ratio=1.025")]
    public static double TemperatureC(
        [In("D", "m", "wire diameter", Name = "diameter", Min = 0, SoftMin = 0.15e-3, SoftMax = 3e-3)] double diameterM,
        [In("I", "A", "current", Name = "current", Min = 0)] double currentA,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -100, Default = 25)] double aroundC,
        [In("ε", "", "emissivity; 0.9 for oxidised nickel-chromium (from memory)", Name = "emissivity", Min = 0, Max = 1, Default = 0.9)] double emissivity,
        [In("ρ", "Ω·m", "resistivity at 20 °C", Name = "resistivity", Min = 0, Default = 1.09e-6)] double resistivityOhmM,
        [In("C_t", "", "hot over cold resistance; 1.006 to 1.026 for Cr20Ni80", Name = "ratio", Min = 0, Default = 1.02)] double hotRatio) =>
        TemperatureC(diameterM, currentA, aroundC, emissivity, resistivityOhmM, _ => hotRatio);

    /// <summary>Temperature that a current holds a wire at when its resistance follows a factor table, °C; infinite when it would pass 1400 °C.</summary>
    public static double TemperatureC(double diameterM, double currentA, double aroundC, double emissivity, double resistivityOhmM, Func<double, double> hotRatioAtC)
    {
        Impossible.IfNegative(currentA, "A");
        double Spare(double wireC) => CurrentA(diameterM, wireC, aroundC, emissivity, resistivityOhmM, hotRatioAtC(wireC)) - currentA;
        return Spare(1400) < 0 ? double.PositiveInfinity : Roots.Monotone(Spare, aroundC, 1400).X;
    }
}
