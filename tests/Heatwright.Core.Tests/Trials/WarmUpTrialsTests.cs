using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>A tip of 20 J/K that loses 0.1 W/K, 5 V and 2 A from cold at 20 °C: 20 + 100·(1 − e^(−t/200)). What is expected of slips and meters follows from that law by hand; shanks and radiation from a fourth-order integration written here.</summary>
public sealed class WarmUpTrialsTests
{
    private static double Degrees(double s) => 20 + (100 * (1 - Math.Exp(-s / 200)));

    private static string Text(double value) => value.ToString("0.0000", CultureInfo.InvariantCulture);

    private static Trial Up(IEnumerable<string[]> rows, string columns = "time s,volts V,amps A,degrees °C", string meter = "", params (string Name, double Value)[] settings) =>
        new(new("up"), TrialKind.WarmUp, new("tip"), [new(new("up-1"), [.. columns.Split(',').Select(column => new Column(column[..column.LastIndexOf(' ')], column[(column.LastIndexOf(' ') + 1)..], meter))],
            [.. rows.Select((row, i) => new Reading(i + 1, row))]) { Settings = settings.Append(("air", 20)).ToDictionary(pair => pair.Item1, pair => pair.Item2, StringComparer.Ordinal) }]);

    private static IEnumerable<string[]> Rows(int count = 25, Func<double, double>? degrees = null, double step = 24) => Enumerable.Range(0, count).Select(i => new[] { Text(step * i), "5", "2", Text((degrees ?? Degrees)(step * i)) });

    private static PartFindings Found(Trial trial, PartKind kind = PartKind.Heater, params Instrument[] meters) => PartBench.One(new(new("tip"), kind, "tip", []), [trial], new InstrumentCauses(meters));

    private static double By(Estimate estimate, string cause) => estimate.Doubts.Pushes.Where(push => push.Cause.Id == cause).Select(push => push.By).SingleOrDefault();

    /// <summary>Watts that are g more are found as g more heat capacity and loss. Degrees that are g more: a rise of 100 K becomes 100 + 120·g, so the loss falls by 1.2·g of itself. Seconds move nothing here.</summary>
    [Fact]
    public void What_meters_could_be_wrong_by_reaches_the_findings()
    {
        var found = Found(Up(Rows(), meter: "m"), PartKind.Heater, new Instrument("m", "m", [new("V", 2, 0, 0), new("A", 3, 0, 0), new("°C", 1, 0, 0), new("s", 1, 0, 0)]));
        Estimate capacity = found.Find(PartQuantities.HeatCapacity)!, loss = found.Find(PartQuantities.LinearLoss)!;
        Assert.Equal(20, capacity.Value, 0.1);
        Assert.Equal(0.1, loss.Value, 0.0005);
        double volts = 0.02 / Math.Sqrt(3), amps = 0.03 / Math.Sqrt(3), kelvin = 0.01 / Math.Sqrt(3);
        Assert.Equal(20 * volts, By(capacity, "m V gain"), 0.01 * 20 * volts);
        Assert.Equal(20 * amps, By(capacity, "m A gain"), 0.01 * 20 * amps);
        Assert.Equal(0.1 * volts, By(loss, "m V gain"), 0.001 * volts);
        Assert.Equal(-0.12 * kelvin, By(loss, "m °C gain"), 0.01 * kelvin);
        Assert.Equal(0, By(loss, "m s gain"));
        Assert.Equal(("up", "up-1"), (((Origin.Fitted)loss.Origin).Trial.Name, ((Origin.Fitted)loss.Origin).Runs.Single().Name));
        Assert.Equal("up, tip", Assert.Single(found.Pictures).Title);
        Assert.All(found.Pictures[0].Read.Zip(found.Pictures[0].Fitted), pair => Assert.Equal(pair.First, pair.Second, 0.1));
    }

