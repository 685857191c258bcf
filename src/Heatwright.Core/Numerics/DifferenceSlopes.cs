namespace Heatwright.Numerics;

/// <summary>Slopes of a model by differences that stay within its bounds and turn back where it has no value.</summary>
internal sealed class DifferenceSlopes(LeastSquaresModel model, double relativeNoise)
{
    private readonly double[] shifted = new double[model.Count];
    private readonly double[] above = new double[model.Rows];
    private readonly double[] below = new double[model.Rows];
    private readonly double[] wide = new double[model.Rows];
    private readonly double[] narrow = new double[model.Rows];

    /// <summary>Slope of every row by parameter j at p, where the rows are <paramref name="at"/>.</summary>
    /// <param name="column">Filled in; a fine slope starts from the coarser one that it holds.</param>
    public bool Column(double[] p, double[] at, int j, Span<double> column, SlopeGrade grade)
    {
        double step = model.Size(p, j) * Math.Pow(relativeNoise, grade == SlopeGrade.Forward ? 0.5 : 1.0 / 3);
        if (grade == SlopeGrade.Forward)
        {
            return Forward(p, at, j, step, column) || Forward(p, at, j, -step, column)
                || Forward(p, at, j, step * 1e-3, column) || Forward(p, at, j, step * -1e-3, column);
        }

        // Beside a bound, or where one side has no value: three points on the other side.
        return (grade == SlopeGrade.Fine && Fine(p, at, j, column)) || Central(p, j, step, column)
            || OneSided(p, at, j, step, column) || OneSided(p, at, j, -step, column)
            || OneSided(p, at, j, step * 1e-3, column) || OneSided(p, at, j, step * -1e-3, column);
    }

    private bool Forward(double[] p, double[] at, int j, double step, Span<double> column)
    {
        if (!Shifted(p, j, step, above))
        {
            return false;
        }

        double used = shifted[j] - p[j];
        for (int i = 0; i < column.Length; i++)
        {
            column[i] = (above[i] - at[i]) / used;
        }

        return true;
    }

    private bool OneSided(double[] p, double[] at, int j, double step, Span<double> column)
    {
        if (!Shifted(p, j, step, below))
        {
            return false;
        }

        double used = shifted[j] - p[j];
        if (!Shifted(p, j, 2 * used, above))
        {
            return false;
        }

        for (int i = 0; i < column.Length; i++)
        {
            column[i] = ((4 * below[i]) - (3 * at[i]) - above[i]) / (2 * used);
        }

        return true;
    }

    private bool Central(double[] p, int j, double step, Span<double> column)
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
        for (int i = 0; i < column.Length; i++)
        {
            column[i] = (above[i] - below[i]) / width;
        }

        return true;
    }

    /// <summary>Two central differences, one with half the step, extrapolated; the step shrinks until their disagreement,
    /// whose square is about the error left, is small.</summary>
    private bool Fine(double[] p, double[] at, int j, Span<double> column)
    {
        double wanted = Math.Pow(relativeNoise, 0.35);
        double step = model.Size(p, j) * Math.Min(0.02, 1.3 * Math.Pow(relativeNoise, 0.2));
        // A parameter small beside its own error would lose the slope in the digits of large residuals: there the error sets the step.
        double slope = HouseholderQr.Norm(column);
        double error = slope > 0 ? HouseholderQr.Norm(at) / Math.Sqrt(at.Length) / slope : 0;
        step = double.IsFinite(error) ? Math.Max(step, 0.01 * error) : step;
        double best = double.PositiveInfinity;
        for (int attempt = 0; attempt < 5 && best > wanted; attempt++)
        {
            if (!Central(p, j, step, wide) || !Central(p, j, step / 2, narrow))
            {
                step /= 16;
                continue;
            }

            double off = Distance(wide, narrow) / Math.Max(HouseholderQr.Norm(narrow), double.Epsilon);
            if (off >= best)
            {
                break; // rounding has the upper hand already: keep the wider one
            }

            best = off;
            for (int i = 0; i < column.Length; i++)
            {
                column[i] = ((4 * narrow[i]) - wide[i]) / 3;
            }

            step *= Math.Clamp(Math.Sqrt(0.5 * wanted / off), 0.01, 0.5);
        }

        return best < double.PositiveInfinity;
    }

    /// <summary>Rows with one parameter moved; false outside the bounds or where the model has no value.</summary>
    private bool Shifted(double[] p, int j, double step, double[] rows)
    {
        p.CopyTo(shifted, 0);
        shifted[j] = p[j] + step;
        return shifted[j] >= model.Lower[j] && shifted[j] <= model.Upper[j] && shifted[j] != p[j] && model.Evaluate(shifted, rows);
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
}
