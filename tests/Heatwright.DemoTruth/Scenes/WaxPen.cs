using System.Text.Json.Nodes;
using static Heatwright.DemoTruth.BriefText;

namespace Heatwright.DemoTruth;

/// <summary>A cordless pen that carves modelling wax with a warm loop: a slim cell, a small tip, and more power than the work needs while the cell is full.</summary>
internal sealed class WaxPen : Scene
{
    public override string Folder => "wax-pen";

    public override string Name => "wax pen";

    public override string Note => "Demo. Every reading, label and price here is invented: made by a simulation with a hidden truth, not taken on a bench. "
        + "Lithium cells, warm metal and hot wax can hurt; local rules and licensed practice come first.";

    public override double Seed => 2207;

    public override Job Job { get; } = new(TargetC: 90, AboveC: 55, EveryS: 20, ForS: 10, FirstAfterS: 5, Asked: 180, Gain: 0.15, Sum: 0.002, AimAboveK: 10);

    public override IReadOnlyList<(string Name, double Value, string What)> Invented { get; } =
    [
        ("seed", 3212, "draws all instrument errors and noise"),
        ("air", 21, "°C around bench and tool"),
        ("slim.capacity", 0.598, "Ah from full to empty"),
        ("slim.r0", 0.115, "Ω at once, 25 °C, middle of the charge"),
        ("slim.r1", 0.035, "Ω of the short pair"),
        ("slim.tau1", 6, "s"),
        ("slim.r2", 0.045, "Ω of the long pair"),
        ("slim.tau2", 70, "s"),
        ("slim.activation", 12, "kJ/mol of all ohms"),
        ("slim.heatCapacity", 16.5, "J/K of the cell"),
        ("cell.toGrip", 0.03, "W/K from the cell to the handle; on the bench to the air"),
        ("loop.ohms", 6.86, "Ω at 20 °C"),
        ("loop.alpha", 1.2e-4, "1/K"),
        ("loop.core", 0.055, "J/K of the wire inside"),
        ("loop.blade", 0.120, "J/K of the loop, where the probe lies"),
        ("loop.shank", 1.30, "J/K of the stem"),
        ("loop.coreLink", 0.16, "W/K"),
        ("loop.shankLink", 0.0028, "W/K loop to stem"),
        ("loop.gripLink", 0.006, "W/K stem to grip"),
        ("loop.convection", 0.0083, "W/K to the air at 200 K above it"),
        ("loop.radiating", 1.0e-4, "m², emissivity times area"),
        ("spoon.ohms", 14.3, "Ω at 20 °C"),
        ("spoon.alpha", 1.2e-4, "1/K"),
        ("spoon.core", 0.070, "J/K"),
        ("spoon.blade", 0.290, "J/K"),
        ("spoon.shank", 1.30, "J/K"),
        ("spoon.coreLink", 0.20, "W/K"),
        ("spoon.shankLink", 0.0030, "W/K"),
        ("spoon.gripLink", 0.006, "W/K"),
        ("spoon.convection", 0.0090, "W/K"),
        ("spoon.radiating", 1.3e-4, "m²"),
        ("shank.loss", 0.0035, "W/K of the stem to the air"),
        ("grip.heatCapacity", 32, "J/K"),
        ("grip.loss", 0.085, "W/K to the air"),
        ("module.set", 4.6, "V"),
        ("module.fixed", 0.05, "W"),
        ("module.perAmp", 0.20, "V"),
        ("module.perAmpSquared", 0.080, "Ω"),
        ("module.limit", 1.9, "A mean input"),
        ("module.lockOut", 2.6, "V"),
        ("switch.ohms", 0.012, "Ω"),
        ("leads.ohms", 0.046, "Ω out and back"),
        ("plug.ohms", 0.016, "Ω of one touch"),
        ("contacts.drift", 0.05, "share by which touches worsen within about ten minutes"),
        ("supervision.ohms", 0.048, "Ω"),
        ("supervision.trip", 3.0, "A"),
        ("controller.drain", 0.008, "A"),
        ("probe.lag", 0.5, "s"),
        ("probe.contact", 0.985, "share of the rise above the air that the probe feels"),
        ("work.contact", 0.0125, "W/K into the wax"),
        ("work.need", 3.0, "J a stroke"),
    ];

