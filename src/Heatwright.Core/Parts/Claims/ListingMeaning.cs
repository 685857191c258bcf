using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>A value with what it may be: one word where the text says it, several where the maker has to.</summary>
internal sealed record ToldClaim(IReadOnlyList<string> Choices, double Value, Unit Unit, double PlusMinus);

/// <summary>What one value of a text told.</summary>
/// <param name="Claims">Candidates; a range of volts is two.</param>
/// <param name="Why">Why there is none; empty where there is.</param>
/// <param name="UsedBehind">True where the words behind the value told it.</param>
internal sealed record Told(IReadOnlyList<ToldClaim> Claims, string Why, bool UsedBehind)
{
    public static Told Nothing(string why) => new([], why, false);
}

/// <summary>Decides what a value is by its unit, the words near it and the kind of part.</summary>
internal static partial class ListingMeaning
{
    public static Told Of(PartKind kind, IReadOnlyList<SeenValue> seen, int i, Surroundings around, string text, string words)
    {
        var value = seen[i];
        if (value.IsPrice)
        {
            return new([new([PriceOf(around)], ((TypedValue.Amount)value.Meanings[0]).Value, Units.Money, 0)], "", false);
        }

        if (value.Sizes.Count > 0)
        {
            return ListingSizes.Of(kind, value, around, text) is { } names
                ? new([.. names.Select((name, k) => new ToldClaim([name], value.Sizes[k], Units.Millimetre, 0))], "", false)
                : Told.Nothing("a size of something else");
        }

        List<Told> all = [.. value.Meanings.Select(meaning => One(kind, meaning, seen, i, around, text, words))];
        var claims = all.Where(told => told.Claims.Count > 0).ToList();
        claims = [.. claims.Where((told, k) => !claims.Take(k).Any(other => other.Claims.SequenceEqual(told.Claims, SameClaim.Instance)))];
        if (claims.Count > 1 && claims.Where(Usual).ToList() is { Count: > 0 } usual)
        {
            claims = usual;
        }

        return claims.Count switch
        {
            1 => claims[0],
            0 => all.FirstOrDefault() ?? Told.Nothing("no unit that a part is stated in"),
            _ => Told.Nothing("may mean several values: type it yourself"),
        };
    }

    private static Told One(PartKind kind, TypedValue meaning, IReadOnlyList<SeenValue> seen, int i, Surroundings around, string text, string words)
    {
        var (low, high, unit, plusMinus) = Span(meaning);
        if (unit is null || ListingWords.Of(kind, unit) is not { } near || (unit.IsLevel && !words.Contains('°', StringComparison.Ordinal) && words.Contains('K', StringComparison.Ordinal)))
        {
            return Told.Nothing("not a value of this kind of part");
        }

        bool isRange = high > low;
        if (isRange && Ends(kind, unit, seen, i, around, text) is { } ends)
        {
            return new([new([ends.Low], low, unit, 0), new([ends.High], high, unit, 0)], "", ends.UsedBehind);
        }

        var (choices, behind, isClaim) = Named(kind, near, meaning, unit, seen, i, around, text);
        return !isClaim || choices.Count == 0
            ? Told.Nothing(isClaim ? "nothing near it says what it is" : "about something else")
            : new([new(choices, isRange ? (low + high) / 2 : low, unit, isRange ? (high - low) / 2 : plusMinus)], "", behind);
    }

    private static (IReadOnlyList<string> Choices, bool Behind, bool IsClaim) Named(
        PartKind kind, NearWords near, TypedValue meaning, Unit unit, IReadOnlyList<SeenValue> seen, int i, Surroundings around, string text)
    {
        if (unit.Measures(Units.Metre) && meaning is TypedValue.Amount { Condition: Condition.Diameter })
        {
            return ([PartQuantities.Diameter], false, true);
        }

        // '(0.32 mm)' behind a gauge is the same wire again; a length behind the gauge of a lead is that lead's.
        if (unit.Measures(Units.Metre) && i > 0 && IsGauge(seen[i - 1]) && kind != PartKind.Leads)
        {
            string between = text[seen[i - 1].End..seen[i].Start].Trim();
            if (between.Length <= 1)
            {
                return between == "(" ? ([PartQuantities.Diameter], false, true) : ([], false, false);
            }
        }

        foreach (var (words, isBehind) in new[] { (around.Before, false), (around.Behind, true) })
        {
            foreach (var word in near.Words)
            {
                if (word.Near.IsMatch(words))
                {
                    return word.Quantity is null ? ([], isBehind, false) : ([Turned(kind, word.Quantity, text)], isBehind, true);
                }
            }
        }

        return (near.Otherwise, false, true);
    }

    /// <summary>Height of a round cell is its length.</summary>
    private static string Turned(PartKind kind, string quantity, string text) =>
        quantity == PartQuantities.Height && ListingSizes.IsRoundCell(kind, text) ? PartQuantities.Length : quantity;

