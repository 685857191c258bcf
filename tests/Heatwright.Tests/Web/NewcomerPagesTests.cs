using System.Net;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;

namespace Heatwright.Tests.Web;

/// <summary>What a maker stumbled over who did a whole study in the browser for the first time: an empty study, typed page by page.</summary>
public sealed class NewcomerPagesTests : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("heatwright-newcomer-").FullName;
    private WebApplication app = null!;
    private Browsing browser = null!;

    private string File => Path.Combine(folder, "stamp.study");

    private Heatwright.StudyFile.Study Study => OpenStudy.Read(File).Value.Study;

    public async ValueTask InitializeAsync()
    {
        Assert.True(NewStudy.Create(File, "leather stamp").IsFine);
        app = WebBench.Build(OpenStudy.Read(File).Value, 0, Path.Combine(folder, "own", "shelf.study"));
        await app.StartAsync();
        browser = new(WebBench.Address(app));
    }

    public async ValueTask DisposeAsync()
    {
        browser.Client.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task The_brief_counts_with_what_was_read_as_soon_as_it_is_fitted()
    {
        await Sent("/brief", "/brief/add", ("sentence", "stamp at 150 °C within 2 min from 20 °C"));
        await Sent("/brief", "/brief/add", ("sentence", "30 marks on one charge, one every 60 s"));
        await Sent("/shelf", "/shelf/add", ("id", "grey"), ("kind", "cell"), ("name", "grey cell"), ("values", "claimed capacity=3600mAh (sleeve); word chemistry=lithium-ion"));
        await Sent("/shelf", "/shelf/add", ("id", "coil"), ("kind", "heater"), ("name", "coil"), ("values", "heat capacity=6J/K; linear loss=0.04W/K"));
        await WebBench.ReadyAsync(app);
        Assert.Contains("Wh (claimed)", await Seen("/brief"), StringComparison.Ordinal);
        await Sent("/trials", "/trials/add", ("part", "grey"), ("kind", "discharge"), ("name", "drain"));
        await Sent("/trials/drain", "/trials/drain/block", ("run", ""), ("block", "0 4.15 1\n900 3.95 1\n1800 3.80 1\n2700 3.68 1\n3600 3.60 1\n4500 3.50 1\n5400 3.35 1\n6000 3.1 1\n6300 2.8 1"));
        await WebBench.ReadyAsync(app);
        string page = await Seen("/brief");
        Assert.Contains("Wh (fitted)", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Wh (claimed)", page, StringComparison.Ordinal);
        Assert.DoesNotContain("being fitted", page, StringComparison.Ordinal);
        foreach (var answer in ReadBrief.Of(Study).Value.FirstAnswers)
        {
            Assert.Contains(answer.Sentence, page, StringComparison.Ordinal);
        }
    }

    /// <summary>By hand: 3600 mAh are 3.6 Ah, and 12960 C.</summary>
    [Fact]
    public async Task A_setting_of_a_run_stands_in_the_unit_it_is_typed_in()
    {
        await Sent("/shelf", "/shelf/add", ("id", "grey"), ("kind", "cell"));
        await Sent("/trials", "/trials/add", ("part", "grey"), ("kind", "discharge"), ("name", "drain"));
        await Sent("/trials/drain", "/trials/drain/run", ("columns", "time"), ("columns", "volts"), ("columns", "amps"), ("set claim", "3600mAh"), ("set air", "21C"), ("set cut-off", "2800mV"));
        await Sent("/trials/drain", "/trials/drain/line", ("run", "drain-1"), ("line", "0 4.15 1"));
        await WebBench.ReadyAsync(app);
        string page = await Seen("/trials/drain");
        Assert.Contains("claim 3.6 Ah", page, StringComparison.Ordinal);
        Assert.Contains("air 21 °C", page, StringComparison.Ordinal);
        Assert.Contains("cut-off 2.8 V", page, StringComparison.Ordinal);
        string report = Heatwright.Report.ReadingsPart.Of(RunStudy.Run(Study, "x")).ToString();
        Assert.Contains("claim 3.6 Ah", report, StringComparison.Ordinal);
        Assert.DoesNotContain("12960", page + report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_that_cannot_stay_empty_offers_no_none_and_says_what_it_takes()
    {
        await Sent("/shelf", "/shelf/add", ("id", "flat"), ("kind", "cell"), ("name", "flat cell"), ("values", "ohms=60mohm; full volts=4.2V; cut-off volts=3V; word chemistry=lithium-ion"));
        await Sent("/shelf", "/shelf/add", ("id", "coil"), ("kind", "heater"), ("name", "brass coil"), ("values", "ohms=2.71ohm"));
        await Sent("/shelf", "/shelf/add", ("id", "bead"), ("kind", "sensor"), ("name", "glass bead"));
        await Sent("/shelf", "/shelf/add", ("id", "bead2"), ("kind", "sensor"), ("name", "steel bead"));
        await Sent("/shelf", "/shelf/add", ("id", "beech"), ("kind", "handle"), ("name", "beech grip"));
        string form = await browser.Text("/arrangements");
        Assert.Equal(["not chosen: brass coil, the only one", "brass coil"], Options(form, "heater"));
        Assert.Equal(["not chosen: bare thermocouple bead, assumed", "glass bead", "steel bead"], Options(form, "sensor"));
        Assert.Equal(["not chosen: small controller board, assumed"], Options(form, "controller"));
        Assert.Equal(["not chosen: beech grip, the only one", "beech grip"], Options(form, "handle"));
        Assert.Equal(["none"], Options(form, "charger"));
        await Sent("/arrangements", "/arrangements/add", ("cell", "flat"));
        var wired = Assert.Single(Study.Arrangements);
        Assert.Equal(("coil", "any-sensor", "any-controller", "beech", (Heatwright.Quantities.PartId?)null), (wired.Heater?.Name, wired.Sensor?.Name, wired.Controller?.Name, wired.Handle.Name, wired.Charger));
        string change = await browser.Text("/arrangements/A");
        foreach (string place in new[] { "heater", "sensor", "controller", "handle" })
        {
            Assert.DoesNotContain("none", Options(change, place));
        }

        Assert.Contains("none", Options(change, "charger"));

        // With a lamp on the shelf a heater may give way to it, and what a lamp needs not is said.
        await Sent("/shelf", "/shelf/add", ("id", "led"), ("kind", "lamp"), ("name", "white lamp"));
        form = await browser.Text("/arrangements");
        Assert.Equal("choose, or a lamp below", Options(form, "heater")[0]);
        Assert.Equal("not chosen: small controller board, assumed; none with a lamp", Options(form, "controller")[0]);
    }

    private static string[] Options(string page, string place) => [.. Regex.Matches(page.Split($"name=\"{place}\"")[1].Split("</select>")[0], "<option[^>]*>([^<]*)</option>").Select(match => WebUtility.HtmlDecode(match.Groups[1].Value))];

    private async Task<string> Seen(string path) => PagesTests.Visible(await browser.Text(path));

    private async Task Sent(string page, string to, params (string Name, string Value)[] fields)
    {
        using var answer = await browser.Send(page, to, fields);
        Assert.True(answer.StatusCode == HttpStatusCode.SeeOther, $"{to}: {answer.StatusCode} {PagesTests.Visible(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))}");
    }
}
