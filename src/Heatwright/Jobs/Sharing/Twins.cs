using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Sharing;

/// <summary>Empty twins of parts and runs: whoever is sent a study takes the same readings on parts of their own.</summary>
public static class Twins
{
    private const string Mine = "mine-";
    private const int LongestId = 80;

    /// <summary>True: a twin into which nothing was read and of which nothing was measured yet. It takes no part in fits and searches.</summary>
    public static bool IsWaiting(Study study, Part part) => part.TwinOf is not null && part.Stated.All(stated => stated.Origin != "measured")
        && study.Trials.Where(trial => trial.Part == part.Id).SelectMany(trial => trial.Runs).All(run => run.Readings.Count == 0);

    /// <summary>The study with a twin for every part that was tried: the same claims, no measured value, and every run once more with its columns and settings and without readings.</summary>
    public static Study With(Study study)
    {
        var bare = Without(study);
        HashSet<string> partIds = new(bare.Parts.Select(part => part.Id.Name), StringComparer.OrdinalIgnoreCase);
        HashSet<string> trialIds = new(bare.Trials.Select(trial => trial.Id.Name), StringComparer.OrdinalIgnoreCase);
        HashSet<string> runIds = new(bare.Trials.SelectMany(trial => trial.Runs).Select(run => run.Id.Name), StringComparer.OrdinalIgnoreCase);
        List<Part> parts = [.. bare.Parts];
        List<Trial> trials = [.. bare.Trials];
        foreach (var part in bare.Parts)
        {
            var own = bare.Trials.Where(trial => trial.Part == part.Id).Select(trial => trial with { Runs = [.. trial.Runs.Where(Stands)] }).Where(trial => trial.Runs.Count > 0).ToArray();
            if (own.Length == 0)
            {
                continue;
            }

            PartId id = new(Free(part.Id.Name, partIds));
            parts.Add(part with
            {
                Id = id,
                Name = $"my {part.Name}",
                Stated = [.. part.Stated.Where(stated => stated.Origin != "measured" && stated.Sample is null)],
                Count = 1,
                Note = "",
                Samples = null,
                Photo = null,
                Whence = null,
                TwinOf = part.Id,
            });
            trials.AddRange(own.Select(trial => trial with
            {
                Id = new(Free(trial.Id.Name, trialIds)),
                Part = id,
                Runs = [.. trial.Runs.Select(run => run with { Id = new(Free(run.Id.Name, runIds)), Columns = [.. run.Columns.Select(column => column with { Instrument = "" })], Readings = [], Settings = Kept(run.Settings), SettingsPlusMinus = Kept(run.SettingsPlusMinus) })],
            }));
        }

        return bare with { Parts = parts, Trials = trials };
    }

    /// <summary>A run that its maker struck out whole was a mistake: nobody is asked for it again.</summary>
    private static bool Stands(Run run) => run.Readings.Count == 0 || run.Readings.Any(reading => reading.StruckBecause is null);

    /// <summary>Without twins that still wait; twins that were read into stay, as parts like any other.</summary>
    private static Study Without(Study study)
    {
        var waiting = study.Parts.Where(part => IsWaiting(study, part) && study.Arrangements.All(one => !one.Parts().Contains(part.Id))).Select(part => part.Id).ToHashSet();
        var trials = study.Trials.Where(trial => !waiting.Contains(trial.Part)).ToArray();
        return study with
        {
            Parts = [.. study.Parts.Where(part => !waiting.Contains(part.Id)).Select(part => part with { TwinOf = null })],
            Trials = trials,
            Files = [.. study.Files.Where(file => file.About switch
            {
                KeptAbout.Part => !waiting.Contains(new(file.Subject)),
                KeptAbout.Trial => trials.Any(trial => trial.Id.Name == file.Subject),
                KeptAbout.Run => trials.Any(trial => trial.Runs.Any(run => run.Id.Name == file.Subject)),
                _ => true,
            })],
        };
    }

    /// <summary>Which piece of the purchase it was is of the other maker's bag; all else says how the run is done.</summary>
    private static Dictionary<string, double> Kept(IReadOnlyDictionary<string, double> settings) => settings.Where(pair => pair.Key != "sample").ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);

    private static string Free(string name, HashSet<string> taken)
    {
        string wanted = Mine + (name.Length > LongestId - 12 ? name[..(LongestId - 12)].TrimEnd(' ', '.') : name);
        string id = wanted;
        for (int i = 2; !taken.Add(id); i++)
        {
            id = $"{wanted}-{i.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
        }

        return id;
    }
}
