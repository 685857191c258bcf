namespace Heatwright.Numerics;

/// <summary>Nonlinear least squares with bounds, priors and the covariance of the result.</summary>
/// <remarks>Checked: whole fits against the certified values of NIST/ITL StRD [nist-strd].</remarks>
public static class LeastSquares
{
    /// <summary>The nearest minimum downhill of the start.</summary>
    public static LeastSquaresFit Fit(LeastSquaresProblem problem)
    {
        problem.Check();
        var model = new LeastSquaresModel(problem);
        var search = new TrustRegionSearch(problem, model);
        search.Run();
        return Report(problem, model, search);
    }

    /// <summary>Fits from the problem's own start and from each further one; the lowest sum of squares of those that settled wins.</summary>
    public static LeastSquaresFit FitFromSeveralStarts(LeastSquaresProblem problem, IEnumerable<double[]> furtherStarts)
    {
        var best = Fit(problem);
        foreach (double[] start in furtherStarts)
        {
            var fit = Fit(problem with { Start = start });
            if (Better(fit, best))
            {
                best = fit;
            }
        }

        return best;
    }

    /// <summary>Fits from the problem's own start and from further ones spread over the box between the bounds.</summary>
    /// <remarks>Spread evenly in the value, or in its logarithm where the bounds are positive and a factor of 10 or more apart.
    /// A parameter without both bounds keeps its start.</remarks>
    public static LeastSquaresFit FitFromSeveralStarts(LeastSquaresProblem problem, int furtherStarts, ulong seed) =>
        FitFromSeveralStarts(problem, Enumerable.Range(0, furtherStarts).Select(k => StartWithin(problem, k, seed)));

    private static bool Better(LeastSquaresFit fit, LeastSquaresFit best)
    {
        double sum = fit.ResidualSumOfSquares + fit.PriorSumOfSquares, least = best.ResidualSumOfSquares + best.PriorSumOfSquares;
        return fit.Converged != best.Converged ? fit.Converged : sum < least || double.IsNaN(least);
    }

    private static double[] StartWithin(LeastSquaresProblem problem, int k, ulong seed)
    {
        double[] start = [.. problem.Start];
        for (int j = 0; j < start.Length && problem.Lower is not null && problem.Upper is not null; j++)
        {
            double low = problem.Lower[j], high = problem.Upper[j];
            if (double.IsFinite(high - low))
            {
                double share = CounterRandom.Uniform(seed, (ulong)j, (ulong)k);
                start[j] = low > 0 && high >= 10 * low ? low * Math.Pow(high / low, share) : low + (share * (high - low));
            }
        }

        return start;
    }

    private static LeastSquaresFit Report(LeastSquaresProblem problem, LeastSquaresModel model, TrustRegionSearch search)
    {
        int n = model.Count, count = problem.ResidualCount;
        double[] p = search.Point.P;
        var movable = Enumerable.Range(0, n).Where(j => model.Lower[j] < model.Upper[j]).ToArray();
        var atBound = p.Select((value, j) => movable.Contains(j) && (value <= model.Lower[j] || value >= model.Upper[j])).ToArray();
        var open = new bool[n];
        double[,] covariance = Covariance(search.Point.Columns, model.Rows, n, [.. movable.Where(j => !atBound[j])], open);
        var jacobian = new double[count, n];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < n; j++)
            {
                jacobian[i, j] = search.Point.Columns[(j * model.Rows) + i];
            }
        }

        return new LeastSquaresFit(
            [.. p],
            covariance,
            SumOfSquares(search.Point.Rows.AsSpan(0, count)),
            model.Rows - movable.Length,
            search.Converged,
            search.Why,
            search.Iterations,
            search.Point.Rows[..count])
        {
            PriorSumOfSquares = SumOfSquares(search.Point.Rows.AsSpan(count)),
            AtBound = atBound,
            Undetermined = open,
            Evaluations = model.Evaluations,
            Jacobian = jacobian,
        };
    }

    /// <summary>(JᵀJ)⁻¹ over the given parameters, by the triangle of columns brought to length one.</summary>
    private static double[,] Covariance(double[] columns, int rows, int n, int[] index, bool[] open)
    {
        var covariance = new double[n, n];
        if (index.Length == 0)
        {
            return covariance;
        }

        var factor = new double[rows * index.Length];
        double[] lengths = [.. index.Select(j => HouseholderQr.Norm(columns.AsSpan(j * rows, rows)))];
        for (int k = 0; k < index.Length; k++)
        {
            if (lengths[k] > 0)
            {
                Lanes.Divide(columns.AsSpan(index[k] * rows, rows), lengths[k], factor.AsSpan(k * rows));
            }
        }

        var (inverse, openOnes) = new TriangleSvd(new HouseholderQr(factor, rows, index.Length)).InverseOfProduct();
        for (int a = 0; a < index.Length; a++)
        {
            open[index[a]] = openOnes[a];
            for (int b = 0; b < index.Length; b++)
            {
                covariance[index[a], index[b]] = openOnes[a] || openOnes[b]
                    ? (a == b ? double.PositiveInfinity : 0)
                    : inverse[a, b] / (lengths[a] * lengths[b]);
            }
        }

        return covariance;
    }

    private static double SumOfSquares(ReadOnlySpan<double> values) => CompensatedSum.OfProducts(values, values);
}
