using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Decimal and thousands marks, over range, nothing. All files here are made up for their form; values by hand.</summary>
public class NumberTrapTests
{
    [Fact]
    public void Decimal_comma_with_semicolons() =>
        Assert.Equal([3.95, 3.9], Log.Read("Zeit (s);U (V)\n0;3,95\n1;3,9\n").Values("U"));

    [Fact]
    public void Decimal_comma_with_tabs() =>
        Assert.Equal([3.95, 3.9], Log.Read("Zeit (s)\tU (V)\n0\t3,95\n1\t3,9\n").Values("U"));

    [Fact]
    public void Decimal_comma_in_quotes_between_commas()
    {
        var log = Log.Read("t (s),U (V),I (A)\n\"0,0\",\"3,95\",\"0,180\"\n\"0,5\",\"3,9\",\"1,180\"\n");
        Assert.Equal([3.95, 3.9], log.Values("U"));
        // 0,180 proves the comma of its column.
        Assert.Equal([0.180, 1.180], log.Values("I"));
        log.IsSettled();
    }

    /// <summary>A table of one column, its decimal commas in quotes, with a name above it and without.</summary>
    [Theory, InlineData("ohms\n\"3,9\"\n\"3,92\"\n\"3,91\"\n"), InlineData("\"ohms\"\r\n\"3,9\" \r\n\"3,92\"\r\n\"3,91\"\r\n"), InlineData("\"3,9\"\n\"3,92\"\n\"3,91\"\n")]
    public void Decimal_comma_in_quotes_in_a_column_of_its_own(string text)
    {
        var log = Log.Read(text);
        Assert.Equal([3.9, 3.92, 3.91], Assert.Single(log.Columns).Values);
        Assert.Equal(0, log.RowsRefusedCount);
        log.IsSettled();
    }

    [Fact]
    public void Decimal_comma_with_runs_of_blanks() =>
        Assert.Equal([3.95, 3.9], Log.Read("t_s  U_V\n 0   3,95\n 1   3,9\n").Values("U"));

    [Fact]
    public void A_lone_column_with_decimal_commas_is_settled_by_its_header()
    {
        var log = Log.Read("U (V)\n1,739\n0,742\n1,745\n");
        Assert.Equal([1.739, 0.742, 1.745], log.Values("U"));
        log.IsSettled();
    }

    [Theory, InlineData("1.234,5"), InlineData("1 234,5"), InlineData("1'234,5"), InlineData("1234,5"), InlineData("1\u00A0234,5"), InlineData("1\u202F234,5")]
    public void Thousands_marks_before_a_decimal_comma(string cell) =>
        Assert.Equal([1234.5, 2.5], Log.Read($"t (s);R (Ohm)\n0;{cell}\n1;2,5\n").Values("R"));

    [Theory, InlineData("1,234.5"), InlineData("1'234.5"), InlineData("1 234.5"), InlineData("1234.5")]
    public void Thousands_marks_before_a_decimal_point(string cell) =>
        Assert.Equal([1234.5, 2.5], Log.Read($"t (s);R (Ohm)\n0;{cell}\n1;2.5\n").Values("R"));

    [Fact]
    public void Thousands_in_quotes_between_commas() =>
        Assert.Equal([1234567, 1234.5], Log.Read("t (s),R (Ohm)\n0,\"1,234,567\"\n1,\"1,234.5\"\n").Values("R"));

    [Fact]
    public void A_comma_before_just_three_digits_in_every_cell_is_asked_and_not_guessed()
    {
        const string file = "t (s);U\n0;1,739\n1;1,742\n2;2,001\n";
        var asked = Log.Read(file);
        var question = Assert.Single(asked.Questions);
        Assert.Equal(2, question.Choices.Count);
        Assert.All(asked.Values("U"), value => Assert.True(double.IsNaN(value)));
        Assert.Equal(3, asked.RowsKept);

        var asDecimal = Log.Read(file, question.Choices[0].Mapping);
        Assert.Equal([1.739, 1.742, 2.001], asDecimal.Values("U"));
        asDecimal.IsSettled();
        var asThousands = Log.Read(file, question.Choices[1].Mapping);
        Assert.Equal([1739, 1742, 2001], asThousands.Values("U"));
        asThousands.IsSettled();
    }

