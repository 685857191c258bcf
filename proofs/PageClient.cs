using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace Heatwright.Proofs;

/// <summary>What a browser does on a trial's page, without a window: holds the live connection, asks for the page again when it is told of a change, sends lines and forms with the page's token.</summary>
internal sealed partial class PageClient : IDisposable
{
    private readonly HttpClient client;
    private readonly int number;
    private readonly string trial;
    private readonly Sightings sightings;
    private string token = "";

    public PageClient(string address, int number, string trial, Sightings sightings)
    {
        client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = new Uri(address), Timeout = Timeout.InfiniteTimeSpan };
        (this.number, this.trial, this.sightings) = (number, trial, sightings);
    }

    /// <summary>Texts that were acknowledged.</summary>
    public List<string> Acknowledged { get; } = [];

    public void Dispose() => client.Dispose();

    /// <summary>The page of its trial, looked at.</summary>
    public async Task See(CancellationToken cancel)
    {
        string page = await client.GetStringAsync(new Uri("/trials/" + trial, UriKind.Relative), cancel);
        token = TokenField().Match(page).Groups[1].Value;
        sightings.Look(number, page);
    }

    /// <summary>Follows the live connection until it is cancelled; changes that come while a page is on its way are met by one more.</summary>
    public async Task Follow(CancellationToken cancel)
    {
        while (!cancel.IsCancellationRequested)
        {
            try
            {
                using var stream = await client.GetStreamAsync(new Uri("/changes", UriKind.Relative), cancel);
                using var lines = new StreamReader(stream);
                Task seeing = Task.CompletedTask;
                bool behind = false;
                var next = lines.ReadLineAsync(cancel).AsTask();
                while (true)
                {
                    await Task.WhenAny(next, behind ? seeing : next);
                    if (next.IsCompleted)
                    {
                        if (await next is not { } line)
                        {
                            break;
                        }

                        behind |= line.StartsWith("data:", StringComparison.Ordinal);
                        next = lines.ReadLineAsync(cancel).AsTask();
                    }

                    if (behind && seeing.IsCompleted)
                    {
                        await seeing;
                        behind = false;
                        seeing = See(cancel);
                    }
                }
            }
            catch (Exception error) when (error is HttpRequestException or IOException)
            {
                await Task.Delay(500, cancel); // as a browser comes again
            }
        }
    }

    /// <summary>Types one line, and sends it again where its answer is lost, as the page does; gives what stands in its way, or null.</summary>
    public async Task<string?> Type(string text, IEnumerable<int> watchers, CancellationToken cancel)
    {
        string id = string.Create(CultureInfo.InvariantCulture, $"{number}x{Acknowledged.Count}");
        sightings.Expect(text, watchers);
        for (int time = 1; ; time++)
        {
            try
            {
                using var form = Form(("run", trial + "-1"), ("line", text), ("id", id), ("first", time == 1 ? "yes" : ""));
                using var asked = new HttpRequestMessage(HttpMethod.Post, new Uri($"/trials/{trial}/line", UriKind.Relative)) { Content = form };
                asked.Headers.Accept.ParseAdd("application/json");
                using var answer = await client.SendAsync(asked, cancel);
                if (answer.StatusCode != HttpStatusCode.OK)
                {
                    sightings.Forget(text);
                    return $"{text}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync(cancel)}";
                }

                Acknowledged.Add(text);
                return null;
            }
            catch (HttpRequestException) when (time < 10)
            {
                await Task.Delay(500, cancel);
            }
        }
    }

    /// <summary>Opens the brief, and gives what sends one of its fields as that page was drawn: whether it was kept, and what the page that follows tells.</summary>
    public async Task<Func<string, Task<(bool Kept, bool Told)>>> OpenBrief(string field, CancellationToken cancel)
    {
        string page = await client.GetStringAsync(new Uri("/brief", UriKind.Relative), cancel);
        token = TokenField().Match(page).Groups[1].Value;
        string seen = SeenField().Match(page).Groups[1].Value, was = Regex.Match(page, $"name=\"was {field}\" value=\"([^\"]*)\"").Groups[1].Value;
        return async value =>
        {
            using var form = Form(("seen", seen), ("was " + field, was), (field, value));
            using var answer = await client.PostAsync(new Uri("/brief/set", UriKind.Relative), form, cancel);
            string next = answer.StatusCode == HttpStatusCode.SeeOther ? await client.GetStringAsync(answer.Headers.Location!, cancel) : "";
            return (next.Length > 0, next.Contains("somebody else changed", StringComparison.Ordinal));
        };
    }

    private FormUrlEncodedContent Form(params (string Name, string Value)[] fields) => new([new("token", token), .. fields.Select(field => KeyValuePair.Create(field.Name, field.Value))]);

    [GeneratedRegex("name=\"token\" value=\"([^\"]+)\"")]
    private static partial Regex TokenField();

    [GeneratedRegex("name=\"seen\" value=\"([0-9]+)\"")]
    private static partial Regex SeenField();
}
