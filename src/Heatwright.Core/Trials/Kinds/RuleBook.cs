using System.Globalization;
using System.Text;
using System.Text.Json;
using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>One check: a rule, what to say, what to do.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Level">E, W or I.</param>
/// <param name="Each">True: asked of each reading; false: of the run as a whole.</param>
/// <param name="When">The rule as a formula: it fires where this holds.</param>
/// <param name="Says">The message; {formula|unit|digits} is worked out, to three digits where none are said.</param>
/// <param name="Remedy">What to do now.</param>
public sealed record TrialRule(string Id, string Level, bool Each, string When, string Says, string Remedy)
{
    /// <summary>True where the reading takes no part in the fit; of a run as a whole, where there is nothing to fit before it is mended.</summary>
    public bool LeavesOut { get; init; }

    /// <summary>Kinds it is asked of; empty: wherever its names are known.</summary>
    public IReadOnlyList<string> Kinds { get; init; } = [];
}

/// <summary>All checks, and what they say of readings and of plain numbers.</summary>
public static class RuleBook
{
    /// <summary>So many times what two readings differ by, a third is off both. Our choice.</summary>
    private const double FarApart = 3;

    private static readonly JsonSerializerOptions Reading = new(JsonSerializerDefaults.Web);

    private static readonly (TrialRule Rule, Formula When)[] Rules =
        [.. JsonSerializer.Deserialize<List<TrialRule>>(Embedded.Text(Embedded.NamesIn("data/trials/").Single(name => name.EndsWith("rules.json", StringComparison.Ordinal))), Reading)!
            .Select(rule => (rule, Formula.Read(rule.When)))];

    /// <summary>All checks.</summary>
    public static IReadOnlyList<TrialRule> All { get; } = [.. Rules.Select(pair => pair.Rule)];

    /// <summary>What the checks say of named numbers in SI (temperatures in °C): the traps of the trade.</summary>
    /// <param name="known">The numbers.</param>
    /// <param name="series">Rows of readings by name, where there are any.</param>
    public static IReadOnlyList<TrialRemark> Of(IReadOnlyDictionary<string, double> known, IReadOnlyDictionary<string, double[]>? series = null) =>
        [.. Asked(new NumberFacts(known, series), _ => true, 0)];

    /// <summary>Names that a rule asks for.</summary>
    public static IReadOnlyList<string> NamesOf(string id) => [.. Rules.Single(pair => pair.Rule.Id == id).When.Names.Order(StringComparer.Ordinal)];

