namespace Heatwright.Trials;

/// <summary>What a warm-up tells of a working end. Values in SI; where a piece is not in the model chosen, it is 0.</summary>
/// <param name="HeatCapacityJPerK">Heat capacity.</param>
/// <param name="LinearWPerK">Linear loss to the air.</param>
/// <param name="RadiatingM2">Emissivity times area.</param>
/// <param name="LagS">Lag between working end and reading.</param>
/// <param name="GripLinkWPerK">Conductance into the grip.</param>
/// <param name="GripHeatCapacityJPerK">Heat capacity of the grip.</param>
/// <param name="GripLossWPerK">Loss of the grip to the air.</param>
public sealed record WarmUpFindings(
    double HeatCapacityJPerK, double LinearWPerK, double RadiatingM2, double LagS, double GripLinkWPerK, double GripHeatCapacityJPerK, double GripLossWPerK)
{
    /// <summary>Which model was chosen, in words.</summary>
    public string Model { get; init; } = "";

    /// <summary>Names of the searched quantities, in the order of <see cref="LogCovariance"/>.</summary>
    public IReadOnlyList<string> Searched { get; init; } = [];

    /// <summary>Covariance of the logarithms of the searched quantities, scaled by what the fit left over.</summary>
    public double[,] LogCovariance { get; init; } = new double[0, 0];

    /// <summary>True where the grip got so warm beside the end that both were fitted in turn.</summary>
    public bool GripIsWarm { get; init; }

    /// <summary>RMS of what the fit leaves over at the working end, K.</summary>
    public double MisfitK { get; init; }

    /// <summary>Corrected information criterion of each model tried; the smaller the better.</summary>
    public IReadOnlyList<(string Model, double Aicc)> Tried { get; init; } = [];

    /// <summary>Modelled reading at each row of each log, °C.</summary>
    public IReadOnlyList<double[]> ModelledC { get; init; } = [];

    /// <summary>Standard doubt of each of these, K, from the doubt of the numbers fitted; not a number where the row was left out.</summary>
    public IReadOnlyList<double[]> ModelledDoubtK { get; init; } = [];

    /// <summary>Robust score of each row: how many robust spreads it lies off.</summary>
    public IReadOnlyList<double[]> Scores { get; init; } = [];
}
