using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>A run as a maker begins it.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Run">Short name; empty: the trial and a number.</param>
/// <param name="Columns">Columns in the order in which they are typed; empty: those that the kind needs.</param>
/// <param name="Meters">Which meter reads which column: 'volts=bench'.</param>
/// <param name="Settings">What holds for the whole run: 'air=24C'.</param>
public sealed record RunEntry(string Trial, string Run, IReadOnlyList<string> Columns, IReadOnlyList<string> Meters, IReadOnlyList<string> Settings);

/// <summary>One field of a typed line, understood.</summary>
/// <param name="Column">Its column.</param>
/// <param name="Raw">As typed.</param>
/// <param name="Understood">What was understood, with its unit.</param>
public sealed record FieldRead(string Column, string Raw, string Understood);

/// <summary>A reading that was taken in.</summary>
/// <param name="Run">Its run.</param>
/// <param name="Number">Its number there.</param>
/// <param name="Fields">What was understood.</param>
/// <param name="Remarks">What the checks say now that they did not say before.</param>
public sealed record ReadingTaken(string Run, int Number, IReadOnlyList<FieldRead> Fields, IReadOnlyList<Remark> Remarks);

/// <summary>Readings typed at the bench: one line each, understood at once, each one change of the study.</summary>
public static partial class TypeReadings
{
    /// <summary>Lines of a block that are told to be wrong at once; the rest shows when these are mended.</summary>
    private const int MostTold = 5;

    /// <summary>Begins a run; the last part of what a maker enters before readings.</summary>
    public static Checked<Run> Begin(string path, RunEntry entry)
    {
        Run? made = null;
        return ChangeStudy.Run(path, $"run of {entry.Trial} begun", study => PlanTrial.Found(study, entry.Trial).Then(trial => Made(study, trial, entry).Map(run =>
        {
            made = run;
            return Put(study, trial, run);
        }))).Map(_ => made!);
    }

    /// <summary>A run as it would be begun; nothing is stored before its first reading.</summary>
    public static Checked<Run> Plan(string path, RunEntry entry) => OpenStudy.Read(path).Then(opened => PlanTrial.Found(opened.Study, entry.Trial).Then(trial => Made(opened.Study, trial, entry)));

    /// <summary>Takes one typed line into a run: '3.82 0.41 12.5', or 'volts=3.82 amps=0.41'.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="run">The run.</param>
    /// <param name="line">As typed.</param>
    public static Checked<ReadingTaken> Take(string path, string run, string line) => Take(path, run, study => Find(study, run), line);

    /// <summary>Takes one typed line into a run that is begun with it where the trial has it not yet.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="trial">Its trial.</param>
    /// <param name="begun">The run.</param>
    /// <param name="line">As typed.</param>
    public static Checked<ReadingTaken> Take(string path, string trial, Run begun, string line) => Take(path, begun.Id.Name, study => There(study, trial, begun), line);

    private static Checked<ReadingTaken> Take(string path, string run, Func<Study, Checked<(Trial Trial, Run Run)>> find, string line)
    {
        ReadingTaken? taken = null;
        return ChangeStudy.Run(path, $"reading into {run}: {line.Trim()}", study => find(study).Then(found => TypedLine.Understood(found.Trial, found.Run, line).Map(fields =>
        {
            var before = found.Run;
            var after = before with { Readings = [.. before.Readings, new(before.Readings.Count + 1, [.. fields.Select(field => field.Raw)])] };
            taken = new(run, after.Readings.Count, fields, News(study, found.Trial, before, after));
            return Put(study, found.Trial, after);
        }))).Map(_ => taken!);
    }

    private static Checked<(Trial Trial, Run Run)> There(Study study, string trial, Run begun) => PlanTrial.Found(study, trial).Map(on => (on, on.Runs.FirstOrDefault(one => one.Id == begun.Id) ?? begun));

