namespace Heatwright.Tests.Posed;

/// <summary>Runs the plain equations with 64 Runge–Kutta steps a control period, and halves into a step wherever something happens.</summary>
internal sealed class PlainRun(PlainTool tool)
{
    private const int Sub = 64;

    public double PeriodS { get; init; } = 0.25;

    /// <summary>Duty from now on; called at every multiple of the period.</summary>
    public Func<double, double[], double> Decide { get; init; } = (_, _) => 1;

    /// <summary>Continuous on-off: (low, high) in °C; null: sampled.</summary>
    public (double LowC, double HighC)? Band { get; init; }

    /// <summary>Above 0 while it runs; told the duty.</summary>
    public required Func<double[], double, double> Alive { get; init; }

    public Func<double, bool> Pressed { get; init; } = _ => false;

    /// <summary>First crossings of these are noted.</summary>
    public Dictionary<string, Func<double[], double>> Marks { get; init; } = [];

    public double[] At { get; init; } = [];

    public Dictionary<string, double> Crossed { get; } = [];

    public List<double> Switched { get; } = [];

    public List<double[]> States { get; } = [];

    public double EndS { get; private set; }

    public double[] End { get; private set; } = [];

    public PlainRun Go(double atMostS)
    {
        double[] y = tool.Begin();
        bool on = true;
        double duty = 1;
        int wanted = 0;
        for (long n = 0; n * PeriodS < atMostS; n++)
        {
            double start = n * PeriodS;
            duty = Band is null ? Decide(start, y) : on ? 1 : 0;
            for (int k = 0; k < Sub; k++)
            {
                double now = start + (PeriodS * k / Sub);
                double left = PeriodS / Sub;
                while (wanted < At.Length && At[wanted] < now + left - 1e-9)
                {
                    States.Add(At[wanted] > now ? tool.Step(y, At[wanted] - now, duty, Pressed(now)) : y);
                    wanted++;
                }

                while (left > 1e-12)
                {
                    bool pressed = Pressed(now);
                    double[] next = tool.Step(y, left, duty, pressed);
                    double step = left;
                    double switchS = Band is { } band ? Where(y, left, duty, pressed, state => on ? band.HighC - tool.SensorC(state) : tool.SensorC(state) - band.LowC, next) : double.NaN;
                    double endS = Where(y, left, duty, pressed, state => Alive(state, duty), next);
                    if (!double.IsNaN(endS) && !(switchS < endS))
                    {
                        Note(y, now, endS, duty, pressed);
                        (EndS, End) = (now + endS, tool.Step(y, endS, duty, pressed));
                        return this;
                    }

                    if (!double.IsNaN(switchS))
                    {
                        step = switchS;
                        next = tool.Step(y, step, duty, pressed);
                    }

                    Note(y, now, step, duty, pressed);
                    (y, now, left) = (next, now + step, left - step);
                    if (!double.IsNaN(switchS))
                    {
                        on = !on;
                        duty = on ? 1 : 0;
                        Switched.Add(now);
                    }
                }
            }
        }

        (EndS, End) = (atMostS, y);
        return this;
    }

    private void Note(double[] y, double now, double h, double duty, bool pressed)
    {
        double[] next = tool.Step(y, h, duty, pressed);
        foreach (var (name, g) in Marks)
        {
            double at = Crossed.ContainsKey(name) ? double.NaN : Where(y, h, duty, pressed, state => -g(state), next);
            if (!double.IsNaN(at))
            {
                Crossed[name] = now + at;
            }
        }
    }

    /// <summary>Where in the step g falls to 0, by halving steps taken anew from its start.</summary>
    private double Where(double[] y, double h, double duty, bool pressed, Func<double[], double> g, double[] next)
    {
        if (g(next) > 0)
        {
            return double.NaN;
        }

        (double low, double high) = (0, h);
        for (int i = 0; i < 45; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = g(tool.Step(y, middle, duty, pressed)) > 0 ? (middle, high) : (low, middle);
        }

        return high;
    }
}
