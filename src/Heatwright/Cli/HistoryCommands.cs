using System.CommandLine;
using System.Globalization;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.StudyFile;

namespace Heatwright.Cli;

/// <summary>Commands that show what was done to a study, take it back and make it again.</summary>
internal static class HistoryCommands
{
    public static Command History(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<IReadOnlyList<ChangeView>>("without --of").Or<IReadOnlyList<RecordChangeView>>("with --of"));
        var of = new Option<string?>("--of") { Description = "Only what was done to this part, trial, run, arrangement, instrument, tool or file, or to the 'brief', value by value." };
        var command = new Command("history", "Everything that was done to a study, or to one thing in it, oldest first. Example: heatwright history knife.study --of wire") { file, of, json };
        command.SetAction(parsed => parsed.GetValue(of) is { } record ? One(screen, parsed.GetValue(file)!, record, parsed.GetValue(json))
            : Answers.Give(screen, ChangeStudy.History(parsed.GetValue(file)!), parsed.GetValue(json),
                changes => changes.Select(ChangeView.Of), changes => changes.ToList().ForEach(change => Line(screen, change))));
        return command;
    }

    private static int One(Screen screen, string path, string record, bool json) => Answers.Give(screen, ChangeStudy.History(path, record), json,
        changes => changes.Select(RecordChangeView.Of),
        changes =>
        {
            StudyChange? told = null;
            foreach (var one in changes)
            {
                if (one.Change != told)
                {
                    Line(screen, one.Change);
                    told = one.Change;
                }

                string record = one.Kind + (one.Id.Length > 0 ? " " + one.Id : "");
                if (one.Begun || one.TakenAway)
                {
                    screen.Say($"      {record}: {(one.Begun ? "begun with" : "taken away with")} {one.Fields.Count.ToString(CultureInfo.InvariantCulture)} values");
                    continue;
                }

                foreach (var field in one.Fields)
                {
                    screen.Say($"      {record}, {field.Where}: {field.Before ?? "nothing"} -> {field.After ?? "nothing"}");
                }
            }
        });

    private static void Line(Screen screen, StudyChange change) => screen.Say(
        $"{change.Number.ToString(CultureInfo.InvariantCulture),4}  {change.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}  {change.What}{(change.Undone ? "  (taken back)" : "")}");

    public static Command Undo(Screen screen) => Step(screen, "undo", "Takes the last change of a study back. Example: heatwright undo knife.study", back: true, "Taken back");

    public static Command Redo(Screen screen) => Step(screen, "redo", "Makes the change that was taken back last again. Example: heatwright redo knife.study", back: false, "Made again");

    private static Command Step(Screen screen, string name, string about, bool back, string done)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<ChangeView>());
        var command = new Command(name, about) { file, json };
        command.SetAction(parsed => Answers.Give(screen, ChangeStudy.Step(parsed.GetValue(file)!, back), parsed.GetValue(json),
            ChangeView.Of, change => screen.Say($"{done}: {change.What}.")));
        return command;
    }
}
