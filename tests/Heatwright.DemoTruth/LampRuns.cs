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
}
