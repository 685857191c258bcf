using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>Loss coefficients from readings: weighted least squares with none below zero.</summary>
/// <remarks>Every choice of which coefficients are zero is tried, and the one with the least squares and no negative value is taken: for three unknowns that
/// is the exact solution of the problem posed in [lawson-hanson-1974] chapter 23, and cannot stop at a wrong set. Three readings over a current range of 4:1
/// are the least; with two a1 = 0, with one a0 = a1 = 0 (common practice, no source).</remarks>
public static class ConverterLossFit
{
    /// <summary>Current range below which the three coefficients cannot be told apart well. Common practice, no source.</summary>
    public const double LeastRange = 4;

    /// <summary>Fits a0 + a1·I + a2·I² to losses.</summary>
    /// <param name="currentsA">Input currents (step-up) or output currents (step-down).</param>
    /// <param name="lossesW">Losses read.</param>
    /// <param name="doubtsW">Standard doubt of each; empty: all alike.</param>
    public static LossFit Fit(ReadOnlySpan<double> currentsA, ReadOnlySpan<double> lossesW, ReadOnlySpan<double> doubtsW = default)
    {
        int count = Impossible.UnlessCounted(currentsA.Length, 1, nameof(currentsA));
        var rows = new (double Amps, double Loss, double Weight)[count];
        (double least, double most) = (double.PositiveInfinity, 0);
        for (int i = 0; i < count; i++)
        {
            double weight = doubtsW.IsEmpty ? 1 : 1 / Impossible.UnlessPositive(doubtsW[i], "W", nameof(doubtsW));
            rows[i] = (Impossible.UnlessPositive(currentsA[i], "A", nameof(currentsA)), Impossible.UnlessFinite(lossesW[i], "W", nameof(lossesW)), weight);
            (least, most) = (Math.Min(least, currentsA[i]), Math.Max(most, currentsA[i]));
        }

        int free = count >= 3 ? 0b111 : count == 2 ? 0b101 : 0b100;
        double[] best = [0, 0, 0];
        double bestSquares = Squares(rows, best);
        for (int set = 1; set <= free; set++)
        {
            if ((set & ~free) == 0 && Solve(rows, set) is { } found && Squares(rows, found) < bestSquares)
            {
                (best, bestSquares) = (found, Squares(rows, found));
            }
        }

        double[] residuals = [.. rows.Select(row => row.Loss - Curve(best, row.Amps))];
        return new(new(best[0], best[1], best[2]), residuals, count, most / least);
    }

    private static double Curve(double[] c, double amps) => c[0] + (amps * (c[1] + (c[2] * amps)));

    private static double Squares((double Amps, double Loss, double Weight)[] rows, double[] c) =>
        rows.Sum(row => Math.Pow((row.Loss - Curve(c, row.Amps)) * row.Weight, 2));

    /// <summary>Least squares over the chosen powers; null when one comes out negative or the columns are not independent.</summary>
    private static double[]? Solve((double Amps, double Loss, double Weight)[] rows, int set)
    {
        int[] powers = [.. Enumerable.Range(0, 3).Where(power => (set & (1 << power)) != 0)];
        if (rows.Length < powers.Length)
        {
            return null;
        }

        double[] columns = [.. powers.SelectMany(power => rows.Select(row => Math.Pow(row.Amps, power) * row.Weight))];
        double[] lengths = [.. powers.Select((_, j) => HouseholderQr.Norm(columns.AsSpan(j * rows.Length, rows.Length)))];
        double[] side = [.. rows.Select(row => row.Loss * row.Weight)];
        var qr = new HouseholderQr(columns, rows.Length, powers.Length);
        if (powers.Where((_, j) => Math.Abs(qr.R(j, j)) <= 1e-10 * lengths[j]).Any())
        {
            return null;
        }

        qr.TurnForward(side);
        qr.SolveUpper(side);
        double[] c = [0, 0, 0];
        for (int j = 0; j < powers.Length; j++)
        {
            c[powers[j]] = side[j];
        }

        return c.Any(value => value < 0) ? null : c;
    }
}

/// <summary>Loss coefficients fitted to readings.</summary>
/// <param name="Loss">The coefficients.</param>
/// <param name="ResidualsW">Reading less curve, in the order of the readings.</param>
/// <param name="Readings">How many readings.</param>
/// <param name="Range">Largest over smallest current.</param>
public sealed record LossFit(LossCoefficients Loss, IReadOnlyList<double> ResidualsW, int Readings, double Range)
{
    /// <summary>Whether three coefficients could be told apart at all.</summary>
    public bool EnoughReadings => Readings >= 3 && Range >= ConverterLossFit.LeastRange;
}
