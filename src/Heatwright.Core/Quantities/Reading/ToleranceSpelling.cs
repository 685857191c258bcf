namespace Heatwright.Quantities;

/// <summary>What was typed behind a value to say how far it may be off.</summary>
/// <param name="Share">A share of the value; 0 where none was typed.</param>
/// <param name="Number">A number of units; 0 where none was typed.</param>
/// <param name="Word">The unit word of that number.</param>
/// <param name="HasSign">True where ± was typed.</param>
/// <param name="End">Where it ends.</param>
internal readonly record struct ToleranceTail(double Share, double Number, UnitWord Word, bool HasSign, int End)
{
    public bool HasAny => Share > 0 || HasSign;

    /// <summary>The limits that this may mean, in the unit of the value.</summary>
    public IEnumerable<double> LimitsIn(UnitScale scale, double typed)
    {
        if (Share > 0)
        {
            // Per cent of per cent are points: 87 % ± 2 % is 85 to 89.
            yield return scale.Unit == Units.Percent ? Share * 100 : Share * Math.Abs(scale.Unit.IsLevel ? scale.Apply(typed) : typed * scale.Times);
            yield break;
        }

        var root = SiPrefix.BaseOf(scale.Unit);
        if (Word.Kind is UnitWordKind.None)
        {
            // '10k ±100' means ohms, '10k ±0.1' may mean either; a limit larger than the value is not meant.
            bool mayBeRoot = Number > 0 && root is not null && scale.Unit.Factor > root.Factor;
            if (!mayBeRoot || Number <= Math.Abs(typed))
            {
                yield return Number * scale.Times;
            }

            if (mayBeRoot)
            {
                yield return Number * scale.Times * root!.Factor / scale.Unit.Factor;
            }

            yield break;
        }

        var own = new Expect("", ExpectKind.Amount, [root ?? scale.Unit, Difference(scale.Unit)]);
        foreach (var limit in UnitScale.Of(Word, Number, DifferenceSense(scale.Unit), own, false).Where(limit => limit.Unit.Dimension == scale.Unit.Dimension))
        {
            yield return Number * limit.Times * limit.Unit.Factor / scale.Unit.Factor;
        }
    }

    private static Unit Difference(Unit unit) => unit.IsLevel ? Units.Kelvin : unit;

    private static Sense DifferenceSense(Unit unit) => unit.Dimension == Units.Kelvin.Dimension ? Sense.Difference : Sense.None;
}

/// <summary>Tolerances behind a value, and tolerances alone.</summary>
internal static class ToleranceSpelling
{
    /// <summary>Without a sign only so much is a tolerance: '5k6 1%'; more is a share of its own, such as an efficiency.</summary>
    public const double MostWithoutSign = 0.2;

    private static readonly string[] Signs = ["\u00B1", "+-", "+/-"];

    /// <summary>Every tolerance that may follow here, and none.</summary>
    public static IEnumerable<ToleranceTail> Tails(string text, int start, Quantity quantity, Expect expect, bool loose)
    {
        yield return new(0, 0, UnitWord.None(start), false, start);
        int at = Letters.SkipSpace(text, start);
        int past = PastSign(text, at);
        foreach (var number in NumberSpelling.At(text, past >= 0 ? Letters.SkipSpace(text, past) : at, expect.Mark).Where(number => double.IsFinite(number.Value)))
        {
            int percent = PastPercent(text, number.End);
            bool mayFollowBare = quantity.HasWord || !expect.IsOpen;
            if (percent >= 0 && (past >= 0 || (mayFollowBare && at > start && number.Value <= 100 * MostWithoutSign)))
            {
                yield return new(number.Value / 100, 0, UnitWord.None(percent), past >= 0, percent);
            }
            else if (past >= 0)
            {
                yield return new(0, number.Value, UnitWord.None(number.End), true, number.End);
                foreach (var word in UnitSpelling.At(text, Letters.SkipSpace(text, number.End), expect, loose))
                {
                    yield return new(0, number.Value, word, true, word.End);
                }
            }
        }

        if (past < 0 && expect.Takes(Units.Ohm) && !IsOtherUnit(text, start, quantity, expect)
            && LetterCode.Tolerance(text, start, quantity.IsCoded) is { Share: > 0 } letter)
        {
            yield return new(letter.Share, 0, UnitWord.None(letter.End), false, letter.End);
        }
    }

    /// <summary>A tolerance alone: ±5 %, 5, J.</summary>
    public static IEnumerable<Item> Alone(string text, Expect expect)
    {
        int start = PastSign(text, 0) is >= 0 and var past ? Letters.SkipSpace(text, past) : 0;
        foreach (var number in NumberSpelling.At(text, start, expect.Mark).Where(number => double.IsFinite(number.Value)))
        {
            int percent = PastPercent(text, number.End);
            yield return new(new TypedValue.Tolerance(number.Value / 100), percent >= 0 ? percent : number.End, true);
        }

        if (LetterCode.Tolerance(text, 0, true) is { Share: > 0 } letter)
        {
            yield return new(new TypedValue.Tolerance(letter.Share), letter.End, true);
        }
    }

    /// <summary>'47F' in a field of ohms is a slip of the field, not 47 Ω of 1 %; behind a bare number only J and G are surely tolerances or multiples.</summary>
    private static bool IsOtherUnit(string text, int start, Quantity quantity, Expect expect) =>
        !quantity.HasWord && (expect.IsOpen || start >= text.Length || text[Letters.SkipSpace(text, start)] is not ('J' or 'G'));

    private static int PastSign(string text, int at)
    {
        foreach (string sign in Signs)
        {
            int past = Letters.After(text, at, sign);
            if (past >= 0)
            {
                return past;
            }
        }

        return -1;
    }

    private static int PastPercent(string text, int end)
    {
        int at = Letters.SkipSpace(text, end);
        return at < text.Length && text[at] == '%' && (at + 1 >= text.Length || text[at + 1] != '/') ? at + 1 : -1;
    }
}
