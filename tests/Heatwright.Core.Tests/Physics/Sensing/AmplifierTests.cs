using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Check values by a second program (Python), or by hand where it is written out.</summary>
public class AmplifierTests
{
    [Fact]
    public void Gain_is_one_plus_the_ratio() => Assert.Equal(101, Amplifier.Gain(100e3, 1e3), 1e-12);

    [Fact]
    public void A_difference_amplifier_rejects_as_well_as_its_resistors_match()
    {
        Assert.Equal(56, Amplifier.DifferenceGain(56e3, 1e3), 1e-12);
        double rejection = Amplifier.WorstCommonModeRejection(56, 0.01);
        Assert.Equal(1425, rejection, 1e-9);
        Assert.Equal(63.08, 20 * Math.Log10(rejection), 0.005);
    }

    [Fact]
    public void A_finite_loop_gain_takes_a_little() => Assert.Equal(55.968658, Amplifier.GainWithFiniteLoop(56, 1e5), 5.1e-7);

    [Fact]
    public void Tolerance_spreads_the_gain()
    {
        Assert.Equal(59.064516, Amplifier.Gain(36e3, 620), 5.1e-7);
        Assert.Equal(57.914724, Amplifier.SmallestGain(36e3, 620, 0.01), 5.1e-7);
        Assert.Equal(60.237537, Amplifier.LargestGain(36e3, 620, 0.01), 5.1e-7);
        Assert.Equal(0.0196, Amplifier.GainErrorShare(56, 0.01), 5.1e-5);
    }

    [Fact]
    public void The_first_order_gain_error_is_half_of_the_spread() => Gen.Select(Gen.Double[1e3, 1e6], Gen.Double[100, 1e4], Gen.Double[1e-4, 0.01]).Sample((feedback, ground, tolerance) =>
    {
        double gain = Amplifier.Gain(feedback, ground);
        double half = (Amplifier.LargestGain(feedback, ground, tolerance) - Amplifier.SmallestGain(feedback, ground, tolerance)) / (2 * gain);
        return Math.Abs((half / Amplifier.GainErrorShare(gain, tolerance)) - 1) < 2.1 * tolerance * tolerance + 1e-9;
    });

    [Fact]
    public void Offset_is_amplified_and_bias_currents_add_theirs()
    {
        Assert.Equal(8.4e-3, Amplifier.OutputOffsetV(150e-6, 56, 0, 0, 0, 0), 1e-12);
        // By hand: 1 µA·1 kΩ·56 − 1 µA·56 kΩ = 0: equal currents cancel where the resistances match.
        Assert.Equal(0, Amplifier.OutputOffsetV(0, 56, 1e-6, 1e3, 1e-6, 56e3), 1e-12);
        Assert.Equal(56e-3, Amplifier.OutputOffsetV(0, 56, 1e-6, 1e3, 0, 56e3), 1e-12);
    }

    [Fact]
    public void Bandwidth_and_settling_follow_the_gain()
    {
        double hz = Amplifier.BandwidthHz(1e6, 56);
        Assert.Equal(17857, hz, 0.5);
        Assert.Equal(8.912677e-6, Amplifier.TimeConstantS(hz), 5.1e-13);
        Assert.Equal(67.95577e-6, Amplifier.SettlingS(Amplifier.TimeConstantS(hz), 10), 1e-11);   // by hand: 8.912677 µs · 11 · 0.69314718
    }

    [Fact]
    public void After_the_settling_time_half_a_step_is_left() => Gen.Select(Gen.Double[1e-6, 1], Gen.Int[4, 24]).Sample((tau, bits) =>
        Math.Abs((Math.Exp(-Amplifier.SettlingS(tau, bits) / tau) * Math.Pow(2, bits)) - 0.5) < 1e-6);

    [Fact]
    public void A_filter_of_10_k_and_100_nF()
    {
        Assert.Equal(159.15494, Amplifier.FilterCornerHz(10e3, 100e-9), 5.1e-6);
        Assert.Equal(1e-3, Amplifier.TimeConstantS(Amplifier.FilterCornerHz(10e3, 100e-9)), 1e-15);
        Assert.Equal(7.6246e-3, Amplifier.SettlingS(1e-3, 10), 5.1e-8);
    }

    [Fact]
    public void Noise_of_a_resistor_and_of_a_stage()
    {
        Assert.Equal(12.828615e-9, Amplifier.ResistorNoiseVPerRootHz(10e3, 298), 5.1e-15);
        Assert.Equal(281.3e-6, Amplifier.OutputNoiseV(30e-9, 56, 17857.142857), 0.1e-6);   // the second program rounds π/2 to 1.57
    }

    [Fact]
    public void An_output_stays_inside_its_rails()
    {
        Assert.Equal(0.02, Amplifier.WithinRailsV(-0.5, 0.02, 3.3, 0.05));
        Assert.Equal(3.25, Amplifier.WithinRailsV(4, 0.02, 3.3, 0.05), 1e-12);
        Assert.Equal(1.5, Amplifier.WithinRailsV(1.5, 0.02, 3.3, 0.05));
    }

    /// <summary>100 nA through 10 kΩ is 1 mV: 24 K at 41.9 µV/K, by hand.</summary>
    [Fact]
    public void Leakage_of_a_clamp_is_an_offset() => Assert.Equal(24, Amplifier.ClampOffsetV(100e-9, 10e3) / 41.9e-6, 0.2);

    /// <summary>Invented reading: about 1.6 V near 420 °C, cold end 25 °C (second program).</summary>
    [Theory]
    [InlineData("K", 98.50491)]
    [InlineData("N", 122.5088)]
    [InlineData("J", 73.82024)]
    [InlineData("E", 55.06841)]
    public void An_output_implies_a_gain_for_each_type(string type, double gain) =>
        Assert.Equal(gain, Heatwright.Handbook.Thermocouples.GainPerType(1.6, 420, 25)[type], gain * 6e-7);

    [Fact]
    public void A_sensor_without_voltage_implies_no_gain() => Assert.Throws<ArgumentOutOfRangeException>(() => Amplifier.ImpliedGain(1, 0));

    [Fact]
    public void Speed_noise_and_offsets_in_plain_numbers()
    {
        AmplifierSpeed speed = Amplifier.Speed(1e6, 50);
        Assert.Equal(20e3, speed.BandwidthHz, 1e-9);
        Assert.Equal(1 / (Math.PI * 40e3), speed.TimeConstantS, 1e-15);
        Assert.Equal(10e-3 * Math.Log(2), Amplifier.SettlingS(1e-3, 9), 1e-12);
        Assert.Equal(500 / Math.PI, Amplifier.FilterCornerHz(1e3, 1e-6), 1e-9);
        // √(4·1.380649e-23·300·1e4) = 12.87159 nV/√Hz; ten times that in 100 Hz.
        Assert.Equal(128.71592e-9, Amplifier.ResistorNoiseV(1e4, 26.85, 100), 5e-13);
        Assert.Equal(0.3 + 0.2 - 0.1, Amplifier.OutputOffsetV(3e-3, 100, 2e-9, 1e6, 1e-6, 1e5), 1e-12);
        Assert.Equal(1e-3, Amplifier.ClampOffsetV(1e-7, 1e4), 1e-15);
        Assert.Equal((0.1, 1, 4.5), (Amplifier.WithinRailsV(-1, 0.1, 5, 0.5), Amplifier.WithinRailsV(1, 0.1, 5, 0.5), Amplifier.WithinRailsV(9, 0.1, 5, 0.5)));
    }
}
