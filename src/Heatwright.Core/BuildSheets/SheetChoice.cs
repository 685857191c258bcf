using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>A number of the board to be drawn that no part of the shelf states: a default with its reason, or what the maker sets in its place.</summary>
/// <param name="Name">How the maker names it when setting it.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="PlusMinus">Half width of the range it may lie in; 0: a choice, exact.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Why">Where the default comes from.</param>
public sealed record SheetChoice(string Name, double Value, double PlusMinus, Unit Unit, string Why)
{
    /// <summary>True: the maker set it for this sheet.</summary>
    public bool Set { get; init; }

    /// <summary>Least value that can be.</summary>
    public double Least { get; init; }

    /// <summary>Largest value that can be.</summary>
    public double Most { get; init; } = double.PositiveInfinity;

    /// <summary>True: a count, nothing between whole numbers.</summary>
    public bool Whole { get; init; }

    /// <summary>As a number with doubt and origin.</summary>
    public Estimate Estimate => Estimate.Within(Value, PlusMinus, Unit, $"build sheet: {Name}", CauseGroup.Assumption, new Origin.Assumed(Set ? "set for this sheet" : Why));

    /// <summary>As the input of a law.</summary>
    public Input Input => new(Name, Estimate);
}
