using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Heat for the work, droop, and whether the power is enough. Computed by an independent script unless a line says otherwise; material values
/// are common practice, from memory.</summary>
public class WorkTests
{
    /// <summary>Heat from 25 °C to 20 K over the melting point.</summary>
    [Theory]
    [InlineData("PA6", "461.5", "0.52611")]
    [InlineData("PET", "375.5", "0.51819")]
    [InlineData("PP", "408.0", "0.36924")]
    [InlineData("HDPE", "477.4", "0.45592")]
    [InlineData("EVA hot-melt", "230.0", "0.21850")]
    [InlineData("paraffin wax", "308.6", "0.27774")]
    [InlineData("beeswax", "327.0", "0.31392")]
    [InlineData("tin-lead 63/37", "71.06", "0.59690")]
    [InlineData("tin-silver-copper", "107.88", "0.79831")]
    public void Every_material_of_the_table_takes_its_heat(string material, string joulePerGram, string joulePerMm3)
    {
        var needs = Needs(material);
        Printed.Agrees(material, Printed.Computed, joulePerGram, needs.JPerKg / 1000);
        Printed.Agrees(material, Printed.Computed, joulePerMm3, needs.JPerM3 / 1e9);
    }

    [Fact]
    public void The_material_tables_are_whole_and_agree_with_each_other()
    {
        Assert.Equal(9, Tables.Find("melt-materials").Rows.Count);
        Assert.Equal(7, Tables.Find("crystal-fusion-heats").Rows.Count);
        Assert.Equal(Mark.FromMemory, Tables.Find("crystal-fusion-heats").Row("PET").Mark);

        // Crystallinity × heat of the crystal brackets the heat as supplied (common practice, ±30 %).
        foreach (var (polymer, crystal) in new[] { ("PA6", "PA6"), ("PP", "PP"), ("HDPE", "PE"), ("PET", "PET") })
        {
            double fusion = Tables.Find("crystal-fusion-heats").Row(crystal).Number("fusion");
            var share = Tables.Find("crystallinity").Row(polymer);
            Assert.InRange(Tables.Find("melt-materials").Row(polymer).Number("fusion"), 0.7 * share.Number("low") * fusion, 1.3 * share.Number("high") * fusion);
        }
    }

    [Fact]
    public void A_rope_a_film_and_wax_take_the_power_of_the_script()
    {
        double pa = Needs("PA6").JPerM3;
        Printed.Agrees("volume", Printed.Computed, "117.81", Math.PI / 4 * 100 * 1.5);
        Printed.Agree("rope", Printed.Computed, "61.98, 49.58", MeltEnergy.CutJ(10e-3, 1.5e-3, 1, pa), MeltEnergy.CutJ(10e-3, 1.5e-3, 0.8, pa));

        // The film of the script is HDPE: 0.1 mm × 1 mm × 0.45592 J/mm³.
        double film = Needs("HDPE").JPerM3;
        Printed.Agrees("film per metre", Printed.Computed, "45.5917", 0.1e-3 * 1e-3 * film);
        Printed.Agrees("film at 20 mm/s", Printed.Computed, "0.912", MeltEnergy.CutPowerW(0.1e-3, 1e-3, 20e-3, film, 1));
        Printed.Agrees("wax", Printed.Computed, "1.360985", MeltEnergy.RateKgPerS(10, 0.7, Needs("paraffin wax").JPerKg) * 60e3);
        // A copper disc (2 mm, 35 µm), a copper wire (0.7 mm, 5 mm) and 20 mg of tin-silver-copper, all from 25 to 250 °C; copper 8960 kg/m³, 385 J/(kg·K).
        double disc = Math.PI / 4 * 2e-3 * 2e-3 * 35e-6 * 8960 * 385 * 225;
        double wire = Math.PI / 4 * 0.7e-3 * 0.7e-3 * 5e-3 * 8960 * 385 * 225;
        double drop = 20e-6 * MeltEnergy.Needs(220, 219, 60000, 260, 7400, 25, 250).JPerKg;
        Printed.Agree("disc, wire, drop", Printed.Computed, "0.0853, 1.4935, 2.2148", disc, wire, drop);
        Printed.Agrees("all three", Printed.Computed, "3.79365", disc + wire + drop);
    }

