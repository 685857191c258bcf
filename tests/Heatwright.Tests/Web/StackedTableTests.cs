using System.Net;
using System.Text.RegularExpressions;

namespace Heatwright.Tests.Web;

/// <summary>On a phone a row becomes a block and the headings are out of sight: each value brings the name of its column along.</summary>
public sealed partial class StackedTableTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    public static TheoryData<string> Pages => [.. ServedStudy.Pages];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_value_of_a_row_that_stacks_carries_the_name_of_its_column(string path)
    {
        foreach (Match table in Table().Matches(await served.Page(path)))
        {
            string whole = table.Value;
            if (whole.Contains("class=\"compare", StringComparison.Ordinal))
            {
                continue; // there each cell begins with its arrangement's letter
            }

            string[] headings = [.. Heading().Matches(whole.Split("</thead>")[0].Split("<tr").Skip(1).First()).Select(match => Words(match.Groups[1].Value))];
            foreach (Match row in Row().Matches(whole.Split("</thead>", 2)[1]))
            {
                string[] cells = [.. Cell().Matches(row.Value).Select(match => match.Value)];
                if (cells.Length != headings.Length)
                {
                    Assert.Contains("colspan", row.Value, StringComparison.Ordinal);
                    continue;
                }

                for (int i = 0; i < cells.Length; i++)
                {
                    if (headings[i].Length > 0 && cells[i].StartsWith("<td", StringComparison.Ordinal) && !cells[i].Contains("class=\"share\"", StringComparison.Ordinal) && Words(cells[i]).Length > 0)
                    {
                        Assert.Contains($" data-of=\"{headings[i]}\"", WebUtility.HtmlDecode(cells[i].Split('>')[0]) + ">", StringComparison.Ordinal);
                    }
                }
            }
        }
    }

    [Fact]
    public async Task Below_the_numbers_of_the_stages_the_open_one_stands_with_its_name()
    {
        string rule = (await served.Page("/trials")).Split("<nav class=\"rule\"")[1].Split("</nav>")[0];
        Assert.Equal("‹ shelf 3 trials arrangements ›", Regex.Replace(PagesTests.Visible(rule.Split("class=\"now\"")[1].Split('>', 2)[1]), @"\s+", " ").Trim());
    }

    private static string Words(string html) => WebUtility.HtmlDecode(Regex.Replace(html, "<[^>]*>", "")).Trim();

    [GeneratedRegex("<table class=\"[a-z -]*\\bstack\\b.*?</table>", RegexOptions.Singleline)]
    private static partial Regex Table();

    [GeneratedRegex("<th(?: [^>]*)?>(.*?)</th>", RegexOptions.Singleline)]
    private static partial Regex Heading();

    [GeneratedRegex("<tr.*?</tr>", RegexOptions.Singleline)]
    private static partial Regex Row();

    [GeneratedRegex("<t[hd][ >].*?</t[hd]>", RegexOptions.Singleline)]
    private static partial Regex Cell();
}
