using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses of the maker's own shelf: what is newer there or here, and what carries a part from one to the other.</summary>
internal static class OwnShelfMap
{
    public static void Map(WebApplication app)
    {
        app.MapMethods("/shelf/own", PageMap.Reading, (StudyOnBench bench, string? done) => Page(bench, done ?? "", []));
        Carrying(app, "take", "taken from your shelf", (study, shelf, form, over) => OwnShelf.Take(study, shelf, form.Field("part"), form.Field("called") is { Length: > 0 } called ? called : null, over));
        Carrying(app, "give", "given to your shelf", (study, shelf, form, over) => OwnShelf.Give(study, shelf, form.Field("part"), null, over));
    }

    private static void Carrying(WebApplication app, string verb, string said, Func<string, string, IFormCollection, bool, Checked<PartCarried>> job) => Writing.Post(app, "/shelf/own/" + verb, (context, form) =>
    {
        var bench = context.RequestServices.GetRequiredService<StudyOnBench>();
        var carried = job(bench.Now().Opened.Path, bench.Shelf, form, form.Field("over") == "yes");
        return carried.IsFine
            ? Writing.To("/shelf/own?done=" + Uri.EscapeDataString($"'{form.Field("part")}' {(carried.Value.Changed ? $"was {said}; it was {carried.Value.Pair.Word} before" : "is the same in both")}.{string.Concat(carried.Value.Renamed.Select(one => $" The name was taken: {one} now."))}"))
            : Page(bench, "", carried.Problems, StatusCodes.Status422UnprocessableEntity);
    });

    private static RazorComponentResult<Document> Page(StudyOnBench bench, string done, IReadOnlyList<Problem> problems, int status = StatusCodes.Status200OK)
    {
        var standing = bench.Now();
        var answer = PageMap.Render(standing, "/shelf", "Your own shelf", typeof(OwnShelfPage), new() { ["Study"] = standing.Opened.Study, ["Own"] = OwnShelf.Read(bench.Shelf), ["Place"] = bench.Shelf, ["Done"] = done, ["Problems"] = problems });
        answer.StatusCode = status;
        return answer;
    }
}
