using Heatwright.Quantities;

namespace Heatwright.Handbook;

/// <summary>Names of sums as they are typed: in two words, with a slip, or by what they are about.</summary>
public static class LawNames
{
    private const int MostSlips = 2;

    /// <summary>The law and what was typed for it, where its name was typed as two or three words: 'trace width'.</summary>
    public static (string Law, IReadOnlyList<string> Typed) Joined(string law, IReadOnlyList<string> typed)
    {
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(typed);
        string name = law.Trim().Replace('_', '-').Replace(' ', '-');
        for (int words = 2; words >= 0; words--)
        {
            if (words <= typed.Count && typed.Take(words).All(word => !word.Contains('=', StringComparison.Ordinal)) && LawCard.Find(string.Join('-', [name, .. typed.Take(words)])) is { } card)
            {
                return (card.Law.Name, [.. typed.Skip(words)]);
            }
        }

        return (law, typed);
    }

    /// <summary>Names that may have been meant, the likeliest first; at most five.</summary>
    public static string[] Near(string law)
    {
        ArgumentNullException.ThrowIfNull(law);
        string asked = law.Trim().ToLowerInvariant();
        return asked.Length == 0 ? [] :
        [
            .. LawCard.All.Select(card => (card.Law.Name, Rank: Rank(card, asked))).Where(each => each.Rank < 100)
                .OrderBy(each => each.Rank).ThenBy(each => each.Name, StringComparer.Ordinal).Select(each => each.Name).Take(5),
        ];
    }

    private static int Rank(LawCard card, string asked)
    {
        string name = card.Law.Name;
        return NearNames.Slips(name, asked) is var slips and <= MostSlips ? slips
            : name.Contains(asked, StringComparison.Ordinal) || asked.Contains(name, StringComparison.Ordinal) ? 10
            : card.Answers(asked.Replace('-', ' ')) ? 20
            : 100;
    }
}
