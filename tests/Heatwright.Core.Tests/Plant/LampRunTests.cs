using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>A lamp over one charge against closed forms by hand, and against a sum over the charge instead of the time.</summary>
public class LampRunTests
{
    private const double AmpHours = 2.0, Ohm = 0.10;

    /// <summary>0.70 A down to 3.5 V, nothing at 2.9 V.</summary>
    private static readonly LoadModel.Lamp Light = new(0.70, 3.5, 2.9) { ForwardV = 3.0, LightShare = 0.3 };

    private static readonly ChargeCurve Straight = new ChargeCurve.Table([0, 1], [3.3, 4.1]);

    /// <summary>By hand. Held: from 4.1 V open to 3.5 + 0.1 · 0.7 = 3.57 V, a charge of 0.53/0.8 = 0.6625, 7200 C · 0.6625/0.7 A = 6814.286 s.
    /// Below, I = g·(U − 2.9), g = k/(1 + 0.1·k), k = 0.7/0.6, and U falls by 0.8 V · I/7200 C: an exponential. Full down to 0.95 · 0.7 A: ln(1/0.95)/(0.8·g/7200) = 441.855 s more.
    /// Empty at 3.3 V open: ln(0.67/0.40)/(0.8·g/7200) = 4443.36 s more than held.</summary>
    [Fact]
    public void A_lamp_straight_on_a_cell_holds_fades_and_ends_as_its_closed_form_says()
    {
        var run = Run(Light, new PathModel.Direct());
        Assert.Equal(7256.141, run.FullLightS, 0.01);
        Assert.Equal(11257.65, run.RunTimeS, 0.02);
        Assert.Equal(StopReason.Empty, run.Stop);
        Assert.Equal(run.FullLightS, Assert.Single(run.Events, happened => happened.What == Happening.LightFalls).AtS);
    }

    /// <summary>By hand: it switches itself off at 3.2 V at its wires: I = 0.7 · 0.3/0.6 = 0.35 A, 3.235 V open, under the 3.3 V of the empty cell, so never; at 3.4 V: 0.5833 A,
    /// 3.45833 V open, ln(0.67/0.558333)/(0.8·g/7200) = 1570.57 s after it was held last.</summary>
    [Theory, InlineData(3.2, StopReason.Empty, 11257.65), InlineData(3.4, StopReason.LightGone, 8384.85)]
    public void A_driver_that_switches_itself_off_ends_the_light(double offV, StopReason stop, double endS)
    {
        var run = Run(Light with { LockOutV = offV }, new PathModel.Direct());
        Assert.Equal(stop, run.Stop);
        Assert.Equal(endS, run.RunTimeS, 0.05);
    }

    /// <summary>A curve that falls to 2.5 V takes the light away before the charge: at a tenth, 0.07 A, the lamp stands at 2.9 + 0.06 = 2.96 V and the cell at 2.967 V open.</summary>
    [Fact]
    public void Under_a_tenth_of_its_current_the_light_counts_as_gone()
    {
        var run = Run(Light, new PathModel.Direct(), new ChargeCurve.Table([0, 1], [2.5, 4.1]));
        Assert.Equal(StopReason.LightGone, run.Stop);
        Assert.Equal((2.967 - 2.5) / 1.6, run.ChargeLeft, 1e-5);
    }

    /// <summary>Through a step-up to 5 V the lamp takes 3.5 W to the end. The time as a sum over the charge: dt = Q·ds/I, with I from (U − 0.2 V)·I − (0.09 + 0.1) Ω·I² = 3.5 W + 0.12 W.</summary>
    [Fact]
    public void A_lamp_behind_a_step_up_lasts_as_long_as_a_sum_over_the_charge_says()
    {
        const int Strips = 2000;
        double seconds = 0;
        for (int i = 0; i < Strips; i++)
        {
            double driveV = 3.3 + (0.8 * (i + 0.5) / Strips) - 0.2;
            double amps = (driveV - Math.Sqrt((driveV * driveV) - (4 * 0.19 * 3.62))) / (2 * 0.19);
            seconds += AmpHours * 3600 / Strips / amps;
        }

        var run = Run(Light, new PathModel.StepUp(new StepUpModule(5, new(0.12, 0.20, 0.09))));
        Assert.Equal(StopReason.Empty, run.Stop);
        Assert.Equal(seconds, run.RunTimeS, 0.05);
        Assert.Equal(run.RunTimeS, run.FullLightS, 1e-9);
        Assert.Equal(3.5 * seconds, run.Energies.LoadJ, 0.5);
    }

    /// <summary>By hand, on a cell that stays at 4 V: 0.7 A at 3.93 V are 2.751 W, 0.3 · 3.0 V · 0.7 A = 0.63 W leave as light, 2.121 W over 0.05 W/K are 42.42 K once it has settled.
    /// All of it: load = light + air + stored.</summary>
    [Fact]
    public void What_leaves_as_light_heats_nothing()
    {
        var run = Run(Light, new PathModel.Direct(), new ChargeCurve.Flat(4));
        Assert.Equal(0.63 * run.RunTimeS, run.Energies.LightJ, 0.1);
        Assert.Equal(2.751 * run.RunTimeS, run.Energies.LoadJ, 0.1);
        Assert.Equal(42.42, run.HighestK[0] - 293.15, 0.01);
        Assert.Equal(run.Energies.LoadJ, run.Energies.LightJ + run.Energies.AirJ + run.Energies.StoredJ, 1e-3 * run.Energies.LoadJ);
        Assert.Equal(AmpHours * 3600 / 0.7, run.FullLightS, 1e-3);
    }

    [Fact]
    public void A_load_that_is_no_lamp_has_no_full_light() =>
        Assert.True(double.IsNaN(PlantRunner.Run(Tool(new LoadModel.ConstantCurrent(0.7), new PathModel.Direct(), Straight), new RunSettings { StepS = 10 }).FullLightS));

    [Fact]
    public void A_lamp_that_is_dark_above_its_least_volts_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => new LoadModel.Lamp(0.7, 3.0, 3.1));

    private static PlantRun Run(LoadModel load, PathModel path, ChargeCurve? openV = null) => PlantRunner.Run(Tool(load, path, openV ?? Straight), new RunSettings { StepS = 10 });

    private static AssembledTool Tool(LoadModel load, PathModel path, ChargeCurve openV) => new(
        new PackModel(new CellModel(AmpHours * 3600, openV, new ChargeCurve.Flat(Ohm), new ChargeCurve.Flat(0), 1, new ChargeCurve.Flat(0), 1), 1, 1, 0),
        path, load, new ThermalNetwork([new("head", 30, 0.05)], [], 293.15), new ControllerModel.Fixed(1))
    { CutoffV = 1 };
}
