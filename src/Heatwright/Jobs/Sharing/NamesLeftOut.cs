using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Jobs.Trials;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Sharing;

/// <summary>A study in which parts, meters, trials, runs and files bear numbers in place of names.</summary>
internal static class NamesLeftOut
{
    public static Study Of(Study study)
    {
        var parts = Numbered(study.Parts, part => EnterPart.Typed(part.Kind), part => part.Id.Name);
        var meters = Numbered(study.Instruments, _ => "meter", meter => meter.Id);
        var trials = Numbered(study.Trials, trial => $"{parts[trial.Part.Name]}-{TrialKinds.Of(trial)}", trial => trial.Id.Name);
        var runs = Numbered(study.Trials.SelectMany(trial => trial.Runs.Select(run => (Trial: trial, Run: run))), pair => $"{trials[pair.Trial.Id.Name]}-run", pair => pair.Run.Id.Name);
        var files = Numbered(study.Files, _ => "file", file => file.Id).ToDictionary(pair => pair.Key, pair => pair.Value + Path.GetExtension(pair.Key), StringComparer.Ordinal);
        Part[] named = [.. study.Parts.Select(part => part with
        {
            Id = new(parts[part.Id.Name]),
            Name = parts[part.Id.Name].Replace('-', ' '),
            TwinOf = part.TwinOf is { } twin ? new PartId(parts[twin.Name]) : null,
            Whence = null,
            Photo = null,
            Stated = [.. part.Stated.Select(stated => stated.Origin is "sheet" or "measured" ? stated with { Text = stated.Origin == "sheet" ? "a data sheet" : "" } : stated)],
        })];
        return study with
        {
            Name = "shared study",
            Instruments = [.. study.Instruments.Select(meter => meter with { Id = meters[meter.Id], Name = meters[meter.Id].Replace('-', ' ') })],
            Parts = named,
            Trials = [.. study.Trials.Select(trial => trial with
            {
                Id = new(trials[trial.Id.Name]),
                Part = new(parts[trial.Part.Name]),
                Purpose = "",
                Runs = [.. trial.Runs.Select(run => run with { Id = new(runs[run.Id.Name]), Columns = [.. run.Columns.Select(column => column with { Instrument = meters.GetValueOrDefault(column.Instrument) ?? "" })] })],
            })],
            Arrangements = [.. study.Arrangements.Select(one => Wired(one, parts, named))],
            Decisions = [],
            PrototypeReadings = [],
            Plants = [.. study.Plants.Select(plant => plant with { Id = new($"stated-{plant.Letter}"), Name = $"stated tool {plant.Letter}" })],
            Tools = [.. study.Tools.Select(tool => tool with { Id = $"tool-{tool.Letter}", Name = $"tool {tool.Letter}", Readings = [.. tool.Readings.Select(reading => reading with { Text = "" })] })],
            LogWays = [],
            Files = [.. study.Files.Select(file => file with
            {
                Id = files[file.Id],
                Name = files[file.Id],
                Subject = file.About switch
                {
                    KeptAbout.Part => parts[file.Subject],
                    KeptAbout.Trial => trials[file.Subject],
                    KeptAbout.Run => runs[file.Subject],
                    KeptAbout.Arrangement => $"arrangement-{study.Arrangements.First(one => one.Id.Name == file.Subject).Letter}",
                    _ => "",
                },
            })],
        };
    }

    private static Arrangement Wired(Arrangement one, Dictionary<string, string> parts, Part[] named)
    {
        var renamed = Places.All.Aggregate(one, (at, place) => place.Of(at) is { } part ? place.With(at, new PartId(parts[part.Name])) : at);
        return renamed with { Id = new($"arrangement-{one.Letter}"), Name = WireTool.Named(renamed, named) };
    }

    /// <summary>Old name to word and number; what comes alone under its word has no number less.</summary>
    private static Dictionary<string, string> Numbered<T>(IEnumerable<T> things, Func<T, string> word, Func<T, string> id)
    {
        Dictionary<string, int> counts = new(StringComparer.Ordinal);
        Dictionary<string, string> names = new(StringComparer.Ordinal);
        foreach (var thing in things)
        {
            string plain = word(thing).Replace(' ', '-');
            counts[plain] = counts.GetValueOrDefault(plain) + 1;
            names[id(thing)] = $"{plain}-{counts[plain].ToString(CultureInfo.InvariantCulture)}";
        }

        return names;
    }
}
