using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>A loss of two parts: in proportion to the rise, and radiation.</summary>
/// <param name="LinearWPerK">G.</param>
/// <param name="RadiatingWPerK4">B in B(T⁴ − T_a⁴), kelvin.</param>
public sealed record LossSplit(
    [property: Out("W/K", "part in proportion to the rise")] double LinearWPerK,
    [property: Out("W/K⁴", "radiating part")] double RadiatingWPerK4)
{
    /// <summary>Heat lost at a temperature, W.</summary>
    public double LossW(double hotC, double aroundC) => LinearWPerK * (hotC - aroundC) + RadiatingWPerK4 * PlateauPair.FourthPowers(hotC, aroundC);

    /// <summary>Slope of the loss at a temperature, W/K.</summary>
    public double TangentWPerK(double hotC) => LinearWPerK + 4 * RadiatingWPerK4 * Math.Pow(ImpossibleHeat.Kelvin(hotC), 3);

    /// <summary>Share of the loss that is radiation.</summary>
    public double RadiatingShare(double hotC, double aroundC) => RadiatingWPerK4 * PlateauPair.FourthPowers(hotC, aroundC) / LossW(hotC, aroundC);

    /// <summary>Emissivity times surface that would radiate so, m².</summary>
    public double EmissivityTimesAreaM2 => RadiatingWPerK4 / Constants.StefanBoltzmann;

    /// <summary>Where a power comes to rest, °C; infinite when a negative part keeps the loss below it.</summary>
    public double PlateauC(double powerW, double aroundC)
    {
        Impossible.IfNegative(powerW, "W");
        double high = aroundC + 1;
        while (LossW(high, aroundC) < powerW)
        {
            if (high > 1e5)
            {
                return double.PositiveInfinity;
            }

            high = aroundC + 2 * (high - aroundC);
        }

        return Roots.Monotone(hot => LossW(hot, aroundC) - powerW, aroundC, high).X;
    }
}

/// <summary>What two plateaus, both waited for, at two powers say of the loss.</summary>
/// <remarks>A temperature that was only passed is a bound, not a plateau: it does not belong here (see <see cref="StopwatchMarks"/>). Powers are
/// measured hot watts; label watts make the exponent wrong. Checked: IdentificationTests.</remarks>
public static class PlateauPair
{
    /// <summary>Exponent n of loss ∝ rise^n from two plateaus: ln(P₂/P₁)/ln(Δ₂/Δ₁).</summary>
    [Law("loss-exponent", "heat flow", "n = ln(P₂/P₁)/ln(Δ₂/Δ₁)", Says = "how steeply the loss grows with the rise, from two plateaus", Source = "definition", Where = "loss ∝ Δ^n at two plateaus", Valid = "both plateaus waited for, hot watts measured",
        Example = "power1=5W rise1=273K power2=8.45W rise2=366K")]
    public static double Exponent(
        [In("P₁", "W", "power at the first plateau", Name = "power1", Min = 0)] double lowW,
        [In("Δ₁", "K", "rise of the first plateau", Name = "rise1", Min = 0)] double lowRiseK,
        [In("P₂", "W", "power at the second plateau", Name = "power2", Min = 0)] double highW,
        [In("Δ₂", "K", "rise of the second plateau", Name = "rise2", Min = 0)] double highRiseK) =>
        Math.Log(ImpossibleHeat.UnlessAbove(highW, Impossible.UnlessPositive(lowW, "W"), "W") / lowW)
            / Math.Log(ImpossibleHeat.UnlessAbove(highRiseK, Impossible.UnlessPositive(lowRiseK, "K"), "K") / lowRiseK);

