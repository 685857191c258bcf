using Heatwright.Quantities;

namespace Heatwright.Jobs.Sums;

/// <summary>One result of a quick sum.</summary>
/// <param name="Name">Which result.</param>
/// <param name="Meaning">In trade words; empty where the law has one result.</param>
/// <param name="Value">In <paramref name="Unit"/>; null: there is none, and <paramref name="Words"/> says why.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="StandardDoubt">Propagated from the doubts typed; 0 where none were.</param>
/// <param name="Words">A result that is a word: a region, yes or no; or why there is no value.</param>
public sealed record SumResult(string Name, string Meaning, double? Value, string Unit, double StandardDoubt, string Words);

/// <summary>An input as it was understood.</summary>
public sealed record SumInput(string Name, string Meaning, double? Value, string Unit, double StandardDoubt, string Words, bool Typed);

/// <summary>The answer of a quick sum.</summary>
/// <param name="Law">Which law.</param>
/// <param name="Inputs">As understood.</param>
/// <param name="Results">One or more.</param>
/// <param name="Caveats">What to mind; empty: nothing.</param>
public sealed record SumAnswer(LawCard Law, IReadOnlyList<SumInput> Inputs, IReadOnlyList<SumResult> Results, IReadOnlyList<string> Caveats)
{
    /// <summary>A result as a maker reads it: prefix, doubt, unit.</summary>
    public static string Shown(SumResult result) => result.Value is not { } value ? result.Words
        : Units.Find(result.Unit) is { } unit ? Friendly(value, result.StandardDoubt, unit)
        : Display.Rounded(value, result.StandardDoubt, new Unit(result.Unit, Dimension.None));

    private static string Friendly(double value, double doubt, Unit unit)
    {
        var better = (unit.Symbol, Math.Abs(value)) switch
        {
            ("s", >= 5400) => Units.Hour,
            ("s", >= 120) => Units.Minute,
            ("m", < 1) => Units.Millimetre,
            ("V", < 0.1) => Units.Millivolt,
            ("Ω", < 0.1) => Units.Milliohm,
            ("A", < 0.1) => Units.Milliampere,
            ("C", _) => Units.AmpereHour,
            ("m²", < 0.01) => Units.SquareCentimetre,
            _ => unit,
        };
        return Display.Rounded(better.FromSi(unit.ToSi(value)), doubt * unit.Factor / better.Factor, better);
    }
}
