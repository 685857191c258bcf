using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Packing, packs, unlike cells, charging and loss fits: the figures by hand, and the limits themselves.</summary>
public class FitAndPackLimitTests
{
    [Fact]
    public void Just_so_is_a_fit()
    {
        Assert.True(Packing.RectangleInTube(6, 8, 10));
        Assert.False(Packing.RectangleInTube(6, 8, 9.99));
        Assert.True(Packing.RectanglesInTube([new(0, 0, 6, 8)], 10));
        Assert.False(Packing.RectanglesInTube([new(0, 0, 6, 8)], 9.99));
        Assert.True(Packing.RectanglesInTube([new(1, 2, 4, 4)], 10));          // corner 3, 4
        Assert.False(Packing.RectanglesInTube([new(1, 2, 4.01, 4)], 10));
        Assert.True(Packing.RectanglesInTube([new(-1, -2, 4, 4)], 10));
        Assert.True(Packing.RectanglesInTube([new(-1.5, 0, 3, 4), new(1.5, 0, 3, 4)], 10));     // side by side, touching
        Assert.False(Packing.RectanglesInTube([new(-1.49, 0, 3, 4), new(1.5, 0, 3, 4)], 10));
        Assert.True(Packing.RectanglesInTube([new(0, -1.5, 4, 3), new(0, 1.5, 4, 3)], 10));     // one above the other
        Assert.False(Packing.RectanglesInTube([new(0, -1.49, 4, 3), new(0, 1.5, 4, 3)], 10));
        Assert.False(Packing.RectanglesInTube([new(0, 0, 1, 1), new(3, 0, 1, 1), new(0.5, 0.5, 1, 1)], 10));
        Printed.Refuses("rectangles", () => Packing.RectanglesInTube([new(0, 0, 0, 1)], 10));
        Printed.Refuses("rectangles", () => Packing.RectanglesInTube([new(0, 0, 1, 0)], 10));
    }

    [Fact]
    public void Boxes_and_lengths_just_so()
    {
        Box outer = new(3, 2, 1);
        Assert.All((Box[])[new(1, 2, 3), new(3, 2, 1), new(2, 1, 3), new(0.5, 2, 3), new(1, 2, 2)], box => Assert.True(Packing.BoxInBox(box, outer)));
        Assert.All((Box[])[new(1.01, 2, 3), new(1, 2.01, 3), new(1, 2, 3.01), new(1.5, 1.5, 1.5)], box => Assert.False(Packing.BoxInBox(box, outer)));
        Box tool = new(10, 2, 1);
        Assert.True(Packing.Stack([new(4, 2, 1), new(4, 1, 2)], 2, tool));     // 4 + 2 + 4
        Assert.False(Packing.Stack([new(4, 2, 1), new(4, 1, 2)], 2.01, tool));
        Assert.True(Packing.Stack([new(10, 2, 1)], 5, tool));                  // one box has no gap
        Assert.False(Packing.Stack([new(10.01, 2, 1)], 0, tool));
        Assert.False(Packing.Stack([new(1, 2.01, 1)], 0, tool));
        Assert.False(Packing.Stack([new(1, 2, 1.01)], 0, tool));
        Assert.False(Packing.Stack([new(1, 1.5, 1.5)], 0, tool));
        Assert.True(Packing.Stack([], 5, tool));
        Printed.Refuses("box", () => Packing.Stack([new(1, 0, 1)], 0, tool));
        Assert.Equal(-1, Packing.LengthLeftM(10, [4, 3], [2, 2]), 1e-12);
        Printed.Refuses("gapsM", () => Packing.LengthLeftM(10, [1], [-1]));
    }

    [Fact]
    public void Chords_by_hand()
    {
        Assert.Equal(6, Packing.WidestInTubeM(10, 8), 1e-12);
        Assert.Equal(0, Packing.WidestInTubeM(10, 10));
        Assert.Equal(0, Packing.WidestInTubeM(10, 11));
        Assert.Equal(0.6, Packing.WidestInTubeM(1, 0.8), 1e-12);               // less than one of anything
        // Tube 10, cell 5: the board from 0 to 3 or 4 above the middle: 2·√(25 − 9), 2·√(25 − 16).
        Assert.Equal((8, 6), (Packing.WidestBesideCellM(10, 5, 3), Packing.WidestBesideCellM(10, 5, 4)));
        Assert.Equal(8, Packing.WidestBesideCellM(10, 2, 1), 1e-12);           // from −3 to −2: the lower face is the farther
        Assert.Equal(0, Packing.WidestBesideCellM(10, 10.01, 1));
        Assert.Equal(0, Packing.WidestBesideCellM(10, 10, 1));
        Assert.Equal([1.0, 2, 3, 3], ((int[])[1, 2, 6, 7]).Select(Packing.TubeOver));
        Printed.Refuses("circles", () => Packing.TubeOver(0));
    }

