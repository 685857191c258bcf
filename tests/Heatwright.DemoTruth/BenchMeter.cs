using System.Globalization;

namespace Heatwright.DemoTruth;

/// <summary>What a meter may be wrong by, for one unit, as its sheet says.</summary>
internal sealed record MeterSpec(string Unit, double Percent, double Offset, double Resolution);

/// <summary>A meter with its own true errors, drawn once from its limits and kept for all it reads.</summary>
internal sealed class BenchMeter
{
    private readonly Dictionary<string, (double Gain, double Offset)> errors = new(StringComparer.Ordinal);

    public BenchMeter(double seed, string id, string name, params MeterSpec[] specs)
    {
        Id = id;
        Name = name;
        Specs = specs;
        foreach (var spec in specs)
        {
            var draw = new Noise(seed, $"{id} {spec.Unit}");
            errors[spec.Unit] = (draw.Within(spec.Percent / 100), draw.Within(spec.Offset));
        }
    }

    public string Id { get; }

    public string Name { get; }

    public IReadOnlyList<MeterSpec> Specs { get; }

    /// <summary>What the meter shows: its gain and offset, the noise of half a step, rounded to its step.</summary>
    public string Shows(double value, string unit, Noise noise)
    {
        var spec = Specs.Single(spec => spec.Unit == unit);
        var (gain, offset) = errors[unit];
        double seen = (value * (1 + gain)) + offset + (0.5 * spec.Resolution * noise.Bell());
        return Text(seen, spec.Resolution);
    }

    /// <summary>The nearest step of a resolution, with as many decimals as the resolution has.</summary>
    public static string Text(double value, double resolution)
    {
        int decimals = 0;
        while (decimals < 6 && Math.Abs((resolution * Math.Pow(10, decimals)) - Math.Round(resolution * Math.Pow(10, decimals))) > 1e-9)
        {
            decimals++;
        }

        double rounded = Math.Round(value / resolution) * resolution;
        return (Math.Round(rounded, decimals) + 0.0).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}

/// <summary>The instruments of this bench.</summary>
internal sealed class Bench(double seed)
{
    public BenchMeter Meter { get; } = new(seed, "meter", "hand-held multimeter",
        new("V", 0.5, 0.002, 0.001), new("A", 1.0, 0.005, 0.001), new("Ω", 0.8, 0.02, 0.01), new("mV", 0.5, 0.05, 0.01));

    public BenchMeter Logger { get; } = new(seed, "logger", "controller board as a logger",
        new("V", 0.5, 0.008, 0.002), new("A", 1.0, 0.01, 0.002), new("s", 0.01, 0, 0.1), new("°C", 0, 1.5, 0.1));

    public BenchMeter Thermometer { get; } = new(seed, "thermometer", "thermometer for type K probes", new MeterSpec("°C", 0.5, 1.0, 0.1));

    public BenchMeter GripProbe { get; } = new(seed, "grip-probe", "surface thermometer on the grip", new MeterSpec("°C", 0, 1.0, 0.1));

    public BenchMeter Watch { get; } = new(seed, "watch", "stop-watch, read by eye", new MeterSpec("s", 0.01, 0.5, 1));

    public IReadOnlyList<BenchMeter> All => [Meter, Logger, Thermometer, GripProbe, Watch];
}
