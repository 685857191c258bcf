using static Heatwright.DemoTruth.Stated;

namespace Heatwright.DemoTruth;

/// <summary>What the maker of the wax pen has and was told. Labels and assumptions stand here, not the truth; all invented.</summary>
internal static class WaxPenShelf
{
    public static IReadOnlyList<DemoPart> Parts { get; } =
    [
        new("slim", "cell", "slim round cell", 2, "bought",
        [
            new("capacity", 650, "mAh", 0, Claimed, "650 mAh"), new("rated current", 2, "A", 0, Claimed, "3C"),
            new("cut-off volts", 3.0, "V", 0, Assumed, "usual for this chemistry under load, from memory"),
            new("heat capacity", 17, "J/K", 3.5, Assumed, "18 g at about 0.95 J/(g·K), from memory"),
            .. Size(14.2, 43.0, 18, 2.9),
        ]) { Words = [("chemistry", "lithium-ion")] },
        new("loop", "heater", "loop tip", 1, "bought",
        [
            new("ohms", 6.8, "Ω", 0, Claimed, "6.8 ohm loop"), .. Size(3.2, 30, 1.1, 1.8),
        ]),
        new("spoon", "heater", "spoon tip", 1, "salvaged",
        [
            new("ohms", 14, "Ω", 0, Claimed, "14 R scratched into its sleeve"), .. Size(3.2, 34, 1.6, 0),
        ]),
        new("module", "stepUp", "thumbnail step-up module", 1, "bought",
        [
            new("rated power", 10, "W", 0, Claimed, "2 A step-up, 2 to 5 V in"), new("set volts", 4.6, "V", 0, Measured, "turned to this, no load"),
            new("limit current", 2, "A", 0, Claimed, "2 A step-up: of what, nobody says; never measured"),
            new("lock-out volts", 2.6, "V", 0.1, Measured, "input turned down until it stopped"),
            .. Board(18, 11, 5, 2, 1.4),
        ]),
        new("switch", "switch", "heater switch", 1, "bought",
        [
            new("ohms", 12, "mΩ", 3, Sheet, "switch sheet, at 2.5 V drive"), new("rated current", 4, "A", 0, Sheet, "switch sheet, limits"),
            .. Board(10, 9, 3, 1, 0.6),
        ]),
        new("leads", "leads", "leads to the tip", 1, "bought",
        [
            new("rated current", 3, "A", 0, Sheet, "wire sheet, single wire in free air"), new("length", 240, "mm", 5, Measured, "ruler, out and back"),
            new("mass", 1, "g", 0.5, Measured, "kitchen scale"), new("price", 0.3, "money", 0, Measured, "receipt"),
        ]),
        new("plug", "contacts", "two-pin plug", 2, "bought",
        [
            new("rated current", 3, "A", 0, Sheet, "plug sheet"),
            new("mass", 1, "g", 0.5, Measured, "scale"), new("price", 0.2, "money", 0, Measured, "receipt"),
        ]),
        new("sensor", "sensor", "fine type K probe", 1, "bought",
        [
            new("lag", 0.5, "s", 0.2, Assumed, "bead of 0.3 mm pressed to the loop, from memory"), new("mass", 1, "g", 0.5, Measured, "scale"),
            new("price", 2.4, "money", 0, Measured, "receipt"),
        ]) { Words = [("type", "K")] },
        new("controller", "controller", "slim controller board", 1, "bought",
        [
            new("drain", 8, "mA", 1, Measured, "hand-held multimeter, lamp on"), .. Board(22, 11, 4, 2, 3.8),
        ]),
        new("charger-slim", "charger", "one-cell charger", 1, "bought",
        [
            new("charge current", 0.4, "A", 0.04, Sheet, "board sheet, linear, 4.2 V, set by its resistor"), .. Board(18, 11, 4, 2, 1.2),
        ]) { Words = [("chemistry", "lithium-ion"), ("cells", "1"), ("source", "USB")] },
        new("supervision", "supervision", "one-cell protection board", 1, "bought",
        [
            new("ohms", 48, "mΩ", 3, Measured, "hand-held multimeter: 48 mV at 1.00 A"), new("trip current", 3, "A", 0.3, Measured, "load turned up until it opened"),
            .. Board(14, 8, 2, 1, 0.7),
        ]) { Words = [("chemistry", "lithium-ion"), ("cells", "1")] },
        new("cutout", "cutOut", "one-shot thermal link", 1, "bought",
        [
            new("rated current", 3, "A", 0, Sheet, "link sheet, at the foot of the stem"), .. Size(3, 9, 1, 0.8),
        ]) { Note = "Opens once, in the handle, without the controller." },
        new("handle", "handle", "tube handle", 1, "bought",
        [
            new("diameter", 16, "mm", 0.1, Measured, "caliper, inside"), new("length", 190, "mm", 0.5, Measured, "ruler, inside"),
            new("grip heat capacity", 30, "J/K", 9, Assumed, "about 25 g of plastic and what lies in it, from memory"),
            new("grip loss", 0.08, "W/K", 0.025, Assumed, "0.01 m² at about 8 W/(m²·K), from memory"),
            new("mass", 22, "g", 1, Measured, "scale"), new("price", 2.5, "money", 0, Measured, "receipt"),
        ]),
    ];
}
