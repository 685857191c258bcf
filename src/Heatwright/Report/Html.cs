using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace Heatwright.Report;

/// <summary>Text that is HTML already. Everything else that goes into it is escaped, so that no name of a study can become a tag.</summary>
internal readonly record struct Html(string Text)
{
    public static readonly Html None = new("");

    /// <summary>HTML with holes: texts are escaped, HTML is taken as it is. A number has to say its format first.</summary>
    public static Html Of(HtmlHoles holes) => new(holes.Text);

    public static Html Each<T>(IEnumerable<T> items, Func<T, Html> piece) => new(string.Concat(items.Select(item => piece(item).Text)));

    public static Html If(bool there, Func<Html> piece) => there ? piece() : None;

    public static string Escaped(string text)
    {
        var safe = new StringBuilder(text.Length + 16);
        foreach (char c in text)
        {
            safe.Append(c switch { '&' => "&amp;", '<' => "&lt;", '>' => "&gt;", '"' => "&quot;", '\'' => "&#39;", _ => c.ToString() });
        }

        return safe.ToString();
    }
}

/// <summary>Escapes what is put into HTML.</summary>
[InterpolatedStringHandler]
internal readonly struct HtmlHoles(int literalLength, int formattedCount)
{
    private readonly StringBuilder text = new(literalLength + (16 * formattedCount));

    public string Text => text.ToString();

    public void AppendLiteral(string literal) => text.Append(literal);

    public void AppendFormatted(Html html) => text.Append(html.Text);

    public void AppendFormatted(string? plain) => text.Append(Html.Escaped(plain ?? ""));

    public void AppendFormatted(int count) => text.Append(count.ToString(CultureInfo.InvariantCulture));
}
