using System.Diagnostics;
using System.Globalization;
using System.Text;
using Heatwright.Logs;

namespace Heatwright.Timings;

/// <summary>From bytes to columns: how fast a long log is read on one core.</summary>
internal static class LogTimings
{
    private const int Rows = 1_000_000;
    private const int Repeats = 7;

    public static void Run(TextWriter output)
    {
        Measure(output, "commas, points", "time (s),pack (V),I (A),tip (degC),case (degC)\n", ',', '.', "F2");
        Measure(output, "semicolons, decimal commas", "time (s);pack (V);I (A);tip (degC);case (degC)\n", ';', ',', "F2");
        Measure(output, "commas, 17 digits", "time (s),pack (V),I (A),tip (degC),case (degC)\n", ',', '.', "E16");
        Measure(output, "instants and numbers", "when,pack (V),I (A),tip (degC),case (degC)\n", ',', '.', "F2", instants: true);
    }

    private static void Measure(TextWriter output, string name, string header, char separator, char mark, string form, bool instants = false)
    {
        byte[] bytes = Make(header, separator, mark, form, instants);
        var seconds = new List<double>();
        long allocated = 0;
        int rows = 0;
        for (int i = 0; i < Repeats; i++)
        {
            GC.Collect();
            long before = GC.GetAllocatedBytesForCurrentThread();
            var watch = Stopwatch.StartNew();
            rows = LogReader.Read(bytes).RowsKept;
            seconds.Add(watch.Elapsed.TotalSeconds);
            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        // The first run compiles; the median of the rest is shown.
        double median = seconds.Skip(1).Order().ElementAt((Repeats - 1) / 2);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"logs, {name}: {bytes.Length / 1e6:F1} MB, {rows} rows, first {seconds[0]:F2} s, then {median:F3} s, {bytes.Length / 1e6 / median:F0} MB/s, allocated {allocated / 1e6:F0} MB (columns {rows * 40 / 1e6:F0} MB)"));
    }

    private static byte[] Make(string header, char separator, char mark, string form, bool instants)
    {
        var random = new Random(1);
        var text = new StringBuilder(header);
        var start = new DateTime(2024, 3, 1, 12, 0, 0, DateTimeKind.Unspecified);
        for (int row = 0; row < Rows; row++)
        {
            string time = instants ? start.AddSeconds(row * 0.1).ToString("yyyy-MM-dd HH:mm:ss.f", CultureInfo.InvariantCulture)
                : (row * 0.1).ToString("F1", CultureInfo.InvariantCulture);
            text.Append(time.Replace('.', mark));
            foreach (double about in (double[])[3.8, 1.2, 231, 36])
            {
                text.Append(separator).Append((about * (1 + (0.02 * random.NextDouble()))).ToString(form, CultureInfo.InvariantCulture).Replace('.', mark));
            }

            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
