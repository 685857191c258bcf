using System.Text;
using System.Text.Unicode;

namespace Heatwright.Instruments;

/// <summary>A line as it came.</summary>
/// <param name="AtS">When its end arrived, seconds of the session.</param>
/// <param name="Text">The text without its end and without control characters.</param>
/// <param name="Whole">False: it may have begun before we listened, or it never ended.</param>
internal readonly record struct RawLine(double AtS, string Text, bool Whole);

/// <summary>Cuts bytes into lines that end with LF, CR LF or CR, however the bytes are packed.</summary>
internal sealed class LineCutter
{
    /// <summary>Longer lines are no readings; the rest of such a line is passed over.</summary>
    public const int LongestLine = 1024;

    private readonly byte[] pending = new byte[LongestLine];
    private int length;
    private bool tooLong;
    private bool afterReturn;
    private bool firstMayBeCut;

    /// <summary>True: bytes wait for their line end.</summary>
    public bool HasPending => length > 0;

    /// <summary>When the last bytes came.</summary>
    public double LastS { get; private set; }

    /// <summary>True once a line end was seen.</summary>
    public bool SawEnd { get; private set; }

    /// <summary>The next line may have begun before we listened.</summary>
    public void MayBeCut() => firstMayBeCut = true;

    /// <summary>Takes bytes in; lines that are complete go into the list.</summary>
    public void Add(ReadOnlySpan<byte> bytes, double atS, List<RawLine> lines)
    {
        LastS = atS;
        while (bytes.Length > 0)
        {
            if (afterReturn && bytes[0] == '\n')
            {
                bytes = bytes[1..];
                afterReturn = false;
                continue;
            }

            afterReturn = false;
            int end = bytes.IndexOfAny((byte)'\n', (byte)'\r');
            Keep(end < 0 ? bytes : bytes[..end]);
            if (end < 0)
            {
                return;
            }

            afterReturn = bytes[end] == '\r';
            bytes = bytes[(end + 1)..];
            SawEnd = true;
            Finish(atS, !tooLong, lines);
        }
    }

    /// <summary>Takes what waits for its line end as a line: the instrument sends none, or stopped in the middle.</summary>
    public void Rest(double atS, bool whole, List<RawLine> lines)
    {
        if (length > 0)
        {
            Finish(atS, whole && !tooLong, lines);
        }
    }

    /// <summary>Forgets what waits.</summary>
    public void Clear() => (length, tooLong, afterReturn) = (0, false, false);

    /// <summary>What waits, as text.</summary>
    public string Pending() => Text(pending.AsSpan(0, length));

    private void Keep(ReadOnlySpan<byte> bytes)
    {
        int count = Math.Min(bytes.Length, LongestLine - length);
        bytes[..count].CopyTo(pending.AsSpan(length));
        length += count;
        tooLong |= count < bytes.Length;
    }

    private void Finish(double atS, bool whole, List<RawLine> lines)
    {
        string text = Text(pending.AsSpan(0, length));
        if (text.Length > 0 || tooLong)
        {
            lines.Add(new(atS, text, whole && !firstMayBeCut));
            firstMayBeCut = false;
        }

        (length, tooLong) = (0, false);
    }

    /// <summary>Garbage at power-up is no UTF-8; it must not stop the line from being shown.</summary>
    private static string Text(ReadOnlySpan<byte> bytes)
    {
        string text = Utf8.IsValid(bytes) ? Encoding.UTF8.GetString(bytes) : Encoding.Latin1.GetString(bytes);
        return (text.AsSpan().IndexOfAnyInRange('\0', '\u001F') < 0 ? text : string.Concat(text.Where(c => c is '\t' or > '\u001F'))).Trim(' ');
    }
}
