namespace Heatwright.Quantities;

/// <summary>Reads specifications of instruments as they are printed.</summary>
internal static class SpecReader
{
    private const int LongestText = 80;

    private static readonly string[] Reading = ["of the reading", "of reading", "of rdg", "reading", "readings", "rdg.", "rdg", "rd.", "rd", "of value", "m.v."];

    private static readonly string[] Range = ["of the range", "of range", "range", "rng", "of full scale", "full scale", "f.s.", "FS", "of FS", "of span", "span"];

    private static readonly string[] Digit = ["digits", "digit", "dgts", "dgt.", "dgt", "dig.", "dig", "counts", "count", "cts", "LSD", "d.", "d"];

    private static readonly string[] Larger = ["whichever is larger", "whichever is greater", "whichever is the larger", "whichever is the greater"];

    public static Checked<AccuracySpec> Read(string typed)
    {
        string text = Letters.Even(typed.Length > LongestText ? "" : typed).Replace("(", " ", StringComparison.Ordinal).Replace(")", " ", StringComparison.Ordinal)
            .Replace("[", " ", StringComparison.Ordinal).Replace("]", " ", StringComparison.Ordinal);
        text = Letters.Even(text);
        var spec = new AccuracySpec(0, 0, 0, 0);
        int at = 0;
        int terms = 0;
        while (at < text.Length)
        {
            at = PastJoint(text, at, ref spec);
            if (at >= text.Length)
            {
                break;
            }

            if (Term(text, at, spec, terms) is not { } next)
            {
                return Unreadable(typed);
            }

            (spec, at) = next;
            terms++;
        }

        bool isWhole = terms > 0 && !(spec.TakesLarger && (spec.OfReading == 0 || terms < 2));
        return isWhole ? new(spec) : Unreadable(typed);
    }

    /// <summary>Past signs, 'or', 'whichever is larger' and spaces.</summary>
    private static int PastJoint(string text, int start, ref AccuracySpec spec)
    {
        int at = start;
        for (bool more = true; more;)
        {
            more = false;
            at = Letters.SkipSpace(text, at);
            foreach (string joint in new[] { "\u00B1", "+/-", "+-", "+", ",", "and", "&" })
            {
                if (Letters.After(text, at, joint) is >= 0 and var past)
                {
                    at = past;
                    more = true;
                    break;
                }
            }

            foreach (string word in Larger.Append("or"))
            {
                if (Letters.After(text, at, word) is >= 0 and var past)
                {
                    spec = spec with { TakesLarger = true };
                    at = past;
                    more = true;
                    break;
                }
            }
        }

        return at;
    }

    private static (AccuracySpec Spec, int End)? Term(string text, int start, AccuracySpec spec, int terms)
    {
        foreach (var number in NumberSpelling.At(text, start, DecimalMark.Unknown).Where(number => double.IsFinite(number.Value)).Take(1))
        {
            int unit = Letters.SkipSpace(text, number.End);
            double? share = unit < text.Length && text[unit] == '%' ? 0.01 : Letters.After(text, unit, "ppm") >= 0 ? 1e-6 : null;
            if (share is { } factor)
            {
                int at = Letters.SkipSpace(text, text[unit] == '%' ? unit + 1 : unit + 3);
                int ofRange = Past(text, at, Range);
                int ofReading = Past(text, at, Reading);
                double value = number.Value * factor;
                return ofRange >= 0
                    ? (spec with { OfRange = spec.OfRange + value }, ofRange)
                    : (spec with { OfReading = spec.OfReading + value }, ofReading >= 0 ? ofReading : at);
            }

            int digits = Past(text, unit, Digit);
            if (digits >= 0)
            {
                return (spec with { Digits = spec.Digits + number.Value }, digits);
            }

            // '0.5%+2': a whole number behind a percentage, with nothing behind it, counts digits.
            if (number.End == text.Length && terms > 0 && number.Value == Math.Floor(number.Value))
            {
                return (spec with { Digits = spec.Digits + number.Value }, number.End);
            }

            return Amount(text, start, spec);
        }

        return null;
    }

    private static (AccuracySpec Spec, int End)? Amount(string text, int start, AccuracySpec spec)
    {
        var plain = QuantitySpelling.At(text, start, Expect.Anything, false)
            .Where(quantity => quantity.HasWord && quantity.Word.Kind != UnitWordKind.BarePrefix)
            .SelectMany(quantity => UnitScale.Of(quantity.Word, quantity.Value, SenseOf(quantity.Word), Expect.Anything, false)
                .Where(scale => !scale.Unit.IsLevel && scale.Unit != Units.PerHour && scale.Unit != Units.Minute)
                .Select(scale => (quantity, scale)))
            .OrderByDescending(pair => pair.quantity.End).ToList();
        if (plain.Count == 0 || spec.Fixed != 0)
        {
            return null;
        }

        var (amount, found) = plain[0];
        return (spec with { Fixed = amount.Value * found.Times, FixedUnit = found.Unit }, amount.End);
    }

    private static Sense SenseOf(UnitWord word) =>
        word.Kind is UnitWordKind.Celsius or UnitWordKind.LetterC or UnitWordKind.Fahrenheit or UnitWordKind.Kelvin ? Sense.Difference : Sense.None;

    private static int Past(string text, int at, string[] words) => words.Select(word => Letters.After(text, at, word)).Max();

    private static Checked<AccuracySpec> Unreadable(string typed) => new(new Problem(
        "This cannot be read as what an instrument promises.",
        "instrument",
        $"'{(typed.Length > LongestText ? typed[..LongestText] + "..." : typed)}'",
        "terms such as '0.5 % of reading + 2 digits', '0.1 % of range' or '2 degC'",
        "Copy the line for this range from the instrument's sheet."));
}
