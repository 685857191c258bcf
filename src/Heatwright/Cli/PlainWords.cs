using System.Globalization;
using System.Text;

namespace Heatwright.Cli;

/// <summary>Signs of units, sums and tables in plain ASCII, for screens and programs that know nothing else.</summary>
internal static class PlainWords
{
    /// <summary>Each sign with what stands for it, ended by a semicolon.</summary>
    private const string Pairs = "·*;−-;–-;—-;×x;÷/;±+-;∓-+;°deg ;ºdeg ;˚deg ;℃deg C;℉deg F;Ωohm;µu;μu;√sqrt;∫integral ;Σsum ;∂d;∝~;≈~;"
        + "∞infinite;→->;≤<=;≥>=;∥||;∠angle ;½1/2;¼1/4;⅓1/3;⅔2/3;⅘4/5;⅝5/8;…...;“\";”\";″\";‘';’';ødia ;Ødia ;⎓DC;"
        + "€EUR;£GBP;ßss;αalpha;βbeta;γgamma;δdelta;Δdelta ;εeps;ζzeta;ηeta;θtheta;κkappa;λlambda;νnu;πpi;ρrho;σsigma;"
        + "τtau;φphi;ΦPhi;χchi;ωomega";

    private static readonly Dictionary<char, string> Signs = Pairs.Split(';').ToDictionary(pair => pair[0], pair => pair[1..]);

    private const string Raised = "⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺ⁿⁱᵀ", RaisedAs = "0123456789-+niT";

    /// <summary>The text with nothing above the seven bits of ASCII.</summary>
    public static string Of(string text)
    {
        if (text.All(char.IsAscii))
        {
            return text;
        }

        var plain = new StringBuilder(text.Length + 8);
        bool raised = false;
        foreach (char sign in text.Normalize(NormalizationForm.FormC))
        {
            int at = Raised.IndexOf(sign, StringComparison.Ordinal);
            plain.Append(at < 0 ? One(sign) : raised ? RaisedAs[at].ToString() : "^" + RaisedAs[at]);
            raised = at >= 0;
        }

        return plain.ToString();
    }

    /// <summary>Inside JSON every sign keeps its meaning, written as \u and its number.</summary>
    public static string Escaped(string json) => json.All(char.IsAscii) ? json
        : string.Concat(json.Select(sign => char.IsAscii(sign) ? sign.ToString() : "\\u" + ((int)sign).ToString("x4", CultureInfo.InvariantCulture)));

    private static string One(char sign)
    {
        if (char.IsAscii(sign))
        {
            return sign.ToString();
        }

        if (Signs.TryGetValue(sign, out string? words))
        {
            return words;
        }

        // Letters with a mark lose the mark, lowered digits stand on the line; what has no like is shown as a question mark.
        string open = char.IsSurrogate(sign) ? "" : string.Concat(sign.ToString().Normalize(NormalizationForm.FormKD).Where(char.IsAscii));
        return open.Length > 0 ? open : char.GetUnicodeCategory(sign) is UnicodeCategory.NonSpacingMark ? "" : char.IsWhiteSpace(sign) ? " " : "?";
    }
}
