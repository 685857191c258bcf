using Heatwright.Arrangements;
using Heatwright.Plant;

namespace Heatwright.Predictions;

/// <summary>What one draw of an arrangement did.</summary>
/// <param name="WarmUpS">Time to the target; infinite: never.</param>
/// <param name="Pieces">Pieces of work done in a row.</param>
/// <param name="GripC">Highest grip temperature.</param>
/// <param name="CellC">Highest cell temperature.</param>
/// <param name="RunTimeS">When it ended.</param>
/// <param name="Stop">Why it ended.</param>
/// <param name="Region">Region of the power path at the end.</param>
/// <param name="ChargeLeft">Charge left at the end, 0 to 1.</param>
public readonly record struct Outcome(double WarmUpS, int Pieces, double GripC, double CellC, double RunTimeS, StopReason Stop, Region Region, double ChargeLeft)
{
    /// <summary>Highest temperature of the working end, °C.</summary>
    public double HottestC { get; init; }

    /// <summary>Longest way back to the target after a piece, s; NaN: not timed, or no piece; infinite: never.</summary>
    public double RecoveryS { get; init; } = double.NaN;

    /// <summary>Lowest temperature of the working end while it worked, °C; NaN: it never worked.</summary>
    public double LowestAtWorkC { get; init; }

    /// <summary>Highest current of the pack, A.</summary>
    public double HighestA { get; init; }

    /// <summary>Lowest pack volts under load; infinite: it was never loaded.</summary>
    public double LowestV { get; init; }

    /// <summary>How long a lamp gave its full light, s; NaN: the load is no lamp.</summary>
    public double FullLightS { get; init; } = double.NaN;

    /// <summary>What a run did. A run whose target was never reached has no time for it: infinite.</summary>
    public static Outcome Of(PlantRun run) => new(
        double.IsNaN(run.TargetS) ? double.PositiveInfinity : run.TargetS, run.WorkDoneInARow, run.HighestK[1] - 273.15, run.HighestK[2] - 273.15,
        run.RunTimeS, run.Stop, run.LastRegion, run.ChargeLeft)
    {
        HottestC = run.HighestK[0] - 273.15,
        RecoveryS = run.RecoveryS,
        LowestAtWorkC = run.LowestAtWorkK.Count > 0 ? run.LowestAtWorkK.Min() - 273.15 : double.NaN,
        HighestA = run.HighestA,
        LowestV = run.LowestV,
        FullLightS = run.FullLightS,
    };

    /// <summary>What a lane did.</summary>
    internal static Outcome Of(in SwiftResult run, double airK) => new(
        double.IsNaN(run.TargetS) ? double.PositiveInfinity : run.TargetS, run.WorkDoneInARow, run.High1 + airK - 273.15, run.High2 + airK - 273.15,
        run.RunTimeS, run.Stop, run.LastRegion, run.ChargeLeft)
    {
        HottestC = run.High0 + airK - 273.15,
        LowestAtWorkC = double.IsFinite(run.LowestAtWork) ? run.LowestAtWork + airK - 273.15 : double.NaN,
        HighestA = run.HighestA,
        LowestV = run.LowestV,
    };
}

/// <summary>A curve over the charge with the range that holds 90 of 100 draws.</summary>
/// <param name="Name">What it shows.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="TimesS">Instants.</param>
/// <param name="Low">5 of 100 draws lie below.</param>
/// <param name="Middle">The run with every cause at its middle.</param>
/// <param name="High">5 of 100 draws lie above.</param>
public sealed record Band(string Name, string Unit, double[] TimesS, double[] Low, double[] Middle, double[] High);

/// <summary>What an arrangement will do over one charge.</summary>
/// <param name="Arrangement">Which.</param>
/// <param name="Builder">Its plant and numbers.</param>
/// <param name="Middle">The run with every cause at its middle, traced.</param>
/// <param name="Draws">What each draw did, in order of its number.</param>
/// <param name="Bands">Curves with bands.</param>
public sealed record Prediction(Arrangement Arrangement, PlantBuilder Builder, PlantRun Middle, IReadOnlyList<Outcome> Draws, IReadOnlyList<Band> Bands)
{
    /// <summary>The middle run in short.</summary>
    public Outcome MiddleOutcome => Outcome.Of(Middle);
}
