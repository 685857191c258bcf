using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>What a brief asks of the plant: its blocks, and how long a prediction must go on to answer every line.</summary>
public static class BriefPlan
{
    private const double LeastS = 4 * 3600, MostS = 72 * 3600, Beyond = 1.5;
    private const int LeastPieces = 400;

    /// <summary>The blocks of a duty on bare numbers; null: none.</summary>
    public static DutyPattern? Blocks(Duty duty) => duty.Blocks is { Count: > 0 } blocks
        ? new([.. blocks.Select(block => new DutyBlock(block.Does, block.Does == DutyKind.Work ? 0 : block.LastsS ?? double.PositiveInfinity)
        {
            Pieces = block.Pieces ?? 0,
            SetK = block.HoldsC is { } holds ? Units.Celsius.ToSi(holds) : 0,
        })], duty.Rounds ?? int.MaxValue)
        : null;

    /// <summary>Half as long again as the longest that is asked, at least four hours and at most three days, s.</summary>
    public static double AtMostS(Brief brief) => Math.Clamp(Beyond * Math.Max(Asked(brief, RequirementQuantity.RunTime), brief.Duty is { } duty ? Asked(brief, RequirementQuantity.PiecesPerCharge) * PieceS(duty) : 0), LeastS, MostS);

    /// <summary>Half as many again as the most that are asked, at least four hundred.</summary>
    public static int MostPieces(Brief brief) => Math.Max(LeastPieces, (int)Math.Min(1e6, Beyond * Asked(brief, RequirementQuantity.PiecesPerCharge)));

    /// <summary>After how many pieces the way back to the target is asked for: those that are promised, or all; 0: it is not asked for.</summary>
    public static int TimesRecovery(Brief brief) => brief.Requirements.All(line => line.Quantity != RequirementQuantity.RecoveryTime) ? 0
        : Asked(brief, RequirementQuantity.PiecesPerCharge) is >= 1 and < 1e6 and var asked ? (int)Math.Ceiling(asked) : int.MaxValue;

    /// <summary>Seconds of the clock a piece takes on the average, pauses and stand-by included.</summary>
    public static double PieceS(Duty duty)
    {
        if (duty.Blocks is not { } blocks || blocks.Sum(block => block.Pieces ?? 0) is not (> 0 and var pieces))
        {
            return duty.EveryS;
        }

        return (blocks.Sum(block => block.Does == DutyKind.WarmUp ? 0 : block.LastsS ?? 0) / pieces) + duty.EveryS;
    }

    /// <summary>Temperature above which the work takes heat, °C. Where a heat is stated, and neither how well it is taken nor a temperature below the target, it is taken from the air on: a piece that could take none would fail for nobody's reason.</summary>
    public static double TakesHeatAboveC(Brief brief) => brief.Work is { Contact: not > 0, NeedJ: > 0 } duty && !(duty.TargetC > duty.AboveC) ? brief.AirC : brief.Work.AboveC;

    /// <summary>Conductance into the work at which a piece has its heat in half of its time, W/K; null where a conductance is stated, or no heat to be taken.</summary>
    public static double? UsualContactWPerK(Brief brief) => brief.Work is { Contact: not > 0, NeedJ: > 0, ForS: > 0 } duty && duty.TargetC - TakesHeatAboveC(brief) is > 0 and var overK ? 2 * duty.NeedJ / (duty.ForS * overK) : null;

    /// <summary>True: nobody said what a piece takes. A piece that takes nothing is one of which that was said.</summary>
    public static bool IsOpen(Duty duty) => duty.NeedJ == 0 && duty.Contact == 0 && duty.Why == Duty.NothingSaid;

    private static double Asked(Brief brief, RequirementQuantity quantity) =>
        brief.Requirements.Where(line => line.Quantity == quantity && !line.AtMost).Select(line => (Units.Find(line.Unit) ?? Units.One).ToSi(line.Limit)).DefaultIfEmpty(0).Max();
}
