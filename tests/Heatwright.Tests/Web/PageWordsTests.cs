using System.Text.RegularExpressions;
using Heatwright.Web;

namespace Heatwright.Tests.Web;

/// <summary>A page names its own places: no option of the command line stands on any.</summary>
public sealed class PageWordsTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    /// <summary>True: no option, and no command that a page stands for.</summary>
    public static bool Clean(string visible) => Found(visible).Length == 0;

    /// <summary>The first that is found, with what stands about it.</summary>
    public static string Found(string visible) => Regex.Match(visible, ".{0,60}(?:--[a-z]|heatwright part state).{0,60}", RegexOptions.Singleline).Value;

    [Fact]
    public async Task No_page_of_the_sample_names_an_option()
    {
        foreach (string path in ServedStudy.Pages)
        {
            string visible = PagesTests.Visible(await served.Page(path));
            Assert.True(Clean(visible), $"{path}: {Found(visible)}");
        }
    }

    [Theory]
    [InlineData("Read them with a meter, and say so: heatwright part state FILE boost --measured \"set volts=12V (read at its output)\".", "Read them with a meter, and say so: at 'boost' on the shelf, measured set volts=12V (read at its output).")]
    [InlineData("Say more about it with 'heatwright part state knife.study stick ...', or choose another name.", "Say more about it with 'say more' at 'stick' on the shelf, or choose another name.")]
    [InlineData("State it: heatwright brief FILE --set target=320C, or a warm-up as a sentence.", "State it: on the page 'Brief', target=320C, or a warm-up as a sentence.")]
    [InlineData("Add one with --cut-out: a switch fails on.", "Add one with 'cut out': a switch fails on.")]
    [InlineData("Set --duty 30 % and add a cut-out.", "Set duty 30 % and add a cut-out.")]
    [InlineData("Add --set start=...s --set end=...s, or a column 'work'.", "Add the setting start=...s and end=...s, or a column 'work'.")]
    [InlineData("Add --set \"leads=...Ω\", or a line '# leads = ...Ω' in the file.", "Add the setting \"leads=...Ω\", or a line '# leads = ...Ω' in the file.")]
    [InlineData("Type it as --word chemistry=lithium-ion.", "Type it as word chemistry=lithium-ion.")]
    [InlineData("--pack", "pack")]
    [InlineData("--reads V", "reads V")]
    [InlineData("--step with this unit", "step with this unit")]
    [InlineData("Choose one of them, or plan it with 'heatwright trial add'.", "Choose one of them, or plan it on the page 'Trials'.")]
    [InlineData("Decide first: heatwright decide FILE A --because '...'.", "Decide first: choose A on the page 'Decision', because '...'.")]
    [InlineData("End it and start it with 'heatwright serve FILE --near'.", "End it and start it with 'heatwright serve FILE --near'.")]
    [InlineData("From 2 -- 3 V it holds.", "From 2 -- 3 V it holds.")]
    public void A_remedy_is_said_in_the_words_of_the_pages(string written, string told) => Assert.Equal(told, PageWords.Of(written));
}
