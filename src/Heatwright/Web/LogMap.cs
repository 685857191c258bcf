using System.Globalization;
using System.Text;
using Heatwright.Cli;
using Heatwright.Jobs.Keeping;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses where a log is sent for a trial, looked at as it is understood, and taken in.</summary>
internal static class LogMap
{
    /// <summary>Bytes; more goes through the command.</summary>
    public const long LargestLog = 32 << 20;

    public static void Map(WebApplication app)
    {
        const string page = "/trials/{name}/log/{id}";
        Writing.Post(app, "/trials/{name}/log", Laid, LargestLog + (1 << 16));
        app.MapMethods(page, PageMap.Reading, IResult (string name, string id, StudyOnBench bench, LaidLogs logs) => logs.Find(name, id) is { } log ? Look(bench.Now(), log, TrialForm.None) : Gone(bench, name, id));
        Writing.Post(app, page + "/answer", (context, form) => With(context, (bench, logs, log) =>
        {
            if (ImportLog.Look(bench.Now().Opened.Study, Import(bench, log, form), log.Bytes).Log.Questions is [var question, ..] && int.TryParse(form.Field("choice"), NumberStyles.None, CultureInfo.InvariantCulture, out int choice) && choice < question.Choices.Count)
            {
                logs.Answer(log, question.Choices[choice].Mapping);
            }

            return Writing.To(Address(log));
        }));
        Writing.Post(app, page + "/take", (context, form) => With(context, (bench, logs, log) =>
        {
            var taken = ImportLog.Take(Import(bench, log, form), log.Bytes, LogAnswers.Asked);
            if (!taken.IsFine)
            {
                return Look(bench.Now(), log, TrialForm.Refused("log", form, taken.Problems), StatusCodes.Status422UnprocessableEntity);
            }

            logs.Away(log);
            return Writing.To($"/trials/{Uri.EscapeDataString(log.Trial)}#run-{Uri.EscapeDataString(taken.Value.Run)}");
        }));
        Writing.Post(app, page + "/away", (context, _) => With(context, (_, logs, log) =>
        {
            logs.Away(log);
            return Writing.To($"/trials/{Uri.EscapeDataString(log.Trial)}");
        }));
    }

    private static string Address(LaidLog log) => $"/trials/{Uri.EscapeDataString(log.Trial)}/log/{log.Id}";

    private static IResult Laid(HttpContext context, IFormCollection form)
    {
        string trial = (string)context.Request.RouteValues["name"]!;
        var bench = context.RequestServices.GetRequiredService<StudyOnBench>();
        if (bench.Now().Opened.Study.Trials.All(one => one.Id.Name != trial))
        {
            return PageMap.NotHere(bench.Now(), $"/trials/{trial}", "the trials of the study", "Choose one from the list at /trials.");
        }

        var sent = form.Files.GetFile("log");
        byte[] bytes = Encoding.UTF8.GetBytes(form["text"].ToString().Trim().Length > 0 ? form["text"].ToString() : "");
        if (sent is { Length: > 0 })
        {
            using var memory = new MemoryStream();
            sent.CopyTo(memory);
            bytes = memory.ToArray();
        }

        if (bytes.Length == 0)
        {
            Problem nothing = new("No log was chosen, and none was pasted.", $"trial '{trial}'", "nothing", "a text file of readings, or lines of it", "Choose the file, drop it on the field, or paste its lines.");
            return TrialMap.One(bench.Now(), trial, TrialForm.Refused("log", form, [nothing]), StatusCodes.Status422UnprocessableEntity);
        }

        string name = sent is { Length: > 0 } ? Path.GetFileName(sent.FileName.Replace('\\', '/')) : "pasted.txt";
        return Writing.To(Address(context.RequestServices.GetRequiredService<LaidLogs>().Lay(trial, name, bytes)));
    }

    private static IResult With(HttpContext context, Func<StudyOnBench, LaidLogs, LaidLog, IResult> act)
    {
        var (bench, logs) = (context.RequestServices.GetRequiredService<StudyOnBench>(), context.RequestServices.GetRequiredService<LaidLogs>());
        string trial = (string)context.Request.RouteValues["name"]!, id = (string)context.Request.RouteValues["id"]!;
        return logs.Find(trial, id) is { } log ? act(bench, logs, log) : Gone(bench, trial, id);
    }

    private static RazorComponentResult<Document> Gone(StudyOnBench bench, string trial, string id) =>
        PageMap.NotHere(bench.Now(), $"/trials/{trial}/log/{id}", "a log that was sent a moment ago and not taken in yet", $"Send the file once more at /trials/{trial}; nothing was changed.");

    /// <summary>What the form says of the log: the instrument, which column is which, meters and settings.</summary>
    internal static LogImport Import(StudyOnBench bench, LaidLog log, IFormCollection form) => new(log.Name, bench.Now().Opened.Path, log.Trial)
    {
        Run = form.Field("id") is { Length: > 0 } run ? run : null,
        Instrument = form.Field("instrument"),
        Columns = string.Join(',', form.Keys.Where(key => key.StartsWith("column ", StringComparison.Ordinal) && form.Field(key).Length > 0).Select(key => $"{key["column ".Length..]}={form.Field(key)}")),
        Meters = TrialMap.Named(form, "meter "),
        Settings = TrialMap.Named(form, "set "),
        Answers = log.Answers,
    };

    private static RazorComponentResult<Document> Look(Standing standing, LaidLog log, TrialForm form, int status = StatusCodes.Status200OK)
    {
        var study = standing.Opened.Study;
        if (study.Trials.All(trial => trial.Id.Name != log.Trial))
        {
            return PageMap.NotHere(standing, $"/trials/{log.Trial}", "the trials of the study", "Choose one from the list at /trials.");
        }

        var (read, pairs) = ImportLog.Look(study, new(log.Name, standing.Opened.Path, log.Trial) { Answers = log.Answers }, log.Bytes);
        var answer = PageMap.Render(standing, "/trials", $"Log for {log.Trial}", typeof(LogPage), new() { ["Study"] = study, ["Log"] = log, ["Read"] = read, ["Pairs"] = pairs, ["Form"] = form });
        answer.StatusCode = status;
        return answer;
    }
}
