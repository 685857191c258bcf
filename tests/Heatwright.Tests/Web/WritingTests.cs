using System.Net;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;

namespace Heatwright.Tests.Web;

/// <summary>Pages that change the study: only with this bench's token, each change whole and undoable, each ended by a redirect.</summary>
public sealed class WritingTests : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("heatwright-writing-").FullName;
    private WebApplication app = null!;
    private HttpClient client = null!;

    private string File => Path.Combine(folder, "bow.study");

    public async ValueTask InitializeAsync()
    {
        Assert.True(NewStudy.Create(File, "foam bow").IsFine);
        app = WebBench.Build(OpenStudy.Read(File).Value, 0, Path.Combine(folder, "own", "shelf.study"));
        await app.StartAsync();
        client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(WebBench.Address(app)) };
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_part_is_kept_once_and_answered_with_a_redirect_that_says_what_was_understood()
    {
        using var answer = await Send("/shelf", "/shelf/add", ("id", "stick"), ("kind", "heater"), ("name", "stick heater"), ("values", "claimed rated volts=12V (label; as printed); measured ohms=3R6; mass=9g±0.5g (scale); word type=ceramic"));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.Equal("/shelf?kept=stick", answer.Headers.Location!.ToString());
        string page = PagesTests.Visible(await Page("/shelf?kept=stick"));
        Assert.Contains("rated volts 12 V, claimed: label; as printed", page, StringComparison.Ordinal);
        Assert.Contains("ohms 3.6 Ω, measured", page, StringComparison.Ordinal);
        Assert.Contains("mass 9 g ± 0.5, measured: scale", page, StringComparison.Ordinal);
        var part = Assert.Single(OpenStudy.Read(File).Value.Study.Parts);
        Assert.Equal("ceramic", part.Word("type"));
        Assert.Equal([("rated volts", "claimed"), ("ohms", "measured"), ("mass", "measured")], part.Stated.Select(value => (value.Quantity, value.Origin)));
    }

    [Fact]
    public async Task A_slip_keeps_what_was_typed_says_what_was_understood_and_stores_nothing()
    {
        using var answer = await Send("/shelf", "/shelf/add", ("id", "stick"), ("kind", "heater"), ("values", "ohms=3R6; mass=heavy"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        string html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("ohms=3R6; mass=heavy", html, StringComparison.Ordinal);
        string page = PagesTests.Visible(html);
        Assert.Contains("understood: ohms 3.6 Ω, measured", page, StringComparison.Ordinal);
        Assert.Contains("not understood", page, StringComparison.Ordinal);
        Assert.Contains("Next", page, StringComparison.Ordinal);
        Assert.Empty(OpenStudy.Read(File).Value.Study.Parts);
    }

    [Fact]
    public async Task An_empty_study_shows_the_way_into_it()
    {
        string page = await Page("/");
        Assert.Contains("Say what the tool must do.", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/arrangements\"", page.Split("id=\"work\"")[^1], StringComparison.Ordinal);
        Assert.DoesNotContain("bundle", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<h2>Cautions</h2>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_working_end_may_be_called_as_the_brief_calls_it()
    {
        using var first = await Send("/brief", "/brief/add", ("sentence", "band at 14 °C within 15 min from 2 °C"));
        using var said = await Send("/brief", "/brief/add", ("sentence", "want: band at most 40 °C"));
        Assert.Equal(HttpStatusCode.SeeOther, said.StatusCode);
        var line = OpenStudy.Read(File).Value.Study.Brief!.Requirements[^1];
        Assert.Equal((Heatwright.Verdicts.RequirementQuantity.EndTemperature, true, 40.0, false), (line.Quantity, line.AtMost, line.Limit, line.Must));
        using var other = await Send("/brief", "/brief/add", ("sentence", "blade at most 40 °C"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
    }

    [Theory]
    [InlineData("heater", "claimed rated watts=10W (label)", "If 'rated power' is meant, type that.")]
    [InlineData("stepUp", "claimed watts=20W (listing)", "If 'rated power' is meant, type that.")]
    [InlineData("heater", "measured weight=9g", "If 'mass' is meant, type that.")]
    [InlineData("stepUp", "claimed colour=5V", "of a step-up module mostly")]
    public async Task A_value_with_an_everyday_name_is_answered_with_the_name_of_the_trade(string kind, string value, string told)
    {
        using var answer = await Send("/shelf", "/shelf/add", ("id", "one"), ("kind", kind), ("values", value));
        string page = PagesTests.Visible(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains(told, page, StringComparison.Ordinal);
        Assert.DoesNotContain("--note", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_meter_that_reads_degrees_says_so()
    {
        using var put = await Send("/trials", "/meters/add", ("id", "probe"), ("name", "thermometer"), ("reads", "C=1%+1K"), ("steps", "C=0.1"));
        Assert.Contains("°C ±(1 % + 1 °C), steps of 0.1 °C", PagesTests.Visible(await Page("/trials")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_brief_a_trial_and_readings_are_entered_without_any_script()
    {
        using var said = await Send("/brief", "/brief/add", ("sentence", "blade at 320 °C within 25 s from 20 °C"));
        Assert.Equal(HttpStatusCode.SeeOther, said.StatusCode);
        using var work = await Send("/brief", "/brief/set", ("every", "40s"), ("was every", "60s"), ("need", "41J±5J"), ("was need", "0J"), ("for", "10s"), ("was for", "10s"));
        Assert.Equal(HttpStatusCode.SeeOther, work.StatusCode);
        using var wrong = await Send("/brief", "/brief/set", ("every", "soon"), ("was every", "40s"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        var brief = OpenStudy.Read(File).Value.Study.Brief!;
        Assert.Equal((320.0, 40.0, 41.0, 5.0), (brief.Work.TargetC, brief.Work.EveryS, brief.Work.NeedJ, brief.Work.NeedPlusMinusJ));

        using var part = await Send("/shelf", "/shelf/add", ("id", "wire"), ("kind", "heater"), ("name", "wire"));
        using var planned = await Send("/trials", "/trials/add", ("part", "wire"), ("kind", "cold-ohms"), ("name", "cold"));
        Assert.Equal("/trials/cold", planned.Headers.Location!.ToString());
        using var first = await Send("/trials/cold", "/trials/cold/line", ("run", ""), ("line", "2R71"));
        Assert.Equal("/trials/cold#run-cold-1", first.Headers.Location!.ToString());
        using var slip = await Send("/trials/cold", "/trials/cold/line", ("run", "cold-1"), ("line", "2,7x"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, slip.StatusCode);
        Assert.Contains("value=\"2,7x\"", await slip.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        using var block = await Send("/trials/cold", "/trials/cold/block", ("run", "cold-1"), ("block", "2.72\r\n2.73\r\n"));
        using var silent = await Send("/trials/cold", "/trials/cold/strike", ("run", "cold-1"), ("numbers", "2"), ("because", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, silent.StatusCode);
        using var struck = await Send("/trials/cold", "/trials/cold/strike", ("run", "cold-1"), ("numbers", "2"), ("because", "clip loose"));
        Assert.Equal(HttpStatusCode.SeeOther, struck.StatusCode);
        var readings = OpenStudy.Read(File).Value.Study.Trials[0].Runs[0].Readings;
        Assert.Equal(["2R71", "2.72", "2.73"], readings.Select(reading => reading.Raw[0]));
        Assert.Equal("clip loose", readings[1].StruckBecause);
        string history = PagesTests.Visible(await Page("/history?of=cold-1"));
        Assert.Contains("clip loose", history, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_two_who_set_one_value_the_second_is_told_and_the_history_keeps_both()
    {
        (await Send("/brief", "/brief/add", ("sentence", "blade at 320 °C within 25 s from 20 °C"))).Dispose();
        string drawn = await Page("/brief");
        string seen = Regex.Match(drawn, "name=\"seen\" value=\"([0-9]+)\"").Groups[1].Value;
        using var first = await Send("/brief", "/brief/set", ("seen", seen), ("every", "40s"), ("was every", "60s"));
        Assert.Equal("/brief", first.Headers.Location!.ToString());
        using var other = await Send("/brief", "/brief/set", ("seen", seen), ("air", "25C"), ("was air", "20C"));
        Assert.Equal("/brief", other.Headers.Location!.ToString());
        using var second = await Send("/brief", "/brief/set", ("seen", seen), ("every", "50s"), ("was every", "60s"));
        Assert.StartsWith("/brief?told=", second.Headers.Location!.ToString(), StringComparison.Ordinal);
        string told = PagesTests.Visible(await Page(second.Headers.Location!.ToString()));
        Assert.Matches("somebody else changed [a-zA-Z.]*everyS from 60 to 40; yours, 50, stands now", told);
        Assert.Equal(50, OpenStudy.Read(File).Value.Study.Brief!.Work.EveryS);
        Assert.Equal(["brief: every=40s", "brief: air=25C", "brief: every=50s"], ChangeStudy.History(File).Value.TakeLast(3).Select(change => change.What));
        // A link can make the page tell nothing that was not told here.
        Assert.DoesNotContain("class=\"told\"", await Page("/brief?told=anything"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_is_taken_once_however_often_it_is_sent_and_the_same_line_of_another_is_another()
    {
        (await Send("/shelf", "/shelf/add", ("id", "wire"), ("kind", "heater"))).Dispose();
        (await Send("/trials", "/trials/add", ("part", "wire"), ("kind", "cold-ohms"), ("name", "cold"))).Dispose();
        (await Send("/trials/cold", "/trials/cold/line", ("run", ""), ("line", "2R71"))).Dispose();
        foreach (string id in new[] { "a1", "b1", "a1", "a1" })
        {
            (await Send("/trials/cold", "/trials/cold/line", ("run", "cold-1"), ("line", "2.72"), ("number", "2"), ("id", id), ("first", "yes"))).Dispose();
        }

        // After a crash nobody remembers the name; the place and the text tell, also where others typed in between.
        (await Send("/trials/cold", "/trials/cold/line", ("run", "cold-1"), ("line", "2.73"), ("number", "2"), ("id", "c1"), ("first", "yes"))).Dispose();
        (await Send("/trials/cold", "/trials/cold/line", ("run", "cold-1"), ("line", "2.73"), ("number", "2"), ("id", "c1 before the crash"))).Dispose();
        Assert.Equal(["2R71", "2.72", "2.72", "2.73"], OpenStudy.Read(File).Value.Study.Trials[0].Runs[0].Readings.Select(reading => reading.Raw[0]));
    }

    [Fact]
    public async Task A_form_that_was_taken_lets_its_browser_forget_the_draft_and_one_that_was_not_does_not()
    {
        using var slip = await Send("/shelf", "/shelf/add", ("id", "stick"), ("kind", "heater"), ("values", "mass=heavy"), ("draft", "abc123"));
        Assert.DoesNotContain(slip.Headers.TryGetValues("Set-Cookie", out var none) ? none : [], cookie => cookie.StartsWith("heatwright-kept-", StringComparison.Ordinal));
        using var kept = await Send("/shelf", "/shelf/add", ("id", "stick"), ("kind", "heater"), ("draft", "abc123"));
        Assert.Matches("^heatwright-kept-[0-9a-f]{8}=abc123; max-age=60; path=/; samesite=strict$", Assert.Single(kept.Headers.GetValues("Set-Cookie"), cookie => cookie.StartsWith("heatwright-kept-", StringComparison.Ordinal)));
        using var odd = await Send("/shelf", "/shelf/add", ("id", "other"), ("kind", "heater"), ("draft", "a=b; c"));
        Assert.DoesNotContain(odd.Headers.TryGetValues("Set-Cookie", out var some) ? some : [], cookie => cookie.StartsWith("heatwright-kept-", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_open_page_is_told_of_a_change_that_was_made_by_a_command()
    {
        using var stream = await client.GetStreamAsync(new Uri("/changes", UriKind.Relative), TestContext.Current.CancellationToken);
        using var lines = new StreamReader(stream);
        string first = await State("");
        Assert.True(ChangeStudy.Run(File, "noted", study => new(study with { Note = "changed elsewhere" })).IsFine);
        Assert.Equal(OpenStudy.Read(File).Value.Fingerprint[..8], await State(first));

        async Task<string> State(string before)
        {
            while (await lines.ReadLineAsync(TestContext.Current.CancellationToken).AsTask().WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken) is { } line)
            {
                // The same state comes again when its findings are there.
                if (Regex.Match(line, "\"state\":\"([0-9a-f]{8}) ") is { Success: true } match && match.Groups[1].Value != before)
                {
                    return match.Groups[1].Value;
                }
            }

            return "";
        }
    }

    [Fact]
    public async Task A_claim_without_a_unit_or_without_whose_amps_is_asked_for()
    {
        using var answer = await Send("/shelf", "/shelf/add", ("id", "module"), ("kind", "stepUp"), ("values", "claimed current=2A (2 A step-up)"));
        string page = PagesTests.Visible(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains("of what?", page, StringComparison.Ordinal);
        Assert.Contains("switch current, limit current, output current", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Undo_takes_the_last_change_back_and_redo_makes_it_again()
    {
        (await Send("/shelf", "/shelf/add", ("id", "stick"), ("kind", "heater"))).Dispose();
        using var undone = await Send("/shelf", "/undo", ("to", "/shelf"));
        Assert.Equal(HttpStatusCode.SeeOther, undone.StatusCode);
        Assert.Empty(OpenStudy.Read(File).Value.Study.Parts);
        (await Send("/shelf", "/redo", ("to", "/shelf"))).Dispose();
        Assert.Single(OpenStudy.Read(File).Value.Study.Parts);
        using var away = await Send("/shelf", "/undo", ("to", "//elsewhere.example"));
        Assert.StartsWith("/shelf?", away.Headers.Location!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_the_token_of_a_page_nothing_is_changed()
    {
        using var form = new FormUrlEncodedContent(new Dictionary<string, string> { ["id"] = "stick", ["kind"] = "heater" });
        using var answer = await client.PostAsync(new Uri("/shelf/add", UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("nothing was changed", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Empty(OpenStudy.Read(File).Value.Study.Parts);
    }

    [Theory]
    [InlineData("http://elsewhere.example")]
    [InlineData("null")]
    public async Task A_page_from_elsewhere_changes_nothing_even_with_the_token(string origin)
    {
        using var answer = await Send("/shelf", "/shelf/add", origin, ("id", "stick"), ("kind", "heater"));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Empty(OpenStudy.Read(File).Value.Study.Parts);
    }

    [Fact]
    public async Task A_form_larger_than_any_listing_is_refused()
    {
        using var answer = await Send("/shelf", "/shelf/add", ("id", "stick"), ("kind", "heater"), ("note", new string('x', 2 << 20)));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Empty(OpenStudy.Read(File).Value.Study.Parts);
    }

    [Fact]
    public async Task A_sellers_text_gives_candidates_and_only_what_is_ticked_is_kept()
    {
        string text = await System.IO.File.ReadAllTextAsync(Path.Combine(Repository.Root, "tests", "reference", "listings", "01-round-cell.txt"), TestContext.Current.CancellationToken);
        using var found = await Send("/shelf/text", "/shelf/text", ("listing", text));
        string html = await found.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Empty(OpenStudy.Read(File).Value.Study.Parts);
        string[] boxes = [.. Regex.Matches(html, "type=\"checkbox\" id=\"take-([0-9]+)\"").Select(match => match.Groups[1].Value)];
        Assert.NotEmpty(boxes);
        Assert.DoesNotContain(" checked", html, StringComparison.Ordinal);
        using var kept = await Send("/shelf/text", "/shelf/add", ("id", "round"), ("kind", "cell"), ("listing", text), ("take", boxes[0]));
        Assert.Equal(HttpStatusCode.SeeOther, kept.StatusCode);
        var part = Assert.Single(OpenStudy.Read(File).Value.Study.Parts);
        Assert.Equal("claimed", Assert.Single(part.Stated).Origin);
        Assert.Equal(text.ReplaceLineEndings("\n").Trim(), part.Listing!.ReplaceLineEndings("\n").Trim());
    }

    [Fact]
    public async Task Parts_are_wired_and_cloned_on_the_page_as_on_the_command_line()
    {
        (await Send("/shelf", "/shelf/add", ("id", "flat"), ("kind", "cell"), ("values", "ohms=60mohm; full volts=4.2V; cut-off volts=3V; word chemistry=lithium-ion"))).Dispose();
        (await Send("/shelf", "/shelf/add", ("id", "wire"), ("kind", "heater"), ("values", "ohms=2.71ohm"))).Dispose();
        (await Send("/shelf", "/shelf/add", ("id", "thick"), ("kind", "heater"), ("values", "ohms=1.2ohm"))).Dispose();
        using var open = await Send("/arrangements", "/arrangements/add", ("cell", "flat"));
        Assert.Contains("Which heater", PagesTests.Visible(await open.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)), StringComparison.Ordinal);
        using var wired = await Send("/arrangements", "/arrangements/add", ("cell", "flat"), ("heater", "wire"));
        Assert.Equal("/arrangements/A", wired.Headers.Location!.ToString());
        string page = await Page("/arrangements/A");
        var loop = LoopView.Read(File, "A").Value;
        Assert.Contains($"{loop.Look.Full.PackA!.Si.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture)} A from the pack", PagesTests.Visible(page), StringComparison.Ordinal);
        Assert.Contains($"value=\"{loop.Look.Steps[0].Ohms.Value.ToString("R", System.Globalization.CultureInfo.InvariantCulture)}\"", page.Replace("value=\"60\"", "value=\"0.06\"", StringComparison.Ordinal), StringComparison.Ordinal);
        using var cloned = await Send("/arrangements/A", "/arrangements/A/clone", ("cell", "flat"), ("heater", "thick"), ("supervision", "none"));
        Assert.Equal("/arrangements/B", cloned.Headers.Location!.ToString());
        Assert.Equal(["heater and working end"], WiringDifferences.Read(File, "A", "B").Value.Wiring.Select(row => row.What));
        Assert.Contains("foam bow", await Page("/arrangements/B"), StringComparison.Ordinal);
        using var anew = await Send("/arrangements/B", "/arrangements/B/rewire", ("cell", "flat"), ("heater", "thick"), ("supervision", "none"), ("pack", "1S2P"));
        Assert.Equal("/arrangements/B", anew.Headers.Location!.ToString());
        Assert.Equal([("A", 1), ("B", 2)], OpenStudy.Read(File).Value.Study.Arrangements.Select(one => (one.Letter, one.Parallel)));

        // Taken out again, and brought back.
        Assert.Contains("Take B out", await Page("/arrangements/B"), StringComparison.Ordinal);
        using var gone = await Send("/arrangements/B", "/arrangements/B/unwire");
        Assert.StartsWith("/arrangements?step=Taken%20out%3A%20arrangement%20B", gone.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(["A"], OpenStudy.Read(File).Value.Study.Arrangements.Select(one => one.Letter));
        (await Send("/arrangements", "/undo", ("to", "/arrangements"))).Dispose();
        Assert.Equal(["A", "B"], OpenStudy.Read(File).Value.Study.Arrangements.Select(one => one.Letter));
    }

    [Fact]
    public async Task The_next_project_and_a_bundle_that_was_sent_are_saved_as_studies()
    {
        (await Send("/shelf", "/shelf/add", ("id", "wire"), ("kind", "heater"), ("values", "ohms=2.71ohm"))).Dispose();
        using var begun = await Send("/shelf", "/share/begin", ("name", "rope cutter 2"));
        Assert.Equal("rope-cutter-2.study", begun.Content.Headers.ContentDisposition!.FileName!.Trim('"'));
        var next = await Saved(begun);
        Assert.Equal(("rope cutter 2", "wire"), (next.Name, Assert.Single(next.Parts).Id.Name));

        using var bundle = await client.GetAsync(new Uri("/share/bundle.zip", UriKind.Relative), TestContext.Current.CancellationToken);
        using var opened = await Upload("/share/open", "bundle", "theirs.zip", await bundle.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal("wire", Assert.Single((await Saved(opened)).Parts).Id.Name);
        using var broken = await Upload("/share/open", "bundle", "theirs.zip", [1, 2, 3]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, broken.StatusCode);
        Assert.Equal("wire", Assert.Single(OpenStudy.Read(File).Value.Study.Parts).Id.Name); // the study that is open stays as it is

        async Task<Study> Saved(HttpResponseMessage answer)
        {
            string path = Path.Combine(Path.GetDirectoryName(File)!, "saved.study");
            await System.IO.File.WriteAllBytesAsync(path, await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
            return OpenStudy.Read(path).Value.Study;
        }
    }

    [Fact]
    public async Task A_photo_is_kept_with_its_part_shown_on_the_shelf_and_let_go()
    {
        (await Send("/shelf", "/shelf/add", ("id", "stick"), ("kind", "heater"))).Dispose();
        using var kept = await Photo("stick", Journeys.PhotoJourney.OnePixel);
        Assert.Equal("/shelf#stick", kept.Headers.Location!.ToString());
        Assert.Contains("<img src=\"/shelf/photo/front.png\" alt=\"stick: label side\"", await Page("/shelf"), StringComparison.Ordinal);
        using var shown = await client.GetAsync(new Uri("/shelf/photo/front.png", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal("image/png", shown.Content.Headers.ContentType!.MediaType);
        // By hand: the text chunk with the place is 21 bytes.
        Assert.Equal(Journeys.PhotoJourney.OnePixel.Length - 21, (await shown.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length);
        using var wrong = await Photo("stick", "<svg onload='x'/>"u8.ToArray());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Contains("no photo that can be kept", await wrong.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        using var large = await Photo("stick", new byte[9 << 20]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, large.StatusCode);
        (await Send("/shelf", "/shelf/photo-drop", ("id", "front.png"))).Dispose();
        Assert.Empty(OpenStudy.Read(File).Value.Study.Files);
        using var gone = await client.GetAsync(new Uri("/shelf/photo/front.png", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
    }

    [Fact]
    public async Task Parts_go_to_the_own_shelf_and_come_back_and_newer_is_said_with_the_difference()
    {
        (await Send("/shelf", "/shelf/add", ("id", "stick"), ("kind", "heater"), ("values", "ohms=3R6"))).Dispose();
        Assert.Contains("only here", PagesTests.Visible(await Page("/shelf/own")), StringComparison.Ordinal);
        using var given = await Send("/shelf/own", "/shelf/own/give", ("part", "stick"));
        Assert.StartsWith("/shelf/own?done=", given.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Contains("same", PagesTests.Visible(await Page("/shelf/own")), StringComparison.Ordinal);
        (await Send("/shelf", "/shelf/state/stick", ("values", "mass=9g (scale)"))).Dispose();
        string newer = PagesTests.Visible(await Page("/shelf/own"));
        Assert.Contains("newer here", newer, StringComparison.Ordinal);
        Assert.Contains("mass, measured", newer, StringComparison.Ordinal);
        // Taken over what is newer here: refused, said, and nothing is lost.
        using var refused = await Send("/shelf/own", "/shelf/own/take", ("part", "stick"), ("called", "stick"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("The part is newer here.", await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(2, Assert.Single(OpenStudy.Read(File).Value.Study.Parts).Stated.Count);
        using var over = await Send("/shelf/own", "/shelf/own/take", ("part", "stick"), ("called", "stick"), ("over", "yes"));
        Assert.Equal(HttpStatusCode.SeeOther, over.StatusCode);
        Assert.Single(Assert.Single(OpenStudy.Read(File).Value.Study.Parts).Stated);
    }

    private async Task<HttpResponseMessage> Photo(string part, byte[] content)
    {
        string token = Regex.Match(await Page("/shelf"), "name=\"token\" value=\"([^\"]+)\"").Groups[1].Value;
        using var form = new MultipartFormDataContent { { new StringContent(token), "token" }, { new StringContent("label side"), "note" }, { new ByteArrayContent(content), "photo", "front.jpeg" } };
        return await client.PostAsync(new Uri($"/shelf/photo/{part}", UriKind.Relative), form, TestContext.Current.CancellationToken);
    }

    private async Task<HttpResponseMessage> Upload(string to, string field, string name, byte[] content)
    {
        string token = Regex.Match(await Page("/shelf"), "name=\"token\" value=\"([^\"]+)\"").Groups[1].Value;
        using var form = new MultipartFormDataContent { { new StringContent(token), "token" }, { new ByteArrayContent(content), field, name } };
        return await client.PostAsync(new Uri(to, UriKind.Relative), form, TestContext.Current.CancellationToken);
    }

    private Task<string> Page(string path) => client.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

    private Task<HttpResponseMessage> Send(string page, string to, params (string Name, string Value)[] fields) => Send(page, to, "", fields);

    private async Task<HttpResponseMessage> Send(string page, string to, string origin, params (string Name, string Value)[] fields)
    {
        string token = Regex.Match(await Page(page), "name=\"token\" value=\"([^\"]+)\"").Groups[1].Value;
        Assert.NotEmpty(token);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(to, UriKind.Relative))
        {
            Content = new FormUrlEncodedContent(fields.Append(("token", token)).Select(field => new KeyValuePair<string, string>(field.Item1, field.Item2))),
        };
        if (origin.Length > 0)
        {
            request.Headers.Add("Origin", origin);
        }

        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
