using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>Units as they stand in cells, each looked up once, and values brought from them to the unit of their column.</summary>
internal sealed class CellUnits
{
    private const int MostUnits = 4096;
    private readonly Dictionary<string, Unit?> units = new(StringComparer.Ordinal);

    public double Scaled(RawColumn column, double value, string word)
    {
        if (word.Length > 0 && !units.ContainsKey(word) && units.Count < MostUnits)
        {
            units[word] = UnitWords.Find(word);
        }

        var unit = word.Length == 0 ? null : units.GetValueOrDefault(word);
        double scaled = unit is null || column.Plan.Unit is null ? double.NaN : UnitScale.Convert(value, unit, column.Plan.Unit);
        column.OtherUnits += double.IsNaN(scaled) ? 1 : 0;
        return scaled;
    }
}
