using static Heatwright.DemoTruth.Stated;

namespace Heatwright.DemoTruth;

/// <summary>What the maker of the foam bow has and was told. Labels and assumptions stand here, not the truth; all invented.</summary>
internal static class FoamBowShelf
{
    public static IReadOnlyList<DemoPart> Parts { get; } =
    [
        new("round", "cell", "round cell", 2, "bought",
        [
            new("capacity", 2600, "mAh", 0, Claimed, "2600 mAh"), new("rated current", 5, "A", 0, Claimed, "5 A continuous"),
            new("cut-off volts", 3.0, "V", 0, Assumed, "usual for this chemistry under load, from memory"),
            new("heat capacity", 42, "J/K", 8, Assumed, "45 g at about 0.9 J/(g·K), from memory"),
            .. Size(18.4, 65.0, 45, 3.9),
        ]) { Words = [("chemistry", "lithium-ion")] },
        new("thin", "heater", "thin wire", 1, "bought",
        [
            new("ohms", 4.4, "Ω", 0, Claimed, "0.25 mm nickel-chromium, 22 ohm per metre, cut to 200 mm"), .. Size(0.25, 200, 0.1, 0.2),
        ]),
        new("thick", "heater", "thick wire", 1, "bought",
        [
            new("ohms", 2.7, "Ω", 0, Claimed, "0.32 mm nickel-chromium, 13.5 ohm per metre, cut to 200 mm"), .. Size(0.32, 200, 0.1, 0.2),
        ]),
        new("module", "stepUp", "small step-up module", 1, "bought",
        [
            new("rated power", 20, "W", 0, Claimed, "2 A step-up, 2 to 24 V in"), new("set volts", 6.5, "V", 0, Measured, "turned to this, no load"),
            new("limit current", 2, "A", 0, Claimed, "2 A step-up: of what, nobody says; never measured"),
            new("lock-out volts", 2.6, "V", 0.1, Measured, "input turned down until it stopped"),
            .. Board(30, 17, 7, 5, 1.8),
        ]),
        new("switch", "switch", "heater switch", 1, "bought",
        [
            new("ohms", 8, "mΩ", 2, Sheet, "switch sheet, at 2.5 V drive"), new("rated current", 8, "A", 0, Sheet, "switch sheet, limits"),
            .. Board(12, 10, 4, 2, 0.9),
        ]),
        new("leads", "leads", "leads along the bow", 1, "bought",
        [
            new("rated current", 5, "A", 0, Sheet, "wire sheet, single wire in free air"), new("length", 600, "mm", 5, Measured, "ruler, out and back"),
            new("mass", 6, "g", 0.5, Measured, "kitchen scale"), new("price", 0.6, "money", 0, Measured, "receipt"),
        ]),
        new("holder", "contacts", "spring holder", 2, "bought",
        [
            new("rated current", 5, "A", 0, Sheet, "holder sheet"),
            new("mass", 4, "g", 0.5, Measured, "scale"), new("price", 0.5, "money", 0, Measured, "receipt"),
        ]),
        new("sensor", "sensor", "fine type K probe", 1, "bought",
        [
            new("lag", 0.4, "s", 0.15, Assumed, "bead of 0.2 mm tied to the wire, from memory"), new("mass", 1, "g", 0.5, Measured, "scale"),
            new("price", 2.4, "money", 0, Measured, "receipt"),
        ]) { Words = [("type", "K")] },
        new("controller", "controller", "controller board", 1, "bought",
        [
            new("drain", 9, "mA", 1, Measured, "hand-held multimeter, lamp on"), .. Board(24, 18, 6, 4, 4.5),
        ]),
        new("charger-round", "charger", "one-cell charger", 1, "bought",
        [
            new("charge current", 1, "A", 0.1, Sheet, "board sheet, linear, 4.2 V"), .. Board(26, 17, 4, 3, 1.4),
        ]) { Words = [("chemistry", "lithium-ion"), ("cells", "1"), ("source", "USB")] },
        new("supervision", "supervision", "one-cell protection board", 1, "bought",
        [
            new("ohms", 32, "mΩ", 2, Measured, "hand-held multimeter: 64 mV at 2.01 A"), new("trip current", 7, "A", 0.5, Measured, "load turned up until it opened"),
            .. Board(20, 16, 3, 2, 0.9),
        ]) { Words = [("chemistry", "lithium-ion"), ("cells", "1")] },
        new("cutout", "cutOut", "one-shot thermal link", 1, "bought",
        [
            new("rated current", 5, "A", 0, Sheet, "link sheet, at the place where the arms meet the grip"), .. Size(4, 12, 1, 0.8),
        ]) { Note = "Opens once, in the handle, without the controller." },
        new("handle", "handle", "tube handle", 1, "bought",
        [
            new("diameter", 24, "mm", 0.1, Measured, "caliper, inside"), new("length", 200, "mm", 0.5, Measured, "ruler, inside"),
            new("grip heat capacity", 65, "J/K", 20, Assumed, "about 55 g of plastic and what lies in it, from memory"),
            new("grip loss", 0.16, "W/K", 0.05, Assumed, "0.02 m² at about 8 W/(m²·K), from memory"),
            new("mass", 52, "g", 1, Measured, "scale"), new("price", 3.2, "money", 0, Measured, "receipt"),
        ]),
    ];
}
