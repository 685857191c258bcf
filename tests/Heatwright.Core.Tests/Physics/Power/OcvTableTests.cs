using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Rested voltage tables: [schmalstieg-2014], [ecker-2014], [sunil-2025], [rtos-battery-bindings] (published points).
/// Checks OCV-1 to OCV-10 (computed by an independent script from those points). Tolerance: half of the last printed digit.</summary>
public class OcvTableTests
{
    [Theory]
    [InlineData("OCV-1", 0.05, "3.4200, 3.1630, 3.0672, 1.0990")]
    [InlineData("OCV-2", 0.25, "3.6040, 3.5289, 3.2584, 1.2375")]
    [InlineData("OCV-3", 0.50, "3.6970, 3.7427, 3.2990, 1.2570")]
    [InlineData("OCV-4", 0.75, "3.9170, 3.9828, 3.3260, 1.2700")]
    [InlineData("OCV-5", 0.95, "4.1180, 4.1015, 3.3475, 1.3675")]
    public void Voltage_between_points_lies_on_the_straight_line(string id, double charge, string printed) => Printed.Agree(id, Printed.Computed, printed,
        OcvTables.A.VoltsAt(charge), OcvTables.B.VoltsAt(charge), OcvTables.C.VoltsAt(charge), OcvTables.D.VoltsAt(charge));

    [Fact]
    public void Mean_over_the_charge_is_the_trapezoid_over_the_points() => Printed.Agree("OCV-6", Printed.Computed, "3.7484, 3.7197, 3.2683, 1.2510",
        OcvTables.A.MeanV(0, 1), OcvTables.B.MeanV(0, 1), OcvTables.C.MeanV(0, 1), OcvTables.D.MeanV(0, 1));

    [Fact]
    public void A_voltage_is_read_back_into_the_charge_left() => Printed.Agree("OCV-7 to OCV-9", Printed.Computed, "0.2413, 0.3256, 0.9469",
        OcvTables.A.ChargeAt(3.600), OcvTables.B.ChargeAt(3.600), OcvTables.B.ChargeAt(4.100));

    [Fact]
    public void On_the_flat_middle_of_iron_phosphate_a_millivolt_is_a_percent() => Printed.Agree("OCV-10", Printed.Computed, "107.71, 0.928",
        OcvTables.C.SlopeVAt(0.5) * 1000, OcvTables.C.ChargeDoubt(0.5, 0.001) * 100);

    [Fact]
    public void Two_published_tables_differ_by_what_a_generic_table_may_be_off() => Printed.Agree("OCV-A against OCV-B", Printed.Computed, "106, 75, -66, 825, 257, 160",
        Difference(0.20), Difference(0.25), Difference(0.80), Difference(0), Difference(0.05), Difference(0.10));

    private static double Difference(double charge) => (OcvTables.A.VoltsAt(charge) - OcvTables.B.VoltsAt(charge)) * 1000;

    [Fact]
    public void Outside_the_table_the_end_value_holds()
    {
        Assert.Equal(4.162, OcvTables.A.VoltsAt(1.2));
        Assert.Equal(3.331, OcvTables.A.VoltsAt(-0.1));
        Assert.Equal(1, OcvTables.A.ChargeAt(4.3));
        Assert.Equal(0, OcvTables.A.ChargeAt(2));
    }

    [Fact]
    public void Reading_back_the_voltage_gives_the_charge() => Gen.Double[0, 1].Sample(charge =>
    {
        foreach (OcvTable table in (OcvTable[])[OcvTables.A, OcvTables.B, OcvTables.B2, OcvTables.C, OcvTables.D])
        {
            Assert.Equal(charge, table.ChargeAt(table.VoltsAt(charge)), 1e-9);
        }
    }, iter: 200);

    [Fact]
    public void More_charge_never_means_less_voltage() => Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Sample((a, b) =>
        Assert.True((OcvTables.B.VoltsAt(a) - OcvTables.B.VoltsAt(b)) * (a - b) >= 0), iter: 200);

    [Fact]
    public void The_mean_of_a_range_is_the_fine_sum() => Gen.Select(Gen.Double[0, 0.99], Gen.Double[0, 1]).Sample((from, share) =>
    {
        // Second method: midpoint sum; a straight piece is summed exactly, a cell with a kink by at most slope step²/8: 2e-5 V.
        double to = from + ((1 - from) * share) + 1e-3;
        to = Math.Min(1, to);
        OcvTable table = OcvTables.D;
        double sum = Enumerable.Range(0, 2000).Sum(i => table.VoltsAt(from + ((to - from) * (i + 0.5) / 2000))) / 2000;
        Assert.Equal(sum, table.MeanV(from, to), 2e-5);
    }, iter: 50);

    [Fact]
    public void A_curve_that_does_not_rise_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new OcvTable([0, 0.5, 1], [3.0, 3.0, 4.0]));
        Assert.Throws<ArgumentException>(() => new OcvTable([0, 0.5, 0.5], [3.0, 3.5, 4.0]));
        Assert.Throws<ArgumentException>(() => new OcvTable([0, 1], [3.0, 3.5, 4.0]));
        Printed.Refuses("charges", () => new OcvTable([0, 1.2], [3.0, 4.0]));
        Printed.Refuses("volts", () => new OcvTable([0, 1], [-3.0, 4.0]));
        Printed.Refuses("charges", () => new OcvTable([0], [3.0]));
    }
}
