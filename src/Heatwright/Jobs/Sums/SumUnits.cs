using Heatwright.Quantities;

namespace Heatwright.Jobs.Sums;

/// <summary>The unit in which a maker says a result of this size.</summary>
internal static class SumUnits
{
    /// <summary>Composed units that laws answer in, largest scale first; the law's own stands last where it is sometimes the best.</summary>
    private static readonly Dictionary<string, (string Symbol, double Factor)[]> Scales = new(StringComparer.Ordinal)
    {
        ["m²"] = [("m²", 1), ("cm²", 1e-4), ("mm²", 1e-6)],
        ["m³"] = [("m³", 1), ("cm³", 1e-6)],
        ["m²/s"] = [("m²/s", 1), ("mm²/s", 1e-6)],
        ["W/m²"] = [("kW/m²", 1e3), ("W/m²", 1)],
        ["J/kg"] = [("kJ/kg", 1e3), ("J/kg", 1)],
        ["J/m³"] = [("MJ/m³", 1e6), ("J/m³", 1)],
        ["Pa"] = [("MPa", 1e6), ("kPa", 1e3), ("Pa", 1)],
        ["Pa·s"] = [("Pa·s", 1), ("µPa·s", 1e-6)],
        ["Ω·m"] = [("Ω·m", 1), ("µΩ·m", 1e-6)],
        ["J/mol"] = [("kJ/mol", 1e3), ("J/mol", 1)],
        ["m/s"] = [("m/s", 1), ("mm/s", 1e-3)],
        ["kg/s"] = [("kg/s", 1), ("g/s", 1e-3), ("mg/s", 1e-6)],
        ["1/s"] = [("1/s", 1), ("1/min", 1 / 60.0), ("1/h", 1 / 3600.0)],
    };

    /// <summary>The unit for a value in the unit with this symbol.</summary>
    public static Unit For(string symbol, double value)
    {
        double size = Math.Abs(value);
        if (Scales.TryGetValue(symbol, out var scales) && size > 0)
        {
            var dimension = Own(symbol).Dimension;
            var (best, factor) = Array.Find(scales, scale => size >= 0.9999 * scale.Factor) is { Symbol: not null } found ? found : scales[^1];
            return Units.Find(best) is { } known && known.Dimension == dimension ? known : new Unit(best, dimension, factor);
        }

        var unit = Own(symbol);
        return (symbol, size) switch
        {
            (_, 0) => unit,
            ("s", >= 259_200) => Units.Day,
            ("s", >= 5400) => Units.Hour,
            ("s", >= 120) => Units.Minute,
            ("m", >= 1) => unit,
            ("m", >= 1e-4) => Units.Millimetre,
            ("C", >= 3600) => Units.AmpereHour,
            ("C", >= 3.6) => Units.MilliampereHour,
            ("J", >= 36_000) => Units.WattHour,
            _ => SiPrefix.For(unit, size),
        };
    }

    /// <summary>The unit with this symbol; one outside the table is kept by its symbol alone.</summary>
    public static Unit Own(string symbol) => Units.Find(symbol) ?? new Unit(symbol, UnitExpression.Read(symbol)?.Dimension ?? Dimension.None);

    /// <summary>A value in a law's unit as a maker reads it.</summary>
    public static string Shown(double value, double doubt, string symbol)
    {
        var own = Own(symbol);
        var unit = For(symbol, value);
        return Display.Rounded(unit.FromSi(own.ToSi(value)), doubt * own.Factor / unit.Factor, unit);
    }
}
