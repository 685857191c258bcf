namespace Heatwright.Quantities;

/// <summary>A value in one unit, what could make it wrong, and where it came from.</summary>
/// <param name="Value">In <paramref name="Unit"/>; finite.</param>
/// <param name="Unit">The unit it is stated in.</param>
/// <param name="Doubts">Signed pushes per cause, in the same unit (a difference for temperature levels).</param>
/// <param name="Origin">Where it came from.</param>
public sealed record Estimate(double Value, Unit Unit, Doubts Doubts, Origin Origin)
{
    /// <summary>Finite, in <see cref="Unit"/>.</summary>
    public double Value { get; } = double.IsFinite(Value)
        ? Value
        : throw new ArgumentOutOfRangeException(nameof(Value), Value, "An estimate is a finite number.");

    /// <summary>Standard doubt in <see cref="Unit"/>: root sum of squares over the causes.</summary>
    public double StandardDoubt => Doubts.Combined;

    /// <summary>The value in SI units.</summary>
    public double Si => Unit.ToSi(Value);

    /// <summary>Standard doubt in SI units.</summary>
    public double SiDoubt => StandardDoubt * Unit.Factor;

    /// <summary>An exact number: a count or a choice of the maker.</summary>
    public static Estimate Exact(double value, Unit unit, Origin origin) => new(value, unit, Doubts.None, origin);

    /// <summary>A number that lies between two limits, any place as likely as any other.</summary>
    /// <param name="halfWidth">Half the distance of the limits, in the same unit; 0 or more.</param>
    public static Estimate Within(double value, double halfWidth, Unit unit, string causeId, CauseGroup group, Origin origin) =>
        new(value, unit, halfWidth == 0 ? Doubts.None : Doubts.From(Cause.Rectangular(causeId, group), halfWidth / Math.Sqrt(3)), origin);

    /// <summary>The same number in another unit of the same kind.</summary>
    public Estimate In(Unit unit) => unit.Measures(Unit)
        ? new(unit.FromSi(Si), unit, Doubts.Times(Unit.Factor / unit.Factor), Origin)
        : throw new ArgumentException($"{Unit} cannot be shown in {unit}.", nameof(unit));

    /// <summary>The SI value in one draw of all causes.</summary>
    public double DrawnSi(Draw draw)
    {
        double value = Value;
        foreach (var push in Doubts.Pushes)
        {
            value += push.By * draw.Of(push.Cause);
        }

        return Unit.ToSi(value);
    }
}
