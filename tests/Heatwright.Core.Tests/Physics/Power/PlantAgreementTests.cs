using CsCheck;
using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Physics;

/// <summary>The plant uses the laws of the power path; it must pass their points on unchanged, and name their regions.</summary>
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

            // Exactly at the fold both words are right.
            if (Math.Abs((law.InputA ?? 0) - law.FoldA!.Value) < 1e-9)
            {
                return;
            }

            OnState plant = PowerPath.Solve(open, source / 3, source * 2 / 3, new PathModel.StepUp(set, 0.12, 0.20, 0.09, limit, maxDuty, lockout, diode), LoadLaw.Ohms(heater));
            // The law names the limit that holds and says 'beyond the fold' beside it; the plant has one word for that.
            Region expected = law.Region switch
            {
                PathRegion.CurrentLimited or PathRegion.DutyLimited when law.BeyondFold => Region.SourceLimited,
                PathRegion.Regulated => Region.Regulated,
                PathRegion.CurrentLimited => Region.CurrentLimited,
                PathRegion.DutyLimited => Region.DutyLimited,
                PathRegion.PassThrough => Region.PassThrough,
                PathRegion.SourceLimited => Region.Collapsed,
                _ => Region.LockedOut,
            };
            Assert.True(expected == plant.Region, $"law {law}, plant {plant}");
            if (law.InputA is { } amps)
            {
                Assert.Equal(amps, plant.PackA, 1e-9 * amps);
                Assert.Equal(law.OutW!.Value, plant.LoadW, 1e-9 * law.OutW.Value + 1e-12);
            }
        }, iter: 3000);

    /// <summary>The boundary of pass-through: a module set to less than what passes through anyhow gives just that, set to more it gives what it is set to.
    /// By hand: (8.4 − 0.35) V over 0.1 + 10 Ω leave 7.970297 V on the heater.</summary>
    [Fact]
    public void Raised_from_below_the_set_volts_take_over_where_they_pass_what_passes_through_without_a_jump()
    {
        const double throughV = (8.4 - 0.35) * 10 / 10.1;
        double last = 0;
        for (double set = 6; set < 10; set += 0.0009)
        {
            var point = StepUpPoint.At(8.4, 0.1, 10, new StepUpModule(set, new(0.12, 0.20, 0.09)) { PeakLimitA = 5, MaxDuty = 0.9, DiodeV = 0.35 });
            Assert.Equal(set <= throughV ? PathRegion.PassThrough : PathRegion.Regulated, point.Region);
            Assert.Equal(Math.Max(throughV, set), point.OutV!.Value, 1e-9);
            Assert.True(point.OutV >= last);
            last = point.OutV.Value;
        }
    }

    [Fact]
    public void Law_and_plant_agree_on_a_heater_straight_on_the_pack() => Gen.Select(Gen.Double[2.5, 26], Gen.Double[0.01, 0.5], Gen.Double[0.5, 30]).Sample((open, source, heater) =>
    {
        OnState plant = PowerPath.Solve(open, source / 2, source / 2, new PathModel.Direct(), LoadLaw.Ohms(heater));
        Assert.Equal(DirectDrive.HeaterW(open, heater, source), plant.LoadW, 1e-9 * plant.LoadW);
    });
}
