using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>By hand unless the line says otherwise.</summary>
public class TradeTrapsTests
{
    [Fact]
    public void A_label_implies_a_resistance() => Assert.Equal(3.6, TradeTraps.LabelOhm(12, 40), 1e-12);   // 144/40

    [Fact]
    public void A_claim_is_a_factor_of_what_was_measured() => Assert.Equal(0.62, TradeTraps.ClaimFactor(1.24, 2.0), 1e-12);

    [Fact]
    public void More_power_brings_less_rise() => Assert.Equal(0.0625, TradeTraps.RiseShare(0.10, 1.6), 1e-12);

    /// <summary>Second way: rise from P = k·riseⁿ with 1 % more power.</summary>
    [Fact]
    public void The_share_of_rise_follows_the_power_law() => Gen.Double[1, 2].Sample(n =>
        Math.Abs(Math.Pow(1.01, 1 / n) - 1 - TradeTraps.RiseShare(0.01, n)) < 1e-4);

    [Fact]
    public void A_source_behind_a_converter()
    {
        Assert.Equal(4.444, TradeTraps.SourceCurrentA(24, 0.9, 6), 5e-4);
        Assert.Equal(0.12, TradeTraps.SourceOhm(-0.24, 2), 1e-12);
    }

    [Fact]
    public void Leads_and_ammeters_take_their_part()
    {
        Assert.Equal(4.7, TradeTraps.AfterLeadsV(5, 2, 0.15), 1e-12);
        Assert.Equal(0.2, TradeTraps.AmmeterW(2, 0.05), 1e-12);
    }

    [Fact]
    public void A_chain_saturates_where_its_output_meets_the_reference()
    {
        double fullC = TradeTraps.SaturationC(Thermocouples.TypeK, 25, 70, 0.2e-3, 1.1);
        // Back through the chain: amplified voltage plus offset is the reference.
        Assert.Equal(1.1, (ColdJunction.VoltageV(Thermocouples.TypeK, fullC, 25) + 0.2e-3) * 70, 1e-9);
        Assert.InRange(fullC, 370, 420);
    }

    /// <summary>150 µV over 41.90551 µV/K = 3.5795 K at 350 °C (second program).</summary>
    [Fact]
    public void An_offset_stands_for_degrees() => Assert.Equal(3.579482, TradeTraps.OffsetK(Thermocouples.TypeK, 350, 150e-6), 1.5e-6);

    /// <summary>150 °C shown at 0.95 where a probe says 300 °C, air 25 °C: 423.15⁴ = 3.2061e10, 573.15⁴ = 1.07911e11, 298.15⁴ = 7.902e9; 0.95 · 2.4159e10/1.00009e11 = 0.2295.</summary>
    [Fact]
    public void Bright_metal_fools_an_infrared_thermometer()
    {
        Assert.Equal(0.2295, TradeTraps.ImpliedEmissivity(0.95, 150, 300, 25), 5e-4);
        Assert.Equal(0.95, TradeTraps.ImpliedEmissivity(0.95, 300, 300, 25), 1e-12);
    }
}
