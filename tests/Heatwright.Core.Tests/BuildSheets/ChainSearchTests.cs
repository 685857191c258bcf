using Heatwright.BuildSheets;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Sensing chain: type K, tip 450 °C, cold end 10 °C, offset 0.15 mV, reference 1.1 V −1 %, ground 470 Ω to 4.7 kΩ, feedback 10 to 330 kΩ.</summary>
/// <remarks>Expected pairs and counts of feasible pairs: worked example computed for this trade's handbook with an independent script; the signal 18.11895 mV is
/// E(450) − E(10) of the published type K table [nist-srd60] (18.516 − 0.397).</remarks>
public sealed class ChainSearchTests
{
    private static readonly ChainWanted Wanted = new(Thermocouples.TypeK, 450, 10, 50, 1.1, 0.01, 10) { SupplyLeastV = 3.2, OffsetV = 150e-6, FloorV = 0 };

    [Fact]
    public void The_largest_gain_allowed_is_reference_over_signal() => Assert.Equal(59.60935, Wanted.LargestGain, 1e-4);

    [Theory]
    [InlineData("E24", 0.01, 27_000, 470, 58.4468, 571)]
    [InlineData("E96", 0.01, 78_700, 1_370, 58.4453, 8599)]
    [InlineData("E24", 0.001, 36_000, 620, 59.0645, 573)]
    [InlineData("E96", 0.001, 162_000, 2_800, 58.8571, 8688)]
    public void The_worked_pairs_are_found(string series, double tolerance, double feedback, double ground, double gain, int feasible)
    {
        var chain = ChainSearch.FromSeries(Wanted with { Tolerance = tolerance }, series).Value;
        Assert.Equal(gain, chain.Pair.Gain, 1e-4);
        Assert.Equal(feedback / ground, chain.Pair.FeedbackOhm / chain.Pair.GroundOhm, 1e-9); // 270 k over 4.7 k is the same gain as 27 k over 470
        Assert.Equal(feasible, chain.FeasiblePairs);
    }

    [Fact]
    public void The_choice_is_the_best_of_plain_nested_loops()
    {
        // Second method: every pair, written without the search's own functions; E24 spelled out from IEC 60063.
        double[] e24 = [1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1];
        double best = 0;
        foreach (double f in e24.SelectMany(v => new[] { v * 1e4, v * 1e5 }).Where(v => v <= 330_001))
        {
            foreach (double g in e24.SelectMany(v => new[] { v * 100, v * 1000 }).Where(v => v is >= 469.9 and <= 4700.1))
            {
                double top = 1 + (f * 1.01 / (g * 0.99));
                bool parallel = 1 / ((1 / f) + (1 / g)) <= 2000;
                if (top * (0.01811895 + 150e-6) <= 1.089 && parallel && 1 + (f / g) > best)
                {
                    best = 1 + (f / g);
                }
            }
        }

        Assert.Equal(best, ChainSearch.FromSeries(Wanted with { MostParallelOhm = 2000 }, "E24").Value.Pair.Gain, 1e-9);
    }

    [Fact]
    public void A_chosen_chain_never_clips_with_every_part_at_its_bad_end()
    {
        var wanted = Wanted with { OutputBiasV = 0.015, Share = 0.95, FloorV = 0.02 };
        var chain = ChainSearch.FromSeries(wanted, "E24").Value;
        double worstV = 0.015 + ((0.01811895 + 150e-6) * (1 + (chain.Pair.FeedbackOhm * 1.01 / (chain.Pair.GroundOhm * 0.99))));
        Assert.InRange(worstV, 0.5 * 1.089, 1.089);
        Assert.True(chain.CountAt(450, 10) < chain.FullCount);
        Assert.True(chain.SaturatesC(10) > 450);
    }

    [Fact]
    public void Settling_at_a_gain_of_56_takes_68_microseconds()
    {
        // 1 MHz over 56 is 17.857 kHz, τ 8.912677 µs, 11·ln 2 (7.624619) of it 67.95576 µs: by hand from the first-order step response.
        var chain = new SensorChain(Wanted with { BandwidthHz = 1e6 }, "hand", new GainPair(55_000, 1_000, 56, 57, 1), 1);
        Assert.Equal(67.95576e-6, chain.SettleS, 1e-10);
        Assert.Equal(1.1 / 1024 / 56, 1 / chain.CountsPerV, 1e-12);
    }

    [Fact]
    public void A_window_waits_twice_what_it_takes_and_caps_the_duty()
    {
        var chain = new SensorChain(Wanted with { BandwidthHz = 1e6 }, "hand", new GainPair(55_000, 1_000, 56, 57, 1), 1);
        // Filter 1 kΩ and 100 nF, 0.7 V left, half a step at the input is 1.1/2048/56 = 9.59124 µV: 100 µs·ln(72983.3) = 1.119798 ms, by hand.
        var window = ReadWindow.Of(chain, 1000, 100e-9, 0.7, 50e-6, 160e-6, 0.1);
        Assert.Equal(50e-6 + 1.119798e-3 + 67.9556e-6, window.SettleS, 2e-8);
        Assert.Equal(2 * window.SettleS, window.WaitS, 1e-12);
        Assert.Equal(1 - ((window.WaitS + 160e-6) / 0.1), window.MostDuty, 1e-12);
        Assert.Equal(0, ReadWindow.Of(chain, 1000, 100e-9, 0.7, 50e-6, 160e-6, 0.002).MostDuty);
    }

