namespace Heatwright.Tests.Posed;

/// <summary>Tools of several topologies, each posed in a bundle with every number stated, against Runge–Kutta steps of a 64th of the control period on the plain
/// equations with operating points found by halving. All numbers are invented; the expected values come from the second method, which shares no code.</summary>
public class PosedTests
{
    private const string ThreePoints = """{ "points": [[0, 2.9], [0.1, 3.35], [0.5, 3.65], [1, 4.15]] }""";
    private static readonly Func<double, double> Volts = PlainPaths.Pieces((0, 2.9), (0.1, 3.35), (0.5, 3.65), (1, 4.15));

    [Fact]
    public void A_foam_bow_on_two_cells_behind_a_step_down_module()
    {
        double[] at = [0.5, 10, 33.3, 60, 120, 200, 260];
        using var posed = new Posed($$"""
            "pack": { "cell": { "capacityAh": 0.12, "openV": {{ThreePoints}}, "instantOhm": { "flat": 0.06 }, "shortOhm": { "flat": 0.02 }, "shortS": 12, "longOhm": { "flat": 0.03 }, "longS": 90 },
                      "series": 2, "loopOhm": 0.08, "drainOnA": 0.02, "drainOffA": 0.004 },
            "path": { "stepDown": { "setV": 5, "fixedW": 0.06, "dropV": 0.1, "slopeOhm": 0.05, "lockOutV": 4 } },
            "load": { "heater": { "ohm": 2.4, "alphaPerK": 0.0009 } },
            "heat": { "airC": 21, "nodes": [ { "name": "wire", "jPerK": 0.8, "airWPerK125": 0.004, "radiatingM2": 0.0002 }, { "name": "bow", "jPerK": 12, "airWPerK": 0.06 } ],
                      "links": [ { "from": "wire", "to": "bow", "wPerK": 0.012 } ], "heaterNode": "wire", "workingNode": "wire", "sensorNode": "wire", "sensorLagS": 0.6, "electronicsNode": "bow" },
            "control": { "pi": { "targetC": 220, "periodS": 0.25, "gainWPerK": 0.15, "integralWPerKS": 0.02, "nominalOhm": 2.4, "maxDuty": 0.97 } },
            "work": { "contactWPerK": 0.02, "aboveC": 100, "firstS": 40, "everyS": 17, "forS": 5 },
            "end": { "cutoffV": 6.4, "onlyWhileOn": true, "readyC": 200 },
            "marks": [ { "name": "bow warm", "at": "bow", "c": 35 }, { "name": "sensor hot", "at": "sensor", "c": 210 } ]
            """, at);
        double Ohm(double c) => 2.4 * (1 + (0.0009 * (c - 20)));
        var cell = new PlainCell(0.12 * 3600, Volts, 0.06, 0.02, 12, 0.03, 90, 1);
        var tool = new PlainTool
        {
            Groups = [[cell], [cell]],
            Path = PlainPaths.StepDown(5, 0.06, 0.1, 0.05, Ohm),
            LoopOhm = 0.08,
            DrainOnA = 0.02,
            DrainOffA = 0.004,
            AirC = 21,
            JPerK = [0.8, 12],
            AirWPerK = [0, 0.06],
            AirWPerK125 = [0.004, 0],
            RadiatingM2 = [0.0002, 0],
            Links = [(0, 1, 0.012)],
            ElectronicsNode = 1,
            SensorLagS = 0.6,
            Work = (0.02, 100),
        };
        double integral = 0;
        var plain = new PlainRun(tool)
        {
            At = at,
            Alive = (y, duty) => duty > 0 ? tool.On(y).PackV - 6.4 : 1,
            Pressed = t => t >= 40 - 1e-9 && (t - 40) % 17 < 5 - 1e-9,
            Marks = new() { ["bow warm"] = y => tool.NodeC(y, 1) - 35, ["sensor hot"] = y => tool.SensorC(y) - 210, ["target reached"] = y => tool.NodeC(y, 0) - 200 },
            Decide = (_, y) =>
            {
                double full = 5.0 * 5.0 / 2.4;
                double error = 220 - tool.SensorC(y);
                double wanted = (0.15 * error) + integral;
                double given = Math.Clamp(wanted, 0, 0.97 * full);
                integral += (wanted > 0.97 * full && error > 0) || (wanted < 0 && error < 0) ? 0 : 0.25 * 0.02 * error;
                return given / full;
            },
        }.Go(3000);
        posed.Agrees(tool, plain, "cut-off", "wire", "bow");
        Assert.Equal("regulated", posed.Region(3));
    }

