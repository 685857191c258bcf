using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>More of the rule of the four words, on the tool of <see cref="JudgeTests"/>: a run of 47.37 s · (R + 0.002), 2 ± 0.4 Ω.</summary>
public sealed class FourWordsTests
{
    private static readonly SafetyTool Tool = new() { CapacityAh = 0.1, OhmsPlusMinus = 0.4 };

    private static readonly SafetyTool Light = new() { IsLamp = true, Series = 1, SupervisionCells = "1", ChargerCells = "1", LampPlusMinus = 0.01, DutyCeiling = 1 };

    private static readonly Prediction Middle = Predicted(Tool), OfLight = Predicted(Light);

    private static Prediction Predicted(SafetyTool tool) => new(tool.Arrangement, tool.Builder, Predict.Middle(tool.Builder), [], []);

    private static Outcome Lasts(double seconds) => new(double.PositiveInfinity, 0, 30, 30, seconds, StopReason.Empty, default, 0);

    private static Requirement Long(double minutes, bool atMost = false) => new("long", "it lasts.", RequirementQuantity.RunTime, minutes, "min", atMost, true);

    private static ArrangementVerdict Judged(Prediction prediction, SafetyTool tool, Requirement[] lines, params Outcome[] draws) =>
        Judge.Of(new Brief("", "blade", "cut", 20, lines), tool.Shelf, tool.Arrangement, new([], [], 200), prediction with { Draws = draws }, [], 1, new("s"), TestContext.Current.CancellationToken);

    private static RequirementVerdict Line(Requirement line, int kept, SafetyTool? tool = null) =>
        Judged(tool is null ? Middle : Predicted(tool), tool ?? Tool, [line], [.. Enumerable.Range(0, 100).Select(i => Lasts(i < kept ? 1e5 : 0))]).Requirements[0];

    /// <summary>By hand: the heater is looked at from 0.6 to 6 Ω, 28.5 to 284.3 s.</summary>
    [Theory]
    [InlineData(280 / 60.0, false, "it would work if the heater has at least 5.91 Ω")]
    [InlineData(289 / 60.0, false, "no single change of heater, set volts or cell ohms within reason lifts it")]
    [InlineData(30 / 60.0, true, "it would work if the heater has at most 631 mΩ")]
    [InlineData(27 / 60.0, true, "no single change of heater, set volts or cell ohms within reason lifts it")]
    public void A_heater_is_turned_round_within_a_third_and_three_times(double minutes, bool atMost, string remedy)
    {
        var line = Line(Long(minutes, atMost), atMost ? 100 : 0);
        Assert.Equal((VerdictWord.NoGo, remedy), (line.Word, line.Remedy));
    }

    /// <summary>By hand: 2 Ah at 0.7 A last 2.86 h, at 0.5 A 4 h; at 0.21 A 9.5 h, the farthest that is looked at.</summary>
    [Theory]
    [InlineData(4, "it would work if the lamp takes at most 0.5 A")]
    [InlineData(9, "it would work if the lamp takes at most 0.222 A")]
    [InlineData(10, "no single change of lamp, set volts or cell ohms within reason lifts it")]
    public void A_lamp_is_turned_round_by_its_amps(double hours, string remedy)
    {
        var line = Judged(OfLight, Light, [Long(hours) with { Unit = "h" }], Lasts(0), Lasts(0)).Requirements[0];
        Assert.Equal((VerdictWord.NoGo, remedy), (line.Word, line.Remedy));
    }

    [Theory]
    [InlineData(RequirementQuantity.WarmUpTime)]
    [InlineData(RequirementQuantity.PiecesPerCharge)]
    [InlineData(RequirementQuantity.Steadiness)]
    [InlineData(RequirementQuantity.WorkRate)]
    [InlineData(RequirementQuantity.RecoveryTime)]
    [InlineData(RequirementQuantity.StuckSwitchTemperature)]
    public void Hot_work_is_not_asked_of_a_lamp(RequirementQuantity quantity)
    {
        var line = Judged(OfLight, Light, [new("hot", "", quantity, 1, "", false, true)], Lasts(1), Lasts(1)).Requirements[0];
        Assert.Equal((VerdictWord.NoGo, "no hot end", 0.0), (line.Word, line.Shown, line.Probability));
    }

    /// <summary>By hand: a minute is kept from 1.27 Ω on, all that is believed; half of the draws miss it all the same, and the ohms are what moves it most.</summary>
    [Fact]
    public void Where_no_end_lifts_it_the_number_that_matters_most_is_asked_for()
    {
        var line = Line(Long(1), 50);
        Assert.Equal((VerdictWord.NeedMoreReadings, "heater ohms, tip matters most (1.56 Ω to 2.44 Ω): take cold ohms with the leads subtracted"), (line.Word, line.Remedy));
    }

