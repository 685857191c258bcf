using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs;

/// <summary>An arrangement after it was wired.</summary>
/// <param name="Study">The study with it.</param>
/// <param name="Loop">Its loop.</param>
/// <param name="From">The arrangement it was cloned from; null: none.</param>
public sealed record Wired(Study Study, LoopView Loop, LoopView? From);

/// <summary>Wires parts of the shelf into arrangements: new ones, and clones with something changed.</summary>
public static class WireTool
{
    private const double UsualDuty = 0.95;

    /// <summary>A new arrangement. What nobody chose is the only part of its kind on the shelf, the only one of them that was measured, or else its class, and is marked assumed.</summary>
    public static Checked<Wired> Arrange(string path, WiringEntry entry) => Stored(path, entry, null, inPlace: false);

    /// <summary>The same arrangement with something changed, beside the old one.</summary>
    public static Checked<Wired> Clone(string path, string letter, WiringEntry entry) => Stored(path, entry, letter, inPlace: false);

    /// <summary>The same arrangement with something changed, in the place of the old one; the history keeps that.</summary>
    public static Checked<Wired> Rewire(string path, string letter, WiringEntry entry) => Stored(path, entry, letter, inPlace: true);

    /// <summary>Takes an arrangement out; undo brings it back. One that was decided for stays: its card speaks of it.</summary>
    public static Checked<StudyChanged> Unwire(string path, string letter) => ChangeStudy.Run(path, $"arrangement {letter.ToUpperInvariant()} taken out", study => Found(study, letter).Then(one =>
        study.Decisions.LastOrDefault(card => card.Chosen == one.Id) is { } card
            ? new Checked<Study>(new Problem("This arrangement was decided for.", $"arrangement {one.Letter}", $"decided on {card.On}", "an arrangement that no decision chose", "Keep it: the decision and the check of the prototype rest on it. 'heatwright undo' takes a decision back that was the last change."))
            : new(study with { Arrangements = [.. study.Arrangements.Where(other => other.Id != one.Id)] })));

    /// <summary>The arrangement of that letter, or which there are.</summary>
    public static Checked<Arrangement> Found(Study study, string letter) => study.Arrangements.FirstOrDefault(one => string.Equals(one.Letter, letter, StringComparison.OrdinalIgnoreCase)) is { } found
        ? new(found)
        : new(new Problem("There is no arrangement of this letter.", $"study '{study.Name}'", letter, study.Arrangements.Count > 0 ? string.Join(", ", study.Arrangements.Select(one => one.Letter)) : "none is wired yet",
            "Choose one of them, or wire one with 'heatwright arrange'."));

    private static Checked<Wired> Stored(string path, WiringEntry entry, string? from, bool inPlace)
    {
        LoopView? loop = null, before = null;
        string What(Study after) => from is null ? $"arrangement {after.Arrangements[^1].Letter} wired" : inPlace ? $"arrangement {from} wired anew" : $"arrangement {from} cloned as {after.Arrangements[^1].Letter}";
        return ChangeStudy.Run(path, What, study => Wire(study, entry, from, inPlace).Then(next =>
        {
            var shelf = LoopView.Bench(next);
            var looked = LoopView.Of(next, inPlace ? Found(next, from!).Value : next.Arrangements[^1], shelf);
            loop = looked.IsFine ? looked.Value : null;
            before = from is null || !looked.IsFine ? null : Found(inPlace ? study : next, from).Then(old => LoopView.Of(inPlace ? study : next, old, inPlace ? LoopView.Bench(study) : shelf)) is { IsFine: true } old ? old.Value : null;
            var refused = loop?.Pairs.Where(pair => pair.Refused).Select(pair => pair.Problem).ToArray() ?? [];
            return !looked.IsFine ? new(looked.Problems) : refused.Length > 0 ? new Checked<Study>(refused) : new(next);
        })).Map(changed => new Wired(changed.After, loop!, before));
    }

