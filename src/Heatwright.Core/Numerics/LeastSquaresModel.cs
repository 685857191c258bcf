namespace Heatwright.Numerics;

/// <summary>How fine the slopes are wanted: coarse far from the minimum, fine for the last steps and the covariance.</summary>
internal enum SlopeGrade
{
    /// <summary>One more evaluation a parameter; error about the root of the noise.</summary>
    Forward,

    /// <summary>Two a parameter; error about noise^(2/3).</summary>
    Central,

    /// <summary>Four or more a parameter, the step found by trial; error about 1e-11.</summary>
    Fine,
}

/// <summary>Residuals with the priors as further rows, their bounds, and their slopes.</summary>
internal sealed class LeastSquaresModel
{
    private readonly LeastSquaresProblem problem;
    private readonly int[] priors;
    private readonly double[] shifted;
    private readonly double[][] trial;

    public LeastSquaresModel(LeastSquaresProblem problem)
    {
        this.problem = problem;
        Count = problem.Start.Length;
        priors = [.. Enumerable.Range(0, Count).Where(j => problem.PriorDoubt is { } doubt && double.IsFinite(doubt[j]))];
        Rows = problem.ResidualCount + priors.Length;
        shifted = new double[Count];
        trial = [new double[Rows], new double[Rows], new double[Rows], new double[Rows]];
        Lower = problem.Lower ?? [.. Enumerable.Repeat(double.NegativeInfinity, Count)];
        Upper = problem.Upper ?? [.. Enumerable.Repeat(double.PositiveInfinity, Count)];
        Typical = [.. Enumerable.Range(0, Count).Select(TypicalSize)];
    }

    public int Count { get; }

    /// <summary>Residuals and priors.</summary>
    public int Rows { get; }

    public double[] Lower { get; }

    public double[] Upper { get; }

    /// <summary>Size below which a parameter counts as near zero.</summary>
    public double[] Typical { get; }

    public int Evaluations { get; private set; }

    /// <summary>Fills in all rows; false when one of them is not a finite number.</summary>
    public bool Evaluate(double[] p, double[] rows)
    {
        problem.Cancellation.ThrowIfCancellationRequested();
        Evaluations++;
        problem.Residuals(p, rows.AsSpan(0, problem.ResidualCount));
        for (int k = 0; k < priors.Length; k++)
        {
            int j = priors[k];
            rows[problem.ResidualCount + k] = (p[j] - problem.PriorMean![j]) / problem.PriorDoubt![j];
        }

        foreach (double value in rows)
        {
            if (!double.IsFinite(value))
            {
                return false;
            }
        }

        return true;
    }

    public double Size(double[] p, int j) => Math.Max(Math.Abs(p[j]), Typical[j]);

    /// <summary>Slopes by columns, each as long as <see cref="Rows"/>; false when they cannot be had.</summary>
    public bool Slopes(double[] p, double[] at, double[] columns, SlopeGrade grade)
    {
        if (problem.Jacobian is { } byFormula)
        {
            return ByFormula(byFormula, p, columns);
        }

        for (int j = 0; j < Count; j++)
        {
            var column = columns.AsSpan(j * Rows, Rows);
            if (Lower[j] == Upper[j])
            {
                column.Clear();
            }
            else if (!Column(p, at, j, column, grade))
            {
                return false;
            }
        }

        return true;
    }

    private bool Column(double[] p, double[] at, int j, Span<double> column, SlopeGrade grade)
    {
        double step = Size(p, j) * Math.Pow(problem.RelativeNoise, grade == SlopeGrade.Forward ? 0.5 : 1.0 / 3);
        if (grade == SlopeGrade.Fine && FineColumn(p, j, column))
        {
            return true;
        }

        if (grade != SlopeGrade.Forward && CentralColumn(p, j, step, column, trial[0], trial[1]))
        {
            return true;
        }

        // Beside a bound, or where one side has no value: three points on one side.
        return OneSided(p, at, j, step, column, grade) || OneSided(p, at, j, -step, column, grade)
            || OneSided(p, at, j, step * 1e-3, column, grade) || OneSided(p, at, j, step * -1e-3, column, grade);
    }

