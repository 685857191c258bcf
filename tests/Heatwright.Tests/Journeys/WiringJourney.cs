using System.Text.Json;
using Heatwright.Jobs;

namespace Heatwright.Tests.Journeys;

/// <summary>Arrangements wired by typing: loops at once, clones, differences, and pairs that are refused or told.</summary>
public sealed class WiringJourney : IDisposable
{
    private readonly Bench bench = new();

    private string Study => bench.In("bow.study");

    public void Dispose() => bench.Dispose();

    public WiringJourney()
    {
        Do("new", Study);
        Do("part", "add", Study, "flat", "cell", "flat cell", "--count", "4", "--word", "chemistry=lithium-ion", "--measured", "ohms=60mohm (pulse)", "full volts=4.2V (rested)", "--sheet", "cut-off volts=3V (sheet)", "rated current=5A (sheet)");
        Do("part", "add", Study, "wire", "heater", "foam wire", "--measured", "ohms=2.71ohm (meter)");
    }

    [Fact]
    public void A_loop_of_measured_parts_is_the_one_worked_by_hand()
    {
        State("springs", "contacts", "ohms=10mohm (drop)");
        State("fet", "switch", "ohms=10mohm (drop)");
        State("cable", "leads", "ohms=10mohm (drop)");
        var loop = Json(Do("arrange", Study, "--cell", "flat", "--heater", "wire", "--json"));
        // By hand: 60 + 2·10 + 10 + 10 = 100 mΩ. Full: 4.2/(0.1 + 2.71) = 1.49466 A, 1.49466²·2.71 = 6.0542 W, cells at 4.2 − 1.49466·0.06 = 4.11032 V.
        Near(0.100, loop, "loopOhms");
        Near(1.49466, loop, "full", "packAmps");
        Near(6.0542, loop, "full", "loadWatts");
        Near(4.11032, loop, "full", "packVolts");
        // At the cut-off the cells stand at 3.0 V under load: 3/(0.04 + 2.71) = 1.09091 A, 1.09091²·2.71 = 3.22512 W.
        Near(1.09091, loop, "empty", "packAmps");
        Near(3.22512, loop, "empty", "loadWatts");
        Near(3.0, loop, "empty", "packVolts");
        // Every volt of the full pack is somewhere: drops and load make 4.2 V.
        double drops = loop.GetProperty("loop").EnumerateArray().Sum(step => step.GetProperty("voltsFull").GetProperty("value").GetDouble());
        Assert.Equal(4.2, drops + Number(loop, "full", "loadVolts"), 1e-9);
        // The only rating is the cell's: 1.49466 of 5 A.
        var limit = Assert.Single(loop.GetProperty("limits").EnumerateArray());
        Assert.Equal(0.298932, limit.GetProperty("share").GetDouble(), 1e-5);
    }

    [Fact]
    public void An_arrangement_is_changed_in_its_own_place_and_the_old_wiring_comes_back()
    {
        Do("arrange", Study, "--cell", "flat", "--heater", "wire", "--name", "bow");
        Do("part", "add", Study, "thin", "heater", "thin wire", "--measured", "ohms=4.44ohm (meter)");
        string said = Do("rewire", Study, "A", "--heater", "thin");
        Assert.Contains("as it was", said, StringComparison.Ordinal);
        var one = Assert.Single(OpenStudy.Read(Study).Value.Study.Arrangements);
        Assert.Equal(("A", "bow", "thin"), (one.Letter, one.Name, one.Heater?.Name));
        var again = bench.Type("rewire", Study, "A", "--heater", "thin");
        Assert.Equal(2, again.Exit);
        Assert.Contains("Nothing of the arrangement would change.", again.Error, StringComparison.Ordinal);
        Do("undo", Study);
        Assert.Equal("wire", Assert.Single(OpenStudy.Read(Study).Value.Study.Arrangements).Heater?.Name);
    }

