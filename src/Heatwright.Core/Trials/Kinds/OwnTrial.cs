using System.Globalization;
using System.Reflection;
using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>A number that an own trial is to find.</summary>
/// <param name="Input">The number of the law.</param>
/// <param name="As">The name that the finding has: that of a claim, say, which it is to be set beside.</param>
public sealed record OwnFind(LawInput Input, string As);

/// <summary>A maker's own trial by any law of the quick sums: some of its numbers are read, some are said, the rest are found. Its kind is written
/// 'own-line by heater-ohms of heater-ohms for cold as ohms, slope': what is read, and what is sought under which name, may be left out.</summary>
/// <param name="Law">The law.</param>
/// <param name="Result">Which of its results is read.</param>
/// <param name="Sought">What is to be found; null: whatever is neither read nor said.</param>
public sealed record OwnTrial(LawCard Law, string Result, IReadOnlyList<OwnFind>? Sought)
{
    /// <summary>Name of the kind whose laws a maker chooses.</summary>
    public const string Kind = "own-line";

    private const string By = Kind + " by ";

    /// <summary>The kind as it is written; the same words make the same trial again.</summary>
    public string Name => $"{By}{Law.Law.Name}{(Result == Results(Law)[0].Name ? "" : $" of {Result}")}{(Sought is null ? "" : " for " + string.Join(", ", Sought.Select(one => one.As == Column(one.Input.Name) ? one.Input.Name : $"{one.Input.Name} as {one.As}")))}";

    /// <summary>How it is done: the card of the kind, with the law's numbers as columns and settings.</summary>
    public TrialCard Card => TrialCard.Find(Kind)! with
    {
        Name = Name,
        Purpose = $"Your own trial by the law {Law.Law.Name}: {Law.Says}.",
        Columns = [new(Column(Result), Read.Unit, Read.Meaning.Length > 0 ? Read.Meaning : Law.Says) { Needed = true, Also = ["result"] }, .. Numbers.Where(input => input.Name != Result).Select(input => new TrialColumn(Column(input.Name), input.Card.Unit, input.Card.Meaning))],
        Settings = [.. Numbers.Select(input => new TrialSetting(Column(input.Name), input.Card.Unit, input.Card.Meaning))],
        Finds = Sought is null ? [] : [.. Sought.Select(one => one.As)],
        Fewest = Sought?.Count ?? 1,
    };

    private (string Name, string Unit, string Meaning, Func<object, object?> Take) Read => Results(Law).First(each => each.Name == Result);

    private LawInput[] Numbers => [.. Law.Inputs.Where(input => input.Parameter.ParameterType == typeof(double) && !input.IsYesNo && Units.Find(input.Card.Unit) is not null)];

