using System.Globalization;
using System.Text.RegularExpressions;

namespace Heatwright.Tests.Web;

/// <summary>Contrast of the style sheet's tokens by the formula of WCAG 2.2 (W3C Recommendation, definitions of relative luminance and contrast ratio).</summary>
public sealed partial class LookTests
{
    private static readonly string Sheet = File.ReadAllText(Path.Combine(Repository.Root, "src", "Heatwright", "Web", "wwwroot", "look.css"));

    /// <summary>Front, back, least ratio: 4.5 for text, 3 for graphics and borders (success criteria 1.4.3 and 1.4.11).</summary>
    public static TheoryData<string, string, double> Pairs => new()
    {
        { "ink", "sheet", 4.5 }, { "ink", "bench", 4.5 }, { "ink-2", "sheet", 4.5 }, { "ink-2", "bench", 4.5 }, { "ink-3", "sheet", 4.5 }, { "ink-3", "bench", 4.5 },
        { "ink-2", "tint", 4.5 }, { "ink-3", "tint", 4.5 }, { "on-ink", "ink", 4.5 },
        { "go", "sheet", 4.5 }, { "go", "go-t", 4.5 }, { "go-if", "sheet", 4.5 }, { "go-if", "go-if-t", 4.5 }, { "no-go", "sheet", 4.5 }, { "no-go", "no-go-t", 4.5 },
        { "need", "sheet", 4.5 }, { "need", "need-t", 4.5 }, { "sheeted", "sheet", 4.5 }, { "claimed", "sheet", 4.5 }, { "assumed", "sheet", 4.5 },
        { "ink", "heat-t", 4.5 }, { "ink", "go-if-t", 4.5 }, { "ink", "no-go-t", 4.5 }, { "ink-2", "no-go-t", 4.5 },
        { "edge", "sheet", 3 }, { "edge", "bench", 3 }, { "focus", "sheet", 3 }, { "focus", "bench", 3 }, { "heat", "sheet", 3 }, { "heat", "heat-t", 3 },
        { "c1", "well", 3 }, { "c2", "well", 3 }, { "c3", "well", 3 }, { "c4", "well", 3 }, { "c5", "well", 3 }, { "c6", "well", 3 },
    };

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Each_pair_stands_out_in_light_and_dark(string front, string back, double least)
    {
        foreach (var tokens in new[] { Tokens(":root"), Tokens(":root[data-theme=\"dark\"]") })
        {
            Assert.InRange(Ratio(tokens[front], tokens[back]), least, 21);
        }
    }

    [Fact]
    public void The_formula_gives_21_for_black_on_white_and_1_for_white_on_white()
    {
        // WCAG 2.2: "Contrast ratios can range from 1 to 21".
        Assert.Equal(21, Ratio("#000000", "#ffffff"), 1e-9);
        Assert.Equal(1, Ratio("#ffffff", "#ffffff"), 1e-9);
    }

    [Fact]
    public void The_machines_dark_and_the_chosen_dark_are_the_same() =>
        Assert.Equal(Tokens(":root[data-theme=\"dark\"]"), Tokens(":root:not([data-theme=\"light\"])"));

    [Fact]
    public void No_component_names_a_colour_by_value()
    {
        string[] components = Directory.GetFiles(Path.Combine(Repository.Root, "src", "Heatwright", "Web"), "*.razor", SearchOption.AllDirectories);
        Assert.InRange(components.Length, 20, 200);
        Assert.All(components, file => Assert.DoesNotMatch(Hex(), File.ReadAllText(file)));
    }

    [Fact]
    public void The_style_sheet_asks_for_nothing_from_elsewhere() => Assert.DoesNotMatch(Asks(), Sheet);

    private static Dictionary<string, string> Tokens(string selector)
    {
        int start = Sheet.IndexOf(selector + " {", StringComparison.Ordinal);
        string block = Sheet[start..Sheet.IndexOf('}', start)];
        return Token().Matches(block).ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value);
    }

    private static double Ratio(string a, string b)
    {
        double[] both = [Luminance(a), Luminance(b)];
        return (both.Max() + 0.05) / (both.Min() + 0.05);
    }

    private static double Luminance(string hex)
    {
        double[] linear = [.. new[] { 1, 3, 5 }.Select(at => int.Parse(hex.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
            .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4))];
        return (0.2126 * linear[0]) + (0.7152 * linear[1]) + (0.0722 * linear[2]);
    }

    [GeneratedRegex("--([a-z0-9-]+):\\s*(#[0-9a-f]{6});")]
    private static partial Regex Token();

    [GeneratedRegex("#[0-9a-fA-F]{6}\\b|rgb\\(")]
    private static partial Regex Hex();

    [GeneratedRegex("url\\(|@import|@font-face")]
    private static partial Regex Asks();
}
