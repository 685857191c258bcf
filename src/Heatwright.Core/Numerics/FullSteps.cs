namespace Heatwright.Numerics;

/// <summary>The last digits of a fit: full Gauss–Newton steps with fine slopes until they stop shrinking.</summary>
/// <remarks>Close to a minimum the sum of squares is too flat to judge steps by (eight digits of it give four of the parameters);
/// the length of the next full step is not.</remarks>
internal static class FullSteps
{
    /// <summary>Settles the point; says how it stands there, and after how many steps.</summary>
    public static (string Why, int Steps) Settle(FitPoint point, double tolerance)
    {
        double last = double.PositiveInfinity;
        double[]? lastStep = null, lastMove = null;
        int steps = 0;
        for (; steps < 30; steps++)
        {
            if (!point.TakeSlopes(SlopeGrade.Fine))
            {
                return ("Settled, but the slopes of the model have no value there.", steps);
            }

            point.LeanOnBounds();
            if (FullStep(point, out string why) is not { } step)
            {
                return (why, steps);
            }

            double size = point.Largest(step);
            if (size >= 0.7 * last)
            {
                break;
            }

            double[] move = lastStep is null ? step : point.Clipped(Steadied(point, step, lastStep, lastMove!));
            if (!(point.TryStep(move) >= -1e-9 * point.Sum))
            {
                break;
            }

            point.Accept();
            if (size <= tolerance)
            {
                return ("No parameter moves any more.", steps + 1);
            }

            (last, lastStep, lastMove) = (size, step, move);
        }

        return ("No parameter moves any more, within the digits of the model.", steps);
    }

    /// <summary>The Gauss–Newton step of the parameters that no bound stops; null, with the reason, when there is none.</summary>
    private static double[]? FullStep(FitPoint point, out string why)
    {
        bool[] free = point.FreeParameters();
        while (true)
        {
            int[] index = [.. Enumerable.Range(0, free.Length).Where(j => free[j])];
            if (index.Length == 0)
            {
                why = "Every parameter stands at a bound.";
                return null;
            }

            var svd = point.Factor(index);
            if (svd.Rank < svd.Count)
            {
                why = "Settled, but the readings leave some parameters open.";
                return null;
            }

            double[] step = point.Spread(svd.Step(svd.Along(point.Rows), 0), index);
            if (!point.HoldsBack(step, free))
            {
                why = "";
                return point.Clipped(step);
            }
        }
    }

    /// <summary>Corrects a full step by how the last move changed it: full steps alone swing or creep where the misfit is large.</summary>
    /// <remarks>Anderson, Journal of the ACM 12 (1965) 547, with one step of memory.</remarks>
    private static double[] Steadied(FitPoint point, double[] step, double[] lastStep, double[] lastMove)
    {
        double[] change = point.Weighed([.. step.Zip(lastStep, (now, before) => now - before)]);
        double share = CompensatedSum.OfProducts(change, point.Weighed(step))
            / Math.Max(CompensatedSum.OfProducts(change, change), double.Epsilon);
        // What a bound stops stays there.
        return [.. step.Select((value, j) => point.EndsAtBound(step, j) ? value : value - (share * (lastMove[j] + value - lastStep[j])))];
    }
}
