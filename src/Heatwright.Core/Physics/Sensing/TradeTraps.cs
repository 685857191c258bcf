namespace Heatwright.Physics;

/// <summary>Numbers behind the usual traps: what a symptom says when it is worked out.</summary>
/// <remarks>Ohm's law, definitions and the laws of this folder; grey-body radiation for the infrared reading. Checked: TradeTrapsTests.</remarks>
public static class TradeTraps
{
    /// <summary>Resistance that a label's volts and watts imply, Ω: V²/P.</summary>
    [Law("label-resistance", "heaters", "R = V²/P", Says = "resistance that a label's volts and watts imply", Unit = "Ω", Source = "definition", Where = "Ohm's law", Valid = "the resistance the label was written for, hot or cold it does not say",
        Example = "voltage=12V power=40W")]
    public static double LabelOhm(
        [In("V", "V", "volts on the label", Name = "voltage", Min = 0)] double volts,
        [In("P", "W", "watts on the label", Name = "power", Min = 1e-6)] double watts) => volts * volts / watts;

    /// <summary>Ratio of what was measured to what was claimed.</summary>
    public static double ClaimFactor(double measured, double claimed) => measured / claimed;

    /// <summary>Rise that more power brings near a plateau, as a share: share of power/n, with losses growing as riseⁿ.</summary>
    public static double RiseShare(double powerShare, double lossExponent) => powerShare / lossExponent;

    /// <summary>Current drawn at the source by a load behind a converter, A: P/(η·V).</summary>
    [Law("source-current", "power paths", "I = P/(η·V)", Says = "current that a load behind a converter draws from the battery", Unit = "A", Source = "definition", Where = "power balance",
        Valid = "efficiency at this point; voltage under load", Example = "power=12W efficiency=85% voltage=3.4V")]
    public static double SourceCurrentA(
        [In("P", "W", "power at the load", Name = "power", Min = 0)] double powerW,
        [In("η", "", "efficiency", Name = "efficiency", Min = 0.01, Max = 1)] double efficiency,
        [In("V", "V", "battery under load", Name = "voltage", Min = 1e-300)] double sourceV) => powerW / (efficiency * sourceV);

    /// <summary>Resistance of a source from a step of load, Ω: −ΔV/ΔI.</summary>
    public static double SourceOhm(double changeV, double changeA) => -changeV / changeA;

    /// <summary>Volts left behind leads, V.</summary>
    public static double AfterLeadsV(double supplyV, double amps, double leadsOhm) => supplyV - (amps * leadsOhm);

    /// <summary>Power that an ammeter takes, W: I²·R.</summary>
    public static double AmmeterW(double amps, double burdenOhm) => amps * amps * burdenOhm;

    /// <summary>Temperature at which an amplified thermocouple reaches the top of the converter, °C.</summary>
    public static double SaturationC(ThermocoupleCurve curve, double coldC, double gain, double offsetV, double referenceV) =>
        ColdJunction.HotC(curve, (referenceV / gain) - offsetV, coldC);

    /// <summary>Degrees that an offset at the input stands for, K.</summary>
    public static double OffsetK(ThermocoupleCurve curve, double hotC, double offsetV) => offsetV / curve.SlopeVPerK(hotC);

    /// <summary>Emissivity that makes an infrared thermometer right which was set to another: ε = ε_set·(T_shown⁴ − T_air⁴)/(T_true⁴ − T_air⁴).</summary>
    /// <remarks>Total radiation; a thermometer of a narrow band needs Planck's law, so this is an estimate.</remarks>
    [Law("implied-emissivity", "heat flow", "ε = ε_set·(T_shown⁴ − T_air⁴)/(T_true⁴ − T_air⁴)", Says = "emissivity that makes an infrared thermometer right", Source = "definition", Where = "grey-body radiation",
        Valid = "an estimate: a narrow band needs the spectrum", Example = "set=0.95 shown=150C true=300C around=25C")]
    public static double ImpliedEmissivity(
        [In("ε_set", "", "emissivity set on the instrument", Name = "set", Min = 0, Max = 1)] double setEmissivity,
        [In("T_shown", "°C", "what it shows", Name = "shown", Min = -273.15)] double shownC,
        [In("T_true", "°C", "what it is", Name = "true", Min = -273.15)] double trueC,
        [In("T_air", "°C", "surroundings", Name = "around", Min = -273.15, Default = 25)] double airC) =>
        setEmissivity * (Fourth(shownC) - Fourth(airC)) / (Fourth(trueC) - Fourth(airC));

    private static double Fourth(double tC) => Math.Pow(tC + Constants.ZeroCelsiusK, 4);
}
