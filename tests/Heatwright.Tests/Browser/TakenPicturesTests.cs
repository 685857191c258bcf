using Heatwright.Tests.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>Pictures in a real browser.</summary>
public sealed class TakenPicturesTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Fact]
    public async Task A_picture_reads_values_draws_a_stretch_larger_and_is_taken_away_as_csv_svg_and_png()
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        await TakenPictures.Run(served, browser);
    }
}
