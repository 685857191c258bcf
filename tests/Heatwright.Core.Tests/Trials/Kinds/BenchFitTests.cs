using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Choice of a law, slips and doubts on rows of which every sum is worked out by hand: errors of ±u in the order + − − + + − − + have no mean and no slope, so that the best line is the true one and Σ(error/u)² is the number of readings.</summary>
public sealed class BenchFitTests
{
    internal static readonly TrialCard Card = SheetMakerTests.Card([new("x", "mA", "x"), new("y", "mV", "y"), new("t", "°C", "t")]);

    private static readonly BenchModel Through = Curves.Through("through nothing", "y", "x", Curves.Tell("slope", Units.Ohm, 0)), Line = Curves.Line("line", "y", "x", Curves.Tell("start", Units.Volt, 0), Curves.Tell("slope", Units.Ohm, 1)) with { Decides = "read near nothing" };

    internal static TrialSheet Sheet(double[] x, double[] y, double own = 0, double ownX = 0, int first = 1, params SharedError[] shared) => new(Card, [.. Enumerable.Range(first, x.Length)],
        new(StringComparer.Ordinal) { ["x"] = x, ["y"] = y }, new(StringComparer.Ordinal) { ["x"] = [.. x.Select(_ => ownX)], ["y"] = [.. x.Select(_ => own)] }, [], [], shared);

    /// <summary>x = 1 to n, y = start + x ± 0.1.</summary>
    private static TrialSheet Row(int n, double start, double own = 0.1, double ownX = 0, int first = 1, Func<int, double>? slip = null) =>
        Sheet([.. Enumerable.Range(1, n).Select(i => (double)i)], [.. Enumerable.Range(1, n).Select(i => start + i + (i % 4 is 1 or 0 ? 0.1 : -0.1) + (slip?.Invoke(i) ?? 0))], own, ownX, first);

    /// <summary>Both leave over 8·(0.1/0.1)². Criteria by hand: 8·ln 1 + 4 + 12/5 = 6.4 and 6 + 24/4 = 12. Slope ± 0.1/√Σx², Σx² = 204.</summary>
    [Fact]
    public void A_line_that_explains_no_more_than_one_through_nothing_is_refused()
    {
        var answer = BenchFit.Run(Row(8, 0), Through, Line);
        Assert.Equal((1, 2), (answer.Tried[0].Parameters, answer.Tried[1].Parameters));
        Assert.Equal([8, 8], answer.Tried.Select(tried => Math.Round(tried.Rss, 9)));
        Assert.Equal([6.4, 12], answer.Tried.Select(tried => Math.Round(tried.Aicc, 6)));
        Assert.Equal(Math.Sqrt(0.08 / 7), answer.Tried[0].Spread, 1e-9);
        Assert.Equal(Math.Sqrt(0.08 / 6), answer.Tried[1].Spread, 1e-9);
        Assert.Equal([0, 0], answer.Tried.Select(tried => Math.Round(tried.RunsZ, 9))); // five stretches of 4 and 4: as many as chance has
        Assert.True(double.IsNaN(answer.Tried[0].P));
        Assert.Equal(1, answer.Tried[1].P, 1e-3);
        Assert.Equal([true, false], answer.Tried.Select(tried => tried.Chosen));
        Assert.Equal("the simplest", answer.Tried[0].Why);
        Assert.StartsWith("its last number is known to no better than half", answer.Tried[1].Why, StringComparison.Ordinal);
        Assert.Equal(["read near nothing"], answer.Next);
        var slope = Assert.Single(answer.Findings);
        Assert.Equal(1, slope.Value.Value, 1e-9);
        Assert.Equal(0.1 / Math.Sqrt(204), slope.Value.StandardDoubt, 1e-6);
        Assert.True(double.IsInfinity(slope.Degrees));
        Assert.Empty(answer.Remarks);
    }

