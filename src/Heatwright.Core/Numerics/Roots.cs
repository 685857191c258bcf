namespace Heatwright.Numerics;

/// <summary>Where a function of one variable crosses zero.</summary>
public static class Roots
{
    /// <summary>Root of a continuous function between two ends where it has opposite signs.</summary>
    /// <param name="function">The function.</param>
    /// <param name="low">One end.</param>
    /// <param name="high">The other end.</param>
    /// <param name="tolerance">Allowed error of x; zero asks for all digits.</param>
    /// <param name="maxEvaluations">Most calls of the function.</param>
    /// <remarks>Brent, Algorithms for Minimization without Derivatives (1973), chapter 4: secant and inverse quadratic steps, halving
    /// whenever these do not close in fast enough. A jump through zero is found like a root.</remarks>
    public static RootSearch Between(Func<double, double> function, double low, double high, double tolerance = 0, int maxEvaluations = 200)
    {
        double a = low, b = high, fa = function(a), fb = function(b);
        int calls = 2;
        if (Refusal(fa, fb) is { } refusal)
        {
            return Ended(refusal, low, high, calls);
        }

        double c = a, fc = fa, move = b - a, moveBefore = move;
        while (true)
        {
            if (Math.Abs(fc) < Math.Abs(fb))
            {
                (a, b, c) = (b, c, b);
                (fa, fb, fc) = (fb, fc, fb);
            }

            double least = (2 * 2.3e-16 * Math.Abs(b)) + (0.5 * tolerance) + double.Epsilon;
            double half = 0.5 * (c - b);
            if (Math.Abs(half) <= least || fb == 0)
            {
                return new RootSearch(RootOutcome.Found, b, Math.Min(b, c), Math.Max(b, c), calls);
            }

            if (calls >= maxEvaluations)
            {
                return Ended(RootOutcome.OutOfSteps, b, c, calls);
            }

            double? quick = Math.Abs(moveBefore) >= least && Math.Abs(fa) > Math.Abs(fb) ? QuickStep(a, b, c, fa, fb, fc) : null;
            bool trusted = quick is { } step && Math.Abs(step) < Math.Min(1.5 * Math.Abs(half) - (0.5 * least), 0.5 * Math.Abs(moveBefore))
                && Math.Sign(step) == Math.Sign(half);
            (moveBefore, move) = trusted ? (move, quick!.Value) : (half, half);
            (a, fa) = (b, fb);
            b += Math.Abs(move) > least ? move : Math.CopySign(least, half);
            fb = function(b);
            calls++;
            if (double.IsNaN(fb))
            {
                return Ended(RootOutcome.NoValue, a, c, calls);
            }

            if (Math.Sign(fb) == Math.Sign(fc))
            {
                (c, fc) = (a, fa);
                (move, moveBefore) = (b - a, b - a);
            }
        }
    }

    /// <summary>Root of a function that only rises or only falls, by halving: slow, but unmoved by jumps, flats and noise.</summary>
    /// <remarks>Without a tolerance it halves until no number is left between the ends.</remarks>
    public static RootSearch Monotone(Func<double, double> function, double low, double high, double tolerance = 0)
    {
        double fLow = function(low), fHigh = function(high);
        int calls = 2;
        if (Refusal(fLow, fHigh) is { } refusal)
        {
            return Ended(refusal, low, high, calls);
        }

        if (fLow == 0 || fHigh == 0)
        {
            double end = fLow == 0 ? low : high;
            return new RootSearch(RootOutcome.Found, end, end, end, calls);
        }

        while (true)
        {
            double middle = low + (0.5 * (high - low));
            if (Math.Abs(high - low) <= tolerance || middle == low || middle == high)
            {
                return new RootSearch(RootOutcome.Found, middle, Math.Min(low, high), Math.Max(low, high), calls);
            }

            double f = function(middle);
            calls++;
            if (double.IsNaN(f))
            {
                return Ended(RootOutcome.NoValue, low, high, calls);
            }

            if (f == 0)
            {
                return new RootSearch(RootOutcome.Found, middle, middle, middle, calls);
            }

            if (Math.Sign(f) == Math.Sign(fLow))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }
    }

    private static RootOutcome? Refusal(double fLow, double fHigh) =>
        double.IsNaN(fLow) || double.IsNaN(fHigh) ? RootOutcome.NoValue
        : fLow != 0 && fHigh != 0 && Math.Sign(fLow) == Math.Sign(fHigh) ? RootOutcome.NoSignChange
        : null;

    private static RootSearch Ended(RootOutcome outcome, double one, double other, int calls) =>
        new(outcome, double.NaN, Math.Min(one, other), Math.Max(one, other), calls);

    /// <summary>Step from b by the secant, or by the parabola through three points lying on its side.</summary>
    private static double? QuickStep(double a, double b, double c, double fa, double fb, double fc)
    {
        double s = fb / fa;
        double p, q;
        if (a == c)
        {
            p = (c - b) * s;
            q = 1 - s;
        }
        else
        {
            double t = fa / fc, r = fb / fc;
            p = s * (((c - b) * t * (t - r)) - ((b - a) * (r - 1)));
            q = (t - 1) * (r - 1) * (s - 1);
        }

        double step = -p / q;
        return double.IsFinite(step) ? step : null;
    }
}
