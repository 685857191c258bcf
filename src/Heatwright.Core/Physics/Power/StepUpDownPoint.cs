namespace Heatwright.Physics;

/// <summary>A module that can step up and down: set volts inside the range of the battery.</summary>
/// <param name="SetV">Set output voltage.</param>
/// <param name="Loss">Loss over input current.</param>
public sealed record StepUpDownModule(double SetV, LossCoefficients Loss)
{
    /// <summary>Set output voltage.</summary>
    public double SetV { get; } = Impossible.UnlessPositive(SetV, "V");

    /// <summary>Mean input current that its own limit holds.</summary>
    public double LimitA { get; init => field = value > 0 ? value : throw Impossible.Outside(nameof(LimitA), value, "A", "more than 0"); } = double.PositiveInfinity;

    /// <summary>Input voltage at which it stops.</summary>
    public double LockoutV { get; init => field = Impossible.IfNegative(value, "V", nameof(LockoutV)); }
}

/// <summary>Operating point of a step-up-down module: the same power balance as a step-up, no duty limit, nothing passes through.</summary>
/// <remarks>Only the current limit and the lock-out differ from <see cref="StepUpPoint"/>. Loss over input current. Derived from the power balance.</remarks>
public static class StepUpDownPoint
{
    /// <summary>The point, from plain numbers.</summary>
    [Law("step-up-down-point", "power paths", "I = min(Ireg, Ilim, (V - Vuv)/Rs); Ireg = 2(P+a0)/(E + sqrt(E^2 - 4A(P+a0))), E = V - a1, A = a2 + Rs, P = Vset^2/R",
        Says = "where a step-up-down module on a battery comes to rest", Source = "definition", Where = "power balance",
        Valid = "loss coefficients from readings at about the set voltage", Example = "open=3.7V source=0.12ohm set=4V heater=4ohm fixed=0.1W drop=0.15V slope=60mohm")]
    public static PathPoint At(
        [In("V", "V", "rested battery voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance: cells, links, protection, wires", Name = "source", Min = 0)] double sourceOhm,
        [In("Vset", "V", "set output", Name = "set", Min = 0)] double setV,
        [In("R", "Ω", "heater at its present temperature", Name = "heater", Min = 0)] double heaterOhm,
        [In("a0", "W", "loss without load", Name = "fixed", Min = 0, Default = 0.1)] double fixedW = 0.1,
        [In("a1", "V", "loss per ampere", Name = "drop", Min = 0, Default = 0.15)] double dropV = 0.15,
        [In("a2", "Ω", "loss per ampere squared", Name = "slope", Min = 0, Default = 0.06)] double slopeOhm = 0.06,
        [In("Ilim", "A", "largest input current", Name = "limit", Min = 0, Default = double.PositiveInfinity)] double limitA = double.PositiveInfinity,
        [In("Vuv", "V", "under-voltage lock-out", Name = "lockout", Min = 0, Default = 0)] double lockoutV = 0)
    {
        Impossible.UnlessPositive(openV, "V");
        Impossible.IfNegative(sourceOhm, "Ω");
        Impossible.UnlessPositive(heaterOhm, "Ω");
        var module = new StepUpDownModule(setV, new(fixedW, dropV, slopeOhm)) { LimitA = limitA, LockoutV = lockoutV };
        return Solve(openV, sourceOhm, LoadLaw.Ohms(heaterOhm), module).Boxed with
        {
            FoldA = ConverterLoss.FoldA(openV, sourceOhm, module.Loss),
            MostW = ConverterLoss.MostW(openV, sourceOhm, module.Loss),
        };
    }

    /// <summary>The point with any load, on the stack.</summary>
    internal static PathNumbers Solve(double openV, double sourceOhm, in LoadLaw load, StepUpDownModule module)
    {
        if (openV <= module.LockoutV)
        {
            return PathNumbers.Without(PathRegion.LockedOut);
        }

        double drive = openV - module.Loss.DropV;
        double ohms = module.Loss.SlopeOhm + sourceOhm;
        double inW = (module.SetV * load.AmpsAt(module.SetV)) + module.Loss.FixedW;
        double radicand = (drive * drive) - (4 * ohms * inW);
        double regulatedA = drive > 0 && radicand >= 0 ? 2 * inW / (drive + Math.Sqrt(radicand)) : double.PositiveInfinity;
        double lockoutA = sourceOhm > 0 && module.LockoutV > 0 ? (openV - module.LockoutV) / sourceOhm : double.PositiveInfinity;
        double inputA = Math.Min(regulatedA, Math.Min(module.LimitA, lockoutA));
        if (!double.IsFinite(inputA) || inputA == lockoutA)
        {
            return PathNumbers.Without(double.IsFinite(inputA) ? PathRegion.Hiccup : PathRegion.SourceLimited);
        }

        bool regulated = inputA == regulatedA;
        double outW = (inputA * (drive - (ohms * inputA))) - module.Loss.FixedW;
        double inputV = openV - (inputA * sourceOhm);
        double outV = regulated ? module.SetV : load.VoltsFor(Math.Max(0, outW));
        return outW > 0 && inputV > 0 && outV > 0
            ? new(regulated ? PathRegion.Regulated : PathRegion.CurrentLimited, inputA, inputV, outV, outW, (inputV * inputA) - outW, outW / outV / inputA)
            : PathNumbers.Without(PathRegion.SourceLimited);
    }
}