    /// <summary>A start a leaves Σ(a − a·x·Σx/Σx²)² = a²·(8 − 36²/204) = 1.647·a² more to a line through nothing: 14.82 of 3, over 0.1² and beside the 8 that both leave.</summary>
    [Fact]
    public void A_line_that_explains_clearly_more_is_taken()
    {
        var answer = BenchFit.Run(Row(8, 3), Through, Line);
        Assert.Equal(8 + (9 * (8 - (36 * 36 / 204.0)) / 0.01), answer.Tried[0].Rss, 1e-4);
        Assert.Equal([false, true], answer.Tried.Select(tried => tried.Chosen));
        Assert.Equal("explains clearly more", answer.Tried[1].Why);
        Assert.InRange(answer.Tried[1].P, 1e-9, 1e-6);
        Assert.Equal(3, answer.Value("start"), 1e-9);
        Assert.Equal(1, answer.Value("slope"), 1e-9);
        Assert.Equal(0.1 * Math.Sqrt((1 / 8.0) + (4.5 * 4.5 / 42)), answer.Find("start")!.StandardDoubt, 1e-5);
        Assert.Equal(0.1 / Math.Sqrt(42), answer.Find("slope")!.StandardDoubt, 1e-5);
        Assert.Empty(answer.Next);
    }

    /// <summary>F = (gain)/(rest/free). Of 8: a start of 0.2202 gains 7.984 beside 8 over 6, F = 5.988 = 2.447², 5 in a hundred by the table of t; the criterion is 12 against 11.94. Of 40, Σ1 − (Σx)²/Σx² = 9.6296: 0.0739 gains 5.263
    /// beside 40 over 38, F = 5: 3 in a hundred, criterion 6.67 against 9.27; twice that much, F = 10, is 3 in a thousand.</summary>
    [Theory, InlineData(8, 0.220169, 0.05, "explains no more than the simpler one"), InlineData(40, 0.073929, 0.0313, "its gain may be luck"), InlineData(40, 0.104552, 0.0031, "explains clearly more")]
    public void A_gain_that_may_be_luck_is_refused(int n, double start, double chance, string why)
    {
        var tried = BenchFit.Run(Row(n, start), Through, Line);
        Assert.Equal(chance, tried.Tried[1].P, 0.02 * chance);
        Assert.Equal(why, tried.Tried[1].Why);
        bool taken = why == "explains clearly more";
        Assert.Equal(taken, tried.Tried[1].Chosen);
        Assert.Equal(taken ? 0 : 1, tried.Next.Count);
    }

    /// <summary>All readings at 1 are 1.5, the one at 100 is 100 ± 0.1 and alone tells the slope, 1: each of the others lies 0.5 off, five times its doubt. Without that one the rest lie on a line to the digit, so it is the slip, where the
    /// readings are few enough that one may rule them. A meter whose zero may be 0.5 off explains it all, and nothing is a slip.</summary>
    [Theory, InlineData(8, 0, 1), InlineData(60, 0, 1), InlineData(61, 0, 0), InlineData(8, 0.5, 0)]
    public void A_reading_that_rules_the_law_alone_is_a_slip_unless_the_meter_explains_it(int n, double zero, int slips)
    {
        double[] x = [.. Enumerable.Repeat(1.0, n - 1), 100], y = [.. Enumerable.Repeat(1.5, n - 1), 100];
        var answer = BenchFit.Run(Sheet(x, y, 0.1, 0, 1, zero > 0 ? [new SharedError(Cause.Normal("zero", CauseGroup.Instrument), "y", 0, zero)] : []), Through);
        Assert.Equal(slips == 1 ? [n] : Array.Empty<int>(), answer.Remarks.Where(remark => remark.LeftOut).Select(remark => remark.Reading));
    }

    [Theory, InlineData(5, false), InlineData(6, true)]
    public void A_law_is_not_tried_on_fewer_than_three_readings_a_number(int n, bool tries)
    {
        var tried = BenchFit.Run(Row(n, 3), Through, Line);
        Assert.Equal(tries, double.IsFinite(tried.Tried[1].Rss));
        Assert.Equal(!tries, tried.Tried[1].Why == "not tried: 5 readings for 2 numbers, 6 are wanted");
        Assert.Equal(tries ? 0 : 1, tried.Next.Count(next => next == "read near nothing"));
    }

    [Fact]
    public void A_number_at_its_bound_or_left_open_is_refused()
    {
        Assert.Equal("a number ran into its bound", BenchFit.Run(Row(8, 3), Through, Line with { Upper = [2, 9] }).Tried[1].Why);
        var open = Line with { Start = _ => [0, 1, 5], Predict = (s, p) => [.. s["x"].Select(x => p[0] + (p[1] * x))] };
        Assert.Equal("the readings leave a number open", BenchFit.Run(Row(12, 3), Through, open).Tried[1].Why);
        Assert.Equal("explains clearly more", BenchFit.Run(Row(8, 3), Through, Line with { Upper = [4, 9], Lower = [2, 0] }).Tried[1].Why);
    }

