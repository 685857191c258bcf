using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>Many forms of one character become one, and the pieces that the reader is made of.</summary>
public class LettersTests
{
    [Theory]
    [InlineData("  a \t  b  ", "a b")]
    [InlineData("\uFEFFa\u200Bb", "ab")]
    [InlineData("\u2212\u2013\u2014\u2012\u2010\u2011", "------")]
    [InlineData("\u03BC\u2126", "µΩ")]
    [InlineData("\u00BA\u02DA", "°°")]
    [InlineData("\u2103\u2109", "°C°F")]
    [InlineData("m\u00B2\u00B3", "m23")]
    [InlineData("\u2206T", "ΔT")]
    [InlineData("\u2300\u00F8", "ØØ")]
    [InlineData("\u2248\u2243\u2245", "~~~")]
    [InlineData("\u2264\u2265", "<=>=")]
    [InlineData("3\u20264", "3..4")]
    [InlineData("\u221E", "inf")]
    [InlineData("1\u20442", "1/2")]
    [InlineData("2\u00D73\u00B74", "2x3*4")]
    [InlineData("\u2033\u201D\u201C", "\"\"\"")]
    [InlineData("\u2032\u2019\u00B4", "'''")]
    [InlineData("1\u00BD", "1 1/2")]
    [InlineData("\u00BC\u00BE", "1/4 3/4")]
    [InlineData("1\u00A0000\u202F5", "1 000 5")]
    public void Characters_that_look_alike_become_one(string typed, string even) => Assert.Equal(even, Letters.Even(typed));

    [Theory]
    [InlineData("3 volts", 2, "volts", 7)]
    [InlineData("3 VOLTS", 2, "volts", 7)]
    [InlineData("3 voltsy", 2, "volts", -1)]
    [InlineData("3 volts5", 2, "volts", 7)]
    [InlineData("3 volts%", 2, "volts", -1)]
    [InlineData("3 volt", 2, "volts", -1)]
    [InlineData("+-5", 0, "+-", 2)]
    [InlineData("+-x", 0, "+-", 2)]
    public void A_word_stands_where_no_letter_follows(string text, int at, string word, int past) => Assert.Equal(past, Letters.After(text, at, word));

    [Theory]
    [InlineData("12a", 0, 12, 2)]
    [InlineData("a12", 1, 12, 3)]
    [InlineData("a", 0, 0, 0)]
    [InlineData("123456789", 0, 123456789, 9)]
    [InlineData("1234567890", 0, 0, 0)]
    [InlineData("007", 0, 7, 3)]
    public void A_whole_number_has_at_most_nine_figures(string text, int start, int value, int end) => Assert.Equal((value, end), NumberSpelling.Whole(text, start));

    [Fact]
    public void A_sign_for_none_and_a_word_for_each_condition()
    {
        Assert.Equal("", MarkSpelling.Word(Condition.None));
        foreach (var condition in Enum.GetValues<Condition>().Where(condition => condition != Condition.None))
        {
            var read = Assert.IsType<Answer.Fine>(TypedValue.Read("3 V " + MarkSpelling.Word(condition), Expect.Volts));
            Assert.Equal(condition, Assert.IsType<TypedValue.Amount>(read.Value).Condition);
        }
    }

    /// <summary>A share in per cent and one as it is lie a hundredfold apart: outside the usual the other is offered. By hand: 0.87 % is 0.0087, and 0.87 is 87 %.</summary>
    [Theory]
    [InlineData("0.87", 2)]
    [InlineData("87", 1)]
    [InlineData("30", 1)]
    [InlineData("0.3", 2)]
    [InlineData("0.29", 1)]
    [InlineData("1", 2)]
    [InlineData("1.1", 1)]
    public void A_share_outside_the_usual_is_asked_where_the_other_reading_is_inside(string text, int meanings)
    {
        var answer = TypedValue.Read(text, Expect.Percent with { Likely = (0.3, 1) });
        Assert.Equal(meanings, answer is Answer.Question question ? question.Choices.Count : Assert.IsType<Answer.Fine>(answer).Values.Count);
    }

