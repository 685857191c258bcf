using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Each explanation by hand. Half-widths are multiples of √3, so that the standard doubts are round: 0.01 A of current digits, none of volts, gains of 2 % (A) and 1 % (V).
/// Ten volts at one ampere and twenty at two: 10 Ω ± 0.1 and ± 0.05, mean 10 Ω ± 1/√(100 + 400) = 0.0447214 Ω; with the gains √(0.00447214² + 0.02² + 0.01²) = 0.0228035 of it.</summary>
public class LabelHypothesesTests
{
    private static readonly double Root3 = Math.Sqrt(3);
    private static readonly SupplyDisplay Display = new(0, 0.01 * Root3, 0.01 * Root3, 0.02 * Root3);
    private static readonly VoltAmp[] Ten = [new(10, 1), new(20, 2)];

    private static JudgedHypothesis Of(LabelHypothesis which, double labelOhm, params VoltAmp[] reads) => LabelHypotheses.Judge(labelOhm, 0.1, reads, Display)[(int)which];

    [Theory]
    [InlineData(LabelHypothesis.LabelTolerance, Standing.TooLarge, 0.25, 4.02737)]  // 0.25/√((0.1/√3)² + 0.0228035²)
    [InlineData(LabelHypothesis.CurrentGain, Standing.TooLarge, -0.2, 9.75900)]     // 0.2/√(0.02² + 0.00447214²)
    [InlineData(LabelHypothesis.VoltageGain, Standing.TooLarge, 0.25, 22.82177)]    // 0.25/√(0.01² + 0.00447214²)
    [InlineData(LabelHypothesis.CurrentOffset, Standing.TooLarge, -0.25, 17.67767)] // 2.25 A foreseen, 2 A read, √2·0.01 A
    [InlineData(LabelHypothesis.SeriesLeads, Standing.TooLarge, 2, 5.43660)]        // 2/√((0.5/√3)² + 0.228035²)
    [InlineData(LabelHypothesis.HotMetal, Standing.Doubtful, 0.25, 0)]              // 10 Ω twice: it does not grow
    [InlineData(LabelHypothesis.CurrentLimit, Standing.TooLarge, 1, 70.71068)]      // 1 A/(√2·0.01 A)
    public void Ten_ohms_read_on_a_label_of_eight(LabelHypothesis which, Standing standing, double needed, double distance)
    {
        JudgedHypothesis judged = Of(which, 8, Ten);
        Assert.Equal((which, standing), (judged.Hypothesis, judged.Standing));
        Assert.Equal(needed, judged.Needed, 1e-9);
        Assert.Equal(distance, judged.Distance, 1e-5);
    }

    [Theory]
    [InlineData(10.6, Standing.WrongSign, -0.6, -2.631175)] // −0.6 + 2·0.228035 < 0
    [InlineData(10.4, Standing.Survives, -0.4, 1.087321)]   // −0.4 + 0.456 > 0: 0.4/0.367873
    [InlineData(9.4, Standing.Survives, 0.6, 1.630981)]     // 0.6/0.367873
    [InlineData(9.1, Standing.Doubtful, 0.9, 2.446471)]
    public void Leads_only_add(double labelOhm, Standing standing, double needed, double distance)
    {
        JudgedHypothesis judged = Of(LabelHypothesis.SeriesLeads, labelOhm, Ten);
        Assert.Equal(standing, judged.Standing);
        Assert.Equal(needed, judged.Needed, 1e-9);
        Assert.Equal(distance, judged.Distance, 2e-5);
    }

    /// <summary>Growth (R₂ − R₁)/√(u₁² + u₂²) with u₂ = R₂·0.01/I₂, label 10 Ω.</summary>
    [Theory]
    [InlineData(1.9, Standing.Survives, 0.0526316, 4.603832)]
    [InlineData(1.9455, Standing.Survives, 0.0280134, 2.476817)]
    [InlineData(1.965, Standing.Doubtful, 0.0178117, 1.581596)]
    [InlineData(2.03, Standing.Doubtful, -0.0147783, -1.329523)]
    [InlineData(2.06, Standing.WrongSign, -0.0291262, -2.634673)]
    public void A_hot_metal_grows_with_the_power(double secondA, Standing standing, double rise, double growth)
    {
        JudgedHypothesis judged = Of(LabelHypothesis.HotMetal, 10, new(10, 1), new(20, secondA));
        Assert.Equal(standing, judged.Standing);
        Assert.Equal(rise, judged.Needed, 1e-7);
        Assert.Equal(growth, judged.Distance, 1e-5);
    }

