using System.CommandLine;
using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>What one tool will do over one charge.</summary>
internal static class PredictCommand
{
    private const int MostEvents = 25;

    public static Command Predict(Screen screen)
    {
        var file = new Argument<string>("FILE") { Description = "The study file, or a bundle." };
        var arrangement = new Option<string?>("--arrangement") { Description = "Letter or id of an arrangement, or of a plant of which every number is stated; without it, the first." };
        var draws = new Option<string?>("--draws") { Description = "Draws of everything that is in doubt, for ranges; 0 to 100000." };
        var trace = new Option<string?>("--trace") { Description = "Writes every state over time to this CSV." };
        var at = new Option<string?>("--at") { Description = "A CSV whose column t_s holds the instants of the trace." };
        var json = Answers.Json<ToolView>();
        var command = new Command("predict", "What a tool will do over one charge: run time, events, energies. Example: heatwright predict knife.study --arrangement A --trace a.csv") { file, arrangement, draws, trace, at, json };
        command.SetAction((parsed, cancel) =>
        {
            var count = OptionNumbers.Count("--draws", parsed.GetValue(draws), 100_000);
            if (!count.IsFine)
            {
                screen.Complain(count.Problems);
                return Task.FromResult(ExitCodes.BadInput);
            }

            return Task.FromResult(Answer(screen, new(
                parsed.GetValue(file)!, parsed.GetValue(arrangement), count.Value, parsed.GetValue(trace), parsed.GetValue(at), parsed.GetValue(json)), cancel));
        });
        return command;
    }

    private sealed record Asked(string File, string? Arrangement, int Draws, string? Trace, string? At, bool Json);

    private static int Answer(Screen screen, Asked asked, CancellationToken cancel)
    {
        if (asked.At is not null && asked.Trace is null)
        {
            screen.Complain([new Problem("Instants are given, and no file for the trace.", "--at", asked.At, "--trace FILE beside it", "Say with --trace where the trace goes.")]);
            return ExitCodes.BadInput;
        }

        var instants = asked.At is not null ? ToolTrace.Instants(asked.At).Map<double[]?>(found => found) : new Checked<double[]?>((double[]?)(asked.Trace is not null ? [] : null));
        var predicted = instants.Then(found => Read(asked.File).Then(study =>
        {
            screen.Progress(asked.Draws > 0 ? FormattableString.Invariant($"Predicting {asked.Arrangement ?? "the first arrangement"} over a whole charge, {asked.Draws} draws") : $"Predicting {asked.Arrangement ?? "the first arrangement"} over a whole charge");
            return PredictTool.Run(study, asked.Arrangement, asked.Draws, found, cancel);
        }));
        if (!predicted.IsFine)
        {
            screen.Complain(predicted.Problems);
            return ExitCodes.BadInput;
        }

        if (asked.Trace is not null && ToolTrace.Write(predicted.Value, asked.Trace) is { IsFine: false } failed)
        {
            screen.Complain(failed.Problems);
            return ExitCodes.BadInput;
        }

        if (asked.Json)
        {
            Answers.Write(screen, ToolView.Of(predicted.Value));
        }
        else
        {
            Show(screen, ToolView.Of(predicted.Value), asked.Trace);
        }

        return ExitCodes.Done;
    }

    private static Checked<Study> Read(string path) => Directory.Exists(path) || path.EndsWith(".zip", StringComparison.OrdinalIgnoreCase)
        ? Bundle.Read(path)
        : OpenStudy.Read(path).Map(opened => opened.Study);

    private static void ShowLadder(Screen screen, IReadOnlyList<RungView> ladder)
    {
        if (ladder.Count == 0)
        {
            return;
        }

        screen.Say("From the label to the stopwatch, one cause a line:");
        var table = Answers.Table("min", "change", "with", "until");
        table.Columns[0].RightAligned();
        table.Columns[1].RightAligned();
        foreach (var rung in ladder)
        {
            string change = rung == ladder[0] ? "" : RunWords.Number(rung.ChangeS / 60, "+0.0;−0.0;0.0");
            table.Row(RunWords.Number(rung.RunTimeS / 60, "0.0"), change, rung.Cause, rung.StopReason);
        }

        screen.Show(table);
    }

    private static void ShowWorst(Screen screen, IReadOnlyList<WorstCaseView> cases)
    {
        if (cases.Count == 0)
        {
            return;
        }

        screen.Say("One thing at its worst, all else in the middle:");
        var table = Answers.Table("case", "runs, min", "hottest, °C", "the brief", "what differs");
        foreach (var one in cases)
        {
            table.AddRow(new Cell(one.Name), new Cell(RunWords.Number(one.RunTimeS / 60, "0.0")), new Cell(RunWords.Number(one.HottestC, "0")),
                new Cell(one.Standing()), new Cell(one.Changed));
        }

        screen.Show(table);
    }

    private static void Show(Screen screen, ToolView view, string? trace)
    {
        screen.Say($"{view.Arrangement}, {view.Name}: it runs {RunWords.Time(view.RunTimeS)}, then {view.Because}");
        foreach (string note in view.Notes)
        {
            screen.Say(note);
        }

        var table = Answers.Table("quantity", "value", "90 of 100 draws");
        foreach (var line in view.Quantities)
        {
            // Thousands of seconds are no time that one reads; --json keeps them.
            var (factor, unit) = line.Unit == "s" ? RunWords.TimeScale(line.Value ?? 0) : (1, line.Unit);
            string places = factor > 60 ? "0.00" : "0.#";
            string value = line.Value is { } number ? $"{RunWords.Number(number / factor, factor == 1 ? "0.###" : places)} {unit}".TrimEnd() : "never";
            string range = line.Low is { } low ? $"{RunWords.Number(low / factor, places)} to {(line.High is { } high ? RunWords.Number(high / factor, places) : "never")}" : "";
            table.AddRow(new Cell(line.Name), new Cell(value), new Cell(range));
        }

        foreach (var (name, joule) in view.EnergiesJ)
        {
            table.AddRow(new Cell($"energy, {name}"), new Cell($"{RunWords.Number(joule, "0.0")} J"), new Cell(""));
        }

        screen.Show(table);
        foreach (var happened in view.Events.Take(MostEvents))
        {
            screen.Say($"  {RunWords.Instant(happened.TS),11}  {happened.Name}");
        }

        if (view.Events.Count > MostEvents)
        {
            screen.Say($"  and {view.Events.Count - MostEvents} more; --json shows all.");
        }

        ShowLadder(screen, view.Ladder);
        ShowWorst(screen, view.WorstCases);
        if (trace is not null)
        {
            screen.Say($"Trace: {trace}");
        }
    }
}
