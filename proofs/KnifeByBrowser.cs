using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heatwright.Jobs;
using Heatwright.Jobs.Trials;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Microsoft.Playwright;

namespace Heatwright.Proofs;

/// <summary>Figures of the study typed twice.</summary>
/// <param name="Forms">Forms sent by the browser.</param>
/// <param name="Lines">Readings typed by keyboard, line by line.</param>
/// <param name="Logs">Logs chosen as files, looked at and taken in.</param>
/// <param name="LogRows">Readings in them.</param>
/// <param name="Seconds">From the empty study to the build sheet.</param>
/// <param name="SameStudy">The study typed into the browser bears the fingerprint of the one typed into commands.</param>
/// <param name="SameNumbers">Numbers and words of the result that are the same in the page's JSON and the command's.</param>
/// <param name="OtherNumbers">Those that are not.</param>
/// <param name="Verdicts">What the page says of each arrangement.</param>
/// <param name="BuildSheetFiles">Files that its build sheet offers.</param>
/// <param name="Failures">What went wrong.</param>
public sealed record KnifeResult(int Forms, int Lines, int Logs, int LogRows, double Seconds, bool SameStudy, int SameNumbers, int OtherNumbers, IReadOnlyList<string> Verdicts, int BuildSheetFiles, IReadOnlyList<string> Failures);

/// <summary>The whole rope knife from an empty study to its build sheet, typed into a real browser, and once more by commands: both must tell the same.</summary>
public static class KnifeByBrowser
{
    private const int HandRows = 14;

    /// <summary>The brief as a maker says it.</summary>
    private static readonly string[] Sentences =
    [
        "blade at 320 °C within 25 s from 20 °C", "40 cuts on one charge, one every 20 s", "grip at most 43 °C, held longer than 10 min", "cells at most 60 °C, while working", "inside diameter at most 34 mm", "charge time at most 6 h", "want: parts cost at most 30",
    ];

    private static readonly string[] Work = ["promise=A cordless tool whose hot blade parts and seals 8 mm synthetic rope.", "end=blade", "piece=cut", "every=20s", "for=4s", "first=5s", "above=220C", "contact=0.22±0.04", "need=41J±9J", "why=Melting heat of polyamide, from memory."];

    /// <summary>True: the same study, the same result, a build sheet, and nothing wrong on the way.</summary>
    public static bool Holds(KnifeResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result is { SameStudy: true, OtherNumbers: 0, Failures.Count: 0, BuildSheetFiles: > 0 } && result.SameNumbers > 500;
    }

    /// <summary>Types it twice.</summary>
    /// <param name="root">Folder of the checkout: samples and the lines of the bag are read from there.</param>
    /// <param name="say">Progress.</param>
    public static async Task<KnifeResult> Run(string root, Action<string> say)
    {
        ArgumentNullException.ThrowIfNull(say);
        string folder = Directory.CreateTempSubdirectory("heatwright-knife-").FullName;
        try
        {
            string[] bag = await File.ReadAllLinesAsync(Path.Combine(root, "tests", "Heatwright.Tests", "Journeys", "typed-bag.txt"));
            var sample = Bundle.Read(Path.Combine(root, "samples", "rope-hot-knife")).Value;
            return await new Typing(folder, bag, sample, say).Both();
        }
        finally
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }

    private sealed class Typing(string folder, string[] bag, Study sample, Action<string> say)
    {
        private readonly List<string> failures = [];
        private int forms, lines, logs, logRows;

        private string Page => Path.Combine(folder, "page.study");

        private string Command => Path.Combine(folder, "command.study");

