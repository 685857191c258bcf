using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Keeping;

/// <summary>How a study file is, and what was rescued of it.</summary>
/// <param name="Examined">How it is.</param>
/// <param name="Lost">What could not be rescued; null: no rescue was asked for.</param>
/// <param name="Copy">The rescue copy, or null.</param>
public sealed record StudyCondition(Examined Examined, IReadOnlyList<string>? Lost, string? Copy);

/// <summary>Looks after study files: examines, rescues, packs, exports, and strikes out readings.</summary>
public static class StudyCare
{
    /// <summary>Examines a file without changing it; with a name for it, writes a rescue copy of what can be read.</summary>
    public static Checked<StudyCondition> Examine(string path, string? copy) => StudyExamination.Of(path).Then(examined => copy is null
        ? new Checked<StudyCondition>(new StudyCondition(examined, null, null))
        : StudyRescue.Read(path).Then(rescued => StudyBook.Create(copy, rescued.Study, TimeProvider.System).Map(book =>
        {
            book.Dispose();
            return new StudyCondition(examined, rescued.Lost, Path.GetFullPath(copy));
        })));

    /// <summary>Closes and packs: one file with nothing beside it.</summary>
    public static Checked<long> Pack(string path) => StudyBook.Open(path, readOnly: false).Then(book => book.Pack());

    /// <summary>Writes the whole study, kept files too, as a bundle; never over something that is there.</summary>
    public static Checked<string> Export(string path, string bundle) => Path.Exists(bundle)
        ? new(new Problem("The bundle would replace a file.", bundle, "the file is there", "a name that is not taken", "Choose another name, or move the file away."))
        : StudyBook.Open(path, readOnly: true).Then(book =>
        {
            using (book)
            {
                return Bundle.Write(book.ReadWhole(), bundle).Map(Path.GetFullPath);
            }
        });

    /// <summary>The study as it stood at an earlier opening, as a file of its own.</summary>
    public static Checked<string> Restore(string path, long number, string copy) => PastStates.Read(path, number).Then(study => StudyBook.Create(copy, study, TimeProvider.System)).Map(book =>
    {
        book.Dispose();
        return Path.GetFullPath(copy);
    });

    /// <summary>Strikes readings of a run out, or lets them stand again.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="run">The run.</param>
    /// <param name="readings">Numbers of the readings, spans such as 1-22, or 'all'.</param>
    /// <param name="because">Why they do not count; null: they stand again.</param>
    public static Checked<StudyChanged> Strike(string path, string run, IReadOnlyList<string> readings, string? because) => OpenStudy.Read(path).Then(opened =>
    {
        int count = Runs(opened.Study).FirstOrDefault(one => one.Id.Name == run)?.Readings.Count ?? 0;
        var numbers = NumberSpans.Read(readings, count);
        return numbers is null && count > 0
            ? new Checked<StudyChanged>(new Problem("These are no numbers of readings.", $"run {run}", readings.Count > 0 ? string.Join(' ', readings) : "empty", $"numbers from 1 to {RunWords.Number(count, "0")}, spans such as 1-{RunWords.Number(count, "0")}, or all", "Count the readings as 'heatwright study' and the trial's page number them."))
            : Struck(path, run, numbers ?? [], because);
    });

    private static Checked<StudyChanged> Struck(string path, string run, IReadOnlyList<int> numbers, string? because) =>
        ChangeStudy.Run(path, $"{(because is null ? "Let stand again" : "Struck out")} {NumberSpans.Told(numbers)} of {run}", study =>
        {
            var runs = Runs(study);
            if (runs.FirstOrDefault(one => one.Id.Name == run) is not { } found)
            {
                return new(new Problem("The study has no such run.", path, run, string.Join(", ", runs.Select(one => one.Id.Name)), "Choose one of them."));
            }

            return numbers.Where(number => number < 1 || number > found.Readings.Count).ToArray() is { Length: > 0 } wrong
                ? new(new Problem("The run has no such reading.", $"run {run}", string.Join(", ", wrong), $"1 to {RunWords.Number(found.Readings.Count, "0")}", "Count the readings as 'heatwright study' and the trial's page number them."))
                : new(With(study, found with { Readings = [.. found.Readings.Select(reading => numbers.Contains(reading.Number) ? reading with { StruckBecause = because } : reading)] }));
        });

    private static Run[] Runs(Study study) => [.. study.Trials.SelectMany(trial => trial.Runs)];

    private static Study With(Study study, Run run) => study with { Trials = [.. study.Trials.Select(trial => trial with { Runs = [.. trial.Runs.Select(one => one.Id == run.Id ? run : one)] })] };
}
