using System.Numerics;
using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>How far a loop is from swinging.</summary>
/// <param name="GainMargin">Factor by which the gain may grow.</param>
/// <param name="PhaseMarginDeg">Phase left at gain one.</param>
/// <param name="PeakSensitivity">M_s: below about 1.7 is comfortable.</param>
public sealed record Margins(
    [property: Out("", "factor by which the gain may grow")] double GainMargin,
    [property: Out("°", "phase margin")] double PhaseMarginDeg,
    [property: Out("", "largest sensitivity")] double PeakSensitivity);

/// <summary>Margins of a PI loop around a first-order tool with dead time.</summary>
/// <remarks>L(jω) = K_c(1 + 1/(jωτ_I))·k·e^(−jωθ)/(1 + jωτ). Definitions as in textbooks of control. Checked: ControlTests.</remarks>
public static class LoopMargins
{
    /// <summary>Gain margin, phase margin and peak sensitivity.</summary>
    [Law("loop-margins", "control", "L(jω) = K_c·(1 + 1/(jω·τ_I))·k·e^(−jωθ)/(1 + jω·τ)", Says = "how near a temperature loop is to swinging", Source = "definition", Where = "frequency response", Valid = "continuous loop: add half a sample to the dead time",
        Example = "gain=1W/K integral=24s resistance=30K/W time-constant=180s delay=3s")]
    public static Margins Of(
        [In("K_c", "W/K", "controller gain", Name = "gain", Min = 0)] double gainWPerK,
        [In("τ_I", "s", "integral time", Name = "integral", Min = 0)] double integralS,
        [In("k", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("θ", "s", "dead time", Name = "delay", Min = 0)] double delayS)
    {
        double loopGain = Impossible.UnlessPositive(gainWPerK, "W/K") * Impossible.UnlessPositive(resistanceKPerW, "K/W");
        Impossible.UnlessPositive(integralS, "s");
        Impossible.UnlessPositive(timeConstantS, "s");
        Impossible.UnlessPositive(delayS, "s");
        double Phase(double w) => Math.Atan(w * integralS) - (0.5 * Math.PI) - Math.Atan(w * timeConstantS) - (w * delayS);
        double Size(double w) => loopGain * Math.Sqrt(1 + (w * w * integralS * integralS)) / (w * integralS * Math.Sqrt(1 + (w * w * timeConstantS * timeConstantS)));
        double atPhase = PhaseCrossover(Phase, timeConstantS, delayS);
        double atGain = GainCrossover(loopGain, integralS, timeConstantS);
        double peak = Peak(w => 1 / Complex.Abs(1 + Complex.FromPolarCoordinates(Size(w), Phase(w))), 0.01 * Math.Min(atGain, atPhase), 10 * atPhase);
        return new Margins(1 / Size(atPhase), (Phase(atGain) + Math.PI) * 180 / Math.PI, peak);
    }

    /// <summary>First frequency at which the phase passes −180°: looked for in small steps, since a long integral time makes it dip and rise.</summary>
    private static double PhaseCrossover(Func<double, double> phase, double timeConstantS, double delayS)
    {
        double low = 1e-4 / (timeConstantS + delayS);
        double high = low;
        while (phase(high) > -Math.PI)
        {
            low = high;
            high *= 1.01;
        }

        return Roots.Monotone(w => phase(w) + Math.PI, low, high).X;
    }

    /// <summary>Size one: (loop gain)²(1 + xτ_I²) = xτ_I²(1 + xτ²), x = ω², has one positive root because the size falls all the way.</summary>
    private static double GainCrossover(double loopGain, double integralS, double timeConstantS)
    {
        double squareI = integralS * integralS;
        double b = squareI * (1 - (loopGain * loopGain));
        double a = squareI * timeConstantS * timeConstantS;
        double root = Math.Sqrt((b * b) + (4 * a * loopGain * loopGain));
        return Math.Sqrt(b > 0 ? 2 * loopGain * loopGain / (b + root) : (root - b) / (2 * a));
    }

    private static double Peak(Func<double, double> f, double low, double high)
    {
        const int looks = 2000;
        double At(double share) => low * Math.Pow(high / low, share);
        int best = Enumerable.Range(0, looks + 1).MaxBy(i => f(At((double)i / looks)));
        double left = (best - 1.0) / looks;
        double right = (best + 1.0) / looks;
        for (int i = 0; i < 100; i++)
        {
            double third = (right - left) / 3;
            (left, right) = f(At(left + third)) < f(At(right - third)) ? (left + third, right) : (left, right - third);
        }

        return f(At(0.5 * (left + right)));
    }
}
