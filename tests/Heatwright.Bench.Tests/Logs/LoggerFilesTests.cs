using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Exports of real instruments. Columns, units and time bases were written down from the files by eye.</summary>
public class LoggerFilesTests
{
    private const double Tight = 1e-9;

    [Fact]
    public void Tabs_decimal_commas_two_header_rows_and_a_nul_byte()
    {
        var log = Log.File("01_own_tab_decimal_comma_two_header_rows_nul_crlf.txt");
        Assert.Equal(["Zeit", "Kanal 1", "Kanal 2", "Kanal 3", "Kanal 4"], log.Names());
        Assert.Equal(["s", "mV", "mV", "mV", "mV"], log.UnitSymbols());
        Assert.Equal((TimeBase.Elapsed, 0, 40), (log.TimeBase, log.TimeColumn, log.RowsKept));
        Assert.Equal(ColumnKind.Time, log.Columns[0].Kind);
        Assert.Equal(0.842, log.Values("Kanal 1")[0], Tight);
        Assert.Equal(1.010, log.Values("Kanal 4")[0], Tight);
        Assert.Equal(195, log.TimeS[^1]);
        Assert.Empty(log.RowsRefused);
        log.IsSettled();
    }

    [Fact]
    public void Units_in_the_second_row_and_a_blank_line()
    {
        var log = Log.File("02_own_units_in_second_row_blank_line.csv");
        Assert.Equal(["Time", "Channel A"], log.Names());
        Assert.Equal(["ms", "V"], log.UnitSymbols());
        Assert.Equal((TimeBase.Elapsed, 0, 60), (log.TimeBase, log.TimeColumn, log.RowsKept));
        Assert.Equal(-0.25, log.Values("Time")[0], Tight);
        Assert.Equal(-0.00025, log.TimeS[0], 1e-15);
        Assert.Empty(log.RowsRefused);
        log.IsSettled();
    }

    [Fact]
    public void Repeated_names_a_trailing_comma_and_words_of_state()
    {
        var log = Log.File("03_repeated_column_names_trailing_empty.csv");
        Assert.Equal(
            ["Exclude", "Time", "Cycle", "Loop", "Loop 2", "Loop 3", "Step", "StepTime", "Current", "Voltage", "Power", "Capacity", "Energy", "Mode", "Data"],
            log.Names());
        Assert.Equal(["", "s", "", "", "", "", "", "s", "A", "V", "W", "Ah", "Wh", "", ""], log.UnitSymbols());
        Assert.Equal((TimeBase.Elapsed, 1, 499), (log.TimeBase, log.TimeColumn, log.RowsKept));
        Assert.All((string[])["Exclude", "Mode", "Data"], name => Assert.Equal(ColumnKind.Flag, log.Column(name).Kind));
        Assert.Equal("DCHG", log.Column("Mode").Texts[0]);
        Assert.Equal(-91.80, log.Values("Current")[0], Tight);
        Assert.Equal(3.172, log.Values("Voltage")[78], Tight);
        Assert.Equal("REST", log.Column("Mode").Texts[78]);
        Assert.Equal(12204.9, log.TimeS[^1], Tight);
        Assert.Empty(log.RowsRefused);
        log.IsSettled();
    }

    [Fact]
    public void A_station_preamble_columns_of_blanks_and_a_flag_after_each_value()
    {
        var log = Log.File("04_station_preamble_whitespace_flags.dat");
        Assert.Equal(2, log.Preamble.Count);
        Assert.Equal((TimeBase.DateTimeWithoutOffset, 0, 4), (log.TimeBase, log.TimeColumn, log.RowsKept));
        // Year, day of the year, month, day, hour, minute are one time; the other sixteen columns stay as they are.
        Assert.Equal(17, log.Columns.Count);
        Assert.Equal(1551052800.0 + 180, log.TimeS[3]);
        Assert.Equal([79.30, 79.49, 79.68, 79.87], log.Columns[2].Values);
        Assert.Equal([4, 6, 8, 10, 12], Enumerable.Range(0, 17).Where(i => log.Columns[i].Kind == ColumnKind.Flag));
        var direct = log.Columns[7];
        Assert.True(double.IsNaN(direct.Values[3]));
        Assert.Equal((97.8, -9999.9, 1), (direct.Values[0], direct.Missing[0].Value, direct.Missing[0].Count));
        log.IsSettled();
    }