        public async Task<KnifeResult> Both()
        {
            foreach (string file in new[] { Page, Command })
            {
                Do("new", file, "--name", "rope hot knife");
            }

            var clock = Stopwatch.StartNew();
            using var server = BrowserCampaign.Serve(Page, BrowserCampaign.Port());
            string shown;
            int sheets;
            try
            {
                using var playwright = await Playwright.CreateAsync();
                await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = RealBrowser.Chromium, Headless = true, Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-sync"] });
                var page = await browser.NewPageAsync();
                page.Console += (_, message) => failures.AddRange(message.Type == "error" ? [$"console at {page.Url}: {message.Text}"] : Array.Empty<string>());
                await ByBrowser(page, server.Address);
                (shown, sheets) = await Result(page, server.Address);
            }
            finally
            {
                server.Process.Kill();
                await server.Process.WaitForExitAsync();
            }

            double seconds = clock.Elapsed.TotalSeconds;
            say(string.Create(CultureInfo.InvariantCulture, $"typed into the browser in {seconds:0} s"));
            string told = ByCommand();
            var (same, other) = Compare(JsonNode.Parse(shown), JsonNode.Parse(told), "");
            var (mine, theirs) = (OpenStudy.Read(Page).Value, OpenStudy.Read(Command).Value);
            bool sameStudy = mine.Fingerprint == theirs.Fingerprint;
            if (!sameStudy)
            {
                failures.AddRange(Text(mine.Study).Zip(Text(theirs.Study)).Where(pair => pair.First != pair.Second).Take(5).Select(pair => $"study: '{pair.First.Trim()}' by browser, '{pair.Second.Trim()}' by command"));
            }

            var verdicts = JsonNode.Parse(shown)!["arrangements"]!.AsArray().Select(one => $"{one!["letter"]} {one["verdict"]}").ToArray();
            return new(forms, lines, logs, logRows, Math.Round(seconds), sameStudy, same, other, verdicts, sheets, failures);
        }

        private static string[] Text(Study study) => JsonSerializer.Serialize(study, StudyJson.Pretty).Split('\n');

        private async Task ByBrowser(IPage page, string address)
        {
            await page.GotoAsync(address + "brief");
            foreach (string sentence in Sentences)
            {
                await page.Locator("input[name=sentence]").FillAsync(sentence);
                await Sent(page, () => page.Keyboard.PressAsync("Enter"));
            }

            await page.Locator("summary", new() { HasText = "State the work" }).ClickAsync();
            foreach (string[] field in Work.Select(one => one.Split('=', 2)))
            {
                await page.Locator($"form[action='/brief/set'] input[name='{field[0]}']").FillAsync(field[1]);
            }

            await Sent(page, () => page.Locator("form[action='/brief/set'] button").ClickAsync());
            say("brief");
            await page.GotoAsync(address + "shelf");
            foreach (var words in bag.Select(Words).Where(words => words[0] == "part"))
            {
                await Part(page, words);
            }

            say("shelf");
            foreach (var meter in sample.Instruments)
            {
                await page.GotoAsync(address + "trials");
                await Fill(page, "form[action='/meters/add']", ("id", meter.Id), ("name", meter.Name), ("reads", string.Join("; ", meter.Specs.Select(Reads))), ("steps", string.Join("; ", meter.Specs.Where(spec => spec.Resolution > 0).Select(Steps))));
                await Sent(page, () => page.Locator("form[action='/meters/add'] button").ClickAsync());
            }

            foreach (var trial in sample.Trials)
            {
                await page.GotoAsync(address + "trials");
                await page.Locator("select[name=part]").SelectOptionAsync(trial.Part.Name);
                await page.Locator("select[name=kind]").SelectOptionAsync(TrialKinds.Of(trial));
                await Fill(page, "form[action='/trials/add']", ("name", trial.Id.Name), ("purpose", trial.Purpose));
                await Sent(page, () => page.Locator("form[action='/trials/add'] button.main").ClickAsync());
                foreach (var run in trial.Runs)
                {
                    await (run.Readings.Count <= HandRows ? Hand(page, run) : Log(page, run));
                    await page.GotoAsync(address + "trials/" + trial.Id.Name);
                }

                say($"trial {trial.Id}");
            }

            foreach (var words in bag.Select(Words).Where(words => words[0] == "arrange"))
            {
                await page.GotoAsync(address + "arrangements");
                for (int i = 2; i + 1 < words.Count; i += 2)
                {
                    await Choose(page, words[i][2..], words[i + 1]);
                }

                await Sent(page, () => page.Locator("form[action='/arrangements/add'] button.main").ClickAsync());
            }

            say("arrangements");
        }

