namespace Heatwright.Physics;

/// <summary>Label, ohmmeter and a supply's own display of one heater, brought together.</summary>
/// <remarks>Doubts and hypotheses as in <see cref="Reconcile"/> and <see cref="LabelHypotheses"/>. Checked: ReconcileTests, TradeFactsTests.</remarks>
public static class HeaterReconciled
{
    private static readonly (LabelHypothesis Hypothesis, string Words)[] Said =
    [
        (LabelHypothesis.LabelTolerance, "the heater lies off its label, within the label's tolerance"),
        (LabelHypothesis.CurrentGain, "the current display has a gain error"),
        (LabelHypothesis.VoltageGain, "the voltage display has a gain error"),
        (LabelHypothesis.CurrentOffset, "the current display adds a fixed current"),
        (LabelHypothesis.SeriesLeads, "leads or contacts stand in series"),
        (LabelHypothesis.HotMetal, "the metal is hot and its resistance has grown"),
        (LabelHypothesis.CurrentLimit, "the supply was in current limit"),
    ];

    /// <summary>Mean, doubt, Birge ratio, and what could explain a difference.</summary>
    [Law("reconcile-heater", "heaters", "R̄ = Σ(R/u²)/Σ(1/u²), χ² = Σ((R − R̄)/u)², Birge = √(χ²/(n − 1)), u widened by it when above 1", Says = "label, ohmmeter and volts over amperes of one heater brought together",
        Source = "birge-1932", Where = "from memory; doubts by [jcgm-100] 4.3.7", Valid = "two readings at two voltages; label ±10 %, display 1 % of volts and 2 % of amperes unless typed (common practice)",
        Example = "label=8.1ohm first-voltage=12V first-current=1.6A second-voltage=24V second-current=3.2A volt-digit=1V amp-digit=0.1A")]
    public static ReconciledHeater Bring(
        [In("R", "Ω", "ohms on the label", Name = "label", Min = 0)] double labelOhm,
        [In("V₁", "V", "first voltage read", Name = "first-voltage", Min = 0)] double firstV,
        [In("I₁", "A", "current read with it", Name = "first-current", Min = 0)] double firstA,
        [In("V₂", "V", "second voltage read", Name = "second-voltage", Min = 0)] double secondV,
        [In("I₂", "A", "current read with it", Name = "second-current", Min = 0)] double secondA,
        [In("p", "", "half width of the label's tolerance", Name = "label-tolerance", Min = 0.001, Max = 0.9, Default = 0.1)] double labelTolerance = 0.1,
        [In("d_V", "V", "last digit of the volts", Name = "volt-digit", Min = 0, Default = 0.1)] double voltDigit = 0.1,
        [In("d_I", "A", "last digit of the amperes", Name = "amp-digit", Min = 0, Default = 0.01)] double ampDigit = 0.01,
        [In("g_V", "", "half width of the voltage gain", Name = "volt-gain", Min = 0, Max = 0.5, Default = 0.01)] double voltGain = 0.01,
        [In("g_I", "", "half width of the current gain", Name = "amp-gain", Min = 0, Max = 0.5, Default = 0.02)] double ampGain = 0.02,
        [In("R_m", "Ω", "ohmmeter reading, leads and all", Name = "ohmmeter", Min = 0)] double ohmmeterOhm = double.NaN,
        [In("R_l", "Ω", "ohmmeter with shorted tips", Name = "leads", Min = 0, Default = 0)] double leadsOhm = 0,
        [In("p_m", "", "accuracy of the ohmmeter", Name = "ohmmeter-accuracy", Min = 0, Max = 0.5, Default = 0.01)] double meterAccuracy = 0.01,
        [In("d_m", "Ω", "last digit of the ohmmeter", Name = "ohmmeter-digit", Min = 0, Default = 0.1)] double meterDigitOhm = 0.1)
    {
        if (firstV == secondV)
        {
            throw Impossible.Outside(nameof(secondV), secondV, "V", "another voltage than the first");
        }

        // The reading of more power comes last: heating shows there.
        VoltAmp first = new(Impossible.UnlessPositive(firstV, "V"), Impossible.UnlessPositive(firstA, "A")), second = new(Impossible.UnlessPositive(secondV, "V"), Impossible.UnlessPositive(secondA, "A"));
        VoltAmp[] reads = first.Volts < second.Volts ? [first, second] : [second, first];
        SupplyDisplay display = new(Impossible.UnlessPositive(voltDigit, "V") / 2, Impossible.UnlessPositive(ampDigit, "A") / 2, voltGain, ampGain);
        OhmEvidence label = Reconcile.Label(labelOhm, labelTolerance);
        OhmEvidence supply = Reconcile.VoltAmp(reads[^1], display);
        OhmEvidence? meter = double.IsNaN(ohmmeterOhm) ? null
            : Reconcile.Ohmmeter(Impossible.UnlessPositive(ohmmeterOhm, "Ω"), leadsOhm, meterAccuracy, Impossible.UnlessPositive(meterDigitOhm, "Ω"), leadsOhm > 0 ? 0.05 : 0);
        CombinedOhms all = meter is { } read ? Reconcile.Combine(label, supply, read) : Reconcile.Combine(label, supply);
        var judged = LabelHypotheses.Judge(labelOhm, labelTolerance, reads, display);
        return new(reads[0].Volts / reads[0].Amps, reads[^1].Volts / reads[^1].Amps, Reconcile.Z(label, supply), all.MeanOhm, all.DoubtOhm, all.BirgeRatio, all.WidenedOhm,
            Names(judged, Standing.Survives), Names(judged, Standing.Doubtful), Names(judged, Standing.TooLarge), Names(judged, Standing.WrongSign),
            meter is null ? "read the heater with an ohmmeter, shorted tips taken off, or a shunt in series" : "a shunt in series");
    }