    [Fact]
    public void A_lens_dew_band_behind_a_module_that_steps_up_and_down_and_whose_input_current_is_limited_while_cold()
    {
        double[] at = [0.25, 2, 5, 9, 30, 90, 180];
        using var posed = new Posed($$"""
            "pack": { "cell": { "capacityAh": 0.1, "openV": {{ThreePoints}}, "instantOhm": { "flat": 0.09 }, "shortOhm": { "flat": 0.03 }, "shortS": 15 }, "loopOhm": 0.05 },
            "path": { "stepUpDown": { "setV": 3.6, "fixedW": 0.08, "dropV": 0.12, "slopeOhm": 0.07, "limitA": 1.5, "lockOutV": 2.4 } },
            "load": { "heater": { "ohm": 2.2, "alphaPerK": 0.0045 } },
            "heat": { "airC": 5, "nodes": [ { "name": "band", "jPerK": 0.5, "airWPerK": 0.03 }, { "name": "lens", "jPerK": 40, "airWPerK": 0.09 } ],
                      "links": [ { "from": "band", "to": "lens", "wPerK": 0.03 } ], "heaterNode": "band", "workingNode": "lens", "sensorNode": "lens" },
            "control": { "duty": 0.9 },
            "end": { "cutoffV": 3.05 },
            "marks": [ { "name": "lens above dew", "at": "lens", "c": 8 } ]
            """, at);
        double Ohm(double c) => 2.2 * (1 + (0.0045 * (c - 20)));
        var tool = new PlainTool
        {
            Groups = [[new PlainCell(360, Volts, 0.09, 0.03, 15, 0, 1, 1)]],
            Path = PlainPaths.OverInput(3.6, 0.08, 0.12, 0.07, 1.5, Ohm),
            LoopOhm = 0.05,
            AirC = 5,
            JPerK = [0.5, 40],
            AirWPerK = [0.03, 0.09],
            Links = [(0, 1, 0.03)],
            Working = 1,
        };
        var plain = new PlainRun(tool)
        {
            At = at,
            Alive = (y, _) => tool.On(y).PackV - 3.05,
            Decide = (_, _) => 0.9,
            // Regulated from where the limit no longer holds: by then the load takes the 3.6²/R that it is set to.
            Marks = new() { ["lens above dew"] = y => tool.NodeC(y, 1) - 8, ["region regulated"] = y => 1.5 - tool.On(y).Amps - 1e-9 },
        }.Go(2000);
        posed.Agrees(tool, plain, "cut-off", "band", "lens");
        Assert.Equal("current-limited", posed.Region(0));
        Assert.Equal("regulated", posed.Region(3));
    }

    [Fact]
    public void A_wax_pen_behind_a_linear_regulator_that_runs_out_of_headroom()
    {
        double[] at = [0.5, 20, 77.7, 150, 250, 330];
        using var posed = new Posed($$"""
            "pack": { "cell": { "capacityAh": 0.09, "openV": {{ThreePoints}}, "instantOhm": { "flat": 0.08 }, "longOhm": { "flat": 0.05 }, "longS": 60 }, "series": 2, "parallel": 2, "loopOhm": 0.1, "drainOffA": 0.01 },
            "path": { "linear": { "setV": 6.2, "dropoutV": 0.5, "quiescentA": 0.003 } },
            "load": { "heater": { "ohm": 3.3, "alphaPerK": 0.0002 } },
            "heat": { "airC": 24, "nodes": [ { "name": "tip", "jPerK": 4, "airWPerK": 0.045, "airWPerK125": 0.003 }, { "name": "body", "jPerK": 20, "airWPerK": 0.1 } ],
                      "links": [ { "from": "tip", "to": "body", "wPerK": 0.02 } ], "heaterNode": "tip", "workingNode": "tip", "sensorNode": "tip", "electronicsNode": "body" },
            "control": { "pi": { "targetC": 85, "periodS": 0.5, "gainWPerK": 0.4, "integralWPerKS": 0.01, "trackingPerS": 0.05, "nominalOhm": 3.3, "nominalV": 6.2, "mostW": 9 }, "readingStepK": 0.25 },
            "end": { "cutoffV": 5.9 },
            "marks": [ { "name": "wax melts", "at": "tip", "c": 64 } ]
            """, at);
        double Ohm(double c) => 3.3 * (1 + (0.0002 * (c - 20)));
        var cell = new PlainCell(0.09 * 3600, Volts, 0.08, 0, 1, 0.05, 60, 1);
        var tool = new PlainTool
        {
            Groups = [[cell, cell], [cell, cell]],
            Path = PlainPaths.Linear(6.2, 0.5, 0.003, Ohm),
            LoopOhm = 0.1,
            DrainOffA = 0.01,
            AirC = 24,
            JPerK = [4, 20],
            AirWPerK = [0.045, 0.1],
            AirWPerK125 = [0.003, 0],
            Links = [(0, 1, 0.02)],
            ElectronicsNode = 1,
        };
        double integral = 0;
        var plain = new PlainRun(tool)
        {
            PeriodS = 0.5,
            At = at,
            Alive = (y, _) => tool.On(y).PackV - 5.9,
            Marks = new() { ["wax melts"] = y => tool.NodeC(y, 0) - 64, ["region duty-limited"] = y => (6.2 * 6.2 / Ohm(tool.NodeC(y, 0))) - tool.On(y).LoadW - 1e-9 },
            Decide = (_, y) =>
            {
                double full = 6.2 * 6.2 / 3.3;
                double error = 85 - (Math.Round((tool.SensorC(y) / 0.25) + 1e-12, MidpointRounding.AwayFromZero) * 0.25);
                double wanted = (0.4 * error) + integral;
                double given = Math.Max(0, Math.Min(wanted, Math.Min(9, full)));
                integral += 0.5 * ((0.01 * error) + (0.05 * (given - wanted)));
                return given / full;
            },
        }.Go(3000);
        posed.Agrees(tool, plain, "cut-off", "tip", "body");
        Assert.Equal("regulated", posed.Region(0));
    }

