using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Heat into cold bodies and melting fronts. Computed by an independent script unless a line says otherwise.</summary>
public class HeatSoakTests
{
    private static readonly double Pa = HeatSoak.DiffusivityM2PerS(0.25, 1140, 1700);
    private static readonly double PaEffusivity = Touch.Effusivity(0.25, 1140, 1700);

    [Fact]
    public void Polyamide_soaks_up_heat_as_in_the_script()
    {
        Printed.Agree("PA", Printed.Computed, "1.28999e-7, 696.0603", Pa, PaEffusivity);
        Printed.Agrees("flux", Printed.Computed, "78542.0", HeatSoak.StepFluxWPerM2(PaEffusivity, 200, 1));
        Printed.Agrees("energy", Printed.Computed, "157084", HeatSoak.StepEnergyJPerM2(PaEffusivity, 200, 1));
        Printed.Agrees("flux step", Printed.Computed, "162.1094", HeatSoak.FluxRiseK(PaEffusivity, 1e5, 1));
        Printed.Agrees("depth", Printed.Computed, "0.3249297", HeatSoak.DepthShare(0.5e-3, Pa, 1));
        Printed.Agrees("z", Printed.Computed, "2.873314", 2000 * Math.Sqrt(Pa) / 0.25);
        Printed.Agree("contact", Printed.Computed, "0.8138463, 0.4166636", HeatSoak.ContactShare(0, 2000, 0.25, Pa, 1), HeatSoak.ContactShare(0.3e-3, 2000, 0.25, Pa, 1));
        Printed.Agrees("copper on PA", Printed.Computed, "343.9473", Touch.ContactC(Touch.Effusivity(390, 8960, 385), 350, PaEffusivity, 25));
    }

    [Fact]
    public void A_round_source_warms_its_centre_towards_the_half_space()
    {
        double R(double seconds) => HeatSoak.DiscCentreKPerW(1.5e-3, 0.25, Pa, seconds);
        Printed.Agree("disc", Printed.Computed, "72.523, 229.0789, 553.7141, 749.5441", R(0.1), R(1), R(10), R(100));
        Assert.Equal(Spreading.CentreKPerW(0.25, 1.5e-3), R(1e16), 1e-3);
        Assert.Equal(HeatSoak.FluxRiseK(PaEffusivity, 1, 1e-3) / (Math.PI * 1.5e-3 * 1.5e-3), R(1e-3), 1e-9); // early: as if the source were endless
    }

    /// <summary>[abramowitz-stegun] Table 7.1, computed to ten digits by a second program: every row, through the depth law.</summary>
    [Fact]
    public void The_error_function_behind_the_depths_agrees_with_its_table()
    {
        var table = ReferenceCsv.Read("worked_examples/erf_table.csv");
        Assert.Equal(31, table.Rows.Length);
        Assert.All(table.Rows, row => Printed.Agrees("erf", Printed.Computed, table.Word(row, "erf"), 1 - HeatSoak.DepthShare(2 * table.Number(row, "x"), 1, 1)));
    }

    /// <summary>[incropera-dewitt] Table 5.1, computed by a second program: every row.</summary>
    [Fact]
    public void Every_slab_of_the_file_has_its_first_term()
    {
        var table = ReferenceCsv.Read("worked_examples/plane_wall_one_term.csv");
        Assert.Equal(9, table.Rows.Length);
        foreach (string[] row in table.Rows)
        {
            var term = PlaneWall.Middle(1, table.Number(row, "Bi"), 1, 1, 0);
            Printed.Agrees("zeta", Printed.Computed, table.Word(row, "zeta1"), term.Zeta);
            Printed.Agrees("C1", Printed.Computed, table.Word(row, "C1"), term.Factor);
        }

        // By hand: C₁·e^(−ζ²·Fo) at Bi 1, Fo 0.5 from the printed 0.8603 and 1.1191.
        Assert.Equal(1.1191 * Math.Exp(-0.8603 * 0.8603 * 0.5), PlaneWall.Middle(2e-3, 50, 0.1, 1e-7, 20).CentreShare, 1e-4);
    }

    [Fact]
    public void A_stiff_contact_is_a_held_face_and_shares_stay_between_none_and_all() => Gen.Select(Gen.Double[0, 2e-3], Gen.Double[0.01, 100], Gen.Double[10, 1e5]).Sample((x, t, h) =>
    {
        double share = HeatSoak.ContactShare(x, h, 0.25, Pa, t);
        Assert.InRange(share, 0, HeatSoak.DepthShare(x, Pa, t) + 1e-12);
        Assert.True(HeatSoak.ContactShare(x, 2 * h, 0.25, Pa, t) >= share - 1e-13);
        Assert.Equal(HeatSoak.DepthShare(x, Pa, t), HeatSoak.ContactShare(x, 1e12, 0.25, Pa, t), 1e-6);
    });

