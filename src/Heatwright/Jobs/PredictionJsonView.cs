using System.Text.Json.Serialization;

namespace Heatwright.Jobs;

/// <summary>A prediction of one tool as machines read it.</summary>
public sealed record ToolView(string Arrangement, string Name, [property: JsonPropertyName("runTime_s")] double RunTimeS, string StopReason, string Because, IReadOnlyList<EventView> Events,
    [property: JsonPropertyName("energies_J")] IReadOnlyDictionary<string, double> EnergiesJ, IReadOnlyList<ToolQuantity> Quantities, IReadOnlyList<string> Notes, StepView Step, IReadOnlyList<RungView> Ladder)
{
    /// <summary>The view of a prediction.</summary>
    public static ToolView Of(ToolPrediction of)
    {
        var (run, energies) = (of.Run, of.Run.Energies);
        return new(of.Letter, of.Name, run.RunTimeS, RunWords.Of(run.Stop), RunWords.Because(of),
            [.. run.Events.Select(happened => new EventView(RunWords.Of(happened, run.Stop), happened.AtS, RunWords.Of(happened.Region)))],
            new Dictionary<string, double>
            {
                ["heater"] = energies.LoadJ,
                ["light"] = energies.LightJ,
                ["pack terminals"] = energies.TerminalJ,
                ["pack behind its ohms"] = energies.BehindOhmsJ,
                ["lost in cells"] = energies.CellLossJ,
                ["lost in loop"] = energies.LoopLossJ,
                ["lost in path"] = energies.PathLossJ,
                ["drains"] = energies.DrainJ,
                ["work"] = energies.WorkJ,
                ["air"] = energies.AirJ,
                ["stored"] = energies.StoredJ,
            },
            [.. of.Quantities()], [.. of.Notes()], new(of.StepS, of.StepDoubtS, of.Settled),
            [.. of.Ladder.Select(rung => new RungView(rung.Cause, rung.RunTimeS, rung.ChangeS, RunWords.Of(rung.Stop)))]);
    }
}

/// <summary>One event.</summary>
public sealed record EventView(string Name, [property: JsonPropertyName("t_s")] double TS, string Region);

/// <summary>One rung from the label's run time to the predicted one.</summary>
public sealed record RungView(string Cause, [property: JsonPropertyName("runTime_s")] double RunTimeS, [property: JsonPropertyName("change_s")] double ChangeS, string StopReason);

/// <summary>The step, and what halving it last changed.</summary>
public sealed record StepView([property: JsonPropertyName("step_s")] double StepS, [property: JsonPropertyName("runTimeChange_s")] double RunTimeChangeS, bool Settled);
