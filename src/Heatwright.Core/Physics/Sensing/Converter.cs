namespace Heatwright.Physics;

/// <summary>An analogue-to-digital converter: what one count means.</summary>
/// <remarks>Definitions of resolution and quantisation; standard doubt of a step [jcgm-100] 4.3.7 and F.2.2.1, from memory. Checked: ConverterTests.</remarks>
public static class Converter
{
    /// <summary>One step, V: V_ref/2ⁿ.</summary>
    [Law("converter-step", "amplifier", "LSB = V_ref/2^n", Says = "one step of an analog-to-digital converter", Unit = "V", Source = "definition", Where = "resolution", Valid = "n-bit converter",
        Example = "reference=1.1V bits=10")]
    public static double StepV(
        [In("V_ref", "V", "reference voltage", Name = "reference", Min = 1e-6)] double referenceV,
        [In("n", "", "bits", Name = "bits", Min = 1, Max = 32)] double bits) => referenceV / Math.Pow(2, bits);

    /// <summary>Kelvin a count, seen through an amplifier and a sensor.</summary>
    [Law("step-kelvin", "amplifier", "ΔT = LSB/G/S", Says = "kelvin that one converter step stands for", Unit = "K", Source = "definition", Where = "chain of gain and slope",
        Valid = "at one temperature of the tip", Example = "step=1.074mV gain=56 slope=41.9uV/K")]
    public static double KelvinPerStep(
        [In("LSB", "V", "one step", Name = "step", Min = 1e-300)] double stepV,
        [In("G", "", "gain", Name = "gain", Min = 1e-300)] double gain,
        [In("S", "V/K", "sensitivity of the sensor", Name = "slope", Min = 1e-7, Max = 1e-3)] double slopeVPerK) => stepV / gain / slopeVPerK;

    /// <summary>Standard doubt of a value rounded to steps: step/√12.</summary>
    [Law("rounding-doubt", "readings", "u = d/√12", Says = "standard doubt of a value rounded to steps", Source = "jcgm-100", Where = "4.3.7 and F.2.2.1, from memory",
        Valid = "every value inside the step alike", Example = "step=1")]
    public static double RoundingDoubt(
        [In("d", "", "step, in the unit of the reading", Name = "step", Min = 0)] double step) => step / Math.Sqrt(12);

    /// <summary>Count that a voltage gives, held at the ends of the scale.</summary>
    public static int Count(double inputV, double referenceV, int bits)
    {
        int full = (1 << bits) - 1;
        return (int)Math.Clamp(Math.Floor(inputV / referenceV * (1 << bits)), 0, full);
    }

    /// <summary>True where a count says only 'at least' or 'at most'.</summary>
    public static bool IsSaturated(int count, int bits) => count <= 0 || count >= (1 << bits) - 1;
}
