using System.Globalization;
using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Jobs.Sums;

/// <summary>One typed input of a sum, read into what its law takes.</summary>
internal sealed record Typed(LawInput Input, object? Argument, double Doubt, string Text, bool WasTyped)
{
    public SumInput Shown => new(Input.Name, Input.Card.Meaning, IsNumber && !IsLeftOut ? Convert.ToDouble(Argument, CultureInfo.InvariantCulture) is var v && double.IsFinite(v) ? v : null : null,
        Input.Card.Unit, Doubt, IsNumber ? "" : Word, WasTyped)
    {
        IsBare = WasTyped && IsNumber && IsBare(Text[(Text.IndexOf('=', StringComparison.Ordinal) + 1)..]),
    };

    /// <summary>True where the law itself knows what to do without it: there is no value to show.</summary>
    private bool IsLeftOut => !WasTyped && double.IsNaN(Input.Card.Default);

    private bool IsNumber => Argument is double or int && !Input.IsYesNo;

    private string Word => Argument switch
    {
        null => "",
        1.0 or true when Input.IsYesNo => "yes",
        0.0 or false when Input.IsYesNo => "no",
        Enum word => LawCard.Kebab(word.ToString()),
        _ => Convert.ToString(Argument, CultureInfo.InvariantCulture) ?? "",
    };

    public static Typed Read(LawCard card, LawInput input, string? text, List<Problem> problems)
    {
        string where = $"sum {card.Law.Name}, {input.Name}";
        if (text is null)
        {
            if (!input.IsOptional)
            {
                problems.Add(new($"{Capital(input.Card.Meaning)} is not typed.", where, "none", Limits(input), $"Add {input.Name}=..., for example: heatwright sum {card.Law.Name} {card.Law.Example}"));
            }

            return new(input, input.DefaultArgument, 0, "", false);
        }

        Type type = input.Parameter.ParameterType;
        if (input.IsYesNo)
        {
            bool? yes = text.Trim().ToLowerInvariant() switch { "yes" or "y" or "true" or "1" => true, "no" or "n" or "false" or "0" => false, _ => null };
            return yes is { } said ? new(input, type == typeof(bool) ? said : said ? 1.0 : 0.0, 0, $"{input.Name}={text}", true) : Refuse($"{Capital(input.Card.Meaning)} is yes or no, not '{text}'.", "yes or no", "Choose one of them.");
        }

        if (type == typeof(string))
        {
            return input.Words.Count == 0 || input.Words.Contains(text.Trim(), StringComparer.OrdinalIgnoreCase)
                ? new(input, text.Trim(), 0, $"{input.Name}={text}", true)
                : Refuse($"{Capital(input.Card.Meaning)} cannot be '{text}'.", string.Join(", ", input.Words), "Choose one of them.");
        }

        if (type.IsEnum)
        {
            return !text.Any(char.IsAsciiDigit) && Enum.TryParse(type, text.Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out object? word)
                ? new(input, word, 0, $"{input.Name}={text}", true)
                : Refuse($"{Capital(input.Card.Meaning)} cannot be '{text}'.", string.Join(", ", input.Words), "Choose one of them.");
        }

        int before = problems.Count;
        var (si, doubt) = Number(input, text, where, problems);
        if (problems.Count == before && !(double.IsFinite(si) && si >= Lowest(input) && si <= input.Card.Max))
        {
            problems.Add(new($"{Capital(input.Card.Meaning)} cannot be {text}.", where, text, Limits(input), $"Correct {input.Name}."));
        }
        else if (type == typeof(int) && (si != Math.Round(si) || Math.Abs(si) > 1e9))
        {
            problems.Add(new($"{Capital(input.Card.Meaning)} is a whole number.", where, text, Limits(input), $"Correct {input.Name}."));
        }

        return problems.Count > before ? new(input, null, 0, text, true) : new(input, type == typeof(int) ? (object)(int)si : si, doubt, $"{input.Name}={text}", true);

        Typed Refuse(string what, string limit, string next)
        {
            problems.Add(new(what, where, text, limit, next));
            return new(input, null, 0, text, true);
        }
    }

