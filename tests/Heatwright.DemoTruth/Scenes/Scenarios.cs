namespace Heatwright.DemoTruth;

/// <summary>Nine invented jobs, each with the trap that makes it hard. What a good study says of each was reckoned by hand beforehand; see the journey that holds them.</summary>
internal static class Scenarios
{
    private static readonly CellSpec Round = new("round", 2.45, 0.060, 15, 10, 18.5, 65.2, 45, 3000);
    private static readonly CellSpec Slim = new("slim", 0.72, 0.21, 25, 3, 14.3, 49.5, 20, 900);

    private static readonly LineSpec Grip = new("grip", "The grip stays at most at 48 °C.", "gripTemperature", 48, "°C", true);
    private static readonly LineSpec Warm = new("cells", "No cell gets hotter than 60 °C.", "cellTemperature", 60, "°C", true);

    public static IReadOnlyList<Scenario> All { get; } =
    [
        new("repair-pen", "A cordless pen that melts a bead of plastic at 250 °C, twenty on a charge, ready in half a minute.", "tip", "bead",
            new Job(250, 160, 60, 20, 5, 20, 0.1, 0.001), 21, 0.03, 25, [Round],
            [
                new("cartridge", "salvaged cartridge", 9.6, 1.4, 3.2, "24 V 60 W: 576 / 60", 12), new("rod", "low-ohm rod", 3.6, 1.4, 3.2, "3.6 ohm", 8),
                new("unseen", "low-ohm rod to buy", 3.6, 1.4, 3.2, "3.6 ohm", 8, Tried: false),
            ],
            [new("board-2", 2, 12)],
            [Two("A", "cartridge"), Two("B", "rod"), Two("C", "unseen")],
            [Ready(30), Pieces(20), Grip, Warm]),
        new("lens-band", "A band that keeps a lens of 80 mm free of dew for eight hours.", "band", "hour",
            new Job(9.5, 0, 3600, 60, 5, 8, 0.1, 0.001), 5, 0, 0, [Round], [new("strip", "warming strip", 5.0, 60, 1.64, "5 ohm", 3.6)], [new("board-1", 1, 6)],
            [One("A", "strip"), One("B", "strip") with { Parallel = 2 }, One("C", "strip") with { Parallel = 3 }],
            [Ready(600), new("run", "It runs for 8 h.", "runTime", 8, "h", false), Grip, Warm])
        {
            Aim = 1, GripLink = 0.001, Kept = true,
            Why = "Air of 8 °C at 90 % has its dew point at 6.5 °C (heatwright sum dew-point air=8C humidity=90%); 3 K above it are 9.5 °C. The lens looks into a clear sky, which takes about 0.9 W from it: with 0.36 W/K to the air "
                + "that counts as air of about 5 °C. No work takes heat; a piece is an hour. The sky's share is a guess.",
        },
        new("leather-creaser", "A cordless creaser at 110 °C, a line every 20 s for an hour, its heat back after 3 s.", "tip", "line",
            new Job(110, 60, 20, 5, 5, 180, 0.1, 0.001), 21, 0.06, 8, [Slim], [new("tip", "brass tip", 4.7, 2.8, 1.35, "4.7 ohm", 4.2)], [new("board-1", 1, 6)],
            [One("A", "tip", "slim")],
            [Ready(180), Pieces(150), new("back", "It is back at 110 °C within 3 s after a line.", "recoveryTime", 3, "s", true), Grip, Warm]) { Aim = 3 },
        new("uncapping-blade", "A cordless blade of 89 g at 80 °C for an hour.", "blade", "frame",
            new Job(80, 65, 60, 30, 5, 60, 0.1, 0.001), 21, 0.8, 240, [Round],
            [new("low", "blade with 1.2 ohm", 1.2, 44, 11, "1.2 ohm", 5), new("high", "blade with 5.4 ohm", 5.4, 44, 11, "5.4 ohm", 15)],
            [new("board-1", 1, 12), new("board-5", 5, 12)],
            [One("A", "low"), One("B", "high") with { Series = 5, ContactCount = 10, Charger = "charger-5", SupervisionPart = "board-5" }],
            [Ready(90), Pieces(60), Grip, Warm]),
        new("graft-sealer", "A cordless sealer for grafts outdoors at 5 °C, 150 seals of wax on a charge.", "spatula", "seal",
            new Job(80, 55, 20, 10, 5, 150, 0.1, 0.001), 5, 0.06, 12, [Slim], [new("spatula", "wax spatula", 3.9, 1.5, 1.35, "3.9 ohm", 3.6)], [new("board-1", 1, 6)],
            [One("A", "spatula", "slim")],
            [Ready(120), Pieces(150), Grip, Warm]) { Aim = 5 },
        new("wood-pen", "A cordless wire pen that draws on wood at 450 °C for 20 min.", "wire", "line",
            new Job(450, 250, 20, 8, 5, 60, 0.1, 0.001), 21, 0.012, 12, [Round],
            [new("thick", "thick wire loop", 0.042, 0.5, 9, "30 mm of 1.0 mm wire", 0.75), new("thin", "thin wire loop", 0.67, 0.5, 9, "30 mm of 0.25 mm wire", 3.2)], [new("board-1", 1, 12)],
            [One("A", "thick"), One("B", "thin")],
            [Ready(30), Pieces(60), Grip, Warm]),
        new("insert-press", "A cordless press that sets 60 brass inserts at 230 °C on a charge, each within 6 s.", "tip", "insert",
            new Job(230, 170, 20, 6, 5, 60, 0.1, 0.001), 21, 0.2, 30, [Round], [new("stick", "stick heater", 3.6, 5, 6, "12 V 40 W: 144 / 40", 9)], [new("board-1", 1, 15), new("board-3", 3, 12)],
            [
                One("A", "stick") with { Series = 3, ContactCount = 6, Charger = "charger-3", SupervisionPart = "board-3" },
                One("B", "stick") with { StepUp = true },
            ],
            [Ready(90), Pieces(60), Grip, Warm]) { Module = new(12, 10, 2.9, [40, 20, 12, 8]) },
        new("film-sealer", "A cordless sealer for crate film, 300 seams at 150 °C.", "ribbon", "seam",
            new Job(150, 100, 6, 2, 3, 300, 0.1, 0.001), 21, 0.2, 8, [Round], [new("ribbon", "ribbon", 1.5, 1.0, 4, "1.5 ohm", 4)], [new("weak", 2, 3), new("strong", 2, 10)],
            [Two("A", "ribbon") with { SupervisionPart = "weak" }, Two("B", "ribbon") with { SupervisionPart = "strong" }],
            [Ready(15), Pieces(300), Grip, Warm]),
        new("stencil-needle", "A cordless needle that cuts stencil film at 300 °C, hot at once.", "needle", "cut",
            new Job(300, 150, 5, 2, 2, 300, 0.1, 0.001), 21, 0.008, 1.2, [Round], [new("micro", "micro heater", 2.2, 0.15, 2.6, "2.2 ohm", 3.2)], [new("board-1", 1, 6)],
            [One("A", "micro")],
            [Ready(12), Pieces(300), Grip, Warm]) { GripLink = 0.003 },
    ];

    private static Wiring One(string letter, string heater, string cell = "round") =>
        new(letter, $"one {cell} cell on the {heater}", cell, 1, heater, StepUp: false, "tabs", 2, Supervision: true, 0.95, "charger-1", "cutout") { SupervisionPart = "board-1" };

    private static Wiring Two(string letter, string heater) =>
        new(letter, $"two round cells in series on the {heater}", "round", 2, heater, StepUp: false, "tabs", 4, Supervision: true, 0.95, "charger-2", "cutout") { SupervisionPart = "board-2" };

    private static LineSpec Ready(double seconds) => new("ready", $"It is ready within {seconds.ToString(System.Globalization.CultureInfo.InvariantCulture)} s.", "warmUpTime", seconds, "s", true);

    private static LineSpec Pieces(int count) => new("pieces", $"It does {count.ToString(System.Globalization.CultureInfo.InvariantCulture)} on a charge.", "piecesPerCharge", count, "", false);
}
