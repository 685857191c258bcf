using Heatwright.Numerics;

namespace Heatwright.Plant;

/// <summary>The one stepper: charge, RC volts and temperatures of an assembled tool, moved over one step in which duty and work stand still.</summary>
/// <remarks>Second-order exponential scheme of Cox and Matthews [cox-2002] (ETD2RK): conduction, linear losses, sensor lag and RC pairs
/// exactly, radiation, convection and electrical power by predictor and corrector. An explicit scheme would need a step shorter than the
/// fastest pair of nodes; this one does not, so a needle of 0.01 J/K is as safe as a blade.</remarks>
internal sealed class Stepper
{
    private readonly AssembledTool tool;
    private readonly StepMatrices matrices;
    private readonly int nodes;
    private readonly int size;
    private readonly double ambientK;
    private readonly double[] push0;
    private readonly double[] push1;
    private readonly double[] guess;
    private readonly double[] next;
    private OnState solved;
    private double solvedCellOhm;
    private double solvedFactor;
    private double solvedDrive;
    private long solvedStamp = -1;
    private long stamps;

    public Stepper(AssembledTool tool)
    {
        this.tool = tool;
        nodes = tool.Network.Nodes.Count;
        ambientK = tool.Network.AmbientK;
        matrices = new StepMatrices(tool.Network, tool.Work?.ContactWPerK ?? 0);
        size = matrices.Size;
        push0 = new double[size];
        push1 = new double[size];
        guess = new double[size];
        next = new double[size];
    }

    /// <summary>Everything that moves. Temperatures are rises above ambient; a last one is the sensor's where it lags.</summary>
    public sealed class State(int size)
    {
        public double ChargeLeft { get; set; } = 1;

        public double ShortV { get; set; }

        public double LongV { get; set; }

        public double[] Rises { get; } = new double[size];

        /// <summary>Changes whenever the state does, so that what was solved for it can be used again.</summary>
        public long Stamp { get; set; }

        public void CopyFrom(State other)
        {
            ChargeLeft = other.ChargeLeft;
            ShortV = other.ShortV;
            LongV = other.LongV;
            other.Rises.CopyTo(Rises, 0);
            Stamp = other.Stamp;
        }
    }

    /// <summary>Energies of one step, J and C.</summary>
    public struct Tally
    {
        public double LoadJ;
        public double TerminalJ;
        public double BehindOhmsJ;
        public double CellLossJ;
        public double LoopLossJ;
        public double PathLossJ;
        public double WorkJ;
        public double AirJ;
        public double ChargeC;
    }

    /// <summary>What flows at one instant.</summary>
    private struct Flow
    {
        public OnState On;
        public double MeanA;
        public double TerminalW;
        public double ShortOhm;
        public double LongOhm;
        public double LoadW;
        public double BehindOhmsW;
        public double CellW;
        public double LoopW;
        public double PathW;
        public double WorkW;
        public double AirW;
    }

    public int Size => size;

    public State Begin()
    {
        var state = new State(size) { ChargeLeft = tool.Pack?.StartCharge ?? 1 };
        for (int i = 0; i < tool.Network.StartK.Count; i++)
        {
            state.Rises[i] = tool.Network.StartK[i] - ambientK;
        }

        if (size > nodes)
        {
            state.Rises[nodes] = state.Rises[tool.Network.SensorNode];
        }

        return state;
    }

    /// <summary>What the sensor shows, K.</summary>
    public double SensorK(State state) => ambientK + state.Rises[size > nodes ? nodes : tool.Network.SensorNode];

    /// <summary>The on-state algebra at a state.</summary>
    public OnState OnStateAt(State state, double driveA)
    {
        if (solvedStamp != state.Stamp || solvedDrive != driveA)
        {
            solved = Electric(state.ChargeLeft, state.ShortV, state.LongV, state.Rises, driveA, out solvedCellOhm, out solvedFactor);
            solvedStamp = state.Stamp;
            solvedDrive = driveA;
        }

        return solved;
    }

