namespace Heatwright.Physics;

/// <summary>Self-limiting heaters: resistance climbs steeply above one temperature, so the temperature hardly follows the voltage.</summary>
/// <remarks>R = R_min up to T_c, R_min·exp(β(T − T_c)) above; β = 0.03 to 0.15 /K. Common practice, no source. More volts drive it no more than some
/// tens of kelvin above T_c. Never in series: one takes it all.</remarks>
public static class Ptc
{
    /// <summary>Resistance at a temperature.</summary>
    public static double Ohm(double leastOhm, double switchC, double steepnessPerK, double atC) =>
        Impossible.UnlessPositive(leastOhm, "Ω") * Math.Exp(Impossible.IfNegative(steepnessPerK, "1/K") * Math.Max(0, atC - switchC));

    /// <summary>Where its power meets the loss to the surroundings, V²/R(T) = G(T − T_amb), and what it draws when cold.</summary>
    [Law("ptc-balance", "heaters", "V²/R(T) = G·(T − Tamb), R = Rmin·exp(β·(T − Tc)) above Tc", Says = "where a self-limiting heater comes to rest", Source = "common practice", Where = "exponential climb above the switch temperature", Valid = "after it has settled", Example = "supply=12V least=5ohm switch=220degC steepness=0.05/K conductance=30mW/K around=25degC")]
    public static PtcBalance Balance(
        [In("V", "V", "supply", Name = "supply", Min = 0)] double supplyV,
        [In("Rmin", "Ω", "least resistance", Name = "least", Min = 0)] double leastOhm,
        [In("Tc", "°C", "where the climb begins", Name = "switch")] double switchC,
        [In("β", "1/K", "steepness", Name = "steepness", Min = 0, SoftMin = 0.03, SoftMax = 0.15)] double steepnessPerK,
        [In("G", "W/K", "loss per kelvin", Name = "conductance", Min = 0)] double conductanceWPerK,
        [In("Tamb", "°C", "surroundings", Name = "around", Default = 25)] double aroundC = 25)
    {
        double square = Impossible.UnlessPositive(supplyV, "V") * supplyV;
        double inrushW = square / Ohm(leastOhm, switchC, steepnessPerK, aroundC);

        // Power falls and loss rises with temperature: one crossing, found by halving between the surroundings and the flat resistance's rise.
        (double low, double high) = (aroundC, aroundC + (inrushW / Impossible.UnlessPositive(conductanceWPerK, "W/K")));
        for (int i = 0; i < 100 && low < high; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = square / Ohm(leastOhm, switchC, steepnessPerK, middle) > conductanceWPerK * (middle - aroundC) ? (middle, high) : (low, middle);
        }

        double atC = (low + high) / 2;
        return new(atC, conductanceWPerK * (atC - aroundC), inrushW);
    }
}

/// <summary>Settled state of a self-limiting heater.</summary>
/// <param name="AtC">Its temperature, °C.</param>
/// <param name="PowerW">Power once settled.</param>
/// <param name="InrushW">Power at the first moment.</param>
public readonly record struct PtcBalance(
    [property: Out("°C", "temperature once settled", Name = "temperature")] double AtC,
    [property: Out("W", "power once settled")] double PowerW,
    [property: Out("W", "power at the first moment", Name = "inrush-power")] double InrushW);
