namespace Heatwright.BuildSheets;

/// <summary>Everything that goes from a study into a prototype.</summary>
/// <param name="Title">Study and arrangement.</param>
/// <param name="Breaks">Hard safety limits that are broken: the first lines of the sheet; empty: none.</param>
/// <param name="Untested">What the sheet rests on that no reading has tested.</param>
/// <param name="Sections">Part by part.</param>
/// <param name="Code">Code for the controller.</param>
/// <param name="Parts">Parts list.</param>
/// <param name="Handle">Everything in its place; null: it does not go in.</param>
/// <param name="Drawing">The section as SVG; null: there is none.</param>
public sealed record BuildSheet(
    string Title, IReadOnlyList<string> Breaks, IReadOnlyList<SheetLine> Untested, IReadOnlyList<SheetSection> Sections, IReadOnlyList<SheetFile> Code, PartsList Parts, PackedHandle? Handle, string? Drawing);
