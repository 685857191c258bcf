using Heatwright.Plant;

namespace Heatwright.Verdicts;

/// <summary>How a duty spends its time, for reckoning energy before any prediction.</summary>
/// <param name="Working">Share of the time in work blocks.</param>
/// <param name="Hot">Share of the time at the target, stand-by counted by its share of the rise.</param>
/// <param name="WarmUpsPerS">Most warm-ups from cold in a second, beyond the first.</param>
internal sealed record BlockShares(double Working, double Hot, double WarmUpsPerS)
{
    public static BlockShares Of(Duty duty, double airC)
    {
        if (duty.Blocks is not { } blocks)
        {
            return new(1, 1, 0);
        }

        double Lasts(WorkBlock block) => block.Does == DutyKind.Work ? (block.Pieces ?? 0) * duty.EveryS : block.Does == DutyKind.WarmUp ? 0 : block.LastsS ?? 0;
        double all = blocks.Sum(Lasts);
        if (all <= 0)
        {
            return new(1, 1, 0);
        }

        double Share(WorkBlock block) => block.Does switch
        {
            DutyKind.Off => 0,
            DutyKind.StandBy => block.HoldsC is { } holds ? Math.Clamp((holds - airC) / (duty.TargetC - airC), 0, 1) : 0,
            _ => 1,
        };
        double hot = blocks.Sum(block => Share(block) * Lasts(block));
        // What cools in a pause must be warmed again: at most from the air's temperature.
        int pauses = blocks.Count(block => Share(block) < 1);
        return new(blocks.Where(block => block.Does == DutyKind.Work).Sum(Lasts) / all, hot / all, pauses / all);
    }
}
