using System.Runtime.CompilerServices;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>asinh(x)/x in lanes, for x over 0.</summary>
/// <remarks>With w = x / (1 + √(1 + x²)), asinh x = 2 atanh w; atanh(w)/w is smooth in w² and is interpolated at Chebyshev points up to w² = 1/2, to better than 1e-9; beyond, which is seldom, w is halved first.</remarks>
internal static class SwiftAsinh
{
    private const int Terms = 13;
    private const double MostSquare = 0.5;
    private const double MostAtAll = 1 - 1.2e-16;

    /// <summary>Of the powers of u = 4 w² − 1, which runs from −1 to 1.</summary>
    private static readonly double[] Powers = Fitted();

    /// <summary>The powers as the lanes want them: from memory, not looked up.</summary>
    public static void Give(ref SwiftCoefs c)
    {
        Lanes Of(int power) => Create(Powers[power]);
        (c.Asinh0, c.Asinh1, c.Asinh2, c.Asinh3, c.Asinh4, c.Asinh5, c.Asinh6) = (Of(0), Of(1), Of(2), Of(3), Of(4), Of(5), Of(6));
        (c.Asinh7, c.Asinh8, c.Asinh9, c.Asinh10, c.Asinh11, c.Asinh12) = (Of(7), Of(8), Of(9), Of(10), Of(11), Of(12));
    }

    /// <summary>asinh(x)/x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Ratio(in SwiftCoefs c, Lanes x)
    {
        Lanes one = Create(1.0);
        Lanes root = one + Sqrt(FusedMultiplyAdd(x, x, one));
        Lanes perRoot = one / root;
        Lanes w = x * perRoot;

        // Below one, where halving would never come to an end: a lane that has ended runs on beside the others and may drive its numbers anywhere.
        Lanes square = MinNative(w * w, Create(MostAtAll));
        Lanes per = perRoot + perRoot;
        Lanes far = LessThan(Create(MostSquare), square);
        while (far.ExtractMostSignificantBits() != 0)
        {
            // atanh w = 2 atanh(w / (1 + √(1 − w²))); by no call, or all that the loop around this holds would go to memory and back.
            Lanes halved = Create(2.0) / (one + Sqrt(one - square));
            per = ConditionalSelect(far, per * halved, per);
            square = ConditionalSelect(far, square * halved * halved * Create(0.25), square);
            far = LessThan(Create(MostSquare), square);
        }

        Lanes u = FusedMultiplyAdd(Create(4.0), square, Create(-1.0));
        Lanes u2 = u * u;
        Lanes u4 = u2 * u2;
        Lanes u8 = u4 * u4;
        Lanes p01 = FusedMultiplyAdd(c.Asinh1, u, c.Asinh0);
        Lanes p23 = FusedMultiplyAdd(c.Asinh3, u, c.Asinh2);
        Lanes p45 = FusedMultiplyAdd(c.Asinh5, u, c.Asinh4);
        Lanes p67 = FusedMultiplyAdd(c.Asinh7, u, c.Asinh6);
        Lanes p89 = FusedMultiplyAdd(c.Asinh9, u, c.Asinh8);
        Lanes pAb = FusedMultiplyAdd(c.Asinh11, u, c.Asinh10);
        Lanes low = FusedMultiplyAdd(p23, u2, p01);
        Lanes middle = FusedMultiplyAdd(p67, u2, p45);
        Lanes high = FusedMultiplyAdd(c.Asinh12, u4, FusedMultiplyAdd(pAb, u2, p89));
        Lanes atanh = FusedMultiplyAdd(high, u8, FusedMultiplyAdd(middle, u4, low));
        return per * atanh;
    }

    /// <summary>Chebyshev series of the function, written out in powers.</summary>
    private static double[] Fitted()
    {
        double[] powers = new double[Terms];
        double[] before = new double[Terms], now = new double[Terms];
        (before[0], now[1]) = (1, 1);
        for (int order = 0; order < Terms; order++)
        {
            double sum = 0;
            for (int i = 0; i < Terms; i++)
            {
                double angle = Math.PI * (i + 0.5) / Terms;
                double w = Math.Sqrt((Math.Cos(angle) + 1) / 4);
                sum += Math.Atanh(w) / w * Math.Cos(order * angle);
            }

            double[] polynomial = order == 0 ? before : now;
            for (int i = 0; i < Terms; i++)
            {
                powers[i] += (order == 0 ? 1.0 : 2.0) / Terms * sum * polynomial[i];
            }

            if (order > 0)
            {
                double[] next = new double[Terms];
                for (int i = 0; i < Terms; i++)
                {
                    next[i] = (i > 0 ? 2 * now[i - 1] : 0) - before[i];
                }

                (before, now) = (now, next);
            }
        }

        return powers;
    }
}
