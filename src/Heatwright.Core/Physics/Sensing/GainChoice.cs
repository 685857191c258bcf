namespace Heatwright.Physics;

/// <summary>A pair of gain resistors and what it does at its worst.</summary>
/// <param name="FeedbackOhm">Resistor from output to inverting input, Ω.</param>
/// <param name="GroundOhm">Resistor from inverting input to ground, Ω.</param>
/// <param name="Gain">Nominal gain.</param>
/// <param name="LargestGain">Gain with both resistors at the bad ends of their tolerance.</param>
/// <param name="Use">Share of the lowest reference that the hottest tip then fills.</param>
public sealed record GainPair(double FeedbackOhm, double GroundOhm, double Gain, double LargestGain, double Use);

/// <summary>Choosing gain resistors: the largest gain that never clips.</summary>
/// <remarks>Every pair is tried; there are fewer than ten thousand, so nothing is searched cleverly. Checked: GainChoiceTests.</remarks>
public static class GainChoice
{
    /// <summary>Gain that must never be passed: V_ref,min·κ/(E_fs + V_os).</summary>
    [Law("largest-gain", "amplifier", "G = V_ref·κ/(E_fs + V_os)", Says = "largest gain that never runs into the reference", Source = "definition", Where = "full scale",
        Valid = "hottest tip with overshoot, coldest junction, lowest reference", Example = "full-scale=18.119mV offset=0.15mV reference=1.089V share=100%")]
    public static double LargestAllowed(
        [In("E_fs", "V", "sensor at full scale", Name = "full-scale", Min = 1e-300)] double fullScaleV,
        [In("V_os", "V", "offset of the amplifier", Name = "offset", Min = 0)] double offsetV,
        [In("V_ref", "V", "lowest reference", Name = "reference", Min = 1e-300)] double lowestReferenceV,
        [In("κ", "", "share of it to use", Name = "share", Min = 0, Max = 1, Default = 1)] double share = 1) =>
        lowestReferenceV * share / (fullScaleV + offsetV);

    /// <summary>All pairs that never clip, largest nominal gain first; equal gains in rising order of the ground resistor.</summary>
    /// <param name="feedbackOhms">Values that can be had for the feedback resistor.</param>
    /// <param name="groundOhms">Values that can be had for the ground resistor.</param>
    /// <param name="tolerance">Share by which each may be off.</param>
    /// <param name="largestAllowed">From <see cref="LargestAllowed"/>.</param>
    /// <param name="mostParallelOhm">Limit of the two in parallel, for bias current and noise.</param>
    public static IReadOnlyList<GainPair> Feasible(
        IReadOnlyList<double> feedbackOhms, IReadOnlyList<double> groundOhms, double tolerance, double largestAllowed, double mostParallelOhm = double.PositiveInfinity) =>
    [
        .. from feedback in feedbackOhms
           from ground in groundOhms
           let largest = Amplifier.LargestGain(feedback, ground, tolerance)
           where largest <= largestAllowed && feedback * ground / (feedback + ground) <= mostParallelOhm
           let gain = Amplifier.Gain(feedback, ground)
           // 270 k over 4.7 k and 27 k over 470 are one gain; rounding must not order them.
           orderby Math.Round(gain, 9) descending, ground
           select new GainPair(feedback, ground, gain, largest, largest / largestAllowed),
    ];
}
