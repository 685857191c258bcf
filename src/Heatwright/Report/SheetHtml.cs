using System.Reflection;
using Heatwright.BuildSheets;
using Heatwright.Jobs.BuildSheets;
using Heatwright.Quantities;
using Heatwright.Web;
using Heatwright.Web.Frame;

namespace Heatwright.Report;

/// <summary>A build sheet as one HTML text to print and lay on the bench; it needs no program and no network.</summary>
public static class SheetHtml
{
    /// <summary>The page. Same sheet, same text.</summary>
    public static string Write(MadeSheet made)
    {
        ArgumentNullException.ThrowIfNull(made);
        using var pieces = new Pieces();
        var sheet = made.Sheet;
        return Html.Of($"""
            <!doctype html>
            <html lang="en" data-theme="light"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
            <title>{sheet.Title}</title>
            <style>{Own("web/look.css")}{Own("report/report.css")}</style></head>
            <body class="report sheet">{pieces.Of<Sprite>()}
            <main>
            {Body(made)}
            </main>
            </body></html>

            """).Text.ReplaceLineEndings("\n");
    }

    /// <summary>What stands on the sheet, for the page of the bench and for the file: broken limits first, then what is untested, then section by section.</summary>
    /// <param name="made">The sheet.</param>
    /// <param name="address">Where its files can be fetched; empty: they lie beside the page.</param>
    internal static Html Body(MadeSheet made, string address = "")
    {
        var sheet = made.Sheet;
        return Html.Of($"""
            {Html.If(sheet.Breaks.Count > 0, () => Html.Of($"""<div class="problem breaks" role="alert"><b>Do not build it so: a hard safety limit is broken</b><ul>{Html.Each(sheet.Breaks, line => Html.Of($"<li>{line}</li>"))}</ul></div>"""))}
            <div class="head"><div><h1>{sheet.Title}</h1></div><p>{Say.Sentence(made.Chosen)}</p></div>
            {Html.If(made.Invented, () => new Html("""<p class="note">The readings of this study are made up for demonstration: nothing here says anything about a real part.</p>"""))}
            <section class="piece" id="untested"><header><h2>Not tested</h2><span class="aside">what this sheet rests on without a reading</span></header>{Lines(sheet.Untested)}</section>
            {Html.Each(sheet.Sections, section => Section(section, sheet, address))}
            <section class="piece" id="files"><header><h2>Files</h2><span class="aside">beside this page</span></header><ul class="plain">{Html.Each(made.Files, file => Html.Of($"""<li><a href="{address}{file.Name}">{file.Name}</a></li>"""))}</ul></section>
            """);
    }

    private static Html Section(SheetSection section, BuildSheet sheet, string address) => Html.Of($"""
        <section class="piece" id="{section.Key}"><header><h2>{section.Title}</h2></header>
        {Html.Each(section.Problems, Problem)}
        {Html.If(section.Lines.Count > 0, () => Lines(section.Lines))}
        {Html.If(section.Table is not null, () => Table(section.Table!))}
        {Html.If(section.Key == "handle" && sheet.Drawing is not null, () => address.Length > 0 ? Html.Of($"""<figure class="drawing"><img src="{address}handle.svg" alt="The handle in section, to scale, in millimetres"></figure>""") : Html.Of($"""<figure class="drawing">{new Html(sheet.Drawing!)}</figure>"""))}
        </section>
        """);

    private static Html Lines(IReadOnlyList<SheetLine> lines) => Html.Of($"""
        <table class="stack inputs"><thead><tr><th>what</th><th>value</th><th>for the build</th></tr></thead><tbody>{Html.Each(lines, line => Html.Of($"""
        <tr class="{(line.Warns ? "asked" : "")}"><th scope="row">{Say.Sentence(line.Name).TrimEnd('.')}</th><td data-of="value">{Html.If(line.Value is not null, () => Origins.Number(line.Value!, scaled: false))}</td><td data-of="for the build">{Html.If(line.Warns, () => new Html("<b>Look: </b>"))}{line.Words}</td></tr>
        """))}</tbody></table>
        """);

    private static Html Table(SheetTable table) => Html.Of($"""
        <h3>{table.Title}</h3><div class="wide" tabindex="0" role="region" aria-label="{table.Title}"><table class="sheet-table"><thead><tr>{Html.Each(table.Columns, column => Html.Of($"<th>{column}</th>"))}</tr></thead>
        <tbody>{Html.Each(table.Rows, row => Html.Of($"<tr>{Html.Each(row, cell => Html.Of($"<td>{cell}</td>"))}</tr>"))}</tbody></table></div>
        """);

    private static Html Problem(Problem problem) => Html.Of($"""
        <div class="problem"><b>{problem.What}</b><dl><dt>where</dt><dd>{problem.Where}</dd><dt>value</dt><dd>{problem.Value}</dd><dt>limit</dt><dd>{problem.Limit}</dd><dt>next</dt><dd>{problem.Next}</dd></dl></div>
        """);

    private static Html Own(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name) ?? throw new InvalidOperationException($"'{name}' is not in this build.");
        using var reader = new StreamReader(stream);
        return new(reader.ReadToEnd());
    }
}
