namespace Heatwright.DemoTruth.Campaign;

/// <summary>Converters, switches and lamps.</summary>
internal static class PowerLaws
{
    public static readonly Dictionary<string, Func<Noise, BenchLaw>> All = new(StringComparer.Ordinal)
    {
        ["converter-points"] = Points,
        ["converter-start"] = Start,
        ["converter-collapse"] = Collapse,
        ["converter-idle"] = Idle,
        ["switch-drop"] = Switch,
        ["lamp-points"] = Lamp,
    };

    private static BenchLaw Points(Noise draw)
    {
        var law = new BenchLaw("converter-points");
        int own = law.Unknown(draw.Between(0.02, 0.3)), perAmp = law.Unknown(draw.Between(0.05, 0.4)), ohms = law.Unknown(draw.Between(0.03, 0.15));
        double set = draw.Between(8, 12);
        double[] loads = [0.1, 0.3, 0.6, 1.0];
        int[] inV = law.Unknowns(((double[])[4.1, 4.1, 4.1, 4.1, 3.7, 3.7, 3.7, 3.7, 3.3, 3.3, 3.3, 3.3]).Select(v => v * draw.Between(0.99, 1.01)));
        int[] outV = law.Unknowns(Enumerable.Repeat(set, 12).Select(v => v * draw.Between(0.995, 1.0)));
        int[] outA = law.Unknowns(Enumerable.Range(0, 12).Select(i => loads[i % 4] * draw.Between(0.97, 1.03)));

        // V·I − own − b·I − c·I² = watts out, the smaller root.
        double InA(double[] p, int i)
        {
            double push = p[inV[i]] - p[perAmp], watts = (p[outV[i]] * p[outA[i]]) + p[own];
            return 2 * watts / (push + Math.Sqrt(Math.Max(0, (push * push) - (4 * p[ohms] * watts))));
        }

        double Efficiency(double[] p, int i) => p[outV[i]] * p[outA[i]] / (p[inV[i]] * InA(p, i));
        law.Reads("volts in", HeaterLaws.Volts(0.01), p => inV.At(p));
        law.Reads("amps in", HeaterLaws.Amps(0.001), p => [.. Enumerable.Range(0, 12).Select(i => InA(p, i))]);
        law.Reads("volts out", HeaterLaws.Volts(0.01), p => outV.At(p));
        law.Reads("amps out", HeaterLaws.Amps(0.001), p => outA.At(p));
        law.Finds("efficiency at the heaviest load", p => 100 * Efficiency(p, 11));
        law.Finds("loss fixed", p => p[own]);
        law.Finds("loss per ampere", p => p[perAmp]);
        law.Finds("loss per ampere squared", p => p[ohms]);
        return law;
    }

    private static BenchLaw Start(Noise draw)
    {
        var law = new BenchLaw("converter-start");
        int end = law.Unknown(draw.Between(5, 12)), tau = law.Unknown(draw.Between(0.02, 0.06)), ring = law.Unknown(draw.Between(25, 50)), top = law.Unknown(draw.Between(1, 3));
        double[] time = Draws.Even(0, 0.6, 121).Each(t => Math.Round(t, 3));
        double begin = draw.Between(0.02, 0.05);
        int rest = law.Unknown(draw.Between(0, 0.05)); // what is left on the output of an earlier run
        double Volts(double t, double[] p) => t < begin ? p[rest] : p[end] * (1 - (Math.Exp(-(t - begin) / p[tau]) * (Math.Cos(p[ring] * (t - begin)) + (Math.Sin(p[ring] * (t - begin)) / (p[ring] * p[tau])))));
        double Amps(double t, double[] p) => t < begin ? 0 : p[top] * (t - begin) / 0.03 * Math.Exp(1 - ((t - begin) / 0.03));
        double Peak(double[] p) => p[end] * Math.Exp(-Math.PI / (p[ring] * p[tau]));
        double Crossing(double share, double[] p)
        {
            double low = begin, high = begin + (Math.PI / p[ring]);
            for (int i = 0; i < 60; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = Volts(middle, p) < share * p[end] ? (middle, high) : (low, middle);
            }

            return low;
        }

        law.Notes("time", time);

        // Nobody knows the law of a start: each reading's own volts and amps are unknown.
        int[] own = law.Unknowns(time.Select(_ => 1.0)), ownA = law.Unknowns(time.Select(_ => 1.0));
        double Settled(double[] p) => Enumerable.Range(91, 30).Average(i => Volts(time[i], p) * p[own[i]]);
        double Passes(double share, double[] p)
        {
            int at = Array.FindIndex(time, t => Volts(t, p) >= share * p[end]);
            double before = Volts(time[at - 1], p) * p[own[at - 1]], after = Volts(time[at], p) * p[own[at]];
            return time[at - 1] + ((time[at] - time[at - 1]) * ((share * Settled(p)) - before) / (after - before));
        }

        law.Reads("amps in", HeaterLaws.Amps(0.01), p => [.. time.Select((t, i) => Amps(t, p) * p[ownA[i]])]);
        law.Reads("volts out", HeaterLaws.Volts(0.01), p => [.. time.Select((t, i) => Volts(t, p) * p[own[i]])]);
        int most = Enumerable.Range(0, time.Length).MaxBy(i => Volts(time[i], [law.Number(end), law.Number(tau), law.Number(ring), law.Number(top), law.Number(rest)]));
        int mostA = Enumerable.Range(0, time.Length).MaxBy(i => Amps(time[i], [0, 0, 0, 1]));
        law.Finds("start time", p => Crossing(0.9, p) - Crossing(0.1, p), p => Passes(0.9, p) - Passes(0.1, p));
        law.Finds("settled volts", p => p[end], Settled);
        law.Finds("overshoot", Peak, p => (Volts(time[most], p) * p[own[most]]) - Settled(p));
        law.Finds("start current", p => p[top], p => Amps(time[mostA], p) * p[ownA[mostA]]);
        return law;
    }

