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
    /// <summary>Microvolt.</summary>
    public static readonly Unit Microvolt = new("µV", Volts, 1e-6);
    /// <summary>Microampere.</summary>
    public static readonly Unit Microampere = new("µA", Current, 1e-6);
    /// <summary>Kiloohm.</summary>
    public static readonly Unit Kiloohm = new("kΩ", Resistance, 1e3);
    /// <summary>Megaohm.</summary>
    public static readonly Unit Megaohm = new("MΩ", Resistance, 1e6);
    /// <summary>Milliwatt.</summary>
    public static readonly Unit Milliwatt = new("mW", Power, 1e-3);
    /// <summary>Kilowatt.</summary>
    public static readonly Unit Kilowatt = new("kW", Power, 1e3);
    /// <summary>Kilojoule.</summary>
    public static readonly Unit Kilojoule = new("kJ", Energy, 1e3);
    /// <summary>Millisecond.</summary>
    public static readonly Unit Millisecond = new("ms", Time, 1e-3);
    /// <summary>Microsecond.</summary>
    public static readonly Unit Microsecond = new("µs", Time, 1e-6);
    /// <summary>Day.</summary>
    public static readonly Unit Day = new("d", Time, 86_400);
    /// <summary>Temperature on the Fahrenheit scale, a level: t[°F] = 9/5 · t[°C] + 32, so its zero lies at 459.67 · 5/9 K.</summary>
    public static readonly Unit Fahrenheit = new("°F", Heat, 5.0 / 9, 459.67 * 5 / 9);
    /// <summary>Volt per kelvin.</summary>
    public static readonly Unit VoltPerKelvin = new("V/K", Volts / Heat);
    /// <summary>Slope of a thermocouple.</summary>
    public static readonly Unit MicrovoltPerKelvin = new("µV/K", Volts / Heat, 1e-6);
    /// <summary>Centimetre.</summary>
    public static readonly Unit Centimetre = new("cm", Length, 1e-2);
    /// <summary>Micrometre.</summary>
    public static readonly Unit Micrometre = new("µm", Length, 1e-6);
    /// <summary>Inch: 25.4 mm, exact by the international yard of 1959.</summary>
    public static readonly Unit Inch = new("in", Length, 0.0254);
    /// <summary>Thousandth of an inch.</summary>
    public static readonly Unit Mil = new("mil", Length, 2.54e-5);
    /// <summary>Cross-section of a conductor.</summary>
    public static readonly Unit SquareMillimetre = new("mm²", Length * Length, 1e-6);
    /// <summary>Heat given off along a wire.</summary>
    public static readonly Unit WattPerMetre = new("W/m", Power / Length);
    /// <summary>Heat given off along a wire.</summary>
    public static readonly Unit WattPerCentimetre = new("W/cm", Power / Length, 100);
    /// <summary>Heat given off along a wire, as makers of hot-wire cutters say it.</summary>
    public static readonly Unit WattPerInch = new("W/in", Power / Length, 1 / 0.0254);
    /// <summary>Resistance along a wire.</summary>
    public static readonly Unit OhmPerMetre = new("Ω/m", Resistance / Length);
    /// <summary>Hertz.</summary>
    public static readonly Unit Hertz = new("Hz", Dimension.None / Time);
    /// <summary>Kilohertz.</summary>
    public static readonly Unit Kilohertz = new("kHz", Dimension.None / Time, 1e3);
    /// <summary>Charge or discharge rate: what a maker writes as 2C empties the cell in half an hour.</summary>
    public static readonly Unit PerHour = new("1/h", Dimension.None / Time, 1.0 / 3600);
    /// <summary>Farad.</summary>
    public static readonly Unit Farad = new("F", Charge / Volts);
    /// <summary>Henry.</summary>
    public static readonly Unit Henry = new("H", Resistance * Time);
    /// <summary>Activation energy per mole.</summary>
    public static readonly Unit KilojoulePerMole = new("kJ/mol", Energy, 1e3);
    /// <summary>Money, in the maker's own currency.</summary>
    public static readonly Unit Money = new("money", new Dimension(0, 0, 0, 0, 0, 1));

    /// <summary>Lumen, all the light that a lamp gives: a light of one candela all round gives 4π of them.</summary>
    public static readonly Unit Lumen = new("lm", new Dimension(0, 0, 0, 0, 0, 0, 1));

    private static readonly FrozenDictionary<string, Unit> BySymbol = new[]
    {
        One, Percent, Volt, Millivolt, Ampere, Milliampere, Ohm, Milliohm, Watt, Joule, WattHour, AmpereHour, MilliampereHour,
        Coulomb, Second, Minute, Hour, Celsius, Kelvin, JoulePerKelvin, WattPerKelvin, KelvinPerWatt, SquareMetre, SquareCentimetre,
        PerKelvin, Metre, Millimetre, Kilogram, Gram, KilojoulePerMole, Money,
        Microvolt, Microampere, Kiloohm, Megaohm, Milliwatt, Kilowatt, Kilojoule, Millisecond, Microsecond, Day, Fahrenheit, VoltPerKelvin,
        MicrovoltPerKelvin, Centimetre, Micrometre, Inch, Mil, SquareMillimetre, WattPerMetre, WattPerCentimetre, WattPerInch,
        OhmPerMetre, Hertz, Kilohertz, PerHour, Farad, Henry, Lumen,
    }.ToFrozenDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    /// <summary>Every unit of the table.</summary>
    public static IEnumerable<Unit> All => BySymbol.Values.OrderBy(unit => unit.Symbol, StringComparer.Ordinal);

    /// <summary>The unit with exactly this symbol, or null: typed spellings are the value reader's work, not this table's.</summary>
    public static Unit? Find(string symbol) => BySymbol.GetValueOrDefault(symbol);
}
