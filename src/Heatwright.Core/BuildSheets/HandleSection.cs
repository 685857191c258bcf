using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Board outline, packing of the handle, and its temperatures.</summary>
internal static class HandleSection
{
    private const double InsulatorMm = 1;

    /// <summary>A tube grip of which nothing is stated: common practice, no source.</summary>
    private const double UsualBoreMm = 30, UsualLengthMm = 180;

    public static SheetSection Board(SheetAsk ask, PowerPoint point)
    {
        var c = ask.Choices;
        var lines = new Lines(ask);
        double trace = Physics.Trace.WidthM(point.MostA.Si, c.Si("trace-rise"), c["copper"].Value * 1e-6) * 1000;
        List<BoardArea> areas =
        [
            new("controller and its parts", 250, "small controller with regulator, crystal-free; common practice, no source"),
            new("amplifier, clamp and filter", 80, "one small amplifier with eight small parts; common practice, no source"),
            new("heater's traces", 2 * (trace + 1) * c["trace-length"].Value, "two traces of the width worked out, 0.5 mm clear on both sides"),
            new("switch and its copper", 120, "power package on copper that spreads its heat; common practice, no source"),
            new("connectors", 150, "pack, heater, sensor, programming; common practice, no source"),
        ];
        var (bore, _, unsaid) = Inside(ask);
        double width = Math.Floor(Math.Min(24, 0.75 * bore));
        var outline = BoardOutline.Of(areas, (int)c.Si("board-sides"), width);
        lines.Add("Area of the outline", outline.AreaMm2);
        lines.Say("Outline", $"{Lines.N(outline.WidthMm)} × {Lines.N(outline.LengthMm)} mm, {Lines.N(outline.HeightMm)} mm high with parts on {(c.Si("board-sides") == 2 ? "both sides" : "one side")}{(unsaid.Contains("diameter", StringComparison.Ordinal) ? $"; for a handle of {Lines.N(bore)} mm inside, assumed" : "")}");
        lines.Choice("Copper", "copper");
        return new("board", "Board", lines.All) { Table = new("What takes room", ["what", "mm²", "why"], [.. areas.Select(area => (IReadOnlyList<string>)[area.Name, Lines.N(area.AreaMm2, "0"), area.Why])]) };
    }

