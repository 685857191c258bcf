using System.Text.Json;
using System.Text.RegularExpressions;
using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Tests.Handbook;

public partial class TablesTests
{
    public static TheoryData<string> Names => [.. Tables.Names];

    [Theory, MemberData(nameof(Names))]
    public void Every_table_file_loads_under_its_own_name(string name) => Assert.Equal(name, Tables.Find(name).Name);

    [Fact]
    public void Every_table_file_of_the_data_folder_is_built_in()
    {
        string folder = Path.Combine(Repository.Root, "data");
        var files = Directory.EnumerateFiles(folder, "*.json", SearchOption.AllDirectories)
            .Where(path => Path.GetFileName(Path.GetDirectoryName(path)) != "trials").Select(path => Path.GetFileNameWithoutExtension(path)).Where(stem => stem != "sources");
        Assert.Equal(files.Order(StringComparer.Ordinal), Tables.Names);
    }

    [Theory, MemberData(nameof(Names))]
    public void Every_row_of_a_table_names_a_source_of_the_bibliography(string name) =>
        Assert.All(Tables.Find(name).Rows, row => Assert.True(Bibliography.Own.Knows(row.Source.Key)));

    [Fact]
    public void Every_source_cited_in_a_comment_of_Core_stands_in_the_bibliography()
    {
        string folder = Path.Combine(Repository.Root, "src", "Heatwright.Core");
        var cited = Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(File.ReadLines)
            .Where(line => line.Contains("//", StringComparison.Ordinal))
            .SelectMany(line => BracketedKey().Matches(line[line.IndexOf("//", StringComparison.Ordinal)..]).Select(match => match.Groups[1].Value))
            .Distinct().ToList();
        Assert.NotEmpty(cited);
        Assert.DoesNotContain(cited, key => Bibliography.Own.Find(key) is null);
    }

    [Fact]
    public void Every_source_says_title_author_year_and_licence()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, "data", "sources.json")));
        Assert.Equal(file.RootElement.EnumerateObject().Count(), Bibliography.Own.All.Count());
        Assert.All(Bibliography.Own.All, source => Assert.InRange(source.Year, 1800, 2030));
    }

    [Fact]
    public void A_remembered_emissivity_says_so_where_it_is_used()
    {
        var row = Tables.Find("emissivity").Row("paint black matt");
        Assert.Equal(0.95, row.Number("emissivity"));   // [incropera-dewitt] Table A.11, from memory
        Assert.Equal(Mark.FromMemory, row.Mark);
        Assert.Contains("from memory", Assert.IsType<Origin.Published>(row.Origin).Where, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_that_is_not_there_says_which_there_are() =>
        Assert.Contains("emissivity", Assert.Throws<KeyNotFoundException>(() => Tables.Find("no such table")).Message, StringComparison.Ordinal);

    /// <summary>Source keys hold at least one hyphen, which tells them from other words in brackets.</summary>
    [GeneratedRegex(@"\[([a-z][a-z0-9]*(?:-[a-z0-9]+)+)\]")]
    private static partial Regex BracketedKey();
}
