using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Lines from serial consoles. All made up for their form; values by hand.</summary>
public class LineTrapTests
{
    [Fact]
    public void Labelled_values()
    {
        var log = Log.Read("tip:231.5,set:240\ntip:232.0,set:240\ntip:233.5,set:240\n");
        Assert.Equal(["tip", "set"], log.Names());
        Assert.Equal([231.5, 232.0, 233.5], log.Values("tip"));
        log.IsSettled();
    }

    [Theory, InlineData("tip=231.5 set=240"), InlineData("tip: 231.5; set: 240"), InlineData("tip:231.5\tset:240"), InlineData("{\"tip\":231.5,\"set\":240}"), InlineData("tip: 231.5 C, set: 240 C")]
    public void Labelled_values_in_other_dress(string line)
    {
        var log = Log.Read($"{line}\n{line}\n");
        Assert.Equal(["tip", "set"], log.Names());
        Assert.Equal([231.5, 231.5], log.Values("tip"));
        Assert.Equal([240, 240], log.Values("set"));
    }

    [Fact]
    public void A_label_that_is_missing_in_some_lines_leaves_a_gap()
    {
        var log = Log.Read("tip:231.5,set:240\ntip:232.0\ntip:233.5,set:240,duty:35\n");
        Assert.Equal(["tip", "set", "duty"], log.Names());
        Assert.Equal([240, double.NaN, 240], log.Values("set"));
        Assert.Equal([double.NaN, double.NaN, 35], log.Values("duty"));
    }

    [Fact]
    public void Units_behind_labelled_values()
    {
        var log = Log.Read("tip:231.5C,pack:7900mV\ntip:232.0C,pack:7.85V\n");
        Assert.Equal(["°C", "V"], log.UnitSymbols());
        Assert.Equal([7.9, 7.85], log.Values("pack"));
    }

    [Fact]
    public void A_stamp_before_each_line_becomes_the_time()
    {
        var log = Log.Read("23:24:14.141 -> 231.5,240\n23:24:15.141 -> 232.0,240\n23:24:16.641 -> 233.5,240\n");
        Assert.Equal(["stamp", "column 2", "column 3"], log.Names());
        Assert.Equal((TimeBase.ClockTime, 0), (log.TimeBase, log.TimeColumn));
        // 23 h 24 min 14.141 s
        Assert.Equal(84254.141, log.TimeS[0], 1e-9);
        Assert.Equal(2.5, log.TimeS[2] - log.TimeS[0], 1e-9);
        Assert.Equal([231.5, 232.0, 233.5], log.Values("column 2"));
    }

    [Fact]
    public void A_stamp_before_labelled_values_and_boot_noise_first()
    {
        var log = Log.Read(
            "23:24:13.900 -> ets Jun  8\n23:24:13.950 -> rst:0x1 (POWERON),boot:0x13\n23:24:14.141 -> tip:231.5,set:240\n23:24:15.141 -> tip:232.0,set:240\n"
            + "23:24:16.141 -> tip:233.0,set:240\n23:24:16.200 -> warning, low\n23:24:17.141 -> tip:234.0,set:240\n");
        Assert.Equal(["stamp", "tip", "set"], log.Names());
        Assert.Equal([231.5, 232.0, 233.0, 234.0], log.Values("tip"));
        Assert.Equal(6, Assert.Single(log.RowsRefused).Line);
    }

    [Fact]
    public void A_stamp_before_a_header_is_not_its_name()
    {
        var log = Log.Read("10:00:00.000 -> tip;set\n10:00:01.000 -> 20,5;240\n10:00:02.000 -> 21,5;240\n");
        Assert.Equal(["stamp", "tip", "set"], log.Names());
        Assert.Equal([20.5, 21.5], log.Values("tip"));
    }

    [Fact]
    public void A_stamp_before_a_single_number()
    {
        var log = Log.Read("10:00:01.000 -> 20.5\n10:00:02.000 -> 21.5\n");
        Assert.Equal([20.5, 21.5], log.Columns[1].Values);
        Assert.Equal(36001, log.TimeS[0]);
    }

    [Fact]
    public void Boot_noise_and_half_a_line_before_bare_numbers()
    {
        var log = Log.Read("\u0001\u0002x\u007Frl\u00DF\nload:0x4000\n5,240\n231.5,240,35\n232.0,240,35\n233.0,240,36\n");
        Assert.Equal(3, log.Columns.Count);
        Assert.Equal([231.5, 232.0, 233.0], log.Columns[0].Values);
    }

    [Fact]
    public void Labels_on_one_line_and_values_on_the_next_again_and_again()
    {
        var log = Log.Read("tip set\n231.5 240\ntip set\n232.0 240\ntip set\n233.5 240\n");
        Assert.Equal(["tip", "set"], log.Names());
        Assert.Equal([231.5, 232.0, 233.5], log.Values("tip"));
        Assert.Equal(2, log.RowsRefused.Count);
    }

    [Fact]
    public void A_time_before_labelled_values()
    {
        var log = Log.Read("12:00:01 tip:20.5 set:240\n12:00:03 tip:21.5 set:240\n");
        Assert.Equal(TimeBase.ClockTime, log.TimeBase);
        Assert.Equal([43201, 43203], log.TimeS);
    }
}
