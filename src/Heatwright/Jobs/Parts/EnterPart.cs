using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs;

/// <summary>A part after it was entered.</summary>
/// <param name="Part">As it stands.</param>
/// <param name="Doubts">Claims of it that can hardly be true.</param>
/// <param name="Left">Claims of its seller's text that were not confirmed.</param>
public sealed record PartEntered(Part Part, IReadOnlyList<ClaimDoubt> Doubts, IReadOnlyList<Claim> Left)
{
    /// <summary>Values that were typed under a name that no part has: all else was kept.</summary>
    public IReadOnlyList<Problem> NotTaken { get; init; } = [];

    /// <summary>What was made of prices for several or in a currency, in sentences.</summary>
    public IReadOnlyList<string> Prices { get; init; } = [];

    /// <summary>Words that were kept and that nothing reads, in sentences.</summary>
    public IReadOnlyList<string> OwnWords { get; init; } = [];

    /// <summary>What its trials told; null: it was not tried.</summary>
    public PartFindings? Found { get; init; }
}

/// <summary>Puts parts on the shelf, and says more about those that are there.</summary>
public static class EnterPart
{
    /// <summary>A new part.</summary>
    public static Checked<PartEntered> Add(string path, PartEntry entry)
    {
        IReadOnlyList<Claim> left = [];
        IReadOnlyList<Problem> unnamed = [];
        return ChangeStudy.Run(path, $"part {entry.Id} added", study => study.Parts.Any(part => part.Id.Name == entry.Id)
            ? new(new Problem("There is a part of this name.", $"part '{entry.Id}'", entry.Id, "a short name that is free", $"Say more about it: {Again(path, entry)}. Or choose another name."))
            : Begun(entry).Then(part => Stated(part, Named(part.Kind, entry, path, out unnamed))).Map(done =>
            {
                left = done.Left;
                return study with { Parts = [.. study.Parts, done.Part] };
            })).Map(changed => Entered(changed.After, entry, left, unnamed));
    }

    /// <summary>More about a part that is there; nothing that was said before is lost: the history keeps it.</summary>
    public static Checked<PartEntered> State(string path, PartEntry entry)
    {
        IReadOnlyList<Claim> left = [];
        IReadOnlyList<Problem> unnamed = [];
        return ChangeStudy.Run(path, $"part {entry.Id} stated", study => Found(study, entry.Id).Then(part => Stated(part, Named(part.Kind, entry, path, out unnamed))).Map(done =>
        {
            left = done.Left;
            return study with { Parts = [.. study.Parts.Select(part => part.Id == done.Part.Id ? done.Part : part)] };
        })).Map(changed => Entered(changed.After, entry, left, unnamed));
    }

