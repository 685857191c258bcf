using CsCheck;
using Heatwright.Numerics;
using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>The lanes against 64 Runge–Kutta steps a sample (mission B), and against the stepper (any tool they take). Numbers are invented.</summary>
public class SwiftTests
{
    private static readonly int[] Samples = [.. Enumerable.Range(0, 270).Select(i => 7 + (100 * i))];

    [Fact]
    public void Mission_B_agrees_with_sixty_four_steps_a_sample()
    {
        var (endS, at) = PlainMissionB.Run(0.7, Samples);
        var trace = new SwiftTrace(Samples.Length, 1);
        var results = new SwiftResult[1];
        SwiftBatch.Run(_ => MissionB.Tool(), 0, 1, 0.1, Samples, trace, results, TestContext.Current.CancellationToken);
        Assert.Equal(StopReason.CutOff, results[0].Stop);
        Assert.Equal(endS, results[0].RunTimeS, 1e-6 * endS);
        Assert.True(at.Count > 260);
        for (int i = 0; i < at.Count; i++)
        {
            for (int node = 0; node < 4; node++)
            {
                Assert.Equal(at[i][node], trace.At(0, node, i), 0.02);
            }
        }
    }

    [Fact]
    public void The_stepper_agrees_with_sixty_four_steps_a_sample()
    {
        double endS = PlainMissionB.Run(0.7, [], sub: 16).EndS;
        Assert.Equal(endS, PlantRunner.Run(MissionB.Tool(), new RunSettings { StepS = 0.05 }).RunTimeS, 1e-6 * endS);
    }

    /// <summary>The long form, ten thousand draws, is kept with the timings.</summary>
    [Fact]
    public void Every_draw_of_mission_B_is_what_the_stepper_makes_of_it()
    {
        const int draws = 48;
        var results = new SwiftResult[draws];
        for (int from = 0; from < draws; from += SwiftBatch.Width)
        {
            SwiftBatch.Run(Drawn, from, Math.Min(SwiftBatch.Width, draws - from), 0.1, [], null, results.AsSpan(from), TestContext.Current.CancellationToken);
        }

        for (int i = 0; i < draws; i++)
        {
            var slow = PlantRunner.Run(Drawn(i), new RunSettings { StepS = 0.1 });
            Assert.Equal(slow.RunTimeS, results[i].RunTimeS, 1e-4 * slow.RunTimeS);
            Assert.Equal(slow.TargetS, results[i].TargetS, 0.01);
            Assert.Equal(slow.Energies.LoadJ, results[i].LoadJ, 1e-4 * slow.Energies.LoadJ);
            Assert.Equal(slow.HighestK[1] - 295.15, results[i].High1, 0.02);
            Assert.Equal(slow.WorkDone, results[i].WorkDone);
        }
    }

    [Fact]
    public void One_tool_gives_the_same_bits_in_any_lane_and_any_company()
    {
        var narrow = new SwiftRun([Drawn(3), Drawn(1), Drawn(2), Drawn(0)], 0.1).Run([], null, 0, 4, default);
        var turned = new SwiftRun([Drawn(1), Drawn(0), Drawn(3), Drawn(2)], 0.1).Run([], null, 0, 4, default);
        Assert.Equal(narrow[1], turned[0]);
        Assert.Equal(narrow[0], turned[2]);

        // Twice as many lanes are made from the same text; a machine without them reckons them slowly, but the same.
        var wide = new Heatwright.Plant.Wide.SwiftRun([.. new[] { 5, 4, 3, 6, 7, 0, 1, 2 }.Select(Drawn)], 0.1).Run([], null, 0, 8, default);
        Assert.Equal(narrow[0], wide[2]);
        Assert.Equal(narrow[1], wide[6]);
    }

    [Theory, InlineData(0), InlineData(1.3)]
    public void The_curve_of_the_sensor_is_the_steppers(double lagS)
    {
        // Warming by some kelvin a step, at its target, and at work.
        int[] at = [20, 60, 100, 2000, 9180];
        var tool = Drawn(0) with { Network = Drawn(0).Network with { SensorLagS = lagS } };
        var slow = PlantRunner.Run(tool, new RunSettings { StepS = 0.1, Instants = [.. at.Select(step => 0.1 * step)] });
        var trace = new SwiftTrace(at.Length, 1);
        SwiftBatch.Run(_ => tool, 0, 1, 0.1, at, trace, new SwiftResult[1], default);
        for (int i = 0; i < at.Length; i++)
        {
            Assert.Equal(slow.Trace.SensorK[i] - 273.15, trace.At(0, SwiftTrace.SensorAt, i), 0.1);
        }
    }

