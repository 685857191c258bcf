namespace Heatwright.Plant;

/// <summary>What a tool does for a while.</summary>
public enum DutyKind
{
    /// <summary>Heater off.</summary>
    Off,
    /// <summary>Heats until the working node has its target.</summary>
    WarmUp,
    /// <summary>Holds its set point without work.</summary>
    Hold,
    /// <summary>Works: pieces at regular times.</summary>
    Work,
    /// <summary>Holds a lower temperature.</summary>
    StandBy,
}

/// <summary>One block of a duty pattern.</summary>
/// <param name="Kind">What the tool does.</param>
/// <param name="LastsS">How long, s, above 0; of a warm-up at most so long, and infinite is as long as it takes.</param>
public sealed record DutyBlock(DutyKind Kind, double LastsS)
{
    /// <summary>Above 0, or 0 where the count of pieces says it.</summary>
    public double LastsS { get; } = LastsS > 0 || (Kind == DutyKind.Work && LastsS == 0)
        ? LastsS : throw new ArgumentOutOfRangeException(nameof(LastsS), LastsS, "A block lasts longer than 0 s.");

    /// <summary>Set point of stand-by, K; 0: heater off.</summary>
    public double SetK { get; init; }

    /// <summary>Pieces of a work block, 1 or more; it lasts as long as they come.</summary>
    public int Pieces { get; init; }
}

/// <summary>Blocks one after another, and again.</summary>
/// <param name="Blocks">In order; at least one.</param>
/// <param name="Rounds">How often they are gone through.</param>
public sealed record DutyPattern(IReadOnlyList<DutyBlock> Blocks, int Rounds = int.MaxValue)
{
    /// <summary>At least one.</summary>
    public IReadOnlyList<DutyBlock> Blocks { get; } = Blocks.Count > 0 ? Blocks : throw new ArgumentException("A duty pattern has at least one block.", nameof(Blocks));

    /// <summary>Refuses what no controller of this kind can follow.</summary>
    internal void Refuse(ControllerModel controller, WorkPattern? work)
    {
        if (controller is ControllerModel.Fixed && Blocks.Any(block => block.Kind == DutyKind.StandBy && block.SetK > 0))
        {
            throw new ArgumentException("A fixed duty holds no temperature: stand-by at a temperature needs a controller that reads one.", nameof(controller));
        }

        if (work is null && Blocks.Any(block => block.Kind == DutyKind.Work))
        {
            throw new ArgumentException("A work block needs work: say what a piece takes.", nameof(work));
        }

        if (Blocks.Any(block => block.Kind == DutyKind.Work && block.Pieces < 1))
        {
            throw new ArgumentException("A work block has 1 piece or more.", nameof(work));
        }
    }
}
