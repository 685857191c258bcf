using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>A calibration curve T = Σ cᵢxⁱ with x = (count − centre)/scale, fitted to readings.</summary>
/// <remarks>Ordinary least squares; prediction interval t·√(vᵀCv + s²) for one new reading. AICc: [burnham-anderson-2002], from memory.
/// Checked: PolynomialCalibrationTests. The doubt of the reference probe itself is common to all readings and not in s: add it.</remarks>
public sealed class PolynomialCalibration
{
    private readonly Cholesky normal;
    private readonly double lowestCount;
    private readonly double highestCount;

    private PolynomialCalibration(double[] counts, double[] tC, int order, double centre, double scale)
    {
        (Order, Centre, Scale) = (order, centre, scale);
        double[][] rows = [.. counts.Select(Powers)];
        double[,] products = new double[order + 1, order + 1];
        double[] sides = new double[order + 1];
        for (int i = 0; i < rows.Length; i++)
        {
            for (int a = 0; a <= order; a++)
            {
                sides[a] += rows[i][a] * tC[i];
                for (int b = 0; b <= order; b++)
                {
                    products[a, b] += rows[i][a] * rows[i][b];
                }
            }
        }

        normal = new(products);
        Coefficients = normal.Solve(sides);
        double[] rest = [.. counts.Select((count, i) => tC[i] - AtC(count))];
        DegreesOfFreedom = counts.Length - order - 1;
        ResidualSum = rest.Sum(r => r * r);
        ScatterK = Math.Sqrt(ResidualSum / DegreesOfFreedom);
        // Each reading left out in turn, without refitting: its residual over one less its leverage.
        LeaveOneOutK = Math.Sqrt(rest.Select((r, i) => r / (1 - normal.Form(rows[i], rows[i]))).Average(r => r * r));
        int free = order + 2;
        InformationC = (counts.Length * Math.Log(ResidualSum / counts.Length)) + (2 * free) + (2.0 * free * (free + 1) / (counts.Length - free - 1));
        (lowestCount, highestCount) = (counts.Min(), counts.Max());
    }

    /// <summary>Highest power.</summary>
    public int Order { get; }

    /// <summary>Count at x = 0.</summary>
    public double Centre { get; }

    /// <summary>Counts per x.</summary>
    public double Scale { get; }

    /// <summary>c₀, c₁ …, °C.</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>Readings less coefficients.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Sum of squared residuals, K².</summary>
    public double ResidualSum { get; }

    /// <summary>Scatter of the readings about the curve, K.</summary>
    public double ScatterK { get; }

    /// <summary>Root mean square of the errors of each reading predicted from the others, K.</summary>
    public double LeaveOneOutK { get; }

    /// <summary>Corrected information criterion; lower is better, 2 and more lower is worth a further power.</summary>
    public double InformationC { get; }

    /// <summary>Standard errors of the coefficients.</summary>
    public IReadOnlyList<double> StandardErrors =>
    [
        .. Enumerable.Range(0, Order + 1).Select(i =>
        {
            double[] unit = new double[Order + 1];
            unit[i] = 1;
            return ScatterK * Math.Sqrt(normal.Form(unit, unit));
        }),
    ];

    /// <summary>Fits a curve of one order.</summary>
    public static PolynomialCalibration Fit(IReadOnlyList<double> counts, IReadOnlyList<double> tC, int order, double centre, double scale) =>
        counts.Count == tC.Count && counts.Count >= order + 4
            ? new([.. counts], [.. tC], order, centre, scale)
            : throw new ArgumentException($"A curve of order {order} needs at least {order + 4} pairs of count and temperature.", nameof(counts));

    /// <summary>Picks the order, at most 3: a further power must lower both the leave-one-out error and, by more than 2, the criterion,
    /// and the curve must rise over the whole converter.</summary>
    public static PolynomialCalibration Choose(IReadOnlyList<double> counts, IReadOnlyList<double> tC, double centre, double scale, double fullCount)
    {
        var best = Fit(counts, tC, 1, centre, scale);
        foreach (int order in (int[])[2, 3])
        {
            if (counts.Count < order + 4)
            {
                break;
            }

            var next = Fit(counts, tC, order, centre, scale);
            if (next.LeaveOneOutK < best.LeaveOneOutK && next.InformationC < best.InformationC - 2 && next.RisesTo(fullCount))
            {
                best = next;
            }
        }

        return best;
    }

    /// <summary>Temperature at a count, °C.</summary>
    public double AtC(double count)
    {
        double x = (count - Centre) / Scale, sum = 0;
        for (int i = Order; i >= 0; i--)
        {
            sum = (sum * x) + Coefficients[i];
        }

        return sum;
    }

    /// <summary>Half width of the interval for one new reading at a count, K.</summary>
    public double NewReadingK(double count, double coverage = 0.95) => Factor(coverage) * Math.Sqrt(Square(CurveDoubtK(count)) + Square(ScatterK));

    /// <summary>Half width of the interval for the curve itself at a count, K.</summary>
    public double CurveK(double count, double coverage = 0.95) => Factor(coverage) * CurveDoubtK(count);

    /// <summary>Standard doubt of the curve at a count, K.</summary>
    public double CurveDoubtK(double count)
    {
        double[] powers = Powers(count);
        return ScatterK * Math.Sqrt(normal.Form(powers, powers));
    }

    /// <summary>True up to the readings' ends and 5 % of their span beyond.</summary>
    public bool HoldsAt(double count)
    {
        double margin = 0.05 * (highestCount - lowestCount);
        return count >= lowestCount - margin && count <= highestCount + margin;
    }

    private bool RisesTo(double fullCount)
    {
        for (int step = 0; step <= 256; step++)
        {
            double x = ((fullCount * step / 256) - Centre) / Scale, slope = 0;
            for (int i = Order; i >= 1; i--)
            {
                slope = (slope * x) + (i * Coefficients[i]);
            }

            if (!(slope * Scale > 0))
            {
                return false;
            }
        }

        return true;
    }

    private double[] Powers(double count) => [.. Enumerable.Range(0, Order + 1).Select(i => Math.Pow((count - Centre) / Scale, i))];

    private double Factor(double coverage) => Quantiles.StudentT(0.5 + (coverage / 2), DegreesOfFreedom);

    private static double Square(double x) => x * x;
}
