using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Tests.Journeys;
using Heatwright.Web;
using Heatwright.Web.Near;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Heatwright.Tests.Web.Near;

/// <summary>A bench that is open to near devices. An address of the loopback block stands for the private one: what is asked there is near, what is asked at 127.0.0.1 is the desk.</summary>
public sealed partial class NearTests : IAsyncLifetime
{
    private const string Name = "secret wax pen";

    private readonly string folder = Directory.CreateTempSubdirectory("heatwright-near-").FullName;
    private readonly HandClock clock = new();
    private WebApplication app = null!;
    private Browsing desk = null!;
    private Browsing device = null!;

    private string Study => Path.Combine(folder, "pen.study");

    private string Devices => Path.Combine(folder, "own", "near-devices.json");

    public async ValueTask InitializeAsync()
    {
        Assert.True(NewStudy.Create(Study, Name).IsFine);
        app = await Served();
        desk = new Browsing(WebBench.Address(app));
        device = new Browsing(WebBench.NearAddress(app)!);
        Assert.Equal("127.0.0.2", device.Client.BaseAddress!.Host);
    }

    public async ValueTask DisposeAsync()
    {
        desk.Client.Dispose();
        device.Client.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_device_that_is_not_paired_gets_the_pairing_form_and_nothing_else()
    {
        var endpoints = app.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().ToArray();
        Assert.InRange(endpoints.Length, 40, 400);
        List<string> open = [];
        foreach (var endpoint in endpoints)
        {
            string path = "/" + Route().Replace(endpoint.RoutePattern.RawText!.TrimStart('/'), "x");
            foreach (string method in endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET", "POST"])
            {
                using var asked = new HttpRequestMessage(new HttpMethod(method), new Uri(path, UriKind.Relative));
                asked.Content = method == "POST" ? new FormUrlEncodedContent([]) : null;
                using var answer = await device.Client.SendAsync(asked, Stop);
                if (answer.StatusCode != HttpStatusCode.Unauthorized)
                {
                    open.Add($"{method} {path} {(int)answer.StatusCode}");
                }

                Assert.DoesNotContain(Name, await answer.Content.ReadAsStringAsync(Stop), StringComparison.OrdinalIgnoreCase);
            }
        }

        Assert.Equal(["GET /icon.svg 200", "GET /look.css 200", "GET /pair 200", "HEAD /icon.svg 200", "HEAD /look.css 200", "HEAD /pair 200", "POST /pair 400"], open.Order(StringComparer.Ordinal));
        using var page = await device.Get("/trials", html: true);
        Assert.Equal((HttpStatusCode.SeeOther, "/pair"), (page.StatusCode, page.Headers.Location!.ToString()));
        string form = await device.Text("/pair");
        Assert.Contains("not encrypted", form, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", form, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Six_digits_of_the_desk_pair_a_device_once_and_the_desk_lets_it_go()
    {
        string digits = await Digits();
        using (var wrong = await device.Send("/pair", "/pair", ("digits", Other(digits)), ("name", "tablet")))
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
            Assert.Contains("4 more tries", await wrong.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }

        using var paired = await device.Send("/pair", "/pair", ("digits", digits[..3] + " " + digits[3..]), ("name", "bench tablet"));
        Assert.Equal(HttpStatusCode.SeeOther, paired.StatusCode);
        string cookie = Assert.Single(paired.Headers.GetValues("Set-Cookie"), one => one.StartsWith(NearGate.Cookie + "=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        string brief = await device.Text("/brief");
        Assert.Contains(Name, brief, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("not encrypted", brief, StringComparison.Ordinal);
        Assert.DoesNotContain("not encrypted", await desk.Text("/brief"), StringComparison.Ordinal);

        // What the browser keeps stands in no file: only its hash does, and nothing at all in the study.
        string token = cookie.Split('=', ';')[1];
        string kept = await File.ReadAllTextAsync(Devices, Stop);
        Assert.DoesNotContain(token, kept, StringComparison.Ordinal);
        Assert.Contains(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token))), kept, StringComparison.Ordinal);
        Assert.DoesNotContain("bench tablet", Encoding.Latin1.GetString(await File.ReadAllBytesAsync(Study, Stop)), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Devices));
        }

        // The digits are used up.
        var second = new Browsing(device.Client.BaseAddress!.ToString());
        using (var again = await second.Send("/pair", "/pair", ("digits", digits)))
        {
            Assert.Contains("No digits are good", await again.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }

        clock.Move(TimeSpan.FromMinutes(7));
        await device.Text("/brief");
        clock.Move(TimeSpan.FromMinutes(3));
        string list = PagesTests.Visible(await desk.Text("/near"));
        Assert.Matches(@"bench tablet\s*10\smin ago\s*3\smin ago", list);
        string id = Id().Match(await desk.Text("/near")).Groups[1].Value;
        using (var gone = await desk.Send("/near", "/near/revoke", ("id", id)))
        {
            Assert.Equal(HttpStatusCode.SeeOther, gone.StatusCode);
        }

        using var refused = await device.Get("/brief");
        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
        second.Client.Dispose();
    }

    [Fact]
    public async Task Five_wrong_tries_lock_pairing_for_ten_minutes_and_say_so()
    {
        string digits = await Digits();
        for (int i = 1; i <= 5; i++)
        {
            using var wrong = await device.Send("/pair", "/pair", ("digits", Other(digits)));
            Assert.Equal(i < 5 ? HttpStatusCode.UnprocessableEntity : HttpStatusCode.TooManyRequests, wrong.StatusCode);
        }

        // Even the right ones are no good any more, and the desk gets no new ones.
        using (var right = await device.Send("/pair", "/pair", ("digits", digits)))
        {
            Assert.Equal(HttpStatusCode.TooManyRequests, right.StatusCode);
            Assert.Contains("free again in 10 min", await right.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }

        Assert.Contains("Pairing is locked", await desk.Text("/near"), StringComparison.Ordinal);
        clock.Move(TimeSpan.FromMinutes(10));
        string fresh = await Digits();
        clock.Move(TimeSpan.FromMinutes(5));
        using (var late = await device.Send("/pair", "/pair", ("digits", fresh)))
        {
            Assert.Contains("run out", await late.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }

        await Pair(device);
    }

    [Theory]
    [InlineData("device", "Host", "127.0.0.1:{near}", HttpStatusCode.MisdirectedRequest)]
    [InlineData("device", "Host", "localhost:{near}", HttpStatusCode.MisdirectedRequest)]
    [InlineData("device", "Host", "127.0.0.2", HttpStatusCode.MisdirectedRequest)]
    [InlineData("device", "Host", "127.0.0.2:{desk}", HttpStatusCode.MisdirectedRequest)]
    [InlineData("device", "Host", "127.0.0.2.bench.example:{near}", HttpStatusCode.MisdirectedRequest)]
    [InlineData("device", "Origin", "http://127.0.0.1:{desk}", HttpStatusCode.Forbidden)]
    [InlineData("device", "Origin", "http://127.0.0.2:{desk}", HttpStatusCode.Forbidden)]
    [InlineData("device", "Origin", "null", HttpStatusCode.Forbidden)]
    [InlineData("device", "Origin", "http://127.0.0.2:{near}", HttpStatusCode.OK)]
    [InlineData("desk", "Host", "127.0.0.2:{near}", HttpStatusCode.MisdirectedRequest)]
    [InlineData("desk", "Host", "127.0.0.2:{desk}", HttpStatusCode.MisdirectedRequest)]
    [InlineData("desk", "Origin", "http://127.0.0.2:{near}", HttpStatusCode.Forbidden)]
    public async Task Each_side_answers_to_its_own_name_only(string side, string header, string value, HttpStatusCode expected)
    {
        await Pair(device);
        string Port(Browsing browsing) => browsing.Client.BaseAddress!.Port.ToString(CultureInfo.InvariantCulture);

        // Two addresses may have been given one port by chance: then the desk's is no other's, and discard's stands for it.
        string another = side == "device" && Port(desk) == Port(device) ? "9" : Port(desk);
        using var asked = new HttpRequestMessage(HttpMethod.Get, new Uri("/brief", UriKind.Relative));
        asked.Headers.TryAddWithoutValidation(header, value.Replace("{near}", Port(device), StringComparison.Ordinal).Replace("{desk}", another, StringComparison.Ordinal));
        using var answer = await (side == "desk" ? desk : device).Client.SendAsync(asked, Stop);
        Assert.Equal(expected, answer.StatusCode);
    }

    [Fact]
    public async Task What_belongs_to_the_desk_is_not_for_a_paired_device_either()
    {
        await Pair(device);
        foreach (string path in new[] { "/near", "/NEAR/", "/near/state", "/%6eear" })
        {
            using var answer = await device.Get(path);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }

        foreach (string path in new[] { "/near/digits", "/near/hide", "/near/revoke" })
        {
            using var answer = await device.Send("/brief", path, ("id", "x"));
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }

        Assert.Null(app.Services.GetRequiredService<NearBench>().Digits.Shown);
    }

    [Fact]
    public async Task A_page_from_elsewhere_pairs_nothing_and_shows_no_digits()
    {
        string digits = await Digits();
        using (var foreign = await device.Send("/pair", "/pair", "http://elsewhere.example", ("digits", digits)))
        {
            Assert.Equal(HttpStatusCode.Forbidden, foreign.StatusCode);
        }

        using (var form = new FormUrlEncodedContent(new Dictionary<string, string> { ["digits"] = digits }))
        using (var tokenless = await device.Client.PostAsync(new Uri("/pair", UriKind.Relative), form, Stop))
        {
            Assert.Equal(HttpStatusCode.BadRequest, tokenless.StatusCode);
        }

        using (var form = new FormUrlEncodedContent([]))
        using (var tokenless = await desk.Client.PostAsync(new Uri("/near/digits", UriKind.Relative), form, Stop))
        {
            Assert.Equal(HttpStatusCode.BadRequest, tokenless.StatusCode);
        }

        Assert.Equal(digits, app.Services.GetRequiredService<NearBench>().Digits.Shown!.Value.Digits);
        Assert.False(File.Exists(Devices));
    }

    [Fact]
    public async Task A_paired_device_goes_on_after_a_restart_and_is_let_go_by_any_bench_of_the_same_maker()
    {
        await Pair(device);
        await using var other = await Served();
        var there = new Browsing(WebBench.NearAddress(other)!, device.Cookies);
        Assert.Contains(Name, await there.Text("/brief"), StringComparison.OrdinalIgnoreCase);
        var devices = other.Services.GetRequiredService<NearBench>().Devices;
        Assert.Null(devices.Revoke(Assert.Single(devices.All()).Id));
        using var refused = await device.Get("/brief");
        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);

        // A device that stays away for a month is forgotten.
        await Pair(device);
        clock.Move(TimeSpan.FromDays(31));
        using var forgotten = await device.Get("/brief");
        Assert.Equal(HttpStatusCode.Unauthorized, forgotten.StatusCode);
        there.Client.Dispose();
    }

    [Fact]
    public async Task The_picture_code_holds_the_address_and_a_photo_sent_from_the_device_tells_no_place()
    {
        string page = await desk.Text("/near");
        string url = device.Client.BaseAddress!.ToString();
        Assert.Equal(url, CodeReader.Text(Modules(page)));
        Assert.Contains(url, PagesTests.Visible(page), StringComparison.Ordinal);

        await Pair(device);
        (await device.Send("/shelf", "/shelf/add", ("id", "tip"), ("kind", "heater"))).Dispose();
        Assert.Contains("capture=\"environment\"", await device.Text("/shelf"), StringComparison.Ordinal);
        using var photo = new MultipartFormDataContent { { new StringContent(await device.Token("/shelf")), "token" } };
        photo.Add(new ByteArrayContent(PhotoJourney.OnePixel), "photo", "bench.png");
        using var sent = await device.Client.PostAsync(new Uri("/shelf/photo/tip", UriKind.Relative), photo, Stop);
        Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        byte[] kept = await device.Client.GetByteArrayAsync(new Uri("/shelf/photo/bench.png", UriKind.Relative), Stop);
        Assert.Equal(PhotoJourney.OnePixel.Length - 21, kept.Length); // by hand: a text chunk of 12 bytes and its 9 of content
    }

    [Theory]
    [InlineData("http://10.0.0.5:49152/")]
    [InlineData("http://192.168.100.200:65151/")]
    [InlineData("http://[fd12:3456:789a:bcde:f012:3456:789a:bcde]:65151/")]
    public void A_picture_code_reads_as_its_address(string url) => Assert.Equal(url, CodeReader.Text(PictureCode.Modules(url)));

    [Fact]
    public async Task A_bench_that_is_not_open_says_how_to_open_it()
    {
        await using var shut = WebBench.Build(OpenStudy.Read(Study).Value, 0);
        await shut.StartAsync(Stop);
        Assert.Null(WebBench.NearAddress(shut));
        var there = new Browsing(WebBench.Address(shut));
        Assert.Contains("--near", await there.Text("/near"), StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"/near\"", await there.Text("/brief"), StringComparison.Ordinal);
        Assert.Contains("href=\"/near\"", await desk.Text("/brief"), StringComparison.Ordinal);
        there.Client.Dispose();
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private async Task<WebApplication> Served()
    {
        var served = WebBench.Build(OpenStudy.Read(Study).Value, 0, Path.Combine(folder, "own", "shelf.study"), new NearOpening(IPAddress.Parse("127.0.0.2"), Devices, clock));
        await served.StartAsync();
        return served;
    }

    private async Task<string> Digits()
    {
        (await desk.Send("/near", "/near/digits")).Dispose();
        return Shown().Match(await desk.Text("/near")).Groups[1].Value.Replace(" ", "", StringComparison.Ordinal);
    }

    private async Task Pair(Browsing browsing)
    {
        using var paired = await browsing.Send("/pair", "/pair", ("digits", await Digits()), ("name", "phone"));
        Assert.Equal(HttpStatusCode.SeeOther, paired.StatusCode);
    }

    private static string Other(string digits) => digits == "000000" ? "000001" : "000000";

    private static bool[][] Modules(string page)
    {
        string path = Dark().Match(page).Groups[1].Value;
        int side = int.Parse(Side().Match(page).Groups[1].Value, CultureInfo.InvariantCulture) - 8;
        bool[][] dark = [.. Enumerable.Range(0, side).Select(_ => new bool[side])];
        foreach (Match stroke in Stroke().Matches(path))
        {
            int[] numbers = [.. stroke.Groups.Values.Skip(1).Select(one => int.Parse(one.Value, CultureInfo.InvariantCulture))];
            Array.Fill(dark[numbers[1] - 4], true, numbers[0] - 4, numbers[2]);
        }

        return dark;
    }

    [GeneratedRegex("\\{[^}]*\\}")]
    private static partial Regex Route();

    [GeneratedRegex("<output[^>]*>([0-9]{3} [0-9]{3})</output>")]
    private static partial Regex Shown();

    [GeneratedRegex("name=\"id\" value=\"([0-9a-f]+)\"")]
    private static partial Regex Id();

    [GeneratedRegex("class=\"dark\" d=\"([^\"]*)\"")]
    private static partial Regex Dark();

    [GeneratedRegex("class=\"code\" viewBox=\"0 0 ([0-9]+) ")]
    private static partial Regex Side();

    [GeneratedRegex("M([0-9]+) ([0-9]+)h([0-9]+)v1h-[0-9]+z")]
    private static partial Regex Stroke();
}
