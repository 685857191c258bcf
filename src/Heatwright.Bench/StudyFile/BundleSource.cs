using System.IO.Compression;
using System.Text;

namespace Heatwright.StudyFile;

/// <summary>The files of a bundle, from a folder or a zip, each bounded in size before it is believed.</summary>
internal sealed class BundleSource
{
    /// <summary>No file of a bundle may be larger than this once unpacked.</summary>
    public const long LargestFile = 64L << 20;

    /// <summary>All files together may not be larger than this.</summary>
    public const long LargestWhole = 256L << 20;

    /// <summary>A bundle may not have more files than this.</summary>
    public const int MostFiles = 10_000;

    /// <summary>The study without its readings.</summary>
    public const string StudyName = "study.json";

    private static readonly string[] Inner = ["runs", "files"];

    private const string Size = "64 MiB a file, 256 MiB in all";

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private readonly Dictionary<string, Func<Stream>> files = new(StringComparer.Ordinal);
    private readonly ProblemList problems;
    private long unpacked;

    private BundleSource(ProblemList problems) => this.problems = problems;

    public IEnumerable<string> Names => files.Keys;

    /// <summary>The files of a folder; a link is refused, because it leads out of the bundle.</summary>
    public static BundleSource OfFolder(string folder, ProblemList problems)
    {
        var source = new BundleSource(problems);
        // Only the bundle's two levels are looked at: a folder chosen by mistake may hold a whole disk.
        var found = Directory.EnumerateFileSystemEntries(folder).Concat(Inner.Select(inner => Path.Combine(folder, inner)).Where(inner => Directory.Exists(inner) && !IsLink(inner))
            .SelectMany(Directory.EnumerateFileSystemEntries)).Take(MostFiles + 2).ToArray();
        source.CountFiles(found.Length, folder);
        foreach (string path in found.Order(StringComparer.Ordinal))
        {
            string name = Path.GetRelativePath(folder, path).Replace(Path.DirectorySeparatorChar, '/');
            if (IsLink(path))
            {
                problems.Add("A file of the bundle is a link.", name, "a link", "the file itself", "Put a copy of the file in its place.");
            }
            else if (!Inner.Contains(name) || !Directory.Exists(path))
            {
                source.Add(name, () => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read));
            }
        }
        return source;
    }

    /// <summary>The files of a zip; names that lead out of it are refused, and so is anything that unpacks too large.</summary>
    public static BundleSource OfZip(ZipArchive zip, ProblemList problems)
    {
        var source = new BundleSource(problems);
        source.CountFiles(zip.Entries.Count, "the zip");
        // Zipping a folder with a mouse often puts the folder itself on top.
        string top = zip.GetEntry(StudyName) is null && zip.Entries.Where(entry => entry.FullName.EndsWith("/" + StudyName, StringComparison.Ordinal)).ToArray() is [var only]
            ? only.FullName[..^StudyName.Length] : "";
        foreach (var entry in zip.Entries.Take(MostFiles))
        {
            string name = entry.FullName.StartsWith(top, StringComparison.Ordinal) ? entry.FullName[top.Length..] : entry.FullName;
            if (entry.FullName.Contains('\\', StringComparison.Ordinal) || entry.FullName.StartsWith('/') || entry.FullName.Split('/').Contains(".."))
            {
                problems.Add("A file of the zip has a name that leads out of it.", "the zip", entry.FullName, "study.json and runs/RUN-ID.csv", "Make the zip anew from the folder.");
            }
            else if (!name.EndsWith('/') && !entry.FullName.StartsWith("__MACOSX/", StringComparison.Ordinal))
            {
                source.Add(name, entry.Open);
            }
        }
        return source;
    }

    /// <summary>A file's text, or null after telling why not.</summary>
    public string? Text(string name)
    {
        try
        {
            return Unpacked(name) is { } memory ? Strict.GetString(memory.GetBuffer(), 0, (int)memory.Length).TrimStart('\uFEFF') : null;
        }
        catch (DecoderFallbackException error)
        {
            problems.Add("A file is not UTF-8 text.", $"{name}, byte {CheckDesk.Number(error.Index)}", Convert.ToHexStringLower(error.BytesUnknown ?? []), "UTF-8", "Save it again as UTF-8.");
            return null;
        }
    }

    /// <summary>A file's bytes, or null after telling why not.</summary>
    public byte[]? Bytes(string name) => Unpacked(name)?.ToArray();

    private MemoryStream? Unpacked(string name)
    {
        try
        {
            using var stream = files[name]();
            var memory = new MemoryStream();
            byte[] buffer = new byte[81920];
            int read;
            // What is written on a packed file as its length is not believed: the bytes are counted as they come.
            while ((read = stream.Read(buffer)) > 0)
            {
                unpacked += read;
                if (memory.Length + read > LargestFile || unpacked > LargestWhole)
                {
                    problems.Add("The bundle unpacks to more than a study can be.", name, "more than that", Size, "Split the log, or take out what no run needs.");
                    return null;
                }
                memory.Write(buffer, 0, read);
            }
            return memory;
        }
        catch (Exception error) when (error is InvalidDataException or IOException or UnauthorizedAccessException or NotSupportedException)
        {
            problems.Add("A file of the bundle cannot be read.", name, error.Message, "a whole file that may be read", "Make the bundle anew, or check the permissions.");
        }
        return null;
    }

    public bool Has(string name) => files.ContainsKey(name);

    private static bool IsLink(string path) => new FileInfo(path).LinkTarget is not null;

    private void CountFiles(int count, string where)
    {
        if (count > MostFiles)
        {
            problems.Add("There are more files than a bundle can have.", where, $"more than {CheckDesk.Number(MostFiles)}", CheckDesk.Number(MostFiles), "Check that this is the bundle's own folder.");
        }
    }

    private void Add(string name, Func<Stream> open)
    {
        if (name.StartsWith('.') || name is "Thumbs.db" or "README.md" or "README.txt")
        {
            return; // what desktops leave behind, and a word for people
        }
        if (!files.TryAdd(name, open))
        {
            problems.Add("Two files of the zip have one name.", "the zip", name, "once", "Make the zip anew from the folder.");
        }
    }
}
