namespace Heatwright.DemoTruth;

/// <summary>The lamp's head and the handle behind it as they really are: two lumps in degrees C; the head gives heat to the air and by radiation.</summary>
internal sealed class TrueHead(Hidden hidden)
{
    public const int Slots = 2;

    private readonly double air = hidden["air"];
    private readonly double headJ = hidden["head.heatCapacity"];
    private readonly double headLoss = hidden["head.loss"];
    private readonly double radiating = hidden["head.radiating"];
    private readonly double link = hidden["head.gripLink"];
    private readonly double gripJ = hidden["grip.heatCapacity"];
    private readonly double gripLoss = hidden["grip.loss"];

    /// <summary>Slopes of head and grip, which lie one behind the other in a longer vector.</summary>
    public void Slope(double[] x, double[] dx, int at, double headW, double gripW)
    {
        double toGrip = link * (x[at] - x[at + 1]);
        double headK = x[at] + 273.15, aroundK = air + 273.15;
        double radiatedW = 5.670374419e-8 * radiating * (Math.Pow(headK, 4) - Math.Pow(aroundK, 4));
        dx[at] = (headW - toGrip - (headLoss * (x[at] - air)) - radiatedW) / headJ;
        dx[at + 1] = (toGrip + gripW - (gripLoss * (x[at + 1] - air))) / gripJ;
    }
}
