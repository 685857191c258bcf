namespace Heatwright.Quantities;

/// <summary>What hands, clocks and notebooks add to a reading.</summary>
public static class UsualDoubts
{
    /// <summary>One press of a hand stopwatch is off by up to this; common practice, no source.</summary>
    public const double ReactionS = 0.25;

    /// <summary>An interval taken with a hand stopwatch: a press at each end, and the wait for the display that the eye follows.</summary>
    /// <param name="readingName">Name of the reading, unique in the study.</param>
    /// <param name="displayUpdateS">Time between two updates of that display; 0 where none was watched.</param>
    public static Doubts Stopwatch(string readingName, double displayUpdateS = 0) => Doubts.None
        .With(Cause.Rectangular(readingName + " start press", CauseGroup.Trial), -ReactionS / Math.Sqrt(3))
        .With(Cause.Rectangular(readingName + " stop press", CauseGroup.Trial), ReactionS / Math.Sqrt(3))
        .With(Cause.Rectangular(readingName + " display update", CauseGroup.Trial), displayUpdateS / Math.Sqrt(12));

    /// <summary>A number written down to a multiple of so much: anything within half of it.</summary>
    public static Doubts Noted(double roundedTo, string readingName) =>
        Doubts.None.With(Cause.Rectangular(readingName + " as noted", CauseGroup.Trial), Math.Abs(roundedTo) / Math.Sqrt(12));

    /// <summary>A value read while it changes: what the doubt of the time does to it.</summary>
    /// <param name="perSecond">How fast the value changes.</param>
    /// <param name="time">Doubts of the time, in seconds.</param>
    public static Doubts OnRamp(double perSecond, Doubts time) => time.Times(perSecond);

    /// <summary>Mean of readings of the same thing, and what their scatter leaves open.</summary>
    /// <param name="readings">At least 2.</param>
    /// <param name="step">One step of the last digit; readings that all agree may still be anywhere within it.</param>
    /// <param name="name">Name of the set, unique in the study.</param>
    /// <remarks>s/√n with n − 1 degrees of freedom ([jcgm-100] 4.2). The cause carries the standard deviation of its t spread, s/√n·√(ν/(ν−2)) ([jcgm-101] 6.4.9), so that
    /// draws reach as far as they should. Two or three readings have no such standard deviation: there a bell shape is widened until its 95 % limits are those of t.</remarks>
    public static (double Mean, Doubts Doubts) Repeated(IReadOnlyList<double> readings, double step, string name)
    {
        if (readings.Count < 2)
        {
            throw new ArgumentException("Scatter needs at least 2 readings.", nameof(readings));
        }

        double mean = readings.Sum() / readings.Count;
        double scatter = Math.Sqrt(readings.Sum(reading => (reading - mean) * (reading - mean)) / (readings.Count - 1) / readings.Count);
        int degrees = readings.Count - 1;
        bool allAlike = readings.All(reading => reading == readings[0]);
        return allAlike
            ? (readings[0], Doubts.None.With(Cause.Rectangular(name + " last digit", CauseGroup.Trial), step / Math.Sqrt(12)))
            : degrees >= 3
                ? (mean, Doubts.From(new Cause(name + " scatter", CauseGroup.Trial, new Shape.StudentT(degrees)), scatter * Math.Sqrt(degrees / (degrees - 2.0))))
                : (mean, Doubts.From(Cause.Normal(name + " scatter", CauseGroup.Trial), scatter * Coverage.Factor(0.95, degrees) / Coverage.Factor(0.95, double.PositiveInfinity)));
    }
}
