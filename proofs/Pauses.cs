using System.Diagnostics;

namespace Heatwright.Proofs;

/// <summary>Moments when the machine did not let this process run at all: what was measured across one tells of the machine, not of the program.</summary>
internal sealed class Pauses : IDisposable
{
    private static readonly TimeSpan Step = TimeSpan.FromMilliseconds(50);

    private static readonly TimeSpan Least = TimeSpan.FromMilliseconds(500);

    private readonly Lock gate = new();
    private readonly List<(long From, long To)> met = [];
    private readonly Thread watch;
    private volatile bool over;

    public Pauses()
    {
        watch = new Thread(Watch) { IsBackground = true, Priority = ThreadPriority.AboveNormal };
        watch.Start();
    }

    /// <summary>All of them together.</summary>
    public TimeSpan Total
    {
        get
        {
            lock (gate)
            {
                return met.Aggregate(TimeSpan.Zero, (sum, one) => sum + Stopwatch.GetElapsedTime(one.From, one.To));
            }
        }
    }

    /// <summary>True: one of them lies in this time.</summary>
    public bool Touch(long from, long to)
    {
        lock (gate)
        {
            return met.Any(one => one.From < to && one.To > from);
        }
    }

    public void Dispose()
    {
        over = true;
        watch.Join();
    }

    private void Watch()
    {
        while (!over)
        {
            long before = Stopwatch.GetTimestamp();
            Thread.Sleep(Step);
            long after = Stopwatch.GetTimestamp();
            if (Stopwatch.GetElapsedTime(before, after) > Least)
            {
                lock (gate)
                {
                    met.Add((before, after));
                }
            }
        }
    }
}
