using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs;

/// <summary>An arrangement with its loop and what does not go together.</summary>
/// <param name="Arrangement">Which.</param>
/// <param name="Look">Its loop at three moments.</param>
/// <param name="Pairs">Parts that do not go together.</param>
/// <param name="Shelf">Parts with their findings.</param>
public sealed record LoopView(Arrangement Arrangement, LoopLook Look, IReadOnlyList<PairFinding> Pairs, Shelf Shelf)
{
    /// <summary>The parts of a study with what their trials told.</summary>
    public static Shelf Bench(Study study) => new(study.Parts, RunStudy.Findings(study));

    /// <summary>The loop of an arrangement of a study.</summary>
    public static Checked<LoopView> Of(Study study, Arrangement arrangement, Shelf shelf)
    {
        var heater = shelf[arrangement.Load];
        if (arrangement.Lamp is { } lamp)
        {
            return new[] { PartQuantities.LoadCurrent, PartQuantities.LeastInputVolts }.FirstOrDefault(quantity => shelf.Value(lamp, quantity) is null) is { } lacking
                ? new(new Problem($"'{heater.Name}': its {lacking} is not known.", $"arrangement {arrangement.Letter}", "none", $"{lacking}, from a reading, a sheet or a label",
                    $"Measure its volts and amps and state them: heatwright part state FILE {lamp} --measured \"{lacking}=...\"."))
                : Looked(study, arrangement, shelf, 20);
        }

        if (shelf.Value(heater.Id, PartQuantities.Ohms) is null && (shelf.Value(heater.Id, PartQuantities.RatedVolts) is null || shelf.Value(heater.Id, PartQuantities.RatedPower) is null))
        {
            return new(new Problem($"'{heater.Name}': its ohms are not known.", $"arrangement {arrangement.Letter}", "none", "ohms, or label volts and label watts",
                $"Measure them cold and state them: heatwright part state FILE {heater.Id} --measured \"ohms=...\"."));
        }

        return Looked(study, arrangement, shelf, study.Brief?.Duty?.TargetC ?? 20);
    }

    private static Checked<LoopView> Looked(Study study, Arrangement arrangement, Shelf shelf, double hotC)
    {
        if (arrangement.StepUp is { } module && shelf.Value(module, PartQuantities.SetVolts) is null)
        {
            return new(PlantBuilder.SetVoltsAsked(shelf[module], $"arrangement {arrangement.Letter}"));
        }

        var look = LoopLook.Of(arrangement, shelf, hotC);
        return new(new LoopView(arrangement, look, PairCheck.Of(arrangement, shelf, look), shelf));
    }

    /// <summary>The loop of one arrangement of a study file.</summary>
    public static Checked<LoopView> Read(string path, string letter) => OpenStudy.Read(path).Then(opened => WireTool.Found(opened.Study, letter).Then(one => Of(opened.Study, one, Bench(opened.Study))));

    /// <summary>What limits it first, in a maker's sentence.</summary>
    public string First => new[] { Look.Full, Look.Empty }.FirstOrDefault(moment => moment.PackA is null) is { Region: { } region } none
        ? $"there is no steady point, {none.When}: {Words(region)}"
        : Look.Limits is [var first, ..]
        ? first.Share > 1
            ? $"{first.What} is passed: {Display.Rounded(first.Is)} of {Display.Rounded(first.Limit)}, {first.When}"
            : $"{first.What} is nearest: {Display.Rounded(first.Is)} of {Display.Rounded(first.Limit)}, {first.When}"
        : "no part states what it stands: nothing can be said of the limits";

    /// <summary>Where a module works, in a maker's words.</summary>
    public static string Words(PathRegion region) => region switch
    {
        PathRegion.Regulated => "the module holds its set volts",
        PathRegion.CurrentLimited => "the module is at its current limit",
        PathRegion.DutyLimited => "the module is at the end of its duty",
        PathRegion.SourceLimited => "the module asks more than cells and leads can pass",
        PathRegion.Hiccup => "the module's input falls to its lock-out, and it stops and starts",
        PathRegion.LockedOut => "the module's input is below its lock-out",
        _ => "the module only passes its input through",
    };

    /// <summary>The part in each place; null: empty.</summary>
    public IEnumerable<(Place Place, Part? Part, bool Assumed)> Wiring => Places.All.Select(place =>
        (place, place.Of(Arrangement) is { } id ? Shelf[id] : null, Arrangement.Assumed?.Contains(place.Name) == true));
}
