namespace Heatwright.Quantities;

/// <summary>How a specification of several terms is meant.</summary>
public enum SpecTerms
{
    /// <summary>One limit: all terms may be at their worst together. The usual meaning.</summary>
    Together,
    /// <summary>Terms that are wrong independently of each other; only where the maker of the instrument says so.</summary>
    Apart,
}

/// <summary>What a maker of instruments promises: ±(0.5 % of reading + 2 digits), and what it means for a reading.</summary>
/// <param name="OfReading">Share of the reading.</param>
/// <param name="OfRange">Share of the full scale.</param>
/// <param name="Digits">Steps of the last digit.</param>
/// <param name="Fixed">A fixed amount, in the unit of the reading.</param>
public sealed record AccuracySpec(double OfReading, double OfRange, double Digits, double Fixed)
{
    /// <summary>True for 'whichever is larger': the share of the reading or the rest, never both.</summary>
    public bool TakesLarger { get; init; }

    /// <summary>Unit of the fixed amount, where one was stated.</summary>
    public Unit? FixedUnit { get; init; }

    /// <summary>How its terms are meant.</summary>
    public SpecTerms Terms { get; init; }

    /// <summary>Common practice, no source: a bench supply's volts without a specification. Read them at the load, not on the display.</summary>
    public static readonly AccuracySpec BenchVolts = new(0.01, 0, 2, 0);

    /// <summary>Common practice, no source: a bench supply's amperes without a specification.</summary>
    public static readonly AccuracySpec BenchAmps = new(0.02, 0, 3, 0);

    /// <summary>Common practice, no source, at its cautious edge: a hand-held thermometer, without the probe, whose class is a term of its own.</summary>
    public static readonly AccuracySpec HandThermometer = new(0.01, 0, 0, 2) { FixedUnit = Units.Kelvin };

    /// <summary>Reads a specification as it is printed: '±(0.5 % rdg + 2 digits)', '1%+3d', '±2 °C or 0.75 %'.</summary>
    public static Checked<AccuracySpec> Read(string text) => SpecReader.Read(text);

    /// <summary>The limit either side of a reading.</summary>
    /// <param name="reading">As shown.</param>
    /// <param name="step">One step of the last digit shown, in the same unit.</param>
    /// <param name="range">Full scale; needed where the specification has a share of it.</param>
    public double Limit(double reading, double step, double? range = null)
    {
        double gain = OfReading * Math.Abs(reading);
        double offset = Offset(step, range);
        return TakesLarger ? Math.Max(gain, offset) : gain + offset;
    }

    /// <summary>What may make a reading wrong: gain and offset, shared by everything read on this instrument, and the reading's own last digit.</summary>
    /// <param name="reading">As shown, in <paramref name="unit"/>.</param>
    /// <param name="unit">Unit of the reading.</param>
    /// <param name="step">One step of the last digit shown; 0 where another cause already holds it.</param>
    /// <param name="instrument">Name of the instrument; the shared causes are named after it.</param>
    /// <param name="readingName">Name of the reading, unique in the study.</param>
    /// <param name="range">Full scale; needed where the specification has a share of it.</param>
    /// <remarks>One limit a is rectangular, u = a/√3 ([jcgm-100] 4.3.7). Kept in three independent causes (gain p·x, offset n·d, and the part √(2·p·x·n·d) that stands for both
    /// being wrong together) it is the same number, and in a difference of two readings the offset cancels as it does in the meter.
    /// One cause for all would let gain and offset cancel each other, which no meter promises.</remarks>
    public Doubts Doubt(double reading, Unit unit, double step, string instrument, string readingName, double? range = null)
    {
        double gain = OfReading * reading / Math.Sqrt(3);
        double offset = Offset(step, range) * InUnit(unit) / Math.Sqrt(3);
        bool gainOnly = TakesLarger && Math.Abs(gain) >= offset;
        bool offsetOnly = TakesLarger && !gainOnly;
        string kind = $"{instrument} {(SiPrefix.BaseOf(unit) ?? unit).Symbol}";
        var doubts = Doubts.None;
        if (!offsetOnly)
        {
            doubts = doubts.With(Cause.Rectangular(kind + " gain", CauseGroup.Instrument), gain);
        }

        if (!gainOnly)
        {
            doubts = doubts.With(Cause.Rectangular(kind + " offset" + AtStep(step, range, unit), CauseGroup.Instrument), offset);
        }

        if (!TakesLarger && Terms == SpecTerms.Together)
        {
            double both = Math.Sign(reading) * Math.Sqrt(2 * Math.Abs(gain) * offset);
            doubts = doubts.With(Cause.Rectangular(kind + " gain with offset" + AtStep(step, range, unit), CauseGroup.Instrument), both);
        }

        return doubts.With(Cause.Rectangular(readingName + " last digit", CauseGroup.Trial), step / Math.Sqrt(12));
    }

    /// <summary>Offsets of two ranges of one meter are two offsets.</summary>
    private string AtStep(double step, double? range, Unit unit)
    {
        double size = Digits > 0 ? step : OfRange > 0 ? range ?? 0 : 0;
        return size > 0 ? $" at {Display.Significant(size, 6)} {unit.Symbol}" : "";
    }

    private double Offset(double step, double? range) => (Digits * step) + Fixed
        + (OfRange == 0 ? 0 : OfRange * (range ?? throw new ArgumentNullException(nameof(range), "This specification has a share of the range: the full scale is needed.")));

    /// <summary>1 where the fixed amount is stated in the unit of the reading; otherwise the whole offset is only a fixed amount and is converted.</summary>
    private double InUnit(Unit unit) => FixedUnit is null || FixedUnit.Dimension != unit.Dimension ? 1
        : Digits == 0 && OfRange == 0 ? FixedUnit.Factor / unit.Factor
        : FixedUnit.Factor == unit.Factor ? 1
        : throw new ArgumentException($"The fixed amount is in {FixedUnit}, the reading in {unit}: state both in one unit.", nameof(unit));
}