    /// <summary>Of a law that does not hold the one before it nothing but the criterion is asked: 11.94 against 12 is no gain, 9.27 against 6.67 is one, whatever chance says.</summary>
    [Theory, InlineData(8, 0.220169, false), InlineData(40, 0.073929, true)]
    public void A_law_of_another_family_is_held_by_the_criterion_alone(int n, double start, bool taken)
    {
        var tried = BenchFit.Run(Row(n, start), Through, Line with { Apart = true }).Tried[1];
        Assert.True(double.IsNaN(tried.P));
        Assert.Equal(taken, tried.Chosen);
    }

    /// <summary>Criteria of 6.4 and 12: the line has a likelihood of e^(−2.8) = 0.0608 against the chosen one, a weight w = 0.0573. Told 10 more by it, a value moves by 10·w and is open by 10·√(w·(1 − w)).</summary>
    [Theory, InlineData(false, "slope", true), InlineData(true, "slope", false), InlineData(false, "other", false)]
    public void A_larger_law_that_is_not_ruled_out_counts_by_its_likelihood(bool apart, string name, bool counts)
    {
        var value = BenchFit.Run(Row(8, 0), Through, Line with { Apart = apart, Tells = [new(name, Units.Ohm, (_, p) => p[1] + 10)] }).Find("slope")!;
        double w = counts ? Math.Exp(-2.8) / (1 + Math.Exp(-2.8)) : 0;
        Assert.Equal(1 + (10 * w), value.Value, 1e-6);
        Assert.Equal(Math.Sqrt((0.01 / 204) + (100 * w * (1 - w))), value.StandardDoubt, 1e-5);
    }

    /// <summary>Own doubts 0.1 of y and 0.2 of x along a slope of 1: √0.05 each, 8·0.01/0.05 left over. Without any, what is left over measures: √(0.08/7), and of 7 degrees 95 % limits are 2.3646/1.95996 times as wide.</summary>
    [Theory, InlineData(0.1, 0.2, 1.6, 0.22360680), InlineData(0, 0.1, 8, 0.1), InlineData(0, 0, 0.08, 0.12897563), InlineData(0.01, 0, 800, 0.12897563)]
    public void Doubts_of_x_widen_those_of_y_and_where_there_are_none_the_scatter_speaks(double own, double ownX, double rss, double each)
    {
        var answer = BenchFit.Run(Row(8, 0, own, ownX), Through);
        Assert.Equal(rss, answer.Tried[0].Rss, 1e-4 * rss);
        Assert.Equal(each / Math.Sqrt(204), answer.Find("slope")!.StandardDoubt, 2e-5 * each);
        Assert.Equal(own + ownX < 0.1 ? 7 : double.PositiveInfinity, answer.Findings[0].Degrees);
    }

    /// <summary>Limits of the table of t for 9 and of the bell from 10 on.</summary>
    [Theory, InlineData(10, 2.262157 / 1.959964), InlineData(11, 1.0)]
    public void Ten_degrees_are_as_good_as_many(int n, double wider)
    {
        var sheet = Row(n, 0, 0);
        var tried = BenchFit.Run(sheet, Through);
        double xx = sheet["x"].Sum(x => x * x), slope = sheet["x"].Zip(sheet["y"], (x, y) => x * y).Sum() / xx, rss = sheet["x"].Zip(sheet["y"], (x, y) => Math.Pow(y - (slope * x), 2)).Sum();
        Assert.Equal(wider * Math.Sqrt(rss / (n - 1) / xx), tried.Find("slope")!.StandardDoubt, 1e-6);
    }

    [Fact]
    public void A_reading_without_a_doubt_of_its_own_is_as_good_as_the_best()
    {
        var sheet = Row(8, 0).With("y", Row(8, 0)["y"], [0, 0.1, 0.1, 0.1, 0.2, 0.2, 0.2, 0.2]);
        Assert.Equal([0.1, 0.1, 0.1, 0.1, 0.2, 0.2, 0.2, 0.2], BenchFit.Solve(Through, sheet).Doubt);

        // Nor is one better than a thousandth of the middle one.
        Assert.Equal(1e-4, BenchFit.Solve(Through, Row(3, 0).With("y", [1, 2, 3], [1e-9, 0.1, 0.1])).Doubt[0], 1e-12);
    }

