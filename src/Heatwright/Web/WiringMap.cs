using Heatwright.Arrangements;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses of the arrangements: all of them with the form that wires one, and each with its loop and the form that clones it.</summary>
internal static class WiringMap
{
    public static void Map(WebApplication app)
    {
        app.MapMethods("/arrangements", PageMap.Reading, (StudyOnBench bench) => All(bench.Now(), new WiringForm("")));
        app.MapMethods("/arrangements/{name}", PageMap.Reading, (string name, StudyOnBench bench) => One(bench.Now(), name, new WiringForm(name)));
        Writing.Post(app, "/arrangements/add", (context, form) =>
        {
            var (bench, sent) = (Bench(context), WiringForm.Of(form));
            var wired = WireTool.Arrange(bench.Now().Opened.Path, sent.Entry(null));
            return wired.IsFine ? Writing.To($"/arrangements/{wired.Value.Loop.Arrangement.Letter}") : All(bench.Now(), sent with { Problems = wired.Problems }, StatusCodes.Status422UnprocessableEntity);
        });
        Changed(app, "clone", WireTool.Clone);
        Changed(app, "rewire", WireTool.Rewire);
        Writing.Post(app, "/arrangements/{name}/unwire", (context, form) =>
        {
            string name = (string)context.Request.RouteValues["name"]!;
            var bench = Bench(context);
            var done = WireTool.Unwire(bench.Now().Opened.Path, name);
            return done.IsFine ? Writing.To("/arrangements?step=" + Uri.EscapeDataString($"Taken out: arrangement {name}. The last change can be taken back."))
                : One(bench.Now(), name, new WiringForm(name) { Problems = done.Problems }, StatusCodes.Status422UnprocessableEntity);
        });
    }

    private static void Changed(WebApplication app, string verb, Func<string, string, WiringEntry, Checked<Wired>> job) => Writing.Post(app, "/arrangements/{name}/" + verb, (context, form) =>
        {
            string name = (string)context.Request.RouteValues["name"]!;
            var (bench, sent) = (Bench(context), WiringForm.Of(form, name));
            var old = bench.Now().Opened.Study.Arrangements.FirstOrDefault(one => one.Letter == name);
            var (wired, mark) = context.RequestServices.GetRequiredService<Meanwhile>().Do(bench.Now().Opened.Path, old?.Id.Name ?? "", form.Field("seen"), () => job(bench.Now().Opened.Path, name, sent.Entry(old)));
            return wired.IsFine ? Writing.To($"/arrangements/{wired.Value.Loop.Arrangement.Letter}", mark) : One(bench.Now(), name, sent with { Problems = wired.Problems }, StatusCodes.Status422UnprocessableEntity);
        });

    private static StudyOnBench Bench(HttpContext context) => context.RequestServices.GetRequiredService<StudyOnBench>();

    private static RazorComponentResult<Document> All(Standing standing, WiringForm form, int status = StatusCodes.Status200OK)
    {
        var answer = PageMap.Render(standing, "/arrangements", "Arrangements", typeof(ArrangementsPage), new() { ["Study"] = standing.Opened.Study, ["Result"] = standing.Result, ["Form"] = form });
        answer.StatusCode = status;
        return answer;
    }

    private static RazorComponentResult<Document> One(Standing standing, string name, WiringForm form, int status = StatusCodes.Status200OK)
    {
        var study = standing.Opened.Study;
        if (study.Arrangements.FirstOrDefault(one => one.Letter == name) is not { } arrangement)
        {
            return PageMap.NotHere(standing, $"/arrangements/{name}", study.Arrangements.Count > 0 ? string.Join(", ", study.Arrangements.Select(one => one.Letter)) : "none is wired yet", "Choose one from the list at /arrangements.");
        }

        if (standing.Problems.Count > 0)
        {
            return PageMap.Render(standing, "/arrangements", "Arrangements", typeof(ProblemsPage), new() { ["Problems"] = standing.Problems });
        }

        // The loop is there at once; the verdict joins it when the draws are done.
        var loop = LoopView.Of(study, arrangement, standing.Result?.Shelf ?? LoopView.Bench(study));
        var answer = PageMap.Render(standing, "/arrangements", $"Arrangement {name}", typeof(ArrangementPage),
            new() { ["Study"] = study, ["Result"] = standing.Result, ["Name"] = name, ["Loop"] = loop, ["Form"] = form, ["Doing"] = standing.Doing }, again: standing.Result is null && status == StatusCodes.Status200OK);
        answer.StatusCode = status;
        return answer;
    }
}
