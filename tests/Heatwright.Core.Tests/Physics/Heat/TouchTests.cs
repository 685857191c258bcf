using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Skin at warm parts. A design aid: thresholds are from memory of [iso-13732-1] and must be verified with a bought copy.</summary>
public class TouchTests
{
    [Theory]
    [InlineData(44, "6.150334e-5", "16259")]
    [InlineData(48, "1.169721e-3", "854.90")]
    [InlineData(51, "1.015669e-2", "98.457")]
    [InlineData(55, "0.1704567", "5.8666")]
    [InlineData(60, "5.264168", "0.18996")]
    public void Skin_damage_has_the_rates_of_the_script(double basalC, string rate, string time)
    {
        Printed.Agrees("rate", Printed.Computed, rate, Touch.DamageRatePerS(basalC));
        Printed.Agrees("time", Printed.Computed, time, Touch.TimeToDeepBurnS(basalC));
        Assert.Equal(1, Touch.Damage([(Touch.TimeToDeepBurnS(basalC) / 2, basalC), (Touch.TimeToDeepBurnS(basalC) / 2, basalC)]), 1e-12);
    }

    /// <summary>The other exponent in circulation makes times about five times longer: the handbook's own reason not to use it (computed).</summary>
    [Fact]
    public void The_unrounded_exponent_would_give_times_five_times_longer() => Assert.All([44.0, 48, 51, 55, 60], basal =>
        Assert.InRange(Math.Exp((75531.0 - 75000) / (basal + 273.15)), 4.9, 5.34));

    /// <summary>At long contacts the integral answers later than the table: it may never relax it.</summary>
    [Fact]
    public void The_damage_integral_comes_later_than_the_table_at_long_contacts()
    {
        Assert.True(Touch.TimeToDeepBurnS(48) > 600);
        Assert.True(Touch.TimeToDeepBurnS(51) > 60);
    }

    [Fact]
    public void A_handle_of_sixty_degrees_feels_by_its_effusivity()
    {
        Printed.Agrees("skin", Printed.Computed, "1193.5", Touch.SkinEffusivity);
        double Felt(double k, double rho, double c) => Touch.ContactC(Touch.Effusivity(k, rho, c), 60, Touch.SkinEffusivity, 33);
        Printed.Agree("aluminium, steel, glass, PA, silicone, beech", Printed.Computed, "58.490, 56.495, 47.766, 42.946, 41.483, 40.381",
            Felt(167, 2700, 900), Felt(16, 8000, 500), Felt(1, 2500, 830), Felt(0.25, 1140, 1700), Felt(0.2, 1150, 1300), Felt(0.16, 700, 1800));
        Printed.Agrees("copper 350 on PA 25", Printed.Computed, "343.9473", Touch.ContactC(Touch.Effusivity(401, 8933, 385), 350, Touch.Effusivity(0.25, 1140, 1700), 25), 0.2);
    }

    /// <summary>[carslaw-jaeger-1959] sec. 2.14, computed by a second program with the material files: every row; half of the last printed digit.</summary>
    [Fact]
    public void Every_contact_pair_of_the_file_meets_at_its_temperature()
    {
        var solids = ReferenceCsv.Read("materials/solids_300K.csv");
        var plastics = ReferenceCsv.Read("materials/thermoplastics.csv");
        Dictionary<string, double> effusivity = new() { ["skin (k 0.37 rho 1100 c 3500)"] = Touch.SkinEffusivity };
        foreach (var (table, name) in new[] { (solids, "material"), (plastics, "plastic") })
        {
            foreach (string[] row in table.Rows)
            {
                effusivity[table.Word(row, name)] = Touch.Effusivity(table.Number(row, "k_W_mK"), table.Number(row, "rho_kg_m3"), table.Number(row, "cp_J_kgK"));
            }
        }

        var pairs = ReferenceCsv.Read("worked_examples/contact_temperature.csv");
        Assert.Equal(9, pairs.Rows.Length);
        foreach (string[] row in pairs.Rows)
        {
            string hot = pairs.Word(row, "hot") switch { "copper" => "copper pure", "stainless 304" => "stainless AISI 304", var word => word };
            double one = effusivity[hot], other = effusivity[pairs.Word(row, "cold")];
            Printed.Agrees(hot, Printed.Computed, pairs.Word(row, "e_hot"), one);
            Printed.Agrees(hot, Printed.Computed, pairs.Word(row, "e_cold"), other);
            Printed.Agrees(hot, Printed.Computed, pairs.Word(row, "T_contact_C"), Touch.ContactC(one, pairs.Number(row, "T_hot_C"), other, pairs.Number(row, "T_cold_C")));
        }
    }