        private async Task Part(IPage page, List<string> words)
        {
            // part add FILE id kind name, then options: what belongs to one stands behind it.
            List<(string Option, string Value)> values = [];
            string option = "";
            foreach (string word in words.Skip(6))
            {
                if (word.StartsWith("--", StringComparison.Ordinal))
                {
                    option = word[2..];
                }
                else
                {
                    values.Add((option, word));
                }
            }

            string Of(string name) => values.FirstOrDefault(one => one.Option == name).Value ?? "";
            string[] said = [.. values.Where(one => one.Option is "word" or "claimed" or "measured" or "sheet" or "assumed").Select(one => $"{one.Option} {one.Value}")];
            string form = "form[action='/shelf/add']";
            await page.Locator($"{form} select[name=kind]").SelectOptionAsync(words[4]);
            if (Of("from") is { Length: > 0 } from)
            {
                await page.Locator($"{form} select[name=from]").SelectOptionAsync(from);
            }

            await Fill(page, form, ("id", words[3]), ("name", words[5]), ("count", Of("count")), ("values", string.Join("; ", said)), ("note", Of("note")));
            await Sent(page, () => page.Keyboard.PressAsync("Enter"));
        }

        private static async Task Choose(IPage page, string place, string value)
        {
            string form = "form[action='/arrangements/add']";
            if (place is "name" or "pack" or "touches" or "duty")
            {
                await page.Locator($"{form} input[name={(place == "name" ? "called" : place)}]").FillAsync(value);
            }
            else if (place != "letter")
            {
                await page.Locator($"{form} select[name='{place}']").SelectOptionAsync(value);
            }
        }

        private async Task Hand(IPage page, Run run)
        {
            await page.Locator("summary", new() { HasTextRegex = new("Meters, settings|Begin another run") }).ClickAsync();
            string form = "form.run-form";
            await Fill(page, form, [("id", run.Id.Name), .. run.Settings.Select(setting => ("set " + setting.Key, Setting(setting)))]);
            foreach (var column in run.Columns)
            {
                if (await page.Locator($"{form} input[type=checkbox][value='{column.Name}']").CountAsync() > 0)
                {
                    await page.Locator($"{form} input[type=checkbox][value='{column.Name}']").CheckAsync();
                }

                await page.Locator($"{form} select[name='meter {column.Name}']").SelectOptionAsync(column.Instrument);
            }

            await Sent(page, () => page.Locator($"{form} button").ClickAsync());
            foreach (var reading in run.Readings)
            {
                await page.Locator("input[name=line]").FillAsync(string.Join(' ', reading.Raw));
                await page.Keyboard.PressAsync("Enter");
                lines++;
                await Until(page, string.Create(CultureInfo.InvariantCulture, $"document.querySelector('#entry').dataset.run === '{run.Id}' && document.querySelector('input[name=number]').value === '{reading.Number + 1}'"));
            }
        }

        private async Task Log(IPage page, Run run)
        {
            await page.Locator("summary", new() { HasText = "Take a log in" }).ClickAsync();
            await page.Locator("input[type=file][name=log]").SetInputFilesAsync(Written(run));
            await Sent(page, () => page.Locator("form.log-form button").ClickAsync());
            await Fill(page, "form.run-form", [("id", run.Id.Name), .. run.Settings.Select(setting => ("set " + setting.Key, Setting(setting)))]);
            foreach (var column in run.Columns)
            {
                await page.Locator($"select[name='column {column.Name}']").SelectOptionAsync(column.Name);
                await page.Locator($"select[name='meter {column.Name}']").SelectOptionAsync(column.Instrument);
            }

            await Sent(page, () => page.Locator("form.run-form button.main").ClickAsync());
            (logs, logRows) = (logs + 1, logRows + run.Readings.Count);
        }

