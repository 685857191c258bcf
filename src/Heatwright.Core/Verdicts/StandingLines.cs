using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.Verdicts;

/// <summary>Requirements that no run of the plant decides: size, mass, money, charging and standing by, from what is known of the parts.</summary>
internal sealed class StandingLines(Shelf shelf, Arrangement arrangement, SafetyFindings safety, ulong seed)
{
    /// <summary>The verdict on a line, or null where the line is about a run.</summary>
    public RequirementVerdict? Line(Requirement line) => line.Quantity switch
    {
        RequirementQuantity.InsideDiameter => Diameter(line),
        RequirementQuantity.PartsCost => Cost(line),
        RequirementQuantity.CostAtTen => Unknown(line, "no prices for ten are kept", "ask the sellers for the price at ten"),
        RequirementQuantity.CostAtHundred => Unknown(line, "no prices for a hundred are kept", "ask the sellers for the price at a hundred"),
        RequirementQuantity.ChargeTime => Charging(line),
        RequirementQuantity.ChargerHeat => ChargerHeat(line),
        RequirementQuantity.Mass => Mass(line),
        RequirementQuantity.ToolLength => Length(line),
        RequirementQuantity.StandByTime => StandBy(line),
        _ => null,
    };

    /// <summary>What every tool has beside its parts, and no shelf states a mass of.</summary>
    public const string NotCounted = "joints and case";

    private static RequirementVerdict Unknown(Requirement line, string because, string tells) => new(line, VerdictWord.NeedMoreReadings, null, "not known", null, because, tells);

    private RequirementVerdict Mass(Requirement line)
    {
        List<Input> masses = [];
        List<string> open = [], outside = [];
        foreach (var id in arrangement.Parts())
        {
            int pieces = arrangement.Pieces(shelf[id]);
            if (!shelf[id].IsCarried())
            {
                outside.Add(shelf[id].Name);
            }
            else if (shelf.Value(id, PartQuantities.Mass) is { } mass)
            {
                masses.Add(new($"{pieces} × {shelf[id].Name}", Propagate.Through(one => pieces * one, Units.Kilogram, "pieces times mass", new Input("mass", mass))));
            }
            else
            {
                open.Add(shelf[id].Name);
            }
        }

        if (open.Count > 0)
        {
            return Unknown(line, $"the mass of {string.Join(", ", open)} is not known", "weigh it on a kitchen scale");
        }

        var sum = Propagate.Through(all => all.Sum(), Units.Find(line.Unit)!, "sum of masses", [.. masses]);
        string stands = outside.Count > 0 ? $"; {string.Join(" and ", outside)} stands outside and is not weighed" : "";
        return Weighed(line, sum, $"{masses.Count} parts weighed, {NotCounted} not counted{stands}", "lighter or fewer cells") with { LeftOut = NotCounted };
    }

    private RequirementVerdict Length(Requirement line) => shelf.Value(arrangement.Handle, PartQuantities.Length) is { } handle && shelf.Value(arrangement.Load, PartQuantities.Length) is { } end
        ? Weighed(line, Propagate.Through((a, b) => a + b, Units.Find(line.Unit)!, "handle and working end", new Input("handle", handle), new Input("working end", end)), "handle and working end in line", "a shorter handle")
        : Unknown(line, "the length of handle or working end is not known", "measure it");

    /// <summary>Charge over all that draws while the tool is off: the controller, and a lamp's driver that is not switched off with it.</summary>
    private RequirementVerdict StandBy(Requirement line)
    {
        Input[] drains = [.. new[] { arrangement.Controller, arrangement.Lamp }.OfType<PartId>().Select(id => (Id: id, Drain: shelf.Value(id, PartQuantities.Drain))).Where(pair => pair.Drain is not null)
            .Select(pair => new Input($"drain of {shelf[pair.Id].Name}", pair.Drain!))];
        if (shelf.Value(arrangement.Cell, PartQuantities.Capacity) is not { } capacity || drains.Length == 0)
        {
            return Unknown(line, "capacity or drain is not known", "read the drain with the load off");
        }

        string draws = string.Join(" and ", drains.Select(drain => Display.Rounded(drain.Value)));
        return Weighed(line, Propagate.Through(all => arrangement.Parallel * all[0] / all.Skip(1).Sum(), Units.Find(line.Unit)!, "charge over drain", [new Input("capacity", capacity), .. drains]),
            $"the electronics draw {draws} all the time", "a switch that takes the electronics off the cells");
    }

