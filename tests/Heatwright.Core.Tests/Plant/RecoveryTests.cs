using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>The way back after work, on one lump of 5 J/K with 0.05 W/K and 10 W: every course is an exponential by hand.</summary>
public sealed class RecoveryTests
{
    private const double Air = 293.15, Tau = 100;

    private static readonly CellModel Cell = new(36_000, new ChargeCurve.Flat(4), new ChargeCurve.Flat(0), new ChargeCurve.Flat(0), 20, new ChargeCurve.Flat(0), 200);

    private static PlantRun Run(double targetRise, WorkPattern work, double mostS = 400, int pieces = int.MaxValue) => PlantRunner.Run(
        new AssembledTool(new PackModel(Cell, 1, 1, 0), new PathModel.Direct(), new LoadModel.Heater(1.6, 0, 293.15), new ThermalNetwork([new("end", 5, 0.05)], [], Air), new ControllerModel.Fixed(1))
        { TargetK = Air + targetRise, Work = work, TimesRecovery = pieces, MaxS = mostS },
        new RunSettings { StepS = 0.25 });

    [Fact]
    public void The_longest_way_back_is_that_of_the_exponential()
    {
        // 0.45 W/K more for 4 s from just over 150 K: towards 20 K with 10 s, then towards 200 K with 100 s.
        double start = -Tau * Math.Log((200 - 150) / 200.0);
        double at = start + 5, rise = 200 * (1 - Math.Exp(-at / Tau)), fallen = 20 + ((rise - 20) * Math.Exp(-0.4));
        double back = -Tau * Math.Log((200 - 150) / (200 - fallen));
        var run = Run(150, new WorkPattern(0.45, Air, 0, 1000, 4, 0) { AfterTargetS = 5, Count = 1 }, mostS: 2000);
        Assert.Equal(StopReason.WorkDone, run.Stop);

        // It ends with its only piece: the way back is not over, and shorter than the time to the next.
        Assert.Equal(0, run.RecoveryS);
        var two = Run(150, new WorkPattern(0.45, Air, 0, 200, 4, 0) { AfterTargetS = 5, Count = 2 }, mostS: 2000);
        Assert.Equal(back, two.RecoveryS, 0.02);
    }

    [Fact]
    public void Work_too_gentle_to_be_felt_needs_no_way_back() =>
        Assert.Equal(0, Run(100, new WorkPattern(0.01, Air, 0, 50, 4, 0) { AfterTargetS = 60, Count = 3 }).RecoveryS);

    [Fact]
    public void Only_the_pieces_that_are_promised_count()
    {
        // The first of them begins at 200 - 50·e^(-0.6) = 172.6 K and ends at 50 + 122.6·e^(-0.16) = 154.5 K; the next ends at 141 K, and none of the rest comes back to 150 K.
        WorkPattern work = new(0.15, Air, 0, 10, 4, 0) { AfterTargetS = 60, Count = 20 };
        Assert.Equal(0, Run(150, work, mostS: 2000, pieces: 1).RecoveryS);
        Assert.Equal(double.PositiveInfinity, Run(150, work, mostS: 2000).RecoveryS);
    }

    [Fact]
    public void Pieces_that_come_faster_than_the_heat_never_let_it_come_back() =>
        Assert.Equal(double.PositiveInfinity, Run(150, new WorkPattern(0.45, Air, 0, 10, 4, 0) { AfterTargetS = 5, Count = 20 }, mostS: 2000).RecoveryS);
}
