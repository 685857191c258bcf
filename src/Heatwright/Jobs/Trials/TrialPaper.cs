using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>Paper for the bench: a reading sheet with empty boxes, and a step card.</summary>
public static partial class TrialPaper
{
    // Millimetres of one page between its margins, the lower of the two usual papers; and what stands on it, as the style below sets it.
    private const double PageMm = 255, RowMm = 7.2, LineMm = 5, TitleMm = 12, HeadMm = 12, FootMm = 8;
    private const int Fewest = 10, Most = 24, LettersALine = 95, SettingsALine = 3;

    /// <summary>How the paper looks, on a screen and printed.</summary>
    public const string Style = """
        @page{margin:11mm 12mm}
        body{font:15px/1.45 system-ui,sans-serif;color:#111;background:#fff;margin:14mm;max-width:190mm}
        h1{font-size:21px;margin:0 0 2mm}h2{font-size:15px;margin:5mm 0 1mm}pre{font:13px/1.2 ui-monospace,monospace;border:1px solid #999;padding:3mm;overflow-x:auto}
        table{border-collapse:collapse;width:100%}th,td{border:1px solid #666;padding:1.6mm 2mm;text-align:left;height:7mm}th{background:#eee}
        .stop{border:2px solid #b00020;color:#b00020;padding:2mm 3mm;font-weight:600}.fill{border-bottom:1px solid #666;display:inline-block;min-width:32mm}.few{border-bottom:1px solid #666;display:inline-block;min-width:9mm}.pair{white-space:nowrap}
        ol,ul{margin:1mm 0 1mm 6mm;padding:0}li{margin:0.6mm 0}
        .sheet p{margin:1.5mm 0}.sheet td{height:5mm;padding:0.9mm 2mm}.sheet th{height:auto;padding:0.9mm 2mm}.sheet h2{margin:2mm 0 0}
        @media screen and (max-width:700px){body{margin:4mm}table{display:block;overflow-x:auto}}
        @media print{body{margin:0;font-size:12.5px}h1{font-size:17px}h2{font-size:13px}.sheet tr{break-inside:avoid}}
        """;

    /// <summary>A reading sheet: head, settings to fill in, a row a reading, the stop lines on top.</summary>
    /// <param name="view">The recipe.</param>
    /// <param name="part">The part that is tried; empty: to be filled in.</param>
    /// <param name="linked">True: for a browser that is served it; false: a file that stands alone.</param>
    public static string Sheet(RecipeView view, string part = "", bool linked = false)
    {
        var body = new StringBuilder();
        Head(body, view);
        body.Append("<p>Part <span class=\"fill\">").Append(Text(part)).Append("</span> sample <span class=\"fill\"></span> date <span class=\"fill\"></span> who <span class=\"fill\"></span> <span class=\"pair\">sheet <span class=\"few\"></span> of <span class=\"few\"></span></span></p>");
        body.Append("<p>").AppendJoin(" &nbsp; ", view.Settings.Select(setting => $"<span class=\"pair\">{Text(setting.Name)}{(setting.Unit.Length > 0 ? $" ({Text(setting.Unit)})" : "")} <span class=\"fill\"></span></span>")).Append("</p>");
        Expected(body, view);
        body.Append("<table><thead><tr><th>no.</th>").AppendJoin("", view.Columns.Select(column => $"<th>{Text(column.Name)}{(column.IsWord || column.Unit.Length == 0 ? "" : $" ({Text(column.Unit)})")}{(column.Words.Count > 0 ? $"<br><small>{Text(string.Join(", ", column.Words))}</small>" : "")}</th>")).Append("<th>meter, range</th><th>note</th></tr></thead><tbody>");
        for (int i = 1; i <= Boxes(view); i++)
        {
            body.Append(CultureInfo.InvariantCulture, $"<tr><td>{i}</td>").Append(string.Concat(Enumerable.Repeat("<td></td>", view.Columns.Count + 2))).Append("</tr>");
        }

        body.Append("</tbody></table><p>A reading that looks wrong stays on the sheet: strike it through and write why. A longer run goes on over more of these sheets.</p>");
        return Page($"Reading sheet: {view.Kind}", body, "sheet", linked);
    }

