using Heatwright.Physics;

namespace Heatwright.BuildSheets;

/// <summary>When a sensor may be read that hears the heater: off, wait, read, on.</summary>
/// <param name="FilterS">Time constant of the input filter.</param>
/// <param name="SettleS">Recovery and settling of the amplifier and decay of the filter, worked out.</param>
/// <param name="WaitS">What the firmware waits: twice that.</param>
/// <param name="ReadS">All conversions of one window.</param>
/// <param name="FrameS">From window to window.</param>
public sealed record ReadWindow(double FilterS, double SettleS, double WaitS, double ReadS, double FrameS)
{
    /// <summary>Largest duty that the window leaves; 0 or less: the window does not fit into the frame.</summary>
    public double MostDuty => WaitS + ReadS < FrameS ? SensingWindow.MostDuty(WaitS, ReadS, FrameS) : 0;

    /// <summary>The window of a chain.</summary>
    /// <param name="chain">The chain.</param>
    /// <param name="inputOhm">Resistor before the clamp.</param>
    /// <param name="inputF">Capacitor behind it.</param>
    /// <param name="clampStepV">What the clamp leaves at the filter.</param>
    /// <param name="recoveryS">Overload recovery of the amplifier.</param>
    /// <param name="readS">All conversions.</param>
    /// <param name="frameS">The frame.</param>
    /// <remarks>Rule of the trade: wait at least twice what is worked out, then check by doubling the wait.</remarks>
    public static ReadWindow Of(SensorChain chain, double inputOhm, double inputF, double clampStepV, double recoveryS, double readS, double frameS)
    {
        // Half a converter step, seen from the input of the amplifier.
        double errorV = 0.5 * chain.StepV / chain.Pair.Gain;
        double filter = clampStepV > errorV && inputF > 0 ? SensingWindow.SettleS(inputOhm, inputF, clampStepV, errorV) : 0;
        double settle = recoveryS + filter + chain.SettleS;
        return new(inputOhm * inputF, settle, 2 * settle, readS, frameS);
    }
}
