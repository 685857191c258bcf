using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>Pieces of what is said of a requirement, and what a run tells of it, written down by hand.</summary>
public sealed class SaidAndToldTests
{
    private static readonly Brief Knife = new("", "blade", "cut", 20, []) { Duty = new(320, 20, 4, 5, 220, 0.2, 0, 40, 0, "") };

    [Theory]
    [InlineData("must: grip at most 43 °C", "grip", 43, "°C", true, true, 1)]
    [InlineData("nice 1.5: weighs at most 250 g", "mass", 250, "g", true, false, 1.5)]
    [InlineData("want: grip 43 °C", "grip", 43, "°C", true, false, 1)]
    [InlineData("grip at least 30 °C", "grip", 30, "°C", false, true, 1)]
    [InlineData("grip at most 110 °F", "grip", 110, "°F", true, true, 1)]
    [InlineData("run time 30 min", "run-time", 30, "min", false, true, 1)]
    [InlineData("run time at most 30 min", "run-time", 30, "min", true, true, 1)]
    [InlineData("charge time 6", "charge-time", 6, "h", true, true, 1)]
    [InlineData("6 hours on one charge", "run-time", 6, "h", false, true, 1)]
    [InlineData("45 seconds per charge", "run-time", 45, "s", false, true, 1)]
    [InlineData("works for 45 min with a charge", "run-time", 45, "min", false, true, 1)]
    [InlineData("warm-up at most 30 s", "warm-up", 30, "s", true, true, 1)]
    [InlineData("ready in 1:20", "warm-up", 80, "s", true, true, 1)]
    [InlineData("warm-up time at least 30 s", "warm-up", 30, "s", false, true, 1)]
    [InlineData("40 times a cut on one charge", "pieces", 40, "", false, true, 1)]
    [InlineData("60 inserts in a row per charge", "pieces", 60, "", false, true, 1)]
    [InlineData("pieces on one charge at most 50", "pieces", 50, "", true, true, 1)]
    [InlineData("fits a tube of 34 mm inside", "inside-diameter", 34, "mm", true, true, 1)]
    [InlineData("it costs 30", "parts-cost", 30, "money", true, true, 1)]
    public void A_line_is_read_with_its_side_its_rank_and_its_unit(string sentence, string id, double limit, string unit, bool atMost, bool must, double weight)
    {
        var line = BriefSentence.Read(sentence).Value.Line;
        Assert.Equal((id, unit, atMost, must, weight), (line.Id, line.Unit, line.AtMost, line.Must, line.Weight));
        Assert.Equal(limit, line.Limit, 1e-9);
        Assert.Equal(sentence, line.Text);
    }

    [Fact]
    public void Temperatures_and_names_of_a_sentence_are_kept_apart()
    {
        var warm = BriefSentence.Read("The wire reaches 392 °F in 30 s from 68 °F").Value; // (392 − 32) · 5/9 = 200, (68 − 32) · 5/9 = 20
        Assert.Equal((200, 20, "wire", "from 20 °C"), (Math.Round(warm.TargetC!.Value, 9), Math.Round(warm.AirC!.Value, 9), warm.End, warm.Line.Condition));
        var bare = BriefSentence.Read("it is at 320 °C within 25 s").Value;
        Assert.Equal(("", null, ""), (bare.End, bare.AirC, bare.Line.Condition));
        var held = BriefSentence.Read("40 min at 230 °F on one charge, from full cells").Value; // (230 − 32) · 5/9 = 110
        Assert.Equal((110.0, null, "at 110 °C, from full cells"), (held.TargetC, held.AirC, held.Line.Condition));
        Assert.Equal("at 110 °C", BriefSentence.Read("40 min at 110 °C per charge").Value.Line.Condition);
        var plain = BriefSentence.Read("40 min per charge").Value;
        Assert.Equal((null, ""), (plain.TargetC, plain.Line.Condition));
        Assert.Equal("cut", BriefSentence.Read("40 cuts on one charge").Value.Piece);
    }

    [Fact]
    public void An_id_that_is_taken_gets_the_next_number()
    {
        Assert.Equal("grip", BriefSentence.Read("grip at most 43 °C", ["case"]).Value.Line.Id);
        Assert.Equal("grip-2", BriefSentence.Read("grip at most 43 °C", ["grip"]).Value.Line.Id);
        Assert.Equal("grip-4", BriefSentence.Read("grip at most 43 °C", ["grip-3", "grip-2", "grip"]).Value.Line.Id);
    }

    [Theory]
    [InlineData("grip at most 1,234 °C", "Type one of: 1.2340 degC, 1234 degC.")]
    [InlineData("grip 40-43 °C", "Type one number with its unit.")]
    [InlineData("grip at most OL", "Type one number with its unit.")]
    [InlineData("grip at most 5 V", "Correct")]
    [InlineData("warm-up at most 5 V", "Correct")]
    [InlineData("40 min at 5 V on one charge", "Correct")]
    public void What_is_no_single_value_says_what_to_type(string sentence, string next)
    {
        var problem = Assert.Single(BriefSentence.Read(sentence).Problems);
        Assert.Equal("sentence", problem.Where);
        Assert.StartsWith(next, problem.Next, StringComparison.Ordinal);
    }

