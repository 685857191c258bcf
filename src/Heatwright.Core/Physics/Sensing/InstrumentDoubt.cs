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
    [Law("limit-doubt", "readings", "u = a/√3", Says = "standard doubt of a limit", Source = "jcgm-100", Where = "4.3.7, from memory",
        Valid = "every value inside the limit alike", Example = "limit=0.041")]
    public static double OfLimit(
        [In("a", "", "half width of the limits", Name = "limit", Min = 0)] double halfWidth) => halfWidth / Math.Sqrt(3);

    /// <summary>Standard doubt where the maker of the meter says that share and digits are independent: √(a₁²/3 + a₂²/3).</summary>
    public static double OfSplitLimit(double share, double reading, double digits, double digit) =>
        Math.Sqrt((Square(share * reading) + Square(digits * digit)) / 3);

    /// <summary>Standard doubt of a value noted to steps of q: q/√12.</summary>
    public static double OfRounding(double step) => step / Math.Sqrt(12);

    /// <summary>Standard doubt of a value noted as 'about', taken as ±q: q/√3.</summary>
    public static double OfAbout(double step) => step / Math.Sqrt(3);

    /// <summary>Standard doubt of an interval by hand stopwatch, s: two edges, each ±0.25 s (common practice), and the meter's update time.</summary>
    [Law("stopwatch-doubt", "readings", "u = √(2·a²/3 + d²/12)", Says = "standard doubt of a time by hand stopwatch", Unit = "s", Source = "common practice", Where = "±0.25 s an edge, two edges",
        Valid = "display that updates every d", Example = "edge=0.25s update=0s")]
    public static double OfStopwatchS(
        [In("a", "s", "half width of one edge", Name = "edge", Min = 0, Default = 0.25)] double edgeS = 0.25,
        [In("d", "s", "time between updates of the meter", Name = "update", Min = 0, Default = 0)] double meterUpdateS = 0) => Math.Sqrt((2 * edgeS * edgeS / 3) + (meterUpdateS * meterUpdateS / 12));

    /// <summary>Standard doubt of a temperature read on a ramp at a doubtful time, K.</summary>
    public static double OnRampK(double rateKPerS, double timeDoubtS) => Math.Abs(rateKPerS) * timeDoubtS;

    /// <summary>Standard doubt of the mean of repeats: s/√n; where all repeats show one value the display's step rules instead.</summary>
    public static double OfMean(IReadOnlyList<double> repeats, double displayStep)
    {
        double mean = repeats.Average();
        double scatter = Math.Sqrt(repeats.Sum(value => Square(value - mean)) / (repeats.Count - 1));
        return scatter == 0 ? OfRounding(displayStep) : scatter / Math.Sqrt(repeats.Count);
    }

    /// <summary>Power and resistance from volts and amps with the limits of both meters.</summary>
    [Law("power-reading", "readings", "P = V·I, R = V/I, u = a/√3, a = p·x + n·d", Says = "power and resistance from two meters, with their doubt", Source = "jcgm-100", Where = "4.3.7 and 5.1.2, from memory",
        Valid = "both read at the same moment; P and R share their doubts", Example = "voltage=4.98V voltage-limit=0.0449V current=1.27A current-limit=0.04524A")]
    public static PowerReading OfReading(
        [In("V", "V", "volts read", Name = "voltage", Min = 1e-300)] double volts,
        [In("a_V", "V", "limit of the voltmeter at this reading", Name = "voltage-limit", Min = 0)] double voltsLimit,
        [In("I", "A", "amperes read", Name = "current", Min = 1e-300)] double amps,
        [In("a_I", "A", "limit of the ammeter at this reading", Name = "current-limit", Min = 0)] double ampsLimit)
    {
        double voltsDoubt = OfLimit(voltsLimit), ampsDoubt = OfLimit(ampsLimit);
        return new(volts * amps, OfPowerW(volts, voltsDoubt, amps, ampsDoubt), volts / amps, OfResistanceOhm(volts, voltsDoubt, amps, ampsDoubt));
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
    [Law("coverage-factor", "readings", "k = t(97.5 %, ν)", Says = "factor from standard doubt to 95 %", Source = "jcgm-100", Where = "G.4, from memory",
        Valid = "ν cut down to a whole number", Example = "freedom=18.8")]
    public static double CoverageFactor95(
        [In("ν", "", "degrees of freedom", Name = "freedom", Min = 1)] double freedom) => freedom >= 1e5
        ? Quantiles.Normal(0.975)
        : Quantiles.StudentT(0.975, Math.Max(1, Math.Floor(freedom)));

    /// <summary>Grubbs' limit for one outlier, two-sided at a risk: largest |x − mean|/s that chance explains.</summary>
    [Law("outlier-limit", "readings", "G = (n − 1)/√n·√(t²/(n − 2 + t²))", Says = "largest distance from the mean that chance explains", Source = "grubbs-1969", Where = "two-sided, from memory",
        Valid = "one outlier, normal scatter", Example = "readings=10 risk=5%")]
    public static double GrubbsLimit(
        [In("n", "", "readings", Name = "readings", Min = 3, Max = 10000)] int n,
        [In("p", "", "risk", Name = "risk", Min = 1e-6, Max = 0.5, Default = 0.05)] double risk = 0.05)
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

/// <summary>Power and resistance of one pair of readings.</summary>
/// <param name="PowerW">Power.</param>
/// <param name="PowerDoubtW">Its standard doubt.</param>
/// <param name="Ohm">Resistance.</param>
/// <param name="OhmDoubt">Its standard doubt.</param>
public sealed record PowerReading(
    [property: Out("W", "power", Name = "power")] double PowerW,
    [property: Out("W", "its standard doubt", Name = "power-doubt")] double PowerDoubtW,
    [property: Out("Ω", "resistance", Name = "resistance")] double Ohm,
    [property: Out("Ω", "its standard doubt", Name = "resistance-doubt")] double OhmDoubt);
