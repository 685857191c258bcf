using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Losses of a module from four readings at a time. Its losses here are 0.1 W + 0.15 V·I + 0.06 Ω·I², what is usual beforehand, so that readings and expectation agree to the last digit and every sum can be worked out by hand.</summary>
public sealed class ModuleBenchTests
{
    /// <summary>Rows of amps in; 10 V in, 12 V out, and the amps out that those losses leave. A row 'a b c d' stands as it is.</summary>
    private static PartFindings Points(string rows, InstrumentCauses? meter = null, double share = 0, params (string Name, double Value)[] settings)
    {
        int sign = 1;
        Reading[] readings = [.. rows.Split('|').Select((row, i) => new Reading(i + 1, row.Trim().Split(' ') is { Length: 4 } whole ? whole : Row(double.Parse(row, CultureInfo.InvariantCulture), 1 + ((sign = -sign) * share))))];
        Run run = new(new("t-1"), [new("volts in", "V", "m"), new("amps in", "A", "m"), new("volts out", "V", ""), new("amps out", "A", "")], readings) { Settings = settings.ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal) };
        Trial trial = new(new("t"), TrialKind.ModulePoints, new("module"), [run]);
        return ModuleBench.Points(trial, ReadingTable.Read(run, trial), meter ?? new([]));

