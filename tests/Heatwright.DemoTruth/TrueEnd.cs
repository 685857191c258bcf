namespace Heatwright.DemoTruth;

/// <summary>Heater, working end, shank and grip as they really are: four lumps, curved convection, radiation, ohms of the core.</summary>
/// <remarks>State: core, working end, shank and grip in degrees C, then what the probe feels.</remarks>
internal sealed class TrueEnd
{
    public const int Core = 0;
    public const int Blade = 1;
    public const int Shank = 2;
    public const int Grip = 3;
    public const int Probe = 4;
    public const int Slots = 5;

    private readonly double airC;
    private readonly double ohms;
    private readonly double alpha;
    private readonly double coreJ;
    private readonly double bladeJ;
    private readonly double shankJ;
    private readonly double gripJ;
    private readonly double coreLink;
    private readonly double shankLink;
    private readonly double gripLink;
    private readonly double convection;
    private readonly double radiating;
    private readonly double shankLoss;
    private readonly double gripLoss;
    private readonly double felt;
    private readonly double lagS;

    public TrueEnd(Hidden hidden, string name)
    {
        airC = hidden["air"];
        ohms = hidden[name + ".ohms"];
        alpha = hidden[name + ".alpha"];
        coreJ = hidden[name + ".core"];
        bladeJ = hidden[name + ".blade"];
        shankJ = hidden[name + ".shank"];
        gripJ = hidden["grip.heatCapacity"];
        coreLink = hidden[name + ".coreLink"];
        shankLink = hidden[name + ".shankLink"];
        gripLink = hidden[name + ".gripLink"];
        convection = hidden[name + ".convection"];
        radiating = hidden[name + ".radiating"];
        shankLoss = hidden["shank.loss"];
        gripLoss = hidden["grip.loss"];
        felt = hidden["probe.contact"];
        lagS = hidden["probe.lag"];
    }

    /// <summary>Ohms of the core; a little curvature that a straight temperature coefficient does not know.</summary>
    public double Ohm(double coreC)
    {
        double rise = coreC - 20;
        return ohms * (1 + (alpha * rise * (1 - (rise / 6000))));
    }

    public void Slope(double[] x, double[] dx, double heaterW, double workW, double gripW)
    {
        double coreToBlade = coreLink * (x[Core] - x[Blade]);
        double bladeToShank = shankLink * (x[Blade] - x[Shank]);
        double shankToGrip = gripLink * (x[Shank] - x[Grip]);
        dx[Core] = (heaterW - coreToBlade) / coreJ;
        dx[Blade] = (coreToBlade - bladeToShank - workW - AirW(x[Blade])) / bladeJ;
        dx[Shank] = (bladeToShank - shankToGrip - (shankLoss * (x[Shank] - airC))) / shankJ;
        dx[Grip] = (shankToGrip + gripW - (gripLoss * (x[Grip] - airC))) / gripJ;
        dx[Probe] = (airC + (felt * (x[Blade] - airC)) - x[Probe]) / lagS;
    }

    private double AirW(double bladeC)
    {
        double rise = bladeC - airC;
        double surfaceK = bladeC + 273.15;
        double aroundK = airC + 273.15;
        return (convection * rise * Math.Pow(Math.Abs(rise) / 200, 0.15))
            + (5.670374419e-8 * radiating * (Math.Pow(surfaceK, 4) - Math.Pow(aroundK, 4)));
    }
}
