using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Linear tools of one to four nodes. Values computed by an independent script (adaptive integration and matrix exponential of another language).
/// Tolerance: half of the last printed digit.</summary>
public class HeatNetworkTests
{
    private const double AirC = 25;

    private static HeatNetwork OneNode => new([8], [0.03]);

    private static HeatNetwork TwoNodes => new([1.5, 6], [0.004, 0.030], new HeatLink(0, 1, 0.25));

    private static HeatNetwork ThreeNodes => new([1.5, 6, 20], [0, 0.028, 0.060], new HeatLink(0, 1, 0.25), new HeatLink(0, 2, 0.010), new HeatLink(1, 2, 0.012));

    private static HeatNetwork FourNodes => new([1.2, 5, 9, 25], [0, 0.03, 0.012, 0.15],
        new HeatLink(0, 1, 0.35), new HeatLink(0, 2, 0.012), new HeatLink(1, 2, 0.010), new HeatLink(2, 3, 0.020));

    private static double[] AfterC(HeatNetwork tool, double seconds, params double[] powers) => [.. tool.RiseAfterK(new double[tool.Nodes], powers, seconds).Select(rise => AirC + rise)];

    [Fact]
    public void One_node_agrees_with_the_closed_form_of_a_first_order_rise()
    {
        Printed.Agrees("tau", Printed.Computed, "266.6667", OneNode.TimeConstantsS()[0]);
        Printed.Agrees("rise", Printed.Computed, "400.0", OneNode.SteadyRiseK(12)[0]);
        Printed.Agrees("T(60)", Printed.Computed, "105.5935", AfterC(OneNode, 60, 12)[0]);
        Printed.Agrees("t(350)", Printed.Computed, "446.3937", OneNode.TimeToRiseS(0, 325, 12));
    }

    [Fact]
    public void Two_nodes_have_the_poles_and_temperatures_of_the_script()
    {
        Printed.Agree("poles", Printed.Computed, "-0.004529124, -0.2114709", TwoNodes.PolesPerS());
        Printed.Agree("times", Printed.Computed, "220.7933, 4.728784", TwoNodes.TimeConstantsS());
        Printed.Agree("steady", Printed.Computed, "454.7564, 406.0325", TwoNodes.SteadyRiseK(14, 0));
        Printed.Agree("10 s", Printed.Computed, "74.48777, 35.55887", AfterC(TwoNodes, 10, 14, 0));
        Printed.Agree("60 s", Printed.Computed, "159.9954, 114.8449", AfterC(TwoNodes, 60, 14, 0));
        Printed.Agree("120 s", Printed.Computed, "236.0837, 190.0828", AfterC(TwoNodes, 120, 14, 0));
        Printed.Agrees("tip at 350 °C", Printed.Computed, "360.6068", TwoNodes.TimeToRiseS(1, 325, 14, 0));
    }

    [Theory]
    [InlineData(10, "73.74452572, 35.38860355, 25.16954998")]
    [InlineData(60, "152.30645252, 108.82718800, 28.59568897")]
    [InlineData(120, "215.29633865, 171.66259566, 35.90373044")]
    [InlineData(600, "359.14149723, 314.28300694, 92.00542791")]
    public void Three_nodes_warm_as_in_the_script(double seconds, string printed) => Printed.Agree("three nodes", Printed.Computed, printed, AfterC(ThreeNodes, seconds, 14, 0, 0));

    [Fact]
    public void Three_nodes_creep_towards_a_plateau_that_is_twenty_kelvin_off_after_ten_minutes()
    {
        double[] steady = ThreeNodes.SteadyRiseK(14, 0, 0);
        Printed.Agree("steady", Printed.Computed, "380.29118708, 334.95533414, 113.68751074", [.. steady.Select(rise => AirC + rise)]);
        Printed.Agree("times", Printed.Computed, "315.3749323, 131.7585262, 4.651028756", ThreeNodes.TimeConstantsS());
        Printed.Agrees("tip short of its end value", Printed.Computed, "20.7", AirC + steady[1] - AfterC(ThreeNodes, 600, 14, 0, 0)[1]);
    }

