namespace Heatwright.Numerics;

/// <summary>Linear least squares whose coefficients may not be negative.</summary>
/// <remarks>Active set of Lawson and Hanson, Solving Least Squares Problems (1974), chapter 23; for a handful of coefficients.</remarks>
public static class NonNegativeLeastSquares
{
    /// <summary>Coefficients, none below zero, and the sum of squared residuals.</summary>
    public static (double[] Coefficients, double ResidualSumOfSquares) Fit(double[,] design, double[] readings)
    {
        int rows = design.GetLength(0), count = design.GetLength(1);
        double[][] columns = [.. Enumerable.Range(0, count).Select(j => Enumerable.Range(0, rows).Select(i => design[i, j]).ToArray())];
        var x = new double[count];
        var held = new HashSet<int>(Enumerable.Range(0, count).Where(j => HouseholderQr.Norm(columns[j]) > 0));
        var free = new List<int>();
        var refused = new HashSet<int>();
        for (int round = 0; round < 10 * (count + 1); round++)
        {
            double[] r = Residuals(columns, readings, x);
            int next = MostPromising(columns, r, held.Except(refused));
            if (next < 0)
            {
                break;
            }

            held.Remove(next);
            free.Add(next);
            double before = CompensatedSum.OfProducts(r, r);
            double[] tried = [.. x];
            List<int> freeTried = [.. free];
            bool solved = SolveInside(columns, readings, tried, freeTried);
            double[] after = Residuals(columns, readings, tried);
            if (!solved || tried[next] <= 0 || CompensatedSum.OfProducts(after, after) >= before)
            {
                // Its gain drowned in rounding, or it is a mixture of the others.
                free.Remove(next);
                held.Add(next);
                refused.Add(next);
                continue;
            }

            refused.Clear();
            x = tried;
            held.UnionWith(free.Except(freeTried));
            free = freeTried;
        }

        double[] left = Residuals(columns, readings, x);
        return (x, CompensatedSum.OfProducts(left, left));
    }

    private static double[] Residuals(double[][] columns, double[] readings, double[] x) =>
        [.. readings.Select((reading, i) => reading - x.Select((value, j) => value * columns[j][i]).Sum())];

    /// <summary>The held coefficient whose release lowers the sum fastest; −1 when none does.</summary>
    private static int MostPromising(double[][] columns, double[] r, IEnumerable<int> held)
    {
        double length = HouseholderQr.Norm(r);
        int best = -1;
        double steepest = 1e-13;
        foreach (int j in held.Order())
        {
            double cosine = CompensatedSum.OfProducts(columns[j], r) / (HouseholderQr.Norm(columns[j]) * Math.Max(length, double.Epsilon));
            if (cosine > steepest)
            {
                (best, steepest) = (j, cosine);
            }
        }

        return best;
    }

    /// <summary>Solves over the free coefficients; walks back to the border and holds what stands on it until all are positive.</summary>
    private static bool SolveInside(double[][] columns, double[] readings, double[] x, List<int> free)
    {
        while (free.Count > 0)
        {
            if (free.Count > readings.Length)
            {
                return false;
            }

            double[] solution;
            try
            {
                solution = LinearLeastSquares.Fit(Design(columns, free, readings.Length), readings).Coefficients;
            }
            catch (ArgumentException)
            {
                return false;
            }

            double share = 1;
            for (int k = 0; k < free.Count; k++)
            {
                if (solution[k] <= 0)
                {
                    share = Math.Min(share, x[free[k]] / (x[free[k]] - solution[k]));
                }
            }

            share = double.IsNaN(share) ? 0 : share;
            for (int k = 0; k < free.Count; k++)
            {
                x[free[k]] += share * (solution[k] - x[free[k]]);
            }

            if (share >= 1)
            {
                return true;
            }

            int[] stopped = [.. free.Where((j, k) => solution[k] <= 0 && x[j] <= 1e-14 * Math.Abs(solution[k]))];
            if (stopped.Length == 0)
            {
                return false;
            }

            foreach (int j in stopped)
            {
                x[j] = 0;
                free.Remove(j);
            }
        }

        return true;
    }

    private static double[,] Design(double[][] columns, List<int> free, int rows)
    {
        var design = new double[rows, free.Count];
        for (int k = 0; k < free.Count; k++)
        {
            for (int i = 0; i < rows; i++)
            {
                design[i, k] = columns[free[k]][i];
            }
        }

        return design;
    }
}
