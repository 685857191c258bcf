using Heatwright.Parts;
using Heatwright.Trials;

namespace Heatwright.Jobs;

/// <summary>What a place of a new arrangement takes where nobody chooses: the only part of its kind, or the only one of them that was measured, or else its class.</summary>
public static class NotChosen
{
    /// <summary>The one part of its kind that still is, or of several the one on which somebody measured something; null: there is no such one.</summary>
    public static Part? Only(Place place, IEnumerable<Part> shelf, IReadOnlyList<Trial> trials)
    {
        var usable = Usable(place, shelf);
        return (usable.Length == 1 ? usable : [.. usable.Where(part => part.Stated.Any(value => value.Origin == "measured") || trials.Any(trial => trial.Part == part.Id && trial.Runs.Any(run => run.Readings.Count > 0)))]) is [var one] ? one : null;
    }

    /// <summary>Parts of its kind that still are.</summary>
    public static Part[] Usable(Place place, IEnumerable<Part> shelf) => [.. shelf.Where(part => part.Kind == place.Kind && part.From != "destroyed")];

    /// <summary>The same in words, to stand where nothing is chosen yet.</summary>
    public static string Words(Place place, IReadOnlyList<Part> shelf, IReadOnlyList<Trial> trials)
    {
        bool heaters = shelf.Any(part => part.Kind == PartKind.Heater && part.From != "destroyed"), lamps = shelf.Any(part => part.Kind == PartKind.Lamp && part.From != "destroyed");
        bool isLoad = place.Kind is PartKind.Heater or PartKind.Lamp;
        if (isLoad ? place.Kind == PartKind.Lamp && (heaters || !lamps) : place.Class == "")
        {
            return Places.None;
        }

        if (isLoad && heaters && lamps)
        {
            return "choose, or a lamp below";
        }

        string taken = Only(place, shelf, trials) is { } only ? $"{only.Name}, assumed" : place.Class is { Length: > 0 } usual ? $"{usual}, assumed" : "choose";
        return place.HotOnly && !isLoad && lamps ? taken + "; none with a lamp" : taken;
    }
}
