namespace Heatwright.Numerics;

/// <summary>How a search for a root ended.</summary>
public enum RootOutcome
{
    /// <summary>A root stands within the tolerance.</summary>
    Found,

    /// <summary>The function has the same sign at both ends.</summary>
    NoSignChange,

    /// <summary>The function has no value somewhere between the ends.</summary>
    NoValue,

    /// <summary>The steps ran out; <see cref="RootSearch.Low"/> and <see cref="RootSearch.High"/> still hold the root.</summary>
    OutOfSteps,
}

/// <summary>Result of a search for a root between two ends.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="X">The root; not a number unless found.</param>
/// <param name="Low">Lower end of what still holds the root.</param>
/// <param name="High">Upper end of it.</param>
/// <param name="Evaluations">How often the function was called.</param>
public readonly record struct RootSearch(RootOutcome Outcome, double X, double Low, double High, int Evaluations)
{
    /// <summary>Whether there is a root.</summary>
    public bool Found => Outcome == RootOutcome.Found;
}
