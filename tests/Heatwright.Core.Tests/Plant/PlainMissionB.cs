namespace Heatwright.Tests.Plant;

/// <summary>Mission B by 64 Runge–Kutta steps a sample, written from its equations alone: duty as the controller's own output, lumps in °C.</summary>
internal static class PlainMissionB
{
    private static readonly double[] Open = [2.90, 3.30, 3.44, 3.55, 3.61, 3.65, 3.70, 3.78, 3.87, 3.97, 4.06, 4.18];

    /// <summary>End time, and core, tip, shank, grip at the samples asked for.</summary>
    public static (double EndS, List<double[]> At) Run(double heaterOhm, int[] samples, int sub = 64)
    {
        double[] y = [1, 0, 0, 22, 22, 22, 22];
        double[] before = new double[7];
        double integral = 0;
        var at = new List<double[]>();
        for (int n = 0; ; n++)
        {
            if (Terminal(y, heaterOhm) <= 3.0)
            {
                (double low, double high) = (0, 0.1);
                for (int i = 0; i < 50; i++)
                {
                    double middle = (low + high) / 2;
                    double[] z = [.. before];
                    for (int k = 0; k < sub; k++)
                    {
                        Step(z, middle / sub, heaterOhm);
                    }

                    (low, high) = Terminal(z, heaterOhm) > 3.0 ? (middle, high) : (low, middle);
                }

                return (((n - 1) * 0.1) + high, at);
            }

            if (at.Count < samples.Length && samples[at.Count] == n)
            {
                at.Add([y[3], y[4], y[5], y[6]]);
            }

            double error = 280 - (Math.Floor((y[4] / (500.0 / 1023)) + 0.5) * (500.0 / 1023));
            double next = integral + (0.003 * 0.1 * error);
            double wanted = (0.03 * error) + next;
            duty = Math.Clamp(wanted, 0, 1);
            integral = (wanted > 1 && error > 0) || (wanted < 0 && error < 0) ? integral : next;
            pressed = n % 200 >= 160;
            y.CopyTo(before, 0);
            for (int k = 0; k < sub; k++)
            {
                Step(y, 0.1 / sub, heaterOhm);
            }
        }
    }

    // Run once, by one fixture: plain fields will do.
    private static double duty;
    private static bool pressed;

    private static double OpenV(double s)
    {
        int i = s < 0.05 ? 0 : s < 0.1 ? 1 : Math.Min(10, (int)Math.Floor((s * 10) + 1e-12) + 1);
        double low = i < 2 ? i * 0.05 : (i - 1) / 10.0;
        double high = i < 1 ? 0.05 : i / 10.0;
        return Open[i] + ((Open[i + 1] - Open[i]) * (s - low) / (high - low));
    }

    private static double Terminal(double[] y, double heaterOhm)
    {
        double open = OpenV(y[0]) - y[1] - y[2];
        return open - (0.035 * open / (0.095 + (heaterOhm * (1 + (0.0008 * (y[3] - 20))))));
    }

    private static void Slope(double[] y, double[] d, double heaterOhm)
    {
        double ohm = heaterOhm * (1 + (0.0008 * (y[3] - 20)));
        double amps = (OpenV(y[0]) - y[1] - y[2]) / (0.095 + ohm);
        double radiated = 5.670374419e-8 * 0.8 * 4e-4 * (Math.Pow(y[4] + 273.15, 4) - Math.Pow(295.15, 4));
        d[0] = -duty * amps / 9360;
        d[1] = ((0.012 * duty * amps) - y[1]) / 3;
        d[2] = ((0.018 * duty * amps) - y[2]) / 90;
        d[3] = ((duty * amps * amps * ohm) - (0.35 * (y[3] - y[4])) - (0.05 * (y[3] - y[5]))) / 1.2;
        d[4] = ((0.35 * (y[3] - y[4])) - (0.012 * (y[4] - 22)) - radiated - (pressed ? 0.03 * (y[4] - 60) : 0)) / 2.5;
        d[5] = ((0.05 * (y[3] - y[5])) - (0.03 * (y[5] - y[6])) - (0.008 * (y[5] - 22))) / 6;
        d[6] = ((0.03 * (y[5] - y[6])) - (0.02 * (y[6] - 22))) / 25;
    }

    private static readonly double[][] K = [new double[7], new double[7], new double[7], new double[7], new double[7]];

    private static void Step(double[] y, double h, double heaterOhm)
    {
        Slope(y, K[0], heaterOhm);
        Slope(Moved(y, K[0], h / 2), K[1], heaterOhm);
        Slope(Moved(y, K[1], h / 2), K[2], heaterOhm);
        Slope(Moved(y, K[2], h), K[3], heaterOhm);
        for (int i = 0; i < 7; i++)
        {
            y[i] += h / 6 * (K[0][i] + (2 * K[1][i]) + (2 * K[2][i]) + K[3][i]);
        }
    }

    private static double[] Moved(double[] y, double[] slope, double h)
    {
        for (int i = 0; i < 7; i++)
        {
            K[4][i] = y[i] + (h * slope[i]);
        }

        return K[4];
    }
}
