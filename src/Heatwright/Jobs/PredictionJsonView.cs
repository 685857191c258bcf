using System.Text.Json.Serialization;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>A prediction of one tool as machines read it.</summary>
/// <param name="RunTimeS">How long it runs, seconds.</param>
/// <param name="Events">What happens, in order of time.</param>
/// <param name="EnergiesJ">Energies by where they went, joules.</param>
/// <param name="Quantities">Its numbers.</param>
/// <param name="Notes">What to mind.</param>
/// <param name="Step">The step of the run.</param>
/// <param name="Ladder">From the label's run time to this one, one cause a rung.</param>
/// <param name="WorstCases">What a bad day does, the middle run first; empty for a plant of which every number is stated.</param>
public sealed record ToolView(string Arrangement, string Name, [property: JsonPropertyName("runTime_s")] double RunTimeS, string StopReason, string Because, IReadOnlyList<EventView> Events,
    [property: JsonPropertyName("energies_J")] IReadOnlyDictionary<string, double> EnergiesJ, IReadOnlyList<ToolQuantity> Quantities, IReadOnlyList<string> Notes, StepView Step, IReadOnlyList<RungView> Ladder,
    IReadOnlyList<WorstCaseView> WorstCases)
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
                ["out of the cells"] = energies.OutOfCellsJ,
                ["lost in loop"] = energies.LoopLossJ,
                ["lost in path"] = energies.PathLossJ,
                ["drains"] = energies.DrainJ,
                ["work"] = energies.WorkJ,
                ["air"] = energies.AirJ,
                ["stored"] = energies.StoredJ,
            },
            [.. of.Quantities()], [.. of.Notes()], new(of.StepS, of.StepDoubtS, of.Settled),
            [.. of.Ladder.Select(rung => new RungView(rung.Cause, rung.RunTimeS, rung.ChangeS, RunWords.Of(rung.Stop)))],
            [.. of.WorstCases.Select(WorstCaseView.Of)]);
    }
}

/// <summary>What a tool does with one thing at its worst, all else in the middle.</summary>
/// <param name="Name">Which case.</param>
/// <param name="Changed">What differs from the middle run.</param>
/// <param name="RunTimeS">How long it runs, seconds.</param>
/// <param name="WarmUpS">Time to the target, seconds; null: never, or it has none.</param>
/// <param name="HottestC">Hottest that the working end gets, °C.</param>
/// <param name="GripC">Hottest that the grip gets, °C.</param>
/// <param name="CellsC">Hottest that the cells get, °C.</param>
/// <param name="Lines">How many lines of the brief speak of it.</param>
/// <param name="Missed">Those that it does not keep, each with what it reaches.</param>
public sealed record WorstCaseView(string Name, string Changed, [property: JsonPropertyName("runTime_s")] double RunTimeS, [property: JsonPropertyName("warmUp_s")] double? WarmUpS,
    [property: JsonPropertyName("hottest_C")] double HottestC, [property: JsonPropertyName("grip_C")] double GripC, [property: JsonPropertyName("cells_C")] double CellsC,
    string StopReason, int Lines, IReadOnlyList<string> Missed)
{
    /// <summary>What to know of all cases, for the page and the report.</summary>
    public const string Mind = "A low sample has a part's numbers at the ends of what is believed of them (19 in 20). Below 10 °C cells lose more than is reckoned here.";

    /// <summary>The view of a case.</summary>
    public static WorstCaseView Of(WorstCase of) => new(of.Name, of.Changed, of.Outcome.RunTimeS, double.IsFinite(of.Outcome.WarmUpS) ? of.Outcome.WarmUpS : null,
        of.Outcome.HottestC, of.Outcome.GripC, of.Outcome.CellC, RunWords.Of(of.Outcome.Stop), of.Lines.Count, [.. of.Missed.Select(Say)]);

    /// <summary>How it stands to the brief, in words.</summary>
    public string Standing() => Lines == 0 ? "no line speaks of it" : Missed.Count == 0 ? HeatAlone ? "what is asked of heat and amps is kept" : "kept" : "missed: " + string.Join("; ", Missed);

    // A tool that is stuck on does no work: its run time is no promise, and is not held against the brief.
    private bool HeatAlone => Name == Safety.SingleFaults.StuckOn;

    /// <summary>A line that is not kept, and what it reaches.</summary>
    public static string Say(MiddleLine line) => $"{line.Requirement.Text.TrimEnd('.')} ({line.Shown})";
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