    /// <summary>The study with an arrangement wired; nothing is written.</summary>
    /// <param name="study">The study.</param>
    /// <param name="entry">What was chosen.</param>
    /// <param name="from">Letter of the one it begins with; null: a new one.</param>
    /// <param name="inPlace">True: in the place of that one.</param>
    /// <param name="evenSame">True: also where nothing of the wiring differs.</param>
    internal static Checked<Study> Wire(Study study, WiringEntry entry, string? from, bool inPlace, bool evenSame = false)
    {
        List<Problem> problems = [];
        Arrangement? old = null;
        if (from is not null)
        {
            var found = Found(study, from);
            if (!found.IsFine)
            {
                return new(found.Problems);
            }

            old = found.Value;
        }

        string letter = inPlace ? old!.Letter : Letter(study, entry.Letter, problems);
        var (series, parallel) = Pack(entry.Pack, old, problems);
        int touches = Whole(entry.Touches, problems) ?? (old is not null && old.Series == series ? old.ContactCount : 2 * series);
        List<Part> parts = [.. study.Parts];
        bool lamp = IsLamp(entry, old, parts, problems);
        bool sameLoad = old is not null && (old.Lamp is not null) == lamp;
        double duty = Duty(entry.Duty, problems) ?? (sameLoad ? old!.DutyCeiling : lamp ? 1 : UsualDuty);
        List<string> assumed = [.. old?.Assumed ?? []];
        Dictionary<string, PartId?> chosen = [];
        foreach (var place in Places.All)
        {
            chosen[place.Name] = Part(place, entry, old, lamp, parts, study, assumed, problems);
        }

        problems.AddRange(entry.Chosen.Keys.Where(name => Places.All.All(place => place.Name != name)).Select(name => new Problem("There is no such place in an arrangement.", "arrangement", name, string.Join(", ", Places.All.Select(place => place.Name)), "Choose one of them.")));
        if (problems.Count > 0)
        {
            return new(problems);
        }

        var wired = Places.All.Aggregate(old ?? new Arrangement(new(""), "", "", new(""), 1, 1, new(""), new(""), new(""), 2, new("")), (one, place) => place.With(one, chosen[place.Name])) with
        {
            Id = inPlace ? old!.Id : new ArrangementId($"arrangement-{letter}"),
            Letter = letter,
            Series = series,
            Parallel = parallel,
            ContactCount = touches,
            DutyCeiling = duty,
            Assumed = assumed.Count > 0 ? [.. Places.All.Select(place => place.Name).Where(assumed.Contains)] : null,
        };
        string name = entry.Name is { Length: > 0 } said ? said : inPlace && old!.Name != Named(old, parts) ? old.Name : Named(wired, parts);
        if (old is not null && entry.Name is null && !evenSame && wired with { Id = old.Id, Letter = old.Letter, Name = old.Name, Assumed = old.Assumed } == old)
        {
            return new(new Problem(inPlace ? "Nothing of the arrangement would change." : "The clone does not differ from what it was cloned from.", $"arrangement {old.Letter}", "nothing changed", "a part, the pack, the touches or the duty changed", "Say what changes, for example --heater NAME or --pack 2S1P."));
        }

        // The same tool twice stands double in every comparison; whoever wants it so gives it a name or a letter of its own.
        if (!evenSame && !inPlace && string.IsNullOrEmpty(entry.Name) && string.IsNullOrEmpty(entry.Letter)
            && study.Arrangements.FirstOrDefault(one => wired with { Id = one.Id, Letter = one.Letter, Name = one.Name, Assumed = one.Assumed } == one) is { } same)
        {
            return new(new Problem($"Arrangement {same.Letter} is wired just so.", "arrangement", Named(wired, parts), "a part, the pack, the touches or the duty that differs", $"Look at it with 'heatwright loop FILE {same.Letter}'; to have it twice all the same, give this one a name of its own with --name."));
        }

        return new(study with { Parts = parts, Arrangements = inPlace ? [.. study.Arrangements.Select(one => one.Id == old!.Id ? wired with { Name = name } : one)] : [.. study.Arrangements, wired with { Name = name }] });
    }

