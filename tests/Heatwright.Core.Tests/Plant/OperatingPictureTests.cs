using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>The picture of the power path against the sweep of a collapsing step-up that the trade handbook's chapter on power prints: 3.7 V behind 0.30 Ω, 12 V set on 8 Ω, loss 0.12 W, 0.20 V, 0.09 Ω.</summary>
public class OperatingPictureTests
{
    private static readonly LossCoefficients Loss = new(0.12, 0.20, 0.09);

    [Theory]
    [InlineData(1, 2.9900)]
    [InlineData(2, 5.3200)]
    [InlineData(3, 6.8700)]
    [InlineData(4, 7.6400)]
    [InlineData(4.487, 7.7326)]
    [InlineData(5, 7.6300)]
    [InlineData(6, 6.8400)]
    [InlineData(7, 5.2700)]
    public void The_hill_is_the_printed_one_and_the_wanted_line_lies_above_it(double amps, double watts)
    {
        var picture = Picture(new StepUpModule(12, Loss) { PeakLimitA = 7.5 });
        foreach (var moment in picture.Moments)
        {
            Assert.Equal(watts, Between(moment, amps), 2e-3);
            Assert.Equal(18, moment.AskedW, 1e-9);
            Assert.Equal(7.73256, moment.LoadW.Where(double.IsFinite).Max(), 1e-3);
            Assert.Equal(Region.SourceLimited, moment.Point.Region);
        }

        Assert.Equal(7.5, picture.LimitA);
    }

    /// <summary>With a lock-out at 2.5 V it hiccups from (3.7 − 2.5) / 0.30 = 4.0 A on: nothing is drawn beyond, and it stands nowhere.</summary>
    [Fact]
    public void At_its_lock_out_the_hill_ends()
    {
        var moment = Picture(new StepUpModule(12, Loss) { LockoutV = 2.5, PeakLimitA = 7.5 }).Moments[0];
        Assert.Equal(4.0, moment.LockOutA, 1e-9);
        Assert.Equal(4.0, moment.Amps.Zip(moment.LoadW).Last(one => double.IsFinite(one.Second)).First, 0.1);
        Assert.Equal((Region.LockedOut, 0.0), (moment.Point.Region, moment.Point.LoadW));
    }

    /// <summary>Straight on 2.2 Ω: 3.7 / 2.5 = 1.48 A, 4.819 W, where the heater's I²·R crosses what the pack gives.</summary>
    [Fact]
    public void Straight_on_the_pack_it_stands_where_both_curves_cross()
    {
        var picture = Picture(null, 2.2);
        Assert.Equal(2.2, picture.LoadOhm, 1e-9);
        Assert.Equal(1.48, picture.Moments[0].Point.PackA, 1e-9);
        Assert.Equal(1.48 * 1.48 * 2.2, Between(picture.Moments[0], 1.48), 1e-3);
        Assert.True(double.IsNaN(picture.Moments[0].AskedW) && double.IsNaN(picture.LimitA));
    }

    /// <summary>A trace is dense in the first minutes: half-way is told by the clock, not by the count of its points.</summary>
    [Fact]
    public void Half_way_is_half_of_the_time() => Assert.Equal(5, Picture(null, 2.2, 0, 0.5, 1, 1.5, 2, 5, 10).Moments[1].AtS, 1e-9);

    private static OperatingPicture Picture(StepUpModule? module, double heaterOhm = 8) => Picture(module, heaterOhm, 0, 5, 10);

    private static OperatingPicture Picture(StepUpModule? module, double heaterOhm, params double[] instants)
    {
        var cell = new CellModel(7200, new ChargeCurve.Flat(3.7), new ChargeCurve.Flat(0.1), new ChargeCurve.Flat(0), 1, new ChargeCurve.Flat(0), 10);
        var tool = new AssembledTool(new PackModel(cell, 1, 1, 0.2), module is null ? new PathModel.Direct() : new PathModel.StepUp(module), new LoadModel.Heater(heaterOhm, 0, 293.15),
            new ThermalNetwork([new("end", 10, 0.05)], [], 293.15), new ControllerModel.Fixed(module is null ? 1 : 0))
        { MaxS = 10 };
        return OperatingPicture.Of(tool, PlantRunner.Run(tool, new RunSettings { StepS = 1, Instants = instants }).Trace)!;
    }

    private static double Between(OperatingMoment moment, double amps)
    {
        int i = Array.FindIndex(moment.Amps, a => a >= amps);
        double share = (amps - moment.Amps[i - 1]) / (moment.Amps[i] - moment.Amps[i - 1]);
        return moment.LoadW[i - 1] + (share * (moment.LoadW[i] - moment.LoadW[i - 1]));
    }
}
