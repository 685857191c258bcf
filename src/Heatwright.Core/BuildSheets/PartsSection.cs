using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>The parts list of an arrangement: what stands on the shelf, and what the sheet adds.</summary>
internal static class PartsSection
{
    public static PartsList Of(SheetAsk ask, SensorChain? chain, double fuseA)
    {
        List<PartsLine> lines = [];
        var standIns = new StandIns(ask);
        Dictionary<string, int> numbers = [];
        string Ref(string letter)
        {
            numbers[letter] = numbers.GetValueOrDefault(letter) + 1;
            return letter + Lines.N(numbers[letter]);
        }

        foreach (var id in ask.Arrangement.Parts())
        {
            var part = ask.Shelf[id];
            int count = ask.Arrangement.Pieces(part);
            string letter = Letter(part.Kind);
            double? shelf = part.Best(PartQuantities.Price)?.Value;
            var prices = ask.Prices.GetValueOrDefault(id.Name);
            lines.Add(new([.. Enumerable.Range(0, Math.Min(count, 12)).Select(_ => Ref(letter))], count, Value(ask, part), Package(part), part.Name)
            {
                Prices = [prices?.One ?? shelf, prices?.Ten, prices?.Hundred],
                OnHand = part.From == "destroyed" ? 0 : part.Count,
                Alternates = string.Join("; ", standIns.Of(part)),
                Note = part.Note,
            });
        }

        if (chain is not null)
        {
            foreach (var (ohm, what) in new[] { (chain.Pair.FeedbackOhm, "feedback"), (chain.Pair.GroundOhm, "ground") })
            {
                int have = ask.Drawer?.Resistors.FirstOrDefault(one => one.Ohm == ohm)?.Count ?? 0;
                lines.Add(new([Ref("R")], 1, $"{ChainSearch.Ohms(ohm)}, {Lines.N(100 * chain.Wanted.Tolerance)} %", "0805 or leaded", $"gain resistor, {what}") { OnHand = have });
            }

            lines.Add(new([Ref("R"), Ref("R")], 2, ChainSearch.Ohms(ask.Choices.Si("input-resistor")), "0805 or leaded", "input resistor, one a wire"));
            lines.Add(new([Ref("R")], 1, ChainSearch.Ohms(ask.Choices.Si("pull-up")), "0805 or leaded", "pull-up that finds a broken sensor"));
            lines.Add(new([Ref("C")], 1, $"{Lines.N(ask.Choices["input-capacitor"].Value * 1000)} nF", "0805 or leaded", "input filter"));
            lines.Add(new([Ref("U")], 1, $"offset at most {Lines.N(ask.Choices["amplifier-offset"].Value)} µV", "", "amplifier, rail to rail"));
            lines.Add(new([Ref("D")], 1, "", "", "clamp, low leakage"));
        }

        if (ask.Arrangement.Controller is not null)
        {
            lines.Add(new([Ref("R")], 1, "47 kΩ", "0805 or leaded", "pull-down of the gate"));
            lines.Add(new([Ref("R")], 1, "100 Ω", "0805 or leaded", "gate resistor"));
        }

        lines.Add(new([Ref("F")], 1, $"{Lines.N(fuseA)} A, slow", "", "fuse at the cell's tab"));
        return new(lines);
    }

    public static SheetSection Section(SheetAsk ask, PartsList list)
    {
        var lines = new Lines(ask);
        foreach (int build in Enumerable.Range(0, PartsList.Builds.Count))
        {
            var (known, missing) = list.CostSoFar(build);
            int lacking = missing;
            if (lacking == list.Lines.Count)
            {
                lines.Say($"One tool when building {PartsList.Builds[build]}", $"no line has a price at {PartsList.Builds[build]}: state them on their parts, as {(build == 0 ? "price" : $"price at {PartsList.Builds[build]}")}");
                continue;
            }

            lines.Made($"One tool when building {PartsList.Builds[build]}", known, Units.Money, "sum of pieces times price", [], lacking == 0 ? "" : $"{lacking} of {list.Lines.Count} lines have no price at {PartsList.Builds[build]}: not counted", lacking > 0 && build == 0 && known == 0);
        }

        string[] fields = ["refs", "qty", "value", "description", "price1", "onhand", "buy", "alternates"];
        return new("parts", "Parts list", lines.All)
        {
            Table = new("One tool", [.. fields.Select(field => PartsList.Fields.First(one => one.Field == field).Heading)], [.. list.Lines.Select(line => (IReadOnlyList<string>)[.. fields.Select(field => PartsList.Cell(line, field))])]),
        };
    }

    private static string Letter(PartKind kind) => kind switch
    {
        PartKind.Cell => "BT",
        PartKind.Switch => "Q",
        PartKind.Heater => "HT",
        PartKind.Lamp => "DS",
        PartKind.Sensor => "TC",
        PartKind.Leads => "W",
        PartKind.CutOut => "F",
        PartKind.Handle => "MP",
        PartKind.Contacts => "X",
        _ => "A",
    };

    private static string Value(SheetAsk ask, Part part) => part.Kind switch
    {
        PartKind.Cell when ask.Shelf.Value(part.Id, PartQuantities.Capacity) is { } capacity => $"{Lines.N(capacity.In(Units.MilliampereHour).Value, "0")} mAh, {capacity.Origin.Word}",
        PartKind.Heater when ask.Shelf.Value(part.Id, PartQuantities.Ohms) is { } ohms => $"{Lines.N(ohms.In(Units.Ohm).Value)} Ω, {ohms.Origin.Word}",
        PartKind.Lamp when ask.Shelf.Value(part.Id, PartQuantities.LoadCurrent) is { } amps => $"{Lines.N(amps.In(Units.Ampere).Value)} A, {amps.Origin.Word}",
        PartKind.Charger => $"{(ask.Shelf.ChargeCurrent(part.Id) is { } amps ? $"{Lines.N(amps.In(Units.Ampere).Value)} A, {amps.Origin.Word}, " : "")}{(part.IsCarried() ? "in the handle" : "stands outside")}",
        PartKind.Sensor => part.Word("type").Length > 0 ? $"type {part.Word("type")}" : "",
        _ => part.Best(PartQuantities.RatedCurrent) is { } rated ? $"{Lines.N(rated.In(Units.Ampere).Value)} A" : "",
    };

    private static string Package(Part part)
    {
        string[] sides = [.. new[] { PartQuantities.Diameter, PartQuantities.Length, PartQuantities.Width, PartQuantities.Height }
            .Select(quantity => (quantity, value: part.Best(quantity))).Where(side => side.value is not null)
            .Select(side => (side.quantity == PartQuantities.Diameter ? "ø " : "") + Lines.N(side.value!.In(Units.Millimetre).Value))];
        return sides.Length > 0 ? string.Join(" × ", sides) + " mm" : "";
    }
}
