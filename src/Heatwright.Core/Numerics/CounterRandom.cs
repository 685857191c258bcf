namespace Heatwright.Numerics;

/// <summary>Random numbers by counting: the number at (seed, stream, index) is the same in any order and on any thread.</summary>
/// <remarks>Two rounds of the mixing function of Steele, Lea and Flood, "Fast splittable pseudorandom number generators",
/// OOPSLA 2014, figure 15 (constants from memory of the paper; the test looks at the spread, not at the bits).</remarks>
public static class CounterRandom
{
    /// <summary>Uniform between 0 and 1, never at either end.</summary>
    public static double Uniform(ulong seed, ulong stream, ulong index)
    {
        return ((Bits(seed, stream, index) >> 12) + 0.5) * (1.0 / 4503599627370496.0);
    }

    /// <summary>64 bits.</summary>
    internal static ulong Bits(ulong seed, ulong stream, ulong index) => Mix(Mix(Mix(seed) ^ stream) + (index * 0x9E3779B97F4A7C15));

    /// <summary>One round of the mixing function.</summary>
    internal static ulong Mix(ulong z)
    {
        z += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
