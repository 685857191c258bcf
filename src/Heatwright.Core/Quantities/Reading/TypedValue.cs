namespace Heatwright.Quantities;

/// <summary>What a maker typed, once it is understood: an amount, a range, a bound, a pack, a tolerance, or the word that there is no value.</summary>
public abstract record TypedValue
{
    private TypedValue() { }

    /// <summary>Reads what a maker typed into a field: values, a question with choices, or why it cannot be read.</summary>
    public static Answer Read(string text, Expect expect) => ValueReader.Read(text, expect);

    /// <summary>One value.</summary>
    /// <param name="Value">In <paramref name="Unit"/>, as typed.</param>
    /// <param name="Unit">As typed, or the field's own where none was typed.</param>
    public sealed record Amount(double Value, Unit Unit) : TypedValue
    {
        /// <summary>What stands behind ±, or what a rough mark stands for, in <see cref="Unit"/>; 0 where nothing was said.</summary>
        public double PlusMinus { get; init; }

        /// <summary>True where ± is a standard doubt, as this program prints it; false where it is a limit, as makers mean it.</summary>
        public bool IsStandard { get; init; }

        /// <summary>True where the maker marked the value as rough: ~, ?, ish, approx.</summary>
        public bool IsRough { get; init; }

        /// <summary>The condition typed with the value: cont, peak, max.</summary>
        public Condition Condition { get; init; }

        /// <summary>One step of the last typed digit, in <see cref="Unit"/>; 0 where it is not known.</summary>
        public double Step { get; init; }

        /// <summary>True where the unit was typed, false where the field lent it.</summary>
        public bool UnitWasTyped { get; init; }

        /// <summary>The value in SI units.</summary>
        public double Si => Unit.ToSi(Value);

        /// <summary>As an estimate: limits become a rectangular doubt (JCGM 100:2008, 4.3.7), a standard doubt a normal one.</summary>
        public Estimate AsEstimate(string causeId, CauseGroup group, Origin origin) => IsStandard
            ? new(Value, Unit, Doubts.None.With(Cause.Normal(causeId, group), PlusMinus), origin)
            : Estimate.Within(Value, PlusMinus, Unit, causeId, group, origin);
    }

    /// <summary>Anything between two limits.</summary>
    /// <param name="Low">Lower limit, in <paramref name="Unit"/>.</param>
    /// <param name="High">Upper limit, not below <paramref name="Low"/>.</param>
    /// <param name="Unit">Unit of both.</param>
    public sealed record Range(double Low, double High, Unit Unit) : TypedValue
    {
        /// <summary>True where the maker marked it as rough.</summary>
        public bool IsRough { get; init; }

        /// <summary>The condition typed with it.</summary>
        public Condition Condition { get; init; }

        /// <summary>The middle with a rectangular doubt that reaches both limits.</summary>
        public Estimate AsEstimate(string causeId, CauseGroup group, Origin origin) =>
            Estimate.Within((Low + High) / 2, (High - Low) / 2, Unit, causeId, group, origin);
    }

    /// <summary>Known from one side only.</summary>
    /// <param name="Value">The bound, in <paramref name="Unit"/>.</param>
    /// <param name="Unit">Its unit.</param>
    /// <param name="IsAbove">True where the value lies above the bound.</param>
    public sealed record Bound(double Value, Unit Unit, bool IsAbove) : TypedValue
    {
        /// <summary>The condition typed with it.</summary>
        public Condition Condition { get; init; }
    }

    /// <summary>There is no value, and why.</summary>
    public sealed record Missing(MissingReason Why) : TypedValue;

    /// <summary>Cells in series and in parallel.</summary>
    /// <param name="Series">Cells in series, at least 1.</param>
    /// <param name="Parallel">Strings in parallel, at least 1; 1 where nothing was said.</param>
    /// <param name="From">Which voltage the counts were read from, if any.</param>
    public sealed record Pack(int Series, int Parallel, PackVoltage From = PackVoltage.None) : TypedValue;

    /// <summary>A tolerance alone, as a share of the value it belongs to.</summary>
    public sealed record Tolerance(double Share) : TypedValue;

    /// <summary>True where both mean the same; the number of typed digits does not count.</summary>
    public bool Means(TypedValue other) => (this, other) switch
    {
        (Amount a, Amount b) => a.Unit.Measures(b.Unit) && Near(a.Si, b.Si) && Near(a.PlusMinus * a.Unit.Factor, b.PlusMinus * b.Unit.Factor)
            && a.IsRough == b.IsRough && a.Condition == b.Condition && (a.IsStandard == b.IsStandard || a.PlusMinus == 0),
        (Range a, Range b) => a.Unit.Measures(b.Unit) && Near(a.Unit.ToSi(a.Low), b.Unit.ToSi(b.Low))
            && Near(a.Unit.ToSi(a.High), b.Unit.ToSi(b.High)) && a.IsRough == b.IsRough && a.Condition == b.Condition,
        (Bound a, Bound b) => a.Unit.Measures(b.Unit) && Near(a.Unit.ToSi(a.Value), b.Unit.ToSi(b.Value)) && a.IsAbove == b.IsAbove && a.Condition == b.Condition,
        _ => Equals(other),
    };

    private static bool Near(double a, double b) => a == b || Math.Abs(a - b) <= 1e-12 * Math.Max(Math.Abs(a), Math.Abs(b));
}
