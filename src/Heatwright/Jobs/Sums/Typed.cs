using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Jobs.Sums;

/// <summary>One typed input of a sum, read into what its law takes.</summary>
internal sealed record Typed(LawInput Input, object? Argument, double Doubt, string Text, bool WasTyped)
{
    public SumInput Shown => new(Input.Name, Input.Card.Meaning, Argument is double or int ? Convert.ToDouble(Argument, CultureInfo.InvariantCulture) is var v && double.IsFinite(v) ? v : null : null,
        Input.Card.Unit, Doubt, Argument is double or int ? "" : Convert.ToString(Argument, CultureInfo.InvariantCulture) ?? "", WasTyped);

    public static Typed Read(LawCard card, LawInput input, string? text, List<Problem> problems)
    {
        string where = $"sum {card.Law.Name}, {input.Name}";
        if (text is null)
        {
            if (!input.IsOptional)
            {
                problems.Add(new($"{Capital(input.Card.Meaning)} is not typed.", where, "none", Limits(input), $"Add {input.Name}=..., for example: heatwright sum {card.Law.Name} {card.Law.Example}"));
            }

            return new(input, input.Parameter.HasDefaultValue ? input.Parameter.DefaultValue : Default(input), 0, "", false);
        }

        Type type = input.Parameter.ParameterType;
        if (type == typeof(string))
        {
            return new(input, text.Trim(), 0, $"{input.Name}={text}", true);
        }

        if (type == typeof(bool))
        {
            bool yes = text is "1" or "yes" or "true";
            return new(input, yes, 0, $"{input.Name}={text}", true);
        }

        if (type.IsEnum)
        {
            if (Enum.TryParse(type, text.Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out object? word))
            {
                return new(input, word, 0, $"{input.Name}={text}", true);
            }

            problems.Add(new($"{Capital(input.Card.Meaning)} cannot be '{text}'.", where, text, string.Join(", ", Enum.GetNames(type)), "Choose one of them."));
            return new(input, null, 0, text, true);
        }

        var (si, doubt) = Number(input, text, where, problems);
        if (si < input.Card.Min || si > input.Card.Max)
        {
            problems.Add(new($"{Capital(input.Card.Meaning)} cannot be {text}.", where, text, Limits(input), $"Correct {input.Name}."));
        }

        return new(input, type == typeof(int) ? (object)(int)Math.Round(si) : si, doubt, $"{input.Name}={text}", true);
    }

    public IEnumerable<string> Caveats(LawCard card)
    {
        if (Argument is double value && (value < Input.Card.SoftMin || value > Input.Card.SoftMax))
        {
            string low = double.IsNegativeInfinity(Input.Card.SoftMin) ? "" : $"from {Say(Input.Card.SoftMin)} ";
            string high = double.IsPositiveInfinity(Input.Card.SoftMax) ? "up" : $"to {Say(Input.Card.SoftMax)}";
            yield return $"{Input.Name} lies outside what {card.Law.Name} was fitted to ({low}{high} {Input.Card.Unit}): take the answer as rough.".Replace("  ", " ", StringComparison.Ordinal);
        }
    }

    /// <summary>A number in the double that the law takes: °C for levels in °C, SI for all else.</summary>
    private static (double Value, double Doubt) Number(LawInput input, string text, string where, List<Problem> problems)
    {
        string symbol = input.Card.Unit;
        var unit = Units.Find(symbol);
        if (unit is not null)
        {
            var bare = symbol switch { "C" => Units.AmpereHour, "m²" => Units.SquareMillimetre, "m" when input.Name.Contains("copper", StringComparison.Ordinal) => Units.Micrometre, "m" => Units.Millimetre, _ => unit };
            var answer = OptionReader.Read(input.Name, text, new Expect(input.Card.Meaning, ExpectKind.Amount, bare == unit ? [unit] : [bare, unit]));
            if (answer.IsFine && Estimated(answer.Value) is { } estimate)
            {
                return symbol == "°C" ? (estimate.Si - Units.ZeroCelsiusK, estimate.SiDoubt) : (unit.FromSi(estimate.Si), estimate.SiDoubt / unit.Factor);
            }

            if (UnitExpression.Amount(text, symbol) is { } composed && symbol != "°C")
            {
                return (composed, 0);
            }

            problems.Add(answer.IsFine
                ? new Problem($"{Capital(input.Card.Meaning)} needs one number.", where, text, Limits(input), "Type a value, or a value with ±.")
                : answer.Problems[0] with { Where = where });
            return (double.NaN, 0);
        }

        int plusMinus = text.IndexOf('±', StringComparison.Ordinal);
        string number = plusMinus < 0 ? text : text[..plusMinus];
        if (UnitExpression.Amount(number.Trim(), symbol) is { } value)
        {
            double half = plusMinus < 0 ? 0 : UnitExpression.Amount(text[(plusMinus + 1)..].Trim(), symbol) ?? 0;
            return (value, half / Math.Sqrt(3));
        }

        problems.Add(new($"{Capital(input.Card.Meaning)} cannot be read.", where, text, $"a number in {symbol}", $"Type it as 1.5{symbol}."));
        return (double.NaN, 0);
    }

    private static Estimate? Estimated(TypedValue value)
    {
        var origin = new Origin.Assumed("typed");
        return value switch
        {
            TypedValue.Amount amount => amount.AsEstimate("typed", CauseGroup.Trial, origin),
            TypedValue.Range range => range.AsEstimate("typed", CauseGroup.Trial, origin),
            _ => null,
        };
    }

    private static object? Default(LawInput input) => input.Parameter.ParameterType == typeof(int) && double.IsFinite(input.Card.Default) ? (int)input.Card.Default
        : input.Parameter.ParameterType == typeof(bool) ? input.Card.Default == 1
        : input.Parameter.ParameterType == typeof(string) ? "" : input.Card.Default;

    private static string Limits(LawInput input) => (input.Card.Min, input.Card.Max) switch
    {
        (double.NegativeInfinity, double.PositiveInfinity) => input.Card.Unit is "" or "word" ? "a value" : $"a value in {input.Card.Unit}",
        (var low, double.PositiveInfinity) => $"{Say(low)} {input.Card.Unit} or more",
        (double.NegativeInfinity, var high) => $"{Say(high)} {input.Card.Unit} or less",
        var (low, high) => $"{Say(low)} to {Say(high)} {input.Card.Unit}",
    };

    private static string Say(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static string Capital(string text) => text.Length == 0 ? "The input" : char.ToUpperInvariant(text[0]) + text[1..];
}
