using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>What leaves a lamp as light, and what is taken where nobody stated it.</summary>
public static class LampLight
{
    /// <summary>Volts of one white light-emitting diode at its working current, from memory.</summary>
    public const double LeastForwardV = 2.7, MostForwardV = 3.3;

    /// <summary>White light-emitting diodes give 20 to 40 of 100 watts as light, from memory.</summary>
    public const double LeastShare = 0.2, MostShare = 0.4;

    /// <summary>Why those volts are taken.</summary>
    public const string WhyForward = "one white light-emitting diode at its working current, from memory";

    /// <summary>Why that share is taken.</summary>
    public const string WhyShare = "white light-emitting diodes give 20 to 40 of 100 watts as light, from memory";

    /// <summary>Watts of light for each ampere: share times volts of the light. Causes are those that a prediction has for the same numbers.</summary>
    public static Estimate WattsPerAmp(Part lamp)
    {
        var forward = lamp.Best(PartQuantities.ForwardVolts) ?? Taken(lamp, PartQuantities.ForwardVolts, LeastForwardV, MostForwardV, Units.Volt, WhyForward);
        var share = lamp.Best(PartQuantities.LightShare) ?? Taken(lamp, PartQuantities.LightShare, LeastShare, MostShare, Units.One, WhyShare);
        return Propagate.Through((volts, part) => volts * part, Units.Volt, "share that leaves as light times volts of the light", new Input("forward volts", forward), new Input("light share", share));
    }

    private static Estimate Taken(Part lamp, string quantity, double low, double high, Unit unit, string why) =>
        Estimate.Within((low + high) / 2, (high - low) / 2, unit, $"{lamp.Id}: {quantity}, assumed", CauseGroup.Assumption, new Origin.Assumed(why));
}
