using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Heatwright.Proofs.Mutants;

/// <summary>Which test passes which change, and how long it takes.</summary>
internal sealed class MutantCover
{
    private const double LongS = 3;

    private const int MostOfOnce = 60;

    private readonly Dictionary<string, double> tookS = new(StringComparer.Ordinal);
    private readonly Dictionary<int, List<string>> passed = [];
    private readonly Dictionary<int, List<string>> once = [];

    /// <summary>Tests that may be run for a change.</summary>
    public int Fast => tookS.Values.Count(took => took <= LongS);

    /// <summary>Tests that take too long for that.</summary>
    public int Long => tookS.Count - Fast;

    /// <summary>Tests that do not hold here without any change, or skip themselves.</summary>
    public int Other { get; private set; }

    /// <summary>Runs all tests that are not known from before, and notes what they pass.</summary>
    /// <param name="process">Where they run.</param>
    /// <param name="changes">The changes.</param>
    /// <param name="known">What is kept of earlier runs.</param>
    /// <param name="say">Told what happens.</param>
    public static MutantCover Of(MutantProcess process, IReadOnlyList<MutantPoint?> changes, MutantMemory known, Action<string> say)
    {
        string same = Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', changes.Select(change => change?.Key)))));
        List<string> lines = [.. known.Cover(same)];
        while (true)
        {
            // A test that ends the process with it is left out, and the rest go on in the next.
            string? begun = null;
            foreach (string line in process.Ask(["cover", changes.Count.ToString(CultureInfo.InvariantCulture), .. lines.Select(line => line.Split('\t')[1])]).TakeWhile(line => line != "end").Append("lost"))
            {
                if (line == "lost" && begun is not null)
                {
                    lines.Add($"test\t{begun}\tlost\t0\t\t");
                    process.Dispose();
                }
                else if (line.StartsWith("begin\t", StringComparison.Ordinal))
                {
                    begun = line.Split('\t')[1];
                }
                else if (line.StartsWith("test\t", StringComparison.Ordinal))
                {
                    lines.Add(line);
                    begun = null;
                    if (lines.Count % 200 == 0)
                    {
                        known.KeepCover(same, lines);
                        say(string.Create(CultureInfo.InvariantCulture, $"{TimeProvider.System.GetUtcNow():HH:mm:ss} {lines.Count} tests, {line.Split('\t')[1]}"));
                    }
                }
            }

            if (begun is null)
            {
                break;
            }

            say($"lost with its process: {begun}");
        }

        if (lines.Count == 0)
        {
            throw new InvalidOperationException("No test could be run: " + process.Said);
        }

        known.KeepCover(same, lines);
        var cover = new MutantCover();
        foreach (string line in lines)
        {
            cover.Note(line.Split('\t'), say);
        }

        say($"{cover.Fast} fast tests in {cover.tookS.Values.Where(took => took <= LongS).Sum():0} s, {cover.Long} long ones in {cover.tookS.Values.Where(took => took > LongS).Sum():0} s");
        return cover;
    }

    /// <summary>What is to be said of a change that no fast test passes.</summary>
    public string Outcome(int number) => passed.ContainsKey(number) ? "long tests only" : "not reached";

    /// <summary>The fast tests for a change, those most likely to notice first, and whether they need a process of their own.</summary>
    /// <param name="point">The change.</param>
    /// <param name="number">Its number.</param>
    /// <param name="withinS">The time that they may take together.</param>
    public (IReadOnlyList<string> Tests, bool Fresh) For(MutantPoint point, int number, double withinS)
    {
        string stem = Path.GetFileNameWithoutExtension(point.File);
        double took = 0;
        if (passed.TryGetValue(number, out var reach))
        {
            return ([.. Near(reach).TakeWhile(test => (took += tookS[test]) <= withinS || took == tookS[test])], false);
        }

        // What is made once is seen by every test that uses it; which ones do is not known.
        // Those of its own class, those that made it here, and the quickest of its folder are asked.
        return once.TryGetValue(number, out var first) ? ([.. Near([.. first.Concat(tookS.Keys).Distinct()]).Take(MostOfOnce)], true) : ([], false);

        IEnumerable<string> Near(List<string> tests) => tests.Where(test => tookS[test] <= LongS)
            .OrderBy(test => test.Contains($".{stem}Tests.", StringComparison.Ordinal) ? 0 : first0(test) ? 1 : test.Contains(stem, StringComparison.Ordinal) ? 2 : test.Contains($".{point.Folder}.", StringComparison.Ordinal) ? 3 : 4)
            .ThenBy(test => tookS[test]);

        bool first0(string test) => once.TryGetValue(number, out var firsts) && firsts.Contains(test);
    }

    private void Note(string[] words, Action<string> say)
    {
        if (words[2] is not ("well" or "TimeoutException"))
        {
            Other++;
            say($"left out: {words[1]}: {words[2]}");
            return;
        }

        tookS[words[1]] = words[2] == "well" ? double.Parse(words[3], CultureInfo.InvariantCulture) : double.PositiveInfinity;
        Note(passed, words[4], words[1]);
        Note(once, words[5], words[1]);
    }

    private static void Note(Dictionary<int, List<string>> where, string numbers, string test)
    {
        foreach (string number in numbers.Split(',', StringSplitOptions.RemoveEmptyEntries))
        {
            int key = int.Parse(number, CultureInfo.InvariantCulture);
            (where.TryGetValue(key, out var tests) ? tests : where[key] = []).Add(test);
        }
    }
}
