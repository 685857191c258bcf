namespace Heatwright.Physics;

/// <summary>Exact fit tests: cells and boards in tubes and boxes.</summary>
/// <remarks>Geometry. Equal circles in a circle: [graham-1998], closed forms for up to seven. Keep 20 to 40 mm between hot end and cell (common practice, no source).</remarks>
public static class Packing
{
    /// <summary>Inner diameter over circle diameter for k equal circles in a tube, k = 1 to 7.</summary>
    public static double TubeOver(int circles) => circles switch
    {
        1 => 1,
        2 => 2,
        3 => 1 + (2 / Math.Sqrt(3)),
        4 => 1 + Math.Sqrt(2),
        5 => 1 + Math.Sqrt(2 * (1 + (1 / Math.Sqrt(5)))),
        6 or 7 => 3,
        _ => throw Impossible.Outside(nameof(circles), circles, "", "1 to 7"),
    };

    /// <summary>Least inner diameter of a tube for equal round cells side by side.</summary>
    [Law("tube-for-cells", "size and mass", "c_k·d; c = 1, 2, 2.1547, 2.4142, 2.7013, 3, 3", Says = "least tube for round cells side by side", Unit = "m", Source = "graham-1998", Where = "dense packings of 1 to 7 circles", Valid = "bare cells, no sleeve, no wires", Example = "cells=3 diameter=14mm")]
    public static double TubeM(
        [In("k", "", "cells side by side", Name = "cells", Min = 1, Max = 7)] int circles,
        [In("d", "m", "cell diameter", Name = "diameter", Min = 0)] double diameterM) => TubeOver(circles) * Impossible.UnlessPositive(diameterM, "m");

    /// <summary>Whether a rectangle (a board with its parts) fits in a tube: its diagonal is no more than the inner diameter.</summary>
    public static bool RectangleInTube(double widthM, double heightM, double innerM) =>
        DiagonalM(widthM, heightM) <= Impossible.UnlessPositive(innerM, "m");

    /// <summary>Diagonal of a rectangle.</summary>
    [Law("board-in-tube", "size and mass", "√(w² + h²)", Says = "least tube that a board with its parts goes into", Unit = "m", Source = "definition", Where = "circle geometry",
        Valid = "straight board, round tube", Example = "width=18mm height=8mm")]
    public static double DiagonalM(
        [In("w", "m", "width", Name = "width", Min = 0)] double widthM,
        [In("h", "m", "height with parts", Name = "height", Min = 0)] double heightM) =>
        Math.Sqrt((Impossible.UnlessPositive(widthM, "m") * widthM) + (Impossible.UnlessPositive(heightM, "m") * heightM));

    /// <summary>Widest board of a given height, parts included, that fits in the middle of a tube.</summary>
    [Law("widest-in-tube", "size and mass", "√(Di² − h²)", Says = "widest board that goes into a tube", Unit = "m", Source = "definition", Where = "circle geometry",
        Valid = "board across the middle", Example = "tube=20mm height=4mm")]
    public static double WidestInTubeM(
        [In("Di", "m", "inner diameter", Name = "tube", Min = 0)] double innerM,
        [In("h", "m", "height with parts", Name = "height", Min = 0)] double heightM) => Chord(innerM, Impossible.UnlessPositive(heightM, "m") / 2);

    /// <summary>Widest board lying centred on a cell that touches the tube wall; 0 when none fits.</summary>
    [Law("board-beside-cell", "size and mass", "2·√((Di/2)² − max(y1², y2²)), y1 = d − Di/2, y2 = y1 + t", Says = "widest board that fits beside a cell in a tube", Unit = "m", Source = "definition", Where = "circle geometry", Valid = "one cell against the wall, board centred on it", Example = "tube=24mm cell=14mm board=4mm")]
    public static double WidestBesideCellM(
        [In("Di", "m", "inner diameter of the tube", Name = "tube", Min = 0)] double innerM,
        [In("d", "m", "cell diameter", Name = "cell", Min = 0)] double cellM,
        [In("t", "m", "board with its parts", Name = "board", Min = 0)] double boardM)
    {
        double low = Impossible.UnlessPositive(cellM, "m") - (Impossible.UnlessPositive(innerM, "m") / 2);
        double high = low + Impossible.UnlessPositive(boardM, "m");
        return cellM > innerM ? 0 : Chord(innerM, Math.Max(Math.Abs(low), Math.Abs(high)));
    }

