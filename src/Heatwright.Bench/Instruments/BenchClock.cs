namespace Heatwright.Instruments;

/// <summary>One clock for all instruments of a session: seconds since it began, by a clock that is never set back.</summary>
/// <param name="time">Where time comes from.</param>
public sealed class BenchClock(TimeProvider time)
{
    private readonly long began = time.GetTimestamp();

    /// <summary>When the session began, for people.</summary>
    public DateTimeOffset Began { get; } = time.GetUtcNow();

    /// <summary>Where time comes from.</summary>
    public TimeProvider Time => time;

    /// <summary>Seconds since the session began.</summary>
    public double NowS => time.GetElapsedTime(began).TotalSeconds;

    /// <summary>Waits, by the same clock.</summary>
    internal Task Wait(double seconds, CancellationToken cancel) => Task.Delay(TimeSpan.FromSeconds(Math.Max(0, seconds)), time, cancel);
}
