using System.Globalization;
using Heatwright.Jobs.Trials;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Showing;

/// <summary>Moments of runs as lines of a film's description: its time, and what happens then.</summary>
public static class Chapters
{
    /// <summary>The lines in the order of the film, the first at its beginning; or which runs there are not.</summary>
    /// <param name="result">The study worked out: its checks say which readings stand.</param>
    /// <param name="clocks">Where in the film each run begins.</param>
    public static Checked<IReadOnlyList<string>> Of(StudyResult result, IReadOnlyList<FilmClock> clocks)
    {
        var runs = result.Study.Trials.SelectMany(trial => trial.Runs.Select(run => (Trial: trial, Run: run))).ToDictionary(pair => pair.Run.Id.Name, StringComparer.Ordinal);
        Problem[] problems = [.. clocks.Where(clock => !runs.ContainsKey(clock.Run)).Select(clock => new Problem("The study has no such run.", "--film", clock.Run, string.Join(", ", runs.Keys), "Choose one of them."))];
        if (problems.Length > 0)
        {
            return new(problems);
        }

        var moments = clocks.SelectMany(clock => Moments(result.Study, runs[clock.Run].Trial, runs[clock.Run].Run).Select(moment => (AtS: clock.AtS + moment.AtS, moment.Words)))
            .OrderBy(moment => moment.AtS).ToList();
        if (moments.Count > 0 && Math.Floor(moments[0].AtS) > 0)
        {
            moments.Insert(0, (0, result.Study.Name)); // a list of chapters begins with the film
        }

        bool isLong = moments.Count > 0 && moments[^1].AtS >= 3600;
        return new([.. moments.Select(moment => $"{Clock(moment.AtS, isLong)} {moment.Words}")]);
    }

    private static IEnumerable<(double AtS, string Words)> Moments(Study study, Trial trial, Run run)
    {
        string name = $"{study.Parts.First(part => part.Id == trial.Part).Name}, {TrialKinds.Of(trial).Replace('-', ' ')}";
        yield return (0, $"{name}: begins");
        var table = ReadingTable.Read(run, trial);
        if (!table.Has("time") || table.Count == 0)
        {
            yield break;
        }

        double[] times = table["time"];
        if (table.Has("degrees"))
        {
            double[] degrees = table["degrees"];
            double targetC = study.Brief?.Work.TargetC ?? double.NaN;
            int there = Array.FindIndex(degrees, c => c >= targetC);
            if (there > 0 && double.IsFinite(times[there]))
            {
                yield return (times[there], $"{name}: {Web.Say.Number(targetC)} °C reached after {Web.Say.Time(times[there])}");
            }

            int hottest = Array.IndexOf(degrees, degrees.Where(double.IsFinite).DefaultIfEmpty(double.NaN).Max());
            if (hottest > 0 && hottest < degrees.Length - 1 && double.IsFinite(times[hottest]))
            {
                yield return (times[hottest], $"{name}: hottest, {Web.Say.Number(degrees[hottest], "0")} °C");
            }
        }

        if (times.LastOrDefault(double.IsFinite) is > 0 and var end)
        {
            yield return (end, $"{name}: ends");
        }
    }

    private static string Clock(double atS, bool isLong)
    {
        var time = TimeSpan.FromSeconds(Math.Floor(atS));
        return isLong ? string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalHours}:{time.Minutes:00}:{time.Seconds:00}") : string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalMinutes:00}:{time.Seconds:00}");
    }
}