    /// <summary>Power that holds a rise by the power law through one plateau: P = P₁(Δ/Δ₁)^n, W.</summary>
    [Law("power-for-rise", "heat flow", "P = P₁·(Δ/Δ₁)^n", Says = "power that holds another rise than the one measured", Unit = "W", Source = "definition", Where = "loss ∝ Δ^n", Valid = "near the known plateau",
        Example = "power=5W rise=273K wanted=325K exponent=1.79")]
    public static double PowerForRiseW(
        [In("P₁", "W", "power at a known plateau", Name = "power", Min = 0)] double knownW,
        [In("Δ₁", "K", "its rise", Name = "rise", Min = 0)] double knownRiseK,
        [In("Δ", "K", "rise to hold", Name = "wanted", Min = 0)] double wantedRiseK,
        [In("n", "", "exponent of the loss", Name = "exponent", Min = 0, SoftMin = 1, SoftMax = 4)] double exponent) =>
        Impossible.UnlessPositive(knownW, "W") * Math.Pow(Impossible.IfNegative(wantedRiseK, "K") / Impossible.UnlessPositive(knownRiseK, "K"), Impossible.UnlessPositive(exponent, ""));

    /// <summary>Splits the loss into a linear and a radiating part that pass through both plateaus.</summary>
    /// <remarks>A negative part is returned as it is: it says that the two plateaus do not fit this form.</remarks>
    [Law("loss-split", "heat flow", "P = G·(T − T_a) + B·(T⁴ − T_a⁴) through two plateaus", Says = "straight and radiating part of the loss, from two plateaus", Source = "definition", Where = "two equations, two unknowns",
        Valid = "both plateaus waited for, hot watts measured; a negative part says the form is wrong", Example = "power1=5W plateau1=298°C power2=8.45W plateau2=391°C around=25°C")]
    public static LossSplit Split(
        [In("P₁", "W", "power at the first plateau", Name = "power1", Min = 0)] double lowW,
        [In("T₁", "°C", "first plateau", Name = "plateau1", Min = -273.15)] double lowC,
        [In("P₂", "W", "power at the second plateau", Name = "power2", Min = 0)] double highW,
        [In("T₂", "°C", "second plateau", Name = "plateau2", Min = -273.15)] double highC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -273.15, Default = 25)] double aroundC)
    {
        double low = ImpossibleHeat.UnlessAbove(lowC, aroundC, "°C") - aroundC;
        double high = ImpossibleHeat.UnlessAbove(highC, lowC, "°C") - aroundC;
        double lowFourth = FourthPowers(lowC, aroundC);
        double highFourth = FourthPowers(highC, aroundC);
        double determinant = low * highFourth - high * lowFourth;
        return new LossSplit(
            (Impossible.UnlessPositive(lowW, "W") * highFourth - Impossible.UnlessPositive(highW, "W") * lowFourth) / determinant,
            (low * highW - high * lowW) / determinant);
    }

    /// <summary>Ratio of two plateau rises when loss is linear and only a resistance growing with temperature bends the line, at constant voltages.</summary>
    [Law("rise-ratio-by-resistance", "warm-up", "Δ₂/Δ₁ = (P₂/P₁)·(1 + α·T₁)/(1 + α·T₂)", Says = "ratio of two plateau rises when only the heater's resistance grows", Source = "definition", Where = "linear loss, cold powers",
        Valid = "cold powers of the same heater at two voltages", Example = "powers=1.69 slope=4e-3/K low=278K high=371K")]
    public static double RiseRatioFromResistance(
        [In("P₂/P₁", "", "ratio of the cold powers", Name = "powers", Min = 0)] double coldPowerRatio,
        [In("α", "1/K", "temperature coefficient", Name = "slope", Min = 0)] double alphaPerK,
        [In("T₁", "K", "lower plateau above the reference", Name = "low", Min = 0)] double lowOverReferenceK,
        [In("T₂", "K", "higher plateau above the reference", Name = "high", Min = 0)] double highOverReferenceK) =>
        Impossible.UnlessPositive(coldPowerRatio, "") * (1 + Impossible.IfNegative(alphaPerK, "1/K") * lowOverReferenceK) / (1 + alphaPerK * highOverReferenceK);

    internal static double FourthPowers(double hotC, double aroundC) => Math.Pow(ImpossibleHeat.Kelvin(hotC), 4) - Math.Pow(ImpossibleHeat.Kelvin(aroundC), 4);
}
