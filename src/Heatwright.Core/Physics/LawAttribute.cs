namespace Heatwright.Physics;

/// <summary>Marks a pure function as a law that a maker can call as a quick sum; help, docs and the calculator are made from this.</summary>
/// <param name="name">Name in the trade, kebab-case, unique: 'trace-width'.</param>
/// <param name="topic">Trade topic it is listed under: cells, packs, power paths, heaters, switch, controller supply, charging,
/// wires and traces, size and mass, heat flow, warm-up, work, sensors, amplifier, calibration, control, readings.</param>
/// <param name="formula">The formula as the source prints it, with the symbols of the inputs.</param>
[AttributeUsage(AttributeTargets.Method)]
public sealed class LawAttribute(string name, string topic, string formula) : Attribute
{
    /// <summary>Name in the trade, kebab-case.</summary>
    public string Name { get; } = name;

    /// <summary>Trade topic.</summary>
    public string Topic { get; } = topic;

    /// <summary>What it works out, in trade words: a few words that a maker would look for.</summary>
    public string Says { get; init; } = "";

    /// <summary>The formula in symbols.</summary>
    public string Formula { get; } = formula;

    /// <summary>SI unit symbol of the result ('' for a pure number, '°C' for a temperature level); unused where the method returns a record whose properties carry <see cref="OutAttribute"/>.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Key in data/sources.json, or 'common practice', or 'definition'.</summary>
    public string Source { get; init; } = "";

    /// <summary>Place in the source: section, equation or table; says 'from memory' where it was not re-read.</summary>
    public string Where { get; init; } = "";

    /// <summary>Where it holds, in words.</summary>
    public string Valid { get; init; } = "";

    /// <summary>An example as typed: 'current=5A rise=20K copper=1oz'.</summary>
    public string Example { get; init; } = "";
}

/// <summary>Describes one input of a law. Values arrive in SI; a temperature level named …C arrives in °C, one named …K in kelvin.</summary>
/// <param name="symbol">Symbol in the formula.</param>
/// <param name="unit">Unit symbol the double is in: 'V', 'm', 'K', '°C', '' for a pure number.</param>
/// <param name="meaning">What it is, in trade words.</param>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class InAttribute(string symbol, string unit, string meaning) : Attribute
{
    /// <summary>Symbol in the formula.</summary>
    public string Symbol { get; } = symbol;

    /// <summary>Unit of the double.</summary>
    public string Unit { get; } = unit;

    /// <summary>What it is.</summary>
    public string Meaning { get; } = meaning;

    /// <summary>Name to type; empty: the parameter's name without its unit, in kebab-case.</summary>
    public string Name { get; init; } = "";

    /// <summary>The words it takes, with a blank between them; empty: a number, an enumeration, or free text.</summary>
    public string Words { get; init; } = "";

    /// <summary>The word used when nothing is typed; empty: none.</summary>
    public string DefaultWord { get; init; } = "";

    /// <summary>Below this it cannot be: refused.</summary>
    public double Min { get; init; } = double.NegativeInfinity;

    /// <summary>Above this it cannot be: refused.</summary>
    public double Max { get; init; } = double.PositiveInfinity;

    /// <summary>Below this the law is outside what it was fitted to: answered with a caveat.</summary>
    public double SoftMin { get; init; } = double.NegativeInfinity;

    /// <summary>Above this the law is outside what it was fitted to: answered with a caveat.</summary>
    public double SoftMax { get; init; } = double.PositiveInfinity;

    /// <summary>Used when nothing is typed; NaN: must be typed.</summary>
    public double Default { get; init; } = double.NaN;
}

/// <summary>Describes one of several results of a law: put on the properties of the record it returns.</summary>
/// <param name="unit">Unit symbol of the double.</param>
/// <param name="meaning">What it is, in trade words.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class OutAttribute(string unit, string meaning) : Attribute
{
    /// <summary>Unit of the double.</summary>
    public string Unit { get; } = unit;

    /// <summary>What it is.</summary>
    public string Meaning { get; } = meaning;

    /// <summary>Name it is shown under; empty: the property's name without its unit, in kebab-case.</summary>
    public string Name { get; init; } = "";
}
