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

    /// <summary>Chance from few readings: Student's t.</summary>
    [Law("chance-from-few", "readings", "P = t_ν((μ − L)/u)", Says = "chance that a value is at least a limit, from few readings", Source = "jcgm-106", Where = "conformity, Student's t; from memory",
        Valid = "one limit", Example = "value=62 doubt=4 limit=60 freedom=4")]
    public static double AtLeastFromFew(
        [In("μ", "", "best value", Name = "value")] double mean,
        [In("u", "", "standard doubt", Name = "doubt", Min = 1e-300)] double doubt,
        [In("L", "", "limit", Name = "limit")] double limit,
        [In("ν", "", "degrees of freedom", Name = "freedom", Min = 1, Max = 1e6)] double freedom) =>
        AtLeast(mean, doubt, limit, freedom);

    /// <summary>Lower end of a one-sided interval of a coverage: accept where it still meets the limit.</summary>
    [Law("guarded-value", "readings", "μ − z·u", Says = "value less its guard band", Source = "jcgm-106", Where = "guard band; from memory",
        Valid = "accept where this still meets the limit", Example = "value=62 doubt=4 coverage=95%")]
    public static double GuardedLow(
        [In("μ", "", "best value", Name = "value")] double mean,
        [In("u", "", "standard doubt", Name = "doubt", Min = 0)] double doubt,
        [In("p", "", "one-sided coverage", Name = "coverage", Min = 0.5, Max = 0.999999, Default = 0.95)] double coverage = 0.95) => mean - (Quantiles.Normal(coverage) * doubt);

    /// <summary>Chance that the first of two independent values is larger.</summary>
    [Law("chance-first-larger", "readings", "Φ((a − b)/√(u_a² + u_b²))", Says = "chance that the first of two values is the larger", Source = "jcgm-106", Where = "normal distributions; from memory",
        Valid = "independent doubts", Example = "first=62 first-doubt=4 second=58 second-doubt=5")]
    public static double FirstIsLarger(
        [In("a", "", "first", Name = "first")] double first,
        [In("u_a", "", "its standard doubt", Name = "first-doubt", Min = 1e-300)] double firstDoubt,
        [In("b", "", "second", Name = "second")] double second,
        [In("u_b", "", "its standard doubt", Name = "second-doubt", Min = 0)] double secondDoubt) =>
        Quantiles.NormalShare((first - second) / Math.Sqrt((firstDoubt * firstDoubt) + (secondDoubt * secondDoubt)));
}
