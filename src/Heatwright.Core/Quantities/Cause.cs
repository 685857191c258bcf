namespace Heatwright.Quantities;

/// <summary>Who brought a doubt in; sensitivity is told per group.</summary>
public enum CauseGroup
{
    /// <summary>Scatter of the readings of one trial.</summary>
    Trial,
    /// <summary>An instrument's own error, shared by everything read on it.</summary>
    Instrument,
    /// <summary>A seller's word.</summary>
    Claim,
    /// <summary>A guess, a class value or a published range.</summary>
    Assumption,
}

/// <summary>One thing that could make numbers wrong. The same cause acting in two places is one cause: it pushes both together.</summary>
/// <param name="Id">Unique in the study, for example 'meter-2 volts gain'. Equality is by this name.</param>
/// <param name="Group">Who brought it in.</param>
/// <param name="Shape">How it is spread.</param>
public sealed record Cause(string Id, CauseGroup Group, Shape Shape)
{
    /// <inheritdoc/>
    public bool Equals(Cause? other) => other is not null && string.Equals(Id, other.Id, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Id);

    /// <summary>A normal cause.</summary>
    public static Cause Normal(string id, CauseGroup group) => new(id, group, new Shape.Normal());

    /// <summary>A rectangular cause.</summary>
    public static Cause Rectangular(string id, CauseGroup group) => new(id, group, new Shape.Rectangular());
}