    /// <summary>Which of the two loads it is: the one that was named, the one that was there, or the only kind on the shelf.</summary>
    private static bool IsLamp(WiringEntry entry, Arrangement? old, List<Part> parts, List<Problem> problems)
    {
        bool Named(string place) => entry.Chosen.TryGetValue(place, out string? typed) && !string.Equals(typed, Places.None, StringComparison.OrdinalIgnoreCase);
        bool heater = Named("heater"), lamp = Named("lamp");
        if (heater && lamp)
        {
            problems.Add(new("An arrangement has one load.", "arrangement", "a heater and a lamp", "a heater, or a lamp", "Name one of the two."));
        }

        if (heater || lamp || old is not null)
        {
            return lamp || (!heater && old?.Lamp is not null);
        }

        bool heaters = parts.Any(part => part.Kind == PartKind.Heater && part.From != "destroyed"), lamps = parts.Any(part => part.Kind == PartKind.Lamp && part.From != "destroyed");
        if (heaters && lamps)
        {
            problems.Add(new("Which load: a heater, or a lamp?", "arrangement", "not said", string.Join(", ", parts.Where(part => part.Kind is PartKind.Heater or PartKind.Lamp).Select(part => part.Id.Name)), "Add --heater or --lamp with one of them."));
        }

        return lamps;
    }

    /// <summary>The part for a place: as chosen, as it was, the only one of its kind or of those that somebody measured, or its class.</summary>
    private static PartId? Part(Place place, WiringEntry entry, Arrangement? old, bool lamp, List<Part> parts, Study study, List<string> assumed, List<Problem> problems)
    {
        Part[] kind = [.. parts.Where(part => part.Kind == place.Kind)];
        if (place.Kind == (lamp ? PartKind.Heater : PartKind.Lamp))
        {
            assumed.Remove(place.Name);
            return null; // the other kind of load was chosen
        }

        bool mayBeEmpty = place.Class == "" && place.Kind != PartKind.Lamp || (place.HotOnly && lamp);
        if (entry.Chosen.TryGetValue(place.Name, out string? typed))
        {
            assumed.Remove(place.Name);
            if (string.Equals(typed, Places.None, StringComparison.OrdinalIgnoreCase))
            {
                if (!mayBeEmpty)
                {
                    problems.Add(new($"An arrangement does not work without {place.Words}.", $"--{place.Name}", typed, "a part", "Name one, or leave the option out: then its class stands in."));
                }

                return null;
            }

            var found = parts.FirstOrDefault(part => string.Equals(part.Id.Name, typed, StringComparison.OrdinalIgnoreCase));
            if (found is null)
            {
                problems.Add(new("The part is not on the shelf.", $"--{place.Name}", typed, kind.Length > 0 ? string.Join(", ", kind.Select(part => part.Id.Name)) : $"no {place.Words} on the shelf yet",
                    $"Choose one of them, add it with 'heatwright part add FILE {typed} {EnterPart.Typed(place.Kind)}', or take it from your shelf with 'heatwright take'."));
            }
            else if (found.Kind != place.Kind)
            {
                problems.Add(new("The part is of another kind.", $"--{place.Name}", $"{typed}, a {EnterPart.Typed(found.Kind)}", EnterPart.Typed(place.Kind), kind.Length > 0 ? $"Choose {string.Join(" or ", kind.Select(part => part.Id.Name))}." : $"Add one with 'heatwright part add FILE NAME {EnterPart.Typed(place.Kind)}'."));
            }
            else if (found.From == "destroyed")
            {
                problems.Add(new("The part is destroyed.", $"--{place.Name}", typed, "a part that still is", "Choose another one; its readings stay."));
            }

            return found?.Id;
        }

        if (old is not null && (place.Of(old) is not null || mayBeEmpty))
        {
            if (!(place.HotOnly && lamp && old.Lamp is null))
            {
                return place.Of(old);
            }

            assumed.Remove(place.Name); // what only a heater needs does not stay when a lamp takes its place
            return null;
        }

        if (mayBeEmpty)
        {
            return null;
        }

        Part[] usable = NotChosen.Usable(place, parts);
        if (NotChosen.Only(place, parts, study.Trials) is { } only)
        {
            assumed.Add(place.Name);
            return only.Id;
        }

        if (place.Class is null or "")
        {
            problems.Add(new($"Which {place.Words}?", $"--{place.Name}", "not said", usable.Length > 0 ? string.Join(", ", usable.Select(part => part.Id.Name)) : "none on the shelf yet",
                usable.Length > 0 ? $"Add --{place.Name} with one of them." : $"Put one on the shelf first: heatwright part add FILE NAME {EnterPart.Typed(place.Kind)}."));
            return null;
        }

        assumed.Add(place.Name);
        PartId id = new($"any-{place.Name}");
        if (parts.All(part => part.Id != id))
        {
            parts.Add(PartClasses.Make(id, place.Kind, place.Class)!);
        }

        return id;
    }

