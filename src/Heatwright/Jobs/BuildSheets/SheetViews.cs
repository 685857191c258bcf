using Heatwright.BuildSheets;
using Heatwright.Quantities;

namespace Heatwright.Jobs.BuildSheets;

/// <summary>A line as machines read it.</summary>
public sealed record SheetLineView(string Name, double? Value, double? StandardDoubt, string Unit, string Origin, string Words, bool Warns)
{
    /// <summary>The view of a line.</summary>
    public static SheetLineView Of(SheetLine line) => new(line.Name, line.Value?.Value, line.Value?.StandardDoubt, line.Value?.Unit.Symbol ?? "", line.Value?.Origin.Word ?? "", line.Words, line.Warns);
}

/// <summary>A section as machines read it.</summary>
public sealed record SheetSectionView(string Key, string Title, IReadOnlyList<SheetLineView> Lines, IReadOnlyList<Problem> Problems, SheetTable? Table);

/// <summary>A build sheet as machines read it.</summary>
public sealed record SheetView(string Title, string Arrangement, string Chosen, IReadOnlyList<string> Breaks, IReadOnlyList<SheetLineView> Untested, IReadOnlyList<SheetSectionView> Sections, IReadOnlyList<string> Files)
{
    /// <summary>The view of a sheet.</summary>
    /// <param name="made">The sheet.</param>
    /// <param name="files">Where its files were written; empty: nowhere.</param>
    public static SheetView Of(MadeSheet made, IReadOnlyList<string> files) => new(made.Sheet.Title, made.Letter, made.Chosen, made.Sheet.Breaks, [.. made.Sheet.Untested.Select(SheetLineView.Of)],
        [.. made.Sheet.Sections.Select(section => new SheetSectionView(section.Key, section.Title, [.. section.Lines.Select(SheetLineView.Of)], section.Problems, section.Table))], files);
}
