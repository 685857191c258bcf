using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>A cell of 1 Ah, 3 V + 1.2 V of its charge and 0.1 Ω at once with nothing behind it: volts by hand at every row.</summary>
public sealed class CellTrialsTests
{
    private static readonly Part Cell = new(new("cell"), PartKind.Cell, "cell", []);

    private static readonly InstrumentCauses Meter = new([new("m", "m", [new("V", 1, 0.01, 0), new("A", 2, 0, 0)])]);

    private static Trial Trial(string id, TrialKind kind, IEnumerable<(string Time, double TakenC, double Amps)> rows, params (string Name, double Value)[] settings)
    {
        Reading[] readings = [.. rows.Select((row, i) => new Reading(i + 1, double.IsNaN(row.Amps) ? [row.Time, "-", "-"] : [row.Time, Text(3 + (1.2 * (1 - (row.TakenC / 3600))) - (0.1 * row.Amps)), Text(row.Amps)]))];
        return new(new(id), kind, Cell.Id, [new(new(id + "-1"), [new("time", "s", ""), new("volts", "V", "m"), new("amps", "A", "m")], readings) { Settings = settings.ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal) }]);
    }

    private static string Text(double value) => value.ToString("0.00000", CultureInfo.InvariantCulture);

    /// <summary>0.2 A over five hours, typed off a film that leaves out 600 ± 30 s between 9000 s and 9600 s.</summary>
    private static Trial Slow() => Trial("slow", TrialKind.Discharge, Enumerable.Range(0, 31).SelectMany(i => i == 16 ? new[] { ("cut+600±30s", 0.0, double.NaN), Film(i) } : [Film(i)]), (FilmTimes.FrameRate, 25));

    private static (string Time, double TakenC, double Amps) Film(int row)
    {
        int s = 600 * (row < 16 ? row : row - 1);
        return (string.Create(CultureInfo.InvariantCulture, $"{s / 3600:00}:{s / 60 % 60:00}:00:00"), 120.0 * row, 0.2);
    }

    private static Trial Fast() => Trial("fast", TrialKind.Discharge, Enumerable.Range(0, 10).Select(i => (Text(380 * i), 380.0 * i, 1.0)));

    /// <summary>2 A on and off every 60 s: a row every 20 s, charge by straight lines between rows.</summary>
    private static Trial Pulse()
    {
        double taken = 0, before = 0;
        List<(string, double, double)> rows = [];
        for (int i = 0; i < 24; i++)
        {
            double amps = i / 3 % 2 == 0 ? 0 : 2;
            taken += i == 0 ? 0 : 10 * (amps + before);
            before = amps;
            rows.Add((Text(20 * i), taken, amps));
        }

        return Trial("pulse", TrialKind.Pulse, rows);
    }

    private static double By(Estimate estimate, string cause) => estimate.Doubts.Pushes.Where(push => push.Cause.Id == cause).Select(push => push.By).SingleOrDefault();

    /// <summary>0.2 A · 18000 s are 1 Ah; half of it leaves 3.6 V. What amps and volts could be wrong by: 2 % and 1 % over √3 of each value, ohms fall with the amps; half a hundredth of the capacity and 8 % of the ohms besides;
    /// while nobody looked 0.2 A flowed for 30/√3 s more or less.</summary>
    [Fact]
    public void The_longest_discharge_tells_capacity_and_all_others_the_ohms()
    {
        var found = PartBench.One(Cell, [Fast(), Slow(), Pulse()], Meter);
        Assert.Empty(found.Remarks);
        Estimate ah = found.Find(PartQuantities.Capacity)!, ohms = found.Find(PartQuantities.Ohms)!, open = found.Find(CellQuantities.OpenVolts)!;
        double gain = 0.02 / Math.Sqrt(3), volts = 0.01 / Math.Sqrt(3);
        Assert.Equal(1, ah.Value, 1e-9);
        Assert.Equal(0.005, By(ah, "slow capacity scatter"), 1e-9);
        Assert.Equal(gain, By(ah, "m A gain"), 1e-9);
        Assert.Equal(0.2 * 30 / Math.Sqrt(3) / 3600, By(ah, "slow-1 film cut before row 17"), 1e-9);
        Assert.Equal(3, ah.Doubts.Pushes.Count());
        Assert.Equal(0.1, ohms.Value, 0.01);
        Assert.Equal(0.08 * ohms.Value, By(ohms, "cell: form of the cell model"), 1e-9);
        Assert.Equal(-gain * ohms.Value, By(ohms, "m A gain"), 1e-9);
        Assert.Equal(volts * ohms.Value, By(ohms, "m V gain"), 1e-9);
        Assert.Equal(found.Cell!.LogOhmsDoubt * ohms.Value, By(ohms, "fast ohms scatter"), 1e-9);
        Assert.InRange(found.Cell.LogOhmsDoubt, 0.02, 0.4); // a handful of rows, known beforehand to a factor of e²
        Assert.Equal(3.6, open.Value, 0.015); // the sag of the slow discharge is searched within a standard 0.015 V
        Assert.Equal(Math.Max(0.002, found.Cell.MisfitV), By(open, "slow open volts misfit"), 1e-9); // what the fit leaves over, 2 mV at least
        Assert.Equal(volts * open.Value, By(open, "m V gain"), 1e-9);
        Assert.Equal(0.01 / Math.Sqrt(3), By(open, "m V offset"), 1e-9);
        Assert.Equal(["fast-1", "pulse-1", "slow-1"], Assert.IsType<Origin.Fitted>(ah.Origin).Runs.Select(run => run.Name).Order(StringComparer.Ordinal));
        Assert.Equal("slow", ((Origin.Fitted)ah.Origin).Trial.Name);

        // What the fit leaves over is within ten millivolts, told as root mean square over the rows where current and volts belong together; its heat capacity is that of 45 g at 1000 J/(kg·K).
        Assert.Equal(45, found.Cell.HeatCapacityJPerK, 1e-9);
        Assert.InRange(found.Cell.MisfitV, 0, 0.01);
        double[] left = [.. found.Pictures.Skip(1).SelectMany(picture => Enumerable.Range(0, picture.X.Length).Where(i => double.IsFinite(picture.Doubt[i])).Select(i => picture.Fitted[i] - picture.Read[i]))];
        Assert.Equal(Math.Sqrt(left.Sum(value => value * value) / left.Length), found.Cell.MisfitV, 1e-9);
        Assert.Equal(["Discharge, cell", "fast, cell", "pulse, cell"], found.Pictures.Select(picture => picture.Title));
        Assert.Equal([false, true, true], found.Pictures.Select(picture => picture.IsFitted));
        var pulse = found.Pictures[2];
        Assert.Equal([2, 5, 8], Enumerable.Range(0, 24).Where(i => double.IsNaN(pulse.Doubt[i])).Take(3)); // the current changes behind those rows
        Assert.All(Enumerable.Range(0, 24).Where(i => double.IsFinite(pulse.Doubt[i])), i => Assert.Equal(pulse.Read[i], pulse.Fitted[i], 0.02));
        Assert.All(pulse.Doubt.Where(double.IsFinite), doubt => Assert.InRange(doubt, 0, 0.05));
    }

    /// <summary>A cell of 2 Ah, as large as the other, whose run at 2 A was read with a probe that stays at the air's 20 °C from its second reading on; one row lacks its amps, one its time. What the amps could be wrong by is 2 %/√3
    /// of 2 Ah. The probe and what is known beforehand, 45 g that cool by 0.045 W/K within a half in the logarithm, share the cooling out: 0.4 W warm 45 J/K by 0.4/G·(1 − e^(−G·t/45)), 2.1 K a reading;
    /// the rest of the slow discharge is known to 15 of the 200 mV that are lost, so the heat is to 8 %.</summary>
    [Fact]
    public void Degrees_of_the_cell_tell_how_it_cools_as_far_as_they_are_trusted()
    {
        var slow = Trial("slow", TrialKind.Discharge, Enumerable.Range(0, 31).Select(i => (Text(600 * i), 120.0 * i, 0.4)));
        double[] time = [0, 0, .. Enumerable.Range(1, 20).Select(i => 150.0 * i)];
        string[][] rows = [.. time.Select((t, i) => new[] { Text(t), Text(4.2 - (1.2 * t * 2 / 7200) - 0.2), "2", i == 0 ? "-" : "20" })];
        rows[1] = ["0", "3.9", "2.5", "20"];
        rows[12][2] = "-";
        Column[] columns = [new("time", "s", ""), new("volts", "V", "m"), new("amps", "A", "m"), new("cell degrees", "°C", "")];
        Trial run = new(new("run"), TrialKind.Discharge, Cell.Id, [new(new("run-1"), columns, [.. rows.Select((row, i) => new Reading(i + 1, row))]) { Settings = new Dictionary<string, double> { ["air"] = 20, ["taken before"] = 0 } }]);
        var found = PartBench.One(Cell, [slow, run], Meter);
        Estimate ah = found.Find(PartQuantities.Capacity)!;
        Assert.Equal(2, ah.Value, 1e-9);
        Assert.Equal(2 * 0.02 / Math.Sqrt(3), By(ah, "m A gain"), 1e-9);
        double[] kept = [0, .. time.Skip(2).Where((_, i) => i != 10)];
        Assert.Equal(kept, found.Pictures[1].X);
        var cell = found.Cell!;
        Assert.Equal(0.1, found.Find(PartQuantities.Ohms)!.Value, 0.015);

        double Off(double g) => kept.Skip(1).Sum(t => Math.Pow(0.4 / g * (1 - Math.Exp(-g * t / 45)) / 2.1, 2)) + Math.Pow(Math.Log(g / 0.045) / 0.5, 2);
        double likeliest = Enumerable.Range(0, 4000).Select(i => 0.02 * Math.Exp(i * 0.001)).MinBy(Off);
        Assert.Equal(likeliest, cell.CoolingWPerK, 0.1 * likeliest);

        // Nothing tells the ohms below a sixth of the charge: they are as alike as neighbours were known to be.
        Assert.Equal(1, cell.Cell.R0Ohm.At(0.01) / cell.Cell.R0Ohm.At(0.04), 0.1);

        // Nor do rows two and a half minutes apart tell the short pair's time: it is the 30 s that were likely before, within the 0.7 of its logarithm.
        Assert.InRange(Math.Log(cell.Cell.Tau1S / 30), -0.7, 0.7);
    }

    [Fact]
    public void What_is_missing_of_a_cell_is_told()
    {
        Assert.StartsWith("a discharge down to the cut-off", Assert.Single(PartBench.One(Cell, [Pulse()], Meter).Problems).Limit, StringComparison.Ordinal);
        Assert.StartsWith("Take a pulse run", Assert.Single(PartBench.One(Cell, [Slow()], Meter).Problems).Next, StringComparison.Ordinal);

        // Two rows are no log.
        var two = Trial("two", TrialKind.Pulse, [("0", 0, 0), ("20", 20, 2)]);
        var problem = Assert.Single(PartBench.One(Cell, [Slow(), two], Meter).Problems);
        Assert.Equal(("1 usable run", CellTrials.Where), (problem.Value, problem.Where));
    }

    /// <summary>0.2 A over five hours off a watch: 3 + 1.2·s − 0.02 V are 3.58 V where half of the charge is left, 0.5 Ah; at the end 2.98 V. A pulse run beside it changes nothing of that, and the model keeps the whole log.</summary>
    [Theory, InlineData(3.58, 0.5, ""), InlineData(2.98, 1.0, ""), InlineData(2.95, 1.0, ""), InlineData(4.5, 1.0, "The log begins at 4.18 V, not above its cut-off of 4.50 V")]
    public void Capacity_is_told_down_to_the_stated_cut_off_with_and_without_a_pulse_run(double cutV, double ah, string said)
    {
        Trial Slow() => Trial("slow", TrialKind.Discharge, Enumerable.Range(0, 31).Select(i => (Text(600 * i), 120.0 * i, 0.2)), ("cut-off", cutV));
        var with = PartBench.One(Cell, [Slow(), Pulse()], Meter);
        Assert.Equal(ah, with.Find(PartQuantities.Capacity)!.Value, 1e-9);
        Assert.Equal(3600, with.Cell!.Cell.CapacityC, 1e-6);
        Assert.Equal(said.Length > 0 ? 1 : 0, with.Remarks.Count);
        Assert.All(with.Remarks, remark => Assert.StartsWith(said, remark.Words, StringComparison.Ordinal));
        if (cutV < 4)
        {
            Assert.Equal(ah, PartBench.One(Cell, [Slow()], Meter).Find(PartQuantities.Capacity)!.Value, 1e-9);
        }
    }

    /// <summary>The same 0.2 A over five hours, but the cell is empty at 2.5 V only: by hand 0.48 V more at 0.06 V a twentieth are far more than one. So it holds 1 Ah at least; 2.5 Ah claimed stand, and no tool is worked out with 1 Ah: the end of the discharge is asked for.</summary>
    [Fact]
    public void A_discharge_that_was_broken_off_is_no_capacity()
    {
        Trial broken = Trial("slow", TrialKind.Discharge, Enumerable.Range(0, 31).Select(i => (Text(600 * i), 120.0 * i, 0.2)), ("cut-off", 2.5));
        var part = Cell with { Stated = [new(PartQuantities.Capacity, 2500, "mAh", 0, "claimed", "label")] };
        foreach (Trial[] trials in (Trial[][])[[broken], [broken, Pulse()]])
        {
            var found = PartBench.One(part, trials, Meter);
            Assert.Null(found.Find(PartQuantities.Capacity));
            Assert.Null(found.Cell);
            Assert.Equal(1, found.Find(LowerBound.Of(PartQuantities.Capacity))!.Value, 1e-9);
            Assert.Equal(9000, new Shelf([part], [found]).Value(part.Id, PartQuantities.Capacity)!.Si, 1e-6);
            Assert.Single(found.Remarks, remark => remark.Words.StartsWith("The log ends at 2.98 V, above its cut-off of 2.50 V: the capacity is a lower bound.", StringComparison.Ordinal));
            var problem = Assert.Single(found.Problems);
            Assert.Equal(trials.Length == 2, problem.Limit == "a discharge down to its cut-off of 2.50 V");
        }

        // Where nobody said how far it goes, a single cell is empty at 3.0 V; of a pack nobody knows.
        Trial Until(double first, double last) => new(new("u"), TrialKind.Discharge, Cell.Id, [new(new("u-1"), [new("time", "s", ""), new("volts", "V", "m"), new("amps", "A", "m")], [.. Enumerable.Range(0, 31).Select(i => new Reading(i + 1, [Text(60 * i), Text(first - ((first - last) * i / 30)), "1"]))])]);
        Assert.Null(PartBench.One(Cell, [Until(4.1, 3.8), Pulse()], Meter).Cell);
        Assert.NotNull(PartBench.One(Cell, [Until(8.2, 6.2), Pulse()], Meter).Cell);

        // One that went to its end counts, however slow another was that did not.
        var both = PartBench.One(Cell, [broken, Fast(), Pulse()], Meter);
        Assert.Equal("fast", ((Origin.Fitted)both.Find(PartQuantities.Capacity)!.Origin).Trial.Name);
    }
}
