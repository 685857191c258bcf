using System.Buffers;
using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.StudyFile;

/// <summary>Where the checks of a study lay down what they find.</summary>
/// <param name="File">The file or study that is checked.</param>
/// <param name="StandsIn">True for the path of a field that was already told to be faulty.</param>
/// <param name="Problems">What was found.</param>
internal sealed record CheckDesk(string File, Func<string, bool> StandsIn, ProblemList Problems)
{
    private const int LongestId = 80;
    private const string Forbidden = "/\\:*?\"<>|";
    private static readonly SearchValues<char> ForbiddenChars = SearchValues.Create(Forbidden);

    public void Say(string path, string what, string value, string limit, string next)
    {
        if (!StandsIn(path))
        {
            Problems.Add(what, $"{File}, {path}", value, limit, next);
        }
    }

    /// <summary>Ids stand once and can be file names on every machine: one rule for all of them.</summary>
    public void Ids(string what, IEnumerable<(string Id, string Path)> ids)
    {
        // Blind to case: the runs of a bundle are files, and two files that differ in case only are one file on many machines.
        var first = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (id, path) in ids)
        {
            if (id.Length is 0 or > LongestId || id.AsSpan().IndexOfAny(ForbiddenChars) >= 0 || id.Any(char.IsControl) || id[0] is '.' or ' ' || id[^1] is '.' or ' ')
            {
                Say(path, $"An id of {what} cannot be.", id, $"1 to {Number(LongestId)} characters, none of {Forbidden}, no blank or point at either end", "Choose another id; the name beside it may hold anything.");
            }
            else if (!first.TryAdd(id, path))
            {
                Say(path, $"Two of the study's {what} have one id.", id, $"once; it stands at {first[id]} too", "Rename one of them, and what refers to it.");
            }
        }
    }

    public void Word(string path, string what, string word, IEnumerable<string> words)
    {
        if (!words.Contains(word, StringComparer.Ordinal))
        {
            Say(path, $"{what} is not known.", word, string.Join(", ", words), "Choose one of them.");
        }
    }

    /// <summary>A unit exists and measures what is asked; null: anything.</summary>
    public void Unit(string path, string symbol, Unit? like)
    {
        if (Units.Find(symbol) is not { } unit)
        {
            Say(path, "A unit is not known.", symbol, "a unit such as V, mV, A, Ω, mΩ, W, °C, K, s, mAh, Ah, g, mm", "Correct the unit.");
        }
        else if (like is not null && !unit.Measures(like))
        {
            Say(path, "A unit measures something else.", symbol.Length > 0 ? symbol : "no unit", like.Symbol.Length > 0 ? $"{like.Symbol}, or a unit of the same kind" : "no unit: a count", "Correct the unit, or the word that says what the value is.");
        }
    }

    public void Range(string path, string what, double value, bool fits, string limit)
    {
        if (!fits || !double.IsFinite(value))
        {
            Say(path, $"{what} cannot be.", Number(value), limit, "Correct the number.");
        }
    }

    public static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    public static string At(string list, int index) => $"{list}[{index.ToString(CultureInfo.InvariantCulture)}]";
}