    [Fact]
    public void Droop_reserve_and_recovery()
    {
        Printed.Agrees("droop", Printed.Computed, "15.77410", WorkDroop.DroopK(30, 180, 5, 20));
        Assert.Equal(124, WorkDroop.ReserveJ(6.2, 20), 1e-12); // by hand
        Assert.Equal(124 / 6.0, WorkDroop.RecoveryS(6.2, 20, 20, 14), 1e-12); // by hand
        Assert.Equal(double.PositiveInfinity, WorkDroop.RecoveryS(6.2, 20, 14, 14));
        Assert.Equal(5 * 20 / 6.0, WorkDroop.DroopK(1e9, 6e9, 5, 20), 1e-6); // short pulse: P·t/C, C = τ/K
    }

    [Theory]
    [InlineData(8.2, "3.6161581, 27.952538, 26.554911")]
    [InlineData(7.2, "3.1751632, 21.550559, 20.473031")]
    [InlineData(6.4, "2.8223673, 17.027602, 16.176222")]
    [InlineData(6.0, "2.6459693, 14.965666, 14.217383")]
    public void A_pack_gives_its_usable_watts(double volts, string printed)
    {
        double full = EnoughPower.UsableW(volts, 1.6, 8e-4, 440, 0.13, 1);
        Printed.Agree("usable", Printed.Computed, printed, Math.Sqrt(full / 2.1376), full, EnoughPower.UsableW(volts, 1.6, 8e-4, 440, 0.13, 0.95));
    }

    /// <summary>7.2 ± 0.05 V, heater ± 2 %, series 0.13 ± 0.02 Ω, losses 13.76 ± 8 % and 4.0 ± 0.4 W, 67 ± 10 J a cut, 1.8 to 2.2 cuts a minute
    /// (± is one standard doubt). 200 000 draws with a fixed seed: 0.001 of scatter on P, tolerance 0.005 as the script states.</summary>
    [Fact]
    public void Is_it_enough_comes_out_undecided()
    {
        var random = new Random(11);
        double Normal(double mean, double doubt) => mean + (doubt * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()));
        const int draws = 200_000;
        double[] power = new double[draws], demand = new double[draws];
        for (int i = 0; i < draws; i++)
        {
            double heater = Normal(1, 0.02);
            power[i] = EnoughPower.UsableW(Normal(7.2, 0.05), 1.6 * heater, 8e-4, 440, Normal(0.13, 0.02), 0.95);
            demand[i] = (13.76 * Normal(1, 0.08)) + Normal(4, 0.4) + MeltEnergy.JobPowerW((1.8 + (0.4 * random.NextDouble())) / 60, Normal(67, 10), 1);
        }

        double[] margin = [.. power.Zip(demand, (p, d) => p - d)];
        Assert.Equal(20.49, power.Average(), 0.02);
        Assert.Equal(0.59, Spread(power), 0.015);
        Assert.Equal(19.99, demand.Average(), 0.02);
        Assert.Equal(1.23, Spread(demand), 0.015);
        Assert.Equal(0.50, margin.Average(), 0.02);
        Assert.Equal(1.36, Spread(margin), 0.015);
        Assert.Equal(0.642, margin.Count(m => m > 0) / (double)draws, 0.005);

