using Heatwright.Jobs;

namespace Heatwright.Report;

/// <summary>The usual cautions of the trade (common practice, no source), and what was not tested.</summary>
internal static class CautionsPart
{
    private static readonly (string Lead, string Words)[] Usual =
    [
        ("Lithium cells.", "A shorted, pierced, overheated or overcharged cell can vent and burn. Fuse at the cell tab, insulate every tab, stop when a cell swells, smells or gets too hot to hold, and have a place where it may burn out."),
        ("Hot surfaces.", "The working end burns skin and sets things on fire long before it glows, and stays hot after it is switched off. Rest it in a stand that does not burn; never leave it on unwatched; check it with the switch stuck on."),
        ("Fumes.", "Heated plastics, coatings and fluxes give off fumes; some are poisonous. Work in the open or under extraction, and know what the material is before you heat it."),
        ("Charging.", "Only with a charger made for the chemistry and the number of cells in series, on a surface that does not burn, never unattended, not in the cold and not right after work while the cells are warm."),
        ("Not a permission.", "These numbers do not replace the sheets of cells and charger, local codes and rules on product safety. Have mains supplies, charging and anything that goes to other people checked by someone licensed for it."),
    ];

    public static Html Of() => Html.Of($"""
        <section class="piece" id="cautions"><header><h2>Cautions</h2><span class="aside">common practice, no source</span></header>
        {Html.Each(Usual, one => Html.Of($"""<div class="caution"><div><b>{one.Lead}</b>{one.Words}</div></div>"""))}</section>

        """);

    /// <summary>A caution of one arrangement.</summary>
    public static Html One(string words) => Html.Of($"""<div class="caution"><div><b>Caution.</b>{words}</div></div>""");
}
