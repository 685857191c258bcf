using System.Buffers.Binary;
using System.Text;

namespace Heatwright.Tests.Photos;

/// <summary>Pictures laid down piece by piece, as a telephone writes them: what draws them, and what it tells beside.</summary>
internal static class Pictures
{
    public const string Place = "52 deg 31 min north";

    /// <summary>A JPEG of 640 by 480 held on its side (orientation 6), with place, comment, colour profile and a second picture behind its end.</summary>
    public static byte[] Jpeg() =>
    [
        0xFF, 0xD8, .. Segment(0xE0, [.. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0]), .. Segment(0xE1, Exif()), .. Segment(0xE1, Text("http://ns.adobe.com/xap/1.0/\0" + Place)), .. Segment(0xE2, Text("ICC_PROFILE\0colours")),
        .. Segment(0xE2, Text("MPF\0" + Place)), .. Segment(0xFE, Text(Place)), .. Segment(0xC0, [8, 480 >> 8, 480 & 0xFF, 640 >> 8, 640 & 0xFF, 1, 1, 0x11, 0]), .. Segment(0xDA, [1, 1, 0, 0, 63, 0]),
        .. Scan, 0xFF, 0xD9, .. Text("second picture, " + Place),
    ];

    /// <summary>Data of a scan: a stuffed 0xFF and a restart mark lie in it and end nothing.</summary>
    public static byte[] Scan => [0x12, 0xFF, 0x00, 0x34, 0xFF, 0xD3, 0x56];

    /// <summary>A PNG of 32 by 16 with a text and an Exif chunk; the check sums are not looked at by the cut and stand as zeros.</summary>
    public static byte[] Png() => [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR", [0, 0, 0, 32, 0, 0, 0, 16, 8, 2, 0, 0, 0]), .. Chunk("tEXt", Text("Comment\0" + Place)), .. Chunk("IDAT", [1, 2, 3]), .. Chunk("eXIf", Exif()), .. Chunk("IEND", []), .. Text(Place)];

    /// <summary>A WebP of 300 by 200 with an Exif and an XMP chunk, and the flags that announce them.</summary>
    public static byte[] Webp()
    {
        byte[] body = [.. "WEBP"u8, .. Riff("VP8X", [0x0C, 0, 0, 0, 43, 1, 0, 199, 0, 0]), .. Riff("VP8 ", [0, 0, 0, 0x9D, 1, 0x2A, 44, 1, 200, 0, 7]), .. Riff("EXIF", Exif()), .. Riff("XMP ", Text(Place))];
        byte[] size = new byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(size, body.Length);
        return [.. "RIFF"u8, .. size, .. body];
    }

    private static byte[] Exif() => [.. "Exif\0\0"u8, .. "II*\0"u8, 8, 0, 0, 0, 2, 0, 0x0F, 1, 2, 0, 4, 0, 0, 0, (byte)'C', (byte)'a', (byte)'m', 0, 0x12, 1, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0, 0, 0, 0, 0, .. Text(Place)];

    private static byte[] Segment(byte marker, byte[] body) => [0xFF, marker, (byte)((body.Length + 2) >> 8), (byte)(body.Length + 2), .. body];

    private static byte[] Chunk(string name, byte[] body) => [0, 0, (byte)(body.Length >> 8), (byte)body.Length, .. Text(name), .. body, 0, 0, 0, 0];

    private static byte[] Riff(string name, byte[] body) => [.. Text(name), (byte)body.Length, (byte)(body.Length >> 8), 0, 0, .. body, .. body.Length % 2 == 1 ? new byte[1] : []];

    private static byte[] Text(string text) => Encoding.Latin1.GetBytes(text);
}
