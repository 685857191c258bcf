using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;
using Condition = Heatwright.Safety.Condition;

namespace Heatwright.Tests.Verdicts;

/// <summary>The rule of the four words on a tool whose run can be summed by hand, with draws that are written down.</summary>
/// <remarks>Two cells of 0.1 Ah at 4 V on R ohms, at a duty of 0.95 that never gets to its target: 360 C at 8 V · 0.95/R last 47.37 s · R, 94.7 s at 2 Ω.
/// The ohms are known to ±0.4 Ω: from 1.56 to 2.44 Ω at 1.9 standard doubts, 73.9 to 115.5 s.</remarks>
public sealed class JudgeTests
{
    private const double SecondsAnOhm = 360 / (8 * 0.95);

    private static readonly SafetyTool Tool = new() { CapacityAh = 0.1, OhmsPlusMinus = 0.4 };

    private static readonly Prediction Middle = Predicted(Tool, []);

    private static Prediction Predicted(SafetyTool tool, IReadOnlyList<Outcome> draws) => new(tool.Arrangement, tool.Builder, Predict.Middle(tool.Builder), draws, []);

    private static Outcome Lasts(double seconds) => new(double.PositiveInfinity, 0, 30, 30, seconds, StopReason.Empty, default, 0);

    /// <summary>So many of a hundred draws last 1000 s, the others none.</summary>
    private static Outcome[] Draws(int kept) => [.. Enumerable.Range(0, 100).Select(i => Lasts(i < kept ? 1000 : 0))];

    private static Requirement Long(double minutes, bool atMost = false, bool must = true) => new("long", "it lasts.", RequirementQuantity.RunTime, minutes, "min", atMost, must);

    private static ArrangementVerdict Judged(Requirement[] lines, int kept, SafetyTool? tool = null, Condition[]? conditions = null, Problem[]? problems = null) =>
        Judge.Of(new Brief("", "blade", "cut", 20, lines), Tool.Shelf, Tool.Arrangement, new(conditions ?? [], [], 200), (tool is null ? Middle : Predicted(tool, [])) with { Draws = Draws(kept) }, problems ?? [], 1, new("s"), TestContext.Current.CancellationToken);

    private static RequirementVerdict Line(double minutes, int kept, bool atMost = false, SafetyTool? tool = null) => Judged([Long(minutes, atMost)], kept, tool).Requirements[0];

    [Fact]
    public void The_middle_run_is_the_sum_by_hand() => Assert.Equal(2 * SecondsAnOhm, Middle.MiddleOutcome.RunTimeS, 0.3);

    /// <summary>102 s are kept by the middle run from 2.153 Ω on, inside what is believed.</summary>
    [Theory, InlineData(100, VerdictWord.Go), InlineData(95, VerdictWord.Go), InlineData(94, VerdictWord.GoIf), InlineData(75, VerdictWord.GoIf), InlineData(74, VerdictWord.NeedMoreReadings), InlineData(6, VerdictWord.NeedMoreReadings), InlineData(5, VerdictWord.NeedMoreReadings), InlineData(0, VerdictWord.NeedMoreReadings)]
    public void Words_turn_at_their_chances(int kept, VerdictWord word)
    {
        var line = Line(1.7, kept);
        Assert.Equal(kept / 100.0, line.Probability!.Value, 1e-12);
        Assert.Equal(word, line.Word);
        Assert.Equal(kept >= 95 ? "" : kept >= 75 ? "heater ohms, tip is at least 2.15 Ω (cold ohms with the leads subtracted tells)"
            : kept > 5 ? "it holds if heater ohms, tip is at least 2.15 Ω: take cold ohms with the leads subtracted" : "it would do with heater ohms, tip at least 2.15 Ω; take cold ohms with the leads subtracted", line.Remedy);
    }

