using System.Globalization;

namespace Heatwright.Tests.Numerics;

/// <summary>Reads the published reference sets: '#' lines, one header row, then cells that may be quoted.</summary>
internal static class StrdTable
{
    public static Dictionary<string, string>[] Rows(string path)
    {
        var lines = File.ReadLines(Repository.Reference(Path.Combine("nist_strd", path))).Where(line => !line.StartsWith('#')).ToArray();
        string[] names = lines[0].Split(',');
        return [.. lines.Skip(1).Where(line => line.Length > 0).Select(line => names.Zip(Cells(line)).ToDictionary(cell => cell.First, cell => cell.Second))];
    }

    public static double[] Column(string path, string name) => [.. Rows(path).Select(row => Number(row[name]))];

    public static double Number(string text) => text == "Infinity" ? double.PositiveInfinity : double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>How many leading digits of a value agree with the certified one: −log₁₀ of the relative error, 15 at most.</summary>
    public static double DigitsAgreeing(double value, double certified)
    {
        double error = certified == 0 ? Math.Abs(value) : Math.Abs(value - certified) / Math.Abs(certified);
        return double.IsNaN(error) ? 0 : Math.Min(15, -Math.Log10(Math.Max(error, 1e-16)));
    }

    private static IEnumerable<string> Cells(string line) =>
        line.Split('"').SelectMany((part, i) => i % 2 == 1 ? [part] : part.Split(',').Where((cell, k) => cell.Length > 0 || (i == 0 && k == 0)));
}