    [Fact]
    public void What_nobody_chose_is_marked_assumed_and_so_are_its_numbers()
    {
        var loop = Json(Do("arrange", Study, "--cell", "flat", "--heater", "wire", "--json"));
        string[] assumed = [.. loop.GetProperty("places").EnumerateArray().Where(place => place.GetProperty("assumed").GetBoolean()).Select(place => place.GetProperty("place").GetString()!)];
        Assert.Equal(["contacts", "switch", "leads", "sensor", "controller", "handle"], assumed);
        Assert.Equal("assumed", loop.GetProperty("loopOhms").GetProperty("weakest").GetString());
        // Classes: touches 2 × 10 to 50, switch 5 to 40, leads 10 to 50 mΩ: 60 + 60 + 22.5 + 30 = 172.5 mΩ in the middle.
        Near(0.1725, loop, "loopOhms");
        // Rectangular half widths 2·20, 17.5, 20 mΩ: √((40² + 17.5² + 20²)/3) = 27.726 mΩ.
        Assert.Equal(0.027726, loop.GetProperty("loopOhms").GetProperty("standardDoubt").GetDouble(), 1e-6);
        Assert.Equal(0, Json(Do("part", "show", Study, "any-switch", "--json")).GetProperty("count").GetInt32());
    }

    [Fact]
    public void Of_two_of_a_kind_the_one_that_was_measured_is_taken_and_of_two_measured_ones_neither()
    {
        State("cable", "leads", "ohms=10mohm (drop)");
        Do("part", "add", Study, "scrap", "leads", "a bit of wire");
        Assert.Equal("cable", Leads(Do("arrange", Study, "--cell", "flat", "--heater", "wire", "--json")));
        State("other", "leads", "ohms=20mohm (drop)");
        Assert.Equal("any-leads", Leads(Do("arrange", Study, "--cell", "flat", "--heater", "wire", "--json")));

        static string? Leads(string said) => Json(said).GetProperty("places").EnumerateArray().Single(place => place.GetProperty("place").GetString() == "leads").GetProperty("part").GetString();
    }

    [Fact]
    public void A_clone_differs_in_what_was_said_and_nothing_else()
    {
        Do("part", "add", Study, "thick", "heater", "thick wire", "--measured", "ohms=1.2ohm (meter)");
        Do("arrange", Study, "--cell", "flat", "--heater", "wire");
        string shown = Do("clone", Study, "A", "--heater", "thick");
        Assert.Contains("foam wire", shown, StringComparison.Ordinal);
        var found = Json(Do("differences", Study, "A", "B", "--json"));
        var row = Assert.Single(found.GetProperty("wiring").EnumerateArray());
        Assert.Equal("heater and working end foam wire thick wire", $"{row.GetProperty("what")} {row.GetProperty("one")} {row.GetProperty("other")}");
        var same = Refused("clone", Study, "A");
        Assert.Contains("does not differ", same, StringComparison.Ordinal);
        Assert.Equal(2, OpenStudy.Read(Study).Value.Study.Arrangements.Count);
    }

    [Fact]
    public void A_step_up_comes_to_rest_where_watts_and_volts_agree()
    {
        Do("part", "add", Study, "module", "step-up", "module", "--measured", "set volts=12V (no load)", "loss fixed=0.1W (fit)", "loss per ampere=0.15V (fit)", "loss per ampere squared=60mohm (fit)", "limit current=20A (tried)", "lock-out volts=2V (tried)");
        Do("part", "add", Study, "stick", "heater", "stick", "--measured", "ohms=14.4ohm (meter)");
        State("springs", "contacts", "ohms=10mohm (drop)");
        State("fet", "switch", "ohms=10mohm (drop)");
        State("cable", "leads", "ohms=10mohm (drop)");
        var loop = Json(Do("arrange", Study, "--cell", "flat", "--heater", "stick", "--step-up", "module", "--json"));
        // Second method: no formula, the balance itself. 12²/14.4 = 10 W out; the module asks I so that I·(4.2 − 0.1·I) = 10 + 0.1 + 0.15·I + 0.06·I².
        double amps = 0;
        for (int i = 0; i < 200; i++)
        {
            amps = (10 + 0.1 + (0.15 * amps) + (0.06 * amps * amps)) / (4.2 - (0.1 * amps));
        }

        Near(amps, loop, "full", "packAmps");
        Near(10, loop, "full", "loadWatts");
        Near(12, loop, "full", "loadVolts");
        Assert.Equal("regulated", loop.GetProperty("full").GetProperty("region").GetString());
        Near(4.2 - (0.1 * amps), loop, "full", "moduleVolts");
    }

