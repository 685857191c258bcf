using System.Text.Json;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Cli;

/// <summary>Bench tests as a maker types them.</summary>
public sealed class TrialCommandTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Kinds_are_listed_with_their_columns()
    {
        var kinds = Json("trial", "kinds", "--json").EnumerateArray().ToArray();
        Assert.True(kinds.Length >= 30);
        Assert.All(kinds, kind => Assert.True(kind.GetProperty("columns").GetArrayLength() > 0));
    }

    /// <summary>By hand: 7.4 Ω less 0.2 Ω of leads.</summary>
    [Fact]
    public void Typed_readings_give_a_finding_in_one_shape()
    {
        var json = Json("trial", "fit", "cold-ohms", "--read", "ohms=7R4", "--read", "ohms=7.4", "--set", "leads=0.2", "--json");
        var finding = json.GetProperty("findings")[0];
        Assert.Equal(("ohms", "Ω", "fitted"), (finding.GetProperty("name").GetString(), finding.GetProperty("unit").GetString(), finding.GetProperty("origin").GetString()));
        Assert.Equal(7.2, finding.GetProperty("value").GetDouble(), 1e-9);
        double doubt = finding.GetProperty("standardDoubt").GetDouble();
        Assert.InRange(doubt, 0.02, 0.2);
        Assert.Equal(doubt * doubt, json.GetProperty("covariance")[0][0].GetDouble(), 1e-9);
        Assert.InRange(7.2, finding.GetProperty("low95").GetDouble(), finding.GetProperty("high95").GetDouble());
    }

    /// <summary>Straight: open 4.0 V, 0.1 Ω.</summary>
    [Fact]
    public void A_log_with_settings_and_meters_in_its_head_is_read()
    {
        string file = bench.In("sag.csv");
        File.WriteAllText(file, "# burden = 0 ohm\n# meter volts: 0.5%+2d\nVoltage (V);Current (mA)\n3,90;1000\n3,70;3000\n");
        var json = Json("trial", "fit", "two-load-sag", "--readings", file, "--json");
        Assert.Equal(4.0, Value(json, "open volts"), 1e-6);
        Assert.Equal(0.1, Value(json, "ohms"), 1e-6);
    }

    [Fact]
    public void A_typed_form_and_a_table_for_people_do()
    {
        string file = bench.In("form.txt");
        File.WriteAllText(file, "amps=5A drop=100mV\namps=2.5 drop=50mV\n");
        var (exit, output, error) = bench.Type("trial", "fit", "two-point-drop", "--readings", file, "--set", "source-volts=3.7V");
        Assert.True(exit == 0, error);
        Assert.Contains("ohms", output, StringComparison.Ordinal);
        Assert.Contains("0.020", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("x;y\n1;2\n", "volts"), InlineData("", "readings")]
    public void Columns_that_cannot_be_mapped_are_said_with_the_next_step(string text, string word)
    {
        string file = bench.In("odd.csv");
        File.WriteAllText(file, text);
        var (exit, _, error) = bench.Type("trial", "fit", "two-load-sag", "--readings", file);
        Assert.Equal(2, exit);
        Assert.Contains(word, error, StringComparison.Ordinal);
        Assert.Contains("next", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_kind_a_setting_and_a_meter_that_are_none_are_refused()
    {
        Assert.Equal(2, bench.Type("trial", "fit", "nonsense", "--read", "a=1").Exit);
        Assert.Contains("no setting", bench.Type("trial", "fit", "cold-ohms", "--read", "ohms=7", "--set", "colour=3").Error, StringComparison.Ordinal);
        Assert.Equal(2, bench.Type("trial", "fit", "cold-ohms", "--read", "ohms=7", "--meter", "ohms=quite good").Exit);
    }

    [Fact]
    public void A_recipe_tells_what_the_claim_lets_expect_and_prints_a_sheet()
    {
        string sheet = bench.In("sheet.html"), card = bench.In("card.html");
        var (exit, output, error) = bench.Type("trial", "recipe", "cold-ohms", "--set", "label-volts=12V", "--set", "label-watts=40W", "--sheet", sheet, "--card", card);
        Assert.True(exit == 0, error);
        Assert.Contains("ohms from the label: 3.6 Ω", output, StringComparison.Ordinal); // 144 / 40
        Assert.Contains("STOP", File.ReadAllText(sheet), StringComparison.Ordinal);
        Assert.Contains("<pre>", File.ReadAllText(card), StringComparison.Ordinal);
        Assert.Equal(2, bench.Type("trial", "recipe", "cold-ohms", "--sheet", sheet).Exit);
    }

    /// <summary>By hand: 1 A over an hour down to 3 V are 1 Ah; 4 V by 2 A are 2 Ω.</summary>
    [Theory]
    [InlineData("discharge", "capacity", 1, "time=0s volts=4 amps=1", "time=1800s volts=3.5 amps=1", "time=3600s volts=3 amps=1")]
    [InlineData("hot-ohms", "ohms", 2, "volts=4 amps=2", "volts=4 amps=2")]
    public void Whatever_name_a_kind_is_listed_by_it_is_fitted_and_checked_by(string kind, string finding, double value, params string[] readings)
    {
        string[] typed = [.. readings.SelectMany(reading => new[] { "--read", reading })];
        Assert.Equal(value, Value(Json(["trial", "fit", kind, .. typed, "--json"]), finding), 1e-9);
        Assert.Equal(0, bench.Type(["trial", "check", kind, .. typed]).Exit);
    }

    [Fact]
    public void Every_kind_has_a_sheet_and_a_card()
    {
        foreach (var kind in Json("trial", "kinds", "--json").EnumerateArray().Select(kind => kind.GetProperty("kind").GetString()!))
        {
            Assert.Equal(0, bench.Type("trial", "recipe", kind, "--card", bench.In(kind + "-plain.html")).Exit);
            Assert.DoesNotContain("{", System.Text.RegularExpressions.Regex.Replace(File.ReadAllText(bench.In(kind + "-plain.html")), "(?s)<style.*?</style>", ""), StringComparison.Ordinal); // no number is left to be filled in
            Assert.Equal(0, bench.Type("trial", "recipe", kind, "--sheet", bench.In(kind + "-sheet.html"), "--card", bench.In(kind + "-card.html")).Exit);
            Assert.Contains(kind, File.ReadAllText(bench.In(kind + "-card.html")), StringComparison.Ordinal);
        }
    }

    /// <summary>By hand: 0.85 · 3 A · 3.3 V / 12 V = 0.701 A.</summary>
    [Fact]
    public void A_trap_of_the_trade_is_told_from_plain_numbers()
    {
        var (exit, output, _) = bench.Type("trial", "check", "--fact", "wanted-amps=1A", "--fact", "switch-amps=3A", "--fact", "volts-in=3.3V", "--fact", "volts-out=12V");
        Assert.Equal(0, exit);
        Assert.Contains("0.701 A", string.Join(' ', output.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.True(Json("trial", "check", "--json").GetArrayLength() > 90);
        Assert.Equal(2, bench.Type("trial", "check", "--fact", "colour=3").Exit);
    }

    private JsonElement Json(params string[] words)
    {
        var (exit, output, error) = bench.Type(words);
        Assert.True(exit == 0, error);
        return JsonDocument.Parse(output).RootElement;
    }

    private static double Value(JsonElement json, string name) => json.GetProperty("findings").EnumerateArray().Single(finding => finding.GetProperty("name").GetString() == name).GetProperty("value").GetDouble();
}
