using System.Text;
using Heatwright.Web.Frame;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>The live page of a session of listening, served to this machine only, with the same door as the bench.</summary>
internal static class LiveBench
{
    private static readonly string[] Reading = [HttpMethods.Get, HttpMethods.Head];

    /// <summary>A server for a session, not yet started.</summary>
    public static WebApplication Build(LiveHub hub, int port)
    {
        var builder = OwnServer.Begin(port);
        // A page that is still open must not hold up the end of the session.
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(1));
        var app = OwnServer.Finish(builder);
        PageMap.OwnFile(app, "look.css", "text/css; charset=utf-8");
        PageMap.OwnFile(app, "bench.js", "text/javascript; charset=utf-8");
        PageMap.OwnFile(app, "live.js", "text/javascript; charset=utf-8");
        PageMap.OwnFile(app, "icon.svg", "image/svg+xml");
        app.MapMethods("/", Reading, () => new RazorComponentResult<LiveDocument>(new Dictionary<string, object?> { [nameof(LiveDocument.Values)] = hub.Now() }));
        app.MapGet("/events", (HttpContext context) => Events(context, hub));
        app.MapFallback("{*path}", (HttpContext context) => Door.Refuse(context, StatusCodes.Status404NotFound,
            new("There is no such page.", "address", context.Request.Path.Value ?? "", "/", "Open the address that 'heatwright listen' printed.")));
        return app;
    }

    /// <summary>Server-sent events, as the HTML standard describes them: 'data:' and a blank line.</summary>
    private static async Task Events(HttpContext context, LiveHub hub)
    {
        context.Response.ContentType = "text/event-stream; charset=utf-8";
        var cancel = context.RequestAborted;
        try
        {
            await foreach (string message in hub.Messages(cancel))
            {
                await context.Response.BodyWriter.WriteAsync(Encoding.UTF8.GetBytes($"data: {message}\n\n"), cancel);
                await context.Response.BodyWriter.FlushAsync(cancel);
            }
        }
        catch (OperationCanceledException)
        {
            // The page was closed.
        }
    }
}
