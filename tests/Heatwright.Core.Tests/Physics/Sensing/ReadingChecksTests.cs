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

    /// <summary>Exactly at a limit nothing is said: the rules ask for more than it. Values that a double holds exactly.</summary>
    [Fact]
    public void A_reading_exactly_at_its_limit_passes()
    {
        Assert.False(ReadingChecks.PowerDisagrees(4, 2, 9.5, 0.5));
        Assert.True(ReadingChecks.PowerDisagrees(4, 2, 6.4, 0.5));               // noted too low counts as well
        Assert.False(ReadingChecks.ResistanceFell(0.98, 1));
        Assert.False(ReadingChecks.ResistanceRisesMuch(1.2, 1));
        Assert.False(ReadingChecks.FallsUnderPower(200, 200, isPowered: true, isWorking: false));
        Assert.False(ReadingChecks.ColderThanAir(20, 22));
        Assert.False(ReadingChecks.NotColdAtStart(25, 22));
        Assert.False(ReadingChecks.NotColdAtStart(19, 22));
        Assert.False(ReadingChecks.NotAPlateau(0.02, 100, 100));
        Assert.False(ReadingChecks.TimesDoNotFit(2.5, 2, 0.25));
        Assert.True(ReadingChecks.TimesDoNotFit(2, 2.5, 0.24));
        Assert.False(ReadingChecks.FasterThanPower(3, 4, 12));
        Assert.False(ReadingChecks.EnergyFromNowhere(100, 100));
        Assert.False(ReadingChecks.SupplyLimits(0.98, 1));
        Assert.False(ReadingChecks.Sagged(100, 97));
        Assert.False(ReadingChecks.PolarityReversed(0, 20));
        Assert.False(ReadingChecks.PolarityReversed(1e-3, 20));
        Assert.False(ReadingChecks.NotACoupleSlope(5e-6));
        Assert.False(ReadingChecks.NotACoupleSlope(90e-6));
        Assert.False(ReadingChecks.LoopIsOpen(200, 205));
        Assert.True(ReadingChecks.LoopIsOpen(205.1, 200));
        Assert.False(ReadingChecks.ColdOutputIsOdd(5e-3));
        Assert.False(ReadingChecks.ColdOutputIsOdd(20e-3));
        Assert.False(ReadingChecks.JumpsWithHeater(320, 300));
        Assert.True(ReadingChecks.JumpsWithHeater(299, 320));
        Assert.False(ReadingChecks.AirMoved(20, 23));
        Assert.False(ReadingChecks.OneReadingCannotDecide(1, 0.2));
        Assert.False(ReadingChecks.OneReadingCannotDecide(1, 0.8));
        Assert.True(ReadingChecks.OneReadingCannotDecide(1, 0.79));
        Assert.True(ReadingChecks.OneReadingCannotDecide(1, 0.21));
        Assert.False(ReadingChecks.OneReadingCannotDecide(0, 0.5));
        Assert.False(ReadingChecks.StartUnknown(0.99, 1, 1800));
        Assert.True(ReadingChecks.StartUnknown(1, 1, 1799));
        Assert.False(ReadingChecks.InstrumentsDisagree(10, 3, 15, 4));           // 5/√(9 + 16) = 1
        Assert.True(ReadingChecks.InstrumentsDisagree(10, 3, 15.1, 4));
        Assert.True(ReadingChecks.InstrumentsDisagree(15.1, 3, 10, 4));
    }

    [Fact]
    public void S13_wants_three_readings_and_a_display_finer_than_the_scatter()
    {
        Assert.False(ReadingChecks.LooksFrozen([5.21, 5.21], 0.01, 0.05));
        Assert.False(ReadingChecks.LooksFrozen([5.2, 5.2, 5.2], 0.05, 0.05));
        Assert.True(ReadingChecks.TimesOutOfOrder([20, 10]));
        Assert.False(ReadingChecks.TimesOutOfOrder([10]));
        Assert.True(ReadingChecks.TimesOutOfOrder([10, 9, 30]));
        Assert.False(ReadingChecks.TimesOutOfOrder([0.1, 0.2, 0.3]));
    }

    /// <summary>35 doubled is 70: above it, not at it; −71 is as far from zero; from zero everything is a first reading.</summary>
    [Theory]
    [InlineData(70, 35, false)]
    [InlineData(71, 35, true)]
    [InlineData(-71, 35, true)]
    [InlineData(71, -35, true)]
    [InlineData(71, 0, false)]
    [InlineData(1.6, 0.75, true)]
    public void S22_more_than_doubled(double reading, double before, bool slip) => Assert.Equal(slip, ReadingChecks.DoubledFromNowhere(reading, before, powerChanged: false));

    /// <summary>Grubbs' limit at 5 %, two sides, for n readings: 1.1543 (3), 1.481 (4), 1.715 (5). By hand: −10, 1, 2, 1: mean −1.5, squares 72.25 + 6.25 + 12.25 + 6.25 = 97,
    /// s = √(97/3) = 5.686; 8.5/5.686 = 1.4948. 0, 1, 2, 5: mean 2, s = √(14/3) = 2.1602; 3/2.1602 = 1.3887.</summary>
    [Fact]
    public void S23_finds_low_outliers_and_leaves_plain_scatter()
    {
        Assert.Equal(0, ReadingChecks.Outlier([-10, 1, 2, 1]));
        Assert.Equal(-1, ReadingChecks.Outlier([0, 1, 2, 5]));
        Assert.Equal(-1, ReadingChecks.Outlier([1, 2, 3]));
        Assert.Equal(1, ReadingChecks.Outlier([105, 20, 104, 105, 106]));        // a low one far from zero
        Assert.Equal(-1, ReadingChecks.Outlier([1.12, 1.13, 1.12], 0.01));       // one last digit
        Assert.Equal(-1, ReadingChecks.Outlier([1.12, 1.14, 1.12], 0.01));
        Assert.Equal(1, ReadingChecks.Outlier([1.12, 1.15, 1.12], 0.01));
        Assert.Equal(2, ReadingChecks.Outlier([0, 0, 1]));                       // 0.6667/0.57735 = 1.15470 above 1.1543
    }

    /// <summary>Log₁₀ 2 = 0.301: half or twice of a thousand is not a thousand, 1.9 times is; and the sign does not matter.</summary>
    [Theory]
    [InlineData(1900, 1, true)]
    [InlineData(2001, 1, false)]
    [InlineData(530, 1, true)]
    [InlineData(499, 1, false)]
    [InlineData(-1000, 1, true)]
    [InlineData(0.00053, 1, true)]
    [InlineData(0.0004, 1, false)]
    public void S29_a_thousand_within_a_factor_of_two(double value, double expected, bool slip) => Assert.Equal(slip, ReadingChecks.OffByAThousand(value, expected));

    /// <summary>221 °F is 105 °C: exactly one doubt off, 222 °F is 105.6 °C. A value three doubts off is no slip at all.</summary>
    [Theory]
    [InlineData(221, 100, 5, true)]
    [InlineData(222, 100, 5, false)]
    [InlineData(203, 100, 5, true)]
    [InlineData(202, 100, 5, false)]
    [InlineData(50, 20, 10, false)]
    [InlineData(51, 20, 10, true)]
    [InlineData(50, 20, 9.9, false)]
    [InlineData(-40, -20, 20, false)]
    public void S29_within_one_doubt_of_Fahrenheit(double value, double expected, double doubt, bool slip) => Assert.Equal(slip, ReadingChecks.LooksLikeFahrenheit(value, expected, doubt));
}
