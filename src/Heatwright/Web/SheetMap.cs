using System.Collections.Concurrent;
using System.Text;
using Heatwright.Jobs;
using Heatwright.Jobs.BuildSheets;
using Heatwright.Quantities;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Build sheets that were asked for: each is made once for a state of the study, in the background.</summary>
internal sealed class SheetDesk
{
    private readonly ConcurrentDictionary<string, Lazy<Task<Checked<MadeSheet>>>> sheets = new(StringComparer.Ordinal);

    /// <summary>The sheet; null: it is still being made.</summary>
    public Checked<MadeSheet>? Of(OpenedStudy opened, StudyResult result, string letter)
    {
        string key = $"{opened.Fingerprint} {letter}";
        foreach (string old in sheets.Keys.Where(one => !one.StartsWith(opened.Fingerprint, StringComparison.Ordinal)))
        {
            sheets.TryRemove(old, out _);
        }

        var made = Made(opened, result, letter, key);
        return made.IsCompletedSuccessfully ? made.Result : made.IsFaulted ? new(new Problem("The build sheet cannot be made.", $"arrangement {letter}", made.Exception.InnerException?.Message ?? "", "an arrangement the laws can be applied to", "This is our fault: keep the study file, it is not changed.")) : null;
    }

    /// <summary>The sheet when it is made: a picture of a page that is there is asked for at once, and waits rather than be missing.</summary>
    public Task<Checked<MadeSheet>> Whole(OpenedStudy opened, StudyResult result, string letter) => Made(opened, result, letter, $"{opened.Fingerprint} {letter}");

    private Task<Checked<MadeSheet>> Made(OpenedStudy opened, StudyResult result, string letter, string key) => sheets.GetOrAdd(key, _ => new(() => Task.Run(() =>
    {
        var made = MakeBuildSheet.Of(opened, new SheetRequest { Arrangement = letter.Length > 0 ? letter : null, Date = MakeBuildSheet.Day(opened.Study, letter, DecisionMap.Today()) }, result);
        if (made.IsFine)
        {
            // The sheet of what was decided is that of its letter: its files are asked for by the letter.
            sheets.TryAdd($"{opened.Fingerprint} {made.Value.Letter}", new(() => Task.FromResult(made)));
        }

        return made;
    }))).Value;
}

/// <summary>Addresses of the build sheet and of the files that go with it.</summary>
internal static class SheetMap
{
    public static void Map(WebApplication app)
    {
        var desk = new SheetDesk();
        app.MapMethods("/build-sheet", PageMap.Reading, (StudyOnBench bench) => Sheet(bench, desk, ""));
        app.MapMethods("/build-sheet/{letter}", PageMap.Reading, (string letter, StudyOnBench bench) => bench.Now().Opened.Study.Arrangements.Any(one => one.Letter == letter)
            ? Sheet(bench, desk, letter) : PageMap.NotHere(bench.Now(), $"/build-sheet/{letter}", string.Join(", ", bench.Now().Opened.Study.Arrangements.Select(one => one.Letter)), "Choose an arrangement at /build-sheet."));
        // A file is one of the sheet's own by its whole name: no path of the machine is ever opened.
        app.MapMethods("/build-sheet/{letter}/files/{*name}", PageMap.Reading, async Task<IResult> (string letter, string name, StudyOnBench bench) =>
        {
            await bench.ReadyAsync();
            var standing = bench.Now();
            bool known = standing.Opened.Study.Arrangements.Any(one => one.Letter == letter);
            return known && standing.Result is { } result && await desk.Whole(standing.Opened, result, letter) is { IsFine: true } made && made.Value.Files.FirstOrDefault(file => file.Name == name) is { } found
                ? TypedResults.File(Encoding.UTF8.GetBytes(found.Text), name.EndsWith(".svg", StringComparison.Ordinal) ? "image/svg+xml" : "text/plain; charset=utf-8", name.EndsWith(".svg", StringComparison.Ordinal) ? null : Path.GetFileName(name))
                : PageMap.NotHere(bench.Now(), $"/build-sheet/{letter}/files/{name}", "the files that the sheet lists", $"Open /build-sheet/{letter} and choose one.");
        });
    }

    private static RazorComponentResult<Document> Sheet(StudyOnBench bench, SheetDesk desk, string letter)
    {
        var standing = bench.Now();
        if (standing.Problems.Count > 0 || standing.Result is null)
        {
            return PageMap.WithResult(bench, "/build-sheet", "Build sheet", _ => (typeof(WorkingPage), new() { ["Doing"] = standing.Doing }));
        }

        return desk.Of(standing.Opened, standing.Result, letter) is { } made
            ? PageMap.Render(standing, "/build-sheet", "Build sheet", typeof(BuildSheetPage), new() { ["Made"] = made, ["Study"] = standing.Opened.Study })
            : PageMap.Render(standing, "/build-sheet", "Build sheet", typeof(WorkingPage), new() { ["Doing"] = "Laying out the build sheet" }, again: true);
    }
}
