using System.Diagnostics;
using System.Globalization;
using System.Text;
using CsCheck;
using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

public class ReaderTests
{
    [Fact]
    public void Whatever_the_grammar_writes_is_read_as_the_value_it_wrote() =>
        SpellingGrammar.Amounts.Sample(spelt => IsRead(spelt), iter: 10_000);

    [Fact]
    public void Whatever_the_letter_code_writes_is_read_as_the_value_it_wrote() =>
        SpellingGrammar.Codes.Sample(spelt => IsRead(spelt), iter: 4_000);

    [Fact]
    public void A_decimal_comma_is_never_dropped()
    {
        foreach (var mark in Enum.GetValues<DecimalMark>())
        {
            var read = TypedValue.Read("12,5 V", Expect.Volts with { Mark = mark });
            Assert.Equal(12.5, Assert.IsType<TypedValue.Amount>(Assert.IsType<Answer.Fine>(read).Value).Si);
        }
    }

    [Fact]
    public void Random_texts_neither_crash_nor_hang_the_reader()
    {
        // Seed fixed; characters that mean something here are likelier than others.
        var random = new Random(20261125);
        const string Alphabet = "0123456789.,'-+ kKmMRVvAWCFSPhsx:/%?~<>=\u00B1\u03A9\u2126\u00B5\u03BC\u00B0\u00B2\"#()eEoOlLgGJ\u2212\u202F\u00BDinto\uD83D\0";
        var fields = SpellingsTests.Fields.Values.ToArray();
        var longest = TimeSpan.Zero;
        for (int i = 0; i < 15_000; i++)
        {
            var text = new StringBuilder();
            for (int n = random.Next(0, 24); n > 0; n--)
            {
                text.Append(random.Next(40) == 0 ? (char)random.Next(1, 0xFFFF) : Alphabet[random.Next(Alphabet.Length)]);
            }

            long start = Stopwatch.GetTimestamp();
            var answer = TypedValue.Read(text.ToString(), fields[i % fields.Length]);
            longest = TimeSpan.FromTicks(Math.Max(longest.Ticks, Stopwatch.GetElapsedTime(start).Ticks));
            Assert.NotNull(answer);
            if (answer is Answer.Fine { Value: TypedValue.Amount amount })
            {
                Assert.True(double.IsFinite(amount.Si), text.ToString());
            }
        }

        Assert.True(longest < TimeSpan.FromSeconds(2), $"The slowest text took {longest}."); // a pause of the whole machine is forgiven, a hang is not
    }

    [Theory]
    [InlineData("1V ")]
    [InlineData("1-")]
    [InlineData("1 1 ")]
    [InlineData("~<")]
    [InlineData("3S2P ")]
    [InlineData("1/2 ")]
    [InlineData("9,999,")]
    [InlineData("1m20")]
    public void Texts_that_repeat_one_thing_without_end_are_answered_at_once(string piece)
    {
        foreach (int times in new[] { 10, 40, 4000 })
        {
            string text = string.Concat(Enumerable.Repeat(piece, times));
            long start = Stopwatch.GetTimestamp();
            foreach (var field in SpellingsTests.Fields.Values)
            {
                Assert.NotNull(TypedValue.Read(text, field));
            }

            Assert.True(Stopwatch.GetElapsedTime(start) < TimeSpan.FromSeconds(5));
        }
    }

    [Fact]
    public void Every_amount_spelled_by_Display_reads_back_to_the_last_bit() =>
        Gen.Select(Gen.Double[-1e9, 1e9], Gen.Int[0, Units.All.Count() - 1], Gen.Enum<DecimalMark>()).Sample((value, which, mark) =>
        {
            var unit = Units.All.ElementAt(which);
            var field = Expect.Of(unit) with { Mark = mark };
            var amount = new TypedValue.Amount(unit.IsLevel ? Math.Abs(value) : value, unit);
            string spelled = Display.Spelled(amount, field);
            var read = TypedValue.Read(spelled, field);
            Assert.True(read is Answer.Fine { Values.Count: 1 } fine && fine.Value.Means(amount), $"'{spelled}' for {unit.Symbol} was {read}");
        }, iter: 4_000);

    [Fact]
    public void A_value_of_another_kind_is_refused_with_what_would_be_right()
    {
        var refused = Assert.IsType<Answer.Refused>(TypedValue.Read("5 V", Expect.Ohms));
        Assert.Contains("V", refused.Problem.What, StringComparison.Ordinal);
        Assert.Contains("ohm", refused.Problem.Limit, StringComparison.Ordinal);
    }

    private static void IsRead(SpellingGrammar.Spelt spelt)
    {
        var answer = TypedValue.Read(spelt.Text, SpellingsTests.Fields[spelt.Field]);
        double want = (double)spelt.Si;
        Assert.True(
            answer is Answer.Fine { Values: [TypedValue.Amount amount] } && Math.Abs(amount.Si - want) <= 1e-14 * Math.Abs(want) + 1e-300,
            $"'{spelt.Text}' in {spelt.Field} should be {want.ToString("R", CultureInfo.InvariantCulture)}, was {answer}");
    }
}
