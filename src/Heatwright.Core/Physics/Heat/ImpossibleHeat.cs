using System.Globalization;
using System.Runtime.CompilerServices;

namespace Heatwright.Physics;

/// <summary>Refusals that only the heat laws need: levels of temperature, and one quantity that must lie above another.</summary>
internal static class ImpossibleHeat
{
    /// <summary>Refuses a value that is not above a limit, itself often a value given.</summary>
    public static double UnlessAbove(double value, double limit, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > limit && double.IsFinite(value) ? value : throw Impossible.Outside(name, value, unit, string.Create(CultureInfo.InvariantCulture, $"above {limit:R}"));

    /// <summary>A temperature level in °C, returned in kelvin; refused at and below absolute zero.</summary>
    public static double Kelvin(double celsius, [CallerArgumentExpression(nameof(celsius))] string name = "") =>
        UnlessAbove(celsius, -Constants.ZeroCelsiusK, "°C", name) + Constants.ZeroCelsiusK;
}
