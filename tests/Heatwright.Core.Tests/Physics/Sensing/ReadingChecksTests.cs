using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Each rule just inside and just outside its threshold, by hand. Thresholds: common practice, no source.</summary>
public class ReadingChecksTests
{
    [Fact]
    public void S01_volts_times_amps_against_the_noted_power()
    {
        Assert.True(ReadingChecks.PowerDisagrees(5, 1, 5.31, 0.1));
        Assert.False(ReadingChecks.PowerDisagrees(5, 1, 5.29, 0.1));
    }

    [Fact]
    public void S02_and_S03_hot_resistance_against_cold()
    {
        Assert.True(ReadingChecks.ResistanceFell(1.95, 2));
        Assert.False(ReadingChecks.ResistanceFell(1.97, 2));
        Assert.True(ReadingChecks.ResistanceRisesMuch(2.41, 2));
        Assert.False(ReadingChecks.ResistanceRisesMuch(2.39, 2));
    }

    [Fact]
    public void S04_falling_under_power_unless_it_works()
    {
        Assert.True(ReadingChecks.FallsUnderPower(200, 199, isPowered: true, isWorking: false));
        Assert.False(ReadingChecks.FallsUnderPower(200, 199, isPowered: true, isWorking: true));
        Assert.False(ReadingChecks.FallsUnderPower(200, 199, isPowered: false, isWorking: false));
        Assert.False(ReadingChecks.FallsUnderPower(199, 200, isPowered: true, isWorking: false));
    }

    [Fact]
    public void S05_and_S06_the_cold_tip_and_the_air()
    {
        Assert.True(ReadingChecks.ColderThanAir(19.9, 22));
        Assert.False(ReadingChecks.ColderThanAir(20.1, 22));
        Assert.True(ReadingChecks.NotColdAtStart(25.1, 22));
        Assert.True(ReadingChecks.NotColdAtStart(18.9, 22));
        Assert.False(ReadingChecks.NotColdAtStart(24.9, 22));
    }

    [Fact]
    public void S07_a_plateau_that_still_rises()
    {
        Assert.Equal(6, ReadingChecks.StillToRiseK(0.05, 120), 1e-12);
        Assert.True(ReadingChecks.NotAPlateau(0.05, 120, 290));
        Assert.False(ReadingChecks.NotAPlateau(0.05, 120, 310));
    }

    [Fact]
    public void S08_to_S11_times_power_and_energy()
    {
        Assert.True(ReadingChecks.TimesOutOfOrder([10, 20, 20]));
        Assert.False(ReadingChecks.TimesOutOfOrder([10, 20, 21]));
        Assert.False(ReadingChecks.TimesOutOfOrder([]));
        Assert.True(ReadingChecks.TimesDoNotFit(2.5, 2.2, 0.14));
        Assert.False(ReadingChecks.TimesDoNotFit(2.5, 2.2, 0.16));
        Assert.True(ReadingChecks.FasterThanPower(3, 4, 11.9));
        Assert.False(ReadingChecks.FasterThanPower(3, 4, 12.1));
        Assert.True(ReadingChecks.EnergyFromNowhere(101, 100));
        Assert.False(ReadingChecks.EnergyFromNowhere(99, 100));
    }

    [Theory]
    [InlineData(new[] { 50.0, 120, 300 }, 10)]
    [InlineData(new[] { 50.0, 125, 300 }, 5)]
    [InlineData(new[] { 50.0, 126, 300 }, 0)]
    [InlineData(new[] { 50.0, 120 }, 0)]
    public void S12_readings_that_look_rounded(double[] readings, double step) => Assert.Equal(step, ReadingChecks.LooksRoundedTo(readings));

    [Fact]
    public void S13_a_frozen_display()
    {
        Assert.True(ReadingChecks.LooksFrozen([5.21, 5.21, 5.21], 0.01, 0.05));
        Assert.False(ReadingChecks.LooksFrozen([5.21, 5.21, 5.22], 0.01, 0.05));
        Assert.False(ReadingChecks.LooksFrozen([5.2, 5.2, 5.2], 0.1, 0.05));
    }

