using System.CommandLine;
using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Cli;

/// <summary>The command that tries an arrangement with some of its values otherwise.</summary>
internal static class TryCommand
{
    private const int MostDraws = 20_000;

    public static Command Try(Screen screen)
    {
        var (file, letter, json) = (Answers.StudyFile(), new Argument<string>("ARRANGEMENT") { Description = "Its letter." }, Answers.Json<IReadOnlyList<DialView>>("without --set").Or<TriedView>("with --set"));
        var set = new Option<string[]>("--set") { Description = "name=value, each: \"leads ohms=20m\", series=2, step-up=none, target=340C. Without it, all that can be tried is listed.", AllowMultipleArgumentsPerToken = true };
        var draws = new Option<string?>("--draws") { Description = "Draws of all causes, for odds and verdict; without it only the middle run." };
        var keep = new Option<bool>("--keep") { Description = "Keep it: a clone of the arrangement with the change; values of the brief change for all arrangements. 'heatwright undo' takes it back." };
        var called = new Option<string?>("--name") { Description = "What you call the clone." };
        var command = new Command("try", "Tries an arrangement with some of its values otherwise, and shows what that does, before and after; nothing is written without --keep. Example: heatwright try knife.study A --set \"leads ohms=20m\" series=2")
        { file, letter, set, draws, keep, called, json };
        command.SetAction((parsed, cancel) => Task.FromResult(Run(screen, parsed.GetValue(file)!, parsed.GetValue(letter)!, parsed.GetValue(set) ?? [], parsed.GetValue(draws), parsed.GetValue(keep), parsed.GetValue(called), parsed.GetValue(json), cancel)));
        return command;
    }

    private static int Run(Screen screen, string path, string letter, string[] set, string? draws, bool keep, string? called, bool json, CancellationToken cancel)
    {
        var opened = OpenStudy.Read(path);
        var typed = opened.Then(_ => Typed(set));
        var count = typed.Then(_ => OptionNumbers.Count("--draws", draws, MostDraws));
        if (!count.IsFine || (opened.IsFine && Contradictions.Of(opened.Value.Study) is { Count: > 0 }))
        {
            screen.Complain(count.IsFine ? Contradictions.Of(opened.Value.Study) : count.Problems);
            return count.IsFine ? ExitCodes.Contradiction : ExitCodes.BadInput;
        }

        var study = opened.Value.Study;
        var shelf = LoopView.Bench(study);
        if (typed.Value.Count == 0)
        {
            return Answers.Give(screen, WireTool.Found(study, letter).Map(one => Dials.Of(study, shelf, one)), json, dials => dials.Select(DialView.Of), dials => List(screen, dials));
        }

        var view = Tried.Of(study, shelf, letter, typed.Value, cancel: cancel).Then(tried =>
        {
            bool drawn = count.Value > 0 && tried.Was.Run is not null && tried.Is.Run is not null;
            if (drawn)
            {
                screen.Progress($"Taking {count.Value.ToString(CultureInfo.InvariantCulture)} draws as it is, and as it is tried");
            }

            var was = drawn ? tried.Was.Drawn(opened.Value.Fingerprint, count.Value, cancel: cancel) : null;
            var verdict = drawn ? tried.Is.Drawn(opened.Value.Fingerprint, count.Value, cancel: cancel) : null;
            return !keep ? new Checked<TriedView>(TriedView.Of(tried, was, verdict))
                : TryChange.Keep(path, letter, typed.Value, called).Map(kept => TriedView.Of(tried, was, verdict, kept.ChangesArrangement ? kept.Arrangement.Letter : "brief"));
        });
        return Answers.Give(screen, view, json, found => found, found => Show(screen, found));
    }

    private static Checked<IReadOnlyList<KeyValuePair<string, string>>> Typed(string[] set)
    {
        string? odd = set.FirstOrDefault(word => word.IndexOf('=', StringComparison.Ordinal) < 1);
        return odd is not null
            ? new(new Problem("A value needs its name.", "--set", odd, "name=value", "Type it as --set \"leads ohms=20m\"."))
            : new([.. set.Select(word => word.Split('=', 2)).Select(pair => KeyValuePair.Create(pair[0].Trim(), pair[1].Trim()))]);
    }

    private static void List(Screen screen, IReadOnlyList<Dial> dials)
    {
        foreach (var group in dials.GroupBy(dial => dial.Group))
        {
            screen.Say(group.Key);
            var table = Answers.Table("name", "now", "what");
            foreach (var dial in group)
            {
                table.Row(dial.Name, dial.Was, dial.Kind == DialKind.Choice ? $"{dial.Words}: {string.Join(", ", dial.Choices.Select(choice => choice.Typed))}" : dial.Words);
            }

            screen.Show(table);
        }
    }

    private static void Show(Screen screen, TriedView view)
    {
        screen.Say($"{view.Arrangement} with {string.Join("; ", view.Values.Select(value => $"{value.Words} {value.Is} (was {value.Was})"))}");
        foreach (string problem in view.Problems)
        {
            screen.Say($"  {problem}");
        }

        bool drawn = view.Draws > 0;
        var lines = drawn ? Answers.Table("line of the brief", "limit", "as it is", "as tried", "", "odds as it is", "odds as tried") : Answers.Table("line of the brief", "limit", "as it is", "as tried", "");
        foreach (var line in view.Lines)
        {
            string[] cells = [line.Text, $"{(line.AtMost ? "≤" : "≥")} {Number(line.Limit, line.Unit)}", Number(line.Was, line.Unit), Number(line.Is, line.Unit), Turned(line)];
            lines.Row(drawn ? [.. cells, Odds(line.ProbabilityWas), Odds(line.Probability)] : cells);
        }

        screen.Show(lines);
        var numbers = Answers.Table("middle run and loop", "as it is", "as tried");
        foreach (var number in view.Numbers)
        {
            numbers.Row(number.Name, Number(number.Was, number.Unit), Number(number.Is, number.Unit));
        }

        screen.Show(numbers);
        if (drawn)
        {
            screen.Say($"  {view.Draws} draws: {view.VerdictWas} as it is, {view.Verdict} as tried: {view.Because}");
        }

        screen.Say(view.KeptAs is null ? "  Nothing is written; --keep keeps it." : view.KeptAs == "brief" ? "  Kept in the brief; 'heatwright undo' takes it back." : $"  Kept as {view.KeptAs}; 'heatwright undo' takes it back.");
    }

    private static string Turned(TriedLineView line) => (line.KeptWas, line.Kept) switch
    {
        (false, true) => "now kept",
        (true, false) => "now missed",
        (_, true) => "kept",
        (_, false) => "missed",
        _ => "not known",
    };

    private static string Odds(double? probability) => probability is { } share ? $"{Math.Round(100 * share).ToString(CultureInfo.InvariantCulture)} of 100" : "—";

    private static string Number(double? value, string unit) => value is { } number ? unit == "s" ? RunWords.Time(number) : Display.Significant(number, 4) + (unit.Length > 0 && unit != "money" ? $" {unit}" : "") : "—";
}
