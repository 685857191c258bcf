using Heatwright.BuildSheets;
using Heatwright.Handbook;
using Heatwright.Physics;
using Heatwright.Quantities;
using Heatwright.Tests.Physics;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Fuse, wire, switch, trace, board, charger and reading window of a build sheet, by hand and by the published rows.</summary>
public sealed class SheetSizesTests
{
    /// <summary>Ratings of small fuses and lead currents: common practice, no source.</summary>
    [Fact]
    public void A_fuse_and_a_wire_are_the_next_that_are_made()
    {
        Assert.Equal([4, 5, 0.5, 35], ((double[])[4.0, Fuse.LeastRatingA(3, 60), 0.1, 31]).Select(PowerDesign.RatingA)); // 3 A at 60 °C: 3/0.75/0.9 = 4.444 A
        Assert.Equal([(30, 0.7), (24, 3), (22, 5), (18, 10)], ((double[])[0.5, 3.0, 3.01, 12]).Select(PowerDesign.WireFor)); // 12 A: the thickest there is, and what it carries
    }

    /// <summary>20 mΩ at 4.5 V, threshold 1.0 V, all channel: at 2.5 V 20·3.5/1.5 = 46.667 mΩ. A sheet with the points 20 mΩ at 4.5 V and 34 mΩ at 2.5 V has less.</summary>
    [Fact]
    public void The_ohms_of_a_switch_are_never_too_good()
    {
        Assert.Equal(46.6667e-3, PowerDesign.OnOhm(20e-3, 4.5, 2.5, 1.0), 1e-7);
        Assert.True(PowerDesign.OnOhm(20e-3, 4.5, 2.5, 1.0) >= 34e-3);
        Assert.Equal(20e-3, PowerDesign.OnOhm(20e-3, 4.5, 4.5, 1.0), 1e-12);
        Assert.Equal(20e-3, PowerDesign.OnOhm(20e-3, 4.5, 10, 1.0), 1e-12); // more gate than the sheet's gains nothing
        Assert.Equal(double.PositiveInfinity, PowerDesign.OnOhm(20e-3, 4.5, 1.0, 1.0));
        Assert.Equal(double.PositiveInfinity, PowerDesign.OnOhm(20e-3, 1.2, 3.3, 1.5)); // sheet point below the threshold: not a point to reckon from
    }

    /// <summary>[ipc-2221] curve fit in public transcriptions: 3 A, 10 K, outer 1.36699 mm, inner 3.55613 mm, 1 A outer 0.30038 mm.</summary>
    [Fact]
    public void A_trace_is_drawn_on_the_next_tenth()
    {
        Assert.Equal(1.4e-3, PowerDesign.DrawnM(Trace.WidthM(3, 10)), 1e-9);
        Assert.Equal(3.6e-3, PowerDesign.DrawnM(Trace.WidthM(3, 10, Trace.OunceM, 1)), 1e-9);
        Assert.Equal(0.4e-3, PowerDesign.DrawnM(0.30038e-3), 1e-9);
        Assert.Equal(0.3e-3, PowerDesign.DrawnM(0.3e-3), 1e-9);
        Assert.Equal(0.2e-3, PowerDesign.DrawnM(0.01e-3), 1e-9);
    }

    /// <summary>By hand: 7.4/(2.4 + 0.1) = 2.96 A; slopes 1/2.5 = 0.4 A/V and −7.4/6.25 = −1.184 A/Ω; doubts 0.05 V, 0.03 Ω, 0.02 Ω.</summary>
    [Fact]
    public void The_current_of_a_direct_path_keeps_the_doubt_of_each_cause()
    {
        static Input Of(string name, double value, double doubt, Unit unit) => new(name, Estimate.Within(value, doubt * Math.Sqrt(3), unit, name, CauseGroup.Assumption, new Origin.Assumed("test")));
        var amps = PowerDesign.DirectA("law", Of("v", 7.4, 0.05, Units.Volt), Of("r", 2.4, 0.03, Units.Ohm), Of("l", 0.1, 0.02, Units.Ohm));
        Assert.Equal(2.96, amps.Value, 1e-12);
        Assert.Equal(Math.Sqrt((0.02 * 0.02) + (1.184 * 1.184 * ((0.03 * 0.03) + (0.02 * 0.02)))), amps.StandardDoubt, 1e-6);
        Assert.Equal(3, amps.Doubts.Causes.Count());
        var one = Estimate.Exact(1, Units.Ampere, new Origin.Assumed("test"));
        Assert.Same(amps, new PowerPoint(one, one, one, amps, one, one, one, one).MostA); // through a module the largest current is the last
    }

    /// <summary>0.62 Ah, 0.15 Ω, rested volts straight at 0.75 V: published worked row 106.560 and 17.1312 min at 0.31 A, ending at 31 mA.</summary>
    [Fact]
    public void A_charge_takes_constant_current_then_constant_volts()
    {
        var straight = new OcvTable([0, 1], [3.45, 4.2]);
        var design = ChargeDesign.Of(straight, 0.62 * 3600, 0.15, 1, 4.2, 0.31, 0.1, 5, 0.25, 0.88, 1000, null);
        Assert.Equal(106.560, design.Course.CurrentS / 60, 5e-4);
        Assert.Equal(17.1312, design.Course.VoltageS / 60, 5e-3);
        Assert.Equal(3225.806, design.SetOhm, 5e-4); // 1000 V / 0.31 A
        Assert.False(design.SourceTooWeak);
        Assert.Equal((0, double.PositiveInfinity), (design.HeatW, design.FoldBackA));
    }

