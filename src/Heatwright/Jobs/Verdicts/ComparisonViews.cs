using System.Globalization;
using System.Text;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>One cell of the comparison; null value: never reached, or not known.</summary>
/// <param name="Shown">The value as a table shows it.</param>
/// <param name="Margin">Distance to the limit in the unit of the line, positive where it is kept; absent: not known.</param>
/// <param name="Verdict">go, go-if, no-go or need-more-readings; empty: nothing is known.</param>
public sealed record ComparisonCell(string Requirement, string Shown, double? Value, double? Margin, double? Probability, string Verdict);

/// <summary>One column of the comparison.</summary>
/// <param name="Value">Weighted share of the wants that are known to be kept, 0 to 1; absent: no want is known.</param>
/// <param name="ValueLow">The same if every unknown want were missed.</param>
/// <param name="ValueHigh">The same if every unknown want were kept.</param>
/// <param name="OddsOfAllMusts">Chance that all known musts are kept together, 0 to 1; absent: none is known.</param>
/// <param name="PartsCount">Bought parts, cells counted singly.</param>
/// <param name="Kills">What kills it in one line; empty: nothing does.</param>
/// <param name="Cells">Line by line of the brief.</param>
public sealed record ContenderView(
    string Letter, string Name, string Verdict, double? Value, double? ValueLow, double? ValueHigh, double? OddsOfAllMusts, int PartsCount, string Kills, IReadOnlyList<ComparisonCell> Cells);

/// <summary>A tool that exists as a column; null verdict: none of the musts was read.</summary>
/// <param name="Cells">Line by line of the brief.</param>
public sealed record ToolColumn(string Letter, string Name, string? Verdict, IReadOnlyList<ComparisonCell> Cells);

/// <summary>Requirements by arrangements, best first, as machines read it.</summary>
/// <param name="Arrangements">The arrangements, best first.</param>
/// <param name="Beats">Which beats which on one line in at least nine of ten draws.</param>
public sealed record ComparisonView(IReadOnlyList<ContenderView> Arrangements, IReadOnlyList<Beats> Beats)
{
    /// <summary>Tools that exist; a cell without a verdict was never read.</summary>
    public IReadOnlyList<ToolColumn> Tools { get; init; } = [];

    /// <summary>The view of a comparison.</summary>
    public static ComparisonView Of(Comparison comparison) => new(
        [.. comparison.Ranked.Select(one => new ContenderView(one.Verdict.Arrangement.Letter, one.Verdict.Arrangement.Name, ArrangementView.Word(one.Verdict.Word), Finite(one.Value), Finite(one.ValueLow),
            Finite(one.ValueHigh), Finite(one.Odds), one.PartsCount, one.Kills, [.. comparison.Lines.Select(line => CellOf(one, line))]))],
        comparison.Duels)
    {
        Tools = [.. comparison.Tools.Select(one => new ToolColumn(one.Tool.Letter, one.Tool.Name, one.Word is { } word ? ArrangementView.Word(word) : null, [.. comparison.Lines.Select(line => CellOf(Comparison.Cell(one, line), line))]))],
    };

    private static ComparisonCell CellOf(Contender one, Requirement line) => CellOf(Comparison.Cell(one, line), line);

    private static ComparisonCell CellOf(RequirementVerdict? found, Requirement line) => found is { } cell
        ? new(line.Id, cell.Shown, cell.Value?.Value, Finite(cell.Margin), cell.Probability, ArrangementView.Word(cell.Word))
        : new(line.Id, "", null, null, null, "");

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}

/// <summary>A comparison as text that leaves the program.</summary>
public static class ComparisonText
{
    /// <summary>A table for a description box.</summary>
    public static string Markdown(Comparison comparison)
    {
        var text = new StringBuilder();
        text.Append("| requirement |").AppendJoin("", comparison.Ranked.Select(one => $" {Bar(one.Verdict.Arrangement.Letter)}: {Bar(one.Verdict.Arrangement.Name)} |")).AppendJoin("", comparison.Tools.Select(tool => $" {Bar(tool.Tool.Letter)}: {Bar(tool.Tool.Name)}, as read on it |")).Append('\n');
        text.Append("| --- |").AppendJoin("", comparison.Ranked.Select(_ => " --- |")).AppendJoin("", comparison.Tools.Select(_ => " --- |")).Append('\n');
        foreach (var line in comparison.Lines)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {Bar(line.Text)}{(line.Must ? "" : " (want)")} |").AppendJoin("", comparison.Ranked.Select(one => $" {Bar(Cell(one, line))} |")).AppendJoin("", comparison.Tools.Select(tool => $" {Bar(Cell(Comparison.Cell(tool, line)))} |")).Append('\n');
        }

