using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>A charger on the pack: set current, set volts, an end current, and perhaps a fold-back for its own heat.</summary>
/// <param name="SetA">Current into the pack, A.</param>
/// <param name="HoldV">Volts at the pack, behind cells and loop, that it never passes.</param>
/// <param name="EndA">Done when the current has fallen to this, A.</param>
/// <remarks>I = min(set, what heat allows, (hold − open)/R): the same cells, ohms and steps as on the way out.</remarks>
public sealed record ChargerModel(double SetA, double HoldV, double EndA)
{
    /// <summary>Above 0.</summary>
    public double SetA { get; } = Guard.Positive(SetA);

    /// <summary>Above 0.</summary>
    public double HoldV { get; } = Guard.Positive(HoldV);

    /// <summary>Above 0.</summary>
    public double EndA { get; } = Guard.Positive(EndA);

    /// <summary>A linear charger's heat; null: it never folds back.</summary>
    public ChargerHeat? Heat { get; init; }

    /// <summary>Pack volts under which only <see cref="GentleA"/> flows; 0: never.</summary>
    public double GentleBelowV { get; init; }

    /// <summary>Current under <see cref="GentleBelowV"/>.</summary>
    public double GentleA { get; init; }

    /// <summary>The state of a pack that it charges; its current counts negative out of the pack.</summary>
    internal OnState On(double openV, double cellOhm, double loopOhm)
    {
        double sourceOhm = cellOhm + loopOhm;
        double amps = openV + (SetA * sourceOhm) < GentleBelowV ? Math.Min(GentleA, SetA) : SetA;
        var region = Region.ChargeCurrent;
        if (Heat is not null && Heat.MostA(Math.Max(openV, 1e-9), sourceOhm) is var cool && cool < amps)
        {
            (amps, region) = (cool, Region.ChargeFoldedBack);
        }

        double held = (HoldV - openV) / Math.Max(sourceOhm, 1e-12);
        if (held < amps)
        {
            (amps, region) = (Math.Max(0, held), Region.ChargeVolts);
        }

        return new(-amps, openV + (amps * cellOhm), 0, 0, 0, region);
    }
}
