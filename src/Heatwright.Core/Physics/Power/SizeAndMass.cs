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

    /// <summary>An unknown price from its least, likely and most: mean (a + 4m + b)/6, doubt (b − a)/6. Common practice, no source.</summary>
    public static (double Mean, double Doubt) ThreePoint(double least, double likely, double most) =>
        Impossible.UnlessFinite(least, "") <= likely && likely <= most
            ? ((least + (4 * likely) + most) / 6, (most - least) / 6)
            : throw Impossible.Outside(nameof(likely), likely, "", "between least and most");

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
