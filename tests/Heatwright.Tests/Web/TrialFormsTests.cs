using System.Net;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Trials;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;

namespace Heatwright.Tests.Web;

/// <summary>What a maker does on a trial's page besides typing lines: mends what was said of a run, drops an empty one, pastes from a spreadsheet.</summary>
public sealed class TrialFormsTests : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("heatwright-trial-forms-").FullName;
    private WebApplication app = null!;
    private Browsing web = null!;

    private string File => Path.Combine(folder, "pen.study");

    private Trial Sag => OpenStudy.Read(File).Value.Study.Trials.Single(trial => trial.Id.Name == "sag");

    public async ValueTask InitializeAsync()
    {
        Assert.True(NewStudy.Create(File, "wax pen").IsFine);
        app = WebBench.Build(OpenStudy.Read(File).Value, 0, Path.Combine(folder, "own", "shelf.study"));
        await app.StartAsync();
        web = new(WebBench.Address(app));
        (await web.Send("/shelf", "/shelf/add", ("id", "round"), ("kind", "cell"), ("name", "round cell"))).Dispose();
        (await web.Send("/trials", "/meters/add", ("id", "dmm"), ("name", "bench meter"), ("reads", "V=0.5%+2mV; A=1%+5mA"))).Dispose();
        (await web.Send("/trials", "/trials/add", ("part", "round"), ("kind", "two-load-sag"), ("name", "sag"))).Dispose();
    }

    public async ValueTask DisposeAsync()
    {
        web.Client.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Meters_and_settings_of_a_run_that_was_begun_without_them_are_said_afterwards()
    {
        (await web.Send("/trials/sag", "/trials/sag/line", ("run", ""), ("line", "3.90 0"))).Dispose();
        Assert.All(Sag.Runs[0].Columns, column => Assert.Equal("", column.Instrument));
        string page = await web.Text("/trials/sag");
        Assert.Contains("Meters and settings of this run", page, StringComparison.Ordinal);
        Assert.Contains("name=\"was meter volts\" value=\"\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Drop this empty run", page, StringComparison.Ordinal);

        using var said = await web.Send("/trials/sag", "/trials/sag/set", ("run", "sag-1"), ("was meter volts", ""), ("meter volts", "dmm"), ("was meter amps", ""), ("meter amps", ""), ("was set sample", ""), ("set sample", "2"));
        Assert.Equal("/trials/sag#run-sag-1", said.Headers.Location!.ToString());
        Assert.Equal(["dmm", ""], Sag.Runs[0].Columns.Select(column => column.Instrument));
        Assert.Equal(2, Sag.Runs[0].Settings["sample"]);
        Assert.Equal(["3.90", "0"], Sag.Runs[0].Readings[0].Raw);
        Assert.Contains("run sag-1: volts=dmm, sample=2", PagesTests.Visible(await web.Text("/history")), StringComparison.Ordinal);

        // What is emptied is taken out, what is not touched stays, and undo brings it back.
        using var taken = await web.Send("/trials/sag", "/trials/sag/set", ("run", "sag-1"), ("was meter volts", "dmm"), ("meter volts", ""), ("was set sample", "2"), ("set sample", "2"));
        Assert.Equal((HttpStatusCode.SeeOther, "", 2.0), (taken.StatusCode, Sag.Runs[0].Columns[0].Instrument, Sag.Runs[0].Settings["sample"]));
        (await web.Send("/trials/sag", "/undo", ("to", "/trials/sag"))).Dispose();
        Assert.Equal("dmm", Sag.Runs[0].Columns[0].Instrument);

        using var wrong = await web.Send("/trials/sag", "/trials/sag/set", ("run", "sag-1"), ("was set sample", "2"), ("set sample", "many"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Contains("name=\"set sample\" value=\"many\"", await wrong.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_run_is_dropped_and_one_with_readings_is_not()
    {
        (await web.Send("/trials/sag", "/trials/sag/run", ("id", "first"), ("columns", "volts"), ("columns", "amps"))).Dispose();
        Assert.Contains("Drop this empty run", await web.Text("/trials/sag"), StringComparison.Ordinal);
        using var dropped = await web.Send("/trials/sag", "/trials/sag/drop-run", ("run", "first"));
        Assert.Equal("/trials/sag", dropped.Headers.Location!.ToString());
        Assert.Empty(Sag.Runs);
        (await web.Send("/trials/sag", "/undo", ("to", "/trials/sag"))).Dispose();
        (await web.Send("/trials/sag", "/trials/sag/line", ("run", "first"), ("line", "3.90 0"))).Dispose();
        using var kept = await web.Send("/trials/sag", "/trials/sag/drop-run", ("run", "first"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, kept.StatusCode);
        Assert.Contains("The run holds readings.", await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3.90\t0\n3.70\t\n3.50\t2", "3.90|0; 3.70|-; 3.50|2")]
    [InlineData("\t0\r\n3.70\t1\t\r\n\t\t\r\n", "-|0; 3.70|1")]
    [InlineData("volts\tamps\n3.90\t0\n3.70\t1", "3.90|0; 3.70|1")]
    [InlineData("note\tCurrent (mA)\tVoltage (V)\nrest\t0\t3.90\nload\t1000\t3.70", "3.90|0 mA; 3.70|1000 mA")]
    [InlineData("Spannung in V\tStrom in A\n3,90\t0\n3,70\t1", "3,90|0; 3,70|1")]
    [InlineData("amps volts\n0 3.90\n1 3.70", "3.90|0; 3.70|1")]
    [InlineData("# a note\n3.90 V\t1000 mA\n3.70 1", "3.90 V|1000 mA; 3.70|1")]
    public async Task A_block_of_a_spreadsheet_may_have_empty_cells_and_a_heading(string block, string kept)
    {
        using var taken = await web.Send("/trials/sag", "/trials/sag/block", ("run", ""), ("block", block));
        Assert.Equal((HttpStatusCode.SeeOther, ""), (taken.StatusCode, taken.StatusCode == HttpStatusCode.SeeOther ? "" : PagesTests.Visible(await taken.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))));
        Assert.Equal(kept, string.Join("; ", Sag.Runs[0].Readings.Select(reading => string.Join('|', reading.Raw))));
    }

    [Theory, InlineData("amps\tnote\n0\trest\n1\tload"), InlineData("gemessen\tgezogen\n3.90\t0\n3.70\t1"), InlineData("ohms\twatts\n3.90\t0\n3.70\t1")]
    public async Task A_heading_that_hides_a_needed_column_is_told_once_with_the_next_step(string block)
    {
        using var refused = await web.Send("/trials/sag", "/trials/sag/block", ("run", ""), ("block", block));
        string page = PagesTests.Visible(await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Equal(1, Regex.Count(page, "None of the lines is kept yet"));
        Assert.Contains("The heading does not say where a needed column is.", page, StringComparison.Ordinal);
        Assert.Contains("in this order: volts amps.", page, StringComparison.Ordinal);
        Assert.Empty(Sag.Runs);
    }

    /// <summary>A power meter's block, into a run that begins with it and into one that was begun before; in the form volts and amps are ticked and can be left out for watts.</summary>
    [Fact]
    public async Task A_warm_up_is_pasted_with_watts_in_place_of_volts_and_amps()
    {
        (await web.Send("/shelf", "/shelf/add", ("id", "bow"), ("kind", "heater"), ("name", "bow wire"))).Dispose();
        (await web.Send("/trials", "/trials/add", ("part", "bow"), ("kind", "warm-up"), ("name", "up"))).Dispose();
        const string block = "time\tdegrees\twatts\n0\t22\t14\n60\t34\t14";
        (await web.Send("/trials/up", "/trials/up/block", ("run", ""), ("block", block))).Dispose();
        (await web.Send("/trials/up", "/trials/up/run", ("id", "begun"), ("columns", "time"), ("columns", "volts"), ("columns", "amps"), ("columns", "degrees"), ("meter volts", "dmm"))).Dispose();
        (await web.Send("/trials/up", "/trials/up/block", ("run", "begun"), ("block", block))).Dispose();
        (await web.Send("/trials/up", "/trials/up/run", ("id", "ticked"), ("columns", "time"), ("columns", "degrees"), ("columns", "watts"))).Dispose();
        (await web.Send("/trials/up", "/trials/up/line", ("run", "ticked"), ("line", "0 22 14"))).Dispose();
        var runs = OpenStudy.Read(File).Value.Study.Trials.Single(trial => trial.Id.Name == "up").Runs;
        Assert.Equal(["time degrees watts: 0|22|14 60|34|14", "time degrees watts: 0|22|14 60|34|14", "time degrees watts: 0|22|14"],
            runs.Select(run => $"{string.Join(' ', run.Columns.Select(column => column.Name))}: {string.Join(' ', run.Readings.Select(reading => string.Join('|', reading.Raw)))}"));
        string page = await web.Text("/trials/up");
        Assert.Matches("type=\"checkbox\" name=\"columns\" value=\"volts\" checked", page);
        Assert.Matches("type=\"hidden\" name=\"columns\" value=\"degrees\"", page);
        Assert.DoesNotMatch("value=\"watts\" checked", page);
    }

    [Fact]
    public async Task Marks_by_a_stopwatch_have_their_time_first_and_a_word_no_comma_behind_it()
    {
        (await web.Send("/shelf", "/shelf/add", ("id", "bow"), ("kind", "heater"), ("name", "bow wire"))).Dispose();
        (await web.Send("/trials", "/trials/add", ("part", "bow"), ("kind", "warm-up-marks"), ("name", "marks"))).Dispose();
        string form = await web.Text("/trials/marks");
        Assert.Contains("placeholder=\"time degrees mark\"", form, StringComparison.Ordinal);
        Assert.Contains("Mark is one word. At: read on the way; passed: not before; stuck: ", PagesTests.Visible(form), StringComparison.Ordinal);
        Assert.Matches("value=\"time\" checked", form);
        Assert.Equal(["time", "degrees", "mark"], Regex.Matches(form, "name=\"columns\" value=\"([^\"]+)\"").Select(match => match.Groups[1].Value).Take(3));
        (await web.Send("/trials/marks", "/trials/marks/run", ("columns", "time"), ("columns", "degrees"), ("columns", "mark"))).Dispose();
        string[] heads = [.. Regex.Matches(await web.Text("/trials/marks"), "<th class=\"r\">([^<]*)</th>").Select(match => match.Groups[1].Value)];
        Assert.Equal(["line", "time, s", "degrees, °C", "mark"], heads.Select(WebUtility.HtmlDecode).Take(4));
    }

    [Fact]
    public async Task Tests_that_suit_the_part_are_offered_first_and_one_that_does_not_is_told_with_those_that_do()
    {
        (await web.Send("/shelf", "/shelf/add", ("id", "grip"), ("kind", "handle"), ("name", "ash handle"))).Dispose();
        string[] cell = Groups(await web.Text("/trials?part=round")), handle = Groups(await web.Text("/trials?part=grip"));
        Assert.Equal("on a cell or pack", cell[0]);
        Assert.Equal("on a handle or case", handle[0]);
        Assert.Contains("other: on a cell or pack", handle);
        Assert.Equal(cell.Length, handle.Length);

        using var planned = await web.Send("/trials", "/trials/add", ("part", "grip"), ("kind", "discharge"), ("name", "odd"));
        Assert.Equal("/trials/odd", planned.Headers.Location!.ToString());
        string page = PagesTests.Visible(await web.Text("/trials/odd"));
        Assert.Contains("'discharge' is done on a cell or pack, and 'grip' is a handle", page, StringComparison.Ordinal);
        Assert.Contains("For a handle there are grip-rise, ", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Look again", PagesTests.Visible(await web.Text("/trials/sag")), StringComparison.Ordinal);
        Assert.Equal(1, Regex.Count(PagesTests.Visible(await web.Text("/trials")), "this test is done on a cell or pack"));
        using var dropped = await web.Send("/trials/odd", "/trials/odd/drop");
        Assert.Equal("/trials", dropped.Headers.Location!.ToString());
        Assert.Equal(["sag"], OpenStudy.Read(File).Value.Study.Trials.Select(trial => trial.Id.Name));

        static string[] Groups(string page) => [.. Regex.Matches(page, "<optgroup label=\"([^\"]+)\"").Select(match => match.Groups[1].Value)];
    }

    [Fact]
    public async Task Reading_sheet_and_step_card_are_one_click_from_the_trial_and_from_the_list()
    {
        string list = await web.Text("/trials");
        Assert.Contains("href=\"/trials/kinds/cold-ohms/sheet\"", list, StringComparison.Ordinal);
        Assert.Contains("href=\"/trials/kinds/cold-ohms/card\"", list, StringComparison.Ordinal);
        Assert.Contains("href=\"/trials/sag/sheet\"", await web.Text("/trials/sag"), StringComparison.Ordinal);
        string sheet = await web.Text("/trials/sag/sheet");
        Assert.Contains("round cell (round)", sheet, StringComparison.Ordinal);
        Assert.Contains("<th>volts (V)</th>", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("<style", sheet, StringComparison.Ordinal); // the door lets no page bring a style of its own
        Assert.Contains("@page", await web.Text("/paper.css"), StringComparison.Ordinal);

        // The words of rule S04 as data/trials/rules.json has them, without its number.
        string card = WebUtility.HtmlDecode(await web.Text("/trials/kinds/warm-up/card"));
        Assert.Contains("Temperature fell to … °C with the power on. Did the probe slip, or are two notes swapped?", card, StringComparison.Ordinal);
        Assert.DoesNotMatch("<li>[ST][0-9]+</li>", card);
        Assert.Equal(HttpStatusCode.NotFound, (await web.Get("/trials/kinds/no-such-kind/sheet")).StatusCode);
    }

    [Fact]
    public async Task What_is_refused_names_fields_and_pages_and_no_options()
    {
        (await web.Send("/shelf", "/shelf/add", ("id", "module"), ("kind", "stepUp"))).Dispose();
        (await web.Send("/shelf", "/shelf/add", ("id", "wire"), ("kind", "heater"))).Dispose();
        (string Page, string To, (string, string)[] Fields)[] slips =
        [
            ("/shelf", "/shelf/add", [("id", "other"), ("kind", "cell"), ("values", "ohms=20k; word colour; measured weight=9g; claimed current=2A (5 A cell)")]),
            ("/shelf", "/shelf/add", [("id", "round"), ("kind", "cell")]),
            ("/shelf", "/shelf/add", [("id", "again"), ("kind", "guess")]),
            ("/shelf", "/shelf/state/gone", [("values", "ohms=1ohm")]),
            ("/trials", "/trials/add", [("part", "gone"), ("kind", "pulse")]),
            ("/trials", "/trials/add", [("part", "round"), ("kind", "guess")]),
            ("/trials", "/meters/add", [("id", "m"), ("reads", "V=1%+3d; flavour")]),
            ("/trials", "/meters/add", [("id", "m"), ("reads", "A=1%+2mA"), ("steps", "V")]),
            ("/trials/sag", "/trials/sag/run", [("columns", "volts"), ("columns", "amps"), ("meter volts", "gone"), ("set air", "x")]),
            ("/trials/sag", "/trials/sag/set", [("run", "gone"), ("set sample", "1")]),
            ("/arrangements", "/arrangements/add", [("cell", "round")]),
            ("/arrangements", "/arrangements/add", [("cell", "round"), ("heater", "gone"), ("pack", "many"), ("touches", "-1"), ("duty", "7"), ("letter", "toolong")]),
            ("/arrangements", "/arrangements/add", [("cell", "round"), ("heater", "wire"), ("pack", "3S1P")]),
            ("/brief", "/brief/set", [("every", "soon"), ("was every", "")]),
            ("/brief", "/brief/drop", [("line", "gone")]),
        ];
        foreach (var (from, to, fields) in slips)
        {
            using var answer = await web.Send(from, to, fields);
            string said = PagesTests.Visible(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
            Assert.True(PageWordsTests.Clean(said), $"{to} {string.Join(", ", fields)}: {PageWordsTests.Found(said)}");
        }
    }
}
