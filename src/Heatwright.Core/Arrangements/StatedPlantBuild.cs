using Heatwright.Plant;

namespace Heatwright.Arrangements;

/// <summary>A stated plant as the stepper wants it. What it is given was checked before; a fault here is an exception.</summary>
public static class StatedPlantBuild
{
    private const double Zero = 273.15;

    /// <summary>The bare plant.</summary>
    public static AssembledTool Tool(StatedPlant plant)
    {
        var heat = plant.Heat;
        string[] names = [.. heat.Nodes.Select(node => node.Name)];
        return new(Pack(plant.Pack), Path(plant.Path), Load(plant.Load), Network(heat, names), Controller(plant.Control))
        {
            Work = plant.Work is { } work ? Work(work, heat.AirC) : null,
            CutoffV = plant.End.CutoffV,
            CutoffOnlyWhileOn = plant.End.OnlyWhileOn,
            MaxS = plant.End.AtMostS,
            DrainOnA = plant.Pack.DrainOnA,
            DrainOffA = plant.Pack.DrainOffA,
            TargetK = plant.End.ReadyC + Zero ?? double.NaN,
            Marks = [.. plant.Marks.Select(mark => new HeatMark(mark.Name, mark.At == SensorWord ? -1 : Array.IndexOf(names, mark.At), mark.C + Zero, mark.Falling))],
        };
    }

    /// <summary>How a mark names the sensor.</summary>
    public const string SensorWord = "sensor";

    private static PackModel Pack(StatedPack pack)
    {
        var cell = pack.Cell;
        var model = new CellModel(cell.CapacityAh * 3600, Curve(cell.OpenV), Curve(cell.InstantOhm),
            Curve(cell.ShortOhm), cell.ShortS ?? 1, Curve(cell.LongOhm), cell.LongS ?? 1)
        {
            ShortTau = Tau(cell.ShortOhm, cell.ShortF),
            LongTau = Tau(cell.LongOhm, cell.LongF),
            ActivationJPerMol = cell.ActivationJPerMol,
            ReferenceK = cell.OhmsAtC + Zero,
        };
        return new(model, pack.Series, pack.Parallel, pack.LoopOhm) { StartCharge = pack.StartCharge, TripA = pack.TripA ?? double.PositiveInfinity };
    }

    private static ChargeCurve Curve(StatedCurve? curve) => curve switch
    {
        null => new ChargeCurve.Flat(0),
        { Flat: { } flat } => new ChargeCurve.Flat(flat),
        { Points: { } points } => new ChargeCurve.Table([.. points.Select(point => point[0])], [.. points.Select(point => point[1])]),
        { Formula: { } formula } => new ChargeCurve.Formula(formula.C0, formula.C1, formula.C2, formula.C3, formula.A, formula.B) { HeldBelow = formula.HeldBelow },
        _ => throw new ArgumentException("A curve is flat, points or a formula.", nameof(curve)),
    };

    private static ChargeCurve.Product? Tau(StatedCurve? ohm, StatedCurve? farad) =>
        ohm is not null && farad is not null ? new ChargeCurve.Product(Curve(ohm), Curve(farad)) : null;

    private static PathModel Path(StatedPath? path) => path?.StepUp is { } module
        ? new PathModel.StepUp(module.SetV, module.FixedW, module.DropV, module.SlopeOhm, module.LimitA ?? double.PositiveInfinity, module.MaxDuty, module.LockOutV, module.DiodeV)
        : new PathModel.Direct();

    private static LoadModel Load(StatedLoad load) => load switch
    {
        { Heater: { } heater } => new LoadModel.Heater(heater.Ohm, heater.AlphaPerK, heater.AtC + Zero),
        { CurrentA: { } amps } => new LoadModel.ConstantCurrent(amps),
        _ => throw new ArgumentException("A load is a heater or a current.", nameof(load)),
    };

    private static ThermalNetwork Network(StatedHeat heat, string[] names) => new(
        [.. heat.Nodes.Select(node => new ThermalNode(node.Name, node.JPerK, node.AirWPerK, node.AirWPerK125, node.RadiatingM2))],
        [.. heat.Links.Select(link => new ThermalLink(Array.IndexOf(names, link.From), Array.IndexOf(names, link.To), link.WPerK))],
        heat.AirC + Zero)
    {
        StartK = [.. heat.Nodes.Select(node => (node.StartC ?? heat.AirC) + Zero)],
        HeaterNode = Array.IndexOf(names, heat.HeaterNode),
        WorkingNode = Array.IndexOf(names, heat.WorkingNode),
        SensorNode = Array.IndexOf(names, heat.SensorNode),
        SensorLagS = heat.SensorLagS,
        CellNode = heat.CellNode is null ? -1 : Array.IndexOf(names, heat.CellNode),
        ElectronicsNode = heat.ElectronicsNode is null ? -1 : Array.IndexOf(names, heat.ElectronicsNode),
    };

    private static ControllerModel Controller(StatedControl control) => control switch
    {
        { Duty: { } duty } => new ControllerModel.Fixed(duty),
        { Pi: { } pi } => new ControllerModel.Pi(pi.TargetC + Zero, pi.PeriodS, pi.GainWPerK, pi.IntegralWPerKS, pi.TrackingPerS, pi.NominalOhm, pi.MaxDuty) { StartW = pi.StartW },
        _ => throw new ArgumentException("A control is a duty or a PI.", nameof(control)),
    };

    private static WorkPattern Work(StatedWork work, double airC) => new(work.ContactWPerK, (work.AboveC ?? airC) + Zero, work.FirstS, work.EveryS, work.ForS, work.NeedJ)
    {
        Count = work.Count ?? int.MaxValue,
        AfterTargetS = work.AfterReadyS ?? double.NaN,
    };
}
