using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Heatwright.Numerics;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Tests.Plant;

namespace Heatwright.Timings;

/// <summary>The engine against a plain C program on the same problem, in one run. Ratios are what counts; the seconds belong to the machine and its other work.</summary>
internal static class PlantTimings
{
    private const ulong Seed = 20251125;
    private const int Draws = 4096;

    /// <summary>Control period of the stepped-up tool; its lanes step as long.</summary>
    private const double PeriodS = 0.5;

    /// <summary>Measures, and keeps the table in a file.</summary>
    public static void Run(TextWriter output, string folder)
    {
        var text = new StringBuilder();
        text.Append("# The engine's speed, side by side with a plain C program\n\n");
        text.Append(Invariant($"Taken {TimeProvider.System.GetUtcNow():yyyy-MM-dd HH:mm} UTC. {Machine.Words()}\n\n"));
        text.Append("Mission B is invented: one cell with two RC pairs, a heater, four lumps, PI every 0.1 s on a reading in steps, work for 4 s every 20 s; 27 405 samples.\n");
        text.Append("Best of several runs each, after half a second of them, of the single missions two. Peer: timings/peer/mission.c, gcc -O3 -march=native: Runge-Kutta, one step a sample, best of 15; CVODE of SUNDIALS, BDF with an analytic Jacobian, begun anew at each sample, best of 3.\n\n| computation | ms | against | ratio |\n| --- | --- | --- | --- |\n");
        long before = GC.GetTotalAllocatedBytes(precise: true);
        Whole();
        double made = GC.GetTotalAllocatedBytes(precise: true) - before;
        double used = Process.GetCurrentProcess().PeakWorkingSet64;
        double? peer = Peer.Ms(folder, "rk4", "R20=0.7", "reps=15");
        double? peerSaturated = Peer.Ms(folder, "rk4", "R20=2.0", "reps=15");
        double? implicitly = Peer.Ms(folder, "bdf", "R20=0.7", "rtol=1e-7", "reps=3");
        int[] instants = [.. Enumerable.Range(0, 400).Select(i => 68 * i)];
        double one = Best(200, () => One(MissionB.Tool(), 0.1, instants), 2);
        Row("peer: plain C, one step a sample", peer, null, "");
        Row("peer: CVODE, relative tolerance 1e-7", implicitly, null, "");
        Row("one mission, events and trace at 400 instants, one thread", one, peer, "plain C");
        Row("the same", one, implicitly, "CVODE");
        Row("the same by the general stepper", Best(4, () => PlantRunner.Run(MissionB.Tool(), new RunSettings { StepS = 0.1 })), peer, "plain C");
        double drawn = Best(5, () => Many(Draws, 1, MissionDraw, 0.1, [], null)) / Draws;
        Row(Invariant($"one of {Draws} draws, events, one thread"), drawn, peer, "plain C");
        double two = Best(5, () => Many(Draws, 2, MissionDraw, 0.1, [], null)) / Draws;
        Row("the same on two threads, per draw", two, drawn, "one thread");
        double saturated = Best(100, () => One(MissionB.Tool(2.0), 0.1, instants), 2);
        Row("saturated mission (heater of 2 Ω)", saturated, peerSaturated, "plain C");
        Row("the same by the general stepper in steps of 0.1 s", Best(2, () => PlantRunner.Run(MissionB.Tool(2.0), new RunSettings { StepS = 0.1 })), saturated, "lanes (under 1: slower)");
        foreach (int count in (int[])[1024, 2048, 4096])
        {
            Row(Invariant($"{count} draws, one thread, in all"), Best(3, () => Many(count, 1, MissionDraw, 0.1, [], null)), null, "");
        }

        Row("10 000 whole charges of a stepped-up tool of three nodes, bands of 8 curves at 400 instants, two threads, in all", Best(3, Whole), 1000, "one second");
        var screening = new Screening();
        double oneByOne = Best(5, screening.OneByOne), lanes = Best(15, screening.InLanes);
        Row(Invariant($"steady points of {screening.Count} arrangements of a shelf at three charges, one by one, one thread, in all"), oneByOne, null, "");
        Row("the same in lanes", lanes, oneByOne, "one by one");
        Costs(text);
        text.Append(Invariant($"\nOf these points {screening.Rises.Count(double.IsNaN)} do not exist or were not found, {screening.Slow.Count(double.IsNaN)} one by one; the others differ by at most {screening.Worst:0.0E+0} K; {screening.Count / lanes / 1e3:0.00} million arrangements a second.\n"));
        text.Append(Invariant($"Memory of the 10 000 charges, taken before all others: {made / 1e6:0} MB made, most in use {used / 1e6:0} MB.\n"));
        text.Append("A row without a figure: no gcc here, or no CVODE (libsundials-dev).\n");
        output.Write(text);
        Directory.CreateDirectory(Path.Combine(folder, "results"));
        File.WriteAllText(Path.Combine(folder, "results", "plant.md"), text.ToString());

        void Row(string what, double? ms, double? against, string name) => text.Append(CultureInfo.InvariantCulture,
            $"| {what} | {(ms is { } value ? value.ToString("0.0000", CultureInfo.InvariantCulture) : "not here")} | {name} | {(ms is { } time && against is { } other ? (other / time).ToString("0.00", CultureInfo.InvariantCulture) : "")} |\n");
    }

