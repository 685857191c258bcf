using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Times in all their forms. Seconds since 1970 come from a system date tool; the files are made up for their form.</summary>
public class TimeTrapTests
{
    private const double March4 = 1709510400;
    private const double April3 = 1712102400;
    private const double Noon1March = 1709294400;

    [Theory]
    [InlineData("1709294400", "1709294401", "s"), InlineData("1709294400.000", "1709294401.000", "s"), InlineData("1709294400000", "1709294401000", "ms")]
    public void Seconds_and_thousandths_since_1970(string first, string second, string unit)
    {
        var log = Log.Read($"timestamp,U (V)\n{first},3.9\n{second},3.8\n");
        Assert.Equal((TimeBase.Epoch, 0), (log.TimeBase, log.TimeColumn));
        Assert.Equal([Noon1March, Noon1March + 1], log.TimeS);
        Assert.Equal(unit, log.Columns[0].Unit!.Symbol);
    }

    [Theory]
    [InlineData("2024-03-01T12:00:00Z", TimeBase.DateTimeWithOffset), InlineData("2024-03-01T13:00:00+01:00", TimeBase.DateTimeWithOffset), InlineData("2024-03-01T07:00:00-0500", TimeBase.DateTimeWithOffset)]
    [InlineData("2024-03-01 12:00:00 UTC", TimeBase.DateTimeWithOffset), InlineData("2024-03-01 12:00:00", TimeBase.DateTimeWithoutOffset), InlineData("2024-03-01T12:00:00.000", TimeBase.DateTimeWithoutOffset)]
    [InlineData("2024/03/01 12:00", TimeBase.DateTimeWithoutOffset), InlineData("20240301T120000", TimeBase.DateTimeWithoutOffset), InlineData("01.03.2024 12:00:00", TimeBase.DateTimeWithoutOffset)]
    [InlineData("01-Mar-2024 12:00:00", TimeBase.DateTimeWithoutOffset), InlineData("Mar 1 2024 12:00:00", TimeBase.DateTimeWithoutOffset), InlineData("12:00:00 2024-03-01", TimeBase.DateTimeWithoutOffset)]
    [InlineData("2024-03-01 12:00:00 PM", TimeBase.DateTimeWithoutOffset), InlineData("1 March 2024 12:00", TimeBase.DateTimeWithoutOffset), InlineData("01.03.24 12.00.00", TimeBase.DateTimeWithoutOffset)]
    public void Instants(string cell, TimeBase timeBase)
    {
        var log = Log.Read($"when;U (V)\n{cell};3.9\n{cell};3.8\n");
        Assert.Equal(timeBase, log.TimeBase);
        Assert.Equal([Noon1March, Noon1March], log.TimeS);
        log.IsSettled();
    }

    [Fact]
    public void A_comma_before_the_thousandths_of_an_instant() =>
        Assert.Equal(Noon1March + 0.25, Log.Read("when;U\n2024-03-01 12:00:00,250;3.9\n2024-03-01 12:00:01,250;3.8\n").TimeS[0], 1e-6);

    [Theory]
    [InlineData("03/04/2024 00:00:00", "25/04/2024 00:00:00", April3), InlineData("03/04/2024 00:00:00", "04/25/2024 00:00:00", March4)]
    public void A_day_above_twelve_settles_the_order(string first, string second, double expected)
    {
        var log = Log.Read($"when,U\n{first},3.9\n{second},3.8\n");
        Assert.Equal(expected, log.TimeS[0]);
        log.IsSettled();
    }

    [Fact]
    public void An_order_that_nothing_settles_is_asked_and_not_guessed()
    {
        const string file = "when,U\n03/04/2024 00:00:00,3.9\n03/04/2024 00:00:01,3.8\n";
        var asked = Log.Read(file);
        var question = Assert.Single(asked.Questions);
        Assert.All(asked.TimeS, value => Assert.True(double.IsNaN(value)));
        Assert.Equal([3.9, 3.8], asked.Values("U"));
        Assert.Contains("3 April 2024", question.Choices[0].Text, StringComparison.Ordinal);
        Assert.Contains("4 March 2024", question.Choices[1].Text, StringComparison.Ordinal);
        Assert.Equal(April3, Log.Read(file, question.Choices[0].Mapping).TimeS[0]);
        Assert.Equal(March4, Log.Read(file, question.Choices[1].Mapping).TimeS[0]);
    }

