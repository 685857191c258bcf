using System.Text;
using Heatwright.Numerics;

namespace Heatwright.Quantities;

/// <summary>One joint draw of all causes of a study. Same seed, number and cause give the same unit draw on any thread, in any order.</summary>
/// <remarks>Draws of one seed are no strangers to each other: of every 256 in a row, each cause has one in each 256th of its chances. Two sets that must not know of each other take two seeds.</remarks>
/// <param name="Seed">The study's seed.</param>
/// <param name="Number">Which draw, from 0.</param>
public sealed record Draw(ulong Seed, int Number)
{
    /// <summary>The draw in which every cause sits at its middle.</summary>
    public static readonly Draw Middle = new(0, -1);

    /// <summary>Unit draw of a cause: mean 0, standard deviation 1.</summary>
    public double Of(Cause cause)
    {
        if (Number < 0)
        {
            return 0;
        }

        double p = StratifiedUniform.At(Seed, KeyOf(cause), (uint)Number);
        return cause.Shape switch
        {
            Shape.Normal => Quantiles.Normal(p),
            Shape.Rectangular => Math.Sqrt(3) * ((2 * p) - 1),
            Shape.Triangular => Math.Sqrt(6) * (p < 0.5 ? Math.Sqrt(2 * p) - 1 : 1 - Math.Sqrt(2 * (1 - p))),
            Shape.StudentT t => Quantiles.StudentT(p, t.DegreesOfFreedom) * Math.Sqrt((t.DegreesOfFreedom - 2.0) / t.DegreesOfFreedom),
            _ => throw new InvalidOperationException($"Shape {cause.Shape} has no unit draw."),
        };
    }

    /// <summary>FNV-1a over the name: the same on every machine and run, unlike string hash codes.</summary>
    private static ulong KeyOf(Cause cause)
    {
        ulong hash = 14695981039346656037;
        foreach (byte letter in Encoding.UTF8.GetBytes(cause.Id))
        {
            hash = (hash ^ letter) * 1099511628211;
        }

        return hash;
    }
}
