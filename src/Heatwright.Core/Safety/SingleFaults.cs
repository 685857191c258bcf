using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.Safety;

/// <summary>Highest temperatures of a fault, °C.</summary>
/// <param name="EndC">Of the working end.</param>
/// <param name="GripC">Of the grip.</param>
/// <param name="CellC">Of the cells.</param>
public readonly record struct FaultHeat(double EndC, double GripC, double CellC);

/// <summary>One fault at the worst corner of everything in doubt.</summary>
/// <param name="Name">What fails.</param>
/// <param name="EndC">Highest temperature of the working end until the pack is empty, where nothing opens by itself, °C.</param>
/// <param name="GripC">Of the grip.</param>
/// <param name="CellC">Of the cells.</param>
/// <param name="CutOutS">When the independent cut-out opens, s; NaN: not stated, or never.</param>
/// <param name="CellLimitS">When the cells pass their limit, s; NaN: never.</param>
/// <param name="Catches">What stops it, and what if that fails too.</param>
public sealed record FaultCase(string Name, double EndC, double GripC, double CellC, double CutOutS, double CellLimitS, string Catches)
{
    /// <summary>What it comes to where the cut-out, or a protection board that watches the cells, opens and stays open; null: neither opens.</summary>
    public FaultHeat? Held { get; init; }

    /// <summary>When the protection board takes the load off by the temperature of its cells, s; NaN: not stated, or never.</summary>
    public double BoardS { get; init; } = double.NaN;

    /// <summary>Highest temperature of the cells where what opens by itself stays open, °C; where nothing opens, <see cref="CellC"/>.</summary>
    public double HeldCellC => Held?.CellC ?? CellC;

    /// <summary>What would keep the cells whole; empty: nothing is needed.</summary>
    public string Needs { get; init; } = "";

    /// <summary>How the study is told that it is there; empty: nothing is to be said.</summary>
    public string Tell { get; init; } = "";

    /// <summary>What must be there before it is built, in the one wording of advice, decision and build sheet; null: the cells stay under their limit.</summary>
    public Condition? Missing => HeldCellC > SingleFaults.CellLimitC ? new(Needs, string.Create(CultureInfo.InvariantCulture,
        $"with the fault '{Name}' the cells pass {SingleFaults.CellLimitC:0} °C and reach {HeldCellC:0} °C at the worst corner{(Tell.Length > 0 ? "; " + Tell : "")}")) : null;
}

/// <summary>Single faults of a tool, each run through the plant at its worst corner.</summary>
public sealed class SingleFaults
{
    /// <summary>No lithium cell may be hotter, °C.</summary>
    public const double CellLimitC = 60;

    /// <summary>Name of the fault in which nothing turns the heater off.</summary>
    public const string StuckOn = "switch stuck on";

    /// <summary>Air of the hot day at which faults are looked at, °C. Our choice.</summary>
    public const double HotAirC = 35;

    private const double Zero = 273.15;
    private const string CellSensor = "cell sensor";
    private const double LimitOfOne = 1.7320508;

    /// <summary>So long after its cut-out has opened the heat of the end may still go into the cells, s.</summary>
    private const double SoakS = 3600;

    private readonly FaultAsk ask;
    private readonly PlantBuilder builder;
    private readonly CancellationToken cancel;
    private readonly double[] worst;

    private SingleFaults(FaultAsk ask, CancellationToken cancel)
    {
        (this.ask, builder, this.cancel) = (ask, ask.Builder, cancel);
        worst = Corner();
    }

