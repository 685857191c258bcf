namespace Heatwright.Physics;

/// <summary>Integral of a smooth function by a Gauss rule that halves its interval where two resolutions differ.</summary>
internal static class Quadrature
{
    private static readonly double[] Node = [0, Math.Sqrt(5 - 2 * Math.Sqrt(10.0 / 7)) / 3, Math.Sqrt(5 + 2 * Math.Sqrt(10.0 / 7)) / 3];
    private static readonly double[] Weight = [128.0 / 225, (322 + 13 * Math.Sqrt(70)) / 900, (322 - 13 * Math.Sqrt(70)) / 900];

    public static double Integral(Func<double, double> f, double from, double to, double relative = 1e-12)
    {
        double whole = Rule(f, from, to);
        return double.IsFinite(whole) ? Refined(f, from, to, whole, relative * Math.Abs(whole), 60) : whole;
    }

    private static double Refined(Func<double, double> f, double from, double to, double whole, double allowed, int depth)
    {
        double middle = 0.5 * (from + to);
        double left = Rule(f, from, middle);
        double right = Rule(f, middle, to);
        double halves = left + right;
        if (!double.IsFinite(halves) || depth == 0 || Math.Abs(halves - whole) <= allowed || middle <= from || middle >= to)
        {
            return halves;
        }

        return Refined(f, from, middle, left, allowed, depth - 1) + Refined(f, middle, to, right, allowed, depth - 1);
    }

    private static double Rule(Func<double, double> f, double from, double to)
    {
        double half = 0.5 * (to - from);
        double middle = 0.5 * (from + to);
        double sum = Weight[0] * f(middle);
        for (int i = 1; i < 3; i++)
        {
            sum += Weight[i] * (f(middle - half * Node[i]) + f(middle + half * Node[i]));
        }

        return half * sum;
    }
}
