using System.Globalization;
using System.Text;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>One line of the parts list: equal parts together.</summary>
/// <param name="Refs">R1, R2.</param>
/// <param name="Quantity">Pieces in one tool.</param>
/// <param name="Value">4.7 kΩ, 1 %.</param>
/// <param name="Package">Size.</param>
/// <param name="Description">What it is.</param>
public sealed record PartsLine(IReadOnlyList<string> Refs, int Quantity, string Value, string Package, string Description)
{
    /// <summary>Price of one piece when building one, ten, a hundred; null: not known.</summary>
    public IReadOnlyList<double?> Prices { get; init; } = [null, null, null];

    /// <summary>Pieces at hand.</summary>
    public int OnHand { get; init; }

    /// <summary>What would do instead.</summary>
    public string Alternates { get; init; } = "";

    /// <summary>A note.</summary>
    public string Note { get; init; } = "";
}

/// <summary>The parts list of a tool, under the maker's own headings.</summary>
/// <param name="Lines">Line by line.</param>
public sealed record PartsList(IReadOnlyList<PartsLine> Lines)
{
    /// <summary>Numbers of tools that prices are told for.</summary>
    public static readonly IReadOnlyList<int> Builds = [1, 10, 100];

    /// <summary>What a column can hold, with the heading it has when the maker says none.</summary>
    public static readonly IReadOnlyList<(string Field, string Heading)> Fields =
    [
        ("refs", "Refs"), ("qty", "Qty"), ("value", "Value"), ("package", "Package"), ("description", "Description"), ("price1", "Each at 1"), ("price10", "Each at 10"), ("price100", "Each at 100"),
        ("onhand", "On hand"), ("buy", "To buy"), ("alternates", "Alternates"), ("note", "Note"),
    ];

    /// <summary>The usual columns.</summary>
    public static IReadOnlyList<(string Field, string Heading)> Usual => Fields;

    /// <summary>Reads the maker's headings: 'refs=Designator,qty=Quantity,note='; a field left out is no column, a heading of its own with no field is an empty column ('=Supplier part').</summary>
    public static Checked<IReadOnlyList<(string Field, string Heading)>> Headings(string text)
    {
        List<(string, string)> columns = [];
        List<Problem> problems = [];
        foreach (string item in text.Split(','))
        {
            int equals = item.IndexOf('=', StringComparison.Ordinal);
            string field = (equals < 0 ? item : item[..equals]).Trim().ToLowerInvariant(), heading = equals < 0 ? "" : item[(equals + 1)..].Trim();
            var known = Fields.FirstOrDefault(one => one.Field == field);
            if (field.Length > 0 && known.Field is null)
            {
                problems.Add(new("A parts list has no such field.", "--columns", field, string.Join(", ", Fields.Select(one => one.Field)), "Name one of them, or leave the field empty for an empty column: '=Supplier part'."));
            }
            else if (field.Length == 0 && heading.Length == 0)
            {
                problems.Add(new("A column needs a field or a heading.", "--columns", item, "field=Heading", "Write it as refs=Designator."));
            }
            else
            {
                columns.Add((field, heading.Length > 0 ? heading : known.Heading));
            }
        }

        return problems.Count > 0 ? new(problems) : new(columns);
    }

    /// <summary>Cost of all parts of one tool when building so many; null where a price is missing.</summary>
    /// <param name="build">Place in <see cref="Builds"/>.</param>
    public double? Cost(int build) => Lines.All(line => line.Prices[build] is not null) ? Lines.Sum(line => line.Quantity * line.Prices[build]!.Value) : null;

    /// <summary>Cost of the lines whose price is known, and how many are not.</summary>
    public (double Known, int Missing) CostSoFar(int build) => (Lines.Sum(line => line.Quantity * (line.Prices[build] ?? 0)), Lines.Count(line => line.Prices[build] is null));

    /// <summary>As CSV: comma between, quotes where needed, lines ended by CR LF (RFC 4180).</summary>
    public string Csv(IReadOnlyList<(string Field, string Heading)> columns)
    {
        var csv = new StringBuilder();
        csv.Append(string.Join(',', columns.Select(column => Quoted(column.Heading)))).Append("\r\n");
        foreach (var line in Lines)
        {
            csv.Append(string.Join(',', columns.Select(column => Quoted(Cell(line, column.Field))))).Append("\r\n");
        }

        return csv.ToString();
    }

    /// <summary>As a Markdown table.</summary>
    public string Markdown(IReadOnlyList<(string Field, string Heading)> columns)
    {
        var text = new StringBuilder();
        text.Append("| ").Append(string.Join(" | ", columns.Select(column => Barred(column.Heading)))).Append(" |\n|").Append(string.Concat(Enumerable.Repeat(" --- |", columns.Count))).Append('\n');
        foreach (var line in Lines)
        {
            text.Append("| ").Append(string.Join(" | ", columns.Select(column => Barred(Cell(line, column.Field))))).Append(" |\n");
        }

        return text.ToString();
    }

    /// <summary>What stands in a column for a line.</summary>
    public static string Cell(PartsLine line, string field) => field switch
    {
        "refs" => string.Join(", ", line.Refs),
        "qty" => line.Quantity.ToString(CultureInfo.InvariantCulture),
        "value" => line.Value,
        "package" => line.Package,
        "description" => line.Description,
        "price1" => Price(line.Prices[0]),
        "price10" => Price(line.Prices[1]),
        "price100" => Price(line.Prices[2]),
        "onhand" => line.OnHand.ToString(CultureInfo.InvariantCulture),
        "buy" => Math.Max(0, line.Quantity - line.OnHand).ToString(CultureInfo.InvariantCulture),
        "alternates" => line.Alternates,
        "note" => line.Note,
        _ => "",
    };

    private static string Price(double? price) => price is { } known ? known.ToString("0.00##", CultureInfo.InvariantCulture) : "";

    private static string Quoted(string text)
    {
        // A spreadsheet must not take a text for a formula.
        string safe = text.Length > 0 && text[0] is '=' or '+' or '-' or '@' ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(",\"\r\n") >= 0 ? "\"" + safe.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : safe;
    }

    private static string Barred(string text) => text.ReplaceLineEndings(" ").Replace("|", "\\|", StringComparison.Ordinal);
}
