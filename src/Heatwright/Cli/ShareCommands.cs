using System.CommandLine;
using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Jobs.Sharing;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Commands about studies that are shown to others, and about my readings beside theirs.</summary>
internal static class ShareCommands
{
    public static Command Share(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<SharedView>());
        var bundle = new Argument<string>("BUNDLE") { Description = "The zip to write; it must not be there yet." };
        var without = new Option<string[]>("--without") { Description = $"What does not go along: {string.Join(", ", ShareChoice.Words)}. Names take notes, sellers' texts and decision cards with them.", AllowMultipleArgumentsPerToken = true };
        without.CompletionSources.Add([.. ShareChoice.Words]);
        var command = new Command("share", "Writes a bundle for viewers: every run has an empty twin for their own readings, photos go without place and camera data, and what you choose stays at home. Example: heatwright share knife.study knife-for-viewers.zip --without prices sellers") { file, bundle, without, json };
        command.SetAction(parsed => Answers.Give(screen, ShareChoice.Of(parsed.GetValue(without) ?? []).Then(choice => ShareStudy.To(parsed.GetValue(file)!, parsed.GetValue(bundle)!, choice)), parsed.GetValue(json),
            shared => new SharedView(shared.Parts, shared.Runs, shared.Empty, shared.LeftOut, shared.Photos), shared => Said(screen, shared)));
        return command;
    }

    public static Command Beside(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<BesideView>("without --wire").Or<WiredView>("with --wire"));
        var wire = new Option<string?>("--wire") { Description = "Letter of an arrangement: clones it with my parts in the places of theirs, so that 'compare' shows both." };
        var command = new Command("beside", "My readings beside those of a study that I was sent: quantity by quantity, and which runs still wait. Example: heatwright beside knife.study --wire A") { file, wire, json };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file)!;
            if (parsed.GetValue(wire) is { } letter)
            {
                return Answers.Give(screen, Jobs.Sharing.Beside.Wire(path, letter), parsed.GetValue(json), wired => new WiredView(wired.Loop.Arrangement.Letter, wired.Loop.Arrangement.Name), wired => screen.Say($"Arrangement {wired.Loop.Arrangement.Letter}, {wired.Loop.Arrangement.Name}, stands beside {letter}. 'heatwright compare {path}' shows both."));
            }

            return Answers.Give(screen, OpenStudy.Read(path).Then(opened => Jobs.Sharing.Beside.Of(opened.Study)), parsed.GetValue(json), view => view, view => Table(screen, view, path));
        });
        return command;
    }

    /// <summary>Mine beside theirs as a table, and what waits.</summary>
    public static void Table(Screen screen, BesideView view, string path)
    {
        screen.Say($"Mine beside theirs: {view.Study}");
        var table = Answers.Table("part", "quantity", "theirs", "mine", "");
        foreach (var line in view.Lines)
        {
            table.Row(line.Part, line.Quantity, Shown(line.Theirs, line.TheirDoubt, line.Unit), line.MineIs is { } mine ? Shown(mine, line.MyDoubt ?? 0, line.Unit) : "", line.Says + (line.Apart is { } apart ? $", {apart.ToString("0.0", CultureInfo.InvariantCulture)} doubts apart" : ""));
        }

        screen.Show(table);
        if (view.Waiting.Count > 0)
        {
            screen.Say($"{view.Waiting.Count.ToString(CultureInfo.InvariantCulture)} runs wait for your readings, {view.Begun.ToString(CultureInfo.InvariantCulture)} have some:");
            foreach (var run in view.Waiting)
            {
                screen.Hang($"  {run.Run}  ", $"{string.Join(", ", run.Columns)}; theirs had {run.TheirReadings.ToString(CultureInfo.InvariantCulture)} readings{string.Concat(run.Held.Select(one => ", " + one))}");
            }

            screen.Say($"Type them: heatwright trial enter {path} {view.Waiting[0].Trial} --run {view.Waiting[0].Run}; what held for your run goes with --set, your meter with --meter.");
        }
    }

    private static void Said(Screen screen, Shared shared)
    {
        screen.Say($"Bundle for viewers: {shared.Bundle}");
        screen.Say($"{shared.Parts.ToString(CultureInfo.InvariantCulture)} parts, {shared.Runs.ToString(CultureInfo.InvariantCulture)} runs with readings, {shared.Empty.ToString(CultureInfo.InvariantCulture)} empty ones for the viewer's own.");
        screen.Say(shared.LeftOut.Count > 0 ? "Stays at home:" : $"Nothing was left out; {string.Join(", ", ShareChoice.Words)} go along unless --without names them.");
        foreach (string one in shared.LeftOut)
        {
            screen.Hang("  ", one);
        }

        if (shared.Photos.Count > 0)
        {
            screen.Say($"Place and camera data cut from: {string.Join(", ", shared.Photos)}.");
        }
    }

    private static string Shown(double value, double doubt, string unit) => Display.Rounded(value, doubt, Units.Find(unit) ?? Units.One);
}

/// <summary>A shared bundle as machines read it.</summary>
/// <param name="Parts">How many parts went along.</param>
/// <param name="Runs">How many runs with readings.</param>
/// <param name="Empty">How many empty runs for the viewer's own readings.</param>
/// <param name="LeftOut">What stayed at home, in words.</param>
/// <param name="Photos">Pictures from which place and camera data were cut.</param>
internal sealed record SharedView(int Parts, int Runs, int Empty, IReadOnlyList<string> LeftOut, IReadOnlyList<string> Photos);

/// <summary>An arrangement that was wired of my own parts.</summary>
/// <param name="Letter">Its letter.</param>
/// <param name="Name">Its name.</param>
internal sealed record WiredView(string Letter, string Name);
