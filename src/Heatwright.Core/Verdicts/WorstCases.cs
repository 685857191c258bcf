using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.Verdicts;

/// <summary>One thing at its worst, all else in the middle.</summary>
/// <param name="Name">Which.</param>
/// <param name="Changed">What differs from the middle run, with its numbers; empty: nothing.</param>
/// <param name="Outcome">What the tool does then.</param>
/// <param name="Lines">How it stands to the lines of the brief that a run tells.</param>
public sealed record WorstCase(string Name, string Changed, Outcome Outcome, IReadOnlyList<MiddleLine> Lines)
{
    /// <summary>Lines of the brief that it does not keep.</summary>
    public IEnumerable<MiddleLine> Missed => Lines.Where(line => line.Kept == false);
}

/// <summary>What a bad day does to a tool: cold, one weak cell, a low sample of each part, the switch stuck on. The first is the middle run itself, to compare with.</summary>
/// <remarks>A low sample has every number of one part at that end of what is believed of it (1.9 standard doubts) at which the line of the brief that stands worst is kept worse.</remarks>
public static class WorstCases
{
    /// <summary>A cold day has freezing air, or air by so much colder than the brief's where that is lower still. Our choice.</summary>
    private const double ColdC = 0, ColdByK = 20;

    /// <summary>So many of a part's numbers are named, those that matter most.</summary>
    private const int MostNamed = 3;

    /// <summary>The line that stands worst tells which end is worse; where it does not move, the others do.</summary>
    private const double OthersCount = 0.01;

    /// <summary>A part whose numbers together move the standing by less is not named alone.</summary>
    private const double LittleMoves = 0.02;

    /// <summary>What 'never' costs beside a margin, which counts for one at most.</summary>
    private const double Never = -10;

    /// <summary>All cases.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="shelf">Parts and findings.</param>
    /// <param name="prediction">The arrangement's prediction.</param>
    /// <param name="sensitivity">What each number does at its ends.</param>
    /// <param name="cancel">Cancels between two steps.</param>
    public static IReadOnlyList<WorstCase> Of(Brief brief, Shelf shelf, Prediction prediction, Sensitivity sensitivity, CancellationToken cancel = default)
    {
        var (arrangement, builder, middle) = (prediction.Arrangement, prediction.Builder, prediction.MiddleOutcome);
        IReadOnlyList<MiddleLine> Lines(Outcome outcome) => MiddleLines.ByRun(brief, arrangement, outcome);
        double coldC = Math.Min(ColdC, brief.AirC - ColdByK);
        var samples = Samples(brief, shelf, prediction, sensitivity).ToArray();
        var low = Predict.Many(builder, [.. samples.Select(sample => sample.Si)], cancel);
        List<WorstCase> cases =
        [
            Case("as in the middle", "", middle),
            Case("cold day", $"air and all parts at {Display.Significant(Math.Round(coldC), 3)} °C when it is switched on", Predict.Once(builder.InAir(coldC), builder.Middle)),
        ];
        cases.AddRange(Weak(builder, arrangement, cancel).Select(weak => Case(weak.Name, weak.Changed, weak.Outcome)));
        cases.AddRange(samples.Select((sample, i) => Case(sample.Name, sample.Changed, low[i])));
        if (arrangement.Lamp is null)
        {
            var stuck = Outcome.Of(SafetyCheck.StuckOn(builder, builder.Middle, cancel));
            cases.Add(new(SingleFaults.StuckOn, arrangement.CutOut is null ? "full pack, no work, nothing turns it off" : "full pack, no work, and the cut-out does not open either", stuck,
            [
                .. Lines(stuck).Where(line => line.Requirement.AtMost && line.Requirement.Unit is "°C" or "A"),
                .. brief.Requirements.Where(line => line.Quantity == RequirementQuantity.StuckSwitchTemperature).Select(line => MiddleLines.By(line, stuck.HottestC + 273.15)),
            ]));
        }

        return cases;

        WorstCase Case(string name, string changed, Outcome outcome) => new(name, changed, outcome, Lines(outcome));
    }

