namespace Heatwright.DemoTruth;

/// <summary>Reproducible draws, one stream a name, so that one more reading here moves nothing there.</summary>
/// <remarks>State advance and mixing are those of the public-domain splitmix64 generator; constants from memory.</remarks>
internal sealed class Noise(double seed, string name)
{
    private ulong state = Start(seed, name);

    /// <summary>Evenly between 0 and 1.</summary>
    public double Even()
    {
        state += 0x9E3779B97F4A7C15UL;
        ulong z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>Evenly between -limit and limit.</summary>
    public double Within(double limit) => limit * ((2 * Even()) - 1);

    /// <summary>Near enough to a normal draw with deviation 1: twelve even draws, so that no library function decides a byte.</summary>
    public double Bell()
    {
        double sum = -6;
        for (int i = 0; i < 12; i++)
        {
            sum += Even();
        }

        return sum;
    }

    public int Below(int count) => (int)(Even() * count);

    private static ulong Start(double seed, string name)
    {
        ulong hash = 0xCBF29CE484222325UL ^ (ulong)BitConverter.DoubleToInt64Bits(seed);
        foreach (char letter in name)
        {
            hash = (hash ^ letter) * 0x100000001B3UL;
        }

        return hash;
    }
}
