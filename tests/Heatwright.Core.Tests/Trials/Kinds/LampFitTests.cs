using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Volts and amps of lamps that were written down by hand: 0.70 A down to 3.30 V, nothing at 2.70 V, so 0.70 · (V − 2.70)/0.60 between.</summary>
public class LampFitTests
{
    [Fact]
    public void Level_least_volts_and_dark_volts_come_back()
    {
        var answer = Given.Fit("lamp-points", [("volts", [4.2, 3.8, 3.4, 3.2, 3.1, 3.0, 2.9, 2.8, 2.6]), ("amps", [0.70, 0.70, 0.70, 0.583333, 0.466667, 0.35, 0.233333, 0.116667, 0])]);
        Assert.Equal(0.70, answer.Value("load current"), 1e-4);

        // The law's corner is a little round, 0.015 of the fall: by that the volts come out up to 2 mV off, a tenth of what any meter leaves open.
        Assert.Equal(3.30, answer.Value("least input volts"), 2e-3);
        Assert.Equal(2.70, answer.Value("dark volts"), 2e-3);
        Assert.Equal("falls", answer.Word);
    }

    /// <summary>A voltmeter that reads 1 % high by its promise moves both volts by 1 % of themselves, and the current not at all.</summary>
    [Fact]
    public void The_voltmeters_gain_stays_one_cause()
    {
        var answer = Given.Fit("lamp-points", [("volts", [4.2, 3.8, 3.4, 3.2, 3.1, 3.0, 2.9, 2.8]), ("amps", [0.70, 0.70, 0.70, 0.583333, 0.466667, 0.35, 0.233333, 0.116667])], meters: "volts=1%");
        double Push(string name) => answer.Find(name)!.Doubts.Pushes.Where(push => push.Cause.Group == Heatwright.Quantities.CauseGroup.Instrument).Sum(push => Math.Abs(push.By));
        Assert.Equal(0.033 / Math.Sqrt(3), Push("least input volts"), 0.002);
        Assert.Equal(0.027 / Math.Sqrt(3), Push("dark volts"), 0.002);
        Assert.True(Push("load current") < 1e-3);
    }

    [Fact]
    public void A_lamp_that_was_never_turned_down_tells_its_current_and_asks_for_the_rest()
    {
        var answer = Given.Fit("lamp-points", [("volts", [5.0, 4.5, 4.0]), ("amps", [0.50, 0.51, 0.50])]);
        Assert.Equal(0.50, answer.Value("load current"), 0.006);
        Assert.Null(answer.Find("least input volts"));
        Assert.Contains(answer.Next, next => next.Contains("Turn the volts further down", StringComparison.Ordinal));
    }

    /// <summary>By hand: 2.8 W at 4.2, 3.8 and 3.4 V are 0.667, 0.737 and 0.824 A.</summary>
    [Fact]
    public void A_driver_that_takes_the_same_watts_is_told_and_not_fitted()
    {
        var answer = TrialFits.Run("lamp-points", Given.Readings("lamp-points", [("volts", [4.2, 3.8, 3.4, 3.2]), ("amps", [0.667, 0.737, 0.824, 0.5])]));
        Assert.False(answer.IsFine);
        Assert.Contains("0.667 A at 4.20 V, 0.824 A at 3.40 V", answer.Problems[0].Value, StringComparison.Ordinal);
    }

    /// <summary>By hand: 0.7 A at 3.93 V are 2.751 W, of which 0.3 · 3.0 V · 0.7 A = 0.63 W are light; the head has 30 J/K and loses 0.05 W/K, so it rises by 42.42 K·(1 − e^(−t/600 s)).
    /// Taken for heat, the light would make it 38.9 J/K and 0.065 W/K.</summary>
    [Fact]
    public void A_warm_up_of_a_lamp_leaves_out_what_leaves_as_light()
    {
        var lamp = new Part(new("lamp"), PartKind.Lamp, "lamp", [new(PartQuantities.ForwardVolts, 3.0, "V", 0.2, "assumed", "by hand"), new(PartQuantities.LightShare, 30, "%", 8, "assumed", "by hand")]);
        Reading[] readings = [.. Enumerable.Range(0, 61).Select(i => new Reading(i + 1,
            [Text(30.0 * i), "3.93", "0.70", Text(20 + (42.42 * (1 - Math.Exp(-30.0 * i / 600))))]))];
        var trial = new Trial(new("warm"), TrialKind.WarmUp, lamp.Id, [new(new("warm-1"), [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")], readings) { Settings = new Dictionary<string, double> { ["air"] = 20 } }]);
        var found = PartBench.One(lamp, [trial], new InstrumentCauses([]));
        var loss = found.Find(PartQuantities.LinearLoss)!;
        Assert.Equal(30, found.Find(PartQuantities.HeatCapacity)!.Si, 0.6);
        Assert.Equal(0.05, loss.Si, 0.001);

        // By hand: 8/√3 of 100 in 30 are 4.62/30 of 0.63 W, 0.097 W of 2.121 W: 4.6 of 100 of the loss, and in the other direction.
        double push = loss.Doubts.Pushes.Single(one => one.Cause.Id.Contains("light share", StringComparison.Ordinal)).By;
        Assert.Equal(-0.0457 * 0.05, push, 0.0002);
    }

    /// <summary>A head of 38 J/K that loses 0.054 W/K, 0.040 W/K into a grip of 90 J/K that loses 0.16 W/K, stepped here by tenths of a second. The grip gets a fifth of the head's rise:
    /// taken as cold, head and grip together would lose 0.080 W/K instead of 0.054 + 0.04·0.16/0.20 = 0.086 W/K.</summary>
    [Fact]
    public void A_grip_that_gets_warm_beside_the_head_is_reckoned_as_warm()
    {
        var lamp = new Part(new("lamp"), PartKind.Lamp, "lamp", [new(PartQuantities.ForwardVolts, 3.0, "V", 0.2, "assumed", "by hand"), new(PartQuantities.LightShare, 30, "%", 8, "assumed", "by hand")]);
        List<Reading> readings = [];
        double head = 20, grip = 20;
        for (int i = 0; i <= 36_000; i++)
        {
            bool on = i < 18_000;
            if (i % 300 == 0)
            {
                readings.Add(new(readings.Count + 1, [Text(i / 10.0), on ? "3.70" : "0.00", on ? "0.70" : "0.00", Text(head), Text(grip)]));
            }

            double watts = on ? (3.70 - 0.9) * 0.70 : 0, across = 0.040 * (head - grip);
            (head, grip) = (head + (0.1 * (watts - across - (0.054 * (head - 20))) / 38), grip + (0.1 * (across - (0.16 * (grip - 20))) / 90));
        }

        Column[] columns = [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", ""), new("grip degrees", "°C", "")];
        var found = PartBench.One(lamp, [new Trial(new("warm"), TrialKind.WarmUp, lamp.Id, [new(new("warm-1"), columns, readings) { Settings = new Dictionary<string, double> { ["air"] = 20 } }])], new InstrumentCauses([]));
        double Si(string quantity) => found.Find(quantity)!.Si;
        Assert.Equal(38, Si(PartQuantities.HeatCapacity), 0.8);
        Assert.Equal(0.086, Si(PartQuantities.LinearLoss) + (Si(PartQuantities.GripLink) * Si(PartQuantities.GripLoss) / (Si(PartQuantities.GripLink) + Si(PartQuantities.GripLoss))), 0.0015);
    }

    private static string Text(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);
}
