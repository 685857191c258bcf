namespace Heatwright.Quantities;

/// <summary>Amounts, ranges and bounds, with the words and signs around them.</summary>
internal static class AmountSpelling
{
    /// <summary>A rough mark stands for one step of the last digit, but for no less and no more of the value than this. Common practice, no source.</summary>
    private const double LeastRough = 0.02;

    private const double MostRough = 0.2;

    /// <summary>Every amount, range or bound that starts here.</summary>
    public static IEnumerable<Item> At(string text, int start, Expect expect, bool loose)
    {
        var before = MarkSpelling.Before(text, start);
        foreach (var quantity in QuantitySpelling.At(text, before.End, expect, loose))
        {
            foreach (var item in Amounts(text, before, quantity, expect, loose))
            {
                yield return item;
            }

            if (before.IsAbove is null)
            {
                foreach (var item in Ranges(text, before, quantity, expect, loose))
                {
                    yield return item;
                }
            }
        }
    }

    private static IEnumerable<Item> Amounts(string text, MarksBefore before, Quantity quantity, Expect expect, bool loose)
    {
        var early = MarkSpelling.After(text, quantity.End, quantity.HasWord);
        if (early.End > quantity.End)
        {
            // '3.7V nominal': and 'std' or a tolerance may follow the word.
            foreach (var item in WithTails(text, before, quantity, early, early.End, expect, loose))
            {
                yield return item;
            }
        }
        else
        {
            foreach (var item in WithTails(text, before, quantity, new MarksAfter(false, Condition.None, Sense.None, false, quantity.End), quantity.End, expect, loose))
            {
                yield return item;
            }
        }
    }

    private static IEnumerable<Item> WithTails(string text, MarksBefore before, Quantity quantity, MarksAfter early, int end, Expect expect, bool loose)
    {
        foreach (var tail in ToleranceSpelling.Tails(text, end, quantity, expect, loose))
        {
            var word = quantity.HasWord || tail.Word.Kind == UnitWordKind.None ? quantity.Word : tail.Word;
            var after = MarkSpelling.After(text, tail.End, word.Kind != UnitWordKind.None);
            if (tail.HasAny && tail.Word.Kind == UnitWordKind.None && quantity.HasWord && IsMinuteAgain(quantity.Word, after))
            {
                continue; // '38 min ± 1 min': the second is what the first is
            }

            var sense = First(before.Sense, early.Sense, after.Sense);
            var condition = First(before.Condition, early.Condition, after.Condition);
            bool isRough = before.IsRough || early.IsRough || after.IsRough;
            foreach (var scale in UnitScale.Of(word, quantity.Value, sense, expect, before.IsAbove is not null))
            {
                var marks = new MarksAfter(isRough, condition, sense, after.IsStandard || early.IsStandard, after.End);
                foreach (var value in Values(quantity, word, scale, before.IsAbove, marks, tail))
                {
                    yield return new(value, after.End, word.Kind != UnitWordKind.None && (quantity.HasWord || tail.HasSign));
                }
            }
        }
    }

    private static bool IsMinuteAgain(UnitWord word, MarksAfter after) => word.Unit == Units.Minute && after.Condition == Condition.Least;

    private static IEnumerable<TypedValue> Values(Quantity quantity, UnitWord word, UnitScale scale, bool? isAbove, MarksAfter marks, ToleranceTail tail)
    {
        double value = Tidy(scale.Apply(quantity.Value), scale);
        if (isAbove is { } above)
        {
            if (!tail.HasAny && !marks.IsRough)
            {
                yield return new TypedValue.Bound(value, scale.Unit, above) { Condition = marks.Condition };
            }

            yield break;
        }

        foreach (double stated in tail.LimitsIn(scale, quantity.Value))
        {
            double rough = marks.IsRough && stated == 0 ? RoughLimit(quantity) * scale.Times : 0;
            yield return new TypedValue.Amount(value, scale.Unit)
            {
                PlusMinus = Math.Max(stated, rough),
                IsStandard = marks.IsStandard,
                IsRough = marks.IsRough,
                Condition = marks.Condition,
                Step = quantity.Step * scale.Times,
                UnitWasTyped = word.Kind != UnitWordKind.None,
            };
        }
    }

    private static IEnumerable<Item> Ranges(string text, MarksBefore before, Quantity first, Expect expect, bool loose)
    {
        int start = PastTo(text, first.End);
        if (start < 0)
        {
            yield break;
        }

        foreach (var second in QuantitySpelling.At(text, start, expect, loose))
        {
            if (second.IsFraction && !first.HasWord)
            {
                continue; // 1-1/4" is one and a quarter
            }

            var lowWord = first.HasWord ? first.Word : second.Word;
            var highWord = second.HasWord ? second.Word : first.Word;
            var after = MarkSpelling.After(text, second.End, highWord.Kind != UnitWordKind.None);
            if (!second.HasWord && IsMinuteAgain(highWord, after))
            {
                continue; // '3 min to 4 min': the second is what the first is
            }

            var sense = First(before.Sense, after.Sense, Sense.None);
            foreach (var low in UnitScale.Of(lowWord, first.Value, sense, expect, false))
            {
                foreach (var high in UnitScale.Of(highWord, second.Value, sense, expect, false).Where(high => high.Unit.Measures(low.Unit)))
                {
                    yield return new(Range(low, first.Value, high, second.Value, before.IsRough || after.IsRough, First(before.Condition, after.Condition, Condition.None)),
                        after.End, highWord.Kind != UnitWordKind.None);
                }
            }
        }
    }

    private static TypedValue.Range Range(UnitScale first, double firstTyped, UnitScale second, double secondTyped, bool isRough, Condition condition)
    {
        double a = Tidy(first.Apply(firstTyped), first);
        double b = Tidy(second.Apply(secondTyped), second);
        a = first.Unit == second.Unit ? a : second.Unit.FromSi(first.Unit.ToSi(a));
        return new(Math.Min(a, b), Math.Max(a, b), second.Unit) { IsRough = isRough, Condition = condition };
    }

    /// <summary>Past 'to', '..' or a dash that has a space on both sides or on neither; −1 where none stands.</summary>
    private static int PastTo(string text, int end)
    {
        int at = Letters.SkipSpace(text, end);
        if (at < text.Length && text[at] == '-')
        {
            int past = Letters.SkipSpace(text, at + 1);
            return (at > end) == (past > at + 1) ? past : -1;
        }

        foreach (string word in new[] { "...", "..", "to" })
        {
            int past = Letters.After(text, at, word);
            if (past >= 0)
            {
                return Letters.SkipSpace(text, past);
            }
        }

        return -1;
    }

    private static double RoughLimit(Quantity quantity)
    {
        double size = Math.Abs(quantity.Value);
        return size == 0 ? quantity.RoughStep : Math.Clamp(quantity.RoughStep, LeastRough * size, MostRough * size);
    }

    /// <summary>593 K less 273.15 K is 319.85 °C, and not 319.85000000000002.</summary>
    private static double Tidy(double value, UnitScale scale) => scale.Plus == 0 ? value : Math.Round(value, 9);

    private static T First<T>(T a, T b, T c)
        where T : struct, Enum =>
        !EqualityComparer<T>.Default.Equals(a, default) ? a : !EqualityComparer<T>.Default.Equals(b, default) ? b : c;
}
