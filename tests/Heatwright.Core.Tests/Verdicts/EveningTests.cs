using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Tests.Safety;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>An evening of readings for two tools of which one holds where a sum of numbers is high and the other where it is low.</summary>
public sealed class EveningTests
{
    private const int Draws = 200;

    private static readonly SafetyTool Tool = new() { CapacityAh = 0.1, OhmsPlusMinus = 0.4, EndHeatPlusMinus = 2, GripLossPlusMinus = 0.04, CapacityPlusMinus = 0.02 };

    private static readonly PlantBuilder Builder = Tool.Builder;

    private static readonly Prediction Told = new(Tool.Arrangement, Builder, Predict.Middle(Builder), new Outcome[Draws], []);

    /// <summary>How many doubts each of these numbers lies above its middle, summed, in each draw.</summary>
    private static double[] Sum(params PlantKey[] keys) => [.. Enumerable.Range(0, Draws).Select(i => keys.Sum(key => (Builder.Inputs[Builder.Place(key)].Value.DrawnSi(new Draw(1, i)) - Builder.Middle[Builder.Place(key)]) / Builder.Inputs[Builder.Place(key)].Value.SiDoubt))];

    private static ArrangementVerdict Of(string letter, bool atMost, double[] drawn, double limit = 0) =>
        WrittenVerdict.Of(letter, VerdictWord.NeedMoreReadings, [WrittenVerdict.Verdict(WrittenVerdict.Line("sum", limit: limit, atMost: atMost), VerdictWord.NeedMoreReadings, 0.5, drawn)], prediction: Told);

    private static NextReadings Next(double minutes, double[] sum, params Instrument[] instruments) => NextReadings.Of([Of("A", true, sum), Of("B", false, sum, 1e-9)], instruments, 1, minutes);

    /// <summary>By hand: cold ohms take 3 minutes; the discharge 15, and the cell then rests; the warm-up and the grip come when nothing cold is left.</summary>
    [Fact]
    public void An_evening_goes_from_cold_to_hot()
    {
        var next = Next(200, Sum(PlantKey.HeaterOhms, PlantKey.EndHeat, PlantKey.GripLoss, PlantKey.Capacity));
        Assert.Equal(["cold ohms with the leads subtracted", "a discharge down to the cut-off"], next.Evening.Take(2).Select(step => step.Trial.Plan.Words));
        Assert.Equal([(0.0, 3.0), (3, 18)], next.Evening.Take(2).Select(step => (step.StartMinute, step.EndMinute)));
        Assert.Contains(next.Evening, step => step.Trial.Words == "a warm-up at two power levels, tip");
        Assert.Contains(next.Evening, step => step.Trial.Words == "grip degrees during a long hold, handle");
        Assert.Equal(next.Evening.Select(step => step.Trial.Plan.Stage).Order(), next.Evening.Select(step => step.Trial.Plan.Stage));
        double clock = 0;
        var free = new Dictionary<string, double>();
        foreach (var step in next.Evening)
        {
            Assert.Equal(Math.Max(clock, free.GetValueOrDefault(step.Trial.Part)), step.StartMinute); // hands on as soon as hands and part are free
            clock = step.StartMinute + step.Trial.Plan.HandsMinutes;
            Assert.Equal(clock, step.EndMinute);
            free[step.Trial.Part] = clock + step.Trial.Plan.WaitMinutes;
        }

        Assert.InRange(next.WrongAfter, 0, 0.5 * next.WrongNow);
        Assert.Equal(next.Trials.Select(trial => trial.DropAMinute).OrderDescending(), next.Trials.Select(trial => trial.DropAMinute));
        Assert.All(next.Trials, trial => Assert.Equal(trial.Drop / trial.Plan.HandsMinutes, trial.DropAMinute, 1e-12));
    }

    /// <summary>By hand: the discharge alone takes 15 minutes, and the cold ohms 3.</summary>
    [Fact]
    public void What_the_minutes_do_not_hold_is_left_out()
    {
        double[] sum = Sum(PlantKey.HeaterOhms, PlantKey.Capacity);
        static bool Discharged(NextReadings next) => next.Evening.Any(step => step.Trial.Plan.Words == "a discharge down to the cut-off");
        Assert.False(Discharged(Next(14.9, sum)));
        Assert.Equal("cold ohms with the leads subtracted", Next(14.9, sum).Evening[0].Trial.Plan.Words);
        Assert.True(Discharged(Next(15, Sum(PlantKey.Capacity))));
        Assert.False(Discharged(Next(14.9, Sum(PlantKey.Capacity))));
        Assert.All(Next(17.9, sum).Evening, step => Assert.True(step.Trial.Plan.Words != "a discharge down to the cut-off" || step.EndMinute <= 17.9));
        Assert.True(Next(30, sum).Evening.Sum(step => step.Trial.Plan.HandsMinutes) <= 30);
        Assert.Empty(Next(0, sum).Evening);
        Assert.Empty(Next(2, sum).Evening);
    }

