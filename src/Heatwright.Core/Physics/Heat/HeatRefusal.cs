using System.Globalization;
using System.Runtime.CompilerServices;

namespace Heatwright.Physics;

/// <summary>Turns impossible inputs of the heat laws away: what, its value, its unit and the range it must lie in.</summary>
internal static class HeatRefusal
{
    public static double Positive(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > 0 && double.IsFinite(value) ? value : throw Refused(name, value, unit, "above 0", unit);

    public static double NotNegative(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= 0 && double.IsFinite(value) ? value : throw Refused(name, value, unit, "0 or more", unit);

    public static double Finite(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) ? value : throw Refused(name, value, unit, "a finite number of", unit);

    public static double Within(double value, double min, double max, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= min && value <= max ? value : throw Refused(name, value, unit, Invariant($"from {min:R} to {max:R}"), unit);

    public static double Above(double value, double limit, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > limit && double.IsFinite(value) ? value : throw Refused(name, value, unit, Invariant($"above {limit:R}"), unit);

    public static double Below(double value, double limit, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value < limit && double.IsFinite(value) ? value : throw Refused(name, value, unit, Invariant($"below {limit:R}"), unit);

    /// <summary>A temperature level in °C, returned in kelvin.</summary>
    public static double Kelvin(double celsius, [CallerArgumentExpression(nameof(celsius))] string name = "") =>
        celsius > -Constants.ZeroCelsiusK && double.IsFinite(celsius)
            ? celsius + Constants.ZeroCelsiusK
            : throw Refused(name, celsius, "°C", Invariant($"above {-Constants.ZeroCelsiusK:R}"), "°C");

    public static double Emissivity(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        Within(value, 0, 1, "", name);

    private static ArgumentOutOfRangeException Refused(string name, double value, string unit, string must, string mustUnit) =>
        new(name, value, Invariant($"{name} is {value:R} {unit}: it must be {must} {mustUnit}.").Replace(" :", ":", StringComparison.Ordinal)
            .Replace(" .", ".", StringComparison.Ordinal));

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
