using System.Text.Json;
using System.Text.Json.Serialization;
using Heatwright.Handbook;
using Heatwright.Jobs;
using Heatwright.Jobs.Sums;
using Heatwright.Quantities;
using Heatwright.Web.Frame;
using Heatwright.Web.Near;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Which address shows what.</summary>
internal static class PageMap
{
    internal static readonly string[] Reading = [HttpMethods.Get, HttpMethods.Head];

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { NumberHandling = JsonNumberHandling.Strict };

    public static void Map(WebApplication app)
    {
        OwnFile(app, "look.css", "text/css; charset=utf-8").WithMetadata(new OpenToStrangers());
        OwnFile(app, "bench.js", "text/javascript; charset=utf-8");
        OwnFile(app, "step.js", "text/javascript; charset=utf-8");
        Changes.Map(app);
        OwnFile(app, "icon.svg", "image/svg+xml").WithMetadata(new OpenToStrangers());
        OwnFile(app, "picture.js", "text/javascript; charset=utf-8");
        OwnFile(app, "larger.js", "text/javascript; charset=utf-8");
        app.MapMethods("/study.json", Reading, StudyJson);
        app.MapMethods("/", Reading, (StudyOnBench bench) =>
        {
            var readings = bench.Now().Result is { } found ? ComparisonMap.Readings(found) : null;
            return WithResult(bench, "/", "Start", result => (typeof(StartPage), new() { ["Result"] = result, ["Readings"] = readings }), again: _ => readings is null);
        });
        BriefMap.Map(app);
        Page<PredictionsPage>(app, "/predictions", "Predictions");
        Page<ComparisonPage>(app, "/comparison", "Comparison");
        // Sums need no result of the study: they answer while it is still being worked out, and when it cannot be.
        app.MapMethods("/sums", Reading, (string? find, StudyOnBench bench) => Render(bench.Now(), "/sums", "Quick sums", typeof(SumsPage), new() { ["Find"] = (find ?? "").Trim() }));
        app.MapMethods("/sums/{law}", Reading, (string law, HttpContext context, StudyOnBench bench) => LawCard.Find(law) is { } card
            ? Render(bench.Now(), "/sums", card.Law.Name, typeof(SumPage), new() { ["Form"] = SumForm.Of(card, context.Request.Query) })
            : NotHere(bench.Now(), $"/sums/{law}", "the names listed at /sums", $"Look for it at /sums?find={Uri.EscapeDataString(law)}."));
        TrialMap.Map(app);
        ShelfMap.Map(app);
        OwnShelfMap.Map(app);
        DecisionMap.Map(app);
        ComparisonMap.Map(app);
        SheetMap.Map(app);
        ShareMap.Map(app);
        WiringMap.Map(app);
        NearMap.Map(app);
        TryMap.Map(app);
        One<PredictionPage>(app, "/predictions", "Prediction", result => result.Verdicts.Select(verdict => verdict.Arrangement.Letter));
        app.MapFallback("{*path}", (HttpContext context, StudyOnBench bench) => NotHere(bench.Now(), context.Request.Path.Value ?? "", "the nine stages above, and what the head of the page names", "Choose a stage above, or go to the start."));
    }

    internal static RouteHandlerBuilder OwnFile(WebApplication app, string name, string type)
    {
        using var stream = typeof(PageMap).Assembly.GetManifestResourceStream("web/" + name) ?? throw new InvalidOperationException($"'{name}' is not in this build.");
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        byte[] bytes = memory.ToArray();
        return app.MapMethods("/" + name, Reading, () => TypedResults.Bytes(bytes, type));
    }

    /// <summary>The result as machines read it; while it is being worked out, the one error shape with 503.</summary>
    private static async Task StudyJson(HttpContext context, StudyOnBench bench)
    {
        var standing = bench.Now();
        if (standing.Result is { } result)
        {
            await context.Response.WriteAsJsonAsync(StudyView.Of(result), Json, context.RequestAborted);
            return;
        }

        var problem = standing.Problems.Count > 0 ? standing.Problems[0] : new Problem("The study is still being worked out.", "study.json", standing.Doing, "a finished result", "Ask again in a few seconds.");
        await Door.Refuse(context, StatusCodes.Status503ServiceUnavailable, problem);
    }

    private static void Page<TPage>(WebApplication app, string path, string title)
        where TPage : IComponent =>
        app.MapMethods(path, Reading, (StudyOnBench bench) => WithResult(bench, path, title, result => (typeof(TPage), new() { ["Result"] = result })));

    private static void One<TPage>(WebApplication app, string stage, string title, Func<StudyResult, IEnumerable<string>> names)
        where TPage : IComponent =>
        app.MapMethods(stage + "/{name}", Reading, (string name, StudyOnBench bench) =>
        {
            var standing = bench.Now();
            return standing.Result is { } result && !names(result).Contains(name, StringComparer.Ordinal)
                ? NotHere(standing, $"{stage}/{name}", string.Join(", ", names(result)), $"Choose one from the list at {stage}.")
                : WithResult(bench, stage, $"{title} {name}", found => (typeof(TPage), new() { ["Result"] = found, ["Name"] = name }));
        });

    internal static RazorComponentResult<Document> WithResult(StudyOnBench bench, string path, string title, Func<StudyResult, (Type Page, Dictionary<string, object?> With)> page, Func<StudyResult, bool>? again = null)
    {
        var standing = bench.Now();
        if (standing.Problems.Count > 0)
        {
            return Render(standing, path, title, typeof(ProblemsPage), new() { ["Problems"] = standing.Problems });
        }

        if (standing.Result is not { } result)
        {
            return Render(standing, path, title, typeof(WorkingPage), new() { ["Doing"] = standing.Doing }, again: true);
        }

        var (type, with) = page(result);
        return Render(standing, path, title, type, with, again?.Invoke(result) ?? false);
    }

    internal static RazorComponentResult<Document> NotHere(Standing standing, string path, string limit, string next)
    {
        var problem = new Problem("There is no such page.", "address", path, limit, next);
        var answer = Render(standing, "", "No such page", typeof(ProblemsPage), new() { ["Problems"] = new[] { problem } });
        answer.StatusCode = StatusCodes.Status404NotFound;
        return answer;
    }

    internal static RazorComponentResult<Document> Render(Standing standing, string path, string title, Type page, Dictionary<string, object?> with, bool again = false) =>
        new(new Dictionary<string, object?>
        {
            [nameof(Document.Standing)] = standing,
            [nameof(Document.Here)] = path,
            [nameof(Document.Title)] = title,
            [nameof(Document.Page)] = page,
            [nameof(Document.With)] = with,
            [nameof(Document.Again)] = again,
        });
}
