using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Preambles, headers, units, separators, names. All files here are made up for their form; values by hand.</summary>
public class ColumnTrapTests
{
    [Theory, InlineData(';'), InlineData(','), InlineData('\t'), InlineData('|')]
    public void Any_usual_separator(char mark)
    {
        var log = Log.Read($"t (s){mark}U (V)\n0{mark}3.95\n1{mark}3.90\n");
        Assert.Equal(["t", "U"], log.Names());
        Assert.Equal([3.95, 3.90], log.Values("U"));
    }

    [Theory, InlineData("sep=;", ';'), InlineData("sep=,", ','), InlineData("\"sep=;\"", ';'), InlineData("sep=\t", '\t')]
    public void A_first_line_may_state_the_separator(string line, char mark)
    {
        var log = Log.Read($"{line}\r\nt (s){mark}U (V)\r\n0{mark}3.95\r\nodd{mark}line\r\n1{mark}3.90\r\n");
        Assert.Equal([3.95, 3.90], log.Values("U"));
        Assert.Equal(4, Assert.Single(log.RowsRefused).Line);
    }

    [Fact]
    public void Ten_free_lines_before_the_header()
    {
        var log = Log.Read(
            "Bench logger, model A\nSerial;12345\nStart;12.03.2024 14:00\nComment;warm-up, rope hot knife\nChannels;2\n\nRange;20 V;2 A\n# remark\n\nmin;3,1;0,1\n"
            + "t;U;I\ns;V;A\n0;3,95;0,5\n1;3,90;0,6\n");
        Assert.Equal(["t", "U", "I"], log.Names());
        Assert.Equal(["s", "V", "A"], log.UnitSymbols());
        Assert.Equal([0.5, 0.6], log.Values("I"));
        Assert.Contains("Serial;12345", log.Preamble);
        Assert.Empty(log.RowsRefused);
    }

    [Fact]
    public void A_header_behind_a_remark_mark()
    {
        var log = Log.Read("# made by a sketch\n# time_ms,tip_C,duty_%\n0,20.5,0\n100,21.5,50\n");
        Assert.Equal(["time", "tip", "duty"], log.Names());
        Assert.Equal(["ms", "°C", "%"], log.UnitSymbols());
        Assert.Equal([0, 0.1], log.TimeS);
    }

    [Theory]
    [InlineData("Tip (degC)", "Tip", "°C"), InlineData("Tip [C]", "Tip", "°C"), InlineData("Tip_degC", "Tip", "°C"), InlineData("Tip, °C", "Tip", "°C")]
    [InlineData("temp_0 (C)", "temp_0", "°C"), InlineData("T/°C", "T", "°C"), InlineData("Tip temp_C", "Tip temp", "°C"), InlineData("Tip (F)", "Tip", "°F")]
    [InlineData("Pack [ V ]", "Pack", "V"), InlineData("U/V", "U", "V"), InlineData("Pack (mV)", "Pack", "mV"), InlineData("bat_mv", "bat", "mV"), InlineData("Pack (V DC)", "Pack", "V")]
    [InlineData("I (uA)", "I", "µA"), InlineData("R (Ohm)", "R", "Ω"), InlineData("R [kOhm]", "R", "kΩ"), InlineData("R (mΩ)", "R", "mΩ"), InlineData("R (MOHM)", "R", "MΩ")]
    [InlineData("Pressure [hPa]", "Pressure", "hPa"), InlineData("Power (W)", "Power", "W"), InlineData("Heater (%)", "Heater", "%"), InlineData("RH [%RH]", "RH", "%"), InlineData("Q (mAh)", "Q", "mAh")]
    [InlineData("Channel A", "Channel A", ""), InlineData("CO(GT)", "CO(GT)", ""), InlineData("Tip (min)", "Tip (min)", ""), InlineData("temp_min", "temp_min", ""), InlineData("PT08.S1(CO)", "PT08.S1(CO)", "")]
    public void Units_in_names(string header, string name, string unit)
    {
        var log = Log.Read($"t (s);{header}\n0;1.5\n1;2.5\n");
        Assert.Equal(name, log.Columns[1].Name);
        Assert.Equal(unit, log.Columns[1].Unit?.Symbol ?? "");
    }

    [Fact]
    public void A_unit_that_nobody_knows_is_kept_as_text()
    {
        var column = Log.Read("t (s),x [widgets/h]\n0,1.5\n1,2.5\n").Column("x");
        Assert.Equal(("widgets/h", null), (column.UnitText, column.Unit));
    }

    [Fact]
    public void A_lone_row_of_units_names_the_columns() =>
        Assert.Equal(["V", "A"], Log.Read("V,A\n3.9,0.5\n3.8,0.6\n").UnitSymbols());

