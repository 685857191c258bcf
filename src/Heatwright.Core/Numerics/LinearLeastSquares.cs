namespace Heatwright.Numerics;

/// <summary>Linear least squares by an orthogonal factor, with the result refined in doubled precision.</summary>
/// <remarks>Refinement of the augmented system after Björck, BIT 7 (1967) 257: residuals and coefficients are corrected together, so
/// that ill-conditioned polynomials keep nearly all digits. Checked: NIST/ITL StRD linear sets [nist-strd].</remarks>
public static class LinearLeastSquares
{
    /// <summary>Coefficients of the columns of a design that come closest to the readings.</summary>
    /// <param name="design">One row a reading, one column a coefficient.</param>
    /// <param name="readings">As many as rows.</param>
    /// <param name="doubts">Standard doubt of each reading; all alike when absent.</param>
    /// <exception cref="ArgumentException">The columns cannot be told apart, or there are fewer readings than columns.</exception>
    public static LinearFit Fit(double[,] design, double[] readings, double[]? doubts = null)
    {
        int rows = design.GetLength(0), count = design.GetLength(1);
        if (rows != readings.Length || (doubts is not null && doubts.Length != rows) || count == 0 || rows < count)
        {
            throw new ArgumentException($"{readings.Length} readings do not fit a design of {rows} rows and {count} columns.");
        }

        double[] b = [.. readings.Select((reading, i) => reading / (doubts?[i] ?? 1))];
        double[][] columns = [.. Enumerable.Range(0, count)
            .Select(j => Enumerable.Range(0, rows).Select(i => design[i, j] / (doubts?[i] ?? 1)).ToArray())];
        double[] scales = [.. columns.Select(column => PowerOfTwoNear(HouseholderQr.Norm(column)))];
        double[][] scaled = [.. columns.Select((column, j) => column.Select(value => value / scales[j]).ToArray())];
        var qr = new HouseholderQr([.. scaled.SelectMany(column => column)], rows, count);
        RefuseAlike(qr);

        double[] x = new double[count];
        double[] r = [.. b];
        Refine(qr, scaled, b, x, r);
        double[] coefficients = [.. x.Select((value, j) => value / scales[j])];
        return new LinearFit(
            coefficients, Covariance(qr, scales), r, CompensatedSum.OfProducts(r, r), rows - count, LeveragesOf(qr));
    }

    /// <summary>c₀ + c₁·x + … + c_degree·x^degree.</summary>
    public static LinearFit Polynomial(double[] x, double[] readings, int degree, double[]? doubts = null)
    {
        var design = new double[x.Length, degree + 1];
        for (int i = 0; i < x.Length; i++)
        {
            double power = 1;
            for (int j = 0; j <= degree; j++, power *= x[i])
            {
                design[i, j] = power;
            }
        }

        return Fit(design, readings, doubts);
    }

    /// <summary>How far each row pulls its own fit: the diagonal of the hat matrix of any design or Jacobian.</summary>
    public static double[] Leverages(double[,] design)
    {
        int rows = design.GetLength(0), count = design.GetLength(1);
        var columns = new double[rows * count];
        for (int j = 0; j < count; j++)
        {
            double[] column = [.. Enumerable.Range(0, rows).Select(i => design[i, j])];
            double length = HouseholderQr.Norm(column);
            for (int i = 0; i < rows; i++)
            {
                columns[(j * rows) + i] = length > 0 ? column[i] / length : 0;
            }
        }

        return LeveragesOf(new HouseholderQr(columns, rows, count));
    }

    /// <summary>Scaling by powers of two only, so that it rounds nothing.</summary>
    private static double PowerOfTwoNear(double norm) => norm > 0 ? Math.ScaleB(1, Math.ILogB(norm)) : 1;

    private static void RefuseAlike(HouseholderQr qr)
    {
        for (int k = 0; k < qr.Count; k++)
        {
            double length = HouseholderQr.Norm([.. Enumerable.Range(0, k + 1).Select(i => qr.R(i, k))]);
            if (Math.Abs(qr.R(k, k)) <= 1e-14 * length || length == 0)
            {
                throw new ArgumentException($"Column {k} of the design is a mixture of the columns before it: its coefficient is open.");
            }
        }
    }

    /// <summary>Solves r + A·x = b, Aᵀ·r = 0 and corrects both by their defects until these stop shrinking.</summary>
    private static void Refine(HouseholderQr qr, double[][] columns, double[] b, double[] x, double[] r)
    {
        int rows = qr.Rows, count = qr.Count;
        r.AsSpan().Clear();
        double last = double.PositiveInfinity;
        for (int round = 0; round < 10; round++)
        {
            double[] f = [.. Enumerable.Range(0, rows).Select(i => Defect(b[i], r[i], columns, x, i))];
            double[] h = [.. columns.Select(column => -CompensatedSum.OfProducts(column, r))];
            qr.TurnForward(f);
            qr.SolveLower(h);
            double[] correction = [.. Enumerable.Range(0, count).Select(k => f[k] - h[k])];
            qr.SolveUpper(correction);
            h.CopyTo(f, 0);
            qr.TurnBack(f);
            double size = HouseholderQr.Norm(correction);
            if (!(size < 0.5 * last))
            {
                return;
            }

            last = size;
            for (int j = 0; j < count; j++)
            {
                x[j] += correction[j];
            }

            for (int i = 0; i < rows; i++)
            {
                r[i] += f[i];
            }
        }
    }

    private static double Defect(double b, double r, double[][] columns, double[] x, int i)
    {
        var sum = new CompensatedSum();
        sum.Add(b);
        sum.Add(-r);
        for (int j = 0; j < x.Length; j++)
        {
            sum.AddProduct(-columns[j][i], x[j]);
        }

        return sum.Value;
    }

    private static double[,] Covariance(HouseholderQr qr, double[] scales)
    {
        int count = qr.Count;
        var covariance = new double[count, count];
        for (int k = 0; k < count; k++)
        {
            // Column k of (RᵀR)⁻¹.
            var unit = new double[count];
            unit[k] = 1;
            qr.SolveLower(unit);
            qr.SolveUpper(unit);
            for (int j = 0; j < count; j++)
            {
                covariance[j, k] = unit[j] / (scales[j] * scales[k]);
            }
        }

        return covariance;
    }

    private static double[] LeveragesOf(HouseholderQr qr)
    {
        var leverages = new double[qr.Rows];
        var unit = new double[qr.Rows];
        for (int k = 0; k < Math.Min(qr.Count, qr.Rows); k++)
        {
            unit.AsSpan().Clear();
            unit[k] = 1;
            qr.TurnBack(unit);
            for (int i = 0; i < unit.Length; i++)
            {
                leverages[i] += unit[i] * unit[i];
            }
        }

        return leverages;
    }
}
