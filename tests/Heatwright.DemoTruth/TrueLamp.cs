namespace Heatwright.DemoTruth;

/// <summary>A lamp as it really is: a light whose volts grow with the logarithm of its amps and a little with its ohms, behind a driver that drops some volts even when it lets all through.</summary>
internal sealed class TrueLamp(Hidden hidden)
{
    private readonly double kneeV = hidden["lamp.knee"];
    private readonly double slopeV = hidden["lamp.slope"];
    private readonly double ohm = hidden["lamp.ohms"];
    private readonly double driverOhm = hidden["lamp.driverOhms"];
    private readonly double share = hidden["lamp.lightShare"];

    public double SetA { get; } = hidden["lamp.set"];

    /// <summary>Volts of the light alone at an amperage.</summary>
    public double LightV(double amps) => kneeV + (slopeV * Math.Log(amps / 0.1)) + (ohm * amps);

    /// <summary>Current at a voltage: what the driver is set to, or less where the volts do not suffice.</summary>
    public double Amps(double volts)
    {
        if (volts >= LightV(SetA) + (driverOhm * SetA))
        {
            return SetA;
        }

        double low = 1e-9, high = SetA;
        for (int i = 0; i < 60; i++)
        {
            double half = (low + high) / 2;
            (low, high) = LightV(half) + (driverOhm * half) < volts ? (half, high) : (low, half);
        }

        return (low + high) / 2;
    }

    /// <summary>Watts that leave as light; a hard-driven light gives a smaller share.</summary>
    public double LightW(double amps) => amps < 1e-6 ? 0 : share * (1 - (0.1 * amps)) * LightV(amps) * amps;
}
