using CsCheck;
using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

public class PropagateTests
{
    private static readonly Origin Guess = new Origin.Assumed("test");
    private static readonly Cause Shared = Cause.Normal("shared", CauseGroup.Instrument);

    /// <summary>Numbers with a cause of their own and one that all share.</summary>
    private static Gen<Estimate[]> Numbers => Gen.Select(Gen.Double[-50, 50], Gen.Double[0.01, 3], Gen.Double[-3, 3]).Array[3]
        .Select(parts => parts.Select((part, i) => new Estimate(part.Item1, Units.Volt,
            Doubts.From(Cause.Rectangular($"own {i}", CauseGroup.Trial), part.Item2).With(Shared, part.Item3), Guess)).ToArray());

    [Fact]
    public void A_number_less_itself_is_exactly_zero_and_without_doubt() => Numbers.Sample(numbers =>
    {
        var input = new Input("x", numbers[0]);
        var nothing = Propagate.ThroughSlopes(x => x[0] - x[1], _ => [1, -1], Units.Volt, "difference", input, input);
        return nothing.Value == 0 && nothing.StandardDoubt == 0 && !nothing.Doubts.Causes.Any();
    });

    [Fact]
    public void What_two_readings_share_cancels_in_their_difference_and_adds_in_their_sum() => Numbers.Sample(numbers =>
    {
        var (a, b) = (numbers[0], new Estimate(numbers[1].Value, Units.Volt, numbers[1].Doubts.With(Shared, numbers[0].Doubts.By(Shared) - numbers[1].Doubts.By(Shared)), Guess));
        var difference = Propagate.ThroughSlopes(x => x[0] - x[1], _ => [1, -1], Units.Volt, "difference", new("a", a), new("b", b));
        var sum = Propagate.ThroughSlopes(x => x[0] + x[1], _ => [1, 1], Units.Volt, "sum", new("a", a), new("b", b));
        return Math.Abs(difference.Doubts.By(Shared)) < 1e-12 && Math.Abs(sum.Doubts.By(Shared) - (2 * a.Doubts.By(Shared))) < 1e-12;
    });

    [Fact]
    public void A_linear_law_has_the_same_doubt_from_slopes_by_difference_by_hand_and_from_draws() =>
        Gen.Select(Numbers, Gen.Double[-4, 4].Array[3]).Sample((numbers, slopes) =>
        {
            Input[] inputs = [.. numbers.Select((number, i) => new Input($"x{i}", number))];
            double Law(double[] x) => 7 + (slopes[0] * x[0]) + (slopes[1] * x[1]) + (slopes[2] * x[2]);
            var byDifference = Propagate.Through(Law, Units.Volt, "line", inputs);
            var byHand = Propagate.ThroughSlopes(Law, _ => slopes, Units.Volt, "line", inputs);
            var drawn = Propagate.Drawn(Law, Units.Volt, 42, 4000, inputs);
            double size = byHand.StandardDoubt;
            Assert.Equal(size, byDifference.StandardDoubt, 1e-6 * size + 1e-9);
            Assert.Equal(size, drawn.StandardDoubt, 0.06 * size + 1e-9); // five standard errors of a spread from 4000 draws, 5/√8000
            Assert.Equal(byHand.Value, drawn.Mean, 5 * size / Math.Sqrt(4000) + 1e-9);
        }, iter: 40);

    [Fact]
    public void Draws_are_the_same_whatever_was_drawn_before()
    {
        var volts = Estimate.Within(7.4, 0.1, Units.Volt, "v", CauseGroup.Trial, Guess);
        var spread = Propagate.Drawn(x => x[0] * x[0], Units.Watt, 9, 50, new Input("v", volts));
        var again = Propagate.Drawn(x => x[0] * x[0], Units.Watt, 9, 100, new Input("v", volts));
        Assert.Equal(spread.Values, again.Values.Take(50));
    }

