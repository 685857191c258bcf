namespace Heatwright.Instruments;

/// <summary>Bytes of an instrument that nobody knows, cut and read at once: what a wire would bring, without the wire.</summary>
public static class Foreign
{
    /// <summary>How much would be heard; like a session, it keeps nothing of it.</summary>
    public static long Take(ReadOnlySpan<byte> bytes)
    {
        var (cutter, talk, reader) = (new LineCutter(), new TerminalTalk(), new LineReader("foreign", null));
        var (lines, heard) = (new List<RawLine>(), new List<Heard>());
        const int packet = 512;
        long count = 0;
        for (int at = 0; at < bytes.Length; at += packet)
        {
            byte[] piece = bytes.Slice(at, Math.Min(packet, bytes.Length - at)).ToArray();
            cutter.Add(piece.AsSpan(0, talk.Clean(piece, out _)), at * 1e-4, lines);
            foreach (var line in lines)
            {
                reader.Take(line, heard);
                ScpiAnswer.Read("READ?", ScpiAnswer.WithoutPrompt(line.Text));
            }

            lines.Clear();
            count += heard.Count;
            heard.Clear();
        }

        cutter.Rest(bytes.Length * 1e-4, whole: true, lines);
        lines.ForEach(line => reader.Take(line, heard));
        reader.End(bytes.Length * 1e-4, heard);
        return count + heard.Count;
    }
}