    public static (SheetSection Section, PackedHandle? Packed, string? Drawing) Of(SheetAsk ask, AssembledTool tool, PlantRun run)
    {
        var c = ask.Choices;
        var lines = new Lines(ask);
        var things = Things(ask);
        var (bore, length, unsaid) = Inside(ask);
        double gap = c["hot-gap"].Value;
        var packed = HandlePacking.Shortest(new SectionHole(bore, 0), length, things, InsulatorMm, gap) is { } found ? found with { Assumed = unsaid } : null;
        bool fits = packed is not null && packed.UsedMm <= length + 1e-6;
        List<Problem> problems = [];
        if (!fits)
        {
            double narrowest = HandlePacking.NarrowestMm(length, things, InsulatorMm, gap);
            problems.Add(new("Cells and boards do not go into the handle.", ask.Shelf[ask.Arrangement.Handle].Name, packed is null ? $"{Lines.N(bore)} mm inside" : $"{Lines.N(packed.UsedMm, "0")} mm needed", $"{Lines.N(length, "0")} mm long, {Lines.N(bore)} mm inside{(unsaid.Length > 0 ? $" ({unsaid} assumed)" : "")}",
                double.IsFinite(narrowest) ? $"Take a handle of {Lines.N(narrowest)} mm inside at this length{(packed is null ? "" : $", or one of {Lines.N(packed.UsedMm, "0")} mm length at this bore")}." : packed is null ? "Take a wider and longer handle." : $"Take a handle of {Lines.N(packed.UsedMm, "0")} mm length."));
        }

        string[] guessed = [.. unsaid.Length > 0 ? [$"handle: {unsaid}"] : Array.Empty<string>(), .. things.Where(thing => thing.Assumed.Length > 0).Select(thing => $"{thing.Name}: {thing.Assumed}")];
        if (guessed.Length > 0)
        {
            lines.Say("Sizes assumed, not stated", $"{string.Join("; ", guessed)}: marked * in the drawing, which is to scale only for what is measured; take callipers and state them", warns: true);
        }

        if (packed is not null)
        {
            Input hot = c["hot-gap"].Input;
            lines.Made("Length used", packed.UsedMm, Units.Millimetre, packed.IsProven ? "shortest of all ways to share the things out over stations and lanes" : "shortest found; there are more ways than were tried", [hot], $"of {Lines.N(length, "0")} mm, with {Lines.N(gap, "0")} mm free before the hot end", !fits);
            lines.Made("Mass inside", packed.MassG, Units.Gram, "sum of the parts", [], $"handle and {ask.LoadWord} come on top{(things.Where(thing => thing.MassG == 0).Select(thing => thing.Name).ToArray() is { Length: > 0 } light ? $"; not weighed: {And(light)}" : "")}{(ask.Arrangement.Charger is { } charger && !ask.Shelf[charger].IsCarried() ? $"; '{ask.Shelf[charger].Name}' stands outside" : "")}");
            lines.Made("Balances from the cool end", packed.BalanceMm, Units.Millimetre, "masses times their middles", []);
        }

        double grip = run.HighestK[1] - Units.ZeroCelsiusK, cells = run.HighestK[2] - Units.ZeroCelsiusK;
        Origin predicted = new Origin.Predicted(ask.Arrangement.Id, ask.State, [.. ask.Builder.Inputs.Select(input => new Input(input.Name, input.Value))]);
        lines.Add("Grip at work, highest", Estimate.Exact(grip, Units.Celsius, predicted), grip > 43 ? "above 43 °C, what may be held longer than 10 min" : grip > 48 ? "" : "may be held for long", grip > 43);
        lines.Add("Cells at work, highest", Estimate.Exact(cells, Units.Celsius, predicted), "limit 60 °C", cells > 60);
        lines.Say("Material of grip and case", grip < c.Si("softening") - 10 ? $"taken to soften at {Lines.N(c.Si("softening"), "0")} °C, as common plastics do: {Lines.N(c.Si("softening") - grip, "0")} K away from the grip; nothing that softens or chars may touch the {(ask.Arrangement.Lamp is null ? "shank" : "lamp's head")}" : "too soft for this grip: take one that softens higher", grip >= c.Si("softening") - 10);
        string? drawing = packed is null ? null : SectionDrawing.Svg(packed, $"{ask.StudyName}, arrangement {ask.Arrangement.Letter}: section of the handle");
        var rows = packed?.Places.Select(place => (IReadOnlyList<string>)[Lines.N(SectionDrawing.Number(packed, place)), place.Thing.Name, Lines.N(place.FromMm, "0.0"), Lines.N(place.ToMm, "0.0"), Lines.N(place.Across.XMm, "0.0"), Lines.N(place.Across.YMm, "0.0"),
            place.Across.Shape.IsRound ? $"ø {Lines.N(place.Across.Shape.WidthMm)}" : $"{Lines.N(place.Across.Shape.WidthMm)} × {Lines.N(place.Across.Shape.HeightMm)}", place.Thing.Assumed.Length > 0 ? $"{place.Thing.Assumed} assumed" : "stated"]).ToArray() ?? [];
        return (new SheetSection("handle", "Handle", lines.All) { Problems = problems, Table = packed is null ? null : new("Places, mm: along from the cool end, across from the axis", ["no.", "what", "from", "to", "x", "y", "across", "sizes"], rows) }, packed, drawing);
    }

    private static List<PackedThing> Things(SheetAsk ask)
    {
        var a = ask.Arrangement;
        List<PackedThing> things = [];
        var room = CellRoom.Of(a, ask.Shelf);
        var contacts = ask.Shelf[a.Contacts];
        int cells = a.Series * a.Parallel;
        double gram = Gram(ask, a.Cell) + (room.InHolder ? Gram(ask, a.Contacts) * a.Pieces(contacts) / cells : 0);
        for (int i = 0; i < cells; i++)
        {
            string name = cells == 1 ? "cell" : $"cell {i + 1}";
            things.Add(new(room.InHolder ? $"{name} in '{contacts.Name}'" : name, Mm(room.LengthM), Mm(room.WidthM), Mm(room.HeightM), gram) { IsCell = true, Assumed = room.Assumed });
        }

        foreach (var id in a.Boards(ask.Shelf).Append(a.Switch))
        {
            var sides = new[] { (PartQuantities.Length, 25.0), (PartQuantities.Width, 18), (PartQuantities.Height, 6) }.Select(side => (Word: side.Item1, Usual: side.Item2, Stated: ask.Shelf.Value(id, side.Item1))).ToArray();
            double Side(int i) => sides[i].Stated is { } stated ? Mm(stated.Si) : sides[i].Usual;
            things.Add(new(ask.Shelf[id].Name, Side(0), Side(1), Side(2), Gram(ask, id)) { Assumed = And([.. sides.Where(side => side.Stated is null).Select(side => side.Word)]) });
        }

        return things;
    }

    /// <summary>Inside of the handle: what is stated, and in words what is only assumed.</summary>
    private static (double BoreMm, double LengthMm, string Assumed) Inside(SheetAsk ask)
    {
        var bore = ask.Shelf.Value(ask.Arrangement.Handle, PartQuantities.Diameter);
        var length = ask.Shelf.Value(ask.Arrangement.Handle, PartQuantities.Length);
        return (bore is null ? UsualBoreMm : Mm(bore.Si), length is null ? UsualLengthMm : Mm(length.Si), And([.. new[] { bore is null ? "diameter" : "", length is null ? "length" : "" }.Where(word => word.Length > 0)]));
    }

    private static string And(string[] words) => words.Length > 1 ? $"{string.Join(", ", words.SkipLast(1))} and {words[^1]}" : string.Concat(words);

    private static double Mm(double metres) => Math.Round(metres * 1000, 3);

    private static double Gram(SheetAsk ask, PartId id) => (ask.Shelf.Value(id, PartQuantities.Mass)?.Si ?? 0) * 1000;
}
