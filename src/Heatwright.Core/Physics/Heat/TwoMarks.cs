using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>Plateau and time constant from two stopwatch marks.</summary>
/// <param name="PlateauRiseK">Rise it would come to rest at.</param>
/// <param name="TimeConstantS">Time constant.</param>
public sealed record PlateauGuess(
    [property: Out("K", "rise it would come to rest at")] double PlateauRiseK,
    [property: Out("s", "time constant")] double TimeConstantS);

/// <summary>What stopwatch times to marked temperatures say of a tool taken as one linear body heated from cold at constant power.</summary>
/// <remarks>t₂/t₁ = ln(1 − D₂/D)/ln(1 − D₁/D) falls steadily from ∞ (D just above D₂) to D₂/D₁ (D without end), so bisection finds the one D.
/// Checked: IdentificationTests.</remarks>
public static class TwoMarks
{
    /// <summary>t₂/t₁ for a plateau at rise D.</summary>
    public static double TimeRatio(double plateauRiseK, double earlyRiseK, double lateRiseK)
    {
        RefuseOrder(earlyRiseK, lateRiseK);
        ImpossibleHeat.UnlessAbove(plateauRiseK, lateRiseK, "K");
        return WarmUp.LogOfRest(lateRiseK / plateauRiseK) / WarmUp.LogOfRest(earlyRiseK / plateauRiseK);
    }

    /// <summary>Plateau and time constant from the times to two rises.</summary>
    [Law("two-times", "warm-up", "t₂/t₁ = ln(1 − Δ₂/D)/ln(1 − Δ₁/D), τ = −t₁/ln(1 − Δ₁/D)", Says = "plateau and time constant from the times to two rises", Source = "definition", Where = "one linear body, solved for D and τ",
        Valid = "constant power, loss in proportion to the rise; two readings give no test of the model", Example = "rise1=175K time1=44s rise2=255K time2=102s")]
    public static PlateauGuess From(
        [In("Δ₁", "K", "first marked rise", Name = "rise1", Min = 0)] double earlyRiseK,
        [In("t₁", "s", "time to it", Name = "time1", Min = 0)] double earlyS,
        [In("Δ₂", "K", "second marked rise", Name = "rise2", Min = 0)] double lateRiseK,
        [In("t₂", "s", "time to it", Name = "time2", Min = 0)] double lateS)
    {
        RefuseOrder(earlyRiseK, lateRiseK);
        double ratio = Impossible.UnlessPositive(lateS, "s") / Impossible.UnlessPositive(earlyS, "s");

        // Below D₂/D₁ the second stretch was heated faster than the first: no loss can do that, so the power rose or a mark is wrong.
        ImpossibleHeat.UnlessAbove(ratio, lateRiseK / earlyRiseK, "", "time ratio");
        double high = 2 * lateRiseK;
        while (TimeRatio(high, earlyRiseK, lateRiseK) > ratio && high < 1e9 * lateRiseK)
        {
            high *= 2;
        }

        var search = Roots.Monotone(d => TimeRatio(d, earlyRiseK, lateRiseK) - ratio, lateRiseK * (1 + 1e-15), high);

        // So near the straight line that no plateau below a thousand million times the mark bends it enough.
        double plateauK = search.Found ? search.X : throw Impossible.Outside("time ratio", ratio, "", "clearly above the ratio of the rises");
        return new PlateauGuess(plateauK, -earlyS / WarmUp.LogOfRest(earlyRiseK / plateauK));
    }

    /// <summary>Standard doubt of a stopwatch time: u² = u_stop² + (u_T/(dT/dt))², dT/dt = (D − Δ)/τ. Near the plateau a time carries almost nothing.</summary>
    [Law("mark-doubt", "warm-up", "u² = u_stop² + (u_T·τ/(D − Δ))²", Says = "doubt of a stopwatch time to a temperature mark", Unit = "s", Source = "definition", Where = "slope of a first-order rise",
        Valid = "one linear body", Example = "stopwatch=1.5s temperature=4K plateau-rise=275K rise=175K time-constant=42s")]
    public static double TimeDoubtS(
        [In("u_stop", "s", "doubt of the stopwatch", Name = "stopwatch", Min = 0)] double stopwatchDoubtS,
        [In("u_T", "K", "doubt of the temperature", Name = "temperature", Min = 0)] double temperatureDoubtK,
        [In("D", "K", "rise of the plateau", Name = "plateau-rise", Min = 0)] double plateauRiseK,
        [In("Δ", "K", "rise of the mark", Name = "rise", Min = 0)] double markRiseK,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS)
    {
        double slope = (ImpossibleHeat.UnlessAbove(plateauRiseK, markRiseK, "K") - markRiseK) / Impossible.UnlessPositive(timeConstantS, "s");
        return Math.Sqrt(Math.Pow(Impossible.IfNegative(stopwatchDoubtS, "s"), 2) + Math.Pow(Impossible.IfNegative(temperatureDoubtK, "K") / slope, 2));
    }

    private static void RefuseOrder(double earlyRiseK, double lateRiseK) =>
        ImpossibleHeat.UnlessAbove(lateRiseK, Impossible.UnlessPositive(earlyRiseK, "K"), "K");
}
