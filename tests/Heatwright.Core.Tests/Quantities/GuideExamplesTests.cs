using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>[jcgm-100] annex H: three worked examples. Tolerance everywhere: one unit of the last printed digit.</summary>
public class GuideExamplesTests
{
    private static readonly Origin Guide = new Origin.Published(new SourceKey("jcgm-100"), "annex H");

    /// <summary>H.1, calibration of an end gauge: inputs and results of table H.1 from memory, confirmed in public copies of the example.</summary>
    [Fact]
    public void An_end_gauge_has_the_published_length_and_doubt()
    {
        static Input Of(string name, double value, double doubt, Unit unit) =>
            new(name, new Estimate(value, unit, Doubts.From(Cause.Normal(name, CauseGroup.Trial), doubt), Guide));

        var nanometre = new Unit("nm", Units.Metre.Dimension, 1e-9);
        var length = Propagate.Through(
            x => x[0] + x[1] - (x[0] * ((x[2] * x[3]) + (x[4] * x[5]))),
            nanometre,
            "end gauge",
            Of("standard", 50_000_623, 25, nanometre),
            Of("difference", 215, 9.7, nanometre),
            Of("difference of expansion", 0, 0.58e-6, Units.PerKelvin),
            Of("room", -0.1, 0.41, Units.Kelvin),
            Of("expansion", 11.5e-6, 1.2e-6, Units.PerKelvin),
            Of("difference of temperature", 0, 0.029, Units.Kelvin));
        Assert.Equal(50_000_838, length.Value, 1.0);
        Assert.Equal(32, length.StandardDoubt, 1.0);

        // H.1.6: contributions 25 (ν 18), 9.7 (25.6), 2.9 (50) and 16.6 nm (2); ν 16, U99 93 nm.
        var pushes = length.Doubts.Pushes.ToDictionary(push => push.Cause.Id, push => Math.Abs(push.By));
        Assert.Equal(2.9, pushes["difference of expansion"], 0.1);
        Assert.Equal(16.6, pushes["difference of temperature"], 0.1);
        double degrees = Coverage.EffectiveDegrees([(pushes["standard"], 18), (pushes["difference"], 25.6), (pushes["difference of expansion"], 50), (pushes["difference of temperature"], 2)]);
        Assert.Equal(16, Math.Floor(degrees), 0.0);
        Assert.Equal(93, Coverage.Factor(0.99, degrees) * length.StandardDoubt, 1.0);
    }