        static string[] Row(double a, double times) => [.. new[] { 10, a, 12, ((10 * a) - (times * (0.1 + (0.15 * a) + (0.06 * a * a)))) / 12 }.Select(value => value.ToString("R", CultureInfo.InvariantCulture))];
    }

    private static readonly string[] Names = [PartQuantities.LossFixed, PartQuantities.LossPerAmp, PartQuantities.LossPerAmpSquared];

    /// <summary>Inverse of a symmetric matrix of three by its minors.</summary>
    private static double[,] Inverse(double[,] m)
    {
        double Minor(int r, int c)
        {
            int[] rows = [.. Enumerable.Range(0, 3).Where(i => i != r)], columns = [.. Enumerable.Range(0, 3).Where(i => i != c)];
            return ((r + c) % 2 == 0 ? 1 : -1) * ((m[rows[0], columns[0]] * m[rows[1], columns[1]]) - (m[rows[0], columns[1]] * m[rows[1], columns[0]]));
        }

        double determinant = Enumerable.Range(0, 3).Sum(c => m[0, c] * Minor(0, c));
        double[,] inverse = new double[3, 3];
        foreach (var (r, c) in Enumerable.Range(0, 9).Select(i => (i / 3, i % 3)))
        {
            inverse[r, c] = Minor(c, r) / determinant;
        }

        return inverse;
    }

    /// <summary>What readings of 10 V in and an expectation of 0.2 W, 0.3 V and 0.15 Ω either way say of the three.</summary>
    private static double[,] Information(double[] amps, double gain = 0)
    {
        double[,] information = new double[3, 3];
        foreach (var (i, j) in Enumerable.Range(0, 9).Select(k => (k / 3, k % 3)))
        {
            information[i, j] = amps.Sum(a => Math.Pow(a, i + j) / Math.Pow(0.1 * a * (1 + gain), 2)) + (i == j ? 1 / Math.Pow(((double[])[0.2, 0.3, 0.15])[i], 2) : 0);
        }

        return information;
    }

    /// <summary>Each loss is known to a hundredth of the watts in, and beforehand to 0.2 W, 0.3 V and 0.15 Ω. Readings that agree better than that are trusted to a twentieth of the variance, never less.</summary>
    [Fact]
    public void Three_losses_are_found_with_what_is_usual_beforehand()
    {
        double[,] covariance = Inverse(Information([0.2, 0.5, 1, 2]));
        var found = Points("0.2|0.5|1|2");
        double[] expected = [0.1, 0.15, 0.06];
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(expected[i], found.Find(Names[i])!.Value, 1e-6);
            Assert.Equal(Math.Sqrt(0.05 * covariance[i, i]), found.Find(Names[i])!.StandardDoubt, 1e-5);
        }

        Assert.Equal(0.05 * covariance[0, 2], Doubts.Covariance(found.Find(Names[0])!.Doubts, found.Find(Names[2])!.Doubts), 1e-6);

        // Each current read twice, once that share more and once less lost: the losses stay, and (share·loss/0.01 of the watts in)² is left over of each, over five to spare; four times the variance at most.
        double[] twice = [0.2, 0.2, 0.5, 0.5, 1, 1, 2, 2];
        double wide = Inverse(Information(twice))[1, 1], over = twice.Sum(a => Math.Pow((0.1 + (0.15 * a) + (0.06 * a * a)) / (0.1 * a), 2)) / 5;
        foreach (double share in (double[])[0.3, 0.5])
        {
            var scattered = Points("0.2|0.2|0.5|0.5|1|1|2|2", null, share).Find(PartQuantities.LossPerAmp)!;
            Assert.Equal(0.15, scattered.Value, 1e-5);
            Assert.Equal(Math.Sqrt((share == 0.5 ? 4 : 0.09 * over) * wide), scattered.StandardDoubt, 1e-4);
        }

        Assert.Equal([Units.Watt, Units.Volt, Units.Ohm, Units.Ampere], found.Findings.Select(finding => finding.Value.Unit));
        Assert.Equal(2, found.Find(PartQuantities.HeldCurrent)!.Value); // nothing fell: the limit lies above the most that went in
    }

    /// <summary>By hand 100·12·I/(10·a), and the same from the losses; at 1 A in 9.69 W come out: 96.9 of 100.</summary>
    [Fact]
    public void The_picture_shows_efficiency_over_amps_in()
    {
        var picture = Assert.Single(Points("0.2|0.5|1|2").Pictures);
        Assert.Equal([0.2, 0.5, 1, 2], picture.X);
        Assert.Equal(96.9, picture.Read[2], 1e-9);
        Assert.All(picture.Read.Zip(picture.Fitted), pair => Assert.Equal(pair.First, pair.Second, 1e-4));
    }

    /// <summary>97 of 100 of 12 V are 11.64 V: below that the module gave way. Set by either name, else by the highest output.</summary>
    [Theory, InlineData("set", 11.65, false), InlineData("set", 11.63, true), InlineData("set volts", 11.63, true), InlineData("", 11.63, true), InlineData("", 11.65, false)]
    public void An_output_that_fell_counts_for_the_limit(string name, double volts, bool fell)
    {
        string row = string.Create(CultureInfo.InvariantCulture, $"10 3 {volts} 2.3|10 2.9 {volts} 2.2");
        var found = Points("0.2|0.5|1|2|" + row, null, 0, name.Length > 0 ? [(name, 12)] : []);
        var limit = found.Find(PartQuantities.LimitCurrent);
        Assert.Equal(fell, limit is not null);
        Assert.Equal(fell ? 1 : 0, found.Remarks.Count);
        Assert.Equal(fell ? 4 : 6, found.Pictures[0].X.Length);
        if (limit is not null)
        {
            Assert.Equal(3, limit.Value, 1e-12); // the most it took
            Assert.Equal(0.3 / Math.Sqrt(3), limit.StandardDoubt, 1e-9); // a tenth either way
            Assert.Equal((5, Remark.Kept), (found.Remarks[0].Reading, found.Remarks[0].Effect));
        }
    }

    [Fact]
    public void More_out_than_in_is_left_out_and_as_much_is_not()
    {
        var found = Points("0.2|0.5|1|2|10 1.2 12 1.01|10 1.2 12 1");
        Assert.Equal((5, Remark.LeftOut), (Assert.Single(found.Remarks).Reading, found.Remarks[0].Effect));
        Assert.Equal(5, found.Pictures[0].X.Length);
    }

    /// <summary>One reading of which the output fell to 11 V of 12 is enough: the limit is at its 3 A within a tenth, and nothing is said of what was held.</summary>
    [Fact]
    public void One_output_that_fell_tells_the_limit()
    {
        var found = Points("0.2|0.5|1|2|10 3 11 2");
        Assert.Equal(3, found.Find(PartQuantities.LimitCurrent)!.Value);
        Assert.Equal(0.3 / Math.Sqrt(3), found.Find(PartQuantities.LimitCurrent)!.StandardDoubt, 1e-9);
        Assert.Null(found.Find(PartQuantities.HeldCurrent));
        Assert.Equal(5, Assert.Single(found.Remarks).Reading);
    }

    [Theory, InlineData("0.2|0.5", "2"), InlineData("0.2|0.5|10 1 12 -", "2"), InlineData("0.2|0.5|10 1 12 1", "2"), InlineData("0.2|0.5|10 3 11 2", "2")]
    public void Fewer_than_three_whole_readings_give_no_finding(string rows, string value)
    {
        var found = Points(rows);
        Assert.Empty(found.Findings);
        Assert.Equal(value, Assert.Single(found.Problems).Value);
        Assert.Equal(4, Points("0.2|0.5|1").Findings.Count); // three losses, and 1 A that it held
    }

    /// <summary>Volts in that read g more find 10·a·g W more lost at every reading: by the normal equations the three move by the inverse of what is known times Σ (1, a, a²)·10·a·g/(0.1·a·(1 + g))².</summary>
    [Fact]
    public void A_gain_of_the_volts_moves_the_losses()
    {
        double gain = 0.01 / Math.Sqrt(3);
        double[] amps = [0.2, 0.5, 1, 2];
        double[,] inverse = Inverse(Information(amps, gain));
        var found = Points("0.2|0.5|1|2", new([new("m", "m", [new("V", 1, 0, 0)])]));
        for (int i = 0; i < 3; i++)
        {
            double expected = Enumerable.Range(0, 3).Sum(j => inverse[i, j] * amps.Sum(a => Math.Pow(a, j) * 10 * a * gain / Math.Pow(0.1 * a * (1 + gain), 2)));
            Assert.Equal(expected, found.Find(Names[i])!.Doubts.Pushes.Single(push => push.Cause.Id == "m V gain").By, 1e-5);
        }
    }
}
