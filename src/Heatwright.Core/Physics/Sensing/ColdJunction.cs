namespace Heatwright.Physics;

/// <summary>What the place where the sensor wires meet copper does to a thermocouple reading. Add volts, never degrees.</summary>
/// <remarks>t = E⁻¹(E_measured + E(t_cold)), by definition of the reference functions [nist-srd60]. Checked: ColdJunctionTests.</remarks>
public static class ColdJunction
{
    /// <summary>Voltage at the terminals, V.</summary>
    public static double VoltageV(ThermocoupleCurve curve, double hotC, double coldC) => curve.EmfV(hotC) - curve.EmfV(coldC);

    /// <summary>Temperature of the hot end from the voltage at the terminals, °C.</summary>
    public static double HotC(ThermocoupleCurve curve, double measuredV, double coldC) => curve.TemperatureC(measuredV + curve.EmfV(coldC));

    /// <summary>How far the answer moves per kelvin that the cold junction is mistaken: S(t_cold)/S(t_hot).</summary>
    public static double HotKPerColdK(ThermocoupleCurve curve, double hotC, double coldC) => curve.SlopeVPerK(coldC) / curve.SlopeVPerK(hotC);

    /// <summary>What a device shows that turns the voltage into degrees first and adds the cold junction in degrees, °C: a common slip.</summary>
    public static double DegreesAddedC(ThermocoupleCurve curve, double measuredV, double coldC) => curve.TemperatureC(measuredV) + coldC;

    /// <summary>What a device shows that does not compensate at all, °C.</summary>
    public static double UncompensatedC(ThermocoupleCurve curve, double measuredV) => curve.TemperatureC(measuredV);

    /// <summary>What a device shows that holds one type to be another, °C.</summary>
    public static double MistakenC(ThermocoupleCurve real, ThermocoupleCurve believed, double hotC, double coldC) =>
        HotC(believed, VoltageV(real, hotC, coldC), coldC);

    /// <summary>Error where the extension leads are swapped, K, to first order: −2(t_joint − t_cold)·S(t_cold)/S(t_hot).</summary>
    public static double ReversedExtensionErrorK(ThermocoupleCurve curve, double hotC, double jointC, double coldC) =>
        -2 * VoltageV(curve, jointC, coldC) / curve.SlopeVPerK(hotC);

    /// <summary>Error where the extension leads are of another type, K, to first order.</summary>
    public static double WrongExtensionErrorK(ThermocoupleCurve sensor, ThermocoupleCurve extension, double hotC, double jointC, double coldC) =>
        (VoltageV(extension, jointC, coldC) - VoltageV(sensor, jointC, coldC)) / sensor.SlopeVPerK(hotC);
}
