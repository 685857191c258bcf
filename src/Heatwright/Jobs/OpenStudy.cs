using System.IO.Compression;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs;

/// <summary>A study as it was read, where from, and its fingerprint.</summary>
public sealed record OpenedStudy(Study Study, string Path, string Fingerprint)
{
    /// <summary>Number of the last change that it holds for certain.</summary>
    public long Change { get; init; }
}

/// <summary>Reads a study file without changing a byte of it.</summary>
public static class OpenStudy
{
    /// <summary>The study, or why it cannot be read.</summary>
    public static Checked<OpenedStudy> Read(string path) => StudyBook.Open(path, readOnly: true).Map(book =>
    {
        using (book)
        {
            long change = book.LastChange; // before it is read: a change in between is then rather told twice than never
            var (study, fingerprint) = book.ReadWithFingerprint();
            return new OpenedStudy(study, path, fingerprint) { Change = change };
        }
    });

    /// <summary>The study with the bytes of all its kept files: for what goes into another file.</summary>
    public static Checked<Study> Whole(string path) => StudyBook.Open(path, readOnly: true).Map(book =>
    {
        using (book)
        {
            return book.ReadWhole();
        }
    });
}

/// <summary>Creates study files; never over something that is there.</summary>
public static class NewStudy
{
    /// <summary>An empty study.</summary>
    public static Checked<Study> Create(string path, string? name)
    {
        var study = new Study(name ?? Path.GetFileNameWithoutExtension(path), 1);
        return StudyBook.Create(path, study, TimeProvider.System).Map(book =>
        {
            book.Dispose();
            return study;
        });
    }

    /// <summary>A study that begins with brief, parts, meters, readings and arrangements of another one; its parts remember whence they came. What was decided there, and what a prototype of it did, belongs to that tool.</summary>
    public static Checked<Study> From(string path, string? name, string from) => OpenStudy.Whole(from).Then(old =>
    {
        var study = old with
        {
            Name = name ?? Path.GetFileNameWithoutExtension(path),
            Note = "",
            Decisions = [],
            PrototypeReadings = [],
            Parts = [.. old.Parts.Select(part => part with { Whence = new(old.Name, part.Id, PartState.Of(old, part.Id)) })],
        };
        return StudyBook.Create(path, study, TimeProvider.System).Map(book =>
        {
            book.Dispose();
            return study;
        });
    });

    /// <summary>A new study as the bytes of its file, for whoever is to save it where they like.</summary>
    /// <param name="make">Makes it at a path, as the other ways here do.</param>
    public static Checked<byte[]> AsFile(Func<string, Checked<Study>> make)
    {
        string folder = Directory.CreateTempSubdirectory("heatwright-").FullName;
        try
        {
            string path = Path.Combine(folder, "new.study");
            return make(path).Then(_ => StudyBook.Open(path, readOnly: false)).Then(book => book.Pack()).Map(_ => File.ReadAllBytes(path));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>A study from a bundle.</summary>
    public static Checked<Study> Import(string bundle, string path) => Bundle.Read(bundle).Then(study => StudyBook.Create(path, study, TimeProvider.System).Map(book =>
    {
        book.Dispose();
        return study;
    }));
}

/// <summary>The embedded demo study.</summary>
public static class DemoStudy
{
    /// <summary>Study file that the demo creates.</summary>
    public const string FileName = "rope-hot-knife.study";

    /// <summary>Report that the demo writes.</summary>
    public const string ReportName = "rope-hot-knife.html";

    /// <summary>Creates the demo's study file where it is absent, and reads it.</summary>
    public static Checked<OpenedStudy> Open(string folder)
    {
        string path = Path.Combine(folder, FileName);
        if (File.Exists(path))
        {
            return OpenStudy.Read(path);
        }

        using var zip = Packed();
        return Bundle.Read(zip).Then(study => StudyBook.Create(path, study, TimeProvider.System)).Map(book =>
        {
            using (book)
            {
                var (study, fingerprint) = book.ReadWithFingerprint();
                return new OpenedStudy(study, path, fingerprint);
            }
        });
    }

    /// <summary>The embedded files of the demo as the zip that a bundle is.</summary>
    private static MemoryStream Packed()
    {
        const string folder = "samples/rope-hot-knife/";
        var assembly = typeof(DemoStudy).Assembly;
        var memory = new MemoryStream();
        using (var archive = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (string name in assembly.GetManifestResourceNames().Where(name => name.StartsWith(folder, StringComparison.Ordinal)))
            {
                using var from = assembly.GetManifestResourceStream(name)!;
                using var to = archive.CreateEntry(name[folder.Length..]).Open();
                from.CopyTo(to);
            }
        }

        memory.Position = 0;
        return memory;
    }
}
