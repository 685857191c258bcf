using System.Buffers.Binary;

namespace Heatwright.Photos;

/// <summary>Leaves of a WebP the chunks that draw it.</summary>
/// <remarks>Container after RFC 9649, section 2; size of a lossy picture after RFC 6386, section 9.1.</remarks>
internal static class WebpCut
{
    private const int HasExif = 0x08, HasXmp = 0x04;

    private static readonly string[] Drawing = ["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP"];

    /// <summary>The cut picture; null: broken or cut short.</summary>
    public static CutPicture? Of(ReadOnlySpan<byte> file)
    {
        long stated = 8L + BinaryPrimitives.ReadUInt32LittleEndian(file[4..]);
        if (stated > file.Length || stated < 20)
        {
            return null;
        }

        using var clean = new MemoryStream(file.Length);
        clean.Write(file[..12]);
        (int Width, int Height) size = default;
        bool drawn = false;
        for (int at = 12; at + 8 <= stated;)
        {
            uint length = BinaryPrimitives.ReadUInt32LittleEndian(file[(at + 4)..]);
            if (length > stated - at - 8)
            {
                return null;
            }

            string name = System.Text.Encoding.ASCII.GetString(file.Slice(at, 4));
            var body = file.Slice(at + 8, (int)length);
            size = size == default ? Size(name, body) : size;
            drawn |= name is "VP8 " or "VP8L" or "ANMF";
            int end = (int)Math.Min(file.Length, at + 8L + length + (length & 1)); // chunks of odd length carry one byte more
            if (Drawing.Contains(name))
            {
                byte[] chunk = file[at..end].ToArray();
                if (name == "VP8X" && length > 0)
                {
                    chunk[8] = (byte)(chunk[8] & ~(HasExif | HasXmp));
                }

                clean.Write(chunk);
            }

            at = end;
        }

        if (!drawn)
        {
            return null;
        }

        byte[] bytes = clean.ToArray();
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(4), (uint)(bytes.Length - 8));
        return new(size.Width, size.Height, bytes);
    }

    private static (int Width, int Height) Size(string name, ReadOnlySpan<byte> body) => name switch
    {
        "VP8X" when body.Length >= 10 => (1 + Three(body[4..]), 1 + Three(body[7..])),
        "VP8L" when body.Length >= 5 && body[0] == 0x2F => (1 + (BinaryPrimitives.ReadInt32LittleEndian(body[1..]) & 0x3FFF), 1 + ((BinaryPrimitives.ReadInt32LittleEndian(body[1..]) >> 14) & 0x3FFF)),
        "VP8 " when body.Length >= 10 => (BinaryPrimitives.ReadUInt16LittleEndian(body[6..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(body[8..]) & 0x3FFF),
        _ => default,
    };

    private static int Three(ReadOnlySpan<byte> at) => at[0] | (at[1] << 8) | (at[2] << 16);
}