        private async Task<(string Json, int Sheets)> Result(IPage page, string address)
        {
            using var client = new HttpClient { BaseAddress = new Uri(address) };
            string shown = "";
            for (int i = 0; i < 600 && shown.Length == 0; i++)
            {
                using var answer = await client.GetAsync(new Uri("study.json", UriKind.Relative));
                shown = answer.IsSuccessStatusCode ? await answer.Content.ReadAsStringAsync() : "";
                await Task.Delay(500);
            }

            await page.GotoAsync(address + "decision");
            await page.Locator("select[name=arrangement]").SelectOptionAsync("A");
            await Fill(page, "form[action='/decision/make']", ("because", "fastest, and the parts are here"));
            foreach (var accept in await page.Locator("form[action='/decision/make'] input[name^='accept ']").AllAsync())
            {
                await accept.FillAsync("known, and watched on the first prototype");
            }

            await Sent(page, () => page.Locator("form[action='/decision/make'] button.main").ClickAsync());
            say("decision");
            await Go(page, address + "build-sheet/A");
            await Until(page, "document.querySelectorAll(\"a[href^='/build-sheet/A/files/']\").length > 0");
            return (shown, await page.Locator("a[href^='/build-sheet/A/files/']").CountAsync());
        }

        /// <summary>What the command tells before the decision, as the page did.</summary>
        private string ByCommand()
        {
            Sentences.ToList().ForEach(sentence => Do("brief", Command, "--add", sentence));
            Do(["brief", Command, "--set", .. Work]);
            bag.Select(Words).Where(words => words[0] == "part").ToList().ForEach(words => Do([.. words.Select(word => word == "FILE" ? Command : word)]));
            foreach (var meter in sample.Instruments)
            {
                Do(["meter", "add", Command, meter.Id, meter.Name, "--reads", .. meter.Specs.Select(Reads), "--step", .. meter.Specs.Where(spec => spec.Resolution > 0).Select(Steps)]);
            }

            foreach (var trial in sample.Trials)
            {
                Do("trial", "add", Command, TrialKinds.Of(trial), "--on", trial.Part.Name, "--name", trial.Id.Name, "--purpose", trial.Purpose);
                foreach (var run in trial.Runs)
                {
                    string[] about = ["--run", run.Id.Name, "--meter", .. run.Columns.Select(column => $"{column.Name}={column.Instrument}"), .. run.Settings.Count > 0 ? ["--set"] : Array.Empty<string>(), .. run.Settings.Select(setting => $"{setting.Key}={Setting(setting)}")];
                    Do(run.Readings.Count <= HandRows
                        ? ["trial", "enter", Command, trial.Id.Name, .. about, "--columns", string.Join(',', run.Columns.Select(column => column.Name)), "--read", .. run.Readings.Select(reading => string.Join(' ', reading.Raw))]
                        : ["log", "import", Written(run), Command, "--trial", trial.Id.Name, .. about, "--columns", string.Join(',', run.Columns.Select(column => $"{column.Name}={column.Name}"))]);
                }
            }

            bag.Select(Words).Where(words => words[0] == "arrange").ToList().ForEach(words => Do([.. words.Select(word => word == "FILE" ? Command : word)]));
            string told = Do("study", Command, "--json");
            string[] accepted = [.. OpenStudy.Read(Page).Value.Study.Decisions.SelectMany(card => card.Accepted).Select(one => $"{one.Requirement}={one.Reason}")];
            Do(["decide", Command, "A", "--because", "fastest, and the parts are here", .. accepted.SelectMany(one => (string[])["--accept", one])]);
            return told;
        }

        /// <summary>The run as its logger would have written it, units in the heading.</summary>
        private string Written(Run run)
        {
            string file = Path.Combine(folder, run.Id.Name + ".csv");
            File.WriteAllText(file, string.Join(',', run.Columns.Select(column => $"{column.Name} [{column.Unit}]")) + "\n" + string.Concat(run.Readings.Select(reading => string.Join(',', reading.Raw) + "\n")), new UTF8Encoding(false));
            return file;
        }

