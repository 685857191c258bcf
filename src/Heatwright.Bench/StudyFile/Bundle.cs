using System.IO.Compression;
using System.Text;
using System.Text.Json;
using Heatwright.Quantities;

namespace Heatwright.StudyFile;

/// <summary>Reads and writes bundles: a folder or a zip with study.json, runs/*.csv and files/*, as docs/formats/bundle.md says.</summary>
public static class Bundle
{
    /// <summary>A packed bundle larger than this is not looked into.</summary>
    private const long LargestZip = 128L << 20;

    private static readonly Encoding Utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The study in a folder or zip, or everything that stands in its way.</summary>
    public static Checked<Study> Read(string path)
    {
        try
        {
            if (Directory.Exists(path))
            {
                var problems = new ProblemList();
                return BundleReader.Read(BundleSource.OfFolder(path, problems), problems);
            }
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            return Read(file, path);
        }
        catch (Exception error) when (error is FileNotFoundException or DirectoryNotFoundException)
        {
            return new(new Problem("There is no bundle here.", path, "nothing", "a folder or a zip with study.json", "Check the name; a bundle is described in docs/formats/bundle.md."));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new(new Problem("The bundle cannot be read.", path, error.Message, "a folder or a file that may be read", "Check the name, that it is not open elsewhere and that you may read it."));
        }
    }

    /// <summary>The study in a zip.</summary>
    /// <param name="zip">The zip.</param>
    /// <param name="name">What to call it in problems.</param>
    public static Checked<Study> Read(Stream zip, string name = "bundle")
    {
        try
        {
            using var seekable = Bounded(zip);
            if (seekable is null)
            {
                return new(new Problem("The zip is larger than a bundle can be.", name, "more than that", "128 MiB", "Check that this is the right file."));
            }
            using var archive = new ZipArchive(seekable, ZipArchiveMode.Read, leaveOpen: true);
            var problems = new ProblemList();
            return BundleReader.Read(BundleSource.OfZip(archive, problems), problems);
        }
        catch (Exception error) when (error is InvalidDataException or EndOfStreamException or OverflowException or ArgumentException)
        {
            return new(new Problem("This is not a bundle.", name, "no zip, or a damaged one", "a zip with study.json", "Zip the folder again, or give the folder itself."));
        }
    }

    /// <summary>Writes a study as a zip; the file appears whole or not at all. The same study gives the same bytes.</summary>
    /// <returns>The path, or what stands in the way: a study that could not be read back is not written.</returns>
    public static Checked<string> Write(Study study, string path)
    {
        if (StudyCheck.Of(study, "the study") is { Count: > 0 } problems)
        {
            return new(problems);
        }
        string draft = path + ".draft";
        try
        {
            using (var file = new FileStream(draft, FileMode.Create, FileAccess.ReadWrite))
            {
                WriteZip(study, file);
                file.Flush(flushToDisk: true);
            }
            File.Move(draft, path, overwrite: true);
            return new(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Draft.Remove(draft);
            return new(new Problem("The bundle cannot be written.", path, error.Message, "a folder that may be written to, with room", "Choose another folder, or free some room; nothing was changed."));
        }
    }

    /// <summary>A study as the bytes of a zip, or what stands in the way.</summary>
    public static Checked<byte[]> Pack(Study study)
    {
        if (StudyCheck.Of(study, "the study") is { Count: > 0 } problems)
        {
            return new(problems);
        }
        using var memory = new MemoryStream();
        WriteZip(study, memory);
        return new(memory.ToArray());
    }

    /// <summary>Name and text of each file of a study's bundle.</summary>
    public static IEnumerable<(string Name, string Text)> Files(Study study)
    {
        yield return (BundleSource.StudyName, JsonSerializer.Serialize(BundleDocument.Of(study), StudyJson.Pretty) + "\n");
        foreach (var run in study.Trials.SelectMany(trial => trial.Runs))
        {
            yield return (BundleRun.FileNameOf(run.Id), RunCsv.Write([[.. run.Columns.Select(column => column.Name)], .. run.Readings.Select(reading => reading.Raw)]));
        }
    }

    private static void WriteZip(Study study, Stream file)
    {
        using var archive = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var (name, bytes) in Files(study).Select(file => (file.Name, Utf8.GetBytes(file.Text))).Concat(Kept(study)))
        {
            var entry = archive.CreateEntry(name);
            entry.LastWriteTime = new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero); // same study, same bytes
            using var stream = entry.Open();
            stream.Write(bytes);
        }
    }

    /// <summary>Name and bytes of each kept file.</summary>
    internal static IEnumerable<(string Name, byte[] Bytes)> Kept(Study study) => study.Files.Select(file =>
        (BundleFile.FileNameOf(file.Id), file.Content ?? throw new ArgumentException($"The bytes of '{file.Id}' are not at hand; read the whole study.", nameof(study))));

    // A zip is read from its end. What cannot be wound back is taken into memory first, up to the limit.
    private static MemoryStream? Bounded(Stream zip)
    {
        var memory = new MemoryStream();
        byte[] buffer = new byte[81920];
        int read;
        while ((read = zip.Read(buffer)) > 0)
        {
            if (memory.Length + read > LargestZip)
            {
                return null;
            }
            memory.Write(buffer, 0, read);
        }
        memory.Position = 0;
        return memory;
    }
}
