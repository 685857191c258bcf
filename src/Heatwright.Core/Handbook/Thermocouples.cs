using System.Collections.Frozen;
using System.Globalization;
using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>The standard thermocouple types, ready made from their published coefficients.</summary>
/// <remarks>Source: [nist-srd60] for B, E, J, K, N, R, S and T; [astm-e230] for C, from memory.</remarks>
public static class Thermocouples
{
    // Type B falls from 0 to 21 °C and climbs back to 0 V at 42.1 °C: below that two temperatures give one voltage.
    private const double TypeBInvertFromC = 43;

    private static readonly FrozenDictionary<string, ThermocoupleCurve> ByType = Build().ToFrozenDictionary(curve => curve.Type, StringComparer.Ordinal);

    /// <summary>All types, by letter.</summary>
    public static IReadOnlyList<ThermocoupleCurve> All { get; } = [.. ByType.Values.OrderBy(curve => curve.Type, StringComparer.Ordinal)];

    /// <summary>Type B, platinum-30 % rhodium against platinum-6 % rhodium.</summary>
    public static ThermocoupleCurve TypeB => ByType["B"];

    /// <summary>Type C, tungsten-5 % rhenium against tungsten-26 % rhenium.</summary>
    public static ThermocoupleCurve TypeC => ByType["C"];

    /// <summary>Type E, nickel-chromium against copper-nickel.</summary>
    public static ThermocoupleCurve TypeE => ByType["E"];

    /// <summary>Type J, iron against copper-nickel.</summary>
    public static ThermocoupleCurve TypeJ => ByType["J"];

    /// <summary>Type K, nickel-chromium against nickel-aluminium.</summary>
    public static ThermocoupleCurve TypeK => ByType["K"];

    /// <summary>Type N, nickel-chromium-silicon against nickel-silicon.</summary>
    public static ThermocoupleCurve TypeN => ByType["N"];

    /// <summary>Type R, platinum-13 % rhodium against platinum.</summary>
    public static ThermocoupleCurve TypeR => ByType["R"];

    /// <summary>Type S, platinum-10 % rhodium against platinum.</summary>
    public static ThermocoupleCurve TypeS => ByType["S"];

    /// <summary>Type T, copper against copper-nickel.</summary>
    public static ThermocoupleCurve TypeT => ByType["T"];

    /// <summary>The type with this letter, in either case, or null.</summary>
    public static ThermocoupleCurve? Find(string letter) => ByType.GetValueOrDefault(letter.Trim().ToUpperInvariant());

    /// <summary>Voltage at the terminals of a thermocouple.</summary>
    [Law("thermocouple-voltage", "sensors", "E = E_type(t_hot) − E_type(t_cold)", Says = "voltage at the terminals of a thermocouple", Unit = "V", Source = "nist-srd60",
        Where = "reference functions (type C: ASTM E230, from memory)", Valid = "inside the range of the type; new wire, tolerance class apart",
        Example = "type=K hot=350C cold=25C")]
    public static double VoltageV(
        [In("type", "word", "letter of the type", Words = "B C E J K N R S T")] string type,
        [In("t_hot", "°C", "temperature of the hot end", Min = -270, Max = 2315)] double hotC,
        [In("t_cold", "°C", "temperature where the sensor wires meet copper", Min = -270, Max = 2315)] double coldC) =>
        ColdJunction.VoltageV(Named(type), hotC, coldC);

    /// <summary>Temperature of the hot end of a thermocouple.</summary>
    [Law("thermocouple-temperature", "sensors", "t_hot = E_type⁻¹(E + E_type(t_cold))", Says = "temperature of the hot end of a thermocouple from its voltage", Unit = "°C", Source = "nist-srd60",
        Where = "reference functions, inverted exactly (type C: ASTM E230, from memory)",
        Valid = "inside the range of the type; type B from 43 °C up; new wire, tolerance class apart", Example = "type=E voltage=20mV cold=10C")]
    public static double TemperatureC(
        [In("type", "word", "letter of the type", Words = "B C E J K N R S T")] string type,
        [In("E", "V", "voltage at the terminals", Min = -0.1, Max = 0.1)] double voltageV,
        [In("t_cold", "°C", "temperature where the sensor wires meet copper", Min = -270, Max = 2315)] double coldC) =>
        ColdJunction.HotC(Named(type), voltageV, coldC);

