using System.Globalization;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>What a run was read with and what held for it, said or mended after it was begun; and an empty run taken out.</summary>
public static class SetRun
{
    /// <summary>Takes a meter or a setting out again: 'volts=none'.</summary>
    public const string None = "none";

    private const int MostTold = 5;

    /// <summary>Sets meters and settings of a run, and its columns while nothing is read; what is not said stays as it was.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="entry">The run, and what is said of it: 'volts=bench', 'air=24C', 'air=none'. An empty trial: whichever has the run.</param>
    public static Checked<Run> Set(string path, RunEntry entry)
    {
        Run? made = null;
        string said = string.Join(", ", entry.Columns.Concat(entry.Meters).Concat(entry.Settings).Select(word => word.Trim()));
        return ChangeStudy.Run(path, $"run {entry.Run}: {said}", study => Found(study, entry).Then(found => Changed(study, found.Trial, found.Run, entry).Map(run =>
        {
            made = run;
            return TypeReadings.Put(study, found.Trial, run);
        }))).Map(_ => made!);
    }

    /// <summary>Takes a run out while it has no reading; undo brings it back.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="trial">Its trial.</param>
    /// <param name="run">The run.</param>
    public static Checked<StudyChanged> Drop(string path, string trial, string run) => ChangeStudy.Run(path, $"run {run} taken out", study => Found(study, new(trial, run, [], [], [])).Then(found => found.Run.Readings.Count > 0
        ? new Checked<Study>(new Problem("The run holds readings.", $"run '{found.Run.Id}'", string.Create(CultureInfo.InvariantCulture, $"{found.Run.Readings.Count} readings"), "none", "Strike them out with a reason instead: readings are not erased."))
        : new(study with
        {
            Trials = [.. study.Trials.Select(one => one.Id != found.Trial.Id ? one : one with { Runs = [.. one.Runs.Where(other => other.Id != found.Run.Id)] })],
            Files = [.. study.Files.Where(file => file.About != KeptAbout.Run || file.Subject != found.Run.Id.Name)],
        })));

    private static Checked<(Trial Trial, Run Run)> Found(Study study, RunEntry entry) => entry.Trial.Length == 0 ? TypeReadings.Find(study, entry.Run) : PlanTrial.Found(study, entry.Trial).Then(trial =>
        TypeReadings.Find(study with { Trials = [trial] }, entry.Run));

    private static Checked<Run> Changed(Study study, Trial trial, Run old, RunEntry entry)
    {
        List<Problem> problems = [];
        if (entry.Columns.Count + entry.Meters.Count + entry.Settings.Count == 0)
        {
            return new(new Problem("Nothing is said of the run.", $"run {old.Id}", "no meter and no setting", "which meter read a column, or what held for the run", "Say at least one: volts=bench, or air=24C."));
        }

        var columns = Columns(study, trial, old, entry, problems);
        var meters = TypeReadings.Pairs(entry.Meters, "meter", problems);
        TypeReadings.Meters(study, [.. columns.Select(column => column.Name)], meters.Where(pair => pair.Value != None).ToDictionary(), problems);
        var said = TypeReadings.Pairs(entry.Settings, "setting", problems);
        var anew = said.Keys.Select(name => TypeReadings.SettingOf(trial, name)).ToHashSet(StringComparer.Ordinal);
        var (settings, plusMinus) = TypeReadings.Settings(trial, said.Where(pair => pair.Value != None).ToDictionary(), problems);
        var run = old with
        {
            Settings = Besides(old.Settings, anew, settings),
            SettingsPlusMinus = Besides(old.SettingsPlusMinus, anew, plusMinus),
            Columns = [.. columns.Select(column => column with { Instrument = meters.GetValueOrDefault(column.Name) is { } meter ? meter == None ? "" : meter : column.Instrument })],
        };
        problems.AddRange(Unread(trial, old, run));
        return problems.Count > 0 ? new(problems) : new(run);
    }

    /// <summary>What was said anew, and what stood before of all else.</summary>
    private static Dictionary<string, double> Besides(IReadOnlyDictionary<string, double> old, HashSet<string> anew, Dictionary<string, double> said) =>
        old.Where(pair => !anew.Contains(pair.Key)).Concat(said).ToDictionary(StringComparer.Ordinal);

    private static IReadOnlyList<Column> Columns(Study study, Trial trial, Run old, RunEntry entry, List<Problem> problems)
    {
        string[] named = [.. entry.Columns.Select(name => name.Trim().Replace('-', ' '))];
        if (named.Length == 0 || named.SequenceEqual(old.Columns.Select(column => column.Name), StringComparer.Ordinal))
        {
            return old.Columns;
        }

        if (old.Readings.Count > 0)
        {
            problems.Add(new("This run has readings: its columns stand.", $"run {old.Id}", string.Join(", ", named), string.Join(", ", old.Columns.Select(column => column.Name)), "Leave the columns out; meters and settings may be said anew. For other columns begin another run."));
            return old.Columns;
        }

        // A name that no run has: the run itself still stands in the study.
        var made = TypeReadings.Made(study, trial, new(trial.Id.Name, "", named, [], []));
        problems.AddRange(made.Problems);
        return made.IsFine ? [.. made.Value.Columns.Select(column => column with { Instrument = old.Columns.FirstOrDefault(one => one.Name == column.Name)?.Instrument ?? "" })] : old.Columns;
    }

    /// <summary>Times of a film are read by its frame rate: with another one each must still be a time.</summary>
    private static IEnumerable<Problem> Unread(Trial trial, Run old, Run run)
    {
        if (old.Setting(FilmTimes.FrameRate, 0) == run.Setting(FilmTimes.FrameRate, 0))
        {
            return [];
        }

        List<Problem> problems = [];
        foreach (var reading in run.Readings)
        {
            List<Problem> own = [];
            _ = run.Columns.Select((column, i) => TypedLine.Field(trial, run, column, reading.Raw[i], own)).ToArray();
            problems.AddRange(own.Select(problem => problem with { Where = string.Create(CultureInfo.InvariantCulture, $"reading {reading.Number}, {problem.Where}") }));
        }

        return problems.Take(MostTold);
    }
}