    [Fact]
    public void An_inspection_lamp_of_constant_current()
    {
        double[] at = [1, 100, 300, 500];
        using var posed = new Posed($$"""
            "pack": { "cell": { "capacityAh": 0.1, "openV": { "formula": { "c0": 3.685, "c1": 0.2156, "c2": -0.1178, "c3": 0.3201, "a": -1.031, "b": 35 } }, "instantOhm": { "flat": 0.1 },
                      "shortOhm": { "flat": 0.05 }, "shortS": 30, "longOhm": { "flat": 0.04 }, "longS": 220 }, "loopOhm": 0.07, "drainOnA": 0.012 },
            "load": { "currentA": 0.6 },
            "heat": { "airC": 20, "nodes": [ { "name": "lamp", "jPerK": 9, "airWPerK": 0.04 } ], "heaterNode": "lamp", "workingNode": "lamp", "sensorNode": "lamp" },
            "control": { "duty": 1 },
            "end": { "cutoffV": 3.0 }
            """, at);
        // Open volts: coefficients of [chen-2006] as published; the rest invented.
        var tool = new PlainTool
        {
            Groups = [[new PlainCell(360, s => (-1.031 * Math.Exp(-35 * s)) + 3.685 + (0.2156 * s) - (0.1178 * s * s) + (0.3201 * s * s * s), 0.1, 0.05, 30, 0.04, 220, 1)]],
            Path = PlainPaths.Amps(0.6),
            LoopOhm = 0.07,
            DrainOnA = 0.012,
            AirC = 20,
            JPerK = [9],
            AirWPerK = [0.04],
        };
        var plain = new PlainRun(tool) { PeriodS = 1, At = at, Alive = (y, _) => tool.On(y).PackV - 3.0 }.Go(3000);
        posed.Agrees(tool, plain, "cut-off", "lamp");
        Assert.Equal(0.6 * 0.6 * 0.07 * plain.EndS, posed.Joule("lost in loop"), 1e-5);
    }

