using System.Globalization;
using Heatwright.Parts;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Times typed off a film of the meters. Expected values by hand, from the form of SMPTE ST 12-1 (from memory).</summary>
public sealed class FilmTimesTests
{
    /// <summary>12 minutes 7 seconds and 10 frames of 25 are 727.4 s. With dropped frames an hour counts 108 000 − 2·54 = 107 892 frames, which at 29.97 a second are 3600 s; without, 108 000 are 3603.6036 s.</summary>
    [Theory]
    [InlineData("12:07:10", 25, 727.4), InlineData("00:12:07:10", 25, 727.4), InlineData("1:00:00:00", 30, 3600), InlineData("0:00:00:12", 24, 0.5)]
    [InlineData("01:00:00;00", 29.97, 3600), InlineData("01:00:00:00", 29.97, 3603.6036036), InlineData("00:01:00;02", 29.97, 60.06006006), InlineData("00:00:59;29", 29.97, 60.02669336)]
    [InlineData("00:01:00;04", 59.94, 60.06006006), InlineData("12:07", 25, 727), InlineData("727.4", 25, 727.4)]
    public void A_time_code_is_read(string text, double framesPerS, double seconds)
    {
        var (read, doubt) = FilmTimes.One(text, framesPerS);
        Assert.Equal(ReadingSays.Number, read.Says);
        Assert.Equal(seconds, read.Value, 1e-7);
        Assert.Equal((text == "12:07" ? 1 : 1 / framesPerS) / Math.Sqrt(12), doubt, 1e-12);
    }

    [Theory]
    [InlineData("12:07:25", 25, "0 to 24"), InlineData("12:67:10", 25, "count to 59"), InlineData("1:75:07:10", 25, "count to 59"), InlineData("12:07;10", 25, "29.97"), InlineData("00:01:00;01", 29.97, "no frame 1"), InlineData("12:07:xx", 25, "")]
    public void What_is_no_time_code_says_why(string text, double framesPerS, string why)
    {
        var (read, _) = FilmTimes.One(text, framesPerS);
        Assert.Equal(ReadingSays.Unclear, read.Says);
        Assert.Contains(why, read.Why, StringComparison.Ordinal);
        Assert.NotEmpty(read.Why);
    }

    [Fact]
    public void Times_count_from_the_first_and_a_cut_of_known_length_is_added()
    {
        var times = FilmTimes.Of(["10:00:00", "10:05:00", "-", "cut+40±5s", "10:06:12"], 25);
        Assert.Equal([0, 5, double.NaN, double.NaN, 46.48], times.Read.Select(read => Math.Round(read.Value, 9)));
        Assert.Equal([600, 605, double.NaN, double.NaN, 606.48], times.FilmS.Select(s => Math.Round(s, 9)));
        var cut = Assert.Single(times.Cuts);
        Assert.Equal((4, 40.0), (cut.From, cut.GapS));
        Assert.Equal(5 / Math.Sqrt(3), cut.DoubtS, 1e-9); // anywhere within ±5 s
    }

    [Theory, InlineData("cut", "how long"), InlineData("cut+soon", "typed as")]
    public void Behind_a_cut_of_unknown_length_no_time_is_known(string cut, string why)
    {
        var times = FilmTimes.Of(["10:00:00", cut, "10:06:12", "10:08:00"], 25);
        Assert.All(times.Read.Skip(2), read => Assert.Equal(ReadingSays.Unclear, read.Says));
        Assert.Contains(times.Read, read => read.Why.Contains(why, StringComparison.Ordinal));
    }

    [Fact]
    public void A_film_does_not_run_backwards()
    {
        var times = FilmTimes.Of(["10:00:00", "10:10:00", "10:04:00", "10:12:00"], 25);
        Assert.Equal([ReadingSays.Number, ReadingSays.Number, ReadingSays.Unclear, ReadingSays.Number], times.Read.Select(read => read.Says));
    }

    /// <summary>A tip of 20 J/K that loses 0.1 W/K, 10 W for 120 s, then off; degrees by the exact exponential. The film began at ten minutes and was stopped for 40 s.</summary>
    [Fact]
    public void A_warm_up_typed_off_a_film_finds_what_one_off_a_watch_finds()
    {
        static string Code(double t) => string.Create(CultureInfo.InvariantCulture, $"{(int)((600 + t) / 60)}:{(int)(600 + t) % 60:00}:00");
        string[] watch = [.. Times().Select(t => t.ToString(CultureInfo.InvariantCulture))];
        string[] film = [.. Times().Select(t => Code(t > 60 ? t - 40 : t))];
        var byWatch = Found(watch, []);
        var exactCut = Found([.. film.Take(7), "cut+40s", .. film.Skip(7)], new() { [FilmTimes.FrameRate] = 25 });
        var vagueCut = Found([.. film.Take(7), "cut+40±20s", .. film.Skip(7)], new() { [FilmTimes.FrameRate] = 25 });
        foreach (string quantity in new[] { PartQuantities.HeatCapacity, PartQuantities.LinearLoss })
        {
            var (expected, exact, vague) = (byWatch.Find(quantity)!, exactCut.Find(quantity)!, vagueCut.Find(quantity)!);
            Assert.Equal(expected.Si, exact.Si, 1e-4 * expected.Si);
            Assert.True(vague.StandardDoubt > 1.5 * exact.StandardDoubt, $"{quantity}: {vague.StandardDoubt} beside {exact.StandardDoubt}");
        }

        // Nobody said how long: the first minute alone counts, and it is told which readings wait for a word.
        var open = Found([.. film.Take(7), "cut", .. film.Skip(7)], new() { [FilmTimes.FrameRate] = 25 });
        Assert.Equal(film.Length - 7, open.Remarks.Count(remark => remark.Effect == Remark.LeftOut && remark.Words.Contains("how long", StringComparison.Ordinal)));
        Assert.True(open.Find(PartQuantities.HeatCapacity)!.StandardDoubt > exactCut.Find(PartQuantities.HeatCapacity)!.StandardDoubt);
    }

    private static IEnumerable<double> Times() => Enumerable.Range(0, 25).Select(i => 10.0 * i).Where(t => t is <= 60 or > 100);

    private static PartFindings Found(string[] times, Dictionary<string, double> settings)
    {
        Part stick = new(new("stick"), PartKind.Heater, "stick", []);
        Column[] columns = [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")];
        int next = 0;
        double[] real = [.. Times()];
        Reading[] readings = [.. times.Select((text, i) => FilmTimes.IsCut(text) ? new Reading(i + 1, [text, "-", "-", "-"]) : Read(i + 1, text, real[next++]))];
        return PartBench.One(stick, [new(new("up"), TrialKind.WarmUp, stick.Id, [new(new("up-1"), columns, readings) { Settings = new Dictionary<string, double>(settings) { ["air"] = 20 } }])], new InstrumentCauses([]));

        static Reading Read(int number, string text, double t) => new(number, [text, t < 120 ? "5" : "0", t < 120 ? "2" : "0", Degrees(t).ToString("0.00", CultureInfo.InvariantCulture)]);
    }

    private static double Degrees(double t) => 20 + (100 * (t <= 120 ? 1 - Math.Exp(-t / 200) : (1 - Math.Exp(-0.6)) * Math.Exp(-(t - 120) / 200)));
}
