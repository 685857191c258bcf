using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>Pages worked by keyboard alone, each on a bench of its own: beside the tests of pages that all look at one study.</summary>
public sealed class KeyboardTests
{
    [Fact]
    public async Task Twelve_parts_go_onto_the_shelf_by_keyboard_alone_one_line_each() => await Browsers.InAFolder("heatwright-bag-", folder => KeyedBag.Type(folder, async playwright => await Browsers.Launch(playwright)));

    [Fact]
    public async Task Readings_are_typed_by_keyboard_and_none_is_lost_while_the_server_is_away() => await Browsers.InAFolder("heatwright-keyed-", folder => KeyedReadings.Type(folder, async playwright => await Browsers.Launch(playwright)));

    [Fact]
    public async Task A_change_is_tried_by_keyboard_follows_as_the_command_says_and_is_kept_only_when_told() => await Browsers.InAFolder("heatwright-tried-", folder => TriedPage.Run(folder, async playwright => await Browsers.Launch(playwright)));
}
