using System.Text;
using System.Text.Unicode;

namespace Heatwright.Logs;

/// <summary>Bytes of any usual encoding become UTF-8; clean UTF-8 is used where it lies, without a copy.</summary>
internal static class LogText
{
    public static ReadOnlyMemory<byte> ToUtf8(ReadOnlyMemory<byte> raw, out string encoding)
    {
        var bytes = raw.Span;
        if (Wide(bytes) is { } wide)
        {
            encoding = wide.Name;
            int bom = bytes.Length >= 2 && (bytes[0], bytes[1]) is (0xFF, 0xFE) or (0xFE, 0xFF) ? 2 : 0;
            return LinesByLf(Encoding.UTF8.GetBytes(wide.Encoding.GetString(bytes[bom..]).Replace("\0", "", StringComparison.Ordinal)));
        }

        var text = bytes.StartsWith(Encoding.UTF8.Preamble) ? raw[3..] : raw;
        encoding = text.Length == raw.Length ? "UTF-8" : "UTF-8 with BOM";
        if (text.Span.Contains((byte)0))
        {
            // A NUL is padding after a power cut or a cell's leftover; no log means anything by it.
            text = text.ToArray().Where(b => b != 0).ToArray();
        }

        if (!Utf8.IsValid(text.Span))
        {
            encoding = "Latin-1";
            text = MendLines(text.Span);
        }

        return LinesByLf(text);
    }

    private static (Encoding Encoding, string Name)? Wide(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length >= 2 && (bytes[0], bytes[1]) is (0xFF, 0xFE))
        {
            return (Encoding.Unicode, "UTF-16 LE");
        }

        if (bytes.Length >= 2 && (bytes[0], bytes[1]) is (0xFE, 0xFF))
        {
            return (Encoding.BigEndianUnicode, "UTF-16 BE");
        }

        var head = bytes[..Math.Min(bytes.Length & ~1, 1024)];
        int even = 0, odd = 0;
        for (int i = 0; i + 1 < head.Length; i += 2)
        {
            even += head[i] == 0 ? 1 : 0;
            odd += head[i + 1] == 0 ? 1 : 0;
        }

        // Without a mark: latin letters as two bytes have a zero in (almost) every second place and nowhere else.
        int enough = head.Length * 2 / 5;
        return head.Length < 4 ? null
            : odd >= enough && even == 0 ? (Encoding.Unicode, "UTF-16 LE")
            : even >= enough && odd == 0 ? (Encoding.BigEndianUnicode, "UTF-16 BE") : null;
    }

    /// <summary>Line by line, so that a burst of garbage at power-up does not spoil the degree signs of the rest.</summary>
    private static byte[] MendLines(ReadOnlySpan<byte> bytes)
    {
        var mended = new MemoryStream(bytes.Length + (bytes.Length / 8));
        while (bytes.Length > 0)
        {
            int end = bytes.IndexOf((byte)'\n');
            var line = end < 0 ? bytes : bytes[..(end + 1)];
            bytes = bytes[line.Length..];
            if (Utf8.IsValid(line))
            {
                mended.Write(line);
            }
            else
            {
                mended.Write(Encoding.UTF8.GetBytes(Encoding.Latin1.GetString(line)));
            }
        }

        return mended.ToArray();
    }

    /// <summary>Old hand meters end a line with CR alone.</summary>
    private static ReadOnlyMemory<byte> LinesByLf(ReadOnlyMemory<byte> text)
    {
        if (text.Span.Contains((byte)'\n') || !text.Span.Contains((byte)'\r'))
        {
            return text;
        }

        byte[] lines = text.ToArray();
        lines.AsSpan().Replace((byte)'\r', (byte)'\n');
        return lines;
    }
}
