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
    public void A_line_of_nothing_but_garbled_labels_is_told_as_refused()
    {
        // Twenty labels that come once each: the campaign of the fuzzed readers found columns for all of them, eight bytes a line each.
        string text = string.Concat(Enumerable.Range(0, 40_000).Select(i => i % 2000 == 7 ? FormattableString.Invariant($"e{i}:240\n") : "set:240\n"));
        var log = LogReader.Read(System.Text.Encoding.UTF8.GetBytes(text));
        Assert.Equal(["set"], log.Columns.Select(column => column.Name));
        Assert.Equal((39_980, 20), (log.RowsKept, log.RowsRefusedCount));
        Assert.Contains("e2007:240", log.RowsRefused[1].Reason);
        Assert.Equal(2008, log.RowsRefused[1].Line);
    }

    [Fact]
    public void What_a_boot_says_once_stays_a_column()
    {
        string text = "version:3.1\nchannels:2\n" + string.Concat(Enumerable.Repeat("tip:231.5,set:240\n", 5000));
        Assert.Equal(["version", "channels", "tip", "set"], LogReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Columns.Select(column => column.Name));
    }

    [Fact]
    public void Lines_of_one_label_each_take_memory_by_their_bytes()
    {
        // Two hundred labels in turn would be two hundred columns of as many rows as there are lines.
        byte[] bytes = System.Text.Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, 100_000).Select(i => FormattableString.Invariant($"l{i % 200}:2\n"))));
        var log = LogReader.Read(bytes);
        Assert.InRange(log.Columns.Count, 2, 16);
        Assert.Equal(100_000, log.RowsKept + log.RowsRefusedCount + log.Preamble.Count);
        Assert.InRange(log.Columns.Sum(column => 8L * column.Values.Length), 1, 16L * bytes.Length);
    }

    [Fact]
    public void A_log_that_is_read_twice_over_takes_room_once()
    {
        // A decimal comma where the sample has no line: it is read again with another mark.
        string rest = string.Concat(Enumerable.Range(0, 19).Select(i => FormattableString.Invariant($";{i}")));
        byte[] bytes = System.Text.Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, 50_000).Select(i => (i == 300 ? "1,5" : "2") + rest + "\n")));
        long before = GC.GetAllocatedBytesForCurrentThread();
        var log = LogReader.Read(bytes);
        Assert.Equal((50_000, 20, 1.5), (log.RowsKept, log.Columns.Count, log.Columns[0].Values[300]));
        // The columns are 8 MB; with what else is made on the way it was 14 with their room used again, and 22 without.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 18_000_000);
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
