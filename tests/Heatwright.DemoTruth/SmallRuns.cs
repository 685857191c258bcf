namespace Heatwright.DemoTruth;

/// <summary>Module points and drops across leads and touches.</summary>
internal sealed class SmallRuns(Hidden hidden, Bench bench)
{
    public DemoRun Module(double[] loadsOhm)
    {
        var meter = bench.Meter;
        var run = new DemoRun(hidden["seed"], "module-points-1", new DemoColumn("volts in", "V", meter), new DemoColumn("amps in", "A", meter),
            new DemoColumn("volts out", "V", meter), new DemoColumn("amps out", "A", meter));
        run.Settings["set"] = hidden["module.set"];
        var module = new TrueModule(hidden);
        foreach (double inV in (double[])[4.1, 3.7, 3.4])
        {
            foreach (double loadOhm in loadsOhm)
            {
                // A stiff bench supply: next to no source ohms. The set volts sag a little with the load.
                var (amps, loadW, _) = module.On(inV, 0.001, loadOhm);
                double outV = Math.Sqrt(loadW * loadOhm);
                run.Read(inV - (0.001 * amps), amps, outV, outV / loadOhm);
            }
        }

        return run;
    }

    /// <summary>Drop at rising currents; where a slip is asked for, one drop was typed in volts.</summary>
    public DemoRun Drop(string name, int touches, bool slip)
    {
        var run = new DemoRun(hidden["seed"], name + "-drop-1", new DemoColumn("amps", "A", bench.Meter), new DemoColumn("drop", "mV", bench.Meter));
        run.Settings["touches"] = touches;
        foreach (double amps in (double[])[1, 2, 3, 4, 5])
        {
            double wander = 1 + (hidden["contacts.drift"] * run.Noise.Even());
            run.Read(amps, 1000 * amps * touches * hidden[name + ".ohms"] * (name == "leads" ? 1 : wander));
        }

        if (slip)
        {
            double volts = double.Parse(run.Lines[2][1], System.Globalization.CultureInfo.InvariantCulture) / 1000;
            run.Lines[2][1] = BenchMeter.Text(volts, 0.00001);
        }

        return run;
    }
}
