using Heatwright.Jobs;
using Heatwright.Verdicts;
using Heatwright.Web;

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
    public void Without_a_verdict_the_next_step_is_the_first_thing_that_lacks()
    {
        var study = Only().Study;
        Assert.Equal("/arrangements", NextStep.Of(Only(), null).Where);
        Assert.Equal("/shelf", NextStep.Of(Only() with { Study = study with { Parts = [] } }, null).Where);
        Assert.Equal("/brief", NextStep.Of(Only() with { Study = study with { Brief = null } }, null).Where);
    }

    private static NextView Readings(StudyResult result) => NextView.Of(NextReadings.Of(result.Verdicts, result.Study.Instruments, result.Study.Seed, 0));

    private StudyResult Only(params string[] letters) =>
        served.Result with { Verdicts = [.. served.Result.Verdicts.Where(verdict => letters.Contains(verdict.Arrangement.Letter))] };
}
