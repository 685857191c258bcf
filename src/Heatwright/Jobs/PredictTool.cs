using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>Predicts one tool of a study over one charge: an arrangement of parts, or a plant of which every number is stated.</summary>
public static class PredictTool
{
    /// <summary>Longest step of the first try, s; it is halved until nothing moves.</summary>
    private const double FirstStepS = 0.5;

    /// <summary>Instants of a trace where none were asked for.</summary>
    private const int OwnInstants = 1000;

    /// <summary>The prediction, or why there is none.</summary>
    /// <param name="study">The study.</param>
    /// <param name="tool">Id or letter; null: the only or first one.</param>
    /// <param name="draws">Draws of all causes, for ranges; 0: none.</param>
    /// <param name="instants">Where the trace is wanted, rising; null: nowhere; empty: everywhere alike.</param>
    /// <param name="cancel">Stops it between two steps.</param>
    public static Checked<ToolPrediction> Run(Study study, string? tool, int draws, double[]? instants, CancellationToken cancel = default)
    {
        bool Named(ArrangementId id, string letter) => tool is null || string.Equals(id.Name, tool, StringComparison.OrdinalIgnoreCase) || string.Equals(letter, tool, StringComparison.OrdinalIgnoreCase);
        if (study.Arrangements.FirstOrDefault(one => Named(one.Id, one.Letter)) is { } arrangement)
        {
            return OfParts(study, arrangement, draws, instants, cancel);
        }

        if (study.Plants.FirstOrDefault(one => Named(one.Id, one.Letter)) is { } plant)
        {
            return draws > 0
                ? new(new Problem("A plant of which every number is stated has nothing to draw.", $"plant {plant.Letter}", $"{draws} draws", "0 draws", "Leave --draws out."))
                : Stated(plant, instants, cancel);
        }

        string[] have = [.. study.Arrangements.Select(one => one.Letter), .. study.Plants.Select(one => one.Letter)];
        return new(new Problem("The study has no such arrangement.", "--arrangement", tool ?? "none given", have.Length > 0 ? string.Join(", ", have) : "an arrangement or a plant in the study", "Name one of them."));
    }

    private static Checked<ToolPrediction> Stated(StatedPlant plant, double[]? instants, CancellationToken cancel)
    {
        var bare = StatedPlantBuild.Tool(plant);
        var settings = new RunSettings { StepS = FirstStepS, EveryEvent = true, Cancel = cancel };
        var first = HalvedRun.Of(bare, settings);
        double[] at = Chosen(instants, first.Run.RunTimeS);
        var run = at.Length == 0 ? first.Run : PlantRunner.Run(bare, settings with { StepS = first.StepS, Instants = at });
        return new(new ToolPrediction(plant.Letter, plant.Name, bare, run, [])
        {
            AskedPieces = plant.Work?.Count,
            StepS = first.StepS,
            StepDoubtS = first.ChangeS,
            Settled = first.Settled,
        });
    }

    private static Checked<ToolPrediction> OfParts(Study study, Arrangement arrangement, int draws, double[]? instants, CancellationToken cancel)
    {
        if (study.Brief is not { } brief)
        {
            return new(new Problem("A tool of parts needs a brief: without work and surroundings nothing can be predicted.", "brief", "absent", "a brief with its duty", "Write the brief."));
        }

        var used = arrangement.Parts().ToHashSet();
        used.UnionWith(study.Parts.Where(part => used.Contains(part.Id)).Select(part => part.Like?.Part).OfType<PartId>());
        PartFindings[] findings = [.. study.Parts.Where(part => used.Contains(part.Id)).AsParallel().AsOrdered().WithCancellation(cancel).Select(part => RunStudy.Findings(study, part)).OfType<PartFindings>()];
        var shelf = new Shelf(study.Parts, findings);
        return PlantBuilder.For(arrangement, shelf, RunStudy.Plan(brief)).Map(builder =>
        {
            var bare = builder.Build(builder.Middle);
            var settings = new RunSettings { StepS = builder.StepS, EveryEvent = true, Cancel = cancel };
            var first = HalvedRun.Of(bare, settings);
            double[] at = Chosen(instants, first.Run.RunTimeS);
            var run = at.Length == 0 ? first.Run : PlantRunner.Run(bare, settings with { StepS = first.StepS, Instants = at });
            var drawn = draws > 0 ? Predict.Charge(builder, arrangement, study.Seed, draws, cancel: cancel).Draws : [];
            return new ToolPrediction(arrangement.Letter, arrangement.Name, bare, run, drawn)
            {
                Ladder = RunTimeLadder.Of(bare, run, Label(study, arrangement.Cell, PartQuantities.Capacity), Label(study, arrangement.Load, PartQuantities.RatedPower), Label(study, arrangement.Cell, PartQuantities.RatedVolts), cancel),
                WorstCases = WorstCases.Of(brief, shelf, new Prediction(arrangement, builder, run, [], []), new Sensitivity(builder, cancel), cancel),
                StepS = first.StepS,
                StepDoubtS = first.ChangeS,
                Settled = first.Settled,
            };
        });
    }

    /// <summary>What a label promises, SI; null: it says nothing of it.</summary>
    private static double? Label(Study study, PartId id, string quantity) => study.Parts.Where(part => part.Id == id)
        .SelectMany(part => part.Stated.Where(stated => stated.Quantity == quantity && stated.Origin == "claimed" && stated.Value > 0).Select(stated => PartValues.Read(part, stated).Si))
        .Cast<double?>().FirstOrDefault();

    private static double[] Chosen(double[]? instants, double endS) => instants switch
    {
        null => [],
        { Length: 0 } => [.. Enumerable.Range(0, OwnInstants + 1).Select(i => endS * i / OwnInstants)],
        _ => instants,
    };
}