    public IEnumerable<string> Caveats(LawCard card)
    {
        if (IsNumber && Convert.ToDouble(Argument, CultureInfo.InvariantCulture) is var value && (value < Input.Card.SoftMin || value > Input.Card.SoftMax))
        {
            yield return $"{Input.Name} lies outside what {card.Law.Name} was fitted to ({Soft(Input)}): take the answer as rough.";
        }
    }

    /// <summary>'2x150mm': out and return of one length. Never where the count would be a zero or a sign.</summary>
    private static (int Count, string Length) Times(string text)
    {
        int cross = text.IndexOfAny(['x', '×', '*']);
        return cross is > 0 and < 3 && text[..cross].Trim() is var count && count.All(char.IsAsciiDigit) && count[0] != '0' && cross + 1 < text.Length && text[(cross + 1)..].Trim() is { Length: > 0 } rest && char.IsAsciiDigit(rest[0])
            ? (int.Parse(count, NumberStyles.None, CultureInfo.InvariantCulture), rest)
            : (1, text);
    }

    /// <summary>A share typed as a fraction: 1/3.</summary>
    private static double? Fraction(string text) => text.Split('/') is [var top, var under] && top.Trim().All(char.IsAsciiDigit) && under.Trim().All(char.IsAsciiDigit)
        && double.TryParse(top, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out double upper)
        && double.TryParse(under, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out double lower) && lower > 0 ? upper / lower : null;

    /// <summary>True where a text without a name can only be meant for inputs of this one's unit: it reads, and it wears a unit or is one of its words.</summary>
    internal static bool Suits(LawInput input, string text)
    {
        if (input.IsYesNo || input.Parameter.ParameterType == typeof(string) || input.Parameter.ParameterType.IsEnum)
        {
            return !input.IsYesNo && input.Words.Contains(text.Trim(), StringComparer.OrdinalIgnoreCase);
        }

        string unit = input.Card.Unit;
        string worn = text.Trim().TrimStart('~').TrimStart("0123456789.,-+eE ".ToCharArray()).Trim();
        bool gauge = text.Contains("AWG", StringComparison.OrdinalIgnoreCase) || text.Contains("ga", StringComparison.OrdinalIgnoreCase) || text.Contains('#', StringComparison.Ordinal);
        bool suits = worn.Length > 0 && unit.Length > 0 && worn switch
        {
            // A lone prefix: 20K is a rise or twenty thousand ohms, never twenty thousand amperes.
            "k" or "K" or "M" or "m" or "R" or "r" => unit == "Ω" || (worn == "K" && unit == "K"),
            _ when gauge => unit == "m²" || (unit == "m" && input.Name == "diameter") || input.Name == "gauge",
            // A length is no cross-section unless it says that it is a diameter.
            _ when unit == "m²" => worn.Contains("m2", StringComparison.Ordinal) || worn.Contains('²', StringComparison.Ordinal) || worn.Contains("dia", StringComparison.Ordinal),
            _ => true,
        };
        List<Problem> problems = [];
        return suits && double.IsFinite(Number(input, text, "", problems).Value) && problems.Count == 0;
    }

    /// <summary>True for a number without a unit; such a one is read in the unit that the input shows.</summary>
    internal static bool IsBare(string text) => text.Length > 0 && text.Any(char.IsAsciiDigit) && text.All(letter => char.IsAsciiDigit(letter) || letter is '.' or ',' or '-' or '+' or 'e' or 'E' or ' ' or '\'');

