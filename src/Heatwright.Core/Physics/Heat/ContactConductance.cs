namespace Heatwright.Physics;

/// <summary>Heat across a joint of two surfaces.</summary>
/// <remarks>Ranges by kind of joint stand in data/heat/contact-conductance.json (common practice, order of magnitude). Checked: SpreadingTests.</remarks>
public static class ContactConductance
{
    /// <summary>Resistance of a joint 1/(hA), K/W.</summary>
    [Law("joint", "heat flow", "R = 1/(h_c·A)", Says = "thermal resistance of a joint of two parts", Unit = "K/W", Source = "definition", Where = "contact conductance", Valid = "h_c known within a factor of two at best", Example = "contact=2000W/(m²·K) area=10mm²")]
    public static double JointKPerW(
        [In("h_c", "W/(m²·K)", "contact conductance", Name = "contact", Min = 0)] double hWPerM2K,
        [In("A", "m²", "contact area", Name = "area", Min = 0)] double areaM2) => 1 / (Impossible.UnlessPositive(hWPerM2K, "W/(m²·K)") * Impossible.UnlessPositive(areaM2, "m²"));

    /// <summary>Conductance of a thin gap filled with still air or paste: k/gap, W/(m²·K).</summary>
    [Law("gap-conductance", "heat flow", "h = k/gap", Says = "conductance of a thin gap filled with air or paste", Unit = "W/(m²·K)", Source = "definition", Where = "plain layer", Valid = "gap wide against the free path of air, radiation left out", Example = "conductivity=0.045W/(m·K) gap=0.05mm")]
    public static double GapWPerM2K(
        [In("k", "W/(m·K)", "conductivity of the filling", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("g", "m", "gap", Name = "gap", Min = 0)] double gapM) => Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)") / Impossible.UnlessPositive(gapM, "m");

    /// <summary>Flat rough metals pressed together: 1.25·k_s·(m/σ)·(p/H)^0.95, W/(m²·K).</summary>
    [Law("pressed-metal", "heat flow", "h_c = 1.25·k_s·(m/σ)·(p/H)^0.95", Says = "conductance of rough metals pressed together", Unit = "W/(m²·K)", Source = "yovanovich-1998", Where = "ch. 3, from memory", Valid = "nominally flat rough metals; k_s = 2k₁k₂/(k₁ + k₂)",
        Example = "conductivity=100W/(m·K) slope=0.1 roughness=1um pressure=1MPa hardness=1GPa")]
    public static double PressedMetalWPerM2K(
        [In("k_s", "W/(m·K)", "harmonic mean conductivity", Name = "conductivity", Min = 0)] double harmonicWPerMK,
        [In("m", "", "mean slope of the roughness", Name = "slope", Min = 0)] double slope,
        [In("σ", "m", "roughness, root of the sum of squares", Name = "roughness", Min = 0)] double roughnessM,
        [In("p", "Pa", "pressure", Name = "pressure", Min = 0)] double pressurePa,
        [In("H", "Pa", "hardness of the softer", Name = "hardness", Min = 0)] double hardnessPa) =>
        1.25 * Impossible.UnlessPositive(harmonicWPerMK, "W/(m·K)") * Impossible.UnlessPositive(slope, "") / Impossible.UnlessPositive(roughnessM, "m")
            * Math.Pow(Impossible.IfNegative(pressurePa, "Pa") / Impossible.UnlessPositive(hardnessPa, "Pa"), 0.95);
}