    /// <summary>All faults.</summary>
    /// <param name="ask">What is looked at.</param>
    /// <param name="setC">Set point.</param>
    /// <param name="mostDuty">Largest duty of the firmware.</param>
    /// <param name="riseS">The firmware's own time to notice a reading that does not rise.</param>
    public static IReadOnlyList<FaultCase> Of(FaultAsk ask, double setC, double mostDuty, double riseS)
    {
        var faults = new SingleFaults(ask, CancellationToken.None);
        string cutOut = ask.CutOutC > 0 ? "the independent cut-out" : "an independent cut-out: state its temperature with cut-out";
        var stuck = faults.Stuck(cutOut);
        var hung = mostDuty >= 1 ? stuck : faults.Run("", mostDuty, cutOut);
        return
        [
            stuck,
            hung with { Name = "firmware hung with the heater on", Catches = $"the controller's watchdog; if that fails, {cutOut}" },
            hung with { Name = "sensor open", EndC = setC, CutOutS = double.NaN, CellLimitS = double.NaN, BoardS = double.NaN, GripC = double.NaN, CellC = double.NaN, Held = null, Catches = "the pull-up takes the reading to its end and the firmware stops within three samples; if that fails, as firmware hung" },
            faults.Shorted(setC, mostDuty, riseS, cutOut),
            faults.Blocked(),
        ];
    }

    /// <summary>Faults of a lamp: it has no firmware, so what is left is a lamp that nobody switches off.</summary>
    /// <param name="ask">What is looked at.</param>
    /// <param name="cancel">Stops it between two steps.</param>
    public static IReadOnlyList<FaultCase> OfLamp(FaultAsk ask, CancellationToken cancel = default)
    {
        var faults = new SingleFaults(ask, cancel);
        return
        [
            faults.Run("left on until the pack is empty", 1, "the protection at the cut-off volts; nothing before"),
            faults.Blocked() with { Catches = "nothing: do not light it in a bag or under a cloth" },
        ];
    }

    /// <summary>What keeps the cells whole and is not there, on a usual hot day: known before there is a build sheet, and in its words.</summary>
    /// <remarks>Firmware that hangs, and a sensor that is open or shorted, heat no longer and no harder than a switch that is stuck on.</remarks>
    /// <param name="ask">What is looked at.</param>
    /// <param name="cancel">Stops it between two steps.</param>
    public static IReadOnlyList<Condition> Missing(FaultAsk ask, CancellationToken cancel = default)
    {
        if (ask.Arrangement.Lamp is not null)
        {
            return Missing(OfLamp(ask, cancel));
        }

        var faults = new SingleFaults(ask, cancel);
        return Missing([faults.Stuck(""), faults.Blocked()]);
    }

    /// <summary>What is missing by these faults, each thing once with the fault that is worst without it.</summary>
    /// <param name="faults">All of them.</param>
    public static IReadOnlyList<Condition> Missing(IEnumerable<FaultCase> faults) =>
        [.. faults.Where(fault => fault.Missing is not null).GroupBy(fault => fault.Needs).Select(group => group.MaxBy(fault => fault.HeldCellC)!.Missing!)];

    private FaultCase Stuck(string cutOut) => Run(StuckOn, 1, cutOut);

