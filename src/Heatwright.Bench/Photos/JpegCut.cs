using System.Buffers.Binary;

namespace Heatwright.Photos;

/// <summary>Leaves of a JPEG what draws it: sizes, tables, colour profile, scans, and which way up it was held.</summary>
/// <remarks>Markers and segments after ISO/IEC 10918-1 (ITU-T T.81), annex B; the orientation is tag 0x0112 of Exif in the first directory.</remarks>
internal static class JpegCut
{
    private const byte StartOfScan = 0xDA, EndOfImage = 0xD9, Exif = 0xE1;

    /// <summary>The cut picture; null: broken or cut short.</summary>
    public static CutPicture? Of(ReadOnlySpan<byte> file)
    {
        using var clean = new MemoryStream(file.Length);
        clean.Write(file[..2]);
        int at = 2, width = 0, height = 0;
        while (at + 4 <= file.Length && file[at] == 0xFF)
        {
            byte marker = file[at + 1];
            if (marker == 0xFF)
            {
                at++; // fill bytes may stand before a marker
                continue;
            }

            if (marker == EndOfImage)
            {
                break;
            }

            int end = at + 2 + BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]);
            if (end < at + 4 || end > file.Length || marker is 0 or 0x01 or (>= 0xD0 and <= 0xD8))
            {
                return null;
            }

            var body = file[(at + 4)..end];
            if (marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC) && body.Length >= 6)
            {
                (height, width) = (BinaryPrimitives.ReadUInt16BigEndian(body[1..]), BinaryPrimitives.ReadUInt16BigEndian(body[3..]));
            }

            clean.Write(Draws(marker, body) ? file[at..end] : marker == Exif && Orientation(body) is > 1 and <= 8 and var way ? OnlyOrientation((byte)way) : []);
            at = end;
            if (marker == StartOfScan)
            {
                int begin = at;
                at = AfterScan(file, at);
                clean.Write(file[begin..at]);
            }
        }

        if (at + 2 > file.Length || file[at] != 0xFF || file[at + 1] != EndOfImage)
        {
            return null;
        }

        clean.Write(file.Slice(at, 2)); // what follows the end is no part of the picture: cameras hide second pictures there
        return new(width, height, clean.ToArray());
    }

    /// <summary>Application segments and comments are cut, but for the three that colours depend on.</summary>
    private static bool Draws(byte marker, ReadOnlySpan<byte> body) => marker switch
    {
        0xE0 => body.StartsWith("JFIF\0"u8),
        0xE2 => body.StartsWith("ICC_PROFILE\0"u8),
        0xEE => body.StartsWith("Adobe"u8),
        0xFE or (>= 0xE1 and <= 0xEF) => false,
        _ => true,
    };

    /// <summary>Within a scan 0xFF is data where 0 follows, and a restart where 0xD0 to 0xD7 do.</summary>
    private static int AfterScan(ReadOnlySpan<byte> file, int at)
    {
        while (at + 1 < file.Length && (file[at] != 0xFF || file[at + 1] is 0 or 0xFF or (>= 0xD0 and <= 0xD7)))
        {
            at++;
        }

        return Math.Min(at, file.Length);
    }

    private static int Orientation(ReadOnlySpan<byte> body)
    {
        if (!body.StartsWith("Exif\0\0"u8) || body.Length < 14)
        {
            return 0;
        }

        var tiff = body[6..];
        bool little = tiff[0] == (byte)'I';
        uint first = little ? BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]);
        if (first > tiff.Length - 2)
        {
            return 0;
        }

        int count = Short(tiff[(int)first..], little);
        for (int i = 0, at = (int)first + 2; i < count && at + 12 <= tiff.Length; i++, at += 12)
        {
            if (Short(tiff[at..], little) == 0x0112)
            {
                return Short(tiff[(at + 8)..], little);
            }
        }

        return 0;
    }

    private static int Short(ReadOnlySpan<byte> at, bool little) => little ? BinaryPrimitives.ReadUInt16LittleEndian(at) : BinaryPrimitives.ReadUInt16BigEndian(at);

    /// <summary>One directory with one entry: without it a photo taken upright would lie on its side.</summary>
    private static byte[] OnlyOrientation(byte way) =>
    [
        0xFF, Exif, 0, 34, .. "Exif\0\0"u8, .. "MM\0*"u8, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, way, 0, 0, 0, 0, 0, 0,
    ];
}
