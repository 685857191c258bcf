using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Size, mass, packing and watt-hours. Values computed by an independent script. Tolerance: half of the last printed digit.</summary>
public class SizeTests
{
    [Fact]
    public void Prices_and_masses_roll_up()
    {
        (double mean, double doubt) = SizeAndMass.ThreePoint(1.20, 1.80, 3.60);
        Printed.Agree("RU-1", Printed.Computed, "2.0000, 0.4000", mean, doubt);
        RollUp sum = SizeAndMass.Sum([46, 46, 46, 12, 18, 9], [1, 1, 1, 0.5, 2, 0.5]);
        Printed.Agrees("RU-2", Printed.Computed, "177", sum.Total);
        Assert.Equal(Math.Sqrt(7.5), sum.Doubt, 1e-12); // by hand: 3·1 + 0.25 + 4 + 0.25
        Assert.Equal([0, 1, 2], sum.Largest);
    }

    [Fact]
    public void Cell_names_are_sizes()
    {
        (double thickness, double width, double length) = SizeAndMass.PouchCell("503450")!.Value;
        double volume = thickness * width * length;
        Printed.Agree("RU-3", Printed.Computed, "8.500, 435.294", volume * 1e6, 1.0 * 3.7 / (volume * 1000));
        (double diameter, double tall) = SizeAndMass.RoundCell("18650")!.Value;
        Printed.Agree("RU-4", Printed.Computed, "761.77, 265.26", 3.5 * 3.6 / (Protection.CylinderM3(diameter, tall) * 1000), 3.5 * 3.6 / 0.0475);
        Assert.Equal((0.021, 0.070), SizeAndMass.RoundCell("21700"));
        Assert.Null(SizeAndMass.RoundCell("AA"));
        Assert.Null(SizeAndMass.RoundCell("503450"));
        Assert.Null(SizeAndMass.PouchCell("18650"));
    }

    [Fact]
    public void Cells_and_boards_fit_or_do_not()
    {
        Printed.Agrees("FI-1", Printed.Computed, "30.16581", Packing.TubeM(3, 14));
        Printed.Agrees("FI-2", Printed.Computed, "20.78461", Packing.WidestBesideCellM(24, 14, 4));
        Printed.Agrees("FI-3", Printed.Computed, "19.59592", Packing.WidestInTubeM(20, 4));
        Printed.Agrees("FI-4", Printed.Computed, "19.69772", Packing.DiagonalM(18, 8));
        Assert.True(Packing.RectangleInTube(18, 8, 20));
        Assert.False(Packing.RectangleInTube(18, 9, 20));
    }

    /// <summary>[graham-1998] for the constants (published).</summary>
    [Fact]
    public void Equal_circles_in_a_circle()
    {
        Printed.Agree("c_k", Printed.Published, "1, 2, 2.1547005, 2.4142136, 2.7013016, 3, 3", [.. Enumerable.Range(1, 7).Select(Packing.TubeOver)]);
        // Second method: a ring of k touching circles, 1 + 1/sin(π/k); the seventh sits in the middle of the ring of six.
        Assert.All(Enumerable.Range(2, 5), k => Assert.Equal(1 + (1 / Math.Sin(Math.PI / k)), Packing.TubeOver(k), 1e-12));
    }

    [Fact]
    public void The_widest_board_touches_the_wall_with_its_corners() => Gen.Select(Gen.Double[10, 50], Gen.Double[0.2, 0.8], Gen.Double[0.02, 0.4]).Sample((inner, cellShare, boardShare) =>
    {
        double cell = inner * cellShare;
        double board = inner * boardShare;
        double width = Packing.WidestBesideCellM(inner, cell, board);
        if (width > 0.01)
        {
            double centre = cell - (inner / 2) + (board / 2);
            Assert.True(Packing.RectanglesInTube([new(0, centre, width * (1 - 1e-9), board)], inner));
            Assert.False(Packing.RectanglesInTube([new(0, centre, width * (1 + 1e-6), board)], inner));
        }
    });

    [Fact]
    public void Overlapping_boards_do_not_fit()
    {
        Assert.True(Packing.RectanglesInTube([new(0, -3, 10, 4), new(0, 3, 10, 4)], 20));
        Assert.False(Packing.RectanglesInTube([new(0, -1, 10, 4), new(0, 1, 10, 4)], 20));
        Assert.False(Packing.RectanglesInTube([new(4, 0, 10, 10), new(-7, 0, 1, 1)], 20));
    }

    [Fact]
    public void Boxes_turn_over_to_fit()
    {
        Assert.True(Packing.BoxInBox(new(50, 34, 5), new(6, 51, 35)));
        Assert.False(Packing.BoxInBox(new(50, 34, 7), new(6, 51, 35)));
        Assert.True(Packing.Stack([new(65, 18, 18), new(30, 10, 16)], 5, new(100, 20, 18)));
        Assert.False(Packing.Stack([new(65, 18, 18), new(31, 10, 16)], 5, new(100, 20, 18)));
        Assert.True(Packing.Stack([new(10, 20, 10)], 0, new(10, 10, 20)));
        Assert.False(Packing.Stack([new(10, 21, 10)], 0, new(10, 10, 20)));
        Assert.Equal(10, Packing.LengthLeftM(140, [65, 30], [30, 5]), 1e-12);
    }

    [Fact]
    public void A_box_fits_in_itself_whatever_way_it_lies() => Gen.Select(Gen.Double[1, 100], Gen.Double[1, 100], Gen.Double[1, 100]).Sample((a, b, c) =>
    {
        Assert.True(Packing.BoxInBox(new(a, b, c), new(c, a, b)));
        Assert.False(Packing.BoxInBox(new(a * 1.01, b * 1.01, c * 1.01), new(c, a, b)));
    });

    /// <summary>[un-38-3] limits as read in transport guides (published); WH-1 and WH-2 stand in PackTests.</summary>
    [Fact]
    public void Small_packs_stay_below_the_transport_limits()
    {
        Assert.True(TransportCheck.IsSmall(2, 1, 3.7, 3.0 * 3600));
        Assert.False(TransportCheck.IsSmall(1, 1, 3.7, 5.5 * 3600)); // 20.35 Wh in one cell
        Assert.False(TransportCheck.IsSmall(6, 2, 3.6, 2.5 * 3600)); // 108 Wh
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("circles", () => Packing.TubeOver(8));
        Printed.Refuses("diameterM", () => Packing.TubeM(3, -14));
        Printed.Refuses("likely", () => SizeAndMass.ThreePoint(1, 0.5, 2));
        Printed.Refuses("values", () => SizeAndMass.Sum([-1], default));
        Printed.Refuses("box", () => Packing.BoxInBox(new(0, 1, 1), new(1, 1, 1)));
        Printed.Refuses("gapM", () => Packing.Stack([new(1, 1, 1)], -1, new(1, 1, 1)));
        Printed.Refuses("partsM", () => Packing.LengthLeftM(100, [-1], []));
    }
}
