using System.Globalization;

namespace Heatwright.DemoTruth;

/// <summary>Discharge and pulse runs of the cells.</summary>
internal sealed class CellRuns(Hidden hidden, Bench bench)
{
    private const double StepS = 0.1;

    /// <summary>Emptied at about 1 A where nothing else is said, logged every 30 s; a loose clip takes volts away from two lines of one of them.</summary>
    public DemoRun Discharge(string name, bool looseClip, double aboutA = 1.0)
    {
        var (cell, x, run) = Begin(name, name + "-discharge-1");
        double now = 0;
        double amps = aboutA;
        while (true)
        {
            Log(run, cell, x, now, amps);
            if (Terminal(cell, x, amps) <= cell.CutoffV)
            {
                break;
            }

            Advance(cell, x, ref now, 30, amps);
            amps = aboutA + (0.002 * run.Noise.Bell());
        }

        foreach (int line in looseClip ? new[] { 87, 88 } : [])
        {
            double volts = double.Parse(run.Lines[line][1], CultureInfo.InvariantCulture) - 0.38 - (0.06 * (line - 87));
            run.Lines[line][1] = BenchMeter.Text(volts, 0.002);
        }

        return run;
    }

    /// <summary>Three pulses with rests at four charge levels, driven down between them at 1.5 A where nothing else is said.</summary>
    public DemoRun Pulses(string name, double[] pulsesA, double downA = 1.5)
    {
        var (cell, x, run) = Begin(name, name + "-pulses-1");
        double now = 0;
        Log(run, cell, x, now, 0);
        for (int level = 0; level < 4; level++)
        {
            foreach (double amps in pulsesA)
            {
                Phase(run, cell, x, ref now, amps, 60, 3);
                Phase(run, cell, x, ref now, 0, 120, 3);
            }

            if (level < 3)
            {
                double untilCharge = 0.75 - (0.25 * level);
                double seconds = Math.Round((x[0] - untilCharge) * hidden[name + ".capacity"] * 3600 / downA / 20) * 20;
                Phase(run, cell, x, ref now, downA, seconds, 20);
                Phase(run, cell, x, ref now, 0, 600, 20);
            }
        }

        return run;
    }

    private (TrueCell Cell, double[] State, DemoRun Run) Begin(string name, string id)
    {
        var cell = new TrueCell(hidden, name);
        double[] x = [1, 0, 0, hidden["air"]];
        var run = new DemoRun(hidden["seed"], id, new DemoColumn("time", "s", bench.Logger), new DemoColumn("volts", "V", bench.Logger),
            new DemoColumn("amps", "A", bench.Logger), new DemoColumn("cell degrees", "°C", bench.Logger));
        run.Settings["air"] = hidden["air"];
        return (cell, x, run);
    }

    /// <summary>One steady current; the board logs just before and just after it switches.</summary>
    private void Phase(DemoRun run, TrueCell cell, double[] x, ref double now, double amps, double seconds, double everyS)
    {
        double end = now + seconds;
        bool first = true;
        while (now < end - 1e-6)
        {
            double step = Math.Min(first ? 0.2 : everyS, end - now);
            Advance(cell, x, ref now, step, amps);
            Log(run, cell, x, now, amps);
            first = false;
        }
    }

    private void Advance(TrueCell cell, double[] x, ref double now, double seconds, double amps)
    {
        int steps = Math.Max(1, (int)Math.Round(seconds / StepS));
        for (int i = 0; i < steps; i++)
        {
            RungeKutta.Step(x, seconds / steps, (at, slope) => cell.Slope(at, slope, 0, amps, amps * amps, hidden["air"]));
        }

        now += seconds;
    }

    private static double Terminal(TrueCell cell, double[] x, double amps) => cell.BehindV(x, 0) - (amps * cell.AtOnceOhm(x, 0));

    private static void Log(DemoRun run, TrueCell cell, double[] x, double now, double amps) =>
        run.Read(now, Terminal(cell, x, amps), amps, x[3]);
}
