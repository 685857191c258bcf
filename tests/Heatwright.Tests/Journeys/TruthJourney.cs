using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Heatwright.DemoTruth;

namespace Heatwright.Tests.Journeys;

/// <summary>What the product predicts from the demo's readings, beside what the hidden truth of these readings does: other code, more lumps, another controller.</summary>
public sealed partial class TruthJourney(ITestOutputHelper output) : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Warm_up_and_pieces_of_each_arrangement_hold_the_truth_within_three_standard_doubts()
    {
        bench.Verdicts(Path.Combine(Repository.Root, "samples", "rope-hot-knife"));
        HoldsTruth("rope-hot-knife", "ABCD", bench.Last, output);
    }

    /// <summary>Compares what a study predicts with what the truth it was made of does.</summary>
    /// <param name="scene">Which invented bag.</param>
    /// <param name="letters">The arrangements to compare.</param>
    /// <param name="study">The study's answer as JSON.</param>
    /// <param name="output">Where to tell the pairs.</param>
    internal static void HoldsTruth(string scene, string letters, string study, ITestOutputHelper output)
    {
        using var told = new StringWriter();
        Truth.Print(new Hidden(scene), letters, told);
        var truth = TruthLine().Matches(told.ToString()).Select(match => (Letter: match.Groups[1].Value, ReadyS: Number(match, 2), Pieces: Number(match, 3))).ToDictionary(row => row.Letter);
        Assert.Equal(letters, string.Concat(truth.Keys.Order(StringComparer.Ordinal)));

        using var json = JsonDocument.Parse(study);
        Assert.All(json.RootElement.GetProperty("arrangements").EnumerateArray().Where(one => truth.ContainsKey(one.GetProperty("letter").GetString()!)), one =>
        {
            string letter = one.GetProperty("letter").GetString()!;
            var lines = one.GetProperty("requirements").EnumerateArray().ToArray();
            Near(output, letter, "ready", lines[0], truth[letter].ReadyS, 0.3); // a controller of another make may cost the last degrees a few tenths of a second
            Near(output, letter, "pieces", lines[1], truth[letter].Pieces, 0.05 * truth[letter].Pieces); // the last pieces hang on the last percent of the charge, where the fits know least
        });
    }

    private static void Near(ITestOutputHelper output, string letter, string what, JsonElement line, double truth, double besides)
    {
        double value = line.GetProperty("value").GetDouble();
        double doubt = line.GetProperty("standardDoubt").GetDouble();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{letter} {what}: predicted {value:0.00} ± {doubt:0.00}, true {truth:0.00}"));
        Assert.InRange(value, truth - (3 * doubt) - besides, truth + (3 * doubt) + besides);
    }

    private static double Number(Match match, int group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^([ABCD]) from full to the end: ready in ([\d.]+) s, (\d+) pieces", RegexOptions.Multiline)]
    private static partial Regex TruthLine();
}
