using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Proofs;

/// <summary>Figures of the campaign.</summary>
/// <param name="Browsers">Clients with a live connection each, and how many of them are real browsers.</param>
/// <param name="RealBrowsers">Headless browsers among them.</param>
/// <param name="Seconds">How long.</param>
/// <param name="Lines">Readings that were acknowledged.</param>
/// <param name="Lost">Of them not in the study in the end, or there more than once.</param>
/// <param name="Waits">How often a browser had to come to see another's line.</param>
/// <param name="Unseen">How often it never did.</param>
/// <param name="MedianMs">Half of the waits were shorter.</param>
/// <param name="In99Of100Ms">99 of 100 were shorter.</param>
/// <param name="WorstMs">The longest.</param>
/// <param name="LeftOut">Waits that do not count, because the machine let nothing of the campaign run meanwhile.</param>
/// <param name="PausedS">How long it did not, in all; the time of the campaign counts without it.</param>
/// <param name="Within1S">Share of waits of at most a second, of 100.</param>
/// <param name="Clashes">Pairs that set one field of the brief from pages that showed the same.</param>
/// <param name="ClashesKept">Of them with both values in the history.</param>
/// <param name="ClashesTold">Of them where the second, and only the second, was told.</param>
/// <param name="StartMb">Memory of the program after the first sixth of the time (median of a sixth).</param>
/// <param name="EndMb">In the last sixth.</param>
/// <param name="BusyCores">Processor time of the program over the time.</param>
/// <param name="Load">Processes that waited for the machine's cores meanwhile, on average.</param>
/// <param name="Failures">What went wrong.</param>
public sealed record BrowserResult(int Browsers, int RealBrowsers, double Seconds, int Lines, int Lost, int Waits, int Unseen, double MedianMs, double In99Of100Ms, double WorstMs, double Within1S,
    int LeftOut, double PausedS, int Clashes, int ClashesKept, int ClashesTold, double StartMb, double EndMb, double BusyCores, double Load, IReadOnlyList<string> Failures);

/// <summary>Many browsers on one study, served by a process of its own: readings typed on four trials, one field of the brief set from two pages at once, each change seen by the others.</summary>
public static class BrowserCampaign
{
    /// <summary>Allowed: growth of the program's memory over the last five sixths of the time, MB.</summary>
    private const double MostGrowthMb = 32;

    private static readonly string[] Trials = ["north", "east", "south", "west"];

    /// <summary>True: nothing lost, nothing unseen, each clash kept and told, memory flat, 99 of 100 waits at most a second.</summary>
    public static bool Holds(BrowserResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Failures.Count == 0 && result.Lost == 0 && result.Unseen == 0 && result.ClashesKept == result.Clashes && result.ClashesTold == result.Clashes
            && result.EndMb - result.StartMb <= MostGrowthMb && result.In99Of100Ms <= 1000;
    }