    /// <summary>Takes many typed lines into a run as one change: all of them, or none where one is not understood.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="run">The run; empty: one that begins with these lines.</param>
    /// <param name="lines">As typed or pasted; empty ones and those that begin with '#' are passed over, and a heading orders the columns.</param>
    public static Checked<Run> TakeAll(string path, string trial, string run, IReadOnlyList<string> lines)
    {
        var whole = lines.Select((line, i) => (Text: line.TrimEnd('\r'), Number: i + 1)).Where(line => line.Text.Trim() is { Length: > 0 } told && told[0] != '#').ToArray();
        if (whole.Length == 0)
        {
            return new(new Problem("There is no line in the block.", "block", "empty", "one reading a line", "Paste the lines."));
        }

        Run? made = null;
        return ChangeStudy.Run(path, string.Create(CultureInfo.InvariantCulture, $"block of {whole.Length} lines into {(run.Length > 0 ? run : trial)}"), study =>
            (run.Length > 0 ? Find(study, run) : PlanTrial.Found(study, trial).Then(on => Made(study, on, new(trial, "", [], [], [])).Map(begun => (on, begun)))).Then(found =>
            {
                var (on, begun) = found;
                var before = Headed(on, begun, whole[0].Text);
                List<Problem> problems = [];
                int refused = 0;
                List<Reading> readings = [.. before.Readings];
                var heading = TypedHeading.Of(on, before, whole[0].Text);
                problems.AddRange(heading?.Problems ?? []);
                foreach (var (text, number) in heading is null ? whole : problems.Count > 0 ? [] : whole[1..])
                {
                    var fields = TypedLine.Understood(on, before, heading?.Value.InOrder(text) ?? text);
                    problems.AddRange(fields.Problems.Select(problem => problem with { Where = string.Create(CultureInfo.InvariantCulture, $"line {number}, {problem.Where}") }));
                    refused += fields.IsFine ? 0 : 1;
                    if (fields.IsFine)
                    {
                        readings.Add(new(readings.Count + 1, [.. fields.Value.Select(field => field.Raw)]));
                    }
                }

                problems = refused > 1 ? Together(problems, whole.Length - (heading is null ? 0 : 1)) : problems;

                made = before with { Readings = readings };
                return problems.Count > 0
                    ? new Checked<Study>([.. problems.Take(MostTold).Select(problem => problem with { Next = $"{problem.Next} {NoneKept}" })])
                    : new(Put(study, on, made));
            })).Map(_ => made!);
    }

    private const string NoneKept = "None of the lines is kept yet.";

    /// <summary>A run without readings with the columns that the heading of its readings names, where they are others than a run usually has: watts in place of volts and amps.</summary>
    private static Run Headed(Trial trial, Run run, string line)
    {
        string[] own = [.. run.Columns.Select(column => column.Name)];
        bool usual = own.SequenceEqual(RunFromLog.Usual(trial), StringComparer.Ordinal);
        return run.Readings.Count > 0 || (!usual && TypedHeading.Of(trial, run, line) is not { IsFine: false }) || TypedHeading.Columns(trial, line) is not { Count: > 0 } named || named.Order(StringComparer.Ordinal).SequenceEqual(own.Order(StringComparer.Ordinal), StringComparer.Ordinal) ? run
            : run with { Columns = [.. named.Select(name => TypedHeading.ColumnOf(trial, name, run.Columns.FirstOrDefault(column => column.Name == name)?.Instrument ?? ""))] };
    }

    /// <summary>The same of a run that is perhaps stored already; there its columns are set anew.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="trial">Its trial.</param>
    /// <param name="run">The run.</param>
    /// <param name="line">The first line of its readings.</param>
    public static Checked<Run> Headed(string path, string trial, Run run, string line) => OpenStudy.Read(path).Then(opened => There(opened.Study, trial, run).Then(found =>
    {
        var headed = Headed(found.Trial, found.Run, line);
        return headed == found.Run || !found.Trial.Runs.Contains(found.Run) ? new Checked<Run>(headed) : SetRun.Set(path, new(trial, run.Id.Name, [.. headed.Columns.Select(column => column.Name)], [], []));
    }));

    /// <summary>What is wrong in the same way with many lines is said once, of all of them: the first is shown.</summary>
    private static List<Problem> Together(List<Problem> problems, int lines) => [.. problems.GroupBy(problem => (Quoted().Replace(problem.What, "''"), problem.Where[(problem.Where.IndexOf(", ", StringComparison.Ordinal) + 2)..], problem.Limit, problem.Next)).Select(alike =>
    {
        Problem[] all = [.. alike];
        string first = all[0].Where[..all[0].Where.IndexOf(", ", StringComparison.Ordinal)];
        return all.Length == 1 ? all[0] : all[0] with
        {
            Where = string.Create(CultureInfo.InvariantCulture, $"{(all.Length == lines ? $"each of the {lines} lines" : $"{all.Length} of {lines} lines")}, first {first}, {alike.Key.Item2}"),
        };
    })];

    /// <summary>What two lines have in common that are refused for one reason, whatever was typed in each.</summary>
    internal static string Alike(Problem problem) => $"{Quoted().Replace(problem.What, "''")} {problem.Limit} {problem.Next}";

    /// <summary>What was typed, where a sentence quotes it.</summary>
    [GeneratedRegex("'[^']*'", RegexOptions.CultureInvariant)]
    private static partial Regex Quoted();

