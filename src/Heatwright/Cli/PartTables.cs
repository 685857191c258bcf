using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Parts and claims as tables for people.</summary>
internal static class PartTables
{
    public static void Entered(Screen screen, PartEntered done)
    {
        screen.Say($"{done.Part.Id}  {done.Part.Name}: {Number(done.Part.Stated.Count)} value{(done.Part.Stated.Count == 1 ? "" : "s")} stated, {Number(done.Part.Count)} on hand.");
        foreach (string said in done.Prices.Concat(done.OwnWords))
        {
            screen.Say("  " + said);
        }

        Doubts(screen, done.Doubts);
        PartNeed[] needed = [.. PartNeeds.Missing(done.Part, quantity => done.Found?.Find(quantity) is not null).Where(need => need.IsEssential)];
        if (needed.Length > 0)
        {
            screen.Hang("  Still needed: ", string.Join("; ", needed.Select(need => $"{need.Quantity}, by {need.How}")) + ".");
        }

        if (done.Left.Count > 0)
        {
            screen.Say($"  {Number(done.Left.Count)} claims of its text are not confirmed: {string.Join(", ", done.Left.Select(claim => $"{Number(claim.Number)} {Named(claim)}"))}. Confirm with --take.");
        }
    }

    public static void Show(Screen screen, PartView part)
    {
        string words = string.Join(", ", part.Words.Select(word => $"{word.Key} {word.Value}"));
        screen.Say($"{part.Id}  {part.Name}: {Kind(part)}, {part.From}, {Number(part.Count)} on hand{(words.Length > 0 ? ", " + words : "")}");
        var table = Answers.Table("counts", "quantity", "value", "origin", "piece", "words");
        foreach (var value in part.Values)
        {
            table.Row(value.IsBest ? "*" : "", value.Quantity, Shown(value), value.Origin, value.Sample is { } sample ? Number(sample) : "", value.Words);
        }

        screen.Show(table);
        screen.Say("* counts: the most trustworthy. ± is a standard doubt.");
        foreach (var sample in part.Samples ?? [])
        {
            screen.Say($"  piece {Number(sample.Number)}: {sample.State}{(sample.Note.Length > 0 ? ", " + sample.Note : "")}");
        }

        Doubts(screen, part.Doubts);
        if (part.Missing.Count > 0)
        {
            screen.Say("  Not known yet: " + string.Join("; ", part.Missing.Select(need => $"{need.Quantity}{(need.Essential ? " (needed)" : "")}, by {need.How}")) + ".");
        }

        foreach (string line in new[] { part.Note, part.Photo is { } photo ? $"photo {photo}" : "", part.Whence is { } whence ? $"taken from '{whence.Study}', {whence.Part}" : "" }.Where(line => line.Length > 0))
        {
            screen.Say("  " + line);
        }

        if (part.Listing is { } listing)
        {
            screen.Say("  The seller's text:");
            screen.Say(listing.TrimEnd());
        }
    }

    private static string Kind(PartView part) => EnterPart.Typed(EnterPart.KindOf(part.Kind)!.Value);

    public static void List(Screen screen, IReadOnlyList<PartView> parts)
    {
        if (parts.Count == 0)
        {
            screen.Say("The shelf is empty. Begin with 'heatwright part add FILE PART KIND NAME'.");
            return;
        }

        var table = Answers.Table("part", "kind", "name", "on hand", "from", "best known", "still needed");
        foreach (var part in parts)
        {
            table.Row(part.Id, Kind(part), part.Name, Number(part.Count), part.From, string.Join(", ", part.Values.Where(value => value.IsBest).Take(2).Select(value => $"{value.Quantity} {Shown(value)} {value.Origin}")),
                string.Join(", ", part.Missing.Where(need => need.Essential).Select(need => need.Quantity)));
        }

        screen.Show(table);
        foreach (var part in parts)
        {
            Doubts(screen, part.Doubts, part.Id + ": ");
        }
    }

    public static void Claims(Screen screen, ListingClaims found)
    {
        screen.Say($"A {EnterPart.Spoken(found.Kind!.Value)}, it seems{(found.Words.Count > 0 ? ": " + string.Join(", ", found.Words.Select(word => $"{word.Key} {word.Value}")) : "")}. Nothing is taken before you confirm it.");
        var table = Answers.Table("number", "claim", "value", "the seller's words");
        foreach (var claim in found.Claims)
        {
            table.Row(Number(claim.Number), Named(claim), claim.Pieces > 1 ? $"{Value(claim)}, {claim.Together}" : Value(claim), claim.Words);
        }

        screen.Show(table);
        foreach (var claim in found.Claims.Where(claim => claim.Quantity is null))
        {
            screen.Say($"  {Value(claim)} of what? {string.Join(", ", claim.Choices)}.{(found.Kind == PartKind.StepUp ? " On a bare label it nearly always means the switch; the output gives much less." : "")}");
        }

        if (found.Pieces is { } pieces)
        {
            screen.Say($"  It is sold as {Number(pieces)} together: a price is that of one piece. Where you have them all, add --count {Number(pieces)}.");
        }

        Doubts(screen, ClaimChecks.Of(found));
        foreach (var left in found.Unread)
        {
            screen.Say($"  Left: {left.Words} ({left.Why})");
        }
    }

    public static string Named(Claim claim) => claim.Quantity ?? string.Join(" or ", claim.Choices) + "?";

    private static string Value(Claim claim) => $"{Display.Significant(claim.Value, 6)}{Display.Behind(claim.Unit)}{(claim.PlusMinus > 0 ? $" ±{Display.Significant(claim.PlusMinus, 4)}" : "")}".Trim();

    private static void Doubts(Screen screen, IReadOnlyList<ClaimDoubt> doubts, string who = "")
    {
        foreach (var doubt in doubts)
        {
            screen.Say($"  Doubtful: {who}{doubt.Why}. {doubt.Next} [{doubt.Source}]");
        }
    }

    private static string Shown(PartValueView value) => Display.Rounded(value.Value, value.StandardDoubt, Units.Find(value.Unit) ?? new Unit(value.Unit, Dimension.None));

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
