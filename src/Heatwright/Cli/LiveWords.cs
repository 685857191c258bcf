using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Heatwright.Cli.Answering;
using Heatwright.Instruments;
using Heatwright.Jobs;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>What is heard, in lines for people.</summary>
internal sealed class LiveWords(Screen screen) : IHeardTaker
{
    public Problem? Take(Heard heard)
    {
        string at = heard.AtS.ToString("0.000", CultureInfo.InvariantCulture).PadLeft(10);
        screen.Output.WriteLine(screen.InPlain(heard switch
        {
            Heard.Line line => $"{at}  {line.Source,-10}  {string.Join("  ", line.Readouts.Where(one => one.Kind != ReadoutKind.Time).Select(one => $"{one.Name} {Value(one)}"))}",
            Heard.Unread unread => $"{at}  {unread.Source,-10}  not read ({unread.Why}): {Printable(unread.Text)}",
            Heard.Note note => $"{at}  {note.Source,-10}  {note.Words}",
            _ => "",
        }));
        return null;
    }

    public Problem? Settle(bool last)
    {
        screen.Output.Flush();
        return null;
    }

    private static string Value(Readout one) => one.Kind switch
    {
        ReadoutKind.Overload => "OL",
        ReadoutKind.Missing => "-",
        ReadoutKind.Words => one.Raw,
        _ => $"{one.Value.ToString("R", CultureInfo.InvariantCulture)} {one.Unit?.Symbol}".TrimEnd(),
    };

    /// <summary>Bytes that would move a terminal's cursor are shown as points.</summary>
    private static string Printable(string text) => string.Concat((text.Length > 80 ? text[..80] : text).Select(c => char.IsControl(c) ? '.' : c));
}

/// <summary>What is heard, one JSON object a line.</summary>
internal sealed class LiveLines(TextWriter output) : IHeardTaker
{
    public static readonly JsonSerializerOptions Plain = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        NumberHandling = JsonNumberHandling.Strict,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    public Problem? Take(Heard heard)
    {
        object one = heard switch
        {
            Heard.Line line => HeardLine.Of(line),
            Heard.Unread unread => new HeardUnread(unread.AtS, unread.Source, unread.Text, unread.Why),
            Heard.Note note => new HeardNote(note.AtS, note.Source, note.State, note.Words),
            _ => throw new ArgumentOutOfRangeException(nameof(heard), heard, "Something heard that has no words."),
        };
        output.WriteLine(JsonSerializer.Serialize(one, Plain));
        return null;
    }

    public Problem? Settle(bool last)
    {
        output.Flush();
        return null;
    }
}
