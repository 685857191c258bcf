namespace Heatwright.DemoTruth.Campaign;

/// <summary>Sensors, amplifiers, unknown parts, purchases, a maker's own line.</summary>
internal static class PartLaws
{
    public static readonly Dictionary<string, Func<Noise, BenchLaw>> All = new(StringComparer.Ordinal)
    {
        ["sensor-test"] = SensorTest,
        ["couple-type"] = Couple,
        ["sensor-ohms"] = Ohms,
        ["sensor-counts"] = Counts,
        ["amplifier"] = Amplifier,
        ["unknown-part"] = UnknownPart,
        ["incoming"] = Incoming,
        ["own-line"] = OwnLine,
    };

    private static BenchLaw SensorTest(Noise draw)
    {
        var law = new BenchLaw("sensor-test") { Word = "sensor" };
        double rise = draw.Between(50, 120);
        int slope = law.Unknown(draw.Between(6, 45)), warmer = law.Unknown(rise);
        law.Says("state", "level", "warm", "swapped", "again");
        law.Sets("rise", p => p[warmer], 5);
        law.Reads("volts", new("millivoltmeter", 0.5, 3, 1e-5), p => [0, p[slope] * p[warmer] * 1e-6, -p[slope] * p[warmer] * 1e-6, p[slope] * p[warmer] * 1e-6]);
        law.Finds("warm volts", p => p[slope] * p[warmer] * 1e-3);
        law.Finds("slope", p => p[slope]);
        return law;
    }

    private static BenchLaw Couple(Noise draw)
    {
        var law = new BenchLaw("couple-type");
        int slope = law.Unknown(draw.Between(15, 60)), bend = law.Unknown(draw.Within(0.01));
        int[] degrees = law.Unknowns(Draws.Even(60, draw.Between(250, 400), 7));
        double cold = 25;
        double Microvolts(double c, double[] p) => (p[slope] * (c - cold)) + (p[bend] * ((c * c) - (cold * cold)));
        law.Sets("cold", cold);
        law.Reads("degrees", new("thermometer", 0, 0, 1), p => degrees.At(p), 2);
        law.Reads("volts", new("millivoltmeter", 0.5, 3, 1e-5), p => degrees.At(p).Each(c => 1e-6 * Microvolts(c, p)));
        law.Finds("slope", p =>
        {
            double[] c = degrees.At(p);
            double mean = c.Average();
            return c.Sum(each => (each - mean) * Microvolts(each, p)) / c.Sum(each => (each - mean) * (each - mean));
        });
        return law;
    }

    private static BenchLaw Ohms(Noise draw)
    {
        var law = new BenchLaw("sensor-ohms");
        int which = draw.Below(3), leads = law.Unknown(draw.Between(0.1, 0.3));
        int[] degrees = law.Unknowns([0.5, 25, 50, 75, 99]);
        var meter = new Display("ohmmeter", 0.8, 3, which == 1 ? 1 : 0.1);
        law.Sets("leads", meter, p => p[leads]);
        law.Reads("degrees", new("thermometer", 1, 0, 0.1) { Fixed = 1, FixedUnit = "degC" }, p => degrees.At(p), 0.2);
        if (which == 0)
        {
            int zero = law.Unknown(draw.Between(99.8, 100.2));
            law.Reads("ohms", meter, p => degrees.At(p).Each(c => p[leads] + (p[zero] * (1 + (3.9083e-3 * c) - (5.775e-7 * c * c)))));
            law.Finds("ohms at 0 °C", p => p[zero]);
        }
        else if (which == 1)
        {
            int at25 = law.Unknown(draw.Decades(5e3, 1e5)), beta = law.Unknown(draw.Between(3300, 4200));
            law.Reads("ohms", meter, p => degrees.At(p).Each(c => p[leads] + (p[at25] * Math.Exp(p[beta] * ((1 / (c + 273.15)) - (1 / 298.15))))));
            law.Finds("ohms at 25 °C", p => p[at25]);
            law.Finds("beta", p => p[beta]);
        }
        else
        {
            int at20 = law.Unknown(draw.Between(20, 60)), slope = law.Unknown(draw.Between(4.3e-3, 4.6e-3));
            law.Reads("ohms", meter, p => degrees.At(p).Each(c => p[leads] + (p[at20] * (1 + (p[slope] * (c - 20))))));
            law.Finds("ohms at 20 °C", p => p[at20]);
            law.Finds("temperature coefficient", p => p[slope]);
        }

        return law;
    }