    /// <summary>Moves <paramref name="state"/> by h seconds and adds what flowed to <paramref name="tally"/>.</summary>
    /// <param name="duty">Duty over the step.</param>
    /// <param name="working">Work is pressed on over the step.</param>
    /// <param name="drive">Recorded current or power over the step; unused by other loads.</param>
    public void Advance(State state, double h, double duty, bool working, double drive, ref Tally tally)
    {
        bool pressed = working && state.Rises[tool.Network.WorkingNode] + ambientK > tool.Work!.AboveK;
        var exact = matrices.For(h, pressed);
        var on = OnStateAt(state, drive);
        var start = FlowAt(on, solvedCellOhm, solvedFactor, state.ChargeLeft, state.ShortV, state.LongV, state.Rises, duty, pressed, drive, push0);
        Apply(exact.Exp, state.Rises, guess);
        AddApplied(exact.Phi1, push0, guess);

        double charge = state.ChargeLeft;
        double shortV = state.ShortV;
        double longV = state.LongV;
        double parallel = 1;
        double fadeShort = 0;
        double fadeLong = 0;
        double shortS = 1;
        double longS = 1;
        if (tool.Pack is { } pack)
        {
            parallel = pack.Parallel;
            shortS = pack.Cell.ShortTau?.At(charge) ?? pack.Cell.Tau1S;
            longS = pack.Cell.LongTau?.At(charge) ?? pack.Cell.Tau2S;
            fadeShort = 1 - Math.Exp(-h / shortS);
            fadeLong = 1 - Math.Exp(-h / longS);
            charge -= start.MeanA / parallel * h / pack.Cell.CapacityC;
            shortV += ((start.ShortOhm * start.MeanA / parallel) - shortV) * fadeShort;
            longV += ((start.LongOhm * start.MeanA / parallel) - longV) * fadeLong;
        }

        var onAtEnd = Electric(charge, shortV, longV, guess, drive, out double endCellOhm, out double endFactor);
        var end = FlowAt(onAtEnd, endCellOhm, endFactor, charge, shortV, longV, guess, duty, pressed, drive, push1);
        for (int i = 0; i < size; i++)
        {
            push1[i] -= push0[i];
        }

        guess.CopyTo(next, 0);
        AddApplied(exact.Phi2, push1, next);
        next.CopyTo(state.Rises, 0);
        if (tool.Pack is { } source)
        {
            state.ChargeLeft -= (start.MeanA + end.MeanA) / 2 / parallel * h / source.Cell.CapacityC;
            double shortDrive = Drive(source.Cell.ShortTau, shortS, charge, shortV, end.ShortOhm * end.MeanA / parallel);
            double longDrive = Drive(source.Cell.LongTau, longS, charge, longV, end.LongOhm * end.MeanA / parallel);
            state.ShortV = shortV + ((shortDrive - (start.ShortOhm * start.MeanA / parallel)) * SecondPhi(h / shortS, fadeShort));
            state.LongV = longV + ((longDrive - (start.LongOhm * start.MeanA / parallel)) * SecondPhi(h / longS, fadeLong));
        }

        state.Stamp = ++stamps;
        Add(ref tally, start, end, h);
    }

    /// <summary>What a pair is driven towards at the end of a step that was taken with the time constant of its start.</summary>
    private static double Drive(ChargeCurve? tau, double startS, double charge, double volts, double drivenV)
    {
        double share = tau is null ? 1 : startS / tau.At(charge);
        return (share * drivenV) + ((1 - share) * volts);
    }

    /// <summary>φ₂(−z)·z for a scalar decay: how much of a rising drive has arrived after the step.</summary>
    private static double SecondPhi(double z, double fade) => z < 1e-4 ? (z / 2) - (z * z / 6) : 1 - (fade / z);

    private static void Add(ref Tally tally, in Flow a, in Flow b, double h)
    {
        double half = h / 2;
        tally.LoadJ += half * (a.LoadW + b.LoadW);
        tally.TerminalJ += half * (a.TerminalW + b.TerminalW);
        tally.BehindOhmsJ += half * (a.BehindOhmsW + b.BehindOhmsW);
        tally.CellLossJ += half * (a.CellW + b.CellW);
        tally.LoopLossJ += half * (a.LoopW + b.LoopW);
        tally.PathLossJ += half * (a.PathW + b.PathW);
        tally.WorkJ += half * (a.WorkW + b.WorkW);
        tally.AirJ += half * (a.AirW + b.AirW);
        tally.ChargeC += half * (a.MeanA + b.MeanA);
    }

