namespace Heatwright.Numerics;

/// <summary>Levenberg–Marquardt search inside a trust region, within bounds, on an orthogonal factor of the scaled slopes.</summary>
/// <remarks>Region and scaling after Moré (1978, see <see cref="TriangleSvd"/>); second-order correction of the step ("geodesic
/// acceleration") after Transtrum and Sethna, arXiv:1201.5885, with the bound on the correction given there.</remarks>
internal sealed class TrustRegionSearch
{
    private readonly LeastSquaresProblem problem;
    private readonly LeastSquaresModel model;
    private readonly int n;
    private readonly int rows;
    private readonly double[] columns;
    private readonly double[] factor;
    private readonly double[] side;
    private readonly double[] weights;
    private double[] p;
    private double[] r;
    private double[] trial;
    private double[] trialR;
    private double radius;
    private double sum;

    public TrustRegionSearch(LeastSquaresProblem problem, LeastSquaresModel model)
    {
        this.problem = problem;
        this.model = model;
        n = model.Count;
        rows = model.Rows;
        columns = new double[rows * n];
        factor = new double[rows * n];
        side = new double[rows];
        weights = new double[n];
        p = [.. problem.Start.Select((value, j) => Math.Clamp(value, model.Lower[j], model.Upper[j]))];
        r = new double[rows];
        trial = new double[n];
        trialR = new double[rows];
    }

    public double[] Parameters => p;

    public double[] Rows => r;

    /// <summary>Slopes by columns at the end.</summary>
    public double[] Columns => columns;

    public int Iterations { get; private set; }

    public bool Converged { get; private set; }

    public string Why { get; private set; } = "";

    public void Run()
    {
        if (!model.Evaluate(p, r))
        {
            Why = "The model has no value at the start of the search.";
            return;
        }

        sum = SumOfSquares(r);
        double first = sum;
        var grade = SlopeGrade.Forward;
        while (Iterations < problem.MaxIterations)
        {
            Iterations++;
            if (!model.Slopes(p, r, columns, grade))
            {
                Why = "The slopes of the model have no value.";
                return;
            }

            Weigh();
            bool[] free = FreeParameters();
            double before = sum;
            var outcome = StepDown(free, first);
            if (outcome != Outcome.Moved && grade == SlopeGrade.Forward && problem.Jacobian is null)
            {
                grade = SlopeGrade.Central;
                continue;
            }

            if (outcome == Outcome.Stuck)
            {
                Why = "No step lowers the sum of squares although its slope is not zero: the model jumps, is noisy, or its slopes are wrong.";
                return;
            }

            if (outcome == Outcome.Done)
            {
                Polish();
                return;
            }

            if (before - sum < 1e-3 * before)
            {
                grade = SlopeGrade.Central;
            }
        }

        Why = "The search used up its steps without settling.";
        model.Slopes(p, r, columns, SlopeGrade.Central);
    }

    private enum Outcome
    {
        Moved,
        Done,
        Stuck,
    }

    /// <summary>Tries steps, shorter and shorter, until one lowers the sum of squares.</summary>
    private Outcome StepDown(bool[] free, double first)
    {
        while (true)
        {
            int[] index = [.. Enumerable.Range(0, n).Where(j => free[j])];
            if (index.Length == 0)
            {
                return Outcome.Done;
            }

            var svd = Factor(index, r);

            double damping = svd.DampingFor(radius);
            double[] step = Spread(svd.Step(damping), index);
            if (HoldOutward(step, free))
            {
                continue;
            }

            double length = Clip(step);
            double predicted = sum - SumOfSquares(Linear(step));
            if (predicted <= 1e-13 * sum || Small(step, problem.Tolerance))
            {
                // A full step this short means a minimum; a step cut this short means that nothing the slopes promise comes true.
                return damping == 0 || Flat(free) ? Outcome.Done : Outcome.Stuck;
            }

            bool bent = !Small(step, 1e-3);
            if (bent && !Bend(damping, index, step))
            {
                radius = 0.3 * Math.Min(radius, length);
                continue;
            }

            double actual = Try(step, bent);
            double ratio = actual / predicted;
            if (ratio < 0.25)
            {
                radius = Math.Min(radius, length) * (double.IsFinite(ratio) && ratio > -1 ? 0.5 : 0.1);
            }
            else if (ratio > 0.75)
            {
                radius = Math.Max(radius, 2 * length);
            }

            if (ratio > 1e-4)
            {
                Accept();
                return sum <= 1e-28 * first ? Outcome.Done : Outcome.Moved;
            }
        }
    }

