using System.Globalization;
using Heatwright.Jobs.Sums;

namespace Heatwright.Tests.Jobs;

/// <summary>Check values of the laws asked of the sums as a maker types them: sums.csv, each row with its mark. Tolerance: half of the last printed digit.</summary>
public class HandbookSumsTests
{
    private static readonly string[] Marks = ["published", "computed by an independent script", "common practice, no source", "by hand"];

    public static TheoryData<string, string, string, string, double> Rows()
    {
        TheoryData<string, string, string, string, double> rows = [];
        foreach (string line in File.ReadLines(Path.Combine(Repository.Root, "tests", "Heatwright.Tests", "Jobs", "sums.csv")).Where(line => line.Length > 0 && line[0] != '#'))
        {
            string[] cells = line.Split(';');
            Assert.Contains(cells[1], Marks);
            rows.Add(cells[0], cells[2], cells[3], cells[4], double.Parse(cells[5], CultureInfo.InvariantCulture));
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_sum_gives_the_printed_digits(string id, string typed, string result, string printed, double factor)
    {
        var answer = QuickSum.Run(typed.Split(' ')[0], typed.Split(' ')[1..]);
        Assert.True(answer.IsFine, $"{id}: {(answer.IsFine ? "" : answer.Problems[0])}");
        var found = result.Length == 0 ? Assert.Single(answer.Value.Results) : answer.Value.Results.Single(each => each.Name == result);
        string[] parts = printed.Split('e');
        int decimals = parts[0].Contains('.', StringComparison.Ordinal) ? parts[0].Length - parts[0].IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        double half = 0.5000001 * Math.Pow(10, (parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0) - decimals);
        Assert.Equal(double.Parse(printed, CultureInfo.InvariantCulture) * factor, found.Value!.Value, half * factor);
    }

    [Fact]
    public void No_row_was_lost() => Assert.Equal(257, Rows().Count);
}
