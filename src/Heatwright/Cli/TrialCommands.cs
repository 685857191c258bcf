using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Heatwright.Cli.Answering;
using Heatwright.Jobs.Trials;
using Heatwright.Quantities;
using Heatwright.Trials;
using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>Bench tests: what there is, how each is done, what its readings tell.</summary>
internal static class TrialCommands
{
    public static Command Trial(Screen screen) => new("trial", "Bench tests of parts. Example: heatwright trial fit cold-ohms --read \"ohms=7.4\" --set leads=0.2") { Kinds(screen), Recipe(screen), Fit(screen), Check(screen), EnterCommands.Add(screen), EnterCommands.Enter(screen), EnterCommands.Set(screen), EnterCommands.List(screen), EnterCommands.Drop(screen) };

    private static Command Kinds(Screen screen)
    {
        var json = Answers.Json<IReadOnlyList<TrialKindView>>();
        var command = new Command("kinds", "Every bench test there is, and what it tells. Example: heatwright trial kinds") { json };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(json))
            {
                Answers.Write(screen, TrialKinds.All.Select(TrialKindView.Of));
                return ExitCodes.Done;
            }

            var table = Answers.Table("kind", "on", "what it tells", "readings");
            foreach (string kind in TrialKinds.All)
            {
                var card = TrialKinds.CardOf(kind)!;
                table.AddRow(new Cell(TrialKinds.Spoken(kind)), new Cell(card.About), new Cell(TrialKinds.Says(kind)), new Cell(string.Join(", ", TrialKinds.Reads(kind))));
            }

            screen.Show(table);
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Recipe(Screen screen)
    {
        var kind = Kind();
        var settings = Settings();
        var sheet = new Option<string?>("--sheet") { Description = "Write a printable reading sheet to this HTML file." };
        var step = new Option<string?>("--card") { Description = "Write a printable step card to this HTML file." };
        var json = Answers.Json<RecipeView>();
        var command = new Command("recipe", "How a bench test is done: connections, ranges, loads, values to expect, when to stop. Example: heatwright trial recipe cold-ohms --set \"label volts=12V\" --set \"label watts=40W\"") { kind, settings, sheet, step, json };
        command.SetAction(parsed => FitTrial.Kind(parsed.GetValue(kind)!).Then(card => TrialReadings.Known(card, parsed.GetValue(settings) ?? []).Map(known => (card, known))) switch
        {
            { IsFine: false } refused => Refused(screen, refused.Problems),
            var fine => Tell(screen, fine.Value.card, parsed.GetValue(kind)!, fine.Value.known, parsed.GetValue(sheet), parsed.GetValue(step), parsed.GetValue(json)),
        });
        return command;
    }

