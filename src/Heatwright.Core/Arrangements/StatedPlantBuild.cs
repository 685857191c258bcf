using Heatwright.Physics;
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
        return new(Pack(plant.Pack, plant.End), Path(plant.Path), Load(plant), Network(heat, names), Controller(plant))
        {
            Charger = plant.Charger is { } charger ? Charger(charger) : null,
            BrownOutV = plant.End.BrownOutV,
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

    private static PackModel Pack(StatedPack pack, StatedEnd end)
    {
        var alike = Cell(pack.Cell, new StatedMember());
        return new(alike, pack.Series, pack.Parallel, pack.LoopOhm)
        {
            StartCharge = pack.StartCharge,
            TripA = pack.TripA ?? double.PositiveInfinity,
            CellCutoffV = end.CellCutoffV,
            CellMostV = end.CellMostV ?? double.PositiveInfinity,
            Groups = [.. pack.Groups.Select(group => new CellGroup([.. group.Select(member => Cell(pack.Cell, member))]))],
        };
    }

    private static CellModel Cell(StatedCell cell, StatedMember member)
    {
        ChargeCurve Ohms(StatedCurve? curve) => member.OhmFactor == 1 ? Curve(curve) : Curve(curve).Times(member.OhmFactor);
        return new(cell.CapacityAh * 3600 * member.CapacityFactor, Curve(cell.OpenV), Ohms(cell.InstantOhm), Ohms(cell.ShortOhm), cell.ShortS ?? 1, Ohms(cell.LongOhm), cell.LongS ?? 1)
        {
            ShortTau = Tau(cell.ShortOhm, cell.ShortF),
            LongTau = Tau(cell.LongOhm, cell.LongF),
            ChargeTransfer = cell.ChargeTransfer,
            LongHoldsAmps = cell.LongHoldsAmps,
            StartCharge = member.StartCharge,
            ActivationJPerMol = cell.ActivationJPerMol,
            ReferenceK = cell.OhmsAtC + Zero,
        };
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

    private static PathModel Path(StatedPath? path) => path switch
    {
        null => new PathModel.Direct(),
        { StepUp: { } up } => new PathModel.StepUp(new StepUpModule(up.SetV, new(up.FixedW, up.DropV, up.SlopeOhm))
        {
            PeakLimitA = up.LimitA ?? double.PositiveInfinity,
            MaxDuty = up.MaxDuty,
            LockoutV = up.LockOutV,
            DiodeV = up.DiodeV,
            ThroughOhm = up.ThroughOhm,
        }),
        { StepDown: { } down } => new PathModel.StepDown(new StepDownModule(down.SetV, new(down.FixedW, down.DropV, down.SlopeOhm))
        {
            LimitA = down.LimitA ?? double.PositiveInfinity,
            MaxDuty = down.MaxDuty,
            LockoutV = down.LockOutV,
        }),
        { StepUpDown: { } both } => new PathModel.StepUpDown(new StepUpDownModule(both.SetV, new(both.FixedW, both.DropV, both.SlopeOhm))
        {
            LimitA = both.LimitA ?? double.PositiveInfinity,
            LockoutV = both.LockOutV,
        }),
        { Linear: { } linear } => new PathModel.Linear(new LinearModule(linear.SetV, linear.DropoutV)
        {
            QuiescentA = linear.QuiescentA,
            LimitA = linear.LimitA ?? double.PositiveInfinity,
        }),
        _ => throw new ArgumentException("A path is exactly one module.", nameof(path)),
    };

    private static LoadModel Load(StatedPlant plant) => plant.Load switch
    {
        { Heater: { } heater } => new LoadModel.Heater(heater.Ohm, heater.AlphaPerK, heater.AtC + Zero),
        { SelfLimiting: { } limiting } => new LoadModel.SelfLimiting(limiting.LeastOhm, limiting.SwitchC + Zero, limiting.SteepnessPerK),
        { CurrentA: { } amps } => new LoadModel.ConstantCurrent(amps),
        { PowerW: { } watts } => new LoadModel.ConstantPower(watts),
        { VoltsAmps: { } table } => new LoadModel.VoltsAmps(new VoltsAmpsTable([.. table.Select(pair => pair[0])], [.. table.Select(pair => pair[1])])),
        null when plant.Charger is not null => new LoadModel.ConstantCurrent(0),
        _ => throw new ArgumentException("A load is exactly one of heater, self-limiting heater, current, power and table.", nameof(plant)),
    };

    private static ChargerModel Charger(StatedCharger charger) => new(charger.SetA, charger.HoldV, charger.EndA)
    {
        GentleBelowV = charger.GentleBelowV,
        GentleA = charger.GentleA,
        Heat = charger.Heat is { } heat ? new ChargerHeat(heat.InV, heat.HoldsC, heat.AirC, heat.KPerW) : null,
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

    private static ControllerModel Controller(StatedPlant plant)
    {
        var control = plant.Control;
        ControllerModel model = control switch
        {
            { Duty: { } duty } => new ControllerModel.Fixed(duty),
            { Pi: { } pi } => new ControllerModel.Pi(pi.TargetC + Zero, pi.PeriodS, pi.GainWPerK, pi.IntegralWPerKS, pi.TrackingPerS, pi.NominalOhm, pi.MaxDuty)
            {
                StartW = pi.StartW,
                DerivativeWSPerK = pi.DerivativeWSPerK,
                FilterS = pi.FilterS,
                MostW = pi.MostW ?? double.PositiveInfinity,
                NominalV = pi.NominalV ?? double.NaN,
            },
            { OnOff: { } onOff } => new ControllerModel.OnOff(onOff.LowC + Zero, onOff.HighC + Zero) { Duty = onOff.Duty, PeriodS = onOff.PeriodS, StartsOn = !onOff.StartsOff },
            null when plant.Charger is not null => new ControllerModel.Fixed(1),
            _ => throw new ArgumentException("A control is exactly one of duty, pi and onOff.", nameof(plant)),
        };
        return control is null ? model : model with
        {
            ReadingStepK = control.ReadingStepK,
            IdleAfterS = control.IdleAfterS ?? double.PositiveInfinity,
            IdleK = control.IdleC + Zero ?? 0,
        };
    }

    private static WorkPattern Work(StatedWork work, double airC) => new(work.ContactWPerK, (work.AboveC ?? airC) + Zero, work.FirstS, work.EveryS, work.ForS, work.NeedJ)
    {
        Count = work.Count ?? int.MaxValue,
        AfterTargetS = work.AfterReadyS ?? double.NaN,
    };
}
