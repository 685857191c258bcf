namespace Heatwright.Quantities;

/// <summary>Names that may have been meant by one that there is not.</summary>
public static class NearNames
{
    private const int MostSlips = 2;
    private const int MostNames = 5;

    /// <summary>What a list of names is told as: those near the typed one, or all where none is near.</summary>
    /// <param name="typed">As it came; capitals, blanks and underscores for '-' do not count.</param>
    /// <param name="names">Those that there are.</param>
    public static string Told(string typed, IEnumerable<string> names)
    {
        string[] all = [.. names];
        string[] near = Of(typed, all);
        return near.Length > 0 && near.Length < all.Length ? "perhaps " + string.Join(" or ", near) : string.Join(", ", all);
    }

    /// <summary>The likeliest first, at most five: a slip of two letters, one word inside the other, or a word in common.</summary>
    public static string[] Of(string typed, IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(typed);
        string asked = typed.Trim().ToLowerInvariant().Replace('_', '-').Replace(' ', '-');
        return asked.Length == 0 ? [] :
        [
            .. names.Select(name => (Name: name, Rank: Rank(name.ToLowerInvariant(), asked))).Where(each => each.Rank < 100)
                .OrderBy(each => each.Rank).ThenBy(each => each.Name, StringComparer.Ordinal).Select(each => each.Name).Take(MostNames),
        ];
    }

    private static int Rank(string name, string asked) =>
        Slips(name, asked) is var slips && slips <= Math.Min(MostSlips, (name.Length - 1) / 2) ? slips
        : Math.Min(asked.Length, name.Length) > 2 && (name.Contains(asked, StringComparison.Ordinal) || asked.Contains(name, StringComparison.Ordinal)) ? 10
        : name.Split('-').Intersect(asked.Split('-')).Any(word => word.Length > 3) ? 20
        : 100;

    /// <summary>Letters to change, add, drop or swap until one word is the other.</summary>
    public static int Slips(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
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
