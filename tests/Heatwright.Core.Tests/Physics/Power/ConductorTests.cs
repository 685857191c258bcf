using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Wires, traces, vias, fuses. Values computed by an independent script unless a line says otherwise. Tolerance: half of the last printed digit.</summary>
public class ConductorTests
{
    /// <summary>[astm-b258] definition of the gauge, [iec-60028] copper.</summary>
    [Theory]
    [InlineData(18, "1.0237, 0.8230, 20.948")]
    [InlineData(20, "0.8118, 0.5176, 33.309")]
    [InlineData(22, "0.6438, 0.3255, 52.963")]
    [InlineData(24, "0.5106, 0.2047, 84.215")]
    [InlineData(26, "0.4049, 0.1288, 133.91")]
    [InlineData(28, "0.3211, 0.08098, 212.92")]
    [InlineData(30, "0.2546, 0.05093, 338.56")]
    public void A_gauge_number_is_a_diameter(int gauge, string printed) => Printed.Agree($"gauge {gauge}", Printed.Computed, printed,
        Wire.DiameterM(gauge) * 1000, Wire.AreaM2(gauge) * 1e6, Wire.OhmByGauge(gauge, 1) * 1000);

    [Fact]
    public void The_gauge_table_is_met_row_by_row()
    {
        int rows = 0;
        foreach (string[] row in Printed.Rows("standards/awg_even.csv"))
        {
            double gauge = row[0].EndsWith("/0", StringComparison.Ordinal) ? 1 - Printed.Number(row[0][..^2]) : Printed.Number(row[0]);
            Printed.Agree($"gauge {row[0]}", Printed.Computed, row[1], Wire.DiameterM(gauge) * 1000);
            // Areas and resistances carry five digits; the table rounds the resistivity to 1.7241e-8, which is 2.4e-5 below 1/58.
            Printed.Agrees($"gauge {row[0]} area", Printed.Computed, row[2], Wire.AreaM2(gauge) * 1e6, 6e-5 * Printed.Number(row[2]));
            Printed.Agrees($"gauge {row[0]} resistance", Printed.Computed, row[3], Wire.OhmByGauge(gauge, 1000), 6e-5 * Printed.Number(row[3]));
            rows++;
        }

        Assert.Equal(22, rows);
    }

    [Fact]
    public void Copper_leads_have_ohms()
    {
        Printed.Agree("CU-1", Printed.Computed, "3.44828, 3.99034", Wire.OhmByArea(0.1, 0.5e-6) * 1000, Wire.OhmByArea(0.1, 0.5e-6, 60) * 1000);
        Printed.Agrees("CU-2", Printed.Computed, "75.7936", 3 * Wire.OhmByGauge(24, 0.3) * 1000);
    }

    /// <summary>[ipc-2221] curve fit, published on several public pages.</summary>
    [Fact]
    public void Trace_widths()
    {
        Width("IP-1", 3, 10, 0, "74.1616, 53.8183, 1.36699");
        Width("IP-2", 3, 10, 1, "192.9270, 140.0051, 3.55613");
        Printed.Agree("IP-3", Printed.Computed, "71.4882, 1.81580", Trace.WidthM(5, 20) / 25.4e-6, Trace.WidthM(5, 20) * 1000);
        Printed.Agree("IP-4", Printed.Computed, "11.8258, 0.30038", Trace.WidthM(1, 10) / 25.4e-6, Trace.WidthM(1, 10) * 1000);
        Printed.Agrees("IP-5", Printed.Computed, "6.37749", Trace.CurrentOfWidthA(100 * 25.4e-6, 20));

        static void Width(string id, double amps, double rise, double inner, string printed) => Printed.Agree(id, Printed.Computed, printed,
            Trace.AreaM2(amps, rise, inner > 0) / (25.4e-6 * 25.4e-6), Trace.WidthM(amps, rise, inner: inner) / 25.4e-6, Trace.WidthM(amps, rise, inner: inner) * 1000);
    }