    [Fact]
    public void Tools_that_work_at_different_times_do_not_touch_each_other()
    {
        // While any lane works, all take the steps that reckon work.
        AssembledTool[] tools = [.. new[] { 16, 3.7, 11.23, 40 }.Select((firstS, i) => Drawn(i) with { Work = new WorkPattern(0.03, 333.15, firstS, 20 - i, 4 + i, 0) })];
        var together = new SwiftRun(tools, 0.1).Run([], null, 0, 4, default);
        for (int i = 0; i < tools.Length; i++)
        {
            Assert.Equal(new SwiftRun([tools[i], tools[i], tools[i], tools[i]], 0.1).Run([], null, 0, 1, default)[0], together[i]);
        }

        Assert.Equal(4, together.Select(one => one.LowestAtWork).Distinct().Count());
    }

    [Fact]
    public void The_lanes_asinh_is_that_of_the_library_in_any_company()
    {
        var coefs = default(SwiftCoefs);
        SwiftAsinh.Give(ref coefs);
        double[] xs = [.. Enumerable.Range(0, 4000).Select(i => Math.Pow(10, -6 + (i / 400.0)))];
        for (int i = 0; i < xs.Length; i++)
        {
            double far = xs[^(i + 1)];
            var ratio = SwiftAsinh.Ratio(in coefs, System.Runtime.Intrinsics.Vector256.Create(xs[i], far, 0.5, 3));
            Assert.Equal(Math.Asinh(xs[i]) / xs[i], ratio[0], 2e-9 * ratio[0]);
            Assert.Equal(ratio[0], SwiftAsinh.Ratio(in coefs, System.Runtime.Intrinsics.Vector256.Create(xs[i]))[3]);
        }
    }