    [Fact]
    public void Four_nodes_warm_as_in_the_script()
    {
        double[] steady = FourNodes.SteadyRiseK(15, 0, 0, 0);
        Printed.Agree("steady", Printed.Computed, "406.31989, 371.20068, 180.63027, 43.309443", [.. steady.Select(rise => AirC + rise)]);
        Printed.Agree("10 s", Printed.Computed, "74.557346, 41.797666, 25.489259, 25.001419", AfterC(FourNodes, 10, 15, 0, 0, 0));
        Printed.Agree("60 s", Printed.Computed, "166.08138, 132.81878, 34.420745, 25.154013", AfterC(FourNodes, 60, 15, 0, 0, 0));
        Printed.Agree("300 s", Printed.Computed, "337.55296, 303.68021, 106.31243, 30.298441", AfterC(FourNodes, 300, 15, 0, 0, 0));
        Printed.Agree("times", Printed.Computed, "276.78261, 142.08578, 95.097727, 2.6932384", FourNodes.TimeConstantsS());
        Assert.Equal(15, FourNodes.LossW(steady), 1e-11); // all heat put in leaves
    }

    /// <summary>The benchmark hot knife with its tip's loss replaced by the slope at 400 °C.</summary>
    [Fact]
    public void The_benchmark_knife_linearised_at_working_heat_has_the_printed_time_constants()
    {
        double tip = SurfaceLoss.At(1.2e-3, 2.2, 0.70, 400, 25).TangentWPerK;
        var knife = new HeatNetwork([1.2, 5, 9, 25], [0, tip, 0.012, 0.15], new HeatLink(0, 1, 0.35), new HeatLink(0, 2, 0.012), new HeatLink(1, 2, 0.010), new HeatLink(2, 3, 0.020));
        Printed.Agree("times", Printed.Computed, "226.13, 133.75, 62.00, 2.6812", knife.TimeConstantsS());
    }

    /// <summary>Common practice, no source: the ranges of a class agree with each other, heat capacity × resistance overlaps the time constants.</summary>
    [Fact]
    public void Ranges_of_hot_tool_classes_agree_with_each_other() => Assert.All(Tables.Find("hot-tool-classes").Rows, row =>
    {
        Assert.True(row.Number("capacity-low") * row.Number("resistance-low") <= row.Number("time-constant-high"));
        Assert.True(row.Number("capacity-high") * row.Number("resistance-high") >= row.Number("time-constant-low"));
        Assert.All(new[] { "power", "capacity", "resistance", "time-constant", "core-to-tip", "handle-share" }, what => Assert.True(row.Number(what + "-low") < row.Number(what + "-high")));
    });

    /// <summary>Exact step of the two-node tool, h = 2 s, 14 W.</summary>
    [Fact]
    public void The_exact_step_has_the_matrix_of_the_script_and_thirty_of_them_make_a_minute()
    {
        var step = TwoNodes.ExactStep(2);
        Printed.Agree("e^(Ah)", Printed.Computed, "0.723505901, 0.270499516, 0.0676248791, 0.922593545", [.. step.Transition.Cast<double>()]);
        double[,] gain = step.GainKPerW;
        Printed.Agree("input", Printed.Computed, "15.9058656, 0.676689871", 14 * gain[0, 0], 14 * gain[1, 0]);
        double[] rise = [0, 0];
        for (int i = 0; i < 30; i++)
        {
            rise = step.After(rise, [14, 0]);
        }

        Printed.Agree("30 steps", Printed.Computed, "159.9954, 114.8449", AirC + rise[0], AirC + rise[1]);
    }

    private static readonly Gen<HeatNetwork> AnyTool =
        from capacity in Gen.Double[0.1, 50].Array[2, 4]
        from toAir in Gen.Double[0.001, 0.3].Array[4]
        from links in Gen.Double[0.001, 3].Array[6]
        select new HeatNetwork(capacity, toAir[..capacity.Length], [.. Pairs(capacity.Length).Select((pair, i) => new HeatLink(pair.From, pair.To, links[i]))]);

    private static IEnumerable<(int From, int To)> Pairs(int n) => from i in Enumerable.Range(0, n) from j in Enumerable.Range(i + 1, n - i - 1) select (i, j);

