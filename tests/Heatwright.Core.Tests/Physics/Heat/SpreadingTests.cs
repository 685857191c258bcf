using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Heat out of small contacts, through plates and planes and across joints. Computed by an independent script unless a line says otherwise.</summary>
public class SpreadingTests
{
    /// <summary>[carslaw-jaeger-1959] sec. 8.2, computed by a second program: every row; half of the last printed digit.</summary>
    [Fact]
    public void Every_half_space_of_the_file_has_its_three_resistances()
    {
        var table = ReferenceCsv.Read("worked_examples/spreading_resistance.csv");
        Assert.Equal(4, table.Rows.Length);
        foreach (string[] row in table.Rows)
        {
            double k = table.Number(row, "k_W_mK"), a = table.Number(row, "radius_mm") * 1e-3;
            Printed.Agrees("isothermal", Printed.Computed, table.Word(row, "isothermal_K_W"), Spreading.IsothermalKPerW(k, a));
            Printed.Agrees("mean", Printed.Computed, table.Word(row, "uniform_mean_K_W"), Spreading.MeanKPerW(k, a));
            Printed.Agrees("centre", Printed.Computed, table.Word(row, "uniform_centre_K_W"), Spreading.CentreKPerW(k, a));
        }
    }

    [Fact]
    public void A_tip_on_plastic_and_on_copper()
    {
        Printed.Agree("plastic", Printed.Computed, "666.6667, 720.5062, 848.8264", Spreading.IsothermalKPerW(0.25, 1.5e-3), Spreading.MeanKPerW(0.25, 1.5e-3), Spreading.CentreKPerW(0.25, 1.5e-3));
        Printed.Agrees("copper", Printed.Computed, "0.4273504", Spreading.IsothermalKPerW(390, 1.5e-3));
        Printed.Agrees("mean factor", Printed.Computed, "0.270190", Spreading.MeanKPerW(1, 1));

        // [yovanovich-1998], published example: a contact of ha/k = 1 has 0.2675/(ka), which must lie between one temperature and even flux.
        Assert.InRange(0.2675, Spreading.IsothermalKPerW(1, 1), Spreading.MeanKPerW(1, 1));
    }

    [Theory]
    [InlineData(1.5, 15, 1, 200, 50, "1.632979", "1.862016", "1.523424", "0.007073553", "28.29421")]
    [InlineData(1.5, 15, 3, 16, 20, "11.22044", "13.27250", "10.64940", "0.2652582", "70.73553")]
    [InlineData(3, 10, 1.6, 0.35, 15, "231.2472", "296.8044", "221.3170", "14.55131", "212.2066")]
    public void A_source_on_a_plate_has_series_and_closed_form(double aMm, double bMm, double tMm, double k, double h, string mean, string centre, string closed, string through, string film)
    {
        var plate = Spreading.OnPlate(aMm * 1e-3, bMm * 1e-3, tMm * 1e-3, k, h);
        Printed.Agrees("mean", Printed.Computed, mean, plate.MeanKPerW);
        Printed.Agrees("centre", Printed.Computed, centre, plate.CentreKPerW);
        Printed.Agrees("closed", Printed.Computed, closed, plate.ClosedKPerW);
        Printed.Agrees("1-D", Printed.Computed, through, plate.ThroughKPerW);
        Printed.Agrees("film", Printed.Computed, film, plate.FilmKPerW);
        Assert.InRange(plate.ClosedKPerW / plate.MeanKPerW, 0.93, 0.96); // 'it was 4 to 7 % low on the checks'
    }

    [Fact]
    public void The_series_closes_slowly()
    {
        double Sum(int terms) => Spreading.Series(0.1, 1.0 / 15, 50 * 0.015 / 200, terms).Mean / (200 * 1.5e-3);
        Printed.Agree("50, 200 terms", Printed.Computed, "1.631727, 1.632896", Sum(50), Sum(200));
    }

    /// <summary>A second method: a thick plate with strong cooling far away is a half-space, and a plate of the source's own size does not spread at all.</summary>
    [Fact]
    public void A_plate_becomes_a_half_space_or_a_plain_slab_at_its_limits()
    {
        var thick = Spreading.OnPlate(1e-3, 0.2, 0.2, 10, 1e6);
        Assert.Equal(Spreading.MeanKPerW(10, 1e-3), thick.MeanKPerW, 0.01 * thick.MeanKPerW);
        var full = Spreading.OnPlate(0.9999e-2, 1e-2, 1e-3, 10, 100);
        Assert.True(full.MeanKPerW < 1e-3 * full.TotalKPerW);
    }

    [Fact]
    public void Sheets_have_the_sinks_of_the_script()
    {
        const double copper = 390 * 35e-6, laminate = 0.35 * 1.6e-3;
        Printed.Agrees("one plane", Printed.Computed, "33.74946", ThinPlate.EndlessKPerW(1.5e-3, copper + laminate, 20));
        Printed.Agrees("kt", Printed.Computed, "0.01421", copper + laminate);
        Printed.Agrees("rim", Printed.Computed, "60.57240", ThinPlate.DiscKPerW(1.5e-3, 20e-3, copper + laminate, 20));
        Printed.Agrees("two planes", Printed.Computed, "19.09267", ThinPlate.EndlessKPerW(1.5e-3, (2 * copper) + laminate, 20));
        Printed.Agrees("bare laminate", Printed.Computed, "438.4007", ThinPlate.EndlessKPerW(1.5e-3, laminate, 20));
        Printed.Agrees("steel", Printed.Computed, "49.00118", ThinPlate.EndlessKPerW(2e-3, 16 * 0.5e-3, 20));
    }

