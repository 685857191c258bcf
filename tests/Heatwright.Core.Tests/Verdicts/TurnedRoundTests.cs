using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>What would have to be true, worst cases and what a prototype says, on the tool of <see cref="JudgeTests"/>: 360 C at 8 V · 0.95 through R and 2 mΩ of cells last 47.37 s · (R + 0.002).</summary>
public sealed class TurnedRoundTests
{
    private const double SecondsAnOhm = 360 / (8 * 0.95);

    private static readonly SafetyTool Tool = new() { CapacityAh = 0.1, OhmsPlusMinus = 0.4 };

    private static Requirement Long(double minutes, bool atMost = false) => new("long", "it lasts.", RequirementQuantity.RunTime, minutes, "min", atMost, true);

    private static IReadOnlyList<FlipPoint> Flips(double minutes, bool atMost = false) => WouldHaveToBeTrue.Of(Tool.Builder, Long(minutes, atMost), run => run.RunTimeS);

    [Fact]
    public void Ohms_and_charge_would_have_to_be_larger_for_a_longer_run()
    {
        var flips = Flips(4.1); // 246 s
        var ohms = flips.Single(flip => flip.Name == "heater ohms, tip");
        Assert.Equal((246 / SecondsAnOhm) - 0.002, ohms.Flip, 0.01);
        Assert.Equal("heater ohms, tip at least 5.19 Ω (now 2 Ω, measured)", ohms.Words);
        Assert.False(ohms.Believable);
        var charge = flips.Single(flip => flip.Name == "capacity, cell");
        Assert.Equal(360 * 246 / (SecondsAnOhm * 2.002), charge.Flip, 2.0);
        Assert.StartsWith("capacity, cell at least 0.259 Ah (now 0.1 Ah", charge.Words, StringComparison.Ordinal);
        double[] far = [.. flips.Select(flip => Math.Abs(Math.Log(flip.Flip / flip.Now)))];
        Assert.Equal(far.Order(), far);
    }