        text.Append("| verdict |").AppendJoin("", comparison.Ranked.Select(one => $" {Word(one.Verdict.Word)} |")).AppendJoin("", comparison.Tools.Select(tool => $" {(tool.Word is { } word ? Word(word) : "")} |")).Append('\n');
        return text.ToString();
    }

    /// <summary>One row a requirement and arrangement; empty where nothing is known.</summary>
    public static string Csv(Comparison comparison)
    {
        var text = new StringBuilder("requirement,text,rank,limit,unit,side,arrangement,value,margin,probability,verdict\n");
        foreach (var line in comparison.Lines)
        {
            foreach (var (letter, cell) in comparison.Ranked.Select(one => (one.Verdict.Arrangement.Letter, Comparison.Cell(one, line))).Concat(comparison.Tools.Select(tool => (tool.Tool.Letter, Comparison.Cell(tool, line)))))
            {
                string[] fields =
                [
                    line.Id, line.Text, line.Must ? "must" : "want", Number(line.Limit), line.Unit, line.AtMost ? "at most" : "at least", letter,
                    Number(cell?.Value?.Value), Number(cell?.Margin), Number(cell?.Probability), cell is null ? "" : Word(cell.Word),
                ];
                text.AppendJoin(',', fields.Select(Quoted)).Append('\n');
            }
        }

        return text.ToString();
    }

    internal static string Cell(Contender one, Requirement line) => Cell(Comparison.Cell(one, line));

    private static string Cell(RequirementVerdict? found) => found is not { } cell ? ""
        : cell.Probability is { } probability ? $"{cell.Shown}, {Odds(probability)} of 100, {Word(cell.Word)}" : $"{cell.Shown}, {Word(cell.Word)}";

    internal static string Word(VerdictWord word) => ArrangementView.Word(word).Replace("need-more-readings", "need more readings", StringComparison.Ordinal);

    internal static string Odds(double probability) => probability is > 0.99 and < 1 ? "99+" : Math.Round(100 * probability).ToString(CultureInfo.InvariantCulture);

    private static string Number(double? value) => value is { } number && double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) : "";

    private static string Quoted(string field) => field.AsSpan().IndexOfAny(",\"\n") < 0 ? field : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    internal static string Bar(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Replace('\n', ' ');
}

/// <summary>The picture of value against doubt: every must as a bar of 90 of 100 draws beside its limit, arrangement by arrangement.</summary>
public static class ComparisonPicture
{
    private const int Row = 44, Left = 470, Wide = 1280, Top = 96, Reach = 720;

    /// <summary>A standing-alone SVG, 1280 wide, on a white ground. Right of the middle line is kept, left is missed; one limit's worth is the half width.</summary>
    public static string Svg(Comparison comparison)
    {
        var body = new StringBuilder();
        double y = Top;
        foreach (var one in comparison.Ranked)
        {
            body.Append(CultureInfo.InvariantCulture, $"<text x=\"24\" y=\"{y + 26}\" font-size=\"24\" font-weight=\"700\">{Safe($"{one.Verdict.Arrangement.Letter}  {one.Verdict.Arrangement.Name}: {ComparisonText.Word(one.Verdict.Word)}")}</text>\n");
            y += Row;
            foreach (var line in comparison.Lines.Where(line => line.Must))
            {
                Bar(body, Comparison.Cell(one, line), line, y);
                y += Row;
            }

            y += Row / 2;
        }

        double middle = Left + (Reach / 2.0);
        return string.Create(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{Wide}\" height=\"{y + 20}\" viewBox=\"0 0 {Wide} {y + 20}\" font-family=\"sans-serif\" fill=\"#1a1a1a\">\n")
            + string.Create(CultureInfo.InvariantCulture, $"<rect width=\"{Wide}\" height=\"{y + 20}\" fill=\"#ffffff\"/>\n<text x=\"{middle - 24}\" y=\"56\" font-size=\"24\" text-anchor=\"end\">missed</text>\n<text x=\"{middle + 24}\" y=\"56\" font-size=\"24\">kept</text>\n")
            + string.Create(CultureInfo.InvariantCulture, $"<line x1=\"{middle}\" y1=\"30\" x2=\"{middle}\" y2=\"{y}\" stroke=\"#1a1a1a\" stroke-width=\"2\"/>\n") + body + "</svg>\n";
    }

    private static void Bar(StringBuilder body, RequirementVerdict? cell, Requirement line, double y)
    {
        string name = line.Text.Length > 40 ? line.Text[..39] + "…" : line.Text;
        body.Append(CultureInfo.InvariantCulture, $"<text x=\"{Left - 20}\" y=\"{y + 26}\" font-size=\"20\" text-anchor=\"end\">{Safe(name)}</text>\n");
        double[] drawn = [.. (cell?.Drawn ?? []).Order()];
        if (drawn.Length == 0)
        {
            body.Append(CultureInfo.InvariantCulture, $"<text x=\"{Left + (Reach / 2) + 12}\" y=\"{y + 26}\" font-size=\"20\" font-style=\"italic\">{Safe(cell?.Shown ?? "not known")}</text>\n");
            return;
        }

        double a = At(line, drawn[(int)(0.05 * (drawn.Length - 1))]), b = At(line, drawn[(int)(0.95 * (drawn.Length - 1))]), middle = At(line, drawn[drawn.Length / 2]);
        // Blue and orange are told apart by all common kinds of colour blindness; the side of the line says the same.
        string colour = cell!.Probability >= 0.95 ? "#0a5fa8" : cell.Probability <= 0.05 ? "#b84a00" : "#6b6b6b";
        body.Append(CultureInfo.InvariantCulture, $"<rect x=\"{Math.Min(a, b):0.0}\" y=\"{y + 8}\" width=\"{Math.Max(3, Math.Abs(b - a)):0.0}\" height=\"24\" fill=\"{colour}\" fill-opacity=\"0.45\"/>\n");
        body.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{middle:0.0}\" cy=\"{y + 20}\" r=\"8\" fill=\"{colour}\"/>\n");
    }

    /// <summary>Margin over limit, from −1 to 1.</summary>
    private static double At(Requirement line, double value)
    {
        double margin = (line.AtMost ? line.Limit - value : value - line.Limit) / Math.Max(1e-12, Math.Abs(line.Limit));
        double share = double.IsNaN(margin) ? -1 : Math.Clamp(margin, -1, 1);
        return Left + (Reach * (share + 1) / 2);
    }

    private static string Safe(string text) => System.Net.WebUtility.HtmlEncode(text);
}