    [Fact]
    public void Cells_by_their_names()
    {
        Assert.Equal(18 * 65 * 1e-6, SizeAndMass.RoundCell("1865")!.Value.DiameterM * SizeAndMass.RoundCell("1865")!.Value.LengthM, 1e-15);
        Assert.Null(SizeAndMass.RoundCell("186"));
        Assert.Null(SizeAndMass.RoundCell("186500"));
        Assert.Null(SizeAndMass.RoundCell("18x50"));
        Assert.Null(SizeAndMass.PouchCell("50345"));
        Assert.Null(SizeAndMass.PouchCell("5034500"));
        Assert.Null(SizeAndMass.PouchCell("50345x"));
        Assert.Equal(Math.PI * 1e-6, SizeAndMass.NamedCellM3("20100"), 1e-15); // π/4·20²·10 mm³
        Assert.Equal(8.5e-6, SizeAndMass.NamedCellM3("503450"), 1e-15);
        Assert.All((string[])["00650", "18000", "003450", "500050", "503400", "18650x", ""], name => Assert.Throws<ArgumentOutOfRangeException>(() => SizeAndMass.NamedCellM3(name)));
        Assert.Throws<ArgumentNullException>(() => SizeAndMass.NamedCellM3(null!));
    }

    [Fact]
    public void Sums_and_guesses_by_hand()
    {
        RollUp sum = SizeAndMass.Sum([1, 5, 3, 4], [0.3, 0.4, 0, 0]);
        Assert.Equal((13, 0.5), (sum.Total, Math.Round(sum.Doubt, 12)));
        Assert.Equal([1, 3, 2], sum.Largest);
        Assert.Equal(0, SizeAndMass.Sum([1, 2], []).Doubt);
        Assert.Equal(new ThreePointGuess(2, 0.5), SizeAndMass.Guess(1, 1.75, 4));   // (1 + 7 + 4)/6, 3/6
        Assert.Equal((2.0, 0.0), SizeAndMass.ThreePoint(2, 2, 2));
        Printed.Refuses("likely", () => SizeAndMass.ThreePoint(1, 2.1, 2));
        Printed.Refuses("likely", () => SizeAndMass.ThreePoint(1, 0.9, 2));
        Printed.Refuses("doubts", () => SizeAndMass.Sum([1], [-1]));
    }

    [Fact]
    public void A_pack_part_by_part()
    {
        // 2/3·0.3 + 3·0.01 + 0.04 + 0.05 + 0.06 + 0.07
        Assert.Equal(0.45, Pack.Ohm(2, 3, 0.3, 0.01, 0.04, 0.05, 0.06, 0.07), 1e-12);
        Printed.Refuses("parallel", () => Pack.Ohm(1, 0, 0.03));
        Printed.Refuses("openV", () => Pack.NodeV([], [], 1));
        Printed.Refuses("series", () => Pack.RatedJ(0, 1, 3.7, 100));
        Printed.Refuses("parallel", () => Pack.RatedJ(1, 0, 3.7, 100));
        Printed.Refuses("series", () => Pack.TerminalV(0, 3.7, 0.1, 1));
        Assert.True(Pack.MayJoin(0.05, 0));
        Assert.True(Pack.MayJoin(0, 0.05));
        Assert.False(Pack.MayJoin(0.0501, 0));
        Assert.False(Pack.MayJoin(0, 0.0501));
        Assert.Equal(-2, Pack.JoiningA(3.6, 4, 0.05, 0.1, 0.05), 1e-12);
        SharedCurrent shared = Pack.Shared(4, 0.1, 3.4, 0.1, 4);
        Assert.Equal((3.5, 5, -1), (Math.Round(shared.NodeV, 9), Math.Round(shared.FirstA, 9), Math.Round(shared.SecondA, 9)));   // (40 + 34 − 4)/20; (4 − 3.5)/0.1, (3.4 − 3.5)/0.1
        Assert.Equal(2 * 3 * 3.7 * 100, Pack.RatedJ(2, 3, 3.7, 100), 1e-9);
        // Transport: 20 Wh a cell, 100 Wh a pack, both still small.
        Assert.True(TransportCheck.IsSmall(1, 5, 4, 5 * 3600));
        Assert.False(TransportCheck.IsSmall(1, 6, 4, 5 * 3600));
        Assert.False(TransportCheck.IsSmall(1, 1, 4, 5.01 * 3600));
    }

