using Heatwright.BuildSheets;
using Heatwright.Plant;
using Heatwright.Tests.Plant;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Control constants of a tool, against hand values, walks in small steps, and the emitted code in closed loop.</summary>
public sealed class ControlDesignTests : IDisposable
{
    private const double SetC = 220;
    private const double FrameS = 0.1;
    private const double FullOnW = 22;

    /// <summary>An invented edge creaser: 6 J/K, 12 cm² of emissivity 0.7 with natural convection, a grip, a sensor of 0.8 s, a press every 30 s.</summary>
    private static readonly AssembledTool Tool = new(
        new PackModel(Mission1.Cell, 2, 1, 0.060),
        new PathModel.Direct(),
        new LoadModel.Heater(2.40, 8e-4, 293.15),
        new ThermalNetwork([new("end", 6, 0.005, 1.2e-3 * 2.2, 0.70 * 1.2e-3), new("grip", 40, 0.15)], [new(0, 1, 0.005)], 298.15) { SensorLagS = 0.8 },
        new ControllerModel.Fixed(0))
    {
        Work = new WorkPattern(0.60, 200 + 273.15, 150, 30, 4, 0),
        CutoffV = 5.6,
    };

    private static readonly ControlDesign Design = ControlDesign.Of(Tool, SetC, FrameS, 0.95, 4, FullOnW);

    private readonly Toolchain tools = new();

    public void Dispose() => tools.Dispose();

    /// <summary>By hand: slope 0.005 + 0.005 + 1.25·0.00264·195^0.25 + 4σ·0.00084·493.15³ = 0.0451818 W/K; 6 J/K over it 132.797 s; half of 0.8 s to each side;
    /// half a sample and half a frame of 0.1 s. Constants by [skogestad-2003]: τ/(k·2θ) and 8θ.</summary>
    [Fact]
    public void Constants_follow_from_the_tool_by_hand()
    {
        Assert.Equal(22.13281, Design.Model.KelvinPerWatt, 1e-4);
        Assert.Equal(133.19686, Design.Model.Lags.SlowS, 1e-4);
        Assert.Equal(0.1, Design.SampleS, 1e-12); // a fifth of 0.45 s would be 0.05 s, but a frame is 0.1 s
        Assert.Equal(0.5, Design.Model.Lags.DelayS, 1e-12);
        Assert.Equal(6.314492, Design.Model.HoldW, 1e-5); // 0.010·195 + 0.00264·195^1.25 + σ·0.00084·(493.15⁴ − 298.15⁴)
        Assert.Equal(6.018073, Design.Settings.GainWPerK, 1e-5);
        Assert.Equal(4.0, Design.Settings.IntegralS, 1e-12);
    }

    /// <summary>Benchmark mission 1 at 400 °C: its fastest lag is published with it as 2.6812 s. Resistance, slow lag and hold power by hand from the two heat balances.</summary>
    [Fact]
    public void A_heated_core_and_a_read_tip_count_as_two_bodies()
    {
        var model = ToolModel.Of(Mission1.Tool, 400, 0.25, 0.1);
        Assert.Equal(10.25958, model.KelvinPerWatt, 1e-4);
        Assert.Equal(65.59365 + (2.6813 / 2), model.Lags.SlowS, 1e-3);
        Assert.Equal((2.6812 / 2) + 0.8 + 0.125 + 0.05, model.Lags.DelayS, 1e-3);
        Assert.Equal(22.610508, model.HoldW, 1e-4);
    }

    [Fact]
    public void Constants_for_a_core_and_a_tip_hold_the_tip_in_the_whole_simulation()
    {
        var design = ControlDesign.Of(Mission1.Tool, 400, 0.1, 0.95, 4, 32);
        Assert.All(design.Cases.Where(one => one.Name.StartsWith("full", StringComparison.Ordinal)), one =>
        {
            Assert.InRange(one.OvershootK, -1, 5);
            Assert.InRange(one.ReadyS, 100, 180);
        });
        Assert.InRange(design.Margins.GainMargin, 2.5, 4);
    }

