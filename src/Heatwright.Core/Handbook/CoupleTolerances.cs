using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>Tolerance classes of new thermocouple wire.</summary>
/// <remarks>Source: [iec-60584-1], restated by three makers.</remarks>
public static class CoupleTolerances
{
    /// <summary>The class of a type; types without one in the table are refused with those there are.</summary>
    public static CoupleTolerance Find(string type, int tolerance)
    {
        var rows = Tables.Find("thermocouple-tolerance").Rows;
        var row = rows.FirstOrDefault(each => each.Key == type && each.Number("class") == tolerance)
            ?? throw new ArgumentOutOfRangeException(nameof(type), type,
                $"There is no class {tolerance} of type {type}. There are: {string.Join(", ", rows.Select(each => each.Key).Distinct())}, classes 1 and 2.");
        return new(row.Number("fixed"), row.Number("share"), row.Number("from"), row.Number("to"),
            row.NumberOrNull("ramp from") ?? double.NaN, row.NumberOrNull("ramp") ?? 0);
    }
}
