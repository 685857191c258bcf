using System.Globalization;
using System.IO.Compression;
using System.Text;
using Heatwright.Instruments;
using Heatwright.Logs;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Proofs;

/// <summary>Figures of one reader.</summary>
/// <param name="Inputs">Inputs of at most 4 kB.</param>
/// <param name="Large">Inputs of 1 MB.</param>
/// <param name="WorstMs">Most processor time for one input: the clock on the wall tells more about what else the machine does.</param>
/// <param name="WorstMb">Most memory above the baseline, sampled each millisecond, for one of 1 MB; what waits to be collected counts too.</param>
public sealed record FuzzFigures(long Inputs, long Large, double WorstMs, double WorstMb);

/// <summary>Figures of the campaign.</summary>
public sealed record FuzzResult(IReadOnlyDictionary<string, FuzzFigures> Readers, IReadOnlyList<string> Failures)
{
    /// <summary>Inputs that failed once, with what they cost when they were tried again at the next start of the campaign.</summary>
    public IReadOnlyList<string> Mended { get; init; } = [];
}

/// <summary>Gives each reader of foreign bytes mutated samples: none may throw, take a second, or 64 MB for an input of 1 MB.</summary>
public static class FuzzCampaign
{
    private const double MostMs = 1000, MostMb = 64;
    private const int SmallBytes = 4096, LargeBytes = 1 << 20, SmallForOneLarge = 100, FewestLarge = 20;

    private const string Study = """{ "format": "heatwright-bundle-1", "name": "n", "seed": 1, "parts": [ { "id": "wire", "kind": "heater", "name": "w", "stated": [] } ], "trials": [ { "id": "t", "kind": "coldOhms", "part": "wire", "runs": [ { "id": "r", "columns": [ { "name": "ohms", "unit": "Ω", "instrument": "" } ] } ] } ] }""";

    private const string Rows = "ohms\n2.71\n2.72\n";

    private static readonly string[] Tokens =
        ["9.9E37", "-9999", "OL", "sep=;", "\"", ";", ",", "\t", "\n", "\r\n", "#", "2024-01-01T00:00:00Z", "23:59:59", "1:20", "[V]", "(°C)", "mV", "k", "±", "4k7", "{", "}", "[[[[[[[[", "\\u0000", "null", "1e999", "::", "->", "../", "1,739", "1.739.000", "\0", "\u00ff\u00fe"];

    /// <summary>So many small inputs a reader, and a hundredth of that, at least twenty, of 1 MB.</summary>
    /// <param name="count">Small inputs a reader.</param>
    /// <param name="only">Only the reader of this name, so that several can run side by side, each in a process of its own; null: all, one after another.</param>
    /// <param name="seed">Of the mutations; each further start of a campaign has mutations of its own.</param>
    /// <param name="say">Takes a line a reader.</param>
    /// <param name="before">What was reached before: it goes on from there.</param>
    /// <param name="folder">Where inputs that fail are kept; what failed before is tried again from there first.</param>
    /// <param name="stop">Ends it early; the figures say how far it came.</param>
    public static FuzzResult Run(int count, string? only, int seed, Action<string> say, FuzzResult? before = null, string? folder = null, CancellationToken stop = default)
    {
        var readers = new Dictionary<string, (Action<byte[]> Read, byte[][] Samples)>(StringComparer.Ordinal)
        {
            ["log reader"] = (bytes => LogReader.Read(bytes), [.. Logs().Select(Encoding.UTF8.GetBytes)]),
            ["value parser"] = (Value, [.. ((string[])["4k7", "3,82", "1 234,5", "47 mohm", "320 °C", "12V 40W", "AWG24", "1:20", "2s1p", "5k6 1%", "3.7-4.2 V", "OL", "0.25 mm²", "±0.5 %"]).Select(Encoding.UTF8.GetBytes)]),
            ["bundle reader"] = (Zip, [Packed(), Packed()]),
            ["bundle's entries"] = (Inside, [Encoding.UTF8.GetBytes(Study), Encoding.UTF8.GetBytes(Study + "\u0000" + Rows), Encoding.UTF8.GetBytes("\u0000" + Rows)]),
            ["serial and SCPI framing"] = (Framed, [.. Lines().Select(Encoding.Latin1.GetBytes)]),
        };
        var figures = new Dictionary<string, FuzzFigures>(StringComparer.Ordinal);
        var failures = new List<string>();
        List<string> mended = [.. before?.Mended.Where(line => only is null || line.StartsWith(only + ",", StringComparison.Ordinal)) ?? []];
        foreach (var (name, (read, samples)) in readers.Where(reader => only is null || reader.Key == only))
        {
            var (small, large, worstMs, worstMb) = before?.Readers.GetValueOrDefault(name) ?? new(0, 0, 0, 0);
            WarmUp(read, samples, seed);
            foreach (string failure in before?.Failures.Where(failure => failure.StartsWith(name + ",", StringComparison.Ordinal)) ?? [])
            {
                TryAgain(failure, read, folder, failures, mended);
            }

            var random = new Random(SeedFrom(seed, small, large));
            long mostLarge = Math.Max(FewestLarge, count / SmallForOneLarge);
            // Mixed, so that a campaign that is ended early has seen both.
            while ((small < count || large < mostLarge) && !stop.IsCancellationRequested)
            {
                for (int i = 0; i < SmallForOneLarge && small < count && !stop.IsCancellationRequested; i++)
                {
                    Look(Mutated(samples, random, SmallBytes), $"{name}, small {(++small).ToString(CultureInfo.InvariantCulture)}");
                }

                if (large < mostLarge)
                {
                    Look(Grown(samples, random), $"{name}, large {(++large).ToString(CultureInfo.InvariantCulture)}");
                }
            }

            figures[name] = new(small, large, Math.Round(worstMs, 1), Math.Round(worstMb, 1));
            say($"{name}: {figures[name]}");

            void Look(byte[] input, string what)
            {
                var (ms, mb) = Looked(read, input, what, folder, failures);
                (worstMs, worstMb) = (Math.Max(worstMs, ms), Math.Max(worstMb, mb));
            }
        }

        return new(figures, failures) { Mended = mended };
    }

