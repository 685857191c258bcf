using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>The standard platinum sensor, ready made from its published coefficients.</summary>
/// <remarks>Source: [iec-60751], coefficients from memory, confirmed by the printed table.</remarks>
public static class PlatinumSensors
{
    /// <summary>The function of industrial platinum sensors, −200 to 850 °C.</summary>
    public static PlatinumCurve Iec60751 { get; } = Read();

    /// <summary>Resistance of a platinum sensor.</summary>
    [Law("platinum-resistance", "sensors", "R = R0·(1 + A·t + B·t²), below 0 °C + R0·C·(t − 100)·t³", Says = "resistance of a platinum sensor at a temperature", Unit = "Ω", Source = "iec-60751",
        Where = "coefficients from memory, confirmed by the printed table", Valid = "−200 to 850 °C", Example = "zero=100ohm at=350C")]
    public static double ResistanceOhm(
        [In("R0", "Ω", "resistance at 0 °C", Name = "zero", Min = 1e-3, Default = 100)] double zeroOhm,
        [In("t", "°C", "temperature", Name = "at", Min = -200, Max = 850)] double tC) => Platinum.ResistanceOhm(Iec60751, zeroOhm, tC);

    /// <summary>Temperature of a platinum sensor.</summary>
    [Law("platinum-temperature", "sensors", "t from R = R0·(1 + A·t + B·t²), below 0 °C + R0·C·(t − 100)·t³", Says = "temperature of a platinum sensor from its resistance", Unit = "°C", Source = "iec-60751",
        Where = "coefficients from memory, confirmed by the printed table", Valid = "−200 to 850 °C", Example = "zero=100ohm resistance=138.51ohm")]
    public static double TemperatureC(
        [In("R0", "Ω", "resistance at 0 °C", Name = "zero", Min = 1e-3, Default = 100)] double zeroOhm,
        [In("R", "Ω", "resistance", Name = "resistance", Min = 1e-3)] double ohm) => Platinum.TemperatureC(Iec60751, zeroOhm, ohm);

    /// <summary>Limit of a class at a temperature, in plain words.</summary>
    [Law("platinum-tolerance", "sensors", "a + b·|t|", Says = "tolerance of a platinum sensor", Unit = "K", Source = "iec-60751", Where = "tolerance classes, from memory",
        Valid = "inside the range of the class", Example = "class=B at=400C")]
    public static double LimitK(
        [In("class", "word", "tolerance class", Name = "class", Words = "AA A B C")] string tolerance,
        [In("t", "°C", "temperature", Name = "at", Min = -200, Max = 850)] double atC) =>
        ToleranceK((tolerance ?? "").Trim().ToUpperInvariant(), atC);

    /// <summary>Error that two-wire leads make, K.</summary>
    [Law("platinum-lead-error", "sensors", "ΔT = R_leads/(dR/dt)", Says = "error that two-wire leads make on a platinum sensor", Unit = "K", Source = "iec-60751", Where = "coefficients from memory, confirmed by the printed table",
        Valid = "two wires, lead resistance not subtracted", Example = "zero=100ohm leads=0.2ohm at=25C")]
    public static double LeadErrorK(
        [In("R0", "Ω", "resistance at 0 °C", Name = "zero", Min = 1e-3, Default = 100)] double zeroOhm,
        [In("Rl", "Ω", "leads, out and return", Name = "leads", Min = 0)] double leadsOhm,
        [In("t", "°C", "temperature", Name = "at", Min = -200, Max = 850)] double tC) =>
        Platinum.LeadErrorK(Iec60751, zeroOhm, leadsOhm, tC);

    /// <summary>Limit of a tolerance class (AA, A, B or C) at a temperature, K.</summary>
    public static double ToleranceK(string tolerance, double tC)
    {
        var row = Tables.Find("platinum-tolerance").FindRow(tolerance)
            ?? throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "There are the classes AA, A, B and C.");
        return Platinum.ToleranceK(row.Number("fixed"), row.Number("per degree"), tC);
    }

    private static PlatinumCurve Read()
    {
        var table = Tables.Find("platinum-function");
        double Of(string name) => table.Row(name).Number("value");
        return new(Of("A"), Of("B"), Of("C"), Of("lowest"), Of("highest"));
    }
}
