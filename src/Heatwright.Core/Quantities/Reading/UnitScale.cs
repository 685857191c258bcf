namespace Heatwright.Quantities;

/// <summary>What a spelled unit means in a field: the unit, and how the typed number becomes a number in it.</summary>
internal readonly record struct UnitScale(Unit Unit, double Times = 1, double Plus = 0)
{
    /// <summary>Kelvins from here on cannot be a rise in a field of levels; below, the maker has to say 'abs'.</summary>
    private const double SurelyLevelK = 500;

    /// <summary>Kelvins below this cannot be a level on a bench: −73 °C.</summary>
    private const double SurelyRiseK = 200;

    /// <summary>More than this cannot be a charge rate.</summary>
    private const double HighestRate = 150;

    public double Apply(double typed) => (typed * Times) + Plus;

    /// <summary>True where the word may mean something in this field.</summary>
    public static bool Fits(UnitWord word, Expect expect) => Of(word, 600, Sense.None, expect, false).Any();

    /// <summary>Everything that the word may mean in this field.</summary>
    /// <param name="isBound">True behind a sign such as &gt;: an open-ended lower-case m is asked back there.</param>
    public static IEnumerable<UnitScale> Of(UnitWord word, double value, Sense sense, Expect expect, bool isBound) => word.Kind switch
    {
        UnitWordKind.None => Bare(value, sense, expect),
        UnitWordKind.BarePrefix when sense == Sense.None => Prefixed(word.Letter, value, expect, isBound),
        UnitWordKind.Plain => Plain(word.Unit!, sense, expect),
        UnitWordKind.Celsius => Degrees(Units.Celsius, 1, sense, expect),
        UnitWordKind.LetterC => Degrees(Units.Celsius, 1, sense, expect).Concat(Rates(value, sense, expect)),
        UnitWordKind.Fahrenheit => Degrees(Units.Fahrenheit, 5.0 / 9, sense, expect),
        UnitWordKind.Kelvin => Kelvins(value, sense, expect),
        _ => [],
    };

    private static IEnumerable<UnitScale> Bare(double value, Sense sense, Expect expect)
    {
        if (expect.IsOpen || sense != Sense.None)
        {
            if (expect.IsOpen && sense == Sense.None)
            {
                yield return new(Units.One);
            }
            else if (sense == Sense.Difference && expect.Takes(Units.Kelvin))
            {
                yield return new(Units.Kelvin);
            }

            yield break;
        }

        yield return new(expect.Bare);
        if (expect.Likely is { } likely && !Inside(expect.Bare.ToSi(value), likely))
        {
            foreach (var sibling in Siblings(expect.Bare).Where(unit => Inside(unit.ToSi(value), likely)))
            {
                yield return new(sibling);
            }
        }
    }

    /// <summary>Units that a maker may have had in mind when leaving the unit out.</summary>
    private static IEnumerable<Unit> Siblings(Unit unit)
    {
        if (unit == Units.Percent)
        {
            yield return Units.One;
        }
        else if (SiPrefix.BaseOf(unit) is { } root)
        {
            foreach (var sibling in SiPrefix.FamilyOf(root).Where(sibling => sibling != unit))
            {
                yield return sibling;
            }
        }
    }

    private static IEnumerable<UnitScale> Prefixed(string letter, double value, Expect expect, bool isBound)
    {
        // A prefix alone is spoken only before these; 'm' alone is metres or minutes elsewhere.
        var root = expect.IsOpen ? Units.Ohm : SiPrefix.BaseOf(expect.Bare);
        if (root is null || !(root == Units.Ohm || root == Units.Volt || root == Units.Ampere || root == Units.Watt
            || root == Units.Hertz || root == Units.Farad || root == Units.Henry) || (expect.IsOpen && letter == "m"))
        {
            yield break;
        }

        var unit = SiPrefix.Of(root, letter);
        bool isSaid = SiPrefix.FamilyOf(root).Contains(unit) || (letter == "M" && root != Units.Farad && root != Units.Henry);
        if (!isSaid)
        {
            yield break; // nobody has nano-ohms or kilofarads
        }

        yield return new(unit);
        var mega = SiPrefix.Of(root, "M");
        bool megaIsLikelier = expect.Likely is { } likely && !Inside(unit.ToSi(value), likely) && Inside(mega.ToSi(value), likely);
        if (letter == "m" && ((isBound && root == Units.Ohm) || megaIsLikelier))
        {
            yield return new(mega);
        }
    }

    private static IEnumerable<UnitScale> Plain(Unit unit, Sense sense, Expect expect)
    {
        bool senseFits = sense == Sense.None || (sense == Sense.Difference && unit == Units.Kelvin);
        if (!senseFits || !expect.Takes(unit))
        {
            yield break;
        }

        yield return new(unit);
        if (unit.Factor == 1e6 && unit.Symbol is "MV" or "MA" or "MW")
        {
            yield return new(Units.Find("m" + unit.Symbol[1..])!); // nobody here has megavolts; a caps lock is likelier, so ask
        }
    }

    private static IEnumerable<UnitScale> Degrees(Unit level, double kelvins, Sense sense, Expect expect)
    {
        bool takesLevel = expect.Takes(Units.Celsius);
        if (sense != Sense.Difference && takesLevel)
        {
            yield return new(level);
        }
        else if (sense != Sense.Absolute && expect.Takes(Units.Kelvin))
        {
            yield return new(Units.Kelvin, kelvins);
        }
    }

    private static IEnumerable<UnitScale> Kelvins(double value, Sense sense, Expect expect)
    {
        bool takesRise = expect.Takes(Units.Kelvin);
        bool isLevel = sense == Sense.Absolute || (sense == Sense.None && value >= (takesRise ? SurelyRiseK : SurelyLevelK));
        if (isLevel && expect.Takes(Units.Celsius))
        {
            yield return new(Units.Celsius, 1, -Units.ZeroCelsiusK);
        }

        if (sense != Sense.Absolute && takesRise)
        {
            yield return new(Units.Kelvin);
        }
    }

    private static IEnumerable<UnitScale> Rates(double value, Sense sense, Expect expect)
    {
        if (sense == Sense.None && (expect.Names(Units.PerHour) || (expect.IsOpen && value <= HighestRate)))
        {
            yield return new(Units.PerHour);
        }
    }

    private static bool Inside(double si, (double Low, double High) likely) => Math.Abs(si) >= likely.Low && Math.Abs(si) <= likely.High;
}

/// <summary>Whether a temperature was said to be a level or a difference.</summary>
internal enum Sense
{
    /// <summary>Not said.</summary>
    None,
    /// <summary>'delta', 'rise'.</summary>
    Difference,
    /// <summary>'abs'.</summary>
    Absolute,
}
