using Heatwright.Quantities;

namespace Heatwright.Photos;

/// <summary>A picture to be kept: of a kind told by its content, and without what a camera writes beside it (place, time, owner, machine).</summary>
/// <param name="Type">Media type: image/jpeg.</param>
/// <param name="Extension">End of a file name: .jpg.</param>
/// <param name="Width">In pixels.</param>
/// <param name="Height">In pixels.</param>
/// <param name="Bytes">The picture itself.</param>
public sealed record Photo(string Type, string Extension, int Width, int Height, byte[] Bytes)
{
    /// <summary>No photo of a part is larger, bytes: a telephone's camera writes 2 to 6 MB (common practice, no source).</summary>
    public const int LargestBytes = 8 << 20;

    /// <summary>No side is longer, pixels: a few kilobytes can unpack to gigabytes.</summary>
    public const int LongestSide = 20_000;

    /// <summary>The picture, or why it is none that can be kept.</summary>
    /// <param name="content">The file's bytes.</param>
    /// <param name="name">The file's name, for the answer only: what it is, its content tells.</param>
    public static Checked<Photo> Read(byte[] content, string name)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (content.Length > LargestBytes)
        {
            return new(new Problem("The photo is too large.", name, $"{Tenths(content.Length)} MB", $"{Tenths(LargestBytes)} MB", "Make it smaller, for example 2000 pixels wide, and add it again."));
        }

        if (TypeOf(content) is not { } type)
        {
            return new(new Problem("This is no photo that can be kept.", name, content.Length == 0 ? "an empty file" : "content of another kind", "a JPEG, PNG or WebP picture", "Save it as JPEG and add it again; other files are kept with 'heatwright file add'."));
        }

        var cut = type switch { "image/jpeg" => JpegCut.Of(content), "image/png" => PngCut.Of(content), _ => WebpCut.Of(content) };
        return cut is not { } whole || whole.Width < 1 || whole.Height < 1
            ? new(new Problem("The photo is broken or cut short.", name, $"{content.Length} bytes", "a whole picture", "Copy it from the camera again."))
            : Math.Max(whole.Width, whole.Height) > LongestSide
                ? new(new Problem("The photo has too many pixels.", name, $"{whole.Width} by {whole.Height}", $"{LongestSide} on the longer side", "Make it smaller and add it again."))
                : new(new Photo(type, type switch { "image/jpeg" => ".jpg", "image/png" => ".png", _ => ".webp" }, whole.Width, whole.Height, whole.Bytes));
    }

    /// <summary>A picture's bytes without what a camera writes beside it; null: of another kind, or broken.</summary>
    /// <param name="content">The file's bytes, of any size.</param>
    public static byte[]? WithoutPlace(ReadOnlySpan<byte> content) => TypeOf(content) switch
    {
        "image/jpeg" => JpegCut.Of(content)?.Bytes,
        "image/png" => PngCut.Of(content)?.Bytes,
        "image/webp" => WebpCut.Of(content)?.Bytes,
        _ => null,
    };

    /// <summary>True: a kind of picture or film in which cameras write where they were, known by its first bytes.</summary>
    /// <remarks>Beside the kinds that are kept: the box 'ftyp' of ISO/IEC 14496-12 (HEIF pictures, films), and the byte orders of TIFF 6.0, which raw pictures begin with.</remarks>
    public static bool MayTellPlace(ReadOnlySpan<byte> content) =>
        TypeOf(content) is not null || (content.Length >= 8 && content[4..].StartsWith("ftyp"u8)) || content.StartsWith("II*\0"u8) || content.StartsWith("MM\0*"u8);

    /// <summary>Media type by the first bytes; null: none of the kinds that are kept.</summary>
    public static string? TypeOf(ReadOnlySpan<byte> content) =>
        content.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? "image/jpeg"
        : content.StartsWith(PngCut.Signature) ? "image/png"
        : content.Length >= 12 && content.StartsWith("RIFF"u8) && content[8..].StartsWith("WEBP"u8) ? "image/webp"
        : null;

    private static string Tenths(int bytes) => (bytes / 1_048_576.0).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>A picture's size, and its bytes after the cut.</summary>
internal readonly record struct CutPicture(int Width, int Height, byte[] Bytes);
