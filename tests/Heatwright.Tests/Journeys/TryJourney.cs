using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Jobs.BuildSheets;
using Heatwright.Parts;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Journeys;

/// <summary>An arrangement tried with some of its values otherwise: by the command as typed, and what was shown is what is kept.</summary>
public sealed class TryJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_loop_tried_otherwise_is_the_one_worked_by_hand()
    {
        string file = Bow();
        var tried = Json("try", file, "A", "--set", "leads ohms=40m", "series=2", "touches=2", "--json");
        // By hand: two cells of 60 mΩ, two touches and the switch of 10 mΩ, leads of 40 mΩ: 120 + 20 + 10 + 40 = 190 mΩ; one cell as it is: 60 + 20 + 10 + 10 = 100 mΩ.
        Near(0.100, tried, "loop ohms", "was");
        Near(0.190, tried, "loop ohms", "is");
        // Full: 8.4/(0.19 + 2.71) = 2.896552 A, 2.896552²·2.71 = 22.73693 W. As it is, 4.2/(0.1 + 2.71) = 1.494662 A and 6.054179 W.
        Near(2.896552, tried, "amps from the pack, full", "is");
        Near(22.736932, tried, "watts at the load, full pack", "is");
        Near(6.054179, tried, "watts at the load, full pack", "was");
        Assert.Equal(["leads ohms", "series"], tried.GetProperty("values").EnumerateArray().Select(value => value.GetProperty("name").GetString()).Order());
        Assert.Single(OpenStudy.Read(file).Value.Study.Arrangements);
    }

    [Fact]
    public void What_is_kept_is_a_clone_of_a_part_like_the_other_in_one_change_and_undo_takes_all_of_it_back()
    {
        string file = Bow();
        string before = OpenStudy.Read(file).Value.Fingerprint;
        var kept = Json("try", file, "A", "--set", "leads ohms=40m", "duty=0.5", "--keep", "--name", "long leads", "--json");
        Assert.Equal("B", kept.GetProperty("keptAs").GetString());
        var study = OpenStudy.Read(file).Value.Study;
        var (old, clone) = (study.Arrangements[0], study.Arrangements[1]);
        Assert.Equal("long leads", clone.Name);
        Assert.Equal((0.5, 0.95), (clone.DutyCeiling, old.DutyCeiling));
        Assert.Equal(new PartId("cable-2"), clone.Leads);
        var cable = study.Parts.First(part => part.Id == clone.Leads);
        Assert.Equal((0, new PartId("cable")), (cable.Count, cable.Like!.Part));
        var stated = Assert.Single(cable.Stated, value => value.Quantity == "ohms");
        Assert.Equal((40.0, "mΩ", "assumed"), (stated.Value, stated.Unit, stated.Origin));
        Assert.Equal(0.9, cable.Best("rated current")!.Si * 0.1, 1e-9); // what was not tried is as it was: 9 A
        var loop = Json("loop", file, "B", "--json");
        Assert.Equal(0.130, loop.GetProperty("loopOhms").GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal(0, bench.Type("undo", file).Exit);
        Assert.Equal(before, OpenStudy.Read(file).Value.Fingerprint);
    }

    [Fact]
    public void The_odds_that_were_shown_are_those_of_the_study_once_it_is_kept()
    {
        string file = bench.In("knife.study");
        Assert.Equal(0, bench.Type("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), file).Exit);
        string[] change = ["leads ohms=120 mΩ", "cell capacity=1500 mAh", "cell ohms=0.11ohm", "gain=0.2", "need=50 J"];
        var tried = Json(["try", file, "A", "--set", .. change, "--draws", "64", "--keep", "--json"]);
        Assert.True(tried.GetProperty("changesBrief").GetBoolean());
        var kept = OpenStudy.Read(file).Value;
        Assert.Equal((50, 0.2), (kept.Study.Brief!.Work.NeedJ, kept.Study.Arrangements[^1].GainWPerK));
        var verdict = RunStudy.One(kept.Study.Brief, LoopView.Bench(kept.Study), kept.Study.Arrangements[^1], kept.Study.Seed, new StudyState(kept.Fingerprint), TestContext.Current.CancellationToken, DrawRounds.Of(64));
        var lines = tried.GetProperty("lines").EnumerateArray().ToArray();
        Assert.Equal(verdict.Requirements.Select(line => line.Probability), lines.Select(line => line.TryGetProperty("probability", out var odds) ? (double?)odds.GetDouble() : null));
        Assert.Equal(verdict.Requirements.Select(line => ArrangementView.Word(line.Word)), lines.Select(line => line.GetProperty("verdict").GetString()));
        // The middle run says the same number as the verdict, where it says one.
        Assert.All(verdict.Requirements.Zip(lines).Where(pair => pair.First.Value is not null), pair => Assert.Equal(pair.First.Value!.Value, pair.Second.GetProperty("is").GetDouble(), 1e-9 * Math.Abs(pair.First.Value.Value)));
        // A cell that is like another one, but for its ohms and charge, has the same curve with those: its loop is longer by exactly what was added.
        var old = RunStudy.One(kept.Study.Brief, LoopView.Bench(kept.Study), kept.Study.Arrangements[0], kept.Study.Seed, new StudyState(kept.Fingerprint), TestContext.Current.CancellationToken, DrawRounds.Of(4)).Prediction!.Builder;
        var (was, now) = (old.Build(old.Middle), verdict.Prediction!.Builder.Build(verdict.Prediction.Builder.Middle));
        Assert.Equal(1500 * 3.6, now.Pack!.Cell.CapacityC, 1e-6);
        Assert.Equal(0.110 / old.Middle[old.Place(Heatwright.Arrangements.PlantKey.CellOhms)], now.Pack.Cell.R0Ohm.At(0.5) / was.Pack!.Cell.R0Ohm.At(0.5), 1e-9);
        Assert.Equal(was.Pack.Cell.OpenV.At(0.3), now.Pack.Cell.OpenV.At(0.3), 1e-12);
        // The tool that is built from it gets the constants that were tried: on its build sheet stands 0.2 W/K.
        var sheet = MakeBuildSheet.Of(kept, new SheetRequest { Arrangement = kept.Study.Arrangements[^1].Letter });
        Assert.True(sheet.IsFine, string.Join("\n", sheet.Problems));
        Assert.Equal(0.2, sheet.Value.Sheet.Sections.Single(section => section.Key == "control").Lines.Single(line => line.Name == "Gain").Value!.Value);
    }

    [Theory]
    [InlineData("wheels=4", "no such value")]
    [InlineData("leads ohms=-3", "below nought")]
    [InlineData("leads ohms=soon", "leads ohms")]
    [InlineData("series=1.5", "counted")]
    [InlineData("heater ohms=0", "nought")]
    [InlineData("cell=wire", "another kind")]
    [InlineData("step-up set volts=9", "no such value")]
    [InlineData("plain", "needs its name")]
    public void What_cannot_be_tried_is_told_and_nothing_is_written(string set, string told)
    {
        string file = Bow();
        string before = OpenStudy.Read(file).Value.Fingerprint;
        var (exit, _, error) = bench.Type("try", file, "A", "--set", set, "--keep");
        Assert.Equal(2, exit);
        Assert.Contains(told, error, StringComparison.Ordinal);
        Assert.Equal(before, OpenStudy.Read(file).Value.Fingerprint);
    }

    [Fact]
    public void Nothing_moved_is_nothing_to_keep_and_without_a_change_all_dials_are_listed()
    {
        string file = Bow();
        var (exit, _, error) = bench.Type("try", file, "A", "--set", "series=1", "--keep");
        Assert.Equal(2, exit);
        Assert.Contains("Nothing is tried otherwise", error, StringComparison.Ordinal);
        var dials = Json("try", file, "A", "--json");
        var leads = dials.EnumerateArray().Single(dial => dial.GetProperty("name").GetString() == "leads ohms");
        Assert.Equal(("10 mΩ", 10.0, "measured"), (leads.GetProperty("was").GetString(), leads.GetProperty("value").GetDouble(), leads.GetProperty("origin").GetString()));
        Assert.True(leads.GetProperty("low").GetDouble() <= 10 && leads.GetProperty("high").GetDouble() >= 10);
    }

    [Fact]
    public void Draws_that_nobody_waits_for_stop()
    {
        var opened = Heatwright.Jobs.DemoStudy.Open(bench.Folder).Value;
        var shelf = LoopView.Bench(opened.Study);
        var tried = Tried.Of(opened.Study, shelf, "A", [KeyValuePair.Create("leads ohms", "60 mΩ")], cancel: TestContext.Current.CancellationToken).Value;
        using var stop = new CancellationTokenSource();
        int most = 0;
        Assert.ThrowsAny<OperationCanceledException>(() => tried.Is.Drawn(opened.Fingerprint, 4096, done =>
        {
            most = Math.Max(most, done);
            stop.Cancel();
        }, stop.Token));
        Assert.InRange(most, 1, 2_000);
    }

    [Fact]
    public void A_part_that_another_is_like_stays_on_the_shelf()
    {
        string file = Bow();
        Json("try", file, "A", "--set", "leads ohms=40m", "--keep", "--json");
        Assert.Equal(0, bench.Type("rewire", file, "A", "--leads", "cable-2").Exit);
        var (exit, _, error) = bench.Type("part", "drop", file, "cable");
        Assert.Equal(2, exit);
        Assert.Contains("cable-2, which is like it", error, StringComparison.Ordinal);
        // One that is like a like one is like the first: one step only.
        Json("try", file, "A", "--set", "leads rated current=5A", "--keep", "--json");
        var third = OpenStudy.Read(file).Value.Study.Parts[^1];
        Assert.Equal(new PartId("cable"), third.Like!.Part);
        Assert.Equal(["ohms", "rated current"], third.Like.But.Order());
        Assert.Empty(StudyCheck.Of(OpenStudy.Read(file).Value.Study, "bow"));
        var study = OpenStudy.Read(file).Value.Study;
        var broken = study with { Parts = [.. study.Parts.Where(part => part.Id != new PartId("cable"))] };
        Assert.Contains(StudyCheck.Of(broken, "bow"), problem => problem.What.Contains("cannot stand for it", StringComparison.Ordinal));
    }

    private string Bow()
    {
        string file = bench.In("bow.study");
        Do("new", file);
        Do("part", "add", file, "flat", "cell", "flat cell", "--count", "4", "--word", "chemistry=lithium-ion", "--measured", "ohms=60mohm (pulse)", "full volts=4.2V (rested)", "--sheet", "cut-off volts=3V (sheet)", "rated current=5A (sheet)");
        Do("part", "add", file, "wire", "heater", "foam wire", "--measured", "ohms=2.71ohm (meter)");
        Do("part", "add", file, "springs", "contacts", "springs", "--measured", "ohms=10mohm (drop)");
        Do("part", "add", file, "fet", "switch", "fet", "--measured", "ohms=10mohm (drop)");
        Do("part", "add", file, "cable", "leads", "cable", "--measured", "ohms=10mohm (drop)", "--sheet", "rated current=9A (sheet)");
        Do("arrange", file, "--cell", "flat", "--heater", "wire");
        return file;
    }

    private string Do(params string[] words)
    {
        var (exit, output, error) = bench.Type(words);
        Assert.True(exit == 0, error);
        return output;
    }

    private JsonElement Json(params string[] words) => JsonDocument.Parse(Do(words)).RootElement;

    private static void Near(double expected, JsonElement tried, string number, string side) => Assert.Equal(expected,
        tried.GetProperty("numbers").EnumerateArray().Single(one => one.GetProperty("name").GetString() == number).GetProperty(side).GetDouble(), 5e-6 * Math.Max(1, expected));
}