    /// <summary>Second method: the plant's own watch for a target, which finds the crossing within its step, with the same controller; the case reads it off a trace every quarter second.</summary>
    [Theory, InlineData("full pack, no work", 1.0), InlineData("nearly empty pack, no work", ControlDesign.NearlyEmpty)]
    public void The_end_is_at_the_target_when_the_plants_own_watch_says_so(string name, double charge)
    {
        var aimed = Tool with { TargetK = 200 + 273.15, Work = null };
        var design = ControlDesign.Of(aimed, SetC, FrameS, 0.95, 4, FullOnW);
        var controller = new ControllerModel.Pi(SetC + 273.15, design.SampleS, design.Settings.GainWPerK, design.Settings.GainWPerK / design.Settings.IntegralS, 0, 2.40, 0.95) { StartW = design.Model.HoldW };
        var run = PlantRunner.Run(aimed with { Controller = controller, Pack = aimed.Pack! with { StartCharge = charge }, MaxS = 240 }, new RunSettings { StepS = 0.1 });
        var told = Assert.Single(design.Cases, one => one.Name == name);
        Assert.Equal(run.TargetS, told.TargetS, 0.1);
        Assert.True(told.TargetS < told.ReadyS, "200 °C at the end comes before 215 °C of a reading that lags");
        Assert.All(Design.Cases, one => Assert.True(double.IsNaN(one.TargetS), "no target was named"));
    }

    /// <summary>Once settled the reading stays within ±2 K, so it cannot ripple by more than 4 K, however soon the work begins and whatever the way up was.</summary>
    [Theory, InlineData(5), InlineData(20), InlineData(60)]
    public void Work_that_begins_soon_after_the_target_makes_no_ripple_of_the_way_up(double afterTargetS)
    {
        var design = ControlDesign.Of(Tool with { Work = Tool.Work! with { AfterTargetS = afterTargetS } }, SetC, FrameS, 0.95, 4, FullOnW);
        Assert.All(design.Cases, one => Assert.True(double.IsNaN(one.RippleK) ? double.IsNaN(one.SettledS) : one.RippleK <= 4, $"{one.Name}: {one.RippleK} K"));
        Assert.Contains(design.Cases, one => double.IsFinite(one.RippleK));
    }

    /// <summary>Second method: the tool as one lag and a dead time, walked in steps of a thousandth of the dead time, the power switched at each crossing.</summary>
    [Fact]
    public void The_relay_swing_is_what_switching_at_each_crossing_gives()
    {
        double h = 0.5 * Design.Model.HoldW;
        var (high, low, period) = Walked(rising => rising ? h : -h, 0, 0, 0);
        Assert.Equal((high - low) / 2, Design.Relay.AmplitudeK, 0.01 * Design.Relay.AmplitudeK);
        Assert.Equal(period, Design.Relay.PeriodS, 0.01 * Design.Relay.PeriodS);
    }

    [Fact]
    public void The_swing_of_on_off_is_what_switching_at_the_band_gives()
    {
        var (high, low, period) = Walked(on => on ? FullOnW : 0, 25, SetC - 1, SetC + 1);
        Assert.Equal(high, Design.Swing!.HighC, 0.02);
        Assert.Equal(low, Design.Swing.LowC, 0.02);
        Assert.Equal(period, Design.Swing.PeriodS, 0.02);
    }

    [Fact]
    public void On_off_is_good_enough_where_its_swing_is_allowed_and_not_where_the_pack_cannot_hold()
    {
        Assert.True(Design.OnOffIsEnough); // 2 K of band and 0.5 s of dead time at (22 − 0)/6 K/s: 3.8 K
        Assert.False(ControlDesign.Of(Tool with { Work = null }, SetC, FrameS, 0.95, 0.5, FullOnW).OnOffIsEnough);
        Assert.Null(ControlDesign.Of(Tool with { Work = null }, SetC, FrameS, 0.95, 4, 6).Swing); // 25 + 22.13·6 = 157.8 °C
    }

