using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Quantities;
using Heatwright.Safety;
using Heatwright.Trials;

namespace Heatwright.Tests.Safety;

/// <summary>A hot tool of two cells in series, all numbers by hand: 4.0 V a cell that stay 4.0 V, a heater of 2 Ω that stays 2 Ω.</summary>
internal sealed record SafetyTool
{
    public int Series { get; init; } = 2;

    public double CapacityAh { get; init; } = 2;

    public double EndLossWPerK { get; init; } = 0.1;

    public double LinkWPerK { get; init; } = 0.02;

    /// <summary>Half width of the range of the link from the end to the grip.</summary>
    public double LinkPlusMinus { get; init; }

    public double GripLossWPerK { get; init; } = 0.2;

    public double HeaterOhms { get; init; } = 2;

    /// <summary>Ohms of one cell.</summary>
    public double CellOhms { get; init; } = 1e-3;

    /// <summary>Ohms between the cells and the heater.</summary>
    public double LeadOhms { get; init; } = 1e-6;

    /// <summary>Half width of the range of the heater's ohms.</summary>
    public double OhmsPlusMinus { get; init; }

    /// <summary>Half width of the range of the cells' charge, Ah.</summary>
    public double CapacityPlusMinus { get; init; }

    /// <summary>Half width of the range of the end's heat capacity, J/K.</summary>
    public double EndHeatPlusMinus { get; init; }

    /// <summary>Half width of the range of the grip's loss, W/K.</summary>
    public double GripLossPlusMinus { get; init; }

    /// <summary>Half width of the range of the lamp's current, A.</summary>
    public double LampPlusMinus { get; init; }

    /// <summary>Where the heater's ohms come from.</summary>
    public string OhmsFrom { get; init; } = "measured";

    public double DutyCeiling { get; init; } = 0.95;

    /// <summary>null: no supervision; else what it is made for.</summary>
    public string? SupervisionCells { get; init; } = "2";

    public string? ChargerCells { get; init; } = "2";

    public string CellChemistry { get; init; } = "lithium";

    public string ChargerChemistry { get; init; } = "lithium";

    public string From { get; init; } = "bought";

    /// <summary>null: no cut-out; NaN: one without a stated temperature.</summary>
    public double? CutOutC { get; init; }

    /// <summary>Where the cut-out was said to sit; null: nobody said.</summary>
    public string? CutOutPlace { get; init; }

    /// <summary>Temperature of the work, °C.</summary>
    public double WorkC { get; init; } = 300;

    public bool IsLamp { get; init; }

    public Arrangement Arrangement => new(new("a"), "A", "tool", new("cell"), Series, 1, new("switch"), new("leads"), new("contacts"), 2, new("handle"))
    {
        Heater = IsLamp ? null : new("tip"),
        Lamp = IsLamp ? new("light") : null,
        Sensor = new("probe"),
        Controller = new("board"),
        Supervision = SupervisionCells is null ? null : new("guard"),
        Charger = ChargerCells is null ? null : new("charger"),
        CutOut = CutOutC is null ? null : new("fuse"),
        DutyCeiling = DutyCeiling,
    };

