using System.Text.RegularExpressions;
using Heatwright.Parts;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.Jobs.Sharing;

/// <summary>A study without what its maker does not want to show.</summary>
internal static partial class LeaveOut
{
    private static readonly string[] Prices = ["price", "price at 10", "price at 100"];

    private static readonly RequirementQuantity[] Costs = [RequirementQuantity.PartsCost, RequirementQuantity.CostAtTen, RequirementQuantity.CostAtHundred];

    /// <summary>The study as the choice leaves it.</summary>
    public static Study Of(Study study, ShareChoice choice)
    {
        var shown = study with { Own = null };
        shown = choice.Prices ? WithoutPrices(shown) : shown;
        shown = choice.Notes || choice.Names ? WithoutNotes(shown) : shown;
        shown = choice.Sellers || choice.Names ? WithoutSellers(shown) : shown;
        return choice.Names ? NamesLeftOut.Of(shown) : shown;
    }

    /// <summary>True where the seller's text of a part may name a price: a currency, a word for it, or a bare number with two decimals. It stays at home whole.</summary>
    public static bool NamesPrice(Part part) => part.Listing is { } text && PriceInText().IsMatch(text);

    private static Study WithoutPrices(Study study)
    {
        var costs = study.Brief?.Requirements.Concat(study.Decisions.SelectMany(card => card.BriefThen.Requirements)).Where(line => Costs.Contains(line.Quantity)).Select(line => line.Id).ToHashSet(StringComparer.Ordinal) ?? [];
        return study with
        {
            Brief = study.Brief is { } brief ? Without(brief) : null,
            Parts = [.. study.Parts.Select(part => part with { Listing = NamesPrice(part) ? null : part.Listing, Stated = [.. part.Stated.Where(stated => !Prices.Contains(stated.Quantity))], Words = part.Words.Where(word => !Prices.Contains(word.Key)).ToDictionarySorted() })],
            Tools = [.. study.Tools.Select(tool => tool with { Readings = [.. tool.Readings.Where(reading => ToolReading.Speaks(reading.Quantity) is not { } quantity || !Costs.Contains(quantity))] })],
            Decisions = [.. study.Decisions.Select(card => card with
            {
                Lines = [.. card.Lines.Where(line => !costs.Contains(line.Requirement))],
                Accepted = [.. card.Accepted.Where(line => !costs.Contains(line.Requirement))],
                BriefThen = Without(card.BriefThen),
            })],
            PrototypeReadings = [.. study.PrototypeReadings.Where(reading => !costs.Contains(reading.Requirement))],
        };
    }

    private static Brief Without(Brief brief) => brief with { Requirements = [.. brief.Requirements.Where(line => !Costs.Contains(line.Quantity))] };

    private static Study WithoutNotes(Study study) => study with
    {
        Note = "",
        Parts = [.. study.Parts.Select(part => part with { Note = "", Samples = part.Samples is { } samples ? [.. samples.Select(sample => sample with { Note = "" })] : null })],
        Tools = [.. study.Tools.Select(tool => tool with { Note = "" })],
        Files = [.. study.Files.Select(file => file with { Note = "" })],
    };

    private static Study WithoutSellers(Study study) => study with
    {
        Parts = [.. study.Parts.Select(part => part with { Listing = null, Stated = [.. part.Stated.Select(stated => stated.Origin == "claimed" ? stated with { Text = "" } : stated)] })],
    };

    [GeneratedRegex(@"[€$£¥₹]|\b(?:EUR|USD|GBP|CHF|CNY|prices?|costs?|only)\b|\d[.,]\d\d(?!\d)(?!\s*(?:[kmµu]?(?:V|A|W|Ω|ohms?|Hz|m|g|Ah|Wh|F|H|J|K)\b|Ω|mm|cm|°|%|[x×]))", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PriceInText();
}