    /// <summary>What the runtime compiles while it first reads is its time, not the reader's: the first inputs of a start are not counted.</summary>
    private static void WarmUp(Action<byte[]> read, byte[][] samples, int seed)
    {
        var random = new Random(seed);
        for (int i = 0; i < 300; i++)
        {
            Looked(read, i % 30 == 0 ? Grown(samples, random) : Mutated(samples, random, SmallBytes), "warm-up", null, []);
        }
    }

    /// <summary>An input that failed and is kept: mended where it does not fail any more.</summary>
    private static void TryAgain(string failure, Action<byte[]> read, string? folder, List<string> failures, List<string> mended)
    {
        string what = failure.Split(':')[0], file = Path.Combine(folder ?? "", what + ".gz");
        if (folder is null || !File.Exists(file))
        {
            failures.Add(failure);
            return;
        }

        using var unpacked = new MemoryStream();
        using (var packed = new GZipStream(File.OpenRead(file), CompressionMode.Decompress))
        {
            packed.CopyTo(unpacked);
        }

        int before = failures.Count;
        var (ms, mb) = Looked(read, unpacked.ToArray(), what, null, failures);
        if (failures.Count == before)
        {
            mended.Add(string.Create(CultureInfo.InvariantCulture, $"{failure}; tried again: {ms:0} ms, {mb:0} MB"));
        }
    }

    /// <summary>The same on every machine, unlike the hash of the library.</summary>
    private static int SeedFrom(int seed, long small, long large) => unchecked(seed + (int)(small * 7919) + (int)(large * 104_729));

    /// <summary>Reads one input: its processor time and, for a large one, its memory. An input that fails is kept in the folder, where there is one.</summary>
    private static (double Ms, double Mb) Looked(Action<byte[]> read, byte[] input, string what, string? folder, List<string> failures)
    {
        List<string> wrong = [];
        using var memory = input.Length > SmallBytes ? new MemoryPeak() : null;
        var began = Environment.CpuUsage.TotalTime;
        try
        {
            read(input);
        }
        catch (Exception error)
        {
            wrong.Add($"{what}: {error.GetType().Name}: {error.Message}");
        }

        double ms = (Environment.CpuUsage.TotalTime - began).TotalMilliseconds, mb = memory?.Mb() ?? 0;
        if (ms > MostMs)
        {
            wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {ms:0} ms"));
        }

        if (mb > MostMb)
        {
            wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {mb:0} MB"));
        }

        if (wrong.Count > 0 && folder is not null)
        {
            Directory.CreateDirectory(folder);
            using var packed = new GZipStream(File.Create(Path.Combine(folder, what + ".gz")), CompressionLevel.SmallestSize);
            packed.Write(input);
        }

        failures.AddRange(wrong);
        return (ms, mb);
    }

    private static void Value(byte[] bytes)
    {
        string text = Encoding.UTF8.GetString(bytes);
        foreach (var unit in (Unit[])[Units.Ohm, Units.Volt, Units.Celsius, Units.Second])
        {
            TypedValue.Read(text, new Expect("a value", ExpectKind.Amount, [unit]));
        }
    }

    private static void Zip(byte[] bytes)
    {
        using var memory = new MemoryStream(bytes);
        Bundle.Read(memory, "fuzz");
    }

