using System.Globalization;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Measured logs of the reference folder; source and licence in tests/reference/README.md and in each file's head.</summary>
internal static class RealLogs
{
    public static CellLog Cell(string file, double airC = 25)
    {
        double[][] rows = [.. Rows("cells/" + file)];
        return new(file, Column(rows, 0), Column(rows, 1), Column(rows, 2), Column(rows, 3), airC);
    }

    public static IEnumerable<double[]> Rows(string file) => Lines(file).Select(line => Numbers(line, int.MaxValue));

    /// <summary>Lines that begin with a number.</summary>
    public static IEnumerable<string> Lines(string file) => File.ReadLines(Repository.Reference(file)).Where(line => line.Length > 0 && (char.IsAsciiDigit(line[0]) || line[0] == '-'));

    /// <summary>The first fields of a line.</summary>
    public static double[] Numbers(string line, int count) => [.. line.Split(',').Take(count).Select(field => double.Parse(field, CultureInfo.InvariantCulture))];

    private static double[] Column(double[][] rows, int column) => [.. rows.Select(row => row[column])];
}
