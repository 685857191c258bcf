namespace Heatwright.Tests.Instruments;

/// <summary>The clock of this machine, running faster: waits that take seconds in life take fractions here. Nothing else is changed.</summary>
internal sealed class HurriedClock(double factor) : TimeProvider
{
    private readonly long began = System.GetTimestamp();

    public override long TimestampFrequency => System.TimestampFrequency;

    public override long GetTimestamp() => began + (long)((System.GetTimestamp() - began) * factor);

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        System.CreateTimer(callback, state, Shorter(dueTime), Shorter(period));

    private TimeSpan Shorter(TimeSpan span) => span <= TimeSpan.Zero ? span : TimeSpan.FromTicks(Math.Max(TimeSpan.TicksPerMillisecond, (long)(span.Ticks / factor)));
}