    private static string Letter(Study study, string? typed, List<Problem> problems)
    {
        HashSet<string> taken = new([.. study.Arrangements.Select(one => one.Letter), .. study.Plants.Select(plant => plant.Letter)], StringComparer.OrdinalIgnoreCase);
        if (typed is null)
        {
            return Enumerable.Range(0, 26).Select(i => ((char)('A' + i)).ToString()).FirstOrDefault(free => !taken.Contains(free)) ?? $"A{taken.Count.ToString(CultureInfo.InvariantCulture)}";
        }

        string letter = typed.Trim().ToUpperInvariant();
        if (letter.Length is 0 or > 3 || !letter.All(char.IsAsciiLetterOrDigit))
        {
            problems.Add(new("This is no letter for an arrangement.", "--letter", typed, "A to Z, or up to three letters and digits", "Choose another, or leave --letter out."));
        }
        else if (taken.Contains(letter))
        {
            problems.Add(new("The letter is taken.", "--letter", letter, "one that is free", $"Leave --letter out, or clone it: heatwright clone FILE {letter}."));
        }

        return letter;
    }

    private static (int Series, int Parallel) Pack(string? typed, Arrangement? old, List<Problem> problems)
    {
        if (typed is null)
        {
            return (old?.Series ?? 1, old?.Parallel ?? 1);
        }

        var read = OptionReader.Read("--pack", typed, Expect.Pack);
        if (read is { IsFine: true, Value: TypedValue.Pack pack })
        {
            return (pack.Series, pack.Parallel);
        }

        problems.Add(read.IsFine ? new("This is no pack.", "--pack", typed, "2S1P", "Type cells in series and side by side, for example 2S1P.") : read.Problems[0]);
        return (1, 1);
    }

    private static int? Whole(string? typed, List<Problem> problems)
    {
        if (typed is null)
        {
            return null;
        }

        var read = OptionReader.Amount("--touches", typed, Expect.Count);
        if (read.IsFine && read.Value.Value >= 0)
        {
            return (int)read.Value.Value;
        }

        problems.Add(read.IsFine ? new("Touches cannot be fewer than none.", "--touches", typed, "0 or more", "Correct the number.") : read.Problems[0]);
        return null;
    }

    private static double? Duty(string? typed, List<Problem> problems)
    {
        if (typed is null)
        {
            return null;
        }

        // 0.45 and 45 % are both said; a bare number above 1 could only be per cent, and is asked back.
        var read = OptionReader.Amount("--duty", typed, Expect.Ratio);
        if (read.IsFine && read.Value.Si is > 0 and <= 1)
        {
            return read.Value.Si;
        }

        problems.Add(read.IsFine ? new("This is no duty.", "--duty", typed, "above 0, at most 1", "Type a share such as 0.45, or 45%.") : read.Problems[0]);
        return null;
    }

    internal static string Named(Arrangement one, IReadOnlyList<Part> parts)
    {
        string Of(PartId id) => parts.First(part => part.Id == id).Name;
        string pack = one.Series * one.Parallel == 1 ? $"one {Of(one.Cell)}" : string.Create(CultureInfo.InvariantCulture, $"{one.Series}S{one.Parallel}P of {Of(one.Cell)}");
        return $"{pack} {(one.StepUp is { } module ? $"through {Of(module)} into" : "straight on")} {Of(one.Load)}";
    }
}
