namespace Heatwright.DemoTruth.Campaign;

/// <summary>Heaters and contacts: ohms, sweeps, held powers, drops.</summary>
internal static class HeaterLaws
{
    public static readonly Dictionary<string, Func<Noise, BenchLaw>> All = new(StringComparer.Ordinal)
    {
        ["cold-ohms"] = ColdOhms,
        ["four-wire-ohms"] = FourWire,
        ["volts-amps"] = VoltsAmps,
        ["hold-power"] = HoldPower,
        ["two-point-drop"] = Drop,
    };

    public static Display Volts(double step = 0.001) => new("volts meter", 0.5, 2, step);

    public static Display Amps(double step = 0.001) => new("amps meter", 1.2, 3, step);

    public static Display Degrees(double step = 0.1) => new("thermometer", 1, 0, step) { Fixed = 2, FixedUnit = "degC" };

    private static BenchLaw ColdOhms(Noise draw)
    {
        var law = new BenchLaw("cold-ohms");
        int ohms = law.Unknown(draw.Decades(2, 50)), leads = law.Unknown(draw.Between(0.1, 0.4));
        var meter = new Display("ohmmeter", 0.8, 3, draw.Chance(0.5) ? 0.1 : 0.01);
        law.Reads("ohms", meter, p => [.. Enumerable.Repeat(p[ohms] + p[leads], 3)], 0.004);
        law.Sets("leads", meter, p => p[leads]);
        law.Finds("ohms", p => p[ohms]);
        return law;
    }

    private static BenchLaw FourWire(Noise draw)
    {
        var law = new BenchLaw("four-wire-ohms");
        int ohms = law.Unknown(draw.Decades(0.2, 8));
        int[] amps = law.Unknowns(((double[])[0.5, 0.5, 1, 1]).Select(a => a * draw.Between(0.95, 1.05)));
        double warmJoint = draw.Within(2e-5);
        law.Reads("volts", Volts(), p => amps.At(p).Each(a => (a * p[ohms]) + warmJoint));
        law.Reads("amps", Amps(draw.Chance(0.5) ? 0.01 : 0.001), p => amps.At(p));
        law.Finds("ohms", p => p[ohms]);
        return law;
    }

    private static BenchLaw VoltsAmps(Noise draw)
    {
        var law = new BenchLaw("volts-amps");
        int cold = law.Unknown(draw.Decades(1.5, 8)), rise = law.Unknown(draw.Chance(0.3) ? 0 : draw.Between(0.02, 0.4) * law.Number(cold) / 144); // by so much at 12 V
        int[] volts = law.Unknowns(((double[])[2, 4, 6, 8, 10, 12]).Select(v => v * draw.Between(0.97, 1.03)));

        // Ohms grow with the heater's degrees, and its degrees a little slower than its watts: the fit does not know of that.
        double Amps(double v, double[] p)
        {
            double amps = v / p[cold];
            for (int i = 0; i < 60; i++)
            {
                amps = 0.5 * (amps + (v / (p[cold] * (1 + (p[rise] * Math.Pow(v * amps, 0.97))))));
            }

            return amps;
        }

        law.Reads("volts", Volts(0.01), p => volts.At(p));
        law.Reads("amps", HeaterLaws.Amps(draw.Chance(0.5) ? 0.01 : 0.001), p => volts.At(p).Each(v => Amps(v, p)));
        law.Finds("hot ohms", p => volts.At(p)[^1] / Amps(volts.At(p)[^1], p));
        law.Finds("ohms", p => p[cold]);
        law.Finds("watts at the highest volts", p => volts.At(p)[^1] * Amps(volts.At(p)[^1], p));
        return law;
    }

    private static BenchLaw HoldPower(Noise draw)
    {
        var law = new BenchLaw("hold-power");
        int air = law.Unknown(draw.Between(18, 27));
        int linear = law.Unknown(draw.Decades(0.01, 0.15)), area = law.Unknown(draw.Decades(2e-4, 3e-3));
        double top = draw.Between(250, 420), wire = draw.Between(2, 6);
        int[] degrees = law.Unknowns(Draws.Even(100, top, draw.Chance(0.5) ? 5 : 8));
        double Watts(double c, double[] p) => (p[linear] * (c - p[air])) + (5.670374419e-8 * p[area] * (Math.Pow(c + 273.15, 4) - Math.Pow(p[air] + 273.15, 4)));
        double Ohms(double c) => wire * (1 + (4e-4 * (c - 20)));
        law.Sets("air", p => p[air], 1);
        law.Reads("degrees", Degrees(), p => degrees.At(p), 0.3);
        law.Reads("volts", Volts(0.01), p => degrees.At(p).Each(c => Math.Sqrt(Watts(c, p) * Ohms(c))));
        law.Reads("amps", Amps(), p => degrees.At(p).Each(c => Math.Sqrt(Watts(c, p) / Ohms(c))));
        law.Finds("linear loss", p => p[linear]);
        law.Finds("radiating area", p => p[area]);
        return law;
    }

    private static BenchLaw Drop(Noise draw)
    {
        var law = new BenchLaw("two-point-drop");
        int ohms = law.Unknown(draw.Decades(3e-3, 5e-2));
        int[] amps = law.Unknowns(((double[])[1, 2, 3, 4, 5]).Select(a => a * draw.Between(0.95, 1.05)));
        int touches = draw.Chance(0.5) ? 1 : 2;
        double warmJoint = draw.Within(2e-5);
        law.Sets("touches", touches);
        law.Reads("amps", Amps(0.01), p => amps.At(p));
        law.Reads("drop", new("millivoltmeter", 0.5, 3, 1e-4), p => amps.At(p).Each(a => (a * p[ohms] * touches) + warmJoint), 1e-4);
        law.Finds("ohms", p => p[ohms]);
        law.Finds("lost watts", p => p[ohms] * touches * Math.Pow(amps.At(p)[^1], 2));
        return law;
    }
}
