using System.Net;
using System.Security.Cryptography;
using System.Text;
using Heatwright.Jobs;
using Heatwright.Web.Near;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace Heatwright.Web;

/// <summary>The bench in the browser: pages about one study, served to this machine and, where its maker opens it, to paired devices near it.</summary>
public static class WebBench
{
    /// <summary>A server for a study, not yet started; the study is being worked out from now on.</summary>
    /// <param name="study">The study and its file.</param>
    /// <param name="port">Port on the loopback address; 0: any that is free.</param>
    /// <param name="shelf">The maker's own shelf; null: where it lies on this machine.</param>
    /// <param name="near">Opens it to near devices; null: this machine only.</param>
    /// <param name="headStart">How long the first page has the machine to itself before the study is worked out.</param>
    public static WebApplication Build(OpenedStudy study, int port, string? shelf = null, NearOpening? near = null, TimeSpan headStart = default)
    {
        ArgumentNullException.ThrowIfNull(study);
        var builder = OwnServer.Begin(port, near?.Address);
        if (near is not null)
        {
            builder.Services.AddSingleton(new NearBench(near));
        }

        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Limits.MaxRequestBodySize = Writing.LargestForm);
        // Pages write, so every form carries a token of this very process; nothing of it is kept on disk.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.Configure<KeyManagementOptions>(keys => keys.XmlRepository = new KeysInMemory());
        builder.Services.AddAntiforgery(options =>
        {
            options.FormFieldName = "token";
            // Cookies know no ports: two studies side by side would take each other's token away.
            options.Cookie.Name = "heatwright-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(study.Path)))[..8];
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.SuppressXFrameOptionsHeader = true; // the policy of the door says more
        });
        builder.Services.AddSingleton(_ => new StudyOnBench(study, headStart) { Shelf = OwnShelf.Path(shelf) });
        builder.Services.AddSingleton<Changes>().AddSingleton<Meanwhile>().AddSingleton<LinesTaken>().AddSingleton<LaidLogs>();
        builder.Services.AddSingleton<Tries>();
        var app = OwnServer.Finish(builder);
        PageMap.Map(app);
        app.Lifetime.ApplicationStarted.Register(() =>
        {
            if (app.Services.GetService<NearBench>() is { } opened)
            {
                opened.Url = NearAddress(app)!;
            }
        });
        app.Services.GetRequiredService<StudyOnBench>();
        return app;
    }

    /// <summary>Address of a started server.</summary>
    public static string Address(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return Addresses(app).First(address => new Uri(address).Host == IPAddress.Loopback.ToString()) + "/";
    }

    /// <summary>Address of a started server for near devices; null: it is not open to them.</summary>
    public static string? NearAddress(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return Addresses(app).FirstOrDefault(address => new Uri(address).Host != IPAddress.Loopback.ToString()) is { } near ? near + "/" : null;
    }

    /// <summary>Done when the study as it stands in the file is worked out.</summary>
    public static Task ReadyAsync(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return app.Services.GetRequiredService<StudyOnBench>().ReadyAsync();
    }

    private static ICollection<string> Addresses(WebApplication app) => app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
}
