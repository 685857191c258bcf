using Heatwright.Quantities;

namespace Heatwright.Web.Near;

/// <summary>What a device gets before it is paired: the form it is paired with, and that form's look.</summary>
internal sealed class OpenToStrangers;

/// <summary>What is asked for at the desk only.</summary>
internal sealed class DeskOnly;

/// <summary>Stands behind the door: a near device gets nothing until it is paired, and never what belongs to the desk.</summary>
internal static class NearGate
{
    /// <summary>One name on every port: a device is paired with the bench of a user, not with one study. It is worth nothing on another address.</summary>
    public const string Cookie = "heatwright-near";

    /// <summary>Lets the desk through, and near devices that are paired.</summary>
    public static async Task Pass(HttpContext context, RequestDelegate next)
    {
        if (NearBench.IsDesk(context))
        {
            await next(context);
            return;
        }

        var near = context.RequestServices.GetService<NearBench>();
        var endpoint = context.GetEndpoint();
        bool paired = near?.Devices.Known(context.Request.Cookies[Cookie]) is not null;
        if (!paired && (near is null || endpoint?.Metadata.GetMetadata<OpenToStrangers>() is null))
        {
            if (near is not null && HttpMethods.IsGet(context.Request.Method) && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase))
            {
                context.Response.StatusCode = StatusCodes.Status303SeeOther;
                context.Response.Headers.Location = "/pair";
                return;
            }

            await Door.Refuse(context, StatusCodes.Status401Unauthorized, new("This device is not paired with the bench.", "near device", "no pairing, or one that was let go", "a paired device", "Open /pair on it and type the six digits that the desk shows."));
            return;
        }

        if (endpoint?.Metadata.GetMetadata<DeskOnly>() is not null)
        {
            await Door.Refuse(context, StatusCodes.Status403Forbidden, new("This is done at the desk only.", context.Request.Path.Value ?? "", "asked from a near device", "the machine that the bench runs on", "Go to the desk."));
            return;
        }

        await next(context);
    }
}
