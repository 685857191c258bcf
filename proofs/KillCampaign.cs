using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Proofs;

/// <summary>Figures of one kind of work.</summary>
/// <param name="Kills">How often its process was killed.</param>
/// <param name="Acknowledged">Pieces of work that were acknowledged before.</param>
/// <param name="Lost">Acknowledged ones that were gone; must be nought.</param>
/// <param name="Opened">How often the file opened afterwards; must be every time.</param>
/// <param name="WorstTailS">Listening: most seconds of the log's end that were not in the study.</param>
public sealed record KillFigures(int Kills, long Acknowledged, long Lost, int Opened, double WorstTailS);

/// <summary>Figures of the campaign.</summary>
public sealed record KillResult(IReadOnlyDictionary<string, KillFigures> Kinds, IReadOnlyList<string> Failures);

/// <summary>Kills a process of ours with signal 9 at random instants while it works, and looks at what is left.</summary>
public static class KillCampaign
{
    /// <summary>A killed capture may lose the last second of a log.</summary>
    public const double UsualTailS = 1;

    private const int LogRows = 400;
    private const double LineS = 0.02;

    private static readonly string[] Kinds = ["typing", "listening", "import", "migration", "export"];

    /// <summary>Kills so many times, the kinds in turn.</summary>
    /// <param name="kills">How many.</param>
    /// <param name="seed">Of the instants.</param>
    /// <param name="say">Takes a line now and then.</param>
    /// <param name="mostTailS">What a log may lose; a machine that gives a process no second to write in needs more.</param>
    public static KillResult Run(int kills, int seed, Action<string> say, double mostTailS = UsualTailS)
    {
        var random = new Random(seed);
        var figures = Kinds.ToDictionary(kind => kind, _ => new KillFigures(0, 0, 0, 0, 0), StringComparer.Ordinal);
        var failures = new List<string>();
        for (int i = 0; i < kills; i++)
        {
            string kind = Kinds[i % Kinds.Length];
            string folder = Directory.CreateTempSubdirectory("heatwright-kill-").FullName;
            try
            {
                var bench = new KillBench(folder, random, mostTailS);
                var (killed, faults) = bench.Once(kind);
                figures[kind] = Added(figures[kind], killed);
                failures.AddRange(faults.Select(fault => string.Create(CultureInfo.InvariantCulture, $"kill {i}, {kind}: {fault}")));
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }

            if ((i + 1) % 25 == 0)
            {
                say(string.Create(CultureInfo.InvariantCulture, $"{i + 1} of {kills} kills, {failures.Count} failures"));
            }
        }

        return new(figures, failures);
    }

    private static KillFigures Added(KillFigures a, KillFigures b) => new(a.Kills + b.Kills, a.Acknowledged + b.Acknowledged, a.Lost + b.Lost, a.Opened + b.Opened, Math.Max(a.WorstTailS, b.WorstTailS));

    private sealed class KillBench(string folder, Random random, double mostTailS)
    {
        private string Study => Path.Combine(folder, "a.study");

        public (KillFigures Figures, IReadOnlyList<string> Faults) Once(string kind)
        {
            Make(kind);
            string[] words = kind switch
            {
                "listening" => [kind, Study, Path.Combine(folder, "load.frames")],
                "import" => [kind, Study, Path.Combine(folder, "log.csv")],
                "export" => [kind, Study, folder],
                _ => [kind, Study],
            };
            // Half are met in their first piece of work, half once they run warm and something has been acknowledged; a migration has but one piece.
            bool warm = kind != "migration" && random.Next(2) == 1;
            int afterMs = kind switch { "migration" => random.Next(400), "listening" => 300 + random.Next(2200), _ => random.Next(700) };
            var said = KilledAfter(words, afterMs, started: kind == "listening" ? "\"values\"" : warm ? "ack 2" : "ready", out bool began);
            int acknowledged = said.Count(line => line.StartsWith("ack ", StringComparison.Ordinal));
            var faults = new List<string>();
            if (!began)
            {
                // A campaign that kills what does nothing proves nothing.
                faults.Add("the process never began its work");
            }

            var opened = StudyBook.Open(Study, readOnly: false);
            if (!opened.IsFine)
            {
                faults.Add("the file does not open: " + opened.Problems[0]);
                return (new(1, acknowledged, acknowledged, 0, 0), faults);
            }

            using var book = opened.Value;
            var study = book.ReadWhole();
            double tailS = 0;
            long lost = kind switch
            {
                "typing" => Typed(study, acknowledged, faults),
                "import" => Imported(study, acknowledged, faults),
                "export" => Exported(acknowledged, faults),
                "listening" => Heard(study, said, faults, out tailS, out acknowledged),
                _ => study.Trials[1].Runs[0].Readings.Count == 3 && book.History().Count == 2 ? 0 : 1,
            };
            faults.AddRange(lost > 0 ? [$"{lost.ToString(CultureInfo.InvariantCulture)} lost of {acknowledged.ToString(CultureInfo.InvariantCulture)}"] : []);
            // What was left must go on working: one more change, taken back.
            if (!book.Write("after", study with { Note = "after" }).IsFine || !book.Undo().IsFine)
            {
                faults.Add("the file takes no further change");
            }

            return (new(1, acknowledged, lost, 1, tailS), faults);
        }

