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
    [Law("difference-gain", "amplifier", "G = R_f/R_g", Says = "gain of a difference amplifier", Source = "definition", Where = "difference amplifier",
        Valid = "matched pairs", Example = "feedback=56kohm input=1kohm")]
    public static double DifferenceGain(
        [In("R_f", "Ω", "feedback resistor", Name = "feedback", Min = 0)] double feedbackOhm,
        [In("R_g", "Ω", "input resistor", Name = "input", Min = 1e-300)] double inputOhm) => feedbackOhm / inputOhm;

    /// <summary>Worst common-mode rejection of a difference amplifier built with resistors of one tolerance: (1 + G)/(4·tolerance).</summary>
    [Law("common-mode-rejection", "amplifier", "(1 + G)/(4·tolerance)", Says = "worst common-mode rejection of a difference amplifier", Source = "definition", Where = "four resistors at their limits",
        Valid = "resistors of one tolerance; the amplifier's own comes on top", Example = "gain=56 tolerance=1%")]
    public static double WorstCommonModeRejection(
        [In("G", "", "gain", Name = "gain", Min = 0)] double gain,
        [In("tol", "", "tolerance of the resistors", Name = "tolerance", Min = 1e-9, Max = 0.5)] double tolerance) => (1 + gain) / (4 * tolerance);

    /// <summary>Gain left where the open-loop gain is finite: G/(1 + G/A₀).</summary>
    [Law("finite-loop-gain", "amplifier", "G/(1 + G/A₀)", Says = "gain that a real amplifier leaves", Source = "definition", Where = "feedback",
        Valid = "at the frequency of A₀", Example = "gain=56 open-loop=1e5")]
    public static double GainWithFiniteLoop(
        [In("G", "", "wanted gain", Name = "gain", Min = 0)] double gain,
        [In("A₀", "", "open-loop gain", Name = "open-loop", Min = 1e-300)] double openLoopGain) => gain / (1 + (gain / openLoopGain));

    /// <summary>Range of the gain that resistors inside their tolerance make.</summary>
    [Law("gain-range", "amplifier", "G = 1 + R_f(1 ± p)/(R_g(1 ∓ p))", Says = "least and most gain that resistors inside their tolerance make", Source = "definition", Where = "non-inverting amplifier",
        Valid = "both resistors at their limits", Example = "feedback=36kohm ground=620ohm tolerance=1%")]
    public static GainRange Range(
        [In("R_f", "Ω", "feedback resistor", Name = "feedback", Min = 0)] double feedbackOhm,
        [In("R_g", "Ω", "resistor to ground", Name = "ground", Min = 1e-300)] double groundOhm,
        [In("p", "", "tolerance", Name = "tolerance", Min = 0, Max = 0.5)] double tolerance) =>
        new(SmallestGain(feedbackOhm, groundOhm, tolerance), Gain(feedbackOhm, groundOhm), LargestGain(feedbackOhm, groundOhm, tolerance), GainErrorShare(Gain(feedbackOhm, groundOhm), tolerance));

    /// <summary>Largest gain that resistors inside their tolerance can make.</summary>
    public static double LargestGain(double feedbackOhm, double groundOhm, double tolerance) =>
        1 + (feedbackOhm * (1 + tolerance) / (groundOhm * (1 - tolerance)));

    /// <summary>Smallest gain that resistors inside their tolerance can make.</summary>
    public static double SmallestGain(double feedbackOhm, double groundOhm, double tolerance) =>
        1 + (feedbackOhm * (1 - tolerance) / (groundOhm * (1 + tolerance)));

    /// <summary>Largest share by which the gain is off, to first order: 2·tolerance·(G − 1)/G.</summary>
    public static double GainErrorShare(double gain, double tolerance) => 2 * tolerance * (gain - 1) / gain;

    /// <summary>Offset at the output, V: V_os·G + I_b⁺·R_s·G − I_b⁻·R_f.</summary>
    [Law("output-offset", "amplifier", "V_os·G + I_b⁺·R_s·G − I_b⁻·R_f", Says = "offset at the output of an amplifier", Unit = "V", Source = "definition", Where = "ideal-amplifier algebra",
        Valid = "offset and bias currents of the data sheet", Example = "offset=150uV gain=56 bias=0A source=0ohm other-bias=0A feedback=100kohm")]
    public static double OutputOffsetV(
        [In("V_os", "V", "input offset", Name = "offset")] double offsetV,
        [In("G", "", "gain", Name = "gain", Min = 0)] double gain,
        [In("I_b⁺", "A", "bias current of the plus input", Name = "bias")] double biasPlusA,
        [In("R_s", "Ω", "resistance in the plus input", Name = "source", Min = 0)] double sourceOhm,
        [In("I_b⁻", "A", "bias current of the minus input", Name = "other-bias")] double biasMinusA,
        [In("R_f", "Ω", "feedback resistor", Name = "feedback", Min = 0)] double feedbackOhm) =>
        (offsetV * gain) + (biasPlusA * sourceOhm * gain) - (biasMinusA * feedbackOhm);

    /// <summary>Bandwidth and time constant at a gain.</summary>
    [Law("amplifier-speed", "amplifier", "f = GBW/G, τ = 1/(2πf)", Says = "bandwidth and time constant of an amplifier at a gain", Source = "definition", Where = "one dominant pole",
        Valid = "small signals, after any overload", Example = "gain-bandwidth=1MHz gain=56")]
    public static AmplifierSpeed Speed(
        [In("GBW", "Hz", "gain-bandwidth product", Name = "gain-bandwidth", Min = 1e-300)] double gainBandwidthHz,
        [In("G", "", "gain", Name = "gain", Min = 1e-300)] double gain) =>
        new(BandwidthHz(gainBandwidthHz, gain), TimeConstantS(BandwidthHz(gainBandwidthHz, gain)));

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

    /// <summary>Noise of a resistor in a bandwidth, V.</summary>
    [Law("resistor-noise", "amplifier", "√(4·k·T·R·f)", Says = "noise of a resistor in a bandwidth", Unit = "V", Source = "cgpm-2018-res1", Where = "Boltzmann constant; Johnson noise",
        Valid = "thermal noise alone", Example = "resistance=10kohm at=24.85C bandwidth=1Hz")]
    public static double ResistorNoiseV(
        [In("R", "Ω", "resistance", Name = "resistance", Min = 0)] double ohm,
        [In("T", "°C", "temperature", Name = "at", Min = -273.15)] double atC,
        [In("f", "Hz", "noise bandwidth", Name = "bandwidth", Min = 0)] double bandwidthHz) =>
        ResistorNoiseVPerRootHz(ohm, atC + Constants.ZeroCelsiusK) * Math.Sqrt(bandwidthHz);

    /// <summary>Noise density of a resistor, V/√Hz: √(4kTR).</summary>
    public static double ResistorNoiseVPerRootHz(double ohm, double temperatureK) => Math.Sqrt(4 * Constants.BoltzmannJPerK * temperatureK * ohm);

    /// <summary>Noise at the output of a first-order stage, V: e_n·G·√(1.57·f).</summary>
    public static double OutputNoiseV(double inputNoiseVPerRootHz, double gain, double bandwidthHz) =>
        inputNoiseVPerRootHz * gain * Math.Sqrt(Math.PI / 2 * bandwidthHz);

    /// <summary>Output as it can be, V: an amplifier reaches neither ground nor its supply.</summary>
    public static double WithinRailsV(double wantedV, double floorV, double supplyV, double headroomV) => Math.Clamp(wantedV, floorV, supplyV - headroomV);

    /// <summary>Offset that leakage of a clamp makes in the resistor before it, V.</summary>
    [Law("clamp-offset", "amplifier", "V = I·R", Says = "offset that leakage of a clamp makes", Unit = "V", Source = "definition", Where = "Ohm's law",
        Valid = "leakage at the temperature of the board", Example = "leakage=100nA series=10kohm")]
    public static double ClampOffsetV(
        [In("I", "A", "leakage", Name = "leakage", Min = 0)] double leakageA,
        [In("R", "Ω", "resistor before the clamp", Name = "series", Min = 0)] double seriesOhm) => leakageA * seriesOhm;
}

/// <summary>Gain with both resistors inside their tolerance.</summary>
/// <param name="Smallest">Least.</param>
/// <param name="Nominal">As labelled.</param>
/// <param name="Largest">Most.</param>
/// <param name="ErrorShare">Largest error as a share, to first order.</param>
public sealed record GainRange(
    [property: Out("", "least gain", Name = "least")] double Smallest,
    [property: Out("", "gain as labelled", Name = "gain")] double Nominal,
    [property: Out("", "most gain", Name = "most")] double Largest,
    [property: Out("", "largest error as a share, to first order", Name = "error")] double ErrorShare);

/// <summary>Speed of an amplifier at a gain.</summary>
/// <param name="BandwidthHz">Bandwidth.</param>
/// <param name="TimeConstantS">Time constant.</param>
public sealed record AmplifierSpeed(
    [property: Out("Hz", "bandwidth")] double BandwidthHz,
    [property: Out("s", "time constant")] double TimeConstantS);
