using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>The hand list spellings.csv: texts as makers type them, with values worked out by hand before the reader was written.</summary>
public class SpellingsTests
{
    private const double Tolerance = 1e-12; // relative: a value read is the nearest double of the decimal, times an exact factor

    internal static readonly Dictionary<string, Expect> Fields = new()
    {
        ["ohms"] = Expect.Ohms,
        ["ohms-high"] = Expect.Ohms with { Likely = (1e3, 1e8) },
        ["volts"] = Expect.Volts,
        ["volts-point"] = Expect.Volts with { Mark = DecimalMark.Point },
        ["volts-comma"] = Expect.Volts with { Mark = DecimalMark.Comma },
        ["amps"] = Expect.Amps,
        ["watts"] = Expect.Watts,
        ["label"] = Expect.Label,
        ["any"] = Expect.Anything,
        ["temp"] = Expect.Temperature,
        ["rise"] = Expect.Rise,
        ["tempany"] = Expect.TemperatureOrRise,
        ["thermo"] = Expect.ThermoVolts,
        ["seebeck"] = Expect.ThermoSlope,
        ["time"] = Expect.Seconds,
        ["minutes"] = Expect.Minutes,
        ["hours"] = Expect.Hours,
        ["clock"] = Expect.Clock,
        ["capacity"] = Expect.Capacity,
        ["energy"] = Expect.Energy,
        ["pack"] = Expect.Pack,
        ["rate"] = Expect.Rate,
        ["wire"] = Expect.WireSize,
        ["copper"] = Expect.Copper,
        ["length"] = Expect.Length,
        ["wpl"] = Expect.Of(Units.WattPerMetre),
        ["wpk"] = Expect.Of(Units.WattPerKelvin),
        ["kpw"] = Expect.Of(Units.KelvinPerWatt),
        ["jpk"] = Expect.Of(Units.JoulePerKelvin),
        ["hertz"] = Expect.Of(Units.Hertz),
        ["percent"] = Expect.Percent,
        ["ratio"] = Expect.Ratio,
        ["tol"] = Expect.Tolerance,
        ["money"] = Expect.Money,
        ["count"] = Expect.Count,
        ["mass"] = Expect.Of(Units.Gram),
        ["perk"] = Expect.Of(Units.PerKelvin),
        ["area"] = Expect.Of(Units.SquareMetre),
        ["light"] = Expect.Of(Units.Lumen),
        ["farad"] = Expect.Of(Units.Farad),
        ["henry"] = Expect.Of(Units.Henry),
    };