    [Fact]
    public void The_scaled_error_function_is_whole_where_its_two_forms_meet()
    {
        // Asymptotic series as a second method, at 8: 1/(x√π)·(1 − 1/(2x²) + 3/(4x⁴) − 15/(8x⁶) + 105/(16x⁸) − 945/(32x¹⁰)).
        double inverse = 1 / 64.0;
        double series = (1 - (inverse / 2) + (0.75 * Math.Pow(inverse, 2)) - (1.875 * Math.Pow(inverse, 3)) + (6.5625 * Math.Pow(inverse, 4)) - (29.53125 * Math.Pow(inverse, 5))) / (8 * Math.Sqrt(Math.PI));
        Assert.Equal(series, HeatSoak.ScaledErfc(8), 2e-8 * series);
        Assert.Equal(HeatSoak.ScaledErfc(5 - 1e-9), HeatSoak.ScaledErfc(5 + 1e-9), 1e-9);
    }

    [Theory]
    [InlineData(0.1, "0.2200163")]
    [InlineData(0.5, "0.4647859")]
    [InlineData(1, "0.6200626")]
    [InlineData(2, "0.8006014")]
    public void A_front_into_a_body_at_its_melting_point(double stefan, string printed) => Printed.Agrees("lambda", Printed.Computed, printed, MeltingFront.StefanLambda(stefan));

    private static MeltFront Front(double fromC, double seconds) => MeltingFront.Into(350, 220, fromC, 8e4, 0.25, 1140, 1700, 2500, seconds);

    [Fact]
    public void A_front_into_cold_polyamide()
    {
        Printed.Agrees("lambda", Printed.Computed, "0.4109106", Front(25, 1).Lambda);
        Printed.Agree("depth, mm", Printed.Computed, "0.2434024, 0.4215854", Front(25, 1).DepthM * 1e3, Front(25, 3).DepthM * 1e3);

        // The short-cut that adds the heat up to melting to the latent heat: 37 % too deep.
        double shortCut = 2500 * 130 / (8e4 + (1700 * 195.0));
        Printed.Agrees("Ste'", Printed.Computed, "0.7897934", shortCut);
        Printed.Agrees("lambda'", Printed.Computed, "0.5639546", MeltingFront.StefanLambda(shortCut));
        Assert.Equal(0.37, (MeltingFront.StefanLambda(shortCut) / Front(25, 1).Lambda) - 1, 0.005);
        Assert.Equal(MeltingFront.StefanLambda(2500 * 130 / 8e4), Front(220, 1).Lambda, 1e-9); // at the melting point Neumann is Stefan
    }

    /// <summary>Second method: heat content on a grid of 2.5 µm cells, which knows nothing of λ. Tolerance 0.5 %: a cell is 1 % of the depth.</summary>
    [Fact]
    public void A_grid_of_heat_contents_melts_to_the_same_depth()
    {
        const double cell = 2.5e-6, rho = 1140, k = 0.25, solid = 1700, liquid = 2500, latent = 8e4, melts = 220;
        const int cells = 700;
        double[] content = new double[cells];
        Array.Fill(content, rho * solid * (25 - melts));
        double[] temperature = new double[cells];
        double step = 0.45 * cell * cell / HeatSoak.DiffusivityM2PerS(k, rho, solid);
        int steps = (int)Math.Ceiling(1 / step);
        step = 1.0 / steps;
        for (int n = 0; n < steps; n++)
        {
            for (int i = 0; i < cells; i++)
            {
                double h = content[i] / rho;
                temperature[i] = h < 0 ? melts + (h / solid) : h > latent ? melts + ((h - latent) / liquid) : melts;
            }

            double into = 2 * k * (350 - temperature[0]) / cell;
            for (int i = 0; i < cells; i++)
            {
                double on = i + 1 < cells ? k * (temperature[i] - temperature[i + 1]) / cell : 0;
                content[i] += step * (into - on) / cell;
                into = on;
            }
        }

        double depth = content.Sum(h => Math.Clamp(h / (rho * latent), 0, 1)) * cell;
        Assert.Equal(depth, Front(25, 1).DepthM, 0.005 * depth);
    }

    [Fact]
    public void A_front_runs_deeper_when_hotter_longer_or_less_cold() => Gen.Select(Gen.Double[230, 450], Gen.Double[-20, 200], Gen.Double[0.1, 30]).Sample((wall, from, t) =>
    {
        double Depth(double w, double f, double s) => MeltingFront.Into(w, 220, f, 8e4, 0.25, 1140, 1700, 2500, s).DepthM;
        Assert.True(Depth(wall + 5, from, t) > Depth(wall, from, t));
        Assert.True(Depth(wall, from + 5, t) > Depth(wall, from, t));
        Assert.Equal(2 * Depth(wall, from, t), Depth(wall, from, 4 * t), 1e-9);
    });

    [Fact]
    public void Impossible_inputs_are_refused_with_their_range()
    {
        Printed.Refuses("wallC", () => MeltingFront.Into(200, 220, 25, 8e4, 0.25, 1140, 1700, 2500, 1));
        Printed.Refuses("stefanNumber", () => MeltingFront.StefanLambda(0));
        Printed.Refuses("timeS", () => HeatSoak.StepFluxWPerM2(700, 200, 0));
    }
}
