namespace Heatwright.Trials;

/// <summary>Numbers of a run, column by column, with what was left out and why. Raw texts stay in the run.</summary>
public sealed class ReadingTable
{
    private readonly Dictionary<string, double[]> columns;

    private ReadingTable(Run run, int[] numbers, Dictionary<string, double[]> columns, List<Remark> remarks)
    {
        Run = run;
        Numbers = numbers;
        this.columns = columns;
        Remarks = remarks;
    }

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>Reading number of each row kept.</summary>
    public int[] Numbers { get; }

    /// <summary>What the checks said.</summary>
    public IReadOnlyList<Remark> Remarks { get; }

    /// <summary>Largest standard doubt of a time that was typed off a film, s; 0: off a watch.</summary>
    public double FilmDoubtS { get; private init; }

    /// <summary>Where in its film each row kept stands, s; empty: its times are a watch's.</summary>
    public double[] FilmS { get; private init; } = [];

    /// <summary>Where the film of the times leaves some out, each by the first row kept behind it, with a stated length of which the doubt is known.</summary>
    public IReadOnlyList<FilmTimes.Cut> Cuts { get; private init; } = [];

    /// <summary>Rows kept.</summary>
    public int Count => Numbers.Length;

    /// <summary>A column in SI units (degrees stay °C); NaN where nothing usable was read. Throws for a name the run lacks.</summary>
    public double[] this[string column] => columns.TryGetValue(column, out double[]? values)
        ? values
        : throw new KeyNotFoundException($"Run '{Run.Id}' has no column '{column}'.");

    /// <summary>True where the run has the column.</summary>
    public bool Has(string column) => columns.ContainsKey(column);

    /// <summary>The run as it would read had a cut of its film been longer by its standard doubt.</summary>
    /// <param name="cut">One of <see cref="Cuts"/>.</param>
    internal ReadingTable Longer(FilmTimes.Cut cut) => With(Run, new(columns, StringComparer.Ordinal) { ["time"] = [.. columns["time"].Select((time, row) => row < cut.From ? time : time + cut.DoubtS)] });

    /// <summary>The run as it would read had a setting of it been larger by its standard doubt.</summary>
    /// <param name="setting">One of the run's.</param>
    internal ReadingTable Moved(string setting) => With(Run with { Settings = new Dictionary<string, double>(Run.Settings, StringComparer.Ordinal) { [setting] = Run.Settings[setting] + Run.SettingDoubt(setting) } }, columns);

    private ReadingTable With(Run run, Dictionary<string, double[]> read) => new(run, Numbers, read, [.. Remarks])
    {
        FilmDoubtS = FilmDoubtS,
        FilmS = FilmS,
        Cuts = Cuts,
    };

    /// <summary>Numbers of a run that stand after strike-outs and checks.</summary>
    /// <param name="run">The run.</param>
    /// <param name="trial">The trial it belongs to, for the remarks.</param>
    public static ReadingTable Read(Run run, Trial trial)
    {
        List<Remark> remarks = [];
        List<Reading> kept = [];
        List<double[]> rows = [];
        int timed = run.Columns.ToList().FindIndex(column => column.Name == "time");
        var film = timed < 0 ? null : FilmTimes.Of(run, timed);
        foreach (var (reading, row) in run.Readings.Select((reading, row) => (reading, row)))
        {
            if (reading.StruckBecause is { } because)
            {
                remarks.Add(new(trial.Id, run.Id, reading.Number, $"struck out: {because}", Remark.LeftOut));
                continue;
            }

            double[] values = [.. run.Columns.Select((column, i) => Number(reading, i, column, i == timed ? film?.Read[row] : null, trial, run, remarks))];
            if (values.Any(double.IsFinite))
            {
                kept.Add(reading);
                rows.Add(values);
            }
        }

        // A film's times say themselves where they belong; those of a watch may have been corrected at the end.
        if (timed >= 0 && film is null)
        {
            int[] order = TimeOrder.Of([.. rows.Select(row => row[timed])], run.Readings.Count(reading => reading.StruckBecause is not null));
            (kept, rows) = ([.. order.Select(row => kept[row])], [.. order.Select(row => rows[row])]);
            if (trial.Kind is TrialKind.Discharge or TrialKind.Pulse && TimeOrder.Late([.. rows.Select(row => row[timed])]) is [var back, ..])
            {
                remarks.Add(new(trial.Id, run.Id, kept[back].Number, $"time '{kept[back].Raw[timed]}' lies before '{kept[back - 1].Raw[timed]}' above it: readings whose time goes back are not counted. Type a test done again into a run of its own; strike a wrong time out, and type that reading again.", Remark.Kept));
            }
        }

        bool[] suspect = ReadingChecks.Suspects(trial, run, kept, rows, remarks);
        int[] stay = [.. Enumerable.Range(0, rows.Count).Where(row => !suspect[row])];
        var columns = run.Columns.Select((column, i) => (column.Name, Values: stay.Select(row => rows[row][i]).ToArray()))
            .ToDictionary(pair => pair.Name, pair => pair.Values, StringComparer.Ordinal);
        int[] numbers = [.. stay.Select(row => kept[row].Number)];
        return new(run, numbers, columns, remarks)
        {
            FilmDoubtS = film?.DoubtS.DefaultIfEmpty(0).Max() ?? 0,
            FilmS = film is null ? [] : [.. numbers.Select(number => film.FilmS[number - 1])],
            Cuts = [.. (film?.Cuts ?? []).Where(cut => cut.DoubtS > 0).Select(cut => cut with { From = numbers.Count(number => number <= cut.From) })],
        };
    }

    private static double Number(Reading reading, int column, Column as1, ReadingText? film, Trial trial, Run run, List<Remark> remarks)
    {
        string raw = reading.Raw[column].Trim();
        var read = film ?? ReadingText.Read(raw, Quantities.Units.Find(as1.Unit), as1.Name);
        if (read.Says == ReadingSays.Overload)
        {
            remarks.Add(new(trial.Id, run.Id, reading.Number, $"{as1.Name} shows '{raw}': overload, not a number. Take a higher range, or check the connection.", Remark.LeftOut));
        }
        else if (read.Says == ReadingSays.Unclear)
        {
            remarks.Add(new(trial.Id, run.Id, reading.Number, $"{as1.Name} '{raw}' is not a number here{(film is null ? "" : $": {read.Why}")}. Type it again, or strike the reading out.", Remark.LeftOut));
        }

        return read.Value;
    }
}

/// <summary>Something a check noticed about a reading.</summary>
/// <param name="Trial">Trial.</param>
/// <param name="Run">Run.</param>
/// <param name="Reading">Reading number; 0: the run as a whole.</param>
/// <param name="Words">What and what to do, in trade words.</param>
/// <param name="Effect">Left out of the fit, or kept.</param>
public sealed record Remark(Quantities.TrialId Trial, Quantities.RunId Run, int Reading, string Words, string Effect)
{
    /// <summary>The reading takes no part in the fit; it stays in the study.</summary>
    public const string LeftOut = "left out";

    /// <summary>The reading counts.</summary>
    public const string Kept = "kept";
}
