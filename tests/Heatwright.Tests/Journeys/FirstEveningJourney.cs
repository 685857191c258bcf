using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Journeys;

/// <summary>What a newcomer stumbled over on the first evening at the command line: things said twice, names near the right one, and words that were not so.</summary>
public sealed class FirstEveningJourney : IDisposable
{
    private readonly Bench bench = new();

    private string Study => bench.In("stamp.study");

    public void Dispose() => bench.Dispose();

    /// <summary>By hand: 5.4, 5.5 and 5.6 Ω, 0.3 Ω of leads: 5.2 Ω where the bag says 2.2 Ω.</summary>
    [Fact]
    public void A_label_and_what_is_still_needed_know_what_trials_told_and_one_row_counts()
    {
        Fine("new", Study);
        Fine("part", "add", Study, "coil", "heater", "foam coil", "--claimed", "ohms=2.2ohm (bag)");
        Fine("part", "add", Study, "bare", "heater", "bare coil");
        Assert.Contains("Still needed: ohms, ", Fine("part", "state", Study, "bare", "--note", "new"), StringComparison.Ordinal);
        foreach (string part in (string[])["coil", "bare"])
        {
            Read(part, $"{part}-cold-ohms");
        }

        Assert.DoesNotContain("ohms", Fine("part", "state", Study, "bare", "--note", "tried"), StringComparison.Ordinal);
        string label = Fine("part", "label", Study, "coil");
        Assert.Matches(@"foam coil, 5\.2[0-9]* ± 0\.[0-9]+ Ω fitted, 2\.2 Ω claimed", label);

        // The same read once more in a trial of its own: two findings, one of them counts.
        Read("coil", "twice", "--name", "twice");
        using var shown = JsonDocument.Parse(Fine("part", "show", Study, "coil", "--json"));
        var ohms = shown.RootElement.GetProperty("values").EnumerateArray().Where(row => row.GetProperty("quantity").GetString() == "ohms").ToArray();
        Assert.Equal(3, ohms.Length);
        Assert.Single(ohms, row => row.GetProperty("isBest").GetBoolean());

        void Read(string part, string trial, params string[] named)
        {
            Fine(["trial", "add", Study, "cold-ohms", "--on", part, .. named]);
            Fine("trial", "enter", Study, trial, "--set", "leads=0.3", "--read", "5.4", "--read", "5.5", "--read", "5.6");
        }
    }

    [Fact]
    public void A_report_is_written_only_as_what_it_is()
    {
        Knife();
        Assert.Contains("print it into a PDF", Refused("ends in .html", "report", Study, "--to", bench.In("r.pdf")), StringComparison.Ordinal);
        Refused("ends in .html", "report", Study, "--to", "-");
        Assert.False(File.Exists(bench.In("r.pdf")) || File.Exists("-"));
    }

