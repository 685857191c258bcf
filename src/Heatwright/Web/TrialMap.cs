using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Jobs.Keeping;
using Heatwright.Jobs.Trials;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses of the trials: the list with the form that plans one, and each with its readings, typed line by line.</summary>
internal static class TrialMap
{
    public static void Map(WebApplication app)
    {
        PageMap.OwnFile(app, "entry.js", "text/javascript; charset=utf-8");
        PageMap.OwnFile(app, "plan.js", "text/javascript; charset=utf-8");
        PaperMap.Map(app);
        app.MapMethods("/trials", PageMap.Reading, (string? part, StudyOnBench bench) => All(bench.Now(), TrialForm.None, part: part ?? ""));
        app.MapMethods("/trials/{name}", PageMap.Reading, (string name, StudyOnBench bench) => One(bench.Now(), name, TrialForm.None));
        app.MapMethods("/state", PageMap.Reading, (StudyOnBench bench) => TypedResults.Json(new { start = bench.Start, state = bench.Now().Key }));
        app.MapMethods("/trials/{name}/look", PageMap.Reading, (string? run, string? line, StudyOnBench bench) => Answer(TypeReadings.Look(bench.Now().Opened.Study, run ?? "", line ?? "")));
        Writing.Post(app, "/trials/add", (context, form) =>
        {
            var bench = Bench(context);
            var planned = PlanTrial.KindOf(form.Field("kind"), form.Field("law"), form.Field("result"), form.Field("find"))
                .Then(kind => PlanTrial.Add(bench.Now().Opened.Path, form.Field("name"), kind, form.Field("part"), form.Field("purpose")));
            return planned.IsFine ? Writing.To(Page(planned.Value.Id.Name)) : All(bench.Now(), TrialForm.Refused("plan", form, planned.Problems), StatusCodes.Status422UnprocessableEntity);
        });
        LogMap.Map(app);
        Writing.Post(app, "/meters/add", (context, form) =>
        {
            var bench = Bench(context);
            var stated = PlanTrial.Meter(bench.Now().Opened.Path, new(form.Field("id"), form.Field("name"), Said(form.Field("reads")), Said(form.Field("steps"))));
            return stated.IsFine ? Writing.To("/trials#meters") : All(bench.Now(), TrialForm.Refused("meter", form, stated.Problems), StatusCodes.Status422UnprocessableEntity);
        });
        Post(app, "run", (path, name, form) => TypeReadings.Begin(path, Run(name, form)).Map(run => run.Id.Name));
        Post(app, "set", (path, name, form) => SetRun.Set(path, new(name, form.Field("run"), [], Anew(form, "meter "), Anew(form, "set "))).Map(run => run.Id.Name));
        Writing.Post(app, "/trials/{name}/drop", (context, form) =>
        {
            string name = (string)context.Request.RouteValues["name"]!;
            var dropped = PlanTrial.Drop(Bench(context).Now().Opened.Path, name);
            return dropped.IsFine ? Writing.To("/trials") : One(Bench(context).Now(), name, TrialForm.Refused("drop", form, dropped.Problems), StatusCodes.Status422UnprocessableEntity);
        });
        Post(app, "drop-run", (path, name, form) => SetRun.Drop(path, name, form.Field("run")).Map(_ => ""));
        Writing.Post(app, "/trials/{name}/line", (context, form) => Line(context, (string)context.Request.RouteValues["name"]!, form));
        Post(app, "block", (path, name, form) => TypeReadings.TakeAll(path, name, form.Field("run"), form["block"].ToString().Split('\n')).Map(run => run.Id.Name));
        Post(app, "strike", (path, _, form) => StudyCare.Strike(path, form.Field("run"), [form.Field("numbers")], form.Field("because")).Map(_ => form.Field("run")));
        Post(app, "stand", (path, _, form) => StudyCare.Strike(path, form.Field("run"), [form.Field("numbers")], null).Map(_ => form.Field("run")));
    }

