namespace Heatwright.Verdicts;

/// <summary>How much of a result's spread each group of causes brings alone, and with everything it takes part in.</summary>
/// <param name="First">First-order index of each group.</param>
/// <param name="Total">Total index of each group.</param>
/// <param name="Mean">Mean of the result.</param>
/// <param name="Variance">Variance of the result; 0: nothing moves it, and all indices are 0.</param>
public sealed record SobolIndices(IReadOnlyList<double> First, IReadOnlyList<double> Total, double Mean, double Variance)
{
    /// <summary>The indices from two independent sets of draws and, for every group, the first set with that group taken from the second.</summary>
    /// <remarks>First order: mean of f_B·(f_AB − f_A) over V [saltelli-2010], table 2, (b); total: mean of (f_A − f_AB)² over 2V [jansen-1999]. The mean is
    /// taken off f before, which changes no index and takes away most of the scatter. Checked on the Ishigami function [ishigami-homma-1990].</remarks>
    /// <param name="fA">Result of each draw of the first set.</param>
    /// <param name="fB">Result of each draw of the second set.</param>
    /// <param name="fAB">One row a group: result of each draw of the first set with this group's causes from the second.</param>
    public static SobolIndices Of(double[] fA, double[] fB, double[][] fAB)
    {
        int count = fA.Length;
        double mean = (fA.Sum() + fB.Sum()) / (2 * count);
        double variance = (fA.Sum(f => (f - mean) * (f - mean)) + fB.Sum(f => (f - mean) * (f - mean))) / (2 * count);
        if (variance <= 1e-24 * Math.Max(1e-300, mean * mean))
        {
            return new(new double[fAB.Length], new double[fAB.Length], mean, 0);
        }

        double[] first = new double[fAB.Length], total = new double[fAB.Length];
        for (int group = 0; group < fAB.Length; group++)
        {
            double alone = 0, with = 0;
            for (int i = 0; i < count; i++)
            {
                double change = fAB[group][i] - fA[i];
                alone += (fB[i] - mean) * change;
                with += change * change;
            }

            first[group] = alone / (count * variance);
            total[group] = with / (2 * count * variance);
        }

        return new(first, total, mean, variance);
    }
}
