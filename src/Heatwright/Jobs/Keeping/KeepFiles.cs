using Heatwright.Photos;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs.Keeping;

/// <summary>Keeps photos, raw logs and other files with a study and gives them back: byte for byte, but for what a camera writes beside a picture.</summary>
public static class KeepFiles
{
    /// <summary>A bundle takes no larger file, so a study keeps none.</summary>
    public const int LargestBytes = 64 << 20;

    /// <summary>Keeps a file. A picture is kept without what a camera writes beside it, its place above all, unless it shall be kept as it is.</summary>
    /// <param name="study">The study file.</param>
    /// <param name="path">The file to keep.</param>
    /// <param name="about">What it is about: empty, or part:ID, trial:ID, run:ID, arrangement:ID.</param>
    /// <param name="note">The maker's note.</param>
    /// <param name="asItIs">Every byte, come what may.</param>
    public static Checked<KeptFile> Add(string study, string path, string about, string note, bool asItIs = false) => About(about).Then(subject => Content(path).Then(content => asItIs ? new(content) : Plain(path, content)).Then(content =>
    {
        KeptFile? kept = null;
        return ChangeStudy.Run(study, $"Kept {Path.GetFileName(path)}", now =>
        {
            kept = KeptFile.Of(FreeId(now, Path.GetFileName(path)), Path.GetFileName(path), subject.About, subject.Id, note, content);
            return new Checked<Study>(now with { Files = [.. now.Files, kept] });
        }).Map(_ => kept! with { Content = null });
    }));

    private static Checked<byte[]> Plain(string path, byte[] content) => !Photo.MayTellPlace(content) ? new(content)
        : Photo.WithoutPlace(content) is { } plain ? new(plain)
        : new(new Problem("This may tell where it was taken, and that cannot be cut off here.", path, "a picture or film that is broken or of a kind that is not taken apart", "a whole JPEG, PNG or WebP picture, or your word", "Save it as JPEG, or keep it with all it tells: add --as-is."));

    /// <summary>The files that a study keeps.</summary>
    public static Checked<IReadOnlyList<KeptFile>> List(string study) => OpenStudy.Read(study).Map(opened => opened.Study.Files);

    /// <summary>Writes a kept file to a name that is free.</summary>
    public static Checked<string> Take(string study, string id, string to) => StudyBook.Open(study, readOnly: true).Then(book =>
    {
        using (book)
        {
            var files = book.Read().Files;
            return files.FirstOrDefault(file => file.Id == id) is { } file && book.Content(file) is { } content
                ? WriteFile.New(to, content)
                : new(new Problem("The study keeps no such file.", study, id, files.Count > 0 ? string.Join(", ", files.Select(one => one.Id)) : "none is kept", "Choose one that 'heatwright file list FILE' shows."));
        }
    });

    /// <summary>Lets go of a file; the history keeps it, so that undo brings it back.</summary>
    public static Checked<StudyChanged> Drop(string study, string id) => ChangeStudy.Run(study, $"Let go of {id}", now => now.Files.Any(file => file.Id == id)
        ? new(now with { Files = [.. now.Files.Where(file => file.Id != id)] })
        : new(new Problem("The study keeps no such file.", study, id, string.Join(", ", now.Files.Select(one => one.Id)), "Choose one that 'heatwright file list FILE' shows.")));

    /// <summary>A file's bytes, or why it cannot be kept.</summary>
    internal static Checked<byte[]> Content(string path)
    {
        try
        {
            long bytes = new FileInfo(path).Length;
            return bytes > LargestBytes
                ? new(new Problem("The file is too large to be kept in a study.", path, $"{bytes / 1_000_000} MB", $"{LargestBytes / 1_000_000} MB", "Keep a smaller picture, or cut the log into parts."))
                : new(File.ReadAllBytes(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The file cannot be read.", path, error.Message, "a file that may be read", "Check the name and the folder."));
        }
    }

    /// <summary>An id that is a file name on every machine and not taken.</summary>
    internal static string FreeId(Study study, string name)
    {
        string clean = string.Concat(name.Select(c => c < ' ' || "/\\:*?\"<>|".Contains(c, StringComparison.Ordinal) ? '-' : c)).Trim(' ', '.');
        clean = clean.Length == 0 ? "file" : clean.Length > 70 ? clean[^70..].TrimStart(' ', '.') : clean;
        string id = clean;
        for (int i = 2; study.Files.Any(file => string.Equals(file.Id, id, StringComparison.OrdinalIgnoreCase)); i++)
        {
            id = $"{Path.GetFileNameWithoutExtension(clean)}-{i.ToString(System.Globalization.CultureInfo.InvariantCulture)}{Path.GetExtension(clean)}";
        }

        return id;
    }

    private static Checked<(KeptAbout About, string Id)> About(string about)
    {
        int colon = about.IndexOf(':', StringComparison.Ordinal);
        return about.Length == 0 ? new((KeptAbout.Study, ""))
            : colon > 0 && Enum.TryParse<KeptAbout>(about[..colon], ignoreCase: true, out var kind) && kind != KeptAbout.Study ? new((kind, about[(colon + 1)..]))
            : new(new Problem("This does not say what the file is about.", "--about", about, "part:ID, trial:ID, run:ID or arrangement:ID", "Write it in one of these forms, or leave --about out."));
    }
}
