using System.Globalization;
using System.Text;

namespace Heatwright.Instruments;

/// <summary>Bytes that passed on a wire at one moment.</summary>
/// <param name="AtS">Seconds since the session began.</param>
/// <param name="Sent">True: went to the instrument; false: came from it.</param>
/// <param name="Bytes">The bytes.</param>
internal readonly record struct Frame(double AtS, bool Sent, byte[] Bytes);

/// <summary>A frame file that cannot be read, with the line.</summary>
internal sealed class FrameFault(string message) : Exception(message);

/// <summary>Frames as text: seconds, a mark for the way, the bytes; docs/formats/live.md.</summary>
internal static class FrameFile
{
    public const string FirstLine = "heatwright frames 1";

    /// <summary>One line of the file, without its end.</summary>
    public static string Line(Frame frame)
    {
        var text = new StringBuilder();
        text.Append(frame.AtS.ToString("0.000000", CultureInfo.InvariantCulture)).Append(frame.Sent ? " > " : " < ");
        for (int i = 0; i < frame.Bytes.Length; i++)
        {
            byte b = frame.Bytes[i];
            bool edge = i == frame.Bytes.Length - 1;
            text.Append(b switch
            {
                (byte)'\r' => "\\r",
                (byte)'\n' => "\\n",
                (byte)'\t' => "\\t",
                (byte)'\\' => "\\\\",
                // A blank at the end of a line is what editors take away.
                < 0x20 or > 0x7E => Hex(b),
                0x20 when edge => Hex(b),
                _ => ((char)b).ToString(),
            });
        }

        return text.ToString();
    }

    /// <summary>The frames of a file, one after the other; throws <see cref="FrameFault"/> at the first line that is none.</summary>
    public static IEnumerable<Frame> Read(IEnumerable<string> lines)
    {
        int number = 0;
        double before = 0;
        foreach (string line in lines)
        {
            number++;
            string text = line.TrimEnd('\r');
            if (number == 1)
            {
                if (text.TrimStart('\uFEFF').TrimEnd() != FirstLine)
                {
                    throw new FrameFault($"Line 1 of the frames is not '{FirstLine}'.");
                }

                continue;
            }

            if (text.Length == 0 || text[0] == '#')
            {
                continue;
            }

            var frame = One(text) ?? throw new FrameFault(string.Create(CultureInfo.InvariantCulture, $"Line {number} of the frames is not 'seconds < bytes' or 'seconds > bytes': {Short(text)}"));
            if (!(frame.AtS >= before))
            {
                throw new FrameFault(string.Create(CultureInfo.InvariantCulture, $"Line {number} of the frames goes back in time: {Short(text)}"));
            }

            before = frame.AtS;
            yield return frame;
        }
    }

    private static Frame? One(string line)
    {
        int blank = line.IndexOf(' ', StringComparison.Ordinal);
        bool shaped = blank > 0 && line.Length >= blank + 3 && line[blank + 1] is '<' or '>' && line[blank + 2] == ' ';
        return shaped && double.TryParse(line[..blank], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double at) && at < 1e9 && Bytes(line.AsSpan(blank + 3)) is { } bytes
            ? new Frame(at, line[blank + 1] == '>', bytes) : null;
    }

    private static byte[]? Bytes(ReadOnlySpan<char> text)
    {
        var bytes = new List<byte>(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (c != '\\')
            {
                if (c is < ' ' or > '~')
                {
                    return null;
                }

                bytes.Add((byte)c);
                continue;
            }

            i++;
            switch (i < text.Length ? text[i] : ' ')
            {
                case 'r':
                    bytes.Add((byte)'\r');
                    break;
                case 'n':
                    bytes.Add((byte)'\n');
                    break;
                case 't':
                    bytes.Add((byte)'\t');
                    break;
                case '\\':
                    bytes.Add((byte)'\\');
                    break;
                case 'x' when i + 2 < text.Length && byte.TryParse(text.Slice(i + 1, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out byte b):
                    bytes.Add(b);
                    i += 2;
                    break;
                default:
                    return null;
            }
        }

        return [.. bytes];
    }

    private static string Hex(byte b) => "\\x" + b.ToString("X2", CultureInfo.InvariantCulture);

    private static string Short(string text) => text.Length > 60 ? text[..60] + "..." : text;
}
