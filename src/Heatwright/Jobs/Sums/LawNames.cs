namespace Heatwright.Jobs.Sums;

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
        return Slips(name, asked) is var slips and <= MostSlips ? slips
            : name.Contains(asked, StringComparison.Ordinal) || asked.Contains(name, StringComparison.Ordinal) ? 10
            : card.Answers(asked.Replace('-', ' ')) ? 20
            : 100;
    }

    /// <summary>Letters to change, add, drop or swap until one word is the other.</summary>
    private static int Slips(string a, string b)
    {
        int[,] cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                cost[i, j] = i == 0 ? j : j == 0 ? i
                    : Math.Min(Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1, cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
                }
            }
        }

        return cost[a.Length, b.Length];
    }
}