    [Theory, InlineData("0,739"), InlineData("1,73"), InlineData("1,7391"), InlineData("1739,5")]
    public void One_cell_that_proves_the_comma_settles_the_others(string proof)
    {
        var log = Log.Read($"t (s);U\n0;1,739\n1;1,742\n2;{proof}\n");
        Assert.Equal([1.739, 1.742], log.Values("U")[..2]);
        log.IsSettled();
    }

    [Fact]
    public void Proof_in_another_column_settles_this_one() =>
        Assert.Equal([1.739, 1.742], Log.Read("t (s);U;I\n0;1,739;0,5\n1;1,742;0,6\n").Values("U"));

    [Fact]
    public void Proof_far_down_the_file_settles_the_rows_above()
    {
        var rows = Enumerable.Range(0, 4000).Select(i => $"{i};1,{500 + (i % 400)}").Append("4000;0,5");
        var log = Log.Read("t (s);U (V)\n" + string.Join('\n', rows) + "\n");
        Assert.Equal(1.5, log.Values("U")[0]);
        Assert.Equal(4001, log.RowsKept);
        log.IsSettled();
    }

    [Fact]
    public void A_comma_that_first_shows_far_down_is_never_read_over()
    {
        // Whole numbers in all of the head, then 1,234: nothing tells what the comma is.
        var rows = Enumerable.Range(0, 5000).Select(i => i == 2900 ? $"{i};1,234" : $"{i};{i % 7}");
        var log = Log.Read("t (s);R\n" + string.Join('\n', rows) + "\n");
        Assert.Single(log.Questions);
        Assert.True(double.IsNaN(log.Values("R")[2900]));
        Assert.Equal(5, log.Values("R")[5]);
    }

    [Fact]
    public void Three_decimals_with_a_point_are_not_asked()
    {
        var log = Log.Read("t (s);U (V)\n0;3.982\n1;3.979\n");
        Assert.Equal([3.982, 3.979], log.Values("U"));
        log.IsSettled();
    }

    [Fact]
    public void A_point_that_comes_only_above_a_thousand_is_asked()
    {
        var log = Log.Read("t (s);R\n0;950\n1;1.050\n2;1.100\n");
        Assert.Single(log.Questions);
        Assert.Equal([950, 1050, 1100], Log.Read("t (s);R\n0;950\n1;1.050\n2;1.100\n", log.Questions[0].Choices[1].Mapping).Values("R"));
    }

    [Fact]
    public void What_the_file_proves_stands_above_what_is_remembered() =>
        Assert.Equal([3.95, 3.9], Log.Read("t (s);U\n0;3,95\n1;3,9\n", new LogMapping { DecimalMark = '.' }).Values("U"));

    [Fact]
    public void Two_bare_numbers_with_a_comma_between_are_asked_and_both_answers_work()
    {
        const string file = "231,240\n232,240\n233,240\n";
        var question = Assert.Single(Log.Read(file).Questions);
        Assert.Equal([231, 232, 233], Log.Read(file, question.Choices[0].Mapping).Columns[0].Values);
        var single = Log.Read(file, question.Choices[1].Mapping);
        Assert.Equal([231.240, 232.240, 233.240], Assert.Single(single.Columns).Values);
    }

    [Fact]
    public void A_nought_behind_a_lone_comma_proves_the_decimal_comma()
    {
        var log = Log.Read("21,5\n21,05\n20,95\n");
        Assert.Equal([21.5, 21.05, 20.95], Assert.Single(log.Columns).Values);
        log.IsSettled();
    }

    [Theory, InlineData("231, 240"), InlineData("231,-240"), InlineData("231.5,240")]
    public void A_blank_a_sign_or_a_point_beside_the_comma_proves_two_columns(string line)
    {
        var log = Log.Read($"{line}\n{line}\n");
        Assert.Equal(2, log.Columns.Count);
        log.IsSettled();
    }