    public IReadOnlyList<Part> Parts =>
    [
        new(new("cell"), PartKind.Cell, "cell", [Value(PartQuantities.Capacity, CapacityAh, "Ah", CapacityPlusMinus), Value(PartQuantities.Ohms, CellOhms, "Ω"), Value(PartQuantities.HeatCapacity, 40, "J/K"), Value(PartQuantities.CutoffVolts, 3, "V")])
        {
            From = From,
            Words = new Dictionary<string, string> { ["chemistry"] = CellChemistry },
        },
        new(new("switch"), PartKind.Switch, "switch", [Value(PartQuantities.Ohms, 1e-6, "Ω")]),
        new(new("leads"), PartKind.Leads, "leads", [Value(PartQuantities.Ohms, LeadOhms, "Ω")]),
        new(new("contacts"), PartKind.Contacts, "contacts", [Value(PartQuantities.Ohms, 1e-6, "Ω")]),
        new(new("handle"), PartKind.Handle, "handle", [Value(PartQuantities.GripHeatCapacity, 40, "J/K"), Value(PartQuantities.GripLoss, GripLossWPerK, "W/K", GripLossPlusMinus)]),
        new(new("tip"), PartKind.Heater, "tip", [Value(PartQuantities.Ohms, HeaterOhms, "Ω", OhmsPlusMinus) with { Origin = OhmsFrom }, Value(PartQuantities.Alpha, 0, "1/K"), Value(PartQuantities.HeatCapacity, 10, "J/K", EndHeatPlusMinus), Value(PartQuantities.LinearLoss, EndLossWPerK, "W/K"), Value(PartQuantities.GripLink, LinkWPerK, "W/K", LinkPlusMinus)]),
        new(new("light"), PartKind.Lamp, "light", [Value(PartQuantities.LoadCurrent, 0.7, "A", LampPlusMinus), Value(PartQuantities.LeastInputVolts, 3.3, "V"), Value(PartQuantities.GripLink, LinkWPerK, "W/K")]),
        new(new("probe"), PartKind.Sensor, "probe", []),
        new(new("board"), PartKind.Controller, "board", [Value(PartQuantities.Drain, 1e-6, "A")]),
        new(new("guard"), PartKind.Supervision, "guard", [Value(PartQuantities.Ohms, 1e-6, "Ω")]) { Words = Made(SupervisionCells, CellChemistry) },
        new(new("charger"), PartKind.Charger, "charger", []) { Words = Made(ChargerCells, ChargerChemistry) },
        new(new("fuse"), PartKind.CutOut, "fuse", CutOutC is { } opens && double.IsFinite(opens) ? [Value(PartQuantities.OpeningTemperature, opens, "°C")] : []) { Words = CutOutPlace is null ? new Dictionary<string, string>() : new Dictionary<string, string> { ["place"] = CutOutPlace } },
    ];

    public Shelf Shelf => ShelfOf(Parts);

    /// <summary>These parts with what was found of the cell.</summary>
    public Shelf ShelfOf(IReadOnlyList<Part> parts) => new(
        parts,
        [
            new(new("cell"), [new(new("cell"), CellQuantities.OpenVolts, Estimate.Exact(4, Units.Volt, new Origin.Assumed("by hand")))], [], [])
            {
                Cell = new(new CellModel(CapacityAh * 3600, new ChargeCurve.Flat(4), new ChargeCurve.Flat(CellOhms), new ChargeCurve.Flat(0), 1, new ChargeCurve.Flat(0), 1), 40, 0.1, 0, 0, []),
            },
        ]);

    public PlantBuilder Builder
    {
        get
        {
            var work = new WorkPlan(WorkC, 20, 20, 4, 5, 220, Estimate.Exact(0, Units.WattPerKelvin, new Origin.Assumed("none")), Estimate.Exact(0, Units.Joule, new Origin.Assumed("none")));
            var built = PlantBuilder.For(Arrangement, Shelf, work);
            Assert.True(built.IsFine, string.Join(' ', built.Problems.Select(problem => problem.What)));
            return built.Value;
        }
    }

    public FaultAsk Ask => new(Builder, Arrangement, Shelf);

    public SafetyFindings Found(bool built = false) => SafetyCheck.Of(Arrangement, Shelf, built ? Builder : null);

    private static StatedValue Value(string quantity, double value, string unit, double plusMinus = 0) => new(quantity, value, unit, plusMinus, "measured", "by hand");

    private static Dictionary<string, string> Made(string? cells, string chemistry)
    {
        Dictionary<string, string> words = [];
        if (!string.IsNullOrEmpty(cells))
        {
            words["cells"] = cells;
        }

        if (chemistry.Length > 0)
        {
            words["chemistry"] = chemistry;
        }

        return words;
    }
}
