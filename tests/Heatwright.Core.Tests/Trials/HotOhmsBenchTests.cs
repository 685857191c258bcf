using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>How the ohms of a heater grow with heat. Every expected value by hand beside its check; limits of a meter are standard doubts of 1/√3 of them, a last digit is one of 1/√12.</summary>
public sealed class HotOhmsBenchTests
{
    private static readonly double Root3 = Math.Sqrt(3);

    private static readonly InstrumentCauses None = new([]);

    /// <summary>A meter of 1 % and 0.02 Ω in steps of 0.1 Ω; of 2 % and 30 mV in steps of 10 mV; of 3 %; and a thermometer of 2 K.</summary>
    private static readonly InstrumentCauses Meter = new([new("m", "m", [new("Ω", 1, 0.02, 0.1), new("mV", 2, 30, 10), new("A", 3, 0, 0), new("°C", 0, 2, 0)])]);

    /// <summary>Rows 'a b|a b' under columns 'name unit, name unit', all read on the meter m.</summary>
    private static (Trial Trial, ReadingTable Table) Read(TrialKind kind, string columns, string rows, params (string Name, double Value)[] settings)
    {
        Column[] read = [.. columns.Split(", ").Select(column => column.Split(' ')).Select(words => new Column(words[0], words[1], "m"))];
        Run run = new(new("t-1"), read, [.. rows.Split('|').Select((row, i) => new Reading(i + 1, row.Trim().Split(' ')))]) { Settings = settings.ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal) };
        Trial trial = new(new("t"), kind, new("stick"), [run]);
        return (trial, ReadingTable.Read(run, trial));
    }

    private static double By(Estimate estimate, string cause) => estimate.Doubts.Pushes.Where(push => push.Cause.Id == cause).Select(push => push.By).SingleOrDefault();

    private static readonly Estimate Ten = new(10, Units.Ohm, Doubts.From(Cause.Normal("cold", CauseGroup.Trial), 0.1), new Origin.Assumed("test"));

    private static PartFindings Hot(string rows, Estimate? cold, double coldC, InstrumentCauses meter, params (string Name, double Value)[] settings)
    {
        var (trial, table) = Read(TrialKind.HotOhms, "volts V, amps A, degrees °C", rows, settings);
        return HotOhmsBench.HotOhms(trial, table, meter, cold, coldC);
    }

    /// <summary>R = 10·(1 + 0.004·(T − 20)): 18 Ω at 220 °C, 14 Ω at 120 °C, 10.4 Ω at 30 °C, 9.6 Ω at 10 °C. The coefficient belongs to 20 °C wherever the cold ohms were read.</summary>
    [Theory]
    [InlineData("36 2 220", 10, 20), InlineData("36 2 220|14 1 120", 10, 20), InlineData("36 2 220|28 2 120", 10.4, 30), InlineData("9 0.5 220", 9.6, 10)]
    [InlineData("36 2 220|9 0 220|9 2 60|36 2 -", 10, 20)] // no amps, not hot, no degrees
    public void The_coefficient_belongs_to_twenty_degrees(string rows, double coldOhm, double coldC) =>
        Assert.Equal(0.004, Hot(rows, Estimate.Exact(coldOhm, Units.Ohm, new Origin.Assumed("test")), coldC, None).Find(PartQuantities.Alpha)!.Value, 1e-12);

    /// <summary>(36/2 − leads)/10 against 200 K: 0.5/√3 Ω more of leads are 0.5/√3/10/200 less per kelvin.</summary>
    [Fact]
    public void What_the_leads_may_be_off_by_reaches_the_coefficient()
    {
        var (trial, table) = Read(TrialKind.HotOhms, "volts V, amps A, degrees °C", "36 2 220", ("leads", 0));
        var run = table.Run with { SettingsPlusMinus = new Dictionary<string, double> { ["leads"] = 0.5 } };
        var found = HotOhmsBench.HotOhms(trial, ReadingTable.Read(run, trial), None, Ten, 20).Find(PartQuantities.Alpha)!;
        Assert.Equal(-0.5 / Root3 / 10 / 200, By(found, "t-1 leads"), 1e-9);
    }

    [Theory, InlineData("70", 20, 0), InlineData("70.1", 20, 1), InlineData("60", 10, 0), InlineData("60.1", 10, 1)]
    public void Hot_is_fifty_kelvin_above_cold(string degrees, double coldC, int findings)
    {
        var found = Hot($"24 2 {degrees}", Ten, coldC, None);
        Assert.Equal(findings, found.Findings.Count);
        Assert.Equal(1 - findings, found.Problems.Count);
        Assert.All(found.Problems, problem => Assert.Contains("no hot reading is left", problem.What, StringComparison.Ordinal));
    }

    [Fact]
    public void Hot_ohms_without_cold_ones_say_what_is_missing() => Assert.Contains("cold ohms of this heater are not known", Assert.Single(Hot("36 2 220", null, 20, None).Problems).What, StringComparison.Ordinal);

    /// <summary>36 V at 2 A with 0.3 Ω of the meter and 0.2 Ω of leads: 17.5 Ω, by hand 0.75/200. Where nothing but those is left there is no heater.</summary>
    [Fact]
    public void Ohms_of_meter_and_leads_come_off_volts_read_at_the_supply()
    {
        Assert.Equal(0.00375, Hot("36 2 220", Ten, 20, None, ("burden", 0.3), ("leads", 0.2), ("volts at", 2)).Find(PartQuantities.Alpha)!.Value, 1e-12);
        Assert.Empty(Hot("1 2 220", Ten, 20, None, ("burden", 0.3), ("leads", 0.2), ("volts at", 2)).Findings);
        Assert.Single(Hot("1.01 2 220", Ten, 20, None, ("burden", 0.3), ("leads", 0.2), ("volts at", 2)).Findings);
    }

    /// <summary>Volts at the part hold nothing of meter and leads: 36 V at 2 A are 18 Ω, by hand 0.8/200. Where the run does not say it, it is asked.</summary>
    [Theory, InlineData(1, 0), InlineData(double.NaN, 1)]
    public void Nothing_comes_off_volts_read_at_the_part(double at, int asks)
    {
        var found = Hot("36 2 220", Ten, 20, None, ("burden", 0.3), ("leads", 0.2), ("volts at", at));
        Assert.Equal(0.004, found.Find(PartQuantities.Alpha)!.Value, 1e-12);
        Assert.Equal(asks, found.Remarks.Count(remark => remark.Words.Contains("Were they read at the supply?", StringComparison.Ordinal)));
    }

    /// <summary>α = (18/10 − 1)/200. By hand: 0.1 Ω more of the cold ohms is −18/100/200·0.1; 2 %/√3 more volts is 1.8/200 of that; so is 3 %/√3 fewer amps; 30 mV/√3 at 2 A is 0.015/√3 Ω; 2 K/√3 more is −0.004/200 of that each.</summary>
    [Fact]
    public void What_could_be_wrong_with_hot_ohms_is_carried_by_cause()
    {
        var alpha = Hot("36 2 220|36 2 220", Ten, 20, Meter).Find(PartQuantities.Alpha)!;
        Assert.Equal(-9e-5, By(alpha, "cold"), 2e-8);
        double volts = 0.02 / Root3, amps = 0.03 / Root3, kelvin = 2 / Root3;
        Assert.Equal(1.8 * volts / 200, By(alpha, "m mV gain"), 1e-9);
        Assert.Equal(0.0015 / Root3 / 200, By(alpha, "m mV offset"), 1e-12);
        Assert.Equal(1.8 * ((1 / (1 + amps)) - 1) / 200, By(alpha, "m A gain"), 1e-9);
        Assert.Equal((0.8 / (200 + kelvin)) - 0.004, By(alpha, "m °C offset"), 1e-12);
        Assert.Equal(0.003 / 200 / Math.Sqrt(2), By(alpha, "t scatter"), 1e-12);
        Assert.Equal(6, alpha.Doubts.Pushes.Count());
    }

    /// <summary>Rises of 140 K: six sevenths are 120 K, and what is beyond 140 °C counts. The last two rows stand 10 s apart and 6 K: 0.6 K/s for the lag, 1 s at least. By hand α = 0.8/200 as above in every row.</summary>
    [Theory, InlineData(5, 3.0), InlineData(0.5, 0.6)]
    public void A_warm_up_tells_hot_ohms_by_its_hottest_rows(double lagS, double behindK)
    {
        var (trial, table) = Read(TrialKind.WarmUp, "time s, volts V, amps A, degrees °C", "0 20 2 20|10 25 2 140|20 29.44 2 154|30 29.92 2 160|40 10 2 180");
        Run off = table.Run with { Settings = new Dictionary<string, double> { ["off"] = 40 } };
        var alpha = Assert.Single(HotOhmsBench.HotOhmsOfWarmUp(trial, ReadingTable.Read(off, trial), None, Ten, 20, lagS).Findings).Value;

        // 14.72/10 − 1 over 134 K and 14.96/10 − 1 over 140 K.
        double middle = ((0.472 / 134) + (0.496 / 140)) / 2;
        Assert.Equal(middle, alpha.Value, 1e-9);
        Assert.Equal(middle * behindK / 134, By(alpha, "t heater ahead of the probe"), 1e-9);
        Assert.Equal(0.003 / 134 / Math.Sqrt(2), By(alpha, "t scatter"), 1e-12);
    }

    [Fact]
    public void A_warm_up_with_one_hot_row_climbs_nowhere_and_a_cold_one_tells_nothing()
    {
        var (trial, table) = Read(TrialKind.WarmUp, "time s, volts V, amps A, degrees °C", "0 20 2 20|10 20 2 60|20 28.8 2 130");
        var alpha = Assert.Single(HotOhmsBench.HotOhmsOfWarmUp(trial, table, None, Ten, 20, 9).Findings).Value;
        Assert.Equal(0.004, alpha.Value, 1e-12);
        Assert.Equal(0, By(alpha, "t heater ahead of the probe"));
        var cold = Read(TrialKind.WarmUp, "time s, volts V, amps A, degrees °C", "0 20 2 20|10 20 2 60");
        var none = HotOhmsBench.HotOhmsOfWarmUp(cold.Trial, cold.Table, None, Ten, 20, 9);
        Assert.Equal((0, 0, 0), (none.Findings.Count, none.Problems.Count, none.Remarks.Count));
    }
}
