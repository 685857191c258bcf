using CsCheck;
using Heatwright.BuildSheets;

namespace Heatwright.Tests.BuildSheets;

/// <summary>What goes side by side into a handle.</summary>
/// <remarks>Diameters of the tube over k equal circles: [graham-1998], densest packings of two to seven.</remarks>
public sealed class CrossSectionTests
{
    [Theory]
    [InlineData(1, 1.0)]
    [InlineData(2, 2.0)]
    [InlineData(3, 2.1547005)]
    [InlineData(4, 2.4142136)]
    [InlineData(5, 2.7013016)]
    public void Equal_circles_need_the_published_tube_and_not_less(int circles, double over)
    {
        var shapes = Enumerable.Repeat(new SectionShape(10, 0), circles).ToArray();
        Assert.NotNull(CrossSection.Fit(new((10 * over) + 1e-5, 0), shapes));
        Assert.Null(CrossSection.Fit(new((10 * over) - 0.01, 0), shapes));
    }

    [Fact]
    public void A_board_lies_beside_a_cell_as_wide_as_geometry_allows()
    {
        // Tube 24, cell 14, board 4 thick: 20.78461 wide (by hand: y1 = 14 − 12 = 2, y2 = 6, 2·√(144 − 36)).
        SectionShape cell = new(14, 0);
        Assert.NotNull(CrossSection.Fit(new(24, 0), [cell, new(20.784, 4)]));
        Assert.Null(CrossSection.Fit(new(24, 0), [cell, new(20.79, 4)]));
    }

    [Fact]
    public void A_board_goes_into_a_tube_by_its_diagonal()
    {
        Assert.NotNull(CrossSection.Fit(new(20, 0), [new(18, 8)])); // √(18² + 8²) = 19.698
        Assert.Null(CrossSection.Fit(new(19.69, 0), [new(18, 8)]));
    }

    [Fact]
    public void Whatever_is_found_lies_inside_and_apart() => Gen.Select(Gen.Int[1, 12], Gen.Int[0, 12], Gen.Int[1, 12], Gen.Int[0, 12], Gen.Int[1, 9], Gen.Int[12, 30]).Sample(drawn =>
    {
        var (w1, h1, w2, h2, d3, tube) = drawn;
        var hole = new SectionHole(tube, 0);
        var places = CrossSection.Fit(hole, [new(w1, h1), new(w2, h2), new(d3, 0)]);
        return places is null || (places.All(place => Well(place, tube)) && !places.SelectMany((a, i) => places.Skip(i + 1).Select(b => (a, b))).Any(pair => Overlap(pair.a, pair.b)));
    }, iter: 300);

    [Fact]
    public void Rectangles_in_a_rectangle_fit_just_where_an_exhaustive_search_says_so() => Gen.Select(Gen.Int[1, 5].Array[6], Gen.Int[3, 7], Gen.Int[3, 7]).Sample(drawn =>
    {
        var (sides, width, height) = drawn;
        var shapes = Enumerable.Range(0, 3).Select(i => (W: sides[2 * i], H: sides[(2 * i) + 1])).ToArray();
        bool found = CrossSection.Fit(new(width, height), [.. shapes.Select(shape => new SectionShape(shape.W, shape.H))]) is not null;
        return found == Grids.Hold(shapes, turned: true, new bool[width, height]);
    }, iter: 250);

    private static bool Well(SectionPlace place, double tube) => Rim(place).All(point => Math.Sqrt((point.X * point.X) + (point.Y * point.Y)) <= (tube / 2) + 1e-5);

    private static bool Overlap(SectionPlace a, SectionPlace b) => Rim(a, 0.999).Any(point => Holds(b, point.X, point.Y)) || Rim(b, 0.999).Any(point => Holds(a, point.X, point.Y));

    private static bool Holds(SectionPlace place, double x, double y) => place.Shape.IsRound
        ? Math.Sqrt(Math.Pow(x - place.XMm, 2) + Math.Pow(y - place.YMm, 2)) < (place.Shape.WidthMm / 2) - 1e-3
        : Math.Abs(x - place.XMm) < (place.Shape.WidthMm / 2) - 1e-3 && Math.Abs(y - place.YMm) < (place.Shape.HeightMm / 2) - 1e-3;

    /// <summary>Points of the outline, drawn in a little where asked.</summary>
    private static IEnumerable<(double X, double Y)> Rim(SectionPlace place, double scale = 1)
    {
        for (int i = 0; i < 64; i++)
        {
            double turn = Math.PI * i / 32;
            double w = scale * place.Shape.WidthMm / 2, h = place.Shape.IsRound ? w : scale * place.Shape.HeightMm / 2;
            double stretch = place.Shape.IsRound ? 1 : 1 / Math.Max(Math.Abs(Math.Cos(turn)), Math.Abs(Math.Sin(turn)));
            yield return (place.XMm + (w * stretch * Math.Cos(turn)), place.YMm + (h * stretch * Math.Sin(turn)));
        }
    }
}