    [Theory]
    [InlineData("OL"), InlineData("O.L"), InlineData(".OL"), InlineData("0L"), InlineData("0.L"), InlineData(".0F"), InlineData("0.F"), InlineData("+OL"), InlineData("-OL")]
    [InlineData("9.9E37"), InlineData("9.90000000E+37"), InlineData("9.99999999e+37"), InlineData("-9.9E+37"), InlineData("inf"), InlineData("-inf"), InlineData("Infinity"), InlineData("OVER"), InlineData("OVLD"), InlineData("OL MOhm"), InlineData("1e400")]
    public void Over_range_is_never_a_number(string cell)
    {
        var column = Log.Read($"t (s),R (Ohm)\n0,12.5\n1,{cell}\n2,13.5\n").Column("R");
        Assert.Equal([12.5, double.NaN, 13.5], column.Values);
        Assert.Equal([false, true, false], column.Overload);
    }

    [Theory, InlineData(""), InlineData(" "), InlineData("nan"), InlineData("NaN"), InlineData("n/a"), InlineData("--.--"), InlineData("-"), InlineData("null"), InlineData("9.91E37")]
    public void Nothing_is_no_number_and_no_overload(string cell)
    {
        var log = Log.Read($"t (s),R (Ohm)\n0,12.5\n1,{cell}\n2,13.5\n");
        Assert.Equal([12.5, double.NaN, 13.5], log.Values("R"));
        Assert.Empty(log.Column("R").Overload);
        Assert.Equal(3, log.RowsKept);
    }

    [Theory, InlineData(".5", 0.5), InlineData("5.", 5), InlineData("+0.350", 0.35), InlineData("-12", -12), InlineData("1.2E+01", 12), InlineData("1e-3", 0.001), InlineData("\u221212.5", -12.5)]
    [InlineData("-  1.5", -1.5), InlineData("009.8", 9.8)]
    public void Numbers_as_instruments_write_them(string cell, double value) =>
        Assert.Equal(value, Log.Read($"t (s),U\n0,1.5\n1,{cell}\n2,1.5\n").Values("U")[1]);

    [Fact]
    public void A_word_among_numbers_is_told_and_never_read_as_a_number()
    {
        var log = Log.Read("t (s),U (V)\n0,3.9\n1,ERR\n2,3.8\n");
        Assert.Equal([3.9, double.NaN, 3.8], log.Values("U"));
        Assert.Contains(log.Notes, note => note.Contains("ERR", StringComparison.Ordinal));
    }

    [Fact]
    public void Marks_for_no_reading_need_evidence()
    {
        var probe = Log.Read("t (s),tip (degC)\n0,23.5\n1,23.6\n2,-127\n3,23.7\n");
        Assert.Equal([23.5, 23.6, double.NaN, 23.7], probe.Values("tip"));
        Assert.Equal(-127, probe.Column("tip").Missing.Single().Value);
        Assert.Contains(probe.Notes, note => note.Contains("-127", StringComparison.Ordinal));

        // The same number among its like is a reading.
        var cold = Log.Read("t (s),bath (degC)\n0,-120.5\n1,-127\n2,-133.5\n3,-140\n");
        Assert.Equal([-120.5, -127, -133.5, -140], cold.Values("bath"));

        // A load step of -200 mA is no missing reading.
        var step = Log.Read("t (s),I (mA)\n0,0.1\n1,0\n2,-200\n3,-200\n");
        Assert.Equal([0.1, 0, -200, -200], step.Values("I"));
    }

    [Theory, InlineData("-999"), InlineData("-9999"), InlineData("-9999.9"), InlineData("9999")]
    public void Nines_far_from_everything_are_no_reading(string mark)
    {
        var log = Log.Read($"t (s),tip (degC)\n0,23.5\n1,23.6\n2,{mark}\n3,23.7\n");
        Assert.Equal([23.5, 23.6, double.NaN, 23.7], log.Values("tip"));
    }

    [Fact]
    public void A_mark_that_the_preamble_declares_needs_no_other_evidence()
    {
        var log = Log.Read("# missing value: -99\nt (s),x\n0,-98.5\n1,-99\n2,-97.5\n");
        Assert.Equal([-98.5, double.NaN, -97.5], log.Values("x"));
    }

    [Fact]
    public void A_maker_who_knows_better_keeps_the_number() =>
        Assert.Equal(
            [23.5, 23.6, -127, 23.7],
            Log.Read("t (s),tip (degC)\n0,23.5\n1,23.6\n2,-127\n3,23.7\n", new LogMapping { RealValues = [-127] }).Values("tip"));
}
