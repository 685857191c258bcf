namespace Heatwright.Physics;

/// <summary>A linear charger that lowers its current to hold its own temperature.</summary>
/// <remarks>Heat (V_in − V_t)·I, worst at the start. Regulates at 100 to 120 °C, 40 to 80 K/W in a small package (common practice, no source).</remarks>
/// <param name="InV">Input voltage.</param>
/// <param name="RegulatesC">Temperature it holds, °C.</param>
/// <param name="AroundC">Air at the charger, °C.</param>
/// <param name="ThermalKPerW">Junction to air.</param>
public sealed record ChargerHeat(double InV, double RegulatesC, double AroundC, double ThermalKPerW)
{
    /// <summary>Junction to air.</summary>
    public double ThermalKPerW { get; } = Impossible.UnlessPositive(ThermalKPerW, "K/W");

    /// <summary>Heat it can shed.</summary>
    public double ShedW => Math.Max(0, RegulatesC - AroundC) / ThermalKPerW;

    /// <summary>Most current at a battery terminal voltage: (T_reg − T_a)/(R_θ(V_in − V_t)).</summary>
    [Law("charger-fold-back", "charging", "(Treg − Ta)/(Rth·(Vin − Vt))", Says = "most current a hot linear charger still gives", Unit = "A", Source = "definition", Where = "heat balance", Valid = "linear charger", Example = "input-voltage=5V regulates=110degC around=40degC thermal=60K/W battery=3.7V")]
    public static double FoldBackA(
        [In("Vin", "V", "input", Name = "input-voltage", Min = 0)] double inV,
        [In("Treg", "°C", "temperature it holds", Name = "regulates")] double regulatesC,
        [In("Ta", "°C", "air at the charger", Name = "around")] double aroundC,
        [In("Rth", "K/W", "junction to air", Name = "thermal", Min = 0)] double thermalKPerW,
        [In("Vt", "V", "battery voltage under charge", Name = "battery", Min = 0)] double batteryV) =>
        new ChargerHeat(inV, regulatesC, aroundC, thermalKPerW).ShedW / Impossible.UnlessPositive(inV - batteryV, "V", nameof(batteryV));

    /// <summary>Most current with the battery's own rise under that very current: the lower root of R·I² − (V_in − OCV)·I + W = 0.</summary>
    /// <remarks>Written without cancellation; infinite when the heat never reaches the limit.</remarks>
    public double MostA(double openV, double cellOhm)
    {
        double gap = Math.Max(0, InV - Impossible.UnlessPositive(openV, "V"));
        double radicand = (gap * gap) - (4 * Impossible.IfNegative(cellOhm, "Ω") * ShedW);
        return radicand >= 0 && gap > 0 ? 2 * ShedW / (gap + Math.Sqrt(radicand)) : double.PositiveInfinity;
    }

    /// <summary>Heat of a linear charger: (V_in − V_battery)·I.</summary>
    public static double HeatW(double inV, double batteryV, double currentA) =>
        Impossible.IfNegative(inV - batteryV, "V", nameof(batteryV)) * Impossible.IfNegative(currentA, "A");
}