    [Fact]
    public void Units_in_each_cell()
    {
        var log = Log.Read("time,U\n0.0,009.8 mV\n0.5,010.2 mV\n1.0,0L mV\n");
        Assert.Equal("mV", log.Column("U").Unit!.Symbol);
        Assert.Equal([9.8, 10.2, double.NaN], log.Values("U"));
        Assert.True(log.Column("U").Overload[2]);
    }

    [Fact]
    public void Units_in_cells_that_change_their_prefix_go_to_one_unit()
    {
        var log = Log.Read("time,I\n0.0,5.8 uA\n0.5,5.8 mA\n1.0,0.58 A\n");
        Assert.Equal("A", log.Column("I").Unit!.Symbol);
        Assert.Equal([5.8e-6, 5.8e-3, 0.58], log.Values("I").Select(value => Math.Round(value, 12)));
    }

    [Fact]
    public void A_unit_with_a_blank_inside() =>
        Assert.Equal([0.0098, 1.02], Log.Read("time;U\n0.0;009.8 m V\n0.5;1.02 V\n").Values("U").Select(value => Math.Round(value, 12)));

    [Fact]
    public void Value_and_unit_columns_with_changing_prefix_go_to_one_unit()
    {
        var log = Log.Read("time (s);Value;Unit\n0;950;mV\n1;1.02;V\n2;1030;mV\n3;OL;V\n");
        Assert.Equal(["time", "Value"], log.Names());
        Assert.Equal("V", log.Column("Value").Unit!.Symbol);
        Assert.Equal([0.95, 1.02, 1.03, double.NaN], log.Values("Value"));
        Assert.Equal([false, false, false, true], log.Column("Value").Overload);
    }

    [Fact]
    public void A_prefix_that_first_changes_far_down_is_not_lost()
    {
        var rows = Enumerable.Range(0, 3000).Select(i => i == 2500 ? $"{i};1.5;V" : $"{i};900;mV");
        var log = Log.Read("time (s);Value;Unit\n" + string.Join('\n', rows));
        Assert.Equal("mV", log.Column("Value").Unit!.Symbol);
        Assert.Equal((900, 1500), (log.Values("Value")[0], log.Values("Value")[2500]));
    }

    [Fact]
    public void Average_most_and_least_each_with_its_unit()
    {
        var log = Log.Read("Start\tAvg\tUnit\tMax\tUnit\tMin\tUnit\n10:00:00\t1.5\tV\t1.6\tV\t900\tmV\n10:00:01\t1.4\tV\t1.5\tV\t1.3\tV\n");
        Assert.Equal(["Start", "Avg", "Max", "Min"], log.Names());
        Assert.Equal([0.9, 1.3], log.Values("Min"));
    }

    [Fact]
    public void Another_quantity_in_the_unit_column_is_left_out_and_told()
    {
        var log = Log.Read("time (s);Value;Unit\n0;3.9;V\n1;3.8;V\n2;0.5;A\n");
        Assert.Equal([3.9, 3.8, double.NaN], log.Values("Value"));
        Assert.Contains(log.Notes, note => note.Contains("'Value'", StringComparison.Ordinal));
    }

    [Fact]
    public void Fahrenheit_and_Celsius_in_one_column_meet_in_one_unit()
    {
        // 212 °F is 100 °C by definition of the scale.
        var log = Log.Read("time (s);Value;Unit\n0;20.0;C\n1;25.0;C\n2;212;F\n");
        Assert.Equal(100, UnitsOf(log, log.Values("Value")[2]), 1e-9);
        Assert.Equal(20, UnitsOf(log, log.Values("Value")[0]), 1e-9);
    }

    [Fact]
    public void Repeated_and_empty_names_become_different()
    {
        var log = Log.Read("t (s),U,,U,\n0,1.5,2.5,3.5,\n1,1.6,2.6,3.6,\n");
        Assert.Equal(["t", "U", "column 3", "U 2"], log.Names());
        Assert.Equal([3.5, 3.6], log.Values("U 2"));
    }

    [Fact]
    public void Trailing_separators_only_in_the_rows() =>
        Assert.Equal(["t", "U"], Log.Read("t (s);U\n0;1.5;\n1;1.6;\n").Names());

    [Fact]
    public void Trailing_separator_only_in_the_header() =>
        Assert.Equal(["t", "U"], Log.Read("t (s);U;\n0;1.5\n1;1.6\n").Names());

