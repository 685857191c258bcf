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
    /// <param name="clocks">Where in the film each run begins; one that was typed by its film's time code says so itself.</param>
    public static Checked<IReadOnlyList<string>> Of(StudyResult result, IReadOnlyList<FilmClock> clocks)
    {
        var runs = result.Study.Trials.SelectMany(trial => trial.Runs.Select(run => (Trial: trial, Run: run))).ToDictionary(pair => pair.Run.Id.Name, StringComparer.Ordinal);
        Problem[] problems = [.. clocks.Where(clock => !runs.ContainsKey(clock.Run)).Select(clock => new Problem("The study has no such run.", "--film", clock.Run, string.Join(", ", runs.Keys), "Choose one of them."))];
        if (problems.Length > 0)
        {
            return new(problems);
        }

        var own = runs.Values.Where(pair => clocks.All(clock => clock.Run != pair.Run.Id.Name)).Select(pair => (Clock: Begins(pair.Trial, pair.Run), pair.Trial, pair.Run)).Where(one => one.Clock is not null);
        var moments = clocks.Select(clock => (Clock: (FilmClock?)clock, runs[clock.Run].Trial, runs[clock.Run].Run)).Concat(own)
            .SelectMany(one => Moments(result.Study, one.Trial, one.Run).Select(moment => (AtS: one.Clock!.AtS + moment.AtS, moment.Words))).OrderBy(moment => moment.AtS).ToList();
        if (moments.Count > 0 && Math.Floor(moments[0].AtS) > 0)
        {
            moments.Insert(0, (0, result.Study.Name)); // a list of chapters begins with the film
        }

        bool isLong = moments.Count > 0 && moments[^1].AtS >= 3600;
        return new([.. moments.Select(moment => $"{Clock(moment.AtS, isLong)} {moment.Words}")]);
    }

    /// <summary>Where a run that was typed by its film's time code begins in it; null: it was not.</summary>
    private static FilmClock? Begins(Trial trial, Run run) => ReadingTable.Read(run, trial).FilmS.FirstOrDefault(double.IsFinite, double.NaN) is var at && double.IsNaN(at) ? null : new(run.Id.Name, at);

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
        double begins = table.FilmS.FirstOrDefault(double.IsFinite, 0);
        double Place(int row) => table.FilmS.Length > 0 ? table.FilmS[row] - begins : times[row]; // a film that was cut runs shorter than the clock
        if (table.Has("degrees"))
        {
            double[] degrees = table["degrees"];
            double targetC = study.Brief?.Work.TargetC ?? double.NaN;
            int there = Array.FindIndex(degrees, c => c >= targetC);
            if (there > 0 && double.IsFinite(times[there]))
            {
                yield return (Place(there), $"{name}: {Web.Say.Number(targetC)} °C reached after {Web.Say.Time(times[there])}");
            }

            int hottest = Array.IndexOf(degrees, degrees.Where(double.IsFinite).DefaultIfEmpty(double.NaN).Max());
            if (hottest > 0 && hottest < degrees.Length - 1 && double.IsFinite(times[hottest]))
            {
                yield return (Place(hottest), $"{name}: hottest, {Web.Say.Number(degrees[hottest], "0")} °C");
            }
        }

        if (Array.FindLastIndex(times, time => time > 0) is >= 0 and var end)
        {
            yield return (Place(end), $"{name}: ends");
        }
    }

    private static string Clock(double atS, bool isLong)
    {
        var time = TimeSpan.FromSeconds(Math.Floor(atS));
        return isLong ? string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalHours}:{time.Minutes:00}:{time.Seconds:00}") : string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalMinutes:00}:{time.Seconds:00}");
    }
}
