using Heatwright.Quantities;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web.Near;

/// <summary>Addresses of pairing: the desk's page with picture code, digits and devices, and the form that a device is paired with.</summary>
internal static class NearMap
{
    private const long LargestPairing = 4096;

    public static void Map(WebApplication app)
    {
        PageMap.OwnFile(app, "near.js", "text/javascript; charset=utf-8");
        app.MapMethods("/near", PageMap.Reading, (HttpContext context, StudyOnBench bench) => Page(context, bench, [])).WithMetadata(new DeskOnly());
        app.MapMethods("/near/state", PageMap.Reading, (HttpContext context) => TypedResults.Json(new { state = Near(context) is { } near ? State(near) : "" })).WithMetadata(new DeskOnly());
        Desk(app, "digits", (near, _) =>
        {
            near.Digits.Show();
            return null;
        });
        Desk(app, "hide", (near, _) =>
        {
            near.Digits.Hide();
            return null;
        });
        Desk(app, "revoke", (near, form) => near.Devices.Revoke(form.Field("id")));
        app.MapMethods("/pair", PageMap.Reading, IResult (HttpContext context) => NearBench.IsDesk(context) ? Writing.To("/near")
            : Near(context)!.Devices.Known(context.Request.Cookies[NearGate.Cookie]) is not null ? Writing.To("/") : Form("", [])).WithMetadata(new OpenToStrangers());
        Writing.Post(app, "/pair", Paired, LargestPairing).WithMetadata(new OpenToStrangers());
    }

    /// <summary>What the desk's page shows, in short: another state means that the page is out of date.</summary>
    public static string State(NearBench near) =>
        $"{near.Digits.Shown?.Digits is not null} {near.Digits.LockLeft > TimeSpan.Zero} {string.Join(',', near.Devices.All().Select(one => one.Id))}";

    private static NearBench? Near(HttpContext context) => context.RequestServices.GetService<NearBench>();

    private static void Desk(WebApplication app, string about, Func<NearBench, IFormCollection, Problem?> act) => Writing.Post(app, "/near/" + about, (context, form) =>
        Near(context) is not { } near ? Page(context, context.RequestServices.GetRequiredService<StudyOnBench>(), [])
            : act(near, form) is { } problem ? Page(context, context.RequestServices.GetRequiredService<StudyOnBench>(), [problem]) : Writing.To("/near")).WithMetadata(new DeskOnly());

    private static RazorComponentResult<Document> Page(HttpContext context, StudyOnBench bench, IReadOnlyList<Problem> problems)
    {
        if (Near(context) is not { } near)
        {
            problems = [new("This bench is not open to near devices.", "/near", "started for this device alone", "a start for near devices", "End it and start it with 'heatwright serve FILE --near'.")];
            return PageMap.Render(bench.Now(), "", "Near", typeof(ProblemsPage), new() { ["Problems"] = problems });
        }

        var answer = PageMap.Render(bench.Now(), "/near", "Near", typeof(NearPage), new() { ["Near"] = near, ["Problems"] = problems });
        answer.StatusCode = problems.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK;
        return answer;
    }

    private static RazorComponentResult<PairDocument> Form(string name, IReadOnlyList<Problem> problems, int status = StatusCodes.Status200OK) =>
        new(new Dictionary<string, object?> { [nameof(PairDocument.Name)] = name, [nameof(PairDocument.Problems)] = problems }) { StatusCode = status };

    private static IResult Paired(HttpContext context, IFormCollection form)
    {
        if (Near(context) is not { } near || NearBench.IsDesk(context))
        {
            return Writing.To("/near");
        }

        string name = form.Field("name");
        if (near.Digits.Try(form.Field("digits")) is { } problem)
        {
            return Form(name, [problem], near.Digits.LockLeft > TimeSpan.Zero ? StatusCodes.Status429TooManyRequests : StatusCodes.Status422UnprocessableEntity);
        }

        var paired = near.Devices.Pair(name);
        if (!paired.IsFine)
        {
            return Form(name, paired.Problems, StatusCodes.Status422UnprocessableEntity);
        }

        // Without 'Secure': the link has no encryption, and the page says so. No script reads it, and no page elsewhere makes the browser send it.
        context.Response.Cookies.Append(NearGate.Cookie, paired.Value, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", MaxAge = PairedDevices.Forgotten });
        return Writing.To("/");
    }
}
