using System.Globalization;
using System.Text;

namespace Heatwright.Logs;

/// <summary>Writes a reading as a clean file that any program takes: comma, point, units in the header, the same bytes under any culture.</summary>
internal static class LogCsv
{
    private static readonly DateTime Epoch = new(1970, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);

    public static string Write(LogReading reading)
    {
        var csv = new StringBuilder();
        csv.AppendJoin(',', reading.Columns.Select((column, i) => Quoted(Header(column, Calendar(reading, i))))).Append('\n');
        for (int row = 0; row < reading.RowsKept; row++)
        {
            for (int i = 0; i < reading.Columns.Count; i++)
            {
                if (i > 0)
                {
                    csv.Append(',');
                }

                csv.Append(Cell(reading, i, row));
            }

            csv.Append('\n');
        }

        return csv.ToString();
    }

    private static bool Calendar(LogReading reading, int column) =>
        column == reading.TimeColumn && reading.TimeBase.IsCalendar() && reading.TimeBase != TimeBase.Epoch && reading.TimeS.Length > 0;

    private static string Header(LogColumn column, bool calendar)
    {
        string unit = calendar ? "" : column.Unit?.Symbol ?? column.UnitText;
        return unit.Length == 0 ? column.Name : $"{column.Name} [{unit}]";
    }

    private static string Cell(LogReading reading, int index, int row)
    {
        var column = reading.Columns[index];
        if (column.Texts.Count > 0)
        {
            return Quoted(column.Texts[row]);
        }

        if (column.Overload.Length > 0 && column.Overload[row])
        {
            return "OL";
        }

        double value = column.Values[row];
        return double.IsNaN(value) ? ""
            : Calendar(reading, index) ? Instant(value, reading.TimeBase == TimeBase.DateTimeWithOffset)
            : value.ToString("R", CultureInfo.InvariantCulture);
    }

    private static string Instant(double seconds, bool utc)
    {
        if (seconds is < -62_135_596_800 or > 253_402_300_799)
        {
            return "";
        }

        // Ten microseconds is what a double still tells apart this far from 1970.
        string text = Epoch.AddTicks((long)Math.Round(seconds * 1e5) * 100).ToString("yyyy-MM-ddTHH:mm:ss.fffff", CultureInfo.InvariantCulture).TrimEnd('0').TrimEnd('.');
        return utc ? text + "Z" : text;
    }

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(",\"\n\r;") < 0 && text == text.Trim() ? text
        : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
