using System.Text;
using System.Threading.Channels;
using Heatwright.Web.Near;

namespace Heatwright.Web;

/// <summary>Tells every open page at once that the study has changed: in another tab, on another device, or by a command.</summary>
internal sealed class Changes(StudyOnBench bench, IHostApplicationLifetime lifetime)
{
    /// <summary>The file is looked at so often while a page is open.</summary>
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(200);

    /// <summary>A page that is gone is noticed, and a device that was let go is, at the latest after this.</summary>
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(5);

    private readonly Lock gate = new();
    private readonly Dictionary<Channel<string>, string> pages = [];

    public static void Map(WebApplication app) => app.MapGet("/changes", (HttpContext context, Changes changes) => changes.Tell(context));

    /// <summary>Server-sent events, as the HTML standard describes them: the state at once, then each other one.</summary>
    private async Task Tell(HttpContext context)
    {
        context.Response.ContentType = "text/event-stream; charset=utf-8";
        using var either = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, lifetime.ApplicationStopping);
        var cancel = either.Token;
        var page = Channel.CreateBounded<string>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true });
        Enter(page);
        try
        {
            string text = "retry: 500\n";
            while (IsWelcome(context))
            {
                while (page.Reader.TryRead(out string? state))
                {
                    text += $"data: {{\"start\":\"{bench.Start}\",\"state\":\"{state}\"}}\n";
                }

                await context.Response.BodyWriter.WriteAsync(Encoding.UTF8.GetBytes(text + "\n"), cancel);
                await context.Response.BodyWriter.FlushAsync(cancel);
                text = ": \n";
                await Task.WhenAny(page.Reader.WaitToReadAsync(cancel).AsTask(), Task.Delay(Beat, cancel));
                cancel.ThrowIfCancellationRequested();
            }
        }
        catch (OperationCanceledException)
        {
            // The page was closed, or the bench is.
        }
        finally
        {
            lock (gate)
            {
                pages.Remove(page);
            }
        }
    }

    private static bool IsWelcome(HttpContext context) =>
        NearBench.IsDesk(context) || context.RequestServices.GetService<NearBench>()?.Devices.Known(context.Request.Cookies[NearGate.Cookie]) is not null;

    private void Enter(Channel<string> page)
    {
        lock (gate)
        {
            pages.Add(page, "");
            if (pages.Count == 1)
            {
                _ = Task.Run(Watch);
            }
        }
    }

    /// <summary>One look for all pages, each told what it was not told yet; it ends with the last of them.</summary>
    private async Task Watch()
    {
        while (!lifetime.ApplicationStopping.IsCancellationRequested)
        {
            string state = bench.Now().Key;
            lock (gate)
            {
                if (pages.Count == 0)
                {
                    return;
                }

                foreach (var page in pages.Where(one => one.Value != state).Select(one => one.Key).ToArray())
                {
                    pages[page] = state;
                    page.Writer.TryWrite(state);
                }
            }

            await Task.Delay(Look);
        }
    }
}