    [Fact]
    public void A_rope_knife_switched_on_and_off_between_two_temperatures()
    {
        double[] at = [2, 20, 50, 111.1, 170];
        using var posed = new Posed($$"""
            "pack": { "cell": { "capacityAh": 0.5, "openV": {{ThreePoints}}, "instantOhm": { "flat": 0.05 }, "shortOhm": { "flat": 0.03 }, "shortS": 8 }, "series": 2, "loopOhm": 0.06, "drainOnA": 0.03, "drainOffA": 0.005 },
            "load": { "heater": { "ohm": 2, "alphaPerK": 0.001 } },
            "heat": { "airC": 25, "nodes": [ { "name": "blade", "jPerK": 1.5, "airWPerK": 0.01, "airWPerK125": 0.003, "radiatingM2": 0.0006 }, { "name": "shank", "jPerK": 6, "airWPerK": 0.03 } ],
                      "links": [ { "from": "blade", "to": "shank", "wPerK": 0.02 } ], "heaterNode": "blade", "workingNode": "blade", "sensorNode": "blade", "sensorLagS": 0.5 },
            "control": { "onOff": { "lowC": 348, "highC": 352 } },
            "end": { "cutoffV": 5.9, "onlyWhileOn": true, "readyC": 340 }
            """, at);
        var cell = new PlainCell(0.5 * 3600, Volts, 0.05, 0.03, 8, 0, 1, 1);
        var tool = new PlainTool
        {
            Groups = [[cell], [cell]],
            Path = PlainPaths.Direct(c => 2 * (1 + (0.001 * (c - 20)))),
            LoopOhm = 0.06,
            DrainOnA = 0.03,
            DrainOffA = 0.005,
            AirC = 25,
            JPerK = [1.5, 6],
            AirWPerK = [0.01, 0.03],
            AirWPerK125 = [0.003, 0],
            RadiatingM2 = [0.0006, 0],
            Links = [(0, 1, 0.02)],
            SensorLagS = 0.5,
        };
        var plain = new PlainRun(tool)
        {
            PeriodS = 1,
            Band = (348, 352),
            At = at,
            Alive = (y, duty) => duty > 0 ? tool.On(y).PackV - 5.9 : 1,
            Marks = new() { ["target reached"] = y => tool.NodeC(y, 0) - 340 },
        }.Go(3000);
        posed.Agrees(tool, plain, "cut-off", "blade", "shank");
        double[] switched = [.. posed.Times("switched on").Concat(posed.Times("switched off")).Order().SkipWhile(t => t < 1e-6)];
        Assert.True(plain.Switched.Count > 10);
        Assert.Equal(plain.Switched.Count, switched.Length);
        Assert.All(plain.Switched.Zip(switched), pair => Assert.Equal(pair.First, pair.Second, (1e-5 * pair.First) + 1e-4));
    }

    [Fact]
    public void A_tool_of_four_nodes_whose_cell_warms_in_its_case_behind_a_step_up_module()
    {
        double[] at = [1, 15, 40, 90, 140, 200];
        using var posed = new Posed($$"""
            "pack": { "cell": { "capacityAh": 0.35, "openV": {{ThreePoints}}, "instantOhm": { "flat": 0.04 }, "shortOhm": { "flat": 0.02 }, "shortS": 10, "longOhm": { "flat": 0.02 }, "longS": 70, "activationJPerMol": 25000 },
                      "parallel": 2, "loopOhm": 0.03, "drainOnA": 0.015, "drainOffA": 0.015 },
            "path": { "stepUp": { "setV": 9, "fixedW": 0.12, "dropV": 0.2, "slopeOhm": 0.04, "limitA": 12, "lockOutV": 2.2 } },
            "load": { "heater": { "ohm": 6, "alphaPerK": 0.0006 } },
            "heat": { "airC": 4, "nodes": [ { "name": "end", "jPerK": 2.2, "airWPerK": 0.02, "radiatingM2": 0.0003 }, { "name": "case", "jPerK": 30, "airWPerK": 0.12 }, { "name": "cells", "jPerK": 42 }, { "name": "board", "jPerK": 6 } ],
                      "links": [ { "from": "end", "to": "case", "wPerK": 0.01 }, { "from": "case", "to": "cells", "wPerK": 0.15 }, { "from": "case", "to": "board", "wPerK": 0.08 } ],
                      "heaterNode": "end", "workingNode": "end", "sensorNode": "end", "cellNode": "cells", "electronicsNode": "board" },
            "control": { "duty": 1 },
            "end": { "cutoffV": 2.9 },
            "marks": [ { "name": "cells at 10", "at": "cells", "c": 10 }, { "name": "end at 250", "at": "end", "c": 250 } ]
            """, at);
        var cell = new PlainCell(0.35 * 3600, Volts, 0.04, 0.02, 10, 0.02, 70, 1) { ActivationJPerMol = 25_000 };
        var tool = new PlainTool
        {
            Groups = [[cell, cell]],
            Path = PlainPaths.OverInput(9, 0.12, 0.2, 0.04, 12, c => 6 * (1 + (0.0006 * (c - 20)))),
            LoopOhm = 0.03,
            DrainOnA = 0.015,
            DrainOffA = 0.015,
            AirC = 4,
            JPerK = [2.2, 30, 42, 6],
            AirWPerK = [0.02, 0.12, 0, 0],
            RadiatingM2 = [0.0003, 0, 0, 0],
            Links = [(0, 1, 0.01), (1, 2, 0.15), (1, 3, 0.08)],
            CellNode = 2,
            ElectronicsNode = 3,
        };
        var plain = new PlainRun(tool)
        {
            PeriodS = 1,
            At = at,
            Alive = (y, _) => tool.On(y).PackV - 2.9,
            Marks = new() { ["cells at 10"] = y => tool.NodeC(y, 2) - 10, ["end at 250"] = y => tool.NodeC(y, 0) - 250 },
        }.Go(3000);
        posed.Agrees(tool, plain, "cut-off", "end", "case", "cells", "board");
    }

