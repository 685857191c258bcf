using System.Security.Cryptography;
using System.Text.Json.Serialization;

namespace Heatwright.StudyFile;

/// <summary>What a kept file is about.</summary>
public enum KeptAbout
{
    /// <summary>The study as a whole.</summary>
    Study,
    /// <summary>A part.</summary>
    Part,
    /// <summary>A trial.</summary>
    Trial,
    /// <summary>A run: its raw log, its sheet, a photo of the display.</summary>
    Run,
    /// <summary>An arrangement.</summary>
    Arrangement,
}

/// <summary>A photo, a raw log or another file that is kept with the study, byte for byte.</summary>
/// <param name="Id">Names it in the study, and as a file in a bundle.</param>
/// <param name="Name">Name of the file it came from.</param>
/// <param name="About">What it is about.</param>
/// <param name="Subject">Id of that; empty: the study.</param>
/// <param name="Note">The maker's note.</param>
/// <param name="Sha256">Fingerprint of its bytes, in hexadecimal; the bytes lie under it.</param>
/// <param name="Bytes">How many there are.</param>
public sealed record KeptFile(string Id, string Name, KeptAbout About, string Subject, string Note, string Sha256, int Bytes)
{
    /// <summary>The bytes, where they are at hand: before they are stored, and when the whole study was asked for.</summary>
    [JsonIgnore]
    public byte[]? Content { get; init; }

    /// <summary>A file to be kept.</summary>
    public static KeptFile Of(string id, string name, KeptAbout about, string subject, string note, byte[] content) =>
        new(id, name, about, subject, note, Fingerprint(content), content.Length) { Content = content };

    internal static string Fingerprint(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content));
}