    /// <summary>10 W read on a power meter are 5 V and 2 A: the same 20 J/K and 0.1 W/K, and a gain of 3 % as much in both. Where volts and amps are read too, they count; ohms of the heater are not told by watts.</summary>
    [Theory, InlineData("time s,degrees °C,watts W"), InlineData("time s,watts W,volts V,amps A,degrees °C")]
    public void Watts_stand_for_volts_and_amps(string columns)
    {
        bool alone = !columns.Contains("volts", StringComparison.Ordinal);
        var found = Found(Up(Rows().Select(row => alone ? new[] { row[0], row[3], "10" } : [row[0], "11", "5", "2", row[3]]), columns, "m"), PartKind.Heater, new Instrument("m", "m", [new("W", 3, 0, 0)]));
        Assert.Empty(found.Problems);
        Assert.Equal(20, found.Find(PartQuantities.HeatCapacity)!.Value, 0.1);
        Assert.Equal(0.1, found.Find(PartQuantities.LinearLoss)!.Value, 0.0005);
        Assert.Equal(alone ? 0.1 * 0.03 / Math.Sqrt(3) : 0, By(found.Find(PartQuantities.LinearLoss)!, "m W gain"), 2e-5);
        Trial cold = new(new("cold"), TrialKind.ColdOhms, new("tip"), [new(new("cold-1"), [new("ohms", "Ω", "")], [new(1, ["2.5"])])]);
        var both = PartBench.One(new(new("tip"), PartKind.Heater, "tip", []), [cold, Up(Rows().Select(row => new[] { row[0], row[3], "10" }), "time s,degrees °C,watts W")], new InstrumentCauses([]));
        Assert.Empty(both.Problems);
        Assert.Null(both.Find(PartQuantities.Alpha));
    }

    [Fact]
    public void What_leaves_a_lamp_as_light_is_not_told_by_its_watts()
    {
        var found = Found(Up(Rows().Select(row => new[] { row[0], row[3], "10" }), "time s,degrees °C,watts W"), PartKind.Lamp);
        Assert.Empty(found.Findings);
        Assert.Contains("goes by its amps", Assert.Single(found.Problems).What, StringComparison.Ordinal);
    }

    /// <summary>0.05 Ω of the meter and 0.05 Ω of leads keep 0.2 V at 2 A: 9.6 W heat, and all that is found is 0.96 of the above.</summary>
    [Fact]
    public void Meter_and_leads_keep_their_own_watts()
    {
        var found = Found(Up(Rows(), settings: [("burden", 0.05), ("leads", 0.05), ("volts at", 2)]));
        Assert.Equal(19.2, found.Find(PartQuantities.HeatCapacity)!.Value, 0.1);
        Assert.Equal(0.096, found.Find(PartQuantities.LinearLoss)!.Value, 0.0005);

        // Read at the part, as the recipe asks, they hold nothing of it, and where it is not said that is asked.
        var part = Found(Up(Rows(), settings: [("burden", 0.05), ("leads", 0.05)]));
        Assert.Equal(20, part.Find(PartQuantities.HeatCapacity)!.Value, 0.1);
        Assert.Single(part.Remarks, remark => remark.Words.Contains("Were they read at the supply?", StringComparison.Ordinal));
    }

    /// <summary>At its end 10 W stand against a rise of 100 K. Air that is 2/√3 K warmer leaves a rise of as much less: a loss larger by 0.1·(2/√3)/100. Leads of 0.2/√3 Ω more keep 2²·0.2/√3 W: smaller by that over 100 K.</summary>
    [Theory, InlineData("air", 2, 0.1 * 2 / 100), InlineData("leads", 0.2, -4 * 0.2 / 100), InlineData("burden", 0.2, -4 * 0.2 / 100)]
    public void What_a_setting_may_be_off_by_reaches_the_findings(string setting, double plusMinus, double pushed)
    {
        var trial = Up(Rows(), settings: [("burden", 0), ("leads", 0), ("volts at", 2)]);
        var run = trial.Runs[0] with { SettingsPlusMinus = new Dictionary<string, double> { [setting] = plusMinus } };
        Assert.Equal(pushed / Math.Sqrt(3), By(Found(trial with { Runs = [run] }).Find(PartQuantities.LinearLoss)!, $"up-1 {setting}"), 0.05 * Math.Abs(pushed));
        Assert.Equal(0, By(Found(trial).Find(PartQuantities.LinearLoss)!, $"up-1 {setting}"));
    }