    [Fact]
    public void A_pack_of_cells_that_differ_ends_at_its_weakest_cell()
    {
        double[] at = [1, 30, 90, 170];
        using var posed = new Posed($$"""
            "pack": { "cell": { "capacityAh": 0.1, "openV": {{ThreePoints}}, "instantOhm": { "flat": 0.07 }, "shortOhm": { "flat": 0.02 }, "shortS": 12 },
                      "groups": [ [ { "capacityFactor": 0.85, "ohmFactor": 1.3, "startCharge": 0.97 }, {} ], [ { "capacityFactor": 1.02 }, { "ohmFactor": 0.9, "startCharge": 0.9 } ] ], "loopOhm": 0.05 },
            "load": { "powerW": 11 },
            "heat": { "airC": 22, "nodes": [ { "name": "lump", "jPerK": 20, "airWPerK": 0.1 } ], "heaterNode": "lump", "workingNode": "lump", "sensorNode": "lump" },
            "control": { "duty": 0.9 },
            "end": { "cellCutoffV": 2.95 }
            """, at);
        PlainCell Cell(double capacity, double ohm, double start) => new(360 * capacity, Volts, 0.07 * ohm, 0.02 * ohm, 12, 0, 1, start);
        var tool = new PlainTool
        {
            Groups = [[Cell(0.85, 1.3, 0.97), Cell(1, 1, 1)], [Cell(1.02, 1, 1), Cell(1, 0.9, 0.9)]],
            Path = (e, r, _) => (PlainPaths.InputFor(e, r, 11, _ => 0), 11, 0),
            LoopOhm = 0.05,
            AirC = 22,
            JPerK = [20],
            AirWPerK = [0.1],
        };
        var plain = new PlainRun(tool) { PeriodS = 1, At = at, Decide = (_, _) => 0.9, Alive = (y, _) => tool.On(y).LowestV - 2.95 }.Go(3000);
        posed.Agrees(tool, plain, "cell-cut-off", "lump");
    }

    [Fact]
    public void A_pack_is_charged_at_set_current_then_at_set_volts()
    {
        double[] at = [5, 200, 700, 1200];
        using var posed = new Posed($$"""
            "pack": { "cell": { "capacityAh": 0.1, "openV": {{ThreePoints}}, "instantOhm": { "flat": 0.15 }, "shortOhm": { "flat": 0.05 }, "shortS": 25, "activationJPerMol": 15000 }, "series": 2, "loopOhm": 0.05, "startCharge": 0.2 },
            "charger": { "setA": 0.25, "holdV": 8.25, "endA": 0.02 },
            "heat": { "airC": 18, "nodes": [ { "name": "cells", "jPerK": 8, "airWPerK": 0.03 } ], "heaterNode": "cells", "workingNode": "cells", "sensorNode": "cells", "cellNode": "cells" },
            "end": { "atMostS": 20000 }
            """, at);
        var cell = new PlainCell(360, Volts, 0.15, 0.05, 25, 0, 1, 0.2) { ActivationJPerMol = 15_000 };
        var tool = new PlainTool { Groups = [[cell], [cell]], Path = PlainPaths.Charger(0.25, 8.25), LoopOhm = 0.05, AirC = 18, JPerK = [8], AirWPerK = [0.03], CellNode = 0 };
        var plain = new PlainRun(tool)
        {
            PeriodS = 4,
            At = at,
            Alive = (y, _) => -tool.On(y).Amps - 0.02,
            Marks = new() { ["region charging at set volts"] = y => tool.On(y).Amps + 0.25 - 1e-9 },
        }.Go(20_000);
        posed.Agrees(tool, plain, "charged", "cells");
        Assert.Equal("charging at set current", posed.Region(0));
        Assert.Single(plain.Crossed);
    }
}