    private static string Names(IReadOnlyList<JudgedHypothesis> judged, Standing standing)
    {
        string[] names = [.. Said.Where(said => judged.Single(each => each.Hypothesis == said.Hypothesis).Standing == standing).Select(said => said.Words)];
        return names.Length > 0 ? string.Join("; ", names) : "none";
    }
}

/// <summary>One heater after all that is known of it.</summary>
/// <param name="LowOhm">Volts over amperes at the lower voltage.</param>
/// <param name="HighOhm">Volts over amperes at the higher voltage.</param>
/// <param name="Distance">Distance of label and display in standard doubts.</param>
/// <param name="MeanOhm">Weighted mean.</param>
/// <param name="DoubtOhm">Its standard doubt.</param>
/// <param name="Birge">Scatter over what the pieces claim.</param>
/// <param name="WidenedOhm">Doubt after the Birge ratio.</param>
/// <param name="Survive">Explanations that survive.</param>
/// <param name="Doubtful">Explanations that are doubtful.</param>
/// <param name="TooLarge">Explanations that would have to be too large.</param>
/// <param name="WrongWay">Explanations that push the other way.</param>
/// <param name="Decides">The reading that would decide.</param>
public sealed record ReconciledHeater(
    [property: Out("Ω", "volts over amperes at the lower voltage", Name = "at-low")] double LowOhm,
    [property: Out("Ω", "volts over amperes at the higher voltage", Name = "at-high")] double HighOhm,
    [property: Out("", "label against display, in standard doubts: up to 2 agrees, above 3 conflicts", Name = "distance")] double Distance,
    [property: Out("Ω", "weighted mean", Name = "mean")] double MeanOhm,
    [property: Out("Ω", "its standard doubt", Name = "doubt")] double DoubtOhm,
    [property: Out("", "Birge ratio: above 1 the pieces scatter more than they claim", Name = "birge")] double Birge,
    [property: Out("Ω", "doubt after the Birge ratio", Name = "widened-doubt")] double WidenedOhm,
    [property: Out("", "explanations that survive", Name = "survives")] string Survive,
    [property: Out("", "explanations that are doubtful", Name = "doubtful")] string Doubtful,
    [property: Out("", "explanations that would need too large an effect", Name = "too-large")] string TooLarge,
    [property: Out("", "explanations that push the other way", Name = "wrong-way")] string WrongWay,
    [property: Out("", "the reading that would decide", Name = "decides")] string Decides);