    /// <summary>Every number at the end of its range that makes the working end hotter with the switch stuck on.</summary>
    private double[] Corner()
    {
        double[] middle = builder.Middle;
        double Hottest(double[] at) => PlantRunner.Run(Tool(at, 1), new RunSettings { StepS = Math.Max(1, builder.StepS), Cancel = cancel }).HighestK[0];
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
            Network = tool.Network with { AmbientK = ask.AirC + Zero, StartK = [] },
            Duty = null,
            Marks = [new HeatMark("cut-out", ask.CutOutNode, (ask.CutOutC > 0 ? ask.CutOutC : 5000) + Zero), new HeatMark("cells", 2, CellLimitC + Zero), new HeatMark(CellSensor, 2, (ask.CellSensorC > 0 ? ask.CellSensorC : 5000) + Zero)],
        };
    }

    private FaultCase Run(string name, double duty, string catches)
    {
        var tool = Tool(worst, duty);
        var run = PlantRunner.Run(tool, new RunSettings { StepS = builder.StepS, Cancel = cancel });
        return Held(Case(name, run, catches) with { Needs = ask.NeededCutOut }, tool);
    }

    /// <summary>The fault as far as what opens by itself lets it come: the cut-out, or a protection board that watches the cells, whichever is first.</summary>
    private FaultCase Held(FaultCase fault, AssembledTool tool)
    {
        double opensS = double.IsNaN(fault.BoardS) || fault.CutOutS < fault.BoardS ? fault.CutOutS : fault.BoardS;
        return double.IsFinite(opensS) ? fault with { Held = After(tool, opensS) } : fault;
    }

    /// <summary>Highest temperatures where the load is off from this time on: what the end holds then goes on into grip and cells.</summary>
    /// <remarks>Each starts at the highest that it reached until then: it stands there where nothing had cooled, and where something had, that is on the careful side.</remarks>
    private FaultHeat After(AssembledTool tool, double offS)
    {
        if (offS <= 0)
        {
            return new(ask.AirC, ask.AirC, ask.AirC);
        }

        var until = PlantRunner.Run(tool with { MaxS = offS, Marks = [] }, new RunSettings { StepS = builder.StepS, Cancel = cancel });
        var after = PlantRunner.Run(tool.Stuck(0) with { MaxS = SoakS, Marks = [], Network = tool.Network with { StartK = [.. until.HighestK] } }, new RunSettings { StepS = Math.Max(1, builder.StepS), Cancel = cancel });
        double Highest(int node) => Math.Max(until.HighestK[node], after.HighestK[node]) - Zero;
        return new(Highest(0), Highest(1), Highest(2));
    }

    private static FaultCase Case(string name, PlantRun run, string catches) =>
        new(name, run.HighestK[0] - Zero, run.HighestK[1] - Zero, run.HighestK[2] - Zero, At(run, "cut-out"), At(run, "cells"), catches) { BoardS = At(run, CellSensor) };

    private static double At(PlantRun run, string mark) => run.Events.Where(one => one.What == Happening.Crossed && one.Name == mark).Select(one => one.AtS).FirstOrDefault(double.NaN);

    /// <summary>A shorted sensor reads the cold end: full power until the firmware misses the rise.</summary>
    private FaultCase Shorted(double setC, double mostDuty, double riseS, string cutOut)
    {
        var tool = Tool(worst, mostDuty);
        tool = tool with { TargetK = setC + Zero };
        var whole = PlantRunner.Run(tool, new RunSettings { StepS = 0.5 });
        double until = Math.Max(0.5, double.IsNaN(whole.TargetS) ? riseS : whole.TargetS + riseS);
        var cut = PlantRunner.Run(tool with { MaxS = until }, new RunSettings { StepS = 0.5 });
        var heat = After(tool, until);
        return Held(Case("sensor shorted at the set point", cut, $"the firmware sees no rise at full power and stops; if that fails, as firmware hung, {cutOut}") with { EndC = heat.EndC, GripC = heat.GripC, CellC = heat.CellC, Needs = ask.NeededCutOut }, tool);
    }

    /// <summary>The controller works, and the grip can give its heat to nothing but half of what it could.</summary>
    private FaultCase Blocked()
    {
        double[] at = [.. worst];
        at[builder.Place(PlantKey.GripLoss)] *= 0.5;
        var tool = HotDay(at);
        var run = PlantRunner.Run(tool, new RunSettings { StepS = builder.StepS, Cancel = cancel });
        string load = ask.Arrangement.Lamp is null ? "heater" : "lamp";
        string catches = ask.CellSensorC > 0 ? string.Create(CultureInfo.InvariantCulture, $"the protection board, at {ask.CellSensorC:0.#} °C of the cells") : $"nothing but the hand: a cell sensor that stops the {load} would";
        return Held(Case("cooling of the grip blocked", run, catches), tool) with
        {
            Needs = ask.CellSensorC > 0 ? $"a protection board that opens cooler than '{ask.Shelf[ask.Arrangement.Supervision!.Value].Name}'" : $"a sensor on the cells that stops the {load}",
            Tell = ask.CellSensorC > 0 ? "" : "a protection board that watches its cells has an opening temperature: state it on the board",
        };
    }
}