    [Fact]
    public void A_text_of_120_characters_is_read_and_a_longer_one_is_not()
    {
        Assert.IsType<Answer.Fine>(TypedValue.Read("5".PadRight(120), Expect.Volts));
        var refused = Assert.IsType<Answer.Refused>(TypedValue.Read("5".PadRight(121), Expect.Volts));
        Assert.Equal("at most 120 characters", refused.Problem.Limit);
        Assert.Equal("5".PadRight(20) + "...", refused.Problem.Value);
    }

    [Fact]
    public void More_than_twelve_meanings_are_no_question()
    {
        // By hand: each 1,234 may be one or a thousand: three of them have 2·2·2 meanings, four have 16.
        var question = Assert.IsType<Answer.Question>(TypedValue.Read("1,234 V 1,234 A 1,234 W", Expect.Label));
        Assert.Equal(8, question.Choices.Count);
        Assert.IsType<Answer.Refused>(TypedValue.Read("1,234 V 1,234 A 1,234 W 1,234 J", Expect.Label));
    }

    [Fact]
    public void Joules_and_joules_per_mole_are_not_the_same_thing()
    {
        var perMole = Expect.Of(Units.KilojoulePerMole);
        Assert.Equal(3000, Assert.IsType<TypedValue.Amount>(Assert.IsType<Answer.Fine>(TypedValue.Read("3", perMole)).Value).Si, 1e-9);
        Assert.Equal(3000, Assert.IsType<TypedValue.Amount>(Assert.IsType<Answer.Fine>(TypedValue.Read("3 kJ/mol", perMole)).Value).Si, 1e-9);
        Assert.IsType<Answer.Refused>(TypedValue.Read("3 kJ", perMole));
    }

    [Fact]
    public void Decimals_of_seconds_follow_the_mark_of_the_field()
    {
        Assert.IsType<Answer.Refused>(TypedValue.Read("0:12,4", Expect.Seconds with { Mark = DecimalMark.Point }));
        Assert.IsType<Answer.Fine>(TypedValue.Read("0:12,4", Expect.Seconds with { Mark = DecimalMark.Comma }));
    }

    [Theory]
    [InlineData("-300", "temp", "colder than -273.15", "n/a", "degC")]
    [InlineData("-300C", "temp", "colder than -273.15", "n/a", "degC")]
    [InlineData("- 500 F", "temp", "colder than -273.15", "n/a", "degC")]
    [InlineData("-300C", "rise", "", "", "")]
    [InlineData("-300C", "volts", "in 1/h does not belong", "n/a", "a number in V")]
    [InlineData("-x", "temp", "cannot be read as a temperature", "n/a", "degC")]
    [InlineData("300K", "temp", "cannot be read as a temperature", "'300K abs'", "degC")]
    [InlineData("pear", "temp", "cannot be read as a temperature", "n/a", "degC")]
    [InlineData("5 V", "ohms", "in V does not belong", "n/a", "a number in ohm")]
    [InlineData("40K", "tempany", "", "", "")]
    [InlineData("pearK", "tempany", "cannot be read", "n/a", "degC or K")]
    [InlineData("pearK", "rise", "cannot be read", "n/a", "a number in K")]
    [InlineData("pearK", "volts", "cannot be read", "n/a", "a number in V")]
    [InlineData("pear", "pack", "a pack", "n/a", "3S2P")]
    [InlineData("pear", "clock", "a time of day", "n/a", "14:03:22")]
    [InlineData("pear", "tol", "a tolerance", "n/a", "5 %")]
    [InlineData("pear", "money", "a price", "n/a", "1.20")]
    [InlineData("pear", "count", "a whole number", "n/a", "0 or more")]
    [InlineData("pear", "ratio", "a number", "n/a", "a number with its unit")]
    [InlineData("pear", "any", "a value", "n/a", "a number with its unit")]
    [InlineData("pear", "capacity", "a capacity", "n/a", "mAh or Wh")]
    public void A_refusal_says_what_was_wrong_what_would_be_right_and_what_to_do(string typed, string field, string what, string next, string limit)
    {
        var answer = TypedValue.Read(typed, SpellingsTests.Fields[field]);
        if (what.Length == 0)
        {
            Assert.IsType<Answer.Fine>(answer);
            return;
        }

        var problem = Assert.IsType<Answer.Refused>(answer).Problem;
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains(next, problem.Next, StringComparison.Ordinal);
        Assert.Contains(limit, problem.Limit, StringComparison.Ordinal);
        Assert.Equal($"'{typed}'", problem.Value);
    }
}
