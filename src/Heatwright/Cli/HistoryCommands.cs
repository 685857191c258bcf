using System.CommandLine;
using System.Globalization;
using Heatwright.Jobs;

namespace Heatwright.Cli;

/// <summary>Commands that show what was done to a study, take it back and make it again.</summary>
internal static class HistoryCommands
{
    public static Command History(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json());
        var command = new Command("history", "Everything that was done to a study, oldest first. Example: heatwright history knife.study") { file, json };
        command.SetAction(parsed => Answers.Give(screen, ChangeStudy.History(parsed.GetValue(file)!), parsed.GetValue(json),
            changes => changes.Select(change => new { change.Number, change.What, change.Undone }),
            changes => changes.ToList().ForEach(change => screen.Say($"{change.Number.ToString(CultureInfo.InvariantCulture),4}  {change.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}  {change.What}{(change.Undone ? "  (taken back)" : "")}"))));
        return command;
    }

    public static Command Undo(Screen screen) => Step(screen, "undo", "Takes the last change of a study back. Example: heatwright undo knife.study", back: true, "Taken back");

    public static Command Redo(Screen screen) => Step(screen, "redo", "Makes the change that was taken back last again. Example: heatwright redo knife.study", back: false, "Made again");

    private static Command Step(Screen screen, string name, string about, bool back, string done)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json());
        var command = new Command(name, about) { file, json };
        command.SetAction(parsed => Answers.Give(screen, ChangeStudy.Step(parsed.GetValue(file)!, back), parsed.GetValue(json),
            change => new { change.Number, change.What, change.Undone }, change => screen.Say($"{done}: {change.What}.")));
        return command;
    }
}
