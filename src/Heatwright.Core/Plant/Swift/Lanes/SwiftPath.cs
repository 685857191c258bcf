using System.Runtime.CompilerServices;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>The step-up point of Physics in lanes, for a mean current limit and a resistance as load; a test holds both equal.</summary>
internal static class SwiftPath
{
    /// <param name="c">Module.</param>
    /// <param name="openV">Volts behind all ohms.</param>
    /// <param name="sourceOhm">All ohms up to the module.</param>
    /// <param name="loadOhm">Heater.</param>
    /// <param name="perLoadOhm">One over it.</param>
    /// <param name="inputA">Input current.</param>
    /// <param name="outV">Load volts.</param>
    /// <param name="lossW">Lost in the module.</param>
    /// <param name="none">Lanes without a steady point.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void StepUp(in SwiftCoefs c, Lanes openV, Lanes sourceOhm, Lanes loadOhm, Lanes perLoadOhm, out Lanes inputA, out Lanes outV, out Lanes lossW, out Lanes none)
    {
        Lanes zero = Create(0.0);
        Lanes far = Create(double.PositiveInfinity);
        Lanes two = Create(2.0);
        Lanes four = Create(4.0);
        Lanes drive = openV - c.DropV;
        Lanes ohms = c.SlopeOhm + sourceOhm;
        Lanes inW = FusedMultiplyAdd(c.SetV * c.SetV, perLoadOhm, c.FixedW);
        Lanes radicand = (drive * drive) - (four * ohms * inW);
        Lanes can = BitwiseAnd(LessThan(zero, drive), LessThan(Create(-double.Epsilon), radicand));
        Lanes regulatedA = ConditionalSelect(can, two * inW / (drive + Sqrt(MaxNative(zero, radicand))), far);

        // Where the module's loss turns steeper below that current, the law of the other side holds; where it is not met there, none is.
        Lanes fixedW = c.FixedW;
        Lanes beyond = LessThan(c.ChangeA, regulatedA);
        if (beyond.ExtractMostSignificantBits() != 0)
        {
            Lanes driveAbove = openV - c.AboveDropV;
            Lanes inAbove = FusedMultiplyAdd(c.SetV * c.SetV, perLoadOhm, c.AboveFixedW);
            Lanes radicandAbove = (driveAbove * driveAbove) - (four * ohms * inAbove);
            Lanes aboveA = two * inAbove / (driveAbove + Sqrt(MaxNative(zero, radicandAbove)));
            Lanes canAbove = BitwiseAnd(BitwiseAnd(LessThan(zero, driveAbove), LessThan(Create(-double.Epsilon), radicandAbove)), LessThan(c.ChangeA * Create(1 - 1e-12), aboveA));
            regulatedA = ConditionalSelect(beyond, ConditionalSelect(canAbove, aboveA, far), regulatedA);
            can = ConditionalSelect(beyond, canAbove, can);
            (drive, fixedW) = (ConditionalSelect(beyond, driveAbove, drive), ConditionalSelect(beyond, c.AboveFixedW, fixedW));
        }

        Lanes wide = FusedMultiplyAdd(loadOhm, c.RestSquared, ohms);

        // Where every lane clearly regulates, as most do most of the time, nothing else needs to be known. 'Clearly' leaves the borders to the long way.
        Lanes clear = Create(1 - 1e-9);
        Lanes byDuty = FusedMultiplyAdd(regulatedA, FusedMultiplyAdd(wide, regulatedA, zero - drive), fixedW);
        Lanes belowSet = LessThan((openV - c.DiodeV) * loadOhm, c.SetV * clear * (sourceOhm + loadOhm));
        Lanes held = BitwiseAnd(LessThan(byDuty, Create(-1e-9) * drive * regulatedA), LessThan(regulatedA, c.LimitA * clear));
        Lanes awake = BitwiseAnd(LessThan(c.LockOutV, openV * clear), LessThan(regulatedA * sourceOhm, (openV - c.LockOutV) * clear));
        Lanes plain = BitwiseAnd(BitwiseAnd(can, belowSet), BitwiseAnd(held, awake));
        if (plain.ExtractMostSignificantBits() == (1u << Lanes.Count) - 1)
        {
            (inputA, outV, none) = (regulatedA, c.SetV, zero);
            lossW = ((openV - (regulatedA * sourceOhm)) * regulatedA) - ((regulatedA * (drive - (ohms * regulatedA))) - fixedW);
            return;
        }

        Lanes offA = (openV - c.DiodeV) / (sourceOhm + loadOhm);
        Lanes offV = offA * loadOhm;
        Lanes dutyA = DutyA(in c, openV - c.DropV, wide, c.FixedW);
        if (LessThan(c.ChangeA, far).ExtractMostSignificantBits() != 0)
        {
            Lanes aboveA = DutyA(in c, openV - c.AboveDropV, wide, c.AboveFixedW);
            dutyA = ConditionalSelect(LessThan(c.ChangeA * Create(1 + 1e-12), dutyA), far, dutyA);
            dutyA = ConditionalSelect(BitwiseAnd(LessThan(c.ChangeA * Create(1 - 1e-12), aboveA), LessThan(aboveA, far)), aboveA, dutyA);
        }

        dutyA = ConditionalSelect(LessThan(zero, openV - c.DropV), dutyA, far);
        Lanes lockA = ConditionalSelect(LessThan(zero, c.LockOutV), (openV - c.LockOutV) / sourceOhm, far);
        Lanes limitA = MinNative(c.LimitA, MinNative(dutyA, lockA));
        Lanes through = BitwiseOr(LessThan(c.SetV, FusedMultiplyAdd(offV, Create(1e-16), offV)), BitwiseAnd(LessThan(limitA, FusedMultiplyAdd(offA, Create(1e-16), offA)), LessThan(limitA, regulatedA)));
        Lanes moduleA = MinNative(regulatedA, limitA);
        Lanes steeper = LessThan(c.ChangeA, moduleA);
        Lanes outW = (moduleA * (openV - ConditionalSelect(steeper, c.AboveDropV, c.DropV) - (ohms * moduleA))) - ConditionalSelect(steeper, c.AboveFixedW, c.FixedW);
        Lanes regulates = LessThan(regulatedA, limitA);
        Lanes moduleV = ConditionalSelect(regulates, c.SetV, Sqrt(MaxNative(zero, outW * loadOhm)));
        inputA = ConditionalSelect(through, offA, moduleA);
        outV = ConditionalSelect(through, offV, moduleV);
        lossW = ConditionalSelect(through, offA * c.DiodeV, ((openV - (moduleA * sourceOhm)) * moduleA) - outW);

        // Locked out, held by the lock-out, or past the fold with nothing that holds.
        Lanes stuck = LessThan(lockA, MinNative(regulatedA, MinNative(c.LimitA, dutyA)));
        Lanes gone = BitwiseOr(LessThan(openV, c.LockOutV), LessThan(outW, Create(double.Epsilon)));
        none = ConditionalSelect(through, LessThan(openV, c.LockOutV), BitwiseOr(stuck, BitwiseOr(gone, LessThan(Create(1e300), moduleA))));
    }
    /// <summary>Input current at the largest duty, by the law of one side.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes DutyA(in SwiftCoefs c, Lanes drive, Lanes wide, Lanes fixedW)
    {
        Lanes zero = Create(0.0);
        Lanes radicand = (drive * drive) - (Create(4.0) * wide * fixedW);
        Lanes limited = BitwiseAnd(LessThan(zero, radicand), LessThan(zero, c.RestSquared));
        return ConditionalSelect(limited, (drive + Sqrt(MaxNative(zero, radicand))) / (Create(2.0) * wide), Create(double.PositiveInfinity));
    }
}