    /// <summary>A cell that holds less, has more ohms and fewer volts: as one of its string where there is one, and as all.</summary>
    private static IEnumerable<(string Name, string Changed, Outcome Outcome)> Weak(PlantBuilder builder, Arrangement arrangement, CancellationToken cancel)
    {
        double[] si = builder.Middle;
        List<string> named = [];
        foreach (var (key, up) in ((PlantKey, bool)[])[(PlantKey.Capacity, false), (PlantKey.CellOhms, true), (PlantKey.OpenVolts, false)])
        {
            var input = builder.Inputs[builder.Place(key)];
            si[builder.Place(key)] += (up ? 1 : -1) * Sensitivity.Ends * input.Value.SiDoubt;
            named.Add($"{input.Called} {Sentences.Input(input, si[builder.Place(key)])}");
        }

        string changed = string.Join(", ", named);
        if (arrangement.Series > 1)
        {
            bool watched = arrangement.Supervision is not null;
            var tool = WithOneWeak(builder, builder.Build(si).Pack!.Cell, watched);
            string beside = watched ? "" : "; nothing watches it, and it is driven below its cut-off";
            yield return ("one weak cell in the string", $"{changed}{beside}", Outcome.Of(PlantRunner.Run(tool, new RunSettings { StepS = builder.StepS, Cancel = cancel })));
        }

        yield return (arrangement.Series * arrangement.Parallel > 1 ? "all cells weak" : "weak cell", changed, Predict.Once(builder, si));
    }

    /// <summary>Each part but the cells with its doubtful numbers at their worse ends; those that matter little together.</summary>
    private static IEnumerable<(string Name, string Changed, double[] Si)> Samples(Brief brief, Shelf shelf, Prediction prediction, Sensitivity sensitivity)
    {
        var (builder, arrangement) = (prediction.Builder, prediction.Arrangement);
        double before = Standing(prediction.MiddleOutcome);
        var parts = sensitivity.Rows.Where(row => builder.Inputs[row.Place].Part != arrangement.Cell).GroupBy(row => builder.Inputs[row.Place].Part, Worse)
            .Select(part => (Part: part.Key, Ends: part.Where(end => part.Key is null || end.At < before).OrderBy(end => end.At).ToArray())).Where(part => part.Ends.Length > 0).ToArray();
        foreach (var part in parts.Where(part => part.Part is null || Matters(part.Ends)))
        {
            yield return (part.Part is { } id ? $"low sample, {shelf[id].Name}" : "hardest work", Named(part.Ends), Moved(part.Ends));
        }

        var rest = parts.Where(part => part.Part is not null && !Matters(part.Ends)).ToArray();
        if (rest.Length > 0)
        {
            yield return ("low samples of what matters little", string.Join(", ", rest.Select(part => shelf[part.Part!.Value].Name)), Moved([.. rest.SelectMany(part => part.Ends)]));
        }

        (int Place, double Si, double At) Worse(Sensitivity.End row)
        {
            double low = Standing(row.Low), high = Standing(row.High);
            // Of the work the harder end is meant, also where the easier one leaves a warmer grip: the one that empties the cells sooner.
            return (builder.Inputs[row.Place].Part is null ? row.Low.RunTimeS < row.High.RunTimeS : low < high) ? (row.Place, row.LowSi, low) : (row.Place, row.HighSi, high);
        }

        bool Matters((int Place, double Si, double At)[] ends) => ends.Sum(end => before - end.At) > LittleMoves;

        string Named((int Place, double Si, double At)[] ends)
        {
            string most = string.Join(", ", ends.Take(MostNamed).Select(end => $"{builder.Inputs[end.Place].Called} {Sentences.Input(builder.Inputs[end.Place], end.Si)}"));
            return ends.Length > MostNamed ? FormattableString.Invariant($"{most}, and {ends.Length - MostNamed} more") : most;
        }

        double[] Moved((int Place, double Si, double At)[] ends)
        {
            double[] si = builder.Middle;
            foreach (var end in ends)
            {
                si[end.Place] = end.Si;
            }

            return si;
        }

        double Standing(Outcome outcome)
        {
            double[] margins = [.. MiddleLines.ByRun(brief, arrangement, outcome).Select(Margin)];
            return margins.Length == 0 ? outcome.RunTimeS / Math.Max(1, prediction.Middle.RunTimeS) : margins.Min() + (OthersCount * margins.Average());
        }
    }

    /// <summary>How far inside its limit a line stands, as a share of the limit; a wide margin counts for one, never for −10.</summary>
    private static double Margin(MiddleLine line)
    {
        if (line.Value is not { } value)
        {
            return line.Kept == true ? 0 : Never;
        }

        double inside = (line.Requirement.AtMost ? line.Requirement.Limit - value : value - line.Requirement.Limit) / Math.Max(1e-9, Math.Abs(line.Requirement.Limit));
        return Math.Clamp(inside, Never, 1);
    }

    private static AssembledTool WithOneWeak(PlantBuilder builder, CellModel weak, bool watched)
    {
        var tool = builder.Build(builder.Middle);
        var pack = tool.Pack!;
        CellGroup Group(bool first) => new([.. Enumerable.Range(0, pack.Parallel).Select(i => first && i == 0 ? weak : pack.Cell)]);
        return tool with { Pack = pack with { Groups = [.. Enumerable.Range(0, pack.Series).Select(i => Group(i == 0))], CellCutoffV = watched ? tool.CutoffV / pack.Series : 0 } };
    }
}
