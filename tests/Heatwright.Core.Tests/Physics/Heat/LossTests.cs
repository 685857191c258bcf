using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Bars, fins, air, convection, radiation and the surface of a tool. Computed by an independent script unless a line says otherwise.</summary>
public class LossTests
{
    [Fact]
    public void A_bar_and_a_fin_have_the_resistances_of_the_script()
    {
        double area = Math.PI / 4 * 4e-3 * 4e-3;
        Printed.Agrees("bar", Printed.Computed, "298.4155", Fin.BarKPerW(0.060, area, 16));
        var fin = Fin.RoundRod(4e-3, 0.060, 16, 15);
        Printed.Agree("fin", Printed.Computed, "170.8930, 0.3106705, 1.837117", fin.ResistanceKPerW, fin.EndShare, fin.Slenderness);
        Printed.Agrees("m", Printed.Computed, "30.61862", fin.Slenderness / 0.060);
        var (own, across) = Fin.TwoPort(4e-3, 0.060, 16, 15);
        Printed.Agree("two-port", Printed.Computed, "6.476722e-3, 2.012126e-3", own, across);
        Printed.Agrees("Bi", Printed.Computed, "5.556e-4", Fin.Biot(25, 1e-3, 45));
        Printed.Agrees("Bi against a wetting melt", Printed.Computed, "0.444", Fin.Biot(2e4, 1e-3, 45));
    }

    /// <summary>[incropera-dewitt] examples 1.2, 3.9, 5.1 and 9.4: printed answers from memory, recomputed by a second program. Every row of the file.
    /// The book takes 0 °C as 273 K and σ as 5.67e-8. Tolerance: half of the last recomputed digit, and 1e-4 for that σ.</summary>
    [Fact]
    public void Every_textbook_example_comes_out_as_printed()
    {
        var rows = ReferenceCsv.Read("worked_examples/heat_transfer_textbook.csv").Rows;
        Assert.Equal(13, rows.Length);
        const double shift = -0.15; // °C: the book's 273 against 273.15
        double pipeArea = Math.PI * 0.07;
        double copperRod = RodW(398), steelRod = RodW(14);
        double diameter = 6 * 400 / (8500.0 * 400); // τ = ρcD/(6h) = 1 s, by hand
        double rayleigh = 9.8 * 2.725e-3 * (165 - 23) * 1e-3 / (22.8e-6 * 32.8e-6);
        double nusselt = Nusselt.Cylinder(rayleigh, 0.697);
        double h = nusselt * 0.0313 / 0.1;
        double convection = h * Math.PI * 0.1 * (165 - 23);
        double radiation = Radiation.RadiatedW(0.85, Math.PI * 0.1, 165 + shift, 23 + shift);
        Dictionary<string, double> worked = new()
        {
            ["Incropera ex. 1.2 bare steam pipe/emissive power"] = Radiation.RadiatedW(0.8, 1, 200 + shift, -273.14),
            ["Incropera ex. 1.2 bare steam pipe/irradiation"] = Radiation.RadiatedW(1, 1, 25 + shift, -273.14),
            ["Incropera ex. 1.2 bare steam pipe/heat loss per metre"] = (15 * pipeArea * 175) + Radiation.RadiatedW(0.8, pipeArea, 200 + shift, 25 + shift),
            ["Incropera ex. 3.9 very long rod 5 mm copper/heat loss"] = copperRod,
            ["Incropera ex. 3.9 very long rod 5 mm stainless 316/heat loss"] = steelRod,
            ["Incropera ex. 5.1 thermocouple junction/diameter for 1 s time constant"] = diameter,
            ["Incropera ex. 5.1 thermocouple junction/time to 199 C"] = WarmUp.TimeToRiseS(174, 175, 1, 1),
            ["Incropera ex. 9.4 horizontal pipe 0.1 m/Ra"] = rayleigh,
            ["Incropera ex. 9.4 horizontal pipe 0.1 m/Nu (Churchill-Chu)"] = nusselt,
            ["Incropera ex. 9.4 horizontal pipe 0.1 m/h"] = h,
            ["Incropera ex. 9.4 horizontal pipe 0.1 m/convection per metre"] = convection,
            ["Incropera ex. 9.4 horizontal pipe 0.1 m/radiation per metre"] = radiation,
            ["Incropera ex. 9.4 horizontal pipe 0.1 m/total heat loss per metre"] = convection + radiation,
        };
        foreach (string[] row in rows)
        {
            string key = row[0].Trim('"') + "/" + row[1].Trim('"');
            double value = worked[key];
            Assert.Equal(1, value / Printed.Number(row[3]), 1e-4 + (Printed.HalfLastDigit(row[3]) / value));
            if (row[2].Length > 0)
            {
                Assert.Equal(1, value / Printed.Number(row[2]), 0.03); // the printed answers carry two or three digits
            }
        }

        static double RodW(double k) => Fin.EndlessWPerK(5e-3, k, 100) * 75;
    }