    /// <summary>What more charge and more nodes cost, for an hour of the tool's time.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Costs(StringBuilder text)
    {
        foreach (int times in (int[])[1, 2, 4])
        {
            PerHour(Invariant($"of {times} times the charge"), tool => tool with { Pack = new PackModel(tool.Pack!.Cell, 1, times, tool.Pack.LoopOhm) });
        }

        foreach (int nodes in (int[])[2, 3, 4])
        {
            PerHour(Invariant($"of {nodes} nodes"), tool => WithNodes(tool, nodes));
        }

        void PerHour(string what, Func<AssembledTool, AssembledTool> change)
        {
            const int count = 1024;
            var results = new SwiftResult[count];
            double ms = Best(3, () => Many(count, 1, number => change(MissionDraw(number)), 0.1, [], null, results));
            double hours = results.Average(result => result.RunTimeS) / 3600;
            text.Append(Invariant($"| {count} draws {what}, {hours:0.00} h each, one thread: for an hour of the tool | {ms / hours:0.0000} |  |  |\n"));
        }
    }

    /// <summary>Ten thousand draws of mission B in lanes, each against the general stepper.</summary>
    public static void Check(TextWriter output, string folder)
    {
        const int count = 10_000;
        var results = new SwiftResult[count];
        Many(count, 2, MissionDraw, 0.1, [], null, results);
        double worst = 0;
        int worstAt = -1;
        int otherEnd = 0;
        var gate = new Lock();
        Parallel.For(0, count, i =>
        {
            var slow = PlantRunner.Run(MissionDraw(i), new RunSettings { StepS = 0.1 });
            double off = Math.Abs((results[i].RunTimeS / slow.RunTimeS) - 1);
            lock (gate)
            {
                otherEnd += slow.Stop == results[i].Stop ? 0 : 1;
                (worst, worstAt) = off > worst ? (off, i) : (worst, worstAt);
            }
        });
        string text = Invariant($"# Ten thousand draws in lanes, each against the general stepper\n\nTaken {TimeProvider.System.GetUtcNow():yyyy-MM-dd HH:mm} UTC. {Machine.Words()}\n\nMission B, seed {Seed}: worst relative difference of a run time {worst:0.00E+0} (draw {worstAt}), allowed 1E-4; draws that end for another reason: {otherEnd}.\n");
        output.Write(text);
        Directory.CreateDirectory(Path.Combine(folder, "results"));
        File.WriteAllText(Path.Combine(folder, "results", "plant-check.md"), text);
    }

    private static void One(AssembledTool tool, double stepS, int[] instants)
    {
        var results = new SwiftResult[1];
        SwiftBatch.Run(_ => tool, 0, 1, stepS, instants, new SwiftTrace(instants.Length, 1), results, default);
    }

    /// <summary>Ten thousand whole charges, and the range of 90 of 100 of all their curves.</summary>
    private static void Whole()
    {
        const int count = 10_000;
        int[] instants = [.. Enumerable.Range(0, 400).Select(i => 21 * i)];
        var trace = new SwiftTrace(instants.Length, count);
        Many(count, 2, SteppedUp, PeriodS, instants, trace);
        Drawn.Bands(trace, count, [.. instants.Select(step => step * PeriodS)], [.. Enumerable.Range(0, SwiftTrace.Curves).Select(curve => ($"{curve}", "", curve, Array.Empty<double>()))]);
    }

