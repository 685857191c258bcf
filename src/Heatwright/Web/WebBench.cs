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
    /// <param name="shelf">The maker's own shelf; null: where it lies on this machine.</param>
    public static WebApplication Build(OpenedStudy study, int port, string? shelf = null)
    {
        var builder = OwnServer.Begin(port);
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Limits.MaxRequestBodySize = Writing.LargestForm);
        // Pages write, so every form carries a token of this very process; nothing of it is kept on disk.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.AddAntiforgery(options =>
        {
            options.FormFieldName = "token";
            options.Cookie.Name = "heatwright";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.SuppressXFrameOptionsHeader = true; // the policy of the door says more
        });
        builder.Services.AddSingleton(_ => new StudyOnBench(study) { Shelf = OwnShelf.Path(shelf) });
        var app = OwnServer.Finish(builder);
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
