using System.Net;
using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Heatwright.Tests.Web;

/// <summary>A reading of the prototype changes no fit and no prediction.</summary>
public sealed class CheckTypedTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Fact]
    public async Task After_a_reading_of_the_prototype_the_check_stands_there_again_and_nothing_is_worked_out_anew()
    {
        string folder = Directory.CreateTempSubdirectory("heatwright-check-").FullName;
        try
        {
            // The same study as the served one, whose predictions are remembered; its name is another, so that the result is not.
            string file = Path.Combine(folder, "knife.study");
            ServedStudy.Open(Path.Combine(Repository.Root, "samples", "rope-hot-knife"), file);
            var result = served.Result;
            using (var book = StudyBook.Open(file, readOnly: false, TimeProvider.System).Value)
            {
                book.Write("Renamed", book.Read() with { Name = "a knife that is checked" });
            }

            var opened = OpenStudy.Read(file).Value;
            await using var app = WebBench.Build(opened, 0);
            await app.StartAsync(TestContext.Current.CancellationToken);
            await WebBench.ReadyAsync(app);
            var browser = new Browsing(WebBench.Address(app));
            using (browser.Client)
            {
                if (opened.Study.Decisions.Count == 0)
                {
                    using var decided = await browser.Send("/decision", "/decision/make", ("arrangement", result.Verdicts[0].Arrangement.Letter), ("because", "it is the lightest"));
                    Assert.Equal(HttpStatusCode.SeeOther, decided.StatusCode);
                }

                var line = OpenStudy.Read(file).Value.Study.Decisions[^1].BriefThen.Requirements.First(one => one.Quantity == Heatwright.Verdicts.RequirementQuantity.WarmUpTime);
                await WebBench.ReadyAsync(app);
                var stood = Standing(app).Verdicts;
                using var read = await browser.Send("/check", "/check/read", ("reading", $"{line.Id}=21s ± 1s"));
                Assert.Equal(HttpStatusCode.SeeOther, read.StatusCode);
                string page = await browser.Text("/check");
                Assert.DoesNotContain("Working it out", page, StringComparison.Ordinal);
                Assert.Contains("21.0", PagesTests.Visible(page), StringComparison.Ordinal);
                Assert.DoesNotContain($"<span class=\"code\">{line.Id}</span>", page, StringComparison.Ordinal); // the sentence alone

                // The brief calls a piece a cut: so may the reading, and more of them.
                var pieces = OpenStudy.Read(file).Value.Study.Decisions[^1].BriefThen;
                using var cuts = await browser.Send("/check", "/check/read", ("reading", $"{pieces.Piece}s=44"));
                Assert.Equal(HttpStatusCode.SeeOther, cuts.StatusCode);
                using var one = await browser.Send("/check", "/check/read", ("reading", $"{pieces.Piece}=45"));
                Assert.Equal(HttpStatusCode.SeeOther, one.StatusCode);

                // The card bears its letter, no verdict has hyphens where it has blanks elsewhere, and what is decided stands first in the form that decides anew.
                string decision = await browser.Text("/decision");
                var chosen = OpenStudy.Read(file).Value.Study;
                string letter = chosen.Arrangements.First(arrangement => arrangement.Id == chosen.Decisions[^1].Chosen).Letter;
                Assert.Contains($"<h2>{letter}, ", decision, StringComparison.Ordinal);
                Assert.DoesNotContain("need-more-readings", decision, StringComparison.Ordinal);
                Assert.Contains($"<option value=\"{letter}\" selected", decision, StringComparison.Ordinal);
                foreach (System.Text.RegularExpressions.Match field in System.Text.RegularExpressions.Regex.Matches(decision, "Only for ([A-Z](?: and [A-Z])*), which may miss '[^<]*</span><input class=\"in\" name=\"accept ([^\"]+)\""))
                {
                    string[] told = field.Groups[1].Value.Split(" and ");
                    Assert.Equal(result.Verdicts.Where(verdict => verdict.Requirements.Any(missed => missed.Requirement.Id == field.Groups[2].Value && missed.Word is Heatwright.Verdicts.VerdictWord.NoGo or Heatwright.Verdicts.VerdictWord.NeedMoreReadings)).Select(verdict => verdict.Arrangement.Letter), told);
                }

                // The very same verdicts, with their flips and their ends, and with all that was asked of them.
                Assert.Same(stood, Standing(app).Verdicts);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        static StudyResult Standing(WebApplication app) => app.Services.GetRequiredService<StudyOnBench>().Now().Result!;
    }
}