        // The formula law, fed with the same means and doubts.
        var told = EnoughPower.Margin(20.49, 0.59, 17.76, Math.Sqrt(Math.Pow(0.08 * 13.76, 2) + (0.4 * 0.4)), 67 * 2.0 / 60, Math.Sqrt(Math.Pow(10 * 2.0 / 60, 2) + Math.Pow(67 * 0.4 / 60 / Math.Sqrt(12), 2)));
        Assert.Equal(0.642, told.Probability, 0.005);
        Assert.Equal(2.44, 60 * EnoughPower.SustainedPerS(20.49, 17.76, 67, 1), 0.005);
        Assert.True(EnoughPower.UsableW(6.4, 1.6, 8e-4, 440, 0.13, 0.95) < 17.76, "at 6.4 V it fails");
    }

    [Fact]
    public void Probability_follows_the_margin() => Gen.Select(Gen.Double[5, 40], Gen.Double[5, 40], Gen.Double[0, 5], Gen.Double[0.1, 3]).Sample((power, loss, job, doubt) =>
    {
        var margin = EnoughPower.Margin(power, doubt, loss, doubt, job, doubt);
        Assert.Equal(margin.MarginW > 0, margin.Probability > 0.5);
        Assert.Equal(1, margin.Probability + EnoughPower.Margin(loss + job, doubt, power, doubt, 0, doubt).Probability, 1e-12);
        Assert.Equal(power > loss + job ? 1 : 0, EnoughPower.Margin(power, 0, loss, 0, job, 0).Probability);
    });

    [Fact]
    public void Without_a_surplus_no_rate_is_sustained()
    {
        Assert.Equal(0, EnoughPower.SustainedPerS(10, 12, 67, 0.7));
        Assert.Equal(0.7 * 2 / 67, EnoughPower.SustainedPerS(12, 10, 67, 0.7), 1e-12); // by hand
    }

    [Fact]
    public void Heat_grows_with_every_part_of_the_sum() => Gen.Select(Gen.Double[500, 3000], Gen.Double[50, 300], Gen.Double[0, 3e5], Gen.Double[0, 60]).Sample((c, melts, latent, over) =>
    {
        double Sum(double more) => MeltEnergy.Needs(c, melts, latent + more, c, 1000, 20, melts + over).JPerKg;
        Assert.Equal((c * (melts - 20)) + latent + (c * over), Sum(0), 1e-9 * Sum(0)); // by hand
        Assert.Equal(1000, Sum(1000) - Sum(0), 1e-6);
    });

    [Fact]
    public void Impossible_inputs_are_refused_with_their_range()
    {
        Printed.Refuses("toC", () => MeltEnergy.Needs(1700, 220, 8e4, 2500, 1140, 25, 200));
        Printed.Refuses("fill", () => MeltEnergy.CutJ(0.01, 0.001, 1.5, 1e8));
        Printed.Refuses("share", () => MeltEnergy.JobPowerW(1, 1, 0));
        Printed.Refuses("hot resistance", () => EnoughPower.UsableW(7, 1.6, -3e-3, 440, 0, 1));
        Printed.Refuses("mostDuty", () => EnoughPower.UsableW(7, 1.6, 0, 440, 0, 1.2));
    }

    private static double Spread(double[] values) => Math.Sqrt(values.Average(x => x * x) - Math.Pow(values.Average(), 2));

    private static MeltNeeds Needs(string material)
    {
        var row = Tables.Find("melt-materials").Row(material);
        return MeltEnergy.Needs(row.Number("solid-heat"), row.Number("melts"), row.Number("fusion"), row.Number("liquid-heat"), row.Number("density"), 25, row.Number("melts") + 20);
    }

    /// <summary>By hand: nothing left over and half a watt of doubt is an even chance; Φ(0.5/0.5) = 0.841345; without a doubt it is certain either way.</summary>
    [Theory, InlineData(10, 0.5, 10, 0.5), InlineData(10.5, 0.5, 10, 0.841345), InlineData(10, 0, 9, 1), InlineData(9, 0, 10, 0), InlineData(10, 0, 10, 0)]
    public void A_margin_has_its_chance(double powerW, double doubtW, double lossW, double probability) => Assert.Equal(probability, EnoughPower.Margin(powerW, doubtW, lossW, 0, 0, 0).Probability, 1e-6);
}
