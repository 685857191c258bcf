using Heatwright.Proofs;

namespace Heatwright.Tests.Journeys;

/// <summary>Short forms of the long proofs: ten kills, a thousand mutants a reader. The full campaigns: dotnet run --project proofs.</summary>
public sealed class KillJourney
{
    [Fact]
    public void Ten_kills_take_nothing_that_was_acknowledged()
    {
        // A second of a log may be lost: that is judged by the campaign, on a machine that gives the process its second. Here it may be slow, and what is typed is what counts.
        var result = KillCampaign.Run(10, seed: 7, TestContext.Current.TestOutputHelper!.WriteLine, mostTailS: 20);
        Assert.Empty(result.Failures);
        Assert.Equal(10, result.Kinds.Values.Sum(kind => kind.Opened));
    }

    [Fact]
    public void A_thousand_mutants_make_no_reader_fall_or_wait()
    {
        var result = FuzzCampaign.Run(1000, null, seed: 8, say: TestContext.Current.TestOutputHelper!.WriteLine);
        // Time and memory are judged by the campaign, on a machine that does nothing else; here a fall is a fall.
        Assert.DoesNotContain(result.Failures, failure => !failure.EndsWith(" ms", StringComparison.Ordinal) && !failure.EndsWith(" MB", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Four_browsers_on_one_study_lose_no_line_and_of_two_on_one_field_the_second_is_told()
    {
        var result = await BrowserCampaign.Run(4, TimeSpan.FromSeconds(5), TimeSpan.FromSeconds(0.5), real: false, seed: 9, TestContext.Current.TestOutputHelper!.WriteLine);
        // How soon and in how much memory is judged by the campaign, on a machine that does nothing else.
        Assert.Empty(result.Failures);
        Assert.True(result.Lines >= 8 && result.Clashes >= 1);
        Assert.Equal((0, 0, result.Clashes, result.Clashes), (result.Lost, result.Unseen, result.ClashesKept, result.ClashesTold));
    }

    [Fact]
    public void The_figures_shown_are_those_of_the_result_files()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "validation.md"));
        string results = Path.Combine(Repository.Root, "proofs", "results");
        Assert.Equal(ProofPage.Written(page, results), page);
        Assert.Equal(ReliabilityPicture.Svg(results), File.ReadAllText(Path.Combine(Repository.Root, "docs", ReliabilityPicture.Name)));
    }
}
