using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Browser;

/// <summary>A wax pen that was just begun: one wire, one trial with one reading. Invented.</summary>
internal static class PenStudy
{
    /// <summary>Types it in; where it is.</summary>
    public static string Begin(Bench bench)
    {
        string file = bench.In("pen.study");
        Assert.Equal(0, bench.Type("new", file, "--name", "wax pen").Exit);
        Assert.Equal(0, bench.Type("part", "add", file, "wire", "heater", "coil").Exit);
        Assert.Equal(0, bench.Type("trial", "add", file, "cold-ohms", "--on", "wire", "--name", "cold").Exit);
        Assert.Equal(0, bench.TypeWith("2R71\n", "trial", "enter", file, "cold").Exit);
        return file;
    }
}