    private static BenchLaw Collapse(Noise draw)
    {
        var law = new BenchLaw("converter-collapse");
        double most = draw.Between(0.8, 2.5), set = draw.Between(8, 12);
        double[] loads = [.. Enumerable.Range(0, 9).Select(i => 0.5 * Math.Pow(1.25, i))];
        int last = Array.FindLastIndex(loads, load => load <= most);
        double[] read = loads[..Math.Min(9, last + 2)];
        int limit = law.Unknown(most);
        law.Reads("amps out", HeaterLaws.Amps(), _ => read.Each(load => load <= most ? load : Math.Sqrt(load * most * 0.8)));
        law.Reads("volts out", HeaterLaws.Volts(0.01), _ => read.Each(load => load <= most ? set : set * Math.Sqrt(most * 0.8 / load)));
        law.Finds("output amps it holds", p => p[limit]);
        return law;
    }

    private static BenchLaw Idle(Noise draw)
    {
        var law = new BenchLaw("converter-idle");
        int amps = law.Unknown(draw.Decades(3e-4, 3e-2)), slope = law.Unknown(draw.Chance(0.5) ? 0 : draw.Within(0.2));
        int[] volts = law.Unknowns(((double[])[3.0, 3.3, 3.6, 3.9, 4.2, 4.5]).Select(v => v * draw.Between(0.99, 1.01)));
        double Amps(double v, double[] p) => p[amps] * (1 + (p[slope] * (v - 3.75)));
        law.Reads("volts in", HeaterLaws.Volts(0.01), p => volts.At(p));
        law.Reads("amps in", new("milliammeter", 1.2, 3, 1e-5), p => volts.At(p).Each(v => Amps(v, p)));
        law.Finds("idle amps", p => 1000 * Amps(volts.At(p).Average(), p));
        law.Finds("idle watts", p => Amps(volts.At(p).Average(), p) * volts.At(p).Average());
        return law;
    }

    private static BenchLaw Switch(Noise draw)
    {
        var law = new BenchLaw("switch-drop");
        double[] gates = [3, 4, 4.9];
        double full = draw.Decades(0.004, 0.03);
        int[] ohms = law.Unknowns(gates.Select(gate => full * (1 + (1.2 * Math.Exp(-(gate - 2) / 0.7)))));
        int[] amps = law.Unknowns(gates.SelectMany(_ => (double[])[1, 2, 3, 4]).Select(a => a * draw.Between(0.97, 1.03)));
        int rise = law.Unknown(draw.Between(30, 80));
        double air = draw.Between(18, 27);
        double Ohms(double[] p, int i) => p[ohms[i / 4]];
        law.Sets("air", air);
        law.Reads("gate volts", new("gate meter", 0.5, 2, 0.01), _ => [.. gates.SelectMany(gate => Enumerable.Repeat(gate, 4))]);
        law.Reads("amps", HeaterLaws.Amps(0.01), p => amps.At(p));
        law.Reads("degrees", HeaterLaws.Degrees(), p => [.. Enumerable.Range(0, 12).Select(i => air + (p[rise] * Ohms(p, i) * Math.Pow(p[amps[i]], 2)))]);
        law.Reads("drop", new("millivoltmeter", 0.5, 2, 1e-4), p => [.. Enumerable.Range(0, 12).Select(i => Ohms(p, i) * p[amps[i]])]);
        law.Finds("ohms at 4.0 V gate", p => p[ohms[1]]);
        law.Finds("rise per watt", p => p[rise]);
        return law;
    }

    private static BenchLaw Lamp(Noise draw)
    {
        var law = new BenchLaw("lamp-points");
        int level = law.Unknown(draw.Between(0.2, 0.7)), least = law.Unknown(draw.Between(3.1, 3.5)), span = law.Unknown(draw.Between(0.4, 0.7));
        int[] volts = law.Unknowns(Draws.Even(4.2, 2.6, 17).Select(v => v * draw.Between(0.998, 1.002)));
        double bend = draw.Within(0.015);
        law.Reads("volts", HeaterLaws.Volts(0.01), p => volts.At(p));
        law.Reads("amps", HeaterLaws.Amps(), p => volts.At(p).Each(v => Math.Clamp(1 - ((p[least] - v) / p[span]), 0, 1) is var share ? p[level] * (share + (bend * 4 * share * (1 - share))) : 0));
        law.Finds("load current", p => p[level]);
        law.Finds("least input volts", p => p[least]);
        law.Finds("dark volts", p => p[least] - p[span]);
        return law;
    }
}