    /// <summary>By hand: a meter that is 60 % off has 0.6/√3 = 0.35 of 2 Ω = 0.69 Ω of doubt, three times what is believed of the ohms: it tells nearly nothing, and a perfect one still all.</summary>
    [Fact]
    public void A_poor_meter_tells_less()
    {
        double[] sum = Sum(PlantKey.HeaterOhms);
        var fine = Next(0, sum).Trials[0];
        var poor = Next(0, sum, new Instrument("m", "meter", [new InstrumentSpec("Ω", 1, 0, 0), new InstrumentSpec("V", 60, 0, 0)])).Trials.Single(trial => trial.Plan.Words == fine.Plan.Words);
        Assert.InRange(fine.Drop, 0.4, 0.5);
        Assert.InRange(poor.Drop, 0, 0.2);
        Assert.InRange(poor.DropIfPerfect, 0.4, 0.5);
    }

    [Fact]
    public void Only_numbers_in_doubt_ask_for_a_trial()
    {
        var trials = Next(0, Sum(PlantKey.HeaterOhms)).Trials;
        Assert.Contains(trials, trial => trial.Words == "cold ohms with the leads subtracted, tip");
        Assert.Contains(trials, trial => trial.Words == "a discharge down to the cut-off, cell");
        Assert.DoesNotContain(trials, trial => trial.Plan.Words.Contains("contacts", StringComparison.Ordinal)); // they are known
        Assert.Equal(trials.Count, trials.Select(trial => trial.Words).Distinct().Count());
    }

    /// <summary>The worst case names a must that no draw tells, with what would tell it; wants, remedies that are none, and chances that are known are not named.</summary>
    [Fact]
    public void A_must_that_nothing_tells_is_named_before_anybody_builds()
    {
        var sure = Of("A", true, [.. Enumerable.Repeat(-1.0, Draws)]);
        static RequirementVerdict Open(string id, bool must = true, double? chance = null, string remedy = "weigh it") =>
            new(WrittenVerdict.Line(id, must: must), VerdictWord.NeedMoreReadings, null, "not known", chance, $"the {id} is not known", remedy);
        string Advice(params RequirementVerdict[] lines) => NextReadings.Of([sure with { Requirements = [.. sure.Requirements, .. lines] }], [], 1, 0).Advice;
        const string plain = "Stop measuring, build it: A is the best choice (wrong in 0 of 100 draws).";
        Assert.Equal(plain, Advice());
        Assert.Equal("No reading here would change the choice, but not all that A must keep is known: the mass is not known: weigh it. A is the best choice (wrong in 0 of 100 draws).", Advice(Open("mass")));
        Assert.Equal("No reading here would change the choice, but not all that A must keep is known: the mass is not known: weigh it; and the length is not known: weigh it. A is the best choice (wrong in 0 of 100 draws).", Advice(Open("mass"), Open("length"), Open("mass")));
        Assert.Equal(plain, Advice(Open("mass", must: false)));
        Assert.Equal(plain, Advice(Open("mass", chance: 0.5)));
        Assert.Equal(plain, Advice(Open("mass", remedy: "")));
        Assert.Equal(plain, Advice(Open("mass") with { Word = VerdictWord.Go }));
    }

    /// <summary>By hand: 5 wrong of 100 are sure enough, 6 are not, and with nothing that a reading tells there is nothing to measure here either way: what is not known is told then, and nobody is sent to build.</summary>
    [Theory, InlineData(10, "Stop measuring, build it: A is the best choice (wrong in 5 of 100 draws).")]
    [InlineData(12, "No reading here would change the choice, but not all that A must keep is known: sum because: sum remedy. A is the best choice (wrong in 6 of 100 draws, and no trial here would change much).")]
    public void Five_in_a_hundred_are_sure_enough(int misses, string advice)
    {
        var next = NextReadings.Of([Of("A", true, [.. Enumerable.Range(0, Draws).Select(i => i % 16 == 3 && i / 16 < misses ? 1.0 : -1)])], [], 1, 60);
        Assert.True(next.StopMeasuring);
        Assert.Equal(misses / 200.0, next.WrongNow, 1e-12);
        Assert.Equal(advice, next.Advice);
        Assert.Empty(next.Evening);
    }

    [Fact]
    public void Every_trial_that_could_be_done_tells_numbers_of_its_own()
    {
        Assert.Equal(TrialPlan.All.SelectMany(plan => plan.Keys).Distinct().Count(), TrialPlan.All.Sum(plan => plan.Keys.Count));
        Assert.All(TrialPlan.All, plan => Assert.True(plan.Share is > 0 and < 0.5 && plan.HandsMinutes is > 0 and <= 60 && plan.WaitMinutes is >= 0 and <= 240));
        Assert.Equal(TrialPlan.All.Where(plan => plan.Stage == TrialStage.Risky), TrialPlan.All.Where(plan => plan.Risk.Length > 0));
    }
}
