namespace Heatwright.Tests.Web.Near;

/// <summary>A clock that a test moves by hand.</summary>
internal sealed class HandClock : TimeProvider
{
    private DateTimeOffset now = new(2026, 1, 1, 9, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => now;

    public void Move(TimeSpan by) => now += by;
}