    /// <summary>Second method: the emitted code compiled and run against the same tool written out in C, fourth-order steps of 10 ms, pack, heater, lag and work its own.</summary>
    [Theory]
    [InlineData("heat_control_int.c", 1.0, "full pack, at work")]
    [InlineData("heat_control_float.c", 1.0, "full pack, at work")]
    [InlineData("heat_control_int.c", 0.1, "nearly empty pack, at work")]
    [InlineData("heat_control_float.c", 0.1, "nearly empty pack, at work")]
    public void The_emitted_controller_does_on_the_tool_what_was_predicted(string variant, double charge, string name)
    {
        double[][] rows = Emitted(variant, charge);
        var predicted = Assert.Single(Design.Cases, one => one.Name == name);
        double[] read = [.. rows.Select(row => row[0])];
        double overshoot = read.Take(600).Max() - SetC;
        double ready = 0.25 * Array.FindIndex(read, value => value >= SetC - 5);
        double droop = SetC - rows.Skip(600).Min(row => row[1]);
        Assert.Equal(overshoot, predicted.OvershootK, 0.3); // steps of 1/16 K and 1/1024 of duty
        Assert.Equal(ready, predicted.ReadyS, 1.0);
        Assert.Equal(droop, predicted.DroopK, 0.3);
        Assert.InRange(overshoot, -0.1, 3);
        Assert.InRange(droop, 1, 10);
        double recovered = (0.25 * (1 + Array.FindLastIndex(read, 719, 120, value => Math.Abs(value - SetC) > 2))) - 150;
        Assert.Equal(recovered, predicted.RecoveredS, 1.0);
        Assert.InRange(recovered, 1, 15);
    }

    [Fact]
    public void Without_work_the_loop_settles_with_little_ripple() => Assert.All(Design.Cases.Where(one => one.Name.EndsWith("no work", StringComparison.Ordinal)), one =>
    {
        Assert.InRange(one.RippleK, 0, 0.5);
        Assert.InRange(one.SettledS, 30, 150);
        Assert.True(double.IsNaN(one.DroopK) && double.IsNaN(one.RecoveredS));
    });

    private (double High, double Low, double Period) Walked(Func<bool, double> power, double airC, double lowC, double highC)
    {
        var (k, tau, delay) = (Design.Model.KelvinPerWatt, Design.Model.Lags.SlowS, Design.Model.Lags.DelayS);
        const int perDelay = 1000;
        double step = delay / perDelay, y = (lowC + highC) / 2, high = double.MinValue, low = double.MaxValue;
        double[] waiting = [.. Enumerable.Repeat(power(true), perDelay)];
        bool on = true;
        List<double> switched = [];
        for (int n = 0; switched.Count < 14; n++)
        {
            y += step / tau * (airC + (k * waiting[n % perDelay]) - y);
            bool next = on ? y < highC : y <= lowC;
            if (next && !on)
            {
                switched.Add(n * step);
            }

            on = next;
            waiting[n % perDelay] = power(on);
            if (switched.Count > 12)
            {
                (high, low) = (Math.Max(high, y), Math.Min(low, y));
            }
        }

        return (high, low, switched[13] - switched[12]);
    }

