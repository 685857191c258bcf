using System.Text.RegularExpressions;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>Reads what a maker types about a part: quantity=value, with the seller's words, the sheet or the reason in brackets behind it.</summary>
public static partial class StatedText
{
    /// <summary>One stated value, or why it cannot be taken.</summary>
    /// <param name="kind">Kind of the part: it decides whose amps are meant.</param>
    /// <param name="origin">measured, sheet, claimed, published or assumed.</param>
    /// <param name="typed">For example 'capacity=3500mAh (label)'.</param>
    public static Checked<StatedValue> Read(PartKind kind, string origin, string typed)
    {
        string where = $"--{origin} \"{typed}\"";
        int equals = typed.IndexOf('=', StringComparison.Ordinal);
        if (equals < 1)
        {
            return new(new Problem("A value of a part needs its name.", where, typed, "quantity=value (words)", $"Type it as --{origin} \"ohms=3R6 (words)\"."));
        }

        string name = typed[..equals].Trim();
        var (value, text) = Split(typed[(equals + 1)..]);
        if (Whose(kind, name) is { } choices)
        {
            return new(new Problem($"{value} of what? A module has amps at its switch, its input and its output, and they differ by the ratio of the volts.", where, typed, string.Join(", ", choices),
                "Type " + string.Join(" or ", choices.Select(choice => $"--{origin} \"{choice}={value}\"")) + ". A bare label nearly always means the switch."));
        }

        if (PartUnits.Find(name) is not { } quantity)
        {
            return new(UnknownName(kind, origin, typed)!);
        }

        if (origin is "assumed" or "published" && text.Length == 0)
        {
            return new(new Problem(origin == "assumed" ? "An assumption needs its reason." : "A published value needs its source.", where, typed, "a reason in brackets", $"Type --{origin} \"{quantity}={value} (why)\"."));
        }

        var expect = PartUnits.Expected[quantity];
        if (quantity == PartQuantities.SetVolts && origin is "claimed" or "sheet" && UpTo().IsMatch($"{value} {text}"))
        {
            // How far a module can be turned is not what it is turned to: that is read at its output.
            quantity = PartQuantities.MostOutputVolts;
            value = UpTo().Replace(value, "").Trim();
            text = text.Length > 0 ? text : $"up to {value}";
        }

        return OptionReader.Read($"--{origin} {quantity}", value, expect).Then(read => Stated(read, quantity, origin, text.Length > 0 ? text : origin == "claimed" ? value : "", where, value));
    }

    /// <summary>What was made of prices that were typed for several, or in a currency: told, since only the bare price of one is kept.</summary>
    /// <param name="typed">'price=3 for 9', for example.</param>
    public static string? PriceTold(string typed)
    {
        int equals = typed.IndexOf('=', StringComparison.Ordinal);
        string value = equals < 1 ? "" : Split(typed[(equals + 1)..]).Value;
        return equals >= 1 && PartUnits.Find(typed[..equals].Trim()) is PartQuantities.Price or PartQuantities.PriceAt10 or PartQuantities.PriceAt100 && OptionReader.Read("price", value, Expect.Money) is { IsFine: true, Value: TypedValue.Amount amount }
            ? ForSeveral().IsMatch(value) ? $"'{value}' is {Display.Significant(amount.Value, 4)} for one." : AnyCurrency().IsMatch(value) ? $"'{value}' is kept as {Display.Significant(amount.Value, 4)}: the currency is yours and is not kept." : null
            : null;
    }

