namespace Heatwright.Tests.Instruments;

/// <summary>The clock of this machine, running faster: waits that take seconds in life take fractions here. Nothing else is changed.</summary>
internal sealed class HurriedClock(double factor) : TimeProvider
{
    private readonly Lock gate = new();
    private long fromReal = System.GetTimestamp();
    private long fromHere;
    private double factor = factor;

    public override long TimestampFrequency => System.TimestampFrequency;

    public override long GetTimestamp()
    {
        lock (gate)
        {
            return fromHere + (long)((System.GetTimestamp() - fromReal) * factor);
        }
    }

    /// <summary>Goes on from here at another pace.</summary>
    public void Hurry(double faster)
    {
        lock (gate)
        {
            long real = System.GetTimestamp();
            (fromHere, fromReal, factor) = (fromHere + (long)((real - fromReal) * factor), real, faster);
        }
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        System.CreateTimer(callback, state, Shorter(dueTime), Shorter(period));

    private TimeSpan Shorter(TimeSpan span) => span <= TimeSpan.Zero ? span : TimeSpan.FromTicks(Math.Max(TimeSpan.TicksPerMillisecond, (long)(span.Ticks / Volatile.Read(ref factor))));
}
