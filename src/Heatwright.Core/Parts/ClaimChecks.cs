using System.Globalization;
using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>A claim that can hardly be true, or that contradicts another, with the reason and what to do.</summary>
/// <param name="Rule">Name of the rule that found it, in data/components/claim-limits.json.</param>
/// <param name="Why">The reason, in numbers.</param>
/// <param name="Next">What to do now.</param>
/// <param name="Source">Where the rule comes from.</param>
/// <param name="Quantities">What it is about.</param>
public sealed record ClaimDoubt(string Rule, string Why, string Next, string Source, IReadOnlyList<string> Quantities);

/// <summary>Looks at claims for what cannot be: the rules are data, each with its source.</summary>
public static class ClaimChecks
{
    private const string Volume = "volume";
    private const string Surface = "surface";

    private sealed record Rule(TableRow Row, PartKind Kind, string Only, IReadOnlyList<(string Name, int Power)> Factors);

    private static readonly Lazy<IReadOnlyList<Rule>> Rules = new(() => [.. Tables.Find("claim-limits").Rows.Select(row => new Rule(
        row, Enum.Parse<PartKind>(row.Word("kind"), ignoreCase: true), row.Word("only"), Factors(row.Word("formula"))))]);

    /// <summary>Doubts about a part: what its claims say against each other, its sizes and its mass. What was measured counts in place of a claim of the same.</summary>
    /// <param name="part">The part.</param>
    /// <param name="found">What its trials told of a quantity; null: nothing.</param>
    public static IReadOnlyList<ClaimDoubt> Of(Part part, Func<string, Estimate?>? found = null)
    {
        var stated = part.Stated.Where(one => Units.Find(one.Unit) is not null).ToArray();
        return Of(part.Kind, part.Words, [.. stated.Select(one => (one.Quantity, Units.Find(one.Unit)!.ToSi(one.Value), one.Origin == "claimed"))],
            quantity => found?.Invoke(quantity) ?? (stated.Any(one => one.Quantity == quantity && one.Origin == "measured") ? part.Best(quantity) : null));
    }

    /// <summary>Doubts about the candidates of a seller's text.</summary>
    public static IReadOnlyList<ClaimDoubt> Of(ListingClaims listing) => listing.Kind is { } kind
        ? Of(kind, listing.Words, [.. listing.Claims.Where(claim => claim.Quantity is not null).Select(claim => (claim.Quantity!, claim.Unit.ToSi(claim.Value), true))], _ => null)
        : [];

    private static List<ClaimDoubt> Of(PartKind kind, IReadOnlyDictionary<string, string> words, IReadOnlyList<(string Name, double Si, bool Claimed)> stated, Func<string, Estimate?> measured)
    {
        List<ClaimDoubt> doubts = [];
        (string Name, double Si, bool Claimed)[] values = [.. stated.Select(value => measured(value.Name) is { } read ? (value.Name, read.Si, false) : value).Distinct()];
        foreach (var rule in Rules.Value.Where(rule => rule.Kind == kind && Holds(rule.Only, words, values)))
        {
            // Any claim for the first factor; for the others the largest, which doubts least where they divide.
            foreach (var first in stated.Where(value => value.Name == rule.Factors[0].Name).DistinctBy(value => value.Si))
            {
                if (Worth(rule, first.Si, values, words) is { } worth && Broken(rule.Row, worth) && stated.Any(value => value.Claimed && rule.Factors.Any(factor => factor.Name == value.Name)))
                {
                    doubts.Add(Doubt(rule, worth, measured));
                }
            }
        }

        doubts.AddRange(Twice(stated, measured));
        return doubts;
    }

    /// <summary>Two claims of one thing that differ by more than a tenth contradict each other.</summary>
    private static IEnumerable<ClaimDoubt> Twice(IReadOnlyList<(string Name, double Si, bool Claimed)> values, Func<string, Estimate?> measured) => values
        .Where(value => value.Claimed && value.Name is not (PartQuantities.SetVolts or PartQuantities.Price or PartQuantities.Length)).GroupBy(value => value.Name)
        .Where(group => group.Max(value => value.Si) > 1.1 * group.Min(value => value.Si) && group.Min(value => value.Si) > 0)
        .Select(group =>
        {
            var unit = PartUnits.Expected[group.Key].Bare;
            string said = string.Join(" and ", group.Select(value => $"{Number(unit.FromSi(value.Si))} {unit.Symbol}").Distinct());
            return new ClaimDoubt("two claims", $"{group.Key} is claimed as {said}", Counts(group.Key, measured) ?? "Confirm the one that holds for your use, or measure it.", Bibliography.Definition, [group.Key]);
        });

