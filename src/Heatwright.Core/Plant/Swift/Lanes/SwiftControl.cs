using System.Runtime.CompilerServices;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>The controller's look at its reading: how much it asks for, and what its integral becomes.</summary>
internal static class SwiftControl
{
    /// <param name="c">Its numbers.</param>
    /// <param name="rise">What it reads.</param>
    /// <param name="volts">What its switch works on.</param>
    /// <param name="integral">Its integral, in watts.</param>
    /// <param name="newIntegral">The same after this look.</param>
    /// <param name="newDuty">Duty until the next.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Look<TForm>(in SwiftCoefs c, Lanes rise, Lanes volts, Lanes integral, out Lanes newIntegral, out Lanes newDuty)
        where TForm : struct, ISwiftForm
    {
        ref readonly var shape = ref c.Shape;
        Lanes celsius = rise + c.AirC;
        Lanes error = TForm.Quantised(shape) ? FusedMultiplyAdd(c.MinusReadingStep, Floor(FusedMultiplyAdd(celsius, c.PerReadingStep, Create(0.5))), c.TargetC) : c.TargetC - celsius;
        Lanes wanted = FusedMultiplyAdd(c.Gain, error, integral);
        Lanes full = c.NominalFullW;
        Lanes most = c.MostNominalW;
        if (!TForm.FixedNominal(shape))
        {
            full = MaxNative(volts * volts * c.PerNominalOhm, Create(1e-9));
            most = MinNative(c.MaxDuty * full, c.MostW);
        }

        Lanes given = MinNative(MaxNative(wanted, Create(0.0)), most);
        Lanes over = wanted - given;
        if (TForm.Tracks(shape))
        {
            newIntegral = FusedMultiplyAdd(c.PeriodS, FusedMultiplyAdd(c.Integral, error, -(c.Tracking * over)), integral);
        }
        else
        {
            // It stands while it asks for more than can be given and the error asks the same way.
            newIntegral = ConditionalSelect(LessThan(Create(0.0), over * error), integral, FusedMultiplyAdd(c.IntegralStep, error, integral));
        }

        newDuty = TForm.FixedNominal(shape) ? given * c.PerNominalFull : given / full;
    }
}