    [Theory]
    [InlineData("charges another kind of cell", "--charger", "iron-charger")]
    [InlineData("watches another number of cells", "--supervision", "pair-board")]
    [InlineData("opens at the working current", "--supervision", "weak-board")]
    [InlineData("driven above its label volts", "--pack", "3S1P")]
    [InlineData("does not even begin to conduct", "--switch", "hard-fet")]
    public void Impossible_pairs_are_refused_with_the_remedy_and_nothing_is_stored(string says, string option, string part)
    {
        Do("part", "add", Study, "iron-charger", "charger", "iron charger", "--word", "chemistry=lithium iron phosphate", "cells=1");
        Do("part", "add", Study, "pair-board", "supervision", "pair board", "--word", "cells=2");
        Do("part", "add", Study, "weak-board", "supervision", "weak board", "--word", "cells=1", "--claimed", "trip current=1A (label)");
        Do("part", "add", Study, "hard-fet", "switch", "hard switch", "--sheet", "threshold volts=4V (sheet)");
        Do("part", "state", Study, "wire", "--claimed", "rated volts=6V (label)");
        string before = OpenStudy.Read(Study).Value.Fingerprint;
        string error = Refused("arrange", Study, "--cell", "flat", "--heater", "wire", option, part);
        Assert.Contains(says, error, StringComparison.Ordinal);
        Assert.Matches("  next   .{20,}", error);
        Assert.Equal(before, OpenStudy.Read(Study).Value.Fingerprint);
    }

    [Theory]
    [InlineData("A series pack without supervision", "--pack", "2S1P")]
    [InlineData("The gate volts of", "--switch", "loose-fet")]
    [InlineData("is not fully on at the empty pack", "--switch", "slow-fet")]
    [InlineData("may open when it is warm", "--supervision", "near-board")]
    public void Doubtful_pairs_are_told_and_stored(string says, string option, string part)
    {
        Do("part", "add", Study, "slow-fet", "switch", "slow switch", "--sheet", "gate volts=4.5V (sheet)");
        Do("part", "add", Study, "loose-fet", "switch", "loose switch");
        Do("part", "add", Study, "near-board", "supervision", "near board", "--word", "cells=1", "--claimed", "trip current=2A (label)");
        string shown = Do("arrange", Study, "--cell", "flat", "--heater", "wire", option, part);
        Assert.Contains(says, Flat(shown), StringComparison.Ordinal);
        Assert.Single(OpenStudy.Read(Study).Value.Study.Arrangements);
    }

    [Fact]
    public void A_heater_above_its_label_needs_both_ceiling_and_cut_out()
    {
        Do("part", "state", Study, "wire", "--claimed", "rated volts=6V (label)");
        Do("part", "add", Study, "link", "cut-out", "thermal link");
        // Three cells give about 12 V at a 6 V wire: a quarter of the time is what its label stands.
        string bare = Refused("arrange", Study, "--cell", "flat", "--heater", "wire", "--pack", "3S1P", "--duty", "0.2");
        Assert.Contains("by the firmware alone", bare, StringComparison.Ordinal);
        string both = Do("arrange", Study, "--cell", "flat", "--heater", "wire", "--pack", "3S1P", "--duty", "20%", "--cut-out", "link");
        Assert.Contains("Keep ceiling and cut-out", Flat(both), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("The part is not on the shelf", "--heater", "wyre")]
    [InlineData("The part is of another kind", "--heater", "flat")]
    [InlineData("does not work without", "--cell", "none")]
    [InlineData("no duty", "--duty", "1.4")]
    [InlineData("", "--pack", "two")]
    public void A_slip_says_what_could_be_typed(string says, string option, string typed)
    {
        string error = Refused(option == "--heater" ? ["arrange", Study, "--cell", "flat", option, typed] : ["arrange", Study, "--heater", "wire", option, typed]);
        Assert.Contains(says, error, StringComparison.Ordinal);
        Assert.Matches("  next   .{8,}", error);
    }

    private void State(string id, string kind, string value) => Do("part", "add", Study, id, kind, id, "--measured", value);

    private string Do(params string[] words)
    {
        var done = bench.Type(words);
        Assert.True(done.Exit == 0, $"{string.Join(' ', words)}\n{done.Error}");
        return done.Out;
    }

    private string Refused(params string[] words)
    {
        var done = bench.Type(words);
        Assert.Equal(2, done.Exit);
        return done.Error;
    }

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;

    private static double Number(JsonElement json, params string[] path) => path.Aggregate(json, (at, name) => at.GetProperty(name)).GetProperty("value").GetDouble();

    private static void Near(double hand, JsonElement json, params string[] path) => Assert.Equal(hand, Number(json, path), 2e-5 * Math.Max(1, Math.Abs(hand)));
}
