using System.Text.Json;
using Heatwright.Plant;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Posed;

/// <summary>Tools that cannot do what they are asked to: the answer says so, with what and why, and holds no number that does not exist.</summary>
public class HopelessTests
{
    private const string Heat = """
        "heat": { "airC": 20, "nodes": [ { "name": "tip", "jPerK": 3, "airWPerK": 0.05 } ], "heaterNode": "tip", "workingNode": "tip", "sensorNode": "tip" }
        """;

    private static string Plant(string pack, string rest) => $$"""
        "pack": { "cell": { "capacityAh": 0.05, "openV": { "points": [[0, 3.0], [1, 4.2]] }, "instantOhm": { "flat": 0.1 } }{{pack}} }, {{Heat}}, {{rest}}
        """;

    [Fact]
    public void A_pack_under_its_cut_off_cannot_start()
    {
        using var posed = new Posed(Plant(""", "startCharge": 0.2""", """ "load": { "heater": { "ohm": 2 } }, "control": { "duty": 1 }, "end": { "cutoffV": 3.2 } """), [0.5]);
        Assert.Equal((0, "cut-off"), (posed.RunTimeS, posed.Stop));
        Assert.Contains(posed.Notes, note => note.StartsWith("It cannot start: the pack falls to its cut-off of 3.2 V", StringComparison.Ordinal));
    }

    [Fact]
    public void A_locked_out_module_cannot_start_and_its_power_is_said_to_be_unknown()
    {
        using var posed = new Posed(Plant("", """ "path": { "stepUp": { "setV": 9, "lockOutV": 4.5 } }, "load": { "heater": { "ohm": 8 } }, "control": { "duty": 1 }, "end": { } """), [0.5]);
        Assert.Equal((0, "locked-out"), (posed.RunTimeS, posed.Stop));
        Assert.Contains(posed.Notes, note => note.Contains("cannot start", StringComparison.Ordinal));
        Assert.Contains(posed.Notes, note => note.Contains("unknown", StringComparison.Ordinal));
        Assert.Equal(0, posed.Joule("heater"));
    }

    [Fact]
    public void A_load_that_no_pack_can_carry_collapses_at_once()
    {
        // By hand: 4.2²/(4·0.1) = 44.1 W is all that 0.1 Ω lets through.
        using var posed = new Posed(Plant("", """ "load": { "powerW": 44.2 }, "control": { "duty": 1 }, "end": { } """), [0.5]);
        Assert.Equal((0, "collapsed"), (posed.RunTimeS, posed.Stop));
        using var carried = new Posed(Plant("", """ "load": { "powerW": 40 }, "control": { "duty": 1 }, "end": { } """), [0.5]);
        Assert.True(carried.RunTimeS > 0);
        Assert.Equal("collapsed", carried.Stop);

        // The charge at which E² = 4·0.1·40: E = 4 V, s = 0.8333.
        Assert.Equal((4.0 - 3) / 1.2, carried.Quantity("charge left"), 1e-3);
    }

    [Fact]
    public void A_trip_at_the_first_moment_says_the_current_and_the_limit()
    {
        using var posed = new Posed(Plant(""", "tripA": 1.5""", """ "load": { "heater": { "ohm": 2 } }, "control": { "duty": 1 }, "end": { } """), [0.5]);
        Assert.Equal((0, "tripped"), (posed.RunTimeS, posed.Stop));
        Assert.Contains(posed.Notes, note => note.Contains("2 A pass what the protection lets through, 1.5 A", StringComparison.Ordinal));
    }

    [Fact]
    public void A_heater_that_is_as_good_as_open_never_gets_there_and_the_answer_has_no_warm_up_time()
    {
        using var posed = new Posed(Plant("", """ "load": { "heater": { "ohm": 1e9 } }, "control": { "duty": 1 }, "end": { "readyC": 100, "atMostS": 50 } """), [0.5]);
        Assert.Equal("time-over", posed.Stop);
        Assert.Contains(posed.Notes, note => note.Contains("never reaches 100 °C; 20.0 °C is its hottest", StringComparison.Ordinal));
        Assert.DoesNotContain("NaN", posed.Text, StringComparison.Ordinal);
        Assert.Empty(posed.Times("target reached"));
    }

    [Fact]
    public void More_work_than_the_charge_holds_is_counted()
    {
        using var posed = new Posed(Plant("", """
            "load": { "heater": { "ohm": 2 } }, "control": { "duty": 1 }, "work": { "contactWPerK": 0.05, "everyS": 5, "forS": 2, "count": 500 }, "end": { "cutoffV": 3.1 }
            """), [0.5]);
        Assert.Equal("cut-off", posed.Stop);
        double done = posed.Quantity("pieces of work");
        Assert.InRange(done, 5, 100);
        Assert.Contains(posed.Notes, note => note == $"Of 500 pieces of work {done:0} are done before it ends.");
    }