    /// <summary>Sensitivity of a thermocouple, V/K.</summary>
    [Law("thermocouple-slope", "sensors", "S = dE_type/dt", Says = "sensitivity of a thermocouple at a temperature", Unit = "V/K", Source = "nist-srd60", Where = "derivative of the reference functions (type C: ASTM E230, from memory)",
        Valid = "inside the range of the type", Example = "type=K at=350C")]
    public static double SlopeVPerK(
        [In("type", "word", "letter of the type", Name = "type", Words = "B C E J K N R S T")] string type,
        [In("t", "°C", "temperature", Name = "at", Min = -270, Max = 2315)] double atC) =>
        Named(type).SlopeVPerK(atC);

    /// <summary>Kelvin at the tip per kelvin at the cold junction.</summary>
    [Law("cold-junction-share", "sensors", "∂t/∂t_cold = S(t_cold)/S(t_hot)", Says = "how far the tip reading moves per kelvin at the cold junction", Source = "nist-srd60", Where = "derivative of the reference functions (type C: ASTM E230, from memory)",
        Valid = "small errors", Example = "type=K hot=400C cold=31.5C")]
    public static double ColdShare(
        [In("type", "word", "letter of the type", Name = "type", Words = "B C E J K N R S T")] string type,
        [In("t_hot", "°C", "temperature of the hot end", Name = "hot", Min = -270, Max = 2315)] double hotC,
        [In("t_cold", "°C", "temperature where the sensor wires meet copper", Name = "cold", Min = -270, Max = 2315)] double coldC) =>
        Named(type).SlopeVPerK(hotC) is > 0 and var slope ? Named(type).SlopeVPerK(coldC) / slope : throw new ArgumentOutOfRangeException(nameof(hotC), hotC, "Here the type has no slope: hot must be higher.");

    /// <summary>What a device shows that takes one type for another, °C.</summary>
    [Law("thermocouple-mistaken", "sensors", "t = E_believed⁻¹(E_real(t_hot) − E_real(t_cold) + E_believed(t_cold))", Says = "what a device shows that takes one thermocouple type for another", Unit = "°C", Source = "nist-srd60", Where = "reference functions (type C: ASTM E230, from memory)",
        Valid = "inside the range of both types", Example = "real=E believed=K hot=300C cold=25C")]
    public static double MistakenC(
        [In("real", "word", "letter of the sensor", Name = "real", Words = "B C E J K N R S T")] string real,
        [In("believed", "word", "letter the device is set to", Name = "believed", Words = "B C E J K N R S T")] string believed,
        [In("t_hot", "°C", "temperature of the hot end", Name = "hot", Min = -270, Max = 2315)] double hotC,
        [In("t_cold", "°C", "temperature where the sensor wires meet copper", Name = "cold", Min = -270, Max = 2315)] double coldC) =>
        ColdJunction.MistakenC(Named(real), Named(believed), hotC, coldC);

    /// <summary>Error of extension leads that are swapped or of another type, K.</summary>
    [Law("extension-error", "sensors", "swapped −2·E(t_joint, t_cold)/S, other type (E_lead − E_sensor)/S", Says = "error of extension leads that are swapped or of another type", Source = "nist-srd60", Where = "reference functions, to first order (type C: ASTM E230, from memory)",
        Valid = "small errors", Example = "sensor=K lead=J hot=350C joint=45C cold=25C")]
    public static ExtensionError Extension(
        [In("type", "word", "letter of the sensor", Name = "sensor", Words = "B C E J K N R S T")] string sensor,
        [In("lead", "word", "letter of the lead", Name = "lead", Words = "B C E J K N R S T")] string lead,
        [In("t_hot", "°C", "temperature of the hot end", Name = "hot", Min = -270, Max = 2315)] double hotC,
        [In("t_joint", "°C", "temperature where sensor and lead meet", Name = "joint", Min = -270, Max = 2315)] double jointC,
        [In("t_cold", "°C", "temperature where the leads meet copper", Name = "cold", Min = -270, Max = 2315)] double coldC) =>
        Named(sensor).SlopeVPerK(hotC) > 0
            ? new(ColdJunction.ReversedExtensionErrorK(Named(sensor), hotC, jointC, coldC), ColdJunction.WrongExtensionErrorK(Named(sensor), Named(lead), hotC, jointC, coldC))
            : throw new ArgumentOutOfRangeException(nameof(hotC), hotC, "Here the type has no slope: hot must be higher.");

