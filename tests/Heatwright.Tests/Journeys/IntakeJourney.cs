using System.Text.Json;

namespace Heatwright.Tests.Journeys;

/// <summary>How readings are taken in: watts in place of volts and amps, headings, logs that came before, and trials that told nothing. Expected numbers by hand.</summary>
public sealed class IntakeJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    private string File => bench.In("band.study");

    /// <summary>20 J/K that lose 0.1 W/K to air of 20 °C, at 10 W: 20 + 100·(1 − e^(−t/200)).</summary>
    private static IEnumerable<string> Rows(string between, Func<string, string, string> row) => Enumerable.Range(0, 25).Select(i => row($"{24 * i}", FormattableString.Invariant($"{20 + (100 * (1 - Math.Exp(-24 * i / 200.0))):0.0}")).Replace(" ", between, StringComparison.Ordinal));

    [Fact]
    public void A_warm_up_is_typed_and_logged_with_watts_in_place_of_volts_and_amps()
    {
        Begun();
        Headed("headed", "time degrees watts\n" + string.Join('\n', Rows(" ", (t, c) => $"{t} {c} 10")));
        Headed("named", string.Join('\n', Rows(" ", (t, c) => $"{t} {c} 10")), "--columns", "time,degrees,watts");
        Fine("trial", "add", File, "warm-up", "--on", "band", "--name", "logged");
        System.IO.File.WriteAllText(bench.In("watts.csv"), "t (s);degC;W\n" + string.Join('\n', Rows(";", (t, c) => $"{t} {c} 10")) + "\n");
        Fine("log", "import", bench.In("watts.csv"), File, "--trial", "logged", "--set", "air=20C");
        var found = Json("part", "show", File, "band").ToString();
        Assert.Contains("heat capacity", found, StringComparison.Ordinal);
        foreach (var trial in Json("trial", "list", File).EnumerateArray())
        {
            Assert.Equal(25, trial.GetProperty("readings").GetInt32());
            Assert.Empty(trial.GetProperty("problems").EnumerateArray());
        }

        var capacity = Json("trial", "list", File).EnumerateArray().SelectMany(trial => trial.GetProperty("findings").EnumerateArray()).First(finding => finding.GetProperty("name").GetString() == "heat capacity");
        Assert.Equal(20, capacity.GetProperty("value").GetDouble(), 0.3);

        void Headed(string name, string lines, params string[] more)
        {
            Fine("trial", "add", File, "warm-up", "--on", "band", "--name", name);
            var taken = bench.TypeWith(lines + "\n", ["trial", "enter", File, name, "--set", "air=20C", .. more]);
            Assert.True(taken.Exit == 0, taken.Error);
        }
    }

    [Theory]
    [InlineData("t (s)\tdegC\tV\tA", "time 60 s  volts 3.59 V  amps 3.9 A  degrees 34 °C")]
    [InlineData("s\tC\tV\tA", "time 60 s  volts 3.59 V  amps 3.9 A  degrees 34 °C")]
    [InlineData("t\tT_blade (C)\tU\tI_heater", "time 60 s  volts 3.59 V  amps 3.9 A  degrees 34 °C")]
    public void Units_alone_are_a_heading(string heading, string told)
    {
        Begun();
        Fine("trial", "add", File, "warm-up", "--on", "band", "--name", "up");
        var taken = bench.TypeWith($"{heading}\n0\t22\t3.59\t3.9\n60\t34\t3.59\t3.9\n", "trial", "enter", File, "up");
        Assert.True(taken.Exit == 0, taken.Error);
        Assert.Contains(told, taken.Out.Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Theory, InlineData("time\tdegrees\tvolts"), InlineData("Zeit\tGrad\tVolt\tAmpere\tNotiz"), InlineData("time\tvolts\tamps\tohms")]
    public void A_heading_that_is_not_understood_is_told_once_and_nothing_below_it_is_taken(string heading)
    {
        Begun();
        Fine("trial", "add", File, "warm-up", "--on", "band", "--name", "up");
        string cells = string.Join('\t', heading.Split('\t').Select((_, i) => $"{i + 1}"));
        var taken = bench.TypeWith($"{heading}\n{cells}\n{cells}\n{cells}\n", "trial", "enter", File, "up");
        Assert.Equal(2, taken.Exit);
        Assert.Equal(2, taken.Error.Split("where  ").Length);
        Assert.Contains("The heading does not say where a needed column is.", taken.Error, StringComparison.Ordinal);
        Assert.Contains("No run was begun", taken.Out, StringComparison.Ordinal);
        Assert.Empty(Json("trial", "list", File)[0].GetProperty("runs").EnumerateArray());
    }

    [Fact]
    public void A_log_is_taken_in_once_and_what_it_holds_beside_is_told()
    {
        Begun();
        Fine("trial", "add", File, "capacity", "--on", "round", "--name", "cap");
        Fine("trial", "add", File, "discharge", "--on", "round", "--name", "flat");
        System.IO.File.WriteAllText(bench.In("flat.csv"), "minute,U_cell_mV,load_A,room_C,spare_ohm\n0,4100,1.5,21,1\n1,4050,1.5,21,2\n2,4010,1.5,21,1\n");
        string[] import = ["log", "import", bench.In("flat.csv"), File, "--trial"];
        var done = bench.Type([.. import, "cap"]);
        Assert.True(done.Exit == 0, done.Error);
        Assert.Contains("amps from 'load'", Flat(done.Out), StringComparison.Ordinal);
        Assert.Contains("Not taken, for a run of this trial has no place for it: 'spare'.", Flat(done.Out), StringComparison.Ordinal);

        var again = bench.Type([.. import, "cap"]);
        Assert.Equal(2, again.Exit);
        Assert.Contains("same content as run 'cap-1'", Flat(again.Error), StringComparison.Ordinal);

        // Another trial may rest on the same file; it is told. Degrees of the room are no degrees of the cell unless the maker says so.
        var other = bench.Type([.. import, "flat"]);
        Assert.True(other.Exit == 0, other.Error);
        Assert.Contains("The same content as run 'cap-1' of another trial", Flat(other.Out), StringComparison.Ordinal);
        Assert.Contains("'room' was not taken. If it is cell degrees of this run, undo this and import again with --columns 'cell degrees=room'.", Flat(other.Out), StringComparison.Ordinal);

        // Struck out, the run may be taken in again.
        Fine("strike", File, "cap-1", "all", "--because", "wrong cell");
        Fine([.. import, "cap"]);
    }

    [Fact]
    public void The_study_tells_which_trial_told_nothing_and_shows_what_was_read_in_the_unit_of_what_is_claimed()
    {
        Begun();
        Fine("part", "state", File, "band", "--claimed", "ohms=2.5ohm");
        Fine("part", "state", File, "round", "--claimed", "capacity=3000mAh");
        Fine("trial", "add", File, "warm-up", "--on", "band", "--name", "short");
        Assert.Equal(0, bench.TypeWith("0 5 2 20\n24 5 2 31\n", "trial", "enter", File, "short").Exit);
        Fine("trial", "add", File, "warm-up", "--on", "band", "--name", "not-read");
        Fine("trial", "add", File, "capacity", "--on", "round", "--name", "cap");

        // 2 A for one hour down to 2.8 V: 2 Ah, 2000 mAh.
        Assert.Equal(0, bench.TypeWith("time volts amps\n0 4.1 2\n900 3.9 2\n1800 3.7 2\n2700 3.4 2\n3600 2.8 2\n", "trial", "enter", File, "cap").Exit);
        string told = Flat(bench.Type("study", File).Out);
        Assert.Contains("short told nothing. Trial 'short' gives no finding: fewer than five readings of degrees are left.", told, StringComparison.Ordinal);
        Assert.DoesNotContain("not-read told nothing", told, StringComparison.Ordinal);
        Assert.DoesNotContain("cap told nothing", told, StringComparison.Ordinal);
        Assert.Matches(@"capacity (1\d{3}|2\d{3}).* mAh 3000 mAh claimed", told);
    }

    private void Begun()
    {
        Fine("new", File, "--name", "lens band");
        Fine("part", "add", File, "band", "heater", "band");
        Fine("part", "add", File, "round", "cell", "round cell");
    }

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private void Fine(params string[] words)
    {
        var done = bench.Type(words);
        Assert.True(done.Exit == 0, done.Error);
    }

    private JsonElement Json(params string[] words)
    {
        var done = bench.Type([.. words, "--json"]);
        Assert.True(done.Exit == 0, done.Error);
        return JsonDocument.Parse(done.Out).RootElement;
    }
}