    /// <summary>What no tool can have, and what a tool cannot be without: refused with the field, the value, what is allowed and the next step, and nothing is run.</summary>
    [Theory]
    [InlineData("\"ohm\": 2", "\"ohm\": -2", "plants[0].load.heater.ohm", "-2")]
    [InlineData("\"ohm\": 2", "\"ohm\": null", "plants[0].load.heater.ohm", "null")]
    [InlineData("\"ohm\": 2", "", "plants[0].load.heater.ohm", "absent")]
    [InlineData("\"capacityAh\": 0.05", "\"capacityAh\": -1", "plants[0].pack.cell.capacityAh", "-1")]
    [InlineData("\"capacityAh\": 0.05, ", "", "plants[0].pack.cell.capacityAh", "absent")]
    [InlineData("[1, 4.2]", "[1, -4.2]", "plants[0].pack.cell.openV.points", "-4.2")]
    [InlineData("\"flat\": 0.1", "\"flat\": -0.1", "plants[0].pack.cell.instantOhm.flat", "-0.1")]
    [InlineData("\"jPerK\": 3", "\"jPerK\": 0", "plants[0].heat.nodes[0].jPerK", "0")]
    [InlineData("\"airWPerK\": 0.05", "\"airWPerK\": -0.05", "plants[0].heat.nodes[0].airWPerK", "-0.05")]
    [InlineData("\"airC\": 20", "\"airC\": -400", "plants[0].heat.airC", "-400")]
    [InlineData("\"duty\": 1", "\"duty\": 1.5", "plants[0].control.duty", "1.5")]
    [InlineData("\"ohm\": 2", "\"ohm\": 1e999", "plants[0].load.heater.ohm", "1e999")]
    [InlineData("\"load\": { \"heater\": { \"ohm\": 2 } }, ", "", "plants[0].load", "none")]
    public void A_number_that_cannot_be_or_is_not_there_is_refused(string from, string to, string where, string value)
    {
        string plant = Plant("", """ "load": { "heater": { "ohm": 2 } }, "control": { "duty": 1 }, "end": { "cutoffV": 3.1 } """).ReplaceLineEndings("");
        Assert.Contains(from, plant, StringComparison.Ordinal);
        using var bench = new Bench();
        Directory.CreateDirectory(bench.In("posed"));
        File.WriteAllText(Path.Combine(bench.In("posed"), "study.json"),
            $$"""{ "format": "heatwright-bundle-1", "name": "posed", "seed": 1, "note": "Invented.", "invented": true, "plants": [ { "id": "p", "letter": "A", "name": "posed", {{plant.Replace(from, to, StringComparison.Ordinal)}} } ] }""");
        var said = bench.Type("predict", bench.In("posed"), "--json");
        Assert.Equal((2, ""), (said.Exit, said.Out));
        using var told = JsonDocument.Parse(said.Error);
        var problem = told.RootElement.GetProperty("problems")[0];
        Assert.Equal(($"study.json, {where}", value), (problem.GetProperty("where").GetString(), problem.GetProperty("value").GetString()));
        Assert.All((string[])["what", "limit", "next"], part => Assert.NotEqual("", problem.GetProperty(part).GetString()));
    }

    [Fact]
    public async Task A_run_that_is_called_off_stops_within_a_tenth_of_a_second()
    {
        // An on-off controller that looks every millisecond for ten million seconds would take hours.
        var cell = new CellModel(1e9, new ChargeCurve.Flat(3.7), new ChargeCurve.Flat(0.1), new ChargeCurve.Flat(0), 1, new ChargeCurve.Flat(0), 1);
        var tool = new AssembledTool(new PackModel(cell, 1, 1, 0), new PathModel.Direct(), new LoadModel.Heater(2, 0, 293),
            new ThermalNetwork([new("tip", 3, 0.05)], [], 293), new ControllerModel.OnOff(400, 401) { PeriodS = 1e-3 })
        { MaxS = 1e7 };
        using var stop = new CancellationTokenSource();
        var run = Task.Run(() => PlantRunner.Run(tool, new RunSettings { Cancel = stop.Token }), TestContext.Current.CancellationToken);
        await Task.Delay(100, TestContext.Current.CancellationToken);
        Assert.False(run.IsCompleted);
        long start = System.Diagnostics.Stopwatch.GetTimestamp();
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => run);

        // A tenth of a second on a quiet machine; a busy one may hold the thread back, so the test allows ten times that.
        Assert.True(System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalSeconds < 1);
    }
}
