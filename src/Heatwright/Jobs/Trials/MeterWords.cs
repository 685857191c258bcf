using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>What a meter promises, in words.</summary>
public static class MeterWords
{
    /// <summary>'±(0.5 % + 0.002 V), steps of 0.001 V'; what is nothing is left out.</summary>
    /// <param name="spec">One range.</param>
    /// <param name="symbol">How its unit is shown.</param>
    public static string Promise(InstrumentSpec spec, string symbol)
    {
        ArgumentNullException.ThrowIfNull(spec);
        string share = $"{Display.Significant(spec.Percent, 3)} %", offset = $"{Display.Significant(spec.Offset, 3)} {symbol}";
        string within = (spec.Percent > 0, spec.Offset > 0) switch
        {
            (true, true) => $"±({share} + {offset})",
            (true, false) => $"±{share}",
            (false, true) => $"±{offset}",
            _ => "exact",
        };
        return within + (spec.Resolution > 0 ? $", steps of {Display.Significant(spec.Resolution, 3)} {symbol}" : "");
    }
}
