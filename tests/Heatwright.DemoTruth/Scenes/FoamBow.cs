using System.Text.Json.Nodes;
using static Heatwright.DemoTruth.BriefText;

namespace Heatwright.DemoTruth;

/// <summary>A cordless bow that parts foam boards with a hot wire.</summary>
internal sealed class FoamBow : Scene
{
    public override string Folder => "foam-bow";

    public override string Name => "foam bow";

    public override string Note => "Demo. Every reading, label and price here is invented: made by a simulation with a hidden truth, not taken on a bench. "
        + "Lithium cells, a hot wire and the fumes of melting foam are dangerous; local rules and licensed practice come first.";

    public override double Seed => 815;

    public override Job Job { get; } = new(TargetC: 240, AboveC: 110, EveryS: 60, ForS: 40, FirstAfterS: 3, Asked: 60, Gain: 0.4, Sum: 0.01);

    public override IReadOnlyList<(string Name, double Value, string What)> Invented { get; } =
    [
        ("seed", 1815, "draws all instrument errors and noise"),
        ("air", 20, "°C around bench and tool"),
        ("round.capacity", 2.42, "Ah from full to empty"),
        ("round.r0", 0.043, "Ω at once, 25 °C, middle of the charge"),
        ("round.r1", 0.014, "Ω of the short pair"),
        ("round.tau1", 6, "s"),
        ("round.r2", 0.018, "Ω of the long pair"),
        ("round.tau2", 70, "s"),
        ("round.activation", 10, "kJ/mol of all ohms"),
        ("round.heatCapacity", 43, "J/K of one cell"),
        ("cell.toGrip", 0.06, "W/K from one cell to the handle; on the bench to the air"),
        ("thin.ohms", 4.58, "Ω at 20 °C, 200 mm of 0.25 mm nickel-chromium"),
        ("thin.alpha", 1.0e-4, "1/K"),
        ("thin.core", 0.018, "J/K of the middle of the wire"),
        ("thin.blade", 0.020, "J/K of its skin, where the probe is tied"),
        ("thin.shank", 0.90, "J/K of the arms' tips"),
        ("thin.coreLink", 0.30, "W/K"),
        ("thin.shankLink", 0.0008, "W/K wire to the arms' tips"),
        ("thin.gripLink", 0.006, "W/K along the arms to the grip"),
        ("thin.convection", 0.0110, "W/K to the air at 200 K above it"),
        ("thin.radiating", 1.1e-4, "m², emissivity times area"),
        ("thick.ohms", 2.78, "Ω at 20 °C, 200 mm of 0.32 mm nickel-chromium"),
        ("thick.alpha", 1.0e-4, "1/K"),
        ("thick.core", 0.030, "J/K"),
        ("thick.blade", 0.031, "J/K"),
        ("thick.shank", 0.90, "J/K"),
        ("thick.coreLink", 0.40, "W/K"),
        ("thick.shankLink", 0.0011, "W/K"),
        ("thick.gripLink", 0.006, "W/K"),
        ("thick.convection", 0.0128, "W/K"),
        ("thick.radiating", 1.4e-4, "m²"),
        ("shank.loss", 0.0040, "W/K of the arms to the air"),
        ("grip.heatCapacity", 70, "J/K"),
        ("grip.loss", 0.17, "W/K to the air"),
        ("module.set", 6.5, "V"),
        ("module.fixed", 0.05, "W"),
        ("module.perAmp", 0.22, "V"),
        ("module.perAmpSquared", 0.060, "Ω"),
        ("module.limit", 4.2, "A mean input"),
        ("module.lockOut", 2.6, "V"),
        ("switch.ohms", 0.008, "Ω"),
        ("leads.ohms", 0.030, "Ω out and back"),
        ("tabs.ohms", 0.0020, "Ω of one touch"),
        ("holder.ohms", 0.022, "Ω of one touch"),
        ("contacts.drift", 0.05, "share by which touches worsen within about ten minutes"),
        ("supervision.ohms", 0.032, "Ω"),
        ("supervision.trip", 7.5, "A"),
        ("controller.drain", 0.009, "A"),
        ("probe.lag", 0.35, "s"),
        ("probe.contact", 0.985, "share of the rise above the air that the probe feels"),
        ("work.contact", 0.046, "W/K into the foam"),
        ("work.need", 44, "J a stroke"),
    ];

