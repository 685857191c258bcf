namespace Heatwright.DemoTruth.Campaign;

/// <summary>Warming, cooling, coming to rest, working.</summary>
internal static class HeatLaws
{
    public static readonly Dictionary<string, Func<Noise, BenchLaw>> All = new(StringComparer.Ordinal)
    {
        ["warm-up"] = WarmUp,
        ["cool-down"] = CoolDown,
        ["warm-up-marks"] = Marks,
        ["work-trial"] = Work,
        ["work-ladder"] = Ladder,
        ["stuck-on"] = draw => AtRest(draw, "stuck-on", "plateau", draw.Between(250, 500), draw.Between(40, 200), draw.Between(15, 40), 1),
        ["grip-rise"] = draw => AtRest(draw, "grip-rise", "grip at rest", draw.Between(36, 60), draw.Between(200, 700), draw.Between(10, 30), 10),
        ["self-heating"] = draw => AtRest(draw, "self-heating", "cell at rest", draw.Between(35, 55), draw.Between(300, 900), draw.Between(0.5, 2), 10),
        ["converter-hot-spot"] = draw => AtRest(draw, "converter-hot-spot", "hot spot at rest", draw.Between(60, 110), draw.Between(30, 120), draw.Between(0.5, 3), 2),
    };

    /// <summary>A heater core before a tip that loses heat, and a probe that feels the tip late; by small steps.</summary>
    private static BenchLaw WarmUp(Noise draw)
    {
        var law = new BenchLaw("warm-up");
        double loss0 = draw.Decades(0.02, 0.15), tau0 = draw.Decades(30, 200), all = loss0 * tau0;
        int whole = law.Unknown(all), inner = law.Within(0.275, 0.125, draw); // the core's share of the heat capacity, which one place cannot tell
        int link = law.Unknown(loss0 * draw.Between(4, 12)), loss = law.Unknown(loss0);
        double air = draw.Between(18, 27), watts = loss0 * draw.Between(180, 320);
        double every = Math.Max(1, Math.Round(tau0 / 15)), off = Math.Round(2.2 * tau0 / every) * every;
        int power = law.Unknown(watts), lag = law.Within(0.4, 0.2, draw);
        double[] time = [.. Enumerable.Range(0, (int)(3.6 * tau0 / every)).Select(i => i * every)];
        double[] Probe(double[] p)
        {
            double[] x = [0, 0, 0], at = new double[time.Length];
            double now = 0;
            for (int i = 0; i < time.Length; i++)
            {
                int steps = (int)Math.Ceiling((time[i] - now) / 0.2);
                for (int k = 0; k < steps; k++)
                {
                    RungeKutta.Step(x, (time[i] - (i > 0 ? time[i - 1] : 0)) / steps, (s, slope) =>
                    {
                        double flow = p[link] * (s[0] - s[1]);
                        slope[0] = ((now < off ? p[power] : 0) - flow) / (p[whole] * p[inner]);
                        slope[1] = (flow - (p[loss] * s[1])) / (p[whole] * (1 - p[inner]));
                        slope[2] = (s[1] - s[2]) / p[lag];
                    });
                }

                now = time[i];
                at[i] = air + x[2];
            }

            return at;
        }

        law.Sets("air", air);
        law.Sets("off", off);
        law.Notes("time", time);
        law.Reads("watts", new("wattmeter", 1.5, 1, 0.01), p => time.Each(t => t < off ? p[power] : 0));
        law.Reads("degrees", HeaterLaws.Degrees(), Probe);
        law.Finds("resistance to air", p => 1 / p[loss]);
        law.Finds("linear loss", p => p[loss]);
        law.Finds("heat capacity", p => p[whole]);
        law.Finds("time constant", p => Slow(p[whole] * p[inner], p[whole] * (1 - p[inner]), p[link], p[loss]));
        return law;
    }