    [Theory, InlineData("DATE (MM/DD/YYYY)", March4), InlineData("Date [dd/mm/yyyy]", April3)]
    public void The_header_settles_the_order(string header, double expected)
    {
        var log = Log.Read($"{header},time,U\n03/04/2024,00:00:00,3.9\n03/04/2024,00:00:01,3.8\n");
        Assert.Equal([expected, expected + 1], log.TimeS);
        log.IsSettled();
    }

    [Fact]
    public void A_run_over_midnight_settles_the_order()
    {
        var rows = Enumerable.Range(0, 6).Select(i => i < 3 ? $"01/03/2024 23:59:5{i + 7},3.9" : $"02/03/2024 00:00:0{i - 3},3.9");
        var log = Log.Read("when,U\n" + string.Join('\n', rows) + "\n");
        // 1 March to 2 March: as month first it would jump from 3 January to 3 February.
        Assert.Equal(1709337600, log.TimeS[3]);
        log.IsSettled();
    }

    [Fact]
    public void Day_and_month_alike_leave_nothing_to_ask() =>
        Log.Read("when,U\n04/04/2024 00:00:00,3.9\n04/04/2024 00:00:01,3.8\n").IsSettled();

    [Fact]
    public void A_proof_far_down_settles_the_order()
    {
        var rows = Enumerable.Range(0, 3000).Select(i => $"{1 + (i / 100)}/04/2024 00:00:00;{i % 10}");
        var log = Log.Read("when;U\n" + string.Join('\n', rows) + "\n");
        Assert.Equal(April3 + (27 * 86400), log.TimeS[^1]);
        Assert.Equal(3000, log.RowsKept);
        log.IsSettled();
    }

    [Fact]
    public void Date_and_clock_in_columns_of_their_own_are_one_time()
    {
        var log = Log.Read("U (V);Datum;Uhrzeit\n3,9;01.03.2024;12:00:00\n3,8;01.03.2024;12:00:01\n");
        Assert.Equal([Noon1March, Noon1March + 1], log.TimeS);
        Assert.Equal(["U", "Datum Uhrzeit"], log.Names());
        Assert.Equal(1, log.TimeColumn);
    }

    [Fact]
    public void Date_clock_and_half_of_the_day_between_blanks()
    {
        var log = Log.Read("2024-03-01 11:59:59 AM 3.9\n2024-03-01 12:00:00 PM 3.8\n2024-03-01 01:00:00 PM 3.7\n");
        Assert.Equal([Noon1March - 1, Noon1March, Noon1March + 3600], log.TimeS);
        Assert.Equal([3.9, 3.8, 3.7], log.Columns[1].Values);
    }

    [Theory, InlineData("12:00:00 AM", 0), InlineData("12:00:00 PM", 43200), InlineData("1:05:09 pm", 47109), InlineData("11:59:59 a.m.", 43199)]
    public void The_twelve_hour_clock(string cell, double seconds)
    {
        var log = Log.Read($"time,U\n{cell},3.9\n{cell},3.8\n");
        Assert.Equal((TimeBase.ClockTime, seconds), (log.TimeBase, log.TimeS[0]));
    }

    [Fact]
    public void A_clock_that_passes_midnight_goes_on()
    {
        var log = Log.Read("clock,U\n23:59:59,3.9\n00:00:01,3.8\n");
        Assert.Equal([86399, 86401], log.TimeS);
        Assert.Contains(log.Notes, note => note.Contains("midnight", StringComparison.Ordinal));
    }

    [Theory, InlineData("time,U\n00:00:00,1\n00:00:05,2\n", 5), InlineData("elapsed,U\n00:10:00,1\n00:10:05,2\n", 605), InlineData("time,U\n23:59:59,1\n26:00:00,2\n", 93600)]
    public void Hours_minutes_and_seconds_since_the_start(string file, double last)
    {
        var log = Log.Read(file);
        Assert.Equal((TimeBase.Elapsed, last), (log.TimeBase, log.TimeS[^1]));
    }

    [Fact]
    public void Stopwatch_splits_are_minutes_and_seconds()
    {
        var log = Log.Read("time,tip\n0:12.4,20\n1:05.0,25\n");
        Assert.Equal(TimeBase.Elapsed, log.TimeBase);
        Assert.Equal(12.4, log.TimeS[0], 1e-9);
        Assert.Equal(65, log.TimeS[1], 1e-9);
    }