        private static string Setting(KeyValuePair<string, double> setting) => setting.Value.ToString("R", CultureInfo.InvariantCulture) + setting.Key switch { "air" or "at" => "C", "leads" => "ohm", "set" => "V", _ => "" };

        private static string Reads(InstrumentSpec spec) => string.Create(CultureInfo.InvariantCulture, $"{spec.Unit}={spec.Percent:R}%+{spec.Offset:R}{(spec.Unit == "°C" ? "K" : spec.Unit)}");

        private static string Steps(InstrumentSpec spec) => string.Create(CultureInfo.InvariantCulture, $"{spec.Unit}={spec.Resolution:R}{(spec.Unit == "°C" ? "K" : spec.Unit)}");

        private static async Task Fill(IPage page, string form, params (string Name, string Text)[] fields)
        {
            foreach (var (name, text) in fields)
            {
                await page.Locator($"{form} [name='{name}']").FillAsync(text);
            }
        }

        /// <summary>Sends a form and waits for the page that answers; what that page refuses is a failure.</summary>
        private async Task Sent(IPage page, Func<Task> send)
        {
            forms++;
            await page.EvaluateAsync("document.documentElement.dataset.old = 'yes'");
            await send();
            await Until(page, "document.documentElement.dataset.old !== 'yes' && document.readyState === 'complete'");
            failures.AddRange((await page.Locator(".writes .problem").AllInnerTextsAsync()).Select(text => $"{page.Url}: {text}"));
        }

        /// <summary>A page that is just being drawn anew lets go of an address once.</summary>
        private static async Task Go(IPage page, string address)
        {
            try
            {
                await page.GotoAsync(address);
            }
            catch (PlaywrightException)
            {
                await Task.Delay(500);
                await page.GotoAsync(address);
            }
        }

        private static async Task Until(IPage page, string holds)
        {
            for (int i = 0; i < 1200; i++)
            {
                try
                {
                    if (await page.EvaluateAsync<bool>(holds))
                    {
                        return;
                    }
                }
                catch (PlaywrightException)
                {
                    // The page is just being loaded anew.
                }

                await Task.Delay(50);
            }

            throw new InvalidOperationException($"{page.Url}: never came true: {holds}");
        }

        private string Do(params string[] words)
        {
            var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
            start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "heatwright.dll"));
            words.ToList().ForEach(start.ArgumentList.Add);
            using var process = Process.Start(start)!;
            var error = process.StandardError.ReadToEndAsync();
            string said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            if (process.ExitCode != 0)
            {
                failures.Add($"{string.Join(' ', words.Take(6))}: {error.Result}");
            }

            return said;
        }
    }

    /// <summary>How many leaves are the same, and how many are not.</summary>
    private static (int Same, int Other) Compare(JsonNode? a, JsonNode? b, string at) => (a, b) switch
    {
        (JsonObject left, JsonObject right) => left.Select(pair => pair.Key).Union(right.Select(pair => pair.Key)).Select(key => Compare(left[key], right[key], $"{at}.{key}")).Aggregate((0, 0), (sum, one) => (sum.Item1 + one.Same, sum.Item2 + one.Other)),
        (JsonArray left, JsonArray right) when left.Count == right.Count => left.Zip(right).Select(pair => Compare(pair.First, pair.Second, at)).Aggregate((0, 0), (sum, one) => (sum.Item1 + one.Same, sum.Item2 + one.Other)),
        _ => JsonNode.DeepEquals(a, b) ? (1, 0) : (0, 1),
    };

    /// <summary>Words of a line as a shell splits it: blanks part, double quotes hold together.</summary>
    private static List<string> Words(string line)
    {
        List<string> words = [];
        var word = new StringBuilder();
        bool quoted = false;
        foreach (char c in line + " ")
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ' ' && !quoted)
            {
                words.AddRange(word.Length > 0 ? [word.ToString()] : Array.Empty<string>());
                word.Clear();
            }
            else
            {
                word.Append(c);
            }
        }

        return words;
    }
}
