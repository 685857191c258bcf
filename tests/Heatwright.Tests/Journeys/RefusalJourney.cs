using System.Security.Cryptography;
using System.Text.Json.Nodes;

namespace Heatwright.Tests.Journeys;

/// <summary>What cannot be worked with is said with what, where, value, limit and next step; nothing is written.</summary>
public sealed class RefusalJourney : IDisposable
{
    private static readonly string Sample = Path.Combine(Repository.Root, "samples", "rope-hot-knife");

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData("missing")]
    [InlineData("foreign")]
    [InlineData("truncated")]
    [InlineData("newer")]
    [InlineData("empty")]
    public void A_study_file_that_is_none_is_refused_and_left_alone(string what)
    {
        string file = bench.In("x.study");
        if (what != "missing")
        {
            Assert.Equal(0, bench.Type("new", file).Exit);
            byte[] bytes = File.ReadAllBytes(file);
            switch (what)
            {
                case "foreign":
                    bytes = [.. "time,volts\n0,3.82\n"u8];
                    break;
                case "truncated":
                    bytes = bytes[..(bytes.Length / 2)];
                    break;
                case "newer":
                    bytes[63] = 99; // user_version, the format number, ends here in the head of the file
                    break;
                default:
                    bytes = [];
                    break;
            }

            foreach (string side in Directory.GetFiles(bench.Folder))
            {
                File.Delete(side);
            }

            File.WriteAllBytes(file, bytes);
        }

        string before = State();
        var said = bench.Type("study", file);
        Assert.Equal(2, said.Exit);
        Assert.Equal("", said.Out);
        Assert.All((string[])["where", "value", "limit", "next", file], word => Assert.Contains(word, said.Error, StringComparison.Ordinal));
        Assert.Equal(2, bench.Type("report", file, "--to", bench.In("r.html")).Exit);
        Assert.Equal(before, State());
    }

    [Fact]
    public void A_brief_that_contradicts_itself_ends_with_three()
    {
        string bundle = Changed(study => study["brief"]!["requirements"]!.AsArray().Add(JsonNode.Parse(
            """{"id":"slow","text":"Not before a minute.","quantity":"warmUpTime","limit":60,"unit":"s","atMost":false,"must":true,"condition":"","weight":1}""")));
        Assert.Equal(0, bench.Type("import", bundle, bench.In("c.study")).Exit);
        var said = bench.Type("study", bench.In("c.study"));
        Assert.Equal(3, said.Exit);
        Assert.Contains("exclude each other", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_that_cannot_be_is_told_and_left_out_and_the_rest_goes_on()
    {
        string bundle = Changed(_ => { });
        string run = Path.Combine(bundle, "runs", "leads-drop-1.csv");
        string[] lines = File.ReadAllLines(run);
        lines[1] = "soon," + lines[1].Split(',')[1];
        File.WriteAllLines(run, lines);
        bench.Verdicts(bundle);
        Assert.Contains("'soon' is not a number here", bench.Last, StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_of_a_bundle_are_told_at_once_and_no_file_is_made()
    {
        string bundle = Changed(study => study["parts"]![0]!["stated"]![0]!["unit"] = "furlong");
        File.Delete(Path.Combine(bundle, "runs", "leads-drop-1.csv"));
        var said = bench.Type("import", bundle, bench.In("f.study"));
        Assert.Equal(2, said.Exit);
        Assert.Contains("furlong", said.Error, StringComparison.Ordinal);
        Assert.Contains("leads-drop-1", said.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.In("f.study")));
    }

    [Fact]
    public void Import_and_new_never_overwrite()
    {
        string file = bench.In("kept.study");
        Assert.Equal(0, bench.Type("new", file).Exit);
        string before = State();
        Assert.Equal(2, bench.Type("new", file).Exit);
        Assert.Equal(2, bench.Type("import", Sample, file).Exit);
        Assert.Equal(before, State());
    }

    [Fact]
    public void A_slip_of_the_command_is_answered_with_the_way_to_help()
    {
        var said = bench.Type("stdy");
        Assert.Equal(2, said.Exit);
        Assert.Contains("--help", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_study_on_measured_logs_gives_its_findings()
    {
        Assert.Empty(bench.Verdicts(Path.Combine(Repository.Root, "samples", "measured-logs")));
        var findings = JsonNode.Parse(bench.Last)!["findings"]!.AsArray();
        double capacity = (double)findings.Single(finding => (string)finding!["name"]! == "capacity")!["value"]!;
        Assert.Equal(9906.48 / 3600, capacity, 0.01); // the record's own last charge, 9906.48 C; the first interval is counted by its mean current
        Assert.Contains(findings, finding => (string)finding!["name"]! == "lag");
    }

    private string Changed(Action<JsonNode> change)
    {
        string folder = bench.In("bundle-" + Guid.NewGuid().ToString("N"));
        Directory.CreateDirectory(Path.Combine(folder, "runs"));
        foreach (string run in Directory.GetFiles(Path.Combine(Sample, "runs")))
        {
            File.Copy(run, Path.Combine(folder, "runs", Path.GetFileName(run)));
        }

        var study = JsonNode.Parse(File.ReadAllText(Path.Combine(Sample, "study.json")))!;
        change(study);
        File.WriteAllText(Path.Combine(folder, "study.json"), study.ToJsonString());
        return folder;
    }

    private string State() => string.Join('\n', Directory.GetFiles(bench.Folder).Order(StringComparer.Ordinal)
        .Select(file => Path.GetFileName(file) + " " + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file)))));
}
