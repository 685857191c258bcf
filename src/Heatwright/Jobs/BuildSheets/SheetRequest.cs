using Heatwright.BuildSheets;

namespace Heatwright.Jobs.BuildSheets;

/// <summary>A build sheet as a maker asks for it.</summary>
public sealed record SheetRequest
{
    /// <summary>Letter or id of the arrangement; null: the one decided for, else the one that stands best.</summary>
    public string? Arrangement { get; init; }

    /// <summary>Numbers of the board and its parts that are not the usual ones: 'supply=3.0V±0.05V'.</summary>
    public IReadOnlyList<string> Set { get; init; } = [];

    /// <summary>Series of preferred numbers for the gain resistors: E24 or E96.</summary>
    public string Series { get; init; } = "E24";

    /// <summary>File with the resistors at hand, or 'own' for those of the study; null: from the series.</summary>
    public string? Drawer { get; init; }

    /// <summary>How the amplifier is wired.</summary>
    public AmplifierForm Form { get; init; }

    /// <summary>File of counts and degrees taken while the tool cooled; null: none was taken.</summary>
    public string? Calibration { get; init; }

    /// <summary>What the calibration was taken under, where the board differs: 'reference=5V', 'bits=10', 'ceiling=4.5V', 'cold=25C'.</summary>
    public IReadOnlyList<string> Taken { get; init; } = [];

    /// <summary>Headings of the parts list: 'refs=Designator,qty=Quantity'; null: the usual ones.</summary>
    public string? Columns { get; init; }

    /// <summary>Day to write on it, as 2026-03-01; empty: none.</summary>
    public string Date { get; init; } = "";
}

/// <summary>A build sheet and how it came about.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Letter">Letter of its arrangement.</param>
/// <param name="Chosen">Why this arrangement.</param>
/// <param name="Columns">Headings of its parts list.</param>
/// <param name="Invented">True: the study's readings are invented.</param>
public sealed record MadeSheet(BuildSheet Sheet, string Letter, string Chosen, IReadOnlyList<(string Field, string Heading)> Columns, bool Invented)
{
    /// <summary>All files that go with it but its page: code, parts list, drawing.</summary>
    public IReadOnlyList<SheetFile> Files =>
    [
        .. Sheet.Code.Select(file => file with { Name = "code/" + file.Name }),
        new("parts.csv", Sheet.Parts.Csv(Columns)),
        new("parts.md", Sheet.Parts.Markdown(Columns)),
        .. Sheet.Drawing is { } drawing ? [new SheetFile("handle.svg", drawing)] : Array.Empty<SheetFile>(),
    ];
}
