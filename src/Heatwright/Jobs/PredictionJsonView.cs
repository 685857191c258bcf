using System.Text.Json.Serialization;

namespace Heatwright.Jobs;

/// <summary>A prediction of one tool as machines read it.</summary>
/// <param name="RunTimeS">How long it runs, seconds.</param>
/// <param name="Events">What happens, in order of time.</param>
/// <param name="EnergiesJ">Energies by where they went, joules.</param>
/// <param name="Quantities">Its numbers.</param>
/// <param name="Notes">What to mind.</param>
/// <param name="Step">The step of the run.</param>
/// <param name="Ladder">From the label's run time to this one, one cause a rung.</param>
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
/// <param name="Name">What happens.</param>
/// <param name="TS">When, seconds from switching on.</param>
/// <param name="Region">State of the circuit there.</param>
public sealed record EventView(string Name, [property: JsonPropertyName("t_s")] double TS, string Region);

/// <summary>One rung from the label's run time to the predicted one.</summary>
/// <param name="Cause">What is taken into account from here on.</param>
/// <param name="RunTimeS">Run time with it, seconds.</param>
/// <param name="ChangeS">What it changed, seconds.</param>
public sealed record RungView(string Cause, [property: JsonPropertyName("runTime_s")] double RunTimeS, [property: JsonPropertyName("change_s")] double ChangeS, string StopReason);

/// <summary>The step, and what halving it last changed.</summary>
/// <param name="StepS">Step of the run, seconds.</param>
/// <param name="RunTimeChangeS">What halving it last changed, seconds.</param>
/// <param name="Settled">True: a smaller step changes nothing that matters.</param>
public sealed record StepView([property: JsonPropertyName("step_s")] double StepS, [property: JsonPropertyName("runTimeChange_s")] double RunTimeChangeS, bool Settled);
