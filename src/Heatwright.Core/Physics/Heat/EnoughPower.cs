using MathNet.Numerics;

namespace Heatwright.Physics;

/// <summary>Power at hand against power needed.</summary>
/// <param name="MarginW">At hand less loss less work.</param>
/// <param name="DoubtW">Standard doubt of the margin.</param>
/// <param name="Probability">Probability that the margin is above zero.</param>
public sealed record PowerMargin(
    [property: Out("W", "power left over")] double MarginW,
    [property: Out("W", "standard doubt of it")] double DoubtW,
    [property: Out("", "probability that it is enough")] double Probability);

/// <summary>Is so much power enough for the job?</summary>
/// <remarks>Judge it with the hot resistance, at the end of the charge, with the share of heat that reaches the work. Checked: WorkTests.</remarks>
public static class EnoughPower
{
    /// <summary>Hot power a pack can give a heater through a series resistance, W: d_max·V²R/(R + R_s)², R = R₂₀(1 + α(T − 20)).</summary>
    [Law("usable-power", "work", "P = d_max·(V/(R + R_s))²·R, R = R₂₀·(1 + α·(T − 20))", Says = "hot power a pack can give a heater through a series resistance", Unit = "W", Source = "definition", Where = "divider of source, leads and heater", Valid = "unsmoothed pulse width, V behind R_s",
        Example = "volts=7.2V cold=1.6Ω slope=8e-4/K core=440°C series=0.13Ω duty=0.95")]
    public static double UsableW(
        [In("V", "V", "voltage behind the series resistance", Name = "volts", Min = 0)] double volts,
        [In("R₂₀", "Ω", "heater at 20 °C", Name = "cold", Min = 0)] double coldOhm,
        [In("α", "1/K", "temperature coefficient at 20 °C", Name = "slope", Default = 0)] double alphaPerK,
        [In("T", "°C", "temperature of the core", Name = "core", Min = -273.15)] double coreC,
        [In("R_s", "Ω", "everything in series", Name = "series", Min = 0, Default = 0)] double seriesOhm,
        [In("d_max", "", "largest duty", Name = "duty", Min = 0, Max = 1, Default = 1)] double mostDuty)
    {
        double hotOhm = Impossible.UnlessPositive(Impossible.UnlessPositive(coldOhm, "Ω") * (1 + Impossible.UnlessFinite(alphaPerK, "1/K") * (Impossible.UnlessFinite(coreC, "°C") - 20)), "Ω", "hot resistance");
        double amps = Impossible.IfNegative(volts, "V") / (hotOhm + Impossible.IfNegative(seriesOhm, "Ω"));
        return Impossible.Unless(mostDuty, 0, 1, "") * amps * amps * hotOhm;
    }

    /// <summary>Margin of power over loss and work, its doubt and the probability that it is above zero: Φ(M/u).</summary>
    [Law("power-margin", "work", "M = P − q − P_job, u² = u_P² + u_q² + u_job², probability = Φ(M/u)", Says = "power left over after loss and work, with its chance", Source = "jcgm-100", Where = "5.1, combined standard uncertainty", Valid = "the three are independent and near normal",
        Example = "power=20.49W power-doubt=0.59W loss=17.76W loss-doubt=1.17W job=2.23W job-doubt=0.38W")]
    public static PowerMargin Margin(
        [In("P", "W", "power at hand", Name = "power", Min = 0)] double powerW,
        [In("u_P", "W", "its standard doubt", Name = "power-doubt", Min = 0)] double powerDoubtW,
        [In("q", "W", "loss at working temperature", Name = "loss", Min = 0)] double lossW,
        [In("u_q", "W", "its standard doubt", Name = "loss-doubt", Min = 0)] double lossDoubtW,
        [In("P_job", "W", "mean power of the job", Name = "job", Min = 0)] double jobW,
        [In("u_job", "W", "its standard doubt", Name = "job-doubt", Min = 0)] double jobDoubtW)
    {
        double margin = Impossible.IfNegative(powerW, "W") - Impossible.IfNegative(lossW, "W") - Impossible.IfNegative(jobW, "W");
        double doubt = Math.Sqrt(Math.Pow(Impossible.IfNegative(powerDoubtW, "W"), 2) + Math.Pow(Impossible.IfNegative(lossDoubtW, "W"), 2) + Math.Pow(Impossible.IfNegative(jobDoubtW, "W"), 2));
        double probability = doubt > 0 ? 0.5 * SpecialFunctions.Erfc(-margin / (doubt * Math.Sqrt(2))) : margin > 0 ? 1 : 0;
        return new PowerMargin(margin, doubt, probability);
    }

    /// <summary>Most pieces a second that a power sustains: (P − q)·η/E; 0 when nothing is left over.</summary>
    [Law("sustained-rate", "work", "rate = (P − q)·η/E", Says = "most pieces a second that a power sustains", Unit = "1/s", Source = "definition", Where = "heat balance", Valid = "mean over many pieces", Example = "power=20.49W loss=17.76W energy=67J share=1")]
    public static double SustainedPerS(
        [In("P", "W", "power at hand", Name = "power", Min = 0)] double powerW,
        [In("q", "W", "loss at working temperature", Name = "loss", Min = 0)] double lossW,
        [In("E", "J", "heat a piece", Name = "energy", Min = 0)] double energyJ,
        [In("η", "", "share of the heat that goes into the work", Name = "share", Min = 0, Max = 1, Default = 0.7)] double share) =>
        Math.Max(0, Impossible.IfNegative(powerW, "W") - Impossible.IfNegative(lossW, "W")) * Impossible.Unless(share, 0, 1, "") / Impossible.UnlessPositive(energyJ, "J");
}