    private static void Many(int count, int threads, Func<int, AssembledTool> draw, double stepS, int[] instants, SwiftTrace? trace, SwiftResult[]? into = null)
    {
        var results = into ?? new SwiftResult[count];
        int width = SwiftBatch.Width;
        Parallel.For(0, (count + width - 1) / width, new ParallelOptions { MaxDegreeOfParallelism = threads },
            batch => SwiftBatch.Run(draw, batch * width, Math.Min(width, count - (batch * width)), stepS, instants, trace, results.AsSpan(batch * width), default));
    }

    /// <summary>The first nodes of a tool, and the links between them.</summary>
    private static AssembledTool WithNodes(AssembledTool tool, int nodes) => tool with
    {
        Network = tool.Network with { Nodes = [.. tool.Network.Nodes.Take(nodes)], Links = [.. tool.Network.Links.Where(link => Math.Max(link.A, link.B) < nodes)] },
    };

    private static double U(int cause, int number) => (2 * CounterRandom.Uniform(Seed, (ulong)cause, (ulong)number)) - 1;

    private static AssembledTool MissionDraw(int number) => MissionB.Tool(0.7, [.. MissionB.Doubtful.Select((doubt, cause) => 1 + (doubt * U(cause, number)))]);

    /// <summary>An invented tool of the dearest kind: step-up module, cells that warm and transfer charge, sensor with a lag, work that waits for the target and takes a set heat.</summary>
    private static AssembledTool SteppedUp(int number)
    {
        double F(int cause, double doubt) => 1 + (doubt * U(cause, number));
        var cell = new CellModel(2.1 * 3600 * F(0, 0.05), new ChargeCurve.Table([0, 0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 1], [2.9, 3.3, 3.44, 3.55, 3.65, 3.78, 3.97, 4.18]),
            new ChargeCurve.Table([0.05, 0.3, 1], [0.06 * F(1, 0.2), 0.04 * F(1, 0.2), 0.035 * F(1, 0.2)]), new ChargeCurve.Flat(0.02), 5, new ChargeCurve.Flat(0.015), 80)
        { ActivationJPerMol = 20_000, ChargeTransfer = true, LongHoldsAmps = true };
        return new(new PackModel(cell, 1, 2, 0.05 * F(2, 0.3)) { TripA = 20 },
            new PathModel.StepUp(9 * F(3, 0.02), 0.12, 0.15 * F(4, 0.3), 0.04 * F(5, 0.3), 9, 0.92, 2.2, 0.35),
            new LoadModel.Heater(6 * F(6, 0.04), 0.0006, 293.15),
            new ThermalNetwork([new("end", 6 * F(7, 0.1), 0.03 * F(8, 0.1), 0, 4e-4), new("grip", 40, 0.12), new("cells", 90, 0)], [new(0, 1, 0.012), new(1, 2, 0.1)], 293.15)
            { CellNode = 2, ElectronicsNode = 1, SensorLagS = 1.2 * F(9, 0.2) },
            new ControllerModel.Pi(550, PeriodS, 0.5, 0.02, 0, 6, 0.97) { StartW = 6 })
        {
            CutoffV = 2.9,
            CutoffOnlyWhileOn = true,
            DrainOnA = 0.02,
            DrainOffA = 0.02,
            TargetK = 540,
            MaxS = 4 * 3600,
            Work = new WorkPattern(0.06 * F(10, 0.1), 400, 0, 30, 5, 25 * F(11, 0.1)) { AfterTargetS = 4, Count = 1000 },
        };
    }

    /// <summary>Best of several runs, once the runtime has compiled for speed what is busy, which it does a while after it has begun to run.</summary>
    private static double Best(int runs, Action run, double warmS = 0.5)
    {
        long start = Stopwatch.GetTimestamp();
        do
        {
            run();
        }
        while (Stopwatch.GetElapsedTime(start).TotalSeconds < warmS);
        double best = double.PositiveInfinity;
        for (int i = 0; i < runs; i++)
        {
            start = Stopwatch.GetTimestamp();
            run();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return best;
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
