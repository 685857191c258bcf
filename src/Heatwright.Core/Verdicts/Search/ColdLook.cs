using Heatwright.Plant;

namespace Heatwright.Verdicts;

/// <summary>The first look at a whole shelf: arrangements whose end stands far too cold with the switch as much on as it may be are put aside before any is run.</summary>
internal static class ColdLook
{
    /// <summary>An end that would stand above this share of the rise that is asked is run: the look knows neither doubts nor warm cells.</summary>
    private const double Share = 0.9;

    /// <summary>The same, with those put aside that stand too cold at every charge, and those marked that have no steady point at one.</summary>
    /// <param name="stated">All arrangements.</param>
    /// <param name="brief">What the tool must do.</param>
    /// <param name="targetC">Temperature that its end must have, °C.</param>
    public static ShelfSearch.Screened[] At(ShelfSearch.Screened[] stated, Brief brief, double targetC)
    {
        if (Needs(brief) is not { } missed)
        {
            return stated;
        }

        int[] open = [.. Enumerable.Range(0, stated.Length).Where(i => stated[i].Reason.Length == 0)];
        var rises = SteadyRises.Of([.. open.Select(i => stated[i].Builder!.Build(stated[i].Builder!.Middle))]);
        var looked = stated.ToArray();
        foreach (var (i, rise) in open.Zip(rises).Where(pair => pair.Second is not null))
        {
            looked[i] = One(stated[i], rise!, brief, targetC, missed);
        }

        return looked;
    }

    private static ShelfSearch.Screened One(ShelfSearch.Screened of, double[] rise, Brief brief, double targetC, Requirement missed)
    {
        if (rise.Any(double.IsNaN))
        {
            return of with { NoPoint = true };
        }

        double share = rise.Max() / (targetC - brief.AirC);
        if (share >= Share)
        {
            return of;
        }

        // Behind what was run and missed: a run that never gets hot counts as one whole limit short.
        string words = string.Join(", ", rise.Select(one => FormattableString.Invariant($"{brief.AirC + one:0}")));
        return of with
        {
            IsCold = true,
            Reason = FormattableString.Invariant($"with its switch on as much as it may be it stands at {words} °C with a full, a half and a nearly empty pack; {targetC:0} °C are asked"),
            Margin = share - 2,
            Missed = missed,
        };
    }

    /// <summary>A must that no cold end keeps; null: being cold rules nothing out.</summary>
    private static Requirement? Needs(Brief brief) => brief.Requirements.FirstOrDefault(line => line.Must && line.Quantity is RequirementQuantity.WarmUpTime or RequirementQuantity.PiecesPerCharge or RequirementQuantity.RecoveryTime);
}
