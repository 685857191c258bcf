using System.Globalization;
using Heatwright.Jobs.Trials;
using Heatwright.Logs;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Keeping;

/// <summary>A log that is to become a run.</summary>
/// <param name="Log">The log file.</param>
/// <param name="Study">The study file.</param>
/// <param name="Trial">The trial it belongs to.</param>
public sealed record LogImport(string Log, string Study, string Trial)
{
    /// <summary>Id of the run; null: made from the trial and a number.</summary>
    public string? Run { get; init; }

    /// <summary>Id of the instrument; its remembered way to read logs is used and kept. Empty: none.</summary>
    public string Instrument { get; init; } = "";

    /// <summary>Which column is which, as the maker says: volts=U,amps=I.</summary>
    public string Columns { get; init; } = "";

    /// <summary>Answers to what the log leaves open.</summary>
    public LogMapping? Answers { get; init; }

    /// <summary>Which meter read which column, where it is another one than the instrument: 'degrees=thermometer'.</summary>
    public IReadOnlyList<string> Meters { get; init; } = [];

    /// <summary>What holds for the whole run: 'air=24C'.</summary>
    public IReadOnlyList<string> Settings { get; init; } = [];
}

/// <summary>What became of a log.</summary>
/// <param name="Run">The run.</param>
/// <param name="Readings">How many readings it has.</param>
/// <param name="Pairs">Which column is which.</param>
/// <param name="Kept">The raw file as it is kept.</param>
/// <param name="Notes">What the reader decided.</param>
/// <param name="Refused">How many lines it refused.</param>
public sealed record LogImported(string Run, int Readings, IReadOnlyList<ColumnPair> Pairs, string Kept, IReadOnlyList<string> Notes, int Refused);

/// <summary>Takes a log into a study as a run; the raw file is kept whole, and how it was read is remembered for its instrument.</summary>
public static class ImportLog
{
    /// <summary>Imports, or says what stands in the way; a question of the log is a problem with typed answers.</summary>
    /// <param name="import">What to import.</param>
    /// <param name="asked">Turns a question of the log into a problem.</param>
    public static Checked<LogImported> Run(LogImport import, Func<LogQuestion, Problem> asked) => KeepFiles.Content(import.Log).Then(bytes => Take(import, bytes, asked));

    /// <summary>As <see cref="Run"/>, of bytes that came another way than as a file; <see cref="LogImport.Log"/> is then their name.</summary>
    public static Checked<LogImported> Take(LogImport import, byte[] bytes, Func<LogQuestion, Problem> asked) => Pairs(import.Columns).Then(said =>
    {
        LogImported? done = null;
        return ChangeStudy.Run(import.Study, $"Imported {Path.GetFileName(import.Log)}", study => Into(study, import, bytes, said, asked).Map(into =>
        {
            done = into.Done;
            return into.Study;
        })).Map(_ => done!);
    });

    /// <summary>The log as it would be read for a trial, with what is remembered of its instrument, and which column would be which; nothing is stored.</summary>
    public static (LogReading Log, Checked<IReadOnlyList<ColumnPair>> Pairs) Look(Study study, LogImport import, byte[] bytes)
    {
        var (log, labels) = Read(study, import, bytes);
        return (log, PlanTrial.Found(study, import.Trial).Then(trial => Pairs(import.Columns).Then(said => RunFromLog.Pair(log, trial, said, labels))));
    }

    private static Checked<(Study Study, LogImported Done)> Into(Study study, LogImport import, byte[] bytes, IReadOnlyList<ColumnPair> said, Func<LogQuestion, Problem> asked)
    {
        if (study.Trials.FirstOrDefault(trial => trial.Id.Name == import.Trial) is not { } trial)
        {
            return new(new Problem("The study has no such trial.", "--trial", import.Trial, string.Join(", ", study.Trials.Select(one => one.Id.Name)), "Choose one of them, or add the trial first."));
        }

        if (import.Instrument.Length > 0 && !study.Instruments.Any(instrument => instrument.Id == import.Instrument))
        {
            return new(new Problem("The study has no such instrument.", "--instrument", import.Instrument, string.Join(", ", study.Instruments.Select(one => one.Id)), "Choose one of them, or leave --instrument out."));
        }

        var (log, labels) = Read(study, import, bytes);
        if (log.Questions.Count > 0)
        {
            return new([.. log.Questions.Select(asked)]);
        }

        if (log.RowsKept == 0)
        {
            return new(new Problem("No readings were found in the log.", import.Log, "no rows", "a text file of readings", "Look at it with 'heatwright log read'."));
        }

        return RunFromLog.Pair(log, trial, said, labels).Then(pairs => TypeReadings.Made(study, trial, new(import.Trial, import.Run ?? "", [.. pairs.Select(pair => pair.Run)], import.Meters, import.Settings))
            .Map(begun => Taken(study, import, trial, bytes, log, pairs, begun)))
            .Then(taken => Again(study, trial, taken.Study) is { } again ? new(again) : new Checked<(Study Study, LogImported Done)>((taken.Study, taken.Done with { Notes = [.. taken.Done.Notes, .. Elsewhere(study, trial, taken.Study), .. Left(log, trial, taken.Done.Pairs)] })));
    }

    /// <summary>The same log in the same trial once more would count double; columns that were chosen otherwise, or readings that were struck out, make another run of it.</summary>
    private static Problem? Again(Study before, Trial trial, Study after)
    {
        var made = after.Trials.First(one => one.Id == trial.Id).Runs[^1];
        string[] same = [.. Same(before, after).Select(file => file.Subject)];
        return trial.Runs.FirstOrDefault(run => same.Contains(run.Id.Name) && run.Readings.Any(reading => reading.StruckBecause is null) && run.Columns.Select(column => column.Name).SequenceEqual(made.Columns.Select(column => column.Name), StringComparer.Ordinal)) is { } there
            ? new("This log was taken in already: its readings would count twice.", after.Files[^1].Name, $"same content as run '{there.Id}'", "a log of its own for each run", $"Keep the run that is there. To take it in otherwise, first strike 'all' of {there.Id} out.")
            : null;
    }

