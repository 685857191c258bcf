using System.Text.Json.Nodes;
using static Heatwright.DemoTruth.Stated;

namespace Heatwright.DemoTruth;

/// <summary>A cell of a scenario.</summary>
/// <param name="Ohm">Of the middle of the charge at 25 °C, all together.</param>
/// <param name="ClaimedMah">What its label says.</param>
internal sealed record CellSpec(string Id, double Ah, double Ohm, double Activation, double RatedA, double AcrossMm, double LongMm, double MassG, double ClaimedMah);

/// <summary>A heater with its working end.</summary>
/// <param name="J">Heat capacity of all that gets hot, J/K.</param>
/// <param name="LossW">What it loses at the target.</param>
/// <param name="Claim">Its label.</param>
/// <param name="UpV">Volts of the warm-up trial.</param>
/// <param name="Tried">False: nothing was measured of it.</param>
internal sealed record EndSpec(string Id, string Name, double Ohm, double J, double LossW, string Claim, double UpV, bool Tried = true)
{
    public double Alpha { get; init; } = 1.5e-4;

    /// <summary>Ohms on the label; 0: those it has.</summary>
    public double ClaimedOhm { get; init; }
}

/// <summary>A protection board.</summary>
internal sealed record BoardSpec(string Id, int Cells, double TripA);

/// <summary>A step-up module.</summary>
internal sealed record ModuleSpec(double SetV, double LimitA, double LockOutV, double[] LoadsOhm);

/// <summary>One line of a brief.</summary>
internal sealed record LineSpec(string Id, string Text, string Quantity, double Limit, string Unit, bool AtMost);

/// <summary>An invented bag of parts with its job, made of a few numbers; the rest is as in any small bag.</summary>
internal sealed class Scenario(string folder, string promise, string end, string piece, Job job, double airC, double contact, double need, CellSpec[] cells, EndSpec[] ends, BoardSpec[] boards, Wiring[] wirings, LineSpec[] lines) : Scene
{
    private const double ShankLoss = 0.002;

    public ModuleSpec? Module { get; init; }

    public double GripLink { get; init; } = 0.006;

    /// <summary>Where the figures of the work come from.</summary>
    public string Why { get; init; } = "Invented for a test.";

    /// <summary>How far above the target the maker's controller holds, K; 0: as usual.</summary>
    public double Aim { get; init; }

    public override string Folder => folder;

    public override string Name => folder.Replace('-', ' ');

    /// <summary>Kept as a sample, not only made for a test.</summary>
    public bool Kept { get; init; }

    public override string Note => (Kept ? "Demo" : "Test") + ". Every reading, label and price here is invented: made by a simulation with a hidden truth, not taken on a bench. "
        + "Lithium cells and hot surfaces can hurt; local rules and licensed practice come first.";

    public override double Seed => 4711;

    public override Job Job => job;

    public override IReadOnlyList<(string Name, double Value, string What)> Invented => Values();

    public override IReadOnlyList<DemoPart> Parts => [.. cells.Select(Cell), .. ends.Select(End), .. boards.Select(Board), .. Chargers(), .. Module is { } module ? [ModulePart(module)] : Array.Empty<DemoPart>(), .. Common()];

    public override IReadOnlyList<Wiring> Wirings => wirings;

    public override JsonObject Brief(Names names, Hidden hidden)
    {
        var brief = BriefText.Hot(hidden, promise, names.Of(end), names.Of(piece), (contact, 0.1 * contact), (need, 0.1 * need), Why,
            [.. lines.Select(line => (JsonNode)BriefText.Line(line.Id, line.Text, line.Quantity, line.Limit, line.Unit, line.AtMost, true, "full cell", 1))]);
        if (Aim > 0)
        {
            brief["duty"]!["aimAboveK"] = Aim;
        }

        return brief;
    }

