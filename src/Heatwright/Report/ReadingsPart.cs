using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Jobs.Trials;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>All readings as they were typed or logged, run by run, for whoever wants to reckon again.</summary>
internal static class ReadingsPart
{
    public static Html Of(StudyResult result)
    {
        var lines = Bundle.Files(result.Study).ToDictionary(file => file.Name, file => file.Text, StringComparer.Ordinal);
        var trials = result.Study.Trials.Where(trial => trial.Runs.Any(run => run.Readings.Count > 0)).ToArray();
        return Html.If(trials.Length > 0, () => Html.Of($"""
            <section class="piece" id="readings"><header><h2>Readings</h2><span class="aside">as typed or logged, nothing left out; open a run to see or copy its lines</span></header>
            {Html.Each(trials, trial => Html.Of($"""
                <h3 class="of-part">{result.Shelf[trial.Part].Name}: {TrialKinds.Of(trial)}</h3>{Html.If(trial.Purpose.Length > 0, () => Html.Of($"""<p class="note">{Say.Sentence(trial.Purpose)}</p>"""))}
                {Html.Each(trial.Runs.Where(run => run.Readings.Count > 0), run => One(result.Study, trial, run, lines[$"runs/{run.Id.Name}.csv"]))}

                """))}</section>

            """));
    }

    private static Html One(Study study, Trial trial, Run run, string lines) => Html.Of($"""
        <p class="because">{run.Id.Name}: {Counted(run)} of {string.Join(", ", run.Columns.Select(column => $"{column.Name}{(column.Unit.Length > 0 ? " in " + column.Unit : "")}{Meter(study, column)}"))}{Html.If(run.Settings.Count > 0, () => Html.Of($"; {string.Join(", ", run.Settings.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Key} {TrialKinds.Held(trial, run, pair.Key)}"))}"))}.</p>
        <details class="behind"><summary>Lines of {run.Id.Name}</summary><pre class="raw">{lines}</pre></details>

        """);

    private static string Counted(Run run)
    {
        int struck = run.Readings.Count(reading => reading.StruckBecause is not null), count = run.Readings.Count - struck;
        return string.Create(CultureInfo.InvariantCulture, $"{count} reading{(count == 1 ? "" : "s")}{(struck > 0 ? $" ({struck} more struck out)" : "")}");
    }

    private static string Meter(Study study, Column column) => study.Instruments.FirstOrDefault(one => one.Id == column.Instrument) is { } meter ? $" ({meter.Name})" : "";
}
