namespace Heatwright.Instruments;

/// <summary>Recorded frames as an instrument: what came then comes again, with the same pauses.</summary>
/// <remarks>Where the record shows that something was sent first, the answer waits until something is sent, if this session asks at all.</remarks>
internal sealed class ReplayWire(SourceAddress.Replay address, BenchClock clock, bool asks) : IWire
{
    private readonly IEnumerator<Frame> frames = FrameFile.Read(File.ReadLines(address.File)).GetEnumerator();
    private readonly SemaphoreSlim sent = new(0);
    private double zeroS = clock.NowS;
    private Frame? current;
    private int taken;

    public async ValueTask<int> Read(Memory<byte> into, CancellationToken cancel)
    {
        if (await Due(cancel).ConfigureAwait(false) is not { } frame)
        {
            return 0;
        }

        int count = Math.Min(into.Length, frame.Bytes.Length - taken);
        frame.Bytes.AsMemory(taken, count).CopyTo(into);
        taken += count;
        current = taken < frame.Bytes.Length ? frame : null;
        return count;
    }

    public ValueTask Write(ReadOnlyMemory<byte> bytes, CancellationToken cancel)
    {
        sent.Release();
        return ValueTask.CompletedTask;
    }

    public ValueTask DisposeAsync()
    {
        frames.Dispose();
        return ValueTask.CompletedTask;
    }

    private async ValueTask<Frame?> Due(CancellationToken cancel)
    {
        if (current is not null)
        {
            return current;
        }

        while (frames.MoveNext())
        {
            var frame = frames.Current;
            if (frame.Sent && asks)
            {
                await sent.WaitAsync(cancel).ConfigureAwait(false);
                zeroS = clock.NowS - frame.AtS;
            }
            else if (!frame.Sent && frame.Bytes.Length > 0)
            {
                // A timer may ring a little early; a frame never comes before its time.
                for (double wait; (wait = zeroS + frame.AtS - clock.NowS) > 0;)
                {
                    await clock.Wait(wait, cancel).ConfigureAwait(false);
                }

                (current, taken) = (frame, 0);
                return frame;
            }
        }

        return null;
    }
}
