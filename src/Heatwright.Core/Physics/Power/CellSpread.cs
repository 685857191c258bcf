using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>Unlike cells in one string: the weakest ends the run.</summary>
/// <remarks>Cell capacities taken as normal with relative spread c; a group of m in parallel has c/√m; the smallest of n groups then lies
/// e_n spreads below the mean (order statistics of the normal distribution). Typical c: 1 % one batch of a known maker, 3 to 5 % mixed lot,
/// 10 to 20 % salvaged (common practice, no source).</remarks>
public static class CellSpread
{
    /// <summary>How many spreads below the mean the smallest of n lies on average, sign removed.</summary>
    /// <remarks>By symmetry the largest of n lies as far above: e_n = n·∫ x·φ(x)·Φ(x)^(n−1) dx, summed by the
    /// midpoint rule, which converges faster than any power on such a smooth bell.</remarks>
    public static double ExpectedShortfall(int groups)
    {
        Impossible.UnlessCounted(groups, 1);
        const double step = 1.0 / 64;
        double sum = 0;
        for (int i = 0; i < 1280; i++)
        {
            double x = -10 + ((i + 0.5) * step);
            double density = Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI);
            sum += x * density * Math.Pow(Quantiles.NormalShare(x), groups - 1);
        }

        return groups * sum * step;
    }

    /// <summary>Mean capacity of the weakest group of a string: μ(1 − e_n·c/√m).</summary>
    [Law("weakest-cell", "packs", "Q·(1 − e_n·c/√(m))", Says = "capacity to expect of the weakest of several cells in series", Unit = "C", Source = "definition", Where = "order statistics of the normal distribution",
        Valid = "capacities spread as a normal distribution", Example = "capacity=2Ah series=3 parallel=1 spread=3%")]
    public static double MeanWeakestAs(
        [In("Q", "C", "mean capacity of one group", Name = "capacity", Min = 0)] double groupAs,
        [In("n", "", "groups in series", Min = 1, Max = 100)] int series,
        [In("m", "", "cells in a group", Min = 1, Max = 100, Default = 1)] int parallel,
        [In("c", "", "relative spread of one cell's capacity", Min = 0, Max = 0.5, SoftMax = 0.2)] double spread) =>
        Impossible.UnlessPositive(groupAs, "C") * (1 - (ExpectedShortfall(series) * GroupSpread(spread, parallel)));

    /// <summary>Capacity that the weakest group falls below with the given probability: z = Φ⁻¹(1 − (1 − p)^(1/n)).</summary>
    [Law("weakest-cell-at-risk", "packs", "Q·(1 + z·c/√m), z = Φ⁻¹(1 − (1 − p)^(1/n))", Says = "capacity that the weakest cell in series misses at a risk", Unit = "C", Source = "definition", Where = "order statistics of the normal distribution",
        Valid = "capacities spread as a normal distribution", Example = "capacity=2Ah series=3 parallel=1 spread=3% risk=10%")]
    public static double WeakestAtRiskAs(
        [In("Q", "C", "mean capacity of one group", Name = "capacity", Min = 0)] double groupAs,
        [In("n", "", "groups in series", Name = "series", Min = 1, Max = 100)] int series,
        [In("m", "", "cells in a group", Name = "parallel", Min = 1, Max = 100, Default = 1)] int parallel,
        [In("c", "", "relative spread of one cell's capacity", Name = "spread", Min = 0, Max = 0.5, SoftMax = 0.2)] double spread,
        [In("p", "", "risk of falling short", Name = "risk", Min = 1e-9, Max = 0.999999)] double risk)
    {
        if (!(risk is > 0 and < 1))
        {
            throw Impossible.Outside(nameof(risk), risk, "", "between 0 and 1");
        }

        double z = Quantiles.Normal(1 - Math.Pow(1 - risk, 1.0 / Impossible.UnlessCounted(series, 1)));
        return Impossible.UnlessPositive(groupAs, "C") * (1 + (z * GroupSpread(spread, parallel)));
    }

    private static double GroupSpread(double spread, int parallel) =>
        Impossible.Unless(spread, 0, 0.5, "") / Math.Sqrt(Impossible.UnlessCounted(parallel, 1));

    /// <summary>Charge a string of unlike cells gives before any one cell reaches its own cut-off.</summary>
    public static double GivenWithCellCutoffAs(OcvTable cell, ReadOnlySpan<double> capacitiesAs, double cellOhm, double currentA, double cellCutoffV)
    {
        double stopCharge = cell.ChargeAt(cellCutoffV + (Impossible.IfNegative(currentA, "A") * Impossible.IfNegative(cellOhm, "Ω")));
        double least = double.PositiveInfinity;
        foreach (double capacity in capacitiesAs)
        {
            least = Math.Min(least, Impossible.UnlessPositive(capacity, "C", nameof(capacitiesAs)) * (1 - stopCharge));
        }

        return least;
    }

    /// <summary>Charge the same string gives when only the sum of the voltages is watched: the weak cell is then driven below its cut-off.</summary>
    public static double GivenWithPackCutoffAs(OcvTable cell, ReadOnlySpan<double> capacitiesAs, double cellOhm, double currentA, double packCutoffV)
    {
        double sag = Impossible.IfNegative(currentA, "A") * Impossible.IfNegative(cellOhm, "Ω") * capacitiesAs.Length;
        double low = 0;
        double high = double.PositiveInfinity;
        foreach (double capacity in capacitiesAs)
        {
            high = Math.Min(high, Impossible.UnlessPositive(capacity, "C", nameof(capacitiesAs)));
        }

        // The sum of rising curves falls with the charge taken, so halving finds the one crossing; 80 halvings reach the last bit.
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            double sum = -sag;
            foreach (double capacity in capacitiesAs)
            {
                sum += cell.VoltsAt(1 - (middle / capacity));
            }

            (low, high) = sum > packCutoffV ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
