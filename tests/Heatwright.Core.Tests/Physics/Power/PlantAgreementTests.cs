using CsCheck;
using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Physics;

/// <summary>The plant solves the power path on its own, for speed; the law and the plant were written apart and must name the same point.</summary>
public class PlantAgreementTests
{
    [Fact]
    public void Law_and_plant_name_the_same_step_up_point() => Gen.Select(
        Gen.Double[2.6, 8.4], Gen.Double[0.01, 0.4], Gen.Double[2, 30], Gen.Double[4, 24], Gen.Double[1, 12], Gen.Double[0.6, 0.95], Gen.Double[0.5, 2.9], Gen.Double[0, 0.6])
        .Sample((open, source, heater, set, limit, maxDuty, lockout, diode) =>
        {
            limit *= 1.0000001; // round numbers would make two limits meet exactly, where rounding decides the word
            PathPoint law = StepUpPoint.At(open, source, heater,
                new StepUpModule(set, new(0.12, 0.20, 0.09)) { PeakLimitA = limit, MaxDuty = maxDuty, LockoutV = lockout, DiodeV = diode });

            // Between 'just regulated' and 'just passing through' lies a sliver where the fitted loss and the bare diode disagree, at these heaters by less than 15 %.
            // Exactly at the fold both words are right.
            if (Math.Abs((law.InputA ?? 0) - law.FoldA!.Value) < 1e-9 || Math.Abs((Math.Min(set, law.OutV ?? set) / (law.OffA!.Value * heater)) - 1) < 0.15)
            {
                return;
            }

            OnState plant = PowerPath.Solve(open, source / 3, source * 2 / 3, new PathModel.StepUp(set, 0.12, 0.20, 0.09, limit, maxDuty, lockout, diode), heater);
            // The law names the limit that holds and says 'beyond the fold' beside it; the plant has one word for that.
            Region expected = law.Region switch
            {
                PathRegion.CurrentLimited or PathRegion.DutyLimited when law.BeyondFold => Region.SourceLimited,
                PathRegion.Regulated => Region.Regulated,
                PathRegion.CurrentLimited => Region.CurrentLimited,
                PathRegion.DutyLimited => Region.DutyLimited,
                PathRegion.PassThrough => Region.PassThrough,
                _ => Region.LockedOut,
            };
            Assert.True(expected == plant.Region, $"law {law}, plant {plant}");
            if (law.InputA is { } amps)
            {
                Assert.Equal(amps, plant.PackA, 1e-9 * amps);
                Assert.Equal(law.OutW!.Value, plant.LoadW, 1e-9 * law.OutW.Value + 1e-12);
            }
        }, iter: 3000);

    [Fact]
    public void Law_and_plant_agree_on_a_heater_straight_on_the_pack() => Gen.Select(Gen.Double[2.5, 26], Gen.Double[0.01, 0.5], Gen.Double[0.5, 30]).Sample((open, source, heater) =>
    {
        OnState plant = PowerPath.Solve(open, source / 2, source / 2, new PathModel.Direct(), heater);
        Assert.Equal(DirectDrive.HeaterW(open, heater, source), plant.LoadW, 1e-9 * plant.LoadW);
    });
}
