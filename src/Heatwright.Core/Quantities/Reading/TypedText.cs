using System.Globalization;

namespace Heatwright.Quantities;

/// <summary>Spells a typed value so that it reads back as itself, whatever the field and the decimal mark: plain ASCII, no thousand marks.</summary>
internal static class TypedText
{
    public static string Of(TypedValue value, Expect expect) => value switch
    {
        TypedValue.Amount amount => Amount(amount, expect),
        TypedValue.Range range => (range.IsRough ? "~ " : "") + Spelled(range.Low, 0, range.Unit, expect) + " to " + Spelled(range.High, 0, range.Unit, expect, isDifference: !range.Unit.IsLevel) + Said(range.Condition),
        TypedValue.Bound bound => (bound.IsAbove ? "> " : "< ") + Spelled(bound.Value, 0, bound.Unit, expect) + Said(bound.Condition),
        TypedValue.Missing missing => MissingSpelling.Spell(missing.Why),
        TypedValue.Pack pack => FormattableString.Invariant($"{pack.Series}S{pack.Parallel}P") + (pack.From == PackVoltage.None ? "" : pack.From == PackVoltage.Full ? " full" : " nominal"),
        TypedValue.Tolerance tolerance => "+-" + Number(tolerance.Share * 100, 0) + " %",
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, "This kind of value has no spelling."),
    };

    private static string Amount(TypedValue.Amount amount, Expect expect)
    {
        if (expect.Kind == ExpectKind.Clock)
        {
            return Clock(amount.Value);
        }

        if (expect.Kind is ExpectKind.Count or ExpectKind.Money)
        {
            return (amount.IsRough ? "~" : "") + Number(amount.Value, amount.Step) + (amount.PlusMinus > 0 ? " +- " + Number(amount.PlusMinus, 0) : "");
        }

        string limit = amount.PlusMinus > 0
            ? " +- " + (amount.Unit == Units.Percent ? Number(amount.PlusMinus, 0) : Spelled(amount.PlusMinus, 0, amount.Unit, expect, isDifference: true)) + (amount.IsStandard ? " std" : "")
            : "";
        return (amount.IsRough ? "~" : "") + Spelled(amount.Value, amount.Step, amount.Unit, expect) + limit + Said(amount.Condition);
    }

    private static string Clock(double seconds)
    {
        double left = seconds % 60;
        int minutes = (int)((seconds - left) / 60);
        return FormattableString.Invariant($"{minutes / 60:00}:{minutes % 60:00}:{left:00.#########}");
    }

    /// <summary>Mega before volts, amperes and watts is asked back and so never written; differences say so.</summary>
    private static string Spelled(double value, double step, Unit unit, Expect expect, bool isDifference = false)
    {
        if (unit.Symbol is "MV" or "MA" or "MW" && SiPrefix.BaseOf(unit) is { } root)
        {
            return Spelled(root.FromSi(unit.ToSi(value)), 0, root, expect);
        }

        if (unit.IsLevel && isDifference)
        {
            return Number(value * unit.Factor, 0) + " K";
        }

        string number = Number(value, step);
        return unit.Dimension == Units.Kelvin.Dimension && !unit.IsLevel && !isDifference
            ? $"delta {number} K"
            : unit == Units.Metre && expect.IsOpen ? number + " metre" // m alone may be minutes there
            : unit.Symbol.Length == 0 ? number
            : unit.Symbol.StartsWith("1/", StringComparison.Ordinal) && Units.Find(unit.Symbol) is null ? number + UnitSpelling.Plain(unit.Symbol[1..]) // 5/s
            : $"{number} {UnitSpelling.Plain(unit.Symbol)}";
    }

    private static string Said(Condition condition) => condition == Condition.None ? "" : " " + MarkSpelling.Word(condition);

    /// <summary>Every digit, and as many noughts as were typed; a nought more where three decimals could be taken for thousands.</summary>
    public static string Number(double value, double step)
    {
        string text = value.ToString("R", CultureInfo.InvariantCulture);
        int point = text.IndexOf('.', StringComparison.Ordinal);
        if (text.Contains('E', StringComparison.Ordinal))
        {
            return text;
        }

        int have = point < 0 ? 0 : text.Length - point - 1;
        int typed = step is > 0 and < 1 ? Math.Min(15, (int)Math.Round(-Math.Log10(step))) : 0;
        int want = Math.Max(have, typed);
        want += want == 3 ? 1 : 0;
        return have == 0 && want > 0 ? text + "." + new string('0', want) : text + new string('0', want - have);
    }
}