    /// <summary>Order statistics of the normal law: 0, 1/√π, 3/(2√π).</summary>
    [Fact]
    public void The_weakest_of_several()
    {
        Assert.Equal(0, CellSpread.ExpectedShortfall(1), 1e-9);
        Assert.Equal(1 / Math.Sqrt(Math.PI), CellSpread.ExpectedShortfall(2), 1e-9);
        Assert.Equal(1.5 / Math.Sqrt(Math.PI), CellSpread.ExpectedShortfall(3), 1e-9);
        Assert.Equal(1000 * (1 - (0.05 / Math.Sqrt(Math.PI))), CellSpread.MeanWeakestAs(1000, 2, 4, 0.1), 1e-6);
        Assert.Equal(1000, CellSpread.WeakestAtRiskAs(1000, 1, 1, 0.1, 0.5), 1e-6);                     // the median of one
        Assert.Equal(1000 * (1 - (0.1 * 0.5 * 1.2815516)), CellSpread.WeakestAtRiskAs(1000, 2, 4, 0.1, 0.19), 1e-4); // 1 − √0.81 = 0.1
        foreach (double risk in (double[])[0, 1, double.NaN])
        {
            Printed.Refuses("risk", () => CellSpread.WeakestAtRiskAs(1000, 2, 1, 0.1, risk));
        }

        Assert.True(CellSpread.MeanWeakestAs(1000, 2, 1, 0.5) > 700);
        Printed.Refuses("spread", () => CellSpread.MeanWeakestAs(1000, 2, 1, 0.51));
        Printed.Refuses("groups", () => CellSpread.ExpectedShortfall(0));
        Printed.Refuses("parallel", () => CellSpread.MeanWeakestAs(1000, 2, 0, 0.1));
    }

    [Fact]
    public void Unlike_cells_in_a_string()
    {
        // 3 V empty, 4 V full, 0.1 Ω, 1 A; one cell of 3600 C, one of 1800 C. Cell cut-off 3.4 V is 3.5 V rested: half of the weaker one.
        OcvTable cell = OcvTable.Line(3, 4);
        Assert.Equal(900, CellSpread.GivenWithCellCutoffAs(cell, [3600, 1800], 0.1, 1, 3.4), 1e-9);
        // Pack cut-off 6.8 V: 8 − q/3600 − q/1800 − 0.2 = 6.8, q = 1200.
        Assert.Equal(1200, CellSpread.GivenWithPackCutoffAs(cell, [3600, 1800], 0.1, 1, 6.8), 1e-6);
        Assert.Equal(1800, CellSpread.GivenWithPackCutoffAs(cell, [3600, 1800], 0.1, 1, 1), 1e-6);      // never reached: the weaker one is empty
        Assert.Equal(0, CellSpread.GivenWithPackCutoffAs(cell, [3600, 1800], 0.1, 1, 7.9), 1e-6);       // cut off at once
        Printed.Refuses("capacitiesAs", () => CellSpread.GivenWithCellCutoffAs(cell, [0], 0.1, 1, 3.4));
        Printed.Refuses("capacitiesAs", () => CellSpread.GivenWithPackCutoffAs(cell, [0], 0.1, 1, 3.4));
    }

    /// <summary>3600 C, 1 A, 0.25 Ω, 1 V of slope: turns at 0.75; τ = 900 s; ends at 1 − 0.1·0.25 = 0.975.</summary>
    [Theory]
    [InlineData(0.25, 0.75, 1800, 2072.32658, 810, 0.975)]     // 900·ln 10
    [InlineData(0.9, 0.9, 0, 1247.66493, 270, 0.975)]          // starts in the tail at 0.4 A: 900·ln 4
    [InlineData(0.98, 0.98, 0, 0, 0, 0.98)]                    // 0.08 A are below its end from the start
    public void A_charge_by_hand(double from, double turn, double currentS, double voltageS, double tailAs, double final)
    {
        ChargeCourse closed = Charging.ConstantCurrentConstantVoltage(3600, 1, 0.25, 1, from, 0.1);
        ChargeCourse walked = Charging.OverTable(OcvTable.Line(3, 4), 3600, 0.25, 1, 4, from, 0.1);
        Assert.Equal(900, closed.TauS, 1e-9);
        Assert.Equal(0, walked.TauS);
        foreach (ChargeCourse course in (ChargeCourse[])[closed, walked])
        {
            Assert.Equal(turn, course.TurnCharge, 1e-9);
            Assert.Equal(currentS, course.CurrentS, 1e-6);
            Assert.Equal(voltageS, course.VoltageS, 1e-2);
            Assert.Equal(tailAs, course.TailAs, 1e-6);
            Assert.Equal(final, course.FinalCharge, 1e-9);
            Assert.Equal(currentS + voltageS, course.TotalS, 1e-2);
        }
    }

