namespace Heatwright.Numerics;

/// <summary>Levenberg–Marquardt search inside a trust region, within bounds, on an orthogonal factor of the weighed slopes.</summary>
/// <remarks>Region and weights after Moré (1978, see <see cref="TriangleSvd"/>); second-order correction of the step ("geodesic
/// acceleration"), with its bound, after Transtrum and Sethna, arXiv:1201.5885.</remarks>
internal sealed class TrustRegionSearch(LeastSquaresProblem problem, LeastSquaresModel model)
{
    // Where a full step promises to lower the sum of squares by less than this share, full steps take over from the region.
    private const double NearlyThere = 1e-11;

    private double radius;

    private enum Outcome
    {
        Moved,
        Done,
        Stuck,
    }

    public FitPoint Point { get; } = new(model, problem.Start);

    public int Iterations { get; private set; }

    public bool Converged { get; private set; }

    public string Why { get; private set; } = "";

    public void Run()
    {
        if (!Point.HasValue)
        {
            Why = "The model has no value at the start of the search.";
            return;
        }

        var grade = SlopeGrade.Forward;
        while (Iterations < problem.MaxIterations)
        {
            Iterations++;
            if (!Point.TakeSlopes(grade))
            {
                Why = "The slopes of the model have no value.";
                return;
            }

            radius = radius > 0 ? radius : Point.ScaledSize;
            double before = Point.Sum;
            var outcome = StepDown();
            if (outcome == Outcome.Moved || (grade == SlopeGrade.Forward && !model.SlopesByFormula))
            {
                grade = outcome == Outcome.Moved && (problem.EnoughFall > 0 || before - Point.Sum > 1e-3 * before) ? grade : SlopeGrade.Central;
                continue;
            }

            Finish(outcome);
            return;
        }

        Point.TakeSlopes(SlopeGrade.Central);
        Why = "The search used up its steps without settling.";
    }

    private void Finish(Outcome outcome)
    {
        if (outcome == Outcome.Stuck)
        {
            Why = "No step lowers the sum of squares although its slope is not zero: the model jumps, is noisy, or its slopes are wrong.";
            return;
        }

        Converged = true;
        if (problem.EnoughFall > 0)
        {
            Why = "What the next step promises is less than was asked for.";
            return;
        }

        (Why, int steps) = FullSteps.Settle(Point, problem.Tolerance);
        Iterations += steps;
    }

    /// <summary>Tries steps, shorter and shorter, until one lowers the sum of squares.</summary>
    private Outcome StepDown()
    {
        bool[] free = Point.FreeParameters();
        while (true)
        {
            int[] index = [.. Enumerable.Range(0, free.Length).Where(j => free[j])];
            if (index.Length == 0)
            {
                return Outcome.Done;
            }

            var svd = Point.Factor(index);
            double[] along = svd.Along(Point.Rows);
            double damping = svd.DampingFor(along, radius);
            double[] step = Point.Spread(svd.Step(along, damping), index);
            if (Point.HoldsBack(step, free))
            {
                continue;
            }

            double[] straight = step;
            step = Point.Clipped(straight);
            double predicted = Point.PredictedFall(step);
            if (TooShort(step, predicted) && Point.UpToBound(straight) is var (part, blocked) && blocked >= 0)
            {
                // Cut at a bound the step may lead nowhere; shortened as a whole it always leads down, if only to the bound.
                (step, predicted) = (part, Point.PredictedFall(part));
                if (TooShort(step, predicted))
                {
                    free[blocked] = false;
                    continue;
                }
            }

            if (TooShort(step, predicted))
            {
                // A full step this short means a minimum; a step cut this short means that nothing the slopes promise comes true.
                return damping == 0 || Settled(Point.Spread(svd.Step(along, 0), index)) ? Outcome.Done : Outcome.Stuck;
            }

            if (Moves(step, predicted, svd, damping, index))
            {
                Point.Accept();
                return Outcome.Moved;
            }
        }
    }

    private bool TooShort(double[] step, double predicted) =>
        predicted <= Math.Max(NearlyThere * Point.Sum, problem.EnoughFall) || Point.Largest(step) <= problem.Tolerance;

    /// <summary>Tries one step and adjusts the radius to how well the slopes foretold it.</summary>
    private bool Moves(double[] step, double predicted, TriangleSvd svd, double damping, int[] index)
    {
        double length = Point.Scaled(step);
        double[] bent = step;
        if (Point.Largest(step) > 1e-3)
        {
            double[]? correction = Correction(step, svd, damping, index);
            if (correction is null)
            {
                radius = 0.3 * Math.Min(radius, length);
                return false;
            }

            bent = [.. step.Zip(correction, (straight, second) => straight + (0.5 * second))];
        }

        double ratio = Point.TryStep(bent) / predicted;
        if (ratio < 0.25)
        {
            radius = Math.Min(radius, length) * (ratio > -1 ? 0.5 : 0.1);
        }
        else if (ratio > 0.75)
        {
            radius = Math.Max(radius, 2 * length);
        }

        return ratio > 1e-4;
    }

    /// <summary>Second-order part of a step; null where the model bends too much over it to trust the slopes.</summary>
    private double[]? Correction(double[] step, TriangleSvd svd, double damping, int[] index)
    {
        const double share = 0.1;
        if (Point.RowsAhead(step, share) is not { } ahead)
        {
            return null;
        }

        double[] change = Point.LinearChange(step);
        // Second derivative along the step v from two values and the slope: 2/h²·(r(p + h·v) − r − h·J·v).
        double[] bend = new double[change.Length], here = Point.Rows;
        for (int i = 0; i < bend.Length; i++)
        {
            bend[i] = ((ahead[i] - here[i]) * (2 / (share * share))) - (change[i] * (2 / share));
        }

        double[] correction = Point.Spread(svd.Step(svd.Along(bend), damping), index);
        return Point.Scaled(correction) <= 0.375 * Point.Scaled(step) ? correction : null;
    }

    /// <summary>Whether the full step promises nothing that the readings could tell, or no more than the noise of the model's own digits.</summary>
    private bool Settled(double[] fullStep)
    {
        double promised = Point.PredictedFall(Point.Clipped(fullStep));
        double noise = 10 * problem.RelativeNoise * Point.ScaledSize;
        return promised <= Math.Max(1e-6 * Point.Sum, problem.EnoughFall) || promised <= noise * (noise + (2 * Math.Sqrt(Point.Sum)));
    }
}
