namespace Heatwright.StudyFile;

/// <summary>What a maker has beside parts: it lives on the own shelf and outlives every study.</summary>
public sealed record OwnThings
{
    /// <summary>Word or sign of the maker's money, as they write it; empty: none.</summary>
    public string Currency { get; init; } = "";

    /// <summary>Resistors in the drawer, ohms, rising.</summary>
    public IReadOnlyList<double> Resistors { get; init; } = [];

    /// <summary>Prices of what is no part on the shelf: a metre of wire, a connector.</summary>
    public IReadOnlyList<OwnPrice> Prices { get; init; } = [];

    /// <summary>The maker's own constants: what their own handbook says.</summary>
    public IReadOnlyList<OwnConstant> Constants { get; init; } = [];

    /// <summary>True where there is nothing.</summary>
    public bool IsEmpty() => Currency.Length == 0 && Resistors.Count == 0 && Prices.Count == 0 && Constants.Count == 0;
}

/// <summary>Price of one piece of something.</summary>
/// <param name="What">What it is.</param>
/// <param name="Price">Of one piece.</param>
public sealed record OwnPrice(string What, double Price);

/// <summary>A number of the maker's own.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="Why">Where it comes from.</param>
public sealed record OwnConstant(string Name, double Value, string Unit, string Why);
