namespace Heatwright.BuildSheets;

/// <summary>Where the centre of a shape can be so that it touches two things: the wall, earlier shapes, or the middle lines of the handle.</summary>
internal static class Contacts
{
    /// <summary>A line a·x + b·y = c.</summary>
    private readonly record struct Line(double A, double B, double C);

    /// <summary>A circle.</summary>
    private readonly record struct Ring(double X, double Y, double R);

    public static IReadOnlyList<(double X, double Y)> Of(SectionHole hole, SectionShape shape, ReadOnlySpan<(int Index, SectionPlace Place)> placed)
    {
        // The two middle lines keep a first shape on the axis or centred against the wall; what stands nowhere else need not be tried anywhere else.
        List<Line> lines = [new(1, 0, 0), new(0, 1, 0)];
        List<Ring> rings = [];
        double w = shape.WidthMm / 2, h = shape.IsRound ? w : shape.HeightMm / 2;
        Wall(hole, shape, w, h, lines, rings);
        foreach (var (_, place) in placed)
        {
            Beside(place, shape, w, h, lines, rings);
        }

        List<(double X, double Y)> found = [];
        for (int i = 0; i < lines.Count; i++)
        {
            for (int k = i + 1; k < lines.Count; k++)
            {
                Add(lines[i], lines[k], found);
            }

            foreach (var ring in rings)
            {
                Add(lines[i], ring, found);
            }
        }

        for (int i = 0; i < rings.Count; i++)
        {
            for (int k = i + 1; k < rings.Count; k++)
            {
                Add(rings[i], rings[k], found);
            }
        }

        // Low and left first: the first find then lies at the bottom of the handle.
        return [.. found.DistinctBy(point => (Math.Round(point.X, 6), Math.Round(point.Y, 6))).OrderBy(point => Math.Round(point.Y, 6)).ThenBy(point => Math.Round(point.X, 6))];
    }

    private static void Wall(SectionHole hole, SectionShape shape, double w, double h, List<Line> lines, List<Ring> rings)
    {
        if (!hole.IsRound)
        {
            double x = (hole.WidthMm / 2) - w, y = (hole.HeightMm / 2) - h;
            lines.AddRange([new(1, 0, -x), new(1, 0, x), new(0, 1, -y), new(0, 1, y)]);
            return;
        }

        double r = hole.WidthMm / 2;
        if (shape.IsRound)
        {
            if (r > w)
            {
                rings.Add(new(0, 0, r - w));
            }

            return;
        }

        // A corner on the wall: the centre lies on the wall's circle moved by that corner.
        foreach (double dx in (double[])[-w, w])
        {
            rings.Add(new(dx, -h, r));
            rings.Add(new(dx, h, r));
        }
    }

    private static void Beside(SectionPlace place, SectionShape shape, double w, double h, List<Line> lines, List<Ring> rings)
    {
        var (other, x, y) = (place.Shape, place.XMm, place.YMm);
        double ow = other.WidthMm / 2, oh = other.IsRound ? ow : other.HeightMm / 2;
        if (other.IsRound && shape.IsRound)
        {
            rings.Add(new(x, y, ow + w));
            return;
        }

        lines.AddRange([new(1, 0, x - ow - w), new(1, 0, x + ow + w), new(0, 1, y - oh - h), new(0, 1, y + oh + h)]);
        if (other.IsRound != shape.IsRound)
        {
            // A corner of the rectangle on the circle.
            double r = other.IsRound ? ow : w, cw = other.IsRound ? w : ow, ch = other.IsRound ? h : oh;
            foreach (double dx in (double[])[-cw, cw])
            {
                rings.Add(new(x + dx, y - ch, r));
                rings.Add(new(x + dx, y + ch, r));
            }
        }
    }

    private static void Add(Line a, Line b, List<(double X, double Y)> found)
    {
        double det = (a.A * b.B) - (a.B * b.A);
        if (det != 0)
        {
            found.Add((((a.C * b.B) - (a.B * b.C)) / det, ((a.A * b.C) - (a.C * b.A)) / det));
        }
    }

    private static void Add(Line a, Ring b, List<(double X, double Y)> found)
    {
        // All lines here are level or upright, of unit normal.
        double off = a.C - (a.A * b.X) - (a.B * b.Y);
        double square = (b.R * b.R) - (off * off);
        if (square < -1e-9)
        {
            return;
        }

        double half = Math.Sqrt(Math.Max(0, square));
        found.Add((b.X + (a.A * off) - (a.B * half), b.Y + (a.B * off) + (a.A * half)));
        found.Add((b.X + (a.A * off) + (a.B * half), b.Y + (a.B * off) - (a.A * half)));
    }

    private static void Add(Ring a, Ring b, List<(double X, double Y)> found)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y, d = Math.Sqrt((dx * dx) + (dy * dy));
        if (d < 1e-12)
        {
            return;
        }

        double along = ((d * d) + (a.R * a.R) - (b.R * b.R)) / (2 * d);
        double square = (a.R * a.R) - (along * along);
        if (square < -1e-9)
        {
            return;
        }

        double half = Math.Sqrt(Math.Max(0, square)), ux = dx / d, uy = dy / d;
        found.Add((a.X + (ux * along) - (uy * half), a.Y + (uy * along) + (ux * half)));
        found.Add((a.X + (ux * along) + (uy * half), a.Y + (uy * along) - (ux * half)));
    }
}
