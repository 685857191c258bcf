namespace Heatwright.Quantities;

/// <summary>Name of a part on the shelf, unique in its study.</summary>
public readonly record struct PartId(string Name)
{
    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>Name of a planned bench test, unique in its study.</summary>
public readonly record struct TrialId(string Name)
{
    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>Name of one execution of a trial, unique in its study.</summary>
public readonly record struct RunId(string Name)
{
    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>Name of an arrangement of parts, unique in its study.</summary>
public readonly record struct ArrangementId(string Name)
{
    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>Key of a publication in the bibliography data/sources.json.</summary>
public readonly record struct SourceKey(string Key)
{
    /// <inheritdoc/>
    public override string ToString() => Key;
}

/// <summary>A fingerprint of everything a prediction was made from; two equal states give equal predictions.</summary>
public readonly record struct StudyState(string Fingerprint)
{
    /// <inheritdoc/>
    public override string ToString() => Fingerprint;
}