    private static IEnumerable<string> Elsewhere(Study before, Trial trial, Study after)
    {
        string[] own = [.. trial.Runs.Select(run => run.Id.Name)];
        return Same(before, after).Select(file => $"The same content as run '{file.Subject}'{(own.Contains(file.Subject) ? "" : " of another trial")}, taken from '{file.Name}'.");
    }

    /// <summary>Kept logs of runs with the bytes of the one that was kept last.</summary>
    private static IEnumerable<KeptFile> Same(Study before, Study after) => before.Files.Where(file => file.About == KeptAbout.Run && file.Sha256 == after.Files[^1].Sha256);

    /// <summary>Columns of the log that went into no column of the run, and how each is taken.</summary>
    private static IEnumerable<string> Left(LogReading log, Trial trial, IReadOnlyList<ColumnPair> pairs)
    {
        var left = RunFromLog.Left(log, trial, pairs);
        string[] never = [.. left.Where(one => one.Could.Count == 0).Select(one => $"'{one.Log}'")];
        return [.. left.Where(one => one.Could.Count > 0).Select(one => $"'{one.Log}' was not taken. If it is {string.Join(" or ", one.Could)} of this run, undo this and import again with --columns '{one.Could[0]}={one.Log}'."),
            .. never.Length > 0 ? new[] { $"Not taken, for a run of this trial has no place for {(never.Length == 1 ? "it" : "them")}: {string.Join(", ", never)}." } : []];
    }

    /// <summary>The log as its instrument's remembered way has it, and the names that go with that way where the log is of the same form.</summary>
    private static (LogReading Log, IReadOnlyList<ColumnLabel> Labels) Read(Study study, LogImport import, byte[] bytes)
    {
        var way = study.LogWays.FirstOrDefault(one => one.Instrument == import.Instrument);
        var log = LogReader.Read(bytes, Answered(way, import.Answers));
        return (log, way is not null && way.Signature == log.Mapping.Signature ? way.Labels : []);
    }

    private static (Study Study, LogImported Done) Taken(Study study, LogImport import, Trial trial, byte[] bytes, LogReading log, IReadOnlyList<ColumnPair> pairs, Run begun)
    {
        string id = begun.Id.Name;
        var run = RunFromLog.Make(begun.Id, trial, log, pairs, import.Instrument);
        run = run with { Settings = begun.Settings, SettingsPlusMinus = begun.SettingsPlusMinus, Columns = [.. run.Columns.Select(column => begun.Columns.First(one => one.Name == column.Name).Instrument is { Length: > 0 } meter ? column with { Instrument = meter } : column)] };
        var kept = KeptFile.Of(KeepFiles.FreeId(study, Path.GetFileName(import.Log)), Path.GetFileName(import.Log), KeptAbout.Run, id,
            $"Raw log of this run. {string.Join(", ", pairs.Select(pair => $"{pair.Run} from '{pair.Log}'"))}.", bytes);
        ColumnLabel[] labels = [.. pairs.Where(pair => pair.Run != "time").Select(pair => new ColumnLabel(pair.Log, pair.Run, ""))];
        var next = study with
        {
            Trials = [.. study.Trials.Select(one => one.Id == trial.Id ? one with { Runs = [.. one.Runs, run] } : one)],
            Files = [.. study.Files, kept],
            LogWays = import.Instrument.Length == 0 ? study.LogWays : [.. study.LogWays.Where(one => one.Instrument != import.Instrument), LogWay.Of(import.Instrument, log.Mapping, labels)],
        };
        return (next, new(id, run.Readings.Count, pairs, kept.Id, log.Notes, log.RowsRefusedCount));
    }

    /// <summary>What is answered now stands above what is remembered.</summary>
    private static LogMapping? Answered(LogWay? way, LogMapping? now)
    {
        var before = way?.Mapping();
        return before is null || now is null ? now ?? before : before with
        {
            CommaSeparates = now.CommaSeparates ?? before.CommaSeparates,
            DecimalMark = now.DecimalMark ?? before.DecimalMark,
            DateOrder = now.DateOrder ?? before.DateOrder,
            MinutesAndSeconds = now.MinutesAndSeconds ?? before.MinutesAndSeconds,
            TimeUnit = now.TimeUnit ?? before.TimeUnit,
        };
    }

    /// <summary>volts=U,amps=I, as it is typed.</summary>
    public static Checked<IReadOnlyList<ColumnPair>> Pairs(string typed)
    {
        var pairs = new List<ColumnPair>();
        foreach (string one in typed.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            int equals = one.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0 || equals == one.Length - 1)
            {
                return new(new Problem("This does not say which column is which.", "--columns", one, "volts=NAME,amps=NAME …", "Write the run's column, '=', and the log's column."));
            }

            pairs.Add(new(one[..equals].Trim(), one[(equals + 1)..].Trim()));
        }

        return new((IReadOnlyList<ColumnPair>)pairs);
    }

    internal static string FreeRun(Study study, string trial)
    {
        var taken = study.Trials.SelectMany(one => one.Runs).Select(run => run.Id.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Enumerable.Range(1, int.MaxValue).Select(i => $"{trial}-{i.ToString(CultureInfo.InvariantCulture)}").First(id => !taken.Contains(id));
    }
}
