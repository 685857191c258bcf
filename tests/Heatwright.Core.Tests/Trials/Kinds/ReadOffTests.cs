using System.Globalization;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Values that are summed over readings, their doubts, and readings that stand alone. Every expected value by hand.</summary>
public sealed class ReadOffTests
{
    private static TrialSheet Sheet(double[] y, double own, bool timed = false, params SharedError[] shared)
    {
        var columns = new Dictionary<string, double[]>(StringComparer.Ordinal) { ["y"] = y };
        if (timed)
        {
            columns["time"] = [.. Enumerable.Range(0, y.Length).Select(i => 2.0 * i)];
        }

        return new(BenchFitTests.Card, [.. Enumerable.Range(11, y.Length)], columns, new(StringComparer.Ordinal) { ["y"] = [.. y.Select(_ => own)] }, [], [], shared);
    }

    private static TrialFinding Sum(TrialSheet sheet, double beside = 0, string unit = "V", params string[] columns) =>
        Assert.Single(ReadOff.Of(sheet, columns.Length > 0 ? columns : ["y"], ("sum", Units.Find(unit)!, s => s["y"].Sum(), beside)));

    /// <summary>Four readings of 2 ± 0.1: 8 ± 0.2, with 0.3 beside √(0.04 + 0.09); in mV a thousand times all of it. An offset of 0.05 that they share is 0.2 in the sum.</summary>
    [Fact]
    public void A_sum_takes_each_readings_doubt_by_itself_and_what_they_share_at_once()
    {
        var sum = Sum(Sheet([2, 2, 2, 2], 0.1));
        Assert.Equal((8, double.PositiveInfinity), (sum.Value.Value, sum.Degrees));
        Assert.Equal(0.2, sum.Value.StandardDoubt, 1e-9);
        Assert.Equal(0.2, sum.ScatterDoubt, 1e-9);
        Assert.Equal(Math.Sqrt(0.13), Sum(Sheet([2, 2, 2, 2], 0.1), 0.3).ScatterDoubt, 1e-9);
        var milli = Sum(Sheet([2, 2, 2, 2], 0.1), 0.3, "mV");
        Assert.Equal(8000, milli.Value.Value, 1e-9);
        Assert.Equal(1000 * Math.Sqrt(0.13), milli.ScatterDoubt, 1e-6);
        Assert.Equal(1000 * Math.Sqrt(0.13), milli.Value.StandardDoubt, 1e-6);
        var meter = Cause.Normal("meter", CauseGroup.Instrument);
        var shared = Sum(Sheet([2, 2, 2, 2], 0.1, false, new SharedError(meter, "y", 0, 0.05)));
        Assert.Equal(0.2, shared.Value.Doubts.By(meter), 1e-9);
        Assert.Equal(0.2, shared.ScatterDoubt, 1e-9);
        Assert.Equal(Math.Sqrt(0.08), shared.Value.StandardDoubt, 1e-9);

        // Of a column that is not asked, not there, or without doubts, none come.
        Assert.Equal(0, Sum(Sheet([2, 2], 0.1), 0, "V", "x").ScatterDoubt);
        Assert.Equal(0, Sum(Sheet([2, 2], 0)).ScatterDoubt);
    }

    [Fact]
    public void Readings_without_a_doubt_of_their_own_bring_none_beside_those_that_have_one() =>
        Assert.Equal(0.5, Sum(Sheet([2, 2, 2], 0).With("y", [2, 2, 2], [0, 0.3, 0.4])).ScatterDoubt, 1e-9);

    /// <summary>Beyond 400 readings two are pushed together; where all count alike √n·u stays.</summary>
    [Theory, InlineData(400), InlineData(401), InlineData(800), InlineData(801)]
    public void Many_readings_pushed_together_have_the_doubt_of_as_many_apart(int n) => Assert.Equal(0.1 * Math.Sqrt(n), Sum(Sheet([.. Enumerable.Repeat(2.0, n)], 0.1)).ScatterDoubt, 1e-6);

    /// <summary>Rows + − − + of ±0.1 lie 0.1 off the line between their neighbours: by the middle that is a scatter of 0.1/0.6745, over √1.5 of one reading: 0.12105. It counts between the readings' own doubt and half as much again, in a log of twelve and more.</summary>
    [Theory, InlineData(12, 0.1, true, 0.121054), InlineData(12, 0.2, true, 0.2), InlineData(12, 0.05, true, 0.075), InlineData(11, 0.1, true, 0.1), InlineData(12, 0.1, false, 0.1), InlineData(12, 0, true, 0)]
    public void A_display_that_flickers_shows_by_how_much(int n, double own, bool timed, double each) =>
        Assert.Equal(each * Math.Sqrt(n), Sum(Sheet([.. Enumerable.Range(0, n).Select(i => 4 + (0.5 * i) + (i % 4 is 0 or 3 ? 0.1 : -0.1))], own, timed)).ScatterDoubt, 1e-5);

    /// <summary>Of ten readings between two others five lie 0.1 and five 0.12 off the line between their neighbours, up and down in turn: the middle is 0.11, and the two at the ends, which have but one neighbour, do not count.</summary>
    [Fact]
    public void The_first_and_the_last_reading_show_no_flicker()
    {
        double[] y = new double[12];
        for (int i = 1; i < 11; i++)
        {
            y[i + 1] = (2 * y[i]) - y[i - 1] - (2 * (i % 2 == 0 ? 0.12 : -0.1));
        }

        Assert.Equal(0.11 / 0.67449 / Math.Sqrt(1.5) * Math.Sqrt(12), Sum(Sheet(y, 0.1, true)).ScatterDoubt, 1e-5);
    }