    [GeneratedRegex(@"\d\s*(for|per|/)\s*\D?\d", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex ForSeveral();

    [GeneratedRegex(@"\p{Sc}|(?<![\p{L}])(?!each\b|ea\b|apiece\b|per\b|piece\b|pc\b)\p{L}{3,}", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AnyCurrency();

    /// <summary>What a value's name could be, where no part has one of that name; null: it is known, or there is none.</summary>
    /// <param name="kind">Kind of the part.</param>
    /// <param name="origin">measured, sheet, claimed, published or assumed.</param>
    /// <param name="typed">For example 'capacity=3500mAh (label)'.</param>
    public static Problem? UnknownName(PartKind kind, string origin, string typed) =>
        typed.IndexOf('=', StringComparison.Ordinal) is >= 1 and var equals && typed[..equals].Trim() is var name && PartUnits.Find(name) is null && Whose(kind, name) is null
            ? new("No part has a value of this name.", $"--{origin} \"{typed}\"", name, Near(kind, name), $"{(Meant(kind, name) is [var only] ? $"If '{only}' is meant, type that. " : "")}Choose one of them; what is no number goes into the part's words or its note.") : null;

    private static Checked<StatedValue> Stated(TypedValue read, string quantity, string origin, string text, string where, string typed) => read switch
    {
        // A label's number without a unit is the commonest slip of all: mAh and Ah, mA and A. The maker says it, we do not guess it.
        TypedValue.Amount { UnitWasTyped: false, Unit: var lent } when origin == "claimed" && lent.Symbol.Length > 0 && lent != Units.Money => new(new Problem(
            $"The claim has no unit: {quantity} {typed} of what?", where, typed, $"a number with its unit, such as {typed} {lent.Symbol}", $"Look at the label again; if it means so, type --claimed \"{quantity}={typed} {lent.Symbol}\".")),
        TypedValue.Amount amount => new(new StatedValue(quantity, amount.Value, amount.Unit.Symbol, amount.PlusMinus * (amount.IsStandard ? Math.Sqrt(3) : 1), origin, Kept(text, amount.Condition))),
        TypedValue.Range range => new(new StatedValue(quantity, (range.Low + range.High) / 2, range.Unit.Symbol, (range.High - range.Low) / 2, origin, Kept(text, range.Condition))),
        TypedValue.Bound bound when origin == "claimed" => new(new StatedValue(quantity, bound.Value, bound.Unit.Symbol, 0, origin, text)),
        TypedValue.Bound bound => new(new Problem($"{quantity} is known from one side only.", where, typed, "a value, or a range with two ends",
            bound.IsAbove ? $"Type a range from {typed.TrimStart('>', '=', ' ')} up." : $"Type a range such as \"{quantity}=0 to {typed.TrimStart('<', '=', ' ')}\".")),
        TypedValue.Missing => new(new Problem($"{quantity} has no value there.", where, typed, PartUnits.Expected[quantity].Bare.Symbol, "Leave it out; what is not known is asked for later.")),
        _ => new(new Problem($"{quantity} takes one number.", where, typed, PartUnits.Expected[quantity].Bare.Symbol, "Type a value with its unit.")),
    };

    /// <summary>Words that make a number the end of a range.</summary>
    [GeneratedRegex(@"\bup to\b|\bat most\b|\bmax(imum|\.)?(?![a-z])|^\s*(<=|≤|<)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex UpTo();

    /// <summary>A condition such as 'peak' stays with the words.</summary>
    private static string Kept(string text, Condition condition) => condition is Condition.None or Condition.Diameter || text.Contains(condition.ToString(), StringComparison.OrdinalIgnoreCase)
        ? text : $"{text} ({condition.ToString().ToLowerInvariant()})".TrimStart();

    /// <summary>'3500mAh (label on it)' is a value and words; words may hold brackets of their own.</summary>
    private static (string Value, string Text) Split(string typed)
    {
        typed = typed.Trim();
        int open = typed.IndexOf('(', StringComparison.Ordinal);
        return open > 0 && typed[^1] == ')' ? (typed[..open].Trim(), typed[(open + 1)..^1].Trim()) : (typed, "");
    }

    private static string[]? Whose(PartKind kind, string name) =>
        kind == PartKind.StepUp && name.Trim().ToUpperInvariant() is "CURRENT" or "AMPS" or "RATED CURRENT" or "RATED-CURRENT" && kind == PartKind.StepUp
            ? [PartQuantities.SwitchCurrent, PartQuantities.LimitCurrent, PartQuantities.OutputCurrent] : null;

    /// <summary>Everyday words for what a value's name says in the words of the trade.</summary>
    private static readonly Dictionary<string, string> Everyday = new(StringComparer.OrdinalIgnoreCase)
    {
        ["watts"] = "power",
        ["wattage"] = "power",
        ["amps"] = "current",
        ["amperage"] = "current",
        ["voltage"] = "volts",
        ["resistance"] = "ohms",
        ["weight"] = "mass",
        ["cost"] = "price",
    };

    /// <summary>Names that labels give to values of a kind beside those that it is asked for.</summary>
    private static string[] OnLabels(PartKind kind) => kind switch
    {
        PartKind.Cell => [PartQuantities.RatedCurrent, PartQuantities.PeakCurrent, PartQuantities.FullVolts, PartQuantities.CutoffVolts, PartQuantities.CellEnergy, PartQuantities.DischargeRate],
        PartKind.Heater => [PartQuantities.RatedVolts, PartQuantities.RatedPower],
        PartKind.Lamp => [PartQuantities.RatedPower, PartQuantities.LuminousFlux],
        PartKind.StepUp => [PartQuantities.RatedPower, PartQuantities.SwitchCurrent, PartQuantities.OutputCurrent, PartQuantities.LeastInputVolts, PartQuantities.MostInputVolts, PartQuantities.LeastOutputVolts, PartQuantities.MostOutputVolts, PartQuantities.Efficiency],
        PartKind.Charger => [PartQuantities.FullVolts, PartQuantities.RatedPower],
        PartKind.Supervision => [PartQuantities.RatedCurrent, PartQuantities.FullVolts, PartQuantities.CutoffVolts],
        PartKind.Switch => [PartQuantities.RatedVolts, PartQuantities.ThresholdVolts],
        _ => [PartQuantities.RatedVolts, PartQuantities.RatedPower],
    };

    /// <summary>Names that were likely meant, the likeliest first: of this kind those with every word that was typed, else those with one of them, else of any kind those with every word; empty: none is that near.</summary>
    /// <param name="kind">Kind of the part.</param>
    /// <param name="typed">The name as typed.</param>
    internal static IReadOnlyList<string> Meant(PartKind kind, string typed)
    {
        string[] words = [.. typed.Split([' ', '-', '_'], StringSplitOptions.RemoveEmptyEntries).Select(word => Everyday.GetValueOrDefault(word, word))];
        if (kind == PartKind.StepUp && words.Contains("output", StringComparer.OrdinalIgnoreCase) && words.Contains("volts", StringComparer.OrdinalIgnoreCase))
        {
            return [PartQuantities.SetVolts, PartQuantities.MostOutputVolts]; // what it gives, or what it can be turned to
        }

        string[] own = [.. PartNeeds.Of(kind).Select(need => need.Quantity)], known = [.. own, .. OnLabels(kind).Except(own)];
        bool Has(string name, string word) => name.Contains(word, StringComparison.OrdinalIgnoreCase);
        string[] all = words.Length == 0 ? [] : [.. known.Where(name => words.All(word => Has(name, word)))];
        string[] some = all.Length > 0 ? all : [.. known.Where(name => words.Any(word => word.Length > 2 && Has(name, word)))];
        return some.Length > 0 || words.Length == 0 ? [.. some.Take(4)]
            : [.. PartUnits.Expected.Keys.Where(name => words.All(word => Has(name, word))).OrderBy(name => name.Length).ThenBy(name => name, StringComparer.Ordinal).Take(4)];
    }

    /// <summary>What was likely meant; where nothing is near, what a part of this kind is asked for, and then all names.</summary>
    private static string Near(PartKind kind, string typed)
    {
        string[] own = [.. PartNeeds.Of(kind).Select(need => need.Quantity)];
        return Meant(kind, typed) is { Count: > 0 } near ? $"perhaps {string.Join(" or ", near)}"
            : $"of a {EnterPart.Spoken(kind)} mostly {string.Join(", ", own)}; else {string.Join(", ", PartUnits.Expected.Keys.Except(own).Order(StringComparer.Ordinal))}";
    }
}
