using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>How a value of an arrangement is changed.</summary>
public enum DialKind
{
    /// <summary>One of some words.</summary>
    Choice,
    /// <summary>A whole number.</summary>
    Count,
    /// <summary>A number with its unit.</summary>
    Number,
}

/// <summary>To whom a value belongs: that decides how a change of it is kept.</summary>
public enum DialOwner
{
    /// <summary>To the wiring: a place, a count, the duty.</summary>
    Wiring,
    /// <summary>To the part in a place.</summary>
    Part,
    /// <summary>To the controller.</summary>
    Controller,
    /// <summary>To the brief, and so to every arrangement.</summary>
    Brief,
    /// <summary>To a line of the brief: its limit.</summary>
    Limit,
}

/// <summary>One value of an arrangement that can be tried otherwise.</summary>
/// <param name="Name">As it is typed: 'leads ohms', 'series', 'target'.</param>
/// <param name="Words">In trade words.</param>
/// <param name="Group">Heading it stands under.</param>
/// <param name="Owner">To whom it belongs.</param>
/// <param name="Was">As it stands now, spelled so that it reads back as itself.</param>
public sealed record Dial(string Name, string Words, string Group, DialOwner Owner, string Was)
{
    /// <summary>How it is changed.</summary>
    public DialKind Kind { get; init; } = DialKind.Number;

    /// <summary>Place of the part it belongs to; empty: none.</summary>
    public string Place { get; init; } = "";

    /// <summary>Quantity of the part, or name of the line; empty: none.</summary>
    public string Quantity { get; init; } = "";

    /// <summary>What it may be, where it is a choice: what is typed, and its words.</summary>
    public IReadOnlyList<(string Typed, string Words)> Choices { get; init; } = [];

    /// <summary>Unit it is shown in, and that of a bare number.</summary>
    public Unit Unit { get; init; } = Units.One;

    /// <summary>The number now, in <see cref="Unit"/>.</summary>
    public double Value { get; init; }

    /// <summary>Its standard doubt as a share of it.</summary>
    public double Share { get; init; }

    /// <summary>Where it comes from; null: no number of a part.</summary>
    public Origin? Origin { get; init; }

    /// <summary>Lower end of its slider.</summary>
    public double Low { get; init; }

    /// <summary>Upper end of its slider.</summary>
    public double High { get; init; }

    /// <summary>Step of its slider.</summary>
    public double Step { get; init; }

    /// <summary>True: it must be above nought.</summary>
    public bool AboveNought { get; init; }

    /// <summary>A number as a field shows it: four digits and the unit.</summary>
    public static string Spelled(double value, Unit unit) => Digits(value) + (unit.Symbol.Length > 0 && unit != Units.Money ? " " + unit.Symbol : "");

    /// <summary>Four digits, in plain spelling.</summary>
    public static string Digits(double value) => value == 0 ? "0"
        : Math.Round((decimal)value, Math.Clamp(3 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 12)).ToString("0.############", CultureInfo.InvariantCulture);

    /// <summary>What was typed, in <see cref="Unit"/>, with its half width; 0: none was typed.</summary>
    /// <param name="text">A bare number is in the unit that the dial shows.</param>
    public Checked<(double Value, double Half)> Read(string text)
    {
        string typed = text.Trim();
        string number = Unit.Symbol.Length > 0 && typed.EndsWith(Unit.Symbol, StringComparison.Ordinal) ? typed[..^Unit.Symbol.Length].Trim() : typed;
        if (double.TryParse(number.Replace('−', '-'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double plain))
        {
            return Allowed(plain, 0, text);
        }

        var expect = Unit == Units.Money ? Expect.Money : Expect.Of(Unit.Symbol.StartsWith('m') && Units.Find(Unit.Symbol[1..]) is { } whole && whole.Measures(Unit) && Unit.Symbol.Length > 1 && Unit != Units.Millimetre ? whole : Unit, Words);
        // A comma may be a decimal mark or part thousands: the reader of every field decides, or asks.
        return OptionReader.Amount(Name, number.All(c => char.IsAsciiDigit(c) || c is ',' or '-') && Unit != Units.Money ? $"{number} {Unit.Symbol}" : typed, expect).Then(read => Allowed(Unit.FromSi(read.Si), read.PlusMinus * read.Unit.Factor / Unit.Factor, text));
    }

    private Checked<(double Value, double Half)> Allowed(double value, double half, string text) => Unit.IsLevel || value > 0 || (value == 0 && !AboveNought)
        ? new((value, half))
        : new(new Problem($"{Words} cannot be {(AboveNought ? "nought or below it" : "below nought")}.", Name, text, AboveNought ? "above 0" : "0 or more", "Type it again."));
}
