namespace Heatwright.DemoTruth.Campaign;

/// <summary>Draws and columns that the made-up tests share.</summary>
internal static class Draws
{
    public static double Between(this Noise noise, double low, double high) => low + ((high - low) * noise.Even());

    /// <summary>Evenly in the logarithm.</summary>
    public static double Decades(this Noise noise, double low, double high) => low * Math.Pow(high / low, noise.Even());

    public static bool Chance(this Noise noise, double share) => noise.Even() < share;

    public static double[] Even(double from, double to, int count) => [.. Enumerable.Range(0, count).Select(i => from + ((to - from) * i / (count - 1.0)))];

    public static double[] Each(this double[] values, Func<double, double> of) => [.. values.Select(of)];

    public static double[] At(this int[] places, double[] numbers) => [.. places.Select(place => numbers[place])];
}
