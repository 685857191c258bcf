namespace Heatwright.Quantities;

/// <summary>Condition typed with a value.</summary>
public enum Condition
{
    /// <summary>None was typed.</summary>
    None,
    /// <summary>Without end.</summary>
    Continuous,
    /// <summary>For a short time only.</summary>
    Peak,
    /// <summary>The most it may be.</summary>
    Most,
    /// <summary>The least it may be.</summary>
    Least,
    /// <summary>By name, not by measurement.</summary>
    Nominal,
    /// <summary>Typical, as data sheets say it.</summary>
    Typical,
    /// <summary>Root mean square.</summary>
    Rms,
    /// <summary>Average over time.</summary>
    Average,
    /// <summary>Across a round thing.</summary>
    Diameter,
    /// <summary>Direct voltage or current.</summary>
    Direct,
    /// <summary>Alternating voltage or current.</summary>
    Alternating,
}

/// <summary>Why there is no value.</summary>
public enum MissingReason
{
    /// <summary>The field was left empty.</summary>
    Blank,
    /// <summary>Not taken, or does not apply.</summary>
    NotTaken,
    /// <summary>The meter was over its range.</summary>
    Overload,
    /// <summary>The meter's input was open.</summary>
    Open,
    /// <summary>The display showed dashes.</summary>
    Dashes,
    /// <summary>A program wrote that it had no number.</summary>
    NotANumber,
}

/// <summary>Which voltage of a pack the count of cells was read from.</summary>
public enum PackVoltage
{
    /// <summary>The counts were typed.</summary>
    None,
    /// <summary>3.6 or 3.7 V a cell.</summary>
    Nominal,
    /// <summary>4.2 V a cell.</summary>
    Full,
}

/// <summary>Which character a maker or a file uses before the decimals.</summary>
public enum DecimalMark
{
    /// <summary>Not known: 1,234 is asked.</summary>
    Unknown,
    /// <summary>A point: 1,234 is one thousand two hundred and thirty-four.</summary>
    Point,
    /// <summary>A comma: 1,234 is a bit more than one.</summary>
    Comma,
}
