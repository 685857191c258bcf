using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>Fits a trial, or checks its readings.</summary>
public static class FitTrial
{
    /// <summary>How the checks name the doubt of a number.</summary>
    private const string Doubt = " doubt";

    /// <summary>The kind of this name, or what there is instead.</summary>
    public static Checked<TrialCard> Kind(string name) => TrialKinds.CardOf(name) is { } card ? new(card) : new(TrialFits.Unknown(name, TrialKinds.All));

    /// <summary>The name by which a kind is fitted: a maker's own by its law, any other by its card, whatever else it is called.</summary>
    private static string Fitted(string kind, TrialCard card) => OwnTrial.Find(kind) is null ? card.Name : kind;

    /// <summary>Findings with doubt from readings.</summary>
    public static Checked<TrialAnswer> Run(string kind, TrialWords words) => Kind(kind).Then(card => TrialReadings.Read(card, words).Then(input => TrialFits.Run(Fitted(kind, card), input)));

    /// <summary>Findings of a maker's own trial by a law of the quick sums.</summary>
    public static Checked<TrialAnswer> Own(string kind, TrialWords words, string law, string? result, string? find) =>
        Kind(kind).Then(card => PlanTrial.WithLaw(card.Name, law, result, find)).Then(named => Run(named, words));

    /// <summary>What the checks say of readings.</summary>
    public static Checked<IReadOnlyList<TrialRemark>> Check(string kind, TrialWords words) => Kind(kind).Then(card => TrialReadings.Read(card, words).Then(input => TrialFits.Check(Fitted(kind, card), input)));

    /// <summary>What the checks say of plain numbers: the traps of the trade.</summary>
    /// <param name="facts">Each 'name=value', with a unit where it has one.</param>
    public static Checked<IReadOnlyList<TrialRemark>> Traps(IReadOnlyList<string> facts)
    {
        List<Problem> problems = [];
        var known = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (string fact in facts)
        {
            string[] pair = fact.Split('=', 2);
            var read = pair.Length == 2 ? OptionReader.Read(pair[0], pair[1], Expect.Anything) : null;
            if (read is { IsFine: false } && OptionReader.Read(pair[0], pair[1], Expect.Of(Units.Celsius, pair[0])) is { IsFine: true } degrees)
            {
                // A bare C is degrees here: coulombs are in no check.
                read = degrees;
            }
            if (read is { IsFine: true, Value: TypedValue.Amount amount })
            {
                string name = pair[0].Trim().Replace('-', ' ').Replace('_', ' ');
                known[name] = amount.Unit.IsLevel ? amount.Si - Units.ZeroCelsiusK : amount.Si;
                if (amount.PlusMinus > 0)
                {
                    known[name + Doubt] = amount.PlusMinus * amount.Unit.Factor;
                }
            }
            else
            {
                problems.Add(new("This is no number with a name.", "--fact", fact, "name=value, such as switch-amps=3A", "Type it so."));
            }
        }

        string[] names = [.. RuleBook.All.SelectMany(rule => RuleBook.NamesOf(rule.Id)).Distinct()];
        problems.AddRange(known.Keys.Where(name => !names.Contains(name.EndsWith(Doubt, StringComparison.Ordinal) ? name[..^Doubt.Length] : name)).Select(name => new Problem($"No check asks for '{name}'.", "--fact", name, "a name that a check asks for", "'heatwright trial check --json' lists them.")));
        return problems.Count > 0 ? new(problems) : new(RuleBook.Of(known));
    }
}
