using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>All numbers a build sheet needs beside the study, each with a default that can be overruled.</summary>
/// <remarks>Defaults are common practice, no source, unless the reason names one.</remarks>
public sealed class SheetChoices
{
    /// <summary>Microfarad.</summary>
    internal static readonly Unit Microfarad = new("µF", Units.Farad.Dimension, 1e-6);

    /// <summary>Nanocoulomb.</summary>
    internal static readonly Unit Nanocoulomb = new("nC", Units.Coulomb.Dimension, 1e-9);

    private const string Usual = "common practice, no source";

    private readonly Dictionary<string, SheetChoice> byName;

    private SheetChoices(IEnumerable<SheetChoice> all) => byName = all.ToDictionary(choice => choice.Name, StringComparer.Ordinal);

    /// <summary>The defaults.</summary>
    public static SheetChoices Defaults { get; } = new(
    [
        new("converter-bits", 12, 0, Units.One, "small controllers have 10 or 12 bits; " + Usual) { Least = 8, Most = 16, Whole = true },
        new("reference", 3.3, 0.033, Units.Volt, "regulated supply as reference, ±1 %; " + Usual) { Least = 0.5, Most = 6 },
        new("supply", 3.3, 0.066, Units.Volt, "regulator ±2 %; " + Usual) { Least = 1.6, Most = 6 },
        new("amplifier-floor", 0.020, 0, Units.Volt, "rail-to-rail outputs end 5 to 50 mV from ground; " + Usual),
        new("amplifier-headroom", 0.050, 0, Units.Volt, "rail-to-rail outputs end 5 to 50 mV from the supply; " + Usual),
        new("amplifier-offset", 150, 0, Units.Microvolt, "limit of a low-offset part; general-purpose parts have 2 to 7 mV; " + Usual),
        new("amplifier-drift", 2, 0, Units.Microvolt, "per kelvin of the board; " + Usual),
        new("amplifier-bias", 0.001, 0, Units.Microampere, "1 nA; " + Usual),
        new("amplifier-bandwidth", 1e6, 0, Units.Hertz, "gain-bandwidth product of a small low-power part; " + Usual) { Least = 1e3 },
        new("amplifier-recovery", 50, 0, Units.Microsecond, "overload recovery is 1 to 1000 µs; " + Usual),
        new("output-bias", 15, 0, Units.Millivolt, "10 to 20 mV lift a cold tip off the floor; " + Usual) { Most = 500 },
        new("resistor-tolerance", 1, 0, Units.Percent, "film resistors; " + Usual) { Least = 0.01, Most = 10 },
        new("gain-share", 0.95, 0, Units.One, "5 % left above the hottest reading; " + Usual) { Least = 0.3, Most = 1 },
        new("most-parallel", 5, 0, Units.Kiloohm, "keeps bias current and noise out of the reading; " + Usual) { Least = 0.05 },
        new("converter-error", 2.5, 0, Units.One, "linearity of 2 steps and half a step of rounding; " + Usual),
        new("cold-end-error", 2, 0, Units.Kelvin, "board sensor beside the connector; " + Usual),
        new("cold-end-least", 10, 0, Units.Celsius, "coldest grip the tool is used with; " + Usual) { Least = -40, Most = 60 },
        new("cold-end-most", 50, 0, Units.Celsius, "grip after a long session; " + Usual) { Least = 0, Most = 90 },
        new("board-swing", 15, 0, Units.Kelvin, "board temperature away from where the offset was taken; " + Usual),
        new("stray-volts", 10, 0, Units.Microvolt, "leakage and parasitic couples; " + Usual),
        new("input-resistor", 1, 0, Units.Kiloohm, "limits the current into the clamp; " + Usual),
        new("input-capacitor", 0.1, 0, Microfarad, "100 nF against the switching of the heater; " + Usual),
        new("clamp-leakage", 0.01, 0, Units.Microampere, "10 nA of a good clamp when warm; " + Usual),
        new("clamp-step", 0.7, 0, Units.Volt, "what the clamp leaves at the filter when the heater switches off; " + Usual),
        new("pull-up", 10, 0, Units.Megaohm, "finds a broken sensor; below 10 MΩ it shifts the reading; " + Usual) { Least = 0.01 },
        new("sample-reads", 8, 0, Units.One, "readings averaged in one window; " + Usual) { Least = 1, Most = 256, Whole = true },
        new("read-time", 20, 0, Units.Microsecond, "one conversion; " + Usual) { Least = 0.1 },
        new("frame", 100, 0, Units.Millisecond, "heat, off, read; " + Usual) { Least = 1, Most = 5000 },
        new("read-above", 80, 0, Units.Kelvin, "reads on above the set point, so that an overshoot and the over-temperature stop are seen; our choice") { Least = 10 },
        new("switch-points-low", 2.5, 0, Units.Volt, "lower gate volts for which the switch states its ohms; " + Usual) { Least = 0.5 },
        new("gate-drive", 3.3, 0.066, Units.Volt, "a controller pin at its supply; " + Usual) { Least = 0.5, Most = 20 },
        new("gate-sheet", 4.5, 0, Units.Volt, "gate volts at which the sheet states the ohms of the switch; " + Usual) { Least = 0.5, Most = 20 },
        new("gate-threshold", 1.5, 0, Units.Volt, "largest threshold of logic-level parts, from memory") { Least = 0.2, Most = 6 },
        new("gate-charge", 12, 0, Nanocoulomb, "a small power transistor; " + Usual),
        new("pwm-frequency", 100, 0, Units.Hertz, "pin-driven switches are good below a few kHz; " + Usual) { Least = 0.2, Most = 1e6 },
        new("switch-thermal", 60, 12, Units.KelvinPerWatt, "power package on little copper inside a closed handle; " + Usual) { Least = 1 },
        new("switch-most", 150, 0, Units.Celsius, "usual junction limit; " + Usual),
        new("handle-air", 45, 5, Units.Celsius, "air in the closed grip at work; " + Usual) { Least = 0, Most = 90 },
        new("trace-rise", 10, 0, Units.Kelvin, "the safe stand-in for a thin board in a closed hot handle; " + Usual) { Least = 1, Most = 60 },
        new("copper", 35, 0, Units.Micrometre, "one ounce a square foot") { Least = 5, Most = 400 },
        new("board-sides", 2, 0, Units.One, "parts on both sides; our choice") { Least = 1, Most = 2, Whole = true },
        new("trace-length", 40, 0, Units.Millimetre, "heater current across the board, out and back; our guess") { Least = 1 },
        new("fuse-melting", 12, 0, Units.One, "melting A²s of a slow fuse of about the rating found here; take the sheet's; " + Usual) { Least = 1e-3 },
        new("fuse-ohms", 15, 0, Units.Milliohm, "cold resistance of a small fuse; " + Usual),
        new("warm-time", 1.5, 0, Units.Second, "time in which the heater's own ohms settle; " + Usual) { Least = 1e-3 },
        new("ripple", 50, 0, Units.Millivolt, "ripple a smoothed pack shows; " + Usual) { Least = 0.1 },
        new("smooth-frequency", 20, 0, Units.Kilohertz, "frequency for which a smoothing capacitor makes sense; " + Usual) { Least = 0.1 },
        new("drop-out", 0.2, 0, Units.Volt, "regulator of the controller; " + Usual),
        new("brown-out", 2.7, 0, Units.Volt, "reset level of the controller; " + Usual) { Least = 0.5 },
        new("hold-up", 20, 0, Units.Millisecond, "dip to be bridged; " + Usual),
        new("standby", 50, 0, Units.Microampere, "controller asleep, protection, dividers; " + Usual),
        new("charge-source", 5, 0.25, Units.Volt, "USB ±5 %") { Least = 4, Most = 30 },
        new("charge-source-amps", 1.5, 0, Units.Ampere, "a source that says 1.5 A") { Least = 0.05 },
        new("charge-cable", 0.25, 0, Units.Ohm, "0.1 to 0.5 Ω out and back; " + Usual),
        new("charge-end-share", 0.1, 0, Units.One, "ends at a tenth of the charge current; " + Usual) { Least = 0.01, Most = 0.5 },
        new("charge-rate", 0.5, 0, Units.PerHour, "half the capacity per hour for a cell without a sheet; " + Usual) { Least = 0.02, Most = 2 },
        new("charge-law", 1000, 0, Units.Volt, "set-resistor law amps = law / ohms, volts; sheets differ (1000, 1200): take the sheet of your charger") { Least = 1 },
        new("charger-regulates", 110, 0, Units.Celsius, "linear chargers hold 100 to 120 °C; " + Usual),
        new("charger-thermal", 60, 0, Units.KelvinPerWatt, "small package 40 to 80 K/W; " + Usual) { Least = 1 },
        new("charge-efficiency", 0.88, 0, Units.One, "switching charger; " + Usual) { Least = 0.3, Most = 1 },
        new("cut-out", 0, 0, Units.Celsius, "temperature at which the independent cut-out opens, where it sits; 0: not stated") { Most = 700 },
        new("over-temperature", 50, 0, Units.Kelvin, "above the set point the firmware stops; our choice") { Least = 5 },
        new("idle-off", 600, 0, Units.Second, "unattended heaters go off; our choice") { Least = 10 },
        new("hot-gap", 30, 0, Units.Millimetre, "20 to 40 mm between hot end and cells; " + Usual),
        new("softening", 60, 0, Units.Celsius, "the softest usual print plastic; " + Usual),
        new("hot-air", Safety.SingleFaults.HotAirC, 0, Units.Celsius, "worst corner of the faults: a hot day; our choice"),
        new("band", 4, 0, Units.Kelvin, "swing about the set point that on-off may have; our choice") { Least = 0.1 },
        new("table-error", 0.5, 0, Units.Kelvin, "bound for the table in the controller; our choice") { Least = 0.13, Most = 20 },
    ]);

