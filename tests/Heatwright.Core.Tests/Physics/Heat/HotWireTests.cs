using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Hot evidence: the one public table above 200 °C. Currents of straight 80/20 nickel-chromium wire in still air, [nicr80-wire-table], a rounded
/// trade table ('expect ±10 %'), against convection + radiation + hot resistance and nothing fitted: air 25 °C (not stated there), resistivity
/// 1.09e-6 Ω·m (from memory), factors of [gbt-1234], emissivity 0.9 of oxidised nickel-chromium ([incropera-dewitt], from memory) for every row.</summary>
public class HotWireTests
{
    private const double AirC = 25, OhmM = 1.09e-6;

    private static readonly double Oxidised = Tables.Find("emissivity").Row("nichrome oxidised").Number("emissivity");

    private static readonly (double DiameterM, double HotC, double Amps)[] Rows = [.. Read()];

    private static IEnumerable<(double DiameterM, double HotC, double Amps)> Read()
    {
        var table = ReferenceCsv.Read("thermal/nicr80_wire_current_temperature_even_awg.csv");
        return table.Rows.Select(row => (table.Number(row, "diameter_mm") * 1e-3, table.Number(row, "T_C"), table.Number(row, "I_A")));
    }

    private static double Factor(double hotC)
    {
        double[] at = Tables.Find("heating-alloy-factors").Numbers("temperature"), factor = Tables.Find("heating-alloy-factors").Numbers("Cr20Ni80");
        int i = Math.Clamp(Array.FindLastIndex(at, t => t <= hotC), 0, at.Length - 2);
        return factor[i] + ((factor[i + 1] - factor[i]) * (hotC - at[i]) / (at[i + 1] - at[i]));
    }

    private static double Off((double DiameterM, double HotC, double Amps) row, double emissivity) =>
        (HotWire.CurrentA(row.DiameterM, row.HotC, AirC, emissivity, OhmM, Factor(row.HotC)) / row.Amps) - 1;

    private static bool InRange((double DiameterM, double HotC, double Amps) row) => row is { DiameterM: >= 0.25e-3 and <= 0.9e-3, HotC: >= 300 and <= 800 };

    [Fact]
    public void The_whole_table_is_there()
    {
        Assert.Equal(64, Rows.Length);
        Assert.Equal(36, Rows.Count(InRange));
    }

    /// <summary>12 %: the table's own ±10 % and the 3 A to 0.9 A figures rounded to two or three digits. The worst of all 64 rows, at 200 °C, is given 17 %:
    /// the mixed bare surface of a wire that never oxidised lies there outside what one emissivity can say.</summary>
    [Fact]
    public void Currents_agree_within_twelve_percent_from_300_to_800_degrees() =>
        Assert.All(Rows, row => Assert.InRange(Off(row, Oxidised), InRange(row) ? -0.12 : -0.17, InRange(row) ? 0.12 : 0.17));

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.5)]
    public void A_wrong_emissivity_fails_it(double wrong) => Assert.Contains(Rows.Where(InRange), row => Math.Abs(Off(row, wrong)) > 0.12);

    [Fact]
    public void Without_radiation_the_hot_rows_fall_short_by_a_fifth() =>
        Assert.All(Rows.Where(row => InRange(row) && row.HotC >= 700), row => Assert.True(Off(row, 0) < -0.2));

    /// <summary>Temperatures from the table's currents. The slope dT/T per dI/I is near 1 in °C there, so ±12 % of current is about ±15 % of temperature.</summary>
    [Fact]
    public void Temperatures_from_the_currents_agree_within_fifteen_percent() => Assert.All(Rows.Where(InRange), row =>
        Assert.InRange(HotWire.TemperatureC(row.DiameterM, row.Amps, AirC, Oxidised, OhmM, Factor), 0.85 * row.HotC, 1.15 * row.HotC));

    /// <summary>Second method: both sides of the balance formed from their own laws.</summary>
    [Fact]
    public void The_current_balances_its_heat() => Gen.Select(Gen.Double[0.15e-3, 2e-3], Gen.Double[100, 1000], Gen.Double[0, 1]).Sample((d, hot, e) =>
    {
        double amps = HotWire.CurrentA(d, hot, AirC, e, OhmM, 1.02);
        double heat = amps * amps * OhmM * 1.02 / (Math.PI * d * d / 4);
        double lost = (Math.PI * d * Convection.CylinderWPerM2K(d, hot, AirC) * (hot - AirC)) + Radiation.RadiatedW(e, Math.PI * d, hot, AirC);
        Assert.Equal(heat, lost, 1e-9 * lost);
        Assert.Equal(hot, HotWire.TemperatureC(d, amps, AirC, e, OhmM, 1.02), 1e-6);
        Assert.True(HotWire.CurrentA(1.1 * d, hot, AirC, e, OhmM, 1.02) > amps);
        Assert.True(HotWire.CurrentA(d, hot + 10, AirC, e, OhmM, 1.02) > amps);
    });

    [Fact]
    public void A_wire_without_current_is_at_air_and_one_with_too_much_burns_out()
    {
        Assert.Equal(AirC, HotWire.TemperatureC(0.4e-3, 0, AirC, 0.9, OhmM, 1.02));
        Assert.Equal(double.PositiveInfinity, HotWire.TemperatureC(0.4e-3, 50, AirC, 0.9, OhmM, 1.02));
        Printed.Refuses("wireC", () => HotWire.CurrentA(0.4e-3, 10, AirC, 0.9, OhmM, 1));
        Printed.Refuses("emissivity", () => HotWire.CurrentA(0.4e-3, 400, AirC, 1.9, OhmM, 1));
    }
}
