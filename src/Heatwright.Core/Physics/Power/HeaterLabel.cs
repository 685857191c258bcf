namespace Heatwright.Physics;

/// <summary>What a heater's label says at another voltage, and what a supply's readings say about a heater.</summary>
/// <remarks>P = P_label·(V/V_label)². Ohm's law. Of unbranded heaters the resistance is typically within ±10 %, ±20 % has been seen,
/// and the label's power often refers to the cold resistance (common practice, no source).</remarks>
public static class HeaterLabel
{
    /// <summary>Half-width taken for an unbranded label's resistance. Common practice, no source.</summary>
    public const double OhmTolerance = 0.10;

    /// <summary>Power at another voltage than the label's.</summary>
    [Law("label-power", "heaters", "P·(V/Vlabel)²", Says = "power of a labelled heater at another voltage", Unit = "W", Source = "definition", Where = "Ohm's law", Valid = "resistance as labelled, the same at both voltages", Example = "label-power=45W label-voltage=18V voltage=12V")]
    public static double PowerW(
        [In("P", "W", "labelled power", Name = "label-power", Min = 0)] double labelW,
        [In("Vlabel", "V", "labelled voltage", Name = "label-voltage", Min = 0)] double labelV,
        [In("V", "V", "voltage it will see", Name = "voltage", Min = 0)] double useV)
    {
        double ratio = Impossible.IfNegative(useV, "V") / Impossible.UnlessPositive(labelV, "V");
        return Impossible.UnlessPositive(labelW, "W") * ratio * ratio;
    }
}