    [Fact]
    public void Two_fields_that_nothing_settles_are_asked()
    {
        const string file = "time,tip\n1:20,20\n1:30,25\n";
        var question = Assert.Single(Log.Read(file).Questions);
        Assert.Equal([4800, 5400], Log.Read(file, question.Choices[0].Mapping).TimeS);
        Assert.Equal([80, 90], Log.Read(file, question.Choices[1].Mapping).TimeS);
    }

    [Theory, InlineData("time (mm:ss)", 80), InlineData("time [hh:mm]", 4800)]
    public void The_header_settles_two_fields(string header, double first) => Assert.Equal(first, Log.Read($"{header},tip\n1:20,20\n1:30,25\n").TimeS[0]);

    [Fact]
    public void Dots_between_the_fields_of_a_clock() => Assert.Equal([64800, 64805], Log.Read("Zeit;U\n18.00.00;3,9\n18.00.05;3,8\n").TimeS);

    [Fact]
    public void Dots_in_a_date_of_two_digits_each()
    {
        var log = Log.Read("Datum;Uhrzeit;U\n01.03.24;12.00.00;3,9\n01.03.24;12.00.01;3,8\n");
        Assert.Equal([Noon1March, Noon1March + 1], log.TimeS);
    }

    [Theory, InlineData("time (s)", 0.5), InlineData("time (ms)", 0.0005), InlineData("Time [min]", 30), InlineData("t/h", 1800), InlineData("millis", 0.0005), InlineData("Sekunden", 0.5)]
    public void Elapsed_time_in_its_unit(string header, double second)
    {
        var log = Log.Read($"{header};U\n0.0;3.9\n0.5;3.8\n");
        Assert.Equal(TimeBase.Elapsed, log.TimeBase);
        Assert.Equal(second, log.TimeS[1], 1e-12);
    }

    [Fact]
    public void A_bare_time_in_large_whole_steps_is_asked_for_its_unit()
    {
        const string file = "time,U\n0,3.9\n1000,3.8\n2000,3.7\n";
        var question = Assert.Single(Log.Read(file).Questions);
        Assert.Equal([0, 1, 2], Log.Read(file, question.Choices.Single(choice => choice.Text == "ms").Mapping).TimeS);
    }

    [Fact]
    public void Counted_samples_with_their_interval_in_the_preamble()
    {
        var log = Log.Read("Sample interval: 0.5 s\nsample,U (V)\n1,3.9\n2,3.8\n3,3.7\n");
        Assert.Equal((TimeBase.SampleIndex, 0, 0.5), (log.TimeBase, log.TimeColumn, log.IntervalS));
        Assert.Equal([0, 0.5, 1.0], log.TimeS);
    }

    [Fact]
    public void A_rate_in_the_preamble_times_rows_without_a_time_column()
    {
        var log = Log.Read("Sampling rate;10;Hz\nU (V);I (A)\n3,9;0,5\n3,8;0,6\n3,7;0,7\n");
        Assert.Equal((TimeBase.SampleIndex, 0.1), (log.TimeBase, log.IntervalS));
        Assert.Null(log.TimeColumn);
        Assert.Equal(0.2, log.TimeS[2], 1e-12);
    }

    [Theory, InlineData("2024-03-01T12:00:00/2024-03-01T12:01:00", 60), InlineData("2024-03-01T12:00:00/PT1M30S", 90)]
    public void Spans_with_start_and_end(string cell, double width)
    {
        var log = Log.Read($"period;E\n{cell};1.5\n{cell};2.5\n");
        Assert.Equal((TimeBase.Interval, width, Noon1March), (log.TimeBase, log.IntervalS, log.TimeS[0]));
    }

    /// <summary>Found by breaking files at random: two columns were called time.</summary>
    [Fact]
    public void Two_times_in_one_file_keep_different_names()
    {
        var log = Log.Read("2024 61 3 1 12 0 1.5 2024-03-01 12:00:00\n2024 61 3 1 12 1 1.6 2024-03-01 12:01:00\n");
        Assert.Equal(["time", "column 7", "time 2"], log.Names());
    }

    [Fact]
    public void Year_to_second_in_columns_of_their_own()
    {
        var log = Log.Read("year,month,day,hour,minute,second,U\n2024,3,1,12,0,0,3.9\n2024,3,1,12,0,1.5,3.8\n");
        Assert.Equal([Noon1March, Noon1March + 1.5], log.TimeS);
        Assert.Equal(["time", "U"], log.Names());
    }
}
