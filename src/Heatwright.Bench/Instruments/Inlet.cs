using System.Threading.Channels;

namespace Heatwright.Instruments;

/// <summary>Bytes that came together, and when.</summary>
internal readonly record struct Chunk(double AtS, byte[] Bytes);

/// <summary>Reads a wire without pause and stamps what comes, so that no wait of ours holds bytes back or stamps them late.</summary>
/// <remarks>A read is never broken off to wait for something else: bytes could be lost with it.</remarks>
internal sealed class Inlet : IAsyncDisposable
{
    /// <summary>Enough for a minute of the fastest usual port; then the wire itself has to wait.</summary>
    private const int MostChunks = 4096;

    private readonly Channel<Chunk> chunks = Channel.CreateBounded<Chunk>(new BoundedChannelOptions(MostChunks) { SingleReader = true, SingleWriter = true });
    private readonly CancellationTokenSource stop = new();
    private readonly BenchClock clock;
    private readonly Action<Frame>? record;
    private readonly Task pump;
    private Task<bool>? waiting;

    public Inlet(IWire wire, BenchClock clock, Action<Frame>? record)
    {
        (Wire, this.clock, this.record) = (wire, clock, record);
        pump = Task.Run(Pump);
    }

    public IWire Wire { get; }

    /// <summary>Why the wire ended; null while it has not, or when the other side simply closed.</summary>
    public Exception? Fault { get; private set; }

    /// <summary>Waits for the next bytes; null when none came in this time, or when the wire has ended.</summary>
    public async ValueTask<Chunk?> Next(double mostS, CancellationToken cancel)
    {
        if (chunks.Reader.TryRead(out var chunk))
        {
            return chunk;
        }

        waiting ??= chunks.Reader.WaitToReadAsync(CancellationToken.None).AsTask();
        if (!waiting.IsCompleted)
        {
            using var enough = CancellationTokenSource.CreateLinkedTokenSource(cancel);
            await Task.WhenAny(waiting, clock.Wait(mostS, enough.Token)).ConfigureAwait(false);
            await enough.CancelAsync().ConfigureAwait(false);
            cancel.ThrowIfCancellationRequested();
        }

        if (!waiting.IsCompleted)
        {
            return null;
        }

        Ended = !await waiting.ConfigureAwait(false);
        waiting = Ended ? waiting : null;
        return !Ended && chunks.Reader.TryRead(out chunk) ? chunk : null;
    }

    /// <summary>True once the wire has ended and all that came was taken.</summary>
    public bool Ended { get; private set; }

    /// <summary>Sends a text.</summary>
    public async Task Send(byte[] bytes, CancellationToken cancel)
    {
        record?.Invoke(new(clock.NowS, true, bytes));
        await Wire.Write(bytes, cancel).ConfigureAwait(false);
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync().ConfigureAwait(false);
        await Wire.DisposeAsync().ConfigureAwait(false);
        // A driver that never returns from a read must not hold up the end.
        await Task.WhenAny(pump, Task.Delay(1000, CancellationToken.None)).ConfigureAwait(false);
        stop.Dispose();
    }

    private async Task Pump()
    {
        byte[] buffer = new byte[16384];
        try
        {
            while (true)
            {
                int count = await Wire.Read(buffer, stop.Token).ConfigureAwait(false);
                if (count == 0)
                {
                    break;
                }

                var chunk = new Chunk(clock.NowS, buffer[..count]);
                record?.Invoke(new(chunk.AtS, false, chunk.Bytes));
                await chunks.Writer.WriteAsync(chunk, stop.Token).ConfigureAwait(false);
            }
        }
        catch (Exception error) when (error is OperationCanceledException || WireFaults.IsExpected(error))
        {
            Fault = error is OperationCanceledException ? null : error;
        }
        finally
        {
            chunks.Writer.TryComplete();
        }
    }
}
