using Heatwright.Numerics;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>Fills the lanes' numbers from as many tools as there are lanes.</summary>
internal static class SwiftFill
{
    public static void Coefs(ref SwiftCoefs c, AssembledTool[] tools, double stepS)
    {
        c.Shape = SwiftPlan.Shape(tools[0], stepS);
        Lanes Tool(Func<AssembledTool, double> of) => Each(tools, i => of(tools[i]));
        Lanes Pack(Func<PackModel, double> of) => Each(tools, i => of(tools[i].Pack!));
        Lanes Cell(Func<CellModel, double> of) => Each(tools, i => of(tools[i].Pack!.Cell));
        Lanes Heater(Func<LoadModel.Heater, double> of) => Each(tools, i => of((LoadModel.Heater)tools[i].Load));
        Lanes Module(Func<Physics.StepUpModule, double> of) => Each(tools, i => tools[i].Path is PathModel.StepUp up ? of(up.Module) : 0);
        Lanes Pi(Func<ControllerModel.Pi, double> of) => Each(tools, i => tools[i].Controller is ControllerModel.Pi pi ? of(pi) : 0);
        c.MinusSeries = Pack(pack => -pack.Series);
        c.PerString = Pack(pack => 1.0 / pack.Parallel);
        c.LoopOhm = Pack(pack => pack.LoopOhm);
        c.PackOverCell = Pack(pack => (double)pack.Parallel / pack.Series);
        c.CellsTimesOhm = Pack(pack => (double)pack.Parallel * pack.Series);
        c.MinusPerCapacity = Cell(cell => -stepS / cell.CapacityC);
        c.MinusPerCapacity *= c.Shape.UsesOhms ? Create(1.0) : c.PerString;
        c.ShortKeep = Cell(cell => Math.Exp(-stepS / cell.Tau1S));
        c.ShortTake = Cell(cell => 1 - Math.Exp(-stepS / cell.Tau1S));
        c.LongKeep = Cell(cell => Math.Exp(-stepS / cell.Tau2S));
        c.LongTake = Cell(cell => 1 - Math.Exp(-stepS / cell.Tau2S));
        c.Activation = Cell(cell => cell.ActivationJPerMol / Physics.Constants.GasJPerMolK);
        c.PerReferenceK = Cell(cell => 1 / cell.ReferenceK);
        c.KPerTransfer = Create(Physics.Constants.FaradayCPerMol / (2 * Physics.Constants.GasJPerMolK));
        SwiftAsinh.Give(ref c);
        c.DrainOnA = Tool(tool => tool.DrainOnA);
        c.MinusDrainOnA = -c.DrainOnA;
        c.DrainOffA = Tool(tool => tool.DrainOffA);
        c.HeaterSlope = Heater(heater => heater.Ohm * heater.AlphaPerK);
        c.HeaterAt = Each(tools, i => tools[i].Load is LoadModel.Heater heater ? heater.Ohm * (1 + (heater.AlphaPerK * (tools[i].Network.AmbientK - heater.ReferenceK))) : 0);
        c.LeastOhm = Heater(heater => 0.1 * heater.Ohm);
        c.SetV = Module(module => module.SetV);
        c.FixedW = Module(module => module.Loss.FixedW);
        c.DropV = Module(module => module.Loss.DropV);
        c.SlopeOhm = Module(module => module.Loss.SlopeOhm);
        c.LimitA = Module(module => module.PeakLimitA);
        c.RestSquared = Module(module => (1 - module.MaxDuty) * (1 - module.MaxDuty));
        c.LockOutV = Module(module => module.LockoutV);
        c.DiodeV = Module(module => module.DiodeV);
        c.ChangeA = Module(module => module.ChangeA);
        c.AboveFixedW = Module(module => module.Above.FixedW);
        c.AboveDropV = Module(module => module.Above.DropV);
        c.Gain = Pi(pi => pi.GainWPerK);
        c.Integral = Pi(pi => pi.IntegralWPerKS);
        c.IntegralStep = Pi(pi => pi.PeriodS * pi.IntegralWPerKS);
        c.Tracking = Pi(pi => pi.TrackingPerS);
        c.PeriodS = Pi(pi => pi.PeriodS);
        c.TargetC = Pi(pi => pi.TargetK - 273.15);
        c.MaxDuty = Pi(pi => pi.MaxDuty);
        c.MostW = Pi(pi => pi.MostW);
        c.PerNominalOhm = Pi(pi => 1 / pi.NominalOhm);
        c.NominalFullW = Pi(pi => double.IsNaN(pi.NominalV) ? 1 : pi.NominalV * pi.NominalV / pi.NominalOhm);
        c.MostNominalW = Pi(pi => Math.Min(pi.MaxDuty * (double.IsNaN(pi.NominalV) ? 1 : pi.NominalV * pi.NominalV / pi.NominalOhm), pi.MostW));
        c.AirC = Tool(tool => tool.Network.AmbientK - 273.15);
        c.AirK = Tool(tool => tool.Network.AmbientK);
        c.MinusAirK4 = Tool(tool => -Math.Pow(tool.Network.AmbientK, 4));
        c.MinusReadingStep = Tool(tool => -tool.Controller.ReadingStepK);
        c.PerReadingStep = Tool(tool => tool.Controller.ReadingStepK > 0 ? 1 / tool.Controller.ReadingStepK : 0);
        c.ContactWPerK = Tool(tool => tool.Work?.ContactWPerK ?? 0);
        c.AboveRise = Tool(tool => tool.Work is { } work ? work.AboveK - tool.Network.AmbientK : 0);
        c.StepS = Create(stepS);
        c.PerNominalFull = Create(1.0) / c.NominalFullW;
        c.PerStepS = Create(1 / stepS);
        Heat(ref c, tools, stepS);
    }

