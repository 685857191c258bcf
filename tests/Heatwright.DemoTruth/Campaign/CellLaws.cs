namespace Heatwright.DemoTruth.Campaign;

/// <summary>Cells, packs and chargers.</summary>
internal static class CellLaws
{
    public static readonly Dictionary<string, Func<Noise, BenchLaw>> All = new(StringComparer.Ordinal)
    {
        ["capacity"] = draw => Emptied(draw, "capacity", draw.Between(0.4, 1.2), draw.Between(0.05, 0.12)),
        ["open-volts"] = draw => Emptied(draw, "open-volts", draw.Between(0.04, 0.06), draw.Between(0.04, 0.09)),
        ["pulse"] = Pulse,
        ["two-load-sag"] = Sag,
        ["standby-drain"] = Standby,
        ["charge-log"] = Charge,
    };

    private static double Open(double left, double bend, double level) => level * (3.25 + (0.9 * left) - (0.45 * Math.Exp(-18 * left)) + (bend * Math.Sin(7 * left)));

    private static BenchLaw Emptied(Noise draw, string kind, double rate, double ohm)
    {
        var law = new BenchLaw(kind);
        double bend0 = draw.Within(0.02), all0 = draw.Between(1.5, 3.2), amps0 = Math.Round(all0 * rate, 2);
        int all = law.Unknown(all0), amps = law.Unknown(amps0), ohms = law.Unknown(ohm), bend = law.Unknown(bend0), level = law.Unknown(1);
        double every = Math.Round(3600 * all0 / amps0 / 90);
        double[] time = [.. Enumerable.Range(0, 93).Select(i => i * every)];
        double Left(double t, double[] p) => 1 - (p[amps] * t / 3600 / p[all]);
        double Volts(double t, double[] p) => Open(Math.Max(-0.03, Left(t, p)), p[bend], p[level]) - (p[amps] * p[ohms]);
        double End(double[] p)
        {
            double low = 0, high = time[^1];
            for (int i = 0; i < 60; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = Volts(middle, p) > 3.0 ? (middle, high) : (low, middle);
            }

            return low;
        }

        int rows = Math.Min(time.Length, Array.FindIndex(time, t => t > End([all0, amps0, ohm, bend0, 1])) is >= 0 and var at ? at + 1 : time.Length);
        double[] logged = time[..rows];
        law.Notes("time", logged);
        law.Reads("amps", HeaterLaws.Amps(kind == "capacity" ? 0.01 : 0.001), p => logged.Each(_ => p[amps]));
        law.Reads("volts", HeaterLaws.Volts(kind == "capacity" ? 0.01 : 0.001), p => logged.Each(t => Volts(t, p)));
        law.Finds("capacity", p => p[amps] * End(p) / 3600);
        if (kind == "capacity")
        {
            law.Finds("energy", p => Energy(p));
            law.Finds("mean volts", p => Energy(p) / (p[amps] * End(p) / 3600));
        }
        else
        {
            law.Sets("ohms", ohm);
            foreach (int percent in (int[])[80, 50, 20])
            {
                law.Finds($"open volts at {percent} %", p => Open(Left((1 - (percent / 100.0)) * End(p), p), p[bend], p[level]));
            }
        }

        return law;

        double Energy(double[] p)
        {
            double end = End(p), sum = 0;
            for (int i = 0; i < 2000; i++)
            {
                sum += Volts((i + 0.5) * end / 2000, p);
            }

            return sum / 2000 * p[amps] * end / 3600;
        }
    }

