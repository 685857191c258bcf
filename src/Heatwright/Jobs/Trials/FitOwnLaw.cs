using System.Globalization;
using System.Reflection;
using Heatwright.Jobs.Sums;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>A maker's own trial by any law of the quick sums: some of its numbers are read, some are said, the rest are found.</summary>
public static class FitOwnLaw
{
    private const string Where = "trial fit own-line";

    /// <summary>Findings with doubt.</summary>
    /// <param name="words">Readings, settings and meters, named as the law names its inputs and its result.</param>
    /// <param name="lawName">Name of the law, as 'sum' has it.</param>
    /// <param name="result">Which of its results was read; null: its first.</param>
    /// <param name="find">Inputs to find, apart by commas; null: those that are neither read nor said.</param>
    public static Checked<TrialAnswer> Run(TrialWords words, string lawName, string? result, string? find)
    {
        if (LawCard.Find(lawName) is not { } law)
        {
            return new(new Problem($"There is no law '{lawName}'.", Where + " --law", lawName, LawNames.Near(lawName) is { Length: > 0 } near ? string.Join(", ", near) : "a name that 'heatwright sum' lists", "Type one of these."));
        }

        var results = law.Results().Where(each => Units.Find(each.Unit) is not null).ToArray();
        int told = result is null ? 0 : Array.FindIndex(results, each => string.Equals(each.Name, result, StringComparison.OrdinalIgnoreCase));
        if (results.Length == 0 || told < 0)
        {
            return new(new Problem($"{law.Law.Name} has no result '{result}' that can be read.", Where + " --result", result ?? "none", string.Join(", ", results.Select(each => each.Name)), "Name one of these."));
        }

        var numbers = law.Inputs.Where(input => input.Parameter.ParameterType == typeof(double) && !input.IsYesNo && Units.Find(input.Card.Unit) is not null).ToArray();
        var card = Card(law, results[told], numbers);
        return TrialReadings.Read(card, words).Then(input => Sought(law, numbers, input, find).Then(sought => Fit(law, results[told], numbers, card, input, sought)));
    }

    private static TrialCard Card(LawCard law, (string Name, string Unit, string Meaning, Func<object, object?> Take) result, LawInput[] numbers) =>
        TrialCard.Find("own-line")! with
        {
            Columns = [new(Column(result.Name), result.Unit, result.Meaning.Length > 0 ? result.Meaning : law.Says) { Needed = true, Also = ["result"] }, .. numbers.Where(input => input.Name != result.Name).Select(input => new TrialColumn(Column(input.Name), input.Card.Unit, input.Card.Meaning))],
            Settings = [.. numbers.Select(input => new TrialSetting(Column(input.Name), input.Card.Unit, input.Card.Meaning))],
        };

    private static Checked<LawInput[]> Sought(LawCard law, LawInput[] numbers, TrialInput input, string? find)
    {
        bool Read(LawInput each) => HasColumn(input, each.Name) || input.Settings.ContainsKey(Column(each.Name));
        if (find is null)
        {
            LawInput[] left = [.. numbers.Where(each => !each.IsOptional && !Read(each))];
            return left.Length > 0 ? new(left) : new(new Problem("Every number of the law is read or said: none is left to find.", Where, law.Law.Name, "one number or more to find", "Leave one out, or name it: --find NAME."));
        }

        List<LawInput> sought = [];
        List<Problem> problems = [];
        foreach (string name in find.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (law.Input(name) is { } known && numbers.Contains(known) && !Read(known))
            {
                sought.Add(known);
            }
            else
            {
                problems.Add(new($"'{name}' cannot be found from these readings.", Where + " --find", name, string.Join(", ", numbers.Where(each => !Read(each)).Select(each => each.Name)), "Name inputs of the law that are neither read nor said."));
            }
        }

        problems.AddRange(law.Inputs.Where(each => !each.IsOptional && !Read(each) && !sought.Contains(each)).Select(each => new Problem($"{each.Name} ({each.Card.Meaning}) is neither read, said nor sought.", Where, "none", each.Card.Unit.Length > 0 ? "a value in " + each.Card.Unit : "a value", $"Add --set {each.Name}=..., a column of that name, or --find {each.Name}.")));
        return problems.Count > 0 ? new(problems) : new(sought.ToArray());
    }

    private static Checked<TrialAnswer> Fit(LawCard law, (string Name, string Unit, string Meaning, Func<object, object?> Take) result, LawInput[] numbers, TrialCard card, TrialInput input, LawInput[] sought)
    {
        List<Problem> problems = [];
        object?[] usual = [.. law.Inputs.Select(each => each.IsOptional ? Typed.Read(law, each, null, problems).Argument : null)];
        if (problems.Count > 0)
        {
            return new(problems);
        }

        bool FromColumn(LawInput each) => each.Name != result.Name && !input.Settings.ContainsKey(Column(each.Name)) && !sought.Contains(each) && HasColumn(input, each.Name);
        double Value(Func<string, double> of)
        {
            object?[] arguments = [.. law.Inputs.Select((each, i) => numbers.Contains(each) && each.Name != result.Name && of(Column(each.Name)) is var value && double.IsFinite(value) ? value : usual[i])];
            try
            {
                return law.Method.Invoke(null, arguments) is { } answer && result.Take(answer) is (double or int) and var number ? Convert.ToDouble(number, CultureInfo.InvariantCulture) : double.NaN;
            }
            catch (TargetInvocationException refused) when (refused.InnerException is ArgumentException or ArithmeticException)
            {
                return double.NaN; // outside what the law takes: the search turns back
            }
        }

        var own = new OwnLaw(law.Law.Name, Column(result.Name), [.. numbers.Where(FromColumn).Select(each => Column(each.Name))],
            [.. sought.Select(each => new SoughtNumber(Column(each.Name), Units.Find(each.Card.Unit)!, Start(law, each), each.Card.Min, each.Card.Max))], Value);
        return TrialFits.Run(card, input, own).Map(answer => answer with { Says = [$"Law: {law.Law.Formula} ({law.SourceKey}).", .. answer.Says] });
    }

    /// <summary>Name of a column: as the law names its number, with blanks.</summary>
    private static string Column(string name) => name.Replace('-', ' ');

    private static bool HasColumn(TrialInput input, string name) => input.Mapping.ContainsKey(Column(name))
        || input.Columns.Any(column => string.Equals(column.Name.Trim().Replace('-', ' ').Replace('_', ' '), Column(name), StringComparison.OrdinalIgnoreCase));

    /// <summary>The size of the law's own example, or one.</summary>
    private static double Start(LawCard law, LawInput input)
    {
        string? typed = law.Law.Example.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Split('=', 2)).FirstOrDefault(pair => pair.Length == 2 && law.Input(pair[0]) == input)?[1];
        return Typed.Read(law, input, typed, []).Argument is double start && double.IsFinite(start) && start != 0 ? start : 1;
    }
}