    [Fact]
    public void What_nothing_believed_lifts_is_no_go_and_is_turned_round()
    {
        Assert.Equal((VerdictWord.NoGo, "it would work if the heater has at least 5.19 Ω"), (Line(4.1, 0).Word, Line(4.1, 0).Remedy)); // 246 s
        Assert.Equal((VerdictWord.NoGo, "it would work if the heater has at most 1.26 Ω"), (Line(1, 100, atMost: true).Word, Line(1, 100, atMost: true).Remedy)); // every draw longer than a minute
        Assert.Equal((VerdictWord.NoGo, "no single change of heater, set volts or cell ohms within reason lifts it"), (Line(10, 5).Word, Line(10, 5).Remedy)); // 600 s, 12.7 Ω
    }

    [Theory]
    [InlineData(0, 0, Duty.NothingSaid, false)]
    [InlineData(0, 0, "it glides on wax that is warm already", true)] // somebody said that a piece takes nothing
    [InlineData(5, 0, Duty.NothingSaid, true)]
    [InlineData(0, 0.1, Duty.NothingSaid, true)]
    public void Pieces_of_which_nobody_said_what_they_take_are_open(double needJ, double contactWPerK, string why, bool told)
    {
        var brief = new Brief("", "blade", "cut", 20, [new("pieces", "some cuts", RequirementQuantity.PiecesPerCharge, 0, "", false, true)]) { Duty = new(300, 20, 4, 5, 220, contactWPerK, 0, needJ, 0, why) };
        var line = Judge.Of(brief, Tool.Shelf, Tool.Arrangement, new([], [], 200), Middle with { Draws = Draws(100) }, [], 1, new("s"), TestContext.Current.CancellationToken).Requirements[0];
        Assert.Equal(told ? VerdictWord.Go : VerdictWord.NeedMoreReadings, line.Word); // none are promised, so any number does
        Assert.Equal(told, line.Probability is not null);
        Assert.Equal(!told, line.Because == "nobody said how much heat one cut takes");
    }

    /// <summary>By hand: 90 s are kept up to 1.9 Ω; 80 of 100 draws are shorter.</summary>
    [Fact]
    public void A_limit_from_above_is_lifted_from_the_other_side() =>
        Assert.Equal("heater ohms, tip is at most 1.9 Ω (cold ohms with the leads subtracted tells)", Judged([Long(1.5, atMost: true)], 20).Requirements[0].Remedy);

    [Fact]
    public void What_rests_on_a_claim_is_go_if_a_reading_confirms_it()
    {
        var claimed = Line(1.0, 100, tool: Tool with { OhmsFrom = "claimed" });
        Assert.Equal((VerdictWord.GoIf, "a reading confirms what the seller claims of heater ohms, tip"), (claimed.Word, claimed.Remedy));
        Assert.Equal(VerdictWord.GoIf, Line(1.0, 100, tool: Tool with { OhmsFrom = "claimed", OhmsPlusMinus = 0.005 }).Word); // 60 s are kept from 1.27 Ω on, and what stands beside a claim is a claim too
    }

    /// <summary>A third of 2 Ω lasts 31.6 s, three times it 284 s: a line of 30 s no false claim turns, one of 33 s a claim of too many ohms does, and one of at most 280 s a claim of too few.</summary>
    [Theory, InlineData(30, false, VerdictWord.Go), InlineData(33, false, VerdictWord.GoIf), InlineData(290, true, VerdictWord.Go), InlineData(280, true, VerdictWord.GoIf)]
    public void Only_a_line_that_a_false_claim_would_turn_waits_for_a_reading(double seconds, bool atMost, VerdictWord word)
    {
        var line = Line(seconds / 60, atMost ? 0 : 100, atMost, Tool with { OhmsFrom = "claimed" });
        Assert.Equal(word, line.Word);
        Assert.Equal(VerdictWord.Go, Line(seconds / 60, atMost ? 0 : 100, atMost).Word); // measured
    }

