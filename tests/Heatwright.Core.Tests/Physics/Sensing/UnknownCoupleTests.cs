using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Two invented sets of readings, misfits by a second program (Python): six points, cold end 27 ± 1.5 °C, probe 2 K, meter 0.5 % and 20 µV,
/// class 2 limits halved as standard doubts.</summary>
public class UnknownCoupleTests
{
    private static readonly double[] ProbeC = [60, 120, 180, 240, 300, 360];

    private static readonly CoupleReadings Standard = Readings(1.36, 3.95, 6.36, 8.62, 11.10, 13.59);

    // Made as 30 µV/K · rise + 4 nV/K² · rise², rounded: a real pair of no standard type.
    private static readonly CoupleReadings Mixed = Readings(0.99, 2.82, 4.68, 6.57, 8.49, 10.43);

    [Theory]
    [InlineData("K", 3.088)]
    [InlineData("J", 1329)]
    [InlineData("T", 713.9)]
    [InlineData("N", 1116)]
    [InlineData("E", 3718)]
    public void Misfits_of_the_first_set_agree(string type, double chiSquare) => Assert.Equal(chiSquare, Match(type, Standard).ChiSquare, chiSquare * 5e-4);

    [Theory]
    [InlineData("K", 1009)]
    [InlineData("J", 3821)]
    [InlineData("T", 2536)]
    [InlineData("N", 28.64)]
    [InlineData("E", 6411)]
    public void Misfits_of_the_second_set_agree(string type, double chiSquare) => Assert.Equal(chiSquare, Match(type, Mixed).ChiSquare, chiSquare * 5e-4);

    [Fact]
    public void Probabilities_and_gains_agree()
    {
        Assert.Equal(0.798, Match("K", Standard).Probability, 5e-4);
        Assert.Equal(0.99554, Match("K", Standard).Gain, 5.1e-6);
        Assert.Equal(7.1e-5, Match("N", Mixed).Probability, 5e-7);
        Assert.Equal(0.97279, Match("N", Mixed).Gain, 5.1e-6);
        Assert.Equal(0.76603, Match("K", Mixed).Gain, 5.1e-6);
    }

    [Fact]
    public void The_first_set_is_one_type_and_the_second_none()
    {
        var matches = All(Standard);
        Assert.Equal(CoupleAnswer.OneType, UnknownCouple.Answer(matches));
        Assert.Equal("K", matches.MaxBy(match => match.Probability)!.Type);
        Assert.Equal(CoupleAnswer.NoStandardType, UnknownCouple.Answer(All(Mixed)));
    }

    [Fact]
    public void A_straight_line_through_the_first_set()
    {
        var (slope, error) = UnknownCouple.StraightLine(Standard.VoltsV, Standard.ProbeC);
        Assert.Equal(40.41e-6, slope, 5e-9);
        Assert.Equal(0.34e-6, error, 5e-9);
    }

    [Fact]
    public void Swapped_leads_are_named_as_such()
    {
        var reversed = Standard with { VoltsV = [.. Standard.VoltsV.Select(volts => -volts)] };
        Assert.Equal(CoupleAnswer.Reversed, UnknownCouple.Answer(All(reversed)));
        Assert.True(Match("K", reversed).ReversedProbability > 0.5);
    }

    [Fact]
    public void Two_types_that_both_fit_are_not_decided_by_the_better_one()
    {
        // R and S lie close: with a coarse meter and a short span both explain the readings.
        var coarse = new CoupleReadings([.. ProbeC.Select(tC => ColdJunction.VoltageV(Thermocouples.TypeS, tC, 27))], ProbeC, 27, 5, 0.02, 0.1e-3, 2);
        Assert.Equal(CoupleAnswer.CannotTell, UnknownCouple.Answer([Match("R", coarse), Match("S", coarse), Match("K", coarse)]));
    }

    /// <summary>Distances from K at 300 °C, cold end 27 °C (second program): mV and the error in °C of the answer.</summary>
    [Theory]
    [InlineData("J", 3.819, 92)]
    [InlineData("T", 2.661, 64)]
    [InlineData("N", 2.498, 60)]
    [InlineData("E", 8.292, 200)]
    public void A_wrong_type_is_wrong_by_60_to_200_degrees(string type, double mV, double errorK)
    {
        double apartV = ColdJunction.VoltageV(Thermocouples.Find(type)!, 300, 27) - ColdJunction.VoltageV(Thermocouples.TypeK, 300, 27);
        Assert.Equal(mV, Math.Abs(apartV) * 1e3, 5.1e-4);
        Assert.Equal(errorK, Math.Abs(apartV) / Thermocouples.TypeK.SlopeVPerK(300), 1.0);
    }

