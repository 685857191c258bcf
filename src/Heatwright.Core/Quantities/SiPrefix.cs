using System.Collections.Concurrent;

namespace Heatwright.Quantities;

/// <summary>Prefixes in steps of a thousand, and the units that makers put them before.</summary>
public static class SiPrefix
{
    private static readonly (string Letter, int Power)[] Steps =
        [("p", -12), ("n", -9), ("µ", -6), ("m", -3), ("", 0), ("k", 3), ("M", 6), ("G", 9)];

    /// <summary>Units that take prefixes, each with the lowest and highest power of ten that a bench knows.</summary>
    /// <remarks>Seconds stop at 1: thousands of them are minutes and hours. Metres stop at 1, grams at kilograms.</remarks>
    private static readonly Dictionary<string, (Unit Base, int Low, int High)> Bases = new(StringComparer.Ordinal)
    {
        ["V"] = (Units.Volt, -9, 3),
        ["A"] = (Units.Ampere, -12, 3),
        ["Ω"] = (Units.Ohm, -6, 9),
        ["W"] = (Units.Watt, -9, 3),
        ["J"] = (Units.Joule, -6, 6),
        ["Wh"] = (Units.WattHour, -3, 3),
        ["Ah"] = (Units.AmpereHour, -3, 0),
        ["C"] = (Units.Coulomb, -6, 3),
        ["s"] = (Units.Second, -9, 0),
        ["m"] = (Units.Metre, -9, 0),
        ["g"] = (Units.Gram, -3, 3),
        ["Hz"] = (Units.Hertz, -3, 9),
        ["F"] = (Units.Farad, -12, 0),
        ["H"] = (Units.Henry, -9, 0),
        ["V/K"] = (Units.VoltPerKelvin, -9, 0),
        ["J/K"] = (Units.JoulePerKelvin, -3, 3),
        ["W/K"] = (Units.WattPerKelvin, -6, 0),
        ["K/W"] = (Units.KelvinPerWatt, -3, 3),
        ["Ω/m"] = (Units.OhmPerMetre, -6, 3),
    };

    private static readonly ConcurrentDictionary<Unit, Unit[]> Families = new();

    /// <summary>The unit without its prefix, or null where it takes none.</summary>
    public static Unit? BaseOf(Unit unit)
    {
        if (unit == Units.Kilogram)
        {
            return Units.Gram;
        }

        foreach (var (_, (root, _, _)) in Bases)
        {
            if (unit.Dimension == root.Dimension && unit.Offset == 0
                && (unit.Symbol == root.Symbol || (unit.Symbol.EndsWith(root.Symbol, StringComparison.Ordinal) && IsLetter(unit.Symbol[..^root.Symbol.Length]))))
            {
                return root;
            }
        }

        return null;
    }

    /// <summary>The unit with every prefix that a bench knows for it; nothing where it takes none.</summary>
    public static IReadOnlyList<Unit> FamilyOf(Unit unit) => Families.GetOrAdd(unit, static one => BaseOf(one) is { } root
        ? [.. Steps.Where(step => step.Power >= Bases[root.Symbol].Low && step.Power <= Bases[root.Symbol].High).Select(step => Of(root, step.Letter))]
        : []);

    /// <summary>The unit with a prefix before it; the same object as in <see cref="Units"/> where it stands there.</summary>
    /// <param name="root">A unit without prefix.</param>
    /// <param name="letter">One of p, n, µ, m, k, M, G, or empty.</param>
    public static Unit Of(Unit root, string letter)
    {
        var (_, power) = Array.Find(Steps, step => step.Letter == letter) is { Letter: not null } found
            ? found
            : throw new ArgumentOutOfRangeException(nameof(letter), letter, "Not a prefix in steps of a thousand.");
        double factor = power < 0 ? root.Factor / Math.Pow(10, -power) : root.Factor * Math.Pow(10, power);
        string symbol = letter + root.Symbol;
        return Units.Find(symbol) is { } known && known.Dimension == root.Dimension && Math.Abs((known.Factor / factor) - 1) < 1e-12
            ? known
            : new Unit(symbol, root.Dimension, factor);
    }

    /// <summary>The prefixed unit in which a value of this size stands between 1 and 999; the unit itself where it takes no prefix.</summary>
    /// <param name="unit">The unit the value is stated in.</param>
    /// <param name="size">Its size in that unit, already rounded as it will be shown.</param>
    public static Unit For(Unit unit, double size)
    {
        if (BaseOf(unit) is not { } root || size == 0 || !double.IsFinite(size))
        {
            return unit;
        }

        var (_, low, high) = Bases[root.Symbol];
        double inRoot = Math.Abs(size) * unit.Factor / root.Factor;
        int power = Math.Clamp((int)Math.Floor((Math.Log10(inRoot) + 1e-12) / 3) * 3, low, high);
        return Of(root, Array.Find(Steps, step => step.Power == power).Letter);
    }

    private static bool IsLetter(string text) => text.Length == 1 && Array.Exists(Steps, step => step.Letter == text);
}
