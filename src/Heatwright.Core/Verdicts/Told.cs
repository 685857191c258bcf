using Heatwright.Predictions;

namespace Heatwright.Verdicts;

/// <summary>The SI value of a requirement's quantity in one run.</summary>
public static class Told
{
    /// <summary>How to read it off a run of this brief and arrangement, or null where no run tells it.</summary>
    public static Func<Outcome, double>? ByRun(Requirement line, Brief brief, int parallel) => line.Quantity switch
    {
        RequirementQuantity.WarmUpTime => outcome => outcome.WarmUpS,
        RequirementQuantity.PiecesPerCharge => outcome => outcome.Pieces,
        RequirementQuantity.GripTemperature or RequirementQuantity.CaseTemperature => outcome => outcome.GripC + 273.15,
        RequirementQuantity.CellTemperature => outcome => outcome.CellC + 273.15,
        RequirementQuantity.FullLightTime => outcome => double.IsNaN(outcome.FullLightS) ? 0 : outcome.FullLightS,
        RequirementQuantity.RunTime => outcome => outcome.RunTimeS,
        RequirementQuantity.EndTemperature => outcome => outcome.HottestC + 273.15,
        RequirementQuantity.RecoveryTime => outcome => double.IsNaN(outcome.RecoveryS) ? double.PositiveInfinity : outcome.RecoveryS,
        RequirementQuantity.Steadiness => outcome => double.IsNaN(outcome.LowestAtWorkC) ? double.PositiveInfinity : brief.Work.TargetC - outcome.LowestAtWorkC,
        RequirementQuantity.WorkRate => outcome => outcome.Pieces > 0 ? 1 / BriefPlan.PieceS(brief.Work) : 0,
        RequirementQuantity.CellCurrent => outcome => outcome.HighestA / parallel,
        RequirementQuantity.ProtectionTrips => outcome => outcome.Stop == Plant.StopReason.Tripped ? 1 : 0,
        RequirementQuantity.ControllerVolts => outcome => double.IsFinite(outcome.LowestV) ? outcome.LowestV : 0,
        _ => null,
    };
}