    /// <summary>Brings lines that are typed one after the other into the order of a run: where the first is a heading it gives null for it, and orders the others by it. Where the heading is not understood, no line below it is to be taken.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="trial">Its trial.</param>
    /// <param name="run">The run; perhaps not stored yet.</param>
    public static Func<string, Checked<string?>> Orderly(string path, string trial, Run run)
    {
        bool first = true;
        TypedHeading? heading = null;
        return line =>
        {
            var head = first ? OpenStudy.Read(path).Then(opened => There(opened.Study, trial, run).Then(found => TypedHeading.Of(found.Trial, found.Run, line)?.Map<TypedHeading?>(one => one) ?? new((TypedHeading?)null))) : new(heading);
            bool named = first && head is { IsFine: true, Value: not null };
            (first, heading) = (false, head.IsFine ? head.Value : null);
            return head.IsFine ? new(named ? null : head.Value?.InOrder(line) ?? line) : new([.. head.Problems.Select(problem => problem with { Next = $"{problem.Next} {NoneKept}" })]);
        };
    }

    /// <summary>The study with this run in its trial, in its place where the trial has it, else behind the others.</summary>
    internal static Study Put(Study study, Trial trial, Run run) => study with
    {
        Trials = [.. study.Trials.Select(one => one.Id != trial.Id ? one
            : one with { Runs = one.Runs.Any(other => other.Id == run.Id) ? [.. one.Runs.Select(other => other.Id == run.Id ? run : other)] : [.. one.Runs, run] })],
    };

    /// <summary>What a line would mean in a run, and what the checks would say; nothing is stored.</summary>
    public static Checked<ReadingTaken> Look(Study study, string run, string line) => Find(study, run).Then(found => TypedLine.Understood(found.Trial, found.Run, line).Map(fields =>
    {
        var after = found.Run with { Readings = [.. found.Run.Readings, new(found.Run.Readings.Count + 1, [.. fields.Select(field => field.Raw)])] };
        return new ReadingTaken(run, after.Readings.Count, fields, News(study, found.Trial, found.Run, after));
    }));

    /// <summary>What was understood of a reading that is kept.</summary>
    public static IReadOnlyList<FieldRead> Fields(Trial trial, Run run, Reading reading) => [.. run.Columns.Select((column, i) => TypedLine.Field(trial, run, column, reading.Raw[i], []))];

    /// <summary>What the checks say of a run as it stands.</summary>
    public static IReadOnlyList<Remark> Remarks(Study study, Trial trial, Run run) => RunChecks.Of(trial, run, new InstrumentCauses(study.Instruments), TrialKinds.CardOf(trial));

    private static Remark[] News(Study study, Trial trial, Run before, Run after)
    {
        var old = Remarks(study, trial, before).Select(remark => (remark.Reading, remark.Words)).ToHashSet();
        return [.. Remarks(study, trial, after).Where(remark => !old.Contains((remark.Reading, remark.Words)))];
    }

    /// <summary>A run as it stands in a study file, with what the checks say of it; null: there is none of that name.</summary>
    public static (Run Run, IReadOnlyList<Remark> Remarks)? Find(string path, string run) =>
        OpenStudy.Read(path) is { IsFine: true, Value.Study: var study } && Find(study, run) is { IsFine: true, Value: var found } ? (found.Run, Remarks(study, found.Trial, found.Run)) : null;

    /// <summary>The run of that name with its trial, or which there are.</summary>
    internal static Checked<(Trial Trial, Run Run)> Find(Study study, string run)
    {
        var all = study.Trials.SelectMany(trial => trial.Runs.Select(one => (Trial: trial, Run: one))).ToArray();
        return all.FirstOrDefault(pair => string.Equals(pair.Run.Id.Name, run, StringComparison.OrdinalIgnoreCase)) is { Run: not null } found
            ? new(found)
            : new(new Problem("The study has no such run.", $"study '{study.Name}'", run, all.Length > 0 ? NearNames.Told(run, all.Select(pair => pair.Run.Id.Name)) : "no run yet", "Choose one of them, or begin one with 'heatwright trial enter'."));
    }

