using System.Text.Json;
using Heatwright.DemoTruth;
using Heatwright.Jobs;
using Heatwright.Predictions;

namespace Heatwright.Tests.Journeys;

/// <summary>The choice is frozen, later findings contradict it without rewriting it, and a prototype is held against it.</summary>
public sealed class DecisionJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    private string Knife(Hidden? hidden = null)
    {
        string bundle = bench.In("bundle"), file = bench.In("knife.study");
        Heatwright.DemoTruth.DemoStudy.Write(bundle, hidden ?? new Hidden());
        var said = bench.Type("import", bundle, file);
        Assert.True(said.Exit == 0, said.Error);
        return file;
    }

    [Fact]
    public async Task A_decision_is_frozen_and_a_prototype_that_differs_finds_its_culprit()
    {
        string file = Knife();
        Assert.Equal(2, bench.Type("decide", file).Exit); // nothing is decided yet
        Assert.Equal(2, bench.Type("decide", file, "A", "--on", "2026-03-01").Exit); // no reason

        var made = bench.Type("decide", file, "A", "--because", "fastest", "--on", "2026-03-01", "--json");
        Assert.True(made.Exit == 0, made.Error);
        using var card = JsonDocument.Parse(made.Out);
        Assert.Equal("go-if", card.RootElement.GetProperty("verdict").GetString());
        // The missing supervision is no requirement that can be accepted: it stands on the first line.
        Assert.Contains("supervision", card.RootElement.GetProperty("firstLine").GetString()!, StringComparison.Ordinal);
        Assert.Equal(3, card.RootElement.GetProperty("rejected").GetArrayLength());
        Assert.NotEmpty(card.RootElement.GetProperty("wouldChangeOurMind").EnumerateArray());

        using var shown = JsonDocument.Parse(bench.Type("decide", file, "--json").Out);
        Assert.Empty(shown.RootElement.GetProperty("flags").EnumerateArray());
        Assert.Equal(card.RootElement.GetProperty("lines").GetRawText(), shown.RootElement.GetProperty("lines").GetRawText());

        // A prototype whose heater has a fifth more ohms than was believed; what it then does is worked out by running the plant so, and read with small doubt.
        var opened = OpenStudy.Read(file).Value;
        var result = RunStudy.Run(opened.Study, opened.Fingerprint);
        var builder = result.Verdicts[0].Prediction!.Builder;
        double[] built = builder.Middle;
        int place = builder.Place(Heatwright.Arrangements.PlantKey.HeaterOhms);
        built[place] *= 1.2;
        var did = Predict.Once(builder, built);
        // Before anything is read nothing agrees, and nothing disagrees.
        using var unread = JsonDocument.Parse(bench.Type("check", file, "--json").Out);
        Assert.StartsWith("nothing of the prototype is read yet", unread.RootElement.GetProperty("sentence").GetString()!, StringComparison.Ordinal);
        var refused = bench.Type("check", file, "--read", "ready=five");
        Assert.Equal(2, refused.Exit);
        // The example of a refusal is one that is taken, and the later reading stands for it.
        string example = System.Text.RegularExpressions.Regex.Match(System.Text.RegularExpressions.Regex.Replace(refused.Error, @"\s+", " "), "for example '([^']+)'").Groups[1].Value;
        Assert.Equal("ready=25 s ± 0.5 s", example);
        Assert.Equal(0, bench.Type("check", file, "--read", example).Exit);
        Assert.Equal(2, bench.Type("check", file, "--read", "nonsense=5 s ± 1 s").Exit);

        // One of several that cannot be read keeps all of them out, and says so; its example is of its own line and is taken.
        var several = bench.Type("check", file, "--read", "ready=24 s ± 1 s", "--read", "pieces=many");
        Assert.Equal(2, several.Exit);
        string told = System.Text.RegularExpressions.Regex.Replace(several.Error, @"\s+", " ");
        Assert.Contains("None of the 2 readings is kept yet.", told, StringComparison.Ordinal);
        Assert.Equal(0, bench.Type("check", file, "--read", System.Text.RegularExpressions.Regex.Match(told, "for example '(pieces=[^']+)'").Groups[1].Value).Exit);

        // Without a doubt the last digit counts: of 26.1 s 0.1/√12 and two presses of 0.25/√3 s, 0.2062 together; of a count 1/√12 = 0.2887.
        var bare = bench.Type("check", file, "--read", "ready=26.1s", "--read", "pieces=55±0");
        Assert.True(bare.Exit == 0, bare.Error);
        string taken = System.Text.RegularExpressions.Regex.Replace(bare.Out, @"\s+", " ");
        Assert.Contains("ready 26.1 s: no doubt was said, so ± 0.21 s is taken, its last digit and a hand's two presses of a watch.", taken, StringComparison.Ordinal);
        Assert.Contains("pieces 55: no doubt was said, so ± 0.29 is taken, its last digit.", taken, StringComparison.Ordinal);

        // Typed in minutes where the line counts in seconds: a sixtieth of what was predicted.
        string minutes = System.Text.RegularExpressions.Regex.Replace(bench.Type("check", file, "--read", FormattableString.Invariant($"ready={did.WarmUpS / 60:0.000}")).Out, @"\s+", " ");
        Assert.Contains("was it read in another unit? Type it again with its unit; the later reading counts.", minutes, StringComparison.Ordinal);
        Assert.Equal(0, bench.Type("check", file, "--read", "ready=26.1s").Exit);
        using var bareRead = JsonDocument.Parse(bench.Type("check", file, "--json").Out);
        var kept = bareRead.RootElement.GetProperty("lines").EnumerateArray().Where(line => line.TryGetProperty("plusMinus", out var doubt) && doubt.ValueKind == JsonValueKind.Number).ToDictionary(line => line.GetProperty("requirement").GetString()!, line => line.GetProperty("plusMinus").GetDouble());
        Assert.Equal(0.2062, kept["ready"], 0.0001);
        Assert.Equal(0.2887, kept["pieces"], 0.0001);
        var check = bench.Type("check", file, "--json", "--on", "2026-04-01",
            "--read", FormattableString.Invariant($"warm-up time={did.WarmUpS:0.00} s +- 0.1 s"), "--read", FormattableString.Invariant($"pieces={did.Pieces}±2"), "--read", FormattableString.Invariant($"grip={did.GripC:0.00}±0.2 °C"));
        Assert.True(check.Exit == 0, check.Error);
        using var checkedOut = JsonDocument.Parse(check.Out);
        var lines = checkedOut.RootElement.GetProperty("lines").EnumerateArray().ToDictionary(line => line.GetProperty("requirement").GetString()!, line => line.GetProperty("promise").GetString());
        Assert.Equal(did.WarmUpS <= 25 ? "kept" : "missed", lines["ready"]);
        Assert.Equal("kept", lines["pieces"]);
        Assert.Equal("not tested", lines["cells"]);
        Assert.True(checkedOut.RootElement.GetProperty("p").GetDouble() < 0.05);
        string[] culprits = [.. checkedOut.RootElement.GetProperty("culprits").EnumerateArray().Select(one => one.GetString()!)];
        Assert.Contains(culprits, words => words.Contains("more in heater ohms", StringComparison.Ordinal));

        // The next tool begins with parts and readings, and without what was decided of this one or read on it.
        string next = bench.In("next.study");
        Assert.Equal(0, bench.Type("new", next, "--from", file).Exit);
        Assert.Equal(2, bench.Type("decide", next).Exit);
        var begun = OpenStudy.Read(next).Value.Study;
        Assert.Empty(begun.Decisions);
        Assert.Empty(begun.PrototypeReadings);
        Assert.NotEmpty(begun.Trials);

        // The pages tell what the commands tell.
        await using var app = Heatwright.Web.WebBench.Build(OpenStudy.Read(file).Value, 0);
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = new HttpClient { BaseAddress = new Uri(Heatwright.Web.WebBench.Address(app)) };
        await Heatwright.Web.WebBench.ReadyAsync(app);
        string checkPage = Web.PagesTests.Visible(await client.GetStringAsync(new Uri("/check", UriKind.Relative), TestContext.Current.CancellationToken));
        Assert.Contains(checkedOut.RootElement.GetProperty("sentence").GetString()!, checkPage, StringComparison.Ordinal);
        // Every line that was predicted or read has its strip, with the limit on it.
        string drawn = await client.GetStringAsync(new Uri("/check", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(lines.Count, drawn.Split("class=\"strip beside\"").Length - 1);
        Assert.Equal(3, drawn.Split("class=\"read\"").Length - 1);
        string decisionPage = Web.PagesTests.Visible(await client.GetStringAsync(new Uri("/decision", UriKind.Relative), TestContext.Current.CancellationToken));
        Assert.Contains("because fastest", decisionPage, StringComparison.Ordinal);
        Assert.Contains(card.RootElement.GetProperty("state").GetString()!, decisionPage, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missed_requirement_needs_a_reason_and_the_brief_keeps_both()
    {
        string file = Knife();
        var refused = bench.Type("decide", file, "B", "--because", "the parts are here", "--on", "2026-03-01");
        Assert.Equal(2, refused.Exit);
        Assert.Contains("--accept 'pieces=", refused.Error, StringComparison.Ordinal);
        var hard = bench.Type("decide", file, "B", "--because", "the parts are here", "--accept", "pieces=ten are enough", "--accept", "grip=gloves", "--on", "2026-03-01");
        Assert.Equal(2, hard.Exit);
        Assert.Contains("hard safety limit", hard.Error, StringComparison.Ordinal);

        var made = bench.Type("decide", file, "B", "--because", "the parts are here", "--accept", "pieces=ten are enough for the film", "--on", "2026-03-01");
        Assert.True(made.Exit == 0, made.Error);
        var study = OpenStudy.Read(file).Value.Study;
        var now = study.Brief!.Requirements.Single(line => line.Id == "pieces");
        Assert.False(now.Must);
        Assert.Contains("accepted as missed on 2026-03-01: ten are enough for the film", now.Condition, StringComparison.Ordinal);
        Assert.True(study.Decisions.Single().BriefThen.Requirements.Single(line => line.Id == "pieces").Must);

        // The card goes out with a bundle and comes back the same.
        Assert.Equal(study.Decisions.Single().Lines, OpenStudy.Read(file).Value.Study.Decisions.Single().Lines);
    }
}