    private static int Tell(Screen screen, TrialCard card, string asked, IReadOnlyDictionary<string, double> known, string? sheet, string? step, bool json)
    {
        var view = RecipeView.Of(card, known) with { Kind = TrialKinds.Named(card, asked) };
        foreach (var (path, html) in new[] { (sheet, (Func<string>)(() => TrialPaper.Sheet(view))), (step, () => TrialPaper.Card(view)) })
        {
            if (path is not null && TrialPaper.Write(path, html()) is { IsFine: false } failed)
            {
                return Refused(screen, failed.Problems);
            }
        }

        if (json)
        {
            Answers.Write(screen, view);
            return ExitCodes.Done;
        }

        screen.Say($"{view.Kind}: {view.Purpose}");
        screen.Say("");
        foreach (string line in view.Recipe.Picture)
        {
            screen.Say(line);
        }

        Lines(screen, "Stop", view.Recipe.Stops);
        Lines(screen, "With one meter", view.Recipe.OneMeter);
        Lines(screen, "With two meters", view.Recipe.TwoMeters);
        Lines(screen, "Ranges", view.Recipe.Ranges);
        Lines(screen, "Loads", view.Recipe.Loads);
        Lines(screen, "Rest", view.Recipe.Rests);
        Lines(screen, "Expect", [.. view.Expected.Select(value => $"{value.Say}: {Display.Significant(value.Value, 3)} {value.Unit}")]);
        Lines(screen, "Read", [.. view.Columns.Select(column => $"{column.Name}{(column.IsWord ? column.Words.Count > 0 ? $" ({string.Join(", ", column.Words)})" : "" : column.Unit.Length > 0 ? $" in {column.Unit}" : "")}: {column.Meaning}{(column.Needed ? "" : " (where taken)")}")]);
        Lines(screen, "Say", [.. view.Settings.Select(setting => $"{setting.Name}{(setting.Unit.Length > 0 ? $" in {setting.Unit}" : "")}: {setting.Meaning}{(setting.Default is { } usual ? string.Create(CultureInfo.InvariantCulture, $" ({usual:0.####} where not said)") : "")}")]);
        foreach (string? path in new[] { sheet, step })
        {
            if (path is not null)
            {
                screen.Say($"Written: {path}");
            }
        }

        return ExitCodes.Done;
    }

    private static void Lines(Screen screen, string title, IReadOnlyList<string> lines)
    {
        if (lines.Count > 0)
        {
            screen.Say("");
            screen.Say(title);
            foreach (string line in lines)
            {
                screen.Say("  " + line);
            }
        }
    }

    private static Command Fit(Screen screen)
    {
        var kind = Kind();
        var words = new WordOptions();
        var json = Answers.Json<TrialView>();
        var (law, result, find) = OwnLaw();
        var command = new Command("fit", "Findings with doubt from the readings of a bench test. Example: heatwright trial fit warm-up --readings warm.csv --set air=24C --meter \"degrees=1%+2degC\"") { kind, law, result, find, json };
        words.AddTo(command);
        command.SetAction(parsed =>
        {
            var answer = parsed.GetValue(law) is { } name ? FitTrial.Own(parsed.GetValue(kind)!, words.Given(parsed), name, parsed.GetValue(result), parsed.GetValue(find)) : FitTrial.Run(parsed.GetValue(kind)!, words.Given(parsed));
            if (!answer.IsFine)
            {
                return Refused(screen, answer.Problems);
            }

            if (parsed.GetValue(json))
            {
                Answers.Write(screen, TrialView.Of(answer.Value));
            }
            else
            {
                Show(screen, answer.Value);
            }

            return ExitCodes.Done;
        });
        return command;
    }

    private static void Show(Screen screen, TrialAnswer answer)
    {
        if (answer.Findings.Count > 0)
        {
            var table = Answers.Table("finding", "value", "19 of 20 lie between", "most of the doubt");
            foreach (var finding in answer.Findings)
            {
                var (low, high) = finding.Middle(0.95);
                string cause = finding.Value.Doubts.Shares() is [var first, ..] ? string.Create(CultureInfo.InvariantCulture, $"{first.Cause.Id}, {100 * first.Share:0} %") : "";
                table.AddRow(new Cell(finding.Name), new Cell(Display.Rounded(finding.Value)), new Cell($"{Display.Value(low, finding.Value.StandardDoubt)} to {Display.Value(high, finding.Value.StandardDoubt)}"), new Cell(cause));
            }

            screen.Show(table);
        }

        foreach (string line in answer.Says)
        {
            screen.Say(line);
        }

        Remarks(screen, answer.Remarks);
        if (answer.Tried.Count > 1)
        {
            screen.Say("Models: " + string.Join("; ", answer.Tried.Select(tried => $"{tried.Name}{(tried.Chosen ? " (chosen)" : "")}, {tried.Why}")) + ".");
        }

        Lines(screen, "Next", answer.Next);
        Lines(screen, "Taken as given", answer.Notes);
    }

    private static void Remarks(Screen screen, IReadOnlyList<TrialRemark> remarks)
    {
        foreach (var remark in remarks.Take(40))
        {
            screen.Say($"  {(remark.Reading > 0 ? FormattableString.Invariant($"reading {remark.Reading}") : "all")} [{remark.Level} {remark.Rule}] {remark.Words} {remark.Remedy}{(remark.LeftOut ? " (left out)" : "")}");
        }

        if (remarks.Count > 40)
        {
            screen.Say($"  and {remarks.Count - 40} more; --json shows all.");
        }
    }

    /// <summary>Options of a maker's own trial.</summary>
    internal static (Option<string?> Law, Option<string?> Result, Option<string?> Find) OwnLaw() => (
        new("--law") { Description = "Your own trial (kind own-line) by a law that 'sum' lists; its inputs and its result name the readings." },
        new("--result") { Description = "With --law: which of its results was read; its first where not said." },
        new("--find") { Description = "With --law: which inputs to find, apart by commas, each with the name it shall have if another: 'cold as ohms, slope'; those neither read nor said where not said." });

    private static Command Check(Screen screen)
    {
        var kind = new Argument<string?>("KIND") { Description = "The kind of bench test; without it, the facts are checked, or all checks listed.", Arity = ArgumentArity.ZeroOrOne };
        var facts = new Option<string[]>("--fact") { Description = "A number to check against the traps of the trade, such as switch-amps=3A." };
        var words = new WordOptions();
        var json = Answers.Json<IReadOnlyList<TrialRemark>>("of readings or facts").Or<IReadOnlyList<RuleView>>("without either: all checks");
        var command = new Command("check", "What the checks say of readings or of plain numbers. Example: heatwright trial check --fact wanted-amps=1A --fact switch-amps=3A --fact volts-in=3.3V --fact volts-out=12V") { kind, facts, json };
        words.AddTo(command);
        command.SetAction(parsed =>
        {
            string? name = parsed.GetValue(kind);
            string[] said = parsed.GetValue(facts) ?? [];
            bool asJson = parsed.GetValue(json);
            if (name is null && said.Length == 0)
            {
                ListRules(screen, asJson);
                return ExitCodes.Done;
            }

            var remarks = name is null ? FitTrial.Traps(said) : FitTrial.Check(name, words.Given(parsed));
            if (!remarks.IsFine)
            {
                return Refused(screen, remarks.Problems);
            }

            if (asJson)
            {
                Answers.Write(screen, remarks.Value);
            }
            else if (remarks.Value.Count == 0)
            {
                screen.Say("Nothing stands out.");
            }
            else
            {
                Remarks(screen, remarks.Value);
            }

            return ExitCodes.Done;
        });
        return command;
    }

    private static void ListRules(Screen screen, bool json)
    {
        if (json)
        {
            Answers.Write(screen, RuleBook.All.Select(RuleView.Of));
            return;
        }

        var table = Answers.Table("id", "level", "what it says", "asks for");
        foreach (var rule in RuleBook.All)
        {
            table.AddRow(new Cell(rule.Id), new Cell(rule.Level), new Cell(rule.Says), new Cell(string.Join(", ", RuleBook.NamesOf(rule.Id).Select(n => n.Replace(' ', '-')))));
        }

        screen.Show(table);
    }

    private static int Refused(Screen screen, IReadOnlyList<Problem> problems)
    {
        screen.Complain(problems);
        return ExitCodes.BadInput;
    }

    private static Argument<string> Kind() => new("KIND") { Description = "The kind of bench test, as 'trial kinds' lists it." };

    private static Option<string[]> Settings() => new("--set") { Description = "What holds for the whole run: air=24C, \"label volts=12V\".", AllowMultipleArgumentsPerToken = true };

    /// <summary>Options that say what was read.</summary>
    private sealed class WordOptions
    {
        private readonly Option<string?> file = new("--readings") { Description = "The readings: a log as loggers write it, or lines of 'volts=3.82 amps=0.41'." };
        private readonly Option<string[]> typed = new("--read") { Description = "One reading, typed: --read \"volts=3.82 amps=0.41\"." };
        private readonly Option<string[]> settings = Settings();
        private readonly Option<string[]> meters = new("--meter") { Description = "What a meter promises: --meter \"volts=0.5%+2d\", exact, or bench:volts=... for one meter behind several columns." };
        private readonly Option<string[]> columns = new("--column") { Description = "Which column of the file is which: --column \"amps=Current 1\"." };
        private readonly LogAnswers answers = LogAnswers.Options();

        public void AddTo(Command command)
        {
            foreach (var option in new Option[] { file, typed, settings, meters, columns }.Concat(answers.All))
            {
                command.Options.Add(option);
            }
        }

        public TrialWords Given(ParseResult parsed) => new(parsed.GetValue(file), parsed.GetValue(typed) ?? [], parsed.GetValue(settings) ?? [], parsed.GetValue(meters) ?? [], parsed.GetValue(columns) ?? [])
        {
            Mapping = answers.Given(parsed) is { IsFine: true } given ? given.Value : null,
        };
    }
}