    /// <summary>A run without readings, or what is wrong about its columns, meters and settings.</summary>
    internal static Checked<Run> Made(Study study, Trial trial, RunEntry entry)
    {
        List<Problem> problems = [];
        string[] named = [.. entry.Columns.Select(name => name.Trim().Replace('-', ' '))];
        var (needed, perhaps) = RunFromLog.Columns(trial, named);
        string[] columns = named.Length > 0 ? named : [.. RunFromLog.Usual(trial)];
        foreach (string unknown in columns.Where(name => !needed.Contains(name) && !perhaps.Contains(name)))
        {
            problems.Add(new("A run of this trial has no such column.", "columns", unknown, string.Join(", ", needed.Concat(perhaps)), "Name one of these."));
        }

        var meters = Meters(study, columns, Pairs(entry.Meters, "meter", problems), problems);

        string id = entry.Run.Length > 0 ? entry.Run : Keeping.ImportLog.FreeRun(study, trial.Id.Name);
        if (study.Trials.SelectMany(one => one.Runs).Any(one => string.Equals(one.Id.Name, id, StringComparison.OrdinalIgnoreCase)))
        {
            problems.Add(new("The study has a run of this name.", "run", id, "a name that is free", "Choose another, or leave it out."));
        }

        var settings = Settings(trial, Pairs(entry.Settings, "setting", problems), problems);
        foreach (string missing in RunFromLog.Needed(trial, settings.Kept.Keys, columns).Where(name => !columns.Contains(name)))
        {
            problems.Add(new("A run of this trial needs this column.", "columns", string.Join(", ", columns), missing, "Name it too; a '-' in it stands for what was not read."));
        }

        return problems.Count > 0 ? new(problems) : new(new Run(new(id), [.. columns.Select(name => TypedHeading.ColumnOf(trial, name, meters.GetValueOrDefault(name) ?? ""))], []) { Settings = settings.Kept, SettingsPlusMinus = settings.PlusMinus });
    }

    /// <summary>The meters that were named, each for its column; one that is not known goes into the list.</summary>
    internal static Dictionary<string, string> Meters(Study study, IReadOnlyList<string> columns, Dictionary<string, string> said, List<Problem> problems)
    {
        problems.AddRange(said.Where(pair => !columns.Contains(pair.Key) || study.Instruments.All(one => one.Id != pair.Value)).Select(pair => new Problem(
            "A column or a meter is not known.", "meter", $"{pair.Key}={pair.Value}", $"one of {string.Join(", ", columns)}, with one of {(study.Instruments.Count > 0 ? string.Join(", ", study.Instruments.Select(one => one.Id)) : "no meter yet")}", "Correct it, or add the meter with 'heatwright meter add'.")));
        return said;
    }

    /// <summary>Settings as they are kept; what is wrong about them goes into the list.</summary>
    internal static (Dictionary<string, double> Kept, Dictionary<string, double> PlusMinus) Settings(Trial trial, Dictionary<string, string> said, List<Problem> problems)
    {
        var settings = new Dictionary<string, double>(StringComparer.Ordinal);
        var plusMinus = new Dictionary<string, double>(StringComparer.Ordinal);
        string[] known = [.. RunFromLog.Settings(trial)];
        foreach (var (typed, text) in said)
        {
            string name = SettingOf(trial, typed);
            var unit = TrialKinds.SettingUnit(trial, name);
            if (!known.Contains(name))
            {
                problems.Add(new("A run of this trial has no such setting.", "setting", name, string.Join(", ", known), "Name one of these, or leave it out."));
            }
            else if (OptionReader.Amount($"setting {name}", text, unit == Units.One ? Expect.Ratio : Expect.Of(unit, name)) is { } read)
            {
                problems.AddRange(read.Problems);
                if (name == FilmTimes.FrameRate && read.IsFine && FilmTimes.Wrong(read.Value.Si, text) is { } wrong)
                {
                    problems.Add(wrong);
                }

                settings[name] = !read.IsFine ? 0 : unit.IsLevel ? Units.Celsius.FromSi(read.Value.Si) : read.Value.Si;
                if (read is { IsFine: true, Value.PlusMinus: > 0 and var within })
                {
                    // Kept as limits, the way makers mean it; a standard doubt stands for limits √3 as wide.
                    plusMinus[name] = within * read.Value.Unit.Factor * (read.Value.IsStandard ? Math.Sqrt(3) : 1);
                }
            }
        }

        return (settings, plusMinus);
    }

    /// <summary>A setting by its name as it is kept, from its name as it was typed.</summary>
    internal static string SettingOf(Trial trial, string typed) => RunFromLog.Settings(trial).FirstOrDefault(one => one.Replace('-', ' ') == typed) ?? typed;

    /// <summary>Names with what is said of each; a name is told with blanks.</summary>
    internal static Dictionary<string, string> Pairs(IReadOnlyList<string> words, string what, List<Problem> problems)
    {
        var pairs = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (string word in words.Where(word => word.Trim().Length > 0))
        {
            string[] pair = word.Split('=', 2, StringSplitOptions.TrimEntries);
            if (pair.Length == 2 && pair.All(side => side.Length > 0))
            {
                pairs[pair[0].Replace('-', ' ')] = pair[1];
            }
            else
            {
                problems.Add(new($"A {what} is typed name=value.", what, word, "name=value", "Put an '=' between the two."));
            }
        }

        return pairs;
    }
}
