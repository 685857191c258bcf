using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Handbook;

public class PlatinumTests
{
    private static readonly PlatinumCurve Curve = PlatinumSensors.Iec60751;

    /// <summary>[iec-60751] Pt100 table, 0 to 150 °C. Tolerance: half of the last printed digit.</summary>
    [Fact]
    public void Every_printed_degree_of_the_Pt100_table_agrees()
    {
        var table = ReferenceCsv.Read("standards/rtd_pt100_iec60751_table_0_150.csv");
        Assert.Equal(151, table.Rows.Length);
        Assert.All(table.Rows, row =>
        {
            double tC = table.Number(row, "t_C"), ohm = table.Number(row, "R_ohm");
            Assert.Equal(ohm, PlatinumSensors.ResistanceOhm(100, tC), 0.005 + 1e-9);
            Assert.Equal(tC, PlatinumSensors.TemperatureC(100, ohm), 0.0135);   // half of 0.01 Ω over 0.38 Ω/K
        });
    }

    [Fact]
    public void The_coefficients_are_those_of_the_reference_file()
    {
        var file = ReferenceCsv.Read("standards/rtd_iec60751_coefficients.csv");
        Assert.Equal([Curve.APerK, Curve.BPerK2, Curve.CPerK4], file.Rows.Take(3).Select(row => file.Number(row, "value")));
        Assert.Equal(3.851e-3, (Platinum.ResistanceOhm(Curve, 1, 100) - 1) / 100, 5e-7);   // [iec-60751] mean coefficient, from memory
    }

    /// <summary>Computed from the function by a second program.</summary>
    [Theory]
    [InlineData(-50, 80.30628)]
    [InlineData(25, 109.7347)]
    [InlineData(100, 138.5055)]
    [InlineData(200, 175.8560)]
    [InlineData(300, 212.0515)]
    [InlineData(350, 229.7161)]
    [InlineData(400, 247.0920)]
    public void Resistances_agree_with_the_second_program(double tC, double ohm)
    {
        Assert.Equal(ohm, PlatinumSensors.ResistanceOhm(100, tC), 5.1e-5);
        Assert.Equal(tC, PlatinumSensors.TemperatureC(100, ohm), 2e-4);
    }

    [Fact]
    public void A_temperature_comes_back_over_the_whole_range() => Gen.Select(Gen.Double[-200, 850], Gen.Double[10, 2000]).Sample((tC, zeroOhm) =>
        Math.Abs(Platinum.TemperatureC(Curve, zeroOhm, Platinum.ResistanceOhm(Curve, zeroOhm, tC)) - tC) < 1e-9);

    [Fact]
    public void The_slope_is_the_change_of_resistance_per_kelvin() => Gen.Double[-199, 849].Sample(tC =>
        Math.Abs(((Platinum.ResistanceOhm(Curve, 100, tC + 0.01) - Platinum.ResistanceOhm(Curve, 100, tC - 0.01)) / 0.02) - Platinum.SlopeOhmPerK(Curve, 100, tC)) < 1e-7);

    [Theory]
    [InlineData(-201)]
    [InlineData(851)]
    [InlineData(double.NaN)]
    public void Outside_the_range_is_refused_with_the_range(double tC) =>
        Assert.Contains("-200 to 850 °C", Assert.Throws<ArgumentOutOfRangeException>(() => PlatinumSensors.ResistanceOhm(100, tC)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(18)]
    [InlineData(391)]
    public void A_resistance_no_such_sensor_has_is_refused(double ohm) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PlatinumSensors.TemperatureC(100, ohm));

    /// <summary>[iec-60751] classes, from memory: A at 300 °C 0.75 K, B at 400 °C 2.3 K (by hand: 0.15 + 0.6, 0.3 + 2.0).</summary>
    [Theory]
    [InlineData("A", 300, 0.75)]
    [InlineData("B", 400, 2.3)]
    [InlineData("B", -100, 0.8)]
    [InlineData("AA", 100, 0.27)]
    public void Tolerance_classes_widen_away_from_zero(string tolerance, double tC, double limitK) =>
        Assert.Equal(limitK, PlatinumSensors.ToleranceK(tolerance, tC), 1e-12);

    /// <summary>0.2 Ω of leads on a Pt100: 0.5 K, by hand 0.2/0.39.</summary>
    [Fact]
    public void Lead_resistance_reads_as_temperature() => Assert.Equal(0.2 / 0.3908, Platinum.LeadErrorK(Curve, 100, 0.2, 0), 1e-3);

    /// <summary>By hand: (1 mA)² · 100 Ω / (2 mW/K) = 0.05 K.</summary>
    [Fact]
    public void A_measuring_current_warms_the_sensor() => Assert.Equal(0.05, Platinum.SelfHeatingK(1e-3, 100, 2e-3), 1e-12);
}
