using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Something that takes room on the board.</summary>
/// <param name="Name">What.</param>
/// <param name="AreaMm2">Its own area.</param>
/// <param name="Why">Where the area comes from.</param>
public sealed record BoardArea(string Name, double AreaMm2, string Why);

/// <summary>How large the board will be: estimated from areas before anything is drawn.</summary>
/// <param name="Areas">What takes room.</param>
/// <param name="AreaMm2">Of the outline.</param>
/// <param name="WidthMm">Across the handle.</param>
/// <param name="LengthMm">Along the handle.</param>
/// <param name="HeightMm">With parts on the sides used.</param>
public sealed record BoardOutline(IReadOnlyList<BoardArea> Areas, Estimate AreaMm2, double WidthMm, double LengthMm, double HeightMm)
{
    /// <summary>Parts fill this share of a hand-routed two-layer board: 0.4 to 0.6 (common practice, no source).</summary>
    private const double Filling = 0.5;

    /// <summary>Half width of that, and of each area, as a share.</summary>
    private const double Doubt = 0.20;

    /// <summary>No part comes nearer to the edge, mm (common practice, no source).</summary>
    private const double EdgeMm = 1.0;

    /// <summary>Bare board, mm.</summary>
    private const double BareMm = 1.6;

    /// <summary>Tallest part on a side, mm: connectors and electrolytic capacitors (common practice, no source).</summary>
    private const double TallMm = 4.0;

    /// <summary>The outline for what stands on it.</summary>
    /// <param name="areas">Parts, copper and keep-outs.</param>
    /// <param name="sides">Sides with parts, 1 or 2.</param>
    /// <param name="widthMm">Width that the handle gives the board; the length follows.</param>
    public static BoardOutline Of(IReadOnlyList<BoardArea> areas, int sides, double widthMm)
    {
        double parts = areas.Sum(area => area.AreaMm2);
        double inner = parts / Filling / sides;
        double innerWidth = Math.Max(1, widthMm - (2 * EdgeMm));
        double length = Math.Ceiling((inner / innerWidth) + (2 * EdgeMm));
        double outline = length * widthMm;
        var inputs = areas.Select(area => new Input(area.Name, Estimate.Within(area.AreaMm2, Doubt * area.AreaMm2, Units.SquareMillimetre, $"board: {area.Name}", CauseGroup.Assumption, new Origin.Assumed(area.Why)))).ToArray();

        // The length is rounded up to whole millimetres; its doubt is that of the length before.
        double slope = widthMm / (innerWidth * Filling * sides);
        var doubts = inputs.Aggregate(
            Doubts.From(Cause.Rectangular("board: how full it is laid out", CauseGroup.Assumption), Doubt * outline / Math.Sqrt(3)), (sum, input) => sum + input.Value.Doubts.Times(slope));
        var estimate = new Estimate(outline, Units.SquareMillimetre, doubts, new Origin.WorkedOut("sum of the areas over their share of the board, on so many sides, with a free edge", inputs));
        return new(areas, estimate, widthMm, length, BareMm + (sides * TallMm));
    }
}
