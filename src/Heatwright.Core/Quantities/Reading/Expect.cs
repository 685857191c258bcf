namespace Heatwright.Quantities;

/// <summary>Which grammar a field follows.</summary>
public enum ExpectKind
{
    /// <summary>One amount in one of the field's units.</summary>
    Amount,
    /// <summary>A whole number of things.</summary>
    Count,
    /// <summary>Cells in series and parallel.</summary>
    Pack,
    /// <summary>A time of day, read as seconds after midnight.</summary>
    Clock,
    /// <summary>A tolerance alone.</summary>
    Tolerance,
    /// <summary>A price in the maker's own currency.</summary>
    Money,
    /// <summary>The text of a label: several values of any kind.</summary>
    Label,
    /// <summary>One value of any kind.</summary>
    Anything,
}

/// <summary>What a field expects. The less it leaves open, the less is asked back.</summary>
/// <param name="What">The field in trade words, for messages: 'cell volts'.</param>
/// <param name="Kind">Which grammar it follows.</param>
/// <param name="Units">Units it takes, with everything that converts to them; a bare number is in the first.</param>
public sealed record Expect(string What, ExpectKind Kind, IReadOnlyList<Unit> Units)
{
    /// <summary>The decimal mark that the maker or the file uses, where it is known.</summary>
    public DecimalMark Mark { get; init; }

    /// <summary>Where values of this field usually lie, in SI units; outside, a bare number or a lower-case m is asked back.</summary>
    public (double Low, double High)? Likely { get; init; }

    /// <summary>The unit of a bare number.</summary>
    public Unit Bare => Units.Count > 0 ? Units[0] : Quantities.Units.One;

    /// <summary>An amount in one unit and all that converts to it.</summary>
    public static Expect Of(Unit unit, string? what = null) => new(what ?? unit.Symbol, ExpectKind.Amount, [unit]);

    /// <summary>Ohms.</summary>
    public static readonly Expect Ohms = Of(Quantities.Units.Ohm, "ohms");
    /// <summary>Volts.</summary>
    public static readonly Expect Volts = Of(Quantities.Units.Volt, "volts");
    /// <summary>Amperes.</summary>
    public static readonly Expect Amps = Of(Quantities.Units.Ampere, "amps");
    /// <summary>Watts.</summary>
    public static readonly Expect Watts = Of(Quantities.Units.Watt, "watts");
    /// <summary>A temperature level.</summary>
    public static readonly Expect Temperature = Of(Quantities.Units.Celsius, "a temperature");
    /// <summary>A difference of temperatures.</summary>
    public static readonly Expect Rise = Of(Quantities.Units.Kelvin, "a temperature difference");
    /// <summary>A temperature level or a difference, told apart by what is typed.</summary>
    public static readonly Expect TemperatureOrRise = new("a temperature or a difference", ExpectKind.Amount, [Quantities.Units.Celsius, Quantities.Units.Kelvin]);
    /// <summary>A stretch of time; a bare number is in seconds, 1:20 is minutes and seconds.</summary>
    public static readonly Expect Seconds = Of(Quantities.Units.Second, "seconds");
    /// <summary>A stretch of time; a bare number is in minutes, 1:20 is asked back.</summary>
    public static readonly Expect Minutes = Of(Quantities.Units.Minute, "minutes");
    /// <summary>A stretch of time; a bare number is in hours, 1:20 is hours and minutes.</summary>
    public static readonly Expect Hours = Of(Quantities.Units.Hour, "hours");
    /// <summary>A time of day, as seconds after midnight.</summary>
    public static readonly Expect Clock = new("a time of day", ExpectKind.Clock, [Quantities.Units.Second]);
    /// <summary>What a cell holds, as charge or energy; a bare number is in mAh.</summary>
    public static readonly Expect Capacity = new("a capacity", ExpectKind.Amount, [Quantities.Units.MilliampereHour, Quantities.Units.WattHour]) { Likely = (72, 3.6e6) };
    /// <summary>Energy; a bare number is in watt-hours.</summary>
    public static readonly Expect Energy = Of(Quantities.Units.WattHour, "energy");
    /// <summary>Cells in series and parallel.</summary>
    public static readonly Expect Pack = new("a pack", ExpectKind.Pack, []);
    /// <summary>Charge or discharge rate: 0.5C, C/10.</summary>
    public static readonly Expect Rate = Of(Quantities.Units.PerHour, "a rate such as 0.5C");
    /// <summary>Cross-section of a conductor, as mm², wire gauge or diameter.</summary>
    public static readonly Expect WireSize = Of(Quantities.Units.SquareMillimetre, "a wire size");
    /// <summary>Copper on a board; a bare number is in µm.</summary>
    public static readonly Expect Copper = Of(Quantities.Units.Micrometre, "copper thickness");
    /// <summary>A length; a bare number is in millimetres.</summary>
    public static readonly Expect Length = Of(Quantities.Units.Millimetre, "a length");
    /// <summary>Thermocouple voltage; a bare number is in millivolts.</summary>
    public static readonly Expect ThermoVolts = Of(Quantities.Units.Millivolt, "thermocouple voltage");
    /// <summary>Thermocouple slope; a bare number is in µV/K.</summary>
    public static readonly Expect ThermoSlope = Of(Quantities.Units.MicrovoltPerKelvin, "a thermocouple slope");
    /// <summary>A share; a bare number is in per cent.</summary>
    public static readonly Expect Percent = Of(Quantities.Units.Percent, "per cent");
    /// <summary>A pure number.</summary>
    public static readonly Expect Ratio = Of(Quantities.Units.One, "a number");
    /// <summary>A tolerance alone.</summary>
    public static readonly Expect Tolerance = new("a tolerance", ExpectKind.Tolerance, [Quantities.Units.Percent]);
    /// <summary>A price for one piece.</summary>
    public static readonly Expect Money = new("a price", ExpectKind.Money, [Quantities.Units.Money]);
    /// <summary>A whole number.</summary>
    public static readonly Expect Count = new("a whole number", ExpectKind.Count, [Quantities.Units.One]);
    /// <summary>The text of a label, with several values of any kind.</summary>
    public static readonly Expect Label = new("label text", ExpectKind.Label, []);
    /// <summary>One value of any kind.</summary>
    public static readonly Expect Anything = new("a value", ExpectKind.Anything, []);

    /// <summary>True where any unit will do.</summary>
    internal bool IsOpen => Kind is ExpectKind.Label or ExpectKind.Anything;

    /// <summary>True where a value in this unit belongs into the field.</summary>
    internal bool Takes(Unit unit) => IsOpen || Units.Any(own => own.Measures(unit) && IsKin(own, unit));

    /// <summary>True where the field takes exactly this unit, not merely its dimension.</summary>
    internal bool Names(Unit unit) => Units.Contains(unit);

    /// <summary>Hertz and charge rates, joules and joules per mole share a dimension and are not the same thing.</summary>
    private static bool IsKin(Unit a, Unit b) =>
        (a == Quantities.Units.PerHour) == (b == Quantities.Units.PerHour)
        && a.Symbol.Contains("mol", StringComparison.Ordinal) == b.Symbol.Contains("mol", StringComparison.Ordinal);
}
