using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Heatwright.Numerics;
using Heatwright.Plant;

namespace Heatwright.Timings;

/// <summary>A warm-up fit of two nodes, 600 instants and two channels: the same search through the plant's own steps and through a general-purpose solver (CVODE) called from this process.</summary>
internal static class WarmUpTimings
{
    private const int Instants = 600;

    /// <summary>J/K, W/K, W/K, J/K, W/K: end, its loss, the link, grip, its loss. Invented.</summary>
    private static readonly double[] Truth = [12, 0.05, 0.02, 60, 0.18];

    /// <summary>So coarse that the solver is quick, so fine that six digits of the answer stand; looked for in each run.</summary>
    private static readonly double[] Tolerances = [1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-11];

    private delegate long WarmUp(int n, double[] t, double[] watts, double[] p, int adams, int steady, double tolerance, double[] end, double[] grip);

    public static void Run(TextWriter says, string folder)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"# The warm-up fit, beside a general-purpose solver\n\nTaken {TimeProvider.System.GetUtcNow():yyyy-MM-dd HH:mm} UTC. {Machine.Words()}\n\n");
        text.Append("Two nodes (end and grip), 600 instants, both read, five numbers searched from twice their truth by the product's own least squares, with the slopes that the plant's steps carry along; for the solver, which carries none, by differences. Invented readings with 0.05 K of noise. Solver: CVODE of SUNDIALS from timings/peer/warmup.c, called from the same process, by BDF with an analytic Jacobian and by Adams, whichever is quicker, at the coarsest tolerance whose answer has the same six digits; begun anew where the power changes. Best of several runs each.\n\n| power | ours, ms | solver, ms | tolerance | ratio | asked |\n| --- | --- | --- | --- | --- | --- |\n");
        foreach (bool steady in (bool[])[true, false])
        {
            Row(text, folder, steady);
        }

        says.Write(text);
        File.WriteAllText(Path.Combine(folder, "results", "warm-up.md"), text.ToString());
    }

    private static void Row(StringBuilder text, string folder, bool steady)
    {
        double[] times = [.. Enumerable.Range(0, Instants).Select(i => 2.0 * i)];
        double[] watts = [.. times.Select((_, i) => steady ? 10 : 10 + (3 * Math.Sin(0.7 * i)))];
        var random = new Random(20261127);
        double[][] read = [.. Plant(Truth, times, watts).Select(row => row.Select(rise => rise + (0.05 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()))).ToArray())];
        double[] ours = Fit(read, p => Plant(p, times, watts), p => Slopes(p, times, watts));
        double mine = Best(() => Fit(read, p => Plant(p, times, watts), p => Slopes(p, times, watts)));
        double best = double.PositiveInfinity, at = double.NaN;
        if (Solver(folder) is { } solver)
        {
            foreach (int adams in (int[])[0, 1])
            {
                foreach (double tolerance in Tolerances)
                {
                    double[][] Rises(double[] p)
                    {
                        double[] end = new double[Instants], grip = new double[Instants];
                        return solver(Instants, times, watts, p, adams, steady ? 1 : 0, tolerance, end, grip) < 0 ? throw new InvalidOperationException("CVODE gave up.") : [end, grip];
                    }

                    if (Fit(read, Rises).Zip(ours).All(pair => Math.Abs(pair.First - pair.Second) < 0.5e-6 * pair.Second))
                    {
                        double took = Best(() => Fit(read, Rises));
                        (best, at) = took < best ? (took, tolerance) : (best, at);
                        break;
                    }
                }
            }
        }

        text.Append(CultureInfo.InvariantCulture, $"| {(steady ? "constant" : "another at each instant")} | {mine:0.00} | {(double.IsFinite(best) ? best.ToString("0.0", CultureInfo.InvariantCulture) : "not here: needs gcc and libsundials-dev")} | {at:0E+0} | {best / mine:0} | {(steady ? 20 : 4)} |\n");
    }

    private static ThermalNetwork Network(double[] p) => new([new ThermalNode("end", p[0], p[1]), new ThermalNode("grip", p[3], p[4])], [new ThermalLink(0, 1, p[2])], 0);

    private static double[][] Plant(double[] p, double[] times, double[] watts) => WarmingRun.Run(Network(p), new Schedule(times, watts), times, 2)[..2];

    /// <summary>By the numbers searched, in the order of <see cref="Truth"/>.</summary>
    private static WarmingSlopes Slopes(double[] p, double[] times, double[] watts)
    {
        var network = Network(p);
        var slopes = new WarmingSlopes(network, [new(ThermalQuantity.HeatCapacity), new(ThermalQuantity.LinearLoss), new(ThermalQuantity.Link), new(ThermalQuantity.HeatCapacity, 1), new(ThermalQuantity.LinearLoss, 1)], times.Length);
        WarmingRun.Run(network, new Schedule(times, watts), times, 2, slopes);
        return slopes;
    }

    /// <summary>The same search for both; the plant's steps carry their slopes along, the solver's are taken by differences.</summary>
    private static double[] Fit(double[][] read, Func<double[], double[][]> rises, Func<double[], WarmingSlopes>? slopesOf = null)
    {
        static double[] Numbers(ReadOnlySpan<double> x)
        {
            double[] p = new double[x.Length];
            for (int j = 0; j < p.Length; j++)
            {
                p[j] = Math.Exp(x[j]);
            }

            return p;
        }

        var fit = LeastSquares.Fit(new LeastSquaresProblem(
            (x, r) =>
            {
                double[][] modelled = rises(Numbers(x));
                for (int i = 0; i < Instants; i++)
                {
                    r[i] = (modelled[0][i] - read[0][i]) * 20;
                    r[Instants + i] = (modelled[1][i] - read[1][i]) * 20;
                }
            },
            2 * Instants, [.. Truth.Select(value => Math.Log(2 * value))])
        {
            Jacobian = slopesOf is null ? null : (x, slopes) =>
            {
                var moved = slopesOf(Numbers(x));
                for (int i = 0, at = 0; i < 2 * Instants; i++)
                {
                    foreach (double slope in moved.At(i / Instants, i % Instants))
                    {
                        slopes[at++] = slope * 20;
                    }
                }
            },
        });
        return [.. fit.Parameters.Select(Math.Exp)];
    }

    private static double Best(Action run)
    {
        double best = double.PositiveInfinity;
        var all = Stopwatch.StartNew();
        for (int i = 0; i < 5 || (i < 200 && all.ElapsedMilliseconds < 3000); i++)
        {
            var watch = Stopwatch.StartNew();
            run();
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
        }

        return best;
    }

    private static WarmUp? Solver(string folder)
    {
        string library = Path.Combine(Path.GetTempPath(), "libheatwright-warmup.so");
        try
        {
            using var gcc = Process.Start("gcc", ["-O3", "-march=native", "-shared", "-fPIC", Path.Combine(folder, "peer", "warmup.c"), "-o", library, .. Peer.Libraries, "-lm"]);
            gcc.WaitForExit();
            return gcc.ExitCode == 0 ? Marshal.GetDelegateForFunctionPointer<WarmUp>(NativeLibrary.GetExport(NativeLibrary.Load(library), "warm_up")) : null;
        }
        catch (Exception error) when (error is Win32Exception or DllNotFoundException)
        {
            return null;
        }
    }
}