    /// <summary>Full Gauss-Newton steps with fine slopes, until they stop shrinking: the sum of squares is too flat here to judge by.</summary>
    private void Polish()
    {
        Converged = true;
        Why = "No parameter moves any more.";
        double last = double.PositiveInfinity;
        double[]? lastStep = null, lastMove = null;
        for (int k = 0; k < 30; k++)
        {
            if (!model.Slopes(p, r, columns, SlopeGrade.Fine))
            {
                return;
            }

            Weigh();
            bool[] free = FreeParameters();
            int[] index = [.. Enumerable.Range(0, n).Where(j => free[j])];
            var svd = index.Length > 0 ? Factor(index, r) : null;
            if (svd is null || svd.Rank < index.Length)
            {
                Why = svd is null ? "Every parameter stands at a bound." : "Settled, but the readings leave some parameters open.";
                return;
            }

            double[] step = Spread(svd.Step(0), index);
            Clip(step);
            double size = Largest(step);
            if (size >= 0.7 * last || size <= 0.01 * problem.Tolerance)
            {
                return;
            }

            double[] move = Steadied(step, lastStep, lastMove);
            Clip(move);
            (lastStep, lastMove) = (step, move);
            double actual = Try(move, bent: false);
            if (!(actual >= -1e-9 * sum))
            {
                return;
            }

            last = size;
            Iterations++;
            Accept();
        }
    }

    /// <summary>Corrects a full step by how the last move changed it: full steps alone swing or creep where the misfit is large.</summary>
    /// <remarks>Anderson, Journal of the ACM 12 (1965) 547, with one step of memory.</remarks>
    private double[] Steadied(double[] step, double[]? lastStep, double[]? lastMove)
    {
        if (lastStep is null || lastMove is null)
        {
            return [.. step];
        }

        double[] change = [.. step.Select((value, j) => (value - lastStep[j]) * weights[j])];
        double share = Dot(change, [.. step.Select((value, j) => value * weights[j])]) / Math.Max(Dot(change, change), double.Epsilon);
        return [.. step.Select((value, j) => value - (share * (lastMove[j] + value - lastStep[j])))];
    }

    private void Weigh()
    {
        for (int j = 0; j < n; j++)
        {
            weights[j] = Math.Max(weights[j], HouseholderQr.Norm(columns.AsSpan(j * rows, rows)));
        }

        if (radius == 0)
        {
            double[] scaled = [.. p.Select((_, j) => weights[j] * model.Size(p, j))];
            radius = HouseholderQr.Norm(scaled);
        }
    }

    /// <summary>Not fixed, and not at a bound that the slope of the sum pushes against.</summary>
    private bool[] FreeParameters()
    {
        var free = new bool[n];
        for (int j = 0; j < n; j++)
        {
            double slope = Dot(columns.AsSpan(j * rows, rows), r);
            free[j] = model.Lower[j] < model.Upper[j] && weights[j] > 0
                && !(p[j] <= model.Lower[j] && slope >= 0) && !(p[j] >= model.Upper[j] && slope <= 0);
        }

        return free;
    }

    private TriangleSvd Factor(int[] index, double[] target)
    {
        for (int k = 0; k < index.Length; k++)
        {
            int j = index[k];
            for (int i = 0; i < rows; i++)
            {
                factor[(k * rows) + i] = columns[(j * rows) + i] / weights[j];
            }
        }

        target.CopyTo(side, 0);
        HouseholderQr.Reduce(factor, rows, index.Length, side);
        return new TriangleSvd(factor, rows, index.Length, side);
    }

    private double[] Spread(double[] scaled, int[] index)
    {
        var step = new double[n];
        for (int k = 0; k < index.Length; k++)
        {
            step[index[k]] = scaled[k] / weights[index[k]];
        }

        return step;
    }

