namespace Heatwright.Tests.Posed;

/// <summary>One cell as plain functions of its charge.</summary>
internal sealed record PlainCell(double CapacityC, Func<double, double> OpenV, double Ohm, double ShortOhm, double ShortS, double LongOhm, double LongS, double Start)
{
    public double ActivationJPerMol { get; init; }
}

/// <summary>What the path makes of source volts behind ohms at a heater temperature: pack amps, load watts, lost watts.</summary>
internal delegate (double Amps, double LoadW, double LossW) PlainPath(double openV, double sourceOhm, double heaterC);

/// <summary>The plain equations of an assembled tool, with every cell a state of its own, for a Runge–Kutta scheme of short steps. It shares nothing with the
/// program: no lumped strings, no exponential step, no closed-form operating point.</summary>
internal sealed class PlainTool
{
    public required PlainCell[][] Groups { get; init; }

    public required PlainPath Path { get; init; }

    public double LoopOhm { get; init; }

    public double DrainOnA { get; init; }

    public double DrainOffA { get; init; }

    public required double AirC { get; init; }

    public required double[] JPerK { get; init; }

    public required double[] AirWPerK { get; init; }

    public double[] AirWPerK125 { get; init; } = [0, 0, 0, 0];

    public double[] RadiatingM2 { get; init; } = [0, 0, 0, 0];

    public (int A, int B, double WPerK)[] Links { get; init; } = [];

    public int Heater { get; init; }

    public int Working { get; init; }

    public int CellNode { get; init; } = -1;

    public int ElectronicsNode { get; init; } = -1;

    public double SensorLagS { get; init; }

    public (double WPerK, double AboveC) Work { get; init; }

    private PlainCell[] All => all ??= [.. Groups.SelectMany(group => group)];

    private PlainCell[]? all;

    private int Heat => 3 * All.Length;

    public double[] Begin()
    {
        // Layout: charge, short and long volts of each cell; node temperatures; the sensor's; then running sums of load joule, terminal joule, charge, work joule.
        double[] y = new double[Heat + JPerK.Length + 5];
        for (int j = 0; j < All.Length; j++)
        {
            y[3 * j] = All[j].Start;
        }

        Array.Fill(y, AirC, Heat, JPerK.Length + 1);
        return y;
    }

    public double NodeC(double[] y, int node) => y[Heat + node];

    public double SensorC(double[] y) => SensorLagS > 0 ? y[Heat + JPerK.Length] : NodeC(y, Working);

    public double Charge(double[] y, int cell) => y[3 * cell];

    public double LoadJ(double[] y) => y[^4];

    public double TerminalJ(double[] y) => y[^3];

    public double ChargeC(double[] y) => y[^2];

    public double WorkJ(double[] y) => y[^1];

    /// <summary>On-state pack volts at the cells, volts of the lowest and of the highest group, pack amps and load volts² over ohms' sake: load watts.</summary>
    public (double PackV, double LowestV, double HighestV, double Amps, double LoadW) On(double[] y)
    {
        double lowest = double.MaxValue;
        double highest = double.MinValue;
        var (e, r) = Source(y);
        var (amps, loadW, _) = Path(e - (DrainOnA * r), r + LoopOhm, NodeC(y, Heater));
        int at = 0;
        foreach (var group in Groups)
        {
            var (ge, gr) = Group(y, group, ref at);
            lowest = Math.Min(lowest, ge - (gr * (amps + DrainOnA)));
            highest = Math.Max(highest, ge - (gr * (amps + DrainOnA)));
        }

        return (e - (r * (amps + DrainOnA)), lowest, highest, amps, loadW);
    }

    public double[] Step(double[] y, double h, double duty, bool pressed)
    {
        double[] a = Slope(y, duty, pressed);
        double[] b = Slope(Moved(y, a, h / 2), duty, pressed);
        double[] c = Slope(Moved(y, b, h / 2), duty, pressed);
        double[] d = Slope(Moved(y, c, h), duty, pressed);
        double[] next = new double[y.Length];
        for (int i = 0; i < y.Length; i++)
        {
            next[i] = y[i] + (h * (a[i] + (2 * b[i]) + (2 * c[i]) + d[i]) / 6);
        }

        return next;
    }

    private static double[] Moved(double[] y, double[] slope, double h) => [.. y.Select((value, i) => value + (h * slope[i]))];