    /// <summary>The two ends of a range where they are two claims: volts of inputs and outputs, temperatures.</summary>
    private static (string Low, string High, bool UsedBehind)? Ends(PartKind kind, Unit unit, IReadOnlyList<SeenValue> seen, int i, Surroundings around, string text)
    {
        if (unit.Measures(Units.Celsius))
        {
            return kind is PartKind.Leads or PartKind.Sensor ? (PartQuantities.LowestTemperature, PartQuantities.HighestTemperature, false) : null;
        }

        if (!unit.Measures(Units.Volt))
        {
            return null;
        }

        var input = (PartQuantities.LeastInputVolts, PartQuantities.MostInputVolts);
        var output = (PartQuantities.LeastOutputVolts, PartQuantities.MostOutputVolts);
        switch (kind)
        {
            case PartKind.StepUp:
                foreach (var (words, behind) in new[] { (around.Before, false), (around.Behind, true) })
                {
                    if (OutWord().IsMatch(words))
                    {
                        return (output.LeastOutputVolts, output.MostOutputVolts, behind);
                    }

                    if (InWord().IsMatch(words))
                    {
                        return (input.LeastInputVolts, input.MostInputVolts, behind);
                    }
                }

                // '10-32V to 12-35V': in, then out.
                return i > 0 && IsVoltRange(seen[i - 1]) && ToWord().IsMatch(text[seen[i - 1].End..seen[i].Start]) ? (output.LeastOutputVolts, output.MostOutputVolts, false)
                    : i + 1 < seen.Count && IsVoltRange(seen[i + 1]) && ToWord().IsMatch(text[seen[i].End..seen[i + 1].Start]) ? (input.LeastInputVolts, input.MostInputVolts, false)
                    : null;
            case PartKind.Switch when LoadWord().IsMatch(around.Before):
            case PartKind.Controller:
            case PartKind.Lamp:
                return (input.LeastInputVolts, input.MostInputVolts, false);
            default:
                return null;
        }
    }

    private static string PriceOf(Surroundings around) => Hundred().IsMatch(around.Before) ? PartQuantities.PriceAt100 : Ten().IsMatch(around.Before) ? PartQuantities.PriceAt10 : PartQuantities.Price;

    private static (double Low, double High, Unit? Unit, double PlusMinus) Span(TypedValue value) => value switch
    {
        TypedValue.Amount amount => (amount.Value, amount.Value, amount.Unit, amount.PlusMinus * (amount.IsStandard ? Math.Sqrt(3) : 1)),
        TypedValue.Range range => (range.Low, range.High, range.Unit, 0),
        TypedValue.Bound bound => (bound.Value, bound.Value, bound.Unit, 0),
        _ => (0, 0, null, 0),
    };

    /// <summary>Where a spelling leaves the value open ('3,500mAh'), what such a part usually has decides.</summary>
    private static bool Usual(Told told) => told.Claims.All(claim => claim.Choices.All(name =>
        PartUnits.Expected[name].Likely is not { } likely || (claim.Unit.ToSi(claim.Value) >= likely.Low && claim.Unit.ToSi(claim.Value) <= likely.High)));

    private static bool IsGauge(SeenValue seen) => seen.Meanings.Any(meaning => meaning is TypedValue.Amount amount && amount.Unit.Measures(Units.SquareMillimetre));

    private static bool IsVoltRange(SeenValue seen) => seen.Meanings.Any(meaning => meaning is TypedValue.Range range && range.Unit.Measures(Units.Volt));

    private sealed class SameClaim : IEqualityComparer<ToldClaim>
    {
        public static readonly SameClaim Instance = new();

        public bool Equals(ToldClaim? x, ToldClaim? y) => x is not null && y is not null && x.Choices.SequenceEqual(y.Choices) && x.Unit.ToSi(x.Value) == y.Unit.ToSi(y.Value)
            && x.PlusMinus * x.Unit.Factor == y.PlusMinus * y.Unit.Factor;

        public int GetHashCode(ToldClaim obj) => obj.Unit.ToSi(obj.Value).GetHashCode();
    }

    [GeneratedRegex(@"\bout(put)?\b|\bvout\b", RegexOptions.CultureInvariant)]
    private static partial Regex OutWord();

    [GeneratedRegex(@"\bin(put)?\b|\bvin\b|supply", RegexOptions.CultureInvariant)]
    private static partial Regex InWord();

    [GeneratedRegex(@"^\s*(to|->|=>|→)\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex ToWord();

    [GeneratedRegex(@"load|input|supply|\bin\b", RegexOptions.CultureInvariant)]
    private static partial Regex LoadWord();

    [GeneratedRegex(@"\b100 ?(\+|pcs|pieces|or more|up)", RegexOptions.CultureInvariant)]
    private static partial Regex Hundred();

    [GeneratedRegex(@"\b10 ?(\+|pcs|pieces|or more|up)", RegexOptions.CultureInvariant)]
    private static partial Regex Ten();
}