    [Theory]
    [InlineData(0.06, "room")]
    [InlineData(3.2, "")]
    public void A_rail_too_low_is_told_with_a_way_out(double supply, string word)
    {
        var found = ChainSearch.FromSeries(Wanted with { SupplyLeastV = supply, FloorV = 0.02, HeadroomV = 0.05 }, "E24");
        Assert.Equal(word.Length == 0, found.IsFine);
        if (word.Length > 0)
        {
            Assert.Contains(word, found.Problems[0].What, StringComparison.Ordinal);
            Assert.Contains("V or more", found.Problems[0].Next, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_tip_hotter_than_its_type_knows_is_refused() =>
        Assert.Contains("Type T", ChainSearch.FromSeries(Wanted with { Curve = Thermocouples.TypeT }, "E24").Problems[0].What, StringComparison.Ordinal);

    [Fact]
    public void A_drawer_gives_its_best_pair_and_a_poor_drawer_the_nearest_to_buy()
    {
        var drawer = ResistorDrawer.Parse("value,count\n47k,3\n1k,2\n820,1\n100,5\n", "drawer.csv").Value;
        var chain = ChainSearch.FromDrawer(Wanted, drawer).Value;
        Assert.Equal((47_000, 820), (chain.Pair.FeedbackOhm, chain.Pair.GroundOhm)); // 58.3 with 1 % inside 59.6; 47 k over 1 k is 48, over 100 too much
        var poor = ChainSearch.FromDrawer(Wanted, ResistorDrawer.Parse("1k,9", "drawer.csv").Value);
        Assert.False(poor.IsFine);
        Assert.Contains("27 kΩ", poor.Problems[0].Next.Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pair_of_one_value_needs_two_pieces()
    {
        // Gain 2 is all that 10 k and 10 k can make; a signal of 0.5 V leaves room for just that.
        var weak = Wanted with { Curve = Thermocouples.TypeK, HottestC = 1300, ReferenceV = 0.15, ReferenceShare = 0.01, OutputBiasV = 0 };
        Assert.Equal(2, ChainSearch.FromDrawer(weak, ResistorDrawer.Parse("10k,2", "d").Value).Value.Pair.Gain, 1e-12);
        Assert.False(ChainSearch.FromDrawer(weak, ResistorDrawer.Parse("10k,1\n1M,1", "d").Value).IsFine);
    }

    [Theory]
    [InlineData("4k7", 4700)]
    [InlineData("4R7", 4.7)]
    [InlineData("120 k", 120_000)]
    [InlineData("1M", 1_000_000)]
    [InlineData("470", 470)]
    public void Labels_of_resistors_are_read(string label, double ohm) => Assert.Equal(ohm, ResistorDrawer.Parse(label, "d").Value.Resistors[0].Ohm, 1e-9);

    [Theory]
    [InlineData("4k7,two")]
    [InlineData("470\nblue")]
    [InlineData("-5")]
    [InlineData("")]
    public void What_is_no_drawer_is_refused(string text) => Assert.False(ResistorDrawer.Parse(text, "drawer.csv").IsFine);

    [Fact]
    public void A_difference_amplifier_has_the_ratio_as_its_gain()
    {
        var chain = ChainSearch.FromSeries(Wanted with { Form = AmplifierForm.Difference }, "E24").Value;
        Assert.Equal(chain.Pair.FeedbackOhm / chain.Pair.GroundOhm, chain.Pair.Gain, 1e-12);
        Assert.True(chain.Pair.FeedbackOhm * 1.01 / (chain.Pair.GroundOhm * 0.99) <= 59.60936);
    }

    [Fact]
    public void The_error_budget_is_the_worked_one_before_and_after_calibration()
    {
        // Tip 350 °C, cold end 30 °C, gain 56, 10 bits of 1.1 V: worst 19.52883, root of squares 8.529934, u 4.924760, drawn 95 % 9.431, after two points
        // against a probe of ±2 °C (k = 2) 1.729623 K. Computed for the trade's handbook by an independent script.
        var chain = new SensorChain(Wanted, "hand", new GainPair(55_000, 1_000, 56, 57, 1), 1);
        var limits = new ChainLimits(150e-6, 2e-6, 15, 1e-9, 1000, 0.01, 0.01, 2.5, 2, 0.0075, 2.5, 10e-6);
        var raw = ChainBudget.Raw(chain, 350, 30, limits, seed: 3);
        Assert.Equal(19.52883, raw.WorstK, 5e-4);
        Assert.Equal(8.529934, raw.RootSumK, 5e-4);
        Assert.Equal(4.924760, raw.StandardK, 5e-4);
        Assert.Equal(9.431, raw.DrawnK, 0.15); // 20 000 draws
        double slope = Thermocouples.TypeK.SlopeVPerK(350);
        double signal = ColdJunction.VoltageV(Thermocouples.TypeK, 350, 30);
        Assert.Equal(1.729623, ChainBudget.TwoPoint(raw, 15e-6, slope, 0.001, signal, 1, seed: 3).StandardK, 5e-3);
        Assert.InRange(ChainBudget.OnePoint(raw, 15e-6, slope, seed: 3).StandardK, 4.4, 4.6); // only the offset of 2.07 goes, 0.21 comes: √(4.92476² − 2.0666² + 0.2067²) = 4.475
    }
}
