using System.CommandLine;
using System.Globalization;
using Heatwright.BuildSheets;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.Jobs.BuildSheets;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>The command that carries numbers into the prototype.</summary>
internal static class BuildSheetCommand
{
    public static Command BuildSheet(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<SheetView>("without --names").Or<IReadOnlyList<SheetNumberView>>("with --names"));
        var arrangement = new Option<string?>("--arrangement") { Description = "Letter or id of the arrangement; without it, the one decided for, else the one that stands best." };
        var folder = new Option<string?>("--out") { Description = "Folder to write into, not there yet or empty; without it, one beside the study." };
        var set = Many("--set", "Numbers of the board that are not the usual ones: \"supply=3.0V\" \"reference=2.5V±0.02V\". --names lists all.");
        var series = new Option<string>("--series") { Description = "Preferred numbers of the gain resistors: E24 or E96.", DefaultValueFactory = _ => "E24" };
        var drawer = new Option<string?>("--drawer") { Description = "Choose the gain resistors from this file of values, or 'own' for the study's own drawer." };
        var difference = new Option<bool>("--difference") { Description = "Wire the amplifier as a difference of two wires instead of against ground." };
        var calibration = new Option<string?>("--calibration") { Description = "Counts and degrees taken while the tool cooled, better also while it warmed." };
        var taken = Many("--taken", "What the calibration was taken under, where the board differs: \"reference=5V\" \"bits=10\" \"ceiling=4.5V\" \"cold=25C\".");
        var columns = new Option<string?>("--columns") { Description = "Your own headings of the parts list: refs=Designator,qty=Quantity,=Supplier." };
        var date = new Option<string?>("--on") { Description = "Day to write on it, year-month-day; without it, today." };
        var names = new Option<bool>("--names") { Description = "Lists all numbers that --set takes, with their defaults and why, and writes nothing." };
        var command = new Command("build-sheet", "Writes everything that goes into the prototype as a folder: page to print, controller code, parts list, drawing. Example: heatwright build-sheet knife.study --arrangement A --out sheet-A")
        { file, arrangement, folder, set, series, drawer, difference, calibration, taken, columns, date, names, json };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(names))
            {
                return Listed(screen, parsed.GetValue(json));
            }

            string path = parsed.GetValue(file)!;
            var request = new SheetRequest
            {
                Arrangement = parsed.GetValue(arrangement),
                Set = parsed.GetValue(set) ?? [],
                Series = parsed.GetValue(series)!,
                Drawer = parsed.GetValue(drawer),
                Form = parsed.GetValue(difference) ? AmplifierForm.Difference : AmplifierForm.NonInverting,
                Calibration = parsed.GetValue(calibration),
                Taken = parsed.GetValue(taken) ?? [],
                Columns = parsed.GetValue(columns),
                Date = parsed.GetValue(date) ?? TimeProvider.System.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            };
            var made = OpenStudy.Read(path).Then(opened => Contradictions.Of(opened.Study) is { Count: > 0 } against ? new(against) : MakeBuildSheet.Of(opened, request, progress: screen.Progress));
            var written = made.Then(sheet => WriteBuildSheet.To(parsed.GetValue(folder) ?? Beside(path, sheet.Letter), sheet).Map(files => (Sheet: sheet, Files: files)));
            return Answers.Give(screen, written, parsed.GetValue(json), done => SheetView.Of(done.Sheet, done.Files), done => Told(screen, done.Sheet, done.Files));
        });
        return command;
    }

    private static string Beside(string study, string letter) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(study))!, $"{Path.GetFileNameWithoutExtension(study)}-sheet-{letter}");

    private static void Told(Screen screen, MadeSheet made, IReadOnlyList<string> files)
    {
        foreach (string line in made.Sheet.Breaks)
        {
            screen.Hang("Do not build it so: ", line);
        }

        screen.Say($"{made.Sheet.Title} ({made.Chosen}).");
        foreach (var section in made.Sheet.Sections)
        {
            foreach (var problem in section.Problems)
            {
                screen.Hang($"{section.Title}: ", $"{problem.What} {problem.Next}");
            }

            foreach (var line in section.Lines.Where(line => line.Warns))
            {
                screen.Hang($"{section.Title}: ", $"{line.Name}{(line.Value is { } value ? " " + Display.Rounded(value) : "")}{(line.Words.Length > 0 ? ", " + line.Words : "")}");
            }
        }

        screen.Say($"{Number(made.Sheet.Untested.Count)} numbers are not tested; they head the sheet.");
        screen.Say($"Written: {files[0]}, and {Number(files.Count - 1)} files beside it.");
    }

    private static int Listed(Screen screen, bool json) => Answers.Give(screen, new Checked<IReadOnlyList<(string Name, string Value, string Why)>>(MakeBuildSheet.Names()), json, all => all.Select(one => new SheetNumberView(one.Name, one.Value, one.Why)), all =>
    {
        var table = Answers.Table("name", "usual", "why");
        all.ToList().ForEach(one => table.Row(one.Name, one.Value, one.Why));
        screen.Show(table);
    });

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static Option<string[]> Many(string name, string about) => new(name) { Description = about, AllowMultipleArgumentsPerToken = true };
}