    /// <summary>A linear charger turns volts it does not need into heat, most near an empty cell; a step-up charger loses 10 to 20 % of what it passes.</summary>
    private RequirementVerdict ChargerHeat(Requirement line)
    {
        if (!SafetyCheck.ChargerSuits(arrangement, shelf) || shelf.ChargeCurrent(arrangement.Charger!.Value) is not { } current)
        {
            return Unknown(line, "no charger made for this pack, or its current is not known", "read the charger's current");
        }

        var origin = new Origin.Assumed("USB source 4.75 to 5.25 V and a cell at 3.0 to 3.4 V, where a linear charger is hottest; common practice, no source");
        var source = Estimate.Within(5.0, 0.25, Units.Volt, "source of the charger", CauseGroup.Assumption, origin);
        var cell = Estimate.Within(3.2, 0.2, Units.Volt, "cell at the start of charging", CauseGroup.Assumption, origin);
        var lost = Estimate.Within(0.15, 0.05, Units.One, "loss of a step-up charger", CauseGroup.Assumption, new Origin.Assumed("10 to 20 % lost, common practice, no source"));
        int series = arrangement.Series;
        var heat = series == 1
            ? Propagate.Through((v, c, i) => Math.Max(0, v - c) * i, Units.Find(line.Unit)!, "volts left over times current", new Input("source", source), new Input("cell", cell), new Input("charge current", current))
            : Propagate.Through((share, c, i) => share / (1 - share) * series * c * i, Units.Find(line.Unit)!, "share lost of what is passed", new Input("share lost", lost), new Input("cell", cell), new Input("charge current", current));
        return Weighed(line, heat, series == 1 ? $"taken as linear: {Display.Rounded(current)} under the volts left over" : $"taken as a step-up charger at {Display.Rounded(current)}", "a smaller charge current");
    }

    private RequirementVerdict Diameter(Requirement line)
    {
        var fit = HandleFit.Of(arrangement, shelf);
        if (!double.IsFinite(fit.NeededM))
        {
            return new(line, VerdictWord.NoGo, null, "does not fit", 0, $"cells and boards do not go into this handle: {fit.HowWords}", "a longer handle, or fewer or shorter cells");
        }

        var value = Estimate.Within(fit.NeededM * 1000, 0.3, Units.Millimetre, $"{arrangement.Id} callipers", CauseGroup.Instrument, new Origin.WorkedOut("circles and boards in a tube", SizeInputs()));
        return Weighed(line, value.In(Units.Find(line.Unit)!), fit.HowWords, "a wider handle, or slimmer cells");
    }

    private RequirementVerdict Cost(Requirement line)
    {
        List<Input> prices = [];
        List<string> unpriced = [];
        var doubts = Doubts.None;
        double sum = 0;
        foreach (var id in arrangement.Parts())
        {
            if (shelf.Value(id, PartQuantities.Price) is { } price)
            {
                int pieces = arrangement.Pieces(shelf[id]);
                sum += pieces * price.Value;
                doubts += price.Doubts.Times(pieces);
                prices.Add(new($"{shelf[id].Name}{(pieces > 1 ? $" × {pieces}" : "")}", price));
            }
            else
            {
                unpriced.Add(shelf[id].Name);
            }
        }

        // What has no price is not free: the sum can only miss the limit yet, not keep it.
        if (unpriced.Count > 0 && line.AtMost && sum <= line.Limit)
        {
            return Unknown(line, $"{unpriced.Count} of {unpriced.Count + prices.Count} parts have no price: {string.Join(", ", unpriced)}", "state each price on the shelf, from the receipt, or 0 for what costs nothing; what is only assumed is put there first");
        }

        string because = $"{prices.Count} parts priced{(unpriced.Count > 0 ? $", {unpriced.Count} without a price" : "")}{Counted()}{(safety.Conditions.Count > 0 ? ", what its conditions ask for beside them not counted" : "")}";
        string[] left = [.. unpriced, .. safety.Conditions.Select(condition => condition.Words)];
        return Weighed(line, new Estimate(sum, Units.Money, doubts, new Origin.WorkedOut("sum of prices", prices)), because, "a cheaper part, or a larger budget") with { LeftOut = string.Join(", ", left) };
    }

