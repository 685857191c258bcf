using Heatwright.Jobs;
using Heatwright.Web;

namespace Heatwright.Tests.Web;

public sealed class NextStepTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Fact]
    public void A_missing_reading_comes_before_a_piece_to_buy()
    {
        var step = NextStep.Of(Only("C", "D"));
        Assert.StartsWith("Take ", step.What, StringComparison.Ordinal);
        Assert.Equal("/predictions/C", step.Where);
    }

    [Fact]
    public void With_every_reading_taken_the_missing_piece_is_named()
    {
        var step = NextStep.Of(Only("D"));
        Assert.StartsWith("Get per-cell supervision", step.What, StringComparison.Ordinal);
        Assert.Equal("/arrangements/D", step.Where);
    }

    [Fact]
    public void Where_all_is_told_the_next_step_is_to_compare() => Assert.Equal("/comparison", NextStep.Of(Only("B")).Where);

    [Fact]
    public void Without_a_verdict_the_next_step_is_the_first_thing_that_lacks()
    {
        var study = Only().Study;
        Assert.Equal("/arrangements", NextStep.Of(Only()).Where);
        Assert.Equal("/shelf", NextStep.Of(Only() with { Study = study with { Parts = [] } }).Where);
        Assert.Equal("/brief", NextStep.Of(Only() with { Study = study with { Brief = null } }).Where);
    }

    private StudyResult Only(params string[] letters) =>
        served.Result with { Verdicts = [.. served.Result.Verdicts.Where(verdict => letters.Contains(verdict.Arrangement.Letter))] };
}
