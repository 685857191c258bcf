using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>Sentences about a run that is written down: three instants, all numbers by hand.</summary>
public sealed class SentencesTests
{
    private static readonly SafetyTool Tool = new();

    private static readonly Brief Brief = new("", "blade", "cut", 20, []) { Duty = new(320, 20, 4, 5, 220, 0.22, 0, 40, 0, "by hand") };

    private static PlantRun Written(StopReason stop = StopReason.Empty, double runTimeS = 120, params PlantEvent[] events)
    {
        var trace = new Trace([0, 60, 120], 3, 1) { Count = 3 };
        for (int i = 0; i < 3; i++)
        {
            (trace.LoadW[i], trace.PackA[i], trace.TerminalV[i], trace.ChargeLeft[i], trace.Duty[i], trace.NodesK[0][i]) = (30 - i, 4 - (0.1 * i), 8 - (0.5 * i), 1 - (0.25 * i), i == 2 ? 0.5 : 0.95, 373.15 + (100 * i));
        }

        return new(runTimeS, stop, events, new(), trace) { HighestA = 4.2 };
    }

    private static Sentences Say(PlantRun run, Arrangement? arrangement = null) => new(Brief, new(arrangement ?? Tool.Arrangement, Tool.Builder, run, [], []));

    private static Outcome Run(double warmUpS = 100, int pieces = 3, double runTimeS = 120, StopReason stop = StopReason.Empty, double chargeLeft = 0.25) => new(warmUpS, pieces, 40, 40, runTimeS, stop, default, chargeLeft);

    [Theory, InlineData(0, "0 s"), InlineData(12.34, "12.3 s"), InlineData(89.9, "89.9 s"), InlineData(90, "1.5 min"), InlineData(5399, "90 min"), InlineData(5400, "1.5 h"), InlineData(36_000, "10.0 h"), InlineData(double.PositiveInfinity, "never"), InlineData(double.NaN, "never")]
    public void A_time_is_said_in_the_unit_a_maker_says_it_in(double seconds, string said) => Assert.Equal(said, Sentences.Time(seconds));

    [Theory, InlineData(2.153, "2.15 Ω"), InlineData(1, "1 Ω"), InlineData(0.0412, "41.2 mΩ")]
    public void Ohms_under_one_are_milliohms(double ohms, string said) => Assert.Equal(said, Sentences.Input(Tool.Builder.Inputs[Tool.Builder.Place(PlantKey.HeaterOhms)], ohms));

    [Fact]
    public void Other_numbers_keep_their_unit() => Assert.Equal("0.5 Ah", Sentences.Input(Tool.Builder.Inputs[Tool.Builder.Place(PlantKey.Capacity)], 1800));

    [Theory, InlineData(0, "0 cuts"), InlineData(1, "1 cut"), InlineData(2, "2 cuts")]
    public void Pieces_are_counted_in_the_briefs_own_word(int count, string said) => Assert.Equal(said, Say(Written()).Plural(count));

    /// <summary>By hand: at 0.6 of 90 s, 54 s, the next instant is 60 s: 29 W, 3.9 A, 7.5 V.</summary>
    [Fact]
    public void A_warm_up_is_told_while_it_heats_with_all_it_has()
    {
        Assert.Equal("the blade is at 320 °C after 1.5 min: the heater gets 29.0 W (3.9 A from the pack at 7.50 V)", Say(Written()).WarmUp(Run(90)));
        Assert.Equal("the blade is at 320 °C after 1.9 min: the heater gets 28.0 W (3.8 A from the pack at 7.00 V)", Say(Written()).WarmUp(Run(112)));
        // Never: what it gets 12 s after it was switched on, and where it stays.
        Assert.Equal("the blade never gets to 320 °C and stays at 300 °C: the heater gets 29.0 W (3.9 A from the pack at 7.50 V)", Say(Written()).WarmUp(Run(double.PositiveInfinity)));
        Assert.Equal("the blade never gets to 320 °C: after 10 s the protection opens at 4.2 A", Say(Written(StopReason.Tripped)).WarmUp(Run(double.PositiveInfinity, runTimeS: 10, stop: StopReason.Tripped)));
        Assert.StartsWith("the blade never gets to 320 °C: at once the pack cannot carry", Say(Written(StopReason.Collapsed)).WarmUp(Run(double.PositiveInfinity, runTimeS: 0, stop: StopReason.Collapsed)), StringComparison.Ordinal);
        Assert.StartsWith("the blade never gets to 320 °C: after 5 s the module's input", Say(Written(StopReason.LockedOut)).WarmUp(Run(double.PositiveInfinity, runTimeS: 5, stop: StopReason.LockedOut)), StringComparison.Ordinal);
    }

    [Fact]
    public void Pieces_are_told_with_what_ended_them()
    {
        Assert.Equal("3 cuts until 2 min, then the charge is used up", Say(Written()).Pieces(Run()));
        Assert.Equal("3 cuts, then at 60 s with 75 % of the charge left one takes longer than 4 s: the heater is on all it may; 29.0 W reach the heater, the pack stands at 7.50 V and 3.9 A",
            Say(Written(events: [new(Happening.WorkStarts, 50, default), new(Happening.WorkMissed, 60, default)])).Pieces(Run()));
        // The end of the run broke it off: that is the reason.
        Assert.Equal("3 cuts until 2 min, then the charge is used up", Say(Written(events: [new(Happening.WorkMissed, 120, default)])).Pieces(Run()));
    }

