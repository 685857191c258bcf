namespace Heatwright.DemoTruth.Campaign;

/// <summary>How well anybody could tell a finding from these readings who knew the law, every noise and every limit: the information bound for a linearised law,
/// with errors that lie evenly inside limits as further unknowns of known spread.</summary>
internal sealed class FullKnowledge
{
    private const int Draws = 1200;

    private readonly double[] truth;
    private readonly double[] spread;
    private readonly int limits;
    private readonly double[,] slopes;
    private readonly double[,] inverse;

    public FullKnowledge(double[] truth, Func<double[], double[]> shown, double[] spread, int limits)
    {
        (this.truth, this.spread, this.limits) = (truth, spread, limits);
        int count = truth.Length + limits;
        double[] at = [.. truth, .. new double[limits]];
        slopes = new double[spread.Length, count];
        for (int j = 0; j < count; j++)
        {
            double step = j < truth.Length ? 1e-5 * Math.Max(Math.Abs(truth[j]), 1e-9) : 1e-2;
            double[] up = [.. at], down = [.. at];
            up[j] += step;
            down[j] -= step;
            double[] high = shown(up), low = shown(down);
            for (int i = 0; i < spread.Length; i++)
            {
                slopes[i, j] = (high[i] - low[i]) / (2 * step) / spread[i];
            }
        }

        double[,] information = new double[count, count];
        for (int a = 0; a < count; a++)
        {
            for (int b = 0; b <= a; b++)
            {
                double sum = a == b && a >= truth.Length ? 3 : 0; // an even error between −1 and 1 has the variance 1/3
                for (int i = 0; i < spread.Length; i++)
                {
                    sum += slopes[i, a] * slopes[i, b];
                }

                information[a, b] = information[b, a] = sum;
            }
        }

        inverse = Inverse(information);
    }

    /// <summary>Half of the width that holds 95 of 100.</summary>
    public double Half(Func<double[], double> finding, Noise noise)
    {
        int count = truth.Length + limits;
        double[] pull = new double[count];
        for (int j = 0; j < truth.Length; j++)
        {
            double step = 1e-5 * Math.Max(Math.Abs(truth[j]), 1e-9);
            double[] up = [.. truth], down = [.. truth];
            up[j] += step;
            down[j] -= step;
            double slope = (finding(up) - finding(down)) / (2 * step);
            for (int k = 0; k < count; k++)
            {
                pull[k] += slope * inverse[j, k];
            }
        }

        // The best estimate is off by (pull · slopes) · noise of the readings and by 3 · pull · each limited error.
        double bell = 0;
        for (int i = 0; i < spread.Length; i++)
        {
            double by = 0;
            for (int k = 0; k < count; k++)
            {
                by += pull[k] * slopes[i, k];
            }

            bell += by * by;
        }

        double[] off = new double[Draws];
        for (int draw = 0; draw < Draws; draw++)
        {
            double sum = Math.Sqrt(bell) * noise.Bell();
            for (int k = truth.Length; k < count; k++)
            {
                sum += 3 * pull[k] * noise.Within(1);
            }

            off[draw] = Math.Abs(sum);
        }

        Array.Sort(off);
        return off[(int)(0.95 * Draws)];
    }

    /// <summary>By Gauss and Jordan, rows and columns brought to a diagonal of one first.</summary>
    private static double[,] Inverse(double[,] matrix)
    {
        int n = matrix.GetLength(0);
        double[] scale = [.. Enumerable.Range(0, n).Select(i => matrix[i, i] > 0 ? 1 / Math.Sqrt(matrix[i, i]) : 1)];
        double[,] a = new double[n, 2 * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                a[i, j] = matrix[i, j] * scale[i] * scale[j] * (i == j ? 1 + 1e-9 : 1); // numbers that nothing tells apart stay finite
            }

            a[i, i] = matrix[i, i] > 0 ? a[i, i] : 1; // a number that no reading depends on
            a[i, n + i] = 1;
        }

        for (int column = 0; column < n; column++)
        {
            int pivot = Enumerable.Range(column, n - column).MaxBy(row => Math.Abs(a[row, column]));
            for (int j = 0; j < 2 * n; j++)
            {
                (a[column, j], a[pivot, j]) = (a[pivot, j], a[column, j]);
            }

            double by = a[column, column];
            for (int j = column; j < 2 * n; j++)
            {
                a[column, j] /= by;
            }

            for (int row = 0; row < n; row++)
            {
                double times = a[row, column];
                for (int j = column; row != column && times != 0 && j < 2 * n; j++)
                {
                    a[row, j] -= times * a[column, j];
                }
            }
        }

        double[,] inverse = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                inverse[i, j] = a[i, n + j] * scale[i] * scale[j];
            }
        }

        return inverse;
    }
}
