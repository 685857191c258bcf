using System.Text.Json;
using Heatwright.Cli;
using Heatwright.Handbook;

namespace Heatwright.Tests.Journeys;

/// <summary>Sums as makers type them, through the command: with and without names, in trade words, German and American, wide and narrow.</summary>
public class SumJourney
{
    private static (int Code, string Out, string Error) Run(int width, params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = CommandLine.Run(["sum", .. words], new Screen(output, error, false, false, width));
        return (code, output.ToString(), error.ToString());
    }

    private static JsonElement Json(params string[] words)
    {
        var (code, text, error) = Run(100, [.. words, "--json"]);
        Assert.True(code == ExitCodes.Done, error);
        return JsonDocument.Parse(text).RootElement;
    }

    /// <summary>Expected: by hand from V²/R, Q/I, and the printed figures of the checks that carry a source elsewhere ([nist-srd60], [ipc-2221]).</summary>
    [Theory]
    [InlineData("runtime 550mAh 1.6A", 1237.5, 1e-9)]
    [InlineData("runtime 1.6A 550mAh", 1237.5, 1e-9)]
    [InlineData("runtime capacity=550 mAh current=1.6 A", 1237.5, 1e-9)]
    [InlineData("runtime capacity=0,55Ah current=1,6A", 1237.5, 1e-9)]
    [InlineData("trace-width 5A 20K 1oz", 1.81580e-3, 1e-7)]
    [InlineData("trace width 5A 20K 35um", 1.81580e-3, 1e-7)]
    [InlineData("trace_width 5A 36F 1oz", 1.81580e-3, 1e-7)]
    [InlineData("heater-power voltage=4V resistance=2.5", 6.4, 1e-12)]
    [InlineData("heater-power volts=5 ohms=2,5", 10, 1e-12)]
    [InlineData("heater power 12V 2R5", 57.6, 1e-12)]
    [InlineData("thermocouple voltage K hot=100C cold=0C", 4.096e-3, 5e-7)]
    [InlineData("thermocouple-voltage type=k hot=212F cold=32F", 4.096e-3, 5e-7)]
    [InlineData("wire-resistance wire=AWG24 length=1m", 84.215e-3, 5e-7)]
    [InlineData("wire-drop 3A AWG24 length=2x150mm", 75.7936e-3, 5e-8)]
    [InlineData("wire-drop 3A AWG24 300mm", 75.7936e-3, 5e-8)]
    [InlineData("heater-power 12V 3.2", 45, 1e-12)]
    [InlineData("cell-size 18650", 16.5405e-6, 5e-11)]
    [InlineData("wire-resistance length=1m wire=0.8 mm dia", 34.3e-3, 5e-5)]
    public void What_is_clear_is_never_asked(string typed, double expected, double tolerance) =>
        Assert.Equal(expected, Json(typed.Split(' ')).GetProperty("value").GetDouble(), tolerance);

