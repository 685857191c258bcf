using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>Run times and operating points that were worked out apart from the program (closed forms of the trade handbook's chapter on power, and an adaptive integration of the same
/// equations), taken through the whole engine and not only through its laws. Open volts: a published piecewise-linear table of a high-power cell [sunil-2025].</summary>
public class HandbookRunTests
{
    private static readonly ChargeCurve HighPower = new ChargeCurve.Table(
        [0, 0.0151, 0.0452, 0.0955, 0.1508, 0.2915, 0.4573, 0.8342, 0.9497, 1],
        [2.5061, 2.8981, 3.1461, 3.3231, 3.4218, 3.5737, 3.7017, 4.0637, 4.1009, 4.1932]);

    private static readonly ChargeCurve Straight = new ChargeCurve.Table([0, 1], [3.3, 4.1]);

    private static readonly LossCoefficients Loss = new(0.12, 0.20, 0.09);

    /// <summary>Closed forms for a straight open-volts curve: t = (Q(R_L + R_s)/ΔV)·ln(V0/V_e), and t = Q/(2PΔV)·[F(V0) − F(V_e)]. Printed to 5 digits and more.</summary>
    [Fact]
    public void A_resistance_and_a_constant_power_run_as_their_closed_forms_say()
    {
        var direct = Run(Straight, 2.0, 0.10, 1, new PathModel.Direct(), new LoadModel.Heater(2.2, 0, 293.15), 3.2);
        Assert.Equal(4210.06, direct.RunTimeS, 0.01);
        Assert.Equal(6.71710, direct.Energies.LoadJ / 3600, 2e-5);
        Assert.Equal(1.8864, direct.Energies.ChargeC / 3600, 1e-4);
        var constant = Run(Straight, 2.0, 0.10, 1, new PathModel.Direct(), new LoadModel.ConstantPower(6.0), 3.0);
        Assert.Equal(4235.01, constant.RunTimeS, 0.01);
        Assert.Equal(7.05835, constant.Energies.LoadJ / 3600, 1e-5);
        Assert.Equal(StopReason.Empty, constant.Stop);
        Assert.Equal(1.93120, constant.HighestA, 1e-4);
        var early = Run(Straight, 2.0, 0.30, 1, new PathModel.Direct(), new LoadModel.ConstantPower(8.0), 3.0);
        Assert.Equal(1079.58, early.RunTimeS, 0.01);
        Assert.Equal(StopReason.CutOff, early.Stop);
        Assert.Equal(1 - 0.3750, early.ChargeLeft, 1e-5);
    }

    /// <summary>The constant-resistance form segment by segment, exact; and an integration of the constant-power one, printed to 5 digits.</summary>
    [Fact]
    public void A_measured_curve_gives_the_run_time_of_its_pieces()
    {
        var direct = Run(HighPower, 2.0, 0.10, 1, new PathModel.Direct(), new LoadModel.Heater(2.2, 0, 293.15), 2.8);
        Assert.Equal(72.8869, direct.RunTimeS / 60, 1e-4);
        Assert.Equal(7.01820, direct.Energies.LoadJ / 3600, 1e-5);
        Assert.Equal(0.98136, 1 - direct.ChargeLeft, 1e-5);
        var constant = Run(HighPower, 2.0, 0.10, 1, new PathModel.Direct(), new LoadModel.ConstantPower(6.0), 2.8);
        Assert.Equal(69.467, constant.RunTimeS / 60, 1e-3);
        Assert.Equal(0.97080, 1 - constant.ChargeLeft, 1e-5);
    }

    /// <summary>Five tools from full to cut-off at the terminals, R_s inside; integrated apart to a tolerance of 2e-3, printed to 6 digits. We hold 1e-5 of what is printed.</summary>
    [Theory]
    [InlineData("1S direct", 0.62, 0.25, 1, 2.2, 3.0, 21.5805, 1.88845, 0.10548)]
    [InlineData("1S step-up", 0.62, 0.25, 1, 0, 3.0, 12.4410, 1.24410, 0.31442)]
    [InlineData("1S step-up, lower cut-off", 0.62, 0.25, 1, 0, 2.5, 15.8960, 1.58960, 0.07594)]
    [InlineData("2S direct", 0.62, 0.45, 2, 9.0, 6.0, 44.8180, 4.23308, 0.04631)]
    [InlineData("1S large, step-up", 2.0, 0.12, 1, 0, 2.8, 59.0883, 5.90883, 0.04085)]
    public void A_whole_tool_runs_as_long_as_was_worked_out(string name, double ampHours, double sourceOhm, int series, double heaterOhm, double cutoffV, double minutes, double heaterWh, double left)
    {
        // Stepped up: 6 W in the heater, that is 9 V on 13.5 Ω; the module has no limit but the fold.
        PathModel path = heaterOhm > 0 ? new PathModel.Direct() : new PathModel.StepUp(new StepUpModule(9, Loss));
        var run = Run(HighPower, ampHours, sourceOhm, series, path, new LoadModel.Heater(heaterOhm > 0 ? heaterOhm : 13.5, 0, 293.15), cutoffV);
        Assert.True(Math.Abs(run.RunTimeS / 60 - minutes) < 1e-4 + (5e-5 * minutes), $"{name}: {run.RunTimeS / 60}");
        Assert.Equal(heaterWh, run.Energies.LoadJ / 3600, 1e-5 + (5e-5 * heaterWh));
        Assert.Equal(left, run.ChargeLeft, 2e-5);
        Assert.Equal(StopReason.CutOff, run.Stop);
    }

    /// <summary>The printed sweep of a tired cell: 3.7 V behind 0.30 Ω, set to 12 V on 8 Ω. What the module's limit holds is on this side of the fold or beyond it, and is called so.</summary>
    [Theory]
    [InlineData(1, 3.400, 2.9900, 4.8908, Region.CurrentLimited)]
    [InlineData(2, 3.100, 5.3200, 6.5238, Region.CurrentLimited)]
    [InlineData(3, 2.800, 6.8700, 7.4135, Region.CurrentLimited)]
    [InlineData(4, 2.500, 7.6400, 7.8179, Region.CurrentLimited)]
    [InlineData(5, 2.200, 7.6300, 7.8128, Region.SourceLimited)]
    [InlineData(5.5, 2.050, 7.3325, 7.6590, Region.SourceLimited)]
    [InlineData(6, 1.900, 6.8400, 7.3973, Region.SourceLimited)]
    [InlineData(7, 1.600, 5.2700, 6.4931, Region.SourceLimited)]
    public void The_collapse_of_a_tired_cell_is_named_at_every_current(double limitA, double inV, double outW, double outV, Region region)
    {
        var on = PowerPath.Solve(3.7, 0.30, 0, new PathModel.StepUp(new StepUpModule(12, Loss) { PeakLimitA = limitA }), LoadLaw.Ohms(8));
        Assert.Equal(region, on.Region);
        Assert.Equal(limitA, on.PackA, 1e-9);
        Assert.Equal(inV, on.TerminalV, 1e-9);
        Assert.Equal(outW, on.LoadW, 5e-5);
        Assert.Equal(outV, on.LoadV, 5e-5);
    }

    /// <summary>By hand: held at 5 A, the fold (E − 0.20)/(2·(0.09 + 0.30)) comes to 5 A at E = 4.1 V, which the published curve has at s = 0.94689; the charge goes at 5 A all the time.</summary>
    [Fact]
    public void Over_the_charge_the_same_module_is_current_limited_and_then_beyond_the_fold()
    {
        var run = Run(HighPower, 1.0, 0.30, 1, new PathModel.StepUp(new StepUpModule(12, Loss) { PeakLimitA = 5 }), new LoadModel.Heater(8, 0, 293.15), 1.6);
        double foldS = (1 - (0.8342 + ((4.1 - 4.0637) / (4.1009 - 4.0637) * (0.9497 - 0.8342)))) * 3600 / 5;
        Assert.Equal([Region.CurrentLimited, Region.SourceLimited], run.Events.Where(one => one.What == Happening.RegionChanged).Select(one => one.Region));
        Assert.Equal(foldS, run.Events.Single(one => one is { What: Happening.RegionChanged, Region: Region.SourceLimited }).AtS, 0.01);

        // Cut off at 1.6 V: E = 1.6 + 5·0.30 = 3.1 V.
        double endS = (1 - (0.0151 + ((3.1 - 2.8981) / (3.1461 - 2.8981) * (0.0452 - 0.0151)))) * 3600 / 5;
        Assert.Equal(endS, run.RunTimeS, 1e-3);
    }

    /// <summary>By hand: with a lock-out at 2.5 V the tired cell gives up from 4 A on, and 12 V are out of reach of a good cell's 5.5 A: 12.7775 W, 10.1104 V as printed.</summary>
    [Fact]
    public void With_a_lock_out_the_tired_cell_hiccups_and_the_good_one_is_current_limited()
    {
        var module = new StepUpModule(12, Loss) { PeakLimitA = 5.5, LockoutV = 2.5 };
        var tired = PowerPath.Solve(3.7, 0.30, 0, new PathModel.StepUp(module), LoadLaw.Ohms(8));
        Assert.Equal(Region.LockedOut, tired.Region);
        Assert.Equal(4.0, tired.PackA, 1e-9);
        Assert.Equal(0, tired.LoadW);
        var good = PowerPath.Solve(3.7, 0.12, 0, new PathModel.StepUp(module), LoadLaw.Ohms(8));
        Assert.Equal(Region.CurrentLimited, good.Region);
        Assert.Equal(12.7775, good.LoadW, 5e-5);
        Assert.Equal(10.1104, good.LoadV, 5e-5);

        // No limit at all and no lock-out: nothing holds the collapse, and no number is given.
        var none = PowerPath.Solve(3.7, 0.30, 0, new PathModel.StepUp(new StepUpModule(12, Loss)), LoadLaw.Ohms(8));
        Assert.Equal(Region.Collapsed, none.Region);
        Assert.Equal(0, none.LoadW);
    }

    /// <summary>Charging over a straight curve, closed form: s_cv, constant current, tail and its time, printed to 6 digits.</summary>
    [Theory]
    [InlineData(0.31, 0.15, 106.560, 123.6912)]
    [InlineData(0.62, 0.15, 49.560, 71.8483)]
    [InlineData(0.31, 0.45, 91.680, 143.0737)]
    public void A_charge_turns_and_ends_when_its_closed_form_says(double setA, double ohm, double turnMin, double totalMin)
    {
        var cell = new CellModel(0.62 * 3600, new ChargeCurve.Table([0, 1], [3.45, 4.2]), new ChargeCurve.Flat(ohm), new ChargeCurve.Flat(0), 1, new ChargeCurve.Flat(0), 1);
        var tool = new AssembledTool(new PackModel(cell, 1, 1, 0) { StartCharge = 0.05 }, new PathModel.Direct(), new LoadModel.ConstantCurrent(0), Lump, new ControllerModel.Fixed(1))
        { Charger = new ChargerModel(setA, 4.2, 0.031) };
        var run = PlantRunner.Run(tool, new RunSettings { StepS = 1, EveryEvent = true });
        Assert.Equal(StopReason.Charged, run.Stop);
        Assert.Equal(turnMin, run.Events.Single(one => one.Region == Region.ChargeVolts && one.What == Happening.RegionChanged).AtS / 60, 1e-3);
        Assert.Equal(totalMin, run.RunTimeS / 60, 2e-3);
    }

    /// <summary>By hand: 3.6 V open, 0.15 V for the regulator, reset at 2.7 V, 0.25 Ω: 3.0 A is the brink. A heater that draws a little more resets it at once, one that draws less does not.</summary>
    [Fact]
    public void A_heater_past_the_brink_resets_its_controller_at_once()
    {
        var flat = new ChargeCurve.Table([0, 1], [3.5999, 3.6]);
        AssembledTool Tool(double amps) => Made(flat, 1, 0.25, 1, new PathModel.Direct(), new LoadModel.ConstantCurrent(amps), 0) with { BrownOutV = 2.85, MaxS = 5 };
        var reset = PlantRunner.Run(Tool(3.01), new RunSettings());
        Assert.Equal((StopReason.BrownOut, 0.0), (reset.Stop, reset.RunTimeS));
        Assert.Equal(StopReason.TimeOver, PlantRunner.Run(Tool(2.99), new RunSettings()).Stop);
    }

    private static readonly ThermalNetwork Lump = new([new("lump", 50, 0.1)], [], 298.15);

    private static AssembledTool Made(ChargeCurve openV, double ampHours, double sourceOhm, int series, PathModel path, LoadModel load, double cutoffV) =>
        new(new PackModel(new CellModel(ampHours * 3600, openV, new ChargeCurve.Flat(sourceOhm / series), new ChargeCurve.Flat(0), 1, new ChargeCurve.Flat(0), 1), series, 1, 0),
            path, load, Lump, new ControllerModel.Fixed(1))
        { CutoffV = cutoffV };

    private static PlantRun Run(ChargeCurve openV, double ampHours, double sourceOhm, int series, PathModel path, LoadModel load, double cutoffV) =>
        PlantRunner.Run(Made(openV, ampHours, sourceOhm, series, path, load, cutoffV), new RunSettings { StepS = 0.5, EveryEvent = true });
}
