namespace Heatwright.Numerics;

/// <summary>Residuals with the priors as further rows, their bounds, and their slopes.</summary>
internal sealed class LeastSquaresModel
{
    private readonly LeastSquaresProblem problem;
    private readonly int[] priors;
    private readonly DifferenceSlopes differences;
    private double[]? slopes;

    public LeastSquaresModel(LeastSquaresProblem problem)
    {
        this.problem = problem;
        Count = problem.Start.Length;
        priors = [.. Enumerable.Range(0, Count).Where(j => problem.PriorDoubt is { } doubt && double.IsFinite(doubt[j]))];
        Rows = problem.ResidualCount + priors.Length;
        Lower = problem.Lower ?? [.. Enumerable.Repeat(double.NegativeInfinity, Count)];
        Upper = problem.Upper ?? [.. Enumerable.Repeat(double.PositiveInfinity, Count)];
        Typical = [.. Enumerable.Range(0, Count).Select(TypicalSize)];
        differences = new DifferenceSlopes(this, problem.RelativeNoise);
    }

    public int Count { get; }

    /// <summary>Residuals and priors.</summary>
    public int Rows { get; }

    public double[] Lower { get; }

    public double[] Upper { get; }

    /// <summary>Size below which a parameter counts as near zero.</summary>
    public double[] Typical { get; }

    public bool SlopesByFormula => problem.Jacobian is not null;

    public int Evaluations { get; private set; }

    public bool Fixed(int j) => Lower[j] == Upper[j];

    public double Size(double[] p, int j) => Math.Max(Math.Abs(p[j]), Typical[j]);

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

        return AllFinite(rows);
    }

    /// <summary>Slopes by columns, each as long as <see cref="Rows"/>, zero for a fixed parameter; false when they cannot be had.</summary>
    public bool Slopes(double[] p, double[] at, double[] columns, SlopeGrade grade)
    {
        if (problem.Jacobian is { } formula)
        {
            return ByFormula(formula, p, columns);
        }

        for (int j = 0; j < Count; j++)
        {
            var column = columns.AsSpan(j * Rows, Rows);
            if (Fixed(j))
            {
                column.Clear();
            }
            else if (!differences.Column(p, at, j, column, grade))
            {
                return false;
            }
        }

        return true;
    }

    private bool ByFormula(JacobianFunction formula, double[] p, double[] columns)
    {
        slopes ??= new double[problem.ResidualCount * Count];
        slopes.AsSpan().Clear();
        formula(p, slopes);
        for (int j = 0; j < Count; j++)
        {
            var column = columns.AsSpan(j * Rows, Rows);
            if (Fixed(j))
            {
                column.Clear();
                continue;
            }

            column[problem.ResidualCount..].Clear();
            column = column[..problem.ResidualCount];
            for (int i = 0, at = j; i < column.Length; i++, at += Count)
            {
                column[i] = slopes[at];
            }
        }

        for (int k = 0; k < priors.Length; k++)
        {
            int j = priors[k];
            columns[(j * Rows) + problem.ResidualCount + k] = Fixed(j) ? 0 : 1 / problem.PriorDoubt![j];
        }

        return AllFinite(columns);
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

    private static bool AllFinite(double[] values) => double.IsFinite(Lanes.Largest(values));
}
