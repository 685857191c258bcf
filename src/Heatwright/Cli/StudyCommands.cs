using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.Jobs.Sharing;
using Heatwright.Jobs.Showing;
using Heatwright.Quantities;
using Heatwright.Report;
using Heatwright.StudyFile;

namespace Heatwright.Cli;

/// <summary>Commands about whole studies: demo, new, import, study, report, pictures.</summary>
internal static class StudyCommands
{
    /// <summary>As <see cref="Answers.Pretty"/>, but what is not known is written as null.</summary>
    internal static readonly JsonSerializerOptions Pretty = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.Strict,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static Command Demo(Screen screen)
    {
        var json = Answers.Json<StudyView>(written: Pretty);
        var into = new Option<string>("--into") { Description = "Folder for the study file and the report.", DefaultValueFactory = _ => "." };
        var command = new Command("demo", "Runs the whole job on an invented study, a cordless hot knife for synthetic rope, and writes its report. Example: heatwright demo") { json, into };
        command.SetAction(parsed =>
        {
            string folder = parsed.GetValue(into)!;
            return Answer(screen, DemoStudy.Open(folder), parsed.GetValue(json), Path.Combine(folder, DemoStudy.ReportName));
        });
        return command;
    }

    public static Command New(Screen screen)
    {
        var file = File("FILE", "The study file to create, for example bow.study.");
        var name = new Option<string>("--name") { Description = "What you call the study." };
        var from = new Option<string?>("--from") { Description = "A finished study to begin from: its brief, parts, meters, readings and arrangements; not its decisions, nor what its prototype did." };
        var json = Answers.Json<StudyMade>(written: Pretty);
        var command = new Command("new", "Creates an empty study file, or one that begins from a finished study. Example: heatwright new bow.study --name 'foam bow'") { file, name, from, json };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file)!;
            return parsed.GetValue(from) is { } old
                ? Done(screen, NewStudy.From(path, parsed.GetValue(name), old), parsed.GetValue(json), study => $"Created {path} from {old}: {study.Parts.Count} parts, {study.Trials.Count} trials, {study.Arrangements.Count} arrangements.")
                : Done(screen, NewStudy.Create(path, parsed.GetValue(name)), parsed.GetValue(json), _ => $"Created {path}. Put parts in with 'heatwright part add {path} PART KIND NAME', or import a bundle under another name.");
        });
        return command;
    }

    public static Command Import(Screen screen)
    {
        var bundle = File("BUNDLE", "A bundle: a folder or a zip as docs/formats/bundle.md describes.");
        var file = File("FILE", "The study file to create.");
        var json = Answers.Json<StudyMade>(written: Pretty);
        var command = new Command("import", "Makes a study file from a bundle; never overwrites. Example: heatwright import samples/rope-hot-knife knife.study") { bundle, file, json };
        command.SetAction(parsed => Done(screen, NewStudy.Import(parsed.GetValue(bundle)!, parsed.GetValue(file)!), parsed.GetValue(json), study =>
            $"'{study.Name}' with {study.Parts.Count} parts, {study.Trials.Count} trials and {study.Arrangements.Count} arrangements is in {parsed.GetValue(file)}."
            + (Beside.IsShared(study) ? $" It was shared with you: runs wait for your own readings, see 'heatwright beside {parsed.GetValue(file)}'." : "")));
        return command;
    }

    public static Command Study(Screen screen)
    {
        var file = Answers.StudyFile();
        var json = Answers.Json<StudyView>(written: Pretty);
        var command = new Command("study", "Runs the main job on a study file: checks, fits, predictions, verdicts. Example: heatwright study knife.study --json") { file, json };
        command.SetAction(parsed => Answer(screen, OpenStudy.Read(parsed.GetValue(file)!), parsed.GetValue(json), report: null));
        return command;
    }

    public static Command Report(Screen screen)
    {
        var file = Answers.StudyFile();
        var json = Answers.Json<StudyView>(written: Pretty);
        var to = new Option<string>("--to") { Description = "The report to write; without it, the study file's name with .html. A name that ends in .md takes the first page as Markdown, to be pasted." };
        var (on, arrangement) = (On(), About());
        var page = new Option<bool>("--one-page") { Description = "The first page alone: requirement, result, margin, how tested, for a customer or viewer." };
        var command = new Command("report", "Writes the report of a study as one HTML file that needs no program and no network: first a page for a customer or viewer, then the whole for who wants to reckon again. Example: heatwright report knife.study --one-page --to knife-page.html") { file, to, arrangement, page, on, json };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file)!;
            string report = parsed.GetValue(to) ?? Path.ChangeExtension(path, ".html");
            return DayWords.Of(parsed.GetValue(on)) switch
            {
                _ when WriteReport.Refused(report) is { } refused => Refuse(screen, [refused]), // before anything is worked out
                { IsFine: true } day => Answer(screen, OpenStudy.Read(path), parsed.GetValue(json), report, quiet: true, new(day.Value, parsed.GetValue(arrangement) ?? "", parsed.GetValue(page))),
                var wrong => Refuse(screen, wrong.Problems),
            };
        });
        return command;
    }

    public static Command Pictures(Screen screen)
    {
        var file = Answers.StudyFile();
        var folder = new Argument<string>("FOLDER") { Description = "Where they go: a folder that is not there yet, or is empty." };
        var film = new Option<string[]>("--film") { Description = "Runs that were read off a film, as RUN=TIME: the film's time at which the run's clock stood at zero. Gives chapter lines.", AllowMultipleArgumentsPerToken = true };
        var (on, arrangement, json) = (On(), About(), Answers.Json<PicturesView>());
        var command = new Command("pictures", "Writes what goes beside a film or onto a page: every picture at 1920 by 1080, captions and the table ready to paste, chapter lines. Example: heatwright pictures knife.study knife-pictures --film stick-up-and-down-1=2:10") { file, folder, film, arrangement, on, json };
        command.SetAction(parsed =>
        {
            var day = DayWords.Of(parsed.GetValue(on));
            var clocks = FilmClock.Read(parsed.GetValue(film) ?? []);
            return !day.IsFine || !clocks.IsFine ? Refuse(screen, [.. day.Problems, .. clocks.Problems])
                : Answers.WorkedOut(screen, OpenStudy.Read(parsed.GetValue(file)!), (_, result) => Answers.Give(screen,
                    WritePictures.To(parsed.GetValue(folder)!, result, new(day.Value, parsed.GetValue(arrangement) ?? ""), clocks.Value), parsed.GetValue(json), PicturesView.Of, written => Written(screen, written)));
        });
        return command;
    }

    private static void Written(Screen screen, WrittenShow written)
    {
        screen.Say($"{written.Pictures.Count.ToString(CultureInfo.InvariantCulture)} pictures, 1920 by 1080, and {string.Join(", ", written.Texts)} in {written.Folder}.");
        foreach (string line in written.Chapters)
        {
            screen.Say(line);
        }
    }

    private static Option<string?> On() => new("--on") { Description = "Date that it bears, year-month-day; without it, today." };

    private static Option<string?> About() => new("--arrangement") { Description = "Letter or id of the arrangement that the first page is about; without it, the one decided for, else the one that stands best." };

    private static int Refuse(Screen screen, IReadOnlyList<Problem> problems)
    {
        screen.Complain(problems);
        return ExitCodes.BadInput;
    }

    private static Argument<string> File(string name, string what) => new(name) { Description = what };

    private static int Answer(Screen screen, Checked<OpenedStudy> opened, bool json, string? report, bool quiet = false, ReportAsk? ask = null) =>
        Answers.WorkedOut(screen, opened, (study, result) => Show(screen, study, result, json, report, quiet, ask ?? new(DayWords.Of(null).Value)));

    private static int Show(Screen screen, OpenedStudy study, StudyResult result, bool json, string? report, bool quiet, ReportAsk ask)
    {
        string? written = null;
        if (report is not null)
        {
            screen.Progress("Writing the report");
            var done = WriteReport.To(report, result, ask);
            if (!done.IsFine)
            {
                screen.Complain(done.Problems);
                return ExitCodes.BadInput;
            }

            written = done.Value;
        }

        if (json)
        {
            Answers.Write(screen, StudyView.Of(result), Pretty);
            return ExitCodes.Done;
        }

        if (!quiet)
        {
            StudyTables.Write(screen, result);
            if (StudyTables.Lacks(study.Study, study.Path) is { } lacks)
            {
                screen.Hang("", lacks);
            }

            if (Beside.IsShared(study.Study))
            {
                ShareCommands.Table(screen, Beside.Of(study.Study, result.Findings), study.Path);
            }
        }

        if (written is not null)
        {
            screen.Say($"Report: {written}");
        }

        if (!quiet)
        {
            screen.Say($"Bench in the browser: heatwright serve {study.Path}");
        }

        return ExitCodes.Done;
    }

    private static int Done(Screen screen, Checked<Study> outcome, bool json, Func<Study, string> words)
    {
        if (!outcome.IsFine)
        {
            screen.Complain(outcome.Problems);
            return ExitCodes.BadInput;
        }

        var study = outcome.Value;
        if (json)
        {
            Answers.Write(screen, new StudyMade(study.Name, study.Parts.Count, study.Trials.Count, study.Arrangements.Count), Pretty);
        }
        else
        {
            screen.Say(words(study));
        }

        return ExitCodes.Done;
    }
}
