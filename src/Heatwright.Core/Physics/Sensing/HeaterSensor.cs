namespace Heatwright.Physics;

/// <summary>A heater whose resistance says its temperature, and a sensor wired in series with the heater.</summary>
/// <remarks>Definition of the temperature coefficient of resistance; Ohm's law. Checked: HeaterSensorTests.</remarks>
public static class HeaterSensor
{
    /// <summary>Temperature of a heater from its resistance, °C.</summary>
    [Law("heater-temperature", "sensors", "T = T0 + (R/R0 − 1)/α", Says = "temperature of a heater from its own resistance", Unit = "°C", Source = "definition",
        Where = "temperature coefficient of resistance", Valid = "where the coefficient was stated; never nickel-chromium wire, which hardly changes",
        Example = "resistance=3.6ohm cold=2.2ohm slope=0.004/K cold-at=25C")]
    public static double TemperatureC(
        [In("R", "Ω", "resistance now", Name = "resistance", Min = 1e-6)] double ohm,
        [In("R0", "Ω", "resistance at the reference temperature", Name = "cold", Min = 1e-6)] double coldOhm,
        [In("α", "1/K", "temperature coefficient at the reference temperature", Name = "slope", Min = 1e-6, Max = 0.05, SoftMin = 5e-4)] double perK,
        [In("T0", "°C", "reference temperature", Name = "cold-at", Min = -100, Max = 200, Default = 20)] double coldC) =>
        coldC + (((ohm / coldOhm) - 1) / perK);

    /// <summary>Error of that temperature where the resistance is off by a share, K: share·(R/R₀)/α.</summary>
    [Law("heater-sensor-error", "sensors", "ΔT = share·(R/R₀)/α", Says = "how far a heater's own temperature is off by its resistance", Unit = "K", Source = "definition", Where = "temperature coefficient of resistance",
        Valid = "straight R(T)", Example = "share=1% ratio=2.3 slope=0.004/K")]
    public static double ErrorK(
        [In("share", "", "share by which the resistance is off", Name = "share", Min = 0, Max = 1)] double ohmShare,
        [In("R/R₀", "", "hot over cold resistance", Name = "ratio", Min = 1e-300, Max = 20)] double ratio,
        [In("α", "1/K", "temperature coefficient", Name = "slope", Min = 1e-6, Max = 0.05)] double perK) => ohmShare * ratio / perK;

    /// <summary>Coefficient referred to another temperature, 1/K: α_b = α_a/(1 + α_a(T_b − T_a)).</summary>
    public static double ReferredPerK(double perK, double fromC, double toC) => perK / (1 + (perK * (toC - fromC)));

    /// <summary>Error of a thermocouple in series with the heater by current that still flows while reading, K: I·R/S.</summary>
    [Law("series-sensor-error", "sensors", "ΔT = I·R/S", Says = "error of a thermocouple in series with the heater", Unit = "K", Source = "definition", Where = "Ohm's law",
        Valid = "thermocouple in series with the heater, read while the heater is off", Example = "current=84uA resistance=2.2ohm slope=41.9uV/K")]
    public static double SeriesErrorK(
        [In("I", "A", "current left in the loop: bias, leakage or pull-up", Name = "current", Min = 0)] double currentA,
        [In("R", "Ω", "resistance of heater and leads in the loop", Name = "resistance", Min = 0)] double ohm,
        [In("S", "V/K", "sensitivity of the sensor", Name = "slope", Min = 1e-7, Max = 1e-3)] double slopeVPerK) => currentA * ohm / slopeVPerK;

    /// <summary>Current of a pull-up that finds broken sensors, A.</summary>
    public static double PullUpA(double supplyV, double pullUpOhm) => supplyV / pullUpOhm;
}
