namespace Heatwright.Logs;

/// <summary>Reads measurement logs as they come from the wild into columns.</summary>
public static class LogReader
{
    private const int MostPasses = 4;

    /// <summary>Reads a log from its bytes; never throws for what the bytes hold.</summary>
    /// <param name="raw">The file, unchanged; the caller keeps it as evidence.</param>
    /// <param name="remembered">How logs of this instrument were read before, or the answer to a question.</param>
    public static LogReading Read(ReadOnlyMemory<byte> raw, LogMapping? remembered = null)
    {
        var utf8 = LogText.ToUtf8(raw, out string encoding);
        var (from, linesBefore, stated) = StatedSeparator(utf8.Span);
        var sample = LogSample.Take(utf8.Span[from..]);
        var rows = LineForms.Find(utf8.Span[from..], sample);
        if (rows is not null)
        {
            (utf8, stated) = (rows.Text, rows.Separator);
            sample = LogSample.Take(utf8.Span);
        }
        else
        {
            utf8 = utf8[from..];
        }

        var text = utf8.Span;
        var choice = Separator(text, sample, stated, remembered, rows?.Names);
        var plan = choice is { } found ? PlanMaker.Make(text, sample, found.Separator, found.Cells, 0, linesBefore, rows?.Names, rows?.Stamped == true) : null;
        if (plan is null)
        {
            return LogAssembly.Nothing(text, linesBefore, encoding, remembered);
        }

        Evidence.Decide(text, plan, remembered);
        var fill = Fill(text, plan, remembered);
        var question = LoneComma.Question(text, sample, choice!.Value, plan, stated, remembered);
        return new LogAssembly(plan, fill, remembered).Reading(encoding, question);
    }

    /// <summary>The first lines that are not empty, as they stand in the file.</summary>
    /// <param name="raw">The file, unchanged.</param>
    /// <param name="count">So many at most.</param>
    public static IReadOnlyList<string> FirstLines(ReadOnlyMemory<byte> raw, int count)
    {
        const int Looked = 8192;
        var text = LogText.ToUtf8(raw[..Math.Min(raw.Length, Looked)], out _).Span;
        return [.. System.Text.Encoding.UTF8.GetString(text).Split('\n').Select(line => line.TrimEnd('\r')).Where(line => line.Trim().Length > 0).Take(count)];
    }

    /// <summary>A first line 'sep=;' states the separator.</summary>
    private static (int From, int LinesBefore, byte? Separator) StatedSeparator(ReadOnlySpan<byte> text)
    {
        var walk = new LineWalk(text);
        if (!walk.Next())
        {
            return (0, 0, null);
        }

        var line = walk.Line.Trim("\""u8);
        return line.Length == 5 && line.StartsWith("sep="u8) ? (walk.Following, 1, line[4]) : (0, 0, null);
    }

    private static SeparatorFinder.Choice? Separator(
        ReadOnlySpan<byte> text, LogSample sample, byte? stated, LogMapping? remembered, string[]? names)
    {
        if (names is not null)
        {
            return new((byte)'\t', names.Length, 1, true);
        }

        if (stated is { } mark && SeparatorFinder.Find(text, sample, [mark]) is { } choice)
        {
            return choice;
        }

        var free = SeparatorFinder.Find(text, sample);
        bool lone = free is { Separator: (byte)',', Cells: 2, HasHeader: false };
        return lone && (LoneComma.Separates(text, sample, out _) ?? remembered?.CommaSeparates) == false
            ? SeparatorFinder.Find(text, sample, [0]) ?? free : free;
    }

    /// <summary>Fills the columns; where rows show what the sample did not, the plan is mended and the rows are read again.</summary>
    private static ColumnFill Fill(ReadOnlySpan<byte> text, LogPlan plan, LogMapping? remembered)
    {
        var fill = ColumnFill.Run(text, plan);
        for (int pass = 1; pass < MostPasses && Mended(text, plan, fill, remembered); pass++)
        {
            fill = ColumnFill.Run(text, plan, fill);
        }

        return fill;
    }

    private static bool Mended(ReadOnlySpan<byte> text, LogPlan plan, ColumnFill fill, LogMapping? remembered)
    {
        bool mended = false;
        foreach (var column in fill.Columns.Where(column => column.Words > column.Read && column.Plan.Role is ColumnRole.Number or ColumnRole.Time))
        {
            column.Plan.Role = ColumnRole.Words;
            column.Plan.UnitBeside = false;
            mended = true;
        }

        char[] before = [.. plan.Columns.Select(column => column.Mark)];
        bool[] late = [.. fill.Columns.Select(column => column is { LateMark: true, Plan: { Role: ColumnRole.Number, Look.Marks: { CommaOpen: 0, CommaDecimal: 0 } } })];
        if (late.Contains(true))
        {
            Evidence.DecideAgain(text, plan, remembered, late);
        }

        return mended || !before.SequenceEqual(plan.Columns.Select(column => column.Mark));
    }
}
