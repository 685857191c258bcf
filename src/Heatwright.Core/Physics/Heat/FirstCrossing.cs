namespace Heatwright.Physics;

/// <summary>Bisection to the last bit: slow, sure, and good for any function that changes sign once.</summary>
internal static class FirstCrossing
{
    /// <summary>Where <paramref name="f"/> changes sign between two places at which it has opposite signs.</summary>
    public static double Between(Func<double, double> f, double low, double high)
    {
        double atLow = f(low);
        if (atLow == 0)
        {
            return low;
        }

        for (int i = 0; i < 200; i++)
        {
            double middle = 0.5 * (low + high);
            if (middle <= Math.Min(low, high) || middle >= Math.Max(low, high))
            {
                break;
            }

            double atMiddle = f(middle);
            if (atMiddle == 0)
            {
                return middle;
            }

            (low, high) = Math.Sign(atMiddle) == Math.Sign(atLow) ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
