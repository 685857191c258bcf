using CsCheck;
using Heatwright.Numerics;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Margin 2, doubt 4, reading doubt 2; check values by a second program (Python).</summary>
public class ReadingWorthTests
{
    [Fact]
    public void Worth_of_knowing_all_and_of_one_reading()
    {
        Assert.Equal(0.7911862, ReadingWorth.OfKnowingAll(2, 4), 5.1e-8);
        Assert.Equal(3.577709, ReadingWorth.MoveDoubt(4, 2), 5.1e-7);
        Assert.Equal(1.788854, ReadingWorth.DoubtLeft(4, 2), 5.1e-7);
        Assert.Equal(0.6446837, ReadingWorth.OfReading(2, 4, 2), 5.1e-8);
    }

    [Fact]
    public void The_wrong_choice_becomes_rarer()
    {
        Assert.Equal(0.3085375, ReadingWorth.WrongNow(2, 4), 5.1e-8);
        Assert.Equal(0.1289772, ReadingWorth.WrongAfter(2, 4, 2), 5.1e-8);
    }

    /// <summary>A second way: truths and readings drawn, the choice made from each reading, regrets counted.</summary>
    [Fact]
    public void Drawing_truths_and_readings_gives_the_same_worth()
    {
        const int Draws = 400_000;
        const double M = 2, S = 4, U = 2;
        double regretNow = 0, regretAfter = 0, wrong = 0;
        for (ulong i = 0; i < Draws; i++)
        {
            double truth = M + (S * Quantiles.Normal(CounterRandom.Uniform(11, 1, i)));
            double reading = truth + (U * Quantiles.Normal(CounterRandom.Uniform(11, 2, i)));
            double after = ((M / (S * S)) + (reading / (U * U))) / ((1 / (S * S)) + (1 / (U * U)));
            regretNow += truth < 0 ? -truth : 0;
            bool isWrong = (after > 0) != (truth > 0);
            regretAfter += isWrong ? Math.Abs(truth) : 0;
            wrong += isWrong ? 1 : 0;
        }

        Assert.Equal(ReadingWorth.OfKnowingAll(M, S), regretNow / Draws, 0.01);
        Assert.Equal(ReadingWorth.OfReading(M, S, U), (regretNow - regretAfter) / Draws, 0.01);
        Assert.Equal(ReadingWorth.WrongAfter(M, S, U), wrong / Draws, 0.003);
    }

    [Fact]
    public void No_reading_is_worth_more_than_knowing_all() => Gen.Select(Gen.Double[-10, 10], Gen.Double[0.1, 10], Gen.Double[0.01, 20]).Sample((margin, doubt, reading) =>
        ReadingWorth.OfReading(margin, doubt, reading) <= ReadingWorth.OfKnowingAll(margin, doubt) + 1e-12
        && ReadingWorth.OfReading(margin, doubt, reading) >= -1e-15);

    [Fact]
    public void A_perfect_reading_is_worth_knowing_all() => Gen.Select(Gen.Double[-10, 10], Gen.Double[0.1, 10]).Sample((margin, doubt) =>
        Math.Abs(ReadingWorth.OfReading(margin, doubt, 0) - ReadingWorth.OfKnowingAll(margin, doubt)) < 1e-12);

    [Fact]
    public void A_better_reading_is_worth_more_and_errs_less() => Gen.Select(Gen.Double[-5, 5], Gen.Double[0.5, 5], Gen.Double[0.1, 5]).Sample((margin, doubt, reading) =>
        ReadingWorth.OfReading(margin, doubt, reading) >= ReadingWorth.OfReading(margin, doubt, reading * 1.5)
        && ReadingWorth.WrongAfter(margin, doubt, reading) <= ReadingWorth.WrongAfter(margin, doubt, reading * 1.5) + 1e-9
        && ReadingWorth.WrongAfter(margin, doubt, reading) <= ReadingWorth.WrongNow(margin, doubt) + 1e-9, iter: 30);

    [Fact]
    public void Without_doubt_no_reading_is_worth_anything() => Assert.Equal(0, ReadingWorth.OfKnowingAll(3, 0));

    /// <summary>At a margin of nothing: doubt/√(2π) to know all, half wrong now; after a reading as good as the doubt, the angle between truth and reading: ¼ (arctan 1/π).</summary>
    [Fact]
    public void On_the_edge_the_known_values_of_the_normal_law()
    {
        Assert.Equal(4 / Math.Sqrt(2 * Math.PI), ReadingWorth.OfKnowingAll(0, 4), 1e-12);
        Assert.Equal(0.5 / Math.Sqrt(2 * Math.PI), ReadingWorth.OfKnowingAll(0, 0.5), 1e-12);
        Assert.Equal(0, ReadingWorth.OfKnowingAll(0, 0));
        Assert.Equal(0.5, ReadingWorth.WrongNow(0, 4), 1e-12);
        Assert.Equal(0.25, ReadingWorth.WrongAfter(0, 3, 3), 1e-7);
        Assert.Equal(Math.Atan(0.5) / Math.PI, ReadingWorth.WrongAfter(0, 4, 2), 1e-7);   // tan = reading doubt over doubt
        WrongChoice wrong = ReadingWorth.Wrong(2, 4, 2);
        Assert.Equal((0.3085375, 0.1289772, 1.788854, 0.7911862), (Math.Round(wrong.Now, 7), Math.Round(wrong.After, 7), Math.Round(wrong.DoubtLeft, 6), Math.Round(wrong.WorthOfAll, 7)));
    }

    [Fact]
    public void The_sign_of_the_margin_does_not_matter() => Gen.Select(Gen.Double[0.1, 5], Gen.Double[0.3, 3], Gen.Double[0.3, 3]).Sample((margin, doubt, reading) =>
    {
        Assert.Equal(ReadingWorth.WrongNow(margin, doubt), ReadingWorth.WrongNow(-margin, doubt), 1e-12);
        Assert.Equal(ReadingWorth.WrongAfter(margin, doubt, reading), ReadingWorth.WrongAfter(-margin, doubt, reading), 1e-9);
        Assert.Equal(ReadingWorth.OfReading(margin, doubt, reading), ReadingWorth.OfReading(-margin, doubt, reading), 1e-12);
        // The pieces before and after the reading are the sides of one triangle.
        Assert.Equal(doubt * doubt, Math.Pow(ReadingWorth.MoveDoubt(doubt, reading), 2) + Math.Pow(ReadingWorth.DoubtLeft(doubt, reading), 2), 1e-9);
    }, iter: 20);
}