    [Fact]
    public void Quoted_names_with_the_separator_inside()
    {
        var log = Log.Read("\"time, s\",\"U, \"\"pack\"\"\"\n\"0\",\"3.9\"\n\"1\",\"3.8\"\n");
        Assert.Equal(["time", "U, \"pack\""], log.Names());
        Assert.Equal([3.9, 3.8], log.Columns[1].Values);
    }

    [Fact]
    public void Fixed_width_with_gaps_keeps_each_value_in_its_column()
    {
        var log = Log.Read(
            "  time_s    tip_C     U_V\n"
            + "     0.0     20.5    3.95\n"
            + "     1.0     21.5    3.94\n"
            + "     2.0             3.93\n"
            + "     3.0     23.5    3.92\n"
            + "     4.0     24.5        \n"
            + "     5.0     25.5    3.90\n");
        Assert.Equal([20.5, 21.5, double.NaN, 23.5, 24.5, 25.5], log.Values("tip"));
        Assert.Equal([3.95, 3.94, 3.93, 3.92, double.NaN, 3.90], log.Values("U"));
    }

    [Fact]
    public void Names_of_several_words_above_columns_of_blanks() =>
        Assert.Equal(["Run time", "Tip temp", "Heater duty"], Log.Read("Run time  Tip temp  Heater duty\n0.0  20.5  3.9\n1.0  21.5  3.8\n").Names());

    [Fact]
    public void Flag_letters_and_words_of_state_are_flags()
    {
        var log = Log.Read("t (s),U (V),q,state\n0,3.9,A,HEAT\n1,3.8,A,HEAT\n2,3.7,B,REST\n");
        Assert.Equal([ColumnKind.Time, ColumnKind.Number, ColumnKind.Flag, ColumnKind.Flag], log.Columns.Select(column => column.Kind));
        Assert.Equal(["HEAT", "HEAT", "REST"], log.Column("state").Texts);
    }

    [Fact]
    public void Free_remarks_in_a_column_are_text()
    {
        var log = Log.Read("t (s),U (V),remark\n0,3.9,switched the foam bow on\n1,3.8,wire glows a little\n2,3.7,stopped and let it cool\n");
        Assert.Equal(ColumnKind.Text, log.Column("remark").Kind);
        Assert.Equal("wire glows a little", log.Column("remark").Texts[1]);
    }

    [Fact]
    public void Bare_numbers_without_a_header_get_numbered_columns()
    {
        var log = Log.Read("231.5 240 0.35\n232.0 240 0.34\n");
        Assert.Equal(["column 1", "column 2", "column 3"], log.Names());
        Assert.Equal(TimeBase.None, log.TimeBase);
        Assert.Empty(log.TimeS);
        log.IsSettled();
    }

    [Fact]
    public void A_single_column_of_bare_numbers() =>
        Assert.Equal([231.5, 232.0, 233.5], Assert.Single(Log.Read("231.5\n232.0\n233.5\n").Columns).Values);

    [Fact]
    public void Rows_that_do_not_fit_are_refused_with_line_and_reason()
    {
        var log = Log.Read("t (s),U (V),I (A)\n0,3.9,0.5\nrestart\n1,3.8\n2,3.7,0.4\nt (s),U (V),I (A)\n3,3.6,0.3,9\n4,3.5,0.2\nend,,\n5,3.4");
        Assert.Equal(3, log.RowsKept);
        Assert.Equal([3, 4, 6, 7, 9, 10], log.RowsRefused.Select(row => row.Line));
        Assert.All(log.RowsRefused, row => Assert.NotEmpty(row.Reason));
        Assert.Contains("header", log.RowsRefused[2].Reason, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("ends", log.RowsRefused[5].Reason, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(6, log.RowsRefusedCount);
    }

    [Fact]
    public void A_summary_behind_the_readings_is_no_reading()
    {
        var log = Log.Read("t (s);U (V)\n0;3.9\n1;3.7\nAverage;3.8\n");
        Assert.Equal([3.9, 3.7], log.Values("U"));
        Assert.Equal(4, Assert.Single(log.RowsRefused).Line);
    }

    [Fact]
    public void A_column_that_stays_empty_until_late_is_read_all_the_same()
    {
        var rows = Enumerable.Range(0, 3000).Select(i => i > 2800 ? $"{i},3.5,HOT" : $"{i},3.5,");
        var log = Log.Read("t (s),U (V),note\n" + string.Join('\n', rows) + "\n");
        Assert.Equal("HOT", log.Column("note").Texts[2999]);
        Assert.Equal(3000, log.RowsKept);
    }

    private static double UnitsOf(LogReading log, double value) =>
        Heatwright.Quantities.Units.Celsius.FromSi(log.Column("Value").Unit!.ToSi(value));
}
