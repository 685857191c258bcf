using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Heatwright.Instruments;

namespace Heatwright.Tests.Instruments;

/// <summary>Tests that measure memory run when no others do.</summary>
[CollectionDefinition("alone", DisableParallelization = true)]
public sealed class Alone;

/// <summary>An hour of three instruments at 50 lines a second each, on a clock that runs 600 times as fast as life: 6 s, 30 000 lines a second from each.</summary>
/// <remarks>One is a pseudo-terminal, one a network stream, one a recorded file. Every line carries its number, so that a lost, doubled or torn one shows.</remarks>
[Collection("alone")]
public sealed class LongListeningTests
{
    private const double Hurry = 600;
    private const int Lines = 50 * 3600;

    /// <summary>Growth allowed from a tenth of the hour to its end. The lines themselves come to 20 MB; what stays must not grow with them.</summary>
    private const double MostGrowthMb = 4;

    [Fact(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    public async Task An_hour_of_three_instruments_loses_no_line_and_keeps_no_memory()
    {
        string file = Path.GetTempFileName();
        await File.WriteAllLinesAsync(file, [FrameHead, .. Enumerable.Range(0, Lines).Select(i => string.Create(CultureInfo.InvariantCulture, $"{1 + (i / 50.0):0.000} < {Line(i)}\\n"))], TestContext.Current.CancellationToken);
        using var port = new PseudoTerminal();
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        using var stop = new CancellationTokenSource();
        // At the pace of life until all three speak: opening ports is not to be hurried.
        var pace = new HurriedClock(1);
        var clock = new BenchClock(pace);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(60));
        bool hurried = false;
        SourcePlan[] plans =
        [
            SourcePlan.Read("serial=serial:" + port.Path, 0).Value,
            SourcePlan.Read($"net=tcp:127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}", 1).Value,
            SourcePlan.Read("file=replay:" + file, 2).Value,
        ];
        var heard = Listener.Begin(plans, clock, stop.Token);
        using var client = await listener.AcceptTcpClientAsync(TestContext.Current.CancellationToken);
        var stream = client.GetStream();
        var toNet = Task.Run(() => Pace(clock, text => stream.Write(Encoding.ASCII.GetBytes(text))), TestContext.Current.CancellationToken);
        Task? toPort = null;

        var next = new Dictionary<string, int>();
        var last = new Dictionary<string, double>();
        double early = 0;
        int all = 0;
        await foreach (var one in heard.ReadAllAsync(patience.Token))
        {
            Assert.True(one is not Heard.Unread, one.ToString());
            toPort ??= one is Heard.Note { Source: "serial", State: LinkState.Open } ? Task.Run(() => Pace(clock, text => port.Say(text)), TestContext.Current.CancellationToken) : null;
            if (one is not Heard.Line line)
            {
                continue;
            }

            Assert.Equal(next.GetValueOrDefault(line.Source), line.Readouts[0].Value);
            next[line.Source] = next.GetValueOrDefault(line.Source) + 1;
            Assert.True(line.AtS >= last.GetValueOrDefault(line.Source), "A stamp went back.");
            last[line.Source] = line.AtS;
            all++;
            if (!hurried && next.Count == 3)
            {
                hurried = true;
                pace.Hurry(Hurry);
            }

            early = all == 3 * Lines / 10 ? MemoryMb() : early;
            if (all == 3 * Lines)
            {
                await stop.CancelAsync();
            }
        }

        await Task.WhenAll(toNet, toPort!);
        double late = MemoryMb();
        File.Delete(file);
        Assert.Equal([Lines, Lines, Lines], next.Values);
        Assert.All(last.Values, at => Assert.InRange(at, 3590, double.PositiveInfinity));
        Assert.True(late - early < MostGrowthMb, string.Create(CultureInfo.InvariantCulture, $"from {early:0.0} MB to {late:0.0} MB"));
    }

    private const string FrameHead = "heatwright frames 1";

    private static string Line(int number) => string.Create(CultureInfo.InvariantCulture, $"n:{number},tip:{200 + (number % 100)}.5,bat_mV:{3900 - (number % 50)}");

    /// <summary>Sends each line when its time has come, by the hurried clock.</summary>
    private static void Pace(BenchClock clock, Action<string> send)
    {
        Thread.Sleep(80);
        double beganS = clock.NowS;
        var due = new StringBuilder();
        for (int i = 0; i < Lines; i++)
        {
            for (; clock.NowS < beganS + (i / 50.0); due.Clear())
            {
                send(due.ToString());
                Thread.Sleep(1);
            }

            due.Append(Line(i)).Append("\r\n");
        }

        send(due.ToString());
    }

    private static double MemoryMb()
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        return GC.GetTotalMemory(forceFullCollection: true) / 1e6;
    }
}
