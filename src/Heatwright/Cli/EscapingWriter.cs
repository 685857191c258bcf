using System.Text;

namespace Heatwright.Cli;

/// <summary>Passes JSON on in plain ASCII.</summary>
internal sealed class EscapingWriter(TextWriter to) : TextWriter(System.Globalization.CultureInfo.InvariantCulture)
{
    public override Encoding Encoding => to.Encoding;

    public override void Write(char value) => to.Write(char.IsAscii(value) ? value.ToString() : PlainWords.Escaped(value.ToString()));

    public override void Write(string? value) => to.Write(PlainWords.Escaped(value ?? ""));

    public override void WriteLine(string? value) => to.WriteLine(PlainWords.Escaped(value ?? ""));

    public override void Flush() => to.Flush();
}