    [Fact]
    public void A_contact_temperature_lies_between_and_does_not_care_for_order() => Gen.Select(Gen.Double[50, 4e4], Gen.Double[-20, 400], Gen.Double[50, 4e4], Gen.Double[-20, 400]).Sample((e1, t1, e2, t2) =>
    {
        double met = Touch.ContactC(e1, t1, e2, t2);
        Assert.InRange(met, Math.Min(t1, t2) - 1e-9, Math.Max(t1, t2) + 1e-9);
        Assert.Equal(met, Touch.ContactC(e2, t2, e1, t1), 1e-9);
        Assert.Equal(e1 * (t1 - met), e2 * (met - t2), 1e-6 * e1); // heat that leaves one enters the other
    });

    /// <summary>[iso-13732-1] from memory: rows of the built-in table that the handbook restates, lower bounds of the figure's band.</summary>
    [Theory]
    [InlineData("bare metal", 1, 65)]
    [InlineData("bare metal", 10, 55)]
    [InlineData("bare metal", 60, 51)]
    [InlineData("bare metal", 600, 48)]
    [InlineData("bare metal", 28800, 43)]
    [InlineData("plastic", 1, 85)]
    [InlineData("plastic", 10, 71)]
    [InlineData("plastic", 60, 60)]
    [InlineData("ceramic, glass, stone", 1, 80)]
    [InlineData("ceramic, glass, stone", 60, 56)]
    [InlineData("wood", 10, 89)]
    [InlineData("bare metal", 0.5, 65)] // a shorter contact is judged by the next longer row: never lower, so cautious
    [InlineData("bare metal", 61, 48)]
    [InlineData("bare metal", 1e6, 43)]
    public void A_touch_threshold_is_the_lower_bound_of_the_next_longer_contact(string surface, double seconds, double printedC) =>
        Assert.Equal(printedC, Touch.ThresholdC(Rows(surface), seconds));

    /// <summary>[henriques-1947]-independent list for hot metal, secondary: 49 °C > 5 min, 52 °C 1.5-2 min, 55 °C 30 s, 57 °C 10 s, 60 °C under 5 s, 68 °C 1 s.</summary>
    [Theory]
    [InlineData(49, 300)]
    [InlineData(52, 90)]
    [InlineData(55, 30)]
    [InlineData(57, 10)]
    [InlineData(68, 1)]
    public void The_table_agrees_with_a_second_list_within_three_kelvin_at_its_own_times(double listC, double seconds)
    {
        // Interpolated on the logarithm of time between the rows, as the band is drawn.
        var rows = Tables.Find("touch-thresholds").Rows.Where(row => row.Key == "bare metal").ToArray();
        var (shorter, longer) = rows.Zip(rows.Skip(1)).First(pair => pair.Second.Number("contact") >= seconds);
        double Middle(TableRow row) => 0.5 * (row.Number("threshold") + row.Number("threshold-high"));
        double share = Math.Log(seconds / shorter.Number("contact")) / Math.Log(longer.Number("contact") / shorter.Number("contact"));
        Assert.Equal(listC, Middle(shorter) + (share * (Middle(longer) - Middle(shorter))), 3.0);
    }

    [Fact]
    public void Thresholds_fall_with_contact_time_and_working_limits_lie_at_or_below_them()
    {
        foreach (string surface in Tables.Find("touch-thresholds").Rows.Select(row => row.Key).Distinct())
        {
            var rows = Rows(surface);
            Assert.True(rows.Zip(rows.Skip(1)).All(pair => pair.First.ContactS < pair.Second.ContactS && pair.First.ThresholdC >= pair.Second.ThresholdC));
        }

        // Common practice, no source: the working rule never lies above the table.
        Assert.All(Tables.Find("touch-working-limits").Rows, row => Assert.True(
            row.Number("limit") <= Touch.ThresholdC(Rows(row.Word("surface") == "plastic" ? "plastic" : "bare metal"), row.Number("contact"))));
    }

    [Fact]
    public void Impossible_inputs_are_refused_with_their_range()
    {
        Printed.Refuses("basalC", () => Touch.DamageRatePerS(200));
        Printed.Refuses("contactS", () => Touch.ThresholdC(Rows("wood"), 0));
        Printed.Refuses("oneEffusivity", () => Touch.ContactC(0, 1, 1, 1));
    }

    private static (double ContactS, double ThresholdC)[] Rows(string surface) =>
        [.. Tables.Find("touch-thresholds").Rows.Where(row => row.Key == surface).Select(row => (row.Number("contact"), row.Number("threshold")))];
}
