using static Heatwright.DemoTruth.Stated;

namespace Heatwright.DemoTruth;

/// <summary>What the maker has and was told. Labels and assumptions stand here, not the truth; all invented.</summary>
internal static class RopeKnifeShelf
{
    public static IReadOnlyList<DemoPart> Parts { get; } =
    [
        new("round", "cell", "round cell", 2, "bought",
        [
            new("capacity", 3500, "mAh", 0, Claimed, "3500 mAh 10A"), new("rated current", 10, "A", 0, Claimed, "3500 mAh 10A"),
            new("cut-off volts", 3.0, "V", 0, Assumed, "usual for this chemistry under load, from memory"),
            new("heat capacity", 42, "J/K", 8, Assumed, "46 g at about 0.9 J/(g·K), from memory"),
            .. Size(18.5, 65.2, 46, 4.5),
        ]) { Words = [("chemistry", "lithium-ion")], Note = "Light for its label." },
        new("iron", "cell", "iron-phosphate cell", 2, "bought",
        [
            new("capacity", 1800, "mAh", 0, Claimed, "1800 mAh 3.2 V power cell"), new("rated current", 20, "A", 0, Claimed, "20 A for power tools"),
            new("cut-off volts", 2.5, "V", 0, Assumed, "usual for this chemistry under load, from memory"),
            new("heat capacity", 40, "J/K", 8, Assumed, "41 g at about 1 J/(g·K), from memory"),
            .. Size(18.4, 65.1, 41, 5.2),
        ]) { Words = [("chemistry", "lithium iron phosphate")] },
        new("stick", "heater", "stick heater", 1, "bought",
        [
            new("rated volts", 12, "V", 0, Claimed, "12 V 40 W"), new("rated power", 40, "W", 0, Claimed, "12 V 40 W"),
            new("ohms", 3.6, "Ω", 0, Claimed, "12 V 40 W: 144 / 40"), .. Size(6.0, 62, 9, 3.5),
        ]),
        new("cartridge", "heater", "cartridge heater", 1, "salvaged",
        [
            new("rated volts", 24, "V", 0, Claimed, "24 V 60 W"), new("rated power", 60, "W", 0, Claimed, "24 V 60 W"),
            new("ohms", 9.6, "Ω", 0, Claimed, "24 V 60 W: 576 / 60"), .. Size(6.0, 40, 11, 0),
        ]),
        new("ribbon", "heater", "ribbon heater", 1, "bought",
        [
            new("ohms", 0.6, "Ω", 0, Claimed, "cut to 0.6 ohm, nickel-chromium"), .. Size(8.0, 55, 6, 2.5),
        ]),
        new("module", "stepUp", "step-up module", 1, "bought",
        [
            new("rated power", 150, "W", 0, Claimed, "step-up 150 W"), new("set volts", 14.4, "V", 0, Measured, "turned to this, no load"),
            new("limit current", 10, "A", 0.5, Measured, "load turned up until the output gave way"),
            new("lock-out volts", 2.95, "V", 0.05, Measured, "input turned down until it stopped"),
            .. Board(48, 28, 14, 22, 5.0),
        ]),
        new("switch", "switch", "heater switch", 1, "bought",
        [
            new("ohms", 6, "mΩ", 2, Sheet, "switch sheet, at 4.5 V drive"), new("rated current", 20, "A", 0, Sheet, "switch sheet, limits"),
            .. Board(12, 10, 5, 2, 1.2),
        ]),
        new("leads", "leads", "silicone leads", 1, "bought",
        [
            new("rated current", 15, "A", 0, Sheet, "wire sheet, single wire in free air"), new("length", 320, "mm", 5, Measured, "ruler, out and back"),
            new("mass", 9, "g", 0.5, Measured, "kitchen scale"), new("price", 0.8, "money", 0, Measured, "receipt"),
        ]),
        new("tabs", "contacts", "welded tabs", 8, "bought",
        [
            new("rated current", 15, "A", 0, Assumed, "nickel strip 8 mm × 0.15 mm doubled, from memory"),
            new("mass", 0.5, "g", 0.1, Measured, "scale"), new("price", 0.1, "money", 0, Measured, "receipt"),
        ]),
        new("holder", "contacts", "spring holder", 2, "bought",
        [
            new("ohms", 30, "mΩ", 20, Assumed, "spring contacts of this class: 10 to 50 mΩ a touch, common practice, no source; never measured"),
            new("mass", 4, "g", 0.5, Measured, "scale"), new("price", 0.45, "money", 0, Measured, "receipt"),
        ]),
        new("sensor", "sensor", "type K probe", 1, "bought",
        [
            new("lag", 1.5, "s", 0.4, Assumed, "bare bead pressed on metal, from memory"), new("mass", 3, "g", 0.5, Measured, "scale"),
            new("price", 2.2, "money", 0, Measured, "receipt"),
        ]) { Words = [("type", "K")] },
        new("controller", "controller", "controller board", 1, "bought",
        [
            new("drain", 12, "mA", 1, Measured, "hand-held multimeter, display on"), .. Board(30, 22, 8, 8, 8.0),
        ]),
        new("charger-round", "charger", "one-cell charger", 1, "bought",
        [
            new("charge current", 1, "A", 0.1, Sheet, "board sheet, linear, 4.2 V"), .. Board(26, 17, 4, 3, 1.6),
        ]) { Words = [("chemistry", "lithium-ion"), ("cells", "1"), ("source", "USB")] },
        new("charger-iron", "charger", "two-cell iron-phosphate charger", 1, "bought",
        [
            new("charge current", 0.6, "A", 0.06, Sheet, "board sheet, steps 5 V up to 7.2 V"), .. Board(24, 18, 5, 4, 4.2),
        ]) { Words = [("chemistry", "lithium iron phosphate"), ("cells", "2"), ("source", "USB")] },
        new("supervision", "supervision", "one-cell protection board", 1, "bought",
        [
            new("ohms", 25, "mΩ", 2, Measured, "hand-held multimeter: 51 mV at 2.04 A"), new("trip current", 12, "A", 0, Claimed, "12A protection"),
            .. Board(20, 16, 3, 2, 1.1),
        ]) { Words = [("chemistry", "lithium-ion"), ("cells", "1")] },
        new("cutout", "cutOut", "one-shot thermal link", 1, "bought",
        [
            new("rated current", 8, "A", 0, Sheet, "link sheet, at the shank's place"), .. Size(4, 12, 1, 0.8),
        ]) { Note = "Opens once, in the shank, without the controller. 8 A is too little for the iron-phosphate pair." },
        new("handle", "handle", "tube handle", 1, "bought",
        [
            new("diameter", 34, "mm", 0.1, Measured, "caliper, inside"), new("length", 205, "mm", 0.5, Measured, "ruler, inside"),
            new("grip heat capacity", 80, "J/K", 25, Assumed, "about 70 g of plastic and what lies in it, from memory"),
            new("grip loss", 0.18, "W/K", 0.06, Assumed, "0.022 m² at about 8 W/(m²·K), from memory"),
            new("mass", 68, "g", 1, Measured, "scale"), new("price", 4.5, "money", 0, Measured, "receipt"),
        ]),
    ];
}