    [Theory]
    [InlineData(1e8)]
    [InlineData(1e9)]
    [InlineData(1e20)]
    [InlineData(double.MaxValue)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NaN)]
    public async Task The_lanes_asinh_comes_to_its_end_however_far_a_lane_has_run_away(double x)
    {
        var coefs = default(SwiftCoefs);
        SwiftAsinh.Give(ref coefs);
        var asked = Task.Run(() => SwiftAsinh.Ratio(in coefs, System.Runtime.Intrinsics.Vector256.Create(x, 0.5, 0.5, 0.5)), TestContext.Current.CancellationToken);
        var ratio = await asked.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        Assert.Equal(Math.Asinh(0.5) / 0.5, ratio[1], 1e-9);
        if (x < 1e10)
        {
            Assert.Equal(Math.Asinh(x) / x, ratio[0], 1e-6 * ratio[0]);
        }
    }

    [Fact]
    public void A_path_that_gives_up_while_work_is_at_hand_gives_up_then()
    {
        // At its current limit the module sees 2.55 V, its lock-out, while a piece is worked on.
        var tool = Made((1, 2, 0.05, 2830, true, false), (true, 9.555, 6.818, 0.946, 2.545), (5.667, 0.001, 1.5, 1, 190), (false, 0.017, 10, true, 0)) with { CutoffV = 2 };
        var slow = PlantRunner.Run(tool, new RunSettings { StepS = 0.125, EveryEvent = true });
        Assert.Equal(StopReason.LockedOut, slow.Stop);
        Assert.Contains(slow.Events, e => e.What == Happening.WorkStarts && e.AtS < slow.RunTimeS && e.AtS > slow.RunTimeS - 5);
        var results = new SwiftResult[1];
        SwiftBatch.Run(_ => tool, 0, 1, 0.125, [], null, results, default);
        Assert.Null(Differs(tool, results[0], 0.125));
    }

    [Fact]
    public void Steps_in_lanes_make_no_garbage()
    {
        // Without work and target nothing asks for a look before the first bend of the open volts, some two thousand steps on.
        var run = new SwiftRun([.. Enumerable.Range(0, 4).Select(i => Drawn(i) with { Work = null, TargetK = double.NaN })], 0.1);
        var store = run.Inside;
        SwiftKernel.Advance<AnyForm, AtRest>(in store.Coefs, ref store.State, 100);
        int taken = 0;
        Assert.Equal(0, Least(() => taken = SwiftKernel.Advance<AnyForm, AtRest>(in store.Coefs, ref store.State, 200)));
        Assert.Equal(200, taken);
        Assert.Equal(0, Least(() => taken = SwiftKernel.Advance<AnyForm, AtHand>(in store.Coefs, ref store.State, 200)));
        Assert.Equal(200, taken);
    }

    [Fact]
    public void A_stepper_on_its_way_makes_no_garbage()
    {
        var stepper = new Stepper(MissionB.Tool());
        var state = stepper.Begin();
        var tally = default(Stepper.Tally);
        for (int i = 0; i < 1000; i++)
        {
            stepper.Advance(state, 0.1, 0.5, i % 7 == 0, 0, ref tally);
        }

        Assert.True(state.Rises[1] > 60);
        Assert.Equal(0, Least(() =>
        {
            for (int i = 0; i < 3000; i++)
            {
                stepper.Advance(state, 0.1, 0.5, i % 7 == 0, 0, ref tally);
            }
        }));
    }

    /// <summary>What the runtime allocates once, when it recompiles a busy loop, is not the loop's: what the loop makes it makes in every pass.</summary>
    private static long Least(Action run)
    {
        long least = long.MaxValue;
        for (int pass = 0; pass < 3; pass++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            run();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        return least;
    }

    [Fact]
    public void Any_tool_that_the_lanes_take_comes_out_as_from_the_stepper() => Tool.Sample(
        tool =>
        {
            Assert.Null(SwiftPlan.Refuses(tool));
            double step = StepFor(tool, 0.125);
            var results = new SwiftResult[1];
            SwiftBatch.Run(_ => tool, 0, 1, step, [], null, results, default);

            // A controller whose integral stands while it asks for too much stands or not from a hair at the sample where it stops asking: two courses are true then,
            // and the stepper takes one or the other as its target is nudged by less than the lanes' own error. The lanes must be on one of them.
            string? differs = Differs(tool, results[0], step);
            var pi = (ControllerModel.Pi)tool.Controller;
            foreach (double nudgeK in new[] { 0.003, -0.003, 0.01, -0.01, 0.03, -0.03 })
            {
                differs = differs is null || Differs(tool with { Controller = pi with { TargetK = pi.TargetK + nudgeK } }, results[0], step) is null ? null : differs;
            }

            Assert.Null(differs);
        });

    /// <summary>What differs from the stepper; null: nothing. Both are of second order.</summary>
    private static string? Differs(AssembledTool tool, SwiftResult fast, double step)
    {
        // With every event, as the lanes see them all.
        var slow = PlantRunner.Run(tool, new RunSettings { StepS = step, EveryEvent = true, Instants = double.IsNaN(fast.TargetS) ? [] : [fast.TargetS] });
        List<string> all = [];
        void Close(double expected, double actual, double within, string what)
        {
            if (!expected.Equals(actual) && !(Math.Abs(expected - actual) <= within))
            {
                all.Add($"{what} {expected} {actual}");
            }
        }

        // Less than half a step in charges of some thousand steps, where cells, path, sensor and work pull at once.
        Close((int)slow.Stop, (int)fast.Stop, 0, "reason");
        Close(slow.RunTimeS, fast.RunTimeS, 0.05 + (1e-4 * slow.RunTimeS), "run time");
        if (slow.LastRegion != fast.LastRegion)
        {
            // Only where the region turns in the very end, or would turn in the next moment without the cut-off.
            var on = PlantRunner.Run(tool with { CutoffV = 0 }, new RunSettings { StepS = step, EveryEvent = true });
            Close(0, on.Events.Any(e => e.What == Happening.RegionChanged && Math.Abs(e.AtS - slow.RunTimeS) < 0.1) ? 0 : 1, 0, $"region {slow.LastRegion} {fast.LastRegion}");
        }

        // Where the end creeps up to its target a hair of difference is much time: what is compared is how hot it is at that moment.
        bool late = double.IsNaN(fast.TargetS) ? double.IsNaN(slow.TargetS) || slow.HighestK[0] < tool.TargetK + 0.2
            : slow.RunTimeS < fast.TargetS + step || Math.Abs(slow.Trace.NodesK[0][0] - tool.TargetK) < 0.2;
        Close(0, late ? 0 : 1, 0, $"target {slow.TargetS} {fast.TargetS}");

        // A piece that has its last joule as its time ends may count or not.
        Close(slow.WorkDone, fast.WorkDone, 1, "pieces");

        // Where the path gives up the load is gone at the end of the last step: the stepper takes the mean of both ends, the lanes the start.
        bool gone = slow.Stop is StopReason.LockedOut or StopReason.Collapsed;
        double mostW = slow.HighestA * 4.2 * tool.Pack!.Series;
        Close(slow.Energies.LoadJ, fast.LoadJ, (1e-4 * slow.Energies.LoadJ) + 0.05 + ((gone ? step : Math.Abs(slow.RunTimeS - fast.RunTimeS)) * mostW), "load");
        Close(slow.HighestA, fast.HighestA, (gone ? 1e-2 : 1e-3) * slow.HighestA, "highest current");
        Close(slow.LowestV, fast.LowestV, (gone ? 1e-2 : 1e-3) * slow.LowestV, "lowest volts");
        Close(slow.LowestAtWorkK.Select(kelvin => kelvin - 300).DefaultIfEmpty(double.PositiveInfinity).Min(), fast.LowestAtWork, 0.2, "lowest at work");
        for (int node = 0; node < 3; node++)
        {
            Close(slow.HighestK[node] - 300, fast.HighRise(node), 0.2, $"highest of node {node}");
        }

        return all.Count == 0 ? null : string.Join("; ", all);
    }

    private static readonly Gen<AssembledTool> Tool =
        from pack in Gen.Select(Gen.Int[1, 3], Gen.Int[1, 2], Gen.Double[0.02, 0.08], Gen.Double[0, 30_000], Gen.Bool, Gen.Bool)
        from path in Gen.Select(Gen.Bool, Gen.Double[7, 10], Gen.Double[2, 7], Gen.Double[0.88, 0.97], Gen.Double[1.5, 2.6])
        from heat in Gen.Select(Gen.Double[3, 8], Gen.Double[0, 0.004], Gen.Double[0.5, 3], Gen.Double[0, 1.5], Gen.Double[60, 200])
        from rest in Gen.Select(Gen.Bool, Gen.Double[0, 0.1], Gen.Double[2, 20], Gen.Bool, Gen.Double[0, 0.02])
        select Made(pack, path, heat, rest);

    private static AssembledTool Made((int Series, int Parallel, double Ohm, double Activation, bool Transfers, bool HoldsAmps) pack, (bool StepsUp, double SetV, double LimitA, double MaxDuty, double LockOutV) path,
        (double Ohm, double Alpha, double JPerK, double LagS, double TargetRise) heat, (bool Tracks, double Contact, double NeedJ, bool AfterTarget, double DrainA) rest)
    {
        var cell = new CellModel(250, new ChargeCurve.Table([0, 0.1, 0.5, 1], [2.9, 3.35, 3.65, 4.15]), new ChargeCurve.Table([0.05, 0.4, 1], [1.4 * pack.Ohm, pack.Ohm, pack.Ohm]),
            new ChargeCurve.Flat(0.03), 8, new ChargeCurve.Table([0, 0.15, 1], [pack.HoldsAmps ? 0.12 : 0.03, 0.03, 0.02]), 60)
        { ActivationJPerMol = pack.Activation, ChargeTransfer = pack.Transfers, LongHoldsAmps = pack.HoldsAmps };
        return new(new PackModel(cell, pack.Series, pack.Parallel, 0.06) { TripA = 11 },
            path.StepsUp && pack.Series == 1 ? new PathModel.StepUp(Boost(path.SetV, path.LimitA, path.MaxDuty, path.LockOutV, rest.DrainA)) : new PathModel.Direct(),
            new LoadModel.Heater(heat.Ohm, heat.Alpha, 293.15),
            new ThermalNetwork([new("end", heat.JPerK, 0.02, 0.001, 2e-4), new("cells", 40, 0), new("case", 15, 0.15, 0.002)], [new(0, 2, 0.01), new(1, 2, 0.1)], 300)
            { CellNode = 1, ElectronicsNode = 2, SensorLagS = heat.LagS < 0.1 ? 0 : heat.LagS },
            new ControllerModel.Pi(300 + heat.TargetRise, 0.25, 0.2, 0.01, rest.Tracks ? 0.05 : 0, heat.Ohm, 0.95) { StartW = 1 })
        {
            CutoffV = 2.95 * pack.Series,
            CutoffOnlyWhileOn = true,
            DrainOnA = rest.DrainA,
            DrainOffA = rest.DrainA / 2,
            TargetK = 295 + heat.TargetRise,
            MaxS = 900,
            Work = new WorkPattern(rest.Contact, 320, 11, 17, 5, rest.NeedJ) { AfterTargetS = rest.AfterTarget ? 2 : double.NaN, Count = 40 },
        };
    }

    /// <summary>Of half of them the loss turns steeper within what they draw.</summary>
    private static StepUpModule Boost(double setV, double limitA, double maxDuty, double lockOutV, double draw) => new(setV, new(0.1, 0.2, 0.05))
    {
        PeakLimitA = limitA,
        MaxDuty = maxDuty,
        LockoutV = lockOutV,
        DiodeV = 0.3,
        ChangeA = draw > 0.01 ? 300 * (draw - 0.01) : double.PositiveInfinity,
        SteeperV = draw > 0.01 ? 0.3 : 0,
    };

    private static AssembledTool Drawn(int number)
    {
        double[] factors = [.. MissionB.Doubtful.Select((doubt, cause) => 1 + (doubt * ((2 * CounterRandom.Uniform(20251125, (ulong)cause, (ulong)number)) - 1)))];
        return MissionB.Tool(0.7, factors);
    }

    /// <summary>Step that divides the control period, at most the one given.</summary>
    private static double StepFor(AssembledTool tool, double mostS) => tool.Controller is ControllerModel.Pi pi ? pi.PeriodS / Math.Ceiling((pi.PeriodS / mostS) - 1e-9) : mostS;
}
