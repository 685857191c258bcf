using System.Globalization;
using System.Runtime.CompilerServices;

namespace Heatwright.Physics;

/// <summary>Refuses inputs that no bench can give, naming the value and the range. Written once, so that every law refuses alike.</summary>
internal static class Impossible
{
    public static double UnlessPositive(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > 0 && double.IsFinite(value) ? value : throw Outside(name, value, unit, "more than 0");

    public static double IfNegative(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= 0 && double.IsFinite(value) ? value : throw Outside(name, value, unit, "0 or more");

    public static double UnlessFinite(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) ? value : throw Outside(name, value, unit, "a finite number");

    public static double Unless(double value, double low, double high, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= low && value <= high ? value : throw Outside(name, value, unit, string.Create(CultureInfo.InvariantCulture, $"{low} to {high}"));

    public static double UnlessFraction(double value, [CallerArgumentExpression(nameof(value))] string name = "") => Unless(value, 0, 1, "", name);

    public static double UnlessKelvin(double value, [CallerArgumentExpression(nameof(value))] string name = "") => UnlessPositive(value, "K", name);

    public static int UnlessCounted(int value, int least, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= least ? value : throw Outside(name, value, "", string.Create(CultureInfo.InvariantCulture, $"{least} or more"));

    public static ArgumentOutOfRangeException Outside(string name, double value, string unit, string range) =>
        new(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} = {value} {unit} cannot be: it must be {range} {unit}.").Replace(" .", ".", StringComparison.Ordinal));
}