    /// <summary>Several of one kind in a field, with ';' or a line between two.</summary>
    private static string[] Said(string typed) => typed.Split([';', '\n'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static StudyOnBench Bench(HttpContext context) => context.RequestServices.GetRequiredService<StudyOnBench>();

    private static string Page(string trial, string run = "") => $"/trials/{Uri.EscapeDataString(trial)}{(run.Length > 0 ? $"#run-{Uri.EscapeDataString(run)}" : "")}";

    private static void Post(WebApplication app, string about, Func<string, string, IFormCollection, Checked<string>> job) => Writing.Post(app, $"/trials/{{name}}/{about}", (context, form) =>
    {
        string name = (string)context.Request.RouteValues["name"]!;
        var bench = Bench(context);
        var done = about == "strike" && form.Field("because").Length == 0
            ? new(new Problem("A reading is struck out with a reason.", "reason", "empty", "a few words", "Say why it does not count; it stays with the reading."))
            : job(bench.Now().Opened.Path, name, form);
        return done.IsFine ? Writing.To(Page(name, done.Value)) : One(bench.Now(), name, TrialForm.Refused(about, form, done.Problems), StatusCodes.Status422UnprocessableEntity);
    });

    private static RunEntry Run(string trial, IFormCollection form) => new(trial, form.Field("id"),
        [.. form["columns"].OfType<string>()], Named(form, "meter "), Named(form, "set "));

    /// <summary>Fields whose names begin alike, as name=value; those left empty are not said.</summary>
    internal static string[] Named(IFormCollection form, string start) =>
        [.. form.Keys.Where(key => key.StartsWith(start, StringComparison.Ordinal) && form.Field(key).Length > 0).Select(key => $"{key[start.Length..]}={form.Field(key)}")];

    /// <summary>Those of them that differ from what the page showed; one that was emptied is taken out.</summary>
    private static string[] Anew(IFormCollection form, string start) => [.. form.Keys.Where(key => key.StartsWith(start, StringComparison.Ordinal) && form.Field(key) != form.Field("was " + key))
        .Select(key => $"{key[start.Length..]}={(form.Field(key) is { Length: > 0 } said ? said : SetRun.None)}")];

    /// <summary>One typed line. A line that was sent again because its answer was lost is taken once: its number and its text tell.</summary>
    private static IResult Line(HttpContext context, string name, IFormCollection form)
    {
        var bench = Bench(context);
        bool machine = context.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.Ordinal);
        string path = bench.Now().Opened.Path, line = form["line"].ToString(), run = form.Field("run");
        // The first time a line is sent it is new, whatever others typed; later, or without script, it may have been taken before a crash.
        var taken = context.RequestServices.GetRequiredService<LinesTaken>().Once(form.Field("id"), () => (form.Field("first") == "yes" ? null : Twice(bench.Now().Opened.Study, run, line, form.Field("number"))) ??
            (run.Length > 0 ? TypeReadings.Take(path, run, line) : TypeReadings.Plan(path, new(name, "", [], [], [])).Then(begun => TypeReadings.Take(path, name, begun, line))));
        if (machine)
        {
            bench.Now();
            return Answer(taken);
        }

        return taken.IsFine ? Writing.To(Page(name, taken.Value.Run)) : One(bench.Now(), name, TrialForm.Refused("line", form, taken.Problems), StatusCodes.Status422UnprocessableEntity);
    }

    /// <summary>The same text at the place it was meant for, or behind it where others typed as well.</summary>
    private static Checked<ReadingTaken>? Twice(Study study, string run, string line, string number)
    {
        if (!int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int wanted) || study.Trials.SelectMany(trial => trial.Runs).FirstOrDefault(one => one.Id.Name == run) is not { } there || wanted < 1 || wanted > there.Readings.Count)
        {
            return null;
        }

        var looked = TypeReadings.Look(study, run, line);
        int found = looked.IsFine ? there.Readings.Skip(wanted - 1).FirstOrDefault(reading => reading.Raw.SequenceEqual(looked.Value.Fields.Select(field => field.Raw), StringComparer.Ordinal))?.Number ?? 0 : 0;
        return found > 0 ? new(looked.Value with { Number = found, Remarks = [] }) : null;
    }

    private static IResult Answer(Checked<ReadingTaken> taken) => taken.IsFine
        ? TypedResults.Json(new { taken.Value.Run, taken.Value.Number, taken.Value.Fields, remarks = taken.Value.Remarks.Select(remark => new { remark.Reading, words = PageWords.Of(remark.Words), leftOut = remark.Effect == Remark.LeftOut }) })
        : Results.Json(new { problem = PageWords.Of(taken.Problems[0]) }, statusCode: StatusCodes.Status422UnprocessableEntity);

    private static RazorComponentResult<Document> All(Standing standing, TrialForm form, int status = StatusCodes.Status200OK, string part = "")
    {
        var answer = PageMap.Render(standing, "/trials", "Trials", typeof(TrialsPage), new() { ["Study"] = standing.Opened.Study, ["Findings"] = standing.Findings, ["Form"] = form, ["On"] = part });
        answer.StatusCode = status;
        return answer;
    }

    internal static RazorComponentResult<Document> One(Standing standing, string name, TrialForm form, int status = StatusCodes.Status200OK)
    {
        var study = standing.Opened.Study;
        if (study.Trials.All(trial => trial.Id.Name != name))
        {
            return PageMap.NotHere(standing, $"/trials/{name}", study.Trials.Count > 0 ? string.Join(", ", study.Trials.Select(trial => trial.Id.Name)) : "no trial yet", "Choose one from the list at /trials.");
        }

        var answer = PageMap.Render(standing, "/trials", $"Trial {name}", typeof(TrialPage), new() { ["Study"] = study, ["Findings"] = standing.Findings, ["Name"] = name, ["Form"] = form });
        answer.StatusCode = status;
        return answer;
    }
}
