using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>A value with doubt that a fit drew from runs.</summary>
/// <param name="Part">The part it is about.</param>
/// <param name="Quantity">A name from the parts' list of quantities.</param>
/// <param name="Value">The value.</param>
public sealed record Finding(PartId Part, string Quantity, Estimate Value);

/// <summary>Points, fitted curve and names for a picture of a trial; the arrays are as long as each other.</summary>
public sealed record FitPicture(string Title, string XName, string XUnit, string YName, string YUnit, double[] X, double[] Read, double[] Fitted)
{
    /// <summary>Fewer readings than this show no course: there is no picture of them.</summary>
    public const int Fewest = 3;

    /// <summary>Standard doubt of the fitted curve at each reading, from the doubt of the numbers fitted; not a number where a reading was left out; empty: not known.</summary>
    public double[] Doubt { get; init; } = [];

    /// <summary>True where there is a curve.</summary>
    public bool IsFitted => Fitted.Length == X.Length;

    /// <summary>The curve from left to right, whatever order the readings were taken in.</summary>
    public (double[] X, double[] Y) Curve()
    {
        int[] order = Order();
        return (At(order, X), At(order, Fitted));
    }

    /// <summary>Where the curve lies, 95 of 100: two standard doubts either way, from left to right; readings that were left out of the fit are passed over. Null: not known.</summary>
    public (double[] X, double[] Low, double[] High)? Band()
    {
        int[] kept = Doubt.Length == X.Length ? [.. Order().Where(i => double.IsFinite(Doubt[i]))] : [];
        return kept.Length < 2 ? null : (At(kept, X), [.. kept.Select(i => Fitted[i] - (2 * Doubt[i]))], [.. kept.Select(i => Fitted[i] + (2 * Doubt[i]))]);
    }

    private static double[] At(int[] places, double[] values) => [.. places.Select(i => values[i])];

    private int[] Order() => [.. Enumerable.Range(0, X.Length).OrderBy(i => X[i])];
}

/// <summary>What a part's trials told.</summary>
/// <param name="Part">The part.</param>
/// <param name="Findings">Values with doubt.</param>
/// <param name="Remarks">What the checks said of single readings.</param>
/// <param name="Problems">Why a trial gave no finding.</param>
public sealed record PartFindings(PartId Part, IReadOnlyList<Finding> Findings, IReadOnlyList<Remark> Remarks, IReadOnlyList<Problem> Problems)
{
    /// <summary>The cell model, for cells whose logs gave one.</summary>
    public CellFindings? Cell { get; init; }

    /// <summary>The thermal model, for working ends whose warm-up gave one.</summary>
    public WarmUpFindings? WarmUp { get; init; }

    /// <summary>Pictures of the fits.</summary>
    public IReadOnlyList<FitPicture> Pictures { get; init; } = [];

    /// <summary>The finding for a quantity, or null.</summary>
    public Estimate? Find(string quantity) => Findings.FirstOrDefault(finding => finding.Quantity == quantity)?.Value;
}
