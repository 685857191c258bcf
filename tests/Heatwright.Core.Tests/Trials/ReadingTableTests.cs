using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>From the raw texts of a run to its numbers, what instruments promise, and pictures. Every expected value by hand.</summary>
public sealed class ReadingTableTests
{
    private static ReadingTable Read(Run run) => ReadingTable.Read(run, new(new("t"), TrialKind.HotOhms, new("p"), [run]));

    [Fact]
    public void Rows_keep_their_numbers_and_columns_their_units()
    {
        Run run = new(new("r"), [new("volts", "mV", ""), new("degrees", "°C", "")], [new(1, ["3700", "20"]), new(2, ["-", "-"]), new(3, ["OL", "21"]), new(4, ["3650", "abc"]), new(5, ["3600", "22"], "bumped"), new(6, ["-", "23"])]);
        var table = Read(run);
        Assert.Equal([1, 3, 4, 6], table.Numbers);
        Assert.Equal(4, table.Count);
        Assert.Equal([3.7, double.NaN, 3.65, double.NaN], table["volts"]);
        Assert.Equal([20, 21, double.NaN, 23], table["degrees"]);
        Assert.True(table.Has("volts"));
        Assert.False(table.Has("amps"));
        Assert.Contains("no column 'amps'", Assert.Throws<KeyNotFoundException>(() => table["amps"]).Message, StringComparison.Ordinal);
        Assert.Equal([(3, "volts shows 'OL': overload"), (4, "degrees 'abc' is not a number here."), (5, "struck out: bumped")], table.Remarks.Select(remark => (remark.Reading, remark.Words[..Math.Min(remark.Words.Length, remark.Reading switch { 3 => 26, 4 => 35, _ => 99 })])));
        Assert.All(table.Remarks, remark => Assert.Equal(Remark.LeftOut, remark.Effect));
        Assert.Equal((0.0, 0, 0), (table.FilmDoubtS, table.FilmS.Length, table.Cuts.Count));
    }

    /// <summary>A film of 25 frames a second: rows at 0, 4 and, behind a cut of 40 ± 6 s, 2 s later at 46 s; the struck row is none, and the cut stands behind two rows kept. A row typed to whole seconds is known to 1 s/√12.</summary>
    [Fact]
    public void Times_off_a_film_count_from_the_first_and_know_their_cuts()
    {
        Run run = new(new("r"), [new("volts", "V", ""), new("time", "s", "")], [new(1, ["1", "10:00:00"]), new(2, ["1", "10:02:00"], "bumped"), new(3, ["1", "10:04"]), new(4, ["-", "cut+40±6s"]), new(5, ["1", "10:06:00"]), new(6, ["-", "cut+2s"]), new(7, ["1", "10:07:00"])]) { Settings = new Dictionary<string, double> { [FilmTimes.FrameRate] = 25 } };
        var table = Read(run);
        Assert.Equal([1, 3, 5, 7], table.Numbers);
        Assert.Equal([0, 4, 46, 49], table["time"].Select(s => Math.Round(s, 9)));
        Assert.Equal([600, 604, 606, 607], table.FilmS.Select(s => Math.Round(s, 9)));
        Assert.Equal(1 / Math.Sqrt(12), table.FilmDoubtS, 1e-12);
        var cut = Assert.Single(table.Cuts);
        Assert.Equal(2, cut.From);
        Assert.Equal(6 / Math.Sqrt(3), cut.DoubtS, 1e-9);
        var longer = table.Longer(cut);
        Assert.Equal([0, 4, 46 + cut.DoubtS, 49 + cut.DoubtS], longer["time"].Select(s => s), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(table["volts"], longer["volts"]);
        Assert.Equal((table.FilmDoubtS, table.FilmS, table.Cuts), (longer.FilmDoubtS, longer.FilmS, longer.Cuts));

        // Volts typed on the line of the cut stand before it.
        Assert.Equal(3, Assert.Single(Read(run with { Readings = [.. run.Readings.Select(reading => reading.Number == 4 ? new Reading(4, ["1", "cut+40±6s"]) : reading)] }).Cuts).From);
    }

    private static readonly InstrumentCauses Causes = new([new("m", "meter", [new("mV", 2, 30, 10), new("A", 0, 0, 0)]), new("n", "other", [new("°C", 1, 0.5, 0.1)])]);

    /// <summary>2 % and 30 mV as limits are 0.02/√3 and 0.03/√3 V, a step of 10 mV is 0.01/√12 V, whatever unit of volts a column is in; what is nought, of another kind or of no meter is none.</summary>
    [Fact]
    public void An_instrument_is_asked_by_what_it_measures()
    {
        Column volts = new("drop", "V", "m"), amps = new("amps", "mA", "m"), degrees = new("degrees", "°C", "n");
        Assert.Equal(("m mV gain", 0.02 / Math.Sqrt(3)), (Causes.Gain(volts)!.Value.Cause.Id, Causes.Gain(volts)!.Value.Share));
        Assert.Equal("m mV offset", Causes.Offset(volts)!.Value.Cause.Id);
        Assert.Equal(0.03 / Math.Sqrt(3), Causes.Offset(volts)!.Value.Si, 1e-12);
        Assert.Equal(0.01 / Math.Sqrt(12), Causes.ResolutionSi(volts), 1e-12);
        Assert.Equal((0.02, 30.0, SpecTerms.Together, "mV"), (Causes.Promise(volts)!.Promise!.OfReading, Causes.Promise(volts)!.Promise!.Fixed, Causes.Promise(volts)!.Promise!.Terms, Causes.Promise(volts)!.Promise!.FixedUnit!.Symbol));
        Assert.Equal("m", Causes.Promise(volts)!.Name);
        Assert.Equal((null, null, 0.0), (Causes.Gain(amps), Causes.Offset(amps), Causes.ResolutionSi(amps)));
        Assert.NotNull(Causes.Promise(amps));
        Assert.Equal(0.5 / Math.Sqrt(3), Causes.Offset(degrees)!.Value.Si, 1e-12);
        foreach (var none in (Column[])[volts with { Instrument = "" }, volts with { Instrument = "n" }, volts with { Unit = "no unit" }])
        {
            Assert.Equal((null, null, 0.0, null), (Causes.Gain(none), Causes.Offset(none), Causes.ResolutionSi(none), Causes.Promise(none)));
        }
    }

    /// <summary>Causes of a covariance give it back: 4, 2, 5 is (2, 0; 1, 2) times its own transpose, and slopes of 1 and −3 make 4 + 45 − 12 of it. A direction without spread gives none.</summary>
    [Fact]
    public void A_covariance_becomes_causes_that_give_it_back()
    {
        var doubts = FitDoubts.FromCovariance(new("t"), new double[,] { { 4, 2 }, { 2, 5 } }, new double[,] { { 1, 0 }, { 0, 1 }, { 1, -3 } });
        Assert.Equal([4, 2, 5, 37], new[] { (0, 0), (0, 1), (1, 1), (2, 2) }.Select(pair => Math.Round(Doubts.Covariance(doubts[pair.Item1], doubts[pair.Item2]), 9)));
        Assert.Equal(["t scatter 1"], doubts[0].Causes.Select(cause => cause.Id));
        Assert.Equal([1, 2], doubts[1].Pushes.Select(push => Math.Round(push.By, 9)));
        var three = FitDoubts.FromCovariance(new("t"), new double[,] { { 0, 0, 0 }, { 0, 9, 3 }, { 0, 3, 10 } }, new double[,] { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } });
        Assert.Empty(three[0].Causes);
        Assert.Equal([9, 3, 10], new[] { (1, 1), (1, 2), (2, 2) }.Select(pair => Math.Round(Doubts.Covariance(three[pair.Item1], three[pair.Item2]), 9)));

        // Fully hung together: 4, 6, 9 has one cause alone.
        var one = FitDoubts.FromCovariance(new("t"), new double[,] { { 4, 6 }, { 6, 9 } }, new double[,] { { 1, 0 }, { 0, 1 } });
        Assert.Equal([3], one[1].Pushes.Select(push => Math.Round(push.By, 6)));
    }

