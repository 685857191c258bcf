using System.Text.Json.Nodes;
using static Heatwright.DemoTruth.BriefText;

namespace Heatwright.DemoTruth;

/// <summary>A cordless lamp to look into machines with: no heater, a light with a linear driver, and the question how its cells should stand.</summary>
internal sealed class InspectionLamp : Scene
{
    public override string Folder => "inspection-lamp";

    public override string Name => "inspection lamp";

    public override string Note => "Demo. Every reading, label and price here is invented: made by a simulation with a hidden truth, not taken on a bench. "
        + "Lithium cells and bright light can hurt; local rules and licensed practice come first.";

    public override double Seed => 4401;

    public override Job Job => throw new InvalidOperationException("A lamp does no hot work.");

    public override IReadOnlyList<(string Name, double Value, string What)> Invented { get; } =
    [
        ("seed", 6127, "draws all instrument errors and noise"),
        ("air", 20, "°C around bench and tool"),
        ("round.capacity", 2.56, "Ah from full to empty"),
        ("round.r0", 0.045, "Ω at once, 25 °C, middle of the charge"),
        ("round.r1", 0.018, "Ω of the short pair"),
        ("round.tau1", 6, "s"),
        ("round.r2", 0.020, "Ω of the long pair"),
        ("round.tau2", 70, "s"),
        ("round.activation", 10, "kJ/mol of all ohms"),
        ("round.heatCapacity", 43, "J/K of one cell"),
        ("cell.toGrip", 0.08, "W/K from one cell to the handle; on the bench to the air"),
        ("lamp.set", 0.70, "A that the driver holds"),
        ("lamp.knee", 2.70, "V of the light at 0.1 A, without its ohms"),
        ("lamp.slope", 0.060, "V, by which its volts grow with the logarithm of its amps"),
        ("lamp.ohms", 0.20, "Ω of the light"),
        ("lamp.driverOhms", 0.45, "Ω of the driver when it lets all through"),
        ("lamp.lightShare", 0.32, "share of the light's watts that leave as light, at small amps"),
        ("head.heatCapacity", 38, "J/K"),
        ("head.loss", 0.045, "W/K to the air"),
        ("head.radiating", 1.5e-3, "m², emissivity times area"),
        ("head.gripLink", 0.040, "W/K head to handle"),
        ("grip.heatCapacity", 90, "J/K"),
        ("grip.loss", 0.16, "W/K to the air"),
        ("module.set", 5.0, "V"),
        ("module.fixed", 0.05, "W"),
        ("module.perAmp", 0.20, "V"),
        ("module.perAmpSquared", 0.080, "Ω"),
        ("module.limit", 2.6, "A mean input"),
        ("module.lockOut", 2.6, "V"),
        ("switch.ohms", 0.020, "Ω"),
        ("leads.ohms", 0.030, "Ω out and back"),
        ("holder.ohms", 0.012, "Ω of one touch"),
        ("contacts.drift", 0.05, "share by which touches wander"),
        ("supervision.ohms", 0.045, "Ω"),
        ("supervision.trip", 6.0, "A"),
    ];

    public override IReadOnlyList<DemoPart> Parts => InspectionLampShelf.Parts;

    public override IReadOnlyList<Wiring> Wirings { get; } =
    [
        new("A", "one cell through a step-up into the lamp", "round", 1, "lamp", StepUp: true, "holder", 2, Supervision: true, 1, "charger", null) { IsLamp = true },
        new("B", "two cells in series straight on the lamp", "round", 2, "lamp", StepUp: false, "holder", 4, Supervision: false, 1, null, null) { IsLamp = true },
        new("C", "two cells side by side straight on the lamp", "round", 1, "lamp", StepUp: false, "holder", 2, Supervision: true, 1, "charger", null) { IsLamp = true, Parallel = 2 },
    ];

    public override JsonObject Brief(Names names, Hidden hidden)
    {
        string end = names.Of("lamp head");
        return new JsonObject
        {
            ["promise"] = "A cordless inspection lamp gives its full light for five hours.",
            ["workingEnd"] = end,
            ["piece"] = "use",
            ["airC"] = hidden["air"],
            ["requirements"] = new JsonArray(
                Line("light", "Full light for at least 5 h.", "fullLightTime", 5, "h", false, true, "full cells, air at 20 °C", 1),
                Line("head", $"The {end} stays at most at 65 °C.", "endTemperature", 65, "°C", true, true, "in open air", 1),
                Line("grip", "The grip stays at most at its touch limit of 43 °C.", "gripTemperature", 43, "°C", true, true, "held longer than 10 min", 1),
                Line("cells", "No cell gets hotter than 60 °C.", "cellTemperature", 60, "°C", true, true, "while it burns", 1),
                Line("bore", "All fits a handle of 30 mm inside diameter.", "insideDiameter", 30, "mm", true, true, "", 1),
                Line("charging", "A USB source charges it in at most 9 h.", "chargeTime", 9, "h", true, true, "from empty", 1),
                Line("standby", "It stands by for at least 180 days.", "standByTime", 180, "d", false, true, "full cells, switched off", 1),
                Line("mass", "It weighs at most 280 g.", "mass", 280, "g", true, false, "", 1),
                Line("cost", "All parts cost at most 25.", "partsCost", 25, "money", true, false, "", 1)),
        };
    }

    public override IReadOnlyList<DemoTrial> Trials(Hidden hidden, Bench bench)
    {
        var cells = new CellRuns(hidden, bench);
        var small = new SmallRuns(hidden, bench);
        return
        [
            new("round-discharge", "discharge", "round", "what charge it really holds", [cells.Discharge("round", looseClip: false)]),
            new("round-pulses", "pulse", "round", "its ohms over the charge", [cells.Pulses("round", [0.5, 1.0, 1.5])]),
            new("lamp-points", "bench", "lamp", "what its driver holds, and down to which volts", [new LampRuns(hidden, bench).Points(overload: true)]) { Card = "lamp-points" },
            new("lamp-warm-up", "warmUp", "lamp", "heat that its head takes and loses", [new LampRuns(hidden, bench).Warm(3.7)]),
            new("module-points", "modulePoints", "module", "what it loses", [small.Module([50, 20, 10, 7.1])]),
            new("leads-drop", "twoPointDrop", "leads", "ohms out and back", [small.Drop("leads", 1, slip: true)]),
            new("holder-drop", "twoPointDrop", "holder", "ohms of one touch, over two of them", [small.Drop("holder", 2, slip: false)]),
        ];
    }
}