    [Theory, InlineData(StopReason.Empty, "the charge is used up"), InlineData(StopReason.Tripped, "the protection opens at 4.2 A"), InlineData(StopReason.CutOff, "the pack is at its cut-off of 6.0 V with 25 % of the charge left")]
    [InlineData(StopReason.LockedOut, "the module's input falls to its lock-out with 25 % of the charge left; it hiccups, and what it gives then is not known"), InlineData(StopReason.Collapsed, "the pack cannot carry the load any more with 25 % of the charge left; the volts collapse")]
    [InlineData(StopReason.CellCutOff, "one cell is at its cut-off with 25 % of the charge left"), InlineData(StopReason.BrownOut, "the pack sags so far that the controller resets, with 25 % of the charge left")]
    [InlineData(StopReason.WorkDone, "all the work is done"), InlineData(StopReason.LightGone, "the light is under a tenth, with 25 % of the charge left"), InlineData(StopReason.TimeOver, "the time is over")]
    public void What_ended_a_run_is_said(StopReason stop, string said) => Assert.Equal(said, Say(Written()).Ended(Run(stop: stop)));

    [Fact]
    public void Full_light_is_told_with_what_ends_it()
    {
        var lamp = new SafetyTool { IsLamp = true, Series = 1, SupervisionCells = "1", ChargerCells = "1" };
        var say = new Sentences(Brief, new(lamp.Arrangement, lamp.Builder, Written(), [], []));
        Assert.Equal("the driver holds 0.70 A for 2 min, then the charge is used up", say.FullLight(Run() with { FullLightS = 120 }));
        Assert.Equal("the driver holds 0.70 A for 60 s, until the pack stands at 7.50 V with 75 % of the charge left; it goes on weaker until 2 min, when the charge is used up", say.FullLight(Run() with { FullLightS = 60 }));
        Assert.Equal("the driver never holds 0.70 A: from the start the pack stands at 8.00 V with 100 % of the charge left", say.FullLight(Run() with { FullLightS = 0 }));
    }

    [Fact]
    public void The_way_back_and_the_droop_are_told()
    {
        var say = Say(Written());
        Assert.Equal("the blade never comes to work", say.Recovery(Run()));
        Assert.Equal("after a cut the blade is not back at 320 °C when the next comes", say.Recovery(Run() with { RecoveryS = double.PositiveInfinity }));
        Assert.Equal("no cut takes the blade below 320 °C", say.Recovery(Run() with { RecoveryS = 0 }));
        Assert.Equal("at its worst the blade is back at 320 °C 6.5 s after a cut", say.Recovery(Run() with { RecoveryS = 6.5 }));
        Assert.Equal("the blade never comes to work", say.Droop(Run() with { LowestAtWorkC = double.NaN }));
        Assert.Equal("at work the blade falls to 305 °C, 15 K under its target", say.Droop(Run() with { LowestAtWorkC = 305 }));
    }

    [Fact]
    public void The_current_of_a_cell_stands_beside_what_it_is_to_stand()
    {
        Shelf Shelf(params StatedValue[] stated) => new([new(new("cell"), PartKind.Cell, "cell", stated), new(new("guard"), PartKind.Supervision, "guard", stated)], []);
        var say = Say(Written(), Tool.Arrangement with { Parallel = 2 });
        Assert.Equal("4.5 A at most through one cell", say.CellCurrent(Run() with { HighestA = 9 }, Shelf()));
        Assert.Equal("4.5 A at most through one cell; 10\u00A0A is measured", say.CellCurrent(Run() with { HighestA = 9 }, Shelf(new StatedValue(PartQuantities.RatedCurrent, 10, "A", 0, "measured", "meter"))));
        Assert.Equal("the protection opens at 8\u00A0A (measured)", say.Trip(Shelf(new StatedValue(PartQuantities.TripCurrent, 8, "A", 0, "measured", "meter"))));
        Assert.Equal("no trip current is known", say.Trip(Shelf()));
        Assert.Equal("no trip current is known", Say(Written(), Tool.Arrangement with { Supervision = null }).Trip(Shelf(new StatedValue(PartQuantities.TripCurrent, 8, "A", 0, "measured", "meter"))));
    }

    [Theory, InlineData(Region.SourceLimited, "the step-up asks more than"), InlineData(Region.CurrentLimited, "the step-up is at its current limit"), InlineData(Region.DutyLimited, "the step-up is at the end of its duty"), InlineData(Region.LockedOut, "the step-up's input"), InlineData(Region.Collapsed, "the pack cannot carry"), InlineData(Region.PassThrough, "the step-up only passes")]
    public void The_region_says_what_limits_the_power(Region region, string said)
    {
        var run = Written(events: [new(Happening.TargetReached, 10, region), new(Happening.RegionChanged, 60, region)]);
        run.Trace.Regions[1] = run.Trace.Regions[2] = region;
        Assert.StartsWith(said, Say(run).Why(60), StringComparison.Ordinal);
        bool lasts = region is not (Region.LockedOut or Region.Collapsed);
        Assert.Equal(lasts, Say(run).RegionStory().StartsWith($"from 60 s on, with 75 % of the charge left, {said}", StringComparison.Ordinal));
        Assert.Equal("", Say(Written()).RegionStory());
    }

    [Fact]
    public void A_controller_that_holds_back_is_told_from_one_that_gives_all()
    {
        Assert.StartsWith("the heater is on all it may; 29.0 W reach the heater", Say(Written()).Why(60), StringComparison.Ordinal);
        Assert.Equal("the controller holds back; 28.0 W reach the heater, the pack stands at 7.00 V and 3.8 A", Say(Written()).Why(500));
        Assert.StartsWith("the lamp takes what its driver lets through; 30.0 W reach the lamp", Say(Written(), Tool.Arrangement with { Lamp = new("light"), Heater = null }).Why(0), StringComparison.Ordinal);
    }
}
