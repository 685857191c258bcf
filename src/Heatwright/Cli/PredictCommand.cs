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

    /// <summary>A middle value that is believed to a few of a hundred is read to so many digits.</summary>
    private const int Digits = 4;

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

    /// <summary>Each event once: what comes again with every piece of work is counted beside its first time.</summary>
    private static void ShowEvents(Screen screen, IReadOnlyList<EventView> events)
    {
        EventView[][] kinds = [.. events.GroupBy(one => one.Name).Select(kind => kind.ToArray())];
        foreach (var kind in kinds.Take(MostEvents))
        {
            string again = kind.Length > 1 ? $" ({RunWords.Number(kind.Length, "0")} times, the last at {RunWords.Instant(kind[^1].TS)})" : "";
            screen.Say($"  {RunWords.Instant(kind[0].TS),11}  {RunWords.Spoken(kind[0].Name)}{again}");
        }

        if (kinds.Length > MostEvents)
        {
            screen.Say($"  and {RunWords.Number(kinds.Length - MostEvents, "0")} more kinds of them.");
        }

        if (events.Count > kinds.Length)
        {
            screen.Say("  --json shows every single one.");
        }
    }

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

    /// <summary>How much of a unit a maker's unit is, and its name: thousands of seconds, coulombs and joules are minutes, ampere-hours and watt-hours; --json keeps them.</summary>
    private static (double Factor, string Unit) Read(string unit, double value) => unit switch
    {
        "s" => RunWords.TimeScale(value),
        "C" when Math.Abs(value) >= 36 => (3600, "Ah"),
        "J" when Math.Abs(value) >= 3600 => (3600, "Wh"),
        _ => (1, unit),
    };

    private static void Show(Screen screen, ToolView view, string? trace)
    {
        screen.Say($"{view.Arrangement}, {view.Name}: it runs {RunWords.Time(view.RunTimeS)}, then {view.Because}");
        foreach (string note in view.Notes)
        {
            screen.Say(note);
        }

        bool drawn = view.Quantities.Any(line => line.Low is not null);
        var table = Answers.Table(drawn ? ["quantity", "value", "90 of 100 draws"] : ["quantity", "value"]);
        foreach (var line in view.Quantities)
        {
            var (factor, unit) = line.Name == ToolPrediction.ChargeLeft ? (0.01, "%") : Read(line.Unit, line.Value ?? 0);
            string Shown(double? number) => number is not { } some ? "never" : unit.Length == 0 && some == Math.Floor(some) ? RunWords.Number(some, "0") : Display.Significant(some / factor, Digits); // pieces are counted
            string value = line.Value is null ? "never" : $"{Shown(line.Value)} {unit}".TrimEnd();
            table.Row(drawn ? [line.Name, value, line.Low is null ? "" : $"{Shown(line.Low)} to {Shown(line.High)}"] : [line.Name, value]);
        }

        // All energies in one unit, that of the largest: they are set side by side.
        var (joules, energy) = Read("J", view.EnergiesJ.Values.Select(Math.Abs).DefaultIfEmpty(0).Max());
        foreach (var (name, joule) in view.EnergiesJ.Where(one => one.Value != 0))
        {
            table.Row(drawn ? [$"energy, {name}", $"{Display.Significant(joule / joules, Digits)} {energy}", ""] : [$"energy, {name}", $"{Display.Significant(joule / joules, Digits)} {energy}"]);
        }

        screen.Show(table);
        ShowEvents(screen, view.Events);

        ShowLadder(screen, view.Ladder);
        ShowWorst(screen, view.WorstCases);
        if (trace is not null)
        {
            screen.Say($"Trace: {trace}");
        }
    }
}
