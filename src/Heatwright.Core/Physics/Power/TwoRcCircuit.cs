namespace Heatwright.Physics;

/// <summary>A cell as one resistor and two resistor-capacitor pairs in series: the short pair takes tens of seconds, the long one minutes.</summary>
/// <param name="SeriesOhm">Drops at once.</param>
/// <param name="ShortOhm">Resistor of the short pair.</param>
/// <param name="ShortF">Capacitor of the short pair.</param>
/// <param name="LongOhm">Resistor of the long pair.</param>
/// <param name="LongF">Capacitor of the long pair.</param>
public readonly record struct TwoRcCircuit(double SeriesOhm, double ShortOhm, double ShortF, double LongOhm, double LongF)
{
    /// <summary>Time constant of the short pair, s.</summary>
    public double ShortS => ShortOhm * ShortF;

    /// <summary>Time constant of the long pair, s.</summary>
    public double LongS => LongOhm * LongF;

    /// <summary>What a heater run of many minutes sees: all three resistors.</summary>
    public double SettledOhm => SeriesOhm + ShortOhm + LongOhm;

    /// <summary>Sag per ampere, t seconds after a current step from rest: R0 + R1(1 − e^(−t/τ1)) + R2(1 − e^(−t/τ2)).</summary>
    public double OhmAfter(double seconds) => SeriesOhm
        - (ShortOhm * TwoRcCell.Grown(Impossible.IfNegative(seconds, "s"), ShortS))
        - (LongOhm * TwoRcCell.Grown(seconds, LongS));

    /// <summary>The same cell shape at another size: resistances times the factor, capacitances divided by it, time constants kept.</summary>
    /// <remarks>Common practice, no source: factor = measured resistance after 10 s / this circuit's <see cref="OhmAfter"/>(10 s).</remarks>
    public TwoRcCircuit Scaled(double factor)
    {
        Impossible.UnlessPositive(factor, "");
        return new(SeriesOhm * factor, ShortOhm * factor, ShortF / factor, LongOhm * factor, LongF / factor);
    }
}

/// <summary>State of such a cell.</summary>
/// <param name="Charge">Charge left, 0 to 1.</param>
/// <param name="ShortV">Voltage over the short pair.</param>
/// <param name="LongV">Voltage over the long pair.</param>
public readonly record struct TwoRcState(double Charge, double ShortV, double LongV);
