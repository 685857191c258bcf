namespace Heatwright.Physics;

/// <summary>How the integrator is kept from running away while the power is at its limit.</summary>
public enum AntiWindup
{
    /// <summary>Not at all: for showing what happens then. Never build it.</summary>
    None,

    /// <summary>It stops while the output is at a limit and the error pushes further.</summary>
    Conditional,

    /// <summary>It is pulled back by the part of the output that was cut off.</summary>
    BackCalculation,
}

/// <summary>What a sample of the controller gives.</summary>
/// <param name="PowerW">Power after the limits, held until the next sample.</param>
/// <param name="IntegralW">Integrator after the sample.</param>
/// <param name="DerivativeW">Filtered derivative part, carried to the next sample.</param>
public readonly record struct PiSample(double PowerW, double IntegralW, double DerivativeW = 0);

/// <summary>PI and PID as a program runs them, one sample at a time, in this order: read, error, sum, limits, integrator, output.</summary>
/// <remarks>The order matters: with the integrator moved first, overshoot and droop come out otherwise. PI in textbook form; PID as the parallel sum with
/// the derivative on the reading. Checked: ReferenceLoopTests (whole recursions computed by an independent script).</remarks>
public static class DiscretePi
{
    /// <summary>One sample of PI.</summary>
    /// <param name="settings">Gain and integral time.</param>
    /// <param name="sampleS">Sample period.</param>
    /// <param name="integralW">Integrator before the sample.</param>
    /// <param name="setC">Wanted temperature.</param>
    /// <param name="readC">Reading.</param>
    /// <param name="mostW">Largest power at this moment.</param>
    /// <param name="antiWindup">Guard of the integrator.</param>
    /// <param name="trackingS">T_t of the back-calculation; 0 takes the integral time.</param>
    public static PiSample Step(
        PiSettings settings, double sampleS, double integralW, double setC, double readC, double mostW, AntiWindup antiWindup = AntiWindup.Conditional, double trackingS = 0) =>
        Finish(settings, sampleS, integralW, setC - readC, 0, mostW, antiWindup, trackingS);

    /// <summary>One sample of PID: D = (T_f·D − K_c·T_d·(y − y_before))/(T_f + T_s) joins the sum; T_f is T_d/5 to T_d/10.</summary>
    public static PiSample StepPid(
        PiSettings settings, double sampleS, PiSample before, double setC, double readC, double readBeforeC, double mostW, double filterS,
        AntiWindup antiWindup = AntiWindup.Conditional, double trackingS = 0)
    {
        double derivative = ((Impossible.IfNegative(filterS, "s") * before.DerivativeW) - (settings.GainWPerK * settings.DerivativeS * (readC - readBeforeC)))
            / (filterS + Impossible.UnlessPositive(sampleS, "s"));
        return Finish(settings, sampleS, before.IntegralW, setC - readC, derivative, mostW, antiWindup, trackingS);
    }

    /// <summary>Integrator for a new set point more than 20 K away: the power that holds it, within the limits. Else it stays.</summary>
    public static double IntegralForNewSetPoint(double integralW, double oldSetC, double newSetC, double holdNewW, double mostW) =>
        Math.Abs(newSetC - oldSetC) > 20 ? Math.Clamp(holdNewW, 0, Impossible.IfNegative(mostW, "W")) : integralW;

    private static PiSample Finish(PiSettings settings, double sampleS, double integralW, double error, double derivative, double mostW, AntiWindup antiWindup, double trackingS)
    {
        Impossible.UnlessPositive(sampleS, "s");
        Impossible.UnlessPositive(settings.IntegralS, "s");
        Impossible.IfNegative(mostW, "W");
        double wanted = (settings.GainWPerK * error) + integralW + derivative;
        double given = Math.Clamp(wanted, 0, mostW);
        double push = settings.GainWPerK * sampleS * error / settings.IntegralS;
        double next = antiWindup switch
        {
            AntiWindup.Conditional when (wanted > mostW && error > 0) || (wanted < 0 && error < 0) => integralW,
            AntiWindup.BackCalculation => integralW + (sampleS * ((settings.GainWPerK * error / settings.IntegralS) + ((given - wanted) / (trackingS > 0 ? trackingS : settings.IntegralS)))),
            _ => integralW + push,
        };
        return new PiSample(given, next, derivative);
    }
}
