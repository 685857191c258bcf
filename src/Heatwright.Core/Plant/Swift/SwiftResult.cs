namespace Heatwright.Plant;

/// <summary>What one lane did.</summary>
internal struct SwiftResult
{
    public double RunTimeS;
    public double TargetS;
    public StopReason Stop;
    public Region LastRegion;
    public int WorkDone;
    public int WorkDoneInARow;
    public double ChargeLeft;
    public double LoadJ;
    public double WorkJ;
    public double LowestV;
    public double HighestA;

    /// <summary>Lowest rise of the working node in any piece of work; infinite: it never worked.</summary>
    public double LowestAtWork;

    /// <summary>Highest rises, in the order of the network's nodes.</summary>
    public double High0, High1, High2, High3;

    public readonly double HighRise(int node) => node switch { 0 => High0, 1 => High1, 2 => High2, _ => High3 };
}
