using Heatwright.Jobs;
using Heatwright.Jobs.Keeping;
using Heatwright.Parts;
using Heatwright.Photos;
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
            return read.IsFine ? Text(bench.Now(), sent with { Kind = read.Value.Kind is { } kind ? EnterPart.Word(kind) : sent.Kind, Count = sent.Count.Length == 0 && read.Value.Pieces is { } pieces ? Say.Number(pieces) : sent.Count }, read.Value) : Text(bench.Now(), sent with { Problems = read.Problems }, null, StatusCodes.Status422UnprocessableEntity);
        });
        Writing.Post(app, "/shelf/state/{part}", (context, form) =>
        {
            string part = (string)context.Request.RouteValues["part"]!;
            string kind = Bench(context).Now().Opened.Study.Parts.FirstOrDefault(one => one.Id.Name == part) is { } found ? EnterPart.Word(found.Kind) : "";
            return Kept(context, PartForm.Of(form, part) with { Kind = kind }, EnterPart.State, form.Field("seen"));
        });
        Writing.Post(app, "/shelf/drop/{part}", (context, form) =>
        {
            string part = (string)context.Request.RouteValues["part"]!;
            var bench = Bench(context);
            var done = EnterPart.Drop(bench.Now().Opened.Path, part);
            return done.IsFine ? Writing.To("/shelf?step=" + Uri.EscapeDataString($"Taken off the shelf: {part}. The last change can be taken back."))
                : Shelf(bench.Now(), new PartForm(part) { Problems = done.Problems }, "", "", StatusCodes.Status422UnprocessableEntity);
        });
        app.MapMethods("/shelf/photo/{id}", PageMap.Reading, IResult (string id, StudyOnBench bench) => KeepPhoto.Show(bench.Now().Opened.Path, id) is { } photo
            ? TypedResults.Bytes(photo.Bytes, photo.Type)
            : PageMap.NotHere(bench.Now(), $"/shelf/photo/{id}", "the photos shown on the shelf", "Open it from the part at /shelf."));
        Writing.Post(app, "/shelf/photo/{part}", Photographed, Photo.LargestBytes + (1 << 16));
        Writing.Post(app, "/shelf/photo-drop", (context, form) =>
        {
            var done = KeepFiles.Drop(Bench(context).Now().Opened.Path, form.Field("id"));
            return done.IsFine ? Writing.To("/shelf?step=" + Uri.EscapeDataString(done.Value.Change?.What + ".")) : Shelf(Bench(context).Now(), new PartForm("") { Problems = done.Problems }, "", "", StatusCodes.Status422UnprocessableEntity);
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

    private static IResult Photographed(HttpContext context, IFormCollection form)
    {
        string part = (string)context.Request.RouteValues["part"]!;
        var bench = Bench(context);
        Problem[] problems = [new("No photo was chosen.", $"part '{part}'", "none", "a JPEG, PNG or WebP picture", "Choose one, or take one, and send it again.")];
        if (form.Files.GetFile("photo") is { Length: > 0 } sent)
        {
            using var bytes = new MemoryStream();
            sent.CopyTo(bytes);
            var kept = KeepPhoto.Add(bench.Now().Opened.Path, part, Path.GetFileName(sent.FileName), bytes.ToArray(), form.Field("note"));
            if (kept.IsFine)
            {
                return Writing.To($"/shelf#{Uri.EscapeDataString(part)}");
            }

            problems = [.. kept.Problems];
        }

        return Shelf(bench.Now(), new PartForm(part) { Problems = problems }, "", "", StatusCodes.Status422UnprocessableEntity);
    }

    private static IResult Kept(HttpContext context, PartForm form, Func<string, PartEntry, Checked<PartEntered>> job, string seen = "")
    {
        var bench = Bench(context);
        if (form.Part.Length == 0 && form.Id.Length == 0)
        {
            form = form with { Problems = [new("The part has no short name.", "short name", "empty", "a word such as stick", "Type one: it goes on the bag and into commands.")] };
        }
        else
        {
            var (done, mark) = context.RequestServices.GetRequiredService<Meanwhile>().Do(bench.Now().Opened.Path, form.Part, seen, () => job(bench.Now().Opened.Path, form.Entry()));
            if (done.IsFine)
            {
                return Writing.To($"/shelf?kept={Uri.EscapeDataString(done.Value.Part.Id.Name)}", mark);
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