    /// <summary>A product of volts and amps, 12: each gain moves it by its share of 12, the offset of the volts by 0.03/√3 times 3 A.</summary>
    [Fact]
    public void Each_error_of_an_instrument_is_carried_through_once()
    {
        Run run = new(new("r"), [new("volts", "V", "m"), new("degrees", "°C", "n"), new("time", "s", "")], []);
        var pushes = FitDoubts.FromInstruments(run, Causes, [12, 5], (name, gain, offset) => name == "volts" ? [((4 * (1 + gain)) + offset) * 3, 5] : [12, 5 * (1 + gain) + offset]).ToArray();
        Assert.Equal(["m mV gain", "m mV offset", "n °C gain", "n °C offset"], pushes.Select(pair => pair.Cause.Id));
        double[] expected = [0.24 / Math.Sqrt(3), 0.09 / Math.Sqrt(3), 0, 0];
        Assert.All(expected.Zip(pushes), pair => Assert.Equal(pair.First, pair.Second.Push[0], 1e-9));
        Assert.Equal(0.05 / Math.Sqrt(3), pushes[2].Push[1], 1e-9);
        Assert.Equal(0.5 / Math.Sqrt(3), pushes[3].Push[1], 1e-9);
    }

    [Fact]
    public void A_picture_runs_from_left_to_right_with_two_doubts_either_way()
    {
        FitPicture picture = new("", "", "", "", "", [3, 1, 2], [30, 10, 20], [31, 11, 21]) { Doubt = [0.5, double.NaN, 1] };
        Assert.True(picture.IsFitted);
        Assert.Equal(([1, 2, 3], [11, 21, 31]), (picture.Curve().X, picture.Curve().Y), (a, b) => a.Item1.SequenceEqual(b.Item1) && a.Item2.SequenceEqual(b.Item2));
        var (x, low, high) = picture.Band()!.Value;
        Assert.Equal([2, 3], x);
        Assert.Equal([19, 30], low); // 21 − 2·1, 31 − 2·0.5
        Assert.Equal([23, 32], high);
        Assert.Null((picture with { Doubt = [] }).Band());
        Assert.Null((picture with { Doubt = [0.5, double.NaN, double.NaN] }).Band());
        Assert.False((picture with { Fitted = [] }).IsFitted);
    }
}
