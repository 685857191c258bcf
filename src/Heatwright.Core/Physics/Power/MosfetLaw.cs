namespace Heatwright.Physics;

/// <summary>A MOSFET as the heater's switch: on-resistance, junction temperature, runaway.</summary>
/// <remarks>R(V_gs) = R_inf + K/(V_gs − V_th), triode region, any device textbook, from memory; take the largest specified threshold.
/// R(T_j) = R_25·(1 + k(T_j − 25)), k = 0.004 to 0.007 /K (common practice, no source). Use a part only at gate voltages for which its on-resistance is
/// specified: a threshold is not a drive level. A MOSFET fails on: an independent thermal cut-off or fuse must stand behind it.</remarks>
public static class MosfetLaw
{
    /// <summary>K and R_inf from two data-sheet points.</summary>
    public static (double GateOhmV, double FloorOhm) FromTwoPoints(double firstGateV, double firstOhm, double secondGateV, double secondOhm, double thresholdV)
    {
        double first = 1 / Impossible.UnlessPositive(firstGateV - Impossible.UnlessFinite(thresholdV, "V"), "V", nameof(firstGateV));
        double second = 1 / Impossible.UnlessPositive(secondGateV - thresholdV, "V", nameof(secondGateV));
        if (first == second)
        {
            throw Impossible.Outside(nameof(secondGateV), secondGateV, "V", "another gate voltage than the first");
        }

        double slope = (Impossible.UnlessPositive(secondOhm, "Ω") - Impossible.UnlessPositive(firstOhm, "Ω")) / (second - first);
        return (slope, firstOhm - (slope * first));
    }

    /// <summary>On-resistance at a gate voltage from two data-sheet points.</summary>
    [Law("switch-on-resistance", "switch", "R = Rinf + K/(Vgs − Vth) through two points", Says = "on-resistance of a transistor at your gate voltage", Unit = "Ω", Source = "definition", Where = "triode region, any device textbook, from memory",
        Valid = "take the largest specified threshold; only at gate voltages the sheet specifies", Example = "first-gate=4.5V first=20mohm second-gate=2.5V second=34mohm threshold=1V gate=3.3V")]
    public static double OnOhmBetween(
        [In("V1", "V", "gate voltage of the first point", Name = "first-gate", Min = 0)] double firstGateV,
        [In("R1", "Ω", "on-resistance there", Name = "first", Min = 0)] double firstOhm,
        [In("V2", "V", "gate voltage of the second point", Name = "second-gate", Min = 0)] double secondGateV,
        [In("R2", "Ω", "on-resistance there", Name = "second", Min = 0)] double secondOhm,
        [In("Vth", "V", "largest threshold", Name = "threshold", Min = 0)] double thresholdV,
        [In("Vgs", "V", "gate voltage at hand", Name = "gate", Min = 0)] double gateV)
    {
        (double gateOhmV, double floorOhm) = FromTwoPoints(firstGateV, firstOhm, secondGateV, secondOhm, thresholdV);
        double ohm = OnOhm(gateOhmV, floorOhm, gateV, thresholdV);
        return ohm > 0 ? ohm : throw Impossible.Outside(nameof(gateV), gateV, "V", "nearer to the two points");
    }

    /// <summary>On-resistance at a gate voltage: R_inf + K/(V_gs − V_th).</summary>
    public static double OnOhm(double gateOhmV, double floorOhm, double gateV, double thresholdV) =>
        floorOhm + (gateOhmV / Impossible.UnlessPositive(gateV - thresholdV, "V", nameof(gateV)));

    /// <summary>Junction temperature and loss once settled; none when every degree of warming adds more heat than it carries away.</summary>
    /// <remarks>T_j = [T_a + x(1 − 25k)]/(1 − x·k), x = R_θ·d·I²·R_25; x·k ≥ 1 runs away.</remarks>
    [Law("switch-junction", "switch", "Tj = (Ta + x·(1 − 25 k))/(1 − x k), x = Rth·d·I²·R25", Says = "junction temperature and loss of a switching transistor", Source = "definition", Where = "heat balance with a straight R(T)",
        Valid = "conduction loss; full gate drive; inside a closed handle take 20 to 50 % more thermal resistance", Example = "current=4A duty=100% on-resistance=20mohm thermal=80K/W around=45degC")]
    public static JunctionState? Junction(
        [In("I", "A", "current while on", Name = "current", Min = 0)] double currentA,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty,
        [In("R25", "Ω", "on-resistance at 25 °C and this gate drive", Name = "on-resistance", Min = 0)] double onOhm,
        [In("Rth", "K/W", "junction to air", Name = "thermal", Min = 0)] double thermalKPerW,
        [In("Ta", "°C", "air at the part", Name = "around")] double aroundC,
        [In("k", "1/K", "rise of the on-resistance", Name = "rise", Min = 0, SoftMin = 0.004, SoftMax = 0.007, Default = 0.005)] double riseKPerK = 0.005)
    {
        double x = Impossible.UnlessPositive(thermalKPerW, "K/W") * Impossible.UnlessFraction(duty) * currentA * currentA * Impossible.UnlessPositive(onOhm, "Ω");
        double rise = Impossible.IfNegative(riseKPerK, "1/K");
        if (x * rise >= 1)
        {
            return null;
        }

        double junctionC = (Impossible.UnlessFinite(aroundC, "°C") + (x * (1 - (25 * rise)))) / (1 - (x * rise));
        return new(junctionC, (junctionC - aroundC) / thermalKPerW);
    }

    /// <summary>Current from which on no settled temperature exists: √(1/(k·R_θ·d·R_25)).</summary>
    [Law("switch-runaway", "switch", "I = √(1/(k·Rth·d·R25))", Says = "current at which a switching transistor runs away", Unit = "A", Source = "definition", Where = "heat balance with a straight R(T)",
        Valid = "conduction loss; stay far below", Example = "on-resistance=20mohm thermal=80K/W rise=0.005/K duty=100%")]
    public static double RunawayA(
        [In("R25", "Ω", "on-resistance at 25 °C and this gate drive", Name = "on-resistance", Min = 0)] double onOhm,
        [In("Rth", "K/W", "junction to air", Name = "thermal", Min = 0)] double thermalKPerW,
        [In("k", "1/K", "rise of the on-resistance", Name = "rise", Min = 0, SoftMin = 0.004, SoftMax = 0.007, Default = 0.005)] double riseKPerK = 0.005,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1, Default = 1)] double duty = 1) => Math.Sqrt(1 / (
        Impossible.UnlessPositive(riseKPerK, "1/K") * Impossible.UnlessPositive(thermalKPerW, "K/W") * Impossible.UnlessPositive(duty, "") * Impossible.UnlessPositive(onOhm, "Ω")));
}

/// <summary>A switch once it has settled.</summary>
/// <param name="JunctionC">Junction temperature, °C.</param>
/// <param name="LossW">Conduction loss.</param>
public sealed record JunctionState(
    [property: Out("°C", "junction")] double JunctionC,
    [property: Out("W", "conduction loss")] double LossW);
