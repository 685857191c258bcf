using System.Globalization;
using System.Text;
using Heatwright.Logs;
using Heatwright.Quantities;

namespace Heatwright.Jobs.Keeping;

/// <summary>Two logs whose clocks are to be compared.</summary>
/// <param name="First">The log whose clock holds.</param>
/// <param name="Second">The other.</param>
/// <param name="FirstColumn">Column to go by; null: the one that matches best.</param>
/// <param name="SecondColumn">The same of the second.</param>
/// <param name="Confirmed">Offset that the maker confirms, as typed; null: not yet.</param>
/// <param name="Csv">Where both go on one clock; only once the offset is confirmed.</param>
public sealed record ClockQuestion(string First, string Second, string? FirstColumn, string? SecondColumn, string? Confirmed, string? Csv);

/// <summary>What was found.</summary>
/// <param name="AddS">Seconds to add to the second log's clock.</param>
/// <param name="First">Column gone by.</param>
/// <param name="Second">The same of the second.</param>
/// <param name="Match">How well both go together; null: the maker said the offset.</param>
/// <param name="NextBest">The same of the best other offset.</param>
/// <param name="Written">File with both logs, or null.</param>
public sealed record ClocksCompared(double AddS, string? First, string? Second, double? Match, double? NextBest, string? Written);

/// <summary>Finds the offset between two logs, and puts both on one clock once the maker has confirmed it.</summary>
public static class CompareClocks
{
    /// <summary>The offset, or why the logs do not tell it.</summary>
    public static Checked<ClocksCompared> Run(ClockQuestion question) => Timed(question.First).Then(first => Timed(question.Second).Then(second =>
    {
        if (question.Confirmed is { } typed)
        {
            return double.TryParse(typed, NumberStyles.Float, CultureInfo.InvariantCulture, out double seconds) && double.IsFinite(seconds)
                ? Written(question, first, second, new(seconds, null, null, null, null, null))
                : new(new Problem("This is no offset.", "--offset", typed, "seconds, with a decimal point", "Type the offset as it was shown."));
        }

        if (question.Csv is not null)
        {
            return new(new Problem("The offset is not confirmed yet.", "--csv", "no --offset", "an offset that you have looked at", "Run it without --csv first, then add --offset as it shows."));
        }

        return Found(question, first, second);
    }));

    private static Checked<ClocksCompared> Found(ClockQuestion question, LogReading first, LogReading second)
    {
        var best = (from a in Columns(first, question.FirstColumn)
                    from b in Columns(second, question.SecondColumn)
                    let match = ClockOffset.Find(new(first.TimeS, a.Values), new(second.TimeS, b.Values))
                    where match is not null
                    orderby match.Match descending
                    select (a.Name, Other: b.Name, match)).FirstOrDefault();
        return best.match is not { } found ? new(new Problem("The logs do not tell their offset.", $"{question.First}, {question.Second}", "too few readings that change", "8 readings or more in which both see the same steps", "Log a few switchings on both, or say the offset with --offset."))
            : !found.IsClear ? new(new Problem("The logs do not tell their offset clearly.", $"{best.Name}, {best.Other}",
                string.Create(CultureInfo.InvariantCulture, $"match {found.Match:0.00} at {found.AheadS:0.###} s, {found.NextBest:0.00} elsewhere"), "0.5 or more, and well above any other", "Choose columns with --first and --second, or say the offset with --offset."))
            : new(new ClocksCompared(Math.Round(found.AheadS, 3), best.Name, best.Other, found.Match, found.NextBest, null));
    }

    private static IEnumerable<LogColumn> Columns(LogReading log, string? wanted) =>
        log.Columns.Where((column, i) => i != log.TimeColumn && column.Kind == ColumnKind.Number && column.Texts.Count == 0 && (wanted is null || column.Name == wanted));

    private static Checked<LogReading> Timed(string path) => ReadLog.Run(path).Then(log => log.Questions.Count > 0
        ? new(new Problem("The log leaves something open.", path, log.Questions[0].Text, "a log that is settled", "Read it with 'heatwright log read', answer, and write a clean copy with --csv."))
        : log.TimeS.Length == 0 ? new(new Problem("The log has no time.", path, log.TimeBase.Word(), "a time column, or an interval in its preamble", "Choose another log."))
        : new Checked<LogReading>(log));

    private static Checked<ClocksCompared> Written(ClockQuestion question, LogReading first, LogReading second, ClocksCompared compared) => question.Csv is not { } path ? new(compared)
        : WriteFile.New(path, Encoding.UTF8.GetBytes(Together(first, second, compared.AddS))).Map(written => compared with { Written = written });

    /// <summary>All rows of both in the order of one clock; each row holds what its own log says, nothing is made up between.</summary>
    private static string Together(LogReading first, LogReading second, double addS)
    {
        var (a, b) = (Kept(first), Kept(second));
        var names = new List<string>();
        foreach (string name in a.Select(Heading).Concat(b.Select(Heading)))
        {
            names.Add(names.Contains(name) ? name.Contains('[', StringComparison.Ordinal) ? name.Replace(" [", " 2 [", StringComparison.Ordinal) : name + " 2" : name);
        }

        var text = new StringBuilder("time [s],").AppendJoin(',', names.Select(Quoted)).Append('\n');
        double beganS = first.TimeS.First(time => !double.IsNaN(time));
        var rows = first.TimeS.Select((time, row) => (Time: time, First: true, Row: row)).Concat(second.TimeS.Select((time, row) => (Time: time + addS, First: false, Row: row))).Where(row => !double.IsNaN(row.Time)).OrderBy(row => row.Time);
        foreach (var (time, isFirst, row) in rows)
        {
            text.Append(Math.Round(time - beganS, 6).ToString("R", CultureInfo.InvariantCulture)).Append(',')
                .AppendJoin(',', a.Select(column => isFirst ? Cell(column, row) : "").Concat(b.Select(column => isFirst ? "" : Cell(column, row)))).Append('\n');
        }

        return text.ToString();
    }

    private static LogColumn[] Kept(LogReading log) => [.. log.Columns.Where((_, i) => i != log.TimeColumn)];

    private static string Heading(LogColumn column) => LogView.Unit(column) is { } unit ? $"{column.Name} [{unit}]" : column.Name;

    private static string Cell(LogColumn column, int row) => column.Texts.Count > 0 ? Quoted(column.Texts[row]) : column.Overload.Length > 0 && column.Overload[row] ? "OL"
        : double.IsNaN(column.Values[row]) ? "" : column.Values[row].ToString("R", CultureInfo.InvariantCulture);

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(",\"\n\r;") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