    /// <summary>A lamp keeps 0.3 of 3 V as light, 0.9 V: 8.2 W heat. G = (5 − 0.9)·2/100, so 0.1/√3 more of the share, 3 V each, is −0.06·0.1/√3 W/K, and 0.3/√3 V more, a share of 0.3 each, as much as −0.006·0.3/√3.</summary>
    [Fact]
    public void What_leaves_a_lamp_as_light_heats_nothing()
    {
        var found = Found(Up(Rows()), PartKind.Lamp);
        var loss = found.Find(PartQuantities.LinearLoss)!;
        Assert.Equal(0.082, loss.Value, 0.0005);
        Assert.Equal(16.4, found.Find(PartQuantities.HeatCapacity)!.Value, 0.1);
        Assert.Equal(-0.006 / Math.Sqrt(3), By(loss, "tip: light share, assumed"), 2e-5);
        Assert.Equal(-0.0018 / Math.Sqrt(3), By(loss, "tip: forward volts, assumed"), 2e-5);
    }

    [Theory, InlineData(4, 0), InlineData(5, 2)]
    public void Five_readings_of_degrees_are_needed(int count, int atLeast)
    {
        var found = Found(Up(Rows(count, step: 100).Append(["900", "5", "2", "-"])));
        Assert.Equal(atLeast > 0, found.Findings.Count >= 2);
        Assert.Equal(atLeast > 0 ? 0 : 1, found.Problems.Count);
        Assert.All(found.Problems, problem => Assert.Contains("fewer than five readings of degrees", problem.What, StringComparison.Ordinal));
    }

    /// <summary>A row at the time of the one before it, and one without volts, are none.</summary>
    [Fact]
    public void Rows_without_watts_or_time_of_their_own_take_no_part()
    {
        string[][] rows = [.. Rows()];
        var found = Found(Up([.. rows[..12], [rows[11][0], "5", "2", "95"], .. rows[12..20], ["470", "-", "2", "30"], .. rows[20..]]));
        Assert.Equal(25, found.Pictures[0].X.Length);
        Assert.Equal(0.1, found.Find(PartQuantities.LinearLoss)!.Value, 0.0005);
    }

    /// <summary>At 576 s it has 114.4 °C, 94.4 K above the air: a tenth of that, 9.4 K, is near. 10·10.6 and 1230/10 are near it, 10·10.4 and 1245/10 are not.</summary>
    [Theory, InlineData("11.4", "decimal point"), InlineData("10.6", "decimal point"), InlineData("10.4", "probe off its place"), InlineData("1230", "decimal point"), InlineData("1245", "probe off its place"), InlineData("80", "probe off its place"), InlineData("114.4", "")]
    public void A_last_reading_far_off_the_fit_is_left_out(string last, string why)
    {
        string[][] rows = [.. Rows()];
        rows[24] = ["576", "5", "2", last];
        var found = Found(Up(rows));
        Remark[] told = [.. found.Remarks.Where(remark => remark.Reading > 0)];
        Assert.Equal(why.Length > 0 ? 1 : 0, told.Length);
        Assert.All(told, remark => Assert.Equal((25, Remark.LeftOut), (remark.Reading, remark.Effect)));
        Assert.All(told, remark => Assert.Contains(why, remark.Words, StringComparison.Ordinal));
        Assert.All(told, remark => Assert.Contains("The fit says 114 °C here", remark.Words, StringComparison.Ordinal));
        Assert.Equal(0.1, found.Find(PartQuantities.LinearLoss)!.Value, 0.001);
        Assert.Equal(why.Length > 0, double.IsNaN(found.Pictures[0].Doubt[24]));
    }