    [Fact]
    public void A_copper_plane_takes_fourteen_times_the_heat_of_a_lone_pad()
    {
        const double copper = 390 * 35e-6, laminate = 0.35 * 1.6e-3;
        double plane = ThinPlate.EndlessKPerW(1e-3, copper + laminate, 20);
        double spokes = Fin.BarKPerW(0.5e-3, 0.25e-3 * 35e-6, 390) / 4;
        Printed.Agrees("plane", Printed.Computed, "38.19071", plane);
        Printed.Agrees("sink", Printed.Computed, "5.891485", ThinPlate.SinkW(225, plane, 0));
        Printed.Agrees("spokes", Printed.Computed, "36.63004", spokes);
        Printed.Agrees("sink through spokes", Printed.Computed, "3.007", ThinPlate.SinkW(225, plane, spokes));
        double pad = ThinPlate.SinkW(225, ThinPlate.EndlessKPerW(1e-3, laminate, 20), 0);
        Printed.Agrees("lone pad", Printed.Computed, "0.4201737", pad);
        Printed.Agrees("ratio", Printed.Computed, "14", ThinPlate.SinkW(225, plane, 0) / pad);
    }

    /// <summary>Second method: the fin equation of the plate integrated outwards from the rim by a plain fourth-order stepper.</summary>
    [Fact]
    public void A_disc_solves_its_fin_equation() => Gen.Select(Gen.Double[1e-3, 3e-3], Gen.Double[8e-3, 40e-3], Gen.Double[0.005, 0.1], Gen.Double[5, 40]).Sample((r0, r1, kt, h) =>
    {
        // θ'' + θ'/r = m²θ, from the rim inwards, θ(r₁) = 1, θ'(r₁) = 0.
        double m2 = h / kt, theta = 1, slope = 0, r = r1;
        const int steps = 4000;
        double step = (r0 - r1) / steps;
        (double T, double S) F(double at, double t, double s) => (s, (m2 * t) - (s / at));
        for (int i = 0; i < steps; i++)
        {
            var a = F(r, theta, slope);
            var b = F(r + (step / 2), theta + (step / 2 * a.T), slope + (step / 2 * a.S));
            var c = F(r + (step / 2), theta + (step / 2 * b.T), slope + (step / 2 * b.S));
            var d = F(r + step, theta + (step * c.T), slope + (step * c.S));
            theta += step / 6 * (a.T + (2 * b.T) + (2 * c.T) + d.T);
            slope += step / 6 * (a.S + (2 * b.S) + (2 * c.S) + d.S);
            r += step;
        }

        double byStepping = theta / (-slope * 2 * Math.PI * r0 * kt);
        Assert.Equal(byStepping, ThinPlate.DiscKPerW(r0, r1, kt, h), 1e-7 * byStepping);
        Assert.True(ThinPlate.DiscKPerW(r0, r1, kt, h) > ThinPlate.EndlessKPerW(r0, kt, h));
    }, iter: 20);

    [Fact]
    public void A_far_rim_is_no_rim() =>
        Assert.Equal(ThinPlate.EndlessKPerW(1.5e-3, 0.014, 20), ThinPlate.DiscKPerW(1.5e-3, 30, 0.014, 20), 1e-9);

    [Fact]
    public void Joints_gaps_and_pressed_metal()
    {
        Printed.Agrees("0.05 mm of air", Printed.Practice, "900", ContactConductance.GapWPerM2K(0.045, 5e-5));
        Assert.Equal(Tables.Find("contact-conductance").Row("heater in a bore, 0.05 mm of air").Number("low"), ContactConductance.GapWPerM2K(0.045, 5e-5), 1e-9);
        Assert.Equal(6, Tables.Find("contact-conductance").Rows.Count);
        Assert.Equal(50, ContactConductance.JointKPerW(2000, 10e-6), 1e-9); // by hand
        Assert.Equal(1.25 * 100 * 0.1 / 1e-6 * Math.Pow(1e-3, 0.95), ContactConductance.PressedMetalWPerM2K(100, 0.1, 1e-6, 1e6, 1e9), 1e-6); // by hand
    }

    [Fact]
    public void Impossible_inputs_are_refused_with_their_range()
    {
        Printed.Refuses("radiusM", () => Spreading.MeanKPerW(1, 0));
        Printed.Refuses("plateM", () => Spreading.OnPlate(2e-3, 1e-3, 1e-3, 1, 1));
        Printed.Refuses("rimM", () => ThinPlate.DiscKPerW(2e-3, 1e-3, 1, 1));
        Printed.Refuses("gapM", () => ContactConductance.GapWPerM2K(0.04, 0));
    }
}
