namespace Heatwright.Quantities;

/// <summary>What a spelled unit may be, before the field has its say.</summary>
/// <param name="Kind">Which kind of word.</param>
/// <param name="Unit">The unit, for <see cref="UnitWordKind.Plain"/>.</param>
/// <param name="Letter">The prefix, for <see cref="UnitWordKind.BarePrefix"/>.</param>
/// <param name="End">Where it ends in the text.</param>
internal readonly record struct UnitWord(UnitWordKind Kind, Unit? Unit, string Letter, int End)
{
    public static UnitWord None(int end) => new(UnitWordKind.None, null, "", end);

    public static UnitWord Of(Unit unit) => new(UnitWordKind.Plain, unit, "", 0);

    public static UnitWord Of(UnitWordKind kind) => new(kind, null, "", 0);

    public static UnitWord Prefix(string letter) => new(UnitWordKind.BarePrefix, null, letter, 0);
}

/// <summary>Kinds of spelled units.</summary>
internal enum UnitWordKind
{
    /// <summary>No unit was spelled.</summary>
    None,
    /// <summary>A unit that means one thing.</summary>
    Plain,
    /// <summary>A prefix without a unit behind it: 4.7k.</summary>
    BarePrefix,
    /// <summary>Degrees Celsius, said so.</summary>
    Celsius,
    /// <summary>The letter C: degrees, a charge rate or coulombs.</summary>
    LetterC,
    /// <summary>Degrees Fahrenheit.</summary>
    Fahrenheit,
    /// <summary>Kelvin: a level or a difference.</summary>
    Kelvin,
}
