namespace Heatwright.Plant;

/// <summary>Pieces of work that come at regular times: each presses something on the working node and takes heat while that is hotter than a temperature.</summary>
/// <param name="ContactWPerK">Conductance into the work, W/K.</param>
/// <param name="AboveK">The work takes heat only from what is hotter than this, K.</param>
/// <param name="FirstS">Start of the first piece, s.</param>
/// <param name="EveryS">Time from start to start, s; longer than <paramref name="ForS"/>.</param>
/// <param name="ForS">How long each lasts, s.</param>
/// <param name="NeedJ">Heat a piece needs to be done, J; 0: done when its time is over.</param>
public sealed record WorkPattern(double ContactWPerK, double AboveK, double FirstS, double EveryS, double ForS, double NeedJ)
{
    /// <summary>Above the time that a piece lasts.</summary>
    public double EveryS { get; } = EveryS > ForS
        ? EveryS
        : throw new ArgumentOutOfRangeException(nameof(EveryS), EveryS, $"Pieces of {ForS} s cannot come every {EveryS} s.");

    /// <summary>0 or more.</summary>
    public double ContactWPerK { get; } = Guard.ZeroOrMore(ContactWPerK);

    /// <summary>0 or more.</summary>
    public double NeedJ { get; } = Guard.ZeroOrMore(NeedJ);

    /// <summary>Stop after so many pieces; no limit by default.</summary>
    public int Count { get; init; } = int.MaxValue;

    /// <summary>First piece starts when the target is first reached, plus this many seconds, instead of at a clock time; NaN: clock time.</summary>
    public double AfterTargetS { get; init; } = double.NaN;
}
