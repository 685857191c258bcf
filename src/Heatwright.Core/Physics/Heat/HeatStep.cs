namespace Heatwright.Physics;

/// <summary>One exact step of a <see cref="HeatNetwork"/>: rises after it from rises before it and the power held during it.</summary>
public sealed class HeatStep
{
    private readonly double[,] _transition;
    private readonly double[,] _gainKPerW;

    internal HeatStep(double[,] transition, double[,] gainKPerW)
    {
        _transition = transition;
        _gainKPerW = gainKPerW;
    }

    /// <summary>Share of each node's rise that is found in each node after the step.</summary>
    public double[,] Transition => (double[,])_transition.Clone();

    /// <summary>Rise of each node per watt held in each node, K/W.</summary>
    public double[,] GainKPerW => (double[,])_gainKPerW.Clone();

    /// <summary>Rises after the step.</summary>
    public double[] After(ReadOnlySpan<double> riseK, ReadOnlySpan<double> powerW)
    {
        int n = _transition.GetLength(0);
        if (riseK.Length != n || powerW.Length != n)
        {
            throw new ArgumentException($"{riseK.Length} rises and {powerW.Length} powers for {n} nodes: give one of each a node.");
        }

        double[] after = new double[n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                after[i] += _transition[i, j] * riseK[j] + _gainKPerW[i, j] * powerW[j];
            }
        }

        return after;
    }
}
