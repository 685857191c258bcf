using System.CommandLine;
using System.Globalization;
using Heatwright.Jobs.Keeping;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Cli;

/// <summary>Commands that take logs and filled sheets into a study, and that set the clocks of two logs by each other.</summary>
internal static class LogImportCommands
{
    public static Command Import(Screen screen)
    {
        var log = new Argument<string>("LOG") { Description = "The log, as 'log read' takes it." };
        var (file, trial, json) = (Answers.StudyFile(), Trial(), Answers.Json<LogImported>());
        var run = new Option<string>("--run") { Description = "Id of the run; without it, the trial's with a number." };
        var instrument = new Option<string>("--instrument") { Description = "Id of the instrument that wrote it; how its logs are read is remembered." };
        var columns = Columns();
        var meter = new Option<string[]>("--meter") { Description = "Which meter read which column, where it is not the instrument: \"degrees=thermometer\".", AllowMultipleArgumentsPerToken = true };
        var set = new Option<string[]>("--set") { Description = "What holds for the whole run: air=24C, leads=0.2ohm.", AllowMultipleArgumentsPerToken = true };
        var answers = LogAnswers.Options();
        var command = new Command("import", "Takes a log into a study as a run of a trial; the raw file is kept whole. Example: heatwright log import discharge.csv knife.study --trial round-discharge --instrument logger") { log, file, trial, run, instrument, columns, meter, set, json };
        answers.All.ToList().ForEach(command.Options.Add);
        command.SetAction(parsed => Answers.Give(screen, answers.Given(parsed).Then(given => ImportLog.Run(new(parsed.GetValue(log)!, parsed.GetValue(file)!, parsed.GetValue(trial)!)
        {
            Run = parsed.GetValue(run),
            Instrument = parsed.GetValue(instrument) ?? "",
            Columns = parsed.GetValue(columns) ?? "",
            Meters = parsed.GetValue(meter) ?? [],
            Settings = parsed.GetValue(set) ?? [],
            Answers = given,
        }, LogAnswers.Asked)), parsed.GetValue(json), done => done, done =>
        {
            screen.Say($"Run '{done.Run}': {done.Readings.ToString(CultureInfo.InvariantCulture)} readings, {string.Join(", ", done.Pairs.Select(pair => $"{pair.Run} from '{pair.Log}'"))}. {done.Refused.ToString(CultureInfo.InvariantCulture)} lines refused. The raw file is kept as '{done.Kept}'.");
            done.Notes.ToList().ForEach(screen.Say);
        }));
        return command;
    }

    public static Command Sheets(Screen screen)
    {
        var (file, trial, columns, json) = (Answers.StudyFile(), Trial(), Columns(), Answers.Json<IReadOnlyList<SheetImported>>());
        var sheets = new Argument<string[]>("SHEET") { Description = "Filled sheets, one from each learner: text tables, or a folder of them.", Arity = ArgumentArity.OneOrMore };
        var answers = LogAnswers.Options();
        var command = new Command("sheets", "Takes many filled reading sheets into a study as runs of one trial: all of them or none. Example: heatwright sheets class.study handed-in --trial cool-down") { file, sheets, trial, columns, json };
        answers.All.ToList().ForEach(command.Options.Add);
        command.SetAction(parsed => Answers.Give(screen, answers.Given(parsed).Then(given =>
            ImportSheets.Run(parsed.GetValue(file)!, parsed.GetValue(trial)!, parsed.GetValue(sheets)!, parsed.GetValue(columns) ?? "", given, LogAnswers.Asked)), parsed.GetValue(json), done => done, done =>
        {
            foreach (var one in done)
            {
                screen.Say($"{Path.GetFileName(one.Sheet)}: run '{one.Run}', {one.Readings.ToString(CultureInfo.InvariantCulture)} readings.");
            }
        }));
        return command;
    }

    public static Command Offset(Screen screen)
    {
        var first = new Argument<string>("FIRST") { Description = "The log whose clock holds." };
        var second = new Argument<string>("SECOND") { Description = "The log whose clock is to be set by it." };
        var (of, by, csv) = (new Option<string>("--first") { Description = "Column of the first log to go by; without it, the one that matches best." }, new Option<string>("--second") { Description = "Column of the second log." },
            new Option<string>("--csv") { Description = "After you have seen the offset: write both logs on the first one's clock." });
        var confirm = new Option<string>("--offset") { Description = "The offset that you confirm, in seconds, as it was shown or as you know it." };
        var json = Answers.Json<ClocksCompared>();
        var command = new Command("offset", "Finds by how much the clocks of two logs differ, from what both saw. Example: heatwright log offset volts.csv degrees.csv") { first, second, of, by, confirm, csv, json };
        command.SetAction(parsed => Answers.Give(screen, CompareClocks.Run(new(parsed.GetValue(first)!, parsed.GetValue(second)!, parsed.GetValue(of), parsed.GetValue(by), parsed.GetValue(confirm), parsed.GetValue(csv))), parsed.GetValue(json), done => done, done =>
        {
            screen.Say($"Add {done.AddS.ToString("0.###", CultureInfo.InvariantCulture)} s to the clock of {Path.GetFileName(parsed.GetValue(second)!)}{(done.Match is { } match ? $": '{done.First}' and '{done.Second}' then go together to {match.ToString("0.00", CultureInfo.InvariantCulture)} (1 is in step), the next best offset to {done.NextBest?.ToString("0.00", CultureInfo.InvariantCulture)}" : ", as you say")}.");
            screen.Say(done.Written is { } path ? $"Both on one clock: {path}" : $"If that is right, confirm it: add --offset {done.AddS.ToString("0.###", CultureInfo.InvariantCulture)} --csv BOTH.csv.");
        }));
        return command;
    }

    private static Option<string> Trial() => new("--trial") { Description = "The trial that it belongs to.", Required = true };

    private static Option<string> Columns() => new("--columns") { Description = "Which column is which, where units and names do not tell: volts=NAME,amps=NAME." };
}
