namespace Heatwright.Physics;

/// <summary>What ended a discharge.</summary>
public enum DischargeEnd
{
    /// <summary>No charge left.</summary>
    Empty,

    /// <summary>The terminals reached the cut-off.</summary>
    Cutoff,

    /// <summary>The source could no longer give the power: the output collapses.</summary>
    Fold,

    /// <summary>The load could not be carried from the start.</summary>
    NeverRan,
}

/// <summary>One discharge from start to end.</summary>
/// <param name="DurationS">How long it ran.</param>
/// <param name="LoadJ">Energy in the load.</param>
/// <param name="ChemicalJ">Energy the cell's chemistry gave: the integral of rested voltage times current.</param>
/// <param name="GivenAs">Charge given.</param>
/// <param name="StopCharge">Charge left at the end, 0 to 1.</param>
/// <param name="StopOpenV">Rested voltage at the end.</param>
/// <param name="StartA">Battery current at the start; 0 when it never ran.</param>
/// <param name="StopA">Battery current at the end; 0 when it never ran.</param>
/// <param name="End">What ended it.</param>
public sealed record DischargeResult(
    [property: Out("s", "run time", Name = "run-time")] double DurationS,
    [property: Out("J", "energy in the load", Name = "load-energy")] double LoadJ,
    [property: Out("J", "energy out of the chemistry", Name = "cell-energy")] double ChemicalJ,
    [property: Out("C", "charge given", Name = "charge-given")] double GivenAs,
    [property: Out("", "charge left at the end", Name = "charge-left")] double StopCharge,
    [property: Out("V", "rested voltage at the end", Name = "end-open-voltage")] double StopOpenV,
    [property: Out("A", "battery current at the start", Name = "start-current")] double StartA,
    [property: Out("A", "battery current at the end", Name = "end-current")] double StopA,
    [property: Out("", "what ended it", Name = "ended-by")] DischargeEnd End)
{
    /// <summary>Share of the chemical energy that reached the load.</summary>
    [Out("", "share of the chemical energy in the load", Name = "load-share")]
    public double Share => ChemicalJ > 0 ? LoadJ / ChemicalJ : 0;

    /// <summary>Mean power in the load.</summary>
    [Out("W", "mean power in the load", Name = "mean-power")]
    public double MeanW => DurationS > 0 ? LoadJ / DurationS : 0;
}
