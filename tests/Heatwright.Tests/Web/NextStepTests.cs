using System.Net;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Verdicts;
using Heatwright.Web;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Heatwright.Tests.Web;

public sealed class NextStepTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Fact]
    public void A_reading_that_is_worth_its_minutes_is_the_step_as_the_page_of_readings_has_it()
    {
        var readings = Readings(Only("A", "B", "C", "D")) with { StopMeasuring = false, Trials = [new("cold ohms", "stick heater", 5, 0, "cold", "", 0.1, 0.2, 0.02)] };
        var step = NextStep.Of(Only("A", "B", "C", "D"), readings);
        Assert.Equal(("Cold ohms, stick heater.", "/next"), (step.What, step.Where));
        Assert.Equal(PageWords.Of(readings.Advice), step.Why);
    }

    [Fact]
    public void Where_no_reading_would_change_the_choice_none_is_asked_for()
    {
        var result = Only("A", "B", "C", "D");
        foreach (string choice in new[] { "B", "D", "" })
        {
            var step = NextStep.Of(result, Readings(result) with { StopMeasuring = true, Choice = choice });
            Assert.DoesNotMatch("^(Take|Read|Measure) ", step.What);
            Assert.NotEqual("/next", step.Where);
        }
    }

    [Fact]
    public async Task The_start_and_the_page_of_readings_name_the_same()
    {
        var readings = Readings(served.Result);
        string start = PagesTests.Visible((await served.Page("/")).Split("id=\"next-step\"")[1].Split("</section>")[0]), next = PagesTests.Visible(await served.Page("/next"));
        if (!readings.StopMeasuring)
        {
            Assert.Contains($"{readings.Trials[0].Trial}, {readings.Trials[0].Part}", start, StringComparison.OrdinalIgnoreCase);
            Assert.Contains($"Next: {readings.Trials[0].Trial}, {readings.Trials[0].Part}", next, StringComparison.OrdinalIgnoreCase);
        }
        else
        {
            Assert.Contains("No reading here would change the choice", next, StringComparison.Ordinal);
            Assert.DoesNotContain("Take the", start, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void With_every_reading_taken_the_missing_piece_is_named()
    {
        var step = NextStep.Of(Only("D"), Readings(Only("D")) with { StopMeasuring = true, Choice = "D" });
        Assert.StartsWith("Get per-cell supervision", step.What, StringComparison.Ordinal);
        Assert.Equal("/arrangements/D", step.Where);
    }

    [Fact]
    public void Where_all_is_told_the_next_step_is_to_decide_and_then_to_check()
    {
        var study = served.Result.Study;
        var told = Only("B");
        var readings = Readings(told) with { StopMeasuring = true, Choice = "B" };
        told = told with { Verdicts = [.. told.Verdicts.Select(verdict => verdict with { Safety = verdict.Safety with { Conditions = [] } })] };
        Assert.Equal("/decision", NextStep.Of(told with { Study = study with { Decisions = [] } }, readings).Where);
    }

    [Fact]
    public void After_a_decision_it_is_built_and_then_checked_whatever_is_still_being_asked()
    {
        var told = Decided();
        var step = NextStep.Of(told, null);
        Assert.Equal(("Build B, as decided.", "/build-sheet/B"), (step.What, step.Where));
        var read = told with { Study = told.Study with { PrototypeReadings = [new("p1", "decision-1", "2026-11-28", "ready", 21, 1, "s")] } };
        Assert.Equal("/check", NextStep.Of(read, null).Where);
        Assert.Equal("/build-sheet/B", NextStep.Of(told with { Study = read.Study with { PrototypeReadings = [new("p1", "an earlier one", "2026-11-28", "ready", 21, 1, "s")] } }, null).Where);
    }

    /// <summary>By hand: 21 s read against 18 ± 0.4 is 3/√(0.3² + 0.4²) = 6 standard doubts above; 30 min against 40 ± 3, read to 4, 2 below; 262 g against 220 is missed, and was not predicted.</summary>
    [Fact]
    public void What_the_prototype_misses_is_the_next_step_by_name()
    {
        var told = Decided();
        var card = told.Study.Decisions[0] with
        {
            Lines = [new("ready", "ready", VerdictWord.Go, "s", 25, 18, 0.4), new("lasts", "lasts", VerdictWord.Go, "min", 20, 40, 3), new("mass", "mass", VerdictWord.Go, "g", 220)],
            BriefThen = new("", "blade", "cut", 20, [Asked("ready", RequirementQuantity.WarmUpTime, 25, "s", true), Asked("lasts", RequirementQuantity.RunTime, 20, "min", false), Asked("mass", RequirementQuantity.Mass, 220, "g", true)]),
        };
        NextStep Of(params PrototypeReading[] read) => NextStep.Of(told with { Study = told.Study with { Decisions = [card], PrototypeReadings = read } }, null);
        PrototypeReading Read(string line, double value, double doubt, string unit) => new(line, "decision-1", "2026-11-28", line, value, doubt, unit);

        var apart = Of(Read("ready", 21, 0.3, "s"), Read("lasts", 30, 4, "min"), Read("mass", 262, 0.3, "g"));
        Assert.Equal(("Find why the prototype of B is not as predicted.", "/check"), (apart.What, apart.Where));
        Assert.Contains("It misses its promise: mass. Apart from its prediction: ready, 6.0 standard doubts above what was predicted; lasts, 2.0 standard doubts below what was predicted.", apart.Why, StringComparison.Ordinal);
        Assert.Equal("Mend what the prototype of B misses: mass.", Of(Read("ready", 18, 0.3, "s"), Read("lasts", 40, 4, "min"), Read("mass", 262, 0.3, "g")).What);
        Assert.Equal("Check the prototype of B: lasts, mass.", Of(Read("ready", 18, 0.3, "s")).What);
        Assert.Equal(("The prototype of B keeps what was promised.", "/share"), (Of(Read("ready", 18, 0.3, "s"), Read("lasts", 40, 4, "min"), Read("mass", 200, 0.3, "g")) is var kept ? kept.What : "", kept.Where));

        static Requirement Asked(string id, RequirementQuantity quantity, double limit, string unit, bool atMost) => new(id, id, quantity, limit, unit, atMost, true);
    }

    [Fact]
    public async Task The_start_marks_what_was_decided_and_cautions_of_that_alone()
    {
        var all = Only("A", "B", "C", "D");
        all = all with { Verdicts = [.. all.Verdicts.Select(verdict => verdict with { Safety = verdict.Safety with { Cautions = ["hot as such", .. verdict.Arrangement.Letter is "B" or "D" ? new[] { $"mind {verdict.Arrangement.Letter}" } : []] } })] };
        string before = await Start(all), after = await Start(all with { Study = Decided().Study });
        Assert.Contains("Caution, A, B, C, D.</b>hot as such", before, StringComparison.Ordinal);
        Assert.Contains("Caution, D.</b>mind D", before, StringComparison.Ordinal);
        Assert.DoesNotContain("decided on", before, StringComparison.Ordinal);
        Assert.Contains("Caution, B.</b>hot as such", after, StringComparison.Ordinal);
        Assert.DoesNotContain("mind D", after, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(after, "decided on 2026-11-27"));
        Assert.Contains($"{all.Verdicts.Single(one => one.Arrangement.Letter == "B").Arrangement.Name}<b>, decided on 2026-11-27", after, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_verdict_the_next_step_is_the_first_thing_that_lacks()
    {
        var study = Only().Study;
        Assert.Equal("/arrangements", NextStep.Of(Only(), null).Where);
        Assert.Equal("/shelf", NextStep.Of(Only() with { Study = study with { Parts = [] } }, null).Where);
        Assert.Equal("/brief", NextStep.Of(Only() with { Study = study with { Brief = null } }, null).Where);
    }

    /// <summary>The sample's study with B decided.</summary>
    private StudyResult Decided()
    {
        var result = Only("B", "C");
        var (b, brief) = (result.Verdicts.Single(one => one.Arrangement.Letter == "B"), result.Study.Brief!);
        DecisionCard card = new("decision-1", "2026-11-27", "x", b.Arrangement.Id, b.Arrangement.Name, b.Word, "the lightest", "", [], [], [], [], [], [], brief);
        return result with { Study = result.Study with { Decisions = [card] } };
    }

    private static async Task<string> Start(StudyResult result)
    {
        await using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, services.GetRequiredService<ILoggerFactory>());
        return await renderer.Dispatcher.InvokeAsync(async () => WebUtility.HtmlDecode((await renderer.RenderComponentAsync<StartPage>(ParameterView.FromDictionary(new Dictionary<string, object?> { ["Result"] = result }))).ToHtmlString()));
    }

    private static NextView Readings(StudyResult result) => NextView.Of(NextReadings.Of(result.Verdicts, result.Study.Instruments, result.Study.Seed, 0));

    private StudyResult Only(params string[] letters) =>
        served.Result with { Verdicts = [.. served.Result.Verdicts.Where(verdict => letters.Contains(verdict.Arrangement.Letter))] };
}
