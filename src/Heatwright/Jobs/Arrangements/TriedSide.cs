using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>All that an arrangement does by its middle values: loop, run, lines of the brief. No draw is taken.</summary>
/// <param name="Study">The study it stands in.</param>
/// <param name="Shelf">Parts and findings.</param>
/// <param name="Arrangement">The arrangement.</param>
/// <param name="Loop">Its loop, or why there is none.</param>
/// <param name="Builder">Its plant; null: it cannot be predicted.</param>
/// <param name="Run">Its middle run; null: it cannot be predicted.</param>
/// <param name="Safety">What it needs for safety.</param>
/// <param name="Lines">How the middle run stands to the brief.</param>
/// <param name="Problems">Why it cannot be predicted, and parts that do not go together.</param>
public sealed record TriedSide(
    Study Study, Shelf Shelf, Arrangement Arrangement, Checked<LoopView> Loop, PlantBuilder? Builder, PlantRun? Run, SafetyFindings Safety, IReadOnlyList<MiddleLine> Lines, IReadOnlyList<Problem> Problems)
{
    /// <summary>Works one side out.</summary>
    public static TriedSide Of(Study study, Shelf shelf, Arrangement arrangement, CancellationToken cancel = default)
    {
        var loop = LoopView.Of(study, arrangement, shelf);
        Problem[] refused = loop.IsFine ? [.. loop.Value.Pairs.Where(pair => pair.Refused).Select(pair => pair.Problem)] : [];
        if (study.Brief is not { } brief)
        {
            var none = SafetyCheck.Of(arrangement, shelf, null);
            return new(study, shelf, arrangement, loop, null, null, none, [], [new("Without a brief nothing can be predicted.", study.Name, "no brief", "the work and its surroundings", "State them at /brief, or with 'heatwright brief'."), .. refused]);
        }

        var built = PlantBuilder.For(arrangement, shelf, RunStudy.Plan(brief));
        var builder = built.IsFine ? built.Value : null;
        var stuck = Task.Run(() => SafetyCheck.Of(arrangement, shelf, builder), CancellationToken.None); // its own run beside the middle one
        var run = builder is null ? null : Predict.Middle(builder, cancel);
        var safety = stuck.GetAwaiter().GetResult();
        return new(study, shelf, arrangement, loop, builder, run, safety, MiddleLines.Of(brief, shelf, arrangement, safety, run, study.Seed), [.. built.Problems, .. refused]);
    }

    /// <summary>The verdict by draws: the same words and numbers as the study gives, were this kept.</summary>
    /// <param name="fingerprint">State of the study that was begun with.</param>
    /// <param name="draws">How many; 0: as many as a word needs.</param>
    /// <param name="progress">Told the number of draws done.</param>
    /// <param name="cancel">Stops it between two steps.</param>
    public ArrangementVerdict Drawn(string fingerprint, int draws = 0, Action<int>? progress = null, CancellationToken cancel = default) =>
        RunStudy.One(Study.Brief ?? throw new InvalidOperationException("There is a brief where there is a run."), Shelf, Arrangement, Study.Seed, new StudyState(fingerprint), cancel, draws > 0 ? DrawRounds.Of(draws) : null, progress);
}

/// <summary>An arrangement as it stands, and as it is tried.</summary>
/// <param name="Change">What is tried otherwise.</param>
/// <param name="Was">As it stands.</param>
/// <param name="Is">As it is tried.</param>
public sealed record Tried(TriedStudy Change, TriedSide Was, TriedSide Is)
{
    /// <summary>Works a change out by its middle values.</summary>
    /// <param name="study">The study.</param>
    /// <param name="shelf">Its parts with their findings.</param>
    /// <param name="letter">The arrangement that is begun with.</param>
    /// <param name="typed">Name and text of each value.</param>
    /// <param name="was">As it stands, where that is known already.</param>
    /// <param name="cancel">Stops it between two steps.</param>
    public static Checked<Tried> Of(Study study, Shelf shelf, string letter, IReadOnlyList<KeyValuePair<string, string>> typed, TriedSide? was = null, CancellationToken cancel = default) =>
        TryChange.Of(study, shelf, letter, typed).Map(change =>
        {
            was ??= TriedSide.Of(study, shelf, change.From, cancel);
            return new Tried(change, was, change.Values.Count == 0 ? was : TriedSide.Of(change.Study, shelf.With(change.Study.Parts), change.Arrangement, cancel));
        });

    /// <summary>The numbers of run and loop, before and after.</summary>
    public IReadOnlyList<TriedNumber> Numbers() => [.. OfRun(Was).Zip(OfRun(Is)).Concat(OfLoop(Was).Zip(OfLoop(Is))).Where(pair => pair.First.Value is not null || pair.Second.Value is not null)
        .Select(pair => new TriedNumber(pair.First.Name, pair.First.Unit, pair.First.Value, pair.Second.Value))];

    private static IEnumerable<(string Name, string Unit, double? Value)> OfRun(TriedSide side)
    {
        Outcome? run = side.Run is { } middle ? Outcome.Of(middle) : null;
        bool lamp = side.Arrangement.Lamp is not null;
        yield return ("run time", "s", Finite(run?.RunTimeS));
        yield return ("full light time", "s", Finite(run?.FullLightS));
        yield return ("warm-up time", "s", lamp ? null : Finite(run?.WarmUpS));
        yield return ("pieces of work in a row", "", lamp ? null : run?.Pieces);
        yield return ("charge left", "%", Finite(100 * run?.ChargeLeft));
        yield return ("hottest working end", "°C", Finite(run?.HottestC));
        yield return ("hottest grip", "°C", Finite(run?.GripC));
        yield return ("hottest cells", "°C", Finite(run?.CellC));
        yield return ("most amps from the pack", "A", Finite(run?.HighestA));
        yield return ("least pack volts under load", "V", Finite(run?.LowestV));
    }

    private static IEnumerable<(string Name, string Unit, double? Value)> OfLoop(TriedSide side)
    {
        var look = side.Loop.IsFine ? side.Loop.Value.Look : null;
        yield return ("loop ohms", "Ω", look?.Total.Si);
        yield return ("watts at the load, full pack", "W", look?.Full.LoadW?.Si);
        yield return ("watts at the load, pack at its cut-off", "W", look?.Empty.LoadW?.Si);
        yield return ("amps from the pack, full", "A", look?.Full.PackA?.Si);
        yield return ("amps from the pack, at its cut-off", "A", look?.Empty.PackA?.Si);
    }

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}

/// <summary>One number before and after; null: there is none.</summary>
/// <param name="Was">As it is, in the unit; absent: there is none.</param>
/// <param name="Is">As tried, in the unit; absent: there is none.</param>
public sealed record TriedNumber(string Name, string Unit, double? Was, double? Is);
