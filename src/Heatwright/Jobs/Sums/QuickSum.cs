using System.Globalization;
using System.Reflection;
using Heatwright.Quantities;

namespace Heatwright.Jobs.Sums;

/// <summary>Any law as a calculator with units on both sides; doubts that are typed come back propagated.</summary>
public static class QuickSum
{
    /// <summary>The answer to a law and its typed inputs ('current=5A'), or everything that stands in its way.</summary>
    public static Checked<SumAnswer> Run(string law, IReadOnlyList<string> typed)
    {
        if (LawCard.Find(law) is not { } card)
        {
            var near = LawCard.All.Where(other => other.Law.Name.Contains(law, StringComparison.OrdinalIgnoreCase) || law.Contains(other.Law.Name, StringComparison.OrdinalIgnoreCase)).Select(other => other.Law.Name).Take(5).ToArray();
            return new(new Problem("There is no sum of this name.", "sum", law, near.Length > 0 ? "perhaps " + string.Join(", ", near) : "a name that 'sum' lists", "Type 'heatwright sum' for the list."));
        }

        List<Problem> problems = [];
        Dictionary<string, string> texts = new(StringComparer.OrdinalIgnoreCase);
        foreach (string word in typed)
        {
            int equals = word.IndexOf('=', StringComparison.Ordinal);
            string name = equals > 0 ? word[..equals].Trim() : word;
            if (equals <= 0 || card.Input(name) is not { } input)
            {
                problems.Add(new(equals <= 0 ? "An input is typed as name=value." : "The sum has no such input.", $"sum {card.Law.Name}", word, string.Join(", ", card.Inputs.Select(one => one.Name)), Elsewhere(typed) ?? $"Example: heatwright sum {card.Law.Name} {card.Law.Example}"));
            }
            else
            {
                texts[input.Name] = word[(equals + 1)..];
            }
        }

        var values = card.Inputs.Select(input => Typed.Read(card, input, texts.GetValueOrDefault(input.Name), problems)).ToArray();
        return problems.Count > 0 ? new(problems) : Answer(card, values);
    }

    /// <summary>Another law that takes exactly what was typed: 'hot-wire' asked for its temperature is 'hot-wire-temperature'.</summary>
    private static string? Elsewhere(IReadOnlyList<string> typed)
    {
        string[] names = [.. typed.Select(word => word.Split('=')[0].Trim())];
        var other = LawCard.All.Where(law => names.All(name => law.Input(name) is not null) && law.Inputs.All(input => input.IsOptional || names.Any(name => law.Input(name) == input))).Take(4).ToArray();
        return other.Length == 0 ? null : $"These inputs belong to {string.Join(" or ", other.Select(law => $"'heatwright sum {law.Law.Name} {string.Join(' ', typed)}'"))}.";
    }

    private static Checked<SumAnswer> Answer(LawCard card, Typed[] values)
    {
        try
        {
            object? answer = Call(card, [.. values.Select(value => value.Argument)]);
            if (answer is null)
            {
                return new(new Problem("These inputs have no steady answer.", $"sum {card.Law.Name}", string.Join(' ', values.Select(value => value.Text)), card.Law.Valid, "Lower what is asked of the source, or the source resistance."));
            }

            SumResult[] results = [.. card.Results().Select(result => Result(card, values, answer, result))];
            string[] caveats = [.. values.SelectMany(value => value.Caveats(card)), .. results.Where(result => result.Value is { } v && !double.IsFinite(v)).Select(result => $"{result.Name} has no finite value here.")];
            var finite = results.Select(result => result.Value is { } v && !double.IsFinite(v) ? result with { Value = null, Words = result.Unit == "s" ? "never" : "none" } : result).ToArray();
            return new(new SumAnswer(card, [.. values.Select(value => value.Shown)], finite, caveats));
        }
        catch (TargetInvocationException wrapped) when (wrapped.InnerException is ArgumentException refused)
        {
            string what = refused.Message.Split('\n')[0].Split(" (Parameter")[0];
            string value = refused is ArgumentOutOfRangeException { ActualValue: { } actual } ? Convert.ToString(actual, CultureInfo.InvariantCulture)! : string.Join(' ', values.Select(v => v.Text));
            string name = Blamed(card, values, refused)?.Name ?? "";
            return new(new Problem(Named(what, refused.ParamName, name), $"sum {card.Law.Name}{(name.Length > 0 ? ", " + name : "")}", value, card.Law.Valid.Length > 0 ? card.Law.Valid : "the law's range", "Correct that input."));
        }
    }

    /// <summary>Every input as it is understood, whether or not the sum can be worked out; an input that cannot be read has neither value nor words.</summary>
    public static IReadOnlyList<SumInput> Understood(LawCard card, IReadOnlyDictionary<string, string> texts)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(texts);
        return [.. card.Inputs.Select(input => Typed.Read(card, input, texts.GetValueOrDefault(input.Name), []).Shown)];
    }

    private static SumResult Result(LawCard card, Typed[] values, object answer, (string Name, string Unit, string Meaning, Func<object, object?> Take) result)
    {
        object? taken = result.Take(answer);
        if (taken is not (double or int))
        {
            return new(result.Name, result.Meaning, null, result.Unit, taken switch { null => "none", bool yes => yes ? "yes" : "no", _ => Spaced(Convert.ToString(taken, CultureInfo.InvariantCulture)!) });
        }

        List<(string Input, double Push)> pushes = [];
        for (int i = 0; i < values.Length; i++)
        {
            if (values[i].Doubt > 0 && values[i].Argument is double at)
            {
                double step = Math.Max(1e-3 * values[i].Doubt, 1e-7 * Math.Abs(at));
                pushes.Add((values[i].Input.Name, (Moved(i, at + step) - Moved(i, at - step)) / (2 * step) * values[i].Doubt));
            }
        }

        return new(result.Name, result.Meaning, Convert.ToDouble(taken, CultureInfo.InvariantCulture), result.Unit, "") { Pushes = pushes };

        double Moved(int input, double at)
        {
            object?[] arguments = [.. values.Select(v => v.Argument)];
            arguments[input] = at;
            return Call(card, arguments) is { } moved && result.Take(moved) is { } number ? Convert.ToDouble(number, CultureInfo.InvariantCulture) : double.NaN;
        }
    }

    /// <summary>The input that a law refuses: by its name, or where a part of the law names its own, by the value refused.</summary>
    private static LawInput? Blamed(LawCard card, Typed[] values, ArgumentException refused) =>
        card.Inputs.FirstOrDefault(input => input.Parameter.Name == refused.ParamName)
        ?? (refused is ArgumentOutOfRangeException { ActualValue: double actual } && values.Where(value => value.Argument is double own && own == actual).ToArray() is [var one] ? one.Input : null);

    /// <summary>A refusal in the names that are typed: 'hot' for 'hotC'.</summary>
    private static string Named(string what, string? parameter, string name) =>
        parameter is { Length: > 0 } && what.StartsWith(parameter + " ", StringComparison.Ordinal) ? name + what[parameter.Length..] : what;

    private static object? Call(LawCard card, object?[] arguments) => card.Method.Invoke(null, arguments);

    private static string Spaced(string word) => string.Concat(word.Select((letter, i) => char.IsUpper(letter) ? (i > 0 ? " " : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}
