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

    /// <summary>Rows kept.</summary>
    public int Count => Numbers.Length;

    /// <summary>A column in SI units (degrees stay °C); NaN where nothing usable was read. Throws for a name the run lacks.</summary>
    public double[] this[string column] => columns.TryGetValue(column, out double[]? values)
        ? values
        : throw new KeyNotFoundException($"Run '{Run.Id}' has no column '{column}'.");

    /// <summary>True where the run has the column.</summary>
    public bool Has(string column) => columns.ContainsKey(column);

    /// <summary>Numbers of a run that stand after strike-outs and checks.</summary>
    /// <param name="run">The run.</param>
    /// <param name="trial">The trial it belongs to, for the remarks.</param>
    public static ReadingTable Read(Run run, Trial trial)
    {
        List<Remark> remarks = [];
        List<Reading> kept = [];
        List<double[]> rows = [];
        foreach (var reading in run.Readings)
        {
            if (reading.StruckBecause is { } because)
            {
                remarks.Add(new(trial.Id, run.Id, reading.Number, $"struck out: {because}", Remark.LeftOut));
                continue;
            }

            double[] values = [.. run.Columns.Select((column, i) => Number(reading, i, column, trial, run, remarks))];
            if (values.Any(double.IsFinite))
            {
                kept.Add(reading);
                rows.Add(values);
            }
        }

        bool[] suspect = ReadingChecks.Suspects(trial, run, kept, rows, remarks);
        int[] stay = [.. Enumerable.Range(0, rows.Count).Where(row => !suspect[row])];
        var columns = run.Columns.Select((column, i) => (column.Name, Values: stay.Select(row => rows[row][i]).ToArray()))
            .ToDictionary(pair => pair.Name, pair => pair.Values, StringComparer.Ordinal);
        return new(run, [.. stay.Select(row => kept[row].Number)], columns, remarks);
    }

    private static double Number(Reading reading, int column, Column as1, Trial trial, Run run, List<Remark> remarks)
    {
        string raw = reading.Raw[column].Trim();
        var read = ReadingText.Read(raw, Quantities.Units.Find(as1.Unit), as1.Name);
        if (read.Says == ReadingSays.Overload)
        {
            remarks.Add(new(trial.Id, run.Id, reading.Number, $"{as1.Name} shows '{raw}': overload, not a number. Take a higher range, or check the connection.", Remark.LeftOut));
        }
        else if (read.Says == ReadingSays.Unclear)
        {
            remarks.Add(new(trial.Id, run.Id, reading.Number, $"{as1.Name} '{raw}' is not a number here. Type it again, or strike the reading out.", Remark.LeftOut));
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