    [Fact]
    public void All_that_is_wrong_with_a_warm_up_is_told_at_once() => Assert.Equal(3, BriefSentence.Read("blade at 5 V within 6 mm from 7 A").Problems.Count);

    [Theory]
    [InlineData(RequirementQuantity.WarmUpTime, 25, "s", true, true, 1, "from 20 °C", "blade at 320 °C within 25 s from 20 °C")]
    [InlineData(RequirementQuantity.WarmUpTime, 25, "s", true, true, 1, "held", "blade at 320 °C within 25 s from 20 °C, held")]
    [InlineData(RequirementQuantity.WarmUpTime, 25, "s", false, true, 1, "from 20 °C", "warm-up time at least 25 s, from 20 °C")]
    [InlineData(RequirementQuantity.GripTemperature, 43, "°C", true, true, 1, "from 20 °C", "grip at most 43 °C, from 20 °C")]
    [InlineData(RequirementQuantity.PiecesPerCharge, 40, "", false, true, 1, "", "40 cuts on one charge")]
    [InlineData(RequirementQuantity.PiecesPerCharge, 40, "", true, true, 1, "", "pieces on one charge at most 40")]
    [InlineData(RequirementQuantity.PartsCost, 30, "money", true, false, 1, "", "want: parts cost at most 30")]
    [InlineData(RequirementQuantity.Mass, 250, "g", true, false, 2.5, "", "want 2.5: mass at most 250 g")]
    [InlineData(RequirementQuantity.RunTime, 30.5, "min", false, true, 1, "", "run time at least 30.5 min")]
    public void A_line_is_said_as_it_would_be_typed(RequirementQuantity quantity, double limit, string unit, bool atMost, bool must, double weight, string condition, string said) =>
        Assert.Equal(said, BriefSentence.Say(new("x", "", quantity, limit, unit, atMost, must) { Weight = weight, Condition = condition }, Knife));

    [Fact]
    public void Without_a_brief_no_name_is_said()
    {
        Assert.Equal("warm-up time at most 25 s", BriefSentence.Say(new("x", "", RequirementQuantity.WarmUpTime, 25, "s", true, true), null));
        Assert.Equal("40 pieces on one charge", BriefSentence.Say(new("x", "", RequirementQuantity.PiecesPerCharge, 40, "", false, true), null));
    }

    private static readonly Outcome Run = new(12, 7, 41, 52, 600, StopReason.Empty, default, 0.1) { HottestC = 300, RecoveryS = 5, LowestAtWorkC = 290, HighestA = 6, LowestV = 6.5, FullLightS = 500 };

    // By hand: kelvins for degrees, 320 − 290 under the target, one piece every 20 s, half of 6 A through each of two strings.
    [Theory]
    [InlineData(RequirementQuantity.WarmUpTime, 12)]
    [InlineData(RequirementQuantity.PiecesPerCharge, 7)]
    [InlineData(RequirementQuantity.GripTemperature, 314.15)]
    [InlineData(RequirementQuantity.CaseTemperature, 314.15)]
    [InlineData(RequirementQuantity.CellTemperature, 325.15)]
    [InlineData(RequirementQuantity.FullLightTime, 500)]
    [InlineData(RequirementQuantity.RunTime, 600)]
    [InlineData(RequirementQuantity.EndTemperature, 573.15)]
    [InlineData(RequirementQuantity.RecoveryTime, 5)]
    [InlineData(RequirementQuantity.Steadiness, 30)]
    [InlineData(RequirementQuantity.WorkRate, 0.05)]
    [InlineData(RequirementQuantity.CellCurrent, 3)]
    [InlineData(RequirementQuantity.ProtectionTrips, 0)]
    [InlineData(RequirementQuantity.ControllerVolts, 6.5)]
    public void A_run_tells_each_line_in_the_SI(RequirementQuantity quantity, double si) => Assert.Equal(si, Tell(quantity)(Run), 1e-9);

    [Fact]
    public void What_never_came_is_as_bad_as_can_be()
    {
        Assert.Equal(0, Tell(RequirementQuantity.FullLightTime)(Run with { FullLightS = double.NaN }));
        Assert.Equal(double.PositiveInfinity, Tell(RequirementQuantity.RecoveryTime)(Run with { RecoveryS = double.NaN }));
        Assert.Equal(double.PositiveInfinity, Tell(RequirementQuantity.Steadiness)(Run with { LowestAtWorkC = double.NaN }));
        Assert.Equal(0, Tell(RequirementQuantity.WorkRate)(Run with { Pieces = 0 }));
        Assert.Equal(0.05, Tell(RequirementQuantity.WorkRate)(Run with { Pieces = 1 }), 1e-12);
        Assert.Equal(1, Tell(RequirementQuantity.ProtectionTrips)(Run with { Stop = StopReason.Tripped }));
        Assert.Equal(0, Tell(RequirementQuantity.ControllerVolts)(Run with { LowestV = double.PositiveInfinity }));
        Assert.Null(Told.ByRun(new("x", "", RequirementQuantity.PartsCost, 1, "money", true, true), Knife, 1));
    }

