using System.Diagnostics;
using CsCheck;
using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Short form of the search for files that break the reader; it runs in every test pass.</summary>
public class BrokenLogsTests
{
    private static readonly byte[][] Samples =
    [
        .. Directory.EnumerateFiles(Repository.Reference("loggers")).Order().Select(File.ReadAllBytes),
        .. new[]
        {
            "tip:231.5,set:240\ntip:232.0,set:240\n", "23:24:14.141 -> 231.5,240\n23:24:15.141 -> 232.0,240\n", "  a    b\n  1.0  2.0\n       3.0\n  4.0  5.0\n",
            "Value;Unit\n950;mV\n1.02;V\n", "sep=;\nt;U\n0;1,5\n", "when,U\n03/04/2024 1:00:00 PM,3.9\n", "year,month,day,hour,U\n2024,3,1,12,3.9\n",
        }.Select(System.Text.Encoding.UTF8.GetBytes),
    ];

    [Fact]
    public void No_broken_file_breaks_the_reader() =>
        BrokenLogs.From(Samples, longest: 3000).Sample(IsSound, iter: 3000);

    [Fact]
    public void No_noise_breaks_the_reader() => Gen.Byte.Array[0, 600].Sample(IsSound, iter: 1500);

    [Fact]
    public void Short_rows_before_a_wide_one_leave_room_for_all()
    {
        // Twelve cells wide by its third line, yet rows of two or three cells count: there are more rows than the bytes of whole ones.
        var log = LogReader.Read("a;b;c\nV;mA;degC\n1;2;;;;;;;;;\n1\u00032;3\n;3\n1;2;3\n"u8.ToArray());
        Assert.Equal(4, log.RowsKept);
    }

    [Fact]
    public void Labels_of_garbled_lines_are_no_columns()
    {
        // Two hundred labels that come once each, in 40 000 good lines: two columns, not two hundred.
        string text = string.Concat(Enumerable.Range(0, 40_000).Select(i => i % 200 == 7 ? FormattableString.Invariant($"t{i}p:231.5,set:240\n") : "tip:231.5,set:240\n"));
        var log = LogReader.Read(System.Text.Encoding.UTF8.GetBytes(text));
        Assert.Equal(["tip", "set"], log.Columns.Select(column => column.Name));
    }

    [Fact]
    public void A_large_file_of_separators_takes_little_memory()
    {
        // One long row, then many short ones: columns times rows would be a hundred million cells.
        byte[] bytes = [.. Enumerable.Repeat("1;"u8.ToArray(), 2000).SelectMany(b => b), .. Enumerable.Repeat("\n1;2"u8.ToArray(), 50_000).SelectMany(b => b)];
        long before = GC.GetAllocatedBytesForCurrentThread();
        LogReader.Read(bytes);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 60L * bytes.Length);
    }

    [Fact]
    public void Columns_take_eight_bytes_a_value_and_not_much_more()
    {
        byte[] bytes = System.Text.Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, 200_000).Select(i => $"{i * 0.1:F1},3.951,0.512,21.25\n")));
        long before = GC.GetAllocatedBytesForCurrentThread();
        var log = LogReader.Read(bytes);
        long kept = 8L * log.RowsKept * log.Columns.Count;
        Assert.Equal(200_000, log.RowsKept);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, kept, 2 * kept + 8_000_000);
    }

    /// <summary>Whatever the bytes: an answer in time, columns of one length, no infinity, no more questions than one, a copy that can be written.</summary>
    private static bool IsSound(byte[] bytes)
    {
        var watch = Stopwatch.StartNew();
        var log = LogReader.Read(bytes);
        bool sound = log.Questions.Count <= 1
            && log.Columns.All(column => column.Values.Length == log.RowsKept && (column.Texts.Count == 0 || column.Texts.Count == log.RowsKept)
                && (column.Overload.Length == 0 || column.Overload.Length == log.RowsKept) && !column.Values.Any(double.IsInfinity))
            && log.Columns.Select(column => column.Name).Distinct().Count() == log.Columns.Count
            && (log.TimeS.Length == 0 || log.TimeS.Length == log.RowsKept)
            && log.RowsRefused.All(row => row.Line >= 1 && row.Reason.Length > 0)
            && log.ToCsv().Length >= 0;
        // Ten seconds is far beyond any of these small files, even on a busy machine.
        return sound && watch.Elapsed < TimeSpan.FromSeconds(10);
    }
}
