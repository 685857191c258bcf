using Heatwright.BuildSheets;
using Heatwright.Logs;
using Heatwright.Quantities;

namespace Heatwright.Jobs.BuildSheets;

/// <summary>Reads a calibration: counts of the converter beside degrees of a probe, as a log or typed, and what they were taken under.</summary>
internal static class CalibrationFile
{
    public static Checked<IReadOnlyList<CalibrationPoint>> Read(string path)
    {
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The calibration cannot be opened.", path, error.Message, "a file of counts and degrees", "Check the name."));
        }

        var log = LogReader.Read(bytes, new LogMapping { TimeUnit = "s" });
        if (log.Questions.Count > 0)
        {
            return new([.. log.Questions.Select(question => new Problem(question.Text, path, "not settled by the file", string.Join("; ", question.Choices.Select(choice => choice.Text)), "Write the clean columns with 'heatwright log read FILE --csv OUT' and its answers, and give that file."))]);
        }

        var counts = Find(log, "count", column => column.Unit is null);
        var degrees = Find(log, "degrees", column => column.Unit?.Measures(Units.Celsius) == true) ?? Find(log, "temp", _ => false) ?? Find(log, "probe", _ => false);
        if (counts is null || degrees is null)
        {
            return new(new Problem("The calibration lacks a column.", path, log.Columns.Count > 0 ? string.Join(", ", log.Columns.Select(column => column.Name)) : "no columns", "counts and degrees, with time where it was noted", "Name the columns so in the first line: time,counts,degrees."));
        }

        return new((IReadOnlyList<CalibrationPoint>)[.. Enumerable.Range(0, log.RowsKept).Where(row => double.IsFinite(counts.Values[row]) && double.IsFinite(degrees.Values[row]))
            .Select(row => new CalibrationPoint(log.TimeS.Length > row ? log.TimeS[row] : double.NaN, counts.Values[row], degrees.Unit is { } unit ? Units.Celsius.FromSi(unit.ToSi(degrees.Values[row])) : degrees.Values[row]))]);
    }

    /// <summary>What the readings were taken under; what is not said is as on the board.</summary>
    public static Checked<CalibrationConditions> Under(IReadOnlyList<string> words, SheetChoices board)
    {
        var under = new CalibrationConditions(board.Si("reference"), (int)board.Si("converter-bits"), board.Si("supply") - board["supply"].PlusMinus - board.Si("amplifier-headroom"), 25, board["reference"].PlusMinus / board["reference"].Value, board.Si("cold-end-error"));
        List<Problem> problems = [];
        foreach (string word in words)
        {
            string[] pair = word.Split('=', 2, StringSplitOptions.TrimEntries);
            var unit = pair[0] switch { "reference" or "ceiling" => Units.Volt, "bits" => Units.One, "cold" => Units.Celsius, _ => null };
            if (pair.Length < 2 || unit is null)
            {
                problems.Add(new("This does not say what the calibration was taken under.", "--taken", word, "reference=, bits=, ceiling= (highest volts of the amplifier) or cold= (its cold end)", "Type for example --taken \"reference=5V\"."));
                continue;
            }

            var read = OptionReader.Amount($"--taken {pair[0]}", pair[1], unit == Units.One ? Expect.Ratio : Expect.Of(unit, pair[0]));
            problems.AddRange(read.Problems);
            if (read.IsFine)
            {
                double value = unit.IsLevel ? Units.Celsius.FromSi(read.Value.Si) : read.Value.Si, half = read.Value.PlusMinus * read.Value.Unit.Factor;
                under = pair[0] switch
                {
                    "reference" => under with { ReferenceV = value, ReferenceShare = half > 0 ? half / value : under.ReferenceShare },
                    "bits" => under with { Bits = (int)value },
                    "ceiling" => under with { CeilingV = value },
                    _ => under with { ColdC = value, ColdK = half > 0 ? half : under.ColdK },
                };
            }
        }

        if (under.Bits is < 8 or > 16 || !(under.ReferenceV > 0) || !(under.CeilingV > 0))
        {
            problems.Add(new("The calibration cannot have been taken under this.", "--taken", $"{under.Bits} bits, reference {Display.Significant(under.ReferenceV, 4)} V, ceiling {Display.Significant(under.CeilingV, 4)} V", "8 to 16 bits, volts above 0", "Correct it."));
        }

        return problems.Count > 0 ? new(problems) : new(under);
    }

    private static LogColumn? Find(LogReading log, string word, Func<LogColumn, bool> otherwise)
    {
        var numbers = log.Columns.Where((column, i) => column.Kind == ColumnKind.Number && i != log.TimeColumn).ToArray();
        return numbers.FirstOrDefault(column => column.Name.Contains(word, StringComparison.OrdinalIgnoreCase)) ?? (numbers.Where(otherwise).ToArray() is [var only] ? only : null);
    }
}
