using Heatwright.Arrangements;
using Heatwright.Plant;

namespace Heatwright.BuildSheets;

/// <summary>One fault at the worst corner of everything in doubt.</summary>
/// <param name="Name">What fails.</param>
/// <param name="EndC">Highest temperature of the working end until the pack is empty, °C.</param>
/// <param name="GripC">Of the grip.</param>
/// <param name="CellC">Of the cells.</param>
/// <param name="CutOutS">When the independent cut-out opens, s; NaN: not stated, or never.</param>
/// <param name="CellLimitS">When the cells pass their limit, s; NaN: never.</param>
/// <param name="Catches">What stops it, and what if that fails too.</param>
public sealed record FaultCase(string Name, double EndC, double GripC, double CellC, double CutOutS, double CellLimitS, string Catches);

/// <summary>Single faults of a tool, each run through the plant at its worst corner.</summary>
public sealed class SingleFaults
{
    private const double Zero = 273.15;
    private const double LimitOfOne = 1.7320508;

    private readonly PlantBuilder builder;
    private readonly double airC;
    private readonly double cutOutC;
    private readonly double cellLimitC;
    private readonly double[] worst;

    private SingleFaults(PlantBuilder builder, double airC, double cutOutC, double cellLimitC)
    {
        (this.builder, this.airC, this.cutOutC, this.cellLimitC) = (builder, airC, cutOutC, cellLimitC);
        worst = Corner();
    }

    /// <summary>All faults.</summary>
    /// <param name="builder">Plant of the arrangement.</param>
    /// <param name="airC">Hot day, °C.</param>
    /// <param name="setC">Set point.</param>
    /// <param name="mostDuty">Largest duty of the firmware.</param>
    /// <param name="riseS">The firmware's own time to notice a reading that does not rise.</param>
    /// <param name="cutOutC">Temperature of the working end at which the independent cut-out opens; 0: not stated.</param>
    /// <param name="cellLimitC">Limit of the cells.</param>
    public static IReadOnlyList<FaultCase> Of(PlantBuilder builder, double airC, double setC, double mostDuty, double riseS, double cutOutC, double cellLimitC)
    {
        var faults = new SingleFaults(builder, airC, cutOutC, cellLimitC);
        string cutOut = cutOutC > 0 ? "the independent cut-out" : "an independent cut-out: state its temperature with cut-out";
        var stuck = faults.Run("switch stuck on", 1, cutOut);
        var hung = mostDuty >= 1 ? stuck : faults.Run("", mostDuty, cutOut);
        return
        [
            stuck,
            hung with { Name = "firmware hung with the heater on", Catches = $"the controller's watchdog; if that fails, {cutOut}" },
            hung with { Name = "sensor open", EndC = setC, CutOutS = double.NaN, CellLimitS = double.NaN, GripC = double.NaN, CellC = double.NaN, Catches = "the pull-up takes the reading to its end and the firmware stops within three samples; if that fails, as firmware hung" },
            faults.Shorted(setC, mostDuty, riseS, cutOut),
            faults.Blocked(),
        ];
    }

    /// <summary>Faults of a lamp: it has no firmware, so what is left is a lamp that nobody switches off.</summary>
    /// <param name="builder">Plant of the arrangement.</param>
    /// <param name="airC">Hot day, °C.</param>
    /// <param name="cutOutC">Temperature of the head at which a cut-out opens; 0: there is none, or it is not stated.</param>
    /// <param name="cellLimitC">Limit of the cells.</param>
    public static IReadOnlyList<FaultCase> OfLamp(PlantBuilder builder, double airC, double cutOutC, double cellLimitC)
    {
        var faults = new SingleFaults(builder, airC, cutOutC, cellLimitC);
        return
        [
            faults.Run("left on until the pack is empty", 1, "the protection at the cut-off volts; nothing before"),
            faults.Blocked() with { Catches = "nothing: do not light it in a bag or under a cloth" },
        ];
    }

    /// <summary>Every number at the end of its range that makes the working end hotter with the switch stuck on.</summary>
    private double[] Corner()
    {
        double[] middle = builder.Middle;
        double Hottest(double[] at) => PlantRunner.Run(Tool(at, 1), new RunSettings { StepS = Math.Max(1, builder.StepS) }).HighestK[0];
        double standing = Hottest(middle);
        double[] signs = new double[middle.Length];
        Parallel.For(0, middle.Length, i =>
        {
            double doubt = builder.Inputs[i].Value.SiDoubt;
            if (doubt > 0)
            {
                double[] moved = [.. middle];
                moved[i] += 0.5 * doubt;
                signs[i] = Math.Sign(Hottest(moved) - standing);
            }
        });
        return [.. middle.Select((value, i) => value + (signs[i] * LimitOfOne * builder.Inputs[i].Value.SiDoubt))];
    }

    private AssembledTool Tool(double[] at, double duty) => HotDay(at).Stuck(duty) with { CutoffV = 0 };

    /// <summary>The tool on the hot day, with the temperatures that are watched.</summary>
    private AssembledTool HotDay(double[] at)
    {
        var tool = builder.Build(at);
        return tool with
        {
            Network = tool.Network with { AmbientK = airC + Zero, StartK = [] },
            Duty = null,
            Marks = [new HeatMark("cut-out", 0, (cutOutC > 0 ? cutOutC : 5000) + Zero), new HeatMark("cells", 2, cellLimitC + Zero)],
        };
    }

    private FaultCase Run(string name, double duty, string catches)
    {
        var run = PlantRunner.Run(Tool(worst, duty), new RunSettings { StepS = builder.StepS });
        return Case(name, run, catches);
    }

    private static FaultCase Case(string name, PlantRun run, string catches)
    {
        double At(string mark) => run.Events.Where(one => one.What == Happening.Crossed && one.Name == mark).Select(one => one.AtS).FirstOrDefault(double.NaN);
        return new(name, run.HighestK[0] - Zero, run.HighestK[1] - Zero, run.HighestK[2] - Zero, At("cut-out"), At("cells"), catches);
    }

    /// <summary>A shorted sensor reads the cold end: full power until the firmware misses the rise.</summary>
    private FaultCase Shorted(double setC, double mostDuty, double riseS, string cutOut)
    {
        var tool = Tool(worst, mostDuty);
        tool = tool with { TargetK = setC + Zero };
        var whole = PlantRunner.Run(tool, new RunSettings { StepS = 0.5 });
        double until = double.IsNaN(whole.TargetS) ? riseS : whole.TargetS + riseS;
        var cut = PlantRunner.Run(tool with { MaxS = Math.Max(0.5, until) }, new RunSettings { StepS = 0.5 });
        return Case("sensor shorted at the set point", cut, $"the firmware sees no rise at full power and stops; if that fails, as firmware hung, {cutOut}");
    }

    /// <summary>The controller works, and the grip can give its heat to nothing but half of what it could.</summary>
    private FaultCase Blocked()
    {
        double[] at = [.. worst];
        int place = builder.Place(PlantKey.GripLoss);
        if (place >= 0)
        {
            at[place] *= 0.5;
        }

        var run = PlantRunner.Run(HotDay(at), new RunSettings { StepS = builder.StepS });
        return Case("cooling of the grip blocked", run, "nothing but the hand: a cell sensor that stops the heater would");
    }
}