    /// <summary>Runs so many browsers for so long.</summary>
    /// <param name="browsers">In all.</param>
    /// <param name="time">How long edits are made.</param>
    /// <param name="every">Mean time from one line of a browser to its next.</param>
    /// <param name="real">One of them is a headless browser, where one is found.</param>
    /// <param name="seed">Of the pauses.</param>
    /// <param name="say">Progress.</param>
    public static async Task<BrowserResult> Run(int browsers, TimeSpan time, TimeSpan every, bool real, int seed, Action<string> say)
    {
        ArgumentNullException.ThrowIfNull(say);
        string folder = Directory.CreateTempSubdirectory("heatwright-browsers-").FullName;
        string file = Path.Combine(folder, "many.study");
        Make(file);
        using var server = Serve(file, Port());
        try
        {
            return await Campaign(browsers, time, every, real && File.Exists(RealBrowser.Chromium), seed, file, server, say);
        }
        finally
        {
            if (!server.Process.HasExited)
            {
                server.Process.Kill();
            }

            await server.Process.WaitForExitAsync();
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<BrowserResult> Campaign(int browsers, TimeSpan time, TimeSpan every, bool real, int seed, string file, Server server, Action<string> say)
    {
        using var pauses = new Pauses();
        var sightings = new Sightings(pauses);
        var failures = new ConcurrentQueue<string>();
        using var stop = new CancellationTokenSource();
        using var done = new CancellationTokenSource();
        int clients = browsers - (real ? 1 : 0);
        PageClient[] all = [.. Enumerable.Range(0, clients).Select(i => new PageClient(server.Address, i, Trials[i % Trials.Length], sightings))];
        int realNumber = clients;
        int[] Others(int me) => [.. Enumerable.Range(0, browsers).Where(other => other != me && other % Trials.Length == me % Trials.Length)];
        foreach (var one in all)
        {
            await one.See(CancellationToken.None);
        }

        Task[] following = [.. all.Select(one => Quiet(one.Follow(done.Token), failures, done.Token))];
        List<string> realTyped = [];
        var realRun = real ? RealBrowser.Run(server.Address, Trials[realNumber % Trials.Length], realNumber, sightings, i => Text(realNumber, i), every, line => sightings.Expect(line, Others(realNumber)), realTyped.Add, done.Token) : Task.FromResult<IReadOnlyList<string>>([]);
        await Task.Delay(real ? 5000 : 200);

        var clock = Stopwatch.StartNew();
        var (cpu, memory) = (server.Process.TotalProcessorTime, new List<(double At, double Mb)>());
        Task[] typing = [.. all.Select((one, i) => Quiet(Typing(one, i), failures, stop.Token))];
        var clashing = Clashing();
        double load = 0;
        int loads = 0;
        // On a machine whose cores are wanted by others a short run goes on until every browser has typed.
        while (clock.Elapsed - pauses.Total < time || (clock.Elapsed < time + TimeSpan.FromMinutes(2) && all.Any(one => one.Acknowledged.Count < 2)))
        {
            await Task.Delay(TimeSpan.FromSeconds(Math.Min(5, time.TotalSeconds / 12)));
            server.Process.Refresh();
            memory.Add((clock.Elapsed.TotalSeconds, server.Process.WorkingSet64 / 1e6));
            (load, loads) = (load + Load(), loads + 1);
            say(string.Create(CultureInfo.InvariantCulture, $"{clock.Elapsed.TotalSeconds:0} s, {all.Sum(one => one.Acknowledged.Count)} lines, {memory[^1].Mb:0} MB, {sightings.Open} awaited, load {Load():0.0}"));
        }

        await stop.CancelAsync();
        await Task.WhenAll(typing);
        var clashes = await clashing;
        double busy = (server.Process.TotalProcessorTime - cpu) / clock.Elapsed;
        for (int i = 0; i < 300 && sightings.Open > 0; i++)
        {
            await Task.Delay(100); // what was typed last may still be on its way
        }

        double seconds = clock.Elapsed.TotalSeconds, paused = pauses.Total.TotalSeconds;
        await done.CancelAsync();
        await Task.WhenAll(following);
        foreach (string wrong in await realRun)
        {
            failures.Enqueue("real browser: " + wrong);
        }

        var study = OpenStudy.Read(file).Value.Study;
        string[] kept = [.. study.Trials.SelectMany(trial => trial.Runs).SelectMany(run => run.Readings).Select(reading => reading.Raw[0])];
        string[] acknowledged = [.. all.SelectMany(one => one.Acknowledged), .. realTyped];
        var times = kept.CountBy(text => text).ToDictionary(StringComparer.Ordinal);
        string history = string.Join('\n', ChangeStudy.History(file).Value.Select(change => change.What));
        var waits = sightings.WaitsMs;
        foreach (var one in all)
        {
            one.Dispose();
        }

        return new(browsers, real ? 1 : 0, Math.Round(seconds - paused), acknowledged.Length, acknowledged.Count(text => times.GetValueOrDefault(text) != 1), sightings.Ended, sightings.Open,
            Part(waits, 0.5), Part(waits, 0.99), Part(waits, 1), waits.Count == 0 ? 0 : Math.Round(100.0 * waits.Count(one => one <= 1000) / waits.Count, 2), sightings.Ended - waits.Count, Math.Round(paused),
            clashes.Count, clashes.Count(one => one.Kept && history.Contains($"every={one.First}", StringComparison.Ordinal) && history.Contains($"every={one.Second}", StringComparison.Ordinal)), clashes.Count(one => one.Told),
            Sixth(memory, 1, seconds), Sixth(memory, 5, seconds), Math.Round(busy, 2), Math.Round(load / Math.Max(1, loads), 1), [.. failures]);

        async Task Typing(PageClient one, int i)
        {
            var random = new Random(seed + i);
            for (int n = 0; !stop.IsCancellationRequested; n++)
            {
                if (await one.Type(Text(i, n), Others(i), CancellationToken.None) is { } wrong)
                {
                    failures.Enqueue(wrong);
                }

                await Pause(every * (0.5 + random.NextDouble()), stop.Token);
            }
        }

        async Task<List<(string First, string Second, bool Kept, bool Told)>> Clashing()
        {
            List<(string, string, bool, bool)> met = [];
            for (int n = 0; !stop.IsCancellationRequested && clients > 1; n++)
            {
                string first = string.Create(CultureInfo.InvariantCulture, $"{100 + (2 * n)}s"), second = string.Create(CultureInfo.InvariantCulture, $"{101 + (2 * n)}s");
                var a = await all[n % clients].OpenBrief("every", CancellationToken.None);
                var b = await all[(n + 1) % clients].OpenBrief("every", CancellationToken.None);
                var both = await Task.WhenAll(a(first), b(second));
                met.Add((first, second, both.All(one => one.Kept), both.Count(one => one.Told) == 1));
                await Pause(every, stop.Token);
            }

            return met;
        }
    }

    private static async Task Pause(TimeSpan time, CancellationToken stop) => await Task.Delay(time, stop).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);

    private static async Task Quiet(Task task, ConcurrentQueue<string> failures, CancellationToken end)
    {
        try
        {
            await task;
        }
        catch (OperationCanceledException) when (end.IsCancellationRequested)
        {
            // It was told to end.
        }
        catch (Exception error) when (error is HttpRequestException or IOException or InvalidOperationException or OperationCanceledException)
        {
            failures.Enqueue(error.Message);
        }
    }

    /// <summary>No two lines of the campaign are alike, and none is part of another.</summary>
    private static string Text(int browser, int line) => string.Create(CultureInfo.InvariantCulture, $"2.7{browser:00}{line:00000}9");

    private static double Part(IReadOnlyList<double> sorted, double share) => sorted.Count == 0 ? 0 : Math.Round(sorted[(int)Math.Ceiling(share * sorted.Count) - 1]);

    private static double Sixth(List<(double At, double Mb)> memory, int which, double seconds)
    {
        double[] there = [.. memory.Where(one => (int)(6 * one.At / seconds) == which).Select(one => one.Mb).Order()];
        return there.Length == 0 ? 0 : Math.Round(there[there.Length / 2], 1);
    }

    private static double Load() => File.Exists("/proc/loadavg") ? double.Parse(File.ReadAllText("/proc/loadavg").Split(' ')[0], CultureInfo.InvariantCulture) : 0;

    internal static int Port()
    {
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        return ((IPEndPoint)free.LocalEndpoint).Port;
    }

    private static void Make(string file)
    {
        var wire = new Parts.Part(new("wire"), Parts.PartKind.Heater, "wire", []);
        var study = new Study("many", 1)
        {
            Parts = [wire],
            Trials = [.. Trials.Select(name => new Trial(new(name), TrialKind.ColdOhms, wire.Id, [new(new(name + "-1"), [new("ohms", "Ω", "")], [new(1, ["2.71"])])]))],
        };
        StudyBook.Create(file, study, TimeProvider.System).Value.Dispose();
        var said = EditBrief.Set(file, ["target=320C", "every=60s"]);
        if (!said.IsFine)
        {
            throw new InvalidOperationException(said.Problems[0].ToString());
        }
    }

    internal static Server Serve(string file, int port)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, UseShellExecute = false };
        string[] words = [Path.Combine(AppContext.BaseDirectory, "heatwright.dll"), "serve", file, "--no-browser", "--port", port.ToString(CultureInfo.InvariantCulture), "--shelf", Path.Combine(Path.GetDirectoryName(file)!, "shelf.study")];
        foreach (string word in words)
        {
            start.ArgumentList.Add(word);
        }

        var process = Process.Start(start)!;
        while (process.StandardOutput.ReadLine() is { } line)
        {
            if (line.Contains("http://", StringComparison.Ordinal))
            {
                return new(process, string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}/"));
            }
        }

        throw new InvalidOperationException("The program did not begin to serve.");
    }

    internal sealed record Server(Process Process, string Address) : IDisposable
    {
        public void Dispose() => Process.Dispose();
    }
}
