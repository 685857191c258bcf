using static Heatwright.DemoTruth.Stated;

namespace Heatwright.DemoTruth;

/// <summary>What the maker of the inspection lamp has and was told. Labels and assumptions stand here, not the truth; all invented.</summary>
internal static class InspectionLampShelf
{
    public static IReadOnlyList<DemoPart> Parts { get; } =
    [
        new("round", "cell", "round cell", 2, "bought",
        [
            new("capacity", 3400, "mAh", 0, Claimed, "3400 mAh"), new("rated current", 5, "A", 0, Claimed, "5 A"),
            new("cut-off volts", 3.0, "V", 0, Assumed, "usual for this chemistry under load, from memory"),
            new("heat capacity", 44, "J/K", 6, Assumed, "46 g at about 0.95 J/(g·K), from memory"),
            .. Size(18.4, 65.1, 46, 4.2),
        ]) { Words = [("chemistry", "lithium-ion"), ("size", "18650")] },
        new("lamp", "lamp", "white lamp with linear driver", 1, "bought",
        [
            new("load current", 1, "A", 0, Claimed, "1 A constant current"), new("luminous flux", 900, "lm", 0, Claimed, "super bright 900 lm"),
            new("forward volts", 3.0, "V", 0.2, Assumed, "one white light at its amps, from memory; nobody held a meter across the light itself"),
            new("light share", 30, "%", 8, Assumed, "white lights give 20 to 40 of 100 watts as light, from memory"),
            new("most input volts", 9, "V", 0.2, Sheet, "driver sheet, limits"), new("drain", 0.15, "mA", 0.02, Measured, "hand-held multimeter, switched off at its own input"),
            new("highest temperature", 85, "°C", 0, Sheet, "driver sheet, limits"),
            .. Size(32, 40, 42, 6.5),
        ]),
        new("module", "stepUp", "small step-up module", 1, "bought",
        [
            new("set volts", 5.0, "V", 0, Measured, "turned to this, no load"), new("limit current", 2, "A", 0, Claimed, "2 A step-up: of what, nobody says; never measured"),
            new("lock-out volts", 2.6, "V", 0.1, Measured, "input turned down until it stopped"),
            .. Board(22, 17, 6, 3, 1.5),
        ]),
        new("switch", "switch", "slide switch", 1, "bought",
        [
            new("ohms", 20, "mΩ", 6, Measured, "hand-held multimeter: 20 mV at 1.00 A"), new("rated current", 3, "A", 0, Sheet, "switch sheet, direct current"),
            .. Board(12, 7, 6, 2, 0.5),
        ]),
        new("leads", "leads", "leads to the head", 1, "bought",
        [
            new("rated current", 3, "A", 0, Sheet, "wire sheet, single wire in free air"), new("length", 300, "mm", 5, Measured, "ruler, out and back"),
            new("mass", 3, "g", 0.5, Measured, "kitchen scale"), new("price", 0.4, "money", 0, Measured, "receipt"),
        ]),
        new("holder", "contacts", "spring holder", 2, "bought",
        [
            new("rated current", 5, "A", 0, Sheet, "holder sheet"),
            new("mass", 7, "g", 0.5, Measured, "scale"), new("price", 0.9, "money", 0, Measured, "receipt"),
        ]),
        new("charger", "charger", "one-cell charger", 1, "bought",
        [
            new("charge current", 1.0, "A", 0.1, Sheet, "board sheet, linear, 4.2 V, set by its resistor"), .. Board(26, 17, 5, 3, 1.1),
        ]) { Words = [("chemistry", "lithium-ion"), ("cells", "1"), ("source", "USB")] },
        new("supervision", "supervision", "one-cell protection board", 1, "bought",
        [
            new("ohms", 45, "mΩ", 3, Measured, "hand-held multimeter: 45 mV at 1.00 A"), new("trip current", 6, "A", 0.5, Measured, "load turned up until it opened"),
            .. Board(16, 8, 3, 1, 0.7),
        ]) { Words = [("chemistry", "lithium-ion"), ("cells", "1")] },
        new("handle", "handle", "tube handle", 1, "bought",
        [
            new("diameter", 30, "mm", 0.1, Measured, "caliper, inside"), new("length", 220, "mm", 0.5, Measured, "ruler, inside"),
            new("grip heat capacity", 85, "J/K", 20, Assumed, "about 90 g of aluminium tube, from memory"),
            new("grip loss", 0.16, "W/K", 0.04, Assumed, "0.02 m² at about 8 W/(m²·K), from memory"),
            new("mass", 92, "g", 1, Measured, "scale"), new("price", 3.5, "money", 0, Measured, "receipt"),
        ]),
    ];
}