    /// <summary>By hand: draws of 0 to 100 s, the 16th and the 84th of them lie 68 s apart; half of that is the doubt.</summary>
    [Fact]
    public void A_value_carries_the_spread_of_the_draws_and_its_margin()
    {
        var line = Judge.Of(new Brief("", "blade", "cut", 20, [Long(1)]), Tool.Shelf, Tool.Arrangement, new([], [], 200), Middle with { Draws = [.. Enumerable.Range(0, 101).Select(i => Lasts(100 - i))] }, [], 1, new("s"), TestContext.Current.CancellationToken).Requirements[0];
        Assert.Equal(41 / 101.0, line.Probability!.Value, 1e-12);
        Assert.Equal(34 / 60.0, line.Value!.StandardDoubt, 1e-9);
        Assert.Equal(2 * SecondsAnOhm / 60, line.Value.Value, 0.01);
        Assert.Equal((2 * SecondsAnOhm / 60) - 1, line.Margin, 0.01);
        Assert.Equal(100 / 60.0, line.Drawn[0], 1e-9);
        Assert.Equal(1 - (2 * SecondsAnOhm / 60), Line(1, 50, atMost: true).Margin, 0.01);
    }

    [Fact]
    public void What_is_never_reached_has_no_value_and_no_margin()
    {
        var line = Judged([new("ready", "it is ready.", RequirementQuantity.WarmUpTime, 30, "s", true, true)], 0).Requirements[0];
        Assert.Equal((null, "never", double.NegativeInfinity), (line.Value, line.Shown, line.Margin));
    }

