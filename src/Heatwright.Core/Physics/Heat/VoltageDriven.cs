namespace Heatwright.Physics;

/// <summary>Rest point of a heater at constant voltage whose resistance grows with temperature.</summary>
/// <param name="RiseK">Plateau over the reference temperature.</param>
/// <param name="HotPowerW">Power that is left there.</param>
/// <param name="SettlingShare">Time constant near the plateau over C/G: below 1, because the power falls as it warms.</param>
public sealed record VoltagePlateau(
    [property: Out("K", "plateau rise")] double RiseK,
    [property: Out("W", "power when hot")] double HotPowerW,
    [property: Out("", "time constant near the plateau over C/G")] double SettlingShare);

/// <summary>Warm-up at constant voltage: P = P₀/(1 + αΔ), loss GΔ.</summary>
/// <remarks>P₀ and α are referred to air temperature (re-refer both together). Energy balance; closed forms worked out here.
/// Checked: IdentificationTests.</remarks>
public static class VoltageDriven
{
    /// <summary>Plateau, hot power and settling: Δ = [−1 + √(1 + 4αP₀/G)]/(2α).</summary>
    [Law("voltage-plateau", "warm-up", "Δ = [−1 + √(1 + 4·α·P₀/G)]/(2·α)", Says = "plateau of a heater whose resistance grows, at constant voltage", Source = "definition", Where = "heat balance at constant voltage, R = R₀(1 + αΔ)",
        Valid = "constant voltage, loss in proportion to the rise, P₀ and α referred to air temperature", Example = "cold-power=14W slope=1.5e-3/K conductance=0.034W/K")]
    public static VoltagePlateau At(
        [In("P₀", "W", "V²/R at air temperature", Name = "cold-power", Min = 0)] double coldPowerW,
        [In("α", "1/K", "temperature coefficient of the resistance at air temperature", Name = "slope", Min = 0)] double alphaPerK,
        [In("G", "W/K", "conductance to air", Name = "conductance", Min = 0)] double conductanceWPerK)
    {
        Impossible.IfNegative(alphaPerK, "1/K");
        double linearK = Impossible.IfNegative(coldPowerW, "W") / Impossible.UnlessPositive(conductanceWPerK, "W/K");

        // Multiplied out, so that α = 0 needs no case of its own.
        double riseK = 2 * linearK / (1 + Math.Sqrt(1 + 4 * alphaPerK * linearK));
        double hot = 1 + alphaPerK * riseK;
        return new VoltagePlateau(riseK, coldPowerW / hot, 1 / (1 + alphaPerK * linearK / (hot * hot)));
    }

    /// <summary>Time to a rise, s; infinite when the plateau lies at or below it.</summary>
    /// <remarks>t = ∫ C(1 + αΔ)dΔ/(P₀ − GΔ − GαΔ²) by partial fractions; with Δ₊ the plateau:
    /// t = C/(G(1 + 2αΔ₊))·[−(1 + αΔ₊)·ln(1 − Δ/Δ₊) − αΔ₊·ln(1 + αΔ/(1 + αΔ₊))].</remarks>
    [Law("voltage-warm-up-time", "warm-up", "t = C/(G(1+2αΔ₊))·[−(1+αΔ₊)·ln(1−Δ/Δ₊) − αΔ₊·ln(1+αΔ/(1+αΔ₊))], Δ₊ the plateau", Says = "warm-up time of a heater whose resistance grows, at constant voltage", Unit = "s", Source = "definition",
        Where = "integral of the heat balance", Valid = "constant voltage, started cold; infinite means never",
        Example = "rise=250K cold-power=14W slope=1.5e-3/K capacity=7J/K conductance=0.034W/K")]
    public static double TimeToRiseS(
        [In("Δ", "K", "rise to reach", Name = "rise", Min = 0)] double riseK,
        [In("P₀", "W", "V²/R at air temperature", Name = "cold-power", Min = 0)] double coldPowerW,
        [In("α", "1/K", "temperature coefficient of the resistance at air temperature", Name = "slope", Min = 0)] double alphaPerK,
        [In("C", "J/K", "heat capacity", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("G", "W/K", "conductance to air", Name = "conductance", Min = 0)] double conductanceWPerK)
    {
        double plateauK = At(coldPowerW, alphaPerK, conductanceWPerK).RiseK;
        if (Impossible.IfNegative(riseK, "K") >= plateauK)
        {
            return double.PositiveInfinity;
        }

        double a = alphaPerK * plateauK;
        double logs = -(1 + a) * WarmUp.LogOfRest(riseK / plateauK) - a * WarmUp.LogOfRest(-alphaPerK * riseK / (1 + a));
        return Impossible.UnlessPositive(capacityJPerK, "J/K") / (conductanceWPerK * (1 + 2 * a)) * logs;
    }
}
