using System.Text.Json;
using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>One kind of reading that a bench test takes.</summary>
/// <param name="Name">Name of the column, in trade words.</param>
/// <param name="Unit">Unit of a bare number; 'word' for words.</param>
/// <param name="Meaning">What is read.</param>
public sealed record TrialColumn(string Name, string Unit, string Meaning)
{
    /// <summary>Without it there is no finding.</summary>
    public bool Needed { get; init; }

    /// <summary>Not needed in every line, but a run has it unless the maker says otherwise.</summary>
    public bool Asked { get; init; }

    /// <summary>What a usual meter promises, where nothing else is said; common practice, no source.</summary>
    public string Usual { get; init; } = "";

    /// <summary>Finest step a usual display shows, in the unit; 0 where none is assumed.</summary>
    public double Step { get; init; }

    /// <summary>Standard doubt of a reading by itself, in the unit: a hand on a stopwatch.</summary>
    public double Own { get; init; }

    /// <summary>Below this it cannot be, in the unit.</summary>
    public double? Low { get; init; }

    /// <summary>Above this it cannot be, in the unit.</summary>
    public double? High { get; init; }

    /// <summary>Other names that loggers give it.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    /// <summary>The words it takes; empty for numbers and free words.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>True for words.</summary>
    public bool IsWord => Unit == "word";
}

/// <summary>A number that holds for a whole run.</summary>
/// <param name="Name">Name to type.</param>
/// <param name="Unit">Unit of a bare number.</param>
/// <param name="Meaning">What it is.</param>
public sealed record TrialSetting(string Name, string Unit, string Meaning)
{
    /// <summary>Taken where nothing is said, in the unit; null: nothing is taken.</summary>
    public double? Default { get; init; }

    /// <summary>Standard doubt of the default, in the unit.</summary>
    public double Doubt { get; init; }

    /// <summary>Column whose meter it is read on: its offset is shared.</summary>
    public string With { get; init; } = "";

    /// <summary>Without it there is no finding.</summary>
    public bool Needed { get; init; }
}

/// <summary>A value to expect from what the seller claims.</summary>
/// <param name="Say">What it is.</param>
/// <param name="Of">Formula over settings and claim.</param>
/// <param name="Unit">Its unit.</param>
public sealed record TrialExpectation(string Say, string Of, string Unit);

/// <summary>How a bench test is done.</summary>
/// <param name="Picture">The connections, drawn in characters.</param>
/// <param name="OneMeter">Steps with one meter.</param>
/// <param name="TwoMeters">Steps with two meters.</param>
/// <param name="Ranges">Which range of the meter for what.</param>
/// <param name="Loads">What will do as a load.</param>
/// <param name="Stops">When to stop at once.</param>
/// <param name="Rests">What must rest or cool, and how long.</param>
/// <param name="Expect">Values to expect from the claim.</param>
public sealed record TrialRecipe(
    IReadOnlyList<string> Picture, IReadOnlyList<string> OneMeter, IReadOnlyList<string> TwoMeters, IReadOnlyList<string> Ranges,
    IReadOnlyList<string> Loads, IReadOnlyList<string> Stops, IReadOnlyList<string> Rests, IReadOnlyList<TrialExpectation> Expect);

/// <summary>A kind of bench test: what it is for, how it is done, what is read, what is found.</summary>
/// <param name="Name">Name to type.</param>
/// <param name="About">What it is done on.</param>
/// <param name="Purpose">What it tells, in one line.</param>
/// <param name="Columns">What is read.</param>
/// <param name="Settings">What holds for the whole run.</param>
/// <param name="Recipe">How it is done.</param>
/// <param name="Finds">Names of the findings.</param>
/// <param name="Fewest">Fewest readings that give a finding.</param>
public sealed record TrialCard(
    string Name, string About, string Purpose, IReadOnlyList<TrialColumn> Columns, IReadOnlyList<TrialSetting> Settings, TrialRecipe Recipe,
    IReadOnlyList<string> Finds, int Fewest)
{
    private const string Folder = "data/trials/";

    private static readonly JsonSerializerOptions Reading = new(JsonSerializerDefaults.Web) { UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow };

    /// <summary>All kinds, in the order in which a maker meets them.</summary>
    public static IReadOnlyList<TrialCard> All { get; } = Load();

    /// <summary>The kind of this name, or null.</summary>
    public static TrialCard? Find(string name) => All.FirstOrDefault(card => string.Equals(card.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)) ?? OwnTrial.Find(name)?.Card;

    /// <summary>The card that tells how a trial is done; null: its card is not known.</summary>
    /// <param name="trial">A trial of any kind.</param>
    public static TrialCard? Of(Trial trial) => Of(trial.Kind, trial.Card);

    /// <summary>The same before there is a trial.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="card">Name of the card of a <see cref="TrialKind.Bench"/> trial; null for the other kinds.</param>
    public static TrialCard? Of(TrialKind kind, string? card) => Find(kind switch
    {
        TrialKind.Discharge => "capacity",
        TrialKind.Pulse => "pulse",
        TrialKind.ColdOhms => "cold-ohms",
        TrialKind.HotOhms => "volts-amps",
        TrialKind.WarmUp => "warm-up",
        TrialKind.ModulePoints => "converter-points",
        TrialKind.TwoPointDrop => "two-point-drop",
        _ => card ?? "",
    });

    /// <summary>The column of this name, or null.</summary>
    public TrialColumn? Column(string name) => Columns.FirstOrDefault(column => column.Name == name);

    private static List<TrialCard> Load() =>
    [
        .. Embedded.NamesIn(Folder).Where(name => !name.EndsWith("rules.json", StringComparison.Ordinal))
            .SelectMany(name => JsonSerializer.Deserialize<List<TrialCard>>(Embedded.Text(name), Reading)!.Select((card, i) => (name, i, card)))
            .OrderBy(entry => entry.name, StringComparer.Ordinal).ThenBy(entry => entry.i).Select(entry => Sound(entry.card)),
    ];

    private static TrialCard Sound(TrialCard card)
    {
        foreach (string unit in card.Columns.Select(column => column.Unit).Concat(card.Settings.Select(setting => setting.Unit)))
        {
            _ = unit == "word" || Units.Find(unit) is not null ? unit : throw new FormatException($"Kind '{card.Name}' has the unknown unit '{unit}'.");
        }

        return card.Column("time") is { IsWord: false } ? card with { Settings = [.. card.Settings, Film()] } : card;
    }

    /// <summary>Whatever takes times may be typed off a film of the meters.</summary>
    private static TrialSetting Film() => new(FilmTimes.FrameRate, "Hz", "frames a second of the film that the times are typed off, as mm:ss:ff; none: they are a watch's");
}
