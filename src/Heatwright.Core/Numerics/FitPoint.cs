namespace Heatwright.Numerics;

/// <summary>Where a search stands: parameters, rows, and slopes there, with a trial point beside it.</summary>
internal sealed class FitPoint
{
    private readonly LeastSquaresModel model;
    private readonly double[] weights;
    private double[] trialP;
    private double[] trialRows;
    private double trialSum;
    private bool stands;
    private readonly double[] factored;
    private (int[] Index, TriangleSvd Svd)? factor;

    public FitPoint(LeastSquaresModel model, double[] start)
    {
        this.model = model;
        P = [.. start.Select((value, j) => Math.Clamp(value, model.Lower[j], model.Upper[j]))];
        Rows = new double[model.Rows];
        Columns = new double[model.Rows * model.Count];
        factored = new double[Columns.Length];
        weights = new double[model.Count];
        trialP = new double[model.Count];
        trialRows = new double[model.Rows];
        HasValue = model.Evaluate(P, Rows);
        Sum = CompensatedSum.OfProducts(Rows, Rows);
    }

    public double[] P { get; private set; }

    public double[] Rows { get; private set; }

    /// <summary>Sum of squares of the rows.</summary>
    public double Sum { get; private set; }

    /// <summary>Slopes by columns.</summary>
    public double[] Columns { get; }

    public bool HasValue { get; }

    /// <summary>Length of the parameters in the weights of the slopes.</summary>
    public double ScaledSize => HouseholderQr.Norm([.. P.Select((_, j) => weights[j] * model.Size(P, j))]);

    /// <summary>Takes the slopes here; each parameter is weighed by its largest column so far, so that units do not matter.</summary>
    public bool TakeSlopes(SlopeGrade grade)
    {
        if (stands && model.SlopesByFormula)
        {
            return true; // a formula has no finer slopes of the same point
        }

        if (!model.Slopes(P, Rows, Columns, grade))
        {
            return false;
        }

        (stands, factor) = (true, null);

        for (int j = 0; j < weights.Length; j++)
        {
            weights[j] = Math.Max(weights[j], HouseholderQr.Norm(Column(j)));
        }

        return true;
    }

    /// <summary>Neither fixed, nor without effect, nor at a bound that the slope of the sum pushes against.</summary>
    public bool[] FreeParameters()
    {
        var free = new bool[weights.Length];
        for (int j = 0; j < free.Length; j++)
        {
            free[j] = !model.Fixed(j) && weights[j] > 0
                && !(P[j] <= model.Lower[j] && SumSlope(j) >= 0) && !(P[j] >= model.Upper[j] && SumSlope(j) <= 0);
        }

        return free;
    }

    /// <summary>Factors the weighed columns of some parameters; the one before is gone then.</summary>
    public TriangleSvd Factor(int[] index)
    {
        if (factor is { } there && index.AsSpan().SequenceEqual(there.Index))
        {
            return there.Svd;
        }

        for (int k = 0; k < index.Length; k++)
        {
            Lanes.Divide(Column(index[k]), weights[index[k]], factored.AsSpan(k * Rows.Length));
        }

        var svd = new TriangleSvd(new HouseholderQr(factored, Rows.Length, index.Length));
        factor = (index, svd);
        return svd;
    }

    /// <summary>A step of the factored parameters as a step of all.</summary>
    public double[] Spread(double[] scaled, int[] index)
    {
        var step = new double[weights.Length];
        for (int k = 0; k < index.Length; k++)
        {
            step[index[k]] = scaled[k] / weights[index[k]];
        }

        return step;
    }

    /// <summary>Takes parameters out of play that stand at a bound and would step through it, so that the others are solved without them.</summary>
    public bool HoldsBack(double[] step, bool[] free)
    {
        bool held = false;
        for (int j = 0; j < step.Length; j++)
        {
            if (free[j] && PushesOut(step, j))
            {
                (free[j], held) = (false, true);
            }
        }

        return held;
    }

