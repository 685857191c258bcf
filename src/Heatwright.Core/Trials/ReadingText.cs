using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>What the text of a reading says.</summary>
public enum ReadingSays
{
    /// <summary>A number.</summary>
    Number,
    /// <summary>Nothing was read.</summary>
    Nothing,
    /// <summary>The instrument was over its range.</summary>
    Overload,
    /// <summary>It cannot be understood, or only by asking.</summary>
    Unclear,
}

/// <summary>The text of one reading, understood.</summary>
/// <param name="Says">What it says.</param>
/// <param name="Value">The number in SI, temperatures in °C; not a number where it says none.</param>
/// <param name="Why">Why it is unclear, with what to type instead; else empty.</param>
public readonly record struct ReadingText(ReadingSays Says, double Value, string Why)
{
    /// <summary>Understands what was typed or logged into a column: a plain number first, then all spellings of a typed value.</summary>
    /// <param name="raw">As typed.</param>
    /// <param name="unit">Unit of the column; null: a word, of which nothing is asked.</param>
    /// <param name="name">The column, for messages.</param>
    public static ReadingText Read(string raw, Unit? unit, string name)
    {
        string text = raw.Trim();
        if (text.Length == 0 || text is "-" or "n/a" or "--" or "--.--")
        {
            return new(ReadingSays.Nothing, double.NaN, "");
        }

        if (text is "OL" or "0L" or ".0F" or "0.F" or "inf" or "Inf")
        {
            return new(ReadingSays.Overload, double.NaN, "");
        }

        string plain = text.Contains('.', StringComparison.Ordinal) ? text : text.Replace(',', '.');
        if (double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
        {
            return double.IsNaN(value) ? new(ReadingSays.Nothing, double.NaN, "") : Math.Abs(value) <= MissingSpelling.NumberForOverload ? Number(value, unit) : new(ReadingSays.Overload, double.NaN, "");
        }

        if (unit is null)
        {
            return new(ReadingSays.Unclear, double.NaN, "it is a word");
        }

        return TypedValue.Read(text, unit == Units.One ? Expect.Ratio : Expect.Of(unit, name)) switch
        {
            Answer.Fine { Value: TypedValue.Amount amount } => new(ReadingSays.Number, unit.IsLevel ? Units.Celsius.FromSi(amount.Si) : amount.Si, ""),
            Answer.Fine { Value: TypedValue.Missing { Why: MissingReason.Overload } } => new(ReadingSays.Overload, double.NaN, ""),
            Answer.Fine { Value: TypedValue.Missing } => new(ReadingSays.Nothing, double.NaN, ""),
            Answer.Question question => new(ReadingSays.Unclear, double.NaN, $"{question.Asks} Type {string.Join(" or ", question.Choices.Select(choice => choice.Spelling))}"),
            Answer.Refused refused => new(ReadingSays.Unclear, double.NaN, refused.Problem.What),
            _ => new(ReadingSays.Unclear, double.NaN, "one number is wanted, not a range or a bound"),
        };
    }

    private static ReadingText Number(double value, Unit? unit) => new(ReadingSays.Number, unit is null || unit.IsLevel ? value : unit.ToSi(value), "");
}
