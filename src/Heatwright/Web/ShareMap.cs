using System.Globalization;
using System.Text;
using Heatwright.Jobs;
using Heatwright.Jobs.Sharing;
using Heatwright.Jobs.Showing;
using Heatwright.Quantities;
using Heatwright.Report;
using Heatwright.StudyFile;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses of what leaves the bench: report, first page, pictures, bundle for viewers; and mine beside theirs.</summary>
internal static class ShareMap
{
    /// <summary>A bundle may hold logs and photos, bytes.</summary>
    private const long LargestBundle = 64 << 20;

    public static void Map(WebApplication app)
    {
        app.MapMethods("/share", PageMap.Reading, (StudyOnBench bench) =>
        {
            var standing = bench.Now();
            return standing.Result is { } result && standing.Problems.Count == 0 && Drawn(result) is null
                ? PageMap.Render(standing, "/share", "Show it", typeof(WorkingPage), new() { ["Doing"] = "Drawing the pictures" }, again: true)
                : PageMap.WithResult(bench, "/share", "Show it", found => (typeof(SharePage), new()
                {
                    ["Pictures"] = (Drawn(found) ?? []).Select(one => one.Picture).ToArray(),
                    ["HasPage"] = found.Verdicts.Count > 0,
                    ["Shared"] = Beside.IsShared(found.Study),
                }));
        });
        Taken(app, "report.html", "text/html; charset=utf-8", (result, ask) => ReportHtml.Write(result, ask));
        Taken(app, "page.html", "text/html; charset=utf-8", (result, ask) => ReportHtml.Write(result, ask with { OnePage = true }));
        Taken(app, "page.md", "text/markdown; charset=utf-8", (result, ask) => PageText.Markdown(result, ask) is { IsFine: true } text ? text.Value : "");
        app.MapMethods("/share/pictures/{name}", PageMap.Reading, IResult (string name, StudyOnBench bench) =>
            bench.Now() is { Result: { } result } && (Drawn(result) ?? WritePictures.All(result)).FirstOrDefault(one => one.Picture.File == name) is { Svg: { } svg }
                ? TypedResults.File(Encoding.UTF8.GetBytes(svg), "image/svg+xml", name)
                : PageMap.NotHere(bench.Now(), $"/share/pictures/{name}", "the pictures that /share lists", "Open /share and choose one."));
        app.MapMethods("/share/bundle.zip", PageMap.Reading, IResult (string[]? without, StudyOnBench bench) =>
        {
            var standing = bench.Now();
            var made = ShareChoice.Of(without ?? []).Then(choice => ShareStudy.Of(standing.Opened.Path, choice)).Then(shared => Bundle.Pack(shared.Study));
            return made.IsFine ? TypedResults.File(made.Value, "application/zip", "for-viewers.zip") : PageMap.Render(standing, "/share", "Show it", typeof(ProblemsPage), new() { ["Problems"] = made.Problems });
        });
        Writing.Post(app, "/share/begin", (context, form) => Begun(context, Named(form.Field("name"), "next"), path => NewStudy.From(path, Named(form.Field("name"), "next"), Bench(context).Now().Opened.Path)));
        Writing.Post(app, "/share/open", (context, form) =>
        {
            if (form.Files.GetFile("bundle") is not { Length: > 0 } sent)
            {
                return Refused(context, [new("No bundle was chosen.", "bundle", "none", "the zip that somebody sent", "Choose it, and send it again.")]);
            }

            string folder = Directory.CreateTempSubdirectory("heatwright-").FullName;
            try
            {
                string zip = Path.Combine(folder, "sent.zip");
                using (var to = File.Create(zip))
                {
                    sent.CopyTo(to);
                }

                return Begun(context, Named(Path.GetFileNameWithoutExtension(sent.FileName), "theirs"), path => NewStudy.Import(zip, path));
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }, LargestBundle);
        app.MapMethods("/beside", PageMap.Reading, (StudyOnBench bench) =>
        {
            // Findings are enough: nobody waits here for predictions.
            var standing = bench.Now();
            var study = standing.Opened.Study;
            const string title = "Mine beside theirs";
            return standing.Problems.Count > 0 ? PageMap.Render(standing, "/share", title, typeof(ProblemsPage), new() { ["Problems"] = standing.Problems })
                : !Beside.IsShared(study) ? PageMap.Render(standing, "/share", title, typeof(BesidePage), new() { ["View"] = Beside.Of(study) })
                : standing.Findings is { } found ? PageMap.Render(standing, "/share", title, typeof(BesidePage), new() { ["View"] = new Checked<BesideView>(Beside.Of(study, found)) })
                : PageMap.Render(standing, "/share", title, typeof(WorkingPage), new() { ["Doing"] = standing.Doing }, again: true);
        });
    }

    private static StudyOnBench Bench(HttpContext context) => context.RequestServices.GetRequiredService<StudyOnBench>();

    /// <summary>What was typed, or another name where nothing was.</summary>
    private static string Named(string typed, string otherwise) => typed.Trim() is { Length: > 0 } name ? name : otherwise;

    private static IResult Begun(HttpContext context, string name, Func<string, Checked<Study>> make)
    {
        var made = NewStudy.AsFile(make);
        return made.IsFine ? TypedResults.File(made.Value, "application/octet-stream", $"{string.Concat(name.Select(sign => char.IsAsciiLetterOrDigit(sign) ? sign : '-'))}.study") : Refused(context, made.Problems);
    }

    private static RazorComponentResult<Frame.Document> Refused(HttpContext context, IReadOnlyList<Problem> problems)
    {
        var answer = PageMap.Render(Bench(context).Now(), "/share", "Show it", typeof(ProblemsPage), new() { ["Problems"] = problems });
        answer.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return answer;
    }

    /// <summary>The pictures, drawn once for a result; null: they are being drawn.</summary>
    private static IReadOnlyList<(WrittenPicture Picture, string Svg)>? Drawn(StudyResult result) => Answered.Of(result, "pictures", () => WritePictures.All(result));

    private static void Taken(WebApplication app, string name, string type, Func<StudyResult, ReportAsk, string> write) => app.MapMethods($"/share/{name}", PageMap.Reading, IResult (StudyOnBench bench) =>
        bench.Now().Result is { } result
            ? TypedResults.File(Encoding.UTF8.GetBytes(write(result, new(TimeProvider.System.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)))), type, name)
            : TypedResults.Redirect("/share"));
}
