namespace Heatwright.Quantities;

/// <summary>A unit of measurement: SI value = value · <see cref="Factor"/> + <see cref="Offset"/>.</summary>
/// <param name="Symbol">As printed, for example mΩ or °C.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">SI units in one of this unit; positive.</param>
/// <param name="Offset">SI value of its zero; not zero only for temperature levels in °C.</param>
public sealed record Unit(string Symbol, Dimension Dimension, double Factor = 1, double Offset = 0)
{
    /// <summary>A value in this unit as an SI value.</summary>
    public double ToSi(double value) => (value * Factor) + Offset;

    /// <summary>An SI value in this unit.</summary>
    public double FromSi(double si) => (si - Offset) / Factor;

    /// <summary>True where values may be converted between the two: same dimension, and both levels or both differences.</summary>
    public bool Measures(Unit other) => Dimension == other.Dimension && IsLevel == other.IsLevel;

    /// <summary>True for temperatures that are levels (°C), false for differences (K) and all other units.</summary>
    public bool IsLevel => Offset != 0;

    /// <inheritdoc/>
    public override string ToString() => Symbol;
}