    /// <summary>Takes parameters out of play that stand at a bound and would step through it.</summary>
    private bool HoldOutward(double[] step, bool[] free)
    {
        bool held = false;
        for (int j = 0; j < n; j++)
        {
            if (free[j] && ((p[j] <= model.Lower[j] && step[j] < 0) || (p[j] >= model.Upper[j] && step[j] > 0)))
            {
                free[j] = false;
                held = true;
            }
        }

        return held;
    }

    /// <summary>Ends the step at the bounds; returns its scaled length.</summary>
    private double Clip(double[] step)
    {
        double length = 0;
        for (int j = 0; j < n; j++)
        {
            step[j] = Math.Clamp(p[j] + step[j], model.Lower[j], model.Upper[j]) - p[j];
            length += step[j] * weights[j] * step[j] * weights[j];
        }

        return Math.Sqrt(length);
    }

    private double[] Linear(double[] step)
    {
        double[] rowsAfter = [.. r];
        for (int j = 0; j < n; j++)
        {
            for (int i = 0; step[j] != 0 && i < rows; i++)
            {
                rowsAfter[i] += columns[(j * rows) + i] * step[j];
            }
        }

        return rowsAfter;
    }

    /// <summary>Adds half the second-order correction when it is small beside the step; leaves the bent point in the trial.</summary>
    private bool Bend(double damping, int[] index, double[] step)
    {
        const double share = 0.1;
        double[] ahead = [.. p.Select((value, j) => value + (share * step[j]))];
        if (!model.Evaluate(ahead, trialR))
        {
            return false;
        }

        double[] linear = Linear(step);
        var bend = new double[rows];
        for (int i = 0; i < rows; i++)
        {
            // Second derivative along the step v from two values and the slope: 2/h²·(r(p + h·v) − r − h·J·v).
            bend[i] = 2 / share * (((trialR[i] - r[i]) / share) - (linear[i] - r[i]));
        }

        double[] correction = Spread(Factor(index, bend).Step(damping), index);
        if (!(Scaled(correction) <= 0.375 * Scaled(step)))
        {
            return false;
        }

        for (int j = 0; j < n; j++)
        {
            trial[j] = Math.Clamp(p[j] + step[j] + (0.5 * correction[j]), model.Lower[j], model.Upper[j]);
        }

        return true;
    }

    /// <summary>Evaluates the trial point; returns by how much it lowers the sum, negative infinity where the model has no value.</summary>
    private double Try(double[] step, bool bent)
    {
        for (int j = 0; !bent && j < n; j++)
        {
            trial[j] = p[j] + step[j];
        }

        if (!model.Evaluate(trial, trialR))
        {
            return double.NegativeInfinity;
        }

        double after = SumOfSquares(trialR);
        return double.IsFinite(after) ? sum - after : double.NegativeInfinity;
    }

    private void Accept()
    {
        (p, trial) = (trial, p);
        (r, trialR) = (trialR, r);
        sum = SumOfSquares(r);
    }

    /// <summary>Whether the residuals stand square on every slope: the mark of a minimum.</summary>
    private bool Flat(bool[] free)
    {
        double length = HouseholderQr.Norm(r);
        for (int j = 0; j < n; j++)
        {
            var column = columns.AsSpan(j * rows, rows);
            if (free[j] && Math.Abs(Dot(column, r)) > 1e-6 * length * HouseholderQr.Norm(column))
            {
                return false;
            }
        }

        return true;
    }

    private double Scaled(double[] step) => HouseholderQr.Norm([.. step.Select((value, j) => value * weights[j])]);

    private double Largest(double[] step) => step.Select((value, j) => Math.Abs(value) / model.Size(p, j)).Max();

    private bool Small(double[] step, double share) => Largest(step) <= share;

    private static double SumOfSquares(ReadOnlySpan<double> values) => Dot(values, values);

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var total = new CompensatedSum();
        for (int i = 0; i < a.Length; i++)
        {
            total.Add(a[i] * b[i]);
        }

        return total.Value;
    }
}