    private double[][] Emitted(string variant, double charge)
    {
        var numbers = new ControlNumbers
        {
            SetC = SetC,
            SampleS = Design.SampleS,
            GainWPerK = Design.Settings.GainWPerK,
            IntegralS = Design.Settings.IntegralS,
            HoldW = Design.Model.HoldW,
            LoadOhm = 2.4,
            MostW = 40,
            MostDuty = 0.95,
            CutoffV = 5.6,
            StopC = 280,
            IdleS = 3600,
            WaitS = 0.002,
            ReadS = 0.0002,
            LowCount = 3,
            HighCount = 4000,
            RiseS = 20,
            RiseK = 5,
        };
        tools.Write(new ControlCode(numbers, new("creaser", "abcdef", "2026-11-25", [])).Files);
        File.WriteAllText(Path.Combine(tools.Folder, "main.c"), """
            #include <stdio.h>
            #include <math.h>
            #include <stdlib.h>
            #include "heat_control.h"
            /* 0 end, 1 grip, 2 sensor, all degC; 3 charge left; 4 volts of the RC pair of a cell */
            static double duty, ohm, amps, volts;
            static void electric(const double *x)
            {
                const double cell = 3.4 + 0.8 * x[3] - 0.6 * exp(-25.0 * x[3]) - x[4];
                ohm = 2.4 * (1.0 + 8e-4 * (x[0] - 20.0));
                amps = 2.0 * cell / (ohm + 0.06 + 0.07);
                volts = 2.0 * cell - 0.07 * amps;
            }
            static void slope(const double *x, int work, double *d)
            {
                const double rise = x[0] > 25.0 ? x[0] - 25.0 : 0.0;
                double loss = 0.005 * rise + 0.00264 * pow(rise, 1.25) + 5.670374419e-8 * 0.00084 * (pow(x[0] + 273.15, 4.0) - pow(298.15, 4.0)) + 0.005 * (x[0] - x[1]);
                electric(x);
                if (work && x[0] > 200.0) { loss += 0.60 * (x[0] - 200.0); }
                d[0] = (duty * amps * amps * ohm - loss) / 6.0;
                d[1] = (0.005 * (x[0] - x[1]) - 0.15 * (x[1] - 25.0)) / 40.0;
                d[2] = (x[0] - x[2]) / 0.8;
                d[3] = -duty * amps / 10800.0;
                d[4] = (0.015 * duty * amps - x[4]) / 20.0;
            }
            static void moved(const double *x, const double *d, double h, double *to)
            {
                int i;
                for (i = 0; i < 5; i++) { to[i] = x[i] + h * d[i]; }
            }
            int main(int count, char **words)
            {
                double x[5] = { 25.0, 25.0, 25.0, 1.0, 0.0 }, a[5], b[5], c[5], d[5], y[5];
                const double h = 0.01;
                heat_control control;
                int n, i;
                x[3] = count > 1 ? atof(words[1]) : 1.0;
                heat_init(&control);
                heat_start(&control);
                for (n = 0; n < 24000; n++) {
                    const double t = n * h;
                    const int work = t >= 150.0 - 1e-9 && fmod(t - 150.0 + 1e-9, 30.0) < 4.0;
                    if (n % 10 == 0) {
                        electric(x);
                        duty = (double)heat_step(&control, 2000u, (int16_t)floor(x[2] * 16.0 + 0.5), (uint16_t)floor(volts * 1000.0)) / 1024.0;
                    }
                    if (n % 25 == 0) { printf("%.6f %.6f\n", x[2], x[0]); }
                    slope(x, work, a);
                    moved(x, a, h / 2.0, y); slope(y, work, b);
                    moved(x, b, h / 2.0, y); slope(y, work, c);
                    moved(x, c, h, y); slope(y, work, d);
                    for (i = 0; i < 5; i++) { x[i] += h / 6.0 * (a[i] + 2.0 * b[i] + 2.0 * c[i] + d[i]); }
                }
                return control.state == HEAT_RUNS ? 0 : 1;
            }
            """);
        tools.Compile("gcc", ["-std=c99", "-O2", "-Wno-float-conversion"], "loop", "main.c", variant, "-lm");
        var ran = tools.Run(Path.Combine(tools.Folder, "loop"), [charge.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        Assert.Equal(0, ran.Exit);
        return tools.Numbers(ran.Out);
    }
}
