using System.Globalization;
using System.Text.Json;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Posed;

/// <summary>A plant posed in a bundle and answered by the command line, beside the plain run of the same equations.</summary>
internal sealed class Posed : IDisposable
{
    private readonly Bench bench = new();
    private readonly JsonDocument json;
    private readonly string[][] trace;

    public Posed(string plant, double[] at)
    {
        Directory.CreateDirectory(bench.In("posed"));
        File.WriteAllText(Path.Combine(bench.In("posed"), "study.json"),
            $$"""{ "format": "heatwright-bundle-1", "name": "posed", "seed": 1, "note": "Invented, to compare solvers with.", "invented": true, "plants": [ { "id": "p", "letter": "A", "name": "posed", {{plant}} } ] }""");
        File.WriteAllText(bench.In("at.csv"), "t_s\n" + string.Join('\n', at.Select(t => t.ToString("R", CultureInfo.InvariantCulture))) + "\n");
        var said = bench.Type("predict", bench.In("posed"), "--json", "--trace", bench.In("trace.csv"), "--at", bench.In("at.csv"));
        Assert.True(said.Exit == 0, said.Error);
        json = JsonDocument.Parse(said.Out);
        trace = [.. File.ReadLines(bench.In("trace.csv")).Select(line => line.Split(','))];
    }

    public void Dispose()
    {
        json.Dispose();
        bench.Dispose();
    }

    public double RunTimeS => json.RootElement.GetProperty("runTime_s").GetDouble();

    public string Stop => json.RootElement.GetProperty("stopReason").GetString()!;

    public string[] Notes => [.. json.RootElement.GetProperty("notes").EnumerateArray().Select(one => one.GetString()!)];

    public string Text => json.RootElement.GetRawText();

    public double Quantity(string name) => json.RootElement.GetProperty("quantities").EnumerateArray().Single(one => one.GetProperty("name").GetString() == name).GetProperty("value").GetDouble();

    public double Joule(string name) => json.RootElement.GetProperty("energies_J").GetProperty(name).GetDouble();

    public double[] Times(string name) => [.. json.RootElement.GetProperty("events").EnumerateArray().Where(one => one.GetProperty("name").GetString() == name).Select(one => one.GetProperty("t_s").GetDouble())];

    public double At(int row, string column) => double.Parse(trace[row + 1][Array.IndexOf(trace[0], column)], CultureInfo.InvariantCulture);

    public string Region(int row) => trace[row + 1][Array.IndexOf(trace[0], "region")];

    /// <summary>Run time, stored and flowed energies, temperatures and charge at every instant, against the plain run, to 1e-5 or better.</summary>
    public void Agrees(PlainTool tool, PlainRun plain, string stop, params string[] nodes)
    {
        Assert.Equal(stop, Stop);
        Close(plain.EndS, RunTimeS, "run time");
        Close(tool.LoadJ(plain.End), Joule("heater"), "load energy");
        Close(tool.TerminalJ(plain.End), Joule("pack terminals"), "terminal energy");
        Close(tool.ChargeC(plain.End), Quantity("charge drawn"), "charge");
        Close(tool.WorkJ(plain.End), Joule("work"), "work");
        foreach (var (name, atS) in plain.Crossed)
        {
            Assert.Equal(atS, Times(name)[0], (1e-5 * atS) + 1e-4);
        }

        Assert.NotEmpty(plain.States);
        for (int i = 0; i < plain.States.Count; i++)
        {
            for (int node = 0; node < nodes.Length; node++)
            {
                double rise = tool.NodeC(plain.States[i], node) - tool.AirC;
                Assert.Equal(tool.NodeC(plain.States[i], node), At(i, nodes[node] + "_C"), (1e-5 * Math.Abs(rise)) + 1e-4);
            }

            Assert.Equal(tool.SensorC(plain.States[i]), At(i, "sensor_C"), 5e-3);
            Assert.Equal(Enumerable.Range(0, tool.Groups.Sum(group => group.Length)).Min(cell => tool.Charge(plain.States[i], cell)), At(i, "charge_left"), 1e-6);
        }
    }

    private static void Close(double expected, double actual, string what) =>
        Assert.True(Math.Abs(expected - actual) <= (1e-5 * Math.Abs(expected)) + 1e-9, $"{what}: expected {expected:R}, is {actual:R}");
}
