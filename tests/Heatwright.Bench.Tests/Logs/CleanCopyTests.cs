using System.Text.Json;
using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

public class CleanCopyTests
{
    [Fact]
    public void The_clean_copy_has_commas_points_and_units_in_its_header() =>
        Assert.Equal(
            "Zeit [s],U [V],R [Ω],state\n0,3.95,OL,HEAT\n0.5,,12.5,\"a,b\"\n",
            Log.Read("Zeit (s);U (V);R (Ohm);state\n0;3,95;OL;HEAT\n0,5;;12,5;a,b\n").ToCsv());

    [Fact]
    public void Instants_are_written_as_dates() =>
        Assert.Equal("when,U\n2024-03-01T12:00:00.25Z,3.9\n2024-03-01T12:00:01Z,3.8\n", Log.Read("when;U\n2024-03-01T13:00:00.25+01:00;3.9\n2024-03-01T13:00:01+01:00;3.8\n").ToCsv());

    public static TheoryData<string> Files => [.. Directory.EnumerateFiles(Repository.Reference("loggers")).Select(path => Path.GetFileName(path)!).Order()];

    [Theory, MemberData(nameof(Files))]
    public void A_clean_copy_reads_back_as_the_same_columns(string file)
    {
        var first = Log.File(file);
        var second = Log.Read(first.ToCsv());
        Assert.Equal(first.Names(), second.Names());
        Assert.Equal(first.RowsKept, second.RowsKept);
        Assert.All(first.Columns.Zip(second.Columns), pair => Assert.Equal(pair.First.Values, pair.Second.Values));
        Assert.All(first.Columns.Zip(second.Columns), pair => Assert.Equal(pair.First.Unit?.Factor, pair.Second.Unit?.Factor));
        Assert.Equal(first.TimeS, second.TimeS);
    }

    [Fact]
    public void Names_and_units_that_the_maker_gave_come_back_for_the_same_instrument()
    {
        const string file = "231.5 0.0125\n232.0 0.0126\n";
        var first = Log.Read(file);
        var named = first.Mapping with { Labels = [new("column 1", "tip", "degC"), new("column 2", "probe", "V")] };
        var second = Log.Read(file, named);
        Assert.Equal(["tip", "probe"], second.Names());
        Assert.Equal(["°C", "V"], second.UnitSymbols());

        // A file of another form keeps its own names.
        Assert.Equal(["column 1", "column 2", "column 3"], Log.Read("1.5 2.5 3.5\n1.5 2.5 3.5\n", named).Names());
    }

    [Fact]
    public void What_one_file_proved_settles_the_next()
    {
        var proven = Log.Read("when;U\n25/04/2024 10:00:00;0,5\n25/04/2024 10:00:01;1,5\n");
        var open = Log.Read("when;U\n03/04/2024 10:00:00;1,739\n03/04/2024 10:00:01;1,742\n", proven.Mapping);
        open.IsSettled();
        Assert.Equal([1.739, 1.742], open.Values("U"));
        // 3 April 2024, 10 o'clock
        Assert.Equal(1712102400 + 36000, open.TimeS[0]);
    }

    [Fact]
    public void A_mapping_survives_as_json()
    {
        var mapping = new LogMapping { Signature = "x", DecimalMark = ',', DateOrder = DateOrder.MonthDayYear, Labels = [new("a", "b", "V")], RealValues = [-127], TimeUnit = "ms", CommaSeparates = true };
        var back = JsonSerializer.Deserialize<LogMapping>(JsonSerializer.Serialize(mapping))!;
        Assert.Equal(JsonSerializer.Serialize(mapping), JsonSerializer.Serialize(back));
        Assert.Equal((',', DateOrder.MonthDayYear, "ms"), (back.DecimalMark, back.DateOrder, back.TimeUnit));
    }

    [Fact]
    public void The_bytes_of_the_caller_stay_as_they_are()
    {
        byte[] bytes = File.ReadAllBytes(Repository.Reference("loggers/01_own_tab_decimal_comma_two_header_rows_nul_crlf.txt"));
        byte[] before = [.. bytes];
        LogReader.Read(bytes);
        Assert.Equal(before, bytes);
    }
}