    /// <summary>By hand: were the claimed 2 Ω three times as many, 10.1 W would last 284 s: 20 + 85.7·(1 − e^(−284·0.118/10)) = 103 °C, and a third of them 86.6 W for 31.6 s: 20 + 733·(1 − e^(−31.6·0.118/10)) = 248 °C.
    /// So 130 °C wait for a reading of the ohms and 95 °C do not, whatever ± stands beside the claim.</summary>
    [Theory, InlineData(130, 0.05, VerdictWord.GoIf), InlineData(130, 0.01, VerdictWord.GoIf), InlineData(95, 0.05, VerdictWord.Go)]
    public void A_claim_counts_where_it_would_turn_the_degrees_if_it_were_false(double limitC, double plusMinus, VerdictWord word)
    {
        var claimed = Tool with { OhmsPlusMinus = plusMinus, OhmsFrom = "claimed" };
        var hot = new Requirement("hot", "it is hot.", RequirementQuantity.EndTemperature, limitC, "°C", false, true);
        var line = Judged(Predicted(claimed), claimed, [hot], [.. Enumerable.Range(0, 20).Select(_ => Lasts(90) with { HottestC = 180 })]).Requirements[0];
        Assert.Equal(word, line.Word);
    }

    /// <summary>By hand: 4 of 100 draws last, none has a grip of 25 °C: the line with the least chance says why, wherever it stands.</summary>
    [Fact]
    public void The_line_that_fails_most_says_why()
    {
        Outcome[] draws = [.. Enumerable.Range(0, 100).Select(i => Lasts(i < 4 ? 1000 : 0))];
        Requirement lasts = Long(15), cool = new("cool", "it stays cool.", RequirementQuantity.GripTemperature, 29, "°C", true, true);
        Assert.All(new[] { new[] { lasts, cool }, [cool, lasts] }, lines =>
        {
            var verdict = Judged(Middle, Tool, lines, draws);
            Assert.Equal(VerdictWord.NoGo, verdict.Word);
            Assert.StartsWith("the grip gets to", verdict.Because, StringComparison.Ordinal);
        });
    }

    /// <summary>By hand: 0, 10, 20, 30, 40 s: the middle 68 of 100 reach from the first to the fourth, half of it 15 s; of four draws nobody can say.</summary>
    [Theory, InlineData(5, 15), InlineData(4, 0)]
    public void Five_draws_have_a_spread_and_four_have_none(int count, double seconds)
    {
        var line = Judged(Middle, Tool, [Long(90) with { Unit = "s" }], [.. Enumerable.Range(0, count).Select(i => Lasts(10 * (count - 1 - i)))]).Requirements[0];
        Assert.Equal(seconds, line.Value!.StandardDoubt, 1e-9);
    }

    [Fact]
    public void Every_line_that_a_run_tells_says_its_number()
    {
        var run = Middle.MiddleOutcome;
        (RequirementQuantity Quantity, string Says)[] wanted =
        [
            (RequirementQuantity.GripTemperature, $"the grip gets to {Sentences.Say(run.GripC, "0.0")} °C"),
            (RequirementQuantity.CellTemperature, $"the cells get to {Sentences.Say(run.CellC, "0.0")} °C, 4.0 A at most"), // 8 V on 2.002 Ω
            (RequirementQuantity.RunTime, "it runs 1.6 min, then the charge is used up"), // 94.8 s
            (RequirementQuantity.CaseTemperature, $"get to {Sentences.Say(run.GripC, "0.0")} °C"),
            (RequirementQuantity.EndTemperature, $"the blade gets to {Sentences.Say(run.HottestC, "0")} °C"),
            (RequirementQuantity.CellCurrent, "4.0 A at most through one cell"),
            (RequirementQuantity.ProtectionTrips, "4.0 A at most; no trip current is known"),
            (RequirementQuantity.ControllerVolts, "the pack falls to 7.99 V under load"), // 8 V less 4 A through 2 mΩ
            (RequirementQuantity.PiecesPerCharge, "0 cuts until 1.6 min"),
        ];
        var verdict = Judged(Middle, Tool, [.. wanted.Select((one, i) => new Requirement($"r{i}", "", one.Quantity, 1, "", false, true))], Lasts(1), Lasts(1));
        Assert.All(wanted.Zip(verdict.Requirements), pair => Assert.Contains(pair.First.Says, pair.Second.Because, StringComparison.Ordinal));
    }

    /// <summary>By hand: two conditions of the draws at the most are told, each once.</summary>
    [Fact]
    public void A_remedy_that_two_lines_share_is_told_once()
    {
        Outcome[] draws = [.. Enumerable.Range(0, 100).Select(i => Lasts(i < 80 ? 1000 : 0))];
        var verdict = Judged(Middle, Tool, [Long(1.7), Long(1.7) with { Id = "again" }, Long(1.75) with { Id = "more" }, Long(1.8) with { Id = "most" }], draws);
        Assert.Equal("it works if heater ohms, tip is at least 2.15 Ω (cold ohms with the leads subtracted tells); and heater ohms, tip is at least 2.21 Ω (cold ohms with the leads subtracted tells).", verdict.Because); // 102 and 105 s
    }
}
