using Heatwright.Predictions;
using Heatwright.Report;

namespace Heatwright.Tests.Report;

/// <summary>Curves that go up and down with the work, told by stretches.</summary>
public sealed class StretchesTests
{
    private static readonly double[] Times = [.. Enumerable.Range(0, 4001).Select(i => (double)i)];

    [Fact]
    public void A_saw_has_its_mean_as_line_and_its_teeth_as_range()
    {
        // Teeth of 10 s from 300 to 309: mean 304.5 by hand; the band of the draws reaches 2 further either way.
        double[] saw = [.. Times.Select(t => 300 + (t % 10))];
        var band = new Band("working end", "°C", Times, [.. saw.Select(v => v - 2)], saw, [.. saw.Select(v => v + 2)]);
        var told = Stretches.Of(Times, saw, band, 0, 4000, everyS: 10);
        // About 24 stretches: 4000 / 24 is 166.7 s, the next whole number of teeth is 170 s, and 23 of those are in 4000 s.
        Assert.Equal(23, told.Minutes.Length);
        Assert.All(told.Mean, mean => Assert.Equal(304.5, mean, 1e-9));
        Assert.All(told.Low, low => Assert.Equal(298, low));
        Assert.All(told.High, high => Assert.Equal(311, high));
        Assert.Equal(85 / 60.0, told.Minutes[0], 1e-9);
    }

    /// <summary>A tool that works for an hour and more, a piece every 20 s: each stretch of the whole charge holds at least one piece, so in none does the working end stand still, and the heater is seen off and on.</summary>
    [Fact]
    public void Where_there_are_more_pieces_than_looks_every_stretch_shows_its_work()
    {
        var result = WrittenReports.Knife.Result;
        double everyS = result.Study.Brief!.Work.EveryS;
        int coarse = 0;
        foreach (var prediction in result.Verdicts.Select(verdict => verdict.Prediction).OfType<Prediction>())
        {
            var band = prediction.Bands.First(one => one.Name == "working end");
            if (Stretches.Whole(prediction, band, everyS) is not { } told)
            {
                Assert.True(band.TimesS[^1] - band.TimesS[^2] <= everyS / 4);
                continue;
            }

            coarse++;
            double fromMin = prediction.Middle.TargetS / 60, toMin = fromMin + (everyS * (prediction.Middle.WorkDoneInARow - 1) / 60);
            int[] working = [.. Enumerable.Range(0, told.Minutes.Length).Where(i => told.Minutes[i] > fromMin + (everyS / 60) && told.Minutes[i] < toMin - (everyS / 60))];
            Assert.All(working, i => Assert.True(told.High[i] - told.Low[i] > 1, $"{prediction.Arrangement.Letter} at {told.Minutes[i]:0.0} min: {told.Low[i]:0.0} to {told.High[i]:0.0}"));
            Assert.InRange(told.Minutes.Length, 1, 201);
        }

        Assert.True(coarse > 0);
    }

    /// <summary>A band that sees the work at every tenth look only: about each look it is there, and what is slower than the work stays as it is.</summary>
    [Fact]
    public void A_band_whose_looks_miss_the_work_reaches_as_far_as_those_about_it()
    {
        double[] times = [.. Enumerable.Range(0, 100).Select(i => 48.0 * i)], high = [.. times.Select(t => 171.0)], low = [.. times.Select((t, i) => i % 10 == 3 ? 150 : 168.0)];
        var told = Stretches.Widened(new Band("working end", "°C", times, low, high, high));
        Assert.All(told.Low, end => Assert.Equal(150, end));
        Assert.All(told.High, end => Assert.Equal(171, end));
        Assert.Same(low, Stretches.Widened(new Band("grip", "°C", times, low, high, high)).Low);
    }

    [Fact]
    public void What_is_before_the_first_time_is_left_out()
    {
        double[] rise = [.. Times.Select(t => t < 1000 ? 20 : 320.0)];
        var told = Stretches.Of(Times, rise, new Band("working end", "°C", [], [], [], []), 1000, 4000, everyS: 10);
        Assert.All(told.Low, low => Assert.Equal(320, low));
        Assert.Equal((1000 + 65) / 60.0, told.Minutes[0], 1e-9); // 3000 / 24 is 125 s, so 130 s a stretch
    }
}
