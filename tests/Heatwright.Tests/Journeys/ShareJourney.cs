using System.IO.Compression;
using System.Text;
using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Jobs.Sharing;
using Heatwright.StudyFile;

namespace Heatwright.Tests.Journeys;

/// <summary>A study is shown to viewers: what stays at home, what is cut off, and their own readings beside it.</summary>
public sealed class ShareJourney : IDisposable
{
    private readonly Bench bench = new();

    private string Study => bench.In("bow.study");

    public void Dispose() => bench.Dispose();

    [Fact]
    public void What_was_chosen_stays_at_home_and_no_photo_tells_its_place()
    {
        Begin();
        string zip = bench.In("all.zip"), bare = bench.In("bare.zip");
        var all = Do("share", Study, zip, "--json");
        using (var json = JsonDocument.Parse(all))
        {
            Assert.Equal(["kept.png", "wire.png"], json.RootElement.GetProperty("photos").EnumerateArray().Select(one => one.GetString()).Order(StringComparer.Ordinal));
            Assert.Equal((1, 1), (json.RootElement.GetProperty("runs").GetInt32(), json.RootElement.GetProperty("empty").GetInt32()));
            Assert.Equal("tape.mov", json.RootElement.GetProperty("leftOut").EnumerateArray().Single().GetString()!.Split(':')[0]);
        }

        string everything = Text(zip);
        Assert.All(["seller sings", "my own note", "0.87"], word => Assert.Contains(word, everything, StringComparison.Ordinal)); // nothing was asked to be left out
        Assert.DoesNotContain("place\0her", everything, StringComparison.Ordinal);
        Assert.DoesNotContain("somewhere", everything, StringComparison.Ordinal);
        Assert.Contains("volts,read", everything, StringComparison.Ordinal); // a kept text goes along
        Do("share", Study, bare, "--without", "prices", "notes", "sellers", "names");
        string little = Text(bare);
        Assert.All(["seller sings", "my own note", "foam wire", "0.87", "bench meter", "wire.png"], word => Assert.DoesNotContain(word, little, StringComparison.Ordinal));
        Assert.Contains("\"heater 1\"", little, StringComparison.Ordinal);
        Assert.Contains("2.84", little, StringComparison.Ordinal); // readings stay as they were typed
        Assert.Contains("would replace a file", Refused("share", Study, bare), StringComparison.Ordinal);
        Assert.Contains("prices, notes, sellers, names", Refused("share", Study, bench.In("no.zip"), "--without", "address"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_viewer_types_into_the_empty_twin_and_sees_mine_beside_theirs()
    {
        Begin();
        string zip = bench.In("sent.zip"), mine = bench.In("mine.study");
        Do("share", Study, zip);
        Assert.Contains("runs wait for your own readings", Do("import", zip, mine), StringComparison.Ordinal);
        Assert.Contains("not read yet", Do("beside", mine), StringComparison.Ordinal);
        Do("trial", "enter", mine, "mine-wire-cold-ohms", "--run", "mine-wire-cold-ohms-1", "--set", "leads=0.10ohm", "--read", "3.10", "3.10");
        using var json = JsonDocument.Parse(Do("beside", mine, "--json"));
        var line = json.RootElement.GetProperty("lines").EnumerateArray().Single(one => one.GetProperty("quantity").GetString() == "ohms");
        // By hand: mean of the readings minus the shorted leads, theirs 2.84 − 0.12 and mine 3.10 − 0.10.
        Assert.Equal(2.72, line.GetProperty("theirs").GetDouble(), 1e-9);
        Assert.Equal(3.00, line.GetProperty("mineIs").GetDouble(), 1e-9);
        double joint = Math.Sqrt(Math.Pow(line.GetProperty("theirDoubt").GetDouble(), 2) + Math.Pow(line.GetProperty("myDoubt").GetDouble(), 2));
        Assert.Equal(0.28 / joint, line.GetProperty("apart").GetDouble(), 1e-6);
        Assert.Equal(0.28 / joint > 2 ? "differ" : "agree", line.GetProperty("says").GetString());
        Assert.Equal(0, json.RootElement.GetProperty("waiting").GetArrayLength());
        Assert.Equal(1, json.RootElement.GetProperty("begun").GetInt32());
        // What was said of the leads can be said anew: 3.10 − 0.20.
        Do("trial", "enter", mine, "mine-wire-cold-ohms", "--run", "mine-wire-cold-ohms-1", "--set", "leads=0.2ohm", "--read", "3.1");
        using var anew = JsonDocument.Parse(Do("beside", mine, "--json"));
        Assert.Equal(2.90, anew.RootElement.GetProperty("lines").EnumerateArray().Single(one => one.GetProperty("quantity").GetString() == "ohms").GetProperty("mineIs").GetDouble(), 1e-9);
        Assert.Contains("no twins", Refused("beside", Study), StringComparison.Ordinal);
    }

    [Fact]
    public void A_viewer_who_names_no_run_types_into_the_one_that_waits()
    {
        Begin();
        string zip = bench.In("sent.zip"), mine = bench.In("mine.study");
        Do("share", Study, zip);
        Do("import", zip, mine);
        Do("trial", "enter", mine, "mine-wire-cold-ohms", "--read", "3.10", "3.11");
        var run = Assert.Single(OpenStudy.Read(mine).Value.Study.Trials.Single(trial => trial.Id.Name == "mine-wire-cold-ohms").Runs);
        Assert.Equal(("mine-wire-cold-ohms-1", 2), (run.Id.Name, run.Readings.Count));
        Do("trial", "enter", mine, "mine-wire-cold-ohms", "--read", "3.12"); // nothing waits any more: a run of its own
        Assert.Equal(2, OpenStudy.Read(mine).Value.Study.Trials.Single(trial => trial.Id.Name == "mine-wire-cold-ohms").Runs.Count);
    }

    [Fact]
    public void An_arrangement_is_wired_once_more_with_the_parts_that_I_have_read()
    {
        Begin();
        Do("part", "add", Study, "cell", "cell", "round cell", "--claimed", "capacity=2600mAh");
        Do("arrange", Study);
        string zip = bench.In("sent.zip"), mine = bench.In("mine.study");
        Do("share", Study, zip);
        Do("import", zip, mine);
        Assert.Contains("has a reading yet", Refused("beside", mine, "--wire", "A"), StringComparison.Ordinal);
        Do("trial", "enter", mine, "mine-wire-cold-ohms", "--run", "mine-wire-cold-ohms-1", "--read", "3.10");
        Do("beside", mine, "--wire", "A");
        var study = OpenStudy.Read(mine).Value.Study;
        Assert.Equal(["wire", "mine-wire"], study.Arrangements.Select(one => one.Heater!.Value.Name));
        Assert.Equal(study.Arrangements[0].Cell, study.Arrangements[1].Cell);
    }

    [Fact]
    public void Every_run_of_the_sample_has_one_empty_twin_with_the_same_columns()
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", "rope-hot-knife")).Value;
        var shared = Twins.With(study);
        Assert.Empty(StudyCheck.Of(shared, "shared"));
        var runs = study.Trials.SelectMany(trial => trial.Runs).ToArray();
        var twins = shared.Trials.Where(trial => shared.Parts.Single(part => part.Id == trial.Part).TwinOf is not null).SelectMany(trial => trial.Runs).ToArray();
        Assert.Equal(runs.Select(run => "mine-" + run.Id.Name).Order(StringComparer.Ordinal), twins.Select(run => run.Id.Name).Order(StringComparer.Ordinal));
        Assert.All(twins, twin => Assert.Empty(twin.Readings));
        Assert.All(twins, twin => Assert.Equal(runs.Single(run => "mine-" + run.Id.Name == twin.Id.Name).Columns.Select(column => (column.Name, column.Unit)), twin.Columns.Select(column => (column.Name, column.Unit))));
        Assert.Equal(shared.Parts.Count, Twins.With(shared).Parts.Count); // shared once more, the empty ones are made anew, not heaped up
        Assert.Equal(Found(study), Found(shared)); // the empty ones say nothing
    }

    [Fact]
    public void Without_names_the_numbers_stay_and_no_name_is_left()
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", "rope-hot-knife")).Value;
        var bare = LeaveOut.Of(study, new(Names: true));
        Assert.Empty(StudyCheck.Of(bare, "bare"));
        Assert.Equal(Found(study).Select(one => one.Value), Found(bare).Select(one => one.Value));
        string text = string.Concat(Bundle.Files(bare).Select(file => file.Name + file.Text));
        Assert.All(study.Parts.Select(part => part.Name).Concat(study.Instruments.Select(meter => meter.Name)).Concat(study.Trials.Select(trial => trial.Id.Name)).Append(study.Note), name => Assert.DoesNotContain(name, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Without_prices_nothing_of_costs_is_left()
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", "rope-hot-knife")).Value;
        study = study with { Parts = [.. study.Parts.Select((part, i) => i > 0 ? part : part with { Words = new Dictionary<string, string> { ["price"] = "two" } })] }; // as older versions let one type it
        var bare = LeaveOut.Of(study, new(Prices: true));
        Assert.Empty(StudyCheck.Of(bare, "bare"));
        Assert.Contains("\"price\"", Text(study), StringComparison.Ordinal);
        Assert.Contains("partsCost", Text(study), StringComparison.Ordinal);
        Assert.DoesNotContain("\"price\"", Text(bare), StringComparison.Ordinal);
        Assert.DoesNotContain("partsCost", Text(bare), StringComparison.Ordinal);

        static string Text(Study study)
        {
            return string.Concat(Bundle.Files(study).Select(file => file.Text));
        }
    }

    [Theory]
    [InlineData("Round cell 6000mAh real!! max 15A, 3 pcs 13,50", true)]
    [InlineData("silicone wire, 2 m, only 4", true)]
    [InlineData("12V 40W stick, €3", true)]
    [InlineData("9.99 with post", true)]
    [InlineData("ribbon 1.50 mm wide, 0.15mm thick, 3.70 V", false)]
    [InlineData("wire 22 ohm per metre", false)]
    public void Without_prices_a_sellers_text_that_may_name_one_stays_at_home(string text, bool stays)
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", "rope-hot-knife")).Value;
        var told = study with { Parts = [.. study.Parts.Select((part, i) => i > 0 ? part : part with { Listing = text })] };
        Assert.Equal(stays ? null : text, LeaveOut.Of(told, new(Prices: true)).Parts[0].Listing);
        Assert.Equal(text, LeaveOut.Of(told, new(Notes: true)).Parts[0].Listing);
    }

    [Fact]
    public void A_run_that_was_struck_out_whole_is_not_asked_of_the_viewer()
    {
        Begin();
        Do("trial", "enter", Study, "wire-cold-ohms", "--run", "second", "--read", "28.4", "28.5");
        Do("strike", Study, "second", "all", "--because", "wrong range");
        var twins = Twins.With(OpenStudy.Read(Study).Value.Study).Trials.SelectMany(trial => trial.Runs).Where(run => run.Readings.Count == 0);
        Assert.Equal("mine-wire-cold-ohms-1", Assert.Single(twins).Id.Name);
    }

    /// <summary>A heater with a photo by each way, a note, a seller's text, a price, and one run of ohms.</summary>
    private void Begin()
    {
        Do("new", Study);
        Do("meter", "add", Study, "ohmmeter", "bench meter", "--reads", "ohm=0.5%+0.01ohm");
        Do("part", "add", Study, "wire", "heater", "foam wire", "--measured", "price=0.87money", "--note", "my own note");
        File.WriteAllText(bench.In("listing.txt"), "The seller sings: wire 22 ohm per metre.");
        File.WriteAllBytes(bench.In("wire.png"), PhotoJourney.OnePixel);
        File.WriteAllBytes(bench.In("kept.png"), PhotoJourney.OnePixel);
        File.WriteAllText(bench.In("log.csv"), "volts,read\n1,2\n");
        File.WriteAllBytes(bench.In("tape.mov"), [0, 0, 0, 20, .. "ftypqt  somewhere"u8]);
        Do("part", "photo", Study, "wire", bench.In("wire.png"));
        Do("file", "add", Study, bench.In("kept.png"), "--about", "part:wire", "--as-is"); // as the camera wrote it
        Do("file", "add", Study, bench.In("log.csv"));
        Do("file", "add", Study, bench.In("tape.mov"), "--as-is");
        var listed = ChangeStudy.Run(Study, "listing", study => new(study with { Parts = [.. study.Parts.Select(part => part with { Listing = "The seller sings: wire 22 ohm per metre." })] }));
        Assert.True(listed.IsFine);
        Do("trial", "add", Study, "cold-ohms", "--on", "wire");
        Do("trial", "enter", Study, "wire-cold-ohms", "--set", "leads=0.12ohm", "--meter", "ohms=ohmmeter", "--read", "2.84", "2.84");
    }

    private static (string Quantity, double Value)[] Found(Study study) => [.. RunStudy.Findings(study).SelectMany(one => one.Findings).Select(finding => (finding.Quantity, finding.Value.Value))];

    private static string Text(string zip)
    {
        using var archive = ZipFile.OpenRead(zip);
        return string.Concat(archive.Entries.Select(entry =>
        {
            using var stream = entry.Open();
            using var memory = new MemoryStream();
            stream.CopyTo(memory);
            return entry.FullName + "\n" + Encoding.Latin1.GetString(memory.ToArray()) + "\n";
        }));
    }

    private string Do(params string[] words)
    {
        var done = bench.Type(words);
        Assert.True(done.Exit == 0, $"{string.Join(' ', words)}: {done.Error}");
        return done.Out;
    }

    private string Refused(params string[] words)
    {
        var done = bench.Type(words);
        Assert.Equal(2, done.Exit);
        return done.Error;
    }
}
