namespace Heatwright.Plant;

/// <summary>Amps or watts of a load that plays back a record; of any other load, nothing.</summary>
/// <param name="load">The load.</param>
internal sealed class RecordedDrive(LoadModel load)
{
    private const double Instant = 1e-9;

    private readonly Schedule? record = (load as LoadModel.RecordedCurrent)?.Amps ?? (load as LoadModel.RecordedPower)?.Watts;
    private int at;

    public bool IsThere => record is not null;

    public double Now => record is null ? 0 : record.Values[at];

    /// <summary>When the value changes next, s.</summary>
    public double NextS => record is not null && at + 1 < record.Times.Length ? record.Times[at + 1] : double.PositiveInfinity;

    public bool IsOver(double now) => record is not null && now >= record.Times[^1] - Instant;

    public void Move(double now)
    {
        while (NextS <= now + Instant)
        {
            at++;
        }
    }
}
