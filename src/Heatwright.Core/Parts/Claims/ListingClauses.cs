namespace Heatwright.Parts;

/// <summary>The words around a value: those before it and behind it within its clause, and those of the clause and the line.</summary>
/// <param name="Before">From the value before, or the begin of the clause.</param>
/// <param name="Behind">To the next value, or the end of the clause.</param>
/// <param name="Clause">All words of the clause before the value, other values left out.</param>
/// <param name="IsFirst">True where no value stands before it in its clause.</param>
internal sealed record Surroundings(string Before, string Behind, string Clause, bool IsFirst);

/// <summary>Cuts a text into clauses at line ends, commas, semicolons, bars, brackets and full stops that lie outside values.</summary>
internal static class ListingClauses
{
    public static IReadOnlyList<Surroundings> Around(string text, IReadOnlyList<SeenValue> seen)
    {
        List<Surroundings> all = [];
        for (int i = 0; i < seen.Count; i++)
        {
            int start = seen[i].Start, end = seen[i].End;
            int from = Back(text, start, seen);
            int to = Forth(text, end, seen);
            var inClause = seen.Where(other => other.Start >= from && other.End <= to).ToList();
            int before = inClause.Where(other => other.End <= start).Select(other => other.End).DefaultIfEmpty(from).Max();
            int behind = inClause.Where(other => other.Start >= end).Select(other => other.Start).DefaultIfEmpty(to).Min();
            string clause = string.Concat(Enumerable.Range(from, start - from).Where(at => !inClause.Any(other => at >= other.Start && at < other.End)).Select(at => text[at]));
            all.Add(new(Low(text[before..start]), Low(text[end..behind]), Low(clause), before == from));
        }

        return all;
    }

    private static string Low(string text) => text.ToLowerInvariant();

    private static int Back(string text, int start, IReadOnlyList<SeenValue> seen)
    {
        int at = start - 1;
        while (at >= 0 && (!Cuts(text, at) || Within(at, seen)))
        {
            at--;
        }

        return at + 1;
    }

    private static int Forth(string text, int end, IReadOnlyList<SeenValue> seen)
    {
        int at = end;
        while (at < text.Length && (!Cuts(text, at) || Within(at, seen)))
        {
            at++;
        }

        return at;
    }

    private static bool Within(int at, IReadOnlyList<SeenValue> seen) => seen.Any(value => at >= value.Start && at < value.End);

    private static bool Cuts(string text, int at) => text[at] switch
    {
        '\n' or ';' or '|' or ',' or '!' => true,
        '.' => at + 1 >= text.Length || char.IsWhiteSpace(text[at + 1]),
        '(' => at == 0 || text[at - 1] is ' ' or '\n',               // 'Vgs(th)' is one word
        ')' => Opener(text, at) is var open && (open <= 0 || text[open - 1] is ' ' or '\n'),
        _ => false,
    };

    private static int Opener(string text, int at) => text.LastIndexOf('(', at);
}
