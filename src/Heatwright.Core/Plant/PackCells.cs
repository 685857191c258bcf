namespace Heatwright.Plant;

/// <summary>The cells of a pack as the stepper walks them: alike ones together, different ones each by itself.</summary>
internal sealed class PackCells
{
    public PackCells(PackModel pack)
    {
        var groups = pack.Groups.Count > 0 ? pack.Groups : [new CellGroup([pack.Cell])];
        Members = [.. groups.SelectMany(group => group.Members)];
        bool alike = pack.Groups.Count == 0;
        Strings = alike ? pack.Parallel : 1;
        Times = alike ? pack.Series : 1;
        First = [.. groups.Select((_, i) => groups.Take(i).Sum(group => group.Members.Count)), Members.Length];
    }

    /// <summary>Distinct cells.</summary>
    public CellModel[] Members { get; }

    /// <summary>How many cells side by side each member stands for.</summary>
    public double Strings { get; }

    /// <summary>How many groups in series each group stands for.</summary>
    public double Times { get; }

    /// <summary>Place of each group's first member, and one past the last.</summary>
    public int[] First { get; }

    public int Groups => First.Length - 1;
}

/// <summary>What the electrics of one instant came to; kept and filled again, so that no step makes garbage.</summary>
internal sealed class Electrics(int members, int groups)
{
    public OnState On;
    public double OpenV;
    public double CellOhm;
    public double CellK;
    public readonly double[] MemberV = new double[members];
    public readonly double[] LongV = new double[members];

    /// <summary>Ohms of each cell's pairs: the long one's as solved, the short one's at the mean current that <see cref="PackFlow.Flow"/> last had.</summary>
    public readonly double[] LongOhm = new double[members], ShortOhm = new double[members];
    public readonly double[] MemberOhm = new double[members];
    public readonly double[] Factor = new double[members];
    public readonly double[] GroupV = new double[groups];
    public readonly double[] GroupOhm = new double[groups];

    /// <summary>Volts of the lowest group, one cell high, at an on-state current.</summary>
    public double LowestGroupV(double amps) => Extreme(amps, lowest: true);

    /// <summary>Volts of the highest group.</summary>
    public double HighestGroupV(double amps) => Extreme(amps, lowest: false);

    private double Extreme(double amps, bool lowest)
    {
        double found = GroupV[0] - (amps * GroupOhm[0]);
        for (int g = 1; g < GroupV.Length; g++)
        {
            double volts = GroupV[g] - (amps * GroupOhm[g]);
            found = lowest ? Math.Min(found, volts) : Math.Max(found, volts);
        }

        return found;
    }
}
