namespace Heatwright.Quantities;

/// <summary>What a unit measures, as powers of metre, kilogram, second, ampere and kelvin, and of money.</summary>
/// <remarks>Temperature (a level) and temperature difference share the kelvin; <see cref="Unit.Offset"/> tells them apart.</remarks>
public readonly record struct Dimension(int Metre, int Kilogram, int Second, int Ampere, int Kelvin, int Money = 0, int Light = 0)
{
    /// <summary>A pure number.</summary>
    public static readonly Dimension None = new(0, 0, 0, 0, 0);

    /// <summary>Dimension of a product.</summary>
    public static Dimension operator *(Dimension a, Dimension b) =>
        new(a.Metre + b.Metre, a.Kilogram + b.Kilogram, a.Second + b.Second, a.Ampere + b.Ampere, a.Kelvin + b.Kelvin, a.Money + b.Money, a.Light + b.Light);

    /// <summary>Dimension of a quotient.</summary>
    public static Dimension operator /(Dimension a, Dimension b) =>
        new(a.Metre - b.Metre, a.Kilogram - b.Kilogram, a.Second - b.Second, a.Ampere - b.Ampere, a.Kelvin - b.Kelvin, a.Money - b.Money, a.Light - b.Light);

    /// <summary>Same as the multiplication operator, for languages without operators.</summary>
    public Dimension Multiply(Dimension other) => this * other;

    /// <summary>Same as the division operator, for languages without operators.</summary>
    public Dimension Divide(Dimension other) => this / other;
}
