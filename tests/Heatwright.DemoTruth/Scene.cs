using System.Text.Json.Nodes;

namespace Heatwright.DemoTruth;

/// <summary>The work that a scene's tool truly does: ready at a target, then pieces at regular times that take heat above a temperature.</summary>
/// <param name="Gain">Duty per kelvin missing, of the controller that the maker tuned by hand.</param>
/// <param name="Sum">Duty per kelvin missing and tenth of a second.</param>
/// <param name="AimAboveK">How far above the target that controller holds.</param>
internal sealed record Job(double TargetC, double AboveC, double EveryS, double ForS, double FirstAfterS, int Asked, double Gain, double Sum, double AimAboveK = 2);

/// <summary>One invented bag of parts with its job: what is true, what the maker wrote down, what was read and how it may be wired.</summary>
internal abstract class Scene
{
    /// <summary>The folder under samples; also how the scene is asked for.</summary>
    public abstract string Folder { get; }

    public abstract string Name { get; }

    public abstract string Note { get; }

    public abstract double Seed { get; }

    public abstract IReadOnlyList<(string Name, double Value, string What)> Invented { get; }

    public abstract IReadOnlyList<DemoPart> Parts { get; }

    public abstract IReadOnlyList<Wiring> Wirings { get; }

    public abstract Job Job { get; }

    public abstract JsonObject Brief(Names names, Hidden hidden);

    public abstract IReadOnlyList<DemoTrial> Trials(Hidden hidden, Bench bench);

    /// <summary>Those that are kept as samples.</summary>
    public static IReadOnlyList<Scene> All { get; } = [new RopeKnife(), new FoamBow(), new WaxPen(), new InspectionLamp(), .. Scenarios.All.Where(scene => scene.Kept)];

    public static Scene Named(string folder) => All.Concat(Scenarios.All).FirstOrDefault(scene => scene.Folder == folder)
        ?? throw new ArgumentException($"There is no scene '{folder}'; there are {string.Join(", ", All.Select(scene => scene.Folder))}.", nameof(folder));
}
