namespace Heatwright.Physics;

/// <summary>Tolerance class of thermocouple wire: the larger of a fixed limit and a share of the temperature, inside a range.</summary>
/// <param name="FixedK">Limit that always stands, K.</param>
/// <param name="Share">Limit as a share of |t| in °C.</param>
/// <param name="MinC">Lower end of the class, °C.</param>
/// <param name="MaxC">Upper end of the class, °C.</param>
/// <param name="RampFromC">Where a ramp on top of the fixed limit begins, °C (class 1 of R and S); NaN without one.</param>
/// <param name="RampPerK">Slope of that ramp.</param>
/// <remarks>Source: [iec-60584-1] table of tolerances, restated by three makers. Checked: CoupleToleranceTests. New wire only.</remarks>
public sealed record CoupleTolerance(double FixedK, double Share, double MinC, double MaxC, double RampFromC = double.NaN, double RampPerK = 0)
{
    /// <summary>Limit at a temperature, K.</summary>
    public double LimitK(double tC) => tC >= MinC && tC <= MaxC
        ? Math.Max(FixedK + (double.IsNaN(RampFromC) ? 0 : Math.Max(0, RampPerK * (tC - RampFromC))), Share * Math.Abs(tC))
        : throw new ArgumentOutOfRangeException(nameof(tC), tC, string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"This class holds from {MinC:0} to {MaxC:0} °C; {tC:0.#} °C lies outside."));

    /// <summary>Temperature above which the share rules over the fixed limit, °C.</summary>
    public double SwitchPointC => Share > 0 ? FixedK / Share : double.PositiveInfinity;
}