    [Fact]
    public void A_passive_tool_has_real_negative_poles_and_they_are_roots_of_its_characteristic_polynomial() => AnyTool.Sample(tool =>
    {
        double[] poles = tool.PolesPerS();
        double[,] a = tool.RatePerS();
        Assert.All(poles, pole => Assert.True(pole < 0));

        // Second method: sum of poles is the trace, sum of their squares the trace of A².
        double trace = Enumerable.Range(0, tool.Nodes).Sum(i => a[i, i]);
        double square = (from i in Enumerable.Range(0, tool.Nodes) from j in Enumerable.Range(0, tool.Nodes) select a[i, j] * a[j, i]).Sum();
        Assert.Equal(trace, poles.Sum(), 1e-9 * Math.Abs(trace));
        Assert.Equal(square, poles.Sum(pole => pole * pole), 1e-9 * square);
    });

    [Fact]
    public void Heat_in_is_heat_stored_plus_heat_lost() => Gen.Select(AnyTool, Gen.Double[1, 40], Gen.Double[1, 500]).Sample((tool, watts, seconds) =>
    {
        // The loss is summed by a Gauss rule over the logarithm of time, straight from cold each time: not from the stepper's own increments.
        double[] powers = new double[tool.Nodes];
        powers[0] = watts;
        double[] Rise(double time) => tool.RiseAfterK(new double[tool.Nodes], powers, time);
        double start = 1e-7 * seconds;
        double lost = 0.5 * start * tool.LossW(Rise(start));
        const int stretches = 400;
        double width = Math.Log(seconds / start) / stretches;
        double offset = 0.5 * Math.Sqrt(0.6);
        for (int i = 0; i < stretches; i++)
        {
            double At(double share) => start * Math.Exp((i + share) * width) is var time ? time * tool.LossW(Rise(time)) : 0;
            lost += width * ((5 * At(0.5 - offset)) + (8 * At(0.5)) + (5 * At(0.5 + offset))) / 18;
        }

        Assert.Equal(watts * seconds, tool.StoredJ(Rise(seconds)) + lost, 1e-9 * watts * seconds);
    }, iter: 40);

    [Fact]
    public void In_the_steady_state_all_power_leaves() => Gen.Select(AnyTool, Gen.Double[1, 40]).Sample((tool, watts) =>
    {
        double[] powers = new double[tool.Nodes];
        powers[^1] = watts;
        Assert.Equal(watts, tool.LossW(tool.SteadyRiseK(powers)), 1e-9 * watts);
    });

    [Fact]
    public void Two_steps_are_one_step_of_their_sum_and_no_node_falls_while_heated_from_cold() => Gen.Select(AnyTool, Gen.Double[0.1, 100], Gen.Double[0.1, 100]).Sample((tool, first, second) =>
    {
        double[] powers = new double[tool.Nodes];
        powers[0] = 10;
        double[] half = tool.RiseAfterK(new double[tool.Nodes], powers, first);
        double[] whole = tool.RiseAfterK(half, powers, second);
        double[] atOnce = tool.RiseAfterK(new double[tool.Nodes], powers, first + second);
        for (int i = 0; i < tool.Nodes; i++)
        {
            Assert.Equal(atOnce[i], whole[i], 1e-9 * atOnce.Max());
            Assert.True(whole[i] >= half[i] - 1e-12);
            Assert.True(whole[i] <= whole[0] + 1e-12, "a node is hotter than the heated one");
        }
    });

    [Fact]
    public void A_tool_without_a_way_to_air_has_no_plateau_and_an_endless_time_constant()
    {
        var closed = new HeatNetwork([1, 2], [0, 0], new HeatLink(0, 1, 0.1));
        Assert.Throws<InvalidOperationException>(() => closed.SteadyRiseK(1, 0));
        Assert.True(closed.TimeConstantsS()[0] > 1e12);
        Assert.Equal(double.PositiveInfinity, OneNode.TimeToRiseS(0, 400.0001, 12));
    }

    [Fact]
    public void Impossible_tools_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new HeatNetwork([0], [0.1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new HeatNetwork([1], [-0.1]));
        Assert.Throws<ArgumentException>(() => new HeatNetwork([1, 1], [0.1]));
        Assert.Throws<ArgumentException>(() => new HeatNetwork([1, 1], [0.1, 0.1], new HeatLink(0, 2, 1)));
        Assert.Throws<ArgumentException>(() => OneNode.SteadyRiseK(1, 2));
    }
}
