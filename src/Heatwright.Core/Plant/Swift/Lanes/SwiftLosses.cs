using System.Runtime.CompilerServices;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>Losses of a node that are no straight line over its rise.</summary>
internal static class SwiftLosses
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Curved(in SwiftCoefs c, Lanes radiating, Lanes convecting, Lanes rise) => Radiated(in c, radiating, rise) + (c.Shape.Convects ? Convected(convecting, rise) : Create(0.0));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Radiated(in SwiftCoefs c, Lanes coefficient, Lanes rise)
    {
        Lanes kelvin = c.AirK + rise;
        Lanes square = kelvin * kelvin;
        return coefficient * FusedMultiplyAdd(square, square, c.MinusAirK4);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Convected(Lanes coefficient, Lanes rise)
    {
        Lanes size = MaxNative(rise, Create(0.0) - rise);
        return coefficient * rise * Sqrt(Sqrt(size));
    }
}
