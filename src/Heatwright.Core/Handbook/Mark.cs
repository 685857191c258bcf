namespace Heatwright.Handbook;

/// <summary>How far the numbers of a table can be trusted; the mark goes with every value to the screen.</summary>
public enum Mark
{
    /// <summary>Copied from the publication, or from a public copy of it that was compared.</summary>
    Published,

    /// <summary>Worked out from a published formula.</summary>
    Computed,

    /// <summary>Remembered from the publication, not read again: a default that the maker's own copy overrides.</summary>
    FromMemory,

    /// <summary>What the trade does; nobody published it.</summary>
    CommonPractice,
}

/// <summary>The words of the marks, as table files write them and screens show them.</summary>
public static class Marks
{
    private static readonly (Mark Mark, string Word)[] Words =
    [
        (Mark.Published, "published"),
        (Mark.Computed, "computed"),
        (Mark.FromMemory, "from memory"),
        (Mark.CommonPractice, "common practice"),
    ];

    /// <summary>The mark in words.</summary>
    public static string Word(this Mark mark) => Words.Single(pair => pair.Mark == mark).Word;

    /// <summary>The mark with exactly these words, or null.</summary>
    public static Mark? Find(string word)
    {
        foreach (var pair in Words)
        {
            if (pair.Word == word)
            {
                return pair.Mark;
            }
        }

        return null;
    }
}
