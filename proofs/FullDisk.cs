using System.Diagnostics;
using Heatwright.Cli;
using Heatwright.StudyFile;

namespace Heatwright.Proofs;

/// <summary>What happened at each class of write.</summary>
public sealed record FullDiskResult(IReadOnlyDictionary<string, string> Classes, IReadOnlyList<string> Failures);

/// <summary>Fills a small file system of our own and tries each class of write on it. Needs a mount: run it as 'unshare -rm' with HEATWRIGHT_SMALL_DISK set to a small mounted folder.</summary>
public static class FullDisk
{
    private const string Folder = "HEATWRIGHT_SMALL_DISK";

    /// <summary>Tries all classes; outside a private mount it starts itself again inside one.</summary>
    public static FullDiskResult Run(Action<string> say)
    {
        if (Environment.GetEnvironmentVariable(Folder) is not { Length: > 0 } disk)
        {
            return Inside();
        }

        var classes = new Dictionary<string, string>(StringComparer.Ordinal);
        var failures = new List<string>();
        string outside = Directory.CreateTempSubdirectory("heatwright-full-").FullName;
        File.WriteAllText(Path.Combine(outside, "log.csv"), "t (s),U (V),I (A)\n" + string.Concat(Enumerable.Range(0, 60_000).Select(i => FormattableString.Invariant($"{i},4.1,1.5\n"))));
        Try("a change typed", path => Type("log", "import", Path.Combine(outside, "log.csv"), path, "--trial", "empty"));
        Try("a file kept", path => Type("file", "add", path, Path.Combine(outside, "log.csv")));
        Try("a bundle exported", path => Type("export", path, path + ".zip"));
        Try("a copy restored", path => Type("examine", path, "--rescue", path + ".rescued"));
        Try("a packed study", path => Type("pack", path), mayWork: true);
        Try("a study created", path => Type("new", path + ".new"));
        Try("a clean copy of a log", path => Type("log", "read", Path.Combine(outside, "log.csv"), "--csv", path + ".csv"));
        Try("a capture", path => Type("listen", "a=replay:" + Frames(outside), "--csv", path + ".live.csv"));
        Directory.Delete(outside, recursive: true);
        return new(classes, failures);

        void Try(string name, Func<string, (int Exit, string Error)> write, bool mayWork = false)
        {
            foreach (string old in Directory.GetFiles(disk))
            {
                File.Delete(old);
            }

            string path = Path.Combine(disk, "a.study");
            StudyBook.Create(path, Made(), TimeProvider.System).Value.Dispose();
            Fill(Path.Combine(disk, "filler"));
            var (exit, error) = write(path);
            string first = error.Split('\n')[0];
            classes[name] = exit == 0 ? "done" : first;
            say($"{name}: {classes[name]}");
            if (exit is not (0 or 2) || (exit == 0 && !mayWork))
            {
                failures.Add($"{name}: ended with {exit.ToString(System.Globalization.CultureInfo.InvariantCulture)}: {first}");
            }

            File.Delete(Path.Combine(disk, "filler"));
            var after = StudyBook.Open(path, readOnly: false);
            if (!after.IsFine || after.Value.Read().Trials.Count != 1 || after.Value.Read().Trials[0].Runs.Count != 0)
            {
                failures.Add($"{name}: the study is not as it was: {(after.IsFine ? "changed" : after.Problems[0].ToString())}");
            }

            if (after.IsFine)
            {
                after.Value.Dispose();
            }

            failures.AddRange(Directory.GetFiles(disk).Where(file => file.EndsWith(".draft", StringComparison.Ordinal)).Select(file => $"{name}: left {Path.GetFileName(file)}"));
        }
    }

    private static FullDiskResult Inside()
    {
        string mount = Directory.CreateTempSubdirectory("heatwright-disk-").FullName;
        string own = typeof(FullDisk).Assembly.Location;
        var start = new ProcessStartInfo("unshare") { UseShellExecute = false, RedirectStandardOutput = true };
        foreach (string word in (string[])["-rm", "bash", "-c", $"mount -t tmpfs -o size=600k tmpfs '{mount}' && {Folder}='{mount}' exec dotnet '{own}' full-disk"])
        {
            start.ArgumentList.Add(word);
        }

        using var child = Process.Start(start)!;
        string said = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        Directory.Delete(mount);
        int brace = said.IndexOf('{', StringComparison.Ordinal);
        return brace < 0 ? new(new Dictionary<string, string>(), ["needs a private mount: unshare -rm with tmpfs is not permitted here: " + said])
            : System.Text.Json.JsonDocument.Parse(said[brace..]).RootElement.GetProperty("result") is var result
                ? new(result.GetProperty("classes").EnumerateObject().ToDictionary(one => one.Name, one => one.Value.GetString()!, StringComparer.Ordinal), [.. result.GetProperty("failures").EnumerateArray().Select(one => one.GetString()!)])
                : throw new InvalidOperationException("No result.");
    }

    private static Study Made() => new("full", 1)
    {
        Parts = [new(new("cell"), Parts.PartKind.Cell, "cell", [])],
        Trials = [new(new("empty"), Trials.TrialKind.Discharge, new("cell"), [])],
    };

    private static string Frames(string folder)
    {
        string path = Path.Combine(folder, "a.frames");
        File.WriteAllLines(path, ["heatwright frames 1", .. Enumerable.Range(0, 60).Select(i => FormattableString.Invariant($"{i * 0.02:0.00} < U=4.1V\\n"))]);
        return path;
    }

    /// <summary>Takes all the room there is, down to the last byte.</summary>
    private static void Fill(string path)
    {
        using var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        for (int size = 4096; size > 0; size /= 16)
        {
            try
            {
                while (true)
                {
                    file.Write(new byte[size]);
                }
            }
            catch (IOException)
            {
                // Full at this size.
            }
        }
    }

    private static (int Exit, string Error) Type(params string[] words)
    {
        using var error = new StringWriter();
        int exit = CommandLine.Run(words, new Screen(TextWriter.Null, error, outputIsTerminal: false, errorIsTerminal: false, width: 100));
        return (exit, error.ToString());
    }
}