    public override IReadOnlyList<DemoPart> Parts => FoamBowShelf.Parts;

    public override IReadOnlyList<Wiring> Wirings { get; } =
    [
        new("A", "one round cell straight on the thin wire", "round", 1, "thin", StepUp: false, "holder", 2, Supervision: true, 0.95, "charger-round", "cutout"),
        new("B", "one round cell through a step-up into the thin wire", "round", 1, "thin", StepUp: true, "holder", 2, Supervision: true, 0.95, "charger-round", "cutout"),
        new("C", "one round cell straight on the thick wire", "round", 1, "thick", StepUp: false, "holder", 2, Supervision: true, 0.95, "charger-round", "cutout"),
        new("D", "two round cells in series on the thin wire under a duty ceiling", "round", 2, "thin", StepUp: false, "holder", 4, Supervision: false, 0.4, null, "cutout"),
    ];

    public override JsonObject Brief(Names names, Hidden hidden)
    {
        string end = names.Of("wire");
        string piece = names.Of("stroke");
        return Hot(hidden, $"A cordless bow whose hot {end} parts polystyrene foam boards 40 mm thick, one {piece} after another for an hour.", end, piece, (0.045, 0.008), (44, 6),
            "A kerf of 0.8 mm through a board 180 mm wide and 40 mm thick is 5.8 cm³; at 20 kg/m³ that is 115 mg, heated from 20 to 240 °C "
                + "at about 1.7 J/(g·K): 43 J. From memory ±15 %; the conductance is a guess.",
            Line("ready", $"The {end} is at 240 °C within 6 s of switching on.", "warmUpTime", 6, "s", true, true, "full cell, air at 20 °C", 1),
            Line("pieces", $"60 times a {piece} on one charge, one every minute.", "piecesPerCharge", 60, "", false, true, "each up to 40 s long", 1),
            Line("grip", "The grip stays at most at its touch limit of 43 °C.", "gripTemperature", 43, "°C", true, true, "held longer than 10 min", 1),
            Line("cells", "No cell gets hotter than 60 °C.", "cellTemperature", 60, "°C", true, true, "while working", 1),
            Line("bore", "All fits a handle of 24 mm inside diameter.", "insideDiameter", 24, "mm", true, true, "", 1),
            Line("charging", "A USB source charges it in at most 4 h.", "chargeTime", 4, "h", true, true, "from empty", 1),
            Line("cost", "All parts cost at most 25.", "partsCost", 25, "money", true, false, "", 1));
    }

    public override IReadOnlyList<DemoTrial> Trials(Hidden hidden, Bench bench)
    {
        var cells = new CellRuns(hidden, bench);
        var heaters = new HeaterRuns(hidden, bench);
        var small = new SmallRuns(hidden, bench);
        return
        [
            new("round-discharge", "discharge", "round", "what charge it really holds", [cells.Discharge("round", looseClip: true)]),
            new("round-pulses", "pulse", "round", "its ohms over the charge", [cells.Pulses("round", [1, 2, 3])]),
            new("thin-cold", "coldOhms", "thin", "ohms cold", [heaters.Cold("thin", overload: false)]),
            new("thin-hot", "hotOhms", "thin", "ohms hot", [heaters.Hot("thin", [2.0, 2.6, 3.2, 3.7])]),
            new("thin-warm-up", "warmUp", "thin", "heat it takes and loses", [heaters.UpAndDown("thin", 4.8, 0.5, 30), heaters.Hold("thin", 3.6)]),
            new("thick-cold", "coldOhms", "thick", "ohms cold", [heaters.Cold("thick", overload: true)]),
            new("thick-hot", "hotOhms", "thick", "ohms hot", [heaters.Hot("thick", [1.6, 2.1, 2.6, 3.1])]),
            new("thick-warm-up", "warmUp", "thick", "heat it takes and loses", [heaters.UpAndDown("thick", 4.2, 0.5, 30), heaters.Hold("thick", 3.1)]),
            new("module-points", "modulePoints", "module", "what it loses", [small.Module([40, 20, 10, 6.5])]),
            new("leads-drop", "twoPointDrop", "leads", "ohms out and back", [small.Drop("leads", 1, slip: true)]),
            new("holder-drop", "twoPointDrop", "holder", "ohms of one touch, over two of them", [small.Drop("holder", 2, slip: false)]),
        ];
    }
}
