using System.Text;

namespace Heatwright.DemoTruth;

/// <summary>A column of a run: name, unit and who read it.</summary>
internal sealed record DemoColumn(string Name, string Unit, BenchMeter By);

/// <summary>One execution of a bench test with the texts as typed or logged.</summary>
internal sealed class DemoRun
{
    private readonly Noise noise;

    public DemoRun(double seed, string id, params DemoColumn[] columns)
    {
        noise = new Noise(seed, "run " + id);
        Id = id;
        Columns = columns;
    }

    public string Id { get; }

    public IReadOnlyList<DemoColumn> Columns { get; }

    public List<string[]> Lines { get; } = [];

    public Dictionary<string, double> Settings { get; } = [];

    public Noise Noise => noise;

    public void Read(params double[] values) =>
        Lines.Add([.. values.Select((value, i) => Columns[i].By.Shows(value, Columns[i].Unit, noise))]);

    public string Csv()
    {
        var text = new StringBuilder();
        text.Append(string.Join(',', Columns.Select(column => column.Name))).Append('\n');
        foreach (string[] line in Lines)
        {
            text.Append(string.Join(',', line.Select(field => field.Contains(',', StringComparison.Ordinal) ? $"\"{field}\"" : field))).Append('\n');
        }

        return text.ToString();
    }
}

/// <summary>A planned bench test of one part with its runs.</summary>
internal sealed record DemoTrial(string Id, string Kind, string Part, string Purpose, IReadOnlyList<DemoRun> Runs)
{
    /// <summary>The card it is done by; null: a kind of its own.</summary>
    public string? Card { get; init; }
}
