using System.Globalization;
using System.Text;
using Heatwright.Arrangements;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;
using Heatwright.Web.Pages;
using Heatwright.Web.Pieces;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses where an arrangement is tried with some of its values otherwise. What is tried stands in the address; nothing is written until it is kept.</summary>
internal static class TryMap
{
    private const string Page = "/arrangements/{name}/try";

    /// <summary>Asks for the draws before the page is answered: for a browser without script.</summary>
    private const string WithDraws = "draws";

    /// <summary>So often the draws say how far they are.</summary>
    private static readonly TimeSpan Tick = TimeSpan.FromMilliseconds(80);

    public static void Map(WebApplication app)
    {
        PageMap.OwnFile(app, "try.js", "text/javascript; charset=utf-8");
        app.MapMethods(Page, PageMap.Reading, async (string name, HttpContext context, StudyOnBench bench, Tries tries) => await Whole(bench.Now(), tries, name, Typed(context.Request.Query), [], "", context));
        app.MapMethods(Page + "/seen", PageMap.Reading, Seen);
        app.MapGet(Page + "/draws", Draws);
        Writing.Post(app, Page + "/keep", (context, form) =>
        {
            string name = (string)context.Request.RouteValues["name"]!;
            var bench = context.RequestServices.GetRequiredService<StudyOnBench>();
            KeyValuePair<string, string>[] typed = [.. form.Where(field => field.Key is not ("token" or "called" or "draft")).Select(field => KeyValuePair.Create(field.Key, field.Value.ToString().Trim()))];
            string called = form.Field("called");
            var kept = TryChange.Keep(bench.Now().Opened.Path, name, typed, called.Length > 0 ? called : null);
            return kept.IsFine ? Writing.To(kept.Value.ChangesArrangement ? $"/arrangements/{kept.Value.Arrangement.Letter}" : "/brief")
                : new Later(Whole(bench.Now(), context.RequestServices.GetRequiredService<Tries>(), name, typed, kept.Problems, called, context));
        });
    }

    private static KeyValuePair<string, string>[] Typed(IQueryCollection query) =>
        [.. query.Where(pair => pair.Key is not WithDraws && pair.Value.ToString().Trim().Length > 0).Select(pair => KeyValuePair.Create(pair.Key, pair.Value.ToString().Trim()))];

    private static Shelf? Shelf(Standing standing) => standing.Result?.Shelf ?? (standing.Findings is { } found ? new(standing.Opened.Study.Parts, found) : null);

    private static ArrangementVerdict? Verdict(Standing standing, string name) => standing.Result?.Verdicts.FirstOrDefault(one => one.Arrangement.Letter == name);

    private static async Task<IResult> Whole(Standing standing, Tries tries, string name, KeyValuePair<string, string>[] typed, IReadOnlyList<Problem> problems, string called, HttpContext context)
    {
        var study = standing.Opened.Study;
        if (study.Arrangements.FirstOrDefault(one => one.Letter == name) is not { } one)
        {
            return PageMap.NotHere(standing, $"/arrangements/{name}/try", study.Arrangements.Count > 0 ? string.Join(", ", study.Arrangements.Select(other => other.Letter)) : "none is wired yet", "Choose one from the list at /arrangements.");
        }

        string title = $"Try a change in {name}";
        if (standing.Problems.Count > 0)
        {
            return PageMap.Render(standing, "/arrangements", title, typeof(ProblemsPage), new() { ["Problems"] = standing.Problems });
        }

        if (Shelf(standing) is not { } shelf)
        {
            return PageMap.Render(standing, "/arrangements", title, typeof(WorkingPage), new() { ["Doing"] = standing.Doing }, again: true);
        }

        var tried = tries.Of(standing.Opened, shelf, name, typed, context.RequestAborted);
        var shown = tried.IsFine ? tried.Value : tries.Of(standing.Opened, shelf, name, [], context.RequestAborted).Value;
        if (context.Request.Query.ContainsKey(WithDraws) && Drawable(tries, standing, shown))
        {
            await Take(tries, standing, shown, null, context.RequestAborted);
        }

        IReadOnlyList<Problem> all = [.. problems, .. tried.Problems];
        var answer = PageMap.Render(standing, "/arrangements", title, typeof(TryPage), new()
        {
            ["Arrangement"] = one,
            ["Dials"] = Dials.Of(study, shelf, one),
            ["Typed"] = typed.GroupBy(pair => pair.Key, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Last().Value, StringComparer.Ordinal),
            ["Problems"] = all,
            ["Tried"] = shown,
            ["Verdict"] = Shown(tries, standing, shown),
            ["VerdictWas"] = Verdict(standing, name),
            ["Called"] = called,
        });
        answer.StatusCode = problems.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK;
        return answer;
    }