    /// <summary>A number in the double that the law takes: °C for levels in °C, SI for all else.</summary>
    private static (double Value, double Doubt) Number(LawInput input, string text, string where, List<Problem> problems)
    {
        string symbol = input.Card.Unit;
        if (symbol == "m" && Times(text) is ( > 1 and var times, var one))
        {
            var (each, spread) = Number(input, one, where, problems);
            return (times * each, times * spread);
        }

        if (symbol.Length == 0 && Fraction(text) is { } share)
        {
            return (share, 0);
        }

        if (input.Name == "gauge" && text.Trim().Replace("gauge", "", StringComparison.OrdinalIgnoreCase).Replace("AWG", "", StringComparison.OrdinalIgnoreCase) is { Length: > 0 } bareGauge)
        {
            text = bareGauge.Trim();
        }

        var unit = Units.Find(symbol);
        if (unit is not null)
        {
            var bare = Bare(input)!;
            var answer = OptionReader.Read(input.Name, text, new Expect(input.Card.Meaning, ExpectKind.Amount, bare == unit ? [unit] : [bare, unit]) { Likely = symbol == "C" ? (3.6, 1.8e6) : null });
            if (answer.IsFine && Estimated(answer.Value) is { } estimate)
            {
                // A bare '1' for copper may be an ounce; a micrometre of copper is on no board.
                if (input.Name == "copper" && text.All(letter => char.IsAsciiDigit(letter) || letter is '.' or ',') && estimate.Si < 5e-6)
                {
                    problems.Add(new($"Copper of '{text}' may be ounces or micrometres.", where, text, "a thickness with its unit", $"Type copper={text}oz or copper={text}um."));
                    return (double.NaN, 0);
                }

                // 1000 °C is 1273.15 K, and less 273.15 again a hair above 1000: a type that ends at 1000 °C would refuse it.
                return symbol == "°C" ? (Math.Round(estimate.Si - Units.ZeroCelsiusK, 9), estimate.SiDoubt) : (unit.FromSi(estimate.Si), estimate.SiDoubt / unit.Factor);
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

    /// <summary>The unit of a bare number: lengths in mm, copper in µm, capacities in Ah, as the trade says them. Null for a composed unit.</summary>
    internal static Unit? Bare(LawInput input) => Units.Find(input.Card.Unit) is not { } unit ? null : input.Card.Unit switch
    {
        "C" => Units.AmpereHour,
        "m²" => Units.SquareMillimetre,
        "m" when input.Name is "copper" or "plating" or "roughness" => Units.Micrometre,
        "m" => Units.Millimetre,
        _ => unit,
    };

    /// <summary>What may be typed, and where the law was fitted; empty where both are open.</summary>
    internal static string Range(LawInput input)
    {
        string hard = input.Words.Count > 0 || (double.IsNegativeInfinity(Lowest(input)) && double.IsPositiveInfinity(input.Card.Max)) ? "" : Limits(input);
        string soft = Soft(input);
        return soft.Length == 0 ? hard : $"{hard}{(hard.Length > 0 ? ", " : "")}fitted {soft}";
    }

    /// <summary>Nothing is colder than absolute zero, whatever the law says.</summary>
    internal static double Lowest(LawInput input) => input.Card.Unit == "°C" ? Math.Max(input.Card.Min, -Units.ZeroCelsiusK) : input.Card.Min;

    private static string Soft(LawInput input) => (input.Card.SoftMin, input.Card.SoftMax) switch
    {
        (double.NegativeInfinity, double.PositiveInfinity) => "",
        (var low, double.PositiveInfinity) => $"from {Say(low, input)} up",
        (double.NegativeInfinity, var high) => $"up to {Say(high, input)}",
        var (low, high) => $"from {Say(low, input)} to {Say(high, input)}",
    };

    internal static string Limits(LawInput input) => (Lowest(input), input.Card.Max) switch
    {
        _ when input.Words.Count > 0 => string.Join(", ", input.Words),
        (double.NegativeInfinity, double.PositiveInfinity) => input.Card.Unit is "" or "word" ? "a value" : $"a value in {input.Card.Unit}",
        (0, double.PositiveInfinity) => "0 or more",
        ( > 0 and < 1e-6, double.PositiveInfinity) => "more than 0",
        ( > 0 and < 1e-6, var high) => $"more than 0, at most {Say(high, input)}",
        (var low, double.PositiveInfinity) => $"{Say(low, input)} or more",
        (double.NegativeInfinity, var high) => $"{Say(high, input)} or less",
        var (low, high) => $"{Say(low, input)} to {Say(high, input)}",
    };

    private static string Say(double value, LawInput input) => SumUnits.Shown(value, 0, input.Card.Unit is "word" or "yes/no" ? "" : input.Card.Unit);

    private static string Capital(string text) => text.Length == 0 ? "The input" : char.ToUpperInvariant(text[0]) + text[1..];
}
