namespace Heatwright.DemoTruth;

/// <summary>Volts and amps of the lamp on a stiff supply, turned down until it is dark.</summary>
internal sealed class LampRuns(Hidden hidden, Bench bench)
{
    /// <summary>Where an overload mark is asked for, the meter was still on its small range at the third reading.</summary>
    public DemoRun Points(bool overload)
    {
        var run = new DemoRun(hidden["seed"], "lamp-points-1", new DemoColumn("volts", "V", bench.Meter), new DemoColumn("amps", "A", bench.Meter));
        var lamp = new TrueLamp(hidden);
        foreach (double volts in (double[])[4.2, 4.0, 3.8, 3.6, 3.45, 3.35, 3.25, 3.15, 3.05, 2.95, 2.85, 2.78, 2.6, 2.4])
        {
            run.Read(volts, Math.Max(0, lamp.Amps(volts)));
        }

        if (overload)
        {
            run.Lines[2][1] = "OL";
        }

        return run;
    }

    /// <summary>On a supply for half an hour, then off for half an hour, read every 20 s: degrees of the head and of the handle.</summary>
    public DemoRun Warm(double supplyV)
    {
        var run = new DemoRun(hidden["seed"], "lamp-warm-1", new DemoColumn("time", "s", bench.Logger), new DemoColumn("volts", "V", bench.Logger), new DemoColumn("amps", "A", bench.Logger),
            new DemoColumn("degrees", "°C", bench.Thermometer), new DemoColumn("grip degrees", "°C", bench.GripProbe));
        run.Settings["air"] = hidden["air"];
        var (lamp, head) = (new TrueLamp(hidden), new TrueHead(hidden));
        double[] x = [hidden["air"], hidden["air"]];
        for (int now = 0; now <= 3600; now += 20)
        {
            double volts = now < 1800 ? supplyV : 0;
            double amps = volts > 0 ? lamp.Amps(volts) : 0;
            run.Read(now, volts, amps, x[0], x[1]);
            for (int i = 0; i < 20; i++)
            {
                RungeKutta.Step(x, 1, (at, slope) => head.Slope(at, slope, 0, (volts * amps) - lamp.LightW(amps), 0));
            }
        }

        return run;
    }
}