    [Fact]
    public void Sheets_and_vias()
    {
        double trace = Trace.Ohm(0.040, 0.003, 35e-6);
        Printed.Agree("IP-6", Printed.Computed, "0.49261, 6.5681, 19.7044", Trace.SheetOhm(35e-6) * 1000, trace * 1000, trace * 3000);
        double area = Trace.ViaAreaM2(0.3e-3, 25e-6);
        Printed.Agree("IP-7", Printed.Computed, "0.025525, 39.5645, 0.95117, 1.29036, 1.08073", area * 1e6, area / (25.4e-6 * 25.4e-6),
            Trace.ViaCurrentA(0.3e-3, 25e-6, 10), Trace.ViaCurrentA(0.3e-3, 25e-6, 20), Wire.Ohm(1.6e-3, area) * 1000);
    }

    [Fact]
    public void The_trace_table_is_met_row_by_row()
    {
        int rows = 0;
        foreach (string[] row in Printed.Rows("standards/ipc2221_trace_current.csv"))
        {
            double area = Printed.Number(row[2]) * 1e-3 * Printed.Number(row[3]) * 1e-6;
            bool inner = row[0] == "internal";
            Printed.Agree($"row {rows + 1}", Printed.Computed, $"{row[4]}, {row[5]}", area / (25.4e-6 * 25.4e-6), Trace.CurrentA(area, Printed.Number(row[1]), inner));
            rows++;
        }

        Assert.Equal(72, rows);
    }

    [Fact]
    public void Width_and_current_are_each_others_inverse() => Gen.Select(Gen.Double[0.1, 35], Gen.Double[10, 100], Gen.Double[10e-6, 140e-6], Gen.Int[0, 1]).Sample((amps, rise, copper, inner) =>
    {
        double width = Trace.WidthM(amps, rise, copper, inner);
        Assert.Equal(amps, Trace.CurrentOfWidthA(width, rise, copper, inner), 1e-9 * amps);
        Assert.True(Trace.WidthM(amps * 1.1, rise, copper, inner) > width);
        Assert.True(Trace.WidthM(amps, rise * 1.1, copper, inner) < width);
    });

    [Fact]
    public void A_drop_budget_adds_every_item()
    {
        double drop = Wire.DropV(3, 0.020, 0.050, 0.020, 0.020, 0.015);
        Printed.Agree("VD-1", Printed.Computed, "0.3750, 12.500", drop, drop / 3.0 * 100);
        Assert.Equal([DropVerdict.TooMuch, DropVerdict.Much, DropVerdict.Fine], ((double[])[0.375, 0.2, 0.1]).Select(volts => Wire.JudgeDrop(volts, 3)));
    }

    /// <summary>Rating rule: common practice, no source. [brooks-adam] for melting currents.</summary>
    [Fact]
    public void Fuses_and_melting_copper()
    {
        Printed.Agree("FU-1", Printed.Practice, "4.000, 4.4444", Fuse.LeastRatingA(3), Fuse.LeastRatingA(3, 60));
        Printed.Agree("FU-2", Printed.Computed, "4.0000, 1.7500, 15.60938", DirectDrive.CurrentA(4.2, 1.05), DirectDrive.CurrentA(4.2, 2.4), Fuse.InrushA2S(4.0, 1.75, 1.5));
        Printed.Agree("FU-3", Printed.Computed, "23.3792, 73.9316", Fuse.OnderdonkA(Wire.AreaM2(28), 1), Fuse.OnderdonkA(Wire.AreaM2(28), 0.1));
        Printed.Agree("FU-4", Printed.Computed, "59.1096, 14.5613, 29.1959", Fuse.OnderdonkA(Wire.AreaM2(24), 1), Fuse.PreeceA(Wire.DiameterM(28)), Fuse.PreeceA(Wire.DiameterM(24)));
        Assert.True(Fuse.Wears(15.6, 50));
        Assert.False(Fuse.Wears(15.6, 60));
        Assert.Equal(46.25, Fuse.MustBreakA(3.7, 0.080), 1e-12); // by hand
    }