    /// <summary>2.0 Ah of published rested volts, 0.15 Ω, 1 A, folds back at 110 °C in 40 °C over 60 K/W: published worked row 138.67 min, without fold-back 130.52 min.</summary>
    [Fact]
    public void A_hot_linear_charger_takes_longer()
    {
        var heat = new ChargerHeat(5, 110, 40, 60);
        var design = ChargeDesign.Of(OcvTables.B, 7200, 0.15, 1, 4.2, 1.0, 0.1, 5, 0.25, 0.88, 1200, heat);
        Assert.Equal(138.67, design.Course.TotalS / 60, 0.02);
        double startV = OcvTables.B.VoltsAt(0.05) + 0.15;
        Assert.Equal(5 - startV, design.HeatW, 1e-9);
        Assert.Equal(70.0 / 60 / (5 - startV), design.FoldBackA, 1e-9); // (110 − 40)/60 K/W over the volts it drops
        Assert.Equal((1.0, 1200.0), (design.SourceA, design.SetOhm));
        Assert.True(ChargeDesign.Of(OcvTables.B, 7200, 0.15, 1, 4.2, 1.0, 0.1, 4.2, 0.25, 0.88, 1200, new ChargerHeat(4.2, 110, 40, 60)).SourceTooWeak);
    }

    /// <summary>Two cells at 1 A, 8.4 V, 0.88: 1.90909 A at 5 V without a cable (published worked row). With 0.25 Ω the drop is that of the source's own
    /// current: 0.25·I² − 5·I + 9.54545 = 0, I = 2.13753 A by hand. 1 Ω lets 6.25 W through: not enough.</summary>
    [Fact]
    public void The_cable_of_a_source_drops_volts_at_its_own_current()
    {
        ChargeDesign With(double cable) => ChargeDesign.Of(OcvTables.B, 7200, 0.15, 2, 4.2, 1.0, 0.1, 5, cable, 0.88, 1000, null);
        Assert.Equal(1.90909, With(0).SourceA, 1e-5);
        Assert.Equal((5 - Math.Sqrt(25 - 9.545454545)) / 0.5, With(0.25).SourceA, 1e-6);
        Assert.InRange(With(0.25).SourceA, 2.13, 2.14);
        Assert.True(With(1).SourceTooWeak);
        Assert.False(With(0.25).SourceTooWeak);
        Assert.Equal(2.5, With(1).SourceA, 1e-12);
    }

    /// <summary>By hand: 600 mm² fill half of two sides: 600 mm²; between edges of 1 mm 16 mm are free: 37.5 + 2, up to 40 mm; 720 mm². A square millimetre more
    /// of parts is 18/(16·0.5·2) = 1.125 mm² more of board.</summary>
    [Fact]
    public void A_board_is_as_long_as_its_areas_make_it()
    {
        BoardArea[] areas = [new("parts", 400, "counted"), new("copper", 200, "spreads heat")];
        var board = BoardOutline.Of(areas, 2, 18);
        Assert.Equal((40, 720, 9.6), (board.LengthMm, board.AreaMm2.Value, board.HeightMm));
        Assert.Equal(0.2 / Math.Sqrt(3) * Math.Sqrt((720.0 * 720) + (450.0 * 450) + (225.0 * 225)), board.AreaMm2.StandardDoubt, 1e-9);
        Assert.Equal(2, Assert.IsType<Origin.WorkedOut>(board.AreaMm2.Origin).From.Count);
        var one = BoardOutline.Of(areas, 1, 18);
        Assert.Equal((77, 1386, 5.6), (one.LengthMm, one.AreaMm2.Value, one.HeightMm)); // 1200/16 + 2
        Assert.Equal(152, BoardOutline.Of(areas, 2, 6).LengthMm); // 600/4 + 2: the free edge stays on a narrow board
    }

    [Fact]
    public void A_reading_window_waits_until_the_filter_has_forgotten_the_heater()
    {
        var wanted = new ChainWanted(Thermocouples.TypeK, 450, 10, 50, 3.3, 0.01, 12) { OutputBiasV = 0.015, Share = 0.95 };
        var chain = ChainSearch.FromSeries(wanted, "E24").Value;
        var window = ReadWindow.Of(chain, 1000, 100e-9, 0.7, 50e-6, 160e-6, 0.1);

        // Second method: 0.7 V decaying through 1 kΩ and 100 nF in steps of a nanosecond, until half a step of the converter is left at the amplifier's input.
        double error = 0.5 * 3.3 / 4096 / (1 + (chain.Pair.FeedbackOhm / chain.Pair.GroundOhm)), volts = 0.7;
        int n = 0;
        for (; volts > error; n++)
        {
            volts -= volts * 1e-9 / 1e-4;
        }

        Assert.Equal((n * 1e-9) + 50e-6 + chain.SettleS, window.SettleS, 1e-6);
        Assert.Equal(1e-4, window.FilterS, 1e-15);
        Assert.Equal(2 * window.SettleS, window.WaitS, 1e-15);
        Assert.Equal(1 - ((window.WaitS + 160e-6) / 0.1), window.MostDuty, 1e-12);
        Assert.Equal(0, (window with { FrameS = window.WaitS }).MostDuty); // no room for the window: no duty at all
        Assert.Equal(2 * (50e-6 + chain.SettleS), ReadWindow.Of(chain, 1000, 0, 0.7, 50e-6, 160e-6, 0.1).WaitS, 1e-12);
    }
}
