namespace Heatwright.DemoTruth;

/// <summary>The names that the study carries. With a number above 0 all of them are replaced, while no reading changes: words must follow data.</summary>
internal sealed class Names(int rename)
{
    private const string Consonants = "bdfgklmnprstvz";
    private const string Vowels = "aeiou";

    private readonly Dictionary<string, string> given = new(StringComparer.Ordinal);
    private readonly Noise noise = new(rename, "names");
    private readonly List<string> alphabet = [.. "EFGHJKLMNPQRSTUVWXYZ".Select(letter => letter.ToString())];

    /// <summary>An id, a name or a word: itself, or what stands for it in this renaming, always the same.</summary>
    public string Of(string name)
    {
        if (rename == 0)
        {
            return name;
        }

        if (!given.TryGetValue(name, out string? other))
        {
            do
            {
                other = string.Concat(Enumerable.Range(0, 3).Select(_ => $"{Consonants[noise.Below(Consonants.Length)]}{Vowels[noise.Below(Vowels.Length)]}"));
            }
            while (given.ContainsValue(other));
            given[name] = other;
        }

        return other;
    }

    public string Letter(string letter)
    {
        if (rename == 0)
        {
            return letter;
        }

        string key = "letter " + letter;
        if (!given.TryGetValue(key, out string? other))
        {
            int at = noise.Below(alphabet.Count);
            other = alphabet[at];
            alphabet.RemoveAt(at);
            given[key] = other;
        }

        return other;
    }
}
