namespace Heatwright.Physics;

/// <summary>Dry air at 1 atm.</summary>
/// <param name="DensityKgPerM3">ρ.</param>
/// <param name="ViscosityPaS">μ.</param>
/// <param name="ConductivityWPerMK">k.</param>
/// <param name="HeatJPerKgK">Specific heat at constant pressure.</param>
public sealed record AirState(
    [property: Out("kg/m³", "density")] double DensityKgPerM3,
    [property: Out("Pa·s", "viscosity")] double ViscosityPaS,
    [property: Out("W/(m·K)", "conductivity")] double ConductivityWPerMK,
    [property: Out("J/(kg·K)", "specific heat", Name = "specific-heat")] double HeatJPerKgK)
{
    /// <summary>ν = μ/ρ, m²/s.</summary>
    [Out("m²/s", "kinematic viscosity", Name = "kinematic-viscosity")]
    public double KinematicM2PerS => ViscosityPaS / DensityKgPerM3;

    /// <summary>α = k/(ρc), m²/s.</summary>
    [Out("m²/s", "diffusivity")]
    public double DiffusivityM2PerS => ConductivityWPerMK / (DensityKgPerM3 * HeatJPerKgK);

    /// <summary>Pr = ν/α.</summary>
    [Out("", "Prandtl number")]
    public double Prandtl => ViscosityPaS * HeatJPerKgK / ConductivityWPerMK;
}

/// <summary>Properties of dry air at 1 atm from its temperature.</summary>
/// <remarks>μ and k in the Sutherland forms of [us-std-atmosphere-1976], ideal gas density with R = 287.05 J/(kg·K), specific heat a quadratic
/// good from 250 to 650 K; all from memory. Checked against [incropera-dewitt] Table A.4 (from memory) in LossTests: within 2.5 % up to 500 K, 3 % up to 700 K.</remarks>
public static class Air
{
    /// <summary>Properties at a film temperature in °C.</summary>
    [Law("air", "heat flow", "μ = 1.458e-6·T^1.5/(T + 110.4), k = 2.64638e-3·T^1.5/(T + 245.4·10^(−12/T)), ρ = 101325/(287.05·T), T in kelvin",
        Says = "density, viscosity, conductivity and more of dry air",
        Source = "us-std-atmosphere-1976", Where = "Sutherland forms, from memory", Valid = "dry air, 1 atm, -23 to 377 °C", Example = "film=77°C")]
    public static AirState AtC([In("T", "°C", "film temperature, the mean of surface and air", Name = "film", Min = -123, Max = 1226, SoftMin = -23, SoftMax = 377)] double filmC) =>
        At(filmC + Constants.ZeroCelsiusK);

    /// <summary>Properties at a film temperature.</summary>
    public static AirState At(double filmK)
    {
        Impossible.Unless(filmK, 150, 1500, "K");
        double root = filmK * Math.Sqrt(filmK);
        return new AirState(
            101325 / (287.05 * filmK),
            1.458e-6 * root / (filmK + 110.4),
            2.64638e-3 * root / (filmK + 245.4 * Math.Pow(10, -12 / filmK)),
            1030.5 + filmK * (-0.19975 + filmK * 3.9734e-4));
    }
}
