using System.Globalization;

namespace Heatwright.Physics;

/// <summary>Coefficients of a platinum resistance function: R/R₀ = 1 + At + Bt², below 0 °C + C(t − 100)t³.</summary>
public sealed record PlatinumCurve(double APerK, double BPerK2, double CPerK4, double MinC, double MaxC);

/// <summary>Platinum resistance sensors.</summary>
/// <remarks>Source: [iec-60751], Callendar–Van Dusen function; the coefficients arrive as arguments. A definition: throws outside
/// its range. Checked: PlatinumTests against the printed table.</remarks>
public static class Platinum
{
    /// <summary>Resistance at a temperature, Ω.</summary>
    /// <param name="zeroOhm">Resistance at 0 °C: 100 for a Pt100.</param>
    public static double ResistanceOhm(PlatinumCurve curve, double zeroOhm, double tC)
    {
        if (!(tC >= curve.MinC && tC <= curve.MaxC))
        {
            throw new ArgumentOutOfRangeException(nameof(tC), tC, string.Create(CultureInfo.InvariantCulture,
                $"The platinum function is defined from {curve.MinC:0.###} to {curve.MaxC:0.###} °C; {tC:0.###} °C lies outside."));
        }

        return zeroOhm * Ratio(curve, tC);
    }

    /// <summary>Sensitivity, Ω/K.</summary>
    public static double SlopeOhmPerK(PlatinumCurve curve, double zeroOhm, double tC) => zeroOhm * RatioSlope(curve, tC);

    /// <summary>Temperature that gives this resistance, °C: closed form above 0 °C, Newton from it below.</summary>
    public static double TemperatureC(PlatinumCurve curve, double zeroOhm, double ohm)
    {
        double ratio = ohm / zeroOhm;
        double low = Ratio(curve, curve.MinC), high = Ratio(curve, curve.MaxC);
        if (!(ratio >= low - 1e-12 && ratio <= high + 1e-12))
        {
            throw new ArgumentOutOfRangeException(nameof(ohm), ohm, string.Create(CultureInfo.InvariantCulture,
                $"A sensor of {zeroOhm:0.###} Ω at 0 °C gives {low * zeroOhm:0.###} to {high * zeroOhm:0.###} Ω; {ohm:0.###} Ω lies outside."));
        }

        double tC = (-curve.APerK + Math.Sqrt((curve.APerK * curve.APerK) - (4 * curve.BPerK2 * (1 - ratio)))) / (2 * curve.BPerK2);
        for (int step = 0; step < 20 && tC < 0; step++)
        {
            double move = (Ratio(curve, tC) - ratio) / RatioSlope(curve, tC);
            tC -= move;
            if (Math.Abs(move) < 1e-12)
            {
                break;
            }
        }

        return tC;
    }

    /// <summary>Limit of a tolerance class, K: fixed part + part per degree of |t|.</summary>
    public static double ToleranceK(double fixedK, double perK, double tC) => fixedK + (perK * Math.Abs(tC));

    /// <summary>Error that the resistance of two leads adds, K.</summary>
    public static double LeadErrorK(PlatinumCurve curve, double zeroOhm, double leadsOhm, double tC) => leadsOhm / SlopeOhmPerK(curve, zeroOhm, tC);

    /// <summary>Rise of the sensor above its surroundings by its measuring current, K: I²R/δ.</summary>
    public static double SelfHeatingK(double currentA, double ohm, double dissipationWPerK) => currentA * currentA * ohm / dissipationWPerK;

    private static double Ratio(PlatinumCurve curve, double tC) =>
        1 + (tC * (curve.APerK + (tC * curve.BPerK2))) + (tC < 0 ? curve.CPerK4 * (tC - 100) * tC * tC * tC : 0);

    private static double RatioSlope(PlatinumCurve curve, double tC) =>
        curve.APerK + (2 * curve.BPerK2 * tC) + (tC < 0 ? curve.CPerK4 * ((4 * tC) - 300) * tC * tC : 0);
}
