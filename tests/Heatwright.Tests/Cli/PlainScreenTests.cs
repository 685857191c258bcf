using System.Text.Json.Nodes;
using Heatwright.Cli;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Cli;

/// <summary>Narrow windows, screens without signs, and no colour where none is wanted.</summary>
public sealed class PlainScreenTests : IDisposable
{
    private static readonly string[][] Shown =
    [
        ["study", "bow.study"], ["part", "list", "bow.study"], ["part", "show", "bow.study", "round"], ["trial", "list", "bow.study"], ["loop", "bow.study", "C"], ["differences", "bow.study", "A", "C"],
        ["brief", "bow.study"], ["history", "bow.study"], ["trial", "kinds"], ["trial", "recipe", "warm-up"], ["trial", "check"], ["meter", "list", "bow.study"],
        ["sum"], ["sum", "trace-width"], ["sum", "heater-power", "supply=3.7V", "heater=4.4ohm±0.1ohm"], ["sum", "contact-temperature"],
    ];

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void What_commands_show_fits_forty_columns_and_keeps_to_ASCII_when_asked()
    {
        Take();
        foreach (string[] words in Shown)
        {
            var said = Type(40, [.. words, "--ascii"]);
            Assert.True(said.Exit == 0, $"{string.Join(' ', words)}: {said.Error}");
            Assert.True(said.Out.Trim().Length > 20, string.Join(' ', words));
            FitsInAscii(said.Out, 40);
        }
    }

    [Fact]
    public void Machines_read_the_same_with_and_without_it()
    {
        Take();
        foreach (string[] words in (string[][])[["part", "list", "bow.study", "--json"], ["loop", "bow.study", "C", "--json"], ["sum", "heater-power", "--json"], ["trial", "kinds", "--json"]])
        {
            string full = Type(100, words).Out;
            string plain = Type(100, [.. words, "--ascii"]).Out;
            Assert.Contains(full, sign => !char.IsAscii(sign));
            Assert.All(plain, sign => Assert.True(char.IsAscii(sign)));
            Assert.True(JsonNode.DeepEquals(JsonNode.Parse(full), JsonNode.Parse(plain)), string.Join(' ', words));
        }
    }

    [Fact]
    public void Refusals_keep_to_it_too()
    {
        var said = Type(100, "sum", "heater-power", "supply=3.7Ω", "heater=4Ω", "--ascii");
        Assert.Equal(ExitCodes.BadInput, said.Exit);
        Assert.All(said.Error, sign => Assert.True(char.IsAscii(sign), said.Error));
        Assert.Contains("ohm", said.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("4.4 Ω ± 0.1 Ω", "4.4 ohm +- 0.1 ohm")]
    [InlineData("4.4 \u2126", "4.4 ohm")] // the sign for the unit is another one than the letter
    [InlineData("20 °C, 5 µV", "20 deg C, 5 uV")]
    [InlineData("W/(m²·K⁴)", "W/(m^2*K^4)")]
    [InlineData("10⁻³", "10^-3")]
    [InlineData("τ₁ ≤ 3 × √t", "tau1 <= 3 x sqrtt")]
    [InlineData("é ö", "e o")]
    [InlineData("\ud83d\udd25", "??")]
    public void Signs_become_what_one_would_type(string text, string plain) => Assert.Equal(plain, PlainWords.Of(text));

    [Theory, InlineData(true), InlineData(false)]
    public void Where_NO_COLOR_is_set_a_terminal_gets_no_colour(bool set)
    {
        string? before = Environment.GetEnvironmentVariable("NO_COLOR");
        try
        {
            Environment.SetEnvironmentVariable("NO_COLOR", set ? "1" : null);
            using var output = new StringWriter();
            var screen = new Screen(output, output, outputIsTerminal: true, errorIsTerminal: false, width: 40);
            if (set)
            {
                Assert.Equal(Spectre.Console.ColorSystem.NoColors, screen.Console.Profile.Capabilities.ColorSystem);
            }

            Assert.Equal(0, CommandLine.Run(["sum", "heater-power"], screen));
            Assert.DoesNotContain("\u001b[3", output.ToString(), StringComparison.Ordinal);
        }
        finally
        {
            Environment.SetEnvironmentVariable("NO_COLOR", before);
        }
    }

    internal static void FitsInAscii(string text, int columns)
    {
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        Assert.All(lines, line => Assert.True(line.Length <= columns, $"{line.Length} columns: {line}"));
        Assert.All(lines, line => Assert.True(line.All(char.IsAscii), line));
    }

    private void Take()
    {
        var done = Type(100, "import", Path.Combine(Repository.Root, "samples", "foam-bow"), "bow.study");
        Assert.True(done.Exit == 0, done.Error);
    }

    private (int Exit, string Out, string Error) Type(int width, params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int exit = CommandLine.Run([.. words.Select(word => word == "bow.study" ? bench.In(word) : word)], new Screen(output, error, false, false, width));
        return (exit, output.ToString(), error.ToString());
    }
}
