using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Arrangements;

/// <summary>What limits a loop: each rating against what the loop asks of it, the nearest first.</summary>
internal static class LoopLimits
{
    public static IReadOnlyList<LoopLimit> Of(Arrangement one, Shelf shelf, params LoopMoment[] moments)
    {
        List<LoopLimit> limits = [];
        // What is held to a label is less than the table of the loop shows: the duty says by how much.
        string atDuty = one.DutyCeiling < 1 ? string.Create(CultureInfo.InvariantCulture, $", steadily at its duty of {one.DutyCeiling:0.##}") : "";
        foreach (var moment in moments.Where(moment => moment.PackA is not null))
        {
            var pack = moment.PackA!;
            Rated(one.Cell, new Estimate(pack.Value / one.Parallel, pack.Unit, pack.Doubts.Times(1.0 / one.Parallel), pack.Origin), moment);
            Rated(one.Contacts, pack, moment);
            Rated(one.Switch, pack, moment);
            Rated(one.Leads, pack, moment);
            if (one.CutOut is { } cutOut)
            {
                Rated(cutOut, moment.LoadA!, moment);
            }

            if (one.Supervision is { } board)
            {
                Rated(board, pack, moment);
                Against("trip current", board, PartQuantities.TripCurrent, pack, moment);
            }

            if (one.StepUp is { } module)
            {
                Against("limit current", module, PartQuantities.LimitCurrent, pack, moment);
                if (shelf.Value(module, PartQuantities.LockOutVolts) is { } lockOut)
                {
                    limits.Add(new($"lock-out volts of {shelf[module].Name}", module, moment.ModuleV!, lockOut, lockOut.Si / moment.ModuleV!.Si, moment.When));
                }
            }

            // A label is for steady watts; the few tenths of a second cold are not what it speaks of.
            if (moment != moments[0])
            {
                Against("most input volts", one.Load, PartQuantities.MostInputVolts, moment.LoadV!, moment);
                Against("label volts", one.Load, PartQuantities.RatedVolts, Held(moment.LoadV!, Math.Sqrt(one.DutyCeiling)), moment, atDuty);
                Against("label watts", one.Load, PartQuantities.RatedPower, Held(moment.LoadW!, one.DutyCeiling), moment, atDuty);
            }
        }

        return [.. limits.GroupBy(limit => limit.What).Select(group => group.MaxBy(limit => limit.Share)!).OrderByDescending(limit => limit.Share)];

        void Rated(PartId part, Estimate asked, LoopMoment moment) => Against("rated current", part, PartQuantities.RatedCurrent, asked, moment);

        void Against(string what, PartId part, string quantity, Estimate asked, LoopMoment moment, string duty = "")
        {
            if (shelf.Value(part, quantity) is { Si: > 0 } stands)
            {
                limits.Add(new($"{what} of {shelf[part].Name}", part, asked, stands, asked.Si / stands.Si, moment.When + duty));
            }
        }
    }

    /// <summary>What stands steadily under a duty ceiling: watts by the duty, volts by its root.</summary>
    private static Estimate Held(Estimate value, double factor) => new(value.Value * factor, value.Unit, value.Doubts.Times(factor), value.Origin);
}
