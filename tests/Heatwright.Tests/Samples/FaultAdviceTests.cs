using Heatwright.Jobs;
using Heatwright.Jobs.BuildSheets;
using Heatwright.Safety;
using Heatwright.StudyFile;
using Heatwright.Tests.Report;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Samples;

/// <summary>Advice, decision and build sheet speak of single faults in one voice.</summary>
public class FaultAdviceTests
{
    private static StudyResult Knife => WrittenReports.Knife.Result;

    [Fact]
    public void What_the_build_sheet_misses_the_verdict_names_in_the_same_words()
    {
        var opened = new OpenedStudy(Knife.Study, "knife.study", Knife.Fingerprint);
        foreach (var verdict in Knife.Verdicts.Where(verdict => verdict.Prediction is not null))
        {
            var sheet = MakeBuildSheet.Of(opened, new SheetRequest { Arrangement = verdict.Arrangement.Letter, Date = "2026-03-01" }, Knife).Value.Sheet;
            Assert.Equal(sheet.Breaks.Where(line => line.StartsWith("Missing: ", StringComparison.Ordinal)), verdict.Safety.Conditions.Select(condition => $"Missing: {condition.Words}: {condition.Because}."));
        }
    }

    /// <summary>A cut-out that opens at once keeps the cells whole; one that opens never, or of which nobody knows when, does not; and without one it is asked for.</summary>
    [Fact]
    public void What_a_stuck_switch_needs_goes_by_the_cut_out_that_is_there()
    {
        var verdict = Knife.Verdicts.Single(one => one.Arrangement.Letter == "C");
        var asked = new FaultAsk(verdict.Prediction!.Builder, verdict.Arrangement, Knife.Shelf);
        Assert.NotNull(verdict.Arrangement.CutOut);
        string[] Needs(FaultAsk of) => [.. SingleFaults.Missing(of, TestContext.Current.CancellationToken).Select(condition => condition.Words)];
        Assert.Contains(Needs(asked with { CutOutC = 0 }), need => need.StartsWith("a stated opening temperature", StringComparison.Ordinal));
        Assert.Contains(Needs(asked with { CutOutC = 4000 }), need => need.StartsWith("a cut-out that opens sooner than", StringComparison.Ordinal));
        Assert.DoesNotContain(Needs(asked with { CutOutC = 50 }), need => need.Contains("cut-out", StringComparison.Ordinal) || need.Contains("opening", StringComparison.Ordinal));
        Assert.Contains("a cut-out that works without the controller", Needs(asked with { Arrangement = verdict.Arrangement with { CutOut = null }, CutOutC = 0 }));
    }

    [Fact]
    public void Advice_and_decision_say_what_is_needed_first_with_the_numbers_of_the_fault()
    {
        var needs = new Condition("a cut-out that works without the controller", "with the fault 'switch stuck on' the cells pass 60 °C and reach 87 °C at the worst corner");
        var good = Knife.Verdicts.Single(one => one.Arrangement.Letter == "A");
        var verdict = good with { Safety = good.Safety with { Conditions = [needs] } };
        var next = NextReadings.Of([verdict], Knife.Study.Instruments, Knife.Study.Seed, 0);
        Assert.Equal("A", next.Choice);
        Assert.Contains($"once there is {needs.Words} ({needs.Because})", next.Advice, StringComparison.Ordinal);
        Assert.DoesNotContain(", build it:", next.Advice, StringComparison.Ordinal);
        var card = Decide.Make("d", "2026-03-01", "s", Knife.Study.Brief!, [verdict], "A", "it is here", []);
        Assert.True(card.IsFine, string.Join(' ', card.Problems.Select(problem => problem.What)));
        Assert.Contains($"needs {needs.Words} ({needs.Because})", card.Value.FirstLine, StringComparison.Ordinal);
        Assert.Contains(", build it:", NextReadings.Of([good with { Word = VerdictWord.Go, Safety = good.Safety with { Conditions = [] } }], Knife.Study.Instruments, Knife.Study.Seed, 0).Advice, StringComparison.Ordinal);
    }

    /// <summary>A must of which nothing is known moves no draw, so it is told in words: nobody is sent to build what may not keep it.</summary>
    [Fact]
    public void A_must_that_nothing_tells_is_named_before_it_is_built()
    {
        var good = Knife.Verdicts.Single(one => one.Arrangement.Letter == "A") with { Word = VerdictWord.Go };
        good = good with { Safety = good.Safety with { Conditions = [] } };
        var must = good.Requirements.First(line => line.Requirement.Must);
        var unknown = must with { Word = VerdictWord.NeedMoreReadings, Value = null, Shown = "not known", Probability = null, Because = "no charger is known", Remedy = "read the charger's current" };
        string Advice(RequirementVerdict line) => NextReadings.Of([good with { Requirements = [line, .. good.Requirements.Skip(1)] }], Knife.Study.Instruments, Knife.Study.Seed, 0).Advice;
        Assert.Contains("not all that A must keep is known: no charger is known: read the charger's current.", Advice(unknown), StringComparison.Ordinal);
        Assert.Contains(", build it:", Advice(unknown with { Requirement = must.Requirement with { Must = false } }), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_that_are_as_seldom_wrong_the_better_word_is_advised()
    {
        var good = Knife.Verdicts.Single(one => one.Arrangement.Letter == "A");
        var better = good with { Word = VerdictWord.Go, Arrangement = good.Arrangement with { Letter = "Z" } };
        Assert.Equal("Z", NextReadings.Of([good with { Word = VerdictWord.GoIf }, better], Knife.Study.Instruments, Knife.Study.Seed, 0).Choice);
    }

    [Fact]
    public void What_is_missing_for_two_reasons_is_named_once_with_both()
    {
        var both = new SafetyFindings([new("a board", "nothing stops a short")], [], double.NaN).With([new("a board", "it is hot"), new("a fuse", "it burns")]);
        Assert.Equal([new Condition("a board", "nothing stops a short; it is hot"), new Condition("a fuse", "it burns")], both.Conditions);
    }
}