    /// <summary>Ten readings on a line through nothing, the seventh 2 off. By hand: the slope is pulled by 14/385, the seventh lies 17.45 doubts off, the middle distance of all from their middle 1.636 is 1.0909, over 0.6745 and times √(10/9)
    /// 1.7049: 10.2 spreads.</summary>
    [Theory, InlineData(2.0, "10.2 usual spreads above"), InlineData(-2.0, "10.2 usual spreads below")]
    public void A_reading_far_off_all_others_is_left_out_by_its_number(double slip, string words)
    {
        var sheet = Sheet([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], [1, 2, 3, 4, 5, 6, 7 + slip, 8, 9, 10], 0.1, 0, 11);
        var answer = BenchFit.Run(sheet, Through);
        var remark = Assert.Single(answer.Remarks);
        Assert.Equal((17, true, "E"), (remark.Reading, remark.LeftOut, remark.Level));
        Assert.Contains($"y lies {words} what the other readings say", remark.Words, StringComparison.Ordinal);
        Assert.Equal(1, answer.Value("slope"), 1e-9);
        Assert.Equal([17], answer.Picture!.LeftOut);
        Assert.Equal([1, 2, 3, 4, 5, 6, 8, 9, 10], answer.Picture.X);
    }

    [Theory, InlineData(7, 1, false), InlineData(8, 1, true), InlineData(9, 2, false), InlineData(10, 2, true), InlineData(3, 1, null)]
    public void Of_few_readings_or_where_more_than_a_fifth_lies_off_they_stay_and_are_told(int n, int slips, bool? leftOut)
    {
        double[] x = [.. Enumerable.Range(1, n).Select(i => (double)i)];
        var answer = BenchFit.Run(Sheet(x, [.. x.Select(i => 5 + (i == 2 || (i == 5 && slips == 2) ? 1.5 : 0))], 0.1), Curves.Mean("y", Curves.Tell("value", Units.Volt, 0)));
        Assert.Equal(leftOut is null ? 0 : slips, answer.Remarks.Count);
        Assert.All(answer.Remarks, remark => Assert.Equal((leftOut, leftOut == true ? "E" : "W"), ((bool?)remark.LeftOut, remark.Level)));
    }

    /// <summary>A slip at the end of a line pulls it so far that no reading lies six spreads off; the line of the other nine, by the sums of least squares, is what counts.</summary>
    [Fact]
    public void A_slip_that_pulls_the_law_after_it_is_found_by_leaving_each_reading_out()
    {
        var sheet = Row(10, 1, first: 21, slip: i => i == 10 ? 3 : 0);
        var answer = BenchFit.Run(sheet, Line);
        Assert.Equal((30, true), (Assert.Single(answer.Remarks).Reading, answer.Remarks[0].LeftOut));
        double[] x = sheet["x"][..9], y = sheet["y"][..9];
        double mx = x.Average(), my = y.Average();
        Assert.Equal(x.Zip(y, (a, b) => (a - mx) * (b - my)).Sum() / x.Sum(a => (a - mx) * (a - mx)), answer.Value("slope"), 1e-9);

        // Half of that pulls as well, but chance may do it: all stay.
        Assert.DoesNotContain(BenchFit.Run(Row(10, 1, first: 21, slip: i => i == 10 ? 0.6 : 0), Line).Remarks, remark => remark.LeftOut);
    }

    /// <summary>Squares read as a line: of twelve, (x − 6.5)² is above its mean three times at either end, three stretches of 6 and 6. By hand z = (3 − 7)/√(72·60/(144·11)) = −2.42.</summary>
    [Theory, InlineData(12, 0.01, 1), InlineData(11, 0.01, 0), InlineData(12, 10, 0)]
    public void What_changes_sign_too_seldom_is_said(int n, double own, int said)
    {
        double[] x = [.. Enumerable.Range(1, n).Select(i => (double)i)];
        var answer = BenchFit.Run(Sheet(x, [.. x.Select(i => 0.1 * i * i)], own), Line);
        Assert.Equal(said, answer.Next.Count(next => next.Contains("'line' leaves over changes sign too seldom (z = -2.4)", StringComparison.Ordinal)));
        Assert.Equal(said, answer.Next.Count);
    }

