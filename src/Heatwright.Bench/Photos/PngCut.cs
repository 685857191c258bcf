using System.Buffers.Binary;

namespace Heatwright.Photos;

/// <summary>Leaves of a PNG the chunks that draw it.</summary>
/// <remarks>Signature and chunks after the W3C Recommendation Portable Network Graphics (PNG) Specification, clauses 5 and 11.</remarks>
internal static class PngCut
{
    private static readonly string[] Drawing = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT", "pHYs", "bKGD", "cICP"];

    /// <summary>The eight bytes that every PNG begins with.</summary>
    public static ReadOnlySpan<byte> Signature => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>The cut picture; null: broken or cut short.</summary>
    public static CutPicture? Of(ReadOnlySpan<byte> file)
    {
        using var clean = new MemoryStream(file.Length);
        clean.Write(file[..8]);
        uint width = 0, height = 0;
        for (int at = 8; at + 12 <= file.Length;)
        {
            uint length = BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
            if (length > file.Length - at - 12)
            {
                return null;
            }

            string name = System.Text.Encoding.ASCII.GetString(file.Slice(at + 4, 4));
            if (at == 8 && (name != "IHDR" || length != 13))
            {
                return null;
            }

            if (name == "IHDR")
            {
                (width, height) = (BinaryPrimitives.ReadUInt32BigEndian(file[(at + 8)..]), BinaryPrimitives.ReadUInt32BigEndian(file[(at + 12)..]));
            }

            int end = at + 12 + (int)length;
            if (Drawing.Contains(name))
            {
                clean.Write(file[at..end]);
            }

            if (name == "IEND")
            {
                return new((int)Math.Min(width, int.MaxValue), (int)Math.Min(height, int.MaxValue), clean.ToArray());
            }

            at = end;
        }

        return null;
    }
}