    /// <summary>A step card: connections, ranges, loads, steps for one meter and for two, values to expect, when to stop.</summary>
    /// <param name="view">The recipe.</param>
    /// <param name="linked">True: for a browser that is served it; false: a file that stands alone.</param>
    public static string Card(RecipeView view, bool linked = false)
    {
        var body = new StringBuilder();
        Head(body, view);
        body.Append("<pre>").Append(Text(string.Join('\n', view.Recipe.Picture))).Append("</pre>");
        Part(body, "With two meters", view.Recipe.TwoMeters, "ol");
        Part(body, "With one meter, moved between places", view.Recipe.OneMeter, "ol");
        Part(body, "Meter ranges", view.Recipe.Ranges, "ul");
        Part(body, "Loads", view.Recipe.Loads, "ul");
        Part(body, "Rest", view.Recipe.Rests, "ul");
        Expected(body, view);
        Part(body, "What the checks look for", [.. RuleBook.All.Where(rule => view.Checks.Contains(rule.Id)).Select(Looked)], "ul");
        return Page($"Step card: {view.Kind}", body, "card", linked);
    }

    /// <summary>As many rows as leave the sheet on one page, head and all.</summary>
    internal static int Boxes(RecipeView view)
    {
        double used = TitleMm + Lines(view.Purpose) + HeadMm + (view.Columns.Any(column => column.Words.Count > 0) ? 2 * LineMm : 0) + FootMm
            + (view.Recipe.Stops.Count > 0 ? 9 + view.Recipe.Stops.Sum(stop => Lines(stop) + 1.2) : 0)
            + (view.Expected.Count > 0 ? 7 + (view.Expected.Count * (LineMm + 1.2)) : 0)
            + (Math.Ceiling(view.Settings.Count / (double)SettingsALine) * (LineMm + 1)) + LineMm + 6;
        return (int)Math.Clamp((PageMm - used) / RowMm, Fewest, Most);

        static double Lines(string text) => LineMm * Math.Ceiling(text.Length / (double)LettersALine);
    }

    /// <summary>A check in its own words; what it works out of the readings is left open.</summary>
    private static string Looked(TrialRule rule) => $"{Open(rule.Says)} {Open(rule.Remedy)}".Trim();

    /// <summary>'{amps|V|6}' stands for the amps read, told as volts: '… V'.</summary>
    private static string Open(string words) => Worked().Replace(words, number => number.Value.Trim('{', '}').Split('|') is [_, { Length: > 0 } unit, ..] ? $"… {unit}" : "…");

    [GeneratedRegex(@"\{[^{}]*\}", RegexOptions.CultureInvariant)]
    private static partial Regex Worked();

    /// <summary>Writes a page whole, never over something that is there.</summary>
    public static Checked<string> Write(string path, string html)
    {
        if (File.Exists(path))
        {
            return new(new Problem("The page would replace a file.", path, "the file is there", "a name that is not taken", "Choose another name, or move the file away."));
        }

        string draft = path + ".draft";
        try
        {
            using (var file = File.Create(draft))
            {
                file.Write(Encoding.UTF8.GetBytes(html));
                file.Flush(flushToDisk: true);
            }

            File.Move(draft, path, overwrite: false);
            return new(Path.GetFullPath(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The page cannot be written.", path, error.Message, "a folder that may be written to", "Choose another place."));
        }
    }

    private static void Head(StringBuilder body, RecipeView view)
    {
        body.Append("<h1>").Append(Text(view.Kind)).Append("</h1><p>").Append(Text(view.Purpose)).Append("</p>");
        if (view.Recipe.Stops.Count > 0)
        {
            body.Append("<div class=\"stop\">STOP<ul>").AppendJoin("", view.Recipe.Stops.Select(stop => $"<li>{Text(stop.Replace("Red: ", "", StringComparison.Ordinal))}</li>")).Append("</ul></div>");
        }
    }

    private static void Expected(StringBuilder body, RecipeView view) =>
        Part(body, "To expect from the claim", [.. view.Expected.Select(value => $"{value.Say}: {Display.Significant(value.Value, 3)} {value.Unit}")], "ul");

    private static void Part(StringBuilder body, string title, IReadOnlyList<string> lines, string list)
    {
        if (lines.Count > 0)
        {
            body.Append("<h2>").Append(Text(title)).Append(CultureInfo.InvariantCulture, $"</h2><{list}>").AppendJoin("", lines.Select(line => $"<li>{Text(line)}</li>")).Append(CultureInfo.InvariantCulture, $"</{list}>");
        }
    }

    private static string Text(string text) => WebUtility.HtmlEncode(text);

    private static string Page(string title, StringBuilder body, string kind, bool linked) =>
        $"<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"><title>{Text(title)}</title>{(linked ? "<link rel=\"stylesheet\" href=\"/paper.css\">" : $"<style>{Style}</style>")}</head><body class=\"{kind}\">{body}</body></html>\n";
}
