using System.Net;
using System.Text.RegularExpressions;

namespace Heatwright.Tests.Web;

/// <summary>A browser without a window: keeps cookies, follows no redirect by itself, sends forms with the token of the page they stand on.</summary>
internal sealed partial class Browsing
{
    public Browsing(string address, CookieContainer? cookies = null)
    {
        Cookies = cookies ?? new();
        Client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = Cookies }) { BaseAddress = new Uri(address) };
    }

    public CookieContainer Cookies { get; }

    public HttpClient Client { get; }

    public async Task<HttpResponseMessage> Get(string path, bool html = false)
    {
        using var asked = new HttpRequestMessage(HttpMethod.Get, new Uri(path, UriKind.Relative));
        asked.Headers.TryAddWithoutValidation("Accept", html ? "text/html" : "*/*");
        return await Client.SendAsync(asked, TestContext.Current.CancellationToken);
    }

    public Task<string> Text(string path) => Client.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

    public async Task<string> Token(string page) => TokenField().Match(await Text(page)).Groups[1].Value;

    public Task<HttpResponseMessage> Send(string page, string to, params (string Name, string Value)[] fields) => Send(page, to, "", fields);

    public async Task<HttpResponseMessage> Send(string page, string to, string origin, params (string Name, string Value)[] fields)
    {
        using var asked = new HttpRequestMessage(HttpMethod.Post, new Uri(to, UriKind.Relative));
        asked.Content = new FormUrlEncodedContent([new("token", await Token(page)), .. fields.Select(field => KeyValuePair.Create(field.Name, field.Value))]);
        if (origin.Length > 0)
        {
            asked.Headers.TryAddWithoutValidation("Origin", origin);
        }

        return await Client.SendAsync(asked, TestContext.Current.CancellationToken);
    }

    [GeneratedRegex("name=\"token\" value=\"([^\"]+)\"|value=\"([^\"]+)\" name=\"token\"")]
    private static partial Regex TokenField();
}