    /// <summary>Between 4 and 4.019 lies 4.0095; a reading that is 0.0802 off it is four times as far off as the two differ, and more than a fiftieth of the one before it, 0.08.</summary>
    [Fact]
    public void A_reading_stands_alone_by_a_fiftieth_of_the_one_before_it() =>
        Assert.Equal(9, ReadOff.WithoutSlips(Sheet([4, 4, 4, 4, 4, 4.0897, 4.019, 4.019, 4.019, 4.019], 0, true), "y").Sheet.Count);

    /// <summary>Between slips of 1 and 0.9 a good reading lies 0.95 off the line between them, less than the first of them does.</summary>
    [Fact]
    public void A_good_reading_between_two_slips_stays()
    {
        var (sheet, _) = ReadOff.WithoutSlips(Sheet([.. Enumerable.Range(0, 20).Select(i => i switch { 8 => 5, 10 => 4.9, _ => 4.0 })], 0, true), "y");
        Assert.DoesNotContain(19, sheet.Numbers);
        Assert.Contains(20, sheet.Numbers);
    }

    [Fact]
    public void One_value_behind_readings_that_differ_is_known_by_each_of_them()
    {
        double[] Doubt(params double[] y) => Curves.Mean("y").Doubt!(Sheet(y, 0.1), [0]);
        Assert.Equal([0.1, 0.1, 0.1], Doubt(0, 1, 2));
        Assert.Equal([0.1, 0.1], Doubt(5e-9, 6e-9));
        Assert.Equal([0.2, 0.2, 0.2, 0.2], Doubt(5, 5, 5, 5));
    }

    /// <summary>Readings of 4 with own doubts of 0.01: one stands alone beyond 12·2·0.01 = 0.24. Without doubts, beyond a fiftieth of 4, 0.08; on a slope of 1 a row beyond four times what its neighbours differ, 8.</summary>
    [Theory]
    [InlineData(0.01, 0, 0.23, false), InlineData(0.01, 0, 0.25, true), InlineData(0.01, 0, -0.25, true), InlineData(0, 0, 0.079, false), InlineData(0, 0, 0.081, true), InlineData(0, 0, -0.081, true), InlineData(0, 1, 7.9, false), InlineData(0, 1, 8.1, true), InlineData(0, -1, -8.1, true)]
    public void A_reading_that_stands_alone_is_left_out(double own, double slope, double slip, bool alone)
    {
        double[] y = [.. Enumerable.Range(0, 10).Select(i => (slope < 0 ? -4 : 4) + (slope * i) + (i == 5 ? slip : 0))];
        var (sheet, remarks) = ReadOff.WithoutSlips(Sheet(y, own, true), "y", "none");
        Assert.Equal(alone ? 9 : 10, sheet.Count);
        Assert.Equal(alone ? 1 : 0, remarks.Count);
        Assert.All(remarks, remark => Assert.Equal((16, true, "E"), (remark.Reading, remark.LeftOut, remark.Level)));
        Assert.Equal(!alone, sheet.Numbers.Contains(16));
    }

    /// <summary>A tenth of the readings at most, never the first nor the last, and eight there must be.</summary>
    [Theory, InlineData(9, "4", 9), InlineData(10, "4", 9), InlineData(10, "4 7", 10), InlineData(20, "4 12", 18), InlineData(20, "4 8 12", 20), InlineData(20, "0", 20), InlineData(20, "19", 20), InlineData(20, "1", 19), InlineData(20, "18", 19), InlineData(7, "3", 7)]
    public void More_than_a_tenth_that_stands_alone_stays(int n, string slips, int left)
    {
        int[] at = [.. slips.Split(' ').Select(text => int.Parse(text, CultureInfo.InvariantCulture))];
        var (sheet, remarks) = ReadOff.WithoutSlips(Sheet([.. Enumerable.Range(0, n).Select(i => at.Contains(i) ? 5.0 : 4)], 0, true), "y");
        Assert.Equal(left, sheet.Count);
        Assert.Equal(n - left, remarks.Count);
        Assert.All(remarks, remark => Assert.Contains("y 5 stands alone between 4 and 4", remark.Words, StringComparison.Ordinal));
    }

    /// <summary>By hand from one line each: enough readings or not, one level or two.</summary>
    [Fact]
    public void Too_few_readings_and_one_level_are_told()
    {
        Assert.Null(Curves.TooFew(Sheet([1, 2], 0), 2, "volts"));
        var few = Curves.TooFew(Sheet([1, 2], 0), 3, "volts")!;
        Assert.Equal(("Too few whole readings are left for made.", "2", "3 or more of volts"), (few.What, few.Value, few.Limit));
        Assert.StartsWith("No whole readings", Curves.TooFew(Sheet([], 0), 1, "volts")!.What, StringComparison.Ordinal);
        Assert.Null(Curves.OneLevel(Sheet([1, 3], 0), "y", 1.9));
        Assert.Equal("1 to 3", Curves.OneLevel(Sheet([3, 1], 0), "y", 2)!.Value);
    }

    [Fact]
    public void A_first_guess_of_a_line_is_the_line_and_further_ones_lie_fourfold_off()
    {
        Assert.Equal([7, -2], Curves.Guess([1, 2, 4], [5, 3, -1]).Select(value => Math.Round(value, 9)));
        Assert.Equal([4, 0], Curves.Guess([2, 2], [3, 5]));
        Assert.Equal([[1, 0.5, 3], [1, 8, 3], [1, 2, 0.75], [1, 2, 12]], Curves.Spread(1, 2)([1, 2, 3]));
        Assert.Equal([[1 - Math.Log(4), 2], [1 + Math.Log(4), 2]], Curves.SpreadLogs(0)([1, 2]));
    }
}
