using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.Safety;

/// <summary>Something that must be bought or built in before an arrangement may be called good.</summary>
/// <param name="Words">What, in a maker's words.</param>
/// <param name="Because">Why.</param>
public sealed record Condition(string Words, string Because);

/// <summary>What an arrangement needs for safety that the shelf does not give it, and what a stuck switch would do.</summary>
/// <param name="Conditions">Missing pieces.</param>
/// <param name="Cautions">What to mind all the same.</param>
/// <param name="StuckOnC">Highest temperature of the working end with the switch stuck on and a full pack, °C; NaN where it cannot be predicted.</param>
public sealed record SafetyFindings(IReadOnlyList<Condition> Conditions, IReadOnlyList<string> Cautions, double StuckOnC)
{
    /// <summary>The same with more that is missing; what is missing for two reasons is named once, with both.</summary>
    /// <param name="more">What else is missing.</param>
    public SafetyFindings With(IReadOnlyList<Condition> more) => more.Count == 0 ? this : this with
    {
        Conditions = [.. Conditions.Concat(more).GroupBy(condition => condition.Words).Select(same => new Condition(same.Key, string.Join("; ", same.Select(condition => condition.Because).Distinct())))],
    };
}

/// <summary>Looks for what can hurt: series cells without supervision, a charger that does not suit, a heater driven beyond its label.</summary>
public static class SafetyCheck
{
    /// <summary>Findings of an arrangement; the builder may be absent where the plant cannot be built.</summary>
    public static SafetyFindings Of(Arrangement arrangement, Shelf shelf, PlantBuilder? builder)
    {
        List<Condition> conditions = [];
        List<string> cautions = [];
        var cell = shelf[arrangement.Cell];
        string chemistry = cell.Word("chemistry", "lithium");
        string count = Count(arrangement.Series);
        bool supervised = arrangement.Supervision is { } supervision && Suits(shelf[supervision], arrangement.Series, chemistry);
        bool charged = ChargerSuits(arrangement, shelf);
        if (arrangement.Series >= 2 && (!supervised || !charged))
        {
            string what = (supervised, charged) switch
            {
                (false, false) => $"per-cell supervision and a charger made for {count} {chemistry} cells in series",
                (false, true) => $"per-cell supervision for {count} {chemistry} cells in series",
                _ => $"a charger made for {count} {chemistry} cells in series",
            };
            conditions.Add(new(what, Because("without it the weakest cell of the string is over-discharged and over-charged",
                supervised ? null : Lying(PartKind.Supervision, arrangement.Supervision), charged ? null : Lying(PartKind.Charger, arrangement.Charger))));
        }
        else if (!charged)
        {
            conditions.Add(new($"a charger made for {count} {chemistry} cell{(arrangement.Series == 1 ? "" : "s in series")}", Lying(PartKind.Charger, arrangement.Charger) ?? "none on the shelf suits this pack"));
        }

        if (arrangement.Series == 1 && arrangement.Supervision is null)
        {
            conditions.Add(new("a protection board for the cell", Because("nothing stops a short or an over-discharge", Lying(PartKind.Supervision, null))));
        }

        double stuckC = builder is null || arrangement.Lamp is not null ? double.NaN : StuckOnC(builder, builder.Middle);
        if (arrangement.Lamp is not null)
        {
            cautions.Add("A bright lamp dazzles and can hurt eyes: never look into it, nor let anyone; its head gets hot. Lamp safety of the light itself is for its sheet and a competent person.");
        }
        else if (arrangement.CutOut is null && builder is not null)
        {
            if (arrangement.DutyCeiling < 0.9)
            {
                conditions.Add(new("a cut-out that works without the controller", string.Create(CultureInfo.InvariantCulture,
                    $"the heater runs above what it stands and only the firmware holds it back: with the switch stuck on it passes {Math.Round(stuckC / 10) * 10:0} °C")));
            }
            else
            {
                cautions.Add(string.Create(CultureInfo.InvariantCulture, $"With the switch stuck on and a full pack the working end goes to about {Math.Round(stuckC / 10) * 10:0} °C: fit a cut-out that works without the controller."));
            }
        }
        else if (builder is not null && arrangement.CutOut is { } cutOut && !SitsElsewhere(shelf[cutOut]) && OpensC(shelf, arrangement.CutOut) is { } opensC && opensC <= builder.TargetC)
        {
            conditions.Add(new($"a cut-out that opens above the {Display.Significant(builder.TargetC, 4)} °C of the work",
                $"'{shelf[cutOut].Name}' opens at {Display.Significant(opensC, 4)} °C: on the working end it opens in normal work; where it sits in the handle say so with --word place=handle, and mind that it then says nothing of how hot the end gets"));
        }

        cautions.Add("Lithium cells: fuse at the cell tab, no heat above 60 °C, never charge unattended, never below 0 °C or above 45 °C. Follow cell and charger sheets and local codes; have charging and product safety checked by a competent person.");
        if (cell.From == "salvaged")
        {
            cautions.Add($"'{cell.Name}' is salvaged: do not use it unmeasured, and watch it while it charges.");
        }

        return new(conditions, cautions, stuckC);

        // What lies there and suits is named: nobody looks for a second one then.
        string? Lying(PartKind kind, PartId? wired) => shelf.Parts.FirstOrDefault(part => part.Kind == kind && part.Id != wired && part.From != "destroyed" && Suits(part, arrangement.Series, chemistry)) is { } there
            ? $"'{there.Name}' on the shelf is made for it, and is not wired" : null;

        static string Because(params string?[] reasons) => string.Join("; ", reasons.OfType<string>());
    }

