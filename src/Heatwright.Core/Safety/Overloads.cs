using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Physics;

namespace Heatwright.Safety;

/// <summary>What an arrangement asks of cell, switch, leads and contacts beside what they may give or stand, in the one wording of advice, decision and build sheet.</summary>
public static class Overloads
{
    /// <summary>What would have to stand more than it may.</summary>
    /// <remarks>Of a cell whose rating nobody stated its capacity in an hour is the limit (common practice, no source).</remarks>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="shelf">Parts and findings.</param>
    /// <param name="capacityC">Charge of one cell, C.</param>
    /// <param name="mostA">Highest current out of the pack, A; not a number where it is not known.</param>
    public static IReadOnlyList<Condition> Of(Arrangement arrangement, Shelf shelf, double capacityC, double mostA)
    {
        if (!(mostA > 0 && capacityC > 0))
        {
            return [];
        }

        List<Condition> over = [];
        double cellA = mostA / arrangement.Parallel;
        var rated = shelf.Value(arrangement.Cell, PartQuantities.RatedCurrent);
        if (Protection.LoadOf(cellA, capacityC, rated?.Si) == CellLoad.TooMuch)
        {
            over.Add(new($"a cell that may give {Amps(cellA)} A", rated is null
                ? $"nobody stated the rated current of '{shelf[arrangement.Cell].Name}', and until then a cell may give its capacity in an hour, {Amps(capacityC / 3600)} A"
                : $"'{shelf[arrangement.Cell].Name}' may give {Amps(rated.Si)} A, {rated.Origin.Word}"));
        }

        foreach (var (id, what) in new[] { (arrangement.Switch, "a switch that stands"), (arrangement.Leads, "leads that stand"), (arrangement.Contacts, "contacts that stand") })
        {
            if (shelf.Value(id, PartQuantities.RatedCurrent) is { } limit && mostA > limit.Si)
            {
                over.Add(new($"{what} {Amps(mostA)} A", $"of '{shelf[id].Name}' {Amps(limit.Si)} A is {limit.Origin.Word}"));
            }
        }

        return over;
    }

    private static string Amps(double amps) => amps.ToString("0.##", CultureInfo.InvariantCulture);
}
