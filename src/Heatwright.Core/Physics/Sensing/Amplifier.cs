namespace Heatwright.Physics;

/// <summary>The amplifier between a temperature sensor and its converter.</summary>
/// <remarks>Ideal-amplifier algebra and first-order error terms as data sheets use them: common practice; noise of a resistor
/// √(4kTR) with k from [cgpm-2018-res1]. Checked: AmplifierTests.</remarks>
public static class Amplifier
{
    /// <summary>Gain that turns the sensor's volts into the output's volts.</summary>
    [Law("implied-gain", "amplifier", "G = V_out/V_sensor", Says = "gain that turns the sensor's volts into the output's volts", Source = "definition", Where = "gain", Valid = "offset small against the output",
        Example = "output=1.1V sensor=15.4mV")]
    public static double ImpliedGain(
        [In("V_out", "V", "voltage at the output", Name = "output")] double outputV,
        [In("V_sensor", "V", "voltage of the sensor", Name = "sensor")] double sensorV) => sensorV != 0
            ? outputV / sensorV
            : throw new ArgumentOutOfRangeException(nameof(sensorV), sensorV, "A sensor at 0 V implies no gain: take a hot reading.");

    /// <summary>Gain of a non-inverting amplifier.</summary>
    [Law("amplifier-gain", "amplifier", "G = 1 + R_f/R_g", Says = "gain of a non-inverting amplifier from its two resistors", Source = "definition", Where = "non-inverting amplifier", Valid = "open-loop gain far above G",
        Example = "feedback=100kohm ground=1kohm")]
    public static double Gain(
        [In("R_f", "Ω", "resistor from output to inverting input", Name = "feedback", Min = 0)] double feedbackOhm,
        [In("R_g", "Ω", "resistor from inverting input to ground", Name = "ground", Min = 1e-3)] double groundOhm) => 1 + (feedbackOhm / groundOhm);

    /// <summary>Gain of a difference amplifier with matched pairs.</summary>
    public static double DifferenceGain(double feedbackOhm, double inputOhm) => feedbackOhm / inputOhm;

    /// <summary>Worst common-mode rejection of a difference amplifier built with resistors of one tolerance: (1 + G)/(4·tolerance).</summary>
    public static double WorstCommonModeRejection(double gain, double tolerance) => (1 + gain) / (4 * tolerance);

    /// <summary>Gain left where the open-loop gain is finite: G/(1 + G/A₀).</summary>
    public static double GainWithFiniteLoop(double gain, double openLoopGain) => gain / (1 + (gain / openLoopGain));

    /// <summary>Largest gain that resistors inside their tolerance can make.</summary>
    public static double LargestGain(double feedbackOhm, double groundOhm, double tolerance) =>
        1 + (feedbackOhm * (1 + tolerance) / (groundOhm * (1 - tolerance)));

    /// <summary>Smallest gain that resistors inside their tolerance can make.</summary>
    public static double SmallestGain(double feedbackOhm, double groundOhm, double tolerance) =>
        1 + (feedbackOhm * (1 - tolerance) / (groundOhm * (1 + tolerance)));

    /// <summary>Largest share by which the gain is off, to first order: 2·tolerance·(G − 1)/G.</summary>
    public static double GainErrorShare(double gain, double tolerance) => 2 * tolerance * (gain - 1) / gain;

    /// <summary>Offset at the output, V: V_os·G + I_b⁺·R_s·G − I_b⁻·R_f.</summary>
    public static double OutputOffsetV(double offsetV, double gain, double biasPlusA, double sourceOhm, double biasMinusA, double feedbackOhm) =>
        (offsetV * gain) + (biasPlusA * sourceOhm * gain) - (biasMinusA * feedbackOhm);

    /// <summary>Bandwidth at a gain, Hz: gain-bandwidth product over gain.</summary>
    public static double BandwidthHz(double gainBandwidthHz, double gain) => gainBandwidthHz / gain;

    /// <summary>Time constant of a first-order stage, s.</summary>
    public static double TimeConstantS(double bandwidthHz) => 1 / (2 * Math.PI * bandwidthHz);

    /// <summary>Time until a first-order stage is within half a step of a converter of n bits, s: (n + 1)·ln 2·τ.</summary>
    [Law("settling-time", "amplifier", "t = (n + 1)·ln 2·τ", Says = "wait until a first-order stage is within half a converter step", Unit = "s", Source = "definition", Where = "first-order step response",
        Valid = "one time constant rules; no overload before", Example = "time-constant=1ms bits=10")]
    public static double SettlingS(
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("n", "", "bits of the converter", Name = "bits", Min = 1, Max = 32)] double bits) => (bits + 1) * Math.Log(2) * timeConstantS;

    /// <summary>Corner of an RC filter, Hz.</summary>
    [Law("filter-corner", "amplifier", "f = 1/(2π·R·C)", Says = "corner frequency of an RC filter", Unit = "Hz", Source = "definition", Where = "first-order low-pass",
        Valid = "source far below R, load far above R", Example = "resistance=10kohm capacitance=100nF")]
    public static double FilterCornerHz(
        [In("R", "Ω", "series resistor", Name = "resistance", Min = 1e-3)] double ohm,
        [In("C", "F", "capacitor to ground", Name = "capacitance", Min = 1e-15)] double farad) => 1 / (2 * Math.PI * ohm * farad);

    /// <summary>Noise density of a resistor, V/√Hz: √(4kTR).</summary>
    public static double ResistorNoiseVPerRootHz(double ohm, double temperatureK) => Math.Sqrt(4 * Constants.BoltzmannJPerK * temperatureK * ohm);

    /// <summary>Noise at the output of a first-order stage, V: e_n·G·√(1.57·f).</summary>
    public static double OutputNoiseV(double inputNoiseVPerRootHz, double gain, double bandwidthHz) =>
        inputNoiseVPerRootHz * gain * Math.Sqrt(Math.PI / 2 * bandwidthHz);

    /// <summary>Output as it can be, V: an amplifier reaches neither ground nor its supply.</summary>
    public static double WithinRailsV(double wantedV, double floorV, double supplyV, double headroomV) => Math.Clamp(wantedV, floorV, supplyV - headroomV);

    /// <summary>Offset that leakage of a clamp makes in the resistor before it, V.</summary>
    public static double ClampOffsetV(double leakageA, double seriesOhm) => leakageA * seriesOhm;
}
