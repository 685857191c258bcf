using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Limits from causes of several shapes: flat limits of an instrument beside the bell of the scatter.</summary>
internal static class CauseLimits
{
    private const int Draws = 4000;

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<double, double[]> Bells = new();

    /// <summary>The middle that holds a share: the scatter as a t of its degrees of freedom, each other cause by its own shape.</summary>
    /// <remarks>Each cause takes its own strata in its own order, so that a few thousand draws are steady to a per cent of the width.</remarks>
    public static (double Low, double High) Middle(Estimate estimate, double scatter, double degrees, double share)
    {
        var others = estimate.Doubts.Pushes.Where(push => push.Cause.Group != CauseGroup.Trial).ToArray();
        double own = Math.Sqrt(estimate.Doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Trial).Sum(push => push.By * push.By));
        if (others.Length == 0)
        {
            double half = own > 0 ? HalfWidth(own, scatter, degrees, share) : 0;
            return (estimate.Value - half, estimate.Value + half);
        }

        double[] values = new double[Draws];
        double[] bells = double.IsInfinity(degrees) || degrees < 1 ? [] : Bells.GetOrAdd(degrees, static d => [.. Enumerable.Range(0, Draws).Select(i => Bell((i + 0.5) / Draws, d))]);
        for (int cause = 0; cause <= others.Length; cause++)
        {
            double by = cause < others.Length ? others[cause].By : scatter > 0 ? scatter : own;
            if (by == 0)
            {
                continue;
            }

            int[] order = Shuffled((ulong)(cause + 1));
            for (int i = 0; i < Draws; i++)
            {
                double p = (order[i] + 0.5) / Draws;
                values[i] += by * (cause < others.Length ? Unit(others[cause].Cause.Shape, p) : double.IsInfinity(degrees) || degrees < 1 ? Quantiles.Normal(p) : bells[order[i]]);
            }
        }

        Array.Sort(values);
        double At(double p) => values[(int)Math.Clamp(p * Draws, 0, Draws - 1)];
        return (estimate.Value + At((1 - share) / 2), estimate.Value + At((1 + share) / 2));
    }

    private static double HalfWidth(double own, double scatter, double degrees, double share) =>
        double.IsInfinity(degrees) || degrees < 1 ? own * Coverage.Factor(share, double.PositiveInfinity) : (scatter > 0 ? scatter : own) * Bell((1 + share) / 2, degrees);

    /// <summary>Quantile of Student's t; one and two degrees of freedom by their closed forms, where a search finds no end of the tail.</summary>
    private static double Bell(double p, double degrees) => degrees < 1.5 ? Math.Tan(Math.PI * (p - 0.5))
        : degrees < 2.5 ? ((2 * p) - 1) / Math.Sqrt(2 * p * (1 - p))
        : Quantiles.StudentT(p, degrees);

    private static double Unit(Shape shape, double p) => shape switch
    {
        Shape.Rectangular => ((2 * p) - 1) * Math.Sqrt(3),
        Shape.Triangular => Math.Sqrt(6) * (p < 0.5 ? Math.Sqrt(2 * p) - 1 : 1 - Math.Sqrt(2 * (1 - p))),
        Shape.StudentT t => Bell(p, t.DegreesOfFreedom) * Math.Sqrt((t.DegreesOfFreedom - 2.0) / t.DegreesOfFreedom),
        _ => Quantiles.Normal(p),
    };

    private static int[] Shuffled(ulong stream)
    {
        int[] order = [.. Enumerable.Range(0, Draws)];
        for (int i = Draws - 1; i > 0; i--)
        {
            int j = (int)(CounterRandom.Uniform(20261125, stream, (ulong)i) * (i + 1));
            (order[i], order[j]) = (order[j], order[i]);
        }

        return order;
    }
}
