using System.Text.Json;

namespace Heatwright.Proofs.Mutants;

/// <summary>What an earlier run saw, so that one that was cut short, or one after new tests, need not begin anew.</summary>
/// <param name="folder">Where it is kept.</param>
internal sealed class MutantMemory(string folder)
{
    private readonly Dictionary<string, string> outcomes = new(StringComparer.Ordinal);

    private string CoverFile => Path.Combine(folder, "cover.tsv");

    /// <summary>What is kept of the last run.</summary>
    public static MutantMemory Read(string folder)
    {
        var memory = new MutantMemory(folder);
        if (File.Exists(Path.Combine(folder, "seen.json")))
        {
            foreach (var (key, outcome) in JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllText(Path.Combine(folder, "seen.json")))!)
            {
                memory.outcomes[key] = outcome;
            }
        }

        return memory;
    }

    /// <summary>How a change was noticed; null: it was not, or nobody knows.</summary>
    public string? Killed(string key) => outcomes.TryGetValue(key, out string? outcome) && outcome[0] is 'k' or 'h' or 'c' ? outcome : null;

    /// <summary>True where the compiler refused a change before.</summary>
    public bool Refused(string key) => outcomes.TryGetValue(key, out string? outcome) && outcome == "refused";

    /// <summary>What tests passed in an earlier run with the same changes; those that did not hold then are asked again.</summary>
    /// <param name="changes">What tells the same changes from others.</param>
    public string[] Cover(string changes) => File.Exists(CoverFile) && File.ReadLines(CoverFile).FirstOrDefault() == changes ? [.. File.ReadLines(CoverFile).Skip(1).Where(line => line.Split('\t')[2] is "well" or "TimeoutException")] : [];

    /// <summary>Keeps what tests passed.</summary>
    public void KeepCover(string changes, IEnumerable<string> lines) => File.WriteAllLines(CoverFile, lines.Prepend(changes));

    /// <summary>Keeps what was seen.</summary>
    public void Keep(string key, string outcome)
    {
        if (outcomes.TryGetValue(key, out string? before) && before == outcome)
        {
            return;
        }

        outcomes[key] = outcome;
        if (outcomes.Count % 10 == 0)
        {
            Write();
        }
    }

    /// <summary>Writes what is kept.</summary>
    public void Write() => File.WriteAllText(Path.Combine(folder, "seen.json"), JsonSerializer.Serialize(outcomes));
}
