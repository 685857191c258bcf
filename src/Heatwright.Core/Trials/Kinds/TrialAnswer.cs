using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>A value with doubt that a bench test found.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">The value; its causes are shared with the other findings of the test.</param>
/// <param name="ScatterDoubt">Standard doubt from the scatter of the readings alone, in the same unit; the rest comes from the instruments.</param>
/// <param name="Degrees">Degrees of freedom of the scatter; infinite where the readings' doubts were known.</param>
public sealed record TrialFinding(string Name, Estimate Value, double ScatterDoubt, double Degrees)
{
    /// <summary>Limits that hold with a share, from draws of all causes with their own shapes.</summary>
    public (double Low, double High) Middle(double share) => CauseLimits.Middle(Value, ScatterDoubt, Degrees, share);

    /// <summary>The same with one cause of doubt more.</summary>
    /// <param name="cause">Why it may be off.</param>
    /// <param name="by">By how much one standard size of the cause moves it, in the unit of the value.</param>
    internal TrialFinding Wider(Cause cause, double by) => this with { Value = Value with { Doubts = Value.Doubts.With(cause, by) } };
}

/// <summary>Readings, curve, residuals and band for a picture.</summary>
/// <param name="XName">Name of the axis along.</param>
/// <param name="XUnit">Its unit.</param>
/// <param name="YName">Name of the axis up.</param>
/// <param name="YUnit">Its unit.</param>
/// <param name="X">Places along, one for each reading.</param>
/// <param name="Read">What was read there.</param>
/// <param name="Fitted">What the fit says there.</param>
public sealed record TrialPicture(string XName, string XUnit, string YName, string YUnit, double[] X, double[] Read, double[] Fitted)
{
    /// <summary>Standard doubt of each fitted value, same unit.</summary>
    public double[] Band { get; init; } = [];

    /// <summary>Readings that were left out: numbers as in the file.</summary>
    public IReadOnlyList<int> LeftOut { get; init; } = [];

    /// <summary>Read less fitted.</summary>
    public double[] Residuals => [.. Read.Zip(Fitted, (read, fitted) => read - fitted)];
}

/// <summary>A model that was tried.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Parameters">How many numbers it has.</param>
/// <param name="Rss">Sum of squared residuals over the doubts of the readings.</param>
/// <param name="Spread">Root mean square of what it leaves over, in the unit of the readings, over the degrees of freedom.</param>
/// <param name="Aicc">Criterion; smaller is better.</param>
/// <param name="RunsZ">Too few changes of sign where below −2.</param>
/// <param name="P">Chance that the gain over the simpler model is luck; not a number for the first.</param>
/// <param name="Why">Why it was chosen or not.</param>
public sealed record TriedModel(string Name, int Parameters, double Rss, double Spread, double Aicc, double RunsZ, double P, string Why)
{
    /// <summary>The one that the findings come from.</summary>
    public bool Chosen { get; init; }
}

/// <summary>What a bench test told.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Findings">Values with doubt.</param>
/// <param name="Says">What it means, in sentences.</param>
public sealed record TrialAnswer(string Kind, IReadOnlyList<TrialFinding> Findings, IReadOnlyList<string> Says)
{
    /// <summary>What was noticed about the readings.</summary>
    public IReadOnlyList<TrialRemark> Remarks { get; init; } = [];

    /// <summary>Models tried and the choice.</summary>
    public IReadOnlyList<TriedModel> Tried { get; init; } = [];

    /// <summary>The readings that would tell what these could not.</summary>
    public IReadOnlyList<string> Next { get; init; } = [];

    /// <summary>The picture, where there is one.</summary>
    public TrialPicture? Picture { get; init; }

    /// <summary>A word where the answer is one: the type of a sensor, what a part is.</summary>
    public string Word { get; init; } = "";

    /// <summary>What was assumed and corrected.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Covariance of the findings, in their units, through all causes that they share.</summary>
    public double[,] Covariance()
    {
        double[,] covariance = new double[Findings.Count, Findings.Count];
        for (int i = 0; i < Findings.Count; i++)
        {
            for (int j = 0; j < Findings.Count; j++)
            {
                covariance[i, j] = Doubts.Covariance(Findings[i].Value.Doubts, Findings[j].Value.Doubts);
            }
        }

        return covariance;
    }

    /// <summary>The finding of this name, or null.</summary>
    public Estimate? Find(string name) => Findings.FirstOrDefault(finding => finding.Name == name)?.Value;
}