    /// <summary>A sound archive with garbled text in it: the first part stands for the study, what follows a NUL for the table of a run.</summary>
    private static void Inside(byte[] bytes)
    {
        int cut = bytes.AsSpan().IndexOf((byte)0);
        Zip(Packed(cut < 0 ? bytes : bytes[..cut], cut < 0 ? Encoding.UTF8.GetBytes(Rows) : bytes[(cut + 1)..]));
    }

    /// <summary>Through the front: lines as a recording that is listened to would be cut and read.</summary>
    private static void Framed(byte[] bytes) => Foreign.Take(bytes);

    private static byte[] Mutated(byte[][] samples, Random random, int most)
    {
        var input = new List<byte>(samples[random.Next(samples.Length)].Take(most));
        for (int times = 1 + random.Next(8); times > 0; times--)
        {
            int at = random.Next(input.Count + 1);
            switch (random.Next(7))
            {
                case 0 when input.Count > 0:
                    input[Math.Min(at, input.Count - 1)] = (byte)random.Next(256);
                    break;
                case 1 when input.Count > 0:
                    input[Math.Min(at, input.Count - 1)] ^= (byte)(1 << random.Next(8));
                    break;
                case 2:
                    input.RemoveRange(at, Math.Min(random.Next(40), input.Count - at));
                    break;
                case 3:
                    input.InsertRange(at, Encoding.UTF8.GetBytes(Tokens[random.Next(Tokens.Length)]));
                    break;
                case 4:
                    input.InsertRange(at, input.Skip(random.Next(input.Count + 1)).Take(random.Next(200)).ToArray());
                    break;
                case 5:
                    input.InsertRange(at, samples[random.Next(samples.Length)].Skip(random.Next(50)).Take(random.Next(200)).ToArray());
                    break;
                default:
                    input.InsertRange(at, Enumerable.Repeat(Encoding.UTF8.GetBytes(Tokens[random.Next(Tokens.Length)]), 1 + random.Next(30)).SelectMany(one => one).ToArray());
                    break;
            }
        }

        return [.. input.Take(most)];
    }

    private static byte[] Grown(byte[][] samples, Random random)
    {
        byte[] seed = Mutated(samples, random, SmallBytes);
        byte[] large = new byte[LargeBytes];
        for (int at = 0; at < large.Length; at += Math.Max(1, seed.Length))
        {
            seed.AsSpan(0, Math.Min(seed.Length, large.Length - at)).CopyTo(large.AsSpan(at));
        }

        for (int i = 0; i < 200; i++)
        {
            large[random.Next(large.Length)] = (byte)random.Next(256);
        }

        return large;
    }

    private static IEnumerable<string> Logs() =>
    [
        "Zeit;U [V];I [mA]\n0;4,10;435,2\n1;4,09;436,0\n", "t,a,b\n2024-03-04 10:00:00,1.5,OL\n2024-03-04 10:00:01,1.6,2\n", "231.5 240 0.52\n231.9 240 0.53\n", "tip:231.5,set:240\ntip:232,set:240\n",
        "23:24:14.141 -> 1,2\n23:24:14.341 -> 1,3\n", "a;b;c\nV;mA;degC\n1;2;3\n1;2;3\n", "sep=;\n\"a\";\"b\"\n\"1,5\";\"2\"\n", "No,Value,Unit\n1,998,mV\n2,1.1,V\n",
    ];

    private static IEnumerable<string> Lines() => ["+3.98200000E+00\n", "9.9E37\r\n", "tip:231.5,set:240\n", "> +1.0E-3,V\r\n", "DC  3.982  V\r", "rst:0x1 boot\r\n1 2 3\n", "\u00ff\u00fb\u00011.5\n"];

    private static byte[] Packed() => Packed(Encoding.UTF8.GetBytes(Study), Encoding.UTF8.GetBytes(Rows));

    private static byte[] Packed(byte[] study, byte[] rows)
    {
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            using (var text = zip.CreateEntry("study.json", CompressionLevel.Fastest).Open())
            {
                text.Write(study);
            }

            using var csv = zip.CreateEntry("runs/r.csv", CompressionLevel.Fastest).Open();
            csv.Write(rows);
        }

        return memory.ToArray();
    }

    private sealed class MemoryPeak : IDisposable
    {
        private readonly double baseMb = GC.GetTotalMemory(forceFullCollection: true) / 1e6;
        private readonly Thread thread;
        private volatile bool over;
        private double peakMb;

        public MemoryPeak()
        {
            thread = new Thread(() =>
            {
                while (!over)
                {
                    peakMb = Math.Max(peakMb, GC.GetTotalMemory(forceFullCollection: false) / 1e6);
                    Thread.Sleep(1);
                }
            })
            { IsBackground = true };
            thread.Start();
        }

        public double Mb()
        {
            Dispose();
            return Math.Max(0, peakMb - baseMb);
        }

        public void Dispose()
        {
            over = true;
            thread.Join();
        }
    }
}