    [Fact]
    public void A_spread_tells_quantiles_and_shares_and_counts_draws_without_an_answer()
    {
        // By hand: 1 to 9 and one draw without an answer; the median of the nine is 5, five of ten draws are at least 5.
        var spread = new Spread(Units.Watt, [9, 1, 8, 2, double.NaN, 7, 3, 6, 4, 5]);
        Assert.Equal(9, spread.Answered);
        Assert.Equal(5, spread.Quantile(0.5));
        Assert.Equal(5, spread.Mean, 1e-15);
        Assert.Equal(Math.Sqrt(60.0 / 8), spread.StandardDoubt, 1e-14);
        Assert.Equal(0.5, spread.ShareWhere(value => value >= 5), 1e-15);
        Assert.Equal(1, spread.Quantile(0));
        Assert.Equal(9, spread.Quantile(1));
    }

    [Fact]
    public void Every_unit_converts_to_its_kin_and_back() => Gen.Select(Gen.Double[-1e6, 1e6], Gen.Double[0, 10]).Sample((value, doubt) =>
    {
        foreach (var from in Units.All)
        {
            var start = Estimate.Within(value, doubt, from, "x", CauseGroup.Trial, Guess);
            foreach (var to in Units.All.Where(unit => unit.Measures(from)))
            {
                var back = start.In(to).In(from);
                double size = Math.Max(Math.Abs(value), Math.Abs(from.FromSi(0)));
                Assert.Equal(value, back.Value, 1e-12 * size);
                Assert.Equal(start.StandardDoubt, back.StandardDoubt, 1e-12 * start.StandardDoubt);
            }
        }
    }, iter: 50);

    [Fact]
    public void Contributions_are_told_per_cause_and_per_group_and_add_up_to_one() => Numbers.Sample(numbers =>
    {
        var sum = Propagate.Through(x => x[0] + x[1] + x[2], Units.Volt, "sum", [.. numbers.Select((number, i) => new Input($"x{i}", number))]);
        Assert.Equal(1, sum.Doubts.Shares().Sum(pair => pair.Share), 1e-12);
        Assert.Equal(1, sum.Doubts.SharesByGroup().Sum(pair => pair.Share), 1e-12);
        double shared = numbers.Sum(number => number.Doubts.By(Shared));
        double instrument = sum.Doubts.SharesByGroup().FirstOrDefault(pair => pair.Group == CauseGroup.Instrument).Share;
        Assert.Equal(shared * shared, instrument * sum.Doubts.Combined * sum.Doubts.Combined, 1e-5 * (1 + (shared * shared)));
    });

    /// <summary>Handbook check worked out by a second program: T = 24 + K V²/R.</summary>
    [Fact]
    public void Shares_of_a_tip_temperature_are_those_of_a_second_method()
    {
        var k = new Input("K", new Estimate(29.4, Units.One, Doubts.From(Cause.Normal("K", CauseGroup.Trial), 0.6), Guess));
        var v = new Input("V", new Estimate(4.98, Units.Volt, Doubts.From(Cause.Normal("V", CauseGroup.Trial), 0.026), Guess));
        var r = new Input("R", new Estimate(3.92, Units.Ohm, Doubts.From(Cause.Normal("R", CauseGroup.Trial), 0.083), Guess));
        var tip = Propagate.Through((a, b, c) => 273.15 + 24 + (a * b * b / c), Units.Celsius, "tip", k, v, r);
        Assert.Equal(210.0030, tip.Value, 5e-5);
        Assert.Equal(5.804484, tip.StandardDoubt, 5e-6);
        var shares = tip.Doubts.Shares().ToDictionary(pair => pair.Cause.Id, pair => pair.Share);
        Assert.Equal(0.42768, shares["K"], 5e-5);
        Assert.Equal(0.11196, shares["V"], 5e-5);
        Assert.Equal(0.46036, shares["R"], 5e-5);
    }
}
