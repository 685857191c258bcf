using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>The published rested-voltage tables, as the program carries them.</summary>
internal static class OcvTables
{
    public static OcvTable A { get; } = Read("energy-18650");
    public static OcvTable B { get; } = Read("power-21700");
    public static OcvTable B2 { get; } = Read("power-21700-second");
    public static OcvTable C { get; } = Read("lifepo4-18650");
    public static OcvTable D { get; } = Read("nimh");

    private static OcvTable Read(string kind)
    {
        Table table = Tables.Find("rested-volts-" + kind);
        return new OcvTable(table.Numbers("charge"), table.Numbers("volts"));
    }
}
