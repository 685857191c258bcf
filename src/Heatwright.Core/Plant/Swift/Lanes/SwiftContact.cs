using System.Runtime.CompilerServices;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>A piece of work pressed on the working node for a step.</summary>
internal static class SwiftContact
{
    /// <param name="c">Its numbers.</param>
    /// <param name="s">When it starts and ends; the heat given to all pieces.</param>
    /// <param name="now">Start of the step.</param>
    /// <param name="working">Rise of the node.</param>
    /// <param name="slope">How its gain changes with its rise.</param>
    /// <param name="ahead">How far it moves in half a step, but for what it gains.</param>
    /// <param name="gainW">What it gains, at the start of the step; then in its middle.</param>
    /// <param name="left">Heat that the piece still takes.</param>
    /// <param name="worked">Share of the step in which there is work.</param>
    /// <param name="stepLow">Lowest rise in it but for the end of the step.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Take<TForm>(in SwiftCoefs c, ref SwiftState s, Lanes now, Lanes working, Lanes slope, Lanes ahead, ref Lanes gainW, ref Lanes left, out Lanes worked, out Lanes stepLow)
        where TForm : struct, ISwiftForm
    {
        ref readonly var shape = ref c.Shape;
        // A piece that has its heat takes no more, but stays until its time is over.
        worked = MaxNative(Create(0.0), MinNative(s.WorkEndS, now + c.StepS) - MaxNative(s.WorkStartS, now)) * c.PerStepS;
        Lanes contact = BitwiseAnd(LessThan(c.AboveRise, working), worked * c.ContactWPerK);
        contact = TForm.Needs(shape) ? BitwiseAnd(LessThan(Create(0.0), left), contact) : contact;
        Lanes takesW = contact * (working - c.AboveRise);
        gainW -= takesW;
        slope -= contact;
        ahead = FusedMultiplyAdd(c.AheadPerW, gainW, ahead);
        gainW = FusedMultiplyAdd(slope, ahead, gainW);

        // Never more than the piece still takes; what is over is given back.
        Lanes wouldTake = contact * (working + ahead - c.AboveRise) * c.StepS;
        Lanes taken = TForm.Needs(shape) ? MinNative(wouldTake, left) : wouldTake;
        Lanes begins = MinNative(Create(1.0), MaxNative(Create(0.0), s.WorkStartS - now) * c.PerStepS);

        // Lowest where the piece begins, or where it has its heat or ends within the step and the node recovers: how that would move without the work, less the heat it gave.
        Lanes freely = Create(2.0) * FusedMultiplyAdd(takesW, c.AheadPerW, ahead);
        Lanes serving = TForm.Needs(shape) ? worked * (taken / MaxNative(wouldTake, Create(1e-300))) : BitwiseAnd(LessThan(Create(0.0), taken), worked);
        Lanes served = FusedMultiplyAdd(freely, begins + serving, working - (taken * c.PerWorkingJ));
        Lanes within = LessThan(s.WorkEndS, now + c.StepS);
        if (TForm.Needs(shape))
        {
            Lanes over = wouldTake - taken;
            within = BitwiseOr(LessThan(Create(0.0), over), within);
            gainW = FusedMultiplyAdd(over, c.PerStepS, gainW);
            left -= taken;
        }

        stepLow = FusedMultiplyAdd(freely, begins, working);
        stepLow = ConditionalSelect(within, MinNative(stepLow, served), stepLow);
        s.WorkJ += taken;
    }
}