    /// <summary>Priced parts of which there are several, and those not on hand: both are in the sum, and a maker who looks at the receipt must know it.</summary>
    private string Counted()
    {
        var priced = arrangement.Parts().Select(id => (Part: shelf[id], Pieces: arrangement.Pieces(shelf[id]))).Where(one => shelf.Value(one.Part.Id, PartQuantities.Price) is not null).ToArray();
        string[] several = [.. priced.Where(one => one.Pieces > 1).Select(one => $"{one.Pieces} × {one.Part.Name}")];
        string[] bought = [.. priced.Select(one => (one.Part.Name, Lacking: arrangement.Lacking(one.Part))).Where(one => one.Lacking > 0).Select(one => $"{one.Lacking} × {one.Name}")];
        return (several.Length > 0 ? $", with {string.Join(" and ", several)}" : "") + (bought.Length > 0 ? $", among them still to be bought {string.Join(" and ", bought)}" : "");
    }

    private RequirementVerdict Charging(Requirement line)
    {
        if (!SafetyCheck.ChargerSuits(arrangement, shelf))
        {
            return new(line, VerdictWord.GoIf, null, "not known", null, "the arrangement has no charger made for its pack", "a charger made for it is bought");
        }

        var charger = arrangement.Charger!.Value;
        if (shelf.ChargeCurrent(charger) is not { } current || shelf.Value(arrangement.Cell, PartQuantities.Capacity) is not { } capacity)
        {
            return new(line, VerdictWord.NeedMoreReadings, null, "not known", null, "charge current or capacity is not known", "read the charger's current");
        }

        // Constant current to about nine tenths, then a tail: the whole takes about 1.25 times charge over current (common practice, 1.1 to 1.4).
        var tail = Estimate.Within(1.25, 0.15, Units.One, "charge tail", CauseGroup.Assumption, new Origin.Assumed("constant-voltage tail 1.1 to 1.4 times, common practice, no source"));
        var time = Propagate.Through((c, i, t) => arrangement.Parallel * c / i * t, Units.Find(line.Unit) ?? Units.Hour, "charge over current, with tail",
            new Input("capacity", capacity), new Input("charge current", current), new Input("tail", tail));
        return Weighed(line, time, $"{shelf[charger].Name} at {Display.Rounded(current)}", "a stronger charger the cell may take");
    }

    private RequirementVerdict Weighed(Requirement line, Estimate value, string because, string remedy)
    {
        double limit = value.Unit.ToSi(line.Limit);
        double[] drawn = [.. Enumerable.Range(0, 2000).Select(i => value.DrawnSi(new Draw(seed, i)))];
        double probability = drawn.Count(si => line.AtMost ? si <= limit : si >= limit) / (double)drawn.Length;
        bool claimed = value.Origin.Leaves().Any(leaf => leaf is Origin.Claimed);
        var word = probability >= Judge.Sure ? (claimed && line.Must ? VerdictWord.GoIf : VerdictWord.Go) : probability <= 1 - Judge.Sure ? VerdictWord.NoGo : VerdictWord.NeedMoreReadings;
        string confirm = word == VerdictWord.GoIf ? "a reading confirms what the seller claims of " + Claims(value) : word == VerdictWord.Go ? "" : remedy;
        return new(line, word, value, Display.Rounded(value), probability, because, confirm)
        {
            Drawn = [.. drawn.Take(400).Select(value.Unit.FromSi)],
            Margin = line.AtMost ? line.Limit - value.Value : value.Value - line.Limit,
        };
    }

    private static string Claims(Estimate value) => value.Origin is Origin.WorkedOut worked
        ? string.Join(" and ", worked.From.Where(input => input.Value.Origin.Weakest() is Origin.Claimed).Select(input => input.Name).Take(2))
        : "it";

    private List<Input> SizeInputs()
    {
        List<Input> inputs = [];
        foreach (var (id, quantity) in new[] { (arrangement.Cell, PartQuantities.Diameter), (arrangement.Cell, PartQuantities.Length), (arrangement.Handle, PartQuantities.Length) })
        {
            if (shelf.Value(id, quantity) is { } size)
            {
                inputs.Add(new($"{quantity}, {shelf[id].Name}", size));
            }
        }

        return inputs;
    }
}
