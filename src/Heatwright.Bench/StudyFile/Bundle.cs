using System.IO.Compression;
using System.Text;
using System.Text.Json;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.StudyFile;

/// <summary>Reads and writes bundles: a folder or a zip with study.json and runs/*.csv, as docs/formats/bundle.md says.</summary>
public static class Bundle
{
    /// <summary>No file of a bundle may be larger than this once unpacked: a study of hand readings is far smaller.</summary>
    public const long LargestFile = 64L << 20;

    private const long LargestWhole = 512L << 20;

    /// <summary>The study in a folder or zip, or everything that stands in its way.</summary>
    public static Checked<Study> Read(string path)
    {
        if (Directory.Exists(path))
        {
            return Read(name => ReadFile(Path.Combine(path, name.Replace('/', Path.DirectorySeparatorChar))), path);
        }

        if (!File.Exists(path))
        {
            return new(new Problem("There is no bundle here.", path, "nothing", "a folder or a zip with study.json", "Check the name; a bundle is described in docs/formats/bundle.md."));
        }

        try
        {
            using var file = File.OpenRead(path);
            return Read(file, path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The bundle cannot be read.", path, error.Message, "a file that may be read", "Check that it is not open elsewhere and that you may read it."));
        }
    }

    /// <summary>The study in a zip.</summary>
    /// <param name="zip">The zip.</param>
    /// <param name="name">What to call it in problems.</param>
    public static Checked<Study> Read(Stream zip, string name = "bundle")
    {
        try
        {
            using var archive = new ZipArchive(zip, ZipArchiveMode.Read);
            if (archive.Entries.Sum(entry => Math.Max(0, entry.Length)) > LargestWhole)
            {
                return new(new Problem("The bundle unpacks to more than a study can be.", name, "over 512 MiB", "512 MiB", "Take out what is not study.json or runs/*.csv."));
            }

            return Read(file => Entry(archive, file), name);
        }
        catch (InvalidDataException)
        {
            return new(new Problem("This is not a bundle.", name, "no zip, or a damaged one", "a zip with study.json", "Zip the folder again, or give the folder itself."));
        }
    }

    /// <summary>Writes a study as a zip; the file appears whole or not at all.</summary>
    public static void Write(Study study, string path)
    {
        string draft = path + ".draft";
        using (var file = File.Create(draft))
        {
            using (var archive = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
            {
                foreach (var (name, text) in Files(study))
                {
                    var entry = archive.CreateEntry(name);
                    entry.LastWriteTime = new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero); // same study, same bytes
                    using var writer = new StreamWriter(entry.Open(), new UTF8Encoding(false));
                    writer.Write(text);
                }
            }

            file.Flush(flushToDisk: true);
        }

        File.Move(draft, path, overwrite: true);
    }

    /// <summary>Name and text of each file of a study's bundle.</summary>
    public static IEnumerable<(string Name, string Text)> Files(Study study)
    {
        var document = new BundleDocument(BundleDocument.Format1, study.Name, study.Seed)
        {
            Note = study.Note,
            Invented = study.Invented,
            Brief = study.Brief,
            Instruments = study.Instruments,
            Parts = study.Parts,
            Arrangements = study.Arrangements,
            Trials = [.. study.Trials.Select(trial => new BundleTrial(trial.Id, trial.Kind, trial.Part,
            [
                .. trial.Runs.Select(run => new BundleRun(run.Id, run.Columns)
                {
                    Settings = run.Settings,
                    Struck = [.. run.Readings.Where(reading => reading.StruckBecause is not null).Select(reading => new BundleStrike(reading.Number, reading.StruckBecause!))],
                }),
            ])
            { Purpose = trial.Purpose })],
        };
        yield return ("study.json", JsonSerializer.Serialize(document, StudyJson.Pretty) + "\n");
        foreach (var run in study.Trials.SelectMany(trial => trial.Runs))
        {
            yield return ($"runs/{run.Id}.csv", RawCsv.Write([[.. run.Columns.Select(column => column.Name)], .. run.Readings.Select(reading => reading.Raw)]));
        }
    }

    private static Checked<Study> Read(Func<string, string?> file, string where)
    {
        if (file("study.json") is not { } text)
        {
            return new(new Problem("The bundle has no study.json.", where, "absent", "study.json at the top", "Check that the folder, not its parent, was zipped."));
        }

        BundleDocument? document;
        try
        {
            document = JsonSerializer.Deserialize<BundleDocument>(text, StudyJson.Options);
        }
        catch (JsonException error)
        {
            string line = error.LineNumber is { } number ? $", line {number + 1}" : "";
            return new(new Problem("study.json cannot be understood.", $"{where}, study.json{line}, {error.Path}", error.Message.Split(" Path:")[0], "a field as docs/formats/bundle.md lists it", "Correct that field."));
        }

        if (document?.Format != BundleDocument.Format1)
        {
            return new(new Problem("The bundle is of another format.", $"{where}, study.json, format", document?.Format ?? "none", BundleDocument.Format1, "Get a newer Heatwright, or export the bundle in this format."));
        }

        List<Problem> problems = [];
        Trial[] trials = [.. document.Trials.Select(trial => new Trial(trial.Id, trial.Kind, trial.Part, [.. trial.Runs.Select(run => ReadRun(run, file, where, problems))]) { Purpose = trial.Purpose })];
        var study = new Study(document.Name, document.Seed)
        {
            Note = document.Note,
            Invented = document.Invented,
            Brief = document.Brief,
            Instruments = document.Instruments,
            Parts = document.Parts,
            Trials = trials,
            Arrangements = document.Arrangements,
        };
        problems.AddRange(StudyCheck.Of(study, where));
        return problems.Count > 0 ? new(problems) : new(study);
    }

    private static Run ReadRun(BundleRun run, Func<string, string?> file, string where, List<Problem> problems)
    {
        string name = $"runs/{run.Id}.csv";
        if (run.Id.Name.AsSpan().IndexOfAny("/\\:") >= 0 || run.Id.Name.Contains("..", StringComparison.Ordinal))
        {
            problems.Add(new("A run has a name that is a path.", $"{where}, study.json", run.Id.Name, "letters, digits, blanks and hyphens", "Rename the run."));
            return new(run.Id, run.Columns, []);
        }

        if (file(name) is not { } text)
        {
            problems.Add(new("The readings of a run are missing.", $"{where}, {name}", "absent", "a CSV file", "Add the file, or take the run out of study.json."));
            return new(run.Id, run.Columns, []);
        }

        var rows = RawCsv.Read(text);
        if (rows is null || rows.Count == 0 || !rows[0].SequenceEqual(run.Columns.Select(column => column.Name), StringComparer.Ordinal))
        {
            problems.Add(new("The heading of a run's readings does not match its columns.", $"{where}, {name}, line 1", rows is { Count: > 0 } ? string.Join(',', rows[0]) : "unreadable",
                string.Join(',', run.Columns.Select(column => column.Name)), "Correct the heading, or the columns in study.json."));
            return new(run.Id, run.Columns, []);
        }

        for (int i = 1; i < rows.Count; i++)
        {
            if (rows[i].Count != run.Columns.Count)
            {
                problems.Add(new("A reading has another number of fields than its run has columns.", $"{where}, {name}, line {i + 1}", $"{rows[i].Count}", $"{run.Columns.Count}", "Correct the line; quote a text that holds a comma."));
            }
        }

        var struck = run.Struck.GroupBy(strike => strike.Number).ToDictionary(group => group.Key, group => group.First().Because);
        return new(run.Id, run.Columns, [.. rows.Skip(1).Where(row => row.Count == run.Columns.Count).Select((row, i) => new Reading(i + 1, row, struck.GetValueOrDefault(i + 1)))])
        {
            Settings = run.Settings,
        };
    }

    private static string? ReadFile(string path) =>
        File.Exists(path) && new FileInfo(path).Length <= LargestFile ? File.ReadAllText(path, Encoding.UTF8) : null;

    private static string? Entry(ZipArchive archive, string name)
    {
        var entry = archive.GetEntry(name);
        if (entry is null || entry.Length > LargestFile)
        {
            return null;
        }

        using var stream = entry.Open();
        using var memory = new MemoryStream();
        byte[] buffer = new byte[65536];
        int read;
        while ((read = stream.Read(buffer)) > 0)
        {
            memory.Write(buffer, 0, read);
            if (memory.Length > LargestFile)
            {
                return null; // the length in the directory lied
            }
        }

        return Encoding.UTF8.GetString(memory.ToArray()).TrimStart('\uFEFF');
    }
}
