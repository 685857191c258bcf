using System.Text.Json;

namespace Heatwright.Tests.Journeys;

/// <summary>A study from nothing to findings, typed: meters, trials, readings good and bad. Expected numbers are worked out by hand beside each check.</summary>
public sealed class EntryJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Readings_typed_line_by_line_become_findings_of_their_part()
    {
        string file = Begun();
        Fine("trial", "add", file, "two-load-sag", "--on", "round", "--name", "sag");
        var entered = Piped("3.90 0\n3,70 1 A\n# a note of mine\n3.50 V 2000mA\n", "trial", "enter", file, "sag", "--meter", "volts=dmm", "amps=dmm", "--json");
        var readings = entered.GetProperty("readings").EnumerateArray().ToList();
        Assert.Equal(3, readings.Count);
        Assert.Equal("3.5\u00A0V", readings[2].GetProperty("fields")[0].GetProperty("understood").GetString());
        Assert.Equal("2\u00A0A", readings[2].GetProperty("fields")[1].GetProperty("understood").GetString());

        // Three points on one line: 3.90 V falls by 0.20 V an ampere, so 0.20 ohm behind 3.90 V.
        var row = Trial(file, "sag");
        Assert.Equal(0.20, Found(row, "ohms"), 3);
        Assert.Equal(3.90, Found(row, "open volts"), 2);
        var shown = Json("part", "show", file, "round");
        Assert.Contains("open volts", shown.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_readings_a_thousand_times_apart_it_is_said_that_one_has_slipped()
    {
        string file = Begun();
        Fine("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "cold");
        Assert.Contains("thousand times apart", Piped("7.41\n7k42\n", "trial", "enter", file, "cold", "--meter", "ohms=dmm", "--json").ToString(), StringComparison.Ordinal);
        Fine("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "again");
        Assert.DoesNotContain("apart", Piped("7.41\n7.42\n", "trial", "enter", file, "again", "--meter", "ohms=dmm", "--json").ToString(), StringComparison.Ordinal);
    }

    /// <summary>0.1 Ω either way of the leads are 0.1/√3 = 0.058 Ω of doubt in a study as in 'trial fit'; said anew without a doubt there is none.</summary>
    [Fact]
    public void A_doubt_typed_behind_a_setting_is_kept_shown_and_counted()
    {
        string file = Begun();
        Fine("meter", "add", file, "ex", "--reads", "ohm=exact");
        Fine("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "cold");
        Piped("1.83\n1.82\n1.83\n1.83\n", "trial", "enter", file, "cold", "--meter", "ohms=ex", "--set", "leads=0.2ohm±0.1ohm", "--json");
        string Plain(params string[] words) => string.Join(' ', Fine(words).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("± 0.058 Ω", Plain("trial", "list", file), StringComparison.Ordinal);
        Assert.Contains("leads=0.2 Ω ± 0.1 Ω", Plain("trial", "set", file, "cold-1", "--set", "at=20C±2K"), StringComparison.Ordinal);
        Assert.Contains("at=20 °C ± 2 K", Plain("trial", "set", file, "cold-1", "--set", "leads=0.2ohm"), StringComparison.Ordinal);
        Assert.DoesNotContain("± 0.058", Plain("trial", "list", file), StringComparison.Ordinal);
    }

    /// <summary>1.5 less 0.2 Ω; several settings stand behind one option, as with 'trial enter'.</summary>
    [Fact]
    public void Several_settings_stand_behind_one_option()
    {
        string told = Fine("trial", "fit", "cold-ohms", "--read", "ohms=1.5", "--set", "leads=0.2ohm", "at=30C", "--meter", "ohms=exact");
        Assert.Contains("1.3", told, StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_that_nothing_reads_is_told()
    {
        string file = Begun();
        Assert.Contains("nothing here reads 'bogus'. Read are chemistry, cells,", Fine("part", "add", file, "spare", "cell", "--word", "bogus=1", "chemistry=lithium-ion"), StringComparison.Ordinal);
        Assert.DoesNotContain("nothing here reads", Fine("part", "state", file, "spare", "--word", "cells=1"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_claim_that_was_taken_before_does_not_wait_any_more()
    {
        string file = Begun();
        string text = Path.Combine(bench.Folder, "seller.txt");
        File.WriteAllText(text, "DC-DC boost module, input 3-16V, 10A max, 60W\n");
        Assert.Contains("1 claims of its text are not confirmed", Fine("part", "add", file, "up", "--listing", text, "--take", "all"), StringComparison.Ordinal);
        Assert.DoesNotContain("not confirmed", Fine("part", "state", file, "up", "--take", "3=limit-current"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_lone_dash_keeps_the_place_of_a_reading_that_was_missed()
    {
        string file = Begun();
        Fine("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "cold");
        var readings = Piped("7.41\n-\n7.43\n", "trial", "enter", file, "cold", "--meter", "ohms=dmm", "--json").GetProperty("readings").EnumerateArray().ToList();
        Assert.Equal(["7.41\u00A0Ω", "not read", "7.43\u00A0Ω"], readings.Select(one => one.GetProperty("fields")[0].GetProperty("understood").GetString()));
        Assert.Equal(7.12, Found(Trial(file, "cold"), "ohms"), 3); // 0.3 Ω allowed for leads that nobody shorted
    }

    [Fact]
    public void A_cell_whose_trials_do_not_suffice_is_told_what_is_missing_beside_each()
    {
        string file = Begun();
        Fine("trial", "add", file, "pulse", "--on", "round", "--name", "steps");
        Piped("0 4.0 0\n1 3.9 1\n30 3.85 1\n60 3.97 0\n", "trial", "enter", file, "steps", "--meter", "volts=dmm", "amps=dmm", "--json");
        Assert.Contains("kind 'discharge'", Trial(file, "steps").GetProperty("problems").ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_setting_is_taken_as_the_recipe_writes_it()
    {
        string file = Begun();
        Fine("trial", "add", file, "capacity", "--on", "round", "--name", "full");
        foreach (string spelled in (string[])["cut-off=3V", "cut off=3.0 V"])
        {
            var typed = bench.TypeWith("0 4.1 0.5\n10 4.0 0.5\n", "trial", "enter", file, "full", "--run", spelled.Replace(" ", "", StringComparison.Ordinal)[..7], "--set", spelled);
            Assert.DoesNotContain("no such setting", typed.Error, StringComparison.Ordinal);
        }

        Assert.Equal("discharge", Trial(file, "full").GetProperty("kind").GetString());
        Assert.Contains("discharge (capacity)", Fine("trial", "kinds"), StringComparison.Ordinal);
        var through = bench.TypeWith("0 4.1\n1800 3.7\n3600 3.0\n", "trial", "enter", file, "full", "--run", "through", "--columns", "time,volts", "--set", "load=3.6ohm");
        Assert.Equal("", through.Error);

        var wrong = bench.TypeWith("", "trial", "enter", file, "full", "--set", "flavour=3");
        Assert.Contains("cut-off", wrong.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_cannot_be_read_is_refused_and_the_others_are_kept()
    {
        string file = Begun();
        Fine("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "cold");
        var typed = bench.TypeWith("7.41\nabc\n7.43 5\nOL\n7,42\n", "trial", "enter", file, "cold", "--meter", "ohms=dmm", "--set", "leads=0.2ohm", "at=21C");
        Assert.Equal(2, typed.Exit);
        Assert.Contains("abc", typed.Error, StringComparison.Ordinal);
        Assert.Contains("another number of values", typed.Error, StringComparison.Ordinal);
        Assert.Contains("overload", typed.Out, StringComparison.Ordinal);
        Assert.Contains("3 readings into cold-1; 2 lines were not taken.", typed.Out, StringComparison.Ordinal);
        // (7.41 + 7.42) / 2 less 0.2 of the leads; the overload is kept and does not count.
        Assert.Equal(7.215, Found(Trial(file, "cold"), "ohms"), 4);

        // Two more into the run that is there, the second a thousand times too large: it is kept, told and left out.
        var more = Piped("7.40\n7k41\n", "trial", "enter", file, "cold", "--run", "cold-1", "--json");
        Assert.Equal([4, 5], more.GetProperty("readings").EnumerateArray().Select(one => one.GetProperty("number").GetInt32()));
        Assert.Contains("unit slip", more.ToString(), StringComparison.Ordinal);
        Assert.Equal(7.21, Found(Trial(file, "cold"), "ohms"), 4);
        Fine("undo", file);
        Assert.Equal(4, Trial(file, "cold").GetProperty("readings").GetInt32());
    }

    [Fact]
    public void Lines_of_a_spreadsheet_are_typed_with_their_heading_and_their_empty_cells()
    {
        string file = Begun();
        Fine("trial", "add", file, "two-load-sag", "--on", "round", "--name", "sag");
        var readings = Piped("Current (mA)\tnote\tVoltage (V)\n0\trest\t3.90\n1000\tload\t3.70\n2000\t\t\n", "trial", "enter", file, "sag", "--json").GetProperty("readings").EnumerateArray().ToList();
        Assert.Equal(["3.9\u00A0V, 0\u00A0A", "3.7\u00A0V, 1\u00A0A", "not read, 2\u00A0A"], readings.Select(one => string.Join(", ", one.GetProperty("fields").EnumerateArray().Select(field => field.GetProperty("understood").GetString()))));
    }

    [Fact]
    public void A_run_is_given_its_meters_and_settings_after_it_was_read_and_an_empty_one_is_dropped()
    {
        string file = Begun();
        Fine("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "cold");
        Fine("trial", "enter", file, "cold", "--read", "7.41", "7.43");
        Assert.Equal(7.12, Found(Trial(file, "cold"), "ohms"), 4); // 7.42 less 0.3 allowed for leads that nobody shorted
        var held = Json("trial", "set", file, "cold-1", "--meter", "ohms=dmm", "--set", "leads=0.2ohm", "at=21C");
        Assert.Equal("dmm", held.GetProperty("columns")[0].GetProperty("meter").GetString());
        // By hand: the mean of 7.41 and 7.43, less 0.2 of the leads.
        Assert.Equal(7.22, Found(Trial(file, "cold"), "ohms"), 4);
        Assert.Contains("run cold-1: ohms=dmm, leads=0.2ohm, at=21C", Fine("history", file), StringComparison.Ordinal);
        Fine("trial", "set", file, "cold-1", "--set", "leads=none");
        Assert.Equal(7.12, Found(Trial(file, "cold"), "ohms"), 4); // 7.42 less 0.3 allowed for leads that nobody shorted
        Fine("undo", file);
        Assert.Equal(7.22, Found(Trial(file, "cold"), "ohms"), 4);

        Refused("no such run", "trial", "set", file, "gone", "--set", "at=21C");
        Refused("Nothing is said", "trial", "set", file, "cold-1");
        Refused("no such setting", "trial", "set", file, "cold-1", "--set", "wind=3");
        Refused("its columns stand", "trial", "set", file, "cold-1", "--columns", "volts");
        Refused("not known", "trial", "set", file, "cold-1", "--meter", "ohms=gone");
        Fine("trial", "enter", file, "cold", "--run", "cold-1", "--set", "at=25C", "--read", "7.42");
        Refused("holds readings", "trial", "drop", file, "cold", "--run", "cold-1");

        Assert.Equal(0, bench.TypeWith("", "trial", "enter", file, "cold", "--run", "again").Exit);
        Fine("trial", "drop", file, "cold", "--run", "again");
        Refused("no such run", "trial", "drop", file, "cold", "--run", "again");
    }

    [Fact]
    public void A_test_that_is_not_for_the_part_is_planned_with_a_word_about_it()
    {
        string file = Begun();
        string said = Fine("trial", "add", file, "discharge", "--on", "wire", "--name", "odd");
        Assert.Contains("'discharge' is done on a cell or pack, and 'wire' is a heater", said.ReplaceLineEndings(" ").Replace("      ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.StartsWith("'discharge' is done on", Json("trial", "add", file, "discharge", "--on", "wire", "--name", "too").GetProperty("doubt").GetString(), StringComparison.Ordinal);
        Assert.False(Json("trial", "add", file, "cold-ohms", "--on", "wire").TryGetProperty("doubt", out _));
    }

    [Fact]
    public void Two_trials_of_one_quantity_are_compared_and_the_first_of_them_counts()
    {
        string file = Begun();
        Fine("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "cold");
        Piped("7.42\n7.42\n", "trial", "enter", file, "cold", "--meter", "ohms=dmm", "--set", "leads=0.2ohm", "--json");
        Fine("trial", "add", file, "four-wire-ohms", "--on", "wire", "--name", "four");
        Piped("7.22 1\n3.61 0.5\n", "trial", "enter", file, "four", "--meter", "volts=dmm", "amps=dmm", "--json");
        Assert.Equal(7.22, Found(Trial(file, "four"), "ohms"), 2);
        var told = Json("study", file).ToString();
        Assert.Contains("it agrees with cold", told, StringComparison.Ordinal);

        Fine("trial", "add", file, "four-wire-ohms", "--on", "wire", "--name", "other");
        Piped("9.0 1\n4.5 0.5\n", "trial", "enter", file, "other", "--meter", "volts=dmm", "amps=dmm", "--json");
        told = Json("study", file).ToString();
        Assert.Contains("it contradicts cold", told, StringComparison.Ordinal);
    }

    [Fact]
    public void Runs_of_one_trial_are_averaged_and_their_spread_is_a_doubt()
    {
        string file = Begun();
        Fine("trial", "add", file, "four-wire-ohms", "--on", "wire", "--name", "four");
        Piped("7.00 1\n3.50 0.5\n", "trial", "enter", file, "four", "--meter", "volts=dmm", "amps=dmm", "--json");
        Piped("7.40 1\n3.70 0.5\n", "trial", "enter", file, "four", "--meter", "volts=dmm", "amps=dmm", "--json");
        var found = Trial(file, "four").GetProperty("findings").EnumerateArray().First(one => one.GetProperty("name").GetString() == "ohms");
        Assert.Equal(7.20, found.GetProperty("value").GetDouble(), 2);
        // Half the difference of two means is the standard doubt of their average: 0.2 ohm, and the meters' on top.
        Assert.InRange(found.GetProperty("standardDoubt").GetDouble(), 0.2, 0.25);
    }

    [Fact]
    public void What_is_not_there_or_cannot_be_is_told_with_the_next_step()
    {
        string file = Begun();
        Refused("no such kind", "trial", "add", file, "guess", "--on", "wire");
        Refused("no part of this name", "trial", "add", file, "cold-ohms", "--on", "gone");
        Refused("no such trial", "trial", "enter", file, "gone", "--read", "1");
        Fine("trial", "add", file, "cold-ohms", "--on", "wire");
        Refused("a trial of this name", "trial", "add", file, "cold-ohms", "--on", "wire");
        Refused("no such setting", "trial", "enter", file, "wire-cold-ohms", "--set", "wind=3", "--read", "1");
        Refused("not known", "trial", "enter", file, "wire-cold-ohms", "--meter", "ohms=gone", "--read", "1");
        Refused("no such column", "trial", "enter", file, "wire-cold-ohms", "--columns", "ohms,volts", "--read", "1 2");
        Refused("smallest step", "meter", "add", file, "two", "--reads", "V=1%+3d");
        Refused("for which unit", "meter", "add", file, "two", "--reads", "flavour=1%");
        Fine("trial", "enter", file, "wire-cold-ohms", "--read", "7.4");
        Refused("holds readings", "trial", "drop", file, "wire-cold-ohms");
        Fine("trial", "add", file, "hold-power", "--on", "wire");
        Fine("trial", "drop", file, "wire-hold-power");
    }

    [Fact]
    public void The_work_of_a_brief_is_stated_value_by_value_and_a_line_is_taken_out()
    {
        string file = Begun();
        Refused("no brief", "brief", file, "--set", "every=40s");
        Fine("brief", file, "--set", "target=70C", "end=pen", "piece=stroke", "every=30s", "for=12s", "need=25J±5J", "contact=0.2W/K±0.05W/K", "above=64C", "why=weighed wax");
        Fine("brief", file, "--add", "run time at least 40 min");
        var brief = Heatwright.Jobs.OpenStudy.Read(file).Value.Study.Brief!;
        Assert.Equal((70.0, 30.0, 12.0, 25.0, 5.0, 0.2, 0.05, 64.0), (brief.Work.TargetC, brief.Work.EveryS, brief.Work.ForS, brief.Work.NeedJ, brief.Work.NeedPlusMinusJ, brief.Work.Contact, brief.Work.ContactPlusMinus, brief.Work.AboveC));
        Assert.Equal(("pen", "stroke", 20.0), (brief.WorkingEnd, brief.Piece, brief.AirC));
        Refused("no such value", "brief", file, "--set", "colour=red");
        Refused("below nought", "brief", file, "--set", "every=-3s");
        Refused("no such line", "brief", file, "--drop", "gone");
        Fine("brief", file, "--drop", brief.Requirements[0].Id);
        Assert.Empty(Heatwright.Jobs.OpenStudy.Read(file).Value.Study.Brief!.Requirements);
        Fine("undo", file);
        Assert.Single(Heatwright.Jobs.OpenStudy.Read(file).Value.Study.Brief!.Requirements);
    }

    [Fact]
    public void A_bench_trial_comes_back_from_a_bundle_as_it_was()
    {
        string file = Begun();
        Fine("trial", "add", file, "sensor-test", "--on", "wire", "--name", "volts-of-heat");
        Piped("0 level\n0.0041 warm\n-0.0041 swapped\n", "trial", "enter", file, "volts-of-heat", "--json");
        string before = Json("trial", "list", file).ToString();
        Fine("export", file, bench.In("again.zip"));
        Fine("import", bench.In("again.zip"), bench.In("again.study"));
        Assert.Equal(before, Json("trial", "list", bench.In("again.study")).ToString());
        Assert.Contains("sensor-test", before, StringComparison.Ordinal);
    }

    [Fact]
    public void Commas_between_values_are_taken_where_they_can_mean_nothing_else()
    {
        string file = Begun();
        Fine("trial", "add", file, "discharge", "--on", "round", "--name", "flat");
        var typed = bench.TypeWith("0,4.135,1.01\n300, 4.048, 1.01\n600, 3,967, 1,01\n900 3,887 1,01\n1200,,1.01\n1500 s, 3.75 V, 1010 mA\n", "trial", "enter", file, "flat");
        Assert.True(typed.Exit == 0, typed.Error);
        foreach (string read in (string[])["1  time 0 s  volts 4.135 V  amps 1.01 A", "2  time 300 s  volts 4.048 V  amps 1.01 A", "3  time 600 s  volts 3.967 V  amps 1.01 A", "4  time 900 s  volts 3.887 V  amps 1.01 A", "5  time 1200 s  volts not read  amps 1.01 A", "6  time 1500 s  volts 3.75 V  amps 1.01 A"])
        {
            Assert.Contains(read, typed.Out.Replace('\u00A0', ' '), StringComparison.Ordinal);
        }

        // Under a heading with commas too, in its order and units.
        var headed = bench.TypeWith("volts,time,current (mA)\n4.1,0,500\n4.0, 60, 500\n", "trial", "enter", file, "flat");
        Assert.True(headed.Exit == 0, headed.Error);
        Assert.Contains("2  time 60 s  volts 4 V  amps 0.5 A", headed.Out.Replace('\u00A0', ' '), StringComparison.Ordinal);

        // '4,135' into two columns may be one number with a decimal comma.
        Fine("trial", "add", file, "two-load-sag", "--on", "round", "--name", "sag");
        var two = bench.TypeWith("4,135\n", "trial", "enter", file, "sag");
        Assert.Equal(2, two.Exit);
        Assert.Contains("which commas of the line stand between values", string.Join(' ', two.Error.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Equal(2, two.Error.Split("where").Length); // one message
        Assert.Contains("volts 4.135 V  amps 1.01 A", bench.TypeWith("4.135,1.01\n", "trial", "enter", file, "sag").Out.Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_of_which_none_is_read_leave_no_empty_run()
    {
        string file = Begun();
        Fine("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "cold");
        var typed = bench.TypeWith("7.1 7.2\nseven 7\n", "trial", "enter", file, "cold");
        Assert.Equal(2, typed.Exit);
        Assert.Contains("No reading was taken: 2 lines were not taken. No run was begun.", typed.Out, StringComparison.Ordinal);
        Assert.Equal(0, Trial(file, "cold").GetProperty("runs").GetArrayLength());
        Assert.DoesNotContain("run of cold", Fine("history", file), StringComparison.Ordinal);

        // One change begins the run with its first reading, and takes both back.
        Fine("trial", "enter", file, "cold", "--set", "leads=0.2ohm", "--read", "7.41");
        Assert.Equal(1, Trial(file, "cold").GetProperty("runs").GetArrayLength());
        Fine("undo", file);
        Assert.Equal(0, Trial(file, "cold").GetProperty("runs").GetArrayLength());
    }

    [Fact]
    public void The_wrong_reading_is_named_to_be_struck_and_the_corrected_one_stands_in_its_place()
    {
        string file = Begun();
        Fine("trial", "add", file, "discharge", "--on", "round", "--name", "flat");
        string[] lines = ["0 4.135 1.01", "300 4.048 1.01", "600 3.967 1.01", "900 3.887 1.01", "1200 3.813 1.01", "1500 3.748 1.01", "1800 3.681 1.01", "2100 3.615 1.01", "2400 3565 1.01", "2700 3.498 1.01", "3000 3.452 1.01", "3300 2.900 1.01", "3360 2.700 1.01"];
        string typed = Fine(["trial", "enter", file, "flat", .. lines.SelectMany(line => new[] { "--read", line })]);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(typed, "! (?!No meter)"));
        Assert.Contains("flat-1 9 --because WHY", string.Join(' ', typed.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);

        Fine("strike", file, "flat-1", "9", "--because", "millivolts");
        string again = Fine("trial", "enter", file, "flat", "--run", "flat-1", "--read", "2400 3.565 1.01");
        Assert.DoesNotContain("!", again, StringComparison.Ordinal);
        var remarks = Json("study", file).GetProperty("remarks").EnumerateArray().Where(one => one.GetProperty("reading").GetInt32() > 0).Select(one => (one.GetProperty("reading").GetInt32(), one.GetProperty("words").GetString())).ToArray();
        Assert.Equal([(9, "struck out: millivolts")], remarks);

        // By hand: 1.01 A over 3360 s are 0.942667 Ah, down to 2.70 V; down to the usual 3.0 V they end between 3000 s and 3300 s, at 3000 + 300·0.452/0.552 s = 3245.652 s: 0.910586 Ah.
        Assert.Equal(0.910586, Found(Trial(file, "flat"), "capacity"), 6);
    }

    [Fact]
    public void The_same_readings_entered_twice_are_told_and_struck_with_one_word()
    {
        string file = Begun();
        Fine("trial", "add", file, "discharge", "--on", "round", "--name", "flat");
        string[] command = ["trial", "enter", file, "flat", "--read", "0 4.1 1", "--read", "60 4.0 1", "--read", "120 3.9 1", "--read", "180 3.8 1"];
        Assert.DoesNotContain("same readings", Fine(command), StringComparison.Ordinal);
        Assert.Contains("The same readings stand in run 'flat-1', all 4 of them", string.Join(' ', Fine(command).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);

        Assert.Contains("Struck out 1 to 3 of flat-2.", Fine("strike", file, "flat-2", "1-3", "--because", "typed twice"), StringComparison.Ordinal);
        Assert.Contains("Struck out 1 to 4 of flat-2.", Fine("strike", file, "flat-2", "all", "--because", "typed twice"), StringComparison.Ordinal);
        string table = string.Join(' ', Fine("study", file).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("flat-2 1 to 4 struck out: typed twice (left out)", table, StringComparison.Ordinal);
        Assert.DoesNotContain("same readings", table, StringComparison.Ordinal);
        Assert.Contains("Let stand again 2, 4 of flat-2.", Fine("stand", file, "flat-2", "2", "4"), StringComparison.Ordinal);
        Refused("no such reading", "strike", file, "flat-2", "3-9", "--because", "typed twice");
        Refused("no numbers of readings", "strike", file, "flat-2", "three", "--because", "typed twice");
        Refused("no such run", "strike", file, "gone", "1", "--because", "typed twice");
    }

    [Fact]
    public void A_meters_C_is_degrees_and_a_line_of_it_is_taken_out_again()
    {
        string file = Begun();
        Assert.Contains("°C: ±(1 % + 1 °C), steps of 0.1 °C", Fine("meter", "add", file, "probe", "--reads", "C=1%+1K", "--step", "C=0.1").Replace('\u00A0', ' '), StringComparison.Ordinal);
        Fine("meter", "add", file, "probe", "--reads", "V=1%");
        Assert.Equal(["°C", "V"], Json("meter", "list", file).EnumerateArray().Last().GetProperty("specs").EnumerateArray().Select(spec => spec.GetProperty("unit").GetString()));
        Fine("meter", "drop", file, "probe", "degC");
        Assert.Equal(["V"], Json("meter", "list", file).EnumerateArray().Last().GetProperty("specs").EnumerateArray().Select(spec => spec.GetProperty("unit").GetString()));
        Refused("promises nothing for this unit", "meter", "drop", file, "probe", "A");
        Refused("no such meter", "meter", "drop", file, "prob", "V");
        Fine("meter", "drop", file, "probe");
        Assert.Single(Json("meter", "list", file).EnumerateArray());

        // A run that names a meter keeps it; one that reads what the meter promises nothing for is told of.
        Fine("trial", "add", file, "discharge", "--on", "round", "--name", "flat");
        string read = Fine("trial", "enter", file, "flat", "--meter", "time=dmm", "volts=dmm", "--read", "0 4.1 1");
        Assert.Contains("time is read with 'dmm', which promises nothing for s", string.Join(' ', read.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Refused("read with this meter", "meter", "drop", file, "dmm");
    }

    private string Begun()
    {
        string file = bench.In("pen.study");
        Fine("new", file, "--name", "wax pen");
        Fine("part", "add", file, "round", "cell", "round cell");
        Fine("part", "add", file, "wire", "heater", "coil");
        Fine("meter", "add", file, "dmm", "bench meter", "--reads", "V=0.5%+2mV", "A=1%+5mA", "ohm=0.8%+2d", "--step", "ohm=0.01ohm");
        return file;
    }

    private string Fine(params string[] words)
    {
        var typed = bench.Type(words);
        Assert.True(typed.Exit == 0, typed.Error);
        return typed.Out;
    }

    private void Refused(string what, params string[] words)
    {
        var typed = bench.Type(words);
        Assert.Equal(2, typed.Exit);
        Assert.Contains(what, typed.Error, StringComparison.Ordinal);
        Assert.Contains("next", typed.Error, StringComparison.Ordinal);
    }

    private JsonElement Json(params string[] words) => JsonDocument.Parse(Fine([.. words, "--json"])).RootElement;

    private JsonElement Piped(string lines, params string[] words)
    {
        var typed = bench.TypeWith(lines, words);
        Assert.True(typed.Exit == 0, typed.Error);
        return JsonDocument.Parse(typed.Out).RootElement;
    }

    private JsonElement Trial(string file, string name) => Json("trial", "list", file).EnumerateArray().First(one => one.GetProperty("trial").GetString() == name);

    private static double Found(JsonElement row, string name) => row.GetProperty("findings").EnumerateArray().First(one => one.GetProperty("name").GetString() == name).GetProperty("value").GetDouble();
}
