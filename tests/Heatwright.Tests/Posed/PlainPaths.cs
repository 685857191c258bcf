namespace Heatwright.Tests.Posed;

/// <summary>Operating points by walking up in current and halving, written without the formulas of the program.</summary>
internal static class PlainPaths
{
    /// <summary>Input current of the first point at which the source gives what is asked: E·I − R·I² − lost(I) = watts.</summary>
    public static double InputFor(double e, double r, double watts, Func<double, double> lost)
    {
        double Left(double amps) => (e * amps) - (r * amps * amps) - lost(amps) - watts;
        // The first crossing lies before the top of a parabola; where the top is, is found by golden thirds.
        (double a, double b) = (0, e / r);
        for (int i = 0; i < 120; i++)
        {
            double third = (b - a) / 3;
            (a, b) = Left(a + third) < Left(b - third) ? (a + third, b) : (a, b - third);
        }

        double top = (a + b) / 2;
        if (Left(top) < 0)
        {
            return double.NaN;
        }

        (double low, double high) = (0, top);
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Left(middle) < 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    public static PlainPath Direct(Func<double, double> ohmAt) => (e, r, c) =>
    {
        double amps = e / (r + ohmAt(c));
        return (amps, amps * amps * ohmAt(c), 0);
    };

    public static PlainPath StepDown(double setV, double a0, double a1, double a2, Func<double, double> ohmAt) => (e, r, c) =>
    {
        double outA = setV / ohmAt(c);
        double loss = a0 + (a1 * outA) + (a2 * outA * outA);
        return (InputFor(e, r, (setV * outA) + loss, _ => 0), setV * outA, loss);
    };

    /// <summary>Loss over the input current, which a limit may hold.</summary>
    public static PlainPath OverInput(double setV, double a0, double a1, double a2, double limitA, Func<double, double> ohmAt) => (e, r, c) =>
    {
        double Lost(double amps) => a0 + (a1 * amps) + (a2 * amps * amps);
        double amps = InputFor(e, r, setV * setV / ohmAt(c), Lost);
        if (!(amps <= limitA))
        {
            amps = limitA;
        }

        return (amps, (e * amps) - (r * amps * amps) - Lost(amps), Lost(amps));
    };

    public static PlainPath Linear(double setV, double dropoutV, double quiescentA, Func<double, double> ohmAt) => (e, r, c) =>
    {
        // Raise the output until either the set volts or the drop-out is met.
        double outA = setV / ohmAt(c);
        double inV = e - (r * (outA + quiescentA));
        if (inV - dropoutV < setV)
        {
            (double low, double high) = (0, setV);
            for (int i = 0; i < 60; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = e - (r * ((middle / ohmAt(c)) + quiescentA)) - dropoutV > middle ? (middle, high) : (low, middle);
            }

            outA = low / ohmAt(c);
            inV = e - (r * (outA + quiescentA));
        }

        double outV = outA * ohmAt(c);
        return (outA + quiescentA, outA * outV, (inV * (outA + quiescentA)) - (outA * outV));
    };

    public static PlainPath Amps(double amps) => (e, r, _) => (amps, amps * (e - (r * amps)), 0);

    public static PlainPath Charger(double setA, double holdV) => (e, r, _) => (-Math.Min(setA, (holdV - e) / r), 0, 0);

    /// <summary>Straight pieces through points.</summary>
    public static Func<double, double> Pieces(params (double S, double V)[] points) => s =>
    {
        for (int i = 1; i < points.Length; i++)
        {
            if (s <= points[i].S || i == points.Length - 1)
            {
                double share = Math.Clamp((s - points[i - 1].S) / (points[i].S - points[i - 1].S), 0, 1);
                return points[i - 1].V + (share * (points[i].V - points[i - 1].V));
            }
        }

        return points[0].V;
    };
}
