using System.Text;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>A pasted text with the many forms of one character brought to one, and the way back to the original.</summary>
internal sealed class ListingText
{
    private readonly int[] origin;

    private ListingText(string original, string even, int[] origin)
    {
        Original = original;
        Even = even;
        this.origin = origin;
    }

    public string Original { get; }

    /// <summary>One form of each sign; line ends are '\n', other blanks ' '.</summary>
    public string Even { get; }

    public static ListingText Of(string original)
    {
        var even = new StringBuilder(original.Length);
        List<int> origin = new(original.Length);
        for (int i = 0; i < original.Length; i++)
        {
            char c = original[i];
            string one = c is '\n' or '\r' ? "\n" : char.IsWhiteSpace(c) ? " "
                : c == '~' && IsRange(original, i) ? " to " : Letters.Even(c.ToString());
            even.Append(one);
            origin.AddRange(Enumerable.Repeat(i, one.Length));
        }

        origin.Add(original.Length);
        return new(original, even.ToString(), [.. origin]);
    }

    /// <summary>Place in the original of a place in the even text.</summary>
    public int Origin(int at) => origin[at];

    /// <summary>The original words from one place of the even text to another.</summary>
    public string Words(int start, int end) => Original[origin[start]..Math.Max(origin[start], end < origin.Length ? origin[end] : Original.Length)].Trim();

    /// <summary>'3~32V' and '-40~300 °C' are ranges; '~27 g' is a rough value.</summary>
    private static bool IsRange(string text, int at) => at > 0 && char.IsAsciiLetterOrDigit(text[at - 1]) && at + 1 < text.Length && (char.IsAsciiDigit(text[at + 1]) || text[at + 1] is '-' or '+');
}
