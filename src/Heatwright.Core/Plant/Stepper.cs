namespace Heatwright.Plant;

/// <summary>The one stepper: charge, RC volts and temperatures of an assembled tool, moved over one step in which duty and work stand still.</summary>
/// <remarks>Second-order exponential scheme of Cox and Matthews [cox-2002] (ETD2RK): conduction, linear losses, sensor lag and RC pairs
/// exactly, radiation, convection and electrical power by predictor and corrector. An explicit scheme would need a step shorter than the
/// fastest pair of nodes; this one does not, so a needle of 0.01 J/K is as safe as a blade.</remarks>
internal sealed class Stepper
{
    private readonly AssembledTool tool;
    private readonly StepMatrices matrices;
    private readonly PackFlow? cells;
    private readonly int nodes;
    private readonly int size;
    private readonly double ambientK;
    private readonly double[] push0;
    private readonly double[] push1;
    private readonly double[] guess;
    private readonly double[] next;
    private readonly Electrics solved;
    private readonly Electrics atEnd;
    private readonly CellState guessed;
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
        cells = tool.Pack is null ? null : new PackFlow(tool);
        (Members, int groups) = cells is null ? (1, 1) : (cells.Cells.Members.Length, cells.Cells.Groups);
        solved = new Electrics(Members, groups);
        atEnd = new Electrics(Members, groups);
        guessed = new CellState(Members);
    }

    /// <summary>Everything that moves. Temperatures are rises above ambient; a last one is the sensor's where it lags.</summary>
    public sealed class State(int size, int members)
    {
        public CellState Cells { get; } = new(members);

        public double[] Rises { get; } = new double[size];

        /// <summary>Changes whenever the state does, so that what was solved for it can be used again.</summary>
        public long Stamp { get; set; }

        /// <summary>Charge left of the emptiest cell.</summary>
        public double ChargeLeft => Cells.Least;

        public void CopyFrom(State other)
        {
            Cells.CopyFrom(other.Cells);
            other.Rises.CopyTo(Rises, 0);
            Stamp = other.Stamp;
        }
    }

    /// <summary>Energies of one step, J and C.</summary>
    public struct Tally
    {
        public double LoadJ;
        public double LightJ;
        public double TerminalJ;
        public double BehindOhmsJ;
        public double CellLossJ;
        public double LoopLossJ;
        public double PathLossJ;
        public double DrainJ;
        public double WorkJ;
        public double AirJ;
        public double ChargeC;

        /// <param name="storedJ">Heat that is left in the lumps.</param>
        public readonly Energies Energies(double storedJ) => new()
        {
            LoadJ = LoadJ,
            LightJ = LightJ,
            TerminalJ = TerminalJ,
            BehindOhmsJ = BehindOhmsJ,
            CellLossJ = CellLossJ,
            LoopLossJ = LoopLossJ,
            PathLossJ = PathLossJ,
            DrainJ = DrainJ,
            WorkJ = WorkJ,
            AirJ = AirJ,
            StoredJ = storedJ,
            ChargeC = ChargeC,
        };
    }

    /// <summary>What flows at one instant.</summary>
    internal struct Flow
    {
        public double MeanA;
        public double TerminalW;
        public double LoadW;
        public double LightW;
        public double BehindOhmsW;
        public double CellW;
        public double LoopW;
        public double PathW;
        public double DrainW;
        public double WorkW;
        public double AirW;
    }

    public int Size => size;

    /// <summary>Distinct cells of the pack.</summary>
    public int Members { get; }

    public State Begin()
    {
        var state = new State(size, Members);
        cells?.Begin(state.Cells);
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
    public OnState OnStateAt(State state, double drive) => ElectricsAt(state, drive).On;

    /// <summary>All that the electrics came to at a state.</summary>
    public Electrics ElectricsAt(State state, double drive)
    {
        if (solvedStamp != state.Stamp || solvedDrive != drive)
        {
            cells?.Solve(state.Cells, state.Rises, drive, solved);
            solvedStamp = state.Stamp;
            solvedDrive = drive;
        }

        return solved;
    }

    /// <summary>Moves <paramref name="state"/> by h seconds and adds what flowed to <paramref name="tally"/>.</summary>
    /// <param name="state">Where from, and where to.</param>
    /// <param name="h">Seconds.</param>
    /// <param name="duty">Duty over the step.</param>
    /// <param name="working">Work is pressed on over the step.</param>
    /// <param name="drive">Recorded current or power over the step; unused by other loads.</param>
    /// <param name="tally">What flowed so far.</param>
    public void Advance(State state, double h, double duty, bool working, double drive, ref Tally tally)
    {
        bool pressed = working && state.Rises[tool.Network.WorkingNode] + ambientK > tool.Work!.AboveK;
        var exact = matrices.For(h, pressed);
        var here = ElectricsAt(state, drive);
        var start = FlowAt(here, state.Cells, state.Rises, duty, pressed, drive, push0);
        Apply(exact.Exp, state.Rises, guess);
        AddApplied(exact.Phi1, push0, guess);
        cells?.Predict(here, state.Cells, start.MeanA, h, guessed);
        cells?.Solve(guessed, guess, drive, atEnd);
        var end = FlowAt(atEnd, guessed, guess, duty, pressed, drive, push1);
        for (int i = 0; i < size; i++)
        {
            push1[i] -= push0[i];
        }

        guess.CopyTo(next, 0);
        AddApplied(exact.Phi2, push1, next);
        next.CopyTo(state.Rises, 0);
        cells?.Correct(atEnd, guessed, end.MeanA, h, state.Cells);
        state.Stamp = ++stamps;
        Add(ref tally, start, end, h);
    }

    private static void Add(ref Tally tally, in Flow a, in Flow b, double h)
    {
        double half = h / 2;
        tally.LoadJ += half * (a.LoadW + b.LoadW);
        tally.LightJ += half * (a.LightW + b.LightW);
        tally.TerminalJ += half * (a.TerminalW + b.TerminalW);
        tally.BehindOhmsJ += half * (a.BehindOhmsW + b.BehindOhmsW);
        tally.CellLossJ += half * (a.CellW + b.CellW);
        tally.LoopLossJ += half * (a.LoopW + b.LoopW);
        tally.PathLossJ += half * (a.PathW + b.PathW);
        tally.DrainJ += half * (a.DrainW + b.DrainW);
        tally.WorkJ += half * (a.WorkW + b.WorkW);
        tally.AirJ += half * (a.AirW + b.AirW);
        tally.ChargeC += half * (a.MeanA + b.MeanA);
    }

    private Flow FlowAt(Electrics at, CellState state, double[] rises, double duty, bool pressed, double drive, double[] push)
    {
        var flow = default(Flow);
        var network = tool.Network;
        Array.Clear(push);
        if (cells is null)
        {
            flow.LoadW = drive;
        }
        else
        {
            cells.Flow(at, state, duty, ref flow);
            if (network.CellNode >= 0)
            {
                push[network.CellNode] += flow.CellW;
            }

            if (network.ElectronicsNode >= 0)
            {
                push[network.ElectronicsNode] += flow.PathW + flow.LoopW;
            }
        }

        if (network.HeaterNode >= 0)
        {
            push[network.HeaterNode] += flow.LoadW - flow.LightW;
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

    private void Apply(double[] matrix, double[] from, double[] to)
    {
        Array.Clear(to, 0, size);
        AddApplied(matrix, from, to);
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
