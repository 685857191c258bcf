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

    /// <summary>Temperature from a resistance through three points of one thermistor.</summary>
    [Law("thermistor-three-points", "sensors", "1/T = A + B·ln R + C·ln³R through three points", Says = "temperature of a thermistor from three known points", Source = "steinhart-hart-1968", Where = "from memory",
        Valid = "between the points; a negative C means they are not from one thermistor", Example = "first=100kohm first-at=25C second=10.5kohm second-at=85C third=330ohm third-at=250C resistance=2kohm")]
    public static ThreePointThermistor ThroughThree(
        [In("R1", "Ω", "first resistance", Name = "first", Min = 1e-300)] double firstOhm,
        [In("T1", "°C", "its temperature", Name = "first-at", Min = -200, Max = 1000)] double firstC,
        [In("R2", "Ω", "second resistance", Name = "second", Min = 1e-300)] double secondOhm,
        [In("T2", "°C", "its temperature", Name = "second-at", Min = -200, Max = 1000)] double secondC,
        [In("R3", "Ω", "third resistance", Name = "third", Min = 1e-300)] double thirdOhm,
        [In("T3", "°C", "its temperature", Name = "third-at", Min = -200, Max = 1000)] double thirdC,
        [In("R", "Ω", "resistance now", Name = "resistance", Min = 1e-300)] double ohm)
    {
        if (firstOhm == secondOhm || secondOhm == thirdOhm || firstOhm == thirdOhm)
        {
            throw Impossible.Outside(nameof(secondOhm), secondOhm, "Ω", "another resistance than the first and the third");
        }

        var curve = SteinhartHart.Through((firstC, firstOhm), (secondC, secondOhm), (thirdC, thirdOhm));
        double atC = curve.TemperatureC(ohm);
        return atC > -Constants.ZeroCelsiusK && atC < 2000 ? new ThreePointThermistor(atC, curve.A, curve.B, curve.C, curve.IsOneThermistor) : throw Impossible.Outside(nameof(ohm), ohm, "Ω", "nearer to the three points");
    }

    /// <summary>Beta between two points, K.</summary>
    public static double BetaK((double TC, double Ohm) a, (double TC, double Ohm) b) =>
        Math.Log(a.Ohm / b.Ohm) / ((1 / (a.TC + Constants.ZeroCelsiusK)) - (1 / (b.TC + Constants.ZeroCelsiusK)));

    /// <summary>Beta between two points in plain numbers, K.</summary>
    [Law("thermistor-beta", "sensors", "β = ln(R1/R2)/(1/T1 − 1/T2)", Says = "beta of a thermistor from two readings", Unit = "K", Source = "common practice", Where = "beta as makers state it",
        Valid = "between the two temperatures", Example = "first=100kohm first-at=25C second=6.975kohm second-at=100C")]
    public static double BetaBetween(
        [In("R1", "Ω", "first resistance", Name = "first", Min = 1e-300)] double firstOhm,
        [In("T1", "°C", "its temperature", Name = "first-at", Min = -200, Max = 1000)] double firstC,
        [In("R2", "Ω", "second resistance", Name = "second", Min = 1e-300)] double secondOhm,
        [In("T2", "°C", "its temperature", Name = "second-at", Min = -200, Max = 1000)] double secondC) =>
        firstC != secondC ? BetaK((firstC, firstOhm), (secondC, secondOhm)) : throw Impossible.Outside(nameof(secondC), secondC, "°C", "another temperature than the first");

    /// <summary>How far the answer is off where beta is off by a share, K: T²·share·|1/298.15 − 1/T|.</summary>
    [Law("thermistor-beta-error", "sensors", "ΔT = T²·share·|1/298.15 − 1/T|", Says = "how far a thermistor is off by its beta", Unit = "K", Source = "common practice", Where = "beta as makers state it",
        Valid = "beta off by a small share", Example = "share=1% at=300C")]
    public static double BetaErrorK(
        [In("share", "", "share by which beta is off", Name = "share", Min = 0, Max = 1)] double betaShare,
        [In("t", "°C", "temperature", Name = "at", Min = -200, Max = 1000)] double tC)
    {
        double tK = tC + Constants.ZeroCelsiusK;
        return tK * tK * betaShare * Math.Abs((1 / NominalK) - (1 / tK));
    }
}

/// <summary>A thermistor through three points.</summary>
/// <param name="TemperatureC">Temperature now.</param>
/// <param name="A">First coefficient.</param>
/// <param name="B">Second coefficient.</param>
/// <param name="C">Third coefficient.</param>
/// <param name="IsOne">Whether the points can be from one thermistor.</param>
public sealed record ThreePointThermistor(
    [property: Out("°C", "temperature now", Name = "temperature")] double TemperatureC,
    [property: Out("", "coefficient A", Name = "a")] double A,
    [property: Out("", "coefficient B", Name = "b")] double B,
    [property: Out("", "coefficient C", Name = "c")] double C,
    [property: Out("", "whether the points can be from one thermistor", Name = "one-thermistor")] bool IsOne);