    private static Func<Outcome, double> Tell(RequirementQuantity quantity) => Told.ByRun(new("x", "", quantity, 1, "", true, true), Knife, 2)!;

    private static readonly SafetyTool Tool = new() { CapacityAh = 0.1, OhmsPlusMinus = 0.4 };

    private static readonly Prediction Middle = new(Tool.Arrangement, Tool.Builder, Predict.Middle(Tool.Builder), [], []);

    private static CheckResult Check(double? value, double? doubt, PrototypeReading? reading, bool atMost = false)
    {
        var brief = Knife with { Requirements = [new("long", "", RequirementQuantity.RunTime, 10, "min", atMost, true)] };
        return PrototypeCheck.Of(new("d", "", "s", new("a"), "", VerdictWord.Go, "", "", [new("long", "", VerdictWord.Go, "min", 10, value, doubt), new("gone", "", VerdictWord.Go, "", 1, 1, 1)], [], [], [], [], [], brief), Middle,
            [.. new[] { reading, new PrototypeReading("2", "d", "", "gone", 1, 1, "") }.OfType<PrototypeReading>()]);
    }

    private static PrototypeReading Reading(double value, double doubt) => new("1", "d", "", "long", value, doubt, "min");

    /// <summary>By hand: 0.3 and 0.4 are 0.5 together, and 1 over it two doubts: of a bell shape 4.55 of 100 lie farther out.</summary>
    [Fact]
    public void Doubts_of_reading_and_prediction_count_together()
    {
        var check = Check(10, 0.4, Reading(11, 0.3));
        Assert.Equal(2, check.Lines[0].Doubts, 1e-12);
        Assert.Equal(0.0455, check.P, 5e-5);
        Assert.Equal(1, check.Sought); // rare: what would explain one line alone is told, and that it is one
        Assert.Equal((Kept.NotTested, null), (check.Lines[1].Promise, check.Lines[1].Read)); // a line that the brief has no more
        Assert.True(double.IsNaN(check.Lines[1].Doubts));
        Assert.Equal(-2, Check(10, null, Reading(9, 0.5)).Lines[0].Doubts, 1e-12);
        Assert.True(double.IsNaN(Check(null, 0.4, Reading(9, 0.5)).Lines[0].Doubts));
        Assert.True(double.IsNaN(Check(10, 0, Reading(9, 0)).Lines[0].Doubts));
        Assert.Equal(1, Check(10, 0, Reading(9, 0)).P);
        Assert.Equal([Kept.Kept, Kept.Missed, Kept.Kept, Kept.Missed], new[] { Check(10, 1, Reading(10, 1)), Check(10, 1, Reading(9.9, 1)), Check(10, 1, Reading(10, 1), atMost: true), Check(10, 1, Reading(10.1, 1), atMost: true) }.Select(one => one.Lines[0].Promise));
    }

    /// <summary>By hand: of ten draws the first five keep one must; another that the same five keep leaves five, one that the other five keep leaves none, one of 0.4 that no draw tells leaves 2.</summary>
    [Fact]
    public void Musts_that_fail_together_are_counted_once()
    {
        double[] first = [1, 1, 1, 1, 1, 0, 0, 0, 0, 0], last = [.. first.Reverse()];
        var prediction = Middle with { Draws = new Outcome[10] };
        double Odds(params RequirementVerdict[] lines) => Comparison.Of(Knife, [WrittenVerdict.Of("A", VerdictWord.Go, lines, prediction: prediction)], new([], [])).Ranked[0].Odds;
        RequirementVerdict Must(double[] drawn, bool atMost = false, double chance = 0.5) => WrittenVerdict.Verdict(WrittenVerdict.Line(atMost ? "most" : "least", limit: atMost ? 0 : 1, atMost: atMost), VerdictWord.Go, chance, drawn);
        Assert.Equal(0.5, Odds(Must(first)), 1e-12);
        Assert.Equal(0.5, Odds(Must(first), Must(first)), 1e-12);
        Assert.Equal(0, Odds(Must(first), Must(last)), 1e-12);
        Assert.Equal(0, Odds(Must(first), Must(first, atMost: true)), 1e-12);
        Assert.Equal(0.5, Odds(Must(first), Must(last, atMost: true)), 1e-12);
        Assert.Equal(0.2, Odds(Must(first), Must([], chance: 0.4)), 1e-12);
        Assert.Equal(0.2, Odds(Must(first), Must([1, 1], chance: 0.4)), 1e-12); // other draws are another world
    }

    [Fact]
    public void A_line_finds_its_cell_or_none()
    {
        var line = WrittenVerdict.Line("must");
        var one = Comparison.Of(Knife, [WrittenVerdict.Of("A", VerdictWord.Go, [WrittenVerdict.Verdict(line, VerdictWord.NoGo, 0.1)])], new([], [])).Ranked[0];
        Assert.Equal(0.1, Comparison.Cell(one, line)!.Probability);
        Assert.Null(Comparison.Cell(one, WrittenVerdict.Line("other")));
    }
}
