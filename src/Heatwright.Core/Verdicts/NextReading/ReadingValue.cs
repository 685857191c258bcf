using Heatwright.Numerics;

namespace Heatwright.Verdicts;

/// <summary>What a reading is worth: by how much the chance of choosing wrong would drop, told from draws of everything at once.</summary>
/// <remarks>Expected value of partial information by regression on the draws: the chance that each choice is right is fitted as a quadratic of what the reading
/// would show, on one half of the draws, and the choice it advises is scored on the other half, so that chance patterns count for nothing.
/// The reading's own scatter is added to what it would show. Idea: value of sample information, [raiffa-schlaifer-1961].</remarks>
public sealed class ReadingValue
{
    private readonly double[][] right;

    /// <summary>From the draws.</summary>
    /// <param name="right">One row a choice, one column a draw: 1 where that choice is right in that draw, 0 where it is wrong. Building none is a choice too.</param>
    public ReadingValue(double[][] right)
    {
        this.right = right;
        double[] chances = [.. right.Select(row => row.Average())];
        Best = Array.IndexOf(chances, chances.Max());
        WrongNow = right[Best].Average(one => 1 - one); // five draws of a hundred are a twentieth, which 1 - 0.95 is not
    }

    /// <summary>The choice that is best now.</summary>
    public int Best { get; }

    /// <summary>Chance that it is wrong.</summary>
    public double WrongNow { get; }

    /// <summary>Expected drop of that chance when the reading is taken, from 0 to all of it.</summary>
    /// <param name="shown">One row a number that it shows, one column a draw, scatter included.</param>
    public double Drop(double[][] shown)
    {
        double[][] scaled = [.. shown.Where(row => Spread(row) > 0).Select(Standard)];
        if (scaled.Length == 0)
        {
            return 0;
        }

        double gained = 0;
        for (int half = 0; half < 2; half++)
        {
            int[] learn = [.. Enumerable.Range(0, right[0].Length).Where(i => i % 2 == half)];
            double[][] fits = [.. right.Select(row => Fit(scaled, row, learn))];
            int before = Enumerable.Range(0, right.Length).MaxBy(choice => learn.Sum(i => right[choice][i]));
            for (int i = 1 - half; i < right[0].Length; i += 2)
            {
                double[] terms = Terms(scaled, i);
                int after = Enumerable.Range(0, right.Length).MaxBy(choice => Dot(fits[choice], terms));
                gained += right[after][i] - right[before][i];
            }
        }

        // Each half is scored against the choice of the other, which may be worse than the best of both: more than there is cannot drop.
        return Math.Clamp(gained / right[0].Length, 0, WrongNow);
    }

    private static double Spread(double[] row) => Sample.StandardDeviation(row);

    private static double[] Standard(double[] row)
    {
        double mean = Sample.Mean(row), spread = Spread(row);
        return [.. row.Select(value => (value - mean) / spread)];
    }

    /// <summary>1, each number, its square, and products while they are few.</summary>
    private static double[] Terms(double[][] shown, int draw)
    {
        List<double> terms = [1];
        foreach (double[] row in shown)
        {
            terms.Add(row[draw]);
            terms.Add(row[draw] * row[draw]);
        }

        if (shown.Length <= 3)
        {
            for (int i = 0; i < shown.Length; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    terms.Add(shown[i][draw] * shown[j][draw]);
                }
            }
        }

        return [.. terms];
    }

    /// <summary>Least squares with a touch of ridge, which keeps alike columns solvable.</summary>
    private static double[] Fit(double[][] shown, double[] row, int[] learn)
    {
        int count = Terms(shown, 0).Length;
        double[,] normal = new double[count, count];
        double[] at = new double[count];
        foreach (int draw in learn)
        {
            double[] terms = Terms(shown, draw);
            for (int i = 0; i < count; i++)
            {
                at[i] += terms[i] * row[draw];
                for (int j = 0; j < count; j++)
                {
                    normal[i, j] += terms[i] * terms[j];
                }
            }
        }

        for (int i = 0; i < count; i++)
        {
            normal[i, i] += 1e-6 * learn.Length;
        }

        return new Cholesky(normal).Solve(at);
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
