using System.Globalization;
using System.Text;
using Heatwright.Handbook;

namespace Heatwright.Jobs.Sums;

/// <summary>One page for each family of laws, and one that leads there by what the trade calls it. Made from what the laws say of themselves.</summary>
public static class LawPages
{
    private const string Notice = "<!-- Made from the laws themselves: heatwright sum --write-pages docs/laws. Change the law, not this page. -->\n\n";

    /// <summary>Every file, by its name.</summary>
    public static IReadOnlyDictionary<string, string> All()
    {
        SortedDictionary<string, string> files = new(StringComparer.Ordinal);
        var families = LawCard.All.GroupBy(Family).OrderBy(family => family.Key, StringComparer.Ordinal).ToArray();
        foreach (var family in families)
        {
            StringBuilder page = new(Notice);
            page.Append(CultureInfo.InvariantCulture, $"# {Title(family.Key)}\n\n");
            foreach (var card in family.OrderBy(card => card.Law.Name, StringComparer.Ordinal))
            {
                string? picture = LawPlot.Svg(card);
                if (picture is not null)
                {
                    files.Add(card.Law.Name + ".svg", picture);
                }

                Law(page, card, picture is not null);
            }

            page.Append("[All laws](README.md)\n");
            files.Add(family.Key + ".md", page.ToString());
        }

        files.Add("README.md", Index());
        return files;
    }

    /// <summary>Writes every file into a folder, and takes away pages of laws that are no more.</summary>
    public static void Write(string folder)
    {
        Directory.CreateDirectory(folder);
        var files = All();
        foreach (string old in Directory.EnumerateFiles(folder).Where(path => Path.GetExtension(path) is ".md" or ".svg" && !files.ContainsKey(Path.GetFileName(path))))
        {
            File.Delete(old);
        }

        foreach (var (name, text) in files)
        {
            File.WriteAllText(Path.Combine(folder, name), text);
        }
    }

    /// <summary>The name of the page a law stands on.</summary>
    public static string Family(LawCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        return LawCard.Kebab(card.Method.DeclaringType!.Name);
    }

    private static string Title(string family) => char.ToUpperInvariant(family[0]) + family[1..].Replace('-', ' ');

    private static string Index()
    {
        StringBuilder page = new(Notice);
        page.Append("# Laws, by what the trade calls them\n\n");
        page.Append(CultureInfo.InvariantCulture, $"{LawCard.All.Count} laws. Each can be called: `heatwright sum NAME input=value ...`, or in the browser under 'Quick sums'.\n");
        page.Append("Values are typed as a maker types them (4k7, 3,82, AWG24, 608F, 1oz); a doubt typed with ± comes back propagated.\n\n");
        foreach (var topic in LawCard.All.GroupBy(card => card.Law.Topic))
        {
            page.Append(CultureInfo.InvariantCulture, $"## {char.ToUpperInvariant(topic.Key[0])}{topic.Key[1..]}\n\n| sum | works out |\n|---|---|\n");
            foreach (var card in topic)
            {
                page.Append(CultureInfo.InvariantCulture, $"| [{card.Law.Name}]({Family(card)}.md#{card.Law.Name}) | {Cell(card.Says)} |\n");
            }

            page.Append('\n');
        }

        return page.ToString();
    }

    private static void Law(StringBuilder page, LawCard card, bool hasPicture)
    {
        page.Append(CultureInfo.InvariantCulture, $"## {card.Law.Name}\n\n{Sentence(card.Says)}\n\n```text\n{card.Law.Formula}\n```\n\n");
        page.Append("| input | symbol | unit | meaning | range | if not typed |\n|---|---|---|---|---|---|\n");
        foreach (var input in card.Inputs)
        {
            page.Append(CultureInfo.InvariantCulture, $"| {input.Name} | {Cell(input.Card.Symbol)} | {Cell(input.Card.Unit is "word" or "yes/no" ? "" : input.Card.Unit)} | {Cell(input.Card.Meaning)} | {Cell(input.Words.Count > 0 ? string.Join(", ", input.Words) : input.Range)} | {Cell(input.DefaultText.Length > 0 ? input.DefaultText : input.IsOptional ? "left out" : "")} |\n");
        }

        page.Append("\n| result | unit | meaning |\n|---|---|---|\n");
        foreach (var (name, unit, meaning, _) in card.Results())
        {
            page.Append(CultureInfo.InvariantCulture, $"| {name} | {Cell(unit)} | {Cell(meaning.Length > 0 ? meaning : card.Says)} |\n");
        }

        page.Append(CultureInfo.InvariantCulture, $"\nHolds for: {card.Law.Valid}.\n\nSource: {Source(card)}.\n\n");
        Example(page, card);
        if (hasPicture)
        {
            page.Append(CultureInfo.InvariantCulture, $"![{card.Law.Name} about its example]({card.Law.Name}.svg)\n\n");
        }
    }

    private static string Source(LawCard card) => Bibliography.Own.Find(card.Law.Source) is { } ? $"[{card.Law.Source}] {card.SourceTitle}" : card.SourceTitle;

    private static void Example(StringBuilder page, LawCard card)
    {
        page.Append(CultureInfo.InvariantCulture, $"```text\nheatwright sum {card.Law.Name} {card.Law.Example}\n");
        var answer = QuickSum.Run(card.Law.Name, card.Law.Example.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Value;
        foreach (var result in answer.Results)
        {
            page.Append(CultureInfo.InvariantCulture, $"  {(answer.Results.Count > 1 ? result.Name + "  " : "")}{Plain(result.Shown)}\n");
        }

        foreach (string caveat in answer.Caveats)
        {
            page.Append(CultureInfo.InvariantCulture, $"  Mind: {caveat}\n");
        }

        page.Append("```\n\n");
    }

    /// <summary>Blanks that do not break are for screens.</summary>
    private static string Plain(string text) => text.Replace('\u00A0', ' ').Replace('\u202F', ' ');

    private static string Sentence(string text) => text.Length == 0 ? "" : char.ToUpperInvariant(text[0]) + text[1..] + ".";

    private static string Cell(string text) => Plain(text).Replace("|", "\\|", StringComparison.Ordinal);
}
