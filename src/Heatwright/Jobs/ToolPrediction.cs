using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>What one tool will do over one charge.</summary>
/// <param name="Letter">Letter of the arrangement or plant.</param>
/// <param name="Name">Its name.</param>
/// <param name="Tool">The bare plant.</param>
/// <param name="Run">The run.</param>
/// <param name="Draws">What each draw did; empty: none were asked for.</param>
public sealed record ToolPrediction(string Letter, string Name, AssembledTool Tool, PlantRun Run, IReadOnlyList<Outcome> Draws)
{
    /// <summary>From the label's run time to the predicted one, one cause a rung; empty: no part of it has a label.</summary>
    public IReadOnlyList<Rung> Ladder { get; init; } = [];

    /// <summary>What a bad day does to it; empty: every number of it is stated.</summary>
    public IReadOnlyList<WorstCase> WorstCases { get; init; } = [];

    /// <summary>Step that was short enough, s.</summary>
    public double StepS { get; init; }

    /// <summary>By how much the last halving moved the run time, s.</summary>
    public double StepDoubtS { get; init; }

    /// <summary>False: halving the step still moved the result; the numbers are doubtful.</summary>
    public bool Settled { get; init; } = true;

    /// <summary>Pieces of work that were asked for; null: as many as the charge holds.</summary>
    public int? AskedPieces { get; init; }

    /// <summary>Name of the charge that is left: a share of one.</summary>
    internal const string ChargeLeft = "charge left";

    /// <summary>What a maker must know that no number says.</summary>
    public IEnumerable<string> Notes()
    {
        if (!double.IsNaN(Tool.TargetK) && double.IsNaN(Run.TargetS))
        {
            string hottest = RunWords.Number(Run.HighestK[Tool.Network.WorkingNode] - 273.15, "0.0");
            yield return $"The {Tool.Network.Nodes[Tool.Network.WorkingNode].Name} never reaches {RunWords.Number(Tool.TargetK - 273.15, "0.#")} °C; {hottest} °C is its hottest.";
        }

        if (Run.RunTimeS == 0)
        {
            yield return $"It cannot start: {RunWords.Because(this)}";
        }

        if (AskedPieces is { } asked && Run.WorkDone < asked)
        {
            yield return $"Of {RunWords.Number(asked, "0")} pieces of work {RunWords.Number(Run.WorkDone, "0")} are done before it ends.";
        }

        if (Run.Stop == StopReason.LockedOut)
        {
            yield return "From there on the module switches itself off and on again; what it gives on average is unknown.";
        }

        if (Run.Stop == StopReason.BrownOut)
        {
            yield return "From there on the controller resets, starts and resets again; what it gives on average is unknown.";
        }

        if (!Settled)
        {
            yield return $"Halving the step to {RunWords.Number(StepS, "0.######")} s still moved the run time by {RunWords.Number(StepDoubtS, "G3")} s: take the numbers with that doubt.";
        }
    }

    /// <summary>The numbers of the run, with the range of 90 of 100 draws where draws were asked for.</summary>
    public IEnumerable<ToolQuantity> Quantities()
    {
        var run = Run;
        double? ready = double.IsNaN(run.TargetS) ? null : run.TargetS;
        yield return Ranged("run time", run.RunTimeS, "s", draw => draw.RunTimeS);
        if (Tool.Load is LoadModel.Lamp)
        {
            yield return Ranged("full light time", run.FullLightS, "s", draw => draw.FullLightS);
        }
        else
        {
            yield return Ranged("warm-up time", ready, "s", draw => draw.WarmUpS);
            yield return Ranged("pieces of work in a row", run.WorkDoneInARow, "", draw => draw.Pieces);
            yield return new("pieces of work", run.WorkDone, "");
        }

        yield return new(ChargeLeft, run.ChargeLeft < 1e-9 ? 0 : run.ChargeLeft, "");
        yield return new("charge drawn", run.Energies.ChargeC, "C");
        yield return new("lowest pack volts under load", Finite(run.LowestV), "V");
        yield return new("highest pack current", run.HighestA, "A");
        for (int i = 0; i < run.HighestK.Count; i++)
        {
            yield return new($"highest {Tool.Network.Nodes[i].Name}", run.HighestK[i] - 273.15, "°C");
        }

        if (run.LowestAtWorkK.Count > 0)
        {
            yield return new("lowest working end at work", run.LowestAtWorkK.Min() - 273.15, "°C");
        }
    }

    private ToolQuantity Ranged(string name, double? value, string unit, Func<Outcome, double> of)
    {
        if (Draws.Count == 0)
        {
            return new(name, value, unit);
        }

        double[] drawn = [.. Draws.Select(of).Order()];
        return new(name, value, unit) { Low = Finite(drawn[(int)(0.05 * (drawn.Length - 1))]), High = Finite(drawn[(int)Math.Ceiling(0.95 * (drawn.Length - 1))]) };
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}

/// <summary>One number of a prediction; null: there is none, which a note explains.</summary>
public sealed record ToolQuantity(string Name, double? Value, string Unit)
{
    /// <summary>5 of 100 draws lie below; null: no draws, or never.</summary>
    public double? Low { get; init; }

    /// <summary>5 of 100 draws lie above; null: no draws, or never.</summary>
    public double? High { get; init; }
}
