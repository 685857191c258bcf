using System.Text;
using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Bytes before they are text. All files here are made up for their form.</summary>
public class EncodingTrapTests
{
    private const string Plain = "t (s);Tip (°C);R (µV)\n0;20,5;1,5\n1;21,5;2,5\n";

    public static TheoryData<string, byte[]> Encodings => new()
    {
        { "UTF-8", Encoding.UTF8.GetBytes(Plain) },
        { "UTF-8 with BOM", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Plain)] },
        { "UTF-16 LE", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Plain)] },
        { "UTF-16 BE", [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(Plain)] },
        { "UTF-16 LE", Encoding.Unicode.GetBytes(Plain) },
        { "UTF-16 BE", Encoding.BigEndianUnicode.GetBytes(Plain) },
        { "Latin-1", Encoding.Latin1.GetBytes(Plain) },
    };

    [Theory, MemberData(nameof(Encodings))]
    public void The_same_columns_come_out_of_every_encoding(string expected, byte[] bytes)
    {
        var log = LogReader.Read(bytes);
        Assert.Equal(expected, log.Encoding);
        Assert.Equal(["t", "Tip", "R"], log.Names());
        Assert.Equal(["s", "°C", "µV"], log.UnitSymbols());
        Assert.Equal([20.5, 21.5], log.Values("Tip"));
        Assert.Equal([1.5, 2.5], log.Values("R"));
    }

    [Theory, InlineData("\n"), InlineData("\r\n"), InlineData("\r"), InlineData("\r\r\n")]
    public void The_same_rows_come_out_of_every_line_end(string end)
    {
        var log = Log.Read(string.Join(end, "time_s,tip_C", "0,20.5", "1,21.5", "2,22.5"));
        Assert.Equal([20.5, 21.5, 22.5], log.Values("tip"));
        Assert.Equal(["s", "°C"], log.UnitSymbols());
    }

    [Fact]
    public void Nul_bytes_are_dropped_wherever_they_stand()
    {
        var log = Log.Read("\0time (s),U (V)\n0,3\0.9\n1,3.8\n\0\0\0\0");
        Assert.Equal([3.9, 3.8], log.Values("U"));
        Assert.Empty(log.RowsRefused);
    }

    [Fact]
    public void Garbage_at_power_up_does_not_spoil_the_degree_signs_behind_it()
    {
        byte[] bytes = [0xFF, 0x80, 0xC3, 0x28, 0x0A, .. "time (s),tip (°C)\n0,20.5\n1,21.0\n"u8];
        var log = LogReader.Read(bytes);
        Assert.Equal("°C", log.Column("tip").Unit!.Symbol);
        Assert.Equal([20.5, 21.0], log.Values("tip"));
        Assert.Single(log.Preamble, line => !line.StartsWith("time", StringComparison.Ordinal));
    }

    [Theory, InlineData("µ"), InlineData("μ"), InlineData("u")]
    public void Three_ways_to_write_micro_are_one_unit(string mu) =>
        Assert.Equal("µV", Log.Read($"t (s),E ({mu}V)\n0,1.5\n1,2.5\n").Column("E").Unit!.Symbol);

    [Fact]
    public void An_empty_file_is_an_answer_and_no_crash()
    {
        var log = Log.Read("");
        Assert.Equal((0, 0, TimeBase.None), (log.RowsKept, log.Columns.Count, log.TimeBase));
        Assert.NotEmpty(log.Notes);
    }

    [Fact]
    public void A_file_of_prose_has_no_readings_and_says_which_lines_it_refused()
    {
        var log = Log.Read("Dear bench,\nno numbers today.\n");
        Assert.Equal(0, log.RowsKept);
        Assert.Equal([1, 2], log.RowsRefused.Select(row => row.Line));
    }
}
