using System.Text.Json.Nodes;

namespace Heatwright.DemoTruth;

/// <summary>A cordless hot knife for synthetic rope.</summary>
internal sealed class RopeKnife : Scene
{
    public override string Folder => "rope-hot-knife";

    public override string Name => "rope hot knife";

    public override string Note => "Demo. Every reading, label and price here is invented: made by a simulation with a hidden truth, not taken on a bench. "
        + "Lithium cells, a hot edge and fumes of melting rope are dangerous; local rules and licensed practice come first.";

    public override double Seed => 4711;

    public override Job Job { get; } = new(TargetC: 320, AboveC: 220, EveryS: 20, ForS: 4, FirstAfterS: 5, Asked: 40, Gain: 0.06, Sum: 0.0004);

    public override IReadOnlyList<(string Name, double Value, string What)> Invented { get; } =
    [
        ("seed", 2026, "draws all instrument errors and noise"),
        ("air", 20, "°C around bench and tool"),
        ("round.capacity", 2.19, "Ah from full to empty"),
        ("round.r0", 0.040, "Ω at once, 25 °C, middle of the charge"),
        ("round.r1", 0.015, "Ω of the short pair"),
        ("round.tau1", 5, "s"),
        ("round.r2", 0.020, "Ω of the long pair"),
        ("round.tau2", 60, "s"),
        ("round.activation", 9, "kJ/mol of all ohms"),
        ("round.heatCapacity", 42, "J/K of one cell"),
        ("iron.capacity", 1.72, "Ah from full to empty"),
        ("iron.r0", 0.013, "Ω"),
        ("iron.r1", 0.004, "Ω"),
        ("iron.tau1", 4, "s"),
        ("iron.r2", 0.005, "Ω"),
        ("iron.tau2", 45, "s"),
        ("iron.activation", 20, "kJ/mol"),
        ("iron.heatCapacity", 40, "J/K"),
        ("cell.toGrip", 0.06, "W/K from one cell to the handle; on the bench to the air"),
        ("stick.ohms", 3.36, "Ω at 20 °C"),
        ("stick.alpha", 7.0e-4, "1/K"),
        ("stick.core", 0.14, "J/K of the heated core"),
        ("stick.blade", 0.52, "J/K of the working end"),
        ("stick.shank", 0.50, "J/K of the shank"),
        ("stick.coreLink", 0.50, "W/K core to working end"),
        ("stick.shankLink", 0.0065, "W/K working end to shank"),
        ("stick.gripLink", 0.012, "W/K shank to grip"),
        ("stick.convection", 0.0085, "W/K to the air at 200 K above it"),
        ("stick.radiating", 2.3e-4, "m², emissivity times area"),
        ("cartridge.ohms", 8.9, "Ω at 20 °C"),
        ("cartridge.alpha", 2.0e-4, "1/K"),
        ("cartridge.core", 0.20, "J/K"),
        ("cartridge.blade", 0.66, "J/K"),
        ("cartridge.shank", 0.60, "J/K"),
        ("cartridge.coreLink", 0.60, "W/K"),
        ("cartridge.shankLink", 0.0080, "W/K"),
        ("cartridge.gripLink", 0.013, "W/K"),
        ("cartridge.convection", 0.0180, "W/K"),
        ("cartridge.radiating", 4.0e-4, "m²"),
        ("ribbon.ohms", 0.60, "Ω at 20 °C"),
        ("ribbon.alpha", 1.0e-4, "1/K"),
        ("ribbon.core", 0.52, "J/K"),
        ("ribbon.blade", 0.62, "J/K"),
        ("ribbon.shank", 0.40, "J/K"),
        ("ribbon.coreLink", 1.50, "W/K"),
        ("ribbon.shankLink", 0.0055, "W/K"),
        ("ribbon.gripLink", 0.012, "W/K"),
        ("ribbon.convection", 0.0090, "W/K"),
        ("ribbon.radiating", 2.2e-4, "m²"),
        ("shank.loss", 0.0030, "W/K of any shank to the air"),
        ("grip.heatCapacity", 90, "J/K"),
        ("grip.loss", 0.20, "W/K to the air"),
        ("module.set", 14.4, "V"),
        ("module.fixed", 0.12, "W"),
        ("module.perAmp", 0.18, "V"),
        ("module.perAmpSquared", 0.050, "Ω"),
        ("module.limit", 10.0, "A mean input"),
        ("module.lockOut", 2.95, "V"),
        ("switch.ohms", 0.006, "Ω"),
        ("leads.ohms", 0.016, "Ω out and back"),
        ("tabs.ohms", 0.0020, "Ω of one touch"),
        ("holder.ohms", 0.020, "Ω of one touch; never measured"),
        ("contacts.drift", 0.05, "share by which touches worsen within about ten minutes"),
        ("supervision.ohms", 0.025, "Ω"),
        ("supervision.trip", 12.5, "A"),
        ("controller.drain", 0.012, "A"),
        ("probe.lag", 1.4, "s"),
        ("probe.contact", 0.992, "share of the rise above the air that the probe feels"),
        ("work.contact", 0.225, "W/K into the rope"),
        ("work.need", 40, "J a cut"),
    ];

