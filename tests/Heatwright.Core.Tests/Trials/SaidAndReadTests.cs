using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>What a seller says beside what was read.</summary>
public sealed class SaidAndReadTests
{
    private static readonly Origin Read = new Origin.Measured(new("ohms-1"), "meter");

    private static Estimate Known(double value, double doubt, Unit unit, string cause) => new(value, unit, Doubts.From(Cause.Normal(cause, CauseGroup.Trial), doubt), Read);

    private static Part Heater(double volts, double watts, string origin = "claimed") => new(new("stick"), PartKind.Heater, "stick",
        [new(PartQuantities.RatedVolts, volts, "V", 0, origin, "label"), new(PartQuantities.RatedPower, watts, "W", 0, origin, "label")]);

    private static Func<string, Estimate?> Found(params (string Quantity, double Ohm)[] found) => quantity =>
        found.Where(one => one.Quantity == quantity).Select(one => Known(one.Ohm, 0.01 * one.Ohm, Units.Ohm, "read")).FirstOrDefault();

    /// <summary>By hand: 12²/5.2 = 27.69 W, 31 % less than 40 W; 24²/11.35 = 50.75 W of 50 W. The doubt of one in a hundred of the ohms is one of the watts: 0.277 W; the label's volts say where, not how much.</summary>
    [Theory, InlineData(12, 40, 5.2, 27.692, "contradicted, −31%"), InlineData(24, 50, 11.35, 50.749, "agrees")]
    public void Watts_of_a_label_are_held_against_the_ohms(double volts, double watts, double ohm, double takes, string words)
    {
        var pair = SaidAndRead.LabelPower(Heater(volts, watts), Found((PartQuantities.Ohms, ohm)))!;
        Assert.Equal(takes, pair.Read.Value, 1e-3);
        Assert.Equal(0.01 * takes, pair.Read.StandardDoubt, 1e-3 * takes);
        Assert.Equal(watts, pair.Said.Value);
        Assert.Equal(words, pair.Words);
    }

    /// <summary>By hand: 12²/6 = 24 W by its ohms when hot.</summary>
    [Fact]
    public void Hot_ohms_go_before_cold_ones() =>
        Assert.Equal(24, SaidAndRead.LabelPower(Heater(12, 40, "sheet"), Found((PartQuantities.Ohms, 5.2), ("hot ohms", 6)))!.Read.Value, 1e-9);

    [Fact]
    public void What_is_not_said_or_not_read_is_not_set_beside()
    {
        Assert.Null(SaidAndRead.LabelPower(Heater(12, 40), Found()));
        Assert.Null(SaidAndRead.LabelPower(Heater(12, 40, "measured"), Found((PartQuantities.Ohms, 5.2))));
        Assert.Null(SaidAndRead.LabelPower(Heater(12, 40) with { Kind = PartKind.Lamp }, Found((PartQuantities.Ohms, 5.2))));
        Assert.Null(SaidAndRead.LabelPower(Heater(12, 40) with { Stated = [.. Heater(12, 40).Stated.Take(1)] }, Found((PartQuantities.Ohms, 5.2))));
        Assert.Null(SaidAndRead.Of("ohms", Estimate.Exact(1, Units.Volt, Read), Estimate.Exact(1, Units.Ohm, Read)));
    }

    /// <summary>By hand: 0.5 and 1.0 standard doubts make 1.118; two of them 2.236: 2.2 apart agree, 2.3 do not.</summary>
    [Theory, InlineData(12.2, true), InlineData(12.3, false), InlineData(7.8, true), InlineData(7.7, false)]
    public void Twice_the_joint_doubt_is_what_may_lie_between(double read, bool agrees) => Assert.Equal(agrees, SaidAndRead.Of("volts",
        Known(10, 1, Units.Volt, "said"), Known(read, 0.5, Units.Volt, "read"))!.Agrees);

    /// <summary>0.914 Ah were taken before the discharge was broken off. 2.5 Ah claimed are neither borne out nor contradicted by that; 0.8 Ah are, by a seventh.</summary>
    [Theory, InlineData(2.5, true, true, "open: a lower bound"), InlineData(0.8, false, false, "contradicted, +14%")]
    public void A_lower_bound_contradicts_no_claim_above_it(double claimed, bool open, bool agrees, string words)
    {
        var pair = SaidAndRead.Of(LowerBound.Of(PartQuantities.Capacity), Known(claimed, 0.01, Units.AmpereHour, "said"), Known(0.914, 0.009, Units.AmpereHour, "read"))!;
        Assert.Equal((open, agrees, words), (pair.IsOpen, pair.Agrees, pair.Words));
        Assert.Equal((PartQuantities.Capacity, PartQuantities.Capacity), (LowerBound.Quantity(pair.Quantity), LowerBound.Quantity(PartQuantities.Capacity)));
    }

    /// <summary>A module that nobody saw give way limits itself above what it held: 7.42 to 12 A are 9.71 ± 2.29/√3; 10 A held lift the upper end to 15 A; what is below 3 A tells nothing.</summary>
    [Theory, InlineData(7.42, 9.71, 2.29), InlineData(10, 12.5, 2.5), InlineData(2, 7.5, 4.5), InlineData(0, 7.5, 4.5)]
    public void A_module_limits_itself_above_what_it_held(double held, double middle, double half)
    {
        var module = new Part(new("boost"), PartKind.StepUp, "boost", []);
        Finding[] found = held > 0 ? [new(module.Id, PartQuantities.HeldCurrent, Estimate.Exact(held, Units.Ampere, Read))] : [];
        var limit = new Shelf([module], [new(module.Id, found, [], [])]).ModuleLimit(module.Id);
        Assert.Equal(middle, limit.Value, 1e-9);
        Assert.Equal(half / Math.Sqrt(3), limit.StandardDoubt, 1e-9);
        Assert.Equal(4, new Shelf([module with { Stated = [new(PartQuantities.LimitCurrent, 4, "A", 0, "measured", "")] }], [new(module.Id, found, [], [])]).ModuleLimit(module.Id).Value);
    }
}
