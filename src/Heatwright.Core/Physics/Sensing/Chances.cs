using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>How likely a doubtful value meets a limit.</summary>
/// <remarks>Normal and Student's t distributions; guard band: [jcgm-106], from memory. Several limits at once are drawn together, never
/// multiplied: they share causes. Checked: ChancesTests.</remarks>
public static class Chances
{
    /// <summary>Chance that a value is at least the limit: Φ((μ − L)/u).</summary>
    [Law("chance-at-least", "readings", "P = Φ((μ − L)/u)", Says = "chance that a value is at least a limit", Source = "jcgm-106", Where = "conformity, normal distribution; from memory",
        Valid = "doubt about normal; one limit", Example = "value=62 doubt=4 limit=60")]
    public static double AtLeast(
        [In("μ", "", "best value", Name = "value")] double mean,
        [In("u", "", "standard doubt", Name = "doubt", Min = 1e-300)] double doubt,
        [In("L", "", "limit", Name = "limit")] double limit) => Quantiles.NormalShare((mean - limit) / doubt);

    /// <summary>The same from few readings: Student's t with the degrees of freedom of the doubt.</summary>
    public static double AtLeast(double mean, double doubt, double limit, double freedom) =>
        StudentT.ShareBelow((mean - limit) / doubt, freedom);

    /// <summary>Lower end of a one-sided interval of a coverage: accept where it still meets the limit.</summary>
    public static double GuardedLow(double mean, double doubt, double coverage = 0.95) => mean - (Quantiles.Normal(coverage) * doubt);

    /// <summary>Chance that the first of two independent values is larger.</summary>
    public static double FirstIsLarger(double first, double firstDoubt, double second, double secondDoubt) =>
        Quantiles.NormalShare((first - second) / Math.Sqrt((firstDoubt * firstDoubt) + (secondDoubt * secondDoubt)));
}
