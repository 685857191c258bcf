using Heatwright.Handbook;
using Heatwright.Jobs.Sums;

namespace Heatwright.Tests.Jobs;

/// <summary>Laws as typed: units on both sides, doubts propagated, refusals with value and limit.</summary>
public class QuickSumTests
{
    [Fact]
    public void Every_law_answers_the_example_it_shows() => Assert.All(LawCard.All, card =>
    {
        var answer = QuickSum.Run(card.Law.Name, Words(card.Law.Example));
        Assert.True(answer.IsFine, $"{card.Law.Name} {card.Law.Example}: {(answer.IsFine ? "" : answer.Problems[0])}");
        Assert.Contains(answer.Value.Results, result => result.Value is not null || result.Words.Length > 0);
        Assert.Equal(answer.Value.Results.Count, answer.Value.Results.Select(result => result.Name).Distinct().Count());
        Assert.Equal(card.Inputs.Count, card.Inputs.Select(input => input.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    });

    /// <summary>Printed digits: [nist-srd60] for couples; [ipc-2221] curve fit, IP-3 computed; trade fact by hand; LM-3 computed; AWG by definition.</summary>
    [Theory]
    [InlineData("thermocouple-voltage type=K hot=100C cold=0C", 4.096e-3, 0.0005e-3)]
    [InlineData("thermocouple-voltage type=K hot=212F cold=32F", 4.096e-3, 0.0005e-3)]
    [InlineData("thermocouple-voltage type=J hot=500°C cold=0", 27.393e-3, 0.0005e-3)]
    [InlineData("thermocouple-temperature type=K voltage=20.644mV cold=0C", 500, 0.02)]
    [InlineData("trace-width current=5A rise=20K copper=1oz", 1.81580e-3, 1e-6)]
    [InlineData("trace-width current=5A rise=20K copper=35um", 1.81580e-3, 1e-6)]
    [InlineData("runtime capacity=620mAh current=1.3A", 28.6154 * 60, 0.01)]
    [InlineData("runtime capacity=0,62Ah current=1,3A", 28.6154 * 60, 0.01)]
    [InlineData("heater-power supply=12,5V heater=2R5", 62.5, 1e-9)]
    [InlineData("wire-resistance length=100mm area=0.5mm2 at=20C", 3.44828e-3, 5e-9)]
    [InlineData("wire-resistance-gauge gauge=24 length=1m at=20C", 84.215e-3, 5e-7)]
    [InlineData("convection-cylinder diameter=5mm surface=350C around=25C", 17.36517, 5e-6)]
    public void A_typed_sum_gives_the_printed_figure(string typed, double printed, double tolerance)
    {
        var answer = QuickSum.Run(typed.Split(' ')[0], typed.Split(' ')[1..]);
        Assert.True(answer.IsFine, answer.IsFine ? "" : answer.Problems[0].ToString());
        Assert.Equal(printed, Assert.Single(answer.Value.Results).Value!.Value, tolerance);
    }

    [Fact]
    public void A_typed_doubt_comes_back_propagated()
    {
        // By hand: t = Q/I, u(t)/t = u(I)/I; ±0.13 A typed is a half width, u = 0.13/√3 A on 1.3 A, 5.7735 %.
        var answer = QuickSum.Run("runtime", ["capacity=620mAh", "current=1.3A±0.13A"]).Value;
        Assert.Equal(0.057735 * 28.6154 * 60, answer.Results[0].StandardDoubt, 0.01);
    }

    [Theory]
    [InlineData("heater-power supply=12V heater=-3", "heater")]
    [InlineData("heater-power supply=12V heater=3ohm duty=1.2", "duty")]
    [InlineData("wire-drop current=5A length=0.3m area=AWG40", "1.8")]
    [InlineData("thermocouple-voltage type=K hot=1400C cold=25C", "1372")]
    [InlineData("thermocouple-voltage type=Q hot=100C cold=25C", "Q")]
    [InlineData("trace-width current=5A copper=1oz", "rise")]
    [InlineData("trace-width current=5A rise=20K copper=1oz colour=red", "colour")]
    [InlineData("runtime capacity=620mAh current=5V", "current")]
    [InlineData("no-such-law a=1", "no-such-law")]
    public void What_cannot_be_is_refused_with_the_place_and_the_limit(string typed, string named)
    {
        var answer = QuickSum.Run(typed.Split(' ')[0], typed.Split(' ')[1..]);
        Assert.False(answer.IsFine);
        Assert.Contains(answer.Problems, problem => problem.ToString().Contains(named, StringComparison.Ordinal));
        Assert.All(answer.Problems, problem => Assert.All((string[])[problem.What, problem.Where, problem.Value, problem.Limit, problem.Next], slot => Assert.NotEmpty(slot)));
    }

    [Fact]
    public void Outside_its_fitted_range_a_law_answers_with_a_caveat()
    {
        var answer = QuickSum.Run("wire-resistance", ["length=1m", "area=0.5mm2", "at=300C"]).Value;
        Assert.NotEmpty(answer.Caveats);
        Assert.Empty(QuickSum.Run("wire-resistance", ["length=1m", "area=0.5mm2", "at=60C"]).Value.Caveats);
    }

    [Fact]
    public void A_converter_that_hiccups_has_a_region_and_no_numbers()
    {
        // Computed, RG-6: with 0.30 Ω and a lock-out of 2.5 V the module hiccups at 4.0 A.
        var answer = QuickSum.Run("step-up-point", ["open=3.7V", "source=0.3ohm", "set=12V", "heater=8ohm", "fixed=0.12W", "drop=0.2V", "slope=90mohm", "lockout=2.5V"]).Value;
        Assert.Equal("hiccup", answer.Results.Single(result => result.Name == "region").Words);
        Assert.Null(answer.Results.Single(result => result.Name == "out-voltage").Value);
    }

    private static string[] Words(string example) => example.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