    [Fact]
    public void A_flip_inside_two_doubts_is_believable()
    {
        Assert.True(Flips(1.7).Single(flip => flip.Name == "heater ohms, tip").Believable); // 2.15 Ω, of 2 ± 0.46
        Assert.False(Flips(2).Single(flip => flip.Name == "heater ohms, tip").Believable); // 2.53 Ω
        var less = Flips(1.5).Single(flip => flip.Name == "heater ohms, tip"); // kept, and missed below 1.898 Ω
        Assert.Equal((90 / SecondsAnOhm) - 0.002, less.Flip, 0.005);
        Assert.StartsWith("heater ohms, tip at most 1.9 Ω", less.Words, StringComparison.Ordinal);
        Assert.StartsWith("heater ohms, tip at most 1.9 Ω", Flips(1.5, atMost: true).Single(flip => flip.Name == "heater ohms, tip").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_no_run_tells_is_not_turned_round() => Assert.Empty(WouldHaveToBeTrue.Of(Tool.Builder, Long(1), null));

    private static readonly Prediction Middle = new(Tool.Arrangement, Tool.Builder, Predict.Middle(Tool.Builder), [], []);

    private static readonly Brief Brief = new("", "blade", "cut", 20, [Long(1.5), new("hot", "it is hot.", RequirementQuantity.EndTemperature, 150, "°C", false, true), new("cost", "it is cheap.", RequirementQuantity.PartsCost, 10, "money", true, false)]);

    private static CheckResult Check(double longMin, double hotC, double doubt = 0.02, string? without = null)
    {
        var outcome = Middle.MiddleOutcome;
        FrozenLine[] lines =
        [
            new("long", "", VerdictWord.Go, "min", 1.5, outcome.RunTimeS / 60, 0),
            new("hot", "", VerdictWord.Go, "°C", 150, outcome.HottestC, 0),
            new("cost", "", VerdictWord.Go, "money", 10, 8, 0),
        ];
        var card = new DecisionCard("d", "2026-03-01", "s", new("a"), "tool", VerdictWord.Go, "", "", lines, [], [], [], [], [], Brief);
        PrototypeReading[] readings = [new("1", "d", "2026-03-02", "long", longMin, doubt, "min"), new("2", "d", "2026-03-02", "hot", hotC, 2, "°C"), new("3", "d", "2026-03-02", "cost", 9, 1, "money")];
        return PrototypeCheck.Of(card, Middle, [.. readings.Where(reading => reading.Requirement != without)]);
    }

    /// <summary>By hand: three lines that lie one doubt off each leave the chance erfc(√1.5) + √(6/π)·e^−1.5 = 0.0833 + 0.3084; the price counts, though no run tells it.</summary>
    [Fact]
    public void A_prototype_that_does_as_predicted_asks_for_no_reason()
    {
        var outcome = Middle.MiddleOutcome;
        var check = Check((outcome.RunTimeS / 60) + 0.02, outcome.HottestC - 2);
        Assert.Equal((1.0, -1.0, 1.0), (check.Lines[0].Doubts, check.Lines[1].Doubts, check.Lines[2].Doubts), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) < 1e-6);
        Assert.Equal(0.3916, check.P, 5e-5);
        Assert.Empty(check.Culprits);
        Assert.All(check.Lines, line => Assert.Equal(Kept.Kept, line.Promise));
        Assert.Equal(Kept.Missed, Check(1.4, outcome.HottestC).Lines[0].Promise);
        Assert.Equal(Kept.Kept, Check(1.5, outcome.HottestC).Lines[0].Promise);
        Assert.Equal((Kept.NotTested, null, double.NaN), (Check(1.5, 180, without: "long").Lines[0].Promise, Check(1.5, 180, without: "long").Lines[0].Read, Check(1.5, 180, without: "long").Lines[0].Doubts));
        Assert.Equal((1, 0), (Check(9, 180, without: "hot").Sought, check.Sought));
        Assert.Equal(1, PrototypeCheck.Of(new("d", "", "s", new("a"), "", VerdictWord.Go, "", "", [], [], [], [], [], [], Brief), Middle, []).P);
    }

    private static CheckLine Sum(RequirementQuantity quantity, double read, string leftOut = "")
    {
        Requirement line = new("sum", "", quantity, 250, quantity == RequirementQuantity.Mass ? "g" : "money", true, true);
        var brief = Brief with { Requirements = [line] };
        var card = new DecisionCard("d", "2026-03-01", "s", new("a"), "tool", VerdictWord.Go, "", "", [new("sum", "", VerdictWord.Go, line.Unit, 250, 190.8, 0.6)], [], [], [], [], [], brief);
        var check = PrototypeCheck.Of(card, Middle, [new("1", "d", "2026-03-02", "sum", read, 0.8, line.Unit)], [WrittenVerdict.Verdict(line, VerdictWord.Go) with { LeftOut = leftOut }]);
        Assert.Equal(double.IsNaN(check.Lines[0].Doubts) ? 1 : Heatwright.Numerics.ChiSquare.ShareAbove(check.Lines[0].Doubts * check.Lines[0].Doubts, 1), check.P, 1e-12);
        return check.Lines[0];
    }

    /// <summary>By hand: 212 − 190.8 = 21.2 g; lighter by 5 g is 5/√(0.6² + 0.8²) = 5 doubts.</summary>
    [Fact]
    public void A_prototype_heavier_than_its_weighed_parts_speaks_against_nothing_and_a_lighter_one_does()
    {
        var heavy = Sum(RequirementQuantity.Mass, 212);
        Assert.True(double.IsNaN(heavy.Doubts));
        Assert.Equal((Kept.Kept, "heavier than the counted parts by 21 g: not counted were joints and case"), (heavy.Promise, heavy.Above.Replace('\u00a0', ' ')));
        Assert.Equal(Kept.Missed, Sum(RequirementQuantity.Mass, 260).Promise);
        Assert.Equal((-5, ""), (Math.Round(Sum(RequirementQuantity.Mass, 185.8).Doubts, 9), Sum(RequirementQuantity.Mass, 185.8).Above));
    }

    [Fact]
    public void A_cost_is_the_least_only_where_something_has_no_price()
    {
        Assert.Equal(21.2, Sum(RequirementQuantity.PartsCost, 212).Doubts, 1e-9);
        var dear = Sum(RequirementQuantity.PartsCost, 212, "tip");
        Assert.True(double.IsNaN(dear.Doubts));
        Assert.StartsWith("dearer than the counted parts by 21", dear.Above, StringComparison.Ordinal);
        Assert.EndsWith(": not counted were tip", dear.Above, StringComparison.Ordinal);
    }

    /// <summary>A prototype with 2.5 Ω, worked out by the plant itself: of all numbers the ohms explain it, and nearly they alone.</summary>
    [Fact]
    public void The_number_that_differs_is_the_first_to_be_named()
    {
        var builder = Tool.Builder;
        double[] si = builder.Middle;
        si[builder.Place(Heatwright.Arrangements.PlantKey.HeaterOhms)] = 2.5;
        var real = Predict.Once(builder, si);
        Assert.Equal(SecondsAnOhm * 2.502, real.RunTimeS, 0.5);
        var check = Check(real.RunTimeS / 60, real.HottestC);
        Assert.True(check.P < 0.001);
        Assert.Equal("heater ohms, tip", check.Culprits[0].Name);
        Assert.Equal(2.5, check.Culprits[0].Would, 0.01);
        Assert.StartsWith("500 mΩ more in heater ohms, tip would explain what was read", check.Culprits[0].Words, StringComparison.Ordinal);
        Assert.True(check.Culprits[0].P > 0.9);
    }

    /// <summary>The run time of a prototype with 2.5 Ω alone, 118.5 s for 94.8: the ohms explain it, and so does a charge of 450 C for 360. A hottest end as predicted leaves both standing.</summary>
    [Fact]
    public void What_explains_two_readings_explains_the_missed_one_alone()
    {
        double seconds = SecondsAnOhm * 2.502;
        var one = Check(seconds / 60, 0, without: "hot");
        Assert.Equal(1, one.Sought);
        Assert.Equal(2.5, one.Culprits.Single(culprit => culprit.Name == "heater ohms, tip").Would, 0.01);
        Assert.Equal(450, one.Culprits.Single(culprit => culprit.Name == "capacity, cell").Would, 3.0);
        Assert.DoesNotContain("p = ", one.Culprits[0].Words, StringComparison.Ordinal); // nothing is left over to weigh by
        var both = Check(seconds / 60, Predict.Once(Tool.Builder, Tool.Builder.Middle).HottestC);
        Assert.Equal(2, both.Sought);
        Assert.All(both.Culprits, culprit => Assert.Contains(one.Culprits, alone => alone.Name == culprit.Name));
    }

    /// <summary>By hand: 15 and 7 doubts are named, farthest first; 1 of a third is not; where all lie within what is usual, none is.</summary>
    [Fact]
    public void What_lies_apart_is_named_farthest_first()
    {
        CheckLine Line(string id, double doubts) => new(id, Kept.Kept, new("p", "d", "", id, 1, 1, "min"), new(id, "", VerdictWord.Go, "min", 1), doubts);
        Assert.Equal(["lasts", "warm"], PrototypeCheck.Apart([Line("warm", 7), Line("grip", 1), Line("lasts", -15), Line("mass", double.NaN)]).Select(line => line.Requirement));
        Assert.Empty(PrototypeCheck.Apart([Line("warm", 1), Line("grip", -1)]));
        Assert.Empty(PrototypeCheck.Apart([]));
    }

    /// <summary>By hand: the long run is kept worse by fewer ohms: 2 − 1.9 · 0.4/√3 = 1.561 Ω, 74.1 s; a weak cell is as strong as any, for nothing of it is in doubt.</summary>
    [Fact]
    public void A_bad_day_is_each_part_at_its_worse_end()
    {
        var brief = new Brief("", "blade", "cut", 20, [Long(1.5)]);
        var cases = WorstCases.Of(brief, Tool.Shelf, Middle, new Sensitivity(Tool.Builder, TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        Assert.Equal(["as in the middle", "cold day", "one weak cell in the string", "all cells weak", "low sample, tip", "switch stuck on"], cases.Select(one => one.Name).Where(name => !name.StartsWith("low samples", StringComparison.Ordinal)));
        Assert.Equal("air and all parts at 0 °C when it is switched on", cases[1].Changed);
        Assert.Equal(SecondsAnOhm * 2.002, cases[3].Outcome.RunTimeS, 0.3);
        var low = cases.Single(one => one.Name == "low sample, tip");
        Assert.Equal("heater ohms 1.56 Ω", low.Changed);
        Assert.Equal(SecondsAnOhm * 1.563, low.Outcome.RunTimeS, 0.3);
        Assert.Equal("long", Assert.Single(low.Missed).Requirement.Id);
        Assert.Empty(cases[0].Missed);
        Assert.Empty(cases[^1].Lines); // of a stuck switch only heat and current are asked
        Assert.Equal(90, cases[^1].Outcome.RunTimeS, 0.5); // 360 C at 4 A
        var cold = WorstCases.Of(brief with { AirC = 5 }, Tool.Shelf, Middle, new Sensitivity(Tool.Builder, TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        Assert.Equal("air and all parts at −15 °C when it is switched on", cold[1].Changed.Replace('-', '−'));
        Assert.Equal(StopReason.Empty, cold[1].Outcome.Stop);
    }

    /// <summary>By hand: of a run that never gets hot only the ohms tell how long it lasts: no other part has a worse end, and none is named.</summary>
    [Fact]
    public void A_part_without_a_worse_end_is_not_named()
    {
        var brief = new Brief("", "blade", "cut", 20, [Long(1.5)]);
        var cancel = TestContext.Current.CancellationToken;
        var tool = Tool with { EndHeatPlusMinus = 2 };
        var cases = WorstCases.Of(brief, tool.Shelf, new Prediction(tool.Arrangement, tool.Builder, Predict.Middle(tool.Builder), [], []), new Sensitivity(tool.Builder, cancel), cancel);
        Assert.DoesNotContain(cases, one => one.Name.StartsWith("low samples", StringComparison.Ordinal));
        Assert.Equal("heater ohms 1.56 Ω", cases.Single(one => one.Name == "low sample, tip").Changed);
    }

    [Theory, InlineData(3, 5, 2), InlineData(5, 3, 2), InlineData(3, double.PositiveInfinity, double.PositiveInfinity), InlineData(double.PositiveInfinity, double.PositiveInfinity, 0)]
    public void From_a_number_to_never_is_farther_than_any_number(double a, double b, double apart) => Assert.Equal(apart, Sensitivity.Size(a, b));

    [Fact]
    public void Swings_stand_farthest_first_and_flips_between_the_middle_and_an_end()
    {
        var sensitivity = new Sensitivity(Tool.Builder, TestContext.Current.CancellationToken);
        int ohms = Tool.Builder.Place(Heatwright.Arrangements.PlantKey.HeaterOhms);
        var swing = sensitivity.Swings(run => run.RunTimeS)[0];
        Assert.Equal("heater ohms, tip", swing.Input.Name);
        Assert.Equal((1.5612, 2.4388), (Math.Round(swing.LowInput, 4), Math.Round(swing.HighInput, 4)));
        Assert.Equal(SecondsAnOhm * 1.5632, swing.LowValue, 0.3);
        Assert.Equal(SecondsAnOhm * 2.4408, swing.HighValue, 0.3);
        Assert.Equal((102 / SecondsAnOhm) - 0.002, sensitivity.FlipSi(ohms, 2.4388, run => run.RunTimeS >= 102), 0.003);
        Assert.True(double.IsNaN(sensitivity.FlipSi(ohms, 1.5612, run => run.RunTimeS >= 102)));
    }
}
