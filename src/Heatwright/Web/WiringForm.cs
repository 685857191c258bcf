using Heatwright.Arrangements;
using Heatwright.Jobs;
using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>The form that wires an arrangement, or clones one with something changed.</summary>
/// <param name="From">Letter of the one that is cloned; empty: a new one.</param>
public sealed record WiringForm(string From)
{
    /// <summary>Place and chosen part; empty: not chosen.</summary>
    public IReadOnlyDictionary<string, string> Chosen { get; init; } = new Dictionary<string, string>();

    /// <summary>Cells in series and side by side.</summary>
    public string Pack { get; init; } = "";

    /// <summary>Touches in the loop.</summary>
    public string Touches { get; init; } = "";

    /// <summary>Largest duty.</summary>
    public string Duty { get; init; } = "";

    /// <summary>What the maker calls it.</summary>
    public string Name { get; init; } = "";

    /// <summary>What stands in its way.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>The form as it was sent.</summary>
    public static WiringForm Of(IFormCollection form, string from = "") => new(from)
    {
        Chosen = Places.All.ToDictionary(place => place.Name, place => form.Field(place.Name), StringComparer.Ordinal),
        Pack = form.Field("pack"),
        Touches = form.Field("touches"),
        Duty = form.Field("duty"),
        Name = form.Field("called"),
    };

    /// <summary>What was chosen, as the job takes it; in a clone only what was changed.</summary>
    public WiringEntry Entry(Arrangement? old) => new()
    {
        Chosen = Chosen.Where(pair => pair.Value.Length > 0 && (old is null || !string.Equals(pair.Value, Was(old, pair.Key), StringComparison.OrdinalIgnoreCase))).ToDictionary(StringComparer.Ordinal),
        Pack = Said(Pack),
        Touches = Said(Touches),
        Duty = Said(Duty),
        Name = Said(Name),
    };

    /// <summary>What stands in a place of an arrangement, as the form says it.</summary>
    public static string Was(Arrangement old, string place) => Places.All.First(one => one.Name == place).Of(old)?.Name ?? Places.None;

    private static string? Said(string typed) => typed.Length > 0 ? typed : null;
}
