using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Label, ohmmeter and volts over amperes of one heater: RE-1 to RE-6 (computed by an independent script on invented readings), and one case
/// of the trade. Tolerance: half of the last printed digit.</summary>
public class ReconcileTests
{
    private static readonly VoltAmp[] Reads = [new(9, 1.04), new(18, 2.07)];
    private static readonly SupplyDisplay Display = new(0.05, 0.005);
    private static readonly OhmEvidence Label = Reconcile.Label(9.6);
    private static readonly OhmEvidence Meter = Reconcile.Ohmmeter(9.3, 0.2, 0.01, 0.1, 0.05);
    private static readonly OhmEvidence FromSupply = Reconcile.VoltAmp(Reads[1], Display);

    [Fact]
    public void Digits_alone_leave_a_range()
    {
        (double low, double high) = Reconcile.DigitRange(Reads[0], 0, 0.005);
        (double low18, double high18) = Reconcile.DigitRange(Reads[1], 0, 0.005);
        Printed.Agree("RE-1", Printed.Computed, "8.6124, 8.6957, 8.6747, 8.7167", low, high, low18, high18);
        // The two points agree within −0.2 to +1.2 %.
        Printed.Agree("RE-1, ratio", Printed.Computed, "-0.2, 1.2", ((low18 / high) - 1) * 100, ((high18 / low) - 1) * 100);
    }

    [Fact]
    public void A_pure_offset_is_tested_at_the_second_reading()
    {
        double offset = LabelHypotheses.OffsetA(9.6, Reads[0]);
        Printed.Agree("RE-2", Printed.Computed, "0.10250, 1.9775", offset, LabelHypotheses.PredictedA(9.6, offset, 18));
    }

    [Fact]
    public void Every_piece_of_evidence_has_its_doubt()
    {
        Printed.Agree("RE-3", Printed.Computed, "1.1631, 0.5992, 8.69565, 0.11377", Reconcile.RelativeDoubt(2.07, 0.005, 0.02) * 100,
            Reconcile.RelativeDoubt(18, 0.05, 0.01) * 100, FromSupply.Ohm, FromSupply.DoubtOhm);
        Printed.Agree("RE-4", Printed.Computed, "0.55426, 1.5983", Label.DoubtOhm, Reconcile.Z(Label, FromSupply));
        Printed.Agree("RE-5", Printed.Computed, "9.100, 0.08396, 2.8596, 0.8919", Meter.Ohm, Meter.DoubtOhm, Reconcile.Z(Meter, FromSupply), Reconcile.Z(Meter, Label));
        Assert.Equal(Agreement.Consistent, Reconcile.AgreementAt(Reconcile.Z(Label, FromSupply)));
        Assert.Equal(Agreement.Doubtful, Reconcile.AgreementAt(Reconcile.Z(Meter, FromSupply)));
        Assert.Equal(Agreement.Conflict, Reconcile.AgreementAt(3.01));
    }

    /// <summary>[birge-1932] for the ratio, from memory; with two degrees of freedom the chance is e^(−χ²/2), a second method.</summary>
    [Fact]
    public void Evidence_that_scatters_more_than_it_claims_widens_the_mean()
    {
        CombinedOhms all = Reconcile.Combine(FromSupply, Label, Meter);
        // The sixth digit printed beside RE-6 (8.96683) is cut, not rounded: a second script gives 8.9668352.
        Printed.Agree("RE-6", Printed.Computed, "8.96684, 0.06706, 9.5019, 0.008644, 2.1797, 0.14617",
            all.MeanOhm, all.DoubtOhm, all.ChiSquared, all.Chance, all.BirgeRatio, all.WidenedOhm);
        Assert.Equal(Math.Exp(-all.ChiSquared / 2), all.Chance, 1e-12);
    }

    [Fact]
    public void Which_explanations_are_left_of_the_invented_case()
    {
        IReadOnlyList<JudgedHypothesis> judged = LabelHypotheses.Judge(9.6, 0.10, Reads, Display);
        Assert.Equal(Standing.Survives, Of(judged, LabelHypothesis.LabelTolerance).Standing);
        Assert.Equal(Standing.TooLarge, Of(judged, LabelHypothesis.CurrentGain).Standing);
        Assert.Equal(Standing.TooLarge, Of(judged, LabelHypothesis.VoltageGain).Standing);
        Assert.Equal(Standing.TooLarge, Of(judged, LabelHypothesis.CurrentOffset).Standing);
        Assert.Equal(Standing.WrongSign, Of(judged, LabelHypothesis.SeriesLeads).Standing);
        Assert.Equal(Standing.WrongSign, Of(judged, LabelHypothesis.HotMetal).Standing);
        Assert.Equal(Standing.TooLarge, Of(judged, LabelHypothesis.CurrentLimit).Standing);
        Printed.Agrees("RE-2, offset", Printed.Computed, "0.10250", Of(judged, LabelHypothesis.CurrentOffset).Needed);
    }