    /// <summary>A reading is told as left out from six spreads of 1 K on, as it is left out: 6.5 K is beyond, 5.5 K is not.</summary>
    [Theory, InlineData(6.5, 1), InlineData(5.5, 0)]
    public void What_is_left_out_of_the_fit_is_told(double off, int told)
    {
        string[][] rows = [.. Rows()];
        rows[12][3] = Text(Degrees(288) + off);
        var found = Found(Up(rows));
        Assert.Equal(told, found.Remarks.Count(remark => remark.Reading == 13));
        Assert.Equal(told, found.Pictures[0].Doubt.Count(double.IsNaN));
    }

    private static double[] Air(int count) => [.. Enumerable.Repeat(double.NaN, count)];

    private static WarmUpLog Log(double[] time, Func<double, double> end, double[]? grip = null) => new("log", time, [.. time.Select(_ => 10.0)], [.. time.Select(end)], grip ?? Air(time.Length), 20);

    private static double[] Every(double s, int count) => [.. Enumerable.Range(0, count).Select(i => s * i)];

    /// <summary>A probe 15 s late sees 1 − (200·e^(−t/200) − 15·e^(−t/15))/185 of the rise.</summary>
    [Fact]
    public void A_probe_that_follows_late_shows_by_how_much()
    {
        var found = WarmUpFit.Fit([Log(Every(6, 100), t => 20 + (100 * (1 - (((200 * Math.Exp(-t / 200)) - (15 * Math.Exp(-t / 15))) / 185))))]);
        Assert.Equal("loss and lag", found.Model);
        Assert.Equal(15, found.LagS, 0.2);
        Assert.Equal(20, found.HeatCapacityJPerK, 0.1);
        Assert.Equal(0.1, found.LinearWPerK, 0.0005);
        Assert.InRange(found.MisfitK, 0, 0.1);
        Assert.Equal("loss", WarmUpFit.Fit([Log(Every(6, 100), Degrees)]).Model);
    }

    /// <summary>Radiation is tried where the end rises by more than 80 K.</summary>
    [Theory, InlineData(79, 2), InlineData(81, 3)]
    public void Below_eighty_kelvin_radiation_hides_in_the_loss(double rise, int tried) => Assert.Equal(tried, WarmUpFit.Fit([Log(Every(30, 20), t => 20 + (rise * (1 - Math.Exp(-t / 50)) / (1 - Math.Exp(-570.0 / 50))))]).Tried.Count);

    /// <summary>Classic fourth-order steps of 0.5 s.</summary>
    private static double[][] Integrated(double[] time, double[] start, Func<double[], double[]> slope)
    {
        double[] at = [.. start];
        double now = 0;
        List<double[]> rows = [];
        foreach (double t in time)
        {
            while (now < t - 1e-9)
            {
                double h = Math.Min(0.5, t - now);
                double[] Step(double[] by, double share) => [.. at.Zip(by, (a, b) => a + (share * h * b))];
                double[] a1 = slope(at), a2 = slope(Step(a1, 0.5)), a3 = slope(Step(a2, 0.5)), a4 = slope(Step(a3, 1));
                at = [.. at.Select((value, i) => value + (h / 6 * (a1[i] + (2 * a2[i]) + (2 * a3[i]) + a4[i])))];
                now += h;
            }

            rows.Add([.. at]);
        }

        return [.. rows];
    }

