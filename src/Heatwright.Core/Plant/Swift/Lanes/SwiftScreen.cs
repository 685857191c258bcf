using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>How hot the end of each arrangement stands with its switch always on, with the ohms that its heater has at that heat.</summary>
/// <remarks>Newton's steps with the slope of a look beside, kept between a rise known too low and one known too high, halved where a step leaves these.</remarks>
internal static class SwiftScreen
{
    private const double BesideK = 0.01;

    /// <summary>Rises of all, as the table's open volts lie; NaN: there is no steady point, or none was found.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Rises(ScreenTable table, Span<double> rises)
    {
        var c = default(SwiftCoefs);
        for (int from = 0; from < table.Count; from += Lanes.Count)
        {
            bool stepsUp = from >= table.Straight;
            if (stepsUp)
            {
                (c.SetV, c.FixedW, c.DropV, c.SlopeOhm) = (Of(table.SetV, from), Of(table.FixedW, from), Of(table.DropV, from), Of(table.SlopeOhm, from));
                (c.LimitA, c.RestSquared, c.LockOutV, c.DiodeV) = (Of(table.LimitA, from), Of(table.RestSquared, from), Of(table.LockOutV, from), Of(table.DiodeV, from));
                (c.ChangeA, c.AboveFixedW, c.AboveDropV) = (Of(table.ChangeA, from), Of(table.AboveFixedW, from), Of(table.AboveDropV, from));
            }

            (c.AirK, c.MinusAirK4) = (Create(table.AirK), Create(-Math.Pow(table.AirK, 4)));
            (c.HeaterAt, c.HeaterSlope, c.Con0, c.Rad0) = (Of(table.HeaterOhm, from), Of(table.HeaterSlope, from), Of(table.LossWPerK, from), Of(table.RadiatingWPerK4, from));
            Lanes loop = Of(table.LoopOhm, from), rise = Create(ScreenRules.FirstK);
            for (int at = from; at < table.OpenV.Length; at += table.Count)
            {
                // The next charge state begins where the last was found.
                rise = Rise(in c, stepsUp, Of(table.OpenV, at), Of(table.CellOhm, at) + loop, ConditionalSelect(LessThanOrEqual(rise, rise), rise, Create(ScreenRules.FirstK)));
                rise.CopyTo(rises[at..]);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Rise(in SwiftCoefs c, bool stepsUp, Lanes openV, Lanes sourceOhm, Lanes rise)
    {
        Lanes zero = Create(0.0), low = zero, high = Create(ScreenRules.MostK), over = zero, none = zero;
        Lanes open = LessThanOrEqual(zero, zero);
        for (int step = 0; step < ScreenRules.MostSteps; step++)
        {
            Lanes beside = Over(in c, stepsUp, openV, sourceOhm, rise + Create(BesideK), out _);
            Lanes overNow = Over(in c, stepsUp, openV, sourceOhm, rise, out Lanes noneNow);
            (over, none) = (ConditionalSelect(open, overNow, over), ConditionalSelect(open, noneNow, none));
            Lanes tooLow = LessThan(zero, overNow);
            low = ConditionalSelect(tooLow, rise, low);
            high = ConditionalSelect(tooLow, high, rise);
            Lanes next = rise - (overNow * Create(BesideK) / (beside - overNow));
            next = ConditionalSelect(BitwiseAnd(LessThanOrEqual(low, next), LessThanOrEqual(next, high)), next, Create(0.5) * (low + high));
            Lanes moves = LessThanOrEqual(Create(ScreenRules.CloseK), Abs(next - rise));
            rise = ConditionalSelect(open, next, rise);
            open = BitwiseAnd(open, moves);
            if (open.ExtractMostSignificantBits() == 0)
            {
                break;
            }
        }

        // Where the watts jump, a rise is closed in on that is no steady point.
        none = BitwiseOr(BitwiseOr(none, open), LessThan(Create(ScreenRules.MostOverW), Abs(over)));
        return ConditionalSelect(none, Create(double.NaN), rise);
    }

    /// <summary>Watts given less watts lost at a rise.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Over(in SwiftCoefs c, bool stepsUp, Lanes openV, Lanes sourceOhm, Lanes rise, out Lanes none)
    {
        Lanes heater = FusedMultiplyAdd(c.HeaterSlope, rise, c.HeaterAt);
        Lanes watts;
        none = Create(0.0);
        if (stepsUp)
        {
            Lanes perHeater = Create(1.0) / heater;
            SwiftPath.StepUp(in c, openV, sourceOhm, heater, perHeater, out _, out Lanes loadV, out _, out none);
            watts = AndNot(loadV * loadV * perHeater, none);
        }
        else
        {
            Lanes amps = openV / (sourceOhm + heater);
            watts = amps * amps * heater;
        }

        Lanes kelvin = c.AirK + rise, square = kelvin * kelvin;
        return watts - FusedMultiplyAdd(c.Rad0, FusedMultiplyAdd(square, square, c.MinusAirK4), c.Con0 * rise);
    }

    private static Lanes Of(double[] column, int from) => Create<double>(column.AsSpan(from));
}