    [Fact]
    public void Charge_currents_by_hand()
    {
        Assert.Equal(1, Charging.CurrentA(4, 0.1, 1, 4.2), 1e-12);
        Assert.Equal(2, Charging.CurrentA(4, 0.1, 3, 4.2), 1e-9);
        Assert.Equal(0.5, Charging.CurrentA(4, 0.1, 3, 4.2, 0.5), 1e-12);
        Assert.Equal(0, Charging.CurrentA(4.3, 0.1, 3, 4.2));
        Printed.Refuses("capacityAs", () => Charging.OverTable(OcvTables.A, 0, 0.1, 1, 4.2, 0, 0.1));
        Printed.Refuses("endA", () => Charging.OverTable(OcvTables.A, 3600, 0.1, 1, 4.2, 0, 0));
        Printed.Refuses("endA", () => Charging.ConstantCurrentConstantVoltage(3600, 1, 0.1, 1, 0, 0));
        // Sheds (110 − 40)/100 = 0.7 W; 5 V over 4 V and 0.25 Ω: 1.4/(1 + √(1 − 0.7)).
        ChargerHeat heat = new(5, 110, 40, 100);
        Assert.Equal(0.7, heat.ShedW, 1e-12);
        Assert.Equal(1.4 / (1 + Math.Sqrt(0.3)), heat.MostA(4, 0.25), 1e-12);
        Assert.Equal(double.PositiveInfinity, heat.MostA(4, 0.4));              // 1 < 4·0.4·0.7: never so hot
        Assert.Equal(double.PositiveInfinity, heat.MostA(5, 0));
        Assert.Equal(0, new ChargerHeat(5, 110, 120, 100).ShedW);
        Assert.Equal(1, new ChargerHeat(5, 110, 10, 200).MostA(4, 0.5), 1e-9);  // ½ W, 1² = 4·0.5·0.5: one current just reaches it, 2·0.5/1
        Assert.False(ChargePower.NeverEnds(0.1, 0.1));
        Assert.True(ChargePower.NeverEnds(0.101, 0.1));
        Assert.Equal(-1, ChargePower.LeftW(5, 1, 0.8, 5), 1e-12);
    }

    [Fact]
    public void A_loss_fit_needs_three_readings_over_a_range_of_four()
    {
        Assert.True(ConverterLossFit.Fit([1, 2, 4], [0.2, 0.3, 0.5]).EnoughReadings);
        Assert.False(ConverterLossFit.Fit([1, 2, 3.99], [0.2, 0.3, 0.5]).EnoughReadings);
        Assert.False(ConverterLossFit.Fit([1, 4], [0.2, 0.5]).EnoughReadings);
        Assert.Equal(4, ConverterLossFit.Fit([2, 1, 4], [0.2, 0.3, 0.5]).Range, 1e-12);
        Printed.Refuses("currentsA", () => ConverterLossFit.Fit([], []));
        Printed.Refuses("lossesW", () => ConverterLossFit.Fit([1], [double.NaN]));
        // Losses that only fall below zero leave nothing to fit; residuals are the readings themselves.
        LossFit none = ConverterLossFit.Fit([1, 2, 3], [-1, -2, -3]);
        Assert.Equal((0.0, 0.0, 0.0), (none.Loss.FixedW, none.Loss.DropV, none.Loss.SlopeOhm));
        Assert.Equal([-1.0, -2, -3], none.ResidualsW);
        // A doubtful reading pulls less: constants 1 and 3 read at one current weigh 1/1 and 1/0.5² = 4: (1 + 12)/5 W at 1 A.
        LossFit weighed = ConverterLossFit.Fit([1, 1, 1], [1, 3, 3], [1, 0.5, 1e3]);
        Assert.Equal(2.6, weighed.Loss.FixedW + weighed.Loss.DropV + weighed.Loss.SlopeOhm, 1e-5);
    }

    [Fact]
    public void A_cell_warms_by_hand()
    {
        CellCooling cooling = SelfHeating.Cooling(0.02, 0.06, 10, 0.045, 1000);
        Assert.Equal(Math.PI * 0.02 * 0.07, cooling.AreaM2, 1e-15);
        Assert.Equal(1 / (Math.PI * 0.014), cooling.ThermalKPerW, 1e-9);
        Assert.Equal(45 / (Math.PI * 0.014), cooling.TauS, 1e-9);
        Assert.Equal(20 * (1 - Math.Exp(-1)), SelfHeating.RiseK(2, 10, 100, 100), 1e-9);
        Assert.Equal(0, SelfHeating.RiseK(2, 10, 100, 0));
        Assert.Equal((1, 1), (SelfHeating.LossW(5, 0.04), SelfHeating.LossW(-5, 0.04)));
        Assert.Equal(0.149075, SelfHeating.ReversibleAtC(5, 25, -1e-4), 1e-9);   // 5·298.15·1e-4, warming
        Assert.Equal(-0.3, SelfHeating.ReversibleW(10, 300, 1e-4), 1e-12);
    }
}