    [Theory]
    [InlineData("parallel-cells 3.7V 3.6V 30mohm 40mohm 5A", "3.7V", "It is not clear which input")]
    [InlineData("warm-up 350C 25C power=12W capacity=8 conductance=0.03", "25C", "It is not clear which input")]
    [InlineData("trace-width current=5A rise=20K copper=1", "1", "oz")]
    [InlineData("runtime capacity=47m current=1A", "47m", "")]
    [InlineData("heater-power colour=red supply=5V heater=3", "colour=red", "no such input")]
    public void What_is_not_clear_is_asked_and_never_guessed(string typed, string value, string says)
    {
        var (code, output, error) = Run(100, typed.Split(' '));
        Assert.Equal(ExitCodes.BadInput, code);
        Assert.Empty(output);
        Assert.Contains(value, error, StringComparison.Ordinal);
        Assert.Contains(says, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("thermocoupel-voltage", "thermocouple-voltage")]
    [InlineData("run-time", "runtime")]
    [InlineData("ammeter", "ohms-from-readings")]
    [InlineData("emissivity", "hot-wire")]
    public void A_name_with_a_slip_or_only_its_subject_is_answered_with_what_there_is(string typed, string meant) =>
        Assert.Contains(meant, Run(100, typed, "a=1").Error, StringComparison.Ordinal);

    /// <summary>[nist-srd60] ends of the ranges as printed; 1000 °C is not a hair more than 1000 °C.</summary>
    [Theory]
    [InlineData("E", "1000C", 76.373)]
    [InlineData("E", "-270C", -9.835)]
    [InlineData("T", "400C", 20.872)]
    [InlineData("T", "-270C", -6.258)]
    [InlineData("T", "-200C", -5.603)]
    [InlineData("R", "1768C", 21.101)]
    [InlineData("R", "1000C", 10.506)]
    [InlineData("B", "1820C", 13.820)]
    [InlineData("J", "1200C", 69.553)]
    [InlineData("K", "1372C", 54.886)]
    [InlineData("K", "-270C", -6.458)]
    [InlineData("N", "1300C", 47.513)]
    [InlineData("S", "1768C", 18.693)]
    public void The_ends_of_every_type_are_answered_to_the_printed_digit_and_back(string type, string hot, double mV)
    {
        Assert.Equal(mV, 1e3 * Json("thermocouple-voltage", $"type={type}", $"hot={hot}", "cold=0C").GetProperty("value").GetDouble(), 0.0005);
        string exact = Json("thermocouple-voltage", $"type={type}", $"hot={hot}", "cold=25C").GetProperty("value").GetRawText();
        double back = Json("thermocouple-temperature", $"type={type}", $"voltage={exact}", "cold=25C").GetProperty("value").GetDouble();
        Assert.Equal(double.Parse(hot[..^1], System.Globalization.CultureInfo.InvariantCulture), back, 1e-3); // near -270 °C the slope almost vanishes
    }

    [Fact]
    public void A_number_without_a_unit_is_told_back_with_the_unit_it_was_read_in() =>
        Assert.Contains("with length = 0.3 mm (typed without a unit)", Run(100, "wire-resistance", "length=0.3", "area=AWG24").Out.Replace('\u00A0', ' '), StringComparison.Ordinal);

    [Fact]
    public void Inputs_that_are_missing_are_told_in_one_breath()
    {
        string error = Run(100, "runtime", "duty=50%").Error;
        Assert.Contains("2 inputs are not typed: capacity, current.", error, StringComparison.Ordinal);
        Assert.Single(error.Split('\n'), line => line.StartsWith("  next", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("heater-power supply=5V±2% heater=2.5ohm", 10, 0.2309)]       // by hand: u(V)/V = 2 %/√3, doubled
    [InlineData("runtime capacity=550mAh current=1.6A±5%", 1237.5, 35.72)]    // by hand: 5 %/√3 of 1237.5 s
    public void Doubts_come_back_propagated(string typed, double value, double doubt)
    {
        var json = Json(typed.Split(' '));
        Assert.Equal(value, json.GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal(doubt, json.GetProperty("standardDoubt").GetDouble(), 0.01 * doubt);
    }

    /// <summary>'~' widens: a rough value is in doubt where the same value without it is not.</summary>
    [Fact]
    public void A_rough_mark_widens_the_doubt()
    {
        Assert.Equal(0, Json("heater-power", "supply=3.7V", "heater=2.5ohm").GetProperty("standardDoubt").GetDouble());
        Assert.True(Json("heater-power", "supply=~3.7V", "heater=2.5ohm").GetProperty("standardDoubt").GetDouble() > 0.05);
    }

    [Theory]
    [InlineData("thermocouple-voltage type=K hot=350C cold=25C")]
    [InlineData("thermocouple-temperature type=E voltage=20mV cold=10C")]
    [InlineData("trace-width current=5A rise=20K copper=1oz")]
    [InlineData("runtime capacity=550mAh current=1.6A")]
    [InlineData("wire-resistance length=300mm area=AWG24")]
    [InlineData("hot-wire diameter=0.4mm wire=600C")]
    public void Machines_read_the_same_keys_of_every_sum(string typed)
    {
        var json = Json(typed.Split(' '));
        Assert.Equal(["law", "inputs", "value", "unit", "standardDoubt", "source", "caveats"], json.EnumerateObject().Select(each => each.Name));
    }

    [Theory]
    [InlineData("step-up-point open=3.7V source=120mohm set=9V heater=8ohm fixed=0.12W drop=0.2V slope=90mohm")]
    [InlineData("resistor-pair gain=101")]
    public void Machines_read_several_results_under_one_key(string typed)
    {
        var json = Json(typed.Split(' '));
        Assert.Equal(["law", "inputs", "results", "source", "caveats"], json.EnumerateObject().Select(each => each.Name));
        Assert.True(json.GetProperty("results").GetArrayLength() > 1);
    }

    /// <summary>Every card and every example in a window of 60 columns: nothing runs over the edge but a single word that is longer.</summary>
    [Fact]
    public void Every_card_and_answer_fits_a_narrow_window() => Assert.All(LawCard.All, law =>
    {
        foreach (string[] words in (string[][])[[law.Law.Name], [law.Law.Name, .. law.Law.Example.Split(' ')]])
        {
            var (code, output, error) = Run(60, words);
            Assert.True(code == ExitCodes.Done, error);
            Assert.All(output.Split('\n'), line => Assert.True(line.TrimEnd().Length <= 60 || line.Trim().Split(' ').Any(word => word.Length > 25), $"{law.Law.Name}: '{line}'"));
        }
    });

    [Theory]
    [InlineData("predict", "--draws")]
    [InlineData("serve", "--port")]
    [InlineData("why", "--matters")]
    public void A_count_with_a_decimal_comma_is_refused_and_never_ten_times_as_many(string command, string option)
    {
        foreach (string typed in (string[])["12,5", "12.5", "-3", "pear", "1,234,5", "3-4"])
        {
            using var output = new StringWriter();
            using var error = new StringWriter();
            Assert.Equal(ExitCodes.BadInput, CommandLine.Run([command, "no-such.study", .. (string[])(command == "why" ? ["A"] : []), option, typed], new Screen(output, error, false, false, 100)));
            Assert.Contains(option, error.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain("no-such.study", error.ToString(), StringComparison.Ordinal);
        }
    }

    /// <summary>Libraries read '12,5' as 125. No command may let one: numbers arrive as text and go through the reader of every field.</summary>
    [Fact]
    public void No_command_lets_a_library_read_a_number() => Assert.All(Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", "Heatwright", "Cli"), "*.cs"), path =>
    {
        string code = File.ReadAllText(path);
        Assert.DoesNotMatch(@"(Option|Argument)<(int|long|double|float|decimal|short|byte)\??>", code);
        Assert.DoesNotMatch(@"\b(int|long|double|float|decimal)\.(Try)?Parse\((?![^;]*NumberStyles\.(None|AllowDecimalPoint))", code); // these two take no thousands
        Assert.DoesNotMatch(@"Convert\.To(Int|Double|Decimal|Single)", code);
    });
}
