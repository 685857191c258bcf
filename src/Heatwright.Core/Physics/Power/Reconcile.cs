using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>Brings label, ohmmeter and volts over amperes of one heater together.</summary>
/// <remarks>Half-widths become standard doubts by √3: [jcgm-100] 4.3.7, from memory. z up to 2 agrees, up to 3 is doubtful, above conflicts (common practice).
/// Weighted mean with its doubt widened by the Birge ratio when that is above 1: [birge-1932], from memory.</remarks>
public static class Reconcile
{
    private static readonly double RootOfThree = Math.Sqrt(3);

    /// <summary>A label with a relative half-width.</summary>
    public static OhmEvidence Label(double labelOhm, double halfWidth = HeaterLabel.OhmTolerance) =>
        new(Impossible.UnlessPositive(labelOhm, "Ω"), labelOhm * Impossible.UnlessFraction(halfWidth) / RootOfThree);

    /// <summary>A two-wire ohmmeter reading with shorted leads taken off; half-widths of accuracy (relative to the reading), digit and leads.</summary>
    public static OhmEvidence Ohmmeter(double readOhm, double leadsOhm, double accuracy, double digitOhm, double leadsHalfWidthOhm) => new(
        OhmReading.LessLeadsOhm(readOhm, leadsOhm),
        Root(readOhm * Impossible.UnlessFraction(accuracy), Impossible.IfNegative(digitOhm, "Ω"), Impossible.IfNegative(leadsHalfWidthOhm, "Ω")) / RootOfThree);

    /// <summary>Volts over amperes from a supply's display.</summary>
    public static OhmEvidence VoltAmp(VoltAmp read, SupplyDisplay display)
    {
        double volts = RelativeDoubt(Impossible.UnlessPositive(read.Volts, "V"), display.HalfDigitV, display.GainV);
        double amps = RelativeDoubt(Impossible.UnlessPositive(read.Amps, "A"), display.HalfDigitA, display.GainA);
        double ohm = read.Volts / read.Amps;
        return new(ohm, ohm * Root(volts, amps));
    }

    /// <summary>Relative standard doubt of one display: half digit and gain, both half-widths.</summary>
    public static double RelativeDoubt(double read, double halfDigit, double gain) =>
        Root(Impossible.IfNegative(halfDigit, "") / Impossible.UnlessPositive(read, ""), Impossible.UnlessFraction(gain)) / RootOfThree;

    /// <summary>Range that the half digits alone leave for V/I.</summary>
    public static (double LowOhm, double HighOhm) DigitRange(VoltAmp read, double halfDigitV, double halfDigitA) =>
        ((read.Volts - halfDigitV) / (read.Amps + halfDigitA), (read.Volts + halfDigitV) / (read.Amps - halfDigitA));

    /// <summary>Distance in standard doubts: |R_a − R_b|/√(u_a² + u_b²).</summary>
    public static double Z(OhmEvidence a, OhmEvidence b) => Math.Abs(a.Ohm - b.Ohm) / Root(a.DoubtOhm, b.DoubtOhm);

    /// <summary>What such a distance means.</summary>
    public static Agreement AgreementAt(double z) => Impossible.IfNegative(z, "") <= 2 ? Agreement.Consistent : z <= 3 ? Agreement.Doubtful : Agreement.Conflict;

    /// <summary>Weighted mean of independent evidence, its doubt, and whether the pieces scatter more than they claim.</summary>
    public static CombinedOhms Combine(params ReadOnlySpan<OhmEvidence> evidence)
    {
        Impossible.UnlessCounted(evidence.Length, 2, nameof(evidence));
        double weights = 0;
        double sum = 0;
        foreach (OhmEvidence piece in evidence)
        {
            double weight = 1 / (Impossible.UnlessPositive(piece.DoubtOhm, "Ω", nameof(evidence)) * piece.DoubtOhm);
            weights += weight;
            sum += weight * piece.Ohm;
        }

        double mean = sum / weights;
        double chiSquared = 0;
        foreach (OhmEvidence piece in evidence)
        {
            chiSquared += Math.Pow((piece.Ohm - mean) / piece.DoubtOhm, 2);
        }

        int freedom = evidence.Length - 1;
        return new(mean, Math.Sqrt(1 / weights), chiSquared, freedom, ChiSquare.ShareAbove(chiSquared, freedom));
    }

    internal static double Root(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (double part in parts)
        {
            sum += part * part;
        }

        return Math.Sqrt(sum);
    }
}

/// <summary>One piece of evidence on a resistance.</summary>
/// <param name="Ohm">Its value.</param>
/// <param name="DoubtOhm">Its standard doubt.</param>
public readonly record struct OhmEvidence(double Ohm, double DoubtOhm);

/// <summary>One pair read on a supply.</summary>
/// <param name="Volts">Voltage read.</param>
/// <param name="Amps">Current read.</param>
public readonly record struct VoltAmp(double Volts, double Amps);

/// <summary>Half-widths of a supply's own display. A cheap one without specification: gain 2 % of current, 1 % of voltage (common practice, no source).</summary>
/// <param name="HalfDigitV">Half of the last digit of volts.</param>
/// <param name="HalfDigitA">Half of the last digit of amperes.</param>
/// <param name="GainV">Relative half-width of the voltage gain.</param>
/// <param name="GainA">Relative half-width of the current gain.</param>
public readonly record struct SupplyDisplay(double HalfDigitV, double HalfDigitA, double GainV = 0.01, double GainA = 0.02)
{
    /// <summary>A display nobody specified: two more digits of volts and three more of amperes in doubt. Common practice, no source.</summary>
    public static SupplyDisplay Unspecified(double digitV, double digitA) =>
        new(2.5 * Impossible.UnlessPositive(digitV, "V"), 3.5 * Impossible.UnlessPositive(digitA, "A"));
}

/// <summary>How well two pieces of evidence agree.</summary>
public enum Agreement
{
    /// <summary>z up to 2.</summary>
    Consistent,

    /// <summary>z up to 3.</summary>
    Doubtful,

    /// <summary>z above 3.</summary>
    Conflict,
}

/// <summary>Weighted mean of the evidence.</summary>
/// <param name="MeanOhm">The mean.</param>
/// <param name="DoubtOhm">Its standard doubt if the pieces are as good as they claim.</param>
/// <param name="ChiSquared">Squares of the distances, in doubts.</param>
/// <param name="Freedom">Pieces less one.</param>
/// <param name="Chance">Probability of at least such a scatter by chance.</param>
public readonly record struct CombinedOhms(double MeanOhm, double DoubtOhm, double ChiSquared, int Freedom, double Chance)
{
    /// <summary>Scatter over what the pieces claim: √(χ²/(n − 1)).</summary>
    public double BirgeRatio => Math.Sqrt(ChiSquared / Freedom);

    /// <summary>Doubt widened by the Birge ratio when that is above 1.</summary>
    public double WidenedOhm => DoubtOhm * Math.Max(1, BirgeRatio);
}