    /// <summary>Common practice, no source: a heater of nominal 8.1 Ω read at about 1.6 A on 12 V and about 3.2 A near 24 V on a bench supply's own
    /// display (0.1 A digits; 'near' taken as 1 V digits). By hand: 12/1.6 = 24/3.2 = 7.5 Ω, 7.4 % below the label.</summary>
    [Fact]
    public void A_nominal_eight_point_one_ohm_heater_that_reads_seven_and_a_half()
    {
        VoltAmp[] reads = [new(12, 1.6), new(24, 3.2)];
        IReadOnlyList<JudgedHypothesis> judged = LabelHypotheses.Judge(8.1, 0.10, reads, new SupplyDisplay(0.5, 0.05));
        JudgedHypothesis label = Of(judged, LabelHypothesis.LabelTolerance);
        Assert.Equal(Standing.Survives, label.Standing);
        Printed.Agrees("7.5 Ω against 8.1 Ω, %", Printed.Practice, "-7.4", label.Needed * 100);
        Assert.True(label.Distance < 2);

        // Leads and heating can only raise V/I; a current limit would have shown one current twice.
        Assert.Equal(Standing.WrongSign, Of(judged, LabelHypothesis.SeriesLeads).Standing);
        Assert.Equal(Standing.WrongSign, Of(judged, LabelHypothesis.HotMetal).Standing);
        Assert.Equal(Standing.TooLarge, Of(judged, LabelHypothesis.CurrentLimit).Standing);

        // A gain error of 8 % is far outside a display's 2 % or 1 %. A fixed offset of 0.12 A would show 3.08 A near 24 V: digits this coarse cannot refuse it.
        Assert.Equal(Standing.TooLarge, Of(judged, LabelHypothesis.CurrentGain).Standing);
        Assert.Equal(Standing.TooLarge, Of(judged, LabelHypothesis.VoltageGain).Standing);
        JudgedHypothesis offset = Of(judged, LabelHypothesis.CurrentOffset);
        Assert.Equal(Standing.Survives, offset.Standing);
        Assert.Equal(1.6 - (12 / 8.1), offset.Needed, 1e-12);

        // Volts read to 0.1 V put the offset in doubt; a display nobody specified lets nearly everything of the right sign stand.
        Assert.Equal(Standing.Doubtful, Of(LabelHypotheses.Judge(8.1, 0.10, reads, new SupplyDisplay(0.05, 0.05)), LabelHypothesis.CurrentOffset).Standing);
        judged = LabelHypotheses.Judge(8.1, 0.10, reads, SupplyDisplay.Unspecified(0.1, 0.1));
        Assert.Equal(Standing.Survives, Of(judged, LabelHypothesis.CurrentGain).Standing);
        Assert.Equal(Standing.Survives, Of(judged, LabelHypothesis.LabelTolerance).Standing);
    }

    [Fact]
    public void Leads_a_hot_metal_and_a_limit_are_recognised_too()
    {
        SupplyDisplay fine = new(0.005, 0.0005, 0.001, 0.001);
        Assert.Equal(Standing.Survives, Of(LabelHypotheses.Judge(8, 0.1, [new(8, 8 / 8.3), new(16, 16 / 8.3)], fine), LabelHypothesis.SeriesLeads).Standing);
        Assert.Equal(Standing.Survives, Of(LabelHypotheses.Judge(8, 0.1, [new(4, 4 / 8.4), new(16, 16 / 12.0)], fine), LabelHypothesis.HotMetal).Standing);
        Assert.Equal(Standing.Survives, Of(LabelHypotheses.Judge(8, 0.1, [new(4, 0.5), new(3.2, 0.5)], fine), LabelHypothesis.CurrentLimit).Standing);
        Assert.Equal(Standing.Survives, Of(LabelHypotheses.Judge(8, 0.1, [new(4, 0.6), new(16, 2.1)], fine), LabelHypothesis.CurrentOffset).Standing);
    }

    private static JudgedHypothesis Of(IReadOnlyList<JudgedHypothesis> judged, LabelHypothesis which) => judged.Single(each => each.Hypothesis == which);

    [Fact]
    public void A_weighted_mean_lies_between_its_pieces_and_beats_the_best_of_them() => Gen.Select(Gen.Double[1, 20], Gen.Double[0.01, 2], Gen.Double[1, 20], Gen.Double[0.01, 2]).Sample((a, ua, b, ub) =>
    {
        CombinedOhms both = Reconcile.Combine(new(a, ua), new(b, ub));
        Assert.InRange(both.MeanOhm, Math.Min(a, b) - 1e-9, Math.Max(a, b) + 1e-9);
        Assert.True(both.DoubtOhm <= Math.Min(ua, ub));
        // Second method: for two pieces χ² is the square of their distance.
        Assert.Equal(Math.Pow(Reconcile.Z(new(a, ua), new(b, ub)), 2), both.ChiSquared, 1e-9 * (1 + both.ChiSquared));
    });

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("labelOhm", () => Reconcile.Label(-9.6));
        Printed.Refuses("halfWidth", () => Reconcile.Label(9.6, 1.2));
        Printed.Refuses("evidence", () => Reconcile.Combine(Label));
        Printed.Refuses("evidence", () => Reconcile.Combine(Label, new(9, 0)));
        Printed.Refuses("reads", () => LabelHypotheses.Judge(9.6, 0.1, [Reads[0]], Display));
    }
}
