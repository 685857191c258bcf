using Heatwright.Jobs;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Verdicts;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>One arrangement: parts, conditions, cautions, what happens over the charge, and the numbers it is built from.</summary>
internal static class ArrangementPart
{
    private const int MostEvents = 12;

    public static Html Of(StudyResult result, ArrangementVerdict verdict) => Html.Of($"""
        <section class="piece" id="arrangement-{verdict.Arrangement.Letter}"><header><h2><span class="letter">{verdict.Arrangement.Letter}</span>{Say.Sentence(verdict.Arrangement.Name).TrimEnd('.')}</h2>{ComparisonPart.Word(verdict.Word)}</header>
        <p class="because">{Say.Sentence(verdict.Because)}</p>
        {Html.Each(verdict.Problems, Problem)}
        <p class="note">Parts in the order of the current: {string.Join(", ", verdict.Arrangement.Parts().Select(id => result.Shelf[id].Name))}. {verdict.Arrangement.Series} in series, {verdict.Arrangement.Parallel} side by side.</p>
        {Html.If(verdict.Safety.Conditions.Count > 0, () => Html.Of($"""<h3>It needs</h3><ul class="says">{Html.Each(verdict.Safety.Conditions, condition => Html.Of($"<li>{Say.Sentence(condition.Words)} {Say.Sentence(condition.Because)}</li>"))}</ul>"""))}
        {Html.Each(verdict.Safety.Cautions, CautionsPart.One)}
        {Html.If(verdict.Prediction is not null, () => Predicted(result.Study.Brief!, verdict.Prediction!, verdict.WorstCases))}</section>

        """);

    public static Html Problem(Problem problem) => Html.Of(
        $"""<div class="problem"><b>{problem.What}</b><dl><dt>Where</dt><dd>{problem.Where}</dd><dt>Value</dt><dd>{problem.Value}</dd><dt>Limit</dt><dd>{problem.Limit}</dd><dt>Next</dt><dd>{problem.Next}</dd></dl></div>""");

    private static Html Predicted(Brief brief, Prediction prediction, IReadOnlyList<WorstCase> worst)
    {
        var happened = prediction.Middle.Events;
        return Html.Of($"""
            <h3>What happens over the charge</h3>
            <p class="because">{Ends(brief, prediction)}</p>
            {Html.If(happened.Count > 0, () => Html.Of($"""<ol class="says">{Html.Each(happened.Take(MostEvents), one => Html.Of($"<li>{Say.Time(one.AtS)}: {Words(brief, one)}</li>"))}{Html.If(happened.Count > MostEvents, () => Html.Of($"<li>and {happened.Count - MostEvents} more</li>"))}</ol>"""))}
            {Worst(brief, prediction, worst)}<h3>Numbers it is built from</h3>
            <table class="numbers inputs"><thead><tr><th scope="col">number</th><th scope="col">value</th><th scope="col">where it comes from</th></tr></thead><tbody>
            {Html.Each(prediction.Builder.Inputs, input => Html.Of($"<tr><th scope=\"row\">{input.Name}</th><td>{Origins.Number(input.Value)}</td><td>{Say.From(input.Value.Origin)}</td></tr>"))}</tbody></table>
            """);
    }

    private static Html Worst(Brief brief, Prediction prediction, IReadOnlyList<WorstCase> cases) => Html.If(cases.Count > 0, () => Html.Of($"""
        <h3>One thing at its worst, all else in the middle</h3>
        <p class="note">{WorstCaseView.Mind}</p>
        <div class="wide" tabindex="0" role="region" aria-label="Worst cases of {prediction.Arrangement.Letter}"><table class="worst"><thead><tr><th scope="col">case</th><th class="r" scope="col">runs</th><th class="r" scope="col">{brief.WorkingEnd}, °C</th><th class="r" scope="col">grip, °C</th><th scope="col">the brief</th><th scope="col">what differs</th></tr></thead><tbody>
        {Html.Each(cases, one => Html.Of($"""<tr><th scope="row">{one.Name}</th><td class="r">{Say.Time(one.Outcome.RunTimeS)}</td><td class="r">{Say.Number(one.Outcome.HottestC, "0")}</td><td class="r">{Say.Number(one.Outcome.GripC, "0.0")}</td><td>{WorstCaseView.Of(one).Standing()}</td><td>{one.Changed}</td></tr>"""))}</tbody></table></div>

        """));

    private static string Ends(Brief brief, Prediction prediction)
    {
        var outcome = prediction.MiddleOutcome;
        string ends = $"It ends after {Say.Time(outcome.RunTimeS)}: {Stopped(outcome.Stop)}, with {Say.Number(100 * outcome.ChargeLeft, "0")} of 100 of the charge left. ";
        string work = prediction.Arrangement.Lamp is not null ? $"The full light lasts {Say.Time(outcome.FullLightS)}. " : $"{Say.Number(outcome.Pieces)} {brief.Piece}{(outcome.Pieces == 1 ? "" : "s")} in a row. ";
        string target = prediction.Arrangement.Lamp is not null ? "" : double.IsFinite(outcome.WarmUpS) ? $"The {brief.WorkingEnd} is at its target after {Say.Time(outcome.WarmUpS)}. " : $"The {brief.WorkingEnd} never gets to its target. ";
        var draws = prediction.Draws.GroupBy(draw => draw.Stop).OrderByDescending(group => group.Count()).ThenBy(group => group.Key);
        return ends + work + target + "In the draws: " + string.Join("; ", draws.Select(group => $"{Say.Number(100.0 * group.Count() / prediction.Draws.Count, "0.#")} of 100 end because {Stopped(group.Key)}")) + ".";
    }

    private static string Stopped(StopReason stop) => stop switch
    {
        StopReason.CutOff => "the pack is at its cut-off",
        StopReason.Empty => "the charge is used up",
        StopReason.Tripped => "the protection opens",
        StopReason.LockedOut => "the module's input falls to its lock-out and what it gives then is not known",
        StopReason.Collapsed => "the pack cannot carry the load any more and the volts collapse",
        StopReason.CellCutOff => "one cell is at its cut-off",
        StopReason.BrownOut => "the pack sags so far that the controller resets",
        StopReason.WorkDone => "all the work is done",
        StopReason.RecordOver => "the record is over",
        StopReason.LightGone => "the light is under a tenth",
        _ => "the time is over",
    };

    private static string Words(Brief brief, PlantEvent happened) => happened.What switch
    {
        Happening.TargetReached => $"the {brief.WorkingEnd} is at its target",
        Happening.RegionChanged => RunWords.Means(happened.Region),
        Happening.Saturated => "the controller asks for all there is",
        Happening.LightFalls => "the lamp's driver cannot hold its current any more",
        Happening.WorkMissed => $"a {brief.Piece} is not done in its time",
        _ => "it ends",
    };
}