    private Flow FlowAt(OnState on, double cellOhm, double factor, double charge, double shortV, double longV, double[] rises, double duty, bool pressed, double drive, double[] push)
    {
        var flow = default(Flow);
        var network = tool.Network;
        Array.Clear(push);
        if (tool.Pack is { } pack)
        {
            flow.On = on;
            double onA = flow.On.PackA;
            double outA = onA + tool.DrainOnA;
            double offA = tool.DrainOffA;
            flow.MeanA = (duty * outA) + ((1 - duty) * offA);
            double cellK = network.CellNode >= 0 ? ambientK + rises[network.CellNode] : ambientK;
            flow.ShortOhm = pack.Cell.ShortOhm(pack.Cell.R1Ohm.At(charge) * factor, flow.MeanA / pack.Parallel, cellK);
            flow.LongOhm = pack.Cell.R2Ohm.At(charge) * factor;
            flow.LoadW = duty * flow.On.LoadW;
            double behindV = flow.On.TerminalV + (outA * cellOhm);
            flow.BehindOhmsW = flow.MeanA * behindV;
            flow.TerminalW = (duty * outA * flow.On.TerminalV) + ((1 - duty) * offA * (behindV - (offA * cellOhm)));
            double cells = pack.Series * pack.Parallel;
            flow.CellW = (((duty * outA * outA) + ((1 - duty) * offA * offA)) * cellOhm)
                + (cells * ((shortV * shortV / Math.Max(flow.ShortOhm, 1e-12)) + (longV * longV / Math.Max(flow.LongOhm, 1e-12))));
            flow.LoopW = duty * onA * onA * pack.LoopOhm;
            flow.PathW = duty * flow.On.PathLossW;
            if (network.CellNode >= 0)
            {
                push[network.CellNode] += flow.CellW;
            }

            if (network.ElectronicsNode >= 0)
            {
                push[network.ElectronicsNode] += flow.PathW + flow.LoopW;
            }
        }
        else
        {
            flow.LoadW = drive;
        }

        if (network.HeaterNode >= 0)
        {
            push[network.HeaterNode] += flow.LoadW;
        }

        for (int i = 0; i < nodes; i++)
        {
            var node = network.Nodes[i];
            double rise = rises[i];
            double toAir = node.LinearWPerK * rise;
            double curved = 0;
            if (node.ConvectionWPerK125 > 0)
            {
                double size = Math.Abs(rise);
                curved += node.ConvectionWPerK125 * rise * Math.Sqrt(Math.Sqrt(size)); // Δ^1.25 = Δ·Δ^¼
            }

            if (node.RadiatingM2 > 0)
            {
                double hot = ambientK + rise;
                hot *= hot;
                double cold = ambientK * ambientK;
                curved += node.RadiatingM2 * Physics.Constants.StefanBoltzmann * ((hot * hot) - (cold * cold));
            }

            flow.AirW += toAir + curved;
            push[i] = (push[i] - curved) / node.CapacityJPerK;
        }

        if (pressed)
        {
            double aboveRise = tool.Work!.AboveK - ambientK;
            flow.WorkW = tool.Work.ContactWPerK * (rises[network.WorkingNode] - aboveRise);
            push[network.WorkingNode] += tool.Work.ContactWPerK * aboveRise / network.Nodes[network.WorkingNode].CapacityJPerK;
        }

        return flow;
    }

    private OnState Electric(double charge, double shortV, double longV, double[] rises, double driveA, out double cellOhm, out double factor)
    {
        if (tool.Pack is not { } pack)
        {
            cellOhm = 0;
            factor = 1;
            return default;
        }

        double cellK = tool.Network.CellNode >= 0 ? ambientK + rises[tool.Network.CellNode] : ambientK;
        factor = pack.Cell.OhmsFactor(cellK);
        cellOhm = pack.Cell.R0Ohm.At(charge) * factor * pack.Series / pack.Parallel;
        // The drain is taken at the cells and sags them; the path sees what is left.
        double openV = (pack.Series * (pack.Cell.OpenV.At(charge) - shortV - longV)) - (tool.DrainOnA * cellOhm);
        return tool.Load switch
        {
            LoadModel.Heater heater => PowerPath.Solve(openV, cellOhm, pack.LoopOhm, tool.Path,
                heater.OhmAt(ambientK + (tool.Network.HeaterNode >= 0 ? rises[tool.Network.HeaterNode] : 0))),
            LoadModel.ConstantCurrent constant => PowerPath.Drawing(openV, cellOhm, pack.LoopOhm, constant.Amps),
            LoadModel.RecordedCurrent => PowerPath.Drawing(openV, cellOhm, pack.LoopOhm, driveA),
            _ => throw new InvalidOperationException($"A pack cannot drive a load of kind {tool.Load.GetType().Name}."),
        };
    }

    private void Apply(double[] matrix, double[] from, double[] to)
    {
        for (int row = 0; row < size; row++)
        {
            double sum = 0;
            int start = row * size;
            for (int column = 0; column < size; column++)
            {
                sum += matrix[start + column] * from[column];
            }

            to[row] = sum;
        }
    }

    private void AddApplied(double[] matrix, double[] from, double[] to)
    {
        for (int row = 0; row < size; row++)
        {
            double sum = to[row];
            int start = row * size;
            for (int column = 0; column < size; column++)
            {
                sum += matrix[start + column] * from[column];
            }

            to[row] = sum;
        }
    }
}
