namespace Heatwright.Physics;

/// <summary>What could make readings on a supply disagree with a heater's label.</summary>
public enum LabelHypothesis
{
    /// <summary>The display is right and the heater differs from its label, within the label's tolerance.</summary>
    LabelTolerance,

    /// <summary>The label is right and the current display has a gain error.</summary>
    CurrentGain,

    /// <summary>The label is right and the voltage display has a gain error.</summary>
    VoltageGain,

    /// <summary>The label is right and the current display adds a fixed current.</summary>
    CurrentOffset,

    /// <summary>The label is right and leads or contacts stand in series.</summary>
    SeriesLeads,

    /// <summary>The label is right when cold and the metal is hot.</summary>
    HotMetal,

    /// <summary>The supply was in current limit.</summary>
    CurrentLimit,
}

/// <summary>How a hypothesis stands against the readings.</summary>
public enum Standing
{
    /// <summary>Explains the readings within what is usual.</summary>
    Survives,

    /// <summary>Explains them only with an unusually large effect, two to three doubts out.</summary>
    Doubtful,

    /// <summary>Would need an effect more than three doubts out, or does not fit all readings.</summary>
    TooLarge,

    /// <summary>Can only push the readings the other way.</summary>
    WrongSign,
}

/// <summary>One hypothesis judged.</summary>
/// <param name="Hypothesis">Which.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Needed">Size it would need: a relative error, or amperes (offset), or ohms (leads).</param>
/// <param name="Distance">How many standard doubts out that size, or the misfit left, is.</param>
public readonly record struct JudgedHypothesis(LabelHypothesis Hypothesis, Standing Standing, double Needed, double Distance);

/// <summary>Judges each way in which volts over amperes can disagree with a label.</summary>
/// <remarks>Each hypothesis is fitted to the first reading and must then explain the others; the last reading is the one of most power. Leads and heating push V/I up only: a V/I below the label rules
/// them out by sign. Doubts as in <see cref="Reconcile"/>; leads up to 0.5 Ω count as usual (common practice, no source).</remarks>
public static class LabelHypotheses
{
    /// <summary>Usual half-width of unsubtracted leads and contacts. Common practice, no source.</summary>
    public const double UsualLeadsOhm = 0.5;

    private static readonly double RootOfThree = Math.Sqrt(3);

    /// <summary>All hypotheses judged, in the order of <see cref="LabelHypothesis"/>. At least two readings at different voltages.</summary>
    public static IReadOnlyList<JudgedHypothesis> Judge(double labelOhm, double labelHalfWidth, IReadOnlyList<VoltAmp> reads, SupplyDisplay display)
    {
        Impossible.UnlessPositive(labelOhm, "Ω");
        Impossible.UnlessCounted(reads.Count, 2, nameof(reads));
        OhmEvidence label = Reconcile.Label(labelOhm, labelHalfWidth);
        OhmEvidence[] digits = [.. reads.Select(read => Reconcile.VoltAmp(read, display with { GainV = 0, GainA = 0 }))];
        CombinedOhms mean = Reconcile.Combine(digits);
        double steady = Misfit(digits);
        double low = (mean.MeanOhm / labelOhm) - 1;
        double high = (labelOhm / mean.MeanOhm) - 1;
        double read = mean.DoubtOhm / mean.MeanOhm;
        double gainA = display.GainA / RootOfThree;
        double gainV = display.GainV / RootOfThree;
        double doubt = Reconcile.Root(read, gainA, gainV);
        return
        [
            Graded(LabelHypothesis.LabelTolerance, low, Math.Max(steady, Math.Abs(low) / Reconcile.Root(label.DoubtOhm / labelOhm, doubt))),
            Graded(LabelHypothesis.CurrentGain, high, Math.Max(steady, Math.Abs(high) / Reconcile.Root(gainA, read))),
            Graded(LabelHypothesis.VoltageGain, low, Math.Max(steady, Math.Abs(low) / Reconcile.Root(gainV, read))),
            Offset(labelOhm, reads, display),
            Leads(labelOhm, mean.MeanOhm, doubt * mean.MeanOhm, steady),
            Heating(labelOhm, digits, doubt),
            Limit(reads, display),
        ];
    }