    /// <summary>The part of a step up to the first bound, and the parameter that meets it there; −1 when none does.</summary>
    public (double[] Step, int Blocked) UpToBound(double[] step)
    {
        double share = 1;
        int blocked = -1;
        for (int j = 0; j < step.Length; j++)
        {
            double room = step[j] > 0 ? model.Upper[j] - P[j] : model.Lower[j] - P[j];
            if (step[j] != 0 && room / step[j] < share)
            {
                (share, blocked) = (room / step[j], j);
            }
        }

        return ([.. step.Select((value, j) => j == blocked ? (value > 0 ? model.Upper[j] : model.Lower[j]) - P[j] : share * value)], blocked);
    }

    /// <summary>Moves parameters onto the bound they lean against and almost touch, unless the sum of squares minds.</summary>
    public void LeanOnBounds()
    {
        var step = new double[weights.Length];
        for (int j = 0; j < step.Length; j++)
        {
            double near = 1e-5 * model.Size(P, j);
            if (model.Fixed(j) || (P[j] - model.Lower[j] > near && model.Upper[j] - P[j] > near))
            {
                continue;
            }

            double slope = SumSlope(j);
            double room = slope > 0 ? model.Lower[j] - P[j] : model.Upper[j] - P[j];
            step[j] = slope != 0 && Math.Abs(room) <= near ? room : 0;
        }

        if (step.Any(value => value != 0) && TryStep(step) >= -1e-12 * Sum)
        {
            Accept();
        }
    }

    public bool EndsAtBound(double[] step, int j) => P[j] + step[j] <= model.Lower[j] || P[j] + step[j] >= model.Upper[j];

    private bool PushesOut(double[] step, int j) =>
        (P[j] <= model.Lower[j] && step[j] < 0) || (P[j] >= model.Upper[j] && step[j] > 0);

    /// <summary>A step ended at the bounds, each parameter by itself.</summary>
    public double[] Clipped(double[] step) =>
        [.. step.Select((value, j) => Math.Clamp(P[j] + value, model.Lower[j], model.Upper[j]) - P[j])];

    /// <summary>Length of a step in the weights of the slopes.</summary>
    public double Scaled(double[] step) => HouseholderQr.Norm(Weighed(step));

    public double[] Weighed(double[] step) => [.. step.Select((value, j) => value * weights[j])];

    /// <summary>Largest change of a parameter as a share of its size.</summary>
    public double Largest(double[] step) => step.Select((value, j) => Math.Abs(value) / model.Size(P, j)).Max();

    /// <summary>What the slopes say the rows change by.</summary>
    public double[] LinearChange(double[] step)
    {
        var change = new double[Rows.Length];
        for (int j = 0; j < step.Length; j++)
        {
            if (step[j] != 0)
            {
                Lanes.AddScaled(change, step[j], Column(j));
            }
        }

        return change;
    }

    /// <summary>By how much the slopes say that the sum of squares falls.</summary>
    public double PredictedFall(double[] step)
    {
        double[] change = LinearChange(step);
        return (-2 * CompensatedSum.OfProducts(Rows, change)) - CompensatedSum.OfProducts(change, change);
    }

    /// <summary>Rows at a share of the step; null where the model has no value.</summary>
    public double[]? RowsAhead(double[] step, double share)
    {
        for (int j = 0; j < step.Length; j++)
        {
            trialP[j] = P[j] + (share * step[j]);
        }

        return model.Evaluate(trialP, trialRows) ? trialRows : null;
    }

    /// <summary>By how much the sum of squares falls at the end of a step; negative infinity where the model has no value.</summary>
    public double TryStep(double[] step)
    {
        for (int j = 0; j < step.Length; j++)
        {
            trialP[j] = Math.Clamp(P[j] + step[j], model.Lower[j], model.Upper[j]);
        }

        if (!model.Evaluate(trialP, trialRows))
        {
            return double.NegativeInfinity;
        }

        trialSum = CompensatedSum.OfProducts(trialRows, trialRows);
        return double.IsFinite(trialSum) ? Sum - trialSum : double.NegativeInfinity;
    }

    /// <summary>Moves to the point tried last.</summary>
    public void Accept()
    {
        (P, trialP) = (trialP, P);
        (Rows, trialRows) = (trialRows, Rows);
        (Sum, stands) = (trialSum, false);
    }

    /// <summary>Half the slope of the sum of squares by one parameter.</summary>
    private double SumSlope(int j) => CompensatedSum.OfProducts(Column(j), Rows);

    private ReadOnlySpan<double> Column(int j) => Columns.AsSpan(j * Rows.Length, Rows.Length);
}