    /// <summary>The same with what single faults ask for: many runs, so it is left to those who judge, and not done while a slider is moved.</summary>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="shelf">Parts and findings.</param>
    /// <param name="builder">Its plant; null: it cannot be built.</param>
    /// <param name="mostA">Highest current out of the pack at work, A; not a number where it is not known.</param>
    /// <param name="cancel">Stops it between two steps.</param>
    public static SafetyFindings WithFaults(Arrangement arrangement, Shelf shelf, PlantBuilder? builder, double mostA, CancellationToken cancel = default)
    {
        var quick = Of(arrangement, shelf, builder);
        return builder is null ? quick
            : quick.With([.. SingleFaults.Missing(new FaultAsk(builder, arrangement, shelf), cancel), .. Overloads.Of(arrangement, shelf, builder.Middle[builder.Place(PlantKey.Capacity)], mostA)]);
    }

    /// <summary>True where the arrangement has a charger made for its pack.</summary>
    public static bool ChargerSuits(Arrangement arrangement, Shelf shelf) =>
        arrangement.Charger is { } charger && Suits(shelf[charger], arrangement.Series, shelf[arrangement.Cell].Word("chemistry", "lithium"));

    private static bool Suits(Part part, int series, string chemistry) =>
        part.Word("cells", "1") == series.ToString(CultureInfo.InvariantCulture)
        && (part.Word("chemistry").Length == 0 || string.Equals(part.Word("chemistry"), chemistry, StringComparison.OrdinalIgnoreCase));

    /// <summary>The run with the switch stuck on from a full pack and no work; for one set of SI values of the plant.</summary>
    public static PlantRun StuckOn(PlantBuilder builder, double[] si, CancellationToken cancel = default) =>
        PlantRunner.Run(builder.Build(si).Stuck(), new RunSettings { StepS = 0.5, Cancel = cancel });

    /// <summary>How hot the working end gets with the switch stuck on, K: where a cut-out of stated temperature opens, no hotter.</summary>
    /// <param name="stuckOnC">How hot it would get without it, °C.</param>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="shelf">Its parts.</param>
    /// <param name="workC">Temperature of the work, °C: a cut-out that opens below it cannot be the one that holds the end.</param>
    /// <param name="draw">A draw of what is in doubt; null: its middle.</param>
    public static double HeldK(double stuckOnC, Arrangement arrangement, Shelf shelf, double workC, Draw? draw = null) =>
        arrangement.CutOut is { } cutOut && shelf.Value(cutOut, PartQuantities.OpeningTemperature) is { } opens && !SitsElsewhere(shelf[cutOut]) && !(opens.Si <= workC + 273.15) ? Math.Min(stuckOnC + 273.15, draw is { } drawn ? opens.DrawnSi(drawn) : opens.Si) : stuckOnC + 273.15;

    /// <summary>Highest temperature of the working end in that run, °C.</summary>
    public static double StuckOnC(PlantBuilder builder, double[] si) => StuckOn(builder, si).HighestK[0] - 273.15;

    /// <summary>True of a cut-out that was said to sit in the handle, away from the working end.</summary>
    internal static bool SitsElsewhere(Part cutOut) => cutOut.Word("place").Contains("handle", StringComparison.OrdinalIgnoreCase);

    /// <summary>Temperature at which a part opens by itself, °C; null: there is none, or it is not stated.</summary>
    internal static double? OpensC(Shelf shelf, PartId? part) => part is { } there && shelf.Value(there, PartQuantities.OpeningTemperature) is { } opens ? Units.Celsius.FromSi(opens.Si) : null;

    private static string Count(int n) => n switch { 1 => "one", 2 => "two", 3 => "three", 4 => "four", _ => n.ToString(CultureInfo.InvariantCulture) };
}
