using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>An evening, a telephone near the bench, a bench that is killed; each on a bench of its own.</summary>
public sealed class BenchTests
{
    [Fact]
    public async Task The_evening_is_the_one_of_the_command_and_its_timers_run() => await EveningPage.Run(async playwright => await Browsers.Launch(playwright));

    [Fact]
    public async Task A_telephone_is_paired_types_readings_and_loses_nothing_when_it_is_let_go() =>
        await NearDevice.Run(async playwright => await Browsers.Launch(playwright), (page, name) => Browsers.Photograph(page, name, page.ViewportSize!.Width, ColorScheme.Light));

    [Fact]
    public async Task A_bench_that_is_killed_in_mid_entry_loses_nothing_that_was_typed() => await KilledBench.Run(async playwright => await Browsers.Launch(playwright));
}
