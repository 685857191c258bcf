using System.CommandLine;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Cli;

/// <summary>From predictions to a choice: brief, compare, why, next, search.</summary>
internal static class VerdictCommands
{
    public static Command Brief(Screen screen)
    {
        var file = Answers.StudyFile();
        var say = new Option<string?>("--say") { Description = "Shows what a sentence means, without keeping it." };
        var add = new Option<string?>("--add") { Description = "Puts a sentence into the brief." };
        var set = new Option<string[]>("--set") { Description = $"States the work: {string.Join(", ", EditBrief.Known(null).Select(field => $"{field.Name} ({field.Says})"))}. Each as name=value: every=40s need=45J±10J.", AllowMultipleArgumentsPerToken = true };
        var drop = new Option<string?>("--drop") { Description = "Takes a line out, by the short name that --json shows." };
        var json = Answers.Json<BriefView>("of the whole brief").Or<PromiseView>("of one sentence: with --say, --add or --drop").Or<Brief>("with --set");
        var command = new Command("brief", "What the tool must do, and what physics alone asks for it. Example: heatwright brief knife.study --add 'grip at most 43 °C, held longer than 10 min'") { file, say, add, set, drop, json };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file)!;
            if (parsed.GetValue(add) is { } sentence)
            {
                return Answer(screen, ReadBrief.Add(path, sentence), parsed.GetValue(json), added => VerdictTables.Promise(screen, added, "Added", sentence, ReadBrief.Beside(added) is { } other ? $"'{other}' of the same kind stands beside it in the brief. If this one is to take its place: heatwright brief {path} --drop {other}" : ""));
            }

            if (parsed.GetValue(set) is { Length: > 0 } words)
            {
                return Answer(screen, EditBrief.Set(path, words), parsed.GetValue(json), brief => EditBrief.Known(brief).Where(field => words.Any(word => word.StartsWith(field.Name + "=", StringComparison.Ordinal))).ToList().ForEach(field => screen.Say($"{field.Name} {field.Now}: {field.Says}")));
            }

            if (parsed.GetValue(drop) is { } line)
            {
                return Answer(screen, EditBrief.Drop(path, line).Map(done => PromiseView.Of(done.Before.Brief!.Requirements.First(one => one.Id == line), done.Before.Brief)), parsed.GetValue(json), dropped => screen.Say($"Taken out: {dropped.Sentence}."));
            }

            return parsed.GetValue(say) is { } said
                ? Answer(screen, OpenStudy.Read(path).Then(opened => ReadBrief.Say(said, opened.Study)), parsed.GetValue(json), promise => VerdictTables.Promise(screen, promise, "Read", said))
                : Answer(screen, OpenStudy.Read(path).Then(opened => ReadBrief.Of(opened.Study)), parsed.GetValue(json), view => VerdictTables.Brief(screen, view));
        });
        return command;
    }

    public static Command Compare(Screen screen)
    {
        var file = Answers.StudyFile();
        var json = Answers.Json<ComparisonView>();
        var to = new Option<string?>("--to") { Description = "Writes the comparison to this file: .md, .csv or .svg by its ending." };
        var command = new Command("compare", "Arrangements side by side against the brief: hard limits first, then weighted wants. Example: heatwright compare knife.study --to table.md") { file, to, json };
        command.SetAction(parsed => WorkedOut(screen, parsed.GetValue(file)!, result =>
        {
            var comparison = Comparison.Of(result.Study.Brief!, result.Verdicts, result.Shelf, result.Tools);
            var written = parsed.GetValue(to) is { } path ? WriteComparison.To(path, comparison) : null;
            if (written is { IsFine: false })
            {
                screen.Complain(written.Problems);
                return ExitCodes.BadInput;
            }

            return Answer(screen, new Checked<ComparisonView>(ComparisonView.Of(comparison)), parsed.GetValue(json), view => VerdictTables.Comparison(screen, view, written?.Value));
        }));
        return command;
    }

    public static Command Why(Screen screen)
    {
        var file = Answers.StudyFile();
        var letter = new Argument<string>("ARRANGEMENT") { Description = "Letter or id of the arrangement." };
        var matters = new Option<string?>("--matters") { Description = "Also tells where the doubt comes from, with so many draws; 128 will do. Takes about eleven times as many runs." };
        var json = Answers.Json<WhyView>();
        var command = new Command("why", "Why an arrangement stands as it does: what limits it, what would have to be true, what it rests on. Example: heatwright why knife.study B --matters 128") { file, letter, matters, json };
        command.SetAction(parsed =>
        {
            var draws = OptionNumbers.Count("--matters", parsed.GetValue(matters), 20_000);
            if (!draws.IsFine)
            {
                screen.Complain(draws.Problems);
                return ExitCodes.BadInput;
            }

            return WorkedOut(screen, parsed.GetValue(file)!, result => Answer(screen, Why(screen, result, parsed.GetValue(letter)!, draws.Value), parsed.GetValue(json), view => VerdictTables.Why(screen, view)));
        });
        return command;
    }

    private static Checked<WhyView> Why(Screen screen, StudyResult result, string letter, int draws)
    {
        screen.Progress($"Looking for what would turn {letter}");
        return WhyTool.Of(result, letter, draws);
    }

    public static Command Next(Screen screen)
    {
        var file = Answers.StudyFile();
        var minutes = new Option<string?>("--minutes") { Description = "Minutes that you have: gives the order for the evening." };
        var json = Answers.Json<NextView>();
        var command = new Command("next", "Which reading is worth taking next, or that it is time to build. Example: heatwright next knife.study --minutes 40") { file, minutes, json };
        command.SetAction(parsed =>
        {
            var time = OptionNumbers.Minutes("--minutes", parsed.GetValue(minutes));
            if (!time.IsFine)
            {
                screen.Complain(time.Problems);
                return ExitCodes.BadInput;
            }

            return WorkedOut(screen, parsed.GetValue(file)!, result =>
            {
                screen.Progress("Weighing what each reading would tell");
                var next = NextReadings.Of(result.Verdicts, result.Study.Instruments, result.Study.Seed, time.Value);
                return Answer(screen, new Checked<NextView>(NextView.Of(next)), parsed.GetValue(json), view => VerdictTables.Next(screen, view));
            });
        });
        return command;
    }

    public static Command Search(Screen screen)
    {
        var file = Answers.StudyFile();
        var json = Answers.Json<SearchView>();
        var command = new Command("search", "Tries every sensible arrangement of the shelf: the best handful in full, and why the others were put aside. Example: heatwright search knife.study") { file, json };
        command.SetAction(parsed => Answer(screen, OpenStudy.Read(parsed.GetValue(file)!).Then(opened => SearchShelf.Of(opened, screen.Progress)), parsed.GetValue(json), view => VerdictTables.Search(screen, view)));
        return command;
    }

    internal static int WorkedOut(Screen screen, string path, Func<StudyResult, int> answer) => Answers.WorkedOut(screen, OpenStudy.Read(path), (_, result) => answer(result));

    internal static int Answer<T>(Screen screen, Checked<T> view, bool json, Action<T> show)
        where T : notnull => Answers.Give(screen, view, json, whole => whole, show);
}
