namespace Heatwright.Physics;

/// <summary>The steady saw-tooth of an on-off control.</summary>
/// <param name="HighC">Highest temperature.</param>
/// <param name="LowC">Lowest temperature.</param>
/// <param name="OnS">Time on.</param>
/// <param name="OffS">Time off.</param>
/// <param name="MeanC">Mean over the cycle.</param>
public sealed record SawTooth(
    [property: Out("°C", "highest temperature", Name = "highest")] double HighC,
    [property: Out("°C", "lowest temperature", Name = "lowest")] double LowC,
    [property: Out("s", "time on", Name = "on-time")] double OnS,
    [property: Out("s", "time off", Name = "off-time")] double OffS,
    [property: Out("°C", "mean temperature", Name = "mean")] double MeanC)
{
    /// <summary>Length of the cycle, s.</summary>
    [Out("s", "period")]
    public double PeriodS => OnS + OffS;

    /// <summary>Share of the time on.</summary>
    [Out("", "duty")]
    public double Duty => OnS / PeriodS;
}

/// <summary>Limit cycle of on-off control with a band, on a first-order tool with dead time.</summary>
/// <remarks>Dead time acts on both edges; the swing is mostly dead time times slope, not the band. Worked out from the response of the tool.
/// Checked: ControlTests.</remarks>
public static class OnOffCycle
{
    /// <summary>Swing, times, duty and mean of the cycle.</summary>
    [Law("on-off-cycle", "control", "y_max = y_on − (y_on − y_H)·e^(−θ/τ), y_min = T_a + (y_L − T_a)·e^(−θ/τ), t_on = τ·ln[(y_on − y_min)/(y_on − y_max)]", Says = "swing, times and duty of a thermostat that switches on and off", Source = "definition",
        Where = "response of a first-order tool with dead time", Valid = "band above air and below the plateau", Example = "resistance=30K/W time-constant=180s delay=3s power=20W around=25°C low=348°C high=352°C")]
    public static SawTooth Of(
        [In("k", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("θ", "s", "dead time", Name = "delay", Min = 0, Default = 0)] double delayS,
        [In("P", "W", "power while on", Name = "power", Min = 0)] double powerW,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -273.15, Default = 25)] double aroundC,
        [In("y_L", "°C", "switches on below", Name = "low", Min = -273.15)] double lowC,
        [In("y_H", "°C", "switches off above", Name = "high", Min = -273.15)] double highC)
    {
        double tau = Impossible.UnlessPositive(timeConstantS, "s");
        double hot = Impossible.UnlessFinite(aroundC, "°C") + (Impossible.UnlessPositive(resistanceKPerW, "K/W") * Impossible.UnlessPositive(powerW, "W"));
        ImpossibleHeat.UnlessAbove(lowC, aroundC, "°C");
        ImpossibleHeat.UnlessAbove(hot, highC, "°C", "plateau");
        Impossible.Unless(highC, lowC, double.MaxValue, "°C");
        double stays = Math.Exp(-Impossible.IfNegative(delayS, "s") / tau);
        double high = hot - ((hot - highC) * stays);
        double low = aroundC + ((lowC - aroundC) * stays);
        double on = tau * Math.Log((hot - low) / (hot - high));
        double off = tau * Math.Log((high - aroundC) / (low - aroundC));

        // Over a whole cycle nothing is stored, so the mean rise is that of the mean power.
        return new SawTooth(high, low, on, off, aroundC + (on + off > 0 ? (hot - aroundC) * on / (on + off) : lowC - aroundC));
    }
}
