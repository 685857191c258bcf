using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Heatwright.Numerics;

/// <summary>A running sum that keeps what rounding would drop.</summary>
/// <remarks>Neumaier's form of Kahan's sum, Zeitschrift für Angewandte Mathematik und Mechanik 54 (1974) 39; products with their
/// rounding error as in Ogita, Rump and Oishi, SIAM Journal on Scientific Computing 26 (2005) 1955.
/// Once infinite or not a number, it stays so.</remarks>
public struct CompensatedSum
{
    private double high;
    private double low;

    /// <summary>The sum so far.</summary>
    public readonly double Value => double.IsFinite(high) ? high + low : high;

    /// <summary>Adds one term.</summary>
    public void Add(double term)
    {
        double next = high + term;
        low += Math.Abs(high) >= Math.Abs(term) ? high - next + term : term - next + high;
        high = next;
    }

    /// <summary>Adds a product without rounding it first.</summary>
    public void AddProduct(double a, double b)
    {
        double product = a * b;
        Add(product);
        low += Math.FusedMultiplyAdd(a, b, -product);
    }

    /// <summary>Sum of all values.</summary>
    public static double Of(ReadOnlySpan<double> values)
    {
        var sum = new CompensatedSum();
        foreach (double value in values)
        {
            sum.Add(value);
        }

        return sum.Value;
    }

    /// <summary>Sum of the products of two equally long rows, in four such sums side by side.</summary>
    public static double OfProducts(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        b = b[..a.Length];
        var fours = MemoryMarshal.Cast<double, Vector256<double>>(a);
        var with = MemoryMarshal.Cast<double, Vector256<double>>(b);
        Vector256<double> high = default, low = default;
        for (int i = 0; i < fours.Length; i++)
        {
            var product = fours[i] * with[i];
            var next = high + product;
            var taken = next - high;
            low += (high - (next - taken)) + (product - taken) + Vector256.FusedMultiplyAdd(fours[i], with[i], -product);
            high = next;
        }

        var sum = new CompensatedSum();
        for (int lane = 0; lane < 4; lane++)
        {
            sum.Add(high[lane]);
        }

        for (int i = 4 * fours.Length; i < a.Length; i++)
        {
            sum.AddProduct(a[i], b[i]);
        }

        sum.low += low[0] + low[1] + (low[2] + low[3]);
        return sum.Value;
    }
}
