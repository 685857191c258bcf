using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the test of lamps says, and at which readings: 1 A down to 3.30 V, nothing at 2.70 V, so (V − 2.70)/0.60 A between.</summary>
public class LampFitsTests
{
    private static readonly double[] Volts = [4.2, 3.8, 3.6, 3.4, 3.12, 3.0, 2.88, 2.76], Amps = [1, 1, 1, 1, 0.7, 0.5, 0.3, 0.1];

    /// <summary>A tenth of the amps still counts; a reading of 97 % has begun to fall, one of a little more has not.</summary>
    [Fact]
    public void A_lamp_holds_down_to_its_lowest_level_reading()
    {
        var answer = Lamp([.. Volts, 2.73, 2.6], [.. Amps, 0.05, 0]);
        Assert.Equal("It holds 1.000 A down to 3.40 V; below that it grows weaker. 2 readings with less than a tenth of the amps count for nothing here.", Assert.Single(answer.Says));
        Assert.Equal("falls", answer.Word);
        Assert.Equal(1, answer.Value("load current"), 2e-3);
        Assert.Equal("It holds 1.000 A down to 3.40 V; below that it grows weaker.", Assert.Single(Lamp(Volts, Amps).Says));
        Assert.Equal("It holds 1.000 A down to 3.40 V; below that it grows weaker.", Assert.Single(Lamp([.. Volts, 3.28], [.. Amps, 0.97]).Says));
        Assert.Equal("It holds 1.000 A down to 3.28 V; below that it grows weaker.", Assert.Single(Lamp([.. Volts, 3.28], [.. Amps, 0.971]).Says));
        Assert.StartsWith("2 or more", Refused.By("lamp-points", [("volts", [4]), ("amps", [1])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>A meter whose zero is a digit off shows −0.001 A at a dark lamp; −0.1 A are leads that were swapped.</summary>
    [Theory, InlineData(-0.001, 0), InlineData(-0.1, 1)]
    public void A_zero_that_is_a_digit_off_is_no_impossible_reading(double dark, int impossible) =>
        Assert.Equal(impossible, Lamp([.. Volts, 2.6], [.. Amps, dark]).Remarks.Count(remark => remark.Rule == "impossible"));

    private const string Down = "Turn the volts further down, in steps of 0.1 V, until it is dark: nothing is known yet of the volts it needs.", Up = "Take two readings at volts where the amps no longer grow.";

    [Theory]
    [InlineData(3, 1, "held", "It holds 1.000 A down to 3.60 V, the lowest reading that still does.", Down)]
    [InlineData(1, 2, "held", "It holds 1.000 A down to 4.20 V, the lowest reading that still does.", Up)]
    [InlineData(2, 2, "falls", "It holds 1.000 A down to 3.80 V; below that it grows weaker.", "")]
    public void Two_readings_of_either_kind_tell_the_fall(int flat, int falling, string word, string says, string next)
    {
        int[] rows = [.. Enumerable.Range(0, flat), .. Enumerable.Range(4, falling)];
        var answer = Lamp([.. rows.Select(i => Volts[i])], [.. rows.Select(i => Amps[i])]);
        Assert.Equal(word, answer.Word);
        Assert.Equal(says, Assert.Single(answer.Says));
        Assert.Equal(next, string.Join(" ", answer.Next));
        Assert.Equal(1, answer.Value("load current"), 2e-3);
    }

    /// <summary>At the most volts nine tenths of the most amps are a driver that holds, less is one that switches.</summary>
    [Fact]
    public void Amps_that_grow_as_the_volts_fall_are_of_a_driver_that_switches()
    {
        Assert.Equal("falls", Lamp([4.3, .. Volts[1..7]], [0.9, .. Amps[1..7]]).Word);
        Assert.Equal("0.890 A at 4.30 V, 1.000 A at 3.80 V", Refused.By("lamp-points", [("volts", [4.3, .. Volts[1..7]]), ("amps", [0.89, .. Amps[1..7]])]).Value);
        double[] volts = [4.2, 4.0, 3.8, 3.6, 3.4, 3.2, 3.0, 2.8];
        double[] amps = [.. volts.Select(v => Math.Round(2.8 / v, 3))];
        Assert.Equal("0.667 A at 4.20 V, 1.000 A at 2.80 V", Refused.By("lamp-points", [("volts", volts), ("amps", amps)]).Value);

        // A slip beside does not hide it: what is left without that still switches.
        Assert.Equal("0.667 A at 4.20 V, 1.000 A at 2.80 V", Refused.By("lamp-points", [("volts", [.. volts, 3.5]), ("amps", [.. amps, 8])]).Value);
    }

    /// <summary>One slip of eight is put aside: ten times the amps, or not quite twice, or a tenth of them at the most volts. Of seven none is.</summary>
    [Theory]
    [InlineData(1, 10, "10.000 A at 3.80 V stand alone among the other readings.")]
    [InlineData(1, 1.9, "1.900 A at 3.80 V stand alone among the other readings.")]
    [InlineData(0, 0.1, "0.100 A at 4.20 V stand alone among the other readings.")]
    public void One_slip_makes_no_driver_that_switches(int row, double slip, string words)
    {
        double[] amps = [.. Amps.Select((a, i) => i == row ? slip : a)];
        var answer = Lamp(Volts, amps);
        var remark = Assert.Single(answer.Remarks, remark => remark.LeftOut);
        Assert.Equal((row + 1, words, "S23", "E"), (remark.Reading, remark.Words, remark.Rule, remark.Level));
        Assert.Equal("falls", answer.Word);
        Assert.Equal(1, answer.Value("load current"), 2e-3);
        Assert.Equal(3.3, answer.Value("least input volts"), 0.01);
        Assert.StartsWith("Its amps grow as its volts fall", Refused.By("lamp-points", [("volts", Volts[..7]), ("amps", amps[..7])]).What, StringComparison.Ordinal);
    }

    /// <summary>Ten times the amps and not quite twice of them are two slips, and where two stand out nobody can tell them from a driver that switches.</summary>
    [Fact]
    public void Two_slips_are_not_put_aside_together() =>
        Assert.StartsWith("Its amps grow as its volts fall", Refused.By("lamp-points", [("volts", [.. Volts, 3.7, 3.5]), ("amps", [.. Amps, 10, 1.9])]).What, StringComparison.Ordinal);

    private static TrialAnswer Lamp(double[] volts, double[] amps) => Given.Fit("lamp-points", [("volts", volts), ("amps", amps)]);
}
