using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;
using Condition = Heatwright.Safety.Condition;

namespace Heatwright.Tests.Verdicts;

/// <summary>What to measure next, for choices that hang on one number: the heater's ohms, 2 ± 0.4 Ω.</summary>
public sealed class NextReadingsTests
{
    private const int Draws = 200;

    private static readonly SafetyTool Tool = new() { CapacityAh = 0.1, OhmsPlusMinus = 0.4 };

    private static readonly PlantRun Middle = Predict.Middle(Tool.Builder);

    private static readonly double[] Ohms = [.. Enumerable.Range(0, Draws).Select(i => Tool.Builder.Inputs[Tool.Builder.Place(Heatwright.Arrangements.PlantKey.HeaterOhms)].Value.DrawnSi(new Draw(1, i)))];

    /// <summary>An arrangement whose one must is about the ohms of each draw.</summary>
    private static ArrangementVerdict Of(string letter, double limit, bool atMost, VerdictWord word = VerdictWord.NeedMoreReadings, params Condition[] conditions) => WrittenVerdict.Of(letter, word,
        [WrittenVerdict.Verdict(WrittenVerdict.Line("ohms", limit: limit, atMost: atMost), word, 0.5, Ohms)], conditions, new Prediction(Tool.Arrangement, Tool.Builder, Middle, new Outcome[Draws], []));

    private static NextReadings Next(double minutes, params ArrangementVerdict[] verdicts) => NextReadings.Of(verdicts, [], 1, minutes);

    [Fact]
    public void A_choice_that_hangs_on_one_number_asks_for_its_reading()
    {
        var next = Next(0, Of("A", 2, atMost: true), Of("B", 2.0000001, atMost: false));
        Assert.Equal(0.5, next.WrongNow, 0.03);
        Assert.False(next.StopMeasuring);
        Assert.Equal("cold ohms with the leads subtracted, tip", next.Trials[0].Words);
        Assert.InRange(next.Trials[0].Drop, 0.35, next.WrongNow); // a chance cannot drop below none
        Assert.Equal(next.Trials[0].Drop / 3, next.Trials[0].DropAMinute, 1e-12); // three minutes of hands
        Assert.StartsWith("Next: cold ohms with the leads subtracted, tip (3 min). Now", next.Advice, StringComparison.Ordinal);
        Assert.Empty(next.Evening);
        Assert.Equal(next.WrongNow, next.WrongAfter);
        Assert.Empty(next.LeftOut);
    }

    [Fact]
    public void An_evening_holds_what_its_minutes_hold()
    {
        var verdicts = new[] { Of("A", 2, atMost: true), Of("B", 2.0000001, atMost: false) };
        Assert.Empty(Next(2.9, verdicts).Evening);
        var next = Next(3, verdicts);
        var step = Assert.Single(next.Evening);
        Assert.Equal((0.0, 3.0, "tip"), (step.StartMinute, step.EndMinute, step.Trial.Part));
        Assert.Equal(next.WrongNow - next.Trials[0].Drop, next.WrongAfter, 1e-9);
    }

    [Fact]
    public void A_choice_that_is_sure_needs_no_reading()
    {
        var next = Next(60, Of("A", 3, atMost: true, VerdictWord.Go), Of("B", 3, atMost: false, VerdictWord.NoGo));
        Assert.Equal(("A", 0.0, true), (next.Choice, next.WrongNow, next.StopMeasuring));
        Assert.Equal("Stop measuring, build it: A is the best choice (wrong in 0 of 100 draws).", next.Advice);
        Assert.Empty(next.Evening);
        Assert.Equal("No reading here would change the choice, but do not build it as it stands: A is the best choice, once there is a fuse (it burns) (wrong in 0 of 100 draws).",
            Next(0, Of("A", 3, atMost: true, VerdictWord.Go, new Condition("a fuse", "it burns"))).Advice);
        Assert.Contains("once ohms remedy", Next(0, Of("A", 3, atMost: true, VerdictWord.GoIf)).Advice, StringComparison.Ordinal);
    }

    /// <summary>Ten of 33 draws, 30.3 of a hundred.</summary>
    [Fact]
    public void Odds_are_told_to_a_draw_of_a_hundred()
    {
        double[] few = Ohms[..33];
        double[] rising = [.. few.Order()];
        var line = WrittenVerdict.Verdict(WrittenVerdict.Line("ohms", limit: (rising[22] + rising[23]) / 2, atMost: true), VerdictWord.NeedMoreReadings, 0.7, few);
        var next = Next(0, WrittenVerdict.Of("A", VerdictWord.NeedMoreReadings, [line], [], new Prediction(Tool.Arrangement, Tool.Builder, Middle, new Outcome[33], [])));
        Assert.Equal(10 / 33.0, next.WrongNow, 1e-12);
        Assert.Contains("wrong in 30 of 100 draws", next.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_none_holds_building_none_is_best()
    {
        var next = Next(0, Of("A", 1, atMost: true, VerdictWord.NoGo));
        Assert.Equal(("", 0.0, true), (next.Choice, next.WrongNow, next.StopMeasuring));
        Assert.Equal("Stop measuring: building none of these is the best choice (wrong in 0 of 100 draws). What would have to be true stands under 'why' of each.", next.Advice);
    }

    [Fact]
    public void A_line_that_no_run_tells_rules_a_choice_out_in_every_draw()
    {
        var good = Of("A", 3, atMost: true, VerdictWord.Go);
        var thick = good with { Requirements = [.. good.Requirements, WrittenVerdict.Verdict(WrittenVerdict.Line("thick"), VerdictWord.NoGo, 0)] };
        Assert.Equal("", Next(0, thick).Choice);
        Assert.Equal("A", Next(0, good with { Requirements = [.. good.Requirements, WrittenVerdict.Verdict(WrittenVerdict.Line("thick", must: false), VerdictWord.NoGo, 0)] }).Choice);
        Assert.Equal("A", Next(0, good with { Requirements = [.. good.Requirements, WrittenVerdict.Verdict(WrittenVerdict.Line("thick"), VerdictWord.NeedMoreReadings)] }).Choice);
    }

    [Fact]
    public void What_cannot_be_predicted_yet_is_left_out_with_its_reading()
    {
        var unknown = WrittenVerdict.Of("U", VerdictWord.NeedMoreReadings, []) with { Problems = [new Problem("No ohms.", "U", "none", "ohms", "Measure them.")] };
        Assert.Equal(["U cannot be predicted yet: No ohms. Measure them."], Next(0, unknown, Of("A", 3, atMost: true)).LeftOut);
        var none = Next(0, unknown);
        Assert.Equal(("", false, "U cannot be predicted yet: No ohms. Measure them."), (none.Choice, none.StopMeasuring, none.Advice));
        Assert.Equal("There is no arrangement to choose: wire one first.", Next(0).Advice);
    }
}
