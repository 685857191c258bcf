using System.Globalization;
using System.Reflection;
using Heatwright.Handbook;
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
            string[] near = LawNames.Near(law);
            return new(new Problem("There is no sum of this name.", "sum", law, near.Length > 0 ? "perhaps " + string.Join(", ", near) : "a name that 'sum' lists", "Type 'heatwright sum' for the list."));
        }

        var (texts, left) = TypedWords.Sorted(card, typed);
        List<Problem> problems = [.. left.Select(word => Unknown(card, word, typed))];
        var values = card.Inputs.Select(input => Typed.Read(card, input, texts.GetValueOrDefault(input.Name), problems)).ToArray();
        return problems.Count > 0 ? new(problems) : Answer(card, values);
    }

    private static Problem Unknown(LawCard card, string word, IReadOnlyList<string> typed) => new(
        word.Contains('=', StringComparison.Ordinal) ? "The sum has no such input." : "It is not clear which input this is for.", $"sum {card.Law.Name}", word,
        string.Join(", ", card.Inputs.Select(one => one.Name)), Elsewhere(typed) ?? $"Type it as name=value: heatwright sum {card.Law.Name} {card.Law.Example}");

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
            return new(new SumAnswer(card, [.. values.Select(value => value.Shown)], finite, caveats) { Arguments = [.. values.Select(value => value.Argument)] });
        }
        catch (TargetInvocationException wrapped) when (wrapped.InnerException is ArgumentException refused)
        {
            string what = refused.Message.Split('\n')[0].Split(" (Parameter")[0];
            string value = refused is ArgumentOutOfRangeException { ActualValue: { } actual } ? actual is double number ? number.ToString("G6", CultureInfo.InvariantCulture) : Convert.ToString(actual, CultureInfo.InvariantCulture)! : string.Join(' ', values.Select(v => v.Text));
            string name = Blamed(card, values, refused)?.Name ?? "";
            return new(new Problem(Named(what, refused.ParamName, name), $"sum {card.Law.Name}{(name.Length > 0 ? ", " + name : "")}", value,
                Must(what) ?? (card.Law.Valid.Length > 0 ? card.Law.Valid : "the law's range"), name.Length > 0 ? $"Correct {name}." : "Correct that input."));
        }
        catch (TargetInvocationException wrapped) when (wrapped.InnerException is ArithmeticException)
        {
            // Numbers so far from any bench that the steps between them overflow.
            return new(new Problem("These inputs lie too far from any bench to be worked out.", $"sum {card.Law.Name}", string.Join(' ', values.Select(value => value.Text)), card.Law.Valid, "Check units and prefixes."));
        }
    }

    /// <summary>The limit that a refusal itself names.</summary>
    private static string? Must(string what) => what.IndexOf("it must be ", StringComparison.Ordinal) is >= 0 and var at ? what[(at + "it must be ".Length)..].TrimEnd('.') : null;

    /// <summary>Every input as it is understood, whether or not the sum can be worked out; an input that cannot be read has neither value nor words.</summary>
    public static IReadOnlyList<SumInput> Understood(LawCard card, IReadOnlyDictionary<string, string> texts)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(texts);
        return [.. card.Inputs.Select(input => Typed.Read(card, input, texts.GetValueOrDefault(input.Name), []).Shown)];
    }

    /// <summary>One result with one input moved from what it was in an answer; null: none there, or the law refuses it.</summary>
    internal static double? At(LawCard card, SumAnswer answer, string input, double value, string result)
    {
        object?[] arguments = [.. answer.Arguments];
        arguments[card.Inputs.ToList().FindIndex(each => each.Name == input)] = value;
        try
        {
            return Call(card, arguments) is { } moved && card.Results().First(each => each.Name == result).Take(moved) is (double or int) and var number ? Convert.ToDouble(number, CultureInfo.InvariantCulture) : null;
        }
        catch (TargetInvocationException refused) when (refused.InnerException is ArgumentException or ArithmeticException)
        {
            return null;
        }
    }

    private static SumResult Result(LawCard card, Typed[] values, object answer, (string Name, string Unit, string Meaning, Func<object, object?> Take) result)
    {
        object? taken = result.Take(answer);
        if (taken is not (double or int))
        {
            return new(result.Name, result.Meaning, null, result.Unit, taken switch { null => "none", bool yes => yes ? "yes" : "no", string said => said, _ => Spaced(Convert.ToString(taken, CultureInfo.InvariantCulture)!) });
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
