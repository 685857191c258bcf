using System.Runtime.CompilerServices;

namespace Heatwright.Plant;

/// <summary>Refuses values that cannot be, at birth, naming value and limit.</summary>
internal static class Guard
{
    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value > 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "Must be above 0.");

    public static double ZeroOrMore(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "Must be 0 or more.");

    public static double Share(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value is >= 0 and <= 1 ? value : throw new ArgumentOutOfRangeException(name, value, "Must lie between 0 and 1.");

    public static int Count(int value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= 1 ? value : throw new ArgumentOutOfRangeException(name, value, "Must be 1 or more.");
}
