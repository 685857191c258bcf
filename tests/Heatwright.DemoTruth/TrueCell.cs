namespace Heatwright.DemoTruth;

/// <summary>A cell as it really is: open volts over charge, ohms at once and two RC pairs, all dearer when empty or cold.</summary>
/// <remarks>State in the slots of a longer vector: charge left (0 to 1), volts of the short pair, volts of the long pair, degrees C.</remarks>
internal sealed class TrueCell
{
    public const int Slots = 4;

    private static readonly double[] Charges = [0, 0.03, 0.06, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1];
    private static readonly double[] RoundV = [2.90, 3.12, 3.24, 3.33, 3.40, 3.45, 3.51, 3.55, 3.59, 3.65, 3.73, 3.84, 3.99, 4.07, 4.17];
    private static readonly double[] IronV = [2.50, 2.85, 3.02, 3.13, 3.19, 3.22, 3.26, 3.285, 3.293, 3.300, 3.318, 3.329, 3.334, 3.345, 3.42];

    private readonly double[] openV;
    private readonly double capacityC;
    private readonly double r0;
    private readonly double r1;
    private readonly double tau1;
    private readonly double r2;
    private readonly double tau2;
    private readonly double activationJ;

    public TrueCell(Hidden hidden, string name)
    {
        openV = name == "iron" ? IronV : RoundV;
        capacityC = hidden[name + ".capacity"] * 3600;
        r0 = hidden[name + ".r0"];
        r1 = hidden[name + ".r1"];
        tau1 = hidden[name + ".tau1"];
        r2 = hidden[name + ".r2"];
        tau2 = hidden[name + ".tau2"];
        activationJ = hidden[name + ".activation"] * 1000;
        HeatCapacity = hidden[name + ".heatCapacity"];
        CutoffV = name == "iron" ? 2.5 : 3.0;
        ToGrip = hidden["cell.toGrip"];
    }

    public double HeatCapacity { get; }

    public double CutoffV { get; }

    public double ToGrip { get; }

    public double OpenV(double charge)
    {
        double s = Math.Clamp(charge, 0, 1);
        int i = 1;
        while (i < Charges.Length - 1 && Charges[i] < s)
        {
            i++;
        }

        return openV[i - 1] + ((s - Charges[i - 1]) * (openV[i] - openV[i - 1]) / (Charges[i] - Charges[i - 1]));
    }

    /// <summary>Volts behind the ohms that act at once.</summary>
    public double BehindV(double[] x, int at) => OpenV(x[at]) - x[at + 1] - x[at + 2];

    public double AtOnceOhm(double[] x, int at) => r0 * Factor(x[at], x[at + 3]);

    /// <summary>Slopes of the four slots at a mean current and a mean squared current; heat also flows to a body at some degrees.</summary>
    public void Slope(double[] x, double[] dx, int at, double meanA, double meanSquareA2, double bodyC)
    {
        double factor = Factor(x[at], x[at + 3]);
        dx[at] = -meanA / capacityC;
        dx[at + 1] = ((meanA * r1 * factor) - x[at + 1]) / tau1;
        dx[at + 2] = ((meanA * r2 * factor) - x[at + 2]) / tau2;
        double heatW = (meanSquareA2 * r0 * factor) + (x[at + 1] * x[at + 1] / (r1 * factor)) + (x[at + 2] * x[at + 2] / (r2 * factor));
        dx[at + 3] = (heatW - (ToGrip * (x[at + 3] - bodyC))) / HeatCapacity;
    }

    private double Factor(double charge, double degrees)
    {
        double s = Math.Clamp(charge, 0, 1);
        double byCharge = 0.94 + (0.12 * (1 - s)) + (0.7 * Math.Exp(-s / 0.06));
        return byCharge * Math.Exp(activationJ / 8.314462618 * ((1 / (degrees + 273.15)) - (1 / 298.15)));
    }
}
