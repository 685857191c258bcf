using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>One line of a build sheet: a number that opens to its origin, or words where a number would say nothing.</summary>
/// <param name="Name">What it is, in trade words.</param>
/// <param name="Value">The number; null: the words are the answer.</param>
/// <param name="Words">The answer in words, or what a number means for the build.</param>
public sealed record SheetLine(string Name, Estimate? Value, string Words = "")
{
    /// <summary>True: something to change before building.</summary>
    public bool Warns { get; init; }
}

/// <summary>A part of a build sheet.</summary>
/// <param name="Key">Short name for addresses and files.</param>
/// <param name="Title">Heading.</param>
/// <param name="Lines">Its lines.</param>
public sealed record SheetSection(string Key, string Title, IReadOnlyList<SheetLine> Lines)
{
    /// <summary>What stands in the way of this part, each with the nearest way out.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>A table under the lines; null: none.</summary>
    public SheetTable? Table { get; init; }
}

/// <summary>A plain table of a build sheet.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Columns">Headings.</param>
/// <param name="Rows">Cells as text.</param>
public sealed record SheetTable(string Title, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);

/// <summary>A file that goes with a build sheet.</summary>
/// <param name="Name">File name.</param>
/// <param name="Text">Its whole text, lines ended by a line feed.</param>
public sealed record SheetFile(string Name, string Text);
