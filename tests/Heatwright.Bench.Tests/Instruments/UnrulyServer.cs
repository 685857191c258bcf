using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Heatwright.Tests.Instruments;

/// <summary>An instrument on a loopback port that misbehaves on purpose, in one way a test.</summary>
internal sealed class UnrulyServer : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly List<string> asked = [];
    private readonly Task serving;
    private int clients;

    public UnrulyServer()
    {
        listener.Start();
        serving = Task.Run(Serve);
    }

    public string Address => $"tcp:127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}";

    /// <summary>Line end that it wants to see.</summary>
    public string Wants { get; init; } = "\n";

    /// <summary>Line end that it sends.</summary>
    public string Ends { get; init; } = "\n";

    /// <summary>Answers nothing before it has heard this.</summary>
    public string? Needs { get; init; }

    /// <summary>Sent on connection and after each answer.</summary>
    public string Prompt { get; init; } = "";

    /// <summary>Real time it takes to measure.</summary>
    public int SlowMs { get; init; }

    /// <summary>Sends answers byte by byte, with a pause between.</summary>
    public int SplitMs { get; init; } = -1;

    /// <summary>Says back what it hears.</summary>
    public bool Echoes { get; init; }

    /// <summary>Refuses a second client.</summary>
    public bool One { get; init; }

    /// <summary>Knows no *IDN?.</summary>
    public bool Nameless { get; init; }

    /// <summary>Bytes at the start of each connection.</summary>
    public byte[] Greeting { get; init; } = [];

    /// <summary>The answer to the n-th measurement; null: none.</summary>
    public Func<int, string?> Measures { get; init; } = n => $"+{n + 1}.25000000E+00";

    /// <summary>Hangs up after so many measurements of a connection.</summary>
    public int HangsUpAfter { get; init; } = int.MaxValue;

    public string[] Asked()
    {
        lock (asked)
        {
            return [.. asked];
        }
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await serving;
        stop.Dispose();
    }

    private async Task Serve()
    {
        var all = new List<Task>();
        try
        {
            while (true)
            {
                var client = await listener.AcceptTcpClientAsync(stop.Token);
                if (One && Volatile.Read(ref clients) > 0)
                {
                    client.Dispose();
                    continue;
                }

                Interlocked.Increment(ref clients);
                all.Add(Task.Run(() => Talk(client)));
            }
        }
        catch (Exception error) when (error is OperationCanceledException or SocketException or InvalidOperationException)
        {
        }

        await Task.WhenAll(all);
    }

    private int measured;

    private async Task Talk(TcpClient client)
    {
        using var one = client;
        try
        {
            one.NoDelay = true;
            var stream = one.GetStream();
            await stream.WriteAsync(Greeting, stop.Token);
            await stream.WriteAsync(Encoding.ASCII.GetBytes(Prompt), stop.Token);
            bool ready = Needs is null;
            int here = 0;
            var text = new StringBuilder();
            byte[] buffer = new byte[256];
            while (here < HangsUpAfter)
            {
                int count = await stream.ReadAsync(buffer, stop.Token);
                if (count == 0)
                {
                    return;
                }

                text.Append(Encoding.ASCII.GetString(buffer, 0, count));
                int end;
                while ((end = text.ToString().IndexOf(Wants, StringComparison.Ordinal)) >= 0)
                {
                    string line = text.ToString(0, end);
                    text.Remove(0, end + Wants.Length);
                    lock (asked)
                    {
                        asked.Add(line);
                    }

                    ready |= line == Needs;
                    bool measure = line is "READ?" or "MEAS:VOLT:DC?";
                    string? answer = !ready ? null : line == "*IDN?" ? (Nameless ? null : "Bench,7,1,0.1") : measure ? Measures(Interlocked.Increment(ref measured) - 1) : null;
                    here += measure && ready ? 1 : 0;
                    await Task.Delay(measure ? SlowMs : 0, stop.Token);
                    await Send(stream, (Echoes ? line + Ends : "") + (answer is null ? "" : answer + Ends) + Prompt);
                }
            }
        }
        catch (Exception error) when (error is OperationCanceledException or IOException or SocketException)
        {
        }
        finally
        {
            Interlocked.Decrement(ref clients);
        }
    }

    private async Task Send(NetworkStream stream, string text)
    {
        byte[] bytes = Encoding.Latin1.GetBytes(text);
        if (SplitMs < 0)
        {
            await stream.WriteAsync(bytes, stop.Token);
            return;
        }

        foreach (byte b in bytes)
        {
            await stream.WriteAsync(new[] { b }, stop.Token);
            await Task.Delay(SplitMs, stop.Token);
        }
    }
}
