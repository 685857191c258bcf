using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses of the decision and of the prototype's check.</summary>
internal static class DecisionMap
{
    public static void Map(WebApplication app)
    {
        app.MapMethods("/decision", PageMap.Reading, (StudyOnBench bench) => Decision(bench, TrialForm.None));
        app.MapMethods("/check", PageMap.Reading, (StudyOnBench bench) => Check(bench, TrialForm.None));
        Writing.Post(app, "/decision/make", (context, form) =>
        {
            var bench = context.RequestServices.GetRequiredService<StudyOnBench>();
            var standing = bench.Now();
            string[] accept = [.. form.Keys.Where(key => key.StartsWith("accept ", StringComparison.Ordinal) && form.Field(key).Length > 0).Select(key => $"{key["accept ".Length..]}={form.Field(key)}")];
            var made = standing.Result is { } result ? DecideTool.Make(standing.Opened.Path, result, form.Field("arrangement"), form.Field("because"), accept, Today()) : Working<DecisionView>(standing);
            return made.IsFine ? Writing.ToWorkedOut("/decision", bench) : Decision(bench, TrialForm.Refused("decide", form, made.Problems), StatusCodes.Status422UnprocessableEntity);
        });
        Writing.Post(app, "/check/read", (context, form) =>
        {
            var bench = context.RequestServices.GetRequiredService<StudyOnBench>();
            var read = DecideTool.Read(bench.Now().Opened.Path, [form.Field("reading")], Today());
            return read.IsFine ? Writing.ToWorkedOut("/check", bench) : Check(bench, TrialForm.Refused("read", form, read.Problems), StatusCodes.Status422UnprocessableEntity);
        });
    }

    /// <summary>This day at this desk, as 2026-03-01.</summary>
    public static string Today() => TimeProvider.System.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Checked<T> Working<T>(Standing standing) => new(new Problem("The study is still being worked out.", "decision", standing.Doing, "a finished result", "Send it once more in a few seconds; nothing was changed."));

    private static RazorComponentResult<Document> Decision(StudyOnBench bench, TrialForm form, int status = StatusCodes.Status200OK) => WithStatus(PageMap.WithResult(bench, "/decision", "Decision",
        result => (typeof(DecisionPage), new() { ["Result"] = result, ["Form"] = form })), status);

    private static RazorComponentResult<Document> Check(StudyOnBench bench, TrialForm form, int status = StatusCodes.Status200OK) => WithStatus(PageMap.WithResult(bench, "/check", "Check",
        result => (typeof(CheckPage), new() { ["Result"] = result, ["Form"] = form })), status);

    private static RazorComponentResult<Document> WithStatus(RazorComponentResult<Document> answer, int status)
    {
        answer.StatusCode = status;
        return answer;
    }
}
