using Heatwright.Jobs;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>One value of a part as it was typed, and as it was understood.</summary>
/// <param name="Typed">As typed.</param>
/// <param name="Understood">In words; empty: it could not be understood.</param>
/// <param name="Problems">Why not.</param>
public sealed record TypedValueView(string Typed, string Understood, IReadOnlyList<Problem> Problems);

/// <summary>The form for a part: what was typed, what was understood of it, what stands in its way.</summary>
/// <param name="Part">Short name of the part that more is said about; empty: a new one.</param>
public sealed record PartForm(string Part)
{
    private static readonly string[] Origins = ["measured", "sheet", "claimed", "published", "assumed"];

    /// <summary>Short name of a new part.</summary>
    public string Id { get; init; } = "";

    /// <summary>What it is for.</summary>
    public string Kind { get; init; } = "";

    /// <summary>What the maker calls it.</summary>
    public string Name { get; init; } = "";

    /// <summary>Pieces on hand.</summary>
    public string Count { get; init; } = "";

    /// <summary>How it came.</summary>
    public string From { get; init; } = "";

    /// <summary>Values and words, parted by semicolons; an origin in front holds until the next, 'word' for its own piece.</summary>
    public string Values { get; init; } = "";

    /// <summary>The maker's note.</summary>
    public string Note { get; init; } = "";

    /// <summary>Class to take estimates from.</summary>
    public string Class { get; init; } = "";

    /// <summary>Piece that the values are of.</summary>
    public string Sample { get; init; } = "";

    /// <summary>The seller's text.</summary>
    public string Listing { get; init; } = "";

    /// <summary>Claims of it that were confirmed.</summary>
    public IReadOnlyList<string> Take { get; init; } = [];

    /// <summary>What stands in its way.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>The form as it was sent.</summary>
    public static PartForm Of(IFormCollection form, string part = "") => new(part)
    {
        Id = form.Field("id"),
        Kind = form.Field("kind"),
        Name = Anew(form, "name"),
        Count = Anew(form, "count"),
        From = Anew(form, "from"),
        Values = form.Field("values"),
        Note = form.Field("note"),
        Class = form.Field("class"),
        Sample = form.Field("sample"),
        Listing = form["listing"].ToString(),
        Take = [.. form["take"].OfType<string>().Where(word => word.Length > 0)],
    };

    /// <summary>What was typed, as the job takes it; the same job as on the command line.</summary>
    public PartEntry Entry()
    {
        var (values, words) = Split();
        return new PartEntry(Part.Length > 0 ? Part : Id)
        {
            Kind = Kind,
            Name = Name,
            Count = Said(Count),
            From = Said(From),
            Values = values,
            Words = words,
            Note = Said(Note),
            Class = Said(Class),
            Sample = Said(Sample),
            Listing = Said(Listing),
            Take = Take,
        };
    }

    /// <summary>Each value beside what was understood of it.</summary>
    public IReadOnlyList<TypedValueView> Understood()
    {
        var kind = EnterPart.KindOf(Kind) ?? PartKind.Handle;
        return [.. Split().Values.Select(value =>
        {
            var read = StatedText.Read(kind, value.Origin, value.Typed);
            return new TypedValueView($"{value.Origin} {value.Typed}", read.IsFine ? Words(read.Value) : "", read.Problems);
        })];
    }

    /// <summary>A stated value in words.</summary>
    public static string Words(StatedValue value) => $"{value.Quantity} {Display.Significant(value.Value, 6)}{(Units.Find(value.Unit) == Units.Money ? "" : $" {value.Unit}")}{(value.PlusMinus > 0 ? $" ± {Display.Significant(value.PlusMinus, 4)}" : "")}".TrimEnd() + $", {value.Origin}{(value.Text.Length > 0 ? $": {value.Text}" : "")}";

    private (IReadOnlyList<(string Origin, string Typed)> Values, IReadOnlyList<string> Words) Split()
    {
        List<(string, string)> values = [];
        List<string> words = [];
        string origin = "measured";
        foreach (string piece in Pieces())
        {
            int blank = piece.IndexOf(' ', StringComparison.Ordinal);
            string first = blank > 0 ? piece[..blank] : "", rest = piece[(blank + 1)..].Trim();
            if (first == "word")
            {
                words.Add(rest); // a word is no origin: what follows keeps the one before
            }
            else if (Origins.Contains(first))
            {
                origin = first;
                values.Add((origin, rest));
            }
            else
            {
                values.Add((origin, piece));
            }
        }

        return (values, words);
    }

    /// <summary>Semicolons and ends of lines part values; those in brackets belong to the words.</summary>
    private IEnumerable<string> Pieces()
    {
        int depth = 0, begin = 0;
        for (int i = 0; i <= Values.Length; i++)
        {
            char c = i < Values.Length ? Values[i] : ';';
            depth += c == '(' ? 1 : c == ')' ? -1 : 0;
            if ((c == ';' && depth <= 0) || c == '\n' || i == Values.Length)
            {
                if (Values[begin..i].Trim() is { Length: > 0 } piece)
                {
                    yield return piece;
                }

                (begin, depth) = (i + 1, 0);
            }
        }
    }

    /// <summary>A field whose content the page showed already says nothing unless it was changed.</summary>
    private static string Anew(IFormCollection form, string name) => form.ContainsKey("was " + name) && form.Field(name) == form.Field("was " + name) ? "" : form.Field(name);

    private static string? Said(string typed) => typed.Length > 0 ? typed : null;
}
