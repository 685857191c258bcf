using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>The stretch of its curves that each lane is on.</summary>
internal sealed class SwiftCurves(AssembledTool[] tools)
{
    private readonly double[][] bends = [.. tools.Select(tool => SwiftPlan.Bends(tool.Pack!.Cell))];
    private readonly double[] at = new double[8 * 8];

    /// <summary>Enters the stretch that holds a charge; its lower end.</summary>
    public double Enter(int lane, double charge)
    {
        double low = 0;
        double high = 1;
        foreach (double bend in bends[lane])
        {
            if (bend < charge)
            {
                low = bend;
            }
            else
            {
                high = bend;
                break;
            }
        }

        var cell = tools[lane].Pack!.Cell;
        double packOverCell = (double)tools[lane].Pack!.Series / tools[lane].Pack!.Parallel;
        Straight(0, cell.OpenV, tools[lane].Pack!.Series);
        Straight(1, cell.R0Ohm, packOverCell);
        Straight(2, cell.R1Ohm, 1);
        Straight(3, cell.R2Ohm, 1);
        return low;

        void Straight(int curve, ChargeCurve of, double factor)
        {
            double slope = factor * (of.At(high) - of.At(low)) / (high - low);
            at[(16 * curve) + lane] = (factor * of.At(low)) - (slope * low);
            at[(16 * curve) + 8 + lane] = slope;
        }
    }

    public void Give(ref SwiftCoefs c)
    {
        Lanes Of(int row) => Create<double>(at.AsSpan(8 * row, Lanes.Count));
        (c.OpenAt, c.OpenSlope, c.OhmAt, c.OhmSlope) = (Of(0), Of(1), Of(2), Of(3));
        (c.ShortAt, c.ShortSlope, c.LongAt, c.LongSlope) = (Of(4), Of(5), Of(6), Of(7));
        if (!c.Shape.UsesOhms)
        {
            // Then the pairs are driven by the amps of the pack.
            (c.ShortAt, c.ShortSlope) = (c.ShortTake * c.PerString * c.ShortAt, c.ShortTake * c.PerString * c.ShortSlope);
            (c.LongAt, c.LongSlope) = (c.LongTake * c.PerString * c.LongAt, c.LongTake * c.PerString * c.LongSlope);
        }
    }
}
