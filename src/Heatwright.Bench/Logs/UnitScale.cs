using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>Brings a value from the unit of its cell to the unit of its column.</summary>
internal static class UnitScale
{
    /// <summary>NaN where the two do not measure the same.</summary>
    public static double Convert(double value, Unit from, Unit to)
    {
        if (from == to)
        {
            return value;
        }

        if (from.Dimension != to.Dimension)
        {
            return double.NaN;
        }

        if (from.IsLevel || to.IsLevel)
        {
            return to.FromSi(from.ToSi(value));
        }

        // 950 mV is 0.95 V to the last digit only when divided by 1000, not when multiplied by 0.001.
        double ratio = from.Factor / to.Factor;
        double inverse = Math.Round(to.Factor / from.Factor);
        return ratio < 1 && Math.Abs((inverse * ratio) - 1) < 1e-12 ? value / inverse : value * (ratio > 1 && Math.Abs(ratio - Math.Round(ratio)) < 1e-6 ? Math.Round(ratio) : ratio);
    }

    /// <summary>The unit among these, or their kin, that has no prefix.</summary>
    public static Unit WithoutPrefix(IReadOnlyList<Unit> units) => units.FirstOrDefault(unit => unit.Factor == 1)
        ?? units.Select(unit => UnitWords.Find(unit.Symbol[1..])).FirstOrDefault(unit => unit is not null && unit.Dimension == units[0].Dimension)
        ?? units[0];
}
