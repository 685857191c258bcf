using Heatwright.Photos;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs.Keeping;

/// <summary>Keeps photos with a part. What a camera writes beside the picture, its place above all, is cut off before anything is stored.</summary>
public static class KeepPhoto
{
    /// <summary>No part has more of them: a study stays a file that can be sent.</summary>
    public const int MostPerPart = 8;

    private static readonly string[] Ends = [".jpg", ".jpeg", ".png", ".webp"];

    /// <summary>Keeps a photo from a file.</summary>
    /// <param name="study">The study file.</param>
    /// <param name="part">The part that it shows.</param>
    /// <param name="path">The photo.</param>
    /// <param name="note">The maker's note.</param>
    public static Checked<KeptFile> Add(string study, string part, string path, string note) => KeepFiles.Content(path).Then(content => Add(study, part, Path.GetFileName(path), content, note));

    /// <summary>Keeps a photo whose bytes are at hand.</summary>
    public static Checked<KeptFile> Add(string study, string part, string name, byte[] content, string note) => Photo.Read(content, name).Then(photo =>
    {
        KeptFile? kept = null;
        return ChangeStudy.Run(study, $"Photo of {part} kept", now => EnterPart.Found(now, part).Then(found =>
        {
            var there = Of(now, found.Id);
            string clean = Path.GetFileNameWithoutExtension(name) + photo.Extension;
            kept = KeptFile.Of(KeepFiles.FreeId(now, clean), clean, KeptAbout.Part, found.Id.Name, note, photo.Bytes);
            return there.Any(one => one.Sha256 == kept.Sha256) ? new(new Problem("The part has this photo already.", $"part '{found.Id}'", name, "another photo", "Nothing is to be done."))
                : there.Count >= MostPerPart ? new(new Problem("The part has as many photos as are kept.", $"part '{found.Id}'", $"{there.Count}", $"{MostPerPart}", "Let one go first: heatwright file drop FILE ID."))
                : new Checked<Study>(now with { Files = [.. now.Files, kept] });
        })).Map(_ => kept! with { Content = null });
    });

    /// <summary>The photos of a part.</summary>
    public static IReadOnlyList<KeptFile> Of(Study study, PartId part) =>
        [.. study.Files.Where(file => file.About == KeptAbout.Part && file.Subject == part.Name && Ends.Contains(Path.GetExtension(file.Id).ToLowerInvariant()))];

    /// <summary>A photo's bytes with their media type; null: no such photo, or something else under its name.</summary>
    public static (byte[] Bytes, string Type)? Show(string path, string id)
    {
        var found = StudyBook.Open(path, readOnly: true).Map(book =>
        {
            using (book)
            {
                return book.Read().Files.FirstOrDefault(file => file.Id == id && file.About == KeptAbout.Part) is { } file ? book.Content(file) : null;
            }
        });
        return found is { IsFine: true, Value: { } bytes } && Photo.TypeOf(bytes) is { } type ? (bytes, type) : null;
    }

    /// <summary>A study with the bytes of all that is kept about one part.</summary>
    internal static Checked<Study> WithContent(string path, Study study, PartId part) => study.Files.All(file => file.About != KeptAbout.Part || file.Subject != part.Name)
        ? new(study)
        : StudyBook.Open(path, readOnly: true).Map(book =>
        {
            using (book)
            {
                return study with { Files = [.. study.Files.Select(file => file.About == KeptAbout.Part && file.Subject == part.Name ? file with { Content = book.Content(file) } : file)] };
            }
        });
}