        private static long Typed(Study study, int acknowledged, List<string> faults)
        {
            var readings = study.Trials[1].Runs[0].Readings;
            if (!readings.Skip(3).Select(reading => reading.Raw[0]).SequenceEqual(Enumerable.Range(1, readings.Count - 3).Select(i => i.ToString(CultureInfo.InvariantCulture))))
            {
                faults.Add("the readings are not those that were typed");
            }

            return Math.Max(0, acknowledged - (readings.Count - 3));
        }

        private static long Imported(Study study, int acknowledged, List<string> faults)
        {
            faults.AddRange(study.Trials[0].Runs.Where(run => run.Readings.Count != LogRows).Select(run => $"run {run.Id} has {run.Readings.Count.ToString(CultureInfo.InvariantCulture)} readings"));
            if (study.Files.Count != study.Trials[0].Runs.Count)
            {
                faults.Add("a run without its raw log, or a log without its run");
            }

            return Math.Max(0, acknowledged - study.Trials[0].Runs.Count);
        }

        private long Exported(int acknowledged, List<string> faults)
        {
            string[] zips = Directory.GetFiles(folder, "*.zip");
            faults.AddRange(zips.Where(zip => Bundle.Read(zip) is not { IsFine: true, Value.Files.Count: 1 }).Select(zip => $"{Path.GetFileName(zip)} is not whole"));
            return Math.Max(0, acknowledged - zips.Length);
        }

        private long Heard(Study study, List<string> said, List<string> faults, out double tailS, out int heard)
        {
            double[] times = [.. said.Where(line => line.Contains("\"values\"", StringComparison.Ordinal) && line.EndsWith('}')).Select(line => JsonDocument.Parse(line).RootElement.GetProperty("atS").GetDouble())];
            heard = times.Length;
            var readings = study.Trials[0].Runs is [var run] ? run.Readings : [];
            double last = times.Length > 0 ? times[^1] : 0;
            tailS = times.Length == 0 ? 0 : readings.Count == 0 ? last - times[0] : readings.Count >= times.Length ? 0 : last - times[readings.Count - 1];
            for (int i = 0; i < readings.Count; i++)
            {
                if (readings[i].Raw[1] != (3 + (i * 0.001)).ToString("0.###", CultureInfo.InvariantCulture))
                {
                    faults.Add($"reading {(i + 1).ToString(CultureInfo.InvariantCulture)} is not what was heard: {readings[i].Raw[1]}");
                    break;
                }
            }

            return tailS > mostTailS ? 1 : 0;
        }

        private void Make(string kind)
        {
            var cell = new Parts.Part(new("cell"), Parts.PartKind.Cell, "cell", []);
            var wire = new Parts.Part(new("wire"), Parts.PartKind.Heater, "wire", []);
            var study = new Study("killed", 1)
            {
                Parts = [cell, wire],
                Trials =
                [
                    new(new("empty"), TrialKind.Discharge, cell.Id, []),
                    new(new("cold"), TrialKind.ColdOhms, wire.Id, [new(new("cold-1"), [new("ohms", "Ω", "")], [new(1, ["6.81"]), new(2, ["6.82"]), new(3, ["OL"])])]),
                ],
            };
            if (kind == "export")
            {
                byte[] photo = new byte[400_000];
                random.NextBytes(photo);
                study = study with { Files = [KeptFile.Of("photo.jpg", "photo.jpg", KeptAbout.Study, "", "", photo)] };
            }

            if (kind == "migration")
            {
                OldFormat.Make(Study, study);
            }
            else
            {
                StudyBook.Create(Study, study, TimeProvider.System).Value.Dispose();
            }

            if (kind == "import")
            {
                File.WriteAllLines(Path.Combine(folder, "log.csv"), ["t (s),U (V),I (A)", .. Enumerable.Range(0, LogRows).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i},{4.1 - (i * 0.001):0.000},1.5"))]);
            }

            if (kind == "listening")
            {
                File.WriteAllLines(Path.Combine(folder, "load.frames"), ["heatwright frames 1", .. Enumerable.Range(0, 900).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i * LineS:0.000} < U={3 + (i * 0.001):0.###}V I=1.5A\\n"))]);
            }
        }

        /// <summary>Starts our own program as the child, waits for its first word, and kills it so long after.</summary>
        private static List<string> KilledAfter(string[] words, int afterMs, string started, out bool began)
        {
            string own = typeof(KillCampaign).Assembly.Location, entry = Assembly.GetEntryAssembly()!.Location;
            var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
            foreach (string word in (string[])["exec", "--runtimeconfig", Path.ChangeExtension(entry, ".runtimeconfig.json"), "--depsfile", Path.ChangeExtension(entry, ".deps.json"), own, "child", .. words])
            {
                start.ArgumentList.Add(word);
            }

            using var child = Process.Start(start)!;
            var said = new List<string>();
            using var begun = new ManualResetEventSlim();
            child.OutputDataReceived += (_, line) =>
            {
                if (line.Data is { } text)
                {
                    lock (said)
                    {
                        said.Add(text);
                    }

                    if (text.Contains(started, StringComparison.Ordinal))
                    {
                        begun.Set();
                    }
                }
            };
            child.ErrorDataReceived += (_, _) => { };
            child.BeginOutputReadLine();
            child.BeginErrorReadLine();
            began = begun.Wait(TimeSpan.FromSeconds(120));
            Thread.Sleep(afterMs);
            child.Kill();
            child.WaitForExit();
            lock (said)
            {
                return [.. said];
            }
        }
    }
}