    /// <summary>Every name with its unit and default, in order.</summary>
    public IEnumerable<SheetChoice> All => byName.Values.OrderBy(choice => choice.Name, StringComparer.Ordinal);

    /// <summary>One choice; asking for one that is not there is a bug.</summary>
    public SheetChoice this[string name] => byName[name];

    /// <summary>A choice by the name a maker typed, or null.</summary>
    public SheetChoice? Find(string name) => byName.GetValueOrDefault(name);

    /// <summary>The value in SI units; degrees stay °C.</summary>
    public double Si(string name) => byName[name] is var choice && choice.Unit == Units.Celsius ? choice.Value : choice.Unit.ToSi(choice.Value);

    /// <summary>The same with one value set by the maker.</summary>
    /// <param name="name">Which.</param>
    /// <param name="value">In the choice's own unit.</param>
    /// <param name="plusMinus">Half width of it.</param>
    public Checked<SheetChoices> With(string name, double value, double plusMinus = 0)
    {
        if (Find(name) is not { } choice)
        {
            string[] near = [.. byName.Keys.Order(StringComparer.Ordinal).Where(key => key.Contains(name.Split('-')[0], StringComparison.Ordinal))];
            return new(new Problem("There is no such number to set.", "--set", name, near.Length > 0 ? string.Join(", ", near) : "the names that 'heatwright build-sheet --names' lists", "Name one of them."));
        }

        if (!(value >= choice.Least && value <= choice.Most))
        {
            string limit = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{choice.Least} to {choice.Most} {choice.Unit.Symbol}").TrimEnd();
            return new(new Problem($"'{name}' cannot be that.", "--set", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{value} {choice.Unit.Symbol}").TrimEnd(), limit, "Give a value in that range."));
        }

        if (choice.Whole && value != Math.Floor(value))
        {
            return new(new Problem($"'{name}' is counted in whole numbers.", "--set", value.ToString(System.Globalization.CultureInfo.InvariantCulture), "whole numbers", "Give a whole number."));
        }

        if (!(plusMinus >= 0 && double.IsFinite(plusMinus)))
        {
            return new(new Problem($"The doubt of '{name}' cannot be that.", "--set", plusMinus.ToString(System.Globalization.CultureInfo.InvariantCulture), "0 or more", "Give the doubt as a number of 0 or more."));
        }

        return new(new SheetChoices(byName.Values.Select(one => one.Name == name ? one with { Value = value, PlusMinus = plusMinus, Set = true } : one)));
    }
}