    [Fact]
    public void A_hot_end_shows_how_much_it_radiates()
    {
        double[] time = Every(10, 80);
        double[][] rows = Integrated(time, [20], c => [(10 - (0.02 * (c[0] - 20)) - (5.670374419e-8 * 2e-3 * (Math.Pow(c[0] + 273.15, 4) - Math.Pow(293.15, 4)))) / 12]);
        var found = WarmUpFit.Fit([new("log", time, [.. time.Select(_ => 10.0)], [.. rows.Select(row => row[0])], Air(80), 20)]);
        Assert.Equal("loss, radiation and lag", found.Model);
        Assert.Equal(12, found.HeatCapacityJPerK, 0.12);
        Assert.Equal(0.02, found.LinearWPerK, 0.0015);
        Assert.Equal(2e-3, found.RadiatingM2, 1e-4);
        Assert.Equal(["heat capacity", "linear loss", "radiating area", "lag"], found.Searched);
    }

    /// <summary>The same end typed in: what it loses at the end, which neither of the two numbers says, by the law it was made from.</summary>
    [Fact]
    public void What_a_hot_end_loses_in_all_is_told()
    {
        double[] time = Every(10, 80);
        double[][] rows = Integrated(time, [20], c => [(10 - (0.02 * (c[0] - 20)) - (5.670374419e-8 * 2e-3 * (Math.Pow(c[0] + 273.15, 4) - Math.Pow(293.15, 4)))) / 12]);
        string told = Assert.Single(Found(Up(time.Select((t, i) => new[] { Text(t), "5", "2", Text(rows[i][0]) }))).Remarks, remark => remark.Words.Contains("in all", StringComparison.Ordinal)).Words;
        string[] numbers = [.. told.Split(' ').Where(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out _))];
        double[] said = [.. numbers.Select(word => double.Parse(word, CultureInfo.InvariantCulture))];
        Assert.Equal(rows[^1][0], said[0], 1.0);
        Assert.Equal((0.02 * (rows[^1][0] - 20)) + (5.670374419e-8 * 2e-3 * (Math.Pow(rows[^1][0] + 273.15, 4) - Math.Pow(293.15, 4))), said[1], 0.1);
        Assert.Equal(0.02 * (rows[^1][0] - 20), said[2], 0.4);
        Assert.Equal(said[1], said[2] + said[3], 0.02);
        Assert.DoesNotContain(Found(Up(Rows())).Remarks, remark => remark.Words.Contains("in all", StringComparison.Ordinal));
    }

    /// <summary>An end of 20 J/K that loses 0.1 W/K in all, a share of it into a grip of 70 J/K and 0.18 W/K, which gets warm beside it or hardly.</summary>
    [Theory, InlineData(0.04, true), InlineData(0.01, false)]
    public void What_goes_into_the_grip_is_told_by_its_own_readings(double link, bool warm)
    {
        double[] time = Every(20, 90);
        double[][] rows = Integrated(time, [20, 20], c => [(10 - ((0.1 - link) * (c[0] - 20)) - (link * (c[0] - c[1]))) / 20, ((link * (c[0] - c[1])) - (0.18 * (c[1] - 20))) / 70]);
        WarmUpLog With(int readings) => new("log", time, [.. time.Select(_ => 10.0)], [.. rows.Select(row => row[0])], [.. rows.Select((row, i) => i >= 90 - readings ? row[1] : double.NaN)], 20);
        var found = WarmUpFit.Fit([With(90)]);
        Assert.Equal(warm, found.GripIsWarm);
        Assert.Equal(link, found.GripLinkWPerK, 0.1 * link);
        Assert.Equal(0.1, found.LinearWPerK + found.GripLinkWPerK, warm ? 0.002 : 0.004);
        Assert.Equal(70, found.GripHeatCapacityJPerK, 6.0);
        Assert.Equal(0.18, found.GripLossWPerK, 0.015);
        Assert.Equal(20, found.HeatCapacityJPerK, 0.5);
        Assert.Equal(["grip link", "grip heat capacity", "grip loss"], found.Searched.TakeLast(3));

        // A grip of which fewer than three readings are left says nothing.
        Assert.Equal(0, WarmUpFit.Fit([With(2)]).GripLinkWPerK);
        Assert.True(WarmUpFit.Fit([With(3)]).GripLinkWPerK > 0);
    }
}