    private bool OneSided(double[] p, double[] at, int j, double step, Span<double> column, SlopeGrade grade)
    {
        if (!Shifted(p, j, step, trial[0]))
        {
            return false;
        }

        double used = shifted[j] - p[j];
        if (grade == SlopeGrade.Forward)
        {
            for (int i = 0; i < Rows; i++)
            {
                column[i] = (trial[0][i] - at[i]) / used;
            }

            return true;
        }

        if (!Shifted(p, j, 2 * used, trial[1]))
        {
            return false;
        }

        for (int i = 0; i < Rows; i++)
        {
            column[i] = ((4 * trial[0][i]) - (3 * at[i]) - trial[1][i]) / (2 * used);
        }

        return true;
    }

    /// <summary>Residuals with one parameter moved; false outside the bounds or where the model has no value.</summary>
    private bool Shifted(double[] p, int j, double step, double[] rows)
    {
        p.CopyTo(shifted, 0);
        shifted[j] = p[j] + step;
        return shifted[j] >= Lower[j] && shifted[j] <= Upper[j] && shifted[j] != p[j] && Evaluate(shifted, rows);
    }

    private bool CentralColumn(double[] p, int j, double step, Span<double> column, double[] above, double[] below)
    {
        if (!Shifted(p, j, step, above))
        {
            return false;
        }

        double up = shifted[j];
        if (!Shifted(p, j, -step, below))
        {
            return false;
        }

        double width = up - shifted[j];
        for (int i = 0; i < Rows; i++)
        {
            column[i] = (above[i] - below[i]) / width;
        }

        return true;
    }

    /// <summary>Two central differences, one with half the step, extrapolated; the step shrinks until their disagreement,
    /// whose square is about the error left, is small.</summary>
    private bool FineColumn(double[] p, int j, Span<double> column)
    {
        double wanted = Math.Pow(problem.RelativeNoise, 0.35);
        double step = Size(p, j) * Math.Min(0.02, 1.3 * Math.Pow(problem.RelativeNoise, 0.2));
        double best = double.PositiveInfinity;
        double[] wide = trial[2], narrow = trial[3];
        for (int attempt = 0; attempt < 5; attempt++)
        {
            if (!CentralColumn(p, j, step, wide, trial[0], trial[1]) || !CentralColumn(p, j, step / 2, narrow, trial[0], trial[1]))
            {
                step /= 16;
                continue;
            }

            double off = Distance(wide, narrow) / Math.Max(HouseholderQr.Norm(narrow), double.Epsilon);
            if (off >= best)
            {
                break;
            }

            best = off;
            for (int i = 0; i < Rows; i++)
            {
                column[i] = ((4 * narrow[i]) - wide[i]) / 3;
            }

            if (off <= wanted)
            {
                break;
            }

            step *= Math.Clamp(Math.Sqrt(0.5 * wanted / off), 0.01, 0.5);
        }

        return best < double.PositiveInfinity;
    }

    private static double Distance(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }

        return Math.Sqrt(sum);
    }

    private bool ByFormula(JacobianFunction formula, double[] p, double[] columns)
    {
        var slopes = new double[problem.ResidualCount * Count];
        formula(p, slopes);
        for (int j = 0; j < Count; j++)
        {
            for (int i = 0; i < problem.ResidualCount; i++)
            {
                columns[(j * Rows) + i] = slopes[(i * Count) + j];
            }

            for (int k = 0; k < priors.Length; k++)
            {
                columns[(j * Rows) + problem.ResidualCount + k] = priors[k] == j ? 1 / problem.PriorDoubt![j] : 0;
            }

            if (Lower[j] == Upper[j])
            {
                columns.AsSpan(j * Rows, Rows).Clear();
            }
        }

        return slopes.All(double.IsFinite);
    }

    private double TypicalSize(int j)
    {
        if (problem.Scale is { } scale && scale[j] != 0 && double.IsFinite(scale[j]))
        {
            return Math.Abs(scale[j]);
        }

        // A start of zero says nothing of the size; the prior or the room between the bounds may.
        double[] hints = [1e-3 * Math.Abs(problem.Start[j]), problem.PriorDoubt?[j] ?? 0, 1e-3 * (Upper[j] - Lower[j]), 1];
        return hints.First(hint => hint > 0 && double.IsFinite(hint));
    }
}