    public static TheoryData<string, string, string> Lines()
    {
        var lines = new TheoryData<string, string, string>();
        foreach (string line in File.ReadAllLines(Path.Combine(Repository.Root, "tests", "Heatwright.Core.Tests", "Quantities", "spellings.csv")))
        {
            if (!line.StartsWith('#'))
            {
                string[] cells = line.Split(';');
                lines.Add(cells[0], cells[1], cells[2]);
            }
        }

        return lines;
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void Every_spelling_of_the_hand_list_is_read_as_expected(string field, string text, string expected) =>
        Assert.Equal(expected, Told(TypedValue.Read(Regex.Unescape(text), Fields[field]), expected));

    [Theory]
    [MemberData(nameof(Lines))]
    public void Everything_read_is_spelled_so_that_it_reads_back_as_itself(string field, string text, string expected)
    {
        _ = expected;
        var read = TypedValue.Read(Regex.Unescape(text), Fields[field]);
        IEnumerable<IReadOnlyList<TypedValue>> all = read switch
        {
            Answer.Fine fine => [fine.Values],
            Answer.Question question => question.Choices.Select(choice => choice.Values),
            _ => [],
        };
        foreach (var values in all)
        {
            string spelled = string.Join(", ", values.Select(value => Display.Spelled(value, Fields[field])));
            var again = Assert.IsType<Answer.Fine>(TypedValue.Read(spelled, Fields[field]));
            Assert.True(again.Values.Count == values.Count && again.Values.Zip(values).All(pair => pair.First.Means(pair.Second)), $"'{text}' was spelled '{spelled}' and read as {again.Value}");
        }
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void Every_choice_of_a_question_can_be_typed(string field, string text, string expected)
    {
        _ = expected;
        if (TypedValue.Read(Regex.Unescape(text), Fields[field]) is Answer.Question question)
        {
            Assert.InRange(question.Choices.Count, 2, 4);
            foreach (var choice in question.Choices)
            {
                var again = Assert.IsType<Answer.Fine>(TypedValue.Read(choice.Spelling, Fields[field]));
                Assert.True(again.Value.Means(choice.Values[0]), choice.Spelling);
            }
        }
    }

    /// <summary>The answer in the words of the list; numbers that agree within the tolerance are told as the list tells them.</summary>
    private static string Told(Answer answer, string expected) => answer switch
    {
        Answer.Fine fine => Matches(fine.Values, expected) ? expected : string.Join(" & ", fine.Values.Select(Words)),
        Answer.Question question => expected.StartsWith("ask ", StringComparison.Ordinal) && MatchesAll(question, expected[4..].Split(" | "))
            ? expected
            : "ask " + string.Join(" | ", question.Choices.Select(choice => string.Join(" & ", choice.Values.Select(Words)))),
        _ => "no",
    };

    private static bool MatchesAll(Answer.Question question, string[] wanted) =>
        question.Choices.Count == wanted.Length && wanted.All(want => question.Choices.Any(choice =>
            Matches(choice.Values, want[0] is 'p' or 'n' or '<' or '>' ? want : "= " + want)));

    private static bool Matches(IReadOnlyList<TypedValue> values, string expected)
    {
        string[] wanted = expected.Split(" & ");
        return wanted.Length == values.Count && values.Zip(wanted).All(pair => Matches(pair.First, pair.Second));
    }

    private static bool Matches(TypedValue value, string want)
    {
        string[] had = Words(value).Split(' ');
        string[] wants = want.Split(' ');
        return had.Length == wants.Length && had.Zip(wants).All(pair => pair.First == pair.Second
            || (Number(pair.First) is { } a && Number(pair.Second) is { } b && Math.Abs(a - b) <= Tolerance * Math.Max(Math.Abs(a), Math.Abs(b))));
    }

    private static double? Number(string text)
    {
        string[] parts = text.Split('/');
        return double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double top)
            ? parts.Length == 2 ? top / double.Parse(parts[1], CultureInfo.InvariantCulture) : top
            : null;
    }

    private static string Words(TypedValue value)
    {
        static string N(double number) => number.ToString("R", CultureInfo.InvariantCulture);
        static string C(Condition condition) => condition == Condition.None ? "" : $" {{{condition.ToString().ToLowerInvariant()}}}";
        return value switch
        {
            TypedValue.Amount a => (a.IsRough ? "~ " : "= ") + (a.Unit == Units.Kelvin ? "d " : "") + N(a.Si)
                + (a.PlusMinus > 0 ? " +- " + N(a.PlusMinus * a.Unit.Factor) + (a.IsStandard ? " std" : "") : "") + C(a.Condition),
            TypedValue.Range r => $"{(r.IsRough ? "~ " : "")}{N(r.Unit.ToSi(r.Low))} .. {N(r.Unit.ToSi(r.High))}{C(r.Condition)}",
            TypedValue.Bound b => $"{(b.IsAbove ? '>' : '<')} {N(b.Unit.ToSi(b.Value))}{C(b.Condition)}",
            TypedValue.Missing m => "none " + m.Why.ToString().ToLowerInvariant(),
            TypedValue.Pack p => $"pack {p.Series} {p.Parallel}" + (p.From == PackVoltage.None ? "" : " " + p.From.ToString().ToLowerInvariant()),
            TypedValue.Tolerance t => "tol " + N(t.Share),
            _ => throw new InvalidOperationException(),
        };
    }
}
