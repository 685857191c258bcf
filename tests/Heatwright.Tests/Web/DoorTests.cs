using System.Net;
using System.Text.Json;

namespace Heatwright.Tests.Web;

public sealed class DoorTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Theory]
    [InlineData("bench.example")]
    [InlineData("bench.example:{port}")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:1")]
    [InlineData("127.0.0.1.bench.example:{port}")]
    [InlineData("0.0.0.0:{port}")]
    public async Task A_foreign_name_is_refused_in_the_one_shape(string host)
    {
        var (status, problem) = await Ask("Host", host);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, status);
        Assert.Equal("Host header", problem.GetProperty("where").GetString());
        Assert.Equal(["limit", "next", "value", "what", "where"], problem.EnumerateObject().Select(slot => slot.Name).Order(StringComparer.Ordinal));
        Assert.All(problem.EnumerateObject(), slot => Assert.NotEqual("", slot.Value.GetString()));
    }

    [Theory]
    [InlineData("http://bench.example")]
    [InlineData("https://127.0.0.1:{port}")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("null")]
    public async Task A_page_from_elsewhere_is_refused_in_the_one_shape(string origin)
    {
        var (status, problem) = await Ask("Origin", origin);
        Assert.Equal(HttpStatusCode.Forbidden, status);
        Assert.Equal("Origin header", problem.GetProperty("where").GetString());
    }

    [Theory]
    [InlineData("Host", "localhost:{port}")]
    [InlineData("Host", "LOCALHOST:{port}")]
    [InlineData("Host", "[::1]:{port}")]
    [InlineData("Origin", "http://127.0.0.1:{port}")]
    public async Task The_benchs_own_names_are_let_in(string header, string value)
    {
        var (status, _) = await Ask(header, value);
        Assert.Equal(HttpStatusCode.OK, status);
    }

    [Fact]
    public async Task Every_answer_forbids_what_is_not_its_own()
    {
        foreach (string path in new[] { "/", "/look.css", "/study.json", "/nothing-here" })
        {
            using var answer = await served.Client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
            string policy = string.Join(';', answer.Headers.GetValues("Content-Security-Policy"));
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_server_listens_on_the_loopback_address_only() => Assert.Equal("127.0.0.1", served.Client.BaseAddress!.Host);

    private async Task<(HttpStatusCode Status, JsonElement Body)> Ask(string header, string value)
    {
        using var question = new HttpRequestMessage(HttpMethod.Get, new Uri("/study.json", UriKind.Relative));
        string port = served.Client.BaseAddress!.Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        question.Headers.TryAddWithoutValidation(header, value.Replace("{port}", port, StringComparison.Ordinal));
        question.Headers.TryAddWithoutValidation("Accept", "application/json");
        using var answer = await served.Client.SendAsync(question, TestContext.Current.CancellationToken);
        return (answer.StatusCode, JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement);
    }
}