    private static JudgedHypothesis Graded(LabelHypothesis hypothesis, double needed, double distance) => new(hypothesis, Reconcile.AgreementAt(distance) switch
    {
        Agreement.Consistent => Standing.Survives,
        Agreement.Doubtful => Standing.Doubtful,
        _ => Standing.TooLarge,
    }, needed, distance);

    /// <summary>Largest distance of any two readings when only their digits count: gains are shared and cancel.</summary>
    private static double Misfit(OhmEvidence[] digits) => digits.Max(a => digits.Max(b => Reconcile.Z(a, b)));

    /// <summary>Offset that mends the first reading, predicted for the others; their misfit in digits decides.</summary>
    private static JudgedHypothesis Offset(double labelOhm, IReadOnlyList<VoltAmp> reads, SupplyDisplay display)
    {
        double offsetA = OffsetA(labelOhm, reads[0]);
        double worst = 0;
        for (int i = 1; i < reads.Count; i++)
        {
            // Digits of both currents, and of both voltages seen through the label's resistance.
            double doubt = Math.Sqrt(2) * Reconcile.Root(display.HalfDigitA, display.HalfDigitV / labelOhm) / RootOfThree;
            worst = Math.Max(worst, Math.Abs(reads[i].Amps - PredictedA(labelOhm, offsetA, reads[i].Volts)) / doubt);
        }

        return Graded(LabelHypothesis.CurrentOffset, offsetA, worst);
    }

    /// <summary>Current that a display would have to add so that the label is right: I − V/R.</summary>
    public static double OffsetA(double labelOhm, VoltAmp read) => read.Amps - (read.Volts / Impossible.UnlessPositive(labelOhm, "Ω"));

    /// <summary>What a display with that offset would show at another voltage.</summary>
    public static double PredictedA(double labelOhm, double offsetA, double volts) => (volts / Impossible.UnlessPositive(labelOhm, "Ω")) + offsetA;

    private static JudgedHypothesis Leads(double labelOhm, double meanOhm, double doubtOhm, double steady)
    {
        double leads = meanOhm - labelOhm;
        double usual = Reconcile.Root(UsualLeadsOhm / RootOfThree, doubtOhm);
        return leads + (2 * doubtOhm) < 0
            ? new(LabelHypothesis.SeriesLeads, Standing.WrongSign, leads, leads / doubtOhm)
            : Graded(LabelHypothesis.SeriesLeads, leads, Math.Max(steady, Math.Abs(leads) / usual));
    }

    /// <summary>A hot metal reads above the label, and more so at the reading of more power (the last one).</summary>
    private static JudgedHypothesis Heating(double labelOhm, OhmEvidence[] digits, double doubt)
    {
        double rise = (digits[^1].Ohm / labelOhm) - 1;
        double growth = (digits[^1].Ohm - digits[0].Ohm) / Reconcile.Root(digits[0].DoubtOhm, digits[^1].DoubtOhm);
        Standing standing = rise + (2 * doubt) < 0 || growth < -2 ? Standing.WrongSign : growth > 2 ? Standing.Survives : Standing.Doubtful;
        return new(LabelHypothesis.HotMetal, standing, rise, growth);
    }

    /// <summary>In current limit the current stays the same while the set voltage does not.</summary>
    private static JudgedHypothesis Limit(IReadOnlyList<VoltAmp> reads, SupplyDisplay display)
    {
        double spread = reads.Max(read => read.Amps) - reads.Min(read => read.Amps);
        return Graded(LabelHypothesis.CurrentLimit, spread, spread / (Math.Sqrt(2) * display.HalfDigitA / RootOfThree));
    }
}