    [Fact]
    public void The_worst_must_is_the_word_of_all_and_wants_do_not_count()
    {
        Assert.Equal(VerdictWord.Go, Judged([Long(1)], 100).Word);
        Assert.Equal("every must holds with at least 95 of 100 draws, and no claim that nobody checked could turn one.", Judged([Long(1)], 100).Because);
        Assert.Equal(VerdictWord.Go, Judged([Long(1), Long(30, must: false)], 100).Word);
        Assert.Equal(VerdictWord.Go, Judged([], 100).Word);
        var mixed = Judged([Long(1), Long(20) with { Id = "longer" }], 100);
        Assert.Equal(VerdictWord.NoGo, mixed.Word);
        Assert.StartsWith("it runs", mixed.Because, StringComparison.Ordinal);
        Assert.EndsWith(". No single change of heater, set volts or cell ohms within reason lifts it.", mixed.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_missing_for_safety_turns_go_into_go_if()
    {
        var needs = Judged([Long(1)], 100, conditions: [new("a fuse", "it burns"), new("a board", "it shorts")]);
        Assert.Equal((VerdictWord.GoIf, "it works if there is a fuse (it burns); and there is a board (it shorts)."), (needs.Word, needs.Because));
        var both = Judged([Long(1.7)], 80, conditions: [new("a fuse", "it burns")]);
        Assert.Equal("it works if there is a fuse (it burns); and heater ohms, tip is at least 2.15 Ω (cold ohms with the leads subtracted tells).", both.Because);
        Assert.Equal(VerdictWord.NoGo, Judged([Long(20)], 0, conditions: [new("a fuse", "it burns")]).Word);
    }

    [Fact]
    public void Problems_ask_for_readings_but_lift_no_no_go()
    {
        var problem = new Problem("No ohms.", "a", "none", "ohms", "Measure them.");
        Assert.Equal((VerdictWord.NeedMoreReadings, "No ohms. Measure them."), (Judged([Long(1)], 100, problems: [problem]).Word, Judged([Long(1)], 100, problems: [problem]).Because));
        Assert.Equal(VerdictWord.NoGo, Judged([Long(20)], 0, problems: [problem]).Word);
    }

    [Fact]
    public void Without_a_prediction_nothing_a_run_tells_is_known()
    {
        var verdict = Judge.Of(new Brief("", "blade", "cut", 20, [Long(1)]), Tool.Shelf, Tool.Arrangement, new([], [], double.NaN), null, [], 1, new("s"), TestContext.Current.CancellationToken);
        Assert.Equal((VerdictWord.NeedMoreReadings, null, "not known"), (verdict.Requirements[0].Word, verdict.Requirements[0].Probability, verdict.Requirements[0].Shown));
        Assert.Empty(verdict.WorstCases);
    }

    [Fact]
    public void Light_is_not_asked_of_a_heater()
    {
        var light = Judged([new("light", "it shines.", RequirementQuantity.FullLightTime, 1, "min", false, true)], 100).Requirements[0];
        Assert.Equal((VerdictWord.NoGo, "no light", 0.0), (light.Word, light.Shown, light.Probability));
    }

    /// <summary>By hand: full duty for 360 C at 8 V/2 Ω is 90 s: 32 W on 10 J/K and 0.12 W/K, 266.7 K · (1 − e^(−90 · 0.12/10)) = 176 K. The ohms move it by about a fifth at most.</summary>
    [Theory, InlineData(300, true, VerdictWord.Go), InlineData(140, true, VerdictWord.NoGo), InlineData(196, true, VerdictWord.NeedMoreReadings), InlineData(140, false, VerdictWord.Go)]
    public void A_stuck_switch_is_drawn_against_its_limit(double limitC, bool atMost, VerdictWord word)
    {
        double stuckC = SafetyCheck.StuckOnC(Tool.Builder, Tool.Builder.Middle);
        Assert.Equal(196, stuckC, 3.0);
        var line = Judge.Of(new Brief("", "blade", "cut", 20, [new("stuck", "", RequirementQuantity.StuckSwitchTemperature, limitC, "°C", atMost, true)]), Tool.Shelf, Tool.Arrangement, new([], [], stuckC), Middle with { Draws = Draws(1) }, [], 1, new("s"), TestContext.Current.CancellationToken).Requirements[0];
        Assert.Equal(word, line.Word);
        Assert.Equal(64, line.Drawn.Count);
        Assert.InRange(line.Drawn.Average(), 190, 202);
        Assert.Equal(atMost ? limitC - stuckC : stuckC - limitC, line.Margin, 1e-6);
        Assert.Equal(stuckC, line.Value!.Value, 1e-6);
        Assert.Equal(word == VerdictWord.Go, line.Remedy.Length == 0);
    }

    /// <summary>The same tool with a cut-out that opens at 150 ± 5 °C: it gets no hotter than that, and 140 °C are kept by none.</summary>
    [Theory, InlineData(170, VerdictWord.Go, 150), InlineData(140, VerdictWord.NoGo, 150)]
    public void A_cut_out_of_stated_temperature_holds_a_stuck_switch(double limitC, VerdictWord word, double valueC)
    {
        Part link = new(new("link"), PartKind.CutOut, "link", [new(PartQuantities.OpeningTemperature, 150, "°C", 5, "sheet", "sheet")]);
        var shelf = Tool.ShelfOf([.. Tool.Parts, link]);
        double stuckC = SafetyCheck.StuckOnC(Tool.Builder, Tool.Builder.Middle);
        var line = Judge.Of(new Brief("", "blade", "cut", 20, [new("stuck", "", RequirementQuantity.StuckSwitchTemperature, limitC, "°C", true, true)]), shelf, Tool.Arrangement with { CutOut = link.Id }, new([], [], stuckC), Predicted(Tool with { WorkC = 140 }, Draws(1)), [], 1, new("s"), TestContext.Current.CancellationToken).Requirements[0];
        Assert.Equal(word, line.Word);
        Assert.Equal(valueC, line.Value!.Value, 1e-6);
        Assert.All(line.Drawn, drawn => Assert.InRange(drawn, 140, 160));
        Assert.Contains("150 °C, where 'link' opens; without it to 196 °C", line.Because, StringComparison.Ordinal);
        Assert.Equal(word == VerdictWord.Go ? "" : "a cut-out that opens sooner, or a heater of more ohms", line.Remedy);
    }
}