    /// <summary>Temperature at which an amplified thermocouple reaches the top of the converter, °C.</summary>
    [Law("full-scale-temperature", "amplifier", "t = E_type⁻¹(V_ref/G − V_os + E_type(t_cold))", Says = "temperature at which an amplified thermocouple runs out of range", Unit = "°C", Source = "nist-srd60", Where = "reference functions, inverted exactly (type C: ASTM E230, from memory)",
        Valid = "inside the range of the type", Example = "type=K reference=1.1V gain=56 offset=0V cold=25C")]
    public static double FullScaleC(
        [In("type", "word", "letter of the type", Name = "type", Words = "B C E J K N R S T")] string type,
        [In("V_ref", "V", "top of the converter", Name = "reference", Min = 1e-300)] double referenceV,
        [In("G", "", "gain", Name = "gain", Min = 1e-300)] double gain,
        [In("V_os", "V", "input offset", Name = "offset", Default = 0)] double offsetV,
        [In("t_cold", "°C", "temperature where the sensor wires meet copper", Name = "cold", Min = -270, Max = 2315)] double coldC) =>
        TradeTraps.SaturationC(Named(type), coldC, gain, offsetV, referenceV);

    /// <summary>Temperature that a count of a calibrated chain stands for, °C.</summary>
    [Law("count-temperature", "calibration", "t = E_type⁻¹((count − a)/b + E_type(t_cold))", Says = "temperature that a count of a calibrated chain stands for", Unit = "°C", Source = "nist-srd60", Where = "reference functions, inverted exactly (type C: ASTM E230, from memory)",
        Valid = "inside the readings the chain was calibrated with, and a little beyond", Example = "type=K count=300 zero=9.2020724 per-volt=52190.117 cold=28C")]
    public static double CountC(
        [In("type", "word", "letter of the type", Name = "type", Words = "B C E J K N R S T")] string type,
        [In("count", "", "count", Name = "count")] double count,
        [In("a", "", "count with the tip as cold as the junction", Name = "zero")] double zero,
        [In("b", "1/V", "counts a volt", Name = "per-volt", Min = 1e-300)] double perVolt,
        [In("t_cold", "°C", "temperature where the sensor wires meet copper", Name = "cold", Min = -270, Max = 2315)] double coldC) =>
        ColdJunction.HotC(Named(type), (count - zero) / perVolt, coldC);

