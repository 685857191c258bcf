namespace Heatwright.Physics;

/// <summary>When water from the air settles on what is colder.</summary>
/// <remarks>Magnus form over liquid water with the coefficients of [wmo-8], from memory; within 0.1 K of [alduchov-1996] from −20 to 50 °C. Checked: DewTests.</remarks>
public static class Dew
{
    private const double A = 17.62, B = 243.12, Pascal = 611.2;

    /// <summary>Pressure of water vapour in air that holds all it can, over liquid water, Pa.</summary>
    [Law("vapour-pressure", "heat flow", "e = 611.2·e^(17.62·T/(243.12 + T))", Says = "pressure of water vapour in air that holds all it can", Unit = "Pa", Source = "wmo-8", Where = "annex on humidity formulae, from memory",
        Valid = "−45 to 60 °C over liquid water, 0.5 %", Example = "air=20°C")]
    public static double SaturationPa([In("T", "°C", "air temperature", Name = "air", Min = -80, Max = 100, SoftMin = -45, SoftMax = 60)] double airC) =>
        Pascal * Math.Exp(A * airC / (B + airC));

    /// <summary>Temperature below which dew settles, °C.</summary>
    [Law("dew-point", "heat flow", "T_d = 243.12·γ/(17.62 − γ), γ = ln(U) + 17.62·T/(243.12 + T)", Says = "temperature below which dew settles", Unit = "°C", Source = "wmo-8", Where = "annex on humidity formulae, from memory",
        Valid = "−45 to 60 °C, humidity of 1 % or more; ±0.1 K of the formula, and a cheap humidity sensor is good to about 3 % (0.6 K near saturation)", Example = "air=8°C humidity=90%")]
    public static double PointC(
        [In("T", "°C", "air temperature", Name = "air", Min = -80, Max = 100, SoftMin = -45, SoftMax = 60)] double airC,
        [In("U", "", "relative humidity", Name = "humidity", Min = 1e-4, Max = 1, SoftMin = 0.01)] double humidity)
    {
        double gamma = Math.Log(Impossible.UnlessPositive(humidity, "")) + (A * airC / (B + airC));
        return B * gamma / (A - gamma);
    }
}
