namespace Heatwright.Physics;

/// <summary>Mass, volume and price rolled up, and cell sizes read from their names.</summary>
public static class SizeAndMass
{
    /// <summary>Reserve for a swelling pouch, of its thickness. Common practice, no source: 8 to 10 %.</summary>
    public const double PouchSwelling = 0.10;

    /// <summary>Extra length for welds, insulators and wires. Common practice, no source.</summary>
    public const double PackagingLength = 0.10;

    /// <summary>Sum of independent terms with its standard doubt, and the three largest shares by position.</summary>
    public static RollUp Sum(ReadOnlySpan<double> values, ReadOnlySpan<double> doubts)
    {
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < values.Length; i++)
        {
            sum += Impossible.IfNegative(values[i], "", nameof(values));
            double doubt = doubts.IsEmpty ? 0 : Impossible.IfNegative(doubts[i], "", nameof(doubts));
            squares += doubt * doubt;
        }

        double[] kept = values.ToArray();
        return new(sum, Math.Sqrt(squares), [.. Enumerable.Range(0, kept.Length).OrderByDescending(i => kept[i]).Take(3)]);
    }

    /// <summary>An unknown price or time from three guesses.</summary>
    [Law("three-point", "size and mass", "(a + 4·m + b)/6 ± (b − a)/6", Says = "best value and doubt of a guess from least, likely and most", Source = "common practice", Where = "usual weights",
        Valid = "three honest guesses", Example = "least=1.20 likely=1.80 most=3.60")]
    public static ThreePointGuess Guess(
        [In("a", "", "least", Name = "least")] double least,
        [In("m", "", "likely", Name = "likely")] double likely,
        [In("b", "", "most", Name = "most")] double most)
    {
        (double mean, double doubt) = ThreePoint(least, likely, most);
        return new(mean, doubt);
    }

    /// <summary>An unknown price from its least, likely and most: mean (a + 4m + b)/6, doubt (b − a)/6. Common practice, no source.</summary>
    public static (double Mean, double Doubt) ThreePoint(double least, double likely, double most) =>
        Impossible.UnlessFinite(least, "") <= likely && likely <= most
            ? ((least + (4 * likely) + most) / 6, (most - least) / 6)
            : throw Impossible.Outside(nameof(likely), likely, "", "between least and most");

    /// <summary>Volume of a cell from its name.</summary>
    [Law("cell-size", "size and mass", "18650: π/4·(18 mm)²·65 mm; 503450: 5.0 × 34 × 50 mm", Says = "volume of a cell from the number it is sold under", Unit = "m³", Source = "definition", Where = "meaning of the name",
        Valid = "bare cell; a protected one is 2 to 5 mm longer, a pouch may swell by a tenth", Example = "name=18650")]
    public static double NamedCellM3(
        [In("name", "word", "number it is sold under", Name = "name")] string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return RoundCell(name) is { } round && round.DiameterM > 0 && round.LengthM > 0 ? Math.PI / 4 * round.DiameterM * round.DiameterM * round.LengthM
            : PouchCell(name) is { } pouch && pouch.ThicknessM * pouch.WidthM * pouch.LengthM > 0 ? pouch.ThicknessM * pouch.WidthM * pouch.LengthM
            : throw new ArgumentOutOfRangeException(nameof(name), name, "A round cell is named by 5 digits (18650), a pouch by 6 (503450).");
    }

    /// <summary>Diameter and length of a round cell from its name: 18650 is 18 × 65 mm, 21700 is 21 × 70.</summary>
    public static (double DiameterM, double LengthM)? RoundCell(string name) =>
        name.Length >= 4 && name.Length <= 5 && name.All(char.IsAsciiDigit)
            ? (TwoDigits(name, 0) * 1e-3, TwoDigits(name, 2) * 1e-3)
            : null;

    /// <summary>Thickness, width and length of a pouch cell from its name: 503450 is 5.0 × 34 × 50 mm.</summary>
    public static (double ThicknessM, double WidthM, double LengthM)? PouchCell(string name) =>
        name.Length == 6 && name.All(char.IsAsciiDigit)
            ? (TwoDigits(name, 0) * 1e-4, TwoDigits(name, 2) * 1e-3, TwoDigits(name, 4) * 1e-3)
            : null;

    private static int TwoDigits(string name, int at) => ((name[at] - '0') * 10) + name[at + 1] - '0';
}

/// <summary>A sum over parts.</summary>
/// <param name="Total">The sum.</param>
/// <param name="Doubt">Its standard doubt.</param>
/// <param name="Largest">Positions of the three largest terms.</param>
public sealed record RollUp(double Total, double Doubt, IReadOnlyList<int> Largest);

/// <summary>A guess from three.</summary>
/// <param name="Mean">Best value.</param>
/// <param name="Doubt">Standard doubt.</param>
public readonly record struct ThreePointGuess(
    [property: Out("", "best value", Name = "value")] double Mean,
    [property: Out("", "standard doubt", Name = "doubt")] double Doubt);
