using System.Globalization;
using System.Text;
using System.Text.Json;
using Heatwright.Quantities;
using Heatwright.Web.Near;

namespace Heatwright.Web;

/// <summary>Lets in only what comes from this machine's own browser: no page elsewhere may read a study through a borrowed name.</summary>
internal static class Door
{
    /// <summary>Only own files, no inline script, no inline style, no request elsewhere, no frame around it.</summary>
    public const string Policy =
        "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src 'self'; font-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private static readonly string[] OwnNames = ["127.0.0.1", "localhost", "[::1]"];

    /// <summary>Checks Host and Origin, then sets the headers that every answer carries.</summary>
    public static async Task Pass(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin"; // with no-referrer a browser sends its own forms with Origin "null", and they would be refused
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.CacheControl = "no-store";
        int port = context.Connection.LocalPort;
        string host = context.Request.Host.Value ?? "";
        // Each side answers to its own names only: the near address to itself, exactly; this machine to the names of the loopback address.
        string[] names = NearBench.IsDesk(context) ? OwnNames : context.RequestServices.GetService<NearBench>() is { } near ? [NearBench.HostName(near.Address)] : [];
        string own = Own(names, port);
        if (!IsOwn(names, host, port))
        {
            await Refuse(context, StatusCodes.Status421MisdirectedRequest, new(
                "This name is not the bench's own.", "Host header", host.Length == 0 ? "none" : host, own, $"Open http://{own}/ in a browser."));
            return;
        }

        string? origin = context.Request.Headers.Origin;
        if (origin is not null && !(origin.StartsWith("http://", StringComparison.OrdinalIgnoreCase) && IsOwn(names, origin["http://".Length..], port)))
        {
            await Refuse(context, StatusCodes.Status403Forbidden, new(
                "A page from elsewhere asked for the study.", "Origin header", origin, $"http://{own}", "Close that page; the bench answers only its own pages."));
            return;
        }

        await next(context);
    }

    /// <summary>Answers with a problem and nothing else: as JSON where JSON is asked for, else as five plain lines.</summary>
    public static async Task Refuse(HttpContext context, int status, Problem problem)
    {
        context.Response.StatusCode = status;
        bool json = context.Request.Headers.Accept.ToString().Contains("json", StringComparison.OrdinalIgnoreCase);
        context.Response.ContentType = json ? "application/json; charset=utf-8" : "text/plain; charset=utf-8";
        string text = json
            ? JsonSerializer.Serialize(problem, JsonSerializerOptions.Web)
            : $"{problem.What}\nwhere  {problem.Where}\nvalue  {problem.Value}\nlimit  {problem.Limit}\nnext   {problem.Next}\n";
        await context.Response.BodyWriter.WriteAsync(Encoding.UTF8.GetBytes(text), context.RequestAborted);
    }

    private static string Own(string[] names, int port) => names.Length == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{names[0]}:{port}");

    private static bool IsOwn(string[] names, string host, int port) => names.Any(name =>
        string.Equals(host, string.Create(CultureInfo.InvariantCulture, $"{name}:{port}"), StringComparison.OrdinalIgnoreCase)
        || (port == 80 && string.Equals(host, name, StringComparison.OrdinalIgnoreCase)));
}