    private static double Slow(double core, double tip, double link, double loss)
    {
        // s²·C₁C₂/(G·H) + s·((C₁ + C₂)/H + C₁/G) + 1 = 0: the root nearer to zero.
        double a = core * tip / (link * loss), b = ((core + tip) / loss) + (core / link);
        return 2 * a / (b - Math.Sqrt((b * b) - (4 * a)));
    }

    private static BenchLaw CoolDown(Noise draw)
    {
        var law = new BenchLaw("cool-down");
        double tau0 = draw.Decades(30, 200), air = draw.Between(18, 27);
        int start = law.Unknown(draw.Between(150, 350)), slow = law.Unknown(tau0), fast = law.Unknown(tau0 * draw.Between(0.005, 0.06));
        double[] time = Draws.Even(0, Math.Round(3 * tau0), 40).Each(Math.Round);
        law.Sets("air", air);
        law.Notes("time", time);
        law.Reads("degrees", HeaterLaws.Degrees(), p => time.Each(t => air + ((p[start] - air) * ((p[slow] * Math.Exp(-t / p[slow])) - (p[fast] * Math.Exp(-t / p[fast]))) / (p[slow] - p[fast]))));
        law.Finds("time constant", p => p[slow]);
        return law;
    }

    private static BenchLaw Marks(Noise draw)
    {
        var law = new BenchLaw("warm-up-marks");
        int rise = law.Unknown(draw.Between(150, 350)), tau = law.Unknown(draw.Decades(20, 150));
        double air = 25, watts = draw.Between(8, 30);
        double tau0 = law.Number(tau);
        int[] marked = law.Unknowns(((double[])[0.5, 1.1, 2.0]).Select(share => share * tau0 * draw.Between(0.9, 1.1)));
        int last = law.Unknown(6 * tau0);
        double[] Times(double[] p) => [.. marked.At(p), p[last]];
        law.Sets("air", air);
        law.Sets("watts", watts);
        law.Says("mark", "at", "at", "at", "stuck");
        law.Reads("time", new("watch", 0, 0, 0.1), Times, 0.2);
        law.Reads("degrees", new("display", 0, 0, 1), p => Times(p).Each(t => air + (p[rise] * (1 - Math.Exp(-t / p[tau])))), 4);
        law.Finds("rise at rest", p => p[rise]);
        law.Finds("time constant", p => p[tau]);
        law.Finds("resistance to air", p => p[rise] / watts);
        law.Finds("heat capacity", p => p[tau] * watts / p[rise]);
        return law;
    }