    [Fact]
    public void S14_and_S15_the_supply()
    {
        Assert.True(ReadingChecks.SupplyLimits(4.89, 5));
        Assert.False(ReadingChecks.SupplyLimits(4.91, 5));
        Assert.True(ReadingChecks.Sagged(8.0, 7.75));
        Assert.False(ReadingChecks.Sagged(8.0, 7.77));
    }

    [Fact]
    public void S16_to_S18_the_sensor()
    {
        Assert.True(ReadingChecks.PolarityReversed(-1e-3, 20));
        Assert.False(ReadingChecks.PolarityReversed(-1e-3, -20));
        Assert.True(ReadingChecks.NotACoupleSlope(4.9e-6));
        Assert.True(ReadingChecks.NotACoupleSlope(91e-6));
        Assert.True(ReadingChecks.NotACoupleSlope(double.NaN));
        Assert.False(ReadingChecks.NotACoupleSlope(41e-6));
        Assert.True(ReadingChecks.LoopIsOpen(200, 205.1));
        Assert.False(ReadingChecks.LoopIsOpen(200, 204.9));
    }

    [Fact]
    public void S20_to_S22_outputs_and_jumps()
    {
        Assert.True(ReadingChecks.ColdOutputIsOdd(0.0205));
        Assert.True(ReadingChecks.ColdOutputIsOdd(0.0045));
        Assert.False(ReadingChecks.ColdOutputIsOdd(0.012));
        Assert.True(ReadingChecks.JumpsWithHeater(320, 299));
        Assert.False(ReadingChecks.JumpsWithHeater(320, 301));
        Assert.True(ReadingChecks.DoubledFromNowhere(350, 35, powerChanged: false));
        Assert.False(ReadingChecks.DoubledFromNowhere(350, 35, powerChanged: true));
        Assert.False(ReadingChecks.DoubledFromNowhere(60, 35, powerChanged: false));
    }

    /// <summary>By hand: 1, 2, 3, 2, 1, 10: mean 3.1667, s 3.4303, (10 − mean)/s = 1.9921 above Grubbs' 1.8871 for six.</summary>
    [Fact]
    public void S23_an_outlier_by_Grubbs()
    {
        Assert.Equal(5, ReadingChecks.Outlier([1, 2, 3, 2, 1, 10]));
        Assert.Equal(-1, ReadingChecks.Outlier([1, 2, 3, 2, 1, 4]));
        Assert.Equal(-1, ReadingChecks.Outlier([1, 100]));
    }

    [Fact]
    public void S25_S27_S28_limits_air_and_single_readings()
    {
        Assert.True(ReadingChecks.BeyondLimit(301, 300));
        Assert.False(ReadingChecks.BeyondLimit(300, 300));
        Assert.True(ReadingChecks.AirMoved(20, 23.1));
        Assert.False(ReadingChecks.AirMoved(20, 22.9));
        Assert.True(ReadingChecks.OneReadingCannotDecide(1, 0.5));
        Assert.False(ReadingChecks.OneReadingCannotDecide(3, 0.5));
        Assert.False(ReadingChecks.OneReadingCannotDecide(1, 0.85));
    }

    [Theory]
    [InlineData(1270, 1.27, true)]
    [InlineData(0.0013, 1.27, true)]
    [InlineData(1.3, 1.27, false)]
    [InlineData(130, 1.27, false)]
    public void S29_a_factor_of_a_thousand(double value, double expected, bool slip) => Assert.Equal(slip, ReadingChecks.OffByAThousand(value, expected));

    /// <summary>By hand: 212 °F is 100 °C.</summary>
    [Fact]
    public void S29_degrees_Fahrenheit()
    {
        Assert.True(ReadingChecks.LooksLikeFahrenheit(212, 100, 5));
        Assert.False(ReadingChecks.LooksLikeFahrenheit(102, 100, 5));
        Assert.False(ReadingChecks.LooksLikeFahrenheit(300, 100, 5));
    }

    [Fact]
    public void S30_a_battery_trial_that_began_anywhere()
    {
        Assert.True(ReadingChecks.StartUnknown(4.10, 4.20, 3600));
        Assert.True(ReadingChecks.StartUnknown(4.19, 4.20, 1700));
        Assert.False(ReadingChecks.StartUnknown(4.19, 4.20, 1900));
    }
}