    internal static IEnumerable<TrialRemark> Readings(TrialSheet sheet)
    {
        // A slip by a thousand is told first and by itself: beside it good readings would look wrong, and the run as a whole too.
        TrialRemark[] slips = [.. Each(sheet, IsSlip)];
        var slipped = slips.Select(remark => remark.Reading).ToHashSet();
        var rest = slips.Length == 0 ? sheet : sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(row => !slipped.Contains(sheet.Numbers[row]))]);
        TrialRemark[] each = [.. Each(rest, rule => !IsSlip(rule))];

        // The run as a whole is what its good readings make of it.
        var bad = each.Where(remark => remark.LeftOut).Select(remark => remark.Reading).ToHashSet();
        var good = bad.Count == 0 ? rest : rest.Rows([.. Enumerable.Range(0, rest.Count).Where(row => !bad.Contains(rest.Numbers[row]))]);
        return [.. slips, .. each, .. OfWhole(good)];
    }

    /// <summary>What the rules say of a run as a whole.</summary>
    internal static IEnumerable<TrialRemark> OfWhole(TrialSheet sheet) => sheet.Count > 0 ? Asked(new RowFacts(sheet, -1, new(sheet)), rule => !rule.Each && For(rule, sheet), 0) : [];

    private static bool IsSlip(TrialRule rule) => rule.LeavesOut && (rule.Id.StartsWith("S29", StringComparison.Ordinal) || rule.Id.StartsWith("swap-row", StringComparison.Ordinal));

    private static IEnumerable<TrialRemark> Each(TrialSheet sheet, Func<TrialRule, bool> wanted)
    {
        var whole = new WholeFacts(sheet);
        for (int row = 0; row < sheet.Count; row++)
        {
            var facts = new RowFacts(sheet, row, whole);
            foreach (var (rule, when) in Rules.Where(pair => pair.Rule.Each && wanted(pair.Rule) && For(pair.Rule, sheet) && pair.When.Holds(facts)))
            {
                int meant = Apart(sheet, row, when, whole);
                string also = meant == row ? "" : " So says the reading behind this one; it is this one that stands apart.";
                yield return new(sheet.Numbers[meant], rule.Id, rule.Level, Filled(rule.Says, facts) + also, Filled(rule.Remedy, facts)) { LeftOut = rule.LeavesOut };
            }
        }
    }

    /// <summary>Which of two readings a check that compares them is about: the one before, where the rest agree without it.</summary>
    private static int Apart(TrialSheet sheet, int row, Formula when, WholeFacts whole)
    {
        int before = row - 1;

        // Of the first reading the one that follows decides; of any other the one before it: two against one.
        int third = before > 0 ? before - 1 : row + 1;
        return before >= 0 && third < sheet.Count && !when.Holds(new RowFacts(sheet, row, whole, before)) && when.Names.Any(name => sheet.Has(name) && StandsApart(sheet[name][before], sheet[name][row], sheet[name][third])) ? before : row;
    }

    /// <summary>True where a value lies off two others by far more than they differ.</summary>
    private static bool StandsApart(double value, double one, double other) => Math.Abs(value - ((one + other) / 2)) > FarApart * Math.Abs(one - other);

    private static bool For(TrialRule rule, TrialSheet sheet) => rule.Kinds.Count == 0 || rule.Kinds.Contains(sheet.Card.Name);

    private static IEnumerable<TrialRemark> Asked(IFacts facts, Func<TrialRule, bool> wanted, int number) =>
        from pair in Rules
        where wanted(pair.Rule) && pair.When.Holds(facts)
        select new TrialRemark(number, pair.Rule.Id, pair.Rule.Level, Filled(pair.Rule.Says, facts), Filled(pair.Rule.Remedy, facts)) { LeftOut = pair.Rule.LeavesOut };

    private static string Filled(string text, IFacts facts)
    {
        var filled = new StringBuilder();
        int at = 0;
        for (int open = text.IndexOf('{', StringComparison.Ordinal); open >= 0; open = text.IndexOf('{', at))
        {
            int close = text.IndexOf('}', open);
            string[] parts = text[(open + 1)..close].Split('|');
            double value = Formula.Read(parts[0]).Of(facts);
            filled.Append(text, at, open - at).Append(double.IsNaN(value) ? "?" : Display.Significant(value, parts.Length > 2 ? int.Parse(parts[2], CultureInfo.InvariantCulture) : 3)).Append(parts.Length > 1 && parts[1].Length > 0 ? " " + parts[1] : "");
            at = close + 1;
        }

        return filled.Append(text, at, text.Length - at).ToString();
    }

    /// <summary>Doubt of a number of which none is said, as a share of it: what a usual meter leaves; common practice, no source.</summary>
    private const double Usual = 0.01;

    private sealed class NumberFacts(IReadOnlyDictionary<string, double> known, IReadOnlyDictionary<string, double[]>? series) : IFacts
    {
        public double Value(string name) => known.TryGetValue(name, out double value) ? value : double.NaN;

        public double[] Series(string name) => series?.GetValueOrDefault(name) ?? (known.TryGetValue(name, out double value) ? [value] : []);

        public double Ask(string function, string name) => known.TryGetValue($"{name} {function}", out double value) ? value : function == "doubt" ? Usual * Math.Abs(Value(name)) : double.NaN;
    }

    /// <summary>What all rows of a sheet share: worked out once, for a log of ten thousand rows asks it of each.</summary>
    private sealed class WholeFacts(TrialSheet sheet)
    {
        private readonly Dictionary<(string Function, string Name), double> known = [];
        private readonly Dictionary<string, SwappedPairs> pairs = [];
        private readonly Dictionary<string, int> alone = [];
        private readonly Lazy<(int Row, double Share)?> changed = new(() => ChangedInRun.Of(sheet["volts"], sheet["amps"]));

        public double Once(string function, string name, Func<double> worked)
        {
            if (!known.TryGetValue((function, name), out double value))
            {
                known[(function, name)] = value = worked();
            }

            return value;
        }

        public SwappedPairs Pairs(string name) => pairs.TryGetValue(name, out var there) ? there : pairs[name] = new(sheet.Card.Name, sheet[name], sheet[name.Replace("volts", "amps", StringComparison.Ordinal)]);

        public double Shifted(int row) => changed.Value is var (from, share) && from == row ? share : 0;

        public bool IsAlone(string name, int row) => (alone.TryGetValue(name, out int odd) ? odd : alone[name] = Alone(name)) == row;

        private int Alone(string name)
        {
            int[] read = [.. Enumerable.Range(0, sheet.Count).Where(i => double.IsFinite(sheet[name][i]))];
            double[] values = [.. read.Select(i => sheet[name][i])];
            return values.Length > 0 && Physics.ReadingChecks.Outlier(values, SheetMaker.LastDigit(values)) is >= 0 and var odd ? read[odd] : -1;
        }
    }

    /// <summary>A row of a sheet, or the sheet as a whole: a column as a whole is told by functions such as first and highest.</summary>
    private sealed class RowFacts(TrialSheet sheet, int row, WholeFacts whole, int without = -1) : IFacts
    {
        public double Value(string name) => row >= 0 && sheet.Card.Column(name) is not null ? sheet[name][row] : sheet.Setting(name);

        public double[] Series(string name) => sheet[name];

        public double Once(string function, string name, Func<double> worked) => whole.Once(function, name, worked);

        public double Ask(string function, string name) => function switch
        {
            "before" => Beside(name, -1),
            "after" => Beside(name, +1),
            "swapped" => row >= 0 && whole.Pairs(name).Is(row) ? 1 : 0,
            "alone" => row >= 0 && whole.IsAlone(name, row) ? 1 : 0,
            "shifted" => row >= 0 ? whole.Shifted(row) : 0,
            _ => Doubt(name),
        };

        private double Beside(string name, int way)
        {
            for (int i = row + way; row >= 0 && i >= 0 && i < sheet.Count; i += way)
            {
                if (i != without && double.IsFinite(sheet[name][i]))
                {
                    return sheet[name][i];
                }
            }

            return double.NaN;
        }

        private double Doubt(string name)
        {
            if (row < 0)
            {
                return double.NaN;
            }

            double value = sheet[name][row];
            double shared = sheet.Shared.Where(e => e.Column == name).Sum(e => Math.Pow((e.Gain * value) + e.Offset + (e.Both * Math.Sqrt(Math.Abs(value))), 2));
            return Math.Sqrt(shared + Math.Pow(sheet.Own(name)[row], 2));
        }
    }
}