    /// <summary>H.2, resistance and reactance from five sets of three readings: correlated means.</summary>
    [Fact]
    public void Resistance_and_reactance_have_the_published_values_doubts_and_correlations()
    {
        double[][] rows = Rows("gum_h2_data.csv");
        double[] means = [.. Enumerable.Range(1, 3).Select(column => rows.Average(row => row[column]))];
        double[,] covariance = new double[3, 3];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                covariance[i, j] = rows.Sum(row => (row[i + 1] - means[i]) * (row[j + 1] - means[j])) / (rows.Length * (rows.Length - 1));
            }
        }

        var doubts = Doubts.FromCovariance("five sets", CauseGroup.Trial, covariance);
        var volts = new Input("V", new Estimate(means[0], Units.Volt, doubts[0], Guide));
        var amps = new Input("I", new Estimate(means[1], Units.Milliampere, doubts[1], Guide));
        var phase = new Input("phi", new Estimate(means[2], Units.One, doubts[2], Guide));
        var results = new Dictionary<string, Estimate>
        {
            ["mean V"] = volts.Value,
            ["mean I"] = amps.Value,
            ["mean phi"] = phase.Value,
            ["R"] = Propagate.Through((v, i, p) => v / i * Math.Cos(p), Units.Ohm, "R", volts, amps, phase),
            ["X"] = Propagate.Through((v, i, p) => v / i * Math.Sin(p), Units.Ohm, "X", volts, amps, phase),
            ["Z"] = Propagate.Through((v, i) => v / i, Units.Ohm, "Z", volts, amps),
        };
        results["V"] = results["mean V"];
        results["I"] = results["mean I"];
        results["phi"] = results["mean phi"];

        int compared = 0;
        foreach (string[] cells in Cells("gum_h2_results.csv"))
        {
            string quantity = cells[0];
            string inside = quantity.Contains('(', StringComparison.Ordinal) ? quantity[(quantity.IndexOf('(', StringComparison.Ordinal) + 1)..^1] : quantity;
            double got = quantity.Split('(')[0] switch
            {
                "r" => Doubts.Correlation(results[inside.Split(';')[0]].Doubts, results[inside.Split(';')[1]].Doubts),
                "s" or "u" => results[inside].StandardDoubt,
                _ => results[quantity].Value,
            };
            Assert.Equal(Number(cells[1]), got, LastDigit(cells[1]));
            compared++;
        }

        Assert.Equal(18, compared);
    }

    /// <summary>H.3, a thermometer's correction as a straight line: slope and intercept are correlated, and the prediction at 30 °C needs it.</summary>
    [Fact]
    public void The_correction_of_a_thermometer_has_the_published_doubt_at_thirty_degrees()
    {
        double[][] rows = Rows("gum_h3_data.csv");
        double[] t = [.. rows.Select(row => row[1] - 20)];
        double[] b = [.. rows.Select(row => row[2])];

        // Normal equations of the straight line, [jcgm-100] H.3.2.
        int n = t.Length;
        double st = t.Sum();
        double stt = t.Sum(x => x * x);
        double d = (n * stt) - (st * st);
        double y1 = ((b.Sum() * stt) - (t.Zip(b, (x, y) => x * y).Sum() * st)) / d;
        double y2 = ((n * t.Zip(b, (x, y) => x * y).Sum()) - (b.Sum() * st)) / d;
        double variance = t.Zip(b, (x, y) => Math.Pow(y - y1 - (y2 * x), 2)).Sum() / (n - 2);
        var doubts = Doubts.FromCovariance("line", CauseGroup.Trial, new[,] { { variance * stt / d, -variance * st / d }, { -variance * st / d, n * variance / d } });
        var intercept = new Estimate(y1, Units.Kelvin, doubts[0], Guide);
        var slope = new Estimate(y2, Units.One, doubts[1], Guide);
        var at30 = Propagate.Through((a, s) => a + (s * (30 - 20)), Units.Kelvin, "correction at 30 °C", new("y1", intercept), new("y2", slope));

        var got = new Dictionary<string, double>
        {
            ["y1 intercept at 20 degC"] = y1,
            ["s(y1)"] = intercept.StandardDoubt,
            ["y2 slope"] = y2,
            ["s(y2)"] = slope.StandardDoubt,
            ["r(y1;y2)"] = Doubts.Correlation(intercept.Doubts, slope.Doubts),
            ["s residual"] = Math.Sqrt(variance),
            ["b(30 degC)"] = at30.Value,
            ["u(b(30 degC))"] = at30.StandardDoubt,
            ["degrees of freedom"] = n - 2,
        };
        foreach (string[] cells in Cells("gum_h3_results.csv"))
        {
            Assert.Equal(Number(cells[1]), got[cells[0]], LastDigit(cells[1]));
        }
    }

    private static string[][] Cells(string file) => [.. File.ReadAllLines(Repository.Reference("worked_examples/" + file))
        .Where(line => line.Length > 0 && !line.StartsWith('#')).Skip(1).Select(line => line.Split(','))];

    private static double[][] Rows(string file) => [.. Cells(file).Select(cells => cells.Select(Number).ToArray())];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static double LastDigit(string text) =>
        text.Contains('.', StringComparison.Ordinal) ? Math.Pow(10, -(text.Length - text.IndexOf('.', StringComparison.Ordinal) - 1)) : 1;
}