    /// <summary>What was typed for a new part, as the command that says the same of the part that is there.</summary>
    private static string Again(string path, PartEntry entry)
    {
        if (entry.Values.Count + entry.Words.Count == 0)
        {
            return $"heatwright part state {path} {entry.Id} ...";
        }

        var said = entry.Values.Select(value => (Option: value.Origin, value.Typed)).Concat(entry.Words.Select(word => (Option: "word", Typed: word)));
        return $"heatwright part state {path} {entry.Id} {string.Join(' ', said.Select(one => $"--{one.Option} \"{one.Typed}\""))}{(entry.Count is { } count ? $" --count {count}" : "")}";
    }

    /// <summary>The entry without values of unknown names, where the rest is to be kept.</summary>
    private static PartEntry Named(PartKind kind, PartEntry entry, string path, out IReadOnlyList<Problem> unnamed)
    {
        var unknown = entry.KeepsRest ? entry.Values.Select(value => (Value: value, Problem: StatedText.UnknownName(kind, value.Origin, value.Typed))).Where(pair => pair.Problem is not null).ToArray() : [];
        unnamed = [.. unknown.Select(pair => Again(pair.Value.Origin, pair.Value.Typed, pair.Problem!))];
        return unknown.Length == 0 ? entry : entry with { Values = [.. entry.Values.Except(unknown.Select(pair => pair.Value))] };

        // All else is on the shelf by now: the same command typed again would only say that the part is there.
        Problem Again(string origin, string typed, Problem problem)
        {
            int equals = typed.IndexOf('=', StringComparison.Ordinal);
            string name = StatedText.Meant(kind, typed[..equals].Trim()) is [var only] ? only : "NAME";
            return problem with
            {
                What = $"'{entry.Id}' is on the shelf without this value: no part has one of this name.",
                Next = $"All else was kept. Say this one alone again: heatwright part state {path} {entry.Id} --{origin} \"{name}{typed[equals..]}\"; what is no number goes into --word or --note.",
            };
        }
    }

    /// <summary>Takes a part off the shelf where nothing uses it.</summary>
    public static Checked<StudyChanged> Drop(string path, string id) => ChangeStudy.Run(path, $"part {id} taken off the shelf", study => Found(study, id).Then(part =>
    {
        string[] wired = [.. study.Arrangements.Where(one => one.Parts().Contains(part.Id)).Select(one => $"arrangement {one.Letter}")], kept = [.. study.Trials.Where(trial => trial.Part == part.Id).Select(trial => $"trial {trial.Id}"),
            .. study.Parts.Where(other => other.Like?.Part == part.Id).Select(other => $"part {other.Id}, which is like it")];
        return wired.Length + kept.Length > 0
            ? new Checked<Study>(new Problem("The part is in use.", $"part '{id}'", string.Join(", ", wired.Concat(kept)), "used by nothing", kept.Length > 0
                ? $"What was read on it stays with it: where it is gone, mark it with 'heatwright part state {path} {id} --from destroyed'."
                : $"Choose another part there first, with 'heatwright rewire {path} LETTER'."))
            : new(study with { Parts = [.. study.Parts.Where(other => other.Id != part.Id).Select(other => other.TwinOf == part.Id ? other with { TwinOf = null } : other)], Files = [.. study.Files.Where(file => file.About != KeptAbout.Part || file.Subject != part.Id.Name)] });
    }));

    /// <summary>The part of that name, or which there are.</summary>
    public static Checked<Part> Found(Study study, string id) => study.Parts.FirstOrDefault(part => string.Equals(part.Id.Name, id, StringComparison.OrdinalIgnoreCase)) is { } part
        ? new(part)
        : new(new Problem("There is no part of this name.", $"study '{study.Name}'", id, study.Parts.Count > 0 ? NearNames.Told(id, study.Parts.Select(one => one.Id.Name)) : "the shelf is empty", "Choose one of them, or add it with 'heatwright part add'."));

    private static PartEntered Entered(Study study, PartEntry entry, IReadOnlyList<Claim> left, IReadOnlyList<Problem> unnamed)
    {
        var part = Found(study, entry.Id).Value;
        var found = RunStudy.Findings(study, part);
        return new(part, ClaimChecks.Of(part, quantity => found?.Find(quantity)), left)
        {
            Found = found,
            NotTaken = unnamed,
            Prices = [.. entry.Values.Select(value => StatedText.PriceTold(value.Typed)).OfType<string>()],
            OwnWords = [.. entry.Words.Select(PartWords.Unread).OfType<string>()],
        };
    }

    private static Checked<Part> Begun(PartEntry entry)
    {
        PartKind? kind = KindOf(entry.Kind);
        if (entry.Kind.Length > 0 && kind is null)
        {
            return new(new Problem("There is no such kind of part.", $"part '{entry.Id}'", entry.Kind, NearNames.Told(entry.Kind, Enum.GetValues<PartKind>().Select(Typed)), "Choose one of them."));
        }

        kind ??= entry.Listing is { } text && ListingReader.Read(text) is { IsFine: true } read ? read.Value.Kind : null;
        if (kind is not { } sure)
        {
            var unsaid = new Problem("What the part is for is not said.", $"part '{entry.Id}'", "none", string.Join(", ", Enum.GetValues<PartKind>().Select(Typed)), $"Type it behind the name: heatwright part add FILE {entry.Id} heater.");
            return new(unsaid with { OnPage = unsaid with { Limit = string.Join(", ", Enum.GetValues<PartKind>().Select(Spoken)), Next = "Choose it from the list 'What it is'." } });
        }

        string name = entry.Name.Length > 0 ? entry.Name : entry.Id;
        if (entry.Class is not { } wanted)
        {
            return new(new Part(new PartId(entry.Id), sure, name, []));
        }

        return PartClasses.Make(new PartId(entry.Id), sure, wanted) is { } part
            ? new(part with { Name = entry.Name.Length > 0 ? name : part.Name, Count = entry.Values.Count > 0 ? 1 : part.Count }) // of a class alone nobody has one; what was said of its own is said of a part that is there
            : new(new Problem($"There is no such class of {Spoken(sure)}.", $"part '{entry.Id}', --class", wanted, PartClasses.Of(sure) is { Count: > 0 } classes ? string.Join(", ", classes) : "none for this kind", "Choose one of them, or state what you know."));
    }

    private static Checked<(Part Part, IReadOnlyList<Claim> Left)> Stated(Part part, PartEntry entry)
    {
        List<Problem> problems = [];
        int? count = Whole(entry.Count, "--count", 0, problems), sample = Whole(entry.Sample, "--sample", 1, problems);
        List<StatedValue> stated = [.. part.Stated];
        foreach (var (origin, typed) in entry.Values)
        {
            var read = StatedText.Read(part.Kind, origin, typed);
            problems.AddRange(read.Problems);
            if (read.IsFine)
            {
                Put(stated, read.Value with { Sample = sample });
            }
        }

        var (claims, left, words) = Confirmed(part, entry, problems);
        claims.ForEach(claim => Put(stated, claim with { Sample = sample }));
        var named = part.Words.Concat(words).ToDictionarySorted();
        foreach (string word in entry.Words)
        {
            string[] pair = word.Split('=', 2, StringSplitOptions.TrimEntries);
            if (pair.Length != 2 || pair[0].Length == 0)
            {
                problems.Add(new("A word needs its name.", $"--word \"{word}\"", word, "name=word", "Type it as --word chemistry=lithium-ion."));
            }
            else if (PartUnits.Find(pair[0]) is { } quantity)
            {
                problems.Add(new($"{quantity} is a value, not a word.", $"word \"{word}\"", pair[0], "words such as chemistry, type or material", $"State it as a value: {quantity}={pair[1]}."));
            }
            else
            {
                named[pair[0]] = pair[1];
            }
        }

        if (entry.State is not null && sample is null)
        {
            problems.Add(new("Which piece is it that is so?", "--state", entry.State, "--sample 1, 2, 3 ...", "Add --sample with the number on the piece."));
        }

        // 'destroyed' said of one piece is that piece's state, not the whole purchase's.
        bool ofPiece = sample is not null && entry.From is not null;
        if (ofPiece && entry.From != "destroyed")
        {
            problems.Add(new($"'{entry.From}' is said of a whole purchase, not of one piece.", "--from with --sample", $"--sample {entry.Sample} --from {entry.From}", "--state sound, suspect or destroyed for one piece",
                "Leave out --sample, or add the piece as a part of its own."));
        }

        return problems.Count > 0 ? new(problems) : new((part with
        {
            Name = entry.Name.Length > 0 ? entry.Name : part.Name,
            Count = count ?? part.Count,
            From = ofPiece ? part.From : entry.From ?? part.From,
            Stated = stated,
            Words = named,
            Note = entry.Note ?? part.Note,
            Photo = entry.Photo ?? part.Photo,
            Listing = entry.Listing ?? part.Listing,
            Samples = Samples(part, sample, entry.State ?? (ofPiece ? entry.From : null)),
        }, left));
    }

    /// <summary>Says a value anew where the same was said of the same piece from the same origin; else beside the others.</summary>
    private static void Put(List<StatedValue> stated, StatedValue value)
    {
        int at = stated.FindIndex(other => other.Quantity == value.Quantity && other.Origin == value.Origin && other.Sample == value.Sample && (value.Origin != "claimed" || other.Text == value.Text));
        if (at >= 0)
        {
            stated[at] = value;
        }
        else
        {
            stated.Add(value);
        }
    }

    private static IReadOnlyList<PartSample>? Samples(Part part, int? number, string? state)
    {
        if (number is not { } piece)
        {
            return part.Samples;
        }

        var known = part.Samples?.FirstOrDefault(sample => sample.Number == piece) ?? new PartSample(piece, "sound", "");
        return [.. (part.Samples ?? []).Where(sample => sample.Number != piece).Append(known with { State = state ?? known.State }).OrderBy(sample => sample.Number)];
    }

    private static (List<StatedValue> Claims, IReadOnlyList<Claim> Left, IReadOnlyDictionary<string, string> Words) Confirmed(Part part, PartEntry entry, List<Problem> problems)
    {
        if ((entry.Listing ?? (entry.Take.Count > 0 ? part.Listing : null)) is not { } text)
        {
            if (entry.Take.Count > 0)
            {
                problems.Add(new("There is no seller's text to take claims from.", "--take", string.Join(",", entry.Take), "--listing FILE", "Add the text with --listing."));
            }

            return ([], [], new Dictionary<string, string>());
        }

        var read = ListingReader.Read(text, part.Kind);
        problems.AddRange(read.Problems);
        return read.IsFine ? Confirmed(part, read.Value, entry.Take, problems) : ([], [], new Dictionary<string, string>());
    }

    private static (List<StatedValue> Claims, IReadOnlyList<Claim> Left, IReadOnlyDictionary<string, string> Words) Confirmed(Part part, ListingClaims listing, IReadOnlyList<string> take, List<Problem> problems)
    {
        List<StatedValue> claims = [];
        HashSet<int> taken = [];
        bool all = take.Contains("all", StringComparer.OrdinalIgnoreCase);
        foreach (var claim in listing.Claims.Where(claim => all && claim.Quantity is not null))
        {
            claims.Add(claim.Confirmed(claim.Quantity!));
            taken.Add(claim.Number);
        }

        foreach (string one in take.SelectMany(words => words.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)).Where(word => !word.Equals("all", StringComparison.OrdinalIgnoreCase)))
        {
            string[] pair = one.Split('=', 2, StringSplitOptions.TrimEntries);
            var claim = int.TryParse(pair[0], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? listing.Claims.FirstOrDefault(other => other.Number == number) : null;
            string? quantity = pair.Length == 2 ? PartUnits.Find(pair[1]) : claim?.Quantity;
            if (claim is null)
            {
                problems.Add(new("There is no claim of this number.", "--take", one, listing.Claims.Count > 0 ? $"1 to {listing.Claims.Count.ToString(CultureInfo.InvariantCulture)}, or all" : "the text holds no claims", "Look at them with 'heatwright claims --text FILE'."));
            }
            else if (quantity is null)
            {
                problems.Add(new($"{claim.Words}: of what?", $"--take {one}", claim.Words, string.Join(", ", claim.Choices), "Type " + string.Join(" or ", claim.Choices.Select(choice => $"--take \"{pair[0]}={choice}\"")) + "."));
            }
            else if (taken.Add(claim.Number))
            {
                claims.Add(claim.Confirmed(quantity));
            }
        }

        return (claims, [.. listing.Claims.Where(claim => !taken.Contains(claim.Number) && !IsStated(part, claim))], taken.Count > 0 ? listing.Words : new Dictionary<string, string>());
    }

    /// <summary>True of a claim that was confirmed before: it is stated in the same words.</summary>
    private static bool IsStated(Part part, Claim claim) => part.Stated.Any(stated => stated.Origin == "claimed" && stated.Value == claim.Value
        && (claim.Quantity ?? stated.Quantity) == stated.Quantity && stated.Text == claim.Confirmed(stated.Quantity).Text);

    /// <summary>The kind that was typed, capitals and hyphens left aside; null: none.</summary>
    public static PartKind? KindOf(string typed) => Enum.GetValues<PartKind>().Where(kind => Plain(kind.ToString()) == Plain(typed) || Plain(Spoken(kind)) == Plain(typed)).Select(kind => (PartKind?)kind).FirstOrDefault();

    /// <summary>The kind as files write it.</summary>
    public static string Word(PartKind kind) => char.ToLowerInvariant(kind.ToString()[0]) + kind.ToString()[1..];

    /// <summary>The kind as it is typed, in one word: step-up, cut-out.</summary>
    public static string Typed(PartKind kind) => kind switch
    {
        PartKind.StepUp => "step-up",
        PartKind.CutOut => "cut-out",
        _ => Word(kind),
    };

    /// <summary>The kind in trade words.</summary>
    public static string Spoken(PartKind kind) => kind switch
    {
        PartKind.Supervision => "protection and supervision",
        PartKind.StepUp => "step-up module",
        PartKind.CutOut => "cut-out",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private static string Plain(string word) => word.Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();

    private static int? Whole(string? typed, string option, int least, List<Problem> problems)
    {
        if (typed is null)
        {
            return null;
        }

        var read = OptionReader.Amount(option, typed, Expect.Count);
        if (read.IsFine && read.Value.Value >= least)
        {
            return (int)read.Value.Value;
        }

        problems.Add(read.IsFine ? new($"{option} cannot be so small.", option, typed, $"{least.ToString(CultureInfo.InvariantCulture)} or more", "Correct the number.") : read.Problems[0]);
        return null;
    }

    internal static SortedDictionary<string, string> ToDictionarySorted(this IEnumerable<KeyValuePair<string, string>> words)
    {
        SortedDictionary<string, string> sorted = new(StringComparer.Ordinal);
        foreach (var (name, word) in words)
        {
            sorted[name] = word;
        }

        return sorted;
    }
}
