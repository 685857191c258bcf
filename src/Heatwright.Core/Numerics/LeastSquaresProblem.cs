namespace Heatwright.Numerics;

/// <summary>Fills in the residuals, each already divided by its standard doubt.</summary>
/// <remarks>A residual that is not a number or infinite marks a place where the model has no value: the search turns back from it.</remarks>
public delegate void ResidualFunction(ReadOnlySpan<double> parameters, Span<double> residuals);

/// <summary>Fills in the slopes of the residuals: residual i by parameter j stands at i · parameters.Length + j.</summary>
public delegate void JacobianFunction(ReadOnlySpan<double> parameters, Span<double> slopes);

/// <summary>Parameters sought for which the sum of squared residuals is smallest.</summary>
/// <param name="Residuals">The model less the readings, divided by the doubt of each.</param>
/// <param name="ResidualCount">How many residuals the function fills in.</param>
/// <param name="Start">Where the search starts; its length is the number of parameters.</param>
public sealed record LeastSquaresProblem(ResidualFunction Residuals, int ResidualCount, double[] Start)
{
    /// <summary>Smallest allowed value of each parameter; equal lower and upper bounds hold a parameter fixed.</summary>
    public double[]? Lower { get; init; }

    /// <summary>Largest allowed value of each parameter.</summary>
    public double[]? Upper { get; init; }

    /// <summary>What was known of each parameter before; counts as one more residual for each finite <see cref="PriorDoubt"/>.</summary>
    public double[]? PriorMean { get; init; }

    /// <summary>Standard doubt of that knowledge; positive infinity where nothing was known.</summary>
    public double[]? PriorDoubt { get; init; }

    /// <summary>Typical size of each parameter, used for the steps of the slopes where the value itself is near zero.</summary>
    public double[]? Scale { get; init; }

    /// <summary>Slopes by formula; by differences when absent.</summary>
    public JacobianFunction? Jacobian { get; init; }

    /// <summary>Relative accuracy to which the residual function repeats itself; larger than rounding for a solver with a tolerance.</summary>
    public double RelativeNoise { get; init; } = 2.3e-16;

    /// <summary>The search ends when no parameter moves by more than this share of its size.</summary>
    public double Tolerance { get; init; } = 1e-10;

    /// <summary>The search ends, without seeking further digits, when the best step promises to lower the sum of squares by no more than this; 0: it goes on to the last digits.</summary>
    /// <remarks>Residuals are in standard doubts: a fall of 10⁻⁴ still to come means that no parameter is farther than a hundredth of its own doubt from the minimum.</remarks>
    public double EnoughFall { get; init; }

    /// <summary>Most steps of the search.</summary>
    public int MaxIterations { get; init; } = 200;

    /// <summary>Ends the search early with an <see cref="OperationCanceledException"/>.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>Throws when the arrays do not fit together: a slip of the caller, not of the readings.</summary>
    internal void Check()
    {
        int n = Start.Length;
        if (n == 0 || ResidualCount < 1)
        {
            throw new ArgumentException("A fit needs at least one parameter and one residual.");
        }

        foreach (var array in new[] { Lower, Upper, PriorMean, PriorDoubt, Scale })
        {
            if (array is not null && array.Length != n)
            {
                throw new ArgumentException($"An array has {array.Length} entries for {n} parameters.");
            }
        }

        if ((PriorMean is null) != (PriorDoubt is null))
        {
            throw new ArgumentException("A prior needs both its mean and its doubt.");
        }

        for (int j = 0; j < n; j++)
        {
            if (Lower is not null && Upper is not null && Lower[j] > Upper[j])
            {
                throw new ArgumentException($"Lower bound of parameter {j} lies above its upper bound.");
            }

            if (PriorDoubt is not null && !(PriorDoubt[j] > 0))
            {
                throw new ArgumentException($"Prior doubt of parameter {j} is not above zero.");
            }
        }
    }
}
