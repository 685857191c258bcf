using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>What a further reading is worth before a choice between two options, with a loss in proportion to the margin.</summary>
/// <remarks>Margin m with standard doubt s; the reading adds doubt u. Normal theory: [raiffa-schlaifer-1961], from memory.
/// Checked: ReadingWorthTests, also by drawing.</remarks>
public static class ReadingWorth
{
    /// <summary>Loss expected from choosing now, the worth of knowing all: s·φ(m/s) − |m|·Φ(−|m|/s).</summary>
    public static double OfKnowingAll(double margin, double doubt) => doubt > 0
        ? (doubt * Density(margin / doubt)) - (Math.Abs(margin) * Quantiles.NormalShare(-Math.Abs(margin) / doubt))
        : 0;

    /// <summary>How far the margin may move by the reading, as a standard doubt: s²/√(s² + u²).</summary>
    public static double MoveDoubt(double doubt, double readingDoubt) => doubt * doubt / Math.Sqrt((doubt * doubt) + (readingDoubt * readingDoubt));

    /// <summary>Standard doubt left after the reading: s·u/√(s² + u²).</summary>
    public static double DoubtLeft(double doubt, double readingDoubt) => doubt * readingDoubt / Math.Sqrt((doubt * doubt) + (readingDoubt * readingDoubt));

    /// <summary>Worth of one reading, in the unit of the margin.</summary>
    [Law("reading-worth", "readings", "s~ = s²/√(s² + u²); worth = s~·φ(m/s~) − |m|·Φ(−|m|/s~)", Says = "what one more reading is worth to a decision", Source = "raiffa-schlaifer-1961",
        Where = "two actions, linear loss; from memory", Valid = "doubts about normal; the loss grows with the margin", Example = "margin=2 doubt=4 reading-doubt=2")]
    public static double OfReading(
        [In("m", "", "margin, best value less limit", Name = "margin")] double margin,
        [In("s", "", "standard doubt of the margin now", Name = "doubt", Min = 1e-300)] double doubt,
        [In("u", "", "standard doubt of the reading, in the unit of the margin", Name = "reading-doubt", Min = 0)] double readingDoubt) =>
        OfKnowingAll(margin, MoveDoubt(doubt, readingDoubt));

    /// <summary>Chance of the wrong choice before and after one more reading.</summary>
    [Law("wrong-choice", "readings", "now Φ(−|m|/s), left s·u/√(s² + u²)", Says = "chance of the wrong choice before and after one more reading", Source = "raiffa-schlaifer-1961", Where = "two actions, linear loss; from memory",
        Valid = "doubts about normal", Example = "margin=2 doubt=4 reading-doubt=2")]
    public static WrongChoice Wrong(
        [In("m", "", "margin, best value less limit", Name = "margin")] double margin,
        [In("s", "", "standard doubt of the margin now", Name = "doubt", Min = 1e-300)] double doubt,
        [In("u", "", "standard doubt of the reading, in the unit of the margin", Name = "reading-doubt", Min = 1e-300)] double readingDoubt) =>
        new(WrongNow(margin, doubt), WrongAfter(margin, doubt, readingDoubt), DoubtLeft(doubt, readingDoubt), OfKnowingAll(margin, doubt));

    /// <summary>Chance of the wrong choice now: Φ(−|m|/s).</summary>
    public static double WrongNow(double margin, double doubt) => Quantiles.NormalShare(-Math.Abs(margin) / doubt);

    /// <summary>Chance of the wrong choice after the reading, on average over what it may say.</summary>
    public static double WrongAfter(double margin, double doubt, double readingDoubt)
    {
        double move = MoveDoubt(doubt, readingDoubt), left = DoubtLeft(doubt, readingDoubt);
        // Simpson's rule on each side of the kink at zero, ten standard moves out.
        return Side(1) + Side(-1);

        double Side(int sign)
        {
            const int Steps = 2000;
            double end = Math.Abs(margin) + (10 * move), width = end / Steps, sum = 0;
            for (int i = 0; i <= Steps; i++)
            {
                double z = i * width;
                double weight = i is 0 or Steps ? 1 : (i % 2 == 0 ? 2 : 4);
                sum += weight * Quantiles.NormalShare(-z / left) * Density(((sign * z) - margin) / move) / move;
            }

            return sum * width / 3;
        }
    }

    private static double Density(double x) => Math.Exp(-0.5 * x * x) / Math.Sqrt(2 * Math.PI);
}

/// <summary>Chance of the wrong choice before and after a reading.</summary>
/// <param name="Now">Now.</param>
/// <param name="After">After the reading, on average.</param>
/// <param name="DoubtLeft">Standard doubt left.</param>
/// <param name="WorthOfAll">Worth of knowing all, in the unit of the margin.</param>
public sealed record WrongChoice(
    [property: Out("", "chance of the wrong choice now", Name = "now")] double Now,
    [property: Out("", "after the reading, on average", Name = "after")] double After,
    [property: Out("", "standard doubt left", Name = "doubt-left")] double DoubtLeft,
    [property: Out("", "worth of knowing all, in the unit of the margin", Name = "worth-of-all")] double WorthOfAll);
