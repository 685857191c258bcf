using Heatwright.BuildSheets;
using Heatwright.Quantities;

namespace Heatwright.Jobs.BuildSheets;

/// <summary>A line as machines read it.</summary>
/// <param name="Unit">Unit symbol; empty: a plain number, or no number.</param>
/// <param name="Origin">Where the number comes from; empty: no number.</param>
/// <param name="Words">What is said with it.</param>
/// <param name="Warns">True: to mind.</param>
public sealed record SheetLineView(string Name, double? Value, double? StandardDoubt, string Unit, string Origin, string Words, bool Warns)
{
    /// <summary>The view of a line.</summary>
    public static SheetLineView Of(SheetLine line) => new(line.Name, line.Value?.Value, line.Value?.StandardDoubt, line.Value?.Unit.Symbol ?? "", line.Value?.Origin.Word ?? "", line.Words, line.Warns);
}

/// <summary>A section as machines read it.</summary>
/// <param name="Key">Its short name.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Lines">Its lines.</param>
/// <param name="Problems">What could not be worked out.</param>
/// <param name="Table">A table under the lines; absent: none.</param>
public sealed record SheetSectionView(string Key, string Title, IReadOnlyList<SheetLineView> Lines, IReadOnlyList<Problem> Problems, SheetTable? Table);

/// <summary>A build sheet as machines read it.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Chosen">Why this arrangement: decided for, asked for, or standing best.</param>
/// <param name="Breaks">Why it must not be built so; empty: it may be.</param>
/// <param name="Untested">Numbers that no reading holds up.</param>
/// <param name="Sections">Its sections.</param>
/// <param name="Files">Paths of the files that were written.</param>
public sealed record SheetView(string Title, string Arrangement, string Chosen, IReadOnlyList<string> Breaks, IReadOnlyList<SheetLineView> Untested, IReadOnlyList<SheetSectionView> Sections, IReadOnlyList<string> Files)
{
    /// <summary>The view of a sheet.</summary>
    /// <param name="made">The sheet.</param>
    /// <param name="files">Where its files were written; empty: nowhere.</param>
    public static SheetView Of(MadeSheet made, IReadOnlyList<string> files) => new(made.Sheet.Title, made.Letter, made.Chosen, made.Sheet.Breaks, [.. made.Sheet.Untested.Select(SheetLineView.Of)],
        [.. made.Sheet.Sections.Select(section => new SheetSectionView(section.Key, section.Title, [.. section.Lines.Select(SheetLineView.Of)], section.Problems, section.Table))], files);
}
