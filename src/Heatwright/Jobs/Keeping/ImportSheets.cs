using Heatwright.Logs;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Keeping;

/// <summary>What became of one filled sheet.</summary>
/// <param name="Sheet">Its file.</param>
/// <param name="Run">The run it became.</param>
/// <param name="Readings">How many readings.</param>
public sealed record SheetImported(string Sheet, string Run, int Readings);

/// <summary>Many filled reading sheets, one from each learner or station, become runs of one trial in one change: all of them or none.</summary>
public static class ImportSheets
{
    /// <summary>Imports, or tells of each sheet what stands in its way.</summary>
    /// <param name="study">The study file.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="sheets">The sheets: text tables as 'log read' takes them; a folder stands for the files in it.</param>
    /// <param name="columns">Which column is which, where names and units do not tell.</param>
    /// <param name="answers">Answers to what a sheet leaves open; they hold for all.</param>
    /// <param name="asked">Turns a question of a sheet into a problem.</param>
    public static Checked<IReadOnlyList<SheetImported>> Run(string study, string trial, IReadOnlyList<string> sheets, string columns, LogMapping? answers, Func<LogQuestion, Problem> asked)
    {
        string[] files = [.. sheets.SelectMany(sheet => Directory.Exists(sheet) ? Directory.EnumerateFiles(sheet).Where(file => !Path.GetFileName(file).StartsWith('.')).Order(StringComparer.Ordinal) : Enumerable.Repeat(sheet, 1))];
        var done = new List<SheetImported>();
        return ImportLog.Pairs(columns).Then(said => ChangeStudy.Run(study, $"Imported {RunWords.Number(files.Length, "0")} sheets into {trial}", now =>
        {
            var problems = new List<Problem>();
            if (now.Trials.FirstOrDefault(one => one.Id.Name == trial) is not { } into)
            {
                return new(new Problem("The study has no such trial.", "--trial", trial, string.Join(", ", now.Trials.Select(one => one.Id.Name)), "Choose one of them, or add the trial first."));
            }

            var runs = new List<Run>();
            var kept = new List<KeptFile>();
            foreach (string file in files)
            {
                var one = KeepFiles.Content(file).Then(bytes => Sheet(bytes, file, into, said, answers, asked).Map(run => (Bytes: bytes, Run: run)));
                problems.AddRange(one.Problems.Select(problem => problem with { Where = $"{Path.GetFileName(file)}: {problem.Where}" }));
                if (one.IsFine)
                {
                    string id = Free(Path.GetFileNameWithoutExtension(file), now.Trials.SelectMany(other => other.Runs).Concat(runs).Select(run => run.Id.Name));
                    runs.Add(one.Value.Run with { Id = new(id) });
                    kept.Add(KeptFile.Of(KeepFiles.FreeId(now with { Files = [.. now.Files, .. kept] }, Path.GetFileName(file)), Path.GetFileName(file), KeptAbout.Run, id, "The sheet as it was handed in.", one.Value.Bytes));
                    done.Add(new(file, id, one.Value.Run.Readings.Count));
                }
            }

            return problems.Count > 0 ? new(problems) : new(now with
            {
                Trials = [.. now.Trials.Select(other => other.Id == into.Id ? other with { Runs = [.. other.Runs, .. runs] } : other)],
                Files = [.. now.Files, .. kept],
            });
        })).Map(_ => (IReadOnlyList<SheetImported>)done);
    }

    private static Checked<Run> Sheet(byte[] bytes, string file, Trial trial, IReadOnlyList<ColumnPair> said, LogMapping? answers, Func<LogQuestion, Problem> asked)
    {
        var log = LogReader.Read(bytes, answers);
        return log.Questions.Count > 0 ? new([.. log.Questions.Select(asked)])
            : log.RowsKept == 0 ? new(new Problem("No readings were found in the sheet.", file, "no rows", "a table with a heading and numbers", "Look at it with 'heatwright log read'."))
            : RunFromLog.Pair(log, trial, said, []).Map(pairs => RunFromLog.Make(new("sheet"), trial, log, pairs, ""));
    }

    private static string Free(string name, IEnumerable<string> taken)
    {
        var known = taken.ToHashSet(StringComparer.OrdinalIgnoreCase);
        string clean = string.Concat(name.Select(c => c < ' ' || "/\\:*?\"<>|".Contains(c, StringComparison.Ordinal) ? '-' : c)).Trim(' ', '.');
        clean = clean.Length == 0 ? "sheet" : clean.Length > 70 ? clean[..70].Trim(' ', '.') : clean;
        return Enumerable.Range(1, int.MaxValue).Select(i => i == 1 ? clean : $"{clean}-{RunWords.Number(i, "0")}").First(id => !known.Contains(id));
    }
}