    /// <summary>Two wrong readings in each: volts lost at a clip, an overload mark or a drop typed in volts. The contacts are never measured.</summary>
    public override IReadOnlyList<DemoTrial> Trials(Hidden hidden, Bench bench)
    {
        var (cell, heater, small) = (new CellRuns(hidden, bench), new HeaterRuns(hidden, bench), new SmallRuns(hidden, bench));
        List<DemoTrial> trials = [new("leads-drop", "twoPointDrop", "leads", "ohms out and back", [small.Drop("leads", 1, slip: true)])];
        foreach (var one in cells)
        {
            trials.Add(new(one.Id + "-discharge", "discharge", one.Id, "what charge it really holds", [cell.Discharge(one.Id, looseClip: one == cells[0], 0.5 * one.Ah)]));
            trials.Add(new(one.Id + "-pulses", "pulse", one.Id, "its ohms over the charge", [cell.Pulses(one.Id, [0.5 * one.Ah, one.Ah, 2 * one.Ah], one.Ah)]));
        }

        foreach (var one in ends.Where(one => one.Tried))
        {
            double holdV = Math.Sqrt(one.LossW * one.Ohm);
            trials.Add(new(one.Id + "-cold", "coldOhms", one.Id, "ohms cold", [heater.Cold(one.Id, overload: one == ends[0])]));
            trials.Add(new(one.Id + "-hot", "hotOhms", one.Id, "ohms hot", [heater.Hot(one.Id, [0.5 * holdV, 0.7 * holdV, 0.9 * holdV, holdV])]));
            trials.Add(new(one.Id + "-warm-up", "warmUp", one.Id, "heat it takes and loses", [heater.UpAndDown(one.Id, one.UpV, UpEveryS(one), 120), heater.Hold(one.Id, holdV)]));
        }

        if (Module is { } module)
        {
            trials.Add(new("module-points", "modulePoints", "module", "what it loses", [small.Module(module.LoadsOhm)]));
        }

        return trials;
    }

    private double UpEveryS(EndSpec one) => one.J * (job.TargetC - airC) / (one.UpV * one.UpV / one.Ohm) > 40 ? 2 : 0.5;

    private List<(string, double, string)> Values()
    {
        const string what = "invented for a test";
        List<(string, double, string)> all =
        [
            ("seed", 9, what), ("air", airC, what), ("cell.toGrip", 0.06, what), ("shank.loss", ShankLoss, what), ("grip.heatCapacity", 55, what), ("grip.loss", 0.16, what),
            ("switch.ohms", 0.010, what), ("leads.ohms", 0.020, what), ("tabs.ohms", 0.004, what), ("contacts.drift", 0.05, what), ("controller.drain", 0.008, what),
            ("probe.lag", 0.5, what), ("probe.contact", 0.99, what), ("work.contact", contact, what), ("work.need", need, what), ("supervision.ohms", 0.025, what), ("supervision.trip", boards[0].TripA, what),
            ("module.set", Module?.SetV ?? 12, what), ("module.fixed", 0.15, what), ("module.perAmp", 0.25, what), ("module.perAmpSquared", 0.05, what), ("module.limit", Module?.LimitA ?? 8, what), ("module.lockOut", Module?.LockOutV ?? 2.8, what),
        ];
        foreach (var cell in cells)
        {
            (string, double)[] values = [("capacity", cell.Ah), ("r0", 0.6 * cell.Ohm), ("r1", 0.15 * cell.Ohm), ("tau1", 6), ("r2", 0.25 * cell.Ohm), ("tau2", 80), ("activation", cell.Activation), ("heatCapacity", 0.92 * cell.MassG)];
            all.AddRange(values.Select(one => ($"{cell.Id}.{one.Item1}", one.Item2, what)));
        }

        foreach (var end in ends)
        {
            // The truth lets convection grow a little with the rise; its coefficient is the one at 200 K.
            double rise = job.TargetC - airC, convection = end.LossW / rise / Math.Pow(rise / 200, 0.15);
            (string, double)[] values = [("ohms", end.Ohm), ("alpha", end.Alpha), ("core", 0.15 * end.J), ("blade", 0.85 * end.J), ("shank", 0.4 * end.J), ("coreLink", 0.6 * end.J), ("shankLink", 2 * GripLink), ("gripLink", 2 * GripLink), ("convection", convection), ("radiating", 0)];
            all.AddRange(values.Select(one => ($"{end.Id}.{one.Item1}", one.Item2, what)));
        }

        return all;
    }

    private static DemoPart Cell(CellSpec cell) => new(cell.Id, "cell", cell.Id + " cell", 6, "bought",
    [
        new("capacity", cell.ClaimedMah, "mAh", 0, Claimed, "printed on it"), new("rated current", cell.RatedA, "A", 0, Sheet, "cell sheet"),
        new("cut-off volts", 3.0, "V", 0, Assumed, "usual for this chemistry under load, from memory"), new("heat capacity", 0.92 * cell.MassG, "J/K", 0.1 * cell.MassG, Assumed, "its mass at about 0.9 J/(g·K), from memory"),
        .. Size(cell.AcrossMm, cell.LongMm, cell.MassG, 4),
    ])
    { Words = [("chemistry", "lithium-ion")] };