    /// <summary>The trial that a kind's name tells; null: it is the name of another kind, or tells none.</summary>
    /// <param name="kind">As <see cref="Name"/> writes it.</param>
    public static OwnTrial? Find(string kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        if (!kind.TrimStart().StartsWith(By, StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        string[] sought = kind.Trim()[By.Length..].Split(" for ", 2), law = sought[0].Split(" of ", 2);
        return Of(law[0].Trim(), law.Length > 1 ? law[1].Trim() : null, sought.Length > 1 ? sought[1] : null) is { IsFine: true, Value: var own } ? own : null;
    }

    /// <summary>The trial by a law, or what stands in the way.</summary>
    /// <param name="law">Name of the law.</param>
    /// <param name="result">Which of its results is read; null: its first.</param>
    /// <param name="find">Inputs to find, apart by commas, each 'cold' or 'cold as ohms'; null: those that are neither read nor said.</param>
    public static Checked<OwnTrial> Of(string law, string? result, string? find)
    {
        const string Where = Kind + ", law";
        if (LawCard.Find(law) is not { } card)
        {
            return new(new Problem($"There is no law '{law}'.", Where, law, LawNames.Near(law) is { Length: > 0 } near ? string.Join(", ", near) : "a name that 'heatwright sum' lists", "Type one of these."));
        }

        var results = Results(card);
        string[] named = [.. results.Where(each => result is null || string.Equals(each.Name, result, StringComparison.OrdinalIgnoreCase)).Select(each => each.Name)];
        if (named.Length == 0)
        {
            return new(new Problem($"{card.Law.Name} has no result '{result}' that can be read.", Where + ", result", result ?? "none", string.Join(", ", results.Select(each => each.Name)), "Name one of these."));
        }

        var own = new OwnTrial(card, named[0], null);
        if (find is null)
        {
            return new(own);
        }

        List<OwnFind> sought = [];
        List<Problem> problems = [];
        foreach (string[] words in find.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(one => one.Split(" as ", 2, StringSplitOptions.TrimEntries)))
        {
            if (card.Input(words[0]) is { } input && own.Numbers.Contains(input) && input.Name != own.Result)
            {
                sought.Add(new(input, words.Length > 1 && words[1].Length > 0 ? words[1] : Column(input.Name)));
            }
            else
            {
                problems.Add(new($"'{words[0]}' cannot be found from readings of {own.Result}.", Where + ", find", words[0], string.Join(", ", own.Numbers.Where(each => each.Name != own.Result).Select(each => each.Name)), "Name inputs of the law that are neither read nor said."));
            }
        }

        return problems.Count > 0 ? new(problems) : sought.Count == 0 ? new(own) : new(own with { Sought = sought });
    }

    /// <summary>Findings with doubt.</summary>
    /// <param name="input">Readings, settings and meters, named as the card names them.</param>
    public Checked<TrialAnswer> Fit(TrialInput input) => Open(input).Then(sought => Fit(input, sought));

    /// <summary>What is to be found from these readings, or what is lacking.</summary>
    private Checked<IReadOnlyList<OwnFind>> Open(TrialInput input)
    {
        bool Told(LawInput each) => HasColumn(input, each.Name) || input.Settings.ContainsKey(Column(each.Name));
        if (Sought is null)
        {
            OwnFind[] left = [.. Numbers.Where(each => !each.IsOptional && !Told(each)).Select(each => new OwnFind(each, Column(each.Name)))];
            return left.Length > 0 ? new(left) : new(new Problem("Every number of the law is read or said: none is left to find.", Kind, Law.Law.Name, "one number or more to find", "Leave one out, or name it as to be found."));
        }

        List<Problem> problems = [.. Sought.Where(one => Told(one.Input)).Select(one => new Problem($"'{one.Input.Name}' is read or said, and cannot be found too.", Kind, one.Input.Name, string.Join(", ", Numbers.Where(each => !Told(each)).Select(each => each.Name)), "Leave it out of the readings, or find another."))];
        problems.AddRange(Law.Inputs.Where(each => !each.IsOptional && !Told(each) && Sought.All(one => one.Input != each))
            .Select(each => new Problem($"{each.Name} ({each.Card.Meaning}) is neither read, said nor sought.", Kind, "none", each.Card.Unit.Length > 0 ? "a value in " + each.Card.Unit : "a value", $"Say {each.Name}=... with the run, read it in a column of that name, or name it as to be found.")));
        return problems.Count > 0 ? new(problems) : new(Sought);
    }

    private Checked<TrialAnswer> Fit(TrialInput input, IReadOnlyList<OwnFind> sought)
    {
        var numbers = Numbers;
        var (_, _, _, take) = Read;
        object?[] usual = [.. Law.Inputs.Select(each => each.IsOptional ? each.DefaultArgument : null)];
        double Value(Func<string, double> of)
        {
            object?[] arguments = [.. Law.Inputs.Select((each, i) => numbers.Contains(each) && each.Name != Result && of(Column(each.Name)) is var value && double.IsFinite(value) ? value : usual[i])];
            try
            {
                return Law.Method.Invoke(null, arguments) is { } answer && take(answer) is (double or int) and var number ? Convert.ToDouble(number, CultureInfo.InvariantCulture) : double.NaN;
            }
            catch (TargetInvocationException refused) when (refused.InnerException is ArgumentException or ArithmeticException)
            {
                return double.NaN; // outside what the law takes: the search turns back
            }
        }

        bool FromColumn(LawInput each) => each.Name != Result && !input.Settings.ContainsKey(Column(each.Name)) && sought.All(one => one.Input != each) && HasColumn(input, each.Name);
        var own = new OwnLaw(Law.Law.Name, Column(Result), [.. numbers.Where(FromColumn).Select(each => Column(each.Name))],
            [.. sought.Select(one => new SoughtNumber(Column(one.Input.Name), Units.Find(one.Input.Card.Unit)!, Start(one.Input), one.Input.Card.Min, one.Input.Card.Max))], Value);
        return TrialFits.Run(Card, input, own).Map(answer => answer with
        {
            Says = [$"Law: {Law.Law.Formula} ({Law.SourceKey}).", .. answer.Says],
            Findings = [.. answer.Findings.Select(finding => finding with { Name = sought.FirstOrDefault(one => Column(one.Input.Name) == finding.Name)?.As ?? finding.Name })],
        });
    }

    /// <summary>The size of the law's own example, or one.</summary>
    private double Start(LawInput input)
    {
        var unit = Units.Find(input.Card.Unit)!;
        string? typed = Law.Law.Example.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Split('=', 2)).FirstOrDefault(pair => pair.Length == 2 && Law.Input(pair[0]) == input)?[1];
        return typed is not null && OptionReader.Amount(input.Name, typed, Expect.Of(unit)) is { IsFine: true, Value: var amount } && (unit.IsLevel ? amount.Si - Units.ZeroCelsiusK : unit.FromSi(amount.Si)) is var start && double.IsFinite(start) && start != 0 ? start : 1;
    }

    private static (string Name, string Unit, string Meaning, Func<object, object?> Take)[] Results(LawCard law) => [.. law.Results().Where(each => Units.Find(each.Unit) is not null)];

    /// <summary>Name of a column: as the law names its number, with blanks.</summary>
    private static string Column(string name) => name.Replace('-', ' ');

    private static bool HasColumn(TrialInput input, string name) => input.Mapping.ContainsKey(Column(name))
        || input.Columns.Any(column => string.Equals(column.Name.Trim().Replace('-', ' ').Replace('_', ' '), Column(name), StringComparison.OrdinalIgnoreCase));
}