    /// <summary>Doubt of a whole sensing chain at the tip, K.</summary>
    [Law("chain-doubt", "amplifier", "u² = Σ (a_i/√3)², each limit in kelvin at the tip", Says = "doubt of a thermocouple chain from the limits of its parts", Source = "jcgm-100", Where = "4.3.7 and 5.1.2, from memory",
        Valid = "limits as rectangles, independent", Example = "type=K hot=350C cold=30C gain=56 reference=1.1V bits=10 offset=150uV drift=2uV/K board=15K resistors=1% reference-limit=1% steps=2.5 cold-limit=2K sensor=0.75% stray=10uV")]
    public static ChainDoubt Chain(
        [In("type", "word", "letter of the type", Name = "type", Words = "B C E J K N R S T")] string type,
        [In("t_hot", "°C", "temperature of the tip", Name = "hot", Min = -270, Max = 2315)] double hotC,
        [In("t_cold", "°C", "temperature of the cold junction", Name = "cold", Min = -270, Max = 2315)] double coldC,
        [In("G", "", "gain", Name = "gain", Min = 1e-300)] double gain,
        [In("V_ref", "V", "reference of the converter", Name = "reference", Min = 1e-300)] double referenceV,
        [In("n", "", "bits of the converter", Name = "bits", Min = 1, Max = 32)] double bits,
        [In("V_os", "V", "offset of the amplifier", Name = "offset", Min = 0)] double offsetV,
        [In("drift", "V/K", "its drift", Name = "drift", Min = 0, Default = 0)] double driftVPerK = 0,
        [In("ΔT_b", "K", "range of the board's temperature", Name = "board", Min = 0, Default = 0)] double boardRangeK = 0,
        [In("p", "", "tolerance of the gain resistors", Name = "resistors", Min = 0, Max = 0.5, Default = 0.01)] double resistors = 0.01,
        [In("r", "", "limit of the reference, as a share", Name = "reference-limit", Min = 0, Max = 1, Default = 0.01)] double referenceShare = 0.01,
        [In("LSB", "", "linearity and rounding, in steps", Name = "steps", Min = 0, Default = 2.5)] double steps = 2.5,
        [In("a_cold", "K", "limit of the cold-junction sensor", Name = "cold-limit", Min = 0, Default = 2)] double coldLimitK = 2,
        [In("s", "", "tolerance of the thermocouple as a share of °C", Name = "sensor", Min = 0, Max = 1, Default = 0.0075)] double sensorShare = 0.0075,
        [In("a_K", "K", "tolerance of the thermocouple that always stands", Name = "sensor-floor", Min = 0, Default = 2.5)] double sensorFloorK = 2.5,
        [In("V_s", "V", "leakage and stray couples", Name = "stray", Min = 0, Default = 10e-6)] double strayV = 10e-6,
        [In("bias", "V", "bias current times source resistance", Name = "bias", Min = 0, Default = 1e-6)] double biasV = 1e-6)
    {
        var curve = Named(type);
        if (!(curve.SlopeVPerK(hotC) > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(hotC), hotC, "Here the type has no slope: hot must be higher.");
        }

        var lines = ErrorBudget.Lines(curve, hotC, coldC, gain, Converter.StepV(referenceV, bits),
            new(offsetV, driftVPerK, boardRangeK, biasV, 1, resistors, referenceShare, steps, coldLimitK, sensorShare, sensorFloorK, strayV));
        var largest = lines.MaxBy(line => line.HalfWidthK)!;
        return new(ErrorBudget.CombinedK(lines), 2 * ErrorBudget.CombinedK(lines), ErrorBudget.WorstK(lines), largest.Cause, largest.HalfWidthK);
    }

    /// <summary>The gain that each type implies.</summary>
    [Law("gain-per-type", "amplifier", "G = V_out/(E_type(t_hot) − E_type(t_cold))", Says = "gain that each thermocouple type would mean for an amplified reading", Source = "nist-srd60", Where = "reference functions (type C: ASTM E230, from memory)",
        Valid = "which type a sensor is, this cannot say: a trial or the resistors on the board decide", Example = "output=1.1V hot=400C cold=25C")]
    public static TypeGains Gains(
        [In("V_out", "V", "voltage at the output", Name = "output", Min = 1e-300)] double outputV,
        [In("t_hot", "°C", "temperature of the tip", Name = "hot", Min = -270, Max = 2315)] double hotC,
        [In("t_cold", "°C", "temperature where the sensor wires meet copper", Name = "cold", Min = -270, Max = 2315)] double coldC)
    {
        if (hotC <= coldC)
        {
            throw new ArgumentOutOfRangeException(nameof(hotC), hotC, "A tip no hotter than the cold junction implies no gain: hot must be above cold.");
        }

        var gains = GainPerType(outputV, hotC, coldC);
        double? Of(string type) => gains.TryGetValue(type, out double gain) && gain > 0 && double.IsFinite(gain) ? gain : null;
        return new(Of("E"), Of("J"), Of("K"), Of("N"), Of("T"), Of("C"), Of("R"), Of("S"), Of("B"));
    }

    /// <summary>The gain that brings the voltage of each type to one output; types that end below the hot temperature are left out.</summary>
    /// <remarks>Only a list: which type a sensor is, a trial decides.</remarks>
    public static IReadOnlyDictionary<string, double> GainPerType(double outputV, double hotC, double coldC) =>
        All.Where(curve => hotC >= curve.MinC && hotC <= curve.MaxC && coldC >= curve.MinC)
            .ToDictionary(curve => curve.Type, curve => Amplifier.ImpliedGain(outputV, ColdJunction.VoltageV(curve, hotC, coldC)), StringComparer.Ordinal);

    private static ThermocoupleCurve Named(string type) => Find(type)
        ?? throw new ArgumentOutOfRangeException(nameof(type), type, $"There is no type '{type}'. There are: {string.Join(", ", All.Select(curve => curve.Type))}.");