    /// <summary>What a change does, without the page around it. A slip while something is typed is told, and is no failure.</summary>
    private static RazorComponentResult<TriedSeen> Seen(string name, HttpContext context, StudyOnBench bench, Tries tries)
    {
        var standing = bench.Now();
        var tried = Asked(standing, tries, name, context);
        return new RazorComponentResult<TriedSeen>(tried.IsFine
            ? new Dictionary<string, object?> { ["Of"] = tried.Value, ["Verdict"] = Shown(tries, standing, tried.Value), ["VerdictWas"] = Verdict(standing, name) }
            : new Dictionary<string, object?> { ["Problems"] = tried.Problems });
    }

    /// <summary>Takes the draws of a change and says how far they are, line by line; a browser that goes away stops them.</summary>
    private static async Task Draws(string name, HttpContext context, StudyOnBench bench, Tries tries)
    {
        var standing = bench.Now();
        var tried = Asked(standing, tries, name, context);
        context.Response.ContentType = "text/plain; charset=utf-8";
        if (!tried.IsFine || !Drawable(tries, standing, tried.Value))
        {
            return;
        }

        try
        {
            int done = 0;
            var taking = Task.Run(() => Take(tries, standing, tried.Value, count => Volatile.Write(ref done, Math.Max(count, Volatile.Read(ref done))), context.RequestAborted), context.RequestAborted);
            while (await Task.WhenAny(taking, Task.Delay(Tick, context.RequestAborted)) != taking)
            {
                context.RequestAborted.ThrowIfCancellationRequested();
                await context.Response.BodyWriter.WriteAsync(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{Volatile.Read(ref done)} {Settling.Most}\n")), context.RequestAborted);
            }

            await taking;
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Another change was tried meanwhile: nobody waits for this one.
        }
    }

    private static Checked<Tried> Asked(Standing standing, Tries tries, string name, HttpContext context) => standing.Problems.Count > 0 ? new(standing.Problems)
        : Shelf(standing) is { } shelf ? tries.Of(standing.Opened, shelf, name, Typed(context.Request.Query), context.RequestAborted)
        : new(new Problem("The study is still being worked out.", $"arrangement {name}", standing.Doing, "findings of its trials", "Wait a few seconds; the page asks again."));

    private static bool Drawable(Tries tries, Standing standing, Tried tried) => tried.Is.Run is not null && tried.Change.Values.Count > 0 && Shown(tries, standing, tried) is null;

    /// <summary>Where nothing is tried otherwise the study's own verdict stands.</summary>
    private static ArrangementVerdict? Shown(Tries tries, Standing standing, Tried tried) =>
        tried.Change.Values.Count == 0 ? Verdict(standing, tried.Change.From.Letter) : tries.Drawn(standing.Opened.Fingerprint, tried);

    private static async Task Take(Tries tries, Standing standing, Tried tried, Action<int>? progress, CancellationToken cancel)
    {
        await tries.OneAtATime.WaitAsync(cancel);
        try
        {
            tries.Keep(standing.Opened.Fingerprint, tried, tried.Is.Drawn(standing.Opened.Fingerprint, progress: progress, cancel: cancel));
        }
        finally
        {
            tries.OneAtATime.Release();
        }
    }

    /// <summary>An answer that is still being made.</summary>
    private sealed class Later(Task<IResult> made) : IResult
    {
        public async Task ExecuteAsync(HttpContext httpContext) => await (await made).ExecuteAsync(httpContext);
    }
}