    /// <summary>One number a lane.</summary>
    public static Lanes Each(Func<int, double> of)
    {
        Span<double> values = stackalloc double[8];
        for (int i = 0; i < Lanes.Count; i++)
        {
            values[i] = of(i);
        }

        return Create<double>(values[..Lanes.Count]);
    }

    /// <summary>One number a lane; the same tool in every lane is asked once.</summary>
    private static Lanes Each(AssembledTool[] tools, Func<int, double> of)
    {
        bool same = true;
        foreach (var tool in tools)
        {
            same &= ReferenceEquals(tool, tools[0]);
        }

        return same ? Create(of(0)) : Each(of);
    }

    private static void Heat(ref SwiftCoefs c, AssembledTool[] tools, double stepS)
    {
        int[] order = SwiftPlan.Order(tools[0].Network);
        var steps = new ExponentialStep[Lanes.Count];
        double[][] rates = new double[Lanes.Count][];
        int size = 0;
        for (int i = 0; i < steps.Length; i++)
        {
            if (i > 0 && ReferenceEquals(tools[i].Network, tools[i - 1].Network))
            {
                (steps[i], rates[i]) = (steps[i - 1], rates[i - 1]);
                continue;
            }

            var matrices = new StepMatrices(tools[i].Network, 0);
            size = matrices.Size;
            (steps[i], rates[i]) = (matrices.For(stepS, false), matrices.WorkingRow());
        }

        int nodes = order.Length;
        Lanes A(int column) => column < nodes ? Each(tools, i => rates[i][order[column]]) : Create(0.0);
        Lanes halfStep = Create(stepS / 2);
        (c.Ahead0, c.Ahead1, c.Ahead2, c.Ahead3) = (halfStep * A(0), halfStep * A(1), halfStep * A(2), halfStep * A(3));
        c.PerWorkingJ = Each(tools, i => 1 / tools[i].Network.Nodes[tools[i].Network.WorkingNode].CapacityJPerK);
        c.AheadPerW = halfStep * c.PerWorkingJ;
        Lanes E(int row, int column) => row < nodes && column < nodes ? Each(tools, i => steps[i].Exp[(order[row] * size) + order[column]]) : Create(0.0);
        Lanes P(int row, int column) => row < nodes && column < nodes ? Each(tools, i => steps[i].Phi1[(order[row] * size) + order[column]] / tools[i].Network.Nodes[order[column]].CapacityJPerK) : Create(0.0);
        Lanes Rad(int at) => at < nodes ? Each(tools, i => tools[i].Network.Nodes[order[at]].RadiatingM2 * Physics.Constants.StefanBoltzmann) : Create(0.0);
        Lanes Con(int at) => at < nodes ? Each(tools, i => tools[i].Network.Nodes[order[at]].ConvectionWPerK125) : Create(0.0);
        (c.E00, c.E01, c.E02, c.E03) = (E(0, 0), E(0, 1), E(0, 2), E(0, 3));
        (c.E10, c.E11, c.E12, c.E13) = (E(1, 0), E(1, 1), E(1, 2), E(1, 3));
        (c.E20, c.E21, c.E22, c.E23) = (E(2, 0), E(2, 1), E(2, 2), E(2, 3));
        (c.E30, c.E31, c.E32, c.E33) = (E(3, 0), E(3, 1), E(3, 2), E(3, 3));
        (c.P00, c.P01, c.P02, c.P03) = (P(0, 0), P(0, 1), P(0, 2), P(0, 3));
        (c.P10, c.P11, c.P12, c.P13) = (P(1, 0), P(1, 1), P(1, 2), P(1, 3));
        (c.P20, c.P21, c.P22, c.P23) = (P(2, 0), P(2, 1), P(2, 2), P(2, 3));
        (c.P30, c.P31, c.P32, c.P33) = (P(3, 0), P(3, 1), P(3, 2), P(3, 3));
        (c.Rad0, c.Rad1, c.Rad2, c.Rad3) = (Rad(0), Rad(1), Rad(2), Rad(3));
        (c.Con0, c.Con1, c.Con2, c.Con3) = (Con(0), Con(1), Con(2), Con(3));
        (c.WorkingMinusRad, c.WorkingMinusCon) = c.Shape.WorksAtSecond ? (-c.Rad1, -c.Con1) : (-c.Rad0, -c.Con0);
        c.WorkingRadAir = c.WorkingMinusRad * c.MinusAirK4;
        if (c.Shape.Lags)
        {
            Lanes Sensor(int column) => column < nodes ? Each(tools, i => steps[i].Exp[(nodes * size) + order[column]]) : Create(0.0);
            Lanes Driven(int column) => column < nodes ? Each(tools, i => steps[i].Phi1[(nodes * size) + order[column]] / tools[i].Network.Nodes[order[column]].CapacityJPerK) : Create(0.0);
            (c.S0, c.S1, c.S2, c.S3) = (Sensor(0), Sensor(1), Sensor(2), Sensor(3));
            (c.SP0, c.SP1, c.SP2, c.SP3) = (Driven(0), Driven(1), Driven(2), Driven(3));
            c.SS = Each(tools, i => steps[i].Exp[(nodes * size) + nodes]);
        }
    }
}