    private static BenchLaw Pulse(Noise draw)
    {
        var law = new BenchLaw("pulse");
        int open = law.Unknown(draw.Between(3.4, 4.0)), atOnce = law.Unknown(draw.Between(0.02, 0.1)), late = law.Unknown(draw.Between(0.005, 0.03)), tau = law.Unknown(draw.Between(8, 25)), amps = law.Unknown(draw.Between(1, 5));
        double[] time = Draws.Even(0, 90, 91);
        double Volts(double t, double[] p)
        {
            double Rise(double s) => s <= 0 ? 0 : 1 - Math.Exp(-s / p[tau]);
            return p[open] - (p[amps] * ((t is > 20 and <= 50 ? p[atOnce] : 0) + (p[late] * (Rise(t - 20) - Rise(t - 50)))));
        }

        law.Notes("time", time);

        // A load drifts a little while it warms: each reading's own current is unknown, and so is what the cell does about it beside its ohms.
        int[] own = law.Unknowns(time.Select(_ => 1 + (0.003 * draw.Bell()))), ownV = law.Unknowns(time.Select(_ => 1.0));
        double ReadA(int i, double[] p) => i is > 20 and <= 50 ? p[amps] * p[own[i]] : 0;
        double ReadV(int i, double[] p) => (Volts(time[i], p) - ((ReadA(i, p) - (i is > 20 and <= 50 ? p[amps] : 0)) * p[atOnce])) * p[ownV[i]];
        law.Reads("amps", HeaterLaws.Amps(0.01), p => [.. time.Select((_, i) => ReadA(i, p))]);
        law.Reads("volts", HeaterLaws.Volts(), p => [.. time.Select((_, i) => ReadV(i, p))]);
        double Step(int before, int after, double[] p) => (ReadV(before, p) - ReadV(after, p)) / (ReadA(after, p) - ReadA(before, p));
        law.Finds("ohms after 1.0 s|ohms after 1 s", p => p[atOnce] + (p[late] * (1 - Math.Exp(-1 / p[tau]))), p => (Step(20, 21, p) + Step(50, 51, p)) / 2);
        law.Finds("ohms after 10 s", p => p[atOnce] + (p[late] * (1 - Math.Exp(-10 / p[tau]))), p => Step(20, 30, p));
        return law;
    }

    private static BenchLaw Sag(Noise draw)
    {
        var law = new BenchLaw("two-load-sag");
        int open = law.Unknown(draw.Between(3.4, 12)), ohms = law.Unknown(draw.Decades(0.03, 0.3));
        int[] amps = law.Unknowns((draw.Chance(0.5) ? (double[])[0.3, 1.5] : [0.3, 0.8, 1.5, 2.5]).Select(a => a * draw.Between(0.9, 1.1)));
        law.Reads("amps", HeaterLaws.Amps(), p => amps.At(p));
        law.Reads("volts", HeaterLaws.Volts(), p => amps.At(p).Each(a => p[open] - (a * p[ohms])));
        law.Finds("open volts", p => p[open]);
        law.Finds("ohms", p => p[ohms]);
        return law;
    }

    private static BenchLaw Standby(Noise draw)
    {
        var law = new BenchLaw("standby-drain");
        int amps = law.Unknown(draw.Decades(5e-6, 5e-4));
        law.Reads("amps", new("microammeter", 1.2, 3, 1e-7), p => [p[amps], p[amps], p[amps]]);
        law.Finds("standby amps", p => p[amps] * 1e6);
        return law;
    }

    private static BenchLaw Charge(Noise draw)
    {
        var law = new BenchLaw("charge-log");
        int full = law.Unknown(draw.Between(0.4, 1.5)), until = law.Unknown(draw.Between(2000, 4000)), tau = law.Unknown(draw.Between(900, 1600)), end = law.Unknown(draw.Between(4.15, 4.22)), climb = law.Unknown(0.6);
        double[] time = Draws.Even(0, 7200, 121);
        double Amps(double t, double[] p) => t <= p[until] ? p[full] : p[full] * Math.Exp(-(t - p[until]) / p[tau]);

        // How a charger lets its current fall is nobody's law: each reading's own current is unknown, near that curve.
        int[] own = law.Unknowns(time.Select(t => t <= law.Number(until) ? 0 : 0.002 * draw.Bell()));
        law.Notes("time", time);
        law.Reads("volts", HeaterLaws.Volts(0.01), p => time.Each(t => t <= p[until] ? p[end] - (p[climb] * (1 - (t / p[until]))) : p[end]));
        law.Reads("amps", HeaterLaws.Amps(), p => [.. time.Select((t, i) => Amps(t, p) * (1 + p[own[i]]))]);
        law.Finds("charge in", p => Enumerable.Range(1, time.Length - 1).Sum(i => 30 * ((Amps(time[i], p) * (1 + p[own[i]])) + (Amps(time[i - 1], p) * (1 + p[own[i - 1]])))) / 3600);
        law.Finds("charge current", p => p[full], p => Enumerable.Range(0, 30).Average(i => Amps(time[i], p) * (1 + p[own[i]])));
        law.Finds("end volts", p => p[end]);
        law.Finds("end current", p => Amps(7200, p) * (1 + p[own[^1]]));
        return law;
    }
}
