using System.Globalization;
using Heatwright.Instruments;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>What a session of listening is to do.</summary>
/// <param name="Plans">The instruments.</param>
public sealed record ListenPlan(IReadOnlyList<SourcePlan> Plans)
{
    /// <summary>Ends by itself after so many seconds; infinity: when it is stopped.</summary>
    public double Seconds { get; init; } = double.PositiveInfinity;

    /// <summary>Ends by itself after so many lines; null: when it is stopped.</summary>
    public long? Lines { get; init; }
}

/// <summary>How a session ended.</summary>
/// <param name="Lines">Lines of readings from each instrument.</param>
/// <param name="Unread">Lines without a reading.</param>
/// <param name="Seconds">How long it was.</param>
public sealed record Listened(IReadOnlyDictionary<string, long> Lines, long Unread, double Seconds);

/// <summary>Something that takes what is heard: a table, a study, a page.</summary>
public interface IHeardTaker
{
    /// <summary>Takes one thing heard; null where all is well, else why it has to end.</summary>
    Problem? Take(Heard heard);

    /// <summary>Called about four times a second, and at the end: what was gathered is put down now.</summary>
    Problem? Settle(bool last);
}

/// <summary>Listens to instruments on one clock and gives what is heard to those who take it.</summary>
public static class Listening
{
    private const double SettleS = 0.25;

    /// <summary>Listens until it is stopped, until every recording is at its end, or until the plan says so.</summary>
    public static async Task<Checked<Listened>> Run(ListenPlan plan, BenchClock clock, IReadOnlyList<IHeardTaker> takers, CancellationToken cancel)
    {
        if (Listener.Check(plan.Plans) is { Count: > 0 } problems)
        {
            return new(problems);
        }

        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        var lines = plan.Plans.ToDictionary(one => one.Name, _ => 0L, StringComparer.Ordinal);
        long unread = 0;
        double settledS = clock.NowS;
        List<Problem> faults = [];
        var heard = Listener.Begin(plan.Plans, clock, stop.Token);
        Task<bool>? more = null;
        while (true)
        {
            more ??= heard.WaitToReadAsync(CancellationToken.None).AsTask();
            if (!more.IsCompleted)
            {
                await Task.WhenAny(more, Task.Delay(TimeSpan.FromSeconds(SettleS), CancellationToken.None)).ConfigureAwait(false);
            }

            while (heard.TryRead(out var one))
            {
                if (one is Heard.Line && plan.Lines is { } most && lines.Values.Sum() >= most)
                {
                    continue;
                }

                if (one is Heard.Line)
                {
                    lines[one.Source]++;
                }

                unread += one is Heard.Unread ? 1 : 0;
                faults.AddRange(takers.Select(taker => taker.Take(one)).OfType<Problem>());
                if (clock.NowS - settledS >= SettleS)
                {
                    break;
                }
            }

            if (clock.NowS - settledS >= SettleS)
            {
                settledS = clock.NowS;
                faults.AddRange(takers.Select(taker => taker.Settle(last: false)).OfType<Problem>());
            }

            if (faults.Count > 0 || clock.NowS >= plan.Seconds || (plan.Lines is { } wanted && lines.Values.Sum() >= wanted))
            {
                await stop.CancelAsync().ConfigureAwait(false);
            }

            if (more.IsCompleted)
            {
                if (!await more.ConfigureAwait(false))
                {
                    break;
                }

                more = null;
            }
        }

        faults.AddRange(takers.Select(taker => taker.Settle(last: true)).OfType<Problem>());
        return faults.Count > 0 ? new([.. faults.Distinct()]) : new(new Listened(lines, unread, clock.NowS));
    }
}
