using System.Globalization;

namespace Heatwright.DemoTruth;

/// <summary>What is really so, which no reading shows directly. All of it is invented.</summary>
public sealed class Hidden
{
    private readonly SortedDictionary<string, double> values = new(StringComparer.Ordinal);

    public Hidden()
        : this("rope-hot-knife")
    {
    }

    /// <summary>The invented truth of one scene; its name is the folder it is kept in.</summary>
    public Hidden(string scene)
    {
        Scene = Scene.Named(scene);
        foreach (var (name, value, _) in Scene.Invented)
        {
            values[name] = value;
        }
    }

    internal Scene Scene { get; }

    /// <summary>Where the study made of it is kept.</summary>
    public string Folder => "samples/" + Scene.Folder;

    public double this[string name]
    {
        get => values[name];
        set
        {
            if (!values.ContainsKey(name))
            {
                throw new ArgumentException($"There is no hidden value '{name}'; --truth lists them all.", nameof(name));
            }

            values[name] = value;
        }
    }

    /// <summary>Every hidden value by its name.</summary>
    public IReadOnlyCollection<string> Names => values.Keys;

    public IEnumerable<string> Lines() => Scene.Invented.Select(line =>
        string.Create(CultureInfo.InvariantCulture, $"{line.Name} = {values[line.Name]}   ({line.What})"));
}