    [Fact]
    public void A_fin_without_loss_is_a_bar_and_a_long_one_is_endless() => Gen.Select(Gen.Double[1e-3, 1e-2], Gen.Double[0.01, 0.1], Gen.Double[1, 400]).Sample((d, length, k) =>
    {
        double bar = Fin.BarKPerW(length, Math.PI / 4 * d * d, k);
        var (own, across) = Fin.TwoPort(d, length, k, 1e-9);
        Assert.Equal(1 / bar, own, 1e-4 / bar);
        Assert.Equal(1 / bar, across, 1e-4 / bar);
        Assert.Equal(Fin.EndlessWPerK(d, k, 1e5), 1 / Fin.RoundRod(d, length, k, 1e5).ResistanceKPerW, 0.11 * Fin.EndlessWPerK(d, k, 1e5));

        // A two-port with its far end free is the fin: Q₀ = θ₀(own − across²/own).
        var (a, b) = Fin.TwoPort(d, length, k, 20);
        Assert.Equal(1 / Fin.RoundRod(d, length, k, 20).ResistanceKPerW, a - (b * b / a), 1e-9 * a);
    });

    [Theory]
    [InlineData(300, "1.568896e-5, 0.02625200, 0.7076402, 2.217082e-5")]
    [InlineData(350, "2.056048e-5, 0.03004349, 0.6965908, 2.951587e-5")]
    [InlineData(400, "2.589630e-5, 0.03365715, 0.6886082, 3.760673e-5")]
    [InlineData(500, "3.782761e-5, 0.04040858, 0.6806828, 5.557304e-5")]
    public void Air_has_the_properties_of_the_script(double kelvin, string printed)
    {
        var air = Air.At(kelvin);
        Printed.Agree("air", Printed.Computed, printed, air.KinematicM2PerS, air.ConductivityWPerMK, air.Prandtl, air.DiffusivityM2PerS);
    }

    /// <summary>[incropera-dewitt] Table A.4, from memory, every row. 2.5 % up to 500 K, 3 % beyond: both far inside the
    /// ±20 % of any correlation that uses it.</summary>
    [Fact]
    public void Air_agrees_with_the_whole_textbook_table()
    {
        var table = ReferenceCsv.Read("materials/air_1atm.csv");
        Assert.Equal(10, table.Rows.Length);
        foreach (string[] row in table.Rows)
        {
            double kelvin = table.Number(row, "T_K");
            double within = kelvin <= 500 ? 0.025 : 0.03;
            var air = Air.At(kelvin);
            Assert.Equal(1, air.DensityKgPerM3 / table.Number(row, "rho_kg_m3"), within);
            Assert.Equal(1, air.HeatJPerKgK / (1000 * table.Number(row, "cp_kJ_kgK")), within);
            Assert.Equal(1, air.KinematicM2PerS / (1e-6 * table.Number(row, "nu_1e-6_m2_s")), within);
            Assert.Equal(1, air.ConductivityWPerMK / (1e-3 * table.Number(row, "k_1e-3_W_mK")), within);
            Assert.Equal(1, air.Prandtl / table.Number(row, "Pr"), within);
        }
    }

