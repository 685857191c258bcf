using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Loads at one instant, by hand. The table: 0.5 A at 2 V, 2.5 A at 6 V; so I = V/4 up to 2 V and I = V/2 − 0.5 above.</summary>
public class LoadLawTests
{
    private static readonly VoltsAmpsTable Table = new([2, 6], [0.5, 2.5]);
    private static readonly LoadLaw Load = LoadLaw.Of(Table);

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, 0)]
    [InlineData(1, 0.25)]
    [InlineData(2, 0.5)]
    [InlineData(4, 1.5)]
    [InlineData(6, 2.5)]
    [InlineData(9, 2.5)]
    public void A_table_is_straight_from_zero_and_flat_after_its_end(double volts, double amps)
    {
        Assert.Equal(amps, Table.AmpsAt(volts), 1e-12);
        Assert.Equal(amps, Load.AmpsAt(volts), 1e-12);
    }

    [Theory]
    [InlineData(1, 2, 2 / 3.0)]  // 1 − 2·V/4 = V
    [InlineData(3, 2, 2)]        // 3 − 2·0.5, the point itself
    [InlineData(8, 2, 4.5)]      // 8 − 2·(V/2 − 0.5) = V
    [InlineData(11, 2, 6)]       // the last point
    [InlineData(20, 2, 15)]      // 20 − 2·2.5
    [InlineData(4, 0, 4)]
    public void A_source_meets_the_table(double open, double ohm, double volts) => Assert.Equal(volts, Load.VoltsBehind(open, ohm), 1e-12);

    [Theory]
    [InlineData(0.25, 1)]   // V²/4
    [InlineData(1, 2)]
    [InlineData(6, 4)]      // V²/2 − V/2 = 6
    [InlineData(15, 6)]
    [InlineData(25, 10)]    // 2.5 A
    public void A_table_takes_a_power_at_a_voltage(double watts, double volts) => Assert.Equal(volts, Load.VoltsFor(watts), 1e-12);

    [Theory]
    [InlineData(-0.1, 0)]
    [InlineData(0, 0)]
    [InlineData(0.25, 1)]
    [InlineData(0.5, 2)]
    [InlineData(1.5, 4)]
    [InlineData(2.5, 6)]
    [InlineData(2.6, double.NaN)]
    public void A_table_takes_a_current_at_a_voltage(double amps, double volts) => Assert.Equal(volts, Load.VoltsForAmps(amps), 1e-12);

    [Fact]
    public void A_level_piece_is_a_constant_current()
    {
        VoltsAmpsTable level = new([1, 3], [2, 2]);
        Assert.Equal(2, level.AmpsAt(2));
        Assert.Equal(2, LoadLaw.Of(level).VoltsFor(4), 1e-12);
        Assert.Equal(2.5, LoadLaw.Of(level).VoltsBehind(4.5, 1), 1e-12);
        Assert.Equal(1, LoadLaw.Of(level).VoltsForAmps(2), 1e-12);
        // One point alone: half an ampere at 2 V and above.
        VoltsAmpsTable one = new([2], [0.5]);
        Assert.Equal(10, LoadLaw.Of(one).VoltsFor(5), 1e-12);
        Assert.Equal(double.PositiveInfinity, LoadLaw.Of(new VoltsAmpsTable([2], [0])).VoltsFor(5));
        Assert.Equal(double.NaN, Load.VoltsBehind(-1, 2));
        Assert.Equal(double.NaN, Load.VoltsBehind(0, 2));
        Assert.Equal(0.25, Load.VoltsBehind(0.375, 2), 1e-12);
    }

    [Fact]
    public void A_table_that_falls_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new VoltsAmpsTable([2, 2], [1, 2]));
        Assert.Throws<ArgumentException>(() => new VoltsAmpsTable([0, 2], [1, 2]));
        Assert.Throws<ArgumentException>(() => new VoltsAmpsTable([1, 2], [1, 0.9]));
        Assert.Throws<ArgumentException>(() => new VoltsAmpsTable([double.NaN], [1]));
        Printed.Refuses("amps", () => new VoltsAmpsTable([1, 2], [-1, 1]));
        Printed.Refuses("volts", () => new VoltsAmpsTable([], []));
        Printed.Refuses("volts", () => new VoltsAmpsTable([1], []));
        Assert.Equal(1, new VoltsAmpsTable([0.5, 2], [1, 1]).AmpsAt(0.5)); // a first point beneath one volt, a level piece: both may be
    }

    [Fact]
    public void The_other_loads_by_Ohms_law_and_the_power_balance()
    {
        LoadLaw ohms = LoadLaw.Ohms(4), amps = LoadLaw.Amps(2), watts = LoadLaw.Watts(3);
        Assert.Equal((1.5, 2, 0.5), (ohms.AmpsAt(6), amps.AmpsAt(6), watts.AmpsAt(6)));
        Assert.Equal((8, 8, 3), (ohms.VoltsBehind(10, 1), amps.VoltsBehind(10, 1), watts.VoltsBehind(4, 1))); // 10·4/5; 10 − 2; (4 + √(16 − 12))/2
        Assert.Equal((6, 4.5, double.NaN), (ohms.VoltsFor(9), amps.VoltsFor(9), watts.VoltsFor(9)));
        Assert.Equal((8, double.NaN, 1.5), (ohms.VoltsForAmps(2), amps.VoltsForAmps(2), watts.VoltsForAmps(2)));
        Assert.Equal((4, double.NaN, double.NaN, double.NaN), (ohms.Ohm, amps.Ohm, watts.Ohm, Load.Ohm));
        Assert.Equal((false, false, true, false), (ohms.IsConstantPower, amps.IsConstantPower, watts.IsConstantPower, Load.IsConstantPower));
    }

    [Fact]
    public void Where_they_meet_nothing_they_say_so()
    {
        Assert.Equal(double.NaN, LoadLaw.Amps(2).VoltsBehind(2, 1));   // all of the 2 V is lost on the way
        Assert.Equal(0.5, LoadLaw.Amps(2).VoltsBehind(2.5, 1), 1e-12);
        Assert.Equal(2, LoadLaw.Watts(4).VoltsBehind(4, 1), 1e-12);    // the fold itself
        Assert.Equal(double.NaN, LoadLaw.Watts(4.1).VoltsBehind(4, 1));
        Assert.Equal(double.NaN, LoadLaw.Watts(3).VoltsBehind(-4, 1));
        Assert.Equal(0.5, LoadLaw.Watts(0.25).VoltsBehind(1, 1), 1e-12);
        Assert.Equal(double.NaN, LoadLaw.Watts(0).VoltsBehind(0, 1));
        Assert.Equal(double.NaN, LoadLaw.Amps(0).VoltsFor(9));
        Assert.Equal(18, LoadLaw.Amps(0.5).VoltsFor(9), 1e-12);
        Assert.Equal(double.NaN, LoadLaw.Watts(3).VoltsForAmps(0));
        Assert.Equal(6, LoadLaw.Watts(3).VoltsForAmps(0.5), 1e-12);
    }

    [Fact]
    public void Volts_found_give_back_current_power_and_source() => Gen.Select(Gen.Double[0.05, 5.9], Gen.Double[0.01, 3]).Sample((volts, ohm) =>
    {
        double amps = Load.AmpsAt(volts);
        Assert.Equal(volts, Load.VoltsBehind(volts + (ohm * amps), ohm), 1e-9);
        Assert.Equal(volts, Load.VoltsFor(volts * amps), 1e-9);
        Assert.Equal(volts, Load.VoltsForAmps(amps), 1e-9);
    });
}
