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
