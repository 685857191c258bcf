using System.Globalization;
using System.Text;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;
using Heatwright.Web.Frame;
using Heatwright.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses behind the comparison: the files to take away, why an arrangement stands so, the next reading, and what else the shelf could do.</summary>
internal static class ComparisonMap
{
    /// <summary>Draws for what matters, as the command's example has them.</summary>
    private const int MattersDraws = 128;

    private const string NextTitle = "Next reading";

    /// <summary>An evening is no longer than a day.</summary>
    private const double LongestMinutes = 1440;

    public static void Map(WebApplication app)
    {
        PageMap.OwnFile(app, "evening.js", "text/javascript; charset=utf-8");
        Taken(app, "md", "text/markdown; charset=utf-8", ComparisonText.Markdown);
        Taken(app, "csv", "text/csv; charset=utf-8", ComparisonText.Csv);
        Taken(app, "svg", "image/svg+xml", ComparisonPicture.Svg);
        app.MapMethods("/comparison/{letter}", PageMap.Reading, (string letter, StudyOnBench bench) => bench.Now() is { Result: { } result } standing && result.Verdicts.All(one => one.Arrangement.Letter != letter)
            ? PageMap.NotHere(standing, $"/comparison/{letter}", string.Join(", ", result.Verdicts.Select(one => one.Arrangement.Letter)), "Choose one from the comparison.")
            : Slow(bench, $"Why {letter}", "Predicting again with one source of doubt exchanged at a time", result => WhyTool.Of(result, letter, MattersDraws), typeof(WhyPage), []));
        app.MapMethods("/next", PageMap.Reading, (string? minutes, StudyOnBench bench) =>
        {
            double time = double.TryParse(minutes, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double typed) && typed is > 0 and <= LongestMinutes ? typed : 0;
            Dictionary<string, object?> with = new() { ["Minutes"] = minutes ?? "", ["Refused"] = time == 0 && !string.IsNullOrWhiteSpace(minutes) };
            return Slow(bench, $"{NextTitle}{(time > 0 ? $", {Say.Number(time)} min" : "")}", "Asking of each reading what it would change", result => Next(result, time), typeof(NextPage), with);
        });
        app.MapMethods("/search", PageMap.Reading, (StudyOnBench bench) => Slow(bench, "Search", "Trying every sensible arrangement of the shelf", _ => SearchShelf.Of(bench.Now().Opened), typeof(SearchPage), []));
    }

    /// <summary>What is worth reading next, as the page of that name shows it; null while it is being asked.</summary>
    internal static NextView? Readings(StudyResult result) => Answered.Of(result.Verdicts, NextTitle, () => Next(result, 0))?.Value;

    private static Checked<NextView> Next(StudyResult result, double minutes) => new(NextView.Of(NextReadings.Of(result.Verdicts, result.Study.Instruments, result.Study.Seed, minutes)));

    private static void Taken(WebApplication app, string ending, string type, Func<Comparison, string> write) => app.MapMethods($"/comparison.{ending}", PageMap.Reading, (StudyOnBench bench) =>
        bench.Now().Result is { Study.Brief: { } brief } result
            ? Results.File(Encoding.UTF8.GetBytes(write(Comparison.Of(brief, result.Verdicts, result.Shelf, result.Tools))), type, $"comparison.{ending}")
            : Results.Redirect("/comparison"));

    private static RazorComponentResult<Document> Slow<T>(StudyOnBench bench, string title, string doing, Func<StudyResult, Checked<T>> work, Type page, Dictionary<string, object?> with)
        where T : notnull
    {
        var standing = bench.Now();
        if (standing.Problems.Count > 0)
        {
            return Problems(standing.Problems);
        }

        var answer = standing.Result is { } result ? Answered.Of(result.Verdicts, title, () => work(result)) : null;
        return answer is null ? PageMap.Render(standing, "/comparison", title, typeof(WorkingPage), new() { ["Doing"] = standing.Result is null ? standing.Doing : doing }, again: true)
            : !answer.IsFine ? Problems(answer.Problems)
            : PageMap.Render(standing, "/comparison", title, page, new(with) { ["Result"] = standing.Result, ["View"] = answer.Value });

        RazorComponentResult<Document> Problems(IReadOnlyList<Problem> problems) => PageMap.Render(standing, "/comparison", title, typeof(ProblemsPage), new() { ["Problems"] = problems });
    }
}
