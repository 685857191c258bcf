using System.CommandLine;
using System.Globalization;
using Heatwright.Cli.Answering;
using Heatwright.Jobs.Keeping;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Cli;

/// <summary>Commands that look after a study file: kept files, export, packing, examination, earlier openings, struck-out readings.</summary>
internal static class KeepCommands
{
    public static Command Files(Screen screen) => new("file", "Photos, raw logs and other files kept with a study. Example: heatwright file add knife.study loop.jpg --about part:band")
    {
        Add(screen), List(screen), Take(screen), Drop(screen),
    };

    public static Command Export(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<BundleWritten>());
        var bundle = new Argument<string>("BUNDLE") { Description = "The zip to write; it must not be there yet." };
        var command = new Command("export", "Writes a whole study as a bundle that needs no program to be read. Example: heatwright export knife.study knife.zip") { file, bundle, json };
        command.SetAction(parsed => Answers.Give(screen, StudyCare.Export(parsed.GetValue(file)!, parsed.GetValue(bundle)!), parsed.GetValue(json), path => new BundleWritten(path), path => screen.Say($"Bundle: {path}")));
        return command;
    }

    public static Command Pack(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<PackedView>());
        var command = new Command("pack", "Closes a study and packs it for the post: one file, nothing beside it. Example: heatwright pack knife.study") { file, json };
        command.SetAction(parsed => Answers.Give(screen, StudyCare.Pack(parsed.GetValue(file)!), parsed.GetValue(json), bytes => new PackedView(bytes),
            bytes => screen.Say($"Packed: {Size(bytes)} in one file, nothing beside it but perhaps its earlier openings ({Path.GetFileName(PastStates.Beside(parsed.GetValue(file)!))}).")));
        return command;
    }

    public static Command Examine(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<ConditionView>());
        var rescue = new Option<string>("--rescue") { Description = "Write what can be read of a damaged file to a new study of this name." };
        var command = new Command("examine", "Looks a study file through without changing it. Example: heatwright examine knife.study --rescue rescued.study") { file, rescue, json };
        command.SetAction(parsed =>
        {
            var condition = StudyCare.Examine(parsed.GetValue(file)!, parsed.GetValue(rescue));
            int code = Answers.Give(screen, condition, parsed.GetValue(json), ConditionView.Of, one => Show(screen, one));
            return code == ExitCodes.Done && !condition.Value.Examined.IsWhole && condition.Value.Copy is null ? ExitCodes.BadInput : code;
        });
        return command;
    }

    public static Command Openings(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<IReadOnlyList<PastState>>("without --restore").Or<CopyWritten>("with --restore"));
        var restore = new Option<string>("--restore") { Description = "Number of the opening to restore." };
        var to = new Option<string>("--to") { Description = "Name of the new study file that takes it." };
        var command = new Command("openings", "The study as it stood at its last ten openings. Example: heatwright openings knife.study --restore 3 --to as-it-was.study") { file, restore, to, json };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file)!;
            if (parsed.GetValue(restore) is not { } text)
            {
                return Answers.Give(screen, PastStates.List(path), parsed.GetValue(json), kept => kept, kept => kept.ToList().ForEach(one =>
                    screen.Say($"{one.Number.ToString(CultureInfo.InvariantCulture),4}  {one.At.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture)} UTC  {one.Fingerprint}")));
            }

            var restored = long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out long number) && parsed.GetValue(to) is { } copy
                ? StudyCare.Restore(path, number, copy)
                : new(new Problem("Which opening, and to what name?", "--restore, --to", text, "a number that is listed, and a name that is not taken", "Type --restore NUMBER --to COPY.study."));
            return Answers.Give(screen, restored, parsed.GetValue(json), done => new CopyWritten(done), done => screen.Say($"Restored to {done}; the study itself was not changed."));
        });
        return command;
    }

    public static Command Strike(Screen screen)
    {
        var (file, run, numbers, json) = (Answers.StudyFile(), Run(), Numbers(), Answers.Json<ChangeTaken>());
        var because = new Option<string>("--because") { Description = "Why they do not count; it stays with them.", Required = true };
        var command = new Command("strike", "Strikes readings out with a reason; they stay in the study and can stand again. Example: heatwright strike knife.study cold-1 2 3 --because 'clip loose'") { file, run, numbers, because, json };
        command.SetAction(parsed => Struck(screen, parsed.GetValue(file)!, parsed.GetValue(run)!, parsed.GetValue(numbers)!, parsed.GetValue(because), parsed.GetValue(json)));
        return command;
    }

    public static Command Stand(Screen screen)
    {
        var (file, run, numbers, json) = (Answers.StudyFile(), Run(), Numbers(), Answers.Json<ChangeTaken>());
        var command = new Command("stand", "Lets struck-out readings stand again. Example: heatwright stand knife.study cold-1 2") { file, run, numbers, json };
        command.SetAction(parsed => Struck(screen, parsed.GetValue(file)!, parsed.GetValue(run)!, parsed.GetValue(numbers)!, null, parsed.GetValue(json)));
        return command;
    }

    private static Argument<string> Run() => new("RUN") { Description = "The run." };

    private static Argument<string[]> Numbers() => new("READING") { Description = "Numbers of its readings: 3, 1-22, or all.", Arity = ArgumentArity.OneOrMore };

    private static int Struck(Screen screen, string file, string run, string[] typed, string? because, bool json) =>
        Answers.Give(screen, StudyCare.Strike(file, run, typed, because), json, ChangeTaken.Of, done =>
            screen.Say(done.Change is { } change ? $"{change.What}." : "Nothing to change: they stand so already."));

    private static Command Add(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<KeptView>());
        var path = new Argument<string>("PATH") { Description = "The file to keep." };
        var about = new Option<string>("--about") { Description = "What it is about: part:ID, trial:ID, run:ID or arrangement:ID; without it, the study." };
        var note = new Option<string>("--note") { Description = "Your note." };
        var asItIs = new Option<bool>("--as-is") { Description = "Keeps every byte of a picture, also where and when it was taken." };
        var command = new Command("add", "Keeps a file with a study. What a camera writes beside a picture, its place above all, is cut off. Example: heatwright file add knife.study loop.jpg --about part:band --note 'before the swap'") { file, path, about, note, asItIs, json };
        command.SetAction(parsed => Answers.Give(screen, KeepFiles.Add(parsed.GetValue(file)!, parsed.GetValue(path)!, parsed.GetValue(about) ?? "", parsed.GetValue(note) ?? "", parsed.GetValue(asItIs)), parsed.GetValue(json),
            View, kept => screen.Say($"Kept as '{kept.Id}', {Size(kept.Bytes)}{(new FileInfo(parsed.GetValue(path)!).Length - kept.Bytes is > 0 and var cut ? $"; {Size(cut)} that the camera wrote beside the picture were cut off" : "")}.")));
        return command;
    }

    private static Command List(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<IReadOnlyList<KeptView>>());
        var command = new Command("list", "Lists the files that a study keeps. Example: heatwright file list knife.study") { file, json };
        command.SetAction(parsed => Answers.Give(screen, KeepFiles.List(parsed.GetValue(file)!), parsed.GetValue(json), files => files.Select(View), files =>
        {
            if (files.Count == 0)
            {
                screen.Hang("", $"The study keeps no file yet. Keep a photo, a log or a sheet with 'heatwright file add {parsed.GetValue(file)} PATH'.");
                return;
            }

            var table = Answers.Table("file", "about", "size", "note");
            foreach (var one in files)
            {
                table.Row(one.Id, one.About == KeptAbout.Study ? "the study" : $"{one.About.ToString().ToLowerInvariant()} {one.Subject}", Size(one.Bytes), one.Note);
            }

            screen.Show(table);
        }));
        return command;
    }

    private static Command Take(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<CopyWritten>());
        var id = new Argument<string>("ID") { Description = "The kept file." };
        var to = new Argument<string>("TO") { Description = "Name of the copy." };
        var command = new Command("take", "Writes a copy of a kept file. Example: heatwright file take knife.study loop.jpg copy.jpg") { file, id, to, json };
        command.SetAction(parsed => Answers.Give(screen, KeepFiles.Take(parsed.GetValue(file)!, parsed.GetValue(id)!, parsed.GetValue(to)!), parsed.GetValue(json), path => new CopyWritten(path), path => screen.Say($"Copy: {path}")));
        return command;
    }

    private static Command Drop(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<ChangeTaken>());
        var id = new Argument<string>("ID") { Description = "The kept file." };
        var command = new Command("drop", "Lets go of a kept file; 'undo' brings it back. Example: heatwright file drop knife.study loop.jpg") { file, id, json };
        command.SetAction(parsed => Answers.Give(screen, KeepFiles.Drop(parsed.GetValue(file)!, parsed.GetValue(id)!), parsed.GetValue(json), ChangeTaken.Of, done => screen.Say($"{done.Change?.What}.")));
        return command;
    }

    private static KeptView View(KeptFile file) => new(file.Id, file.Name, file.About, file.Subject, file.Note, file.Sha256, file.Bytes);

    private static void Show(Screen screen, StudyCondition condition)
    {
        var one = condition.Examined;
        screen.Say(one.IsWhole ? $"{one.Path}: whole. Format {one.Format?.ToString(CultureInfo.InvariantCulture)}, {Size(one.Bytes)}, {one.Changes.ToString(CultureInfo.InvariantCulture)} changes in its history." : $"{one.Path}: not whole. {Size(one.Bytes)}.");
        if (one.Records.Count > 0)
        {
            screen.Say(string.Join(", ", one.Records.Select(pair => $"{pair.Value.ToString(CultureInfo.InvariantCulture)} {pair.Key}")) + ".");
        }

        if (one.Kept > 0)
        {
            screen.Say($"{one.Kept.ToString(CultureInfo.InvariantCulture)} kept files, {Size(one.KeptBytes)}.");
        }

        if (one.Beside.Count > 0)
        {
            screen.Say($"Beside it, and part of it: {string.Join(", ", one.Beside.Select(Path.GetFileName))}. It is open somewhere, or was when its program ended; 'heatwright pack' puts them into the one file.");
        }

        screen.Say($"{one.Openings.ToString(CultureInfo.InvariantCulture)} earlier openings are kept beside it.");
        screen.Complain(one.Problems);
        foreach (string line in condition.Lost ?? [])
        {
            screen.Say($"Lost: {line}");
        }

        screen.Say(condition.Copy is { } copy ? $"Rescue copy: {copy}" : one.IsWhole ? "Nothing to rescue." : $"'heatwright examine {Path.GetFileName(one.Path)} --rescue COPY.study' writes what can be read; 'heatwright openings' shows earlier copies.");
    }

    private static string Size(long bytes) => bytes < 10_000 ? $"{bytes.ToString(CultureInfo.InvariantCulture)} bytes" : bytes < 10_000_000 ? $"{(bytes / 1000).ToString(CultureInfo.InvariantCulture)} kB" : $"{(bytes / 1_000_000).ToString(CultureInfo.InvariantCulture)} MB";
}
