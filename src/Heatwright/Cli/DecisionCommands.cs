using System.CommandLine;
using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>The dated choice, and the prototype beside what was predicted for it.</summary>
internal static class DecisionCommands
{
    public static Command Decide(Screen screen)
    {
        var file = Answers.StudyFile();
        var letter = new Argument<string?>("ARRANGEMENT") { Description = "Letter or id of the chosen arrangement; without it, the last decision is shown with what speaks against it now.", Arity = ArgumentArity.ZeroOrOne };
        var because = new Option<string>("--because") { Description = "Why this one.", DefaultValueFactory = _ => "" };
        var accept = new Option<string[]>("--accept") { Description = "A requirement that is missed and why that is acceptable: 'pieces=12 cuts are enough'. Several may follow.", DefaultValueFactory = _ => [], AllowMultipleArgumentsPerToken = true };
        var on = On();
        var json = Answers.Json<DecisionView>();
        var command = new Command("decide", "Freezes the choice with its numbers, what was rejected, what would change our mind and what was not tested. Example: heatwright decide knife.study A --because 'fastest, and the parts are here'") { file, letter, because, accept, on, json };
        command.SetAction(parsed => VerdictCommands.WorkedOut(screen, parsed.GetValue(file)!, result => VerdictCommands.Answer(screen,
            parsed.GetValue(letter) is { } chosen ? DecideTool.Make(parsed.GetValue(file)!, result, chosen, parsed.GetValue(because)!, parsed.GetValue(accept)!, Day(parsed.GetValue(on))) : DecideTool.Last(result),
            parsed.GetValue(json), view => Card(screen, view))));
        return command;
    }

    public static Command Check(Screen screen)
    {
        var file = Answers.StudyFile();
        var read = new Option<string[]>("--read") { Description = "What the prototype did: 'ready=27.1 s ± 0.3 s'. Once for each requirement; without a doubt its last digit is taken for one.", DefaultValueFactory = _ => [] };
        var on = On();
        var json = Answers.Json<CheckView>();
        var command = new Command("check", "The prototype beside the frozen prediction: kept, missed, not tested, and what would explain it. Example: heatwright check knife.study --read 'ready=27.1 s ± 0.3 s'") { file, read, on, json };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file)!;
            var taken = parsed.GetValue(read) is { Length: > 0 } texts ? DecideTool.Read(path, texts, Day(parsed.GetValue(on))) : new((IReadOnlyList<string>)[]);
            if (!taken.IsFine)
            {
                screen.Complain(taken.Problems);
                return ExitCodes.BadInput;
            }

            return VerdictCommands.WorkedOut(screen, path, result => VerdictCommands.Answer(screen, DecideTool.Check(result), parsed.GetValue(json), view =>
            {
                taken.Value.ToList().ForEach(note => screen.Hang("", note));
                Prototype(screen, view);
            }));
        });
        return command;
    }

    private static Option<string?> On() => new("--on") { Description = "Date, year-month-day; without it, today." };

    private static string Day(string? typed) => typed ?? DayWords.Today;

    private static void Card(Screen screen, DecisionView view)
    {
        if (view.FirstLine.Length > 0)
        {
            screen.Say(view.FirstLine);
            screen.Say("");
        }

        foreach (string flag in view.Flags)
        {
            screen.Say($"Against it now: {flag}");
        }

        screen.Say($"{view.On}  {(view.Letter.Length > 0 ? $"{view.Letter}, " : "")}{view.Name}: {view.Verdict}, because {view.Because}");
        foreach (var line in view.Lines)
        {
            screen.Say($"   {line.Requirement}: {(line.Value is { } value ? $"{Display.Significant(value, 4)}{Display.Behind(line.Unit)}" : "not known")}, limit {RunWords.Number(line.Limit, "0.###")}{Display.Behind(line.Unit)}, {line.Verdict}");
        }

        foreach (var one in view.Accepted)
        {
            screen.Say($"   accepted as missed, {one.Requirement}: {one.Reason}; from this day on it is a want, for every arrangement");
        }

        foreach (var one in view.Rejected)
        {
            screen.Say($"   rejected, {one.Name} ({one.Verdict}): {one.Because}");
        }

        List(screen, "would change our mind", view.WouldChangeOurMind);
        List(screen, "open risk", view.OpenRisks);
        List(screen, "not tested", view.NotTested);
    }

    private static void List(Screen screen, string what, IReadOnlyList<string> lines)
    {
        foreach (string line in lines)
        {
            screen.Say($"   {what}: {line}");
        }
    }

    private static void Prototype(Screen screen, CheckView view)
    {
        if (view.FirstLine.Length > 0)
        {
            screen.Say(view.FirstLine);
        }

        screen.Say(view.Sentence);
        var table = Answers.Table("promise", "read", "predicted", "promise kept");
        foreach (var line in view.Lines)
        {
            table.AddRow(new Cell(line.Requirement), new Cell(Shown(line.Read, line.PlusMinus, line.Unit)), new Cell(Shown(line.Predicted, line.PredictedDoubt, line.Unit)), new Cell(line.Promise));
        }

        screen.Show(table);
        foreach (var line in view.Lines.Where(line => line.Above.Length > 0))
        {
            screen.Say($"{line.Requirement}: {line.Above}.");
        }

        foreach (string culprit in view.Culprits.Skip(1).Take(3))
        {
            screen.Say($"Or: {culprit}");
        }
    }

    private static string Shown(double? value, double? doubt, string unit) =>
        value is { } number ? Display.Rounded(number, doubt ?? 0, Quantities.Units.Find(unit) ?? Quantities.Units.One) : "";
}