    public override IReadOnlyList<DemoPart> Parts => WaxPenShelf.Parts;

    public override IReadOnlyList<Wiring> Wirings { get; } =
    [
        new("A", "one slim cell straight on the loop", "slim", 1, "loop", StepUp: false, "plug", 2, Supervision: true, 0.95, "charger-slim", "cutout"),
        new("B", "one slim cell through a step-up into the loop", "slim", 1, "loop", StepUp: true, "plug", 2, Supervision: true, 0.95, "charger-slim", "cutout"),
        new("C", "one slim cell straight on the spoon", "slim", 1, "spoon", StepUp: false, "plug", 2, Supervision: true, 0.95, "charger-slim", "cutout"),
    ];

    public override JsonObject Brief(Names names, Hidden hidden)
    {
        string end = names.Of("tip");
        string piece = names.Of("stroke");
        return Hot(hidden, $"A cordless pen whose warm {end} carves modelling wax at 90 °C for an hour, three times a {piece} a minute.", end, piece, (0.012, 0.002), (3, 0.4),
            "A groove takes about 10 mg of wax; melting it takes about 0.2 kJ/g and warming it from 21 °C about 2.5 J/(g·K) times 40 K: 3 J. "
                + "From memory ±15 %; the conductance is a guess.",
            Line("ready", $"The {end} is at 90 °C within 15 s of switching on.", "warmUpTime", 15, "s", true, true, "full cell, air at 21 °C", 1),
            Line("pieces", $"180 times a {piece} on one charge, three every minute.", "piecesPerCharge", 180, "", false, true, "each up to 10 s long", 1),
            Line("grip", "The grip stays at most at its touch limit of 43 °C.", "gripTemperature", 43, "°C", true, true, "held longer than 10 min", 1),
            Line("cells", "No cell gets hotter than 60 °C.", "cellTemperature", 60, "°C", true, true, "while working", 1),
            Line("bore", "All fits a handle of 16 mm inside diameter.", "insideDiameter", 16, "mm", true, true, "", 1),
            Line("charging", "A USB source charges it in at most 3 h.", "chargeTime", 3, "h", true, true, "from empty", 1),
            Line("cost", "All parts cost at most 20.", "partsCost", 20, "money", true, false, "", 1));
    }

    public override IReadOnlyList<DemoTrial> Trials(Hidden hidden, Bench bench)
    {
        var cells = new CellRuns(hidden, bench);
        var heaters = new HeaterRuns(hidden, bench);
        var small = new SmallRuns(hidden, bench);
        return
        [
            new("slim-discharge", "discharge", "slim", "what charge it really holds", [cells.Discharge("slim", looseClip: true, aboutA: 0.4)]),
            new("slim-pulses", "pulse", "slim", "its ohms over the charge", [cells.Pulses("slim", [0.3, 0.6, 0.9], downA: 0.6)]),
            new("loop-cold", "coldOhms", "loop", "ohms cold", [heaters.Cold("loop", overload: true)]),
            new("loop-hot", "hotOhms", "loop", "ohms hot", [heaters.Hot("loop", [1.8, 2.4, 3.0, 3.6])]),
            new("loop-warm-up", "warmUp", "loop", "heat it takes and loses", [heaters.UpAndDown("loop", 3.9, 0.5, 60), heaters.Hold("loop", 2.35)]),
            new("spoon-cold", "coldOhms", "spoon", "ohms cold", [heaters.Cold("spoon", overload: false)]),
            new("spoon-hot", "hotOhms", "spoon", "ohms hot", [heaters.Hot("spoon", [2.6, 3.4, 4.2, 5.0])]),
            new("spoon-warm-up", "warmUp", "spoon", "heat it takes and loses", [heaters.UpAndDown("spoon", 5.0, 0.5, 90), heaters.Hold("spoon", 3.6)]),
            new("module-points", "modulePoints", "module", "what it loses", [small.Module([40, 20, 10, 6.8])]),
            new("leads-drop", "twoPointDrop", "leads", "ohms out and back", [small.Drop("leads", 1, slip: true)]),
            new("plug-drop", "twoPointDrop", "plug", "ohms of one touch, over two of them", [small.Drop("plug", 2, slip: false)]),
        ];
    }
}
