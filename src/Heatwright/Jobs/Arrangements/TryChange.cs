using Heatwright.Arrangements;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs;

/// <summary>One value that is tried otherwise, as it was and as it is tried.</summary>
/// <param name="Was">As it is.</param>
/// <param name="Is">As tried.</param>
public sealed record TriedValue(string Name, string Words, string Was, string Is);

/// <summary>A study with a change in it that nobody has kept yet.</summary>
/// <param name="Study">The study as it would stand.</param>
/// <param name="From">The arrangement that was begun with.</param>
/// <param name="Arrangement">The clone with the change; where only the brief is tried otherwise, the same arrangement.</param>
/// <param name="Values">What is tried otherwise; empty: nothing.</param>
public sealed record TriedStudy(Study Study, Arrangement From, Arrangement Arrangement, IReadOnlyList<TriedValue> Values)
{
    /// <summary>True: the arrangement itself would differ, so that keeping makes a clone.</summary>
    public bool ChangesArrangement => From.Id != Arrangement.Id;

    /// <summary>True: a value of the brief would differ, and so every arrangement would follow.</summary>
    public bool ChangesBrief { get; init; }
}

/// <summary>Tries an arrangement with some of its values otherwise: nothing is written until it is kept, and what is kept is the very study that was shown.</summary>
public static class TryChange
{
    /// <summary>The study with the change in it, or what stands in its way.</summary>
    /// <param name="study">The study.</param>
    /// <param name="shelf">Its parts with their findings.</param>
    /// <param name="letter">The arrangement that is begun with.</param>
    /// <param name="typed">Name and text of each value; what reads as it stands changes nothing.</param>
    /// <param name="called">What the maker calls the clone; null: said by its parts.</param>
    public static Checked<TriedStudy> Of(Study study, Shelf shelf, string letter, IReadOnlyList<KeyValuePair<string, string>> typed, string? called = null) => WireTool.Found(study, letter).Then(one =>
    {
        var dials = Dials.Of(study, shelf, one);
        var moves = new TriedMoves(study, one);
        List<Problem> problems = [];
        foreach (var (name, text) in typed)
        {
            if (Find(dials, name) is not { } dial)
            {
                problems.Add(new("The arrangement has no such value.", $"arrangement {one.Letter}", name, string.Join(", ", dials.Where(known => known.Group != Dials.Others).Select(known => known.Name)), $"Type one of them; 'heatwright try FILE {one.Letter}' lists all."));
            }
            else if (text.Trim().Length > 0 && !string.Equals(text.Trim(), dial.Was, StringComparison.Ordinal))
            {
                problems.AddRange(moves.Take(dial, text.Trim()));
            }
            else if (dial.Name == Dials.Touches)
            {
                moves.HoldTouches(); // said as it is: then it does not follow the cells
            }
        }

        return problems.Count > 0 ? new(problems) : moves.Made(called);
    });

    /// <summary>Keeps a change: a clone of the arrangement with it, or the brief with it, in one transaction with its undo record.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="letter">The arrangement that is begun with.</param>
    /// <param name="typed">Name and text of each value.</param>
    /// <param name="called">What the maker calls the clone; null: said by its parts.</param>
    public static Checked<TriedStudy> Keep(string path, string letter, IReadOnlyList<KeyValuePair<string, string>> typed, string? called)
    {
        TriedStudy? kept = null;
        return ChangeStudy.Run(path, $"arrangement {letter} tried otherwise and kept: {string.Join(", ", typed.Select(pair => $"{pair.Key} {pair.Value}"))}", study =>
        {
            var shelf = LoopView.Bench(study);
            return Of(study, shelf, letter, typed, called).Then(tried =>
            {
                kept = tried;
                return tried.Values.Count == 0
                    ? new Checked<Study>(new Problem("Nothing is tried otherwise yet.", $"arrangement {letter}", "no value moved", "one value or more", "Move a slider or type a value first."))
                    : Refused(tried, shelf) is { Length: > 0 } refused ? new(refused) : new(tried.Study);
            });
        }).Map(_ => kept!);
    }

    private static Problem[] Refused(TriedStudy tried, Shelf shelf)
    {
        var loop = tried.ChangesArrangement ? LoopView.Of(tried.Study, tried.Arrangement, shelf.With(tried.Study.Parts)) : null;
        return loop is null ? [] : loop.IsFine ? [.. loop.Value.Pairs.Where(pair => pair.Refused).Select(pair => pair.Problem)] : [.. loop.Problems];
    }

    private static Dial? Find(IReadOnlyList<Dial> dials, string name)
    {
        static string Plain(string text) => string.Concat(text.Where(c => c is not ('-' or ' ' or '_'))).ToUpperInvariant();
        return dials.FirstOrDefault(dial => Plain(dial.Name) == Plain(name));
    }
}
