namespace Heatwright.DemoTruth;

/// <summary>The step-up module as it really is: a quadratic loss over input amperes, a current limit and a lock-out.</summary>
internal sealed class TrueModule(Hidden hidden)
{
    private readonly double fixedW = hidden["module.fixed"];
    private readonly double perAmpV = hidden["module.perAmp"];
    private readonly double perSquareOhm = hidden["module.perAmpSquared"];
    private readonly double limitA = hidden["module.limit"];
    private readonly double lockOutV = hidden["module.lockOut"];

    public double SetV { get; } = hidden["module.set"];

    public double LossW(double amps) => fixedW + (perAmpV * amps) + (perSquareOhm * amps * amps);

    /// <summary>Walks the input current up until the load has its power, or something stops the walk.</summary>
    public (double Amps, double LoadW, string State) On(double behindV, double sourceOhm, double loadOhm)
    {
        double wantW = SetV * SetV / loadOhm;
        double below = 0;
        for (double amps = 0.02; ; amps += 0.02)
        {
            double inputV = behindV - (amps * sourceOhm);
            if (inputV <= lockOutV)
            {
                return (amps, 0, "locked out");
            }

            double loadW = (inputV * amps) - LossW(amps);
            if (loadW >= wantW)
            {
                double at = amps - (0.02 * (loadW - wantW) / (loadW - below));
                return (at, wantW, "regulated");
            }

            if (amps >= limitA)
            {
                return (amps, Math.Max(0, loadW), "current limited");
            }

            below = loadW;
        }
    }
}
