using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>Tolerance classes of new thermocouple wire.</summary>
/// <remarks>Source: [iec-60584-1], restated by three makers.</remarks>
public static class CoupleTolerances
{
    /// <summary>Limit of a class at a temperature, K.</summary>
    [Law("thermocouple-tolerance", "sensors", "larger of a fixed limit and a share of |t|", Says = "tolerance of new thermocouple wire", Unit = "K", Source = "iec-60584-1", Where = "classes 1 and 2, as three wire makers restate them",
        Valid = "new wire only; an unmarked sensor has no class", Example = "type=K class=2 at=350C")]
    public static double LimitK(
        [In("type", "word", "letter of the type", Name = "type", Words = "E J K N R S T")] string type,
        [In("class", "", "tolerance class", Name = "class", Min = 1, Max = 2, Default = 2)] int tolerance,
        [In("t", "°C", "temperature", Name = "at", Min = -40, Max = 1600)] double atC) =>
        Find((type ?? "").Trim().ToUpperInvariant(), tolerance).LimitK(atC);

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
