using System.Net;
using System.Text.Encodings.Web;
using System.Text.Unicode;
using Heatwright.Web.Near;

namespace Heatwright.Web;

/// <summary>What every server of this program is made of: loopback, and at most one private address beside it; the door before everything; pages drawn here.</summary>
internal static class OwnServer
{
    /// <summary>A change waits for the disk and for the changes before it. So many may wait without others having to wait for a thread: the pool grows by one or two a second only.</summary>
    private const int HandsAtOnce = 48;

    /// <summary>A server begun on a port of the loopback address.</summary>
    /// <remarks>Folder and settings of the caller have no say: the same server from any folder, under a test, or published.</remarks>
    public static WebApplicationBuilder Begin(int port, IPAddress? near = null)
    {
        ThreadPool.GetMinThreads(out int workers, out int ports);
        ThreadPool.SetMinThreads(Math.Max(workers, HandsAtOnce), ports);
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(OwnServer).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Listen(IPAddress.Loopback, port);
            if (near is not null)
            {
                kestrel.Listen(near, port);
            }
        });
        builder.Services.AddRoutingCore();
        builder.Services.AddSingleton(HtmlEncoder.Create(UnicodeRanges.All)); // degrees and ohms as they are, not as numbers of characters
        builder.Services.AddRazorComponents();
        return builder;
    }

    /// <summary>The server with its door; pages are mapped next.</summary>
    public static WebApplication Finish(WebApplicationBuilder builder)
    {
        var app = builder.Build();
        app.Use(Door.Pass);
        app.UseRouting();
        app.Use(NearGate.Pass);
        return app;
    }
}
