using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>Duty blocks on a tool so plain that every course is an exponential by hand: one lump, 10 W from cells without ohms, 5 J/K, 0.05 W/K.</summary>
public sealed class DutyBlockTests
{
    private const double Air = 293.15, JPerK = 5, WPerK = 0.05, Watts = 10, Tau = JPerK / WPerK;

    private static readonly CellModel Cell = new(10 * 3600, new ChargeCurve.Flat(4), new ChargeCurve.Flat(0), new ChargeCurve.Flat(0), 20, new ChargeCurve.Flat(0), 200);

    private static AssembledTool Tool(ControllerModel controller, double targetRise, params DutyBlock[] blocks) => new(
        new PackModel(Cell, 1, 1, 0), new PathModel.Direct(), new LoadModel.Heater(16 / Watts, 0, 293.15),
        new ThermalNetwork([new("end", JPerK, WPerK)], [], Air), controller)
    {
        TargetK = Air + targetRise,
        Work = new WorkPattern(0, Air, 0, 20, 5, 0),
        Duty = new DutyPattern(blocks),
        MaxS = 2000,
    };

    private static PlantRun Run(AssembledTool tool, params double[] instants) => PlantRunner.Run(tool, new RunSettings { StepS = 0.5, EveryEvent = true, Instants = instants });

    private static double[] Begins(PlantRun run) => [.. run.Events.Where(one => one.What == Happening.BlockBegins).Select(one => one.AtS)];

    private static double HeatingS(double from, double to) => -Tau * Math.Log(((Watts / WPerK) - to) / ((Watts / WPerK) - from));

    [Fact]
    public void A_warm_up_ends_when_the_target_is_reached_and_what_cooled_is_warmed_again()
    {
        var run = Run(Tool(new ControllerModel.Fixed(1), 100, new(DutyKind.WarmUp, double.PositiveInfinity), new(DutyKind.Off, 60)) with { Duty = new DutyPattern([new(DutyKind.WarmUp, double.PositiveInfinity), new(DutyKind.Off, 60)], 2) });
        double first = HeatingS(0, 100), cooled = 100 * Math.Exp(-60 / Tau), second = HeatingS(cooled, 100);
        double[] expected = [0, first, first + 60, first + 60 + second];
        Assert.Equal(expected.Length, Begins(run).Length);
        Assert.All(expected.Zip(Begins(run)), pair => Assert.Equal(pair.First, pair.Second, 1e-3));
        Assert.Equal(StopReason.WorkDone, run.Stop);
        Assert.Equal(first + 120 + second, run.RunTimeS, 1e-3);
        Assert.Equal(Watts * (first + second), run.Energies.LoadJ, Watts * 2e-3);
    }

    [Fact]
    public void Pieces_come_in_work_blocks_only()
    {
        var run = Run(Tool(new ControllerModel.Fixed(1), 100, new(DutyKind.Hold, 30), new(DutyKind.Work, 0) { Pieces = 2 }, new(DutyKind.Off, 15)) with { MaxS = 190 });
        double[] starts = [.. run.Events.Where(one => one.What == Happening.WorkStarts).Select(one => one.AtS)];
        Assert.Equal([30, 50, 115, 135], starts.Select(at => Math.Round(at, 6)));
        Assert.Equal(4, run.WorkDone);
    }

    [Fact]
    public void Stand_by_holds_its_own_temperature_and_off_lets_it_fall()
    {
        var pi = new ControllerModel.Pi(Air + 100, 0.5, 1, 0.02, 0, 16 / Watts, 1);
        var run = Run(Tool(pi, 99, new(DutyKind.WarmUp, double.PositiveInfinity), new(DutyKind.Hold, 100), new(DutyKind.StandBy, 300) { SetK = Air + 40 }, new(DutyKind.Off, 100)), 190, 480, 560);
        double offS = Begins(run)[3];
        Assert.Equal(Air + 100, run.Trace.NodesK[0][0], 0.3);
        Assert.Equal(Air + 40, run.Trace.NodesK[0][1], 0.3);
        Assert.Equal(Air + (40 * Math.Exp(-(560 - offS) / Tau)), run.Trace.NodesK[0][2], 0.3);
    }

    [Fact]
    public void An_on_off_controller_follows_stand_by_too()
    {
        var run = Run(Tool(new ControllerModel.OnOff(Air + 98, Air + 102), 100, new(DutyKind.Hold, 200), new(DutyKind.StandBy, 300) { SetK = Air + 40 }), 199, 490);
        Assert.InRange(run.Trace.NodesK[0][0], Air + 98, Air + 102);
        Assert.InRange(run.Trace.NodesK[0][1], Air + 35.9, Air + 40.1);
    }

    [Fact]
    public void A_pattern_longer_than_the_charge_ends_with_the_charge_and_a_target_never_reached_is_waited_for()
    {
        var never = Run(Tool(new ControllerModel.Fixed(1), 250, new DutyBlock(DutyKind.WarmUp, double.PositiveInfinity), new DutyBlock(DutyKind.Off, 60)));
        Assert.Equal(StopReason.TimeOver, never.Stop);
        Assert.Equal([0], Begins(never));
        var small = Tool(new ControllerModel.Fixed(1), 100, new DutyBlock(DutyKind.Hold, 1e6)) with
        {
            Pack = new PackModel(new(100, new ChargeCurve.Flat(4), new ChargeCurve.Flat(0), new ChargeCurve.Flat(0), 20, new ChargeCurve.Flat(0), 200), 1, 1, 0),
        };
        Assert.Equal(StopReason.Empty, Run(small).Stop);
        Assert.Equal(40, Run(small).RunTimeS, 1e-6);
    }

    [Fact]
    public void Warm_ups_alone_of_a_tool_that_stays_hot_do_not_go_round_for_ever()
    {
        var run = Run(Tool(new ControllerModel.Fixed(1), 1, new DutyBlock(DutyKind.WarmUp, double.PositiveInfinity)) with { MaxS = 50 });
        Assert.Equal(50, run.RunTimeS, 1e-6);
    }

    [Fact]
    public void What_cannot_be_followed_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Run(Tool(new ControllerModel.Fixed(1), 100, new DutyBlock(DutyKind.StandBy, 60) { SetK = 350 })));
        Assert.Throws<ArgumentException>(() => Run(Tool(new ControllerModel.Fixed(1), 100, new DutyBlock(DutyKind.Work, 0))));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DutyBlock(DutyKind.Hold, 0));
        Assert.Throws<ArgumentException>(() => new DutyPattern([]));
    }
}
