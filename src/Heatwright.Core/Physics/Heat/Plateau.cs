using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>Where a heated body comes to rest, and whether it does.</summary>
/// <remarks>Checked: WarmUpTests.</remarks>
public static class Plateau
{
    /// <summary>Plateau of a linear tool, °C: T_a + P/G.</summary>
    [Law("plateau", "warm-up", "T = T_a + P/G", Says = "temperature a tool comes to rest at", Unit = "°C", Source = "definition", Where = "conductance", Valid = "loss in proportion to the rise",
        Example = "power=12W conductance=0.03W/K around=25°C")]
    public static double LinearC(
        [In("P", "W", "power at the heater", Name = "power", Min = 0)] double powerW,
        [In("G", "W/K", "conductance to air", Name = "conductance", Min = 0)] double conductanceWPerK,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -273.15, Default = 25)] double aroundC) =>
        aroundC + Impossible.IfNegative(powerW, "W") / Impossible.UnlessPositive(conductanceWPerK, "W/K");

    /// <summary>Plateau and warm-up time with a loss that grows as a power of the rise.</summary>
    [Law("power-law-warm-up", "warm-up", "P = k·Dⁿ, t = ∫ C·dΔ/(P − k·Δⁿ)", Says = "plateau and warm-up time when the loss grows faster than the rise", Source = "definition", Where = "integral of the heat balance",
        Valid = "one body, started cold; n 1.1 to 2 (computed)", Example = "power=12W factor=0.006 exponent=1.25 capacity=7J/K rise=250K")]
    public static PowerLawWarmUp PowerLaw(
        [In("P", "W", "power at the heater", Name = "power", Min = 0)] double powerW,
        [In("k", "", "loss at 1 K of rise, in W", Name = "factor", Min = 0)] double factorW,
        [In("n", "", "how the loss grows", Name = "exponent", Min = 0.5, Max = 4, SoftMin = 1, SoftMax = 2.5)] double exponent,
        [In("C", "J/K", "heat capacity", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("Δ", "K", "rise to reach", Name = "rise", Min = 0)] double riseK)
    {
        double plateau = Math.Pow(Impossible.UnlessPositive(powerW, "W") / Impossible.UnlessPositive(factorW, "W"), 1 / Impossible.Unless(exponent, 0.5, 4, ""));
        double time = WarmUp.TimeToRiseS(capacityJPerK, rise => powerW - (factorW * Math.Pow(rise, exponent)), 0, Impossible.IfNegative(riseK, "K"));
        return new PowerLawWarmUp(plateau, time, factorW * Math.Pow(riseK, exponent));
    }

    /// <summary>Rise at which power in and loss out meet, K; NaN when they do not meet below <paramref name="mostK"/>: the body runs away or burns out first.</summary>
    /// <remarks>Power that does not rise with temperature meets a rising loss exactly once. Power that rises (a resistance that falls when hot) may
    /// meet it several times: the first meeting from cold is where the body stops, and it holds only if the loss is the steeper one there.</remarks>
    public static double RiseK(Func<double, double> powerW, Func<double, double> lossW, double mostK)
    {
        Impossible.UnlessPositive(mostK, "K");
        const int looks = 400;
        double Net(double rise) => powerW(rise) - lossW(rise);
        double before = 0;
        if (Net(0) <= 0)
        {
            return 0;
        }

        for (int i = 1; i <= looks; i++)
        {
            double here = mostK * i / looks;
            if (Net(here) <= 0)
            {
                return Roots.Monotone(Net, before, here).X;
            }

            before = here;
        }

        return double.NaN;
    }

    /// <summary>Whether a body stays at a rise where power and loss meet: the loss must be the steeper one.</summary>
    public static bool Holds(Func<double, double> powerW, Func<double, double> lossW, double riseK)
    {
        double step = Math.Max(1e-3, 1e-5 * Impossible.IfNegative(riseK, "K"));
        return powerW(riseK + step) - lossW(riseK + step) < powerW(riseK - step) - lossW(riseK - step);
    }
}

/// <summary>A warm-up against a loss that grows as a power of the rise.</summary>
/// <param name="PlateauRiseK">Rise it comes to rest at.</param>
/// <param name="TimeS">Time to the rise asked for; infinite above the plateau.</param>
/// <param name="HoldW">Power that holds that rise.</param>
public sealed record PowerLawWarmUp(
    [property: Out("K", "rise it comes to rest at", Name = "plateau-rise")] double PlateauRiseK,
    [property: Out("s", "time to the rise asked for", Name = "time")] double TimeS,
    [property: Out("W", "power that holds that rise", Name = "hold-power")] double HoldW);
