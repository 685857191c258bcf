using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Turns what a fit found into estimates: its covariance becomes independent causes, and each shared instrument error is carried
/// through the whole fit by moving the readings and fitting again.</summary>
internal static class FitDoubts
{
    /// <summary>Doubts of p fitted values from the covariance of p parameters: one cause per column of its Cholesky factor.</summary>
    /// <param name="trial">Names the causes.</param>
    /// <param name="covariance">Covariance of the parameters.</param>
    /// <param name="slopes">Slope of each value on each parameter.</param>
    public static Doubts[] FromCovariance(TrialId trial, double[,] covariance, double[,] slopes)
    {
        int n = covariance.GetLength(0);
        double[,] factor = Factor(covariance, n);
        var doubts = new Doubts[slopes.GetLength(0)];
        for (int value = 0; value < doubts.Length; value++)
        {
            doubts[value] = Doubts.None;
            for (int column = 0; column < n; column++)
            {
                double push = 0;
                for (int row = 0; row < n; row++)
                {
                    push += slopes[value, row] * factor[row, column];
                }

                if (push != 0)
                {
                    doubts[value] = doubts[value].With(Cause.Normal($"{trial} scatter {column + 1}", CauseGroup.Trial), push);
                }
            }
        }

        return doubts;
    }

    /// <summary>Pushes of the shared errors of instruments: <paramref name="fit"/> is asked again with each gain and offset moved by one standard size.</summary>
    /// <param name="run">Whose columns are moved.</param>
    /// <param name="instruments">Their errors.</param>
    /// <param name="middle">Values of the fit on the readings as they are.</param>
    /// <param name="fit">Values of the fit when the named column is read as value·(1 + gain) + offset.</param>
    public static IEnumerable<(Cause Cause, double[] Push)> FromInstruments(
        Run run, InstrumentCauses instruments, double[] middle, Func<string, double, double, double[]> fit)
    {
        foreach (var column in run.Columns)
        {
            if (instruments.Gain(column) is var (gain, share))
            {
                yield return (gain, Difference(fit(column.Name, share, 0), middle));
            }

            if (instruments.Offset(column) is var (offset, si))
            {
                yield return (offset, Difference(fit(column.Name, 0, si), middle));
            }
        }
    }

    private static double[] Difference(double[] moved, double[] middle) => [.. moved.Zip(middle, (a, b) => a - b)];

    /// <summary>Lower triangle with its own transpose giving the matrix back; a direction without spread gets a column of zeros.</summary>
    private static double[,] Factor(double[,] matrix, int n)
    {
        double[,] lower = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = matrix[i, j];
                for (int k = 0; k < j; k++)
                {
                    sum -= lower[i, k] * lower[j, k];
                }

                lower[i, j] = i == j
                    ? Math.Sqrt(Math.Max(0, sum))
                    : lower[j, j] > 1e-12 * Math.Sqrt(Math.Abs(matrix[j, j])) && lower[j, j] > 0 ? sum / lower[j, j] : 0;
            }
        }

        return lower;
    }
}
