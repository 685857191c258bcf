using System.Globalization;
using System.Text;
using Heatwright.Instruments;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>Writes what is heard as a table: one line a reading, as it comes, each second at the latest on the disk.</summary>
/// <remarks>Instruments say different things at different times, so a row is one value: time, instrument, name, value, unit. It is never rewritten.</remarks>
internal sealed class LiveTable : IHeardTaker, IDisposable
{
    private const double FlushS = 1;

    private readonly StreamWriter file;
    private readonly FileStream disk;
    private readonly BenchClock clock;
    private double flushedS;

    private LiveTable(FileStream disk, BenchClock clock)
    {
        this.disk = disk;
        this.clock = clock;
        file = new(disk, new UTF8Encoding(false)) { NewLine = "\n" };
        file.WriteLine($"# begun {clock.Began.ToUniversalTime().ToString("O", CultureInfo.InvariantCulture)}, seconds of arrival since then");
        file.WriteLine("time [s],instrument,name,value,unit");
    }

    public static Checked<LiveTable> Open(string path, BenchClock clock)
    {
        try
        {
            return new(new LiveTable(new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.Read), clock));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The table cannot be begun.", path, error.Message, "a name that is not taken, in a folder that may be written to", "Choose another name; nothing is written over."));
        }
    }

    public Problem? Take(Heard heard)
    {
        if (heard is Heard.Line line)
        {
            string at = Math.Round(line.AtS, 6).ToString("R", CultureInfo.InvariantCulture);
            foreach (var one in line.Readouts)
            {
                file.WriteLine($"{at},{Quoted(line.Source)},{Quoted(one.Name)},{Value(one)},{Quoted(one.Unit?.Symbol ?? "")}");
            }
        }

        return null;
    }

    public Problem? Settle(bool last)
    {
        if (!last && clock.NowS - flushedS < FlushS)
        {
            return null;
        }

        try
        {
            flushedS = clock.NowS;
            file.Flush();
            disk.Flush(flushToDisk: true);
            return null;
        }
        catch (IOException error)
        {
            return new("The table cannot be written on.", disk.Name, error.Message, "a disk with room", "Free some room and listen again into a new table; what was written before stands.");
        }
    }

    public void Dispose()
    {
        try
        {
            file.Dispose();
        }
        catch (IOException)
        {
            // Told by Settle already.
        }
    }

    internal static string Value(Readout one) => one.Kind switch
    {
        ReadoutKind.Overload => "OL",
        ReadoutKind.Missing => "",
        ReadoutKind.Words => Quoted(one.Raw),
        _ => double.IsNaN(one.Value) ? "" : one.Value.ToString("R", CultureInfo.InvariantCulture),
    };

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(",\"\n\r") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
