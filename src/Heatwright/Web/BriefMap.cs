using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses of the brief and of the history: both take changes, neither waits for a result.</summary>
internal static class BriefMap
{
    public static void Map(WebApplication app)
    {
        app.MapMethods("/brief", PageMap.Reading, (StudyOnBench bench) => Brief(bench.Now(), "", []));
        app.MapMethods("/history", PageMap.Reading, (StudyOnBench bench, string? of, string? step) => History(bench.Now(), of ?? "", step ?? ""));
        Post(app, "add", (path, form) => ReadBrief.Add(path, form.Field("sentence")).Map(_ => true));
        Post(app, "set", (path, form) => EditBrief.Set(path, [.. EditBrief.Known(null).Select(field => field.Name).Where(name => form.ContainsKey(name) && form.Field(name).Length > 0 && form.Field(name) != form.Field("was " + name)).Select(name => $"{name}={form.Field(name)}")]).Map(_ => true));
        Post(app, "drop", (path, form) => EditBrief.Drop(path, form.Field("line")).Map(_ => true));
    }

    private static void Post(WebApplication app, string about, Func<string, IFormCollection, Checked<bool>> job) => Writing.Post(app, $"/brief/{about}", (context, form) =>
    {
        var bench = context.RequestServices.GetRequiredService<StudyOnBench>();
        var (done, mark) = context.RequestServices.GetRequiredService<Meanwhile>().Do(bench.Now().Opened.Path, "brief", form.Field("seen"), () => job(bench.Now().Opened.Path, form));
        return done.IsFine ? Writing.To("/brief", mark) : Brief(bench.Now(), form.Field("sentence"), done.Problems, StatusCodes.Status422UnprocessableEntity);
    });

    private static RazorComponentResult<Document> Brief(Standing standing, string sentence, IReadOnlyList<Problem> problems, int status = StatusCodes.Status200OK)
    {
        var answer = PageMap.Render(standing, "/brief", "Brief", typeof(BriefPage), new()
        {
            ["Study"] = standing.Opened.Study,
            ["Sentence"] = sentence,
            ["Problems"] = problems,
            ["Findings"] = standing.Findings,
            ["Waits"] = standing.Findings is null && standing.Problems.Count == 0 && standing.Opened.Study.Trials.Any(trial => trial.Runs.Any(run => run.Readings.Count > 0)),
        });
        answer.StatusCode = status;
        return answer;
    }

    private static RazorComponentResult<Document> History(Standing standing, string of, string step) =>
        PageMap.Render(standing, "/history", "History", typeof(HistoryPage), new() { ["Path"] = standing.Opened.Path, ["Of"] = of, ["Step"] = step });
}
