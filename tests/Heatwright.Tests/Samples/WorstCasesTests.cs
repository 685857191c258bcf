using Heatwright.Jobs;
using Heatwright.Safety;
using Heatwright.StudyFile;
using Heatwright.Tests.Report;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Samples;

/// <summary>What a bad day does to the rope hot knife: each case against a study that says the same in another way.</summary>
public class WorstCasesTests
{
    private static StudyResult Knife => WrittenReports.Knife.Result;

    private static ArrangementVerdict Of(string letter) => Knife.Verdicts.First(verdict => verdict.Arrangement.Letter == letter);

    private static WorstCase Case(ArrangementVerdict of, string name) => of.WorstCases.Single(one => one.Name == name);

    [Fact]
    public void The_first_case_is_the_middle_run()
    {
        foreach (var verdict in Knife.Verdicts)
        {
            Assert.Equal(verdict.Prediction!.MiddleOutcome, verdict.WorstCases[0].Outcome);
        }
    }

    [Fact]
    public void A_cold_day_is_what_a_brief_with_cold_air_predicts()
    {
        var cold = Knife.Study with { Brief = Knife.Study.Brief! with { AirC = 0 } };
        foreach (var verdict in Knife.Verdicts)
        {
            var said = Case(verdict, "cold day").Outcome;
            var predicted = PredictTool.Run(cold, verdict.Arrangement.Letter, 0, null, TestContext.Current.CancellationToken).Value.Run;
            Assert.InRange(said.RunTimeS, predicted.RunTimeS * 0.999, (predicted.RunTimeS * 1.001) + 0.2);
            Assert.Equal(predicted.Stop, said.Stop);
            Assert.Equal(predicted.WorkDoneInARow, said.Pieces);
        }
    }

    [Fact]
    public void A_switch_stuck_on_gets_as_hot_as_safety_says()
    {
        foreach (var verdict in Knife.Verdicts)
        {
            Assert.Equal(verdict.Safety.StuckOnC, Case(verdict, "switch stuck on").Outcome.HottestC, 6);
        }
    }

    [Fact]
    public void A_weak_cell_runs_shorter_and_one_in_a_string_is_never_worse_than_all()
    {
        foreach (var verdict in Knife.Verdicts)
        {
            double middle = verdict.Prediction!.MiddleOutcome.RunTimeS;
            bool alone = verdict.Arrangement.Series * verdict.Arrangement.Parallel == 1;
            double weak = Case(verdict, alone ? "weak cell" : "all cells weak").Outcome.RunTimeS;
            Assert.True(weak < middle, $"{verdict.Arrangement.Letter}: {weak} and {middle} s");
            if (verdict.Arrangement.Series > 1)
            {
                Assert.InRange(Case(verdict, "one weak cell in the string").Outcome.RunTimeS, weak - 1, middle + 1);
            }
        }
    }

    [Fact]
    public void A_low_sample_keeps_the_worst_line_of_the_brief_no_better()
    {
        foreach (var verdict in Knife.Verdicts)
        {
            var middle = verdict.WorstCases[0].Lines;
            foreach (var low in verdict.WorstCases.Where(one => one.Name.StartsWith("low sample,", StringComparison.Ordinal)))
            {
                Assert.True(Worst(low.Lines) <= Worst(middle) + 0.01, $"{verdict.Arrangement.Letter}, {low.Name}");
                Assert.NotEqual("", low.Changed);
            }
        }

        static double Worst(IReadOnlyList<MiddleLine> lines) => lines.Min(line => line.Value is not { } value ? (line.Kept == true ? 0 : -10)
            : (line.Requirement.AtMost ? line.Requirement.Limit - value : value - line.Requirement.Limit) / line.Requirement.Limit);
    }

    [Fact]
    public void What_was_not_kept_is_said_with_what_is_reached()
    {
        var cold = WorstCaseView.Of(Case(Of("B"), "cold day"));
        Assert.Contains(cold.Missed, line => line.Contains("(never)", StringComparison.Ordinal));
        Assert.StartsWith("missed: ", cold.Standing());
        Assert.Equal("kept", WorstCaseView.Of(Case(Of("A"), "cold day")).Standing());
        Assert.Equal("no line speaks of it", (cold with { Lines = 0, Missed = [] }).Standing());
    }
}
