using System.Text;

namespace Heatwright.Quantities;

/// <summary>Brings the many forms of one character to one: spaces, minus signs, mu, ohm, degree, quotes, fractions.</summary>
internal static class Letters
{
    public static string Even(string text)
    {
        var even = new StringBuilder(text.Length + 4);
        foreach (char letter in text)
        {
            string one = One(letter);
            foreach (char c in one)
            {
                if (c == ' ' && (even.Length == 0 || even[^1] == ' '))
                {
                    continue; // one space says as much as three
                }

                even.Append(c);
            }
        }

        return even.ToString().TrimEnd(' ');
    }

    private static string One(char letter) => letter switch
    {
        '\uFEFF' or '\u200B' => "",
        '\u2212' or '\u2013' or '\u2014' or '\u2012' or '\u2010' or '\u2011' => "-",
        '\u03BC' => "µ",
        '\u2126' => "Ω",
        '\u00BA' or '\u02DA' => "°",
        '\u2103' => "°C",
        '\u2109' => "°F",
        '\u00B2' => "2",
        '\u00B3' => "3",
        '\u2206' => "Δ",
        '\u2300' or '\u00F8' => "Ø",
        '\u2248' or '\u2243' or '\u2245' => "~",
        '\u2264' => "<=",
        '\u2265' => ">=",
        '\u2026' => "..",
        '\u221E' => "inf",
        '\u2044' => "/",
        '\u00D7' => "x",
        '\u00B7' => "*",
        '\u2033' or '\u201D' or '\u201C' => "\"",
        '\u2032' or '\u2019' or '\u00B4' => "'",
        '\u00BD' => " 1/2",
        '\u00BC' => " 1/4",
        '\u00BE' => " 3/4",
        _ => char.IsWhiteSpace(letter) ? " " : letter.ToString(),
    };

    /// <summary>True where a word may end before this place: nothing follows, or no letter.</summary>
    public static bool EndsWord(string text, int at) => at >= text.Length || !IsWordLetter(text[at]);

    public static bool IsWordLetter(char c) => char.IsLetter(c) || c is '°' or '%';

    public static bool IsDigit(string text, int at) => at >= 0 && at < text.Length && char.IsAsciiDigit(text[at]);

    public static int SkipSpace(string text, int at) => at < text.Length && text[at] == ' ' ? at + 1 : at;

    /// <summary>The place after a word that stands here in any case of letters, or −1.</summary>
    public static int After(string text, int at, string word)
    {
        bool stands = string.Compare(text, at, word, 0, word.Length, StringComparison.OrdinalIgnoreCase) == 0 && at + word.Length <= text.Length;
        return stands && (!char.IsLetter(word[^1]) || EndsWord(text, at + word.Length)) ? at + word.Length : -1;
    }
}
