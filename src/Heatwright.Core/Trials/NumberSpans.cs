using System.Globalization;

namespace Heatwright.Trials;

/// <summary>Numbers of readings as a maker says and types them: '1 to 22, 25', '1-22 25', 'all'.</summary>
public static class NumberSpans
{
    /// <summary>Numbers in their order, those that follow each other as a span.</summary>
    /// <param name="numbers">The numbers.</param>
    /// <param name="to">Between the ends of a span: " to " for reading, "-" for typing.</param>
    /// <param name="between">Between two spans.</param>
    public static string Told(IEnumerable<int> numbers, string to = " to ", string between = ", ")
    {
        List<(int From, int To)> spans = [];
        foreach (int number in numbers.Distinct().Order())
        {
            if (spans.Count > 0 && spans[^1].To == number - 1)
            {
                spans[^1] = (spans[^1].From, number);
            }
            else
            {
                spans.Add((number, number));
            }
        }

        return string.Join(between, spans.Select(span => span.From == span.To ? string.Create(CultureInfo.InvariantCulture, $"{span.From}")
            : span.To == span.From + 1 ? string.Create(CultureInfo.InvariantCulture, $"{span.From}{between}{span.To}") : string.Create(CultureInfo.InvariantCulture, $"{span.From}{to}{span.To}")));
    }

    /// <summary>The numbers that words stand for; null: a word is neither a number, a span such as 1-22, nor 'all'.</summary>
    /// <param name="words">As typed.</param>
    /// <param name="count">How many there are: 'all' goes so far, and no span goes farther.</param>
    public static IReadOnlyList<int>? Read(IEnumerable<string> words, int count)
    {
        List<int> numbers = [];
        foreach (string word in words.SelectMany(word => word.Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries)))
        {
            string[] ends = word.Split(['-', '\u2013'], 2);
            if (string.Equals(word, "all", StringComparison.OrdinalIgnoreCase))
            {
                numbers.AddRange(Enumerable.Range(1, count));
            }
            else if (Number(ends[0]) is { } from && Number(ends[^1]) is { } to && to >= from)
            {
                // Beyond the last one a number is told; a thousand of them are not made up first.
                numbers.AddRange(to > count ? [from, to] : Enumerable.Range(from, to - from + 1));
            }
            else
            {
                return null;
            }
        }

        return numbers.Count > 0 ? [.. numbers.Distinct()] : null;
    }

    private static int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;
}
