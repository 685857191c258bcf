using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Shared errors of the instruments of a trial: one cause for gain and one for offset per instrument and unit, wherever it acts.</summary>
public sealed class InstrumentCauses(IReadOnlyList<Instrument> instruments)
{
    private readonly Dictionary<string, Instrument> byId = instruments.ToDictionary(instrument => instrument.Id, StringComparer.Ordinal);

    /// <summary>The same, with further instruments.</summary>
    internal InstrumentCauses With(IReadOnlyList<Instrument> further) => further.Count == 0 ? this : new([.. byId.Values, .. further]);

    /// <summary>Gain cause and its standard size as a share of the reading; null where the instrument states none.</summary>
    public (Cause Cause, double Share)? Gain(Column column) =>
        Spec(column) is { Percent: > 0 } spec
            ? (Cause.Rectangular($"{column.Instrument} {spec.Unit} gain", CauseGroup.Instrument), spec.Percent / 100 / Math.Sqrt(3))
            : null;

    /// <summary>Offset cause and its standard size in SI; null where the instrument states none.</summary>
    public (Cause Cause, double Si)? Offset(Column column) =>
        Spec(column) is { Offset: > 0 } spec
            ? (Cause.Rectangular($"{column.Instrument} {spec.Unit} offset", CauseGroup.Instrument), spec.Offset * Units.Find(spec.Unit)!.Factor / Math.Sqrt(3))
            : null;

    /// <summary>Standard doubt of one reading's last digit, SI.</summary>
    public double ResolutionSi(Column column) => Spec(column) is { Resolution: > 0 } spec ? spec.Resolution * Units.Find(spec.Unit)!.Factor / Math.Sqrt(12) : 0;

    /// <summary>What the instrument of a column promises, as a specification; null where it states none for its unit.</summary>
    /// <param name="column">The column.</param>
    /// <param name="typed">Its readings as typed: where all of them carry a unit of their own, as '27mV' in a column of volts, they were read on that range.</param>
    internal MeterSaid? Promise(Column column, params IReadOnlyList<string> typed) => Spec(OwnUnit(column, typed) is { } own ? column with { Unit = own } : column) is { } spec
        ? new(column.Instrument, new AccuracySpec(spec.Percent / 100, 0, 0, spec.Offset) { FixedUnit = Units.Find(spec.Unit) })
        : null;

    /// <summary>True where there is an instrument of this name.</summary>
    internal bool Knows(string id) => byId.ContainsKey(id);

    /// <summary>True where the instrument of a column is one of these and states what it promises for what the column reads.</summary>
    internal bool Promises(Column column) => Spec(column) is not null;

    /// <summary>The unit that stands behind every number that was typed; null: behind none, or not the same one.</summary>
    private static string? OwnUnit(Column column, IReadOnlyList<string> typed)
    {
        string[] units = [.. typed.Select(text => text.Trim()).Where(text => text.Any(char.IsAsciiDigit)).Select(text => text[(text.LastIndexOfAny(Digits) + 1)..].Trim()).Distinct(StringComparer.Ordinal)];
        return units is [{ Length: > 0 } one] && Units.Find(one) is { } own && own.Dimension == Units.Find(column.Unit)?.Dimension ? own.Symbol : null;
    }

    private static readonly char[] Digits = [.. "0123456789."];

    private InstrumentSpec? Spec(Column column) =>
        byId.TryGetValue(column.Instrument, out var instrument) && Units.Find(column.Unit) is { } unit
            ? instrument.Specs.Where(spec => Units.Find(spec.Unit)?.Dimension == unit.Dimension).OrderByDescending(spec => Units.Find(spec.Unit) == unit).FirstOrDefault()
            : null;
}
