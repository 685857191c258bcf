namespace Heatwright.Quantities;

/// <summary>Where a value came from: one closed list, one word each on screen.</summary>
public abstract record Origin
{
    private Origin() { }

    /// <summary>The one word shown on screen.</summary>
    public abstract string Word { get; }

    /// <summary>A reading.</summary>
    public sealed record Measured(RunId Run, string Instrument) : Origin
    {
        /// <inheritdoc/>
        public override string Word => "measured";
    }

    /// <summary>Drawn by a fit from the runs of a trial.</summary>
    public sealed record Fitted(TrialId Trial, IReadOnlyList<RunId> Runs) : Origin
    {
        /// <inheritdoc/>
        public override string Word => "fitted";
    }

    /// <summary>The seller says so; unproven.</summary>
    public sealed record Claimed(string Wording) : Origin
    {
        /// <inheritdoc/>
        public override string Word => "claimed";
    }

    /// <summary>A data sheet of this very part.</summary>
    public sealed record Sheet(string Document, string Where) : Origin
    {
        /// <inheritdoc/>
        public override string Word => "sheet";
    }

    /// <summary>A published table or formula; the key stands in the bibliography.</summary>
    public sealed record Published(SourceKey Source, string Where) : Origin
    {
        /// <inheritdoc/>
        public override string Word => "published";
    }

    /// <summary>Worked out by a law from other numbers.</summary>
    public sealed record WorkedOut(string Law, IReadOnlyList<Input> From) : Origin
    {
        /// <inheritdoc/>
        public override string Word => "worked out";
    }

    /// <summary>Predicted for an arrangement in one state of the study.</summary>
    public sealed record Predicted(ArrangementId Arrangement, StudyState State, IReadOnlyList<Input> From) : Origin
    {
        /// <inheritdoc/>
        public override string Word => "predicted";
    }

    /// <summary>A guess, with the reason for it.</summary>
    public sealed record Assumed(string Why) : Origin
    {
        /// <inheritdoc/>
        public override string Word => "assumed";
    }

    /// <summary>The leaves this value rests on: readings, labels, sheets, tables and assumptions.</summary>
    public IEnumerable<Origin> Leaves() => this switch
    {
        WorkedOut worked => worked.From.SelectMany(input => input.Value.Origin.Leaves()),
        Predicted predicted => predicted.From.SelectMany(input => input.Value.Origin.Leaves()),
        _ => [this],
    };

    /// <summary>The least trustworthy leaf this value rests on: assumed before claimed before sheet and published before readings.</summary>
    public Origin Weakest() => Leaves().DefaultIfEmpty(this).MinBy(leaf => leaf.Trust)!;

    private int Trust => this switch
    {
        Assumed => 0,
        Claimed => 1,
        Sheet => 2,
        Published => 3,
        Fitted => 4,
        Measured => 5,
        _ => 6,
    };
}

/// <summary>A named number that went into another one.</summary>
public sealed record Input(string Name, Estimate Value);