    [Theory]
    [InlineData(10.6, Standing.WrongSign)] // 10/10.6 − 1 = −0.0566 below −2·0.0228
    [InlineData(10.4, Standing.Doubtful)]  // −0.0385 above it
    [InlineData(9, Standing.Doubtful)]
    public void A_hot_metal_is_never_below_its_label(double labelOhm, Standing standing) => Assert.Equal(standing, Of(LabelHypothesis.HotMetal, labelOhm, Ten).Standing);

    [Fact]
    public void Readings_that_do_not_agree_among_themselves_spoil_every_steady_cause()
    {
        // 10, 10 and 12 Ω ± 0.1, 0.05, 0.048: the last two lie 2/√(0.0025 + 0.002304) = 28.85549 apart, the farthest pair.
        VoltAmp[] reads = [new(10, 1), new(20, 2), new(30, 2.5)];
        foreach (LabelHypothesis which in (LabelHypothesis[])[LabelHypothesis.LabelTolerance, LabelHypothesis.CurrentGain, LabelHypothesis.VoltageGain, LabelHypothesis.SeriesLeads])
        {
            Assert.Equal(28.85549, Of(which, 10.9, reads).Distance, 1e-5);
            Assert.Equal(Standing.TooLarge, Of(which, 10.9, reads).Standing);
        }

        // 1 − 10/10 = 0 A of offset; foreseen 2 A and 3 A, read 2 A and 2.5 A: 0.5/0.0141421.
        Assert.Equal(35.35534, Of(LabelHypothesis.CurrentOffset, 10, reads).Distance, 1e-5);
        // The worst one counts, wherever it stands.
        Assert.Equal(35.35534, Of(LabelHypothesis.CurrentOffset, 10, reads[0], reads[2], reads[1]).Distance, 1e-5);
    }

    [Fact]
    public void An_offset_and_a_limit_that_fit_are_left_standing()
    {
        // 1.25 + 0.3 A at 10 V; 2.5 + 0.3 A at 20 V foreseen, 2.82 A and 2.84 A read: 0.02/0.0141421 and 0.04/0.0141421.
        JudgedHypothesis offset = Of(LabelHypothesis.CurrentOffset, 8, new(10, 1.55), new(20, 2.82));
        Assert.Equal((0.3, 1.414214), (Math.Round(offset.Needed, 9), Math.Round(offset.Distance, 6)));
        Assert.Equal(Standing.Survives, offset.Standing);
        Assert.Equal(Standing.Doubtful, Of(LabelHypothesis.CurrentOffset, 8, new(10, 1.55), new(20, 2.84)).Standing);
        JudgedHypothesis limit = Of(LabelHypothesis.CurrentLimit, 8, new(10, 1.55), new(20, 1.57), new(15, 1.56));
        Assert.Equal((0.02, 1.414214), (Math.Round(limit.Needed, 9), Math.Round(limit.Distance, 6)));
        Assert.Equal(Standing.Survives, limit.Standing);
        // Digits of volts are seen through the label: 0.08 V on 8 Ω are 0.01 A, so √2·√2·0.01 A.
        JudgedHypothesis both = LabelHypotheses.Judge(8, 0.1, [new(10, 1.55), new(20, 2.82)], Display with { HalfDigitV = 0.08 * Root3 })[(int)LabelHypothesis.CurrentOffset];
        Assert.Equal(1, both.Distance, 1e-9);
    }

    [Fact]
    public void A_tenth_of_tolerance_is_what_a_label_may_be_off_by()
    {
        // 10 Ω read on 9.6 Ω: 0.0416667/√(0.0577350² + 0.0228035²) = 0.671229.
        JudgedHypothesis judged = Of(LabelHypothesis.LabelTolerance, 9.6, Ten);
        Assert.Equal(Standing.Survives, judged.Standing);
        Assert.Equal(0.671229, judged.Distance, 1e-6);
        Printed.Refuses("labelOhm", () => LabelHypotheses.Judge(0, 0.1, Ten, Display));
    }
}
