using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.StudyFile;

/// <summary>Problems as they are met, all of them counted and as many kept as a person can read.</summary>
internal sealed class ProblemList
{
    private const int Kept = 200;
    private const int ShownChars = 80;

    private readonly List<Problem> problems = [];
    private int count;

    public bool IsEmpty => count == 0;

    public int Count => count;

    public void Add(string what, string where, string value, string limit, string next)
    {
        count++;
        if (count <= Kept)
        {
            problems.Add(new(what, where, Short(value), limit, next));
        }
    }

    public IReadOnlyList<Problem> All() => count <= Kept ? problems :
    [
        .. problems,
        new($"There are {(count - Kept).ToString(CultureInfo.InvariantCulture)} more problems of this study that are not listed.", "the same files",
            count.ToString(CultureInfo.InvariantCulture), "none", "Correct the ones above first; many of the others may go with them."),
    ];

    public static string Short(string text)
    {
        if (text.Length <= ShownChars)
        {
            return text;
        }
        int end = char.IsHighSurrogate(text[ShownChars - 1]) ? ShownChars - 1 : ShownChars;
        return text[..end] + "…";
    }
}
