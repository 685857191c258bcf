using System.Net;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;

namespace Heatwright.Tests.Web;

/// <summary>What a page says of what was typed on it: its own buttons and lists, what was said and what was not, what a doubt was made of.</summary>
public sealed class TypedPagesTests : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("heatwright-typed-").FullName;
    private WebApplication app = null!;
    private Browsing browser = null!;

    public async ValueTask InitializeAsync()
    {
        string file = Path.Combine(folder, "band.study");
        Assert.True(NewStudy.Create(file, "lens band").IsFine);
        app = WebBench.Build(OpenStudy.Read(file).Value, 0, Path.Combine(folder, "own", "shelf.study"));
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
    public async Task A_line_said_twice_is_refused_in_the_words_of_the_page()
    {
        await Sent("/brief", "/brief/add", ("sentence", "band at 60 °C within 40 s from 18 °C"));
        await Sent("/brief", "/brief/add", ("sentence", "mass at most 250"));
        string refused = await Refused("/brief", "/brief/add", ("sentence", "mass at most 250 g"));
        Assert.Contains("with 'Take out' beside it", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("heatwright brief", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("drop", refused, StringComparison.Ordinal);
    }

    /// <summary>The sentences say 60 °C, 18 °C and 20 s; how long a piece may last nobody said.</summary>
    [Fact]
    public async Task What_a_sentence_said_of_the_work_is_said_and_not_assumed()
    {
        await Sent("/brief", "/brief/add", ("sentence", "band at 60 °C within 40 s from 18 °C"));
        await Sent("/brief", "/brief/add", ("sentence", "100 marks on one charge, one every 20 s"));
        Assert.Equal("18 °C, said", await Work("Air around the tool"));
        Assert.Equal("60 °C, said", await Work("Band is ready at"));
        Assert.Equal("20 s, said", await Work("One mark every"));
        Assert.Contains("assumed", await Work("It may last"), StringComparison.Ordinal);
        await Sent("/brief", "/brief/set", ("was for", "10s"), ("for", "4s"));
        Assert.Equal("4 s, said", await Work("It may last"));
    }

    /// <summary>A sentence that says what is usual anyway says it.</summary>
    [Fact]
    public async Task The_usual_air_is_said_too_where_a_sentence_says_it()
    {
        await Sent("/brief", "/brief/add", ("sentence", "band at 60 °C within 40 s"));
        Assert.Contains("assumed", await Work("Air around the tool"), StringComparison.Ordinal);
        await Sent("/brief", "/brief/add", ("sentence", "ready at 60 °C within 50 s from 20 °C"));
        Assert.Equal("20 °C, said", await Work("Air around the tool"));
    }

    /// <summary>By hand: 8/√3 is 4.6.</summary>
    [Fact]
    public async Task Limits_that_become_a_standard_doubt_are_told_beside_it()
    {
        await Sent("/brief", "/brief/add", ("sentence", "band at 60 °C within 40 s from 18 °C"));
        await Sent("/brief", "/brief/set", ("was need", "0J"), ("need", "40 J ± 8 J"));
        Assert.Contains("± 4.6 J", await Seen("/brief"), StringComparison.Ordinal);
        Assert.Matches("class=\"note\">typed as limits of ±8.J, which is ±4.6.J as one standard doubt", WebUtility.HtmlDecode(await browser.Text("/brief")));
    }

    [Fact]
    public async Task A_part_without_its_kind_is_refused_with_the_words_of_the_list()
    {
        string refused = await Refused("/shelf", "/shelf/add", ("id", "module"));
        Assert.Contains("step-up module", refused, StringComparison.Ordinal);
        Assert.Contains("Choose it from the list 'What it is'", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("stepUp", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("cutOut", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("behind the name", refused, StringComparison.Ordinal);
    }

    /// <summary>The word before a value holds until the next: a claim that follows a claim never becomes a reading.</summary>
    [Fact]
    public async Task The_form_says_how_far_a_word_before_a_value_holds()
    {
        Assert.Contains("holds for all behind it, until the next", await Seen("/shelf"), StringComparison.Ordinal);
        await Sent("/shelf", "/shelf/add", ("id", "board"), ("kind", "supervision"), ("values", "claimed rated current=10A; price=0.8; measured mass=4g"));
        string[] said = [.. OpenStudy.Read(Path.Combine(folder, "band.study")).Value.Study.Parts[0].Stated.Select(value => value.Origin)];
        Assert.Equal(["claimed", "claimed", "measured"], said);
    }

    [Fact]
    public async Task What_an_arrangement_lacks_stands_once_on_its_page()
    {
        await Sent("/brief", "/brief/add", ("sentence", "band at 60 °C within 40 s from 18 °C"));
        await Sent("/shelf", "/shelf/add", ("id", "grey"), ("kind", "cell"), ("name", "grey cell"), ("values", "ohms=50mohm; capacity=3Ah; word chemistry=lithium-ion"));
        await Sent("/shelf", "/shelf/add", ("id", "coil"), ("kind", "heater"), ("name", "brass coil"), ("values", "ohms=3ohm"));
        string file = Path.Combine(folder, "band.study");
        var wired = WireTool.Arrange(file, new WiringEntry { Chosen = new Dictionary<string, string> { ["cell"] = "grey", ["heater"] = "coil" }, Pack = "1S1P" });
        Assert.True(wired.IsFine, string.Join("; ", wired.Problems));
        await WebBench.ReadyAsync(app);
        string page = await Seen("/arrangements/A");
        var lacks = RunStudy.Run(OpenStudy.Read(file).Value.Study, "x").Verdicts[0].Problems;
        Assert.NotEmpty(lacks);
        Assert.All(lacks, problem => Assert.Single(Regex.Matches(WebUtility.HtmlDecode(page), Regex.Escape(problem.What))));
    }

    private async Task<string> Work(string name)
    {
        string row = Regex.Match(await browser.Text("/brief"), $"<th scope=\"row\">{Regex.Escape(name)}</th>(.*?)</tr>", RegexOptions.Singleline).Groups[1].Value;
        return Regex.Replace(PagesTests.Visible(row), @"\s+", " ").Trim();
    }

    private async Task<string> Seen(string path) => Regex.Replace(PagesTests.Visible(await browser.Text(path)), @"\s+", " ");

    private async Task Sent(string page, string to, params (string Name, string Value)[] fields)
    {
        using var answer = await browser.Send(page, to, fields);
        Assert.True(answer.StatusCode == HttpStatusCode.SeeOther, $"{to}: {answer.StatusCode} {PagesTests.Visible(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))}");
    }

    private async Task<string> Refused(string page, string to, params (string Name, string Value)[] fields)
    {
        using var answer = await browser.Send(page, to, fields);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        string problem = Regex.Match(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), "<div class=\"problem\".*?</div>", RegexOptions.Singleline).Value;
        return WebUtility.HtmlDecode(PagesTests.Visible(problem));
    }
}