    /// <summary>Told in mΩ: 1 V/A are 1000, and its doubt is a thousand times too. What is no number is not told. The curve at x is known to x times that of the slope, wider by √(rss/free) = √(8/7).</summary>
    [Fact]
    public void Findings_are_told_in_their_units_and_the_picture_in_those_of_the_sheet()
    {
        var answer = BenchFit.Run(Row(8, 0), Through with { Tells = [Curves.Tell("slope", Units.Find("mΩ")!, 0), Curves.Tell("none", Units.Ohm, (_, _) => double.NaN)] });
        var slope = Assert.Single(answer.Findings);
        Assert.Equal(1000, slope.Value.Value, 1e-6);
        Assert.Equal(100 / Math.Sqrt(204), slope.Value.StandardDoubt, 1e-3);
        Assert.Equal(100 / Math.Sqrt(204), slope.ScatterDoubt, 1e-3);
        var picture = answer.Picture!;
        Assert.Equal(("x", "A", "y", "V"), (picture.XName, picture.XUnit, picture.YName, picture.YUnit));
        Assert.Equal(8 * 0.1 / Math.Sqrt(204) * Math.Sqrt(8 / 7.0), picture.Band[7], 1e-6);
        Assert.Equal(0.1, picture.Residuals[0], 1e-9);
        var mean = BenchFit.Run(Sheet([1, 1, 1], [20, 21, 22], 0.1, 0, 5).With("t", [20, 21, 22], [1, 1, 1]), Curves.Mean("t")).Picture!;
        Assert.Equal(("reading", "", "°C"), (mean.XName, mean.XUnit, mean.YUnit));
        Assert.Equal([5, 6, 7], mean.X);
        Assert.Equal([21, 21, 21], mean.Fitted.Select(c => Math.Round(c, 6)));
    }

    /// <summary>By hand: beforehand 5 ± 1, read 6 ± 1: 5.5 ± √½. With an offset of 2 that all readings share the reading is good to √5: (5 + 6/5)/(1 + 1/5) ± 1/√1.2. Bounds stop it.</summary>
    [Theory, InlineData(0, 5.5, 0.70710678), InlineData(2, 5.16666667, 0.91287093)]
    public void What_was_known_before_counts_as_a_reading(double offset, double value, double doubt)
    {
        var known = Curves.Mean("y", Curves.Tell("value", Units.Volt, 0)) with { Prior = ([5], [1]) };
        SharedError[] shared = offset > 0 ? [new(Cause.Normal("meter", CauseGroup.Instrument), "y", 0, offset)] : [];
        var found = BenchFit.Run(Sheet([1], [6], 1, 0, 1, shared), known).Find("value")!;
        Assert.Equal(value, found.Value, 1e-5);
        Assert.Equal(doubt, found.StandardDoubt, 1e-5);
        Assert.Equal(5.2, BenchFit.Solve(known with { Upper = [5.2] }, Sheet([1], [6], 1)).P[0], 1e-9);
        Assert.True(BenchFit.Solve(known with { Upper = [5.2] }, Sheet([1], [6], 1)).Stuck);
    }

    [Fact]
    public void Rows_that_err_alike_tell_less()
    {
        double[] Ones(int run, int alone) => [.. Enumerable.Range(0, 20).Select(i => i < run || (i > run && (i - run) % 2 == 1 && (i - run) / 2 < alone && i != run) ? 1.0 : 0)];
        Assert.Equal(1, FitScatter.Alike([.. Enumerable.Repeat(1.0, 19)])); // too few to tell
        Assert.Equal(39, FitScatter.Alike([.. Enumerable.Repeat(1.0, 20)]), 1e-9); // r = 19/20
        Assert.Equal(99, FitScatter.Alike([.. Enumerable.Repeat(1.0, 100)]), 1e-9); // r = 0.99, 0.98 at most
        Assert.Equal(1, FitScatter.Alike([.. Enumerable.Range(0, 20).Select(i => i % 2 == 0 ? 1.0 : -1)]));
        Assert.Equal(1, FitScatter.Alike(Ones(5, 4))); // 4 of 9 neighbours: 0.444, beneath 2/√20
        Assert.Equal(16 / 6.0, FitScatter.Alike(Ones(6, 5)), 1e-9); // 5 of 11
    }
}