    /// <summary>By hand: 20 J either way, anything between alike, is 20/√3 = 11.547 J as a standard doubt.</summary>
    [Fact]
    public void Limits_of_the_work_are_told_beside_the_doubt_that_they_turn_into()
    {
        Fine("new", Study);
        Fine("brief", Study, "--add", "stamp at 150 °C within 2 min from 20 °C");
        Fine("brief", Study, "--set", "need=60J±20J", "contact=1W/K");
        var need = RunStudy.Plan(OpenStudy.Read(Study).Value.Study.Brief!).Need;
        Assert.Equal((60, 11.547), (need.Value, Math.Round(need.StandardDoubt, 3)));
        string why = Assert.IsType<Origin.Assumed>(need.Origin).Why;
        Assert.Contains("limits of ±20\u00A0J, which is ±12\u00A0J as one standard doubt", why, StringComparison.Ordinal);
        Assert.DoesNotContain("no work is stated", why, StringComparison.Ordinal);
        Fine("brief", Study, "--set", "why=three pieces of leather weighed");
        Assert.StartsWith("three pieces of leather weighed; ", Assert.IsType<Origin.Assumed>(RunStudy.Plan(OpenStudy.Read(Study).Value.Study.Brief!).Need.Origin).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_arrangement_twice_is_told_and_one_is_taken_out_and_brought_back()
    {
        Fine("new", Study);
        Fine("part", "add", Study, "flat", "cell", "flat cell", "--measured", "ohms=60mohm", "full volts=4.2V");
        Fine("part", "add", Study, "wire", "heater", "foam wire", "--measured", "ohms=2.71ohm");
        Fine("arrange", Study, "--cell", "flat", "--heater", "wire");
        Assert.Contains("loop FILE A", Refused("Arrangement A is wired just so.", "arrange", Study, "--cell", "flat", "--heater", "wire"), StringComparison.Ordinal);
        Fine("arrange", Study, "--cell", "flat", "--heater", "wire", "--name", "the same for the drawing");
        Assert.Equal("A B", Letters());
        Assert.Contains("arrangement B wired", Fine("history", Study), StringComparison.Ordinal);

        Assert.Contains("Arrangement A taken out. Left: B.", Fine("unwire", Study, "a"), StringComparison.Ordinal);
        Assert.Equal("B", Letters());
        Assert.Contains("arrangement A taken out", Fine("undo", Study), StringComparison.Ordinal);
        Assert.Equal("A B", Letters());
        Assert.Contains("arrangement B wired", Fine("undo", Study), StringComparison.Ordinal);
        Refused("There is no arrangement of this letter.", "unwire", Study, "Q");
        string Letters() => string.Join(' ', OpenStudy.Read(Study).Value.Study.Arrangements.Select(one => one.Letter));
    }

    [Fact]
    public void A_requirement_said_twice_is_told_and_the_answer_uses_the_words_that_were_typed()
    {
        Fine("new", Study);
        Fine("brief", Study, "--add", "stamp at 150 °C within 2 min from 20 °C");
        Fine("brief", Study, "--add", "20 marks on one charge, one every 45 s");
        Assert.Contains("brief FILE --drop pieces", Refused("The brief says this already.", "brief", Study, "--add", "20 marks on one charge, one every 45 s"), StringComparison.Ordinal);
        string other = Fine("brief", Study, "--add", "30 stamps in a row on one charge");
        Assert.StartsWith("Added: 30 stamps in a row on one charge ", other, StringComparison.Ordinal);
        Assert.Contains("it counts as '30 marks on one charge'", other.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("'pieces' of the same kind stands beside it", other.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.StartsWith("Added: parts cost at most 60 EUR ", Fine("brief", Study, "--add", "parts cost at most 60 EUR"), StringComparison.Ordinal);
        Refused("The brief says this already.", "brief", Study, "--add", "parts cost at most €60");
        var lines = OpenStudy.Read(Study).Value.Study.Brief!.Requirements;
        Assert.Equal(["warm-up", "pieces", "pieces-2", "parts-cost"], lines.Select(line => line.Id));
        Assert.Equal((RequirementQuantity.PartsCost, 60.0), (lines[^1].Quantity, lines[^1].Limit));

        // As fast, but to another temperature, is another requirement.
        Fine("brief", Study, "--add", "stamp at 170 °C within 2 min from 20 °C");
    }

    [Fact]
    public void Prices_and_names_of_claims_are_taken_as_labels_and_receipts_have_them()
    {
        Fine("new", Study);
        Assert.Contains("'3 for 9' is 3 for one.", Fine("part", "add", Study, "spring", "contacts", "--measured", "price=3 for 9"), StringComparison.Ordinal);
        Assert.Contains("kept as 4.5: the currency is yours", Fine("part", "add", Study, "round", "cell", "--claimed", "price=4,50 EUR"), StringComparison.Ordinal);
        Assert.DoesNotContain("currency", Fine("part", "state", Study, "round", "--claimed", "price=4.50 each"), StringComparison.Ordinal);
        Assert.Contains("the currency is yours and is not kept", Refused("cannot be read as price", "part", "state", Study, "round", "--claimed", "price=cheap"), StringComparison.Ordinal);

        string told = Refused("'stub' is on the shelf without this value", "part", "add", Study, "stub", "heater", "--claimed", "volts=12V", "watts=50W");
        Assert.Contains("perhaps rated volts", told, StringComparison.Ordinal);
        Assert.Contains($"part state {Study} stub --claimed \"rated volts=12V\"", told, StringComparison.Ordinal);
        Assert.Contains($"part state {Study} stub --claimed \"rated power=50W\"", told, StringComparison.Ordinal);
        string again = Refused("There is a part of this name.", "part", "add", Study, "stub", "heater", "--claimed", "rated volts=12V", "rated power=50W");
        Assert.Contains($"part state {Study} stub --claimed \"rated volts=12V\" --claimed \"rated power=50W\"", again, StringComparison.Ordinal);
        Fine("part", "state", Study, "stub", "--claimed", "rated volts=12V", "rated power=50W");
        Assert.Contains("perhaps rated current or peak current", Refused("without this value", "part", "state", Study, "round", "--claimed", "current=5A"), StringComparison.Ordinal);
        Assert.Contains("perhaps rated power", Refused("without this value", "part", "add", Study, "up", "stepUp", "--claimed", "output power=50W"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_loop_says_which_ohms_belong_to_which_moment()
    {
        Knife();
        string loop = Fine("loop", Study, "A").ReplaceLineEndings(" ");
        Assert.Matches("Ohms of the cells: .* after minutes of load.* in the first seconds", loop);
        Assert.Matches("full pack, cold load, load of [0-9].*full pack, first seconds, load of ", loop);
        Assert.Matches("at the .*load,.* 320", loop); // the cell of the table may break between the words
    }

    [Fact]
    public void A_run_tells_what_comes_again_once_and_the_charge_in_per_cent()
    {
        Knife();
        string told = Fine("predict", Study, "--arrangement", "A");
        Assert.Matches("charge left +[0-9.]+ %", told);
        Assert.True(told.Split("work starts").Length == 2, told);
        Assert.Matches("work starts \\([0-9]+ times, the last at ", told);
        Assert.DoesNotContain("region ", told, StringComparison.Ordinal);
    }

    [Fact]
    public void The_bare_program_shows_its_help_and_an_unknown_command_is_one_answer()
    {
        var bare = bench.Type();
        Assert.Equal((0, ""), (bare.Exit, bare.Error));
        Assert.Contains("heatwright COMMAND", bare.Out, StringComparison.Ordinal);
        Assert.Contains("recipe", Fine("trial"), StringComparison.Ordinal);
        string told = Refused("There is no command 'trail'", "trail", "kinds");
        Assert.Contains("perhaps trial", told, StringComparison.Ordinal);
        Assert.Single(told.Split('\n'), line => line.StartsWith("  where", StringComparison.Ordinal));
        Assert.Contains("perhaps kinds", Refused("There is no command 'kids'", "trial", "kids"), StringComparison.Ordinal);
    }

    /// <summary>The sample has one round cell fewer than two in series and two side by side take.</summary>
    [Fact]
    public void A_search_shows_what_is_on_hand_before_what_must_be_bought_and_the_place_of_what_is_wired()
    {
        Knife();
        using var found = JsonDocument.Parse(Fine("search", Study, "--json"));
        var best = found.RootElement.GetProperty("best").EnumerateArray().ToArray();
        int[] bought = [.. best.Select(one => one.GetProperty("toBuy").GetArrayLength())];
        Assert.Equal(bought.OrderBy(count => count > 0).Select(count => count > 0), bought.Select(count => count > 0));
        foreach (var one in best)
        {
            int more = (one.GetProperty("series").GetInt32() * one.GetProperty("parallel").GetInt32()) - OnHand(one.GetProperty("cell").GetString()!);
            string[] toBuy = [.. one.GetProperty("toBuy").EnumerateArray().Select(text => text.GetString()!)];
            Assert.Equal(more > 0, toBuy.Contains($"{more} × {one.GetProperty("cell").GetString()}"));
        }

        // Every arrangement of the study is among the best by its letter, or its place is told.
        string told = string.Join('\n', found.RootElement.GetProperty("wired").EnumerateArray().Select(line => line.GetString()));
        string[] letters = [.. best.Select(one => one.TryGetProperty("letter", out var letter) ? letter.GetString() ?? "" : "")];
        Assert.All((string[])["A", "B", "C", "D"], letter => Assert.True(letters.Contains(letter) || told.Contains($"Arrangement {letter} ", StringComparison.Ordinal), told));
        int OnHand(string name) => OpenStudy.Read(Study).Value.Study.Parts.Single(part => part.Name == name).Count;
    }

    private void Knife() => Fine("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), Study);

    private string Fine(params string[] words)
    {
        var typed = bench.Type(words);
        Assert.True(typed.Exit == 0, typed.Error);
        return typed.Out;
    }

    private string Refused(string what, params string[] words)
    {
        var typed = bench.Type(words);
        Assert.Equal(2, typed.Exit);
        Assert.Contains(what, typed.Error, StringComparison.Ordinal);
        return typed.Error;
    }
}
