using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Handbook;

/// <summary>[nist-srd60] whole tables, every printed degree. Tolerance: half of the last printed digit.</summary>
public class ThermocoupleTableTests
{
    private const double HalfDigitMv = 0.0005 + 1e-9;   // the sum of the polynomial itself rounds at 1e-12

    [Theory]
    [InlineData("B", 1821)]
    [InlineData("J", 1411)]
    [InlineData("K", 1643)]
    [InlineData("N", 1571)]
    [InlineData("S", 1819)]
    public void Every_printed_degree_agrees_within_half_of_the_last_digit(string type, int printed)
    {
        var table = ReferenceCsv.Read($"thermocouples/its90_table_type_{char.ToLowerInvariant(type[0])}.csv");
        var curve = Thermocouples.Find(type)!;
        Assert.Equal(printed, table.Rows.Length);
        Assert.All(table.Rows, row => Assert.Equal(table.Number(row, "E_mV"), curve.EmfV(table.Number(row, "t_C")) * 1e3, HalfDigitMv));
    }

    [Fact]
    public void Every_published_coefficient_stands_in_the_data()
    {
        var file = ReferenceCsv.Read("thermocouples/its90_forward_coefficients.csv");
        var rows = Tables.Find("thermocouple-forward").Rows;
        Assert.Equal(file.Rows.Length, rows.Count);
        Assert.All(file.Rows.Zip(rows), pair =>
        {
            Assert.Equal(file.Word(pair.First, "type"), pair.Second.Key);
            Assert.Equal(file.Word(pair.First, "term"), pair.Second.Word("term"));
            Assert.Equal(file.Number(pair.First, "coefficient"), pair.Second.Number("coefficient"));
        });
    }

    [Fact]
    public void Every_published_inverse_coefficient_stands_in_the_data()
    {
        var file = ReferenceCsv.Read("thermocouples/its90_inverse_coefficients.csv");
        var rows = Tables.Find("thermocouple-inverse").Rows;
        Assert.Equal(file.Rows.Length, rows.Count);
        Assert.All(file.Rows.Zip(rows), pair =>
        {
            Assert.Equal((file.Word(pair.First, "type"), file.Word(pair.First, "term")), (pair.Second.Key, pair.Second.Word("term")));
            Assert.Equal(file.Number(pair.First, "coefficient"), pair.Second.Number("coefficient"));
            Assert.Equal(file.Number(pair.First, "err_max_C"), pair.Second.Number("error high"));
        });
    }

    /// <summary>[astm-e230] type C, from memory. The reference file's polynomials are summed here power by power, so that the two cannot share a slip.</summary>
    [Fact]
    public void Type_C_agrees_with_its_polynomials_summed_by_powers()
    {
        var file = ReferenceCsv.Read("thermocouples/type_c_forward_coefficients.csv");
        for (double tC = 0; tC <= 2315; tC += 5)
        {
            double mV = file.Rows.Where(row => file.Word(row, "segment") == (tC <= 630.615 ? "1" : "2")).Sum(row =>
                file.Number(row, "coefficient") * Math.Pow(tC, int.Parse(file.Word(row, "term").AsSpan(1), System.Globalization.CultureInfo.InvariantCulture)));
            Assert.Equal(mV, Thermocouples.TypeC.EmfV(tC) * 1e3, 1e-9);
        }
    }

    /// <summary>[nist-srd60] ends of the inverse functions: printed voltage at printed temperature, also for E, R and T.</summary>
    [Fact]
    public void The_printed_ends_of_the_inverse_functions_agree_with_the_forward_functions()
    {
        var file = ReferenceCsv.Read("thermocouples/its90_inverse_coefficients.csv");
        var ends = file.Rows.SelectMany(row => new[]
        {
            (Type: file.Word(row, "type"), T: file.Number(row, "t_min_C"), E: file.Number(row, "E_min_mV")),
            (Type: file.Word(row, "type"), T: file.Number(row, "t_max_C"), E: file.Number(row, "E_max_mV")),
        }).Distinct().ToList();
        Assert.Equal(33, ends.Count);
        Assert.All(ends, end =>
            Assert.Equal(end.E, Thermocouples.Find(end.Type)!.EmfV(end.T) * 1e3, end.Type == "S" ? 0.001 : HalfDigitMv));   // type S prints its ends cut, not rounded
    }

    /// <summary>[nist-srd60] inverse functions with their stated error bands; 0.0005 K for the rounding of the printed band.</summary>
    [Fact]
    public void The_published_inverse_polynomials_stay_inside_their_stated_bands()
    {
        int walked = 0;
        foreach (var curve in Thermocouples.All)
        {
            foreach (var piece in curve.ApproximateInverses)
            {
                // Half a thousandth of a millivolt outside the stretch is where the printed ends were rounded to.
                for (double mV = piece.FromMv; mV <= piece.ToMv; mV += (piece.ToMv - piece.FromMv) / 500)
                {
                    double exact;
                    try
                    {
                        exact = curve.TemperatureC(mV * 1e-3);
                    }
                    catch (ArgumentOutOfRangeException)
                    {
                        continue;
                    }

                    // The band is printed to 0.01 K: J below 0 °C leaves it by 0.0031 K, within that rounding; the others by less than 0.002 K,
                    // and the bands printed to 0.001 or 0.0001 K by at most 0.0003 K.
                    double slackK = curve.Type == "J" && piece.ToMv <= 0 ? 0.005 : piece.BandHighK >= 0.01 ? 0.002 : 0.0003;
                    Assert.InRange(piece.ApproximateC(mV * 1e-3) - exact, piece.BandLowK - slackK, piece.BandHighK + slackK);
                    walked++;
                }
            }
        }

        Assert.True(walked > 10_000, $"only {walked} points were walked");
    }

    /// <summary>[preston-thomas-1990] fixed points (from memory), voltages by a second program. Tolerance: half of the last digit.</summary>
    [Fact]
    public void Every_type_agrees_at_the_fixed_points_of_the_temperature_scale()
    {
        var file = ReferenceCsv.Read("thermocouples/its90_fixed_points_emf.csv");
        int compared = 0;
        foreach (string[] row in file.Rows)
        {
            foreach (var curve in Thermocouples.All.Where(curve => curve.Type != "C"))
            {
                if (file.Word(row, $"E_{curve.Type}_mV").Length > 0)
                {
                    Assert.Equal(file.Number(row, $"E_{curve.Type}_mV"), curve.EmfV(file.Number(row, "t_C")) * 1e3, 0.00005 + 1e-9);
                    compared++;
                }
            }
        }

        Assert.Equal(80, compared);
    }

    /// <summary>Cold-junction examples by bisection in a second program, [nist-srd60] functions. Tolerance: half of the last digit.</summary>
    [Fact]
    public void Every_cold_junction_example_agrees()
    {
        var file = ReferenceCsv.Read("thermocouples/emf_to_temperature_cold_junction.csv");
        Assert.Equal(120, file.Rows.Length);
        Assert.All(file.Rows, row =>
        {
            var curve = Thermocouples.Find(file.Word(row, "type"))!;
            double coldC = file.Number(row, "T_cj_C");
            Assert.Equal(file.Number(row, "E_cj_mV"), curve.EmfV(coldC) * 1e3, 5.1e-7);
            Assert.Equal(file.Number(row, "T_hot_C"), ColdJunction.HotC(curve, file.Number(row, "E_meas_mV") * 1e-3, coldC), 5.1e-5);
        });
    }
}
