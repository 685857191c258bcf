using System.Text.RegularExpressions;
using Heatwright.Cli;
using Heatwright.Handbook;
using Heatwright.Jobs.Sums;

namespace Heatwright.Tests.Jobs;

/// <summary>The pages of docs/laws are what the laws say of themselves, today.</summary>
public partial class LawPagesTests
{
    private static readonly IReadOnlyDictionary<string, string> Fresh = LawPages.All();

    private static readonly string Folder = Path.Combine(Repository.Root, "docs", "laws");

    [Fact]
    public void Every_page_and_picture_is_what_the_laws_give_today()
    {
        var fresh = Fresh;
        string[] there = [.. Directory.EnumerateFiles(Folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
        Assert.Equal(fresh.Keys, there);
        Assert.All(fresh, file => Assert.True(file.Value == File.ReadAllText(Path.Combine(Folder, file.Key)).ReplaceLineEndings("\n"),
            $"docs/laws/{file.Key} is not what the laws say: run 'dotnet run --project src/Heatwright -- sum --write-pages docs/laws'."));
    }

    [Fact]
    public void Every_law_is_listed_by_topic_and_has_a_page_with_formula_source_and_example()
    {
        var files = Fresh;
        Assert.All(LawCard.All, card =>
        {
            string page = files[LawPages.Family(card) + ".md"];
            Assert.Contains($"## {card.Law.Name}\n", page, StringComparison.Ordinal);
            Assert.Contains(card.Law.Formula, page, StringComparison.Ordinal);
            Assert.Contains(card.SourceTitle, page, StringComparison.Ordinal);
            Assert.Contains($"heatwright sum {card.Law.Name} {card.Law.Example}\n", page, StringComparison.Ordinal);
            Assert.Contains($"]({LawPages.Family(card)}.md#{card.Law.Name})", files["README.md"], StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Every_link_of_a_page_leads_to_a_file() => Assert.All(Fresh, page =>
        Assert.All(Link().Matches(page.Value).Select(match => match.Groups[1].Value), to => Assert.True(Fresh.ContainsKey(to), $"{page.Key}: {to}")));

    [Fact]
    public void Pictures_carry_no_ground_and_stay_small()
    {
        var pictures = Fresh.Where(file => file.Key.EndsWith(".svg", StringComparison.Ordinal)).ToArray();
        Assert.True(pictures.Length > LawCard.All.Count * 3 / 4, $"{pictures.Length} pictures of {LawCard.All.Count} laws");
        Assert.All(pictures, picture =>
        {
            Assert.DoesNotContain("<rect", picture.Value, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", picture.Value, StringComparison.Ordinal);
            Assert.True(picture.Value.Length < 8000, picture.Key);
        });
        Assert.True(Fresh.Sum(file => file.Value.Length) < 1_500_000);
    }

    [Fact]
    public void The_command_writes_what_the_test_reads()
    {
        string folder = Directory.CreateTempSubdirectory("heatwright-laws-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "gone.md"), "a law that is no more");
            using var output = new StringWriter();
            Assert.Equal(ExitCodes.Done, CommandLine.Run(["sum", "--write-pages", folder], new Screen(output, output, false, false, 100)));
            Assert.Equal(Fresh.Keys, Directory.EnumerateFiles(folder).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [GeneratedRegex(@"\]\(([^)#]+)(?:#[^)]*)?\)")]
    private static partial Regex Link();
}
