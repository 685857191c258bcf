namespace Heatwright.Quantities;

/// <summary>Numbers on the command line: the same reader as every field, with a question told as the choices to type.</summary>
public static class OptionReader
{
    /// <summary>Anything that the option takes.</summary>
    /// <param name="option">As typed, for example '--volts'.</param>
    /// <param name="text">What stands behind it.</param>
    /// <param name="expect">What it takes.</param>
    public static Checked<TypedValue> Read(string option, string text, Expect expect) => TypedValue.Read(text, expect) switch
    {
        Answer.Fine { Values.Count: 1 } fine => new(fine.Value),
        Answer.Fine => new(new Problem($"{option} takes one value.", option, $"'{text}'", expect.What, "Give each value its own option.")),
        Answer.Question question => new(new Problem(
            question.Asks, option, $"'{text}'", expect.What, "Type " + string.Join(" or ", question.Choices.Select(choice => $"{option} \"{choice.Spelling}\"")) + ".")),
        Answer.Refused refused => new(refused.Problem with { Where = option }),
        _ => throw new InvalidOperationException("An answer of an unknown kind."),
    };

    /// <summary>One amount: ranges, bounds and missing values are no answer here.</summary>
    public static Checked<TypedValue.Amount> Amount(string option, string text, Expect expect) => Read(option, text, expect).Then(value => value is TypedValue.Amount amount
        ? new Checked<TypedValue.Amount>(amount)
        : new(new Problem($"{option} takes one number.", option, $"'{text}'", expect.What, "Type a single value, not a range, a bound or a sign for none.")));
}
