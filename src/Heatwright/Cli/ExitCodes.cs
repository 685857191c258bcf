namespace Heatwright.Cli;

/// <summary>How a command ends.</summary>
public static class ExitCodes
{
    /// <summary>Done; a no-go is done.</summary>
    public const int Done = 0;

    /// <summary>Our fault.</summary>
    public const int OurFault = 1;

    /// <summary>Bad input or usage, or a question that needs an answer.</summary>
    public const int BadInput = 2;

    /// <summary>The study contradicts itself.</summary>
    public const int Contradiction = 3;
}
