using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>How the resistance of heating alloys grows when hot.</summary>
/// <remarks>Source: [gbt-1234], read on a public alloy data page; attribution to the standard from memory. Checked: MaterialTablesTests, HandbookSumsTests.</remarks>
public static class HeatingAlloys
{
    /// <summary>Resistance over that at 20 °C.</summary>
    [Law("alloy-ratio", "heaters", "C_t = R(T)/R(20 °C), straight between the table's rows", Says = "hot over cold resistance of heating wire", Source = "gbt-1234", Where = "factor table, read on a public alloy data page",
        Valid = "20 to 1000 °C; such wire cannot sense its own temperature", Example = "alloy=Cr20Ni80 at=350C")]
    public static double Ratio(
        [In("alloy", "word", "alloy", Words = "Cr20Ni80 Cr30Ni70 Cr15Ni60 Cr13Al4 Cr25Al5 Cr21Al6Nb Cr27Al7Mo2", DefaultWord = "Cr20Ni80")] string alloy,
        [In("T", "°C", "temperature", Name = "at", Min = 20, Max = 1000)] double atC)
    {
        var table = Tables.Find("heating-alloy-factors");
        string name = table.Columns.Skip(1).FirstOrDefault(column => string.Equals(column.Name, alloy?.Trim(), StringComparison.OrdinalIgnoreCase))?.Name
            ?? throw new ArgumentOutOfRangeException(nameof(alloy), alloy, $"There is no alloy '{alloy}' in the table. There are: {string.Join(", ", table.Columns.Skip(1).Select(column => column.Name))}.");
        return table.Interpolated(name, atC);
    }
}
