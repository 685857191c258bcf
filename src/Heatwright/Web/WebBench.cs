using System.Net;
using System.Text.Encodings.Web;
using System.Text.Unicode;
using Heatwright.Jobs;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace Heatwright.Web;

/// <summary>The bench in the browser: pages about one study, served to this machine only.</summary>
public static class WebBench
{
    /// <summary>A server for a study, not yet started; the study is being worked out from now on.</summary>
    /// <param name="study">The study and its file.</param>
    /// <param name="port">Port on the loopback address; 0: any that is free.</param>
    public static WebApplication Build(OpenedStudy study, int port)
    {
        // Folder and settings of the caller have no say: the same server from any folder, under a test, or published.
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(WebBench).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = Writing.LargestForm;
            kestrel.Listen(IPAddress.Loopback, port);
        });
        builder.Services.AddRoutingCore();
        builder.Services.AddSingleton(HtmlEncoder.Create(UnicodeRanges.All)); // degrees and ohms as they are, not as numbers of characters
        builder.Services.AddRazorComponents();
        // Pages write, so every form carries a token of this very process; nothing of it is kept on disk.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.AddAntiforgery(options =>
        {
            options.FormFieldName = "token";
            options.Cookie.Name = "heatwright";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.SuppressXFrameOptionsHeader = true; // the policy of the door says more
        });
        builder.Services.AddSingleton(_ => new StudyOnBench(study));
        var app = builder.Build();
        app.Use(Door.Pass);
        app.UseRouting();
        PageMap.Map(app);
        app.Services.GetRequiredService<StudyOnBench>();
        return app;
    }

    /// <summary>Address of a started server.</summary>
    public static string Address(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First() + "/";
    }

    /// <summary>Done when the study as it stands in the file is worked out.</summary>
    public static Task ReadyAsync(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return app.Services.GetRequiredService<StudyOnBench>().ReadyAsync();
    }
}
