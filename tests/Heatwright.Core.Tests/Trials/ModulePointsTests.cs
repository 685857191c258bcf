using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Four readings at a time of a module in a study: losses, limit, efficiency. Its losses here are 0.1 W + 0.15 V·I + 0.06 Ω·I², what is usual beforehand, so that readings and expectation agree to the last digit and every sum can be worked out by hand.</summary>
public sealed class ModulePointsTests
{
    private static readonly string[] Names = [PartQuantities.LossFixed, PartQuantities.LossPerAmp, PartQuantities.LossPerAmpSquared];

    private static Run Taken(string id, string rows, params (string Name, double Value)[] settings)
    {
        Reading[] readings = [.. rows.Split('|').Select((row, i) => new Reading(i + 1, row.Trim().Split(' ') is { Length: 4 } whole ? whole : Row(double.Parse(row, CultureInfo.InvariantCulture))))];
        return new(new(id), [new("volts in", "V", "m"), new("amps in", "A", "m"), new("volts out", "V", ""), new("amps out", "A", "")], readings) { Settings = settings.ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal) };

        static string[] Row(double a) => [.. new[] { 10, a, 12, ((10 * a) - 0.1 - (0.15 * a) - (0.06 * a * a)) / 12 }.Select(value => value.ToString("R", CultureInfo.InvariantCulture))];
    }

    /// <summary>Rows of amps in; 10 V in, 12 V out, and the amps out that those losses leave. A row 'a b c d' stands as it is.</summary>
    private static PartFindings Points(string rows, params (string Name, double Value)[] settings) => Found(new([]), Taken("t-1", rows, settings));

    private static PartFindings Found(InstrumentCauses meter, params Run[] runs) => PartBench.One(new(new("module"), PartKind.StepUp, "module", []), [new(new("t"), TrialKind.ModulePoints, new("module"), runs)], meter);

    private static Remark[] OfReadings(PartFindings found) => [.. found.Remarks.Where(remark => remark.Reading > 0)];

    [Theory, InlineData("0.2|0.5|1"), InlineData("0.2|0.5|1|2"), InlineData("0.2|0.3|0.5|0.7|1|1.3|1.6|2|2.3|2.6|2.9|3.2|3.5")]
    public void Three_losses_are_found_from_three_readings_on(string rows)
    {
        var found = Points(rows);
        double[] expected = [0.1, 0.15, 0.06];
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(expected[i], found.Find(Names[i])!.Value, 1e-4);
        }

        Assert.Equal([Units.Watt, Units.Volt, Units.Ohm], Names.Select(name => found.Find(name)!.Unit));
        Assert.Equal(double.Parse(rows.Split('|')[^1], CultureInfo.InvariantCulture), found.Find(PartQuantities.HeldCurrent)!.Value); // nothing fell: the limit lies above the most that went in
        Assert.Null(found.Find(PartQuantities.LimitCurrent));
        Assert.Null(found.Find(PartQuantities.ChangeCurrent));
    }

    /// <summary>A meter of 2 % that showed 2 A at the heaviest load: 0.02 · 2 A over √3. What is held is held at the input, and the words say so.</summary>
    [Fact]
    public void What_a_module_held_is_known_as_well_as_its_meter()
    {
        var found = Found(new([new("m", "m", [new("A", 2, 0, 0)])]), Taken("t-1", "0.2|0.5|1|2"));
        Assert.Equal(0.04 / Math.Sqrt(3), found.Find(PartQuantities.HeldCurrent)!.Doubts.Pushes.Single(push => push.Cause.Id == "m A gain").By, 1e-9);
        Assert.Contains(found.Remarks, remark => remark.Words == "It held its output at every load, up to 2.00 A at its input: its limit lies above.");
        Assert.Equal(2, Found(new([]), Taken("t-1", "0.2|0.5|1|2"), Taken("t-2", "0.2|0.5|1|1.5")).Find(PartQuantities.HeldCurrent)!.Value, 1e-12); // of two runs the larger, not their mean
    }

    /// <summary>By hand 100·12·I/(10·a): 93.38, 95.5, 96.9 and 96.5 of 100 at 0.2, 0.5, 1 and 2 A. A label speaks of the best.</summary>
    [Fact]
    public void The_best_efficiency_is_told_and_the_picture_shows_all()
    {
        var found = Points("0.2|0.5|1|2");
        Assert.Equal(96.9, found.Find(PartQuantities.Efficiency)!.Value, 1e-3);
        var picture = Assert.Single(found.Pictures);
        Assert.Equal([0.2, 0.5, 1, 2], picture.X);
        Assert.Equal(93.4, picture.Read[0], 0.2);
        Assert.Equal(96.9, picture.Read[2], 1e-9);
        Assert.Equal("%", picture.YUnit);
        Assert.All(picture.Read.Zip(picture.Fitted), pair => Assert.Equal(pair.First, pair.Second, 1e-2));
    }

    /// <summary>A seller who is off by a fifth of what is lost, as of any claim, claims 96 % as 96 ± 0.8 % either way: 0.46 % standard. Read as 90.2 % that is contradicted, as 96.9 % it is not beyond twice the doubt.</summary>
    [Fact]
    public void A_claimed_efficiency_is_held_against_the_best_that_was_read()
    {
        Part part = new(new("module"), PartKind.StepUp, "module", [new("efficiency", 96, "%", 0, "claimed", "96 %")]);
        var said = PartValues.Read(part, part.Stated[0]);
        Assert.Equal(0.8 / Math.Sqrt(3), said.StandardDoubt, 1e-9);
        Assert.Equal("agrees", SaidAndRead.Of("efficiency", said, Points("0.2|0.5|1|2").Find(PartQuantities.Efficiency)!)!.Words);

        // 9.056 V · 0.894 A of 3.816 V · 2.351 A are 90.24 %; the other two lie lower.
        var read = Points("3.816 2.351 9.056 0.894|3.90 0.60 9.06 0.222|3.75 3.0 9.05 1.08").Find(PartQuantities.Efficiency)!;
        Assert.Equal(90.24, read.Value, 0.5);
        Assert.StartsWith("contradicted", SaidAndRead.Of("efficiency", said, read)!.Words, StringComparison.Ordinal);
    }

    /// <summary>95 of 100 of 12 V are 11.4 V: below that the module gave way. Set by either name, else by the highest output.</summary>
    [Theory, InlineData("set", 11.41, false), InlineData("set", 11.39, true), InlineData("set volts", 11.39, true), InlineData("", 11.39, true), InlineData("", 11.41, false)]
    public void An_output_that_fell_counts_for_the_limit(string name, double volts, bool fell)
    {
        string row = string.Create(CultureInfo.InvariantCulture, $"10 3 {volts} 2.3|10 2.9 {volts} 2.2");
        var found = Points("0.2|0.5|1|2|" + row, name.Length > 0 ? [(name, 12)] : []);
        var limit = found.Find(PartQuantities.LimitCurrent);
        Assert.Equal(fell, limit is not null);
        Assert.Equal(fell ? 4 : 6, found.Pictures[0].X.Length);
        if (limit is not null)
        {
            Assert.Equal(3, limit.Value, 1e-12); // the most it took
            Assert.Equal(0.3 / Math.Sqrt(3), limit.StandardDoubt, 1e-9); // a tenth either way
            Assert.Null(found.Find(PartQuantities.HeldCurrent));
            Assert.Equal(Remark.Kept, Assert.Single(OfReadings(found), remark => remark.Reading == 5 && remark.Words.StartsWith("Here the output fell", StringComparison.Ordinal)).Effect);
        }
    }

    [Fact]
    public void More_out_than_in_is_left_out_and_as_much_is_not()
    {
        var found = Points("0.2|0.5|1|2|10 1.2 12 1.3|10 1.2 12 1");
        Assert.Equal((5, Remark.LeftOut), (Assert.Single(OfReadings(found)).Reading, OfReadings(found)[0].Effect));
        Assert.Equal(5, found.Pictures[0].X.Length);
    }

    /// <summary>Two readings tell a share of what goes in, and no losses that a prediction could take: 1.867 of 2 W and 4.81 of 5 W, 95.6 of 100 by least squares.</summary>
    [Theory, InlineData("0.2|0.5"), InlineData("0.2|0.5|10 1 12 -"), InlineData("0.2|0.5|10 1 12 1.3")]
    public void Two_readings_tell_an_efficiency_only(string rows)
    {
        var found = Points(rows);
        Assert.InRange(found.Find(PartQuantities.Efficiency)!.Value, 93, 97);
        Assert.All(Names, name => Assert.Null(found.Find(name)));
        Assert.Contains(found.Remarks, remark => remark.Words.StartsWith("Take three readings or more", StringComparison.Ordinal));
        Assert.Empty(found.Pictures);
    }

    /// <summary>Volts in that read g more make 10·g W for each ampere more, which is a share of the current and nothing else; what is usual beforehand keeps a few of a hundred of it.</summary>
    [Fact]
    public void A_gain_of_the_volts_in_moves_the_share_of_the_current()
    {
        var found = Found(new([new("m", "m", [new("V", 1, 0, 0)])]), Taken("t-1", "0.2|0.5|1|2"));
        Assert.Equal(10 * 0.01 / Math.Sqrt(3), Math.Abs(found.Find(PartQuantities.LossPerAmp)!.Doubts.Pushes.Single(push => push.Cause.Id == "m V gain").By), 3e-3);
        Assert.Equal(0, found.Find(PartQuantities.LossPerAmpSquared)!.Doubts.Pushes.Where(push => push.Cause.Id == "m V gain").Sum(push => push.By), 1e-3);
    }

    [Fact]
    public void A_reading_that_the_checks_left_out_takes_no_part_and_is_told_of_once()
    {
        var found = Points("0.2|0.5|1|100 1.2 12 0.96|1.5|2");
        Assert.Equal((4, Remark.LeftOut), (Assert.Single(OfReadings(found)).Reading, OfReadings(found)[0].Effect));
        Assert.Equal(0.15, found.Find(PartQuantities.LossPerAmp)!.Value, 1e-3);
    }

    /// <summary>0.02 W + 0.1 V·I, and 0.3 V more above 0.8 A, in a run of fourteen; a run of three of the same module knows of no change, and its losses are not mixed with those.</summary>
    [Fact]
    public void A_run_without_a_change_does_not_blur_one_that_has_it()
    {
        static string Rows(params double[] amps) => string.Join("|", amps.Select(a => string.Create(CultureInfo.InvariantCulture, $"3.6 {a} 9 {((3.6 * a) - 0.02 - (0.1 * a) - (0.3 * Math.Max(0, a - 0.8))) / 9:R}")));
        var found = Found(new([]), Taken("t-1", Rows(0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.9, 1.1, 1.3, 1.5, 1.7, 1.9, 2.1)), Taken("t-2", Rows(0.5, 1.5, 2.5)));
        Assert.Equal(0.8, found.Find(PartQuantities.ChangeCurrent)!.Value, 0.02);
        Assert.Equal(0.3, found.Find(PartQuantities.LossAbove)!.Value, 0.02);
        Assert.Equal(0.1, found.Find(PartQuantities.LossPerAmp)!.Value, 0.02);
        Assert.Equal(0, found.Find(PartQuantities.LossPerAmpSquared)!.Value);
        Assert.Equal(2.5, found.Find(PartQuantities.HeldCurrent)!.Value, 1e-12); // the most of either run
    }
}
