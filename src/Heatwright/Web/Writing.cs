using Heatwright.Quantities;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Features;

namespace Heatwright.Web;

/// <summary>Pages that change the study: each change comes as a form with this process's token, goes through the study's book with its undo record, and ends in a redirect.</summary>
internal static class Writing
{
    /// <summary>A form may not be larger than this, bytes: a seller's text fits many times.</summary>
    public const long LargestForm = 1 << 20;

    private const long LargestDrained = 64 << 20;

    /// <summary>Maps an address that takes a form. The handler gives what to answer; it runs only where the token is right.</summary>
    public static RouteHandlerBuilder Post(WebApplication app, string path, Func<HttpContext, IFormCollection, IResult> handler, long largest = LargestForm) => app.MapPost(path, async (HttpContext context, IAntiforgery tokens) =>
    {
        bool tooLarge = context.Request.ContentLength > largest;
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = tooLarge ? LargestDrained : largest;
        }

        if (!context.Request.HasFormContentType)
        {
            await Door.Refuse(context, StatusCodes.Status415UnsupportedMediaType, new("This address takes a form.", path, context.Request.ContentType ?? "no content type", "application/x-www-form-urlencoded", "Use the form on the page."));
            return Results.Empty;
        }

        if (tooLarge)
        {
            // A browser reads no answer before all is sent: what is refused is let run out first, unless it is beyond all measure.
            if (context.Request.ContentLength <= LargestDrained)
            {
                await context.Request.Body.CopyToAsync(Stream.Null, context.RequestAborted);
            }

            return await TooLarge(context, path, $"{context.Request.ContentLength} bytes", largest);
        }

        try
        {
            await tokens.ValidateRequestAsync(context);
            var form = await context.Request.ReadFormAsync(context.RequestAborted);
            var answer = handler(context, form);
            if (answer is SeeOther && form.Field("draft") is { Length: > 0 and <= 20 } draft && draft.All(char.IsAsciiLetterOrDigit))
            {
                // The page that follows lets go of what its browser kept of this form; until then it is kept there.
                context.Response.Cookies.Append("heatwright-kept-" + context.RequestServices.GetRequiredService<StudyOnBench>().Start, draft, new CookieOptions { SameSite = SameSiteMode.Strict, Path = "/", MaxAge = TimeSpan.FromMinutes(1) });
            }

            return answer;
        }
        catch (Exception error) when (error is BadHttpRequestException or InvalidDataException or AntiforgeryValidationException { InnerException: BadHttpRequestException or InvalidDataException })
        {
            return await TooLarge(context, path, error.InnerException?.Message ?? error.Message, largest);
        }
        catch (AntiforgeryValidationException)
        {
            await Door.Refuse(context, StatusCodes.Status400BadRequest, new("The form does not come from a page of this bench.", path, "no token, or one of an earlier start", "the token of a page that this bench has sent", "Load the page again and send the form once more; nothing was changed."));
            return Results.Empty;
        }
    }).DisableAntiforgery();

    private static async Task<IResult> TooLarge(HttpContext context, string path, string value, long largest)
    {
        await Door.Refuse(context, StatusCodes.Status413PayloadTooLarge, new("The form is too large or broken.", path, value, $"{largest} bytes", "Send less at once; nothing was changed."));
        return Results.Empty;
    }

    /// <summary>To another page with GET, so that loading it again changes nothing.</summary>
    public static IResult To(string path) => new SeeOther(path);

    /// <summary>As <see cref="To(string)"/>, but first the study is given a moment to be worked out again: where nothing that a prediction rests on was changed, that is all it takes, and the page stays.</summary>
    public static IResult ToWorkedOut(string path, StudyOnBench bench) => new SeeOther(path, bench);

    /// <summary>To another page that tells what came between.</summary>
    public static IResult To(string path, string mark)
    {
        string[] parts = path.Split('#', 2);
        return To(mark.Length == 0 ? path : $"{parts[0]}{(parts[0].Contains('?', StringComparison.Ordinal) ? '&' : '?')}told={mark}{(parts.Length > 1 ? "#" + parts[1] : "")}");
    }

    /// <summary>A field of a form, without blanks at its ends; empty where it is absent.</summary>
    public static string Field(this IFormCollection form, string name) => form[name].ToString().Trim();

    private sealed class SeeOther(string path, StudyOnBench? bench = null) : IResult
    {
        private static readonly TimeSpan Moment = TimeSpan.FromSeconds(3);

        public async Task ExecuteAsync(HttpContext httpContext)
        {
            if (bench is not null)
            {
                await Task.WhenAny(bench.ReadyAsync(), Task.Delay(Moment, httpContext.RequestAborted));
            }

            httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
            httpContext.Response.Headers.Location = path;
        }
    }
}