    private static BenchLaw Work(Noise draw)
    {
        var law = new BenchLaw("work-trial");
        int held = law.Unknown(draw.Between(220, 320)), droop = law.Unknown(draw.Between(15, 60));
        int down = law.Unknown(draw.Between(3, 8)), up = law.Unknown(draw.Between(4, 15)), capacity = law.Unknown(draw.Between(3, 15)), more = law.Unknown(draw.Between(10, 40)), steady = law.Unknown(draw.Between(8, 25));
        double air = 25, loss = draw.Between(0.03, 0.1), from = 10, to = 25;
        double[] time = Draws.Even(0, 85, 86);
        double Degrees(double t, double[] p)
        {
            double low = p[droop] * (1 - Math.Exp(-(Math.Min(t, to) - from) / p[down]));
            return p[held] - (t <= from ? 0 : t <= to ? low : low * Math.Exp(-(t - to) / p[up]));
        }

        double Watts(double t, double[] p) => p[steady] + (t > from && t <= to ? p[more] : 0);
        law.Sets("air", air);
        law.Sets("start", from);
        law.Sets("end", to);
        law.Sets("linear loss", loss);
        law.Sets("heat capacity", p => p[capacity], 0.05 * 8);
        law.Notes("time", time);

        // Nobody knows the law of a droop: each reading's own temperature is unknown.
        int[] own = law.Unknowns(time.Select(_ => 1.0));
        double Own(int second, double[] p) => Degrees(second, p) * p[own[second]];
        double Held(double[] p) => Enumerable.Range(0, 11).Average(second => Own(second, p));
        law.Reads("watts", new("wattmeter", 1.5, 1, 0.01), p => time.Each(t => Watts(t, p)));
        law.Reads("degrees", HeaterLaws.Degrees(), p => [.. time.Select((_, second) => Own(second, p))]);
        law.Finds("droop", p => p[held] - Degrees(to, p), p => Held(p) - Own((int)to, p));
        law.Finds("recovery", p => p[up] * Math.Log((p[held] - Degrees(to, p)) / 5), p =>
        {
            int home = Enumerable.Range((int)to, 60).First(second => Own(second, p) >= Held(p) - 5);
            return home - to - ((Own(home, p) - Held(p) + 5) / (Own(home, p) - Own(home - 1, p)));
        });
        double ReadHeat(double[] p) => Enumerable.Range((int)from + 1, (int)(to - from)).Sum(second => Watts(second, p) - (loss * (((Own(second, p) + Own(second - 1, p)) / 2) - air))) + (p[capacity] * (Held(p) - Own((int)to, p)));
        law.Finds("heat taken", Heat, ReadHeat);
        law.Finds("heat rate under work", p => Heat(p) / (to - from), p => ReadHeat(p) / (to - from));
        return law;

        double Heat(double[] p)
        {
            double sum = 0;
            for (int i = 0; i < 1500; i++)
            {
                double t = from + ((i + 0.5) * (to - from) / 1500);
                sum += ((to - from) / 1500) * (Watts(t, p) - (loss * (Degrees(t, p) - air)));
            }

            return sum + (p[capacity] * (p[held] - Degrees(to, p)));
        }
    }

    private static BenchLaw Ladder(Noise draw)
    {
        var law = new BenchLaw("work-ladder");
        double delivers = draw.Decades(6, 40);
        int watts = law.Unknown(delivers);
        double[] stated = [3, 6, 10, 16, 25, 40, 60];
        string[] outcomes = [.. stated.Select(demand =>
        {
            double truth = demand * Math.Exp(0.2 * draw.Bell());
            return delivers >= truth ? "done" : delivers < 0.6 * truth ? "failed" : "slow";
        })];
        law.Says("job", "thin cord", "thick cord", "band", "thin foam", "thick foam", "pad", "plate");
        law.Notes("watts", stated);
        law.Says("outcome", outcomes);
        law.Finds("heat rate at the work", p => p[watts]);
        return law;
    }

    private static BenchLaw AtRest(Noise draw, string kind, string finding, double rest, double tau, double watts, double every)
    {
        var law = new BenchLaw(kind);
        double air = draw.Between(18, 27);
        int end = law.Unknown(rest), slow = law.Unknown(tau), begin = law.Unknown(air + draw.Between(0, 2)), late = law.Within(tau * 0.0125, tau * 0.0075, draw);
        double[] time = Draws.Even(0, Math.Ceiling(draw.Between(2, 4) * tau / every) * every, 30).Each(t => Math.Round(t / every) * every);
        law.Sets("air", air);
        law.Sets("watts", watts);
        law.Notes("time", time);

        // A probe that follows a little late, which the fit does not know.
        law.Reads("degrees", HeaterLaws.Degrees(), p => time.Each(t => p[end] + ((p[begin] - p[end]) * ((p[slow] * Math.Exp(-t / p[slow])) - (p[late] * Math.Exp(-t / p[late]))) / (p[slow] - p[late]))));
        law.Finds(finding, p => p[end]);
        law.Finds("time constant", p => p[slow]);
        law.Finds("resistance to air", p => (p[end] - air) / watts);
        law.Finds("heat capacity", p => p[slow] * watts / (p[end] - air));
        return law;
    }
}