    public override IReadOnlyList<DemoPart> Parts => RopeKnifeShelf.Parts;

    public override IReadOnlyList<Wiring> Wirings { get; } =
    [
        new("A", "two round cells in series straight on the stick", "round", 2, "stick", StepUp: false, "tabs", 4, Supervision: false, 0.95, null, "cutout"),
        new("B", "one round cell through a step-up into the cartridge", "round", 1, "cartridge", StepUp: true, "tabs", 2, Supervision: true, 0.95, "charger-round", "cutout"),
        new("C", "one round cell straight on the ribbon through the spring holder", "round", 1, "ribbon", StepUp: false, "holder", 2, Supervision: true, 0.95, "charger-round", "cutout"),
        new("D", "iron-phosphate pair straight on the ribbon under a duty ceiling", "iron", 2, "ribbon", StepUp: false, "tabs", 4, Supervision: false, 0.45, "charger-iron", null),
    ];

    public override JsonObject Brief(Names names, Hidden hidden) => RopeKnifeBrief.Json(names, hidden);

    public override IReadOnlyList<DemoTrial> Trials(Hidden hidden, Bench bench)
    {
        var cells = new CellRuns(hidden, bench);
        var heaters = new HeaterRuns(hidden, bench);
        var small = new SmallRuns(hidden, bench);
        return
        [
            new("round-discharge", "discharge", "round", "what charge it really holds", [cells.Discharge("round", looseClip: true)]),
            new("round-pulses", "pulse", "round", "its ohms over the charge", [cells.Pulses("round", [2, 3, 4])]),
            new("iron-discharge", "discharge", "iron", "what charge it really holds", [cells.Discharge("iron", looseClip: false)]),
            new("iron-pulses", "pulse", "iron", "its ohms over the charge", [cells.Pulses("iron", [2, 4, 6])]),
            .. Heater("stick", 7.3, 4.7, [2.4, 3.3, 4.1, 4.7]),
            .. Heater("cartridge", 12.6, 8.8, [4.0, 6.0, 7.5, 8.8]),
            .. Heater("ribbon", 3.1, 1.75, [0.8, 1.2, 1.5, 1.75]),
            new("module-points", "modulePoints", "module", "what it loses", [small.Module([47, 22, 15, 10])]),
            new("leads-drop", "twoPointDrop", "leads", "ohms out and back", [small.Drop("leads", 1, slip: true)]),
            new("tabs-drop", "twoPointDrop", "tabs", "ohms of one touch, over four of them", [small.Drop("tabs", 4, slip: false)]),
        ];

        IEnumerable<DemoTrial> Heater(string name, double upV, double holdV, double[] heldV) =>
        [
            new(name + "-cold", "coldOhms", name, "ohms cold", [heaters.Cold(name, overload: name == "cartridge")]),
            new(name + "-hot", "hotOhms", name, "ohms hot", [heaters.Hot(name, heldV)]),
            new(name + "-warm-up", "warmUp", name, "heat it takes and loses, and what the grip gets",
                [heaters.UpAndDown(name, upV), heaters.Hold(name, holdV), .. name == "cartridge" ? [heaters.ByHand(name, holdV)] : Array.Empty<DemoRun>()]),
        ];
    }
}
