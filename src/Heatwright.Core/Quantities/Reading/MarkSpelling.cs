namespace Heatwright.Quantities;

/// <summary>What stands before a value: ~, &lt;, delta.</summary>
internal readonly record struct MarksBefore(bool IsRough, bool? IsAbove, Sense Sense, Condition Condition, int End);

/// <summary>What stands behind a value: ?, cont, abs, std.</summary>
internal readonly record struct MarksAfter(bool IsRough, Condition Condition, Sense Sense, bool IsStandard, int End);

/// <summary>Reads the words and signs around a value.</summary>
internal static class MarkSpelling
{
    private static readonly string[] Rough =
        ["~", "approximately", "approx.", "approx", "about", "around", "roughly", "circa", "ca.", "ca", "c."];

    private static readonly string[] RoughBehind = ["?", "-ish", "ish", "or so", "approx.", "approx", "(approx)", "roughly", "rough"];

    private static readonly (string Word, bool IsAbove)[] Bounds =
        [("<=", false), (">=", true), ("<", false), (">", true), ("less than", false), ("more than", true), ("under", false), ("below", false),
         ("over", true), ("above", true), ("at least", true), ("at most", false), ("up to", false), ("no more than", false), ("no less than", true)];

    private static readonly (string Word, Sense Sense)[] Senses =
        [("delta T", Sense.Difference), ("delta", Sense.Difference), ("\u0394T", Sense.Difference), ("\u0394", Sense.Difference), ("dT", Sense.Difference),
         ("rise of", Sense.Difference), ("rise", Sense.Difference), ("difference", Sense.Difference)];

    private static readonly (string Word, Sense Sense)[] SensesBehind =
        [("absolute", Sense.Absolute), ("abs.", Sense.Absolute), ("abs", Sense.Absolute), ("above ambient", Sense.Difference), ("rise", Sense.Difference),
         ("difference", Sense.Difference), ("diff", Sense.Difference)];

    /// <summary>Longer words first, so that 'max.' is not left with a point behind it.</summary>
    private static readonly (string Word, Condition Condition)[] Conditions =
        [("continuously", Condition.Continuous), ("continuous", Condition.Continuous), ("cont.", Condition.Continuous), ("cont", Condition.Continuous),
         ("peak", Condition.Peak), ("pk", Condition.Peak), ("pulse", Condition.Peak), ("burst", Condition.Peak),
         ("maximum", Condition.Most), ("max.", Condition.Most), ("max", Condition.Most),
         ("minimum", Condition.Least), ("min.", Condition.Least), ("min", Condition.Least),
         ("nominal", Condition.Nominal), ("nom.", Condition.Nominal), ("nom", Condition.Nominal),
         ("typical", Condition.Typical), ("typ.", Condition.Typical), ("typ", Condition.Typical),
         ("rms", Condition.Rms), ("average", Condition.Average), ("avg.", Condition.Average), ("avg", Condition.Average),
         ("diameter", Condition.Diameter), ("dia.", Condition.Diameter), ("dia", Condition.Diameter),
         ("DC", Condition.Direct), ("AC", Condition.Alternating)];

    /// <summary>All signs and words that stand before a number here.</summary>
    public static MarksBefore Before(string text, int start)
    {
        var marks = new MarksBefore(false, null, Sense.None, Condition.None, start);
        for (bool more = true; more;)
        {
            more = false;
            int at = Letters.SkipSpace(text, marks.End);
            if (Past(text, at, Rough) is >= 0 and var rough)
            {
                marks = marks with { IsRough = true, End = rough };
                more = true;
            }
            else if (Past(text, at, Bounds) is { End: >= 0 } bound && marks.IsAbove is null)
            {
                marks = marks with { IsAbove = bound.Means, End = bound.End };
                more = true;
            }
            else if (Past(text, at, Senses) is { End: >= 0 } sense && marks.Sense == Sense.None)
            {
                marks = marks with { Sense = sense.Means, End = sense.End };
                more = true;
            }
            else if (at < text.Length && text[at] == '\u00D8' && marks.Condition == Condition.None)
            {
                marks = marks with { Condition = Condition.Diameter, End = at + 1 };
                more = true;
            }
        }

        return marks with { End = Letters.SkipSpace(text, marks.End) };
    }

    /// <summary>All signs and words that stand behind a value here.</summary>
    /// <param name="unitWasTyped">A condition may follow a unit only: behind a bare number 'min' is minutes.</param>
    public static MarksAfter After(string text, int start, bool unitWasTyped)
    {
        var marks = new MarksAfter(false, Condition.None, Sense.None, false, start);
        for (bool more = true; more;)
        {
            more = false;
            int at = Letters.SkipSpace(text, marks.End);
            if (Past(text, at, RoughBehind) is >= 0 and var rough)
            {
                marks = marks with { IsRough = true, End = rough };
                more = true;
            }
            else if (Past(text, at, SensesBehind) is { End: >= 0 } sense && marks.Sense == Sense.None)
            {
                marks = marks with { Sense = sense.Means, End = sense.End };
                more = true;
            }
            else if (Letters.After(text, at, "std") is >= 0 and var standard && !marks.IsStandard)
            {
                marks = marks with { IsStandard = true, End = standard };
                more = true;
            }
            else if (unitWasTyped && marks.Condition == Condition.None && PastCondition(text, at) is { End: >= 0 } condition)
            {
                marks = marks with { Condition = condition.Means, End = condition.End };
                more = true;
            }
        }

        return marks;
    }

    /// <summary>The word that says a condition.</summary>
    public static string Word(Condition condition) => condition == Condition.None
        ? ""
        : Array.Find(Conditions, pair => pair.Condition == condition).Word;

    /// <summary>'VDC' is one word to makers: DC and AC may stand against the unit, every other word has a space or a digit before it.</summary>
    private static (Condition Means, int End) PastCondition(string text, int at)
    {
        var found = Past(text, at, Conditions);
        bool joined = at > 0 && Letters.IsWordLetter(text[at - 1]);
        return joined && found.Means is not (Condition.Direct or Condition.Alternating) ? (Condition.None, -1) : found;
    }

    private static int Past(string text, int at, string[] words)
    {
        foreach (string word in words)
        {
            int end = Letters.After(text, at, word);
            if (end >= 0)
            {
                return end;
            }
        }

        return -1;
    }

    private static (T Means, int End) Past<T>(string text, int at, (string Word, T Means)[] words)
    {
        foreach (var (word, means) in words)
        {
            // Delta may stand against its number or letter: Δ40, dT40.
            int end = word is "\u0394" && at < text.Length && text[at] == '\u0394' ? at + 1 : Letters.After(text, at, word);
            if (end >= 0)
            {
                return (means, end);
            }
        }

        return (default!, -1);
    }
}
