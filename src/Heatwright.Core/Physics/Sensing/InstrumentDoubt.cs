using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>What a meter, a stopwatch, a note and few repeats leave open.</summary>
/// <remarks>Limits as rectangles, u = a/√3; degrees of freedom combined by Welch–Satterthwaite: [jcgm-100] 4.3.7, G.4.1, from memory.
/// Checked: InstrumentDoubtTests.</remarks>
public static class InstrumentDoubt
{
    /// <summary>Limit of a meter, ±(share of reading + digits), in the unit of the reading.</summary>
    [Law("meter-limit", "readings", "a = p·x + n·d", Says = "accuracy limit of a meter from its share of reading and digits", Source = "definition", Where = "meter specification", Valid = "inside the meter's range and calibration",
        Example = "share=0.5% reading=4.20 digits=2 digit=0.01")]
    public static double Limit(
        [In("p", "", "share of reading", Name = "share", Min = 0, Max = 1)] double share,
        [In("x", "", "reading", Name = "reading")] double reading,
        [In("n", "", "digits", Name = "digits", Min = 0)] double digits,
        [In("d", "", "value of the last digit, in the unit of the reading", Name = "digit", Min = 0)] double digit) => (share * Math.Abs(reading)) + (digits * digit);

    /// <summary>Standard doubt of a limit: a/√3.</summary>
    public static double OfLimit(double halfWidth) => halfWidth / Math.Sqrt(3);

    /// <summary>Standard doubt where the maker of the meter says that share and digits are independent: √(a₁²/3 + a₂²/3).</summary>
    public static double OfSplitLimit(double share, double reading, double digits, double digit) =>
        Math.Sqrt((Square(share * reading) + Square(digits * digit)) / 3);

    /// <summary>Standard doubt of a value noted to steps of q: q/√12.</summary>
    public static double OfRounding(double step) => step / Math.Sqrt(12);

    /// <summary>Standard doubt of a value noted as 'about', taken as ±q: q/√3.</summary>
    public static double OfAbout(double step) => step / Math.Sqrt(3);

    /// <summary>Standard doubt of an interval by hand stopwatch, s: two edges, each ±0.25 s (common practice), and the meter's update time.</summary>
    public static double OfStopwatchS(double edgeS = 0.25, double meterUpdateS = 0) => Math.Sqrt((2 * edgeS * edgeS / 3) + (meterUpdateS * meterUpdateS / 12));

    /// <summary>Standard doubt of a temperature read on a ramp at a doubtful time, K.</summary>
    public static double OnRampK(double rateKPerS, double timeDoubtS) => Math.Abs(rateKPerS) * timeDoubtS;

    /// <summary>Standard doubt of the mean of repeats: s/√n; where all repeats show one value the display's step rules instead.</summary>
    public static double OfMean(IReadOnlyList<double> repeats, double displayStep)
    {
        double mean = repeats.Average();
        double scatter = Math.Sqrt(repeats.Sum(value => Square(value - mean)) / (repeats.Count - 1));
        return scatter == 0 ? OfRounding(displayStep) : scatter / Math.Sqrt(repeats.Count);
    }

    /// <summary>Standard doubt of a power from volts and amps, W.</summary>
    public static double OfPowerW(double volts, double voltsDoubt, double amps, double ampsDoubt) =>
        Math.Sqrt(Square(amps * voltsDoubt) + Square(volts * ampsDoubt));

    /// <summary>Standard doubt of a resistance from volts and amps, Ω.</summary>
    public static double OfResistanceOhm(double volts, double voltsDoubt, double amps, double ampsDoubt) =>
        volts / amps * Math.Sqrt(Square(voltsDoubt / volts) + Square(ampsDoubt / amps));

    /// <summary>Correlation of power and resistance from the same volts and amps: they must not be used as if they were independent.</summary>
    public static double PowerResistanceCorrelation(double volts, double voltsDoubt, double amps, double ampsDoubt)
    {
        double shared = Square(voltsDoubt) - Square(volts / amps * ampsDoubt);
        return shared / (OfPowerW(volts, voltsDoubt, amps, ampsDoubt) * OfResistanceOhm(volts, voltsDoubt, amps, ampsDoubt));
    }

    /// <summary>Degrees of freedom of a combined doubt (Welch–Satterthwaite); infinite where no part has any limit.</summary>
    /// <param name="parts">Standard doubt and degrees of freedom of each part; infinite degrees for a limit taken as known.</param>
    public static double EffectiveFreedom(IEnumerable<(double Doubt, double Freedom)> parts)
    {
        var all = parts.ToList();
        double square = all.Sum(part => Square(part.Doubt));
        double below = all.Sum(part => Square(Square(part.Doubt)) / part.Freedom);
        return below > 0 ? square * square / below : double.PositiveInfinity;
    }

    /// <summary>Coverage factor for 95 %: Student's t at degrees of freedom cut down to a whole number; 1.960 without a limit.</summary>
    public static double CoverageFactor95(double freedom) => double.IsInfinity(freedom)
        ? Quantiles.Normal(0.975)
        : Quantiles.StudentT(0.975, Math.Max(1, Math.Floor(freedom)));

    /// <summary>Grubbs' limit for one outlier, two-sided at a risk: largest |x − mean|/s that chance explains.</summary>
    public static double GrubbsLimit(int n, double risk = 0.05)
    {
        double t = Quantiles.StudentT(1 - (risk / (2.0 * n)), n - 2);
        return (n - 1) / Math.Sqrt(n) * Math.Sqrt(t * t / (n - 2 + (t * t)));
    }

    /// <summary>Eₙ of two instruments: |x₁ − x₂|/√(U₁² + U₂²); above 1 they disagree.</summary>
    [Law("instruments-agree", "readings", "E_n = |x1 − x2|/√(U1² + U2²)", Says = "whether two instruments contradict each other", Source = "definition", Where = "normalised error", Valid = "expanded doubts (k = 2); above 1 they disagree",
        Example = "first=4.98 first-doubt=0.05 second=5.06 second-doubt=0.06")]
    public static double NormalisedError(
        [In("x1", "", "reading of the first", Name = "first")] double first,
        [In("U1", "", "its expanded doubt", Name = "first-doubt", Min = 0)] double firstExpanded,
        [In("x2", "", "reading of the second", Name = "second")] double second,
        [In("U2", "", "its expanded doubt", Name = "second-doubt", Min = 0)] double secondExpanded) =>
        Math.Abs(first - second) / Math.Sqrt(Square(firstExpanded) + Square(secondExpanded));

    /// <summary>Volts that an ammeter takes away, V: I·R.</summary>
    public static double BurdenV(double amps, double burdenOhm) => amps * burdenOhm;

    private static double Square(double x) => x * x;
}