    [Fact]
    public void The_rounded_metric_form_of_the_melting_law_gives_2_4_percent_less()
    {
        // [brooks-adam] second form: 8.9e-6·t·(I/A)² = log10(…), A in mm².
        double log = Math.Log10(((1083 - 25) / (234.0 + 25)) + 1);
        double rounded = Wire.AreaM2(24) * 1e6 * Math.Sqrt(log / 8.9e-6);
        Printed.Agrees("row 'conductor melting, short time'", Printed.Published, "2.4", (1 - (rounded / Fuse.OnderdonkA(Wire.AreaM2(24), 1))) * 100);
    }

    [Fact]
    public void Both_forms_of_the_long_melting_law_agree() =>
        // [brooks-adam]: 80.03 for millimetres, 10244 for inches; both rounded to four and five digits.
        Assert.Equal(10244 * Math.Pow(Wire.DiameterM(24) / 25.4e-3, 1.5), Fuse.PreeceA(Wire.DiameterM(24)), 3e-4 * 29.2);

    [Fact]
    public void Inrush_above_the_steady_current_is_the_fine_sum() => Gen.Select(Gen.Double[0.1, 5], Gen.Double[0.01, 10], Gen.Double[0.1, 10]).Sample((hot, over, tau) =>
    {
        // Second method: midpoint sum of I² − I_ss² over 40 time constants.
        double sum = 0;
        for (int i = 0; i < 20000; i++)
        {
            double amps = hot + (over * Math.Exp(-(i + 0.5) * 0.002));
            sum += ((amps * amps) - (hot * hot)) * 0.002 * tau;
        }

        Assert.Equal(sum, Fuse.InrushA2S(hot + over, hot, tau), 1e-5 * sum);
    }, iter: 20);

    /// <summary>From memory: 65 to 75 % of the label at 60 °C.</summary>
    [Fact]
    public void A_polymer_fuse_holds_less_in_a_warm_handle() => Assert.InRange(Fuse.PolymerHoldA(1, 60), 0.65, 0.75);

    [Fact]
    public void Two_lengths_in_a_row_add_and_two_side_by_side_halve() => Gen.Select(Gen.Double[0.01, 5], Gen.Double[1e-8, 1e-5], Gen.Double[-40, 120]).Sample((length, area, at) =>
    {
        Assert.Equal(2 * Wire.Ohm(length, area, at), Wire.Ohm(2 * length, area, at), 1e-9);
        Assert.Equal(Wire.Ohm(length, area, at) / 2, Wire.Ohm(length, 2 * area, at), 1e-9 * Wire.Ohm(length, area, at));
        Assert.Equal(Wire.Ohm(length, area), Trace.Ohm(length, area / 35e-6, 35e-6), 1e-9 * Wire.Ohm(length, area));
    });

    [Fact]
    public void Lead_currents_of_the_trade_stand_in_a_table()
    {
        Table table = Tables.Find("lead-currents");
        Assert.Equal(7, table.Rows.Count);
        Assert.All(table.Rows.Zip(table.Rows.Skip(1)), pair => Assert.True(pair.First.Number("current") > pair.Second.Number("current")));
        Assert.True(Tables.Find("connectors").Row("miniature slide switch").Number("current-high") < 1);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("lengthM", () => Wire.OhmByArea(-1, 1e-6));
        Printed.Refuses("areaM2", () => Wire.OhmByArea(1, 0));
        Printed.Refuses("gauge", () => Wire.DiameterM(80));
        Printed.Refuses("currentA", () => Trace.WidthM(-5, 20));
        Printed.Refuses("riseK", () => Trace.WidthM(5, 0));
        Printed.Refuses("copperM", () => Trace.WidthM(5, 20, 0));
        Printed.Refuses("seriesOhm", () => Wire.DropV(3, 0.02, -0.01));
        Printed.Refuses("coldA", () => Fuse.InrushA2S(1, 2, 1));
        Printed.Refuses("seconds", () => Fuse.OnderdonkA(1e-7, 0));
        Printed.Refuses("platingM", () => Trace.ViaAreaM2(0.3e-3, 0));
    }
}