    [Fact]
    public void Natural_convection_has_the_published_and_computed_numbers()
    {
        // [heat-library-docs]: worked examples published there.
        Printed.Agrees("cylinder Pr 0.69 Gr 2.63e9", Printed.Published, "139.135", Nusselt.Cylinder(0.69 * 2.63e9, 0.69));
        Printed.Agrees("cylinder Pr 0.7 Gr 1e5", Printed.Published, "7.07684", Nusselt.Cylinder(0.7e5, 0.7));
        Printed.Agrees("cylinder Pr 0.69 Gr 2.63e9", Printed.Computed, "139.1349", Nusselt.Cylinder(0.69 * 2.63e9, 0.69));
        Printed.Agrees("cylinder Pr 0.7 Gr 1e5", Printed.Computed, "7.076842", Nusselt.Cylinder(0.7e5, 0.7));
        Printed.Agree("cylinder Ra 1e3", Printed.Computed, "2.607727, 2.559700", Nusselt.Cylinder(1e3, 0.7), Nusselt.CylinderLaminar(1e3, 0.7));
        Printed.Agree("plate Ra 1e5", Printed.Computed, "9.198488, 9.810146", Nusselt.Plate(1e5, 0.7), Nusselt.PlateLaminar(1e5, 0.7));
    }

    [Fact]
    public void Moving_air_has_the_computed_numbers()
    {
        Printed.Agrees("Re 500", Printed.Computed, "11.19974", Nusselt.CylinderInWind(500, 0.69));
        Printed.Agrees("Re 6071", Printed.Computed, "40.63709", Nusselt.CylinderInWind(6071, 0.70));
    }

    [Fact]
    public void Hot_cylinders_in_still_and_moving_air_have_the_coefficients_of_the_script()
    {
        Printed.Agrees("Ra", Printed.Computed, "544.0242", Nusselt.RayleighInAir(5e-3, 350, 25));
        Printed.Agrees("Nu", Printed.Computed, "2.295606", Nusselt.Cylinder(Nusselt.RayleighInAir(5e-3, 350, 25), Air.At(187.5 + 273.15).Prandtl));
        Printed.Agrees("5 mm", Printed.Computed, "17.36517", Convection.CylinderWPerM2K(5e-3, 350, 25));
        Printed.Agree("8, 12, 30 mm", Printed.Computed, "11.12585, 8.295915, 5.662750",
            Convection.CylinderWPerM2K(8e-3, 100, 25), Convection.CylinderWPerM2K(12e-3, 60, 25), Convection.CylinderWPerM2K(30e-3, 45, 25));
        Printed.Agree("0.3, 1, 3 m/s", Printed.Computed, "26.75548, 47.14513, 80.54671",
            Convection.WindWPerM2K(5e-3, 350, 25, 0.3), Convection.WindWPerM2K(5e-3, 350, 25, 1), Convection.WindWPerM2K(5e-3, 350, 25, 3));
        Printed.Agrees("mixed", Printed.Computed, "29.00020", Convection.MixedWPerM2K(5e-3, 350, 25, 0.3));
        Assert.Equal(0.67, (29.00020 / 17.36517) - 1, 0.005); // 'a waving hand raises it by about 67 %'
        Assert.Equal(Convection.CylinderWPerM2K(5e-3, 350, 25), Convection.MixedWPerM2K(5e-3, 350, 25, 0), 1e-12);
    }

    [Fact]
    public void Convection_grows_with_rise_and_speed_and_falls_with_thickness() => Gen.Select(Gen.Double[1e-3, 0.05], Gen.Double[40, 500], Gen.Double[0.1, 5]).Sample((d, hot, v) =>
    {
        Assert.True(Convection.CylinderWPerM2K(1.1 * d, hot, 25) < Convection.CylinderWPerM2K(d, hot, 25));
        Assert.True(Convection.CylinderWPerM2K(d, hot + 10, 25) * (hot + 10 - 25) > Convection.CylinderWPerM2K(d, hot, 25) * (hot - 25));
        Assert.True(Convection.WindWPerM2K(d, hot, 25, 1.1 * v) > Convection.WindWPerM2K(d, hot, 25, v));
        double still = Convection.CylinderWPerM2K(d, hot, 25), moving = Convection.WindWPerM2K(d, hot, 25, v), mixed = Convection.MixedWPerM2K(d, hot, 25, v);
        Assert.True(mixed >= Math.Max(still, moving) && mixed <= still + moving);
    });

