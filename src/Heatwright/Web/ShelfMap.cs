using Heatwright.Jobs;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses of the shelf: the table, the form that puts parts on it, a seller's text, and what takes a change back.</summary>
internal static class ShelfMap
{
    public static void Map(WebApplication app)
    {
        // The shelf needs no result: parts are typed while the study is still being worked out, and when it cannot be.
        app.MapMethods("/shelf", PageMap.Reading, (StudyOnBench bench, string? kept, string? step) => Shelf(bench.Now(), new PartForm(""), kept ?? "", step ?? ""));
        app.MapMethods("/shelf/text", PageMap.Reading, (StudyOnBench bench) => Text(bench.Now(), new PartForm(""), null));
        Writing.Post(app, "/shelf/add", (context, form) => Kept(context, PartForm.Of(form), EnterPart.Add));
        Writing.Post(app, "/shelf/text", (context, form) =>
        {
            var sent = PartForm.Of(form);
            var read = ListingReader.Read(sent.Listing, EnterPart.KindOf(sent.Kind));
            var bench = Bench(context);
            return read.IsFine ? Text(bench.Now(), sent with { Kind = read.Value.Kind is { } kind ? EnterPart.Word(kind) : sent.Kind }, read.Value) : Text(bench.Now(), sent with { Problems = read.Problems }, null, StatusCodes.Status422UnprocessableEntity);
        });
        Writing.Post(app, "/shelf/state/{part}", (context, form) =>
        {
            string part = (string)context.Request.RouteValues["part"]!;
            string kind = Bench(context).Now().Opened.Study.Parts.FirstOrDefault(one => one.Id.Name == part) is { } found ? EnterPart.Word(found.Kind) : "";
            return Kept(context, PartForm.Of(form, part) with { Kind = kind }, EnterPart.State);
        });
        foreach (bool back in new[] { true, false })
        {
            Writing.Post(app, back ? "/undo" : "/redo", (context, form) =>
            {
                string to = form.Field("to") is { Length: > 0 } page && page.StartsWith('/') && !page.StartsWith("//", StringComparison.Ordinal) ? page : "/shelf";
                var done = ChangeStudy.Step(Bench(context).Now().Opened.Path, back);
                return done.IsFine ? Writing.To($"{to}?step={Uri.EscapeDataString($"{(back ? "Taken back" : "Made again")}: {done.Value.What}.")}") : Shelf(Bench(context).Now(), new PartForm("") { Problems = done.Problems }, "", "", StatusCodes.Status422UnprocessableEntity);
            });
        }
    }

    private static StudyOnBench Bench(HttpContext context) => context.RequestServices.GetRequiredService<StudyOnBench>();

    private static IResult Kept(HttpContext context, PartForm form, Func<string, PartEntry, Checked<PartEntered>> job)
    {
        var bench = Bench(context);
        if (form.Part.Length == 0 && form.Id.Length == 0)
        {
            form = form with { Problems = [new("The part has no short name.", "short name", "empty", "a word such as stick", "Type one: it goes on the bag and into commands.")] };
        }
        else
        {
            var done = job(bench.Now().Opened.Path, form.Entry());
            if (done.IsFine)
            {
                return Writing.To($"/shelf?kept={Uri.EscapeDataString(done.Value.Part.Id.Name)}");
            }

            form = form with { Problems = done.Problems };
        }

        return form.Listing.Length > 0 && ListingReader.Read(form.Listing, EnterPart.KindOf(form.Kind)) is { IsFine: true } read
            ? Text(bench.Now(), form, read.Value, StatusCodes.Status422UnprocessableEntity)
            : Shelf(bench.Now(), form, "", "", StatusCodes.Status422UnprocessableEntity);
    }

    private static RazorComponentResult<Document> Shelf(Standing standing, PartForm form, string kept, string step, int status = StatusCodes.Status200OK)
    {
        var answer = PageMap.Render(standing, "/shelf", "Shelf", typeof(ShelfPage), new() { ["Study"] = standing.Opened.Study, ["Result"] = standing.Result, ["Form"] = form, ["Kept"] = kept, ["Step"] = step });
        answer.StatusCode = status;
        return answer;
    }

    private static RazorComponentResult<Document> Text(Standing standing, PartForm form, ListingClaims? found, int status = StatusCodes.Status200OK)
    {
        var answer = PageMap.Render(standing, "/shelf", "A seller's text", typeof(ListingPage), new() { ["Form"] = form, ["Found"] = found });
        answer.StatusCode = status;
        return answer;
    }
}
