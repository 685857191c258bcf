namespace Heatwright.Physics;

/// <summary>A linear regulator: what it is set to, what it keeps for itself.</summary>
/// <param name="SetV">Set output voltage.</param>
/// <param name="DropoutV">Input must stand so much above the output.</param>
public sealed record LinearModule(double SetV, double DropoutV)
{
    /// <summary>Set output voltage.</summary>
    public double SetV { get; } = Impossible.UnlessPositive(SetV, "V");

    /// <summary>Input must stand so much above the output.</summary>
    public double DropoutV { get; } = Impossible.IfNegative(DropoutV, "V");

    /// <summary>Current for itself.</summary>
    public double QuiescentA { get; init => field = Impossible.IfNegative(value, "A", nameof(QuiescentA)); }

    /// <summary>Largest output current.</summary>
    public double LimitA { get; init => field = value > 0 ? value : throw Impossible.Outside(nameof(LimitA), value, "A", "more than 0"); } = double.PositiveInfinity;
}

/// <summary>Operating point of a linear regulator on a source with resistance: input current is output current and its own.</summary>
/// <remarks>Regulated while the input stands a drop-out above the set volts; below that the output follows the input. By Kirchhoff's laws.</remarks>
internal static class LinearPoint
{
    public static PathNumbers Solve(double openV, double sourceOhm, in LoadLaw load, LinearModule module)
    {
        double behindV = openV - (module.QuiescentA * sourceOhm);
        double outA = load.AmpsAt(module.SetV);
        double outV = module.SetV;
        var region = PathRegion.Regulated;
        if (outA > module.LimitA)
        {
            (outA, outV, region) = (module.LimitA, load.VoltsForAmps(module.LimitA), PathRegion.CurrentLimited);
        }

        if (!(outV <= module.SetV) || behindV - (outA * sourceOhm) - module.DropoutV < outV)
        {
            outV = load.VoltsBehind(behindV - module.DropoutV, sourceOhm);
            outA = outV > 0 ? load.AmpsAt(outV) : double.NaN;
            region = PathRegion.DutyLimited;
        }

        double inputV = behindV - (outA * sourceOhm);
        return outV > 0 && outV <= module.SetV && outA <= module.LimitA
            ? new(region, outA + module.QuiescentA, inputV, outV, outA * outV, (outA * (inputV - outV)) + (module.QuiescentA * inputV), outV / inputV)
            : PathNumbers.Without(PathRegion.SourceLimited);
    }
}
