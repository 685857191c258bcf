using Heatwright.Arrangements;
using Heatwright.Jobs;
using Heatwright.Parts;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Tests.Samples;

/// <summary>A cut-off that is stated for a discharge changes what the cell is said to hold, and nothing of the cell that is predicted with.</summary>
public class CutOffTests
{
    [Fact]
    public void The_plant_takes_the_whole_log_whatever_cut_off_its_capacity_is_told_to()
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", "rope-hot-knife")).Value;
        var (whole, wholeAh) = Built(study);
        var cell = study.Arrangements[0].Cell;
        Run Cut(Run run) => run with { Settings = new Dictionary<string, double>(run.Settings) { ["cut-off"] = 3.6 } };
        var (cut, cutAh) = Built(study with { Trials = [.. study.Trials.Select(trial => trial.Part == cell && trial.Kind == TrialKind.Discharge ? trial with { Runs = [.. trial.Runs.Select(Cut)] } : trial)] });
        Assert.InRange(cutAh / wholeAh, 0.2, 0.9); // at 3.6 V a lithium cell is neither full nor empty
        Assert.Equal(whole, cut, 1e-9 * whole);
        Assert.Equal(3600 * wholeAh, whole, 1e-6);
    }

    private static (double CapacityC, double Ah) Built(Study study)
    {
        var shelf = new Heatwright.Arrangements.Shelf(study.Parts, RunStudy.Findings(study, TestContext.Current.CancellationToken));
        var builder = PlantBuilder.For(study.Arrangements[0], shelf, RunStudy.Plan(study.Brief!)).Value;
        return (builder.Build(builder.Middle).Pack!.Cell.CapacityC, shelf.Value(study.Arrangements[0].Cell, PartQuantities.Capacity)!.Value);
    }
}