    private double Factor(double[] y, PlainCell cell)
    {
        double kelvin = (CellNode >= 0 ? NodeC(y, CellNode) : AirC) + 273.15;
        return cell.ActivationJPerMol == 0 ? 1 : Math.Exp(cell.ActivationJPerMol / 8.314462618 * ((1 / kelvin) - (1 / 298.15)));
    }

    private (double E, double R) Group(double[] y, PlainCell[] group, ref int at)
    {
        double conductance = 0;
        double driven = 0;
        foreach (var cell in group)
        {
            double r = cell.Ohm * Factor(y, cell);
            conductance += 1 / r;
            driven += (cell.OpenV(y[3 * at]) - y[(3 * at) + 1] - y[(3 * at) + 2]) / r;
            at++;
        }

        return (driven / conductance, 1 / conductance);
    }

    private (double E, double R) Source(double[] y)
    {
        int at = 0;
        double e = 0;
        double r = 0;
        foreach (var group in Groups)
        {
            var (ge, gr) = Group(y, group, ref at);
            e += ge;
            r += gr;
        }

        return (e, r);
    }

    private double[] Slope(double[] y, double duty, bool pressed)
    {
        double[] slope = new double[y.Length];
        var (e, r) = Source(y);
        var (amps, loadW, lossW) = Path(e - (DrainOnA * r), r + LoopOhm, NodeC(y, Heater));
        double onA = amps + DrainOnA;
        double cellW = 0;
        int at = 0;
        foreach (var group in Groups)
        {
            int first = at;
            var (ge, gr) = Group(y, group, ref at);
            for (int j = first; j < at; j++)
            {
                var cell = All[j];
                double factor = Factor(y, cell);
                double ohm = cell.Ohm * factor;
                double mine = cell.OpenV(y[3 * j]) - y[(3 * j) + 1] - y[(3 * j) + 2];
                double onJ = (mine - ge + (gr * onA)) / ohm;
                double offJ = (mine - ge + (gr * DrainOffA)) / ohm;
                double mean = (duty * onJ) + ((1 - duty) * offJ);
                cellW += ohm * ((duty * onJ * onJ) + ((1 - duty) * offJ * offJ));
                slope[3 * j] = -mean / cell.CapacityC;
                if (cell.ShortOhm > 0)
                {
                    slope[(3 * j) + 1] = ((cell.ShortOhm * factor * mean) - y[(3 * j) + 1]) / cell.ShortS;
                    cellW += y[(3 * j) + 1] * y[(3 * j) + 1] / (cell.ShortOhm * factor);
                }

                if (cell.LongOhm > 0)
                {
                    slope[(3 * j) + 2] = ((cell.LongOhm * factor * mean) - y[(3 * j) + 2]) / cell.LongS;
                    cellW += y[(3 * j) + 2] * y[(3 * j) + 2] / (cell.LongOhm * factor);
                }
            }
        }

        double[] w = new double[JPerK.Length];
        w[Heater] += duty * loadW;
        if (CellNode >= 0)
        {
            w[CellNode] += cellW;
        }

        if (ElectronicsNode >= 0)
        {
            w[ElectronicsNode] += duty * (lossW + (amps * amps * LoopOhm));
        }

        foreach (var (a, b, wPerK) in Links)
        {
            double flow = wPerK * (NodeC(y, a) - NodeC(y, b));
            w[a] -= flow;
            w[b] += flow;
        }

        double workW = pressed ? Work.WPerK * Math.Max(0, NodeC(y, Working) - Work.AboveC) : 0;
        w[Working] -= workW;
        for (int i = 0; i < w.Length; i++)
        {
            double rise = NodeC(y, i) - AirC;
            double curved = AirWPerK125[i] * Math.Sign(rise) * Math.Pow(Math.Abs(rise), 1.25);
            double radiated = RadiatingM2[i] * 5.670374419e-8 * (Math.Pow(NodeC(y, i) + 273.15, 4) - Math.Pow(AirC + 273.15, 4));
            slope[Heat + i] = (w[i] - (AirWPerK[i] * rise) - curved - radiated) / JPerK[i];
        }

        slope[Heat + w.Length] = SensorLagS > 0 ? (NodeC(y, Working) - y[Heat + w.Length]) / SensorLagS : 0;
        slope[^4] = duty * loadW;
        slope[^3] = (duty * onA * (e - (r * onA))) + ((1 - duty) * DrainOffA * (e - (r * DrainOffA)));
        slope[^2] = (duty * onA) + ((1 - duty) * DrainOffA);
        slope[^1] = workW;
        return slope;
    }
}