    private static DemoPart End(EndSpec end) => new(end.Id, "heater", end.Name, 1, "bought",
        [new("ohms", end.ClaimedOhm > 0 ? end.ClaimedOhm : end.Ohm, "Ω", 0, Claimed, end.Claim), .. Size(5, 40, 8, 3)]);

    private static DemoPart Board(BoardSpec board) => new(board.Id, "supervision", $"protection board for {board.Cells} in series", 1, "bought",
    [
        new("ohms", 25, "mΩ", 2, Measured, "hand-held multimeter"), new("trip current", board.TripA, "A", 0.05 * board.TripA, Measured, "load turned up until it opened"), .. Stated.Board(20, 16, 3, 2, 1.5),
    ])
    { Words = [("chemistry", "lithium-ion"), ("cells", board.Cells.ToString(System.Globalization.CultureInfo.InvariantCulture))] };

    private IEnumerable<DemoPart> Chargers() => wirings.Where(one => one.Charger is not null).DistinctBy(one => one.Charger).Select(one => new DemoPart(one.Charger!, "charger", $"charger for {one.Series} in series", 1, "bought",
        [new("charge current", 0.5, "A", 0.05, Sheet, "board sheet"), .. Stated.Board(24, 18, 5, 3, 2)])
    { Words = [("chemistry", "lithium-ion"), ("cells", one.Series.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("source", "USB")] });

    private static DemoPart ModulePart(ModuleSpec module) => new("module", "stepUp", "step-up module", 1, "bought",
    [
        new("rated power", 100, "W", 0, Claimed, "step-up 100 W"), new("set volts", module.SetV, "V", 0, Measured, "turned to this, no load"), new("limit current", module.LimitA, "A", 0.5, Measured, "load turned up until the output gave way"),
        new("lock-out volts", module.LockOutV, "V", 0.05, Measured, "input turned down until it stopped"), .. Stated.Board(40, 22, 12, 14, 4),
    ]);

    /// <summary>On the working end, and above what the work heats it to.</summary>
    private DemoPart Link() => new("cutout", "cutOut", "one-shot thermal link", 1, "bought", [new("rated current", 15, "A", 0, Sheet, "link sheet"), new("opening temperature", Math.Max(72, job.TargetC + 40), "°C", 2, Sheet, "link sheet"), .. Size(4, 12, 1, 0.8)]);

    private DemoPart[] Common() =>
    [
        new("switch", "switch", "heater switch", 1, "bought", [new("ohms", 10, "mΩ", 2, Sheet, "switch sheet, at 3 V drive"), new("rated current", 20, "A", 0, Sheet, "switch sheet"), .. Stated.Board(10, 9, 4, 1, 0.8)]),
        new("leads", "leads", "leads", 1, "bought", [new("rated current", 15, "A", 0, Sheet, "wire sheet"), new("length", 300, "mm", 5, Measured, "ruler"), new("mass", 6, "g", 0.5, Measured, "scale"), new("price", 0.5, "money", 0, Measured, "receipt")]),
        new("tabs", "contacts", "welded tabs", 12, "bought", [new("ohms", 4, "mΩ", 2, Assumed, "welded nickel, common practice, never measured"), new("rated current", 15, "A", 0, Assumed, "from memory"), new("mass", 0.5, "g", 0.1, Measured, "scale"), new("price", 0.1, "money", 0, Measured, "receipt")]),
        new("sensor", "sensor", "type K probe", 1, "bought", [new("lag", 0.5, "s", 0.2, Assumed, "fine bead, from memory"), new("mass", 1, "g", 0.5, Measured, "scale"), new("price", 2, "money", 0, Measured, "receipt")]) { Words = [("type", "K")] },
        new("controller", "controller", "controller board", 1, "bought", [new("drain", 8, "mA", 1, Measured, "multimeter"), .. Stated.Board(28, 18, 6, 5, 5)]),
        Link(),
        new("handle", "handle", "tube handle", 1, "bought",
        [
            new("diameter", 40, "mm", 0.1, Measured, "caliper, inside"), new("length", 220, "mm", 0.5, Measured, "ruler, inside"), new("grip heat capacity", 55, "J/K", 12, Assumed, "its mass, from memory"),
            new("grip loss", 0.16, "W/K", 0.04, Assumed, "its area, from memory"), new("mass", 50, "g", 1, Measured, "scale"), new("price", 4, "money", 0, Measured, "receipt"),
        ]),
    ];
}