    /// <summary>A rule holds always, for a word of the part ('size=18650'), or where a value is not stated ('no length').</summary>
    private static bool Holds(string only, IReadOnlyDictionary<string, string> words, IReadOnlyList<(string Name, double Si, bool Claimed)> values) =>
        only.StartsWith("no ", StringComparison.Ordinal) ? !values.Any(value => value.Name == only[3..])
        : only.Length == 0 || only.Split('=') is [var name, var word] && string.Equals(words.GetValueOrDefault(name), word, StringComparison.OrdinalIgnoreCase);

    private static double? Worth(Rule rule, double first, IReadOnlyList<(string Name, double Si, bool Claimed)> values, IReadOnlyDictionary<string, string> words)
    {
        double worth = Math.Pow(first, rule.Factors[0].Power);
        foreach (var (name, power) in rule.Factors.Skip(1))
        {
            double? value = name switch
            {
                _ when name == rule.Factors[0].Name => first,
                Volume => Size(values, words, volume: true),
                Surface => Size(values, words, volume: false),
                PartQuantities.RatedVolts when rule.Kind == PartKind.Cell => Largest(name) ?? CellVolts(words),
                _ => Largest(name),
            };
            if (value is not > 0)
            {
                return null;
            }

            worth *= Math.Pow(value.Value, power);
        }

        return worth;

        double? Largest(string name) => values.Where(value => value.Name == name).Select(value => (double?)value.Si).Max();
    }

    private static double CellVolts(IReadOnlyDictionary<string, string> words) => words.GetValueOrDefault("chemistry") switch
    {
        "lithium iron phosphate" => 3.2,
        "nickel-metal hydride" => 1.2,
        _ => 3.6,
    };

    private static double? Size(IReadOnlyList<(string Name, double Si, bool Claimed)> values, IReadOnlyDictionary<string, string> words, bool volume)
    {
        double? Of(string name) => values.Where(value => value.Name == name).Select(value => (double?)value.Si).Max();
        double? d = Of(PartQuantities.Diameter), l = Of(PartQuantities.Length), w = Of(PartQuantities.Width), h = Of(PartQuantities.Height);
        if ((d is null || l is null) && words.GetValueOrDefault("size") is { Length: 5 } code && int.TryParse(code, NumberStyles.None, CultureInfo.InvariantCulture, out int digits))
        {
            (d, l) = (digits / 1000 * 1e-3, digits / 10 % 100 * 1e-3); // 18650 is 18 × 65 mm: its name says so
        }

        return (d, l, w, h) switch
        {
            ({ } across, { } along, _, _) => volume ? Math.PI / 4 * across * across * along : Math.PI * across * along,
            (_, { } along, { } wide, { } high) => volume ? along * wide * high : 2 * ((along * wide) + (along * high) + (wide * high)),
            (_, { } along, { } wide, null) when !volume => 2 * along * wide,
            _ => null,
        };
    }

    private static bool Broken(TableRow row, double si)
    {
        double shown = si / row.Number("scale");
        return shown > (row.NumberOrNull("most") ?? double.PositiveInfinity) || shown < (row.NumberOrNull("least") ?? double.NegativeInfinity);
    }

    /// <summary>That a quantity is measured, and nothing is left to be done about a claim of it; null: it is not.</summary>
    private static string? Counts(string quantity, Func<string, Estimate?> measured) =>
        quantity.Length > 0 && measured(quantity) is { } value ? $"Measured: {quantity} {Display.Rounded(value)}. That counts, not the claim." : null;

    private static ClaimDoubt Doubt(Rule rule, double si, Func<string, Estimate?> measured)
    {
        string why = rule.Row.Word("says").Replace("{value}", Number(si / rule.Row.Number("scale")), StringComparison.Ordinal);
        return new(rule.Row.Key, why, Counts(rule.Row.Word("settled"), measured) ?? rule.Row.Word("next"), rule.Row.Mark == Mark.CommonPractice ? "common practice, no source" : rule.Row.Source.Key,
            [.. rule.Factors.Select(factor => factor.Name).Distinct()]);
    }

    private static string Number(double value) => Display.Significant(value, 3);

    private static List<(string Name, int Power)> Factors(string formula)
    {
        List<(string, int)> factors = [];
        int power = 1;
        foreach (string piece in formula.Replace("*", "|*|", StringComparison.Ordinal).Replace("/", "|/|", StringComparison.Ordinal).Split('|', StringSplitOptions.TrimEntries))
        {
            if (piece is "*" or "/")
            {
                power = piece == "/" ? -1 : 1;
            }
            else
            {
                factors.Add((piece is Volume or Surface ? piece : PartUnits.Find(piece) ?? throw new FormatException($"Table 'claim-limits' speaks of '{piece}', which no part has."), power));
            }
        }

        return factors;
    }
}
