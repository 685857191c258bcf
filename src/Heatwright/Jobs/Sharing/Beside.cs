using Heatwright.Jobs.Trials;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Sharing;

/// <summary>One quantity of a part as another maker found it and as I found it on mine.</summary>
/// <param name="Part">Their part.</param>
/// <param name="Mine">My part.</param>
/// <param name="Quantity">What it is.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="Theirs">What they found.</param>
/// <param name="TheirDoubt">Its standard doubt.</param>
/// <param name="MineIs">What I found; null: not read yet.</param>
/// <param name="MyDoubt">Its standard doubt.</param>
/// <param name="Apart">How many joint standard doubts they lie apart; null: nothing to compare.</param>
/// <param name="Says">agree, differ, or not read yet.</param>
public sealed record BesideLine(string Part, string Mine, string Quantity, string Unit, double Theirs, double TheirDoubt, double? MineIs, double? MyDoubt, double? Apart, string Says);

/// <summary>A run that waits for my own readings.</summary>
/// <param name="Run">Its name, for 'trial enter'.</param>
/// <param name="Trial">Its trial.</param>
/// <param name="Columns">What is typed, in this order.</param>
/// <param name="Settings">What held for the whole of their run, SI and °C; mine may be set otherwise as long as nothing is read.</param>
/// <param name="Held">The same as it is typed, with units.</param>
/// <param name="TheirReadings">How many they took.</param>
public sealed record WaitingRun(string Run, string Trial, IReadOnlyList<string> Columns, IReadOnlyDictionary<string, double> Settings, IReadOnlyList<string> Held, int TheirReadings);

/// <summary>Mine beside theirs.</summary>
/// <param name="Study">Name of the study.</param>
/// <param name="Lines">Quantity by quantity.</param>
/// <param name="Waiting">Runs without a reading.</param>
/// <param name="Begun">My runs with readings.</param>
public sealed record BesideView(string Study, IReadOnlyList<BesideLine> Lines, IReadOnlyList<WaitingRun> Waiting, int Begun);

/// <summary>Sets my own readings beside those of a study that I was sent.</summary>
public static class Beside
{
    /// <summary>Further apart than this is no chance: 1 in 20.</summary>
    private const double Apart = 2;

    /// <summary>True: the study was shared, and holds twins.</summary>
    public static bool IsShared(Study study) => study.Parts.Any(part => part.TwinOf is not null);

    /// <summary>Mine beside theirs, or that this is no shared study.</summary>
    public static Checked<BesideView> Of(Study study) => IsShared(study)
        ? new(Of(study, RunStudy.Findings(study)))
        : new(new Problem("This study has no twins to read into.", study.Name, "none", "a study that was begun from a shared bundle", "The sender makes one with 'heatwright share FILE BUNDLE'; open it with 'heatwright import BUNDLE FILE'."));

    /// <summary>Mine beside theirs, from findings that are there.</summary>
    internal static BesideView Of(Study study, IReadOnlyList<PartFindings> findings)
    {
        var found = findings.ToDictionary(one => one.Part, one => one.Findings);
        var twins = study.Parts.Where(part => part.TwinOf is not null).ToArray();
        List<BesideLine> lines = [];
        foreach (var twin in twins)
        {
            var theirs = study.Parts.First(part => part.Id == twin.TwinOf);
            var mine = found.GetValueOrDefault(twin.Id) ?? [];
            lines.AddRange((found.GetValueOrDefault(theirs.Id) ?? []).DistinctBy(finding => finding.Quantity).Select(finding => Line(theirs.Name, twin.Name, finding, mine.FirstOrDefault(one => one.Quantity == finding.Quantity))));
        }

        var own = twins.Select(twin => twin.Id).ToHashSet();
        var pairs = study.Trials.Where(trial => own.Contains(trial.Part)).SelectMany(trial => trial.Runs.Select((run, i) => (Trial: trial, Run: run, Their: Counterpart(study, twins.First(twin => twin.Id == trial.Part).TwinOf!.Value, trial, i)))).ToArray();
        return new(study.Name, lines,
            [.. pairs.Where(pair => pair.Run.Readings.Count == 0).Select(pair => new WaitingRun(pair.Run.Id.Name, pair.Trial.Id.Name, [.. pair.Run.Columns.Select(column => column.Name)], pair.Run.Settings.OrderBy(one => one.Key, StringComparer.Ordinal).ToDictionary(one => one.Key, one => one.Value), TrialKinds.Held(pair.Trial, pair.Run), pair.Their))],
            pairs.Count(pair => pair.Run.Readings.Count > 0));
    }

    /// <summary>Clones an arrangement with my parts in the places of theirs, wherever I have read something on them.</summary>
    public static Checked<Wired> Wire(string path, string letter) => OpenStudy.Read(path).Then(opened => WireTool.Found(opened.Study, letter).Then(one =>
    {
        var study = opened.Study;
        Dictionary<string, string> chosen = new(StringComparer.Ordinal);
        foreach (var place in Places.All)
        {
            if (place.Of(one) is { } there && study.Parts.FirstOrDefault(part => part.TwinOf == there && !Twins.IsWaiting(study, part)) is { } mine)
            {
                chosen[place.Name] = mine.Id.Name;
            }
        }

        return chosen.Count == 0
            ? new(new Problem("None of my parts of this arrangement has a reading yet.", $"arrangement {one.Letter}", "0 twins read", "at least one", "Type readings first: 'heatwright beside FILE' lists the runs that wait."))
            : WireTool.Clone(path, letter, new WiringEntry { Chosen = chosen });
    }));

    private static BesideLine Line(string part, string twin, Finding theirs, Finding? mine)
    {
        var unit = theirs.Value.Unit;
        if (mine is null || mine.Value.Unit.Dimension != unit.Dimension)
        {
            return new(part, twin, theirs.Quantity, unit.Symbol, theirs.Value.Value, theirs.Value.StandardDoubt, null, null, null, "not read yet");
        }

        var own = mine.Value.In(unit);
        double joint = Math.Sqrt((own.StandardDoubt * own.StandardDoubt) + (theirs.Value.StandardDoubt * theirs.Value.StandardDoubt));
        double apart = joint > 0 ? Math.Abs(own.Value - theirs.Value.Value) / joint : own.Value == theirs.Value.Value ? 0 : double.PositiveInfinity;
        return new(part, twin, theirs.Quantity, unit.Symbol, theirs.Value.Value, theirs.Value.StandardDoubt, own.Value, own.StandardDoubt, double.IsFinite(apart) ? apart : null, apart <= Apart ? "agree" : "differ");
    }

    private static int Counterpart(Study study, PartId their, Trial twin, int place) =>
        study.Trials.Where(trial => trial.Part == their && trial.Kind == twin.Kind && trial.Card == twin.Card).SelectMany(trial => trial.Runs).ElementAtOrDefault(place)?.Readings.Count ?? 0;
}
