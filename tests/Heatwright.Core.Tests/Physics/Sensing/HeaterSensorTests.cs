using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Check values by a second program (Python), or by hand where it is written out.</summary>
public class HeaterSensorTests
{
    [Fact]
    public void A_heater_tells_its_own_temperature()
    {
        Assert.Equal(350, HeaterSensor.TemperatureC(2.2 * 1.495, 2.2, 1.5e-3, 20), 1e-9);   // by hand: 0.495/1.5e-3 + 20
        Assert.Equal(184.091, HeaterSensor.TemperatureC(3.60, 2.20, 4.0e-3, 25), 5.1e-4);
        Assert.Equal(169.628, HeaterSensor.TemperatureC(3.60, 2.20, 4.4e-3, 25), 5.1e-4);
    }

    [Fact]
    public void A_percent_of_resistance_is_several_kelvin()
    {
        Assert.Equal(9.97, HeaterSensor.ErrorK(0.01, 1.495, 1.5e-3), 0.005);
        Assert.Equal(5.7500, HeaterSensor.ErrorK(0.01, 2.3, 4.0e-3), 5e-5);
    }

    [Fact]
    public void A_coefficient_moves_with_its_reference()
    {
        Assert.Equal(4.08163e-3, HeaterSensor.ReferredPerK(4.0e-3, 25, 20), 5e-9);
        Assert.Equal(4.26525e-3, HeaterSensor.ReferredPerK(3.93e-3, 20, 0), 5e-9);
    }

    [Fact]
    public void The_temperature_does_not_depend_on_the_reference_chosen() =>
        Gen.Select(Gen.Double[1e-3, 6e-3], Gen.Double[0, 40], Gen.Double[50, 500]).Sample((perK, referenceC, tC) =>
        {
            double cold = 2.0, atReference = cold * (1 + (perK * (referenceC - 20))), hot = cold * (1 + (perK * (tC - 20)));
            double moved = HeaterSensor.TemperatureC(hot, atReference, HeaterSensor.ReferredPerK(perK, 20, referenceC), referenceC);
            return Math.Abs(moved - tC) < 1e-8;
        });

    /// <summary>Type K at 350 °C, 41.9 µV/K, 2.2 Ω in the loop.</summary>
    [Theory]
    [InlineData(1e-3, 52.5, 0.05)]
    [InlineData(84e-6, 4.41, 0.005)]
    [InlineData(1e-6, 0.05, 0.005)]
    public void Current_left_in_the_loop_reads_as_temperature(double currentA, double errorK, double tolerance) =>
        Assert.Equal(errorK, HeaterSensor.SeriesErrorK(currentA, 2.2, 41.9e-6), tolerance);

    [Fact]
    public void A_pull_up_of_100_k_from_two_full_cells_leaves_84_microamperes() => Assert.Equal(84e-6, HeaterSensor.PullUpA(8.4, 100e3), 1e-12);
}
