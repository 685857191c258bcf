using System.Globalization;
using System.Threading.Channels;

namespace Heatwright.Instruments;

/// <summary>One instrument of a session: opens it, listens or asks, and opens it again when it went away.</summary>
internal sealed class Source(SourcePlan plan, BenchClock clock, ChannelWriter<Heard> writer)
{
    /// <summary>Waits between attempts to open.</summary>
    private static readonly double[] PausesS = [0.2, 0.5, 1, 2, 5];

    private readonly LineReader reader = new(plan.Name, plan.Answers);
    private readonly List<Heard> batch = [];
    private string lastRefusal = "";
    private int failures;

    public async Task Listen(CancellationToken cancel)
    {
        using var recorder = plan.Frames is { } path ? new FrameRecorder(path, clock) : null;
        try
        {
            while (!cancel.IsCancellationRequested && !await Once(recorder, cancel).ConfigureAwait(false))
            {
                await clock.Wait(PausesS[Math.Min(failures++, PausesS.Length - 1)], cancel).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            // The session was ended; that is how it ends.
        }

        reader.End(clock.NowS, batch);
        await Emit().ConfigureAwait(false);
    }

    /// <summary>One connection from opening to its end; true: there will be no other.</summary>
    private async Task<bool> Once(FrameRecorder? recorder, CancellationToken cancel)
    {
        bool replay = plan.Address is SourceAddress.Replay;
        try
        {
            await using var inlet = new Inlet(await Open(cancel).ConfigureAwait(false), clock, recorder is null ? null : recorder.Add);
            double openedS = clock.NowS;
            await Note(LinkState.Open, "Open.").ConfigureAwait(false);
            lastRefusal = "";
            var talk = new Conversation(plan, inlet, clock, reader, batch, Emit, () => failures = 0);
            string ended = await talk.Run(cancel).ConfigureAwait(false);
            reader.End(clock.NowS, batch);
            bool atOnce = plan.Address is SourceAddress.Tcp && inlet.Ended && !talk.HeardAny && clock.NowS - openedS < 1;
            string words = inlet.Fault is { } fault ? fault.Message
                : atOnce ? "It took the connection and closed it at once. Is another program connected? Most instruments serve one at a time."
                : ended;
            bool over = replay && (inlet.Fault is FrameFault || inlet.Ended);
            await Note(over && inlet.Fault is null ? LinkState.Ended : inlet.Ended ? LinkState.Lost : LinkState.Silent, words + (over ? "" : " It is tried again.")).ConfigureAwait(false);
            return over;
        }
        catch (Exception error) when (WireFaults.IsExpected(error))
        {
            reader.End(clock.NowS, batch);
            // The same refusal is told once, however often it is met.
            if (error.Message != lastRefusal)
            {
                lastRefusal = error.Message;
                await Note(LinkState.Refused, $"{error.Message}{(replay ? "" : " It is tried again.")}").ConfigureAwait(false);
            }

            return replay;
        }
    }

    private async Task<IWire> Open(CancellationToken cancel) => plan.Address switch
    {
        SourceAddress.Serial serial => SerialWire.Open(serial),
        SourceAddress.Tcp tcp => await TcpWire.Open(tcp, cancel).ConfigureAwait(false),
        SourceAddress.Replay file => new ReplayWire(file, clock, plan.Ask is not null),
        _ => throw new ArgumentOutOfRangeException(nameof(cancel), plan.Address.ToString(), "An address without its wire."),
    };

    private async Task Note(LinkState state, string words)
    {
        batch.Add(new Heard.Note(plan.Name, clock.NowS, state, words));
        await Emit().ConfigureAwait(false);
    }

    /// <summary>Passed on even while the session ends: what was heard is not lost.</summary>
    private async Task Emit()
    {
        foreach (var one in batch)
        {
            await writer.WriteAsync(one, CancellationToken.None).ConfigureAwait(false);
        }

        batch.Clear();
    }
}
