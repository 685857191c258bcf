namespace Heatwright.Jobs;

/// <summary>An arrangement as a maker chooses it, place by place.</summary>
public sealed record WiringEntry
{
    /// <summary>A, B, C; null: the next that is free.</summary>
    public string? Letter { get; init; }

    /// <summary>What the maker calls it; null: said by its parts.</summary>
    public string? Name { get; init; }

    /// <summary>Place and the part chosen for it, or 'none'.</summary>
    public IReadOnlyDictionary<string, string> Chosen { get; init; } = new Dictionary<string, string>();

    /// <summary>Cells in series and side by side, as 2S1P; null: one cell, or as it was.</summary>
    public string? Pack { get; init; }

    /// <summary>Touches that the current passes; null: two for each cell in series, or as it was.</summary>
    public string? Touches { get; init; }

    /// <summary>Largest duty the firmware allows; null: 0.95, or as it was.</summary>
    public string? Duty { get; init; }
}
