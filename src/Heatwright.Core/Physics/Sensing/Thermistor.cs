namespace Heatwright.Physics;

/// <summary>Coefficients of 1/T = A + B·ln R + C·(ln R)³, T in K, R in Ω.</summary>
public sealed record SteinhartHart(double A, double B, double C)
{
    /// <summary>False where C is negative: the three points are not from one thermistor, or one is misread.</summary>
    public bool IsOneThermistor => C >= 0;

    /// <summary>Temperature at a resistance, °C.</summary>
    public double TemperatureC(double ohm)
    {
        double log = Math.Log(ohm);
        return (1 / (A + (B * log) + (C * log * log * log))) - Constants.ZeroCelsiusK;
    }

    /// <summary>Curve through three points.</summary>
    public static SteinhartHart Through((double TC, double Ohm) a, (double TC, double Ohm) b, (double TC, double Ohm) c)
    {
        double la = Math.Log(a.Ohm), lb = Math.Log(b.Ohm), lc = Math.Log(c.Ohm);
        double ya = 1 / (a.TC + Constants.ZeroCelsiusK), yb = 1 / (b.TC + Constants.ZeroCelsiusK), yc = 1 / (c.TC + Constants.ZeroCelsiusK);
        // Newton's divided differences of y = A + B·x + C·x³; x³ has the second difference la + lb + lc.
        double first = (yb - ya) / (lb - la);
        double cubic = (((yc - ya) / (lc - la)) - first) / (lc - lb) / (la + lb + lc);
        double linear = first - (cubic * ((la * la) + (la * lb) + (lb * lb)));
        return new(ya - (linear * la) - (cubic * la * la * la), linear, cubic);
    }
}

/// <summary>Thermistors that fall with temperature (NTC).</summary>
/// <remarks>R = R₂₅·exp[β(1/T − 1/298.15)]; definition of β by makers, common practice. Steinhart–Hart: [steinhart-hart-1968], from
/// memory. Checked: ThermistorTests.</remarks>
public static class Thermistor
{
    /// <summary>25 °C in kelvin, where the nominal resistance is stated.</summary>
    public const double NominalK = 298.15;

    /// <summary>Resistance at a temperature, Ω.</summary>
    [Law("thermistor-resistance", "sensors", "R = R25·exp(β·(1/T − 1/298.15 K))", Says = "resistance of a thermistor at a temperature", Unit = "Ω", Source = "common practice",
        Where = "beta as makers state it", Valid = "within about 100 K of the two temperatures that beta was stated between",
        Example = "nominal=100kohm beta=3950K at=200C")]
    public static double ResistanceOhm(
        [In("R25", "Ω", "resistance at 25 °C", Name = "nominal", Min = 1e-3)] double nominalOhm,
        [In("β", "K", "beta", Min = 100, Max = 20_000)] double betaK,
        [In("t", "°C", "temperature", Name = "at", Min = -200, Max = 1000, SoftMin = -55, SoftMax = 300)] double tC) =>
        nominalOhm * Math.Exp(betaK * ((1 / (tC + Constants.ZeroCelsiusK)) - (1 / NominalK)));

    /// <summary>Temperature at a resistance, °C.</summary>
    [Law("thermistor-temperature", "sensors", "1/T = 1/298.15 K + ln(R/R25)/β", Says = "temperature of a thermistor from its resistance", Unit = "°C", Source = "common practice",
        Where = "beta as makers state it", Valid = "within about 100 K of the two temperatures that beta was stated between",
        Example = "nominal=100kohm beta=3950K resistance=745ohm")]
    public static double TemperatureC(
        [In("R25", "Ω", "resistance at 25 °C", Name = "nominal", Min = 1e-3)] double nominalOhm,
        [In("β", "K", "beta", Min = 100, Max = 20_000)] double betaK,
        [In("R", "Ω", "resistance", Name = "resistance", Min = 1e-9)] double ohm)
    {
        double inverseK = (1 / NominalK) + (Math.Log(ohm / nominalOhm) / betaK);
        return inverseK > 0
            ? (1 / inverseK) - Constants.ZeroCelsiusK
            : throw new ArgumentOutOfRangeException(nameof(ohm), ohm, "So small a resistance stands for no temperature with this beta.");
    }

    /// <summary>Beta between two points, K.</summary>
    public static double BetaK((double TC, double Ohm) a, (double TC, double Ohm) b) =>
        Math.Log(a.Ohm / b.Ohm) / ((1 / (a.TC + Constants.ZeroCelsiusK)) - (1 / (b.TC + Constants.ZeroCelsiusK)));

    /// <summary>How far the answer is off where beta is off by a share, K: T²·share·|1/298.15 − 1/T|.</summary>
    public static double BetaErrorK(double betaShare, double tC)
    {
        double tK = tC + Constants.ZeroCelsiusK;
        return tK * tK * betaShare * Math.Abs((1 / NominalK) - (1 / tK));
    }
}
