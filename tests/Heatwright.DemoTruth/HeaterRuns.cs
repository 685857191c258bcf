namespace Heatwright.DemoTruth;

/// <summary>Cold ohms, hot ohms and warm-up runs of the heaters.</summary>
internal sealed class HeaterRuns(Hidden hidden, Bench bench)
{
    private const double StepS = 0.05;

    /// <summary>Five readings on an ohmmeter; its leads shorted read 0.21 Ω. On one the meter showed its overload mark.</summary>
    public DemoRun Cold(string name, bool overload)
    {
        var run = new DemoRun(hidden["seed"], name + "-cold-1", new DemoColumn("ohms", "Ω", bench.Meter));
        run.Settings["leads"] = 0.21;
        run.Settings["at"] = hidden["air"];
        var end = new TrueEnd(hidden, name);
        for (int i = 0; i < 6; i++)
        {
            run.Read(end.Ohm(hidden["air"]) + 0.21 + (0.004 * run.Noise.Bell()));
        }

        if (overload)
        {
            run.Lines[2][0] = "OL";
        }

        return run;
    }

    /// <summary>Held at several powers until nothing moved, then read.</summary>
    public DemoRun Hot(string name, double[] volts)
    {
        var run = new DemoRun(hidden["seed"], name + "-hot-1", new DemoColumn("volts", "V", bench.Meter), new DemoColumn("amps", "A", bench.Meter),
            new DemoColumn("degrees", "°C", bench.Thermometer));
        var (end, x) = Begin(name);
        foreach (double supplyV in volts)
        {
            Advance(end, x, 400, supplyV);
            double ohm = end.Ohm(x[TrueEnd.Core]);
            run.Read(supplyV, supplyV / ohm, x[TrueEnd.Probe]);
        }

        return run;
    }

    /// <summary>Up at steady volts until the probe is 25 K over the job's target, then off; logged every few seconds.</summary>
    public DemoRun UpAndDown(string name, double supplyV, double everyS = 2, double coolS = 150)
    {
        var run = Log(name + "-up-and-down-1", bench.Logger);
        var (end, x) = Begin(name);
        bool off = false;
        double offS = double.PositiveInfinity;
        for (double now = 0; now <= offS + coolS; now += everyS)
        {
            double volts = off ? 0 : supplyV * (1 + (0.0005 * run.Noise.Bell()));
            run.Read(now, volts, volts / end.Ohm(x[TrueEnd.Core]), x[TrueEnd.Probe], x[TrueEnd.Grip]);
            if (!off && (now >= 600 || x[TrueEnd.Probe] >= hidden.Scene.Job.TargetC + 25)) // it may never get there: the maker gives up after ten minutes
            {
                off = true;
                offS = now;
                run.Read(now + 0.2, 0, 0, x[TrueEnd.Probe], x[TrueEnd.Grip]);
            }

            Advance(end, x, everyS, off ? 0 : supplyV);
        }

        return run;
    }

    /// <summary>Fifteen minutes at about the power that holds it hot, so that the grip has time to show what it gets; every 10 s.</summary>
    public DemoRun Hold(string name, double supplyV)
    {
        var run = Log(name + "-hold-1", bench.Logger);
        var (end, x) = Begin(name);
        for (double now = 0; now <= 900; now += 10)
        {
            run.Read(now, supplyV, supplyV / end.Ohm(x[TrueEnd.Core]), x[TrueEnd.Probe], x[TrueEnd.Grip]);
            Advance(end, x, 10, supplyV);
        }

        return run;
    }

    /// <summary>Typed by hand at odd moments, with a decimal comma.</summary>
    public DemoRun ByHand(string name, double supplyV)
    {
        var run = Log(name + "-by-hand-1", bench.Watch);
        var (end, x) = Begin(name);
        double now = 0;
        foreach (double at in (double[])[0, 9, 17, 30, 42, 61, 88, 120, 171, 240])
        {
            if (at > now)
            {
                Advance(end, x, at - now, supplyV);
                now = at;
            }

            run.Read(now, supplyV, supplyV / end.Ohm(x[TrueEnd.Core]), x[TrueEnd.Probe], x[TrueEnd.Grip]);
        }

        foreach (string[] line in run.Lines)
        {
            for (int i = 0; i < line.Length; i++)
            {
                line[i] = line[i].Replace('.', ',');
            }
        }

        return run;
    }

    private DemoRun Log(string id, BenchMeter clock)
    {
        var logger = bench.Logger;
        var run = new DemoRun(hidden["seed"], id, new DemoColumn("time", "s", clock), new DemoColumn("volts", "V", logger),
            new DemoColumn("amps", "A", logger), new DemoColumn("degrees", "°C", bench.Thermometer), new DemoColumn("grip degrees", "°C", bench.GripProbe));
        run.Settings["air"] = hidden["air"];
        return run;
    }

    private (TrueEnd End, double[] State) Begin(string name)
    {
        double[] x = new double[TrueEnd.Slots];
        Array.Fill(x, hidden["air"]);
        return (new TrueEnd(hidden, name), x);
    }

    private static void Advance(TrueEnd end, double[] x, double seconds, double volts)
    {
        int steps = (int)Math.Round(seconds / StepS);
        for (int i = 0; i < steps; i++)
        {
            RungeKutta.Step(x, StepS, (at, slope) => end.Slope(at, slope, volts * volts / end.Ohm(at[TrueEnd.Core]), 0, 0));
        }
    }
}
