using System.Collections.Frozen;

namespace Heatwright.Quantities;

/// <summary>The units that a maker meets on the bench. Values in code are SI; these stand at the edges.</summary>
public static class Units
{
    /// <summary>°C at 0 K on the other side: T[K] = t[°C] + 273.15, by definition of the Celsius scale (SI brochure, 9th ed., 2.3.1).</summary>
    public const double ZeroCelsiusK = 273.15;

    private static readonly Dimension Length = new(1, 0, 0, 0, 0);
    private static readonly Dimension Mass = new(0, 1, 0, 0, 0);
    private static readonly Dimension Time = new(0, 0, 1, 0, 0);
    private static readonly Dimension Current = new(0, 0, 0, 1, 0);
    private static readonly Dimension Heat = new(0, 0, 0, 0, 1);
    private static readonly Dimension Power = new(2, 1, -3, 0, 0);
    private static readonly Dimension Volts = Power / Current;
    private static readonly Dimension Resistance = Volts / Current;
    private static readonly Dimension Energy = Power * Time;
    private static readonly Dimension Charge = Current * Time;

    /// <summary>A pure number.</summary>
    public static readonly Unit One = new("", Dimension.None);
    /// <summary>Hundredths.</summary>
    public static readonly Unit Percent = new("%", Dimension.None, 0.01);
    /// <summary>Volt.</summary>
    public static readonly Unit Volt = new("V", Volts);
    /// <summary>Millivolt.</summary>
    public static readonly Unit Millivolt = new("mV", Volts, 1e-3);
    /// <summary>Ampere.</summary>
    public static readonly Unit Ampere = new("A", Current);
    /// <summary>Milliampere.</summary>
    public static readonly Unit Milliampere = new("mA", Current, 1e-3);
    /// <summary>Ohm.</summary>
    public static readonly Unit Ohm = new("Ω", Resistance);
    /// <summary>Milliohm.</summary>
    public static readonly Unit Milliohm = new("mΩ", Resistance, 1e-3);
    /// <summary>Watt.</summary>
    public static readonly Unit Watt = new("W", Power);
    /// <summary>Joule.</summary>
    public static readonly Unit Joule = new("J", Energy);
    /// <summary>Watt-hour.</summary>
    public static readonly Unit WattHour = new("Wh", Energy, 3600);
    /// <summary>Ampere-hour.</summary>
    public static readonly Unit AmpereHour = new("Ah", Charge, 3600);
    /// <summary>Milliampere-hour.</summary>
    public static readonly Unit MilliampereHour = new("mAh", Charge, 3.6);
    /// <summary>Coulomb.</summary>
    public static readonly Unit Coulomb = new("C", Charge);
    /// <summary>Second.</summary>
    public static readonly Unit Second = new("s", Time);
    /// <summary>Minute.</summary>
    public static readonly Unit Minute = new("min", Time, 60);
    /// <summary>Hour.</summary>
    public static readonly Unit Hour = new("h", Time, 3600);
    /// <summary>Temperature on the Celsius scale, a level.</summary>
    public static readonly Unit Celsius = new("°C", Heat, 1, ZeroCelsiusK);
    /// <summary>Kelvin, a difference of temperatures.</summary>
    public static readonly Unit Kelvin = new("K", Heat);
    /// <summary>Heat capacity.</summary>
    public static readonly Unit JoulePerKelvin = new("J/K", Energy / Heat);
    /// <summary>Thermal conductance.</summary>
    public static readonly Unit WattPerKelvin = new("W/K", Power / Heat);
    /// <summary>Thermal resistance.</summary>
    public static readonly Unit KelvinPerWatt = new("K/W", Heat / Power);
    /// <summary>Radiating strength: emissivity times area, in square metres.</summary>
    public static readonly Unit SquareMetre = new("m²", Length * Length);
    /// <summary>Square centimetre.</summary>
    public static readonly Unit SquareCentimetre = new("cm²", Length * Length, 1e-4);
    /// <summary>Temperature coefficient of resistance.</summary>
    public static readonly Unit PerKelvin = new("1/K", Dimension.None / Heat);
    /// <summary>Metre.</summary>
    public static readonly Unit Metre = new("m", Length);
    /// <summary>Millimetre.</summary>
    public static readonly Unit Millimetre = new("mm", Length, 1e-3);
    /// <summary>Kilogram.</summary>
    public static readonly Unit Kilogram = new("kg", Mass);
    /// <summary>Gram.</summary>
    public static readonly Unit Gram = new("g", Mass, 1e-3);
    /// <summary>Activation energy per mole.</summary>
    public static readonly Unit KilojoulePerMole = new("kJ/mol", Energy, 1e3);
    /// <summary>Money, in the maker's own currency.</summary>
    public static readonly Unit Money = new("money", new Dimension(0, 0, 0, 0, 0, 1));

    private static readonly FrozenDictionary<string, Unit> BySymbol = new[]
    {
        One, Percent, Volt, Millivolt, Ampere, Milliampere, Ohm, Milliohm, Watt, Joule, WattHour, AmpereHour, MilliampereHour,
        Coulomb, Second, Minute, Hour, Celsius, Kelvin, JoulePerKelvin, WattPerKelvin, KelvinPerWatt, SquareMetre, SquareCentimetre,
        PerKelvin, Metre, Millimetre, Kilogram, Gram, KilojoulePerMole, Money,
    }.ToFrozenDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    /// <summary>The unit with exactly this symbol, or null: typed spellings are the value reader's work, not this table's.</summary>
    public static Unit? Find(string symbol) => BySymbol.GetValueOrDefault(symbol);
}
