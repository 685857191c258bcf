using System.Globalization;
using Heatwright.Instruments;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs;

/// <summary>Which value that is heard fills which column of a run: volts=meter.U.</summary>
/// <param name="Column">Column of the run.</param>
/// <param name="Source">The instrument's name in the session.</param>
/// <param name="Name">The value's name in its lines.</param>
internal sealed record LivePair(string Column, string Source, string Name);

/// <summary>Writes what is heard into a study as a run, in steps at most a second apart; all of it is one change, taken back in one step.</summary>
/// <remarks>A row is made at each line of the first named instrument; of the others it holds the latest value, unless that is older than <see cref="FreshS"/>.</remarks>
internal sealed class LiveRun : IHeardTaker, IDisposable
{
    private const double FreshS = 5;
    private const double StoreS = 0.5;

    private readonly StudyBook book;
    private readonly BenchClock clock;
    private readonly Trial trial;
    private readonly IReadOnlyList<LivePair> pairs;
    private readonly RunId run;
    private readonly (double AtS, string Raw, Unit? Unit)[] latest;
    private readonly List<string[]> waiting = [];
    private Study study;
    private Run? built;
    private StudyChange? change;
    private double storedS;
    private double beganS = double.NaN;

    private LiveRun(StudyBook book, Study study, BenchClock clock, Trial trial, RunId run, IReadOnlyList<LivePair> pairs)
    {
        (this.book, this.study, this.clock, this.trial, this.run, this.pairs) = (book, study, clock, trial, run, pairs);
        latest = new (double, string, Unit?)[pairs.Count];
        Array.Fill(latest, (double.NegativeInfinity, "", null));
    }

    /// <summary>Readings that are in the study.</summary>
    public int Stored => built?.Readings.Count ?? 0;

    public string Run => run.Name;

    public static Checked<LiveRun> Open(string path, string trial, string? run, string columns, IReadOnlyList<SourcePlan> plans, BenchClock clock) => Pairs(columns, plans).Then(pairs => StudyBook.Open(path, readOnly: false).Then(book =>
    {
        PastStates.Keep(book, path, TimeProvider.System);
        var study = book.Read();
        var problem = study.Trials.FirstOrDefault(one => one.Id.Name == trial) is not { } found
            ? new Problem("The study has no such trial.", "--trial", trial, string.Join(", ", study.Trials.Select(one => one.Id.Name)), "Choose one of them, or add the trial first.")
            : Missing(found, pairs) ?? Taken(study, run);
        if (problem is not null)
        {
            book.Dispose();
            return new(problem);
        }

        return new Checked<LiveRun>(new LiveRun(book, study, clock, study.Trials.First(one => one.Id.Name == trial), new(run ?? Keeping.ImportLog.FreeRun(study, trial)), pairs));
    }));

    public Problem? Take(Heard heard)
    {
        if (heard is not Heard.Line line)
        {
            return null;
        }

        bool row = false;
        foreach (var one in line.Readouts)
        {
            for (int i = 0; i < pairs.Count; i++)
            {
                if (pairs[i].Source == line.Source && pairs[i].Name == one.Name)
                {
                    latest[i] = (line.AtS, LiveTable.Value(one), one.Unit);
                    row |= pairs[i].Source == pairs[0].Source;
                }
            }
        }

        if (row)
        {
            beganS = double.IsNaN(beganS) ? line.AtS : beganS;
            waiting.Add([Math.Round(line.AtS - beganS, 4).ToString("R", CultureInfo.InvariantCulture), .. latest.Select(value => line.AtS - value.AtS <= FreshS ? value.Raw : "")]);
        }

        return null;
    }

    public Problem? Settle(bool last)
    {
        if (waiting.Count == 0 || (!last && clock.NowS - storedS < StoreS))
        {
            return null;
        }

        storedS = clock.NowS;
        var before = built?.Readings ?? [];
        built = new(run, built?.Columns ?? Heading(), [.. before, .. waiting.Select((raw, i) => new Reading(before.Count + i + 1, raw))]);
        waiting.Clear();
        study = study with { Trials = [.. study.Trials.Select(one => one.Id == trial.Id ? one with { Runs = [.. one.Runs.Where(other => other.Id != run), built] } : one)] };
        var done = book.Write($"Listened to {string.Join(", ", pairs.Select(pair => pair.Source).Distinct(StringComparer.Ordinal))}", study, change);
        change = done.IsFine ? done.Value ?? change : change;
        // Another window may have changed something else meanwhile: its change stays, ours goes on from there.
        study = done.IsFine ? book.Read() : study;
        return done.IsFine ? null : done.Problems[0];
    }

    public void Dispose() => book.Dispose();

    private static Problem? Missing(Trial trial, IReadOnlyList<LivePair> pairs)
    {
        var (needed, perhaps) = RunFromLog.Columns(trial, pairs.Select(pair => pair.Column));
        string[] missing = [.. needed.Where(column => column != "time" && !pairs.Any(pair => pair.Column == column))];
        string[] unknown = [.. pairs.Select(pair => pair.Column).Where(column => !needed.Contains(column) && !perhaps.Contains(column))];
        return unknown.Length > 0 ? new("A run of this trial has no such column.", "--columns", string.Join(", ", unknown), string.Join(", ", needed.Concat(perhaps)), "Name one of these before the '='.")
            : missing.Length > 0 ? new("A run of this trial needs more columns.", "--columns", string.Join(", ", pairs.Select(pair => pair.Column)), string.Join(", ", missing), "Say for each which instrument gives it: volts=meter.U")
            : null;
    }

    private static Problem? Taken(Study study, string? run) => run is not null && study.Trials.SelectMany(one => one.Runs).Any(one => string.Equals(one.Id.Name, run, StringComparison.OrdinalIgnoreCase))
        ? new("The study has a run with this name.", "--run", run, "a name that is free", "Choose another, or leave --run out.") : null;

    private static Checked<IReadOnlyList<LivePair>> Pairs(string typed, IReadOnlyList<SourcePlan> plans)
    {
        var pairs = new List<LivePair>();
        foreach (string one in typed.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            int equals = one.IndexOf('=', StringComparison.Ordinal), point = one.IndexOf('.', Math.Max(0, equals));
            string source = equals > 0 && point > equals + 1 ? one[(equals + 1)..point].Trim() : "";
            if (!plans.Any(plan => plan.Name == source))
            {
                return new(new Problem("This does not say which value goes into which column.", "--columns", one, $"COLUMN=INSTRUMENT.NAME, with one of {string.Join(", ", plans.Select(plan => plan.Name))}", "Write for example volts=meter.U"));
            }

            pairs.Add(new(one[..equals].Trim(), source, one[(point + 1)..].Trim()));
        }

        return pairs.Count > 0 ? new((IReadOnlyList<LivePair>)pairs)
            : new(new Problem("Nothing says which value goes into which column.", "--columns", "none", "COLUMN=INSTRUMENT.NAME", "Write for example --columns volts=meter.U,amps=load.I"));
    }

    private Column[] Heading() => [new("time", "s", ""), .. pairs.Select((pair, i) => new Column(pair.Column, (latest[i].Unit ?? RunFromLog.UnitOf(trial, pair.Column)).Symbol, ""))];
}
