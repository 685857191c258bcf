using Heatwright.Plant;

namespace Heatwright.Predictions;

/// <summary>One rung between the label's run time and the predicted one.</summary>
/// <param name="Cause">What this rung takes into account that the one above did not.</param>
/// <param name="RunTimeS">Run time with it.</param>
/// <param name="ChangeS">By how much that is longer than the rung above; 0 on the first.</param>
/// <param name="Stop">What ends it.</param>
public sealed record Rung(string Cause, double RunTimeS, double ChangeS, StopReason Stop);

/// <summary>From the run time that labels promise to the one that a stopwatch will show, one cause a rung. The order is ours; another order gives other shares and the same end.</summary>
public static class RunTimeLadder
{
    /// <summary>Longest run of a rung, s: a tool that only holds its heat may last for days, and no maker waits for that.</summary>
    private const double MostS = 24 * 3600;

    private const double StepS = 0.5;

    /// <summary>More than any module here passes, A.</summary>
    private const double NoLimitA = 1e6;

    /// <summary>Charge left at which the pack has its nominal volts: half, our choice.</summary>
    private const double NominalCharge = 0.5;

    /// <summary>The rungs, the label's first; the last is the predicted run itself. Empty where there is no pack, or no heater to be labelled.</summary>
    /// <param name="tool">The tool as predicted.</param>
    /// <param name="predicted">Its run.</param>
    /// <param name="labelC">Charge of one cell by its label, C; null: no label says.</param>
    /// <param name="labelW">Watts of the heater by its label; null: no label says.</param>
    /// <param name="labelV">Volts of one cell by its label; null: no label says, and those at half charge stand for it.</param>
    /// <param name="cancel">Stops it between two steps.</param>
    public static IReadOnlyList<Rung> Of(AssembledTool tool, PlantRun predicted, double? labelC, double? labelW, double? labelV, CancellationToken cancel)
    {
        if (tool.Pack is not { } pack || tool.Load is not LoadModel.Heater heater || tool.Charger is not null || tool.Path is not (PathModel.Direct or PathModel.StepUp))
        {
            return [];
        }

        List<Rung> rungs = [];
        void Add(string cause, double runTimeS, StopReason stop) => rungs.Add(new(cause, runTimeS, rungs.Count == 0 ? 0 : runTimeS - rungs[^1].RunTimeS, stop));
        double nominalV = pack.Series * pack.Cell.OpenV.At(NominalCharge);
        double heaterV = tool.Path is PathModel.StepUp up ? Math.Max(up.Module.SetV, nominalV) : nominalV;
        double fullW = heaterV * heaterV / heater.Ohm;
        double Lasts(double coulombs, double watts, double packV) => coulombs * pack.StartCharge * pack.Parallel * packV / watts;

        // By hand, as a maker does it: charge times volts over watts.
        double saidV = labelV is { } said ? pack.Series * said : nominalV;
        if (labelC is not null || labelW is not null)
        {
            Add((labelC, labelW) switch
            {
                (not null, not null) => "the labels of cells and heater",
                (not null, null) => "the label of the cells, and all the heater takes at nominal volts",
                _ => "the cells as found, and the heater's label",
            }, Lasts(labelC ?? pack.Cell.CapacityC, labelW ?? fullW, saidV), StopReason.Empty);
        }

        if (labelC is not null)
        {
            Add("the cells hold what they hold, not what their label says", Lasts(pack.Cell.CapacityC, labelW ?? fullW, saidV), StopReason.Empty);
        }

        if (saidV != nominalV && rungs.Count > 0)
        {
            Add("the cells have their volts at half charge, not those of their label", Lasts(pack.Cell.CapacityC, labelW ?? fullW, nominalV), StopReason.Empty);
        }

        if (labelW is not null || labelC is null)
        {
            Add("the heater takes what its ohms let through at nominal volts, always on", Lasts(pack.Cell.CapacityC, fullW, nominalV), StopReason.Empty);
        }

        var now = Ideal(tool, pack, heater);
        foreach (var (cause, put) in Causes(tool, pack))
        {
            var next = put(now);
            if (next != now)
            {
                var run = next == tool ? predicted : PlantRunner.Run(next, new RunSettings { StepS = StepS, Cancel = cancel });
                Add(cause, run.RunTimeS, run.Stop);
                now = next;
            }
        }

        return rungs;
    }

    /// <summary>The same parts without anything that a label leaves out: flat volts, no ohms on the way, no losses, no limits, always on.</summary>
    private static AssembledTool Ideal(AssembledTool tool, PackModel pack, LoadModel.Heater heater)
    {
        var none = new ChargeCurve.Flat(0);
        var cell = pack.Cell with { OpenV = new ChargeCurve.Flat(pack.Cell.OpenV.At(NominalCharge)), R0Ohm = none, R1Ohm = none, R2Ohm = none };
        return tool with
        {
            Pack = pack with { Cell = cell, LoopOhm = 0, TripA = double.PositiveInfinity, CellCutoffV = 0 },
            Path = tool.Path is PathModel.StepUp up ? new PathModel.StepUp(up.Module.SetV, 0, 0, 0, NoLimitA, up.Module.MaxDuty, 0, 0) : tool.Path,
            Load = new LoadModel.Heater(heater.Ohm, 0, heater.ReferenceK),
            Controller = new ControllerModel.Fixed(1),
            Work = null,
            Duty = null,
            CutoffV = 0,
            BrownOutV = 0,
            DrainOnA = 0,
            DrainOffA = 0,
            TargetK = double.NaN,
            MaxS = MostS,
        };
    }

    private static IEnumerable<(string Cause, Func<AssembledTool, AssembledTool> Put)> Causes(AssembledTool tool, PackModel pack)
    {
        AssembledTool Cell(AssembledTool at, Func<CellModel, CellModel> put) => at with { Pack = at.Pack! with { Cell = put(at.Pack.Cell) } };
        yield return ("volts fall as the charge is drawn", at => Cell(at, cell => cell with { OpenV = pack.Cell.OpenV }));
        yield return ("ohms of the cells", at => Cell(at, _ => pack.Cell));
        yield return ("ohms of contacts, leads, switch and supervision", at => at with { Pack = at.Pack! with { LoopOhm = pack.LoopOhm } });
        yield return ("losses and limits of the module", at => at with { Path = tool.Path });
        yield return ("drain of the electronics", at => at with { DrainOnA = tool.DrainOnA, DrainOffA = tool.DrainOffA });
        yield return ("cut-off and protection, with charge left", at => at with { Pack = pack, CutoffV = tool.CutoffV, BrownOutV = tool.BrownOutV });
        yield return ("the controller holds the heat instead of leaving it on", at => at with { Controller = tool.Controller, TargetK = tool.TargetK });
        yield return ("ohms of the heater change as it warms", at => at with { Load = tool.Load });
        yield return (tool.Duty is not null ? "work, pauses and stand-by of the duty" : tool.Work is null ? "the longest time that was asked for" : "the work takes its heat", at => at with { Work = tool.Work, Duty = tool.Duty, MaxS = tool.MaxS });
    }
}
