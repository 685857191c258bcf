using System.Text.Json;
using Heatwright.Cli;
using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Tests.Journeys;

/// <summary>What a newcomer stumbled over the third time and that was left open, typed again.</summary>
public sealed class LeftOpenJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void What_was_typed_beside_an_unknown_name_is_kept()
    {
        string file = New();
        var said = bench.Type("part", "add", file, "band", "heater", "lens band", "--measured", "ohms=7.4ohm", "glow=3W", "mass=20g", "--note", "from the drawer");
        Assert.Equal(ExitCodes.BadInput, said.Exit);
        Assert.Contains("glow", said.Error, StringComparison.Ordinal);
        Assert.Contains("heat capacity", said.Error, StringComparison.Ordinal); // what it could be
        Assert.Contains($"part state {file} band --measured \"NAME=3W\"", said.Error, StringComparison.Ordinal);
        using var part = Json("part", "show", file, "band", "--json");
        Assert.Equal(["mass", "ohms"], part.RootElement.GetProperty("values").EnumerateArray().Select(value => value.GetProperty("quantity").GetString()).Order(StringComparer.Ordinal));
        Assert.Equal("from the drawer", part.RootElement.GetProperty("note").GetString());
        Assert.Equal(ExitCodes.Done, bench.Type("part", "state", file, "band", "--measured", "rated power=3W").Exit);
    }

    [Theory]
    [InlineData("set volts=up to 12V")]
    [InlineData("set volts=12V (up to 12 V, label)")]
    public void Up_to_12_V_asks_for_the_set_volts(string typed)
    {
        string file = New();
        var said = bench.Type("part", "add", file, "up", "stepUp", "step-up module", "--claimed", typed);
        Assert.True(said.Exit == 0, said.Error);
        Assert.Contains("set volts, by the output without load", said.Out, StringComparison.Ordinal);
        using var part = Json("part", "show", file, "up", "--json");
        var value = Assert.Single(part.RootElement.GetProperty("values").EnumerateArray());
        Assert.Equal(("most output volts", 12.0), (value.GetProperty("quantity").GetString(), value.GetProperty("value").GetDouble()));
    }

    [Fact]
    public void A_module_that_nobody_has_read_is_not_guessed_to_give_12_V()
    {
        string file = Knife();
        var opened = OpenStudy.Read(file).Value;
        var module = opened.Study.Arrangements.First(one => one.StepUp is not null);
        var study = opened.Study with { Parts = [.. opened.Study.Parts.Select(part => part.Id == module.StepUp ? part with { Stated = [.. part.Stated.Where(value => value.Quantity != "set volts")] } : part)] };
        var found = RunStudy.Findings(study, TestContext.Current.CancellationToken).Select(one => one with { Findings = [.. one.Findings.Where(finding => finding.Quantity != "set volts")] });
        var shelf = new Heatwright.Arrangements.Shelf(study.Parts, [.. found]);
        var built = Heatwright.Arrangements.PlantBuilder.For(module, shelf, RunStudy.Plan(study.Brief!));
        Assert.Contains(built.Problems, problem => problem.What.Contains("what it is set to is not known", StringComparison.Ordinal) && problem.Next.Contains("set volts=", StringComparison.Ordinal));
        Assert.Contains(LoopView.Of(study, module, shelf).Problems, problem => problem.What.Contains("what it is set to is not known", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("discharge")]
    [InlineData("pulse")]
    [InlineData("cold-ohms")]
    [InlineData("hot-ohms")]
    [InlineData("warm-up")]
    [InlineData("converter-points")]
    [InlineData("two-point-drop")]
    public void Every_setting_that_the_recipe_names_is_taken(string kind)
    {
        string file = New();
        Fine("part", "add", file, "thing", "heater");
        Fine("trial", "add", file, kind, "--on", "thing", "--name", "t");
        var trial = OpenStudy.Read(file).Value.Study.Trials[0];
        string[] set = [.. TrialCard.Of(trial)!.Settings.Select(setting => $"{setting.Name.Replace(' ', '-')}=1{setting.Unit}")];
        Fine(["trial", "enter", file, "t", "--set", .. set, "--read", string.Join(' ', RunFromLog.Columns(trial).Needed.Select(_ => "1"))]);
        Assert.Equal(set.Length, OpenStudy.Read(file).Value.Study.Trials[0].Runs[0].Settings.Count);
    }

    [Fact]
    public void A_run_time_may_name_the_temperature_it_is_held_at()
    {
        string file = New();
        Fine("brief", file, "--add", "tip at 110 °C within 60 s from 20 °C");
        Fine("brief", file, "--add", "40 min at 110 °C on one charge");
        using (var brief = Json("brief", file, "--json"))
        {
            var line = brief.RootElement.GetProperty("requirements")[1];
            Assert.Equal(("runTime", 40.0, "min"), (line.GetProperty("quantity").GetString(), line.GetProperty("limit").GetDouble(), line.GetProperty("unit").GetString()));
            Assert.Equal("at 110 °C", line.GetProperty("condition").GetString());
            Assert.Equal(110, brief.RootElement.GetProperty("targetC").GetDouble(), 6);
        }

        // At another temperature than the work has, one prediction cannot tell of both: it is asked.
        var other = bench.Type("brief", file, "--add", "40 min at 320 °C on one charge");
        Assert.Equal(ExitCodes.BadInput, other.Exit);
        Assert.Contains("--set target=320C", other.Error, StringComparison.Ordinal);

        // It can also begin a brief.
        string fresh = bench.In("fresh.study");
        Fine("new", fresh);
        Fine("brief", fresh, "--add", "40 min at 110 °C on one charge, air at 20 °C");
        using var begun = Json("brief", fresh, "--json");
        Assert.Equal(110, begun.RootElement.GetProperty("targetC").GetDouble(), 6);
        Assert.Equal("at 110 °C, air at 20 °C", begun.RootElement.GetProperty("requirements")[0].GetProperty("condition").GetString());
    }

    [Fact]
    public void What_is_empty_says_what_to_do_next()
    {
        string file = New();
        foreach (string[] words in (string[][])[["study", file], ["part", "list", file], ["trial", "list", file], ["meter", "list", file], ["file", "list", file]])
        {
            var said = bench.Type(words);
            Assert.True(said.Exit == 0, said.Error);
            Assert.Contains("heatwright ", said.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
            Assert.Contains(" add ", said.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Help_names_every_exit_code_that_the_first_page_names()
    {
        string help = bench.Type("--help").Out;
        Assert.All(new[] { ExitCodes.Done, ExitCodes.OurFault, ExitCodes.BadInput, ExitCodes.Contradiction }, code => Assert.Contains($"\n  {code.ToString(System.Globalization.CultureInfo.InvariantCulture)}  ", help.ReplaceLineEndings("\n"), StringComparison.Ordinal));
    }

    [Fact]
    public void A_price_is_a_bare_number_and_no_word_money()
    {
        string file = Knife();
        Fine("part", "state", file, "round", "--measured", "price=20.5 (receipt)");
        string shown = bench.Type("part", "show", file, "round").Out;
        Assert.Contains("20.5", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("money", shown, StringComparison.Ordinal);
        var added = bench.Type("brief", file, "--add", "want: parts cost at most 29");
        Assert.True(added.Exit == 0, added.Error);
        Assert.DoesNotContain("money", added.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(33.21, "33.2 s", "33.21 s")]
    [InlineData(119.9, "119.9 s", "119.90 s")]
    [InlineData(1234, "20.6 min", "20 min 34 s")]
    [InlineData(11700, "3.25 h", "3 h 15 min")]
    public void Times_are_told_as_they_are_read(double seconds, string time, string instant) => Assert.Equal((time, instant), (RunWords.Time(seconds), RunWords.Instant(seconds)));

    [Fact]
    public void A_prediction_tells_minutes_and_json_keeps_seconds()
    {
        string file = Knife();
        using var json = Json("predict", file, "--arrangement", "A", "--json");
        double seconds = json.RootElement.GetProperty("runTime_s").GetDouble();
        Assert.True(seconds > 120);
        string text = bench.Type("predict", file, "--arrangement", "A").Out;
        Assert.Contains(RunWords.Time(seconds), text, StringComparison.Ordinal);
        Assert.DoesNotContain(RunWords.Number(seconds, "0.0") + " s", text, StringComparison.Ordinal);

        // Nor does anybody read tens of thousands of joules; and a heater gives no light to be told of.
        double joules = json.RootElement.GetProperty("energies_J").GetProperty("heater").GetDouble();
        Assert.Matches($"energy, heater +{System.Text.RegularExpressions.Regex.Escape(Heatwright.Quantities.Display.Significant(joules / 3600, 4))} Wh", text);
        Assert.DoesNotContain("energy, light", text, StringComparison.Ordinal);
    }

    /// <summary>A word of a narrow table is a word of the wide one: nothing is cut, whatever the width.</summary>
    private string New()
    {
        string file = bench.In("new.study");
        Fine("new", file);
        return file;
    }

    private string Knife()
    {
        string file = bench.In("knife.study");
        Fine("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), file);
        return file;
    }

    private void Fine(params string[] words)
    {
        var said = bench.Type(words);
        Assert.True(said.Exit == 0, said.Error);
    }

    private JsonDocument Json(params string[] words)
    {
        var said = bench.Type(words);
        Assert.True(said.Exit == 0, said.Error);
        return JsonDocument.Parse(said.Out);
    }
}