    [Fact]
    public void Remark_lines_semicolons_and_intervals()
    {
        var log = Log.File("05_hash_preamble_semicolon_iso_interval.csv");
        Assert.Equal(35, log.Columns.Count);
        Assert.Equal(["Observation period", "TOA", "Clear sky GHI"], log.Names()[..3]);
        Assert.Equal("BNI no corr", log.Columns[34].Name);
        Assert.Equal((TimeBase.Interval, 0, 4), (log.TimeBase, log.TimeColumn, log.RowsKept));
        Assert.Equal((1591012800.0, 60.0), (log.TimeS[0], log.IntervalS));
        Assert.Equal(("Wh/m2", 3600.0), (log.Column("TOA").UnitText, log.Column("TOA").Unit!.Factor));
        Assert.Equal("kg/m2", log.Column("tcwv").UnitText);
        Assert.Equal("", log.Column("tco3").UnitText);
        Assert.Equal(18.0699, log.Values("TOA")[0], Tight);
        Assert.All(log.Values("alpha"), value => Assert.True(double.IsNaN(value)));
        Assert.Equal([-1, -1, -1, -1], log.Values("Aerosol type"));
        Assert.Empty(log.RowsRefused);
        log.IsSettled();
    }

    [Fact]
    public void Date_with_month_first_and_a_clock_beside_it()
    {
        var log = Log.File("06_us_date_and_time_columns_bracket_units.csv");
        Assert.Equal(["DATE MST", "Global PSP", "Global PSP (Accumulated)", "Temperature @ 2m", "Temperature @ 50m", "Temperature @ 80m"], log.Names());
        Assert.Equal(["s", "W/m^2", "kWhr/m^2", "deg C", "deg C", "deg C"], log.Columns.Select(column => column.UnitText));
        Assert.Equal(["s", "W/m^2", "kWhr/m^2", "°C", "°C", "°C"], log.UnitSymbols());
        Assert.Equal((TimeBase.DateTimeWithoutOffset, 0, 399), (log.TimeBase, log.TimeColumn, log.RowsKept));
        Assert.Equal(1539475200.0 + (6 * 3600) + (38 * 60), log.TimeS[^1]);
        Assert.Equal(-4.669, log.Values("Temperature @ 2m")[0], Tight);
        Assert.Equal(3_600_000, log.Column("Global PSP (Accumulated)").Unit!.Factor);
        Assert.Empty(log.RowsRefused);
        log.IsSettled();
    }

    [Fact]
    public void Units_in_parentheses_a_blank_after_the_comma_and_long_exponents()
    {
        var log = Log.File("07_paren_units_space_after_comma_exponent.txt");
        Assert.Equal(["Time", "Heater 1", "Heater 2", "Temperature 1", "Temperature 2", "Set Point 1", "Set Point 2"], log.Names());
        Assert.Equal(["s", "%", "%", "°C", "°C", "°C", "°C"], log.UnitSymbols());
        Assert.Equal((TimeBase.Elapsed, 0, 199), (log.TimeBase, log.TimeColumn, log.RowsKept));
        Assert.Equal(20.83, log.Values("Temperature 1")[0], 1e-12);
        Assert.Equal(198.2276539802551270, log.TimeS[^1], 1e-12);
        Assert.Empty(log.RowsRefused);
        log.IsSettled();
    }

    [Fact]
    public void Semicolons_decimal_commas_dotted_clocks_and_minus_200_for_nothing()
    {
        var log = Log.File("08_semicolon_decimal_comma_time_with_dots_missing_m200_crlf.csv");
        Assert.Equal(
            ["Time", "CO(GT)", "PT08.S1(CO)", "NMHC(GT)", "C6H6(GT)", "PT08.S2(NMHC)", "NOx(GT)", "PT08.S3(NOx)", "NO2(GT)", "PT08.S4(NO2)", "PT08.S5(O3)", "T", "RH", "AH"],
            log.Names());
        Assert.All(log.Columns.Skip(1), column => Assert.Null(column.Unit));
        Assert.Equal((TimeBase.ClockTime, 0, 299), (log.TimeBase, log.TimeColumn, log.RowsKept));
        // 18 h; six rows later it is midnight, and the seconds go on.
        Assert.Equal((64800, 86400), (log.TimeS[0], log.TimeS[6]));
        Assert.Equal(2.6, log.Values("CO(GT)")[0], Tight);
        Assert.Equal(0.7578, log.Values("AH")[0], Tight);
        // Counted with a text tool: 14, 103, 14 and 14 times.
        Assert.Equal(
            [("CO(GT)", 14), ("NMHC(GT)", 103), ("NOx(GT)", 14), ("NO2(GT)", 14)],
            log.Columns.Where(column => column.Missing.Count > 0).Select(column => (column.Name, column.Missing[0].Count)));
        Assert.DoesNotContain(log.Columns, column => column.Values.Contains(-200));
        Assert.Contains(log.Notes, note => note.Contains("'CO(GT)'", StringComparison.Ordinal) && note.Contains("-200", StringComparison.Ordinal));
        Assert.Empty(log.RowsRefused);
        log.IsSettled();
    }
}
