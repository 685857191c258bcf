using System.CommandLine;
using Heatwright.Jobs;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>The command that pulls claims out of a seller's text.</summary>
internal static class ClaimCommand
{
    public static Command Claims(Screen screen)
    {
        var text = new Option<string>("--text") { Description = "A file with the seller's text; - reads what is piped in.", Required = true };
        var kind = new Option<string?>("--kind") { Description = "What the part is, where the text does not say." };
        var json = Answers.Json<ListingView>();
        var command = new Command("claims", "Pulls claims out of a seller's text, as candidates to confirm; nothing is stored. Example: heatwright claims --text listing.txt") { text, kind, json };
        command.SetAction(parsed => Answers.Give(screen, ReadText.Of(parsed.GetValue(text)!).Then(pasted => Read(pasted, parsed.GetValue(kind))), parsed.GetValue(json), ListingView.Of, found => PartTables.Claims(screen, found)));
        return command;
    }

    private static Checked<ListingClaims> Read(string text, string? typed)
    {
        var kind = typed is null ? null : EnterPart.KindOf(typed);
        string kinds = string.Join(", ", Enum.GetValues<PartKind>().Select(EnterPart.Word));
        if (typed is not null && kind is null)
        {
            return new(new Problem("There is no such kind of part.", "--kind", typed, kinds, "Choose one of them."));
        }

        return ListingReader.Read(text, kind).Then(found => found.Kind is not null ? new Checked<ListingClaims>(found)
            : new(new Problem("The text does not say what it sells.", "--text", text.Trim() is { Length: > 60 } longer ? longer[..60] + "…" : text.Trim(), kinds, "Say it with --kind, for example --kind heater.")));
    }
}