    /// <summary>Counts of a chain whose couple is made so that 41 µV/K and a small bend come close to a usual one.</summary>
    private static BenchLaw Counts(Noise draw)
    {
        var law = new BenchLaw("sensor-counts");
        int zero = law.Unknown(draw.Between(10, 40)), slope = law.Unknown(draw.Between(1.5, 2.5)), bend = law.Unknown(draw.Within(2e-4));
        int[] degrees = law.Unknowns(Draws.Even(350, 60, 24));
        law.Reads("counts", new("converter", 0, 0, 1), p => degrees.At(p).Each(c => p[zero] + (p[slope] * c) + (p[bend] * c * c)));
        law.Reads("degrees", new("thermometer", 0, 0, 1), p => degrees.At(p), 1);
        law.Finds("degrees in the middle", p =>
        {
            double counts = degrees.At(p).Average(c => p[zero] + (p[slope] * c) + (p[bend] * c * c));
            double low = 0, high = 500;
            for (int i = 0; i < 60; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = p[zero] + (p[slope] * middle) + (p[bend] * middle * middle) < counts ? (middle, high) : (low, middle);
            }

            return low;
        });
        return law;
    }

    private static BenchLaw Amplifier(Noise draw)
    {
        var law = new BenchLaw("amplifier");
        int gain = law.Unknown(draw.Between(80, 250)), offset = law.Unknown(draw.Within(0.05));
        int[] input = law.Unknowns(((double[])[1, 3, 5, 8, 11, 14]).Select(mv => mv * 1e-3 * draw.Between(0.97, 1.03)));
        law.Reads("volts in", new("millivoltmeter", 0.5, 3, 1e-5), p => input.At(p));
        law.Reads("volts out", new("volts meter", 0.5, 2, 0.001), p => input.At(p).Each(v => p[offset] + (p[gain] * v)));
        law.Finds("gain", p => p[gain]);
        law.Finds("output offset", p => 1000 * p[offset]);
        return law;
    }

    private static BenchLaw UnknownPart(Noise draw)
    {
        int which = draw.Below(3);
        string word = ((string[])["platinum sensor Pt100", "heater of a heating alloy, or a resistor", "thermistor (NTC)"])[which];
        var law = new BenchLaw("unknown-part") { Word = word };
        int cold = law.Unknown(which == 0 ? draw.Between(99.8, 100.2) : which == 1 ? draw.Decades(4, 60) : draw.Decades(2e3, 3e5));
        int leads = law.Unknown(draw.Between(0.1, 0.3));
        double hot = which == 0 ? 1.3851 : which == 1 ? 1 + draw.Between(0.005, 0.015) : draw.Between(0.02, 0.04);
        int ratio = law.Unknown(hot);
        var meter = new Display("ohmmeter", 0.8, 3, which == 2 ? 1 : which == 1 ? 0.01 : 0.1);
        law.Sets("leads", meter, p => p[leads]);
        law.Says("pair", "", "");
        law.Notes("degrees", [0, 100]);
        law.Reads("ohms", meter, p => [p[cold] + p[leads], (p[cold] * p[ratio]) + p[leads]]);
        law.Finds("the two wires: ohms cold", p => p[cold]);
        return law;
    }

    private static BenchLaw Incoming(Noise draw)
    {
        var law = new BenchLaw("incoming");
        double mean = draw.Decades(1, 50), spread = mean * draw.Between(0.01, 0.04);
        int old = law.Unknown(mean), change = law.Unknown(draw.Chance(0.5) ? 0 : mean * draw.Within(0.1));
        int now = draw.Chance(0.5) ? 1 : 2;
        string[] lots = [.. Enumerable.Repeat("old", 6), .. Enumerable.Repeat("new", now)];
        law.Says("lot", lots);
        law.Reads("value", new("samples", 0, 0, Math.Pow(10, Math.Floor(Math.Log10(spread)) - 2)), p => [.. lots.Select(lot => lot == "old" ? p[old] : p[old] + p[change])], spread);
        law.Finds("new less old", p => p[change]);
        return law;
    }

    private static BenchLaw OwnLine(Noise draw)
    {
        var law = new BenchLaw("own-line");
        int zero = law.Unknown(draw.Within(5)), slope = law.Unknown(draw.Between(0.5, 3));
        double[] x = Draws.Even(0, 10, 9);
        law.Notes("x", x);
        law.Reads("y", new("own", 0, 0, 0.001), p => x.Each(at => p[zero] + (p[slope] * at)), draw.Decades(0.02, 0.5));
        law.Finds("slope", p => p[slope]);
        law.Finds("at x = 0", p => p[zero]);
        return law;
    }
}
