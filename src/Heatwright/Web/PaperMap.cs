using Heatwright.Jobs.Trials;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Heatwright.Web;

/// <summary>Addresses of the paper for the bench: reading sheet and step card, of a kind of test or of a trial with its part.</summary>
internal static class PaperMap
{
    public static void Map(WebApplication app)
    {
        app.MapMethods("/paper.css", PageMap.Reading, () => TypedResults.Text(TrialPaper.Style, "text/css; charset=utf-8"));
        foreach (string paper in (string[])["sheet", "card"])
        {
            app.MapMethods($"/trials/kinds/{{kind}}/{paper}", PageMap.Reading, (string kind, StudyOnBench bench) => OfKind(bench, kind, paper));
            app.MapMethods($"/trials/{{name}}/{paper}", PageMap.Reading, (string name, StudyOnBench bench) => OfTrial(bench, name, paper));
        }
    }

    private static IResult OfKind(StudyOnBench bench, string kind, string paper) => TrialKinds.CardOf(kind) is { } card
        ? Printed(Named(card, kind), paper, "")
        : PageMap.NotHere(bench.Now(), $"/trials/kinds/{kind}/{paper}", string.Join(", ", TrialKinds.All), "Choose one from the list at /trials.");

    private static IResult OfTrial(StudyOnBench bench, string name, string paper)
    {
        var study = bench.Now().Opened.Study;
        return study.Trials.FirstOrDefault(one => one.Id.Name == name) is { } trial && TrialKinds.CardOf(trial) is { } card
            ? Printed(Named(card, TrialKinds.Of(trial)) with { Columns = AsTyped(trial, card) }, paper, study.Parts.FirstOrDefault(part => part.Id == trial.Part) is { } part ? $"{part.Name} ({part.Id})" : "")
            : PageMap.NotHere(bench.Now(), $"/trials/{name}/{paper}", string.Join(", ", study.Trials.Select(one => one.Id.Name)), "Choose one from the list at /trials.");
    }

    /// <summary>Columns as the line of the page takes them, so that a sheet is typed off from left to right: those of the run that was begun; before, those that must be there first.</summary>
    internal static IReadOnlyList<TrialColumn> AsTyped(Trial trial, TrialCard card)
    {
        IEnumerable<string> names = trial.Runs is [.., var begun] ? begun.Columns.Select(column => column.Name)
            : RunFromLog.Columns(trial).Needed.Concat(card.Columns.Select(column => column.Name)).Distinct(StringComparer.Ordinal);
        return [.. names.Select(name => card.Column(name) ?? new TrialColumn(name, trial.Runs.SelectMany(run => run.Columns).FirstOrDefault(column => column.Name == name)?.Unit ?? "", ""))];
    }

    /// <summary>The recipe under the name that was asked for, where two kinds share a card.</summary>
    private static RecipeView Named(TrialCard card, string kind) => RecipeView.Of(card, new Dictionary<string, double>()) with { Kind = kind };

    private static ContentHttpResult Printed(RecipeView view, string paper, string part) => TypedResults.Text(paper == "card" ? TrialPaper.Card(view, linked: true) : TrialPaper.Sheet(view, part, linked: true), "text/html; charset=utf-8");
}
