using Heatwright.Jobs.Sums;

namespace Heatwright.Tests.Journeys;

/// <summary>What the trade sees on its benches, asked of the sums. Every fact here: common practice, no source.</summary>
public class TradeFactsTests
{
    private static SumAnswer Ask(string typed)
    {
        var answer = QuickSum.Run(typed.Split(' ')[0], typed.Split(' ')[1..]);
        Assert.True(answer.IsFine, answer.IsFine ? "" : answer.Problems[0].ToString());
        return answer.Value;
    }

    private static double Number(SumAnswer answer, string name) => answer.Results.Single(result => result.Name == name).Value!.Value;

    private static string Words(SumAnswer answer, string name) => answer.Results.Single(result => result.Name == name).Words;

    /// <summary>Common practice, no source: a heater of 2.5 Ω draws 1.6 A (6.4 W) at 4 V and 2 A (10 W) at 5 V.</summary>
    [Theory]
    [InlineData("4V", 1.6, 6.4)]
    [InlineData("5V", 2.0, 10.0)]
    public void A_heater_of_two_and_a_half_ohms(string supply, double amps, double watts)
    {
        var answer = Ask($"ohms-law voltage={supply} resistance=2.5ohm");
        Assert.Equal(amps, Number(answer, "current"), 1e-12);
        Assert.Equal(watts, Number(answer, "power"), 1e-12);
        Assert.Equal(watts, Ask($"heater-power supply={supply} heater=2.5ohm").Results[0].Value!.Value, 1e-12);
    }

    /// <summary>Common practice, no source: 0.55 Ah feeding 1.6 A lasts about 20 minutes at full duty, less than half an hour; the current is 2.9 times the capacity.</summary>
    [Fact]
    public void A_small_cell_behind_such_a_heater()
    {
        double minutes = Ask("runtime capacity=0.55Ah current=1.6A").Results[0].Value!.Value / 60;
        Assert.InRange(minutes, 19, 22);
        Assert.True(minutes < 30);
        var rate = Ask("c-rate current=1.6A capacity=0.55Ah").Results[0];
        Assert.Equal("1/h", rate.Unit);
        Assert.Equal(2.9, rate.Value!.Value, 0.05);
    }

    /// <summary>Common practice, no source: nominal 8.1 Ω, about 1.6 A on 12 V and about 3.2 A near 24 V on a bench supply's own display. By hand: 7.5 Ω
    /// twice; label u = 0.81/√3 = 0.4677 Ω. 'About' to 0.1 A and 'near' to 1 V are the digits; gains of 2 % and 1 % are usual for such a display.</summary>
    [Fact]
    public void A_heater_that_disagrees_with_its_label_says_which_explanations_survive()
    {
        var answer = Ask("reconcile-heater label=8.1ohm first-voltage=12V first-current=1.6A second-voltage=24V second-current=3.2A volt-digit=1V amp-digit=0.1A");
        Assert.Equal(7.5, Number(answer, "at-low"), 1e-12);
        Assert.Equal(7.5, Number(answer, "at-high"), 1e-12);
        double u = 7.5 * Math.Sqrt(Math.Pow(0.5 / 24, 2) + Math.Pow(0.01, 2) + Math.Pow(0.05 / 3.2, 2) + Math.Pow(0.02, 2)) / Math.Sqrt(3);
        double z = 0.6 / Math.Sqrt((0.81 * 0.81 / 3) + (u * u));
        Assert.Equal(z, Number(answer, "distance"), 1e-9);

        // Two pieces: the Birge ratio is their distance.
        Assert.Equal(z, Number(answer, "birge"), 1e-9);
        Assert.Contains("off its label", Words(answer, "survives"), StringComparison.Ordinal);
        Assert.Contains("adds a fixed current", Words(answer, "survives"), StringComparison.Ordinal);
        Assert.DoesNotContain("leads", Words(answer, "survives"), StringComparison.Ordinal);
        Assert.Contains("leads", Words(answer, "wrong-way"), StringComparison.Ordinal);
        Assert.Contains("hot", Words(answer, "wrong-way"), StringComparison.Ordinal);
        Assert.Contains("gain error", Words(answer, "too-large"), StringComparison.Ordinal);
        Assert.Contains("current limit", Words(answer, "too-large"), StringComparison.Ordinal);
        Assert.Contains("ohmmeter", Words(answer, "decides"), StringComparison.Ordinal);
    }

    /// <summary>Common practice, no source: a small tip at about 6.4 W passed 250 °C after more than 1 minute and 350 °C after more than 2, stuck near 360 °C, and
    /// passed 450 °C at about 10 W.</summary>
    [Theory]
    [InlineData("marks=6.4W/passed/250C/60s,6.4W/passed/350C/120s,6.4W/stuck/360C,10W/passed/450C")]
    [InlineData("marks=6,4W/passed/482F/1:00;6,4W/passed/350C/2min;6,4W/stuck/360C;10W/passed/450C")]
    public void Marks_of_a_small_tip_say_exactly_what_they_leave_open(string marks)
    {
        var answer = Ask("tip-marks " + marks);
        Assert.Equal("linear and radiating losses both fit; the plateau at 10 W is anywhere above 450 °C; one hold at 10 W would decide", Words(answer, "says"));
        Assert.Equal("yes", Words(answer, "linear-fits"));
        Assert.Equal("yes", Words(answer, "radiating-fits"));
        Assert.Equal(10, Number(answer, "hold"), 1e-12);
        Assert.Equal(450, Number(answer, "plateau-least"), 1e-12);
        Assert.Null(answer.Results.Single(result => result.Name == "plateau-most").Value);

        // By hand, ±5 % of power and ±10 K: 25 + 325·(9.5/6.72) = 484.4 °C for a linear loss.
        Assert.Equal(484.4, Number(answer, "linear-least"), 0.1);
    }

    [Fact]
    public void Marks_that_cannot_be_read_are_refused_with_the_form()
    {
        var refused = QuickSum.Run("tip-marks", ["marks=6.4W/hot/250C"]);
        Assert.False(refused.IsFine);
        Assert.Contains("stuck", refused.Problems[0].What, StringComparison.Ordinal);
    }

    /// <summary>Common practice, no source: an amplified tip sensor gives about 1.1 V near 400 °C, no type named. Gains by hand from the printed millivolts of
    /// [nist-srd60] at 400 and 25 °C: E 28.946 − 1.495, J 21.848 − 1.277, K 16.397 − 1.000, N 12.974 − 0.659, S 3.259 − 0.143. Tolerance: the rounding of those.</summary>
    [Fact]
    public void An_amplified_tip_sensor_implies_one_gain_for_each_type()
    {
        var answer = Ask("gain-per-type output=1.1V hot=400C cold=25C");
        Assert.Equal(1100 / (28.946 - 1.495), Number(answer, "type-e"), 0.003);
        Assert.Equal(1100 / (21.848 - 1.277), Number(answer, "type-j"), 0.004);
        Assert.Equal(1100 / (16.397 - 1.000), Number(answer, "type-k"), 0.005);
        Assert.Equal(1100 / (12.974 - 0.659), Number(answer, "type-n"), 0.008);
        Assert.Equal(1100 / (3.259 - 0.143), Number(answer, "type-s"), 0.12);
        Assert.All(["type-t", "type-c", "type-r", "type-b"], name => Assert.True(Number(answer, name) > 0));
        Assert.Null(Ask("gain-per-type output=1.1V hot=450C cold=25C").Results.Single(result => result.Name == "type-t").Value);
    }
}
