namespace Heatwright.BuildSheets;

/// <summary>A shape seen along the handle: round, or a rectangle.</summary>
/// <param name="WidthMm">Width, or diameter.</param>
/// <param name="HeightMm">Height; 0: round.</param>
public readonly record struct SectionShape(double WidthMm, double HeightMm)
{
    /// <summary>True for a circle.</summary>
    public bool IsRound => HeightMm == 0;

    /// <summary>Area.</summary>
    public double AreaMm2 => IsRound ? Math.PI / 4 * WidthMm * WidthMm : WidthMm * HeightMm;

    /// <summary>The same turned by a quarter.</summary>
    public SectionShape Turned => IsRound ? this : new(HeightMm, WidthMm);
}

/// <summary>A shape and where its centre is, from the axis of the handle.</summary>
public readonly record struct SectionPlace(SectionShape Shape, double XMm, double YMm);

/// <summary>The inside of a handle seen along it: a tube, or a rectangle.</summary>
/// <param name="WidthMm">Inside width, or inside diameter.</param>
/// <param name="HeightMm">Inside height; 0: a tube.</param>
public readonly record struct SectionHole(double WidthMm, double HeightMm)
{
    /// <summary>True for a tube.</summary>
    public bool IsRound => HeightMm == 0;

    /// <summary>Area.</summary>
    public double AreaMm2 => IsRound ? Math.PI / 4 * WidthMm * WidthMm : WidthMm * HeightMm;
}

/// <summary>Places shapes in a hole, piece by piece, each touching two earlier things: every such arrangement in every order is tried.</summary>
/// <remarks>A found arrangement is checked exactly: nothing overlaps, nothing sticks out. Rectangles are turned by quarters only and all parallel. For rectangles
/// in a rectangle every possible arrangement can be pushed into a corner until each touches two things, so a 'no' is exact; for round things it is exact for all
/// rigid arrangements that can be built one by one, among them the densest of up to seven equal circles. Checked: CrossSectionTests.</remarks>
public static class CrossSection
{
    /// <summary>More shapes than this side by side are not tried.</summary>
    public const int Most = 5;

    /// <summary>Shapes may touch: so much is no overlap, mm.</summary>
    private const double Touch = 1e-7;

    /// <summary>Places for all shapes in the order given, or null where there are none.</summary>
    public static IReadOnlyList<SectionPlace>? Fit(SectionHole hole, IReadOnlyList<SectionShape> shapes)
    {
        int all = int.MaxValue;
        return Fit(hole, shapes, ref all);
    }

    /// <summary>As above, with so many steps at most: where they run out the answer is null and <paramref name="steps"/> is 0, and nothing is proven.</summary>
    internal static IReadOnlyList<SectionPlace>? Fit(SectionHole hole, IReadOnlyList<SectionShape> shapes, ref int steps)
    {
        if (shapes.Count > Most || shapes.Sum(shape => shape.AreaMm2) > hole.AreaMm2 + Touch)
        {
            return null;
        }

        var placed = new (int Index, SectionPlace Place)[shapes.Count];
        return Next(hole, shapes, placed, 0, 0, ref steps) ? [.. placed.OrderBy(one => one.Index).Select(one => one.Place)] : null;
    }

    /// <summary>True where a placed shape lies inside the hole.</summary>
    public static bool Inside(SectionHole hole, SectionPlace place)
    {
        var (shape, x, y) = (place.Shape, Math.Abs(place.XMm), Math.Abs(place.YMm));
        double w = shape.WidthMm / 2, h = shape.IsRound ? w : shape.HeightMm / 2;
        if (!hole.IsRound)
        {
            return x + w <= (hole.WidthMm / 2) + Touch && y + h <= (hole.HeightMm / 2) + Touch;
        }

        double r = (hole.WidthMm / 2) + Touch;
        return shape.IsRound ? Math.Sqrt((x * x) + (y * y)) + w <= r : ((x + w) * (x + w)) + ((y + h) * (y + h)) <= r * r;
    }

    /// <summary>True where two placed shapes do not overlap.</summary>
    public static bool Apart(SectionPlace a, SectionPlace b)
    {
        if (a.Shape.IsRound && b.Shape.IsRound)
        {
            return Math.Sqrt(Square(a.XMm - b.XMm) + Square(a.YMm - b.YMm)) >= ((a.Shape.WidthMm + b.Shape.WidthMm) / 2) - Touch;
        }

        if (!a.Shape.IsRound && !b.Shape.IsRound)
        {
            return Math.Abs(a.XMm - b.XMm) >= ((a.Shape.WidthMm + b.Shape.WidthMm) / 2) - Touch || Math.Abs(a.YMm - b.YMm) >= ((a.Shape.HeightMm + b.Shape.HeightMm) / 2) - Touch;
        }

        var (round, box) = a.Shape.IsRound ? (a, b) : (b, a);
        double dx = Math.Max(0, Math.Abs(round.XMm - box.XMm) - (box.Shape.WidthMm / 2)), dy = Math.Max(0, Math.Abs(round.YMm - box.YMm) - (box.Shape.HeightMm / 2));
        return Math.Sqrt((dx * dx) + (dy * dy)) >= (round.Shape.WidthMm / 2) - Touch;
    }

    private static double Square(double x) => x * x;

    private static bool Next(SectionHole hole, IReadOnlyList<SectionShape> shapes, (int Index, SectionPlace Place)[] placed, int count, int used, ref int steps)
    {
        if (count == shapes.Count)
        {
            return true;
        }

        HashSet<SectionShape> tried = [];
        for (int i = 0; i < shapes.Count; i++)
        {
            if ((used & (1 << i)) != 0 || !tried.Add(shapes[i]))
            {
                continue;
            }

            SectionShape[] ways = shapes[i].IsRound || shapes[i].WidthMm == shapes[i].HeightMm ? [shapes[i]] : [shapes[i], shapes[i].Turned];
            foreach (var shape in ways)
            {
                foreach (var (x, y) in Contacts.Of(hole, shape, placed.AsSpan(0, count)))
                {
                    if (steps <= 0)
                    {
                        return false;
                    }

                    steps--;
                    var place = new SectionPlace(shape, x, y);
                    if (Inside(hole, place) && All(placed.AsSpan(0, count), place))
                    {
                        placed[count] = (i, place);
                        if (Next(hole, shapes, placed, count + 1, used | (1 << i), ref steps))
                        {
                            return true;
                        }
                    }
                }
            }
        }

        return false;
    }

    private static bool All(ReadOnlySpan<(int Index, SectionPlace Place)> placed, SectionPlace place)
    {
        foreach (var one in placed)
        {
            if (!Apart(one.Place, place))
            {
                return false;
            }
        }

        return true;
    }
}
