namespace Heatwright.Plant;

/// <summary>A quantity of a cell over its charge left s, 0 (empty) to 1 (full). Outside that range the end value holds.</summary>
public abstract record ChargeCurve
{
    private ChargeCurve() { }

    /// <summary>The value at charge left s.</summary>
    public abstract double At(double s);

    /// <summary>The same curve times a factor.</summary>
    public abstract ChargeCurve Times(double factor);

    /// <summary>The same curve lifted by an offset.</summary>
    public abstract ChargeCurve Plus(double offset);

    /// <summary>One value at every charge.</summary>
    public sealed record Flat(double Value) : ChargeCurve
    {
        /// <inheritdoc/>
        public override ChargeCurve Plus(double offset) => new Flat(Value + offset);

        /// <inheritdoc/>
        public override double At(double s) => Value;

        /// <inheritdoc/>
        public override ChargeCurve Times(double factor) => new Flat(Value * factor);
    }

    /// <summary>Straight pieces between breakpoints.</summary>
    public sealed record Table : ChargeCurve
    {
        private readonly double[] charges;
        private readonly double[] values;

        /// <summary>Breakpoints with strictly rising charge.</summary>
        public Table(double[] charges, double[] values)
        {
            if (charges.Length < 2 || charges.Length != values.Length)
            {
                throw new ArgumentException($"A charge curve needs two or more pairs; it has {charges.Length} charges and {values.Length} values.", nameof(charges));
            }

            for (int i = 1; i < charges.Length; i++)
            {
                if (!(charges[i] > charges[i - 1]))
                {
                    throw new ArgumentOutOfRangeException(nameof(charges), charges[i], $"Charges of a curve must rise; point {i + 1} does not.");
                }
            }

            this.charges = [.. charges];
            this.values = [.. values];
        }

        /// <inheritdoc/>
        public override ChargeCurve Plus(double offset) => new Table(charges, [.. values.Select(value => value + offset)]);

        /// <summary>Breakpoints, charge left.</summary>
        public IReadOnlyList<double> Charges => charges;

        /// <summary>Values at the breakpoints.</summary>
        public IReadOnlyList<double> Values => values;

        /// <inheritdoc/>
        public override double At(double s)
        {
            if (s <= charges[0])
            {
                return values[0];
            }

            int last = charges.Length - 1;
            if (s >= charges[last])
            {
                return values[last];
            }

            int low = 0;
            int high = last;
            while (high - low > 1)
            {
                int middle = (low + high) >> 1;
                if (charges[middle] <= s)
                {
                    low = middle;
                }
                else
                {
                    high = middle;
                }
            }

            return values[low] + ((s - charges[low]) * (values[high] - values[low]) / (charges[high] - charges[low]));
        }

        /// <inheritdoc/>
        public override ChargeCurve Times(double factor) => new Table(charges, [.. values.Select(value => value * factor)]);
    }

    /// <summary>Polynomial plus one exponential: c0 + c1 s + c2 s² + c3 s³ + a·e^(−b s).</summary>
    public sealed record Formula(double C0, double C1, double C2, double C3, double A, double B) : ChargeCurve
    {
        /// <summary>Below this charge the value there holds: near empty a fitted formula may leave what can be.</summary>
        public double HeldBelow { get; init; }

        /// <inheritdoc/>
        public override ChargeCurve Plus(double offset) => this with { C0 = C0 + offset };

        /// <inheritdoc/>
        public override double At(double s)
        {
            s = Math.Clamp(s, HeldBelow, 1);
            return C0 + (s * (C1 + (s * (C2 + (s * C3))))) + (A * Math.Exp(-B * s));
        }

        /// <inheritdoc/>
        public override ChargeCurve Times(double factor) =>
            this with { C0 = C0 * factor, C1 = C1 * factor, C2 = C2 * factor, C3 = C3 * factor, A = A * factor };
    }

    /// <summary>One curve times another: a time constant is ohms times farads.</summary>
    public sealed record Product(ChargeCurve One, ChargeCurve Other) : ChargeCurve
    {
        /// <inheritdoc/>
        public override double At(double s) => One.At(s) * Other.At(s);

        /// <inheritdoc/>
        public override ChargeCurve Times(double factor) => new Product(One.Times(factor), Other);

        /// <inheritdoc/>
        public override ChargeCurve Plus(double offset) => throw new NotSupportedException("A product of curves cannot be lifted.");
    }
}