    private static IEnumerable<ThermocoupleCurve> Build()
    {
        var inverses = Tables.Find("thermocouple-inverse").Rows.GroupBy(row => row.Key).ToDictionary(rows => rows.Key, Starts);
        foreach (string table in (string[])["thermocouple-forward", "thermocouple-forward-c"])
        {
            foreach (var type in Tables.Find(table).Rows.GroupBy(row => row.Key))
            {
                yield return new(type.Key, type.GroupBy(row => row.Number("from")).Select(Piece), inverses.GetValueOrDefault(type.Key, []),
                    type.Key == "B" ? TypeBInvertFromC : double.NaN);
            }
        }
    }

    private static EmfPiece Piece(IGrouping<double, TableRow> rows)
    {
        var terms = rows.ToDictionary(row => row.Word("term"), row => row.Number("coefficient"), StringComparer.Ordinal);
        EmfBump? bump = terms.TryGetValue("a0", out double a0) ? new(a0, terms["a1"], terms["a2"]) : null;
        return new(rows.Key, rows.First().Number("to"), Powers(terms, 'c'), bump);
    }

    private static EmfInversePiece[] Starts(IEnumerable<TableRow> rows) =>
    [
        .. rows.GroupBy(row => row.Number("from")).Select(piece => new EmfInversePiece(piece.Key, piece.First().Number("to"),
            Powers(piece.ToDictionary(row => row.Word("term"), row => row.Number("coefficient"), StringComparer.Ordinal), 'd'),
            piece.First().Number("error low"), piece.First().Number("error high"))),
    ];

    // Terms are named c0, c1 …; their order in the file does not matter, a missing one does.
    private static double[] Powers(Dictionary<string, double> terms, char letter) =>
        [.. Enumerable.Range(0, terms.Keys.Count(name => name[0] == letter)).Select(i => terms[string.Create(CultureInfo.InvariantCulture, $"{letter}{i}")])];
}

/// <summary>The gain that each type implies; none where the type ends below the temperature.</summary>
/// <param name="E">Type E.</param>
/// <param name="J">Type J.</param>
/// <param name="K">Type K.</param>
/// <param name="N">Type N.</param>
/// <param name="T">Type T.</param>
/// <param name="C">Type C.</param>
/// <param name="R">Type R.</param>
/// <param name="S">Type S.</param>
/// <param name="B">Type B.</param>
public sealed record TypeGains(
    [property: Out("", "if the sensor were type E", Name = "type-e")] double? E,
    [property: Out("", "if the sensor were type J", Name = "type-j")] double? J,
    [property: Out("", "if the sensor were type K", Name = "type-k")] double? K,
    [property: Out("", "if the sensor were type N", Name = "type-n")] double? N,
    [property: Out("", "if the sensor were type T", Name = "type-t")] double? T,
    [property: Out("", "if the sensor were type C", Name = "type-c")] double? C,
    [property: Out("", "if the sensor were type R", Name = "type-r")] double? R,
    [property: Out("", "if the sensor were type S", Name = "type-s")] double? S,
    [property: Out("", "if the sensor were type B", Name = "type-b")] double? B);

/// <summary>Errors of extension leads.</summary>
/// <param name="SwappedK">Leads of the right type, swapped.</param>
/// <param name="OtherTypeK">Leads of another type.</param>
public sealed record ExtensionError(
    [property: Out("K", "leads of the right type, swapped", Name = "swapped")] double SwappedK,
    [property: Out("K", "leads of the other type", Name = "other-type")] double OtherTypeK);

/// <summary>Doubt of a whole chain at the tip.</summary>
/// <param name="DoubtK">Combined standard doubt.</param>
/// <param name="ExpandedK">Twice that.</param>
/// <param name="WorstK">All limits at once.</param>
/// <param name="Largest">Largest cause.</param>
/// <param name="LargestK">Its half width.</param>
public sealed record ChainDoubt(
    [property: Out("K", "combined standard doubt", Name = "doubt")] double DoubtK,
    [property: Out("K", "expanded doubt, k = 2", Name = "expanded")] double ExpandedK,
    [property: Out("K", "all limits at once", Name = "worst")] double WorstK,
    [property: Out("", "largest cause", Name = "largest")] string Largest,
    [property: Out("K", "half width of the largest cause", Name = "largest-limit")] double LargestK);