    /// <summary>Whether all rectangles lie inside the tube and none overlaps another.</summary>
    public static bool RectanglesInTube(ReadOnlySpan<PlacedRectangle> rectangles, double innerM)
    {
        double square = Impossible.UnlessPositive(innerM, "m") * innerM / 4;
        for (int i = 0; i < rectangles.Length; i++)
        {
            PlacedRectangle a = rectangles[i];
            double x = Math.Abs(a.CentreXM) + (Impossible.UnlessPositive(a.WidthM, "m", nameof(rectangles)) / 2);
            double y = Math.Abs(a.CentreYM) + (Impossible.UnlessPositive(a.HeightM, "m", nameof(rectangles)) / 2);
            if ((x * x) + (y * y) > square)
            {
                return false;
            }

            for (int j = 0; j < i; j++)
            {
                PlacedRectangle b = rectangles[j];
                if (Math.Abs(a.CentreXM - b.CentreXM) < (a.WidthM + b.WidthM) / 2 && Math.Abs(a.CentreYM - b.CentreYM) < (a.HeightM + b.HeightM) / 2)
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Whether one box fits in another with sides kept parallel: sorted sides compared.</summary>
    public static bool BoxInBox(Box inner, Box outer)
    {
        double[] small = Sorted(inner);
        double[] large = Sorted(outer);
        return small[0] <= large[0] && small[1] <= large[1] && small[2] <= large[2];
    }

    /// <summary>Whether boxes fit one behind the other along a length, each cross-section in one of its two orientations.</summary>
    public static bool Stack(ReadOnlySpan<Box> boxes, double gapM, Box outer)
    {
        double length = 0;
        foreach (Box box in boxes)
        {
            Sorted(box);
            bool fits = (box.WidthM <= outer.WidthM && box.HeightM <= outer.HeightM) || (box.WidthM <= outer.HeightM && box.HeightM <= outer.WidthM);
            if (!fits)
            {
                return false;
            }

            length += box.LengthM;
        }

        return length + (Math.Max(0, boxes.Length - 1) * Impossible.IfNegative(gapM, "m")) <= outer.LengthM;
    }

    /// <summary>Length left after parts and gaps; negative: does not fit.</summary>
    public static double LengthLeftM(double lengthM, ReadOnlySpan<double> partsM, ReadOnlySpan<double> gapsM)
    {
        double left = Impossible.UnlessPositive(lengthM, "m");
        foreach (double part in partsM)
        {
            left -= Impossible.IfNegative(part, "m", nameof(partsM));
        }

        foreach (double gap in gapsM)
        {
            left -= Impossible.IfNegative(gap, "m", nameof(gapsM));
        }

        return left;
    }

    private static double Chord(double innerM, double offM)
    {
        double square = (Impossible.UnlessPositive(innerM, "m") * innerM / 4) - (offM * offM);
        return square > 0 ? 2 * Math.Sqrt(square) : 0;
    }

    private static double[] Sorted(Box box)
    {
        double[] sides = [Impossible.UnlessPositive(box.LengthM, "m", nameof(box)), Impossible.UnlessPositive(box.WidthM, "m", nameof(box)), Impossible.UnlessPositive(box.HeightM, "m", nameof(box))];
        Array.Sort(sides);
        return sides;
    }
}

/// <summary>A rectangle placed in a cross-section, measured from the tube's axis.</summary>
/// <param name="CentreXM">Sideways.</param>
/// <param name="CentreYM">Upwards.</param>
/// <param name="WidthM">Width.</param>
/// <param name="HeightM">Height.</param>
public readonly record struct PlacedRectangle(double CentreXM, double CentreYM, double WidthM, double HeightM);

/// <summary>A box.</summary>
/// <param name="LengthM">Along the tool.</param>
/// <param name="WidthM">Across.</param>
/// <param name="HeightM">Across the other way.</param>
public readonly record struct Box(double LengthM, double WidthM, double HeightM);