    [Fact]
    public void Radiation_has_the_coefficients_of_the_script()
    {
        Printed.Agree("h_r", Printed.Computed, "19.94398, 4.985994, 5.315025, 6.311593",
            Radiation.CoefficientWPerM2K(0.8, 350, 25), Radiation.CoefficientWPerM2K(0.2, 350, 25), Radiation.CoefficientWPerM2K(0.8, 45, 25), Radiation.CoefficientWPerM2K(0.95, 45, 25));
        Printed.Agrees("cooling", Printed.Computed, "603.54544", Radiation.CooledK(0.8, 1e-3, 5, 700, 60));

        // By hand: ε = 1, 1 m², 1000 K against 0 K is σ·1e12; σ = 5.670374419e-8 (CODATA 2018).
        Assert.Equal(56703.74419, Radiation.RadiatedW(1, 1, 726.85, -273.1499999), 1e-3);
    }

    [Fact]
    public void Cooling_by_radiation_solves_its_balance() => Gen.Select(Gen.Double[0.1, 1], Gen.Double[400, 1000], Gen.Double[1, 300]).Sample((e, start, t) =>
    {
        double dt = 1e-3 * t;
        double slope = (Radiation.CooledK(e, 1e-3, 5, start, t + dt) - Radiation.CooledK(e, 1e-3, 5, start, t - dt)) / (2 * dt);
        double now = Radiation.CooledK(e, 1e-3, 5, start, t);
        Assert.Equal(-e * 5.670374419e-8 * 1e-3 * Math.Pow(now, 4) / 5, slope, 1e-4 * Math.Abs(slope));
    });

    [Theory]
    [InlineData(100, "1.129772, 0.01506362, 0.01961057, 1.30185")]
    [InlineData(200, "3.691160, 0.02109234, 0.03218377, 1.525851")]
    [InlineData(300, "7.720075, 0.02807300, 0.04931041, 1.756507")]
    [InlineData(400, "13.76016, 0.03669376, 0.07263662, 1.979536")]
    public void A_bare_surface_has_loss_secant_tangent_and_exponent(double hotC, string printed)
    {
        var loss = SurfaceLoss.At(12e-4, 2.2, 0.7, hotC, 25);
        Printed.Agree("surface", Printed.Computed, printed, loss.LossW, loss.SecantWPerK, loss.TangentWPerK, loss.Exponent);
    }

    [Fact]
    public void The_tangent_is_the_slope_and_the_exponent_lies_between_its_parts() => Gen.Select(Gen.Double[0, 1], Gen.Double[0.5, 5], Gen.Double[40, 600]).Sample((e, c, hot) =>
    {
        var loss = SurfaceLoss.At(12e-4, c, e, hot, 25);
        double slope = (SurfaceLoss.At(12e-4, c, e, hot + 0.01, 25).LossW - SurfaceLoss.At(12e-4, c, e, hot - 0.01, 25).LossW) / 0.02;
        Assert.Equal(slope, loss.TangentWPerK, 1e-6 * slope);
        Assert.InRange(loss.Exponent, 1, 4);
    });

    /// <summary>A bare handle of 30 mm × 110 mm at 45 °C: about 12 W/(m²·K) and 0.12 W/K. Common practice, no source: two printed digits.</summary>
    [Fact]
    public void A_bare_handle_gives_a_tenth_of_a_watt_a_kelvin()
    {
        double h = Convection.CylinderWPerM2K(30e-3, 45, 25) + Radiation.CoefficientWPerM2K(0.95, 45, 25);
        Printed.Agrees("h", Printed.Practice, "12", h);
        Printed.Agrees("G", Printed.Practice, "0.12", h * Math.PI * 0.030 * 0.110);
    }

    [Fact]
    public void Impossible_inputs_are_refused_with_their_range()
    {
        Printed.Refuses("emissivity", () => Radiation.CoefficientWPerM2K(1.2, 100, 25));
        Printed.Refuses("surfaceC", () => Radiation.CoefficientWPerM2K(0.5, -300, 25));
        Printed.Refuses("filmK", () => Air.At(20));
        Printed.Refuses("diameterM", () => Fin.RoundRod(0, 1, 1, 1));
        Printed.Refuses("surfaceC", () => SurfaceLoss.At(1e-3, 2.2, 0.7, 20, 25));
        Printed.Refuses("rayleigh", () => Nusselt.CylinderLaminar(2e9, 0.7));
    }
}
