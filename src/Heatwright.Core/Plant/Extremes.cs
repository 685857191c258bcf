namespace Heatwright.Plant;

/// <summary>The highest and lowest of a run.</summary>
/// <param name="nodes">How many nodes the network has.</param>
internal sealed class Extremes(int nodes)
{
    private readonly double[] highestRise = [.. Enumerable.Repeat(double.NegativeInfinity, nodes)];

    /// <summary>Highest rise of each node above the air, K.</summary>
    public IReadOnlyList<double> HighestRise => highestRise;

    /// <summary>Lowest pack volts with the load on; infinite: it was never on.</summary>
    public double LowestV { get; private set; } = double.PositiveInfinity;

    /// <summary>Most amps of the pack, either way.</summary>
    public double HighestA { get; private set; }

    public void See(in OnState on)
    {
        if (on.Region is not (Region.LockedOut or Region.Collapsed))
        {
            LowestV = Math.Min(LowestV, on.TerminalV);
            HighestA = Math.Max(HighestA, Math.Abs(on.PackA));
        }
    }

    public void See(Stepper.State state)
    {
        for (int i = 0; i < highestRise.Length; i++)
        {
            highestRise[i] = Math.Max(highestRise[i], state.Rises[i]);
        }
    }
}