    [Fact]
    public void A_thermocouple_has_a_steady_slope_and_a_thermistor_has_none()
    {
        Assert.True(UnknownCouple.HasSteadySlope(Standard.VoltsV, Standard.ProbeC));
        Assert.False(UnknownCouple.HasSteadySlope([.. ProbeC.Select(tC => 1e-7 * Thermistor.ResistanceOhm(1e5, 3950, tC))], ProbeC));
    }

    /// <summary>Slopes 6, 10 and 14 about their mean of 10: 40 % away is steady, a little more is not; the distance between readings is divided out.</summary>
    [Theory]
    [InlineData(new double[] { 0, 12, 32, 60 }, new double[] { 0, 2, 4, 6 }, true)]
    [InlineData(new double[] { 0, 12, 32, 60.1 }, new double[] { 0, 2, 4, 6 }, false)]
    [InlineData(new double[] { 0, -12, -32, -60 }, new double[] { 0, 2, 4, 6 }, true)]
    [InlineData(new double[] { 0, 28, 48, 59.9 }, new double[] { 0, 2, 4, 6 }, false)]
    [InlineData(new double[] { 0, 10, 30, 60 }, new double[] { 0, 1, 3, 6 }, true)]
    [InlineData(new double[] { 5, 15, 14, 25 }, new double[] { 0, 1, 2, 3 }, false)]
    public void A_slope_may_wander_by_two_fifths(double[] volts, double[] probe, bool steady) => Assert.Equal(steady, UnknownCouple.HasSteadySlope(volts, probe));

    /// <summary>1, 2, 4 over 0, 1, 2: slope 3/2, residuals 1/6, −1/3, 1/6; √((1/6)/1/2).</summary>
    [Fact]
    public void A_straight_line_by_hand()
    {
        var (slope, error) = UnknownCouple.StraightLine([1, 2, 4], [10, 11, 12]);
        Assert.Equal(1.5, slope, 1e-12);
        Assert.Equal(Math.Sqrt(1 / 12.0), error, 1e-12);
    }

    [Theory]
    [InlineData(0.06, 0.0009, 0, CoupleAnswer.OneType)]
    [InlineData(0.06, 0, 0.9, CoupleAnswer.OneType)]
    [InlineData(0.051, 0.00099, 0, CoupleAnswer.OneType)]
    [InlineData(0.05, 0, 0, CoupleAnswer.CannotTell)]
    [InlineData(0.06, 0.001, 0, CoupleAnswer.CannotTell)]
    [InlineData(0.9, 0.011, 0, CoupleAnswer.CannotTell)]
    [InlineData(0.02, 0.02, 0, CoupleAnswer.CannotTell)]
    [InlineData(0.011, 0.01, 0, CoupleAnswer.CannotTell)]
    [InlineData(0.01, 0.01, 0.9, CoupleAnswer.Reversed)]
    [InlineData(0.01, 0, 0.051, CoupleAnswer.Reversed)]
    [InlineData(0.01, 0, 0.05, CoupleAnswer.NoStandardType)]
    public void The_answer_by_its_limits(double best, double second, double reversed, CoupleAnswer answer)
    {
        Assert.Equal(answer, UnknownCouple.Answer([new("A", 1, second, reversed, 1), new("B", 1, best, 0, 1), new("C", 1, 0, 0, 1)]));
        Assert.Equal(answer, UnknownCouple.Answer([new("B", 1, best, 0, 1), new("A", 1, second, reversed, 1)]));
    }

    [Fact]
    public void One_type_alone_and_none_can_be_asked_too()
    {
        Assert.Equal(CoupleAnswer.OneType, UnknownCouple.Answer([new("K", 1, 0.5, 0, 1)]));
        Assert.Equal(CoupleAnswer.NoStandardType, UnknownCouple.Answer([]));
    }

    private static CoupleReadings Readings(params double[] mV) => new([.. mV.Select(each => each * 1e-3)], ProbeC, 27, 2, 0.005, 0.02e-3, 1.5);

    private static List<CoupleMatch> All(CoupleReadings readings) => [.. "KJTNERS".Select(letter => Match(letter.ToString(), readings))];

    private static CoupleMatch Match(string type, CoupleReadings readings) => UnknownCouple.Compare(Thermocouples.Find(type)!,
        type switch
        {
            "R" or "S" => _ => 0.75,
            "T" => tC => Math.Max(1, 0.0075 * tC) / 2,   // the class ends at 350 °C, the set at 360
            _ => tC => CoupleTolerances.Find(type, 2).LimitK(tC) / 2,
        }, readings);
}
