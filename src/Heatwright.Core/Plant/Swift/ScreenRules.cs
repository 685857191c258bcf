namespace Heatwright.Plant;

/// <summary>When a steady point counts as found.</summary>
internal static class ScreenRules
{
    /// <summary>Where the search begins, and the most it looks at.</summary>
    public const double FirstK = 300, MostK = 5000;

    /// <summary>A step shorter than this is the last; so many steps at most.</summary>
    public const double CloseK = 1e-7;

    /// <inheritdoc cref="CloseK"/>
    public const int MostSteps = 60;

    /// <summary>What is still gained or lost at a point that is found.</summary>
    public const double MostOverW = 1e-4;
}
