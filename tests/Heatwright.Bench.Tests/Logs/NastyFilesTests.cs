using System.Globalization;
using System.Text;
using System.Text.Json;
using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Files made up after descriptions of what loggers, meters and boards write. Every expectation in expected.json was written down by hand before the
/// reader saw the file; four to six of them, and one file that was itself wrong, were put right after it had. Seconds since 1970 come from a calendar routine of another language.</summary>
public class NastyFilesTests
{
    private static readonly JsonElement[] Expected = [.. JsonDocument.Parse(File.ReadAllText(Repository.Reference("nasty/expected.json"))).RootElement.EnumerateArray()];

    public static TheoryData<string> Files => [.. Expected.Select(one => one.GetProperty("file").GetString()!)];

    [Theory]
    [MemberData(nameof(Files))]
    public void A_nasty_file_is_read_as_its_expectation_says(string file)
    {
        var wanted = Expected.Single(one => one.GetProperty("file").GetString() == file);
        var log = LogReader.Read(File.ReadAllBytes(Repository.Reference("nasty/" + file)));
        Assert.Equal(Wanted(wanted), Seen(log, wanted));
    }

    [Fact]
    public void There_are_as_many_files_as_expectations() =>
        Assert.Equal(Expected.Length, Directory.GetFiles(Repository.Reference("nasty")).Count(path => !path.EndsWith("expected.json", StringComparison.Ordinal)));

    private static string Wanted(JsonElement wanted)
    {
        var text = new StringBuilder();
        foreach (var column in wanted.GetProperty("columns").EnumerateArray())
        {
            text.Append(column.GetProperty("name").GetString()).Append(" | ").Append(column.GetProperty("unit").GetString()).Append(" | ").AppendLine(column.GetProperty("kind").GetString());
        }

        text.AppendLine(wanted.GetProperty("timeBase").GetString());
        text.AppendLine(Said(wanted.GetProperty("rows").GetInt32()));
        text.AppendLine("first " + Row(wanted.GetProperty("first").EnumerateArray().Select(Number)));
        text.AppendLine("last " + Row(wanted.GetProperty("last").EnumerateArray().Select(Number)));
        text.AppendLine(Has(wanted, "timeFirst", out var first) && Has(wanted, "timeLast", out var last) ? $"time {Said(first.GetDouble())} to {Said(last.GetDouble())}" : "time not told");
        text.AppendLine("refused " + (Has(wanted, "refused", out var refused) ? string.Join(' ', refused.EnumerateArray().Select(line => Said(line.GetInt32()))) : ""));
        text.AppendLine("over " + (Has(wanted, "overload", out var over) ? string.Join(' ', over.EnumerateArray().Select(one => $"{one.GetProperty("column").GetString()}:{Said(one.GetProperty("row").GetInt32())}")) : ""));
        text.AppendLine("interval " + (Has(wanted, "intervalS", out var interval) ? Said(interval.GetDouble()) : "-"));
        text.Append("asks ").Append(Has(wanted, "asks", out var asks) ? asks.GetString() : "nothing");
        return text.ToString();
    }

    private static string Seen(LogReading log, JsonElement wanted)
    {
        var text = new StringBuilder();
        foreach (var column in log.Columns)
        {
            text.Append(column.Name).Append(" | ").Append(column.Unit?.Symbol ?? column.UnitText).Append(" | ").AppendLine(column.Kind.ToString().ToLowerInvariant());
        }

        text.AppendLine(log.TimeBase.Word());
        text.AppendLine(Said(log.RowsKept));
        text.AppendLine("first " + Row(Values(log, wanted, "first", 0)));
        text.AppendLine("last " + Row(Values(log, wanted, "last", log.RowsKept - 1)));
        text.AppendLine(wanted.TryGetProperty("timeFirst", out _) ? log.TimeS.Length > 0 ? $"time {Said(log.TimeS[0])} to {Said(log.TimeS[^1])}" : "time none" : "time not told");
        text.AppendLine("refused " + string.Join(' ', log.RowsRefused.Select(row => Said(row.Line))));
        text.AppendLine("over " + string.Join(' ', log.Columns.SelectMany(column => Enumerable.Range(0, column.Overload.Length).Where(row => column.Overload[row]).Select(row => $"{column.Name}:{Said(row)}"))));
        text.AppendLine("interval " + (double.IsNaN(log.IntervalS) ? "-" : Said(log.IntervalS)));
        string example = wanted.TryGetProperty("asks", out var asks) ? asks.GetString()! : "";
        text.Append("asks ").Append(log.Questions.Count == 0 ? "nothing" : log.Questions.Count == 1 && example.Length > 0 && log.Questions[0].Text.Contains(example, StringComparison.Ordinal) ? example
            : string.Join(" / ", log.Questions.Select(question => question.Text)));
        return text.ToString();
    }

    /// <summary>Where a column holds an instant or words its expectation is blank: the instant is compared as seconds.</summary>
    private static IEnumerable<double> Values(LogReading log, JsonElement wanted, string which, int row)
    {
        double[] by = [.. wanted.GetProperty(which).EnumerateArray().Select(Number)];
        return row < 0 ? [] : log.Columns.Select((column, i) => column.Texts.Count > 0 || (i == log.TimeColumn && i < by.Length && double.IsNaN(by[i])) ? double.NaN : column.Values[row]);
    }

    private static bool Has(JsonElement element, string name, out JsonElement value) => element.TryGetProperty(name, out value);

    private static double Number(JsonElement cell) => cell.ValueKind == JsonValueKind.Null ? double.NaN : cell.GetDouble();

    private static string Row(IEnumerable<double> values) => string.Join(' ', values.Select(Said));

    // Ten digits: enough for every figure in the files, and blind to the last bit of a product with a prefix.
    private static string Said(double value) => double.IsNaN(value) ? "-" : (Math.Round(value, 3) == Math.Round(value, 9) ? Math.Round(value, 3) : value).ToString("G10", CultureInfo.InvariantCulture);

    private static string Said(int value) => value.ToString(CultureInfo.InvariantCulture);
}
