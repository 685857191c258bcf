using System.CommandLine;
using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Cli;

/// <summary>Commands about whole studies: demo, new, import, study, report.</summary>
internal static class StudyCommands
{
    private static readonly JsonSerializerOptions Pretty = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.Strict,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static Command Demo(Screen screen)
    {
        var json = Answers.Json();
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
        var from = new Option<string?>("--from") { Description = "A finished study to begin from: its brief, parts, meters, readings and arrangements." };
        var json = Answers.Json();
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
        var json = Answers.Json();
        var command = new Command("import", "Makes a study file from a bundle; never overwrites. Example: heatwright import samples/rope-hot-knife knife.study") { bundle, file, json };
        command.SetAction(parsed => Done(screen, NewStudy.Import(parsed.GetValue(bundle)!, parsed.GetValue(file)!), parsed.GetValue(json), study =>
            $"'{study.Name}' with {study.Parts.Count} parts, {study.Trials.Count} trials and {study.Arrangements.Count} arrangements is in {parsed.GetValue(file)}."));
        return command;
    }

    public static Command Study(Screen screen)
    {
        var file = Answers.StudyFile();
        var json = Answers.Json();
        var command = new Command("study", "Runs the main job on a study file: checks, fits, predictions, verdicts. Example: heatwright study knife.study --json") { file, json };
        command.SetAction(parsed => Answer(screen, OpenStudy.Read(parsed.GetValue(file)!), parsed.GetValue(json), report: null));
        return command;
    }

    public static Command Report(Screen screen)
    {
        var file = Answers.StudyFile();
        var json = Answers.Json();
        var to = new Option<string>("--to") { Description = "The report to write; without it, the study file's name with .html." };
        var command = new Command("report", "Writes the report of a study as one HTML file that needs no program and no network. Example: heatwright report knife.study") { file, to, json };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file)!;
            string report = parsed.GetValue(to) ?? Path.ChangeExtension(path, ".html");
            return Answer(screen, OpenStudy.Read(path), parsed.GetValue(json), report, quiet: true);
        });
        return command;
    }

    private static Argument<string> File(string name, string what) => new(name) { Description = what };

    private static int Answer(Screen screen, Checked<OpenedStudy> opened, bool json, string? report, bool quiet = false) =>
        Answers.WorkedOut(screen, opened, (study, result) => Show(screen, study, result, json, report, quiet));

    private static int Show(Screen screen, OpenedStudy study, StudyResult result, bool json, string? report, bool quiet)
    {
        string? written = null;
        if (report is not null)
        {
            screen.Progress("Writing the report");
            var done = WriteReport.To(report, result);
            if (!done.IsFine)
            {
                screen.Complain(done.Problems);
                return ExitCodes.BadInput;
            }

            written = done.Value;
        }

        if (json)
        {
            screen.Output.WriteLine(JsonSerializer.Serialize(StudyView.Of(result), Pretty));
            return ExitCodes.Done;
        }

        if (!quiet)
        {
            StudyTables.Write(screen, result);
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
            screen.Output.WriteLine(JsonSerializer.Serialize(new { Study = study.Name, Parts = study.Parts.Count, Trials = study.Trials.Count, Arrangements = study.Arrangements.Count }, Pretty));
        }
        else
        {
            screen.Say(words(study));
        }

        return ExitCodes.Done;
    }
}
