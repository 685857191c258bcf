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
        Assert.Contains("Wh (claimed amp-hours", await Seen("/brief"), StringComparison.Ordinal);
        await Sent("/trials", "/trials/add", ("part", "grey"), ("kind", "discharge"), ("name", "drain"));
        await Sent("/trials/drain", "/trials/drain/block", ("run", ""), ("block", "0 4.15 1\n900 3.95 1\n1800 3.80 1\n2700 3.68 1\n3600 3.60 1\n4500 3.50 1\n5400 3.35 1\n6000 3.1 1\n6300 2.8 1"));
        await WebBench.ReadyAsync(app);
        string page = await Seen("/brief");
        Assert.Contains("Wh (fitted amp-hours", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Wh (claimed amp-hours", page, StringComparison.Ordinal);
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
        string report = Heatwright.Report.ReadingsPart.Of(RunStudy.Run(Study, "x")).Text.Replace('\u00A0', ' ');
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
        Assert.Equal(["brass coil, assumed", "brass coil"], Options(form, "heater"));
        Assert.Equal(["bare thermocouple bead, assumed", "glass bead", "steel bead"], Options(form, "sensor"));
        Assert.Equal(["small controller board, assumed"], Options(form, "controller"));
        Assert.Equal(["beech grip, assumed", "beech grip"], Options(form, "handle"));
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

        // The assumed board lies on the shelf now. With a lamp there a heater may give way to it, and what a lamp needs not is said.
        await Sent("/shelf", "/shelf/add", ("id", "led"), ("kind", "lamp"), ("name", "white lamp"));
        form = await browser.Text("/arrangements");
        Assert.Equal("choose, or a lamp below", Options(form, "heater")[0]);
        Assert.Equal("small controller board, assumed; none with a lamp", Options(form, "controller")[0]);
    }

    private static string[] Options(string page, string place) => [.. Regex.Matches(page.Split($"name=\"{place}\"")[1].Split("</select>")[0], "<option[^>]*>([^<]*)</option>").Select(match => WebUtility.HtmlDecode(match.Groups[1].Value))];

    [Fact]
    public async Task A_recipe_names_what_its_lines_are_about()
    {
        await Sent("/shelf", "/shelf/add", ("id", "coil"), ("kind", "heater"));
        await Sent("/trials", "/trials/add", ("part", "coil"), ("kind", "cold-ohms"), ("name", "cold"));
        string recipe = (await browser.Text("/trials/cold")).Split("How it is done")[1].Split("</details>")[0];
        Assert.Equal(["With one meter", "With two meters", "Meter ranges", "Loads", "Rest"], Regex.Matches(recipe, "<h3>([^<]*)</h3>").Select(match => match.Groups[1].Value));
        Assert.Matches("<h3>Loads</h3>\\s*<ul class=\"says\"><li>None: the meter brings its own current", recipe);
    }

    [Fact]
    public async Task An_empty_trial_says_in_one_sentence_what_is_missing_and_nothing_is_at_work_where_nothing_is_wired()
    {
        await Sent("/shelf", "/shelf/add", ("id", "grey"), ("kind", "cell"));
        await Sent("/trials", "/trials/add", ("part", "grey"), ("kind", "pulse"), ("name", "step"));
        string page = await browser.Text("/trials/step");
        string found = page.Split("<h2>Findings</h2>")[1].Split("</section>")[0];
        Assert.Contains("Nothing is read yet: type time, volts, amps above, a line a reading.", PagesTests.Visible(found), StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"problem\"", found, StringComparison.Ordinal);
        string rule = PagesTests.Visible(page.Split("<nav class=\"rule\"")[1].Split("</nav>")[0]);
        Assert.Contains("predictions, nothing yet", rule, StringComparison.Ordinal);
        Assert.Contains("comparison, nothing yet", rule, StringComparison.Ordinal);

        // Once read, what is still missing for the volts has a limit and a next step of their own.
        await Sent("/trials/step", "/trials/step/block", ("run", ""), ("block", "0 4.15 0\n1 4.05 1\n2 4.04 1\n10 4.02 1\n20 4.14 0"));
        await WebBench.ReadyAsync(app);
        page = await browser.Text("/trials/step");
        string problem = PagesTests.Visible(page.Split("class=\"problem\"")[1].Split("</div>")[0].Split('>', 2)[1]);
        Assert.Contains("1 usable run", problem, StringComparison.Ordinal);
        Assert.NotEqual(problem.Split("Limit")[1].Split("Next")[0].Trim(), problem.Split("Next")[1].Replace("Take ", "", StringComparison.Ordinal).Trim().TrimEnd('.'));
    }

    [Fact]
    public async Task Kinds_that_read_the_same_say_when_to_take_which()
    {
        await Sent("/shelf", "/shelf/add", ("id", "grey"), ("kind", "cell"));
        string[] said = Options(await browser.Text("/trials"), "kind");
        Assert.Equal(said.Length, said.Select(one => one[(one.IndexOf(": ", StringComparison.Ordinal) + 2)..]).Distinct().Count());
        Assert.Matches("Take it for a prediction: .*how the volts fall", said.Single(one => one.StartsWith("discharge (capacity):", StringComparison.Ordinal)));
        Assert.DoesNotContain(said, one => one.StartsWith("capacity:", StringComparison.Ordinal));
        Assert.Matches("Take it for a prediction: .*how they grow with heat", said.Single(one => one.StartsWith("hot-ohms:", StringComparison.Ordinal)));
        await Sent("/trials", "/trials/add", ("part", "grey"), ("kind", "discharge"), ("name", "drain"));
        Assert.Contains("<h1>discharge</h1>", await browser.Text("/trials/drain/sheet"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_block_that_is_refused_for_one_reason_is_told_once()
    {
        await Sent("/shelf", "/shelf/add", ("id", "coil"), ("kind", "heater"));
        await Sent("/trials", "/trials/add", ("part", "coil"), ("kind", "volts-amps"), ("name", "va"));
        using var answer = await browser.Send("/trials/va", "/trials/va/block", ("run", ""), ("block", string.Join('\n', Enumerable.Range(1, 19).Select(i => $"{i}x,y{i} z{i}"))));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        string page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        string entry = page.Split("id=\"entry\"")[1].Split("id=\"live\"")[0];
        Assert.Equal(2, Regex.Count(entry, "class=\"problem\"")); // volts and amps, each once
        Assert.Contains("each of the 19 lines, first line 1, volts", PagesTests.Visible(entry), StringComparison.Ordinal);
        Assert.Contains("None of the lines is kept yet.", PagesTests.Visible(entry), StringComparison.Ordinal);
        using var mixed = await browser.Send("/trials/va", "/trials/va/block", ("run", ""), ("block", "1 0.5\n2x 1\n3x 1.5"));
        Assert.Contains("2 of 3 lines, first line 2, volts", PagesTests.Visible(await mixed.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_part_is_renamed_counted_and_taken_off_the_shelf_on_its_page()
    {
        await Sent("/shelf", "/shelf/add", ("id", "scrap"), ("kind", "leads"), ("name", "scrap leads"), ("values", "mass=9g (scale)"));
        string more = (await browser.Text("/shelf")).Split("Say more about scrap")[1].Split("</details>")[0];
        Assert.Contains("name=\"name\" value=\"scrap leads\"", more, StringComparison.Ordinal);
        await Sent("/shelf", "/shelf/state/scrap", ("was name", "scrap leads"), ("name", "thin leads"), ("was count", "1"), ("count", "3"), ("was from", "bought"), ("from", "salvaged"));
        var part = Assert.Single(Study.Parts);
        Assert.Equal(("thin leads", 3, "salvaged", 1), (part.Name, part.Count, part.From, part.Stated.Count));

        // What the page showed and nobody changed says nothing: another who changed it meanwhile keeps his.
        await Sent("/shelf", "/shelf/state/scrap", ("was name", "scrap leads"), ("name", "scrap leads"), ("was count", "1"), ("count", "4"), ("was from", "bought"), ("from", "bought"));
        part = Assert.Single(Study.Parts);
        Assert.Equal(("thin leads", 4, "salvaged"), (part.Name, part.Count, part.From));

        await Sent("/trials", "/trials/add", ("part", "scrap"), ("kind", "two-point-drop"), ("name", "drop"));
        using var used = await browser.Send("/shelf", "/shelf/drop/scrap");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, used.StatusCode);
        string told = PagesTests.Visible(await used.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains("The part is in use.", told, StringComparison.Ordinal);
        Assert.Contains("as destroyed, under 'say more' at 'scrap' on the shelf", told, StringComparison.Ordinal);
        Assert.True(PageWordsTests.Clean(told), PageWordsTests.Found(told));
        await Sent("/trials/drop", "/trials/drop/drop");
        await Sent("/shelf", "/shelf/drop/scrap");
        Assert.Empty(Study.Parts);
        await Sent("/shelf", "/undo", ("to", "/shelf"));
        Assert.Equal("thin leads", Assert.Single(Study.Parts).Name);
    }

    [Fact]
    public async Task A_reading_sheet_keeps_each_name_with_its_blank_and_counts_its_pages()
    {
        string sheet = await browser.Text("/trials/kinds/capacity/sheet");
        Assert.Contains("<span class=\"pair\">rest (s) <span class=\"fill\"></span></span>", sheet, StringComparison.Ordinal);
        Assert.Contains("<span class=\"pair\">time doubt (s) <span class=\"fill\"></span></span>", sheet, StringComparison.Ordinal);
        Assert.Contains("sheet <span class=\"few\"></span> of <span class=\"few\"></span>", sheet, StringComparison.Ordinal);
        Assert.Contains("A longer run goes on over more of these sheets.", sheet, StringComparison.Ordinal);
        Assert.Contains(".pair{white-space:nowrap}", await browser.Text("/paper.css"), StringComparison.Ordinal);
    }

    /// <summary>A sheet is typed off from left to right: its columns stand as the line of the page takes them.</summary>
    [Fact]
    public async Task A_reading_sheet_of_a_trial_has_its_columns_as_the_page_takes_them()
    {
        await Sent("/shelf", "/shelf/add", ("id", "tip"), ("kind", "heater"));
        await Sent("/trials", "/trials/add", ("part", "tip"), ("kind", "warm-up"), ("name", "tip-warm"));
        string before = await browser.Text("/trials/tip-warm/sheet");
        Assert.True(Order(before, "time", "volts", "amps", "degrees", "watts"), before);
        await Sent("/trials/tip-warm", "/trials/tip-warm/line", ("run", ""), ("number", "1"), ("line", "0 4 2 20"));
        string begun = await browser.Text("/trials/tip-warm/sheet");
        Assert.True(Order(begun, "time", "volts", "amps", "degrees"), begun);
        Assert.DoesNotContain("<th>watts", begun, StringComparison.Ordinal); // the line would not take them any more

        static bool Order(string sheet, params string[] names) => names.Select(name => sheet.IndexOf($"<th>{name} (", StringComparison.Ordinal)).ToArray() is var places && places.All(place => place > 0) && places.SequenceEqual(places.Order());
    }

    [Fact]
    public async Task A_price_is_a_bare_number_and_what_is_to_be_bought_is_not_bought()
    {
        await Sent("/shelf", "/shelf/add", ("id", "board"), ("kind", "supervision"), ("count", "0"), ("from", "bought"), ("values", "claimed price=4.5 (shop)"));
        string page = await Seen("/shelf?kept=board");
        Assert.Contains("price 4.5, claimed", page, StringComparison.Ordinal);
        Assert.DoesNotContain("money", page, StringComparison.Ordinal);
        Assert.Contains("board board to be bought", Regex.Replace(page, @"\s+", " "), StringComparison.Ordinal);
        Assert.DoesNotContain("bought, to be bought", page, StringComparison.Ordinal);
        using var text = await browser.Send("/shelf/text", "/shelf/text", ("listing", "Li-ion round cell 18x65 3600mAh 3.7V 20A max discharge, 2 pcs only 8.99, weight 45g"));
        string found = PagesTests.Visible(await text.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains("price4.495,of2for8.99", Regex.Replace(found, @"\s+", ""), StringComparison.Ordinal);
        Assert.Contains("name=\"count\" value=\"2\"", await text.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Contains("It is sold as 2 together", found, StringComparison.Ordinal);
        using var none = await browser.Get("/nowhere", html: true);
        Assert.DoesNotContain("stage rule", await none.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/brief")]
    [InlineData("/trials/cold")]
    public async Task A_line_is_kept_with_a_button_that_is_seen(string path)
    {
        await Sent("/shelf", "/shelf/add", ("id", "coil"), ("kind", "heater"));
        await Sent("/trials", "/trials/add", ("part", "coil"), ("kind", "cold-ohms"), ("name", "cold"));
        string form = (await browser.Text(path)).Split("<form class=\"entry\"")[1].Split("</form>")[0];
        Assert.Contains("<button class=\"btn keep\" type=\"submit\"", form, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"skip\"", form, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_kind_of_test_tells_stands_in_full_below_its_box()
    {
        await Sent("/shelf", "/shelf/add", ("id", "grey"), ("kind", "cell"));
        string says = Regex.Match(await browser.Text("/trials?part=grey"), "<p class=\"f-says\">([^<]*)</p>").Groups[1].Value;
        Assert.Equal("What a cell really holds: amp-hours and watt-hours down to a stated cut-off. Take it for a prediction: with a pulse run it tells how the volts fall.", WebUtility.HtmlDecode(says));
    }

    private async Task<string> Seen(string path) => PagesTests.Visible(await browser.Text(path)).Replace('\u00A0', ' ');

    private async Task Sent(string page, string to, params (string Name, string Value)[] fields)
    {
        using var answer = await browser.Send(page, to, fields);
        Assert.True(answer.StatusCode == HttpStatusCode.SeeOther, $"{to}: {answer.StatusCode} {PagesTests.Visible(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))}");
    }
}
