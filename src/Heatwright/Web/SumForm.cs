using Heatwright.Handbook;
using Heatwright.Jobs.Sums;
using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>One input of a sum on its page.</summary>
/// <param name="Input">The law's input.</param>
/// <param name="Text">As typed; empty: nothing.</param>
/// <param name="Understood">What was understood of it, or what is taken where nothing was typed; empty: nothing to say.</param>
/// <param name="Problems">What stands in its way.</param>
public sealed record SumField(LawInput Input, string Text, string Understood, IReadOnlyList<Problem> Problems)
{
    /// <summary>Stands in the empty field: the value taken when nothing is typed, or how it may look.</summary>
    public string Hint(string example) => Input.DefaultText.Length > 0 ? $"{Input.DefaultText} if left empty"
        : Input.IsOptional ? "may be left empty"
        : example.Split(' ').FirstOrDefault(word => word.StartsWith(Input.Name + "=", StringComparison.Ordinal)) is { } shown ? $"such as {shown[(Input.Name.Length + 1)..]}" : "";
}

/// <summary>The form of one law: what was asked, what was understood, and the answer or what stands in its way.</summary>
/// <param name="Law">The law.</param>
/// <param name="Fields">One for each input.</param>
/// <param name="Asked">False: nothing was typed yet.</param>
/// <param name="Answer">The answer; null: none.</param>
/// <param name="Elsewhere">Problems that belong to no field.</param>
public sealed record SumForm(LawCard Law, IReadOnlyList<SumField> Fields, bool Asked, SumAnswer? Answer, IReadOnlyList<Problem> Elsewhere)
{
    /// <summary>The form with what stands in the address.</summary>
    public static SumForm Of(LawCard law, IQueryCollection query)
    {
        // An empty field of a sent form is a field left empty, not an input of no value.
        var typed = query.Where(pair => pair.Value.ToString().Trim().Length > 0).Select(pair => (Name: pair.Key, Text: pair.Value.ToString().Trim())).ToArray();
        Dictionary<string, string> texts = new(StringComparer.OrdinalIgnoreCase);
        foreach (var (name, text) in typed)
        {
            texts[law.Input(name)?.Name ?? name] = text;
        }

        bool asked = query.Count > 0;
        var outcome = asked ? QuickSum.Run(law.Law.Name, [.. texts.Select(pair => $"{pair.Key}={pair.Value}")]) : null;
        var problems = outcome is { IsFine: false } ? outcome.Problems : [];
        var understood = asked ? QuickSum.Understood(law, texts) : [];
        SumField[] fields = [.. law.Inputs.Select((input, i) => new SumField(input, texts.GetValueOrDefault(input.Name, ""), asked ? understood[i].Shown : "", [.. problems.Where(problem => problem.Where == Place(law, input))]))];
        return new(law, fields, asked, outcome is { IsFine: true } ? outcome.Value : null, [.. problems.Where(problem => law.Inputs.All(input => problem.Where != Place(law, input)))]);
    }

    /// <summary>The same sum on the command line.</summary>
    public string Command => $"heatwright sum {Law.Law.Name} {string.Join(' ', Fields.Where(one => one.Text.Length > 0).Select(Word))}".TrimEnd();

    /// <summary>The address that fills the form with a law's example.</summary>
    public static string ExampleAddress(LawCard law) => $"/sums/{law.Law.Name}?{string.Join('&', law.Law.Example.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Split('=', 2)).Select(pair => $"{Uri.EscapeDataString(pair[0])}={Uri.EscapeDataString(pair[1])}"))}#answer";

    private static string Word(SumField one)
    {
        string word = $"{one.Input.Name}={one.Text}";
        return word.All(c => char.IsLetterOrDigit(c) || c is '=' or '.' or ',' or '-' or '/' or '%') ? word : $"'{word}'";
    }

    private static string Place(LawCard law, LawInput input) => $"sum {law.Law.Name}, {input.Name}";
}
