using System.Globalization;

namespace Heatwright.Tests.Physics;

/// <summary>Compares a worked value with a printed one, within half of its last printed digit unless a reason for another width is given.</summary>
internal static class Printed
{
    public const string Published = "published";
    public const string Computed = "computed by an independent script";
    public const string Practice = "common practice, no source";
    public const string Memory = "from memory";

    public static void Agrees(string id, string mark, string printed, double worked, double? within = null)
    {
        double expected = double.Parse(printed, NumberStyles.Float, CultureInfo.InvariantCulture);
        double allowed = within ?? HalfLastDigit(printed);
        Assert.True(Math.Abs(worked - expected) <= allowed, string.Create(CultureInfo.InvariantCulture,
            $"{id} ({mark}): printed {printed}, worked {worked:R}, allowed ±{allowed:R}"));
    }

    /// <summary>A row of values printed with commas between them.</summary>
    public static void Agree(string id, string mark, string printed, params double[] worked)
    {
        string[] fields = printed.Split(',', StringSplitOptions.TrimEntries);
        Assert.Equal(fields.Length, worked.Length);
        for (int i = 0; i < fields.Length; i++)
        {
            Agrees($"{id}, value {i + 1}", mark, fields[i], worked[i]);
        }
    }

    /// <summary>A law must refuse the value and name it.</summary>
    public static void Refuses(string name, Func<object?> law)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(law);
        Assert.Equal(name, refused.ParamName);
        Assert.Contains("must be", refused.Message, StringComparison.Ordinal);
        Assert.NotNull(refused.ActualValue);
    }

    public static IEnumerable<string[]> Rows(string path) => System.IO.File.ReadLines(Repository.Reference(path))
        .Where(line => line.Length > 0 && line[0] != '#').Skip(1).Select(line => line.Split(','));

    public static double Number(string field) => double.Parse(field, NumberStyles.Float, CultureInfo.InvariantCulture);

    // The least bit of slack lets a value that lies exactly on the rounding edge pass on either side.
    public static double HalfLastDigit(string printed)
    {
        string[] parts = printed.Split('e', 'E');
        int point = parts[0].IndexOf('.', StringComparison.Ordinal);
        int decimals = point < 0 ? 0 : parts[0].Length - point - 1;
        int exponent = parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0;
        return 0.5000001 * Math.Pow(10, exponent - decimals);
    }
}
